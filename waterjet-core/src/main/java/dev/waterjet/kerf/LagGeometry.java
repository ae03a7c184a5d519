package dev.waterjet.kerf;

import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.util.Objects;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Length;

/**
 * Geometric model of the cut front below the top side where the tool path bends: it turns the lag into an error of the bottom
 * edge. All three are derived and none is confirmed by a measured corner; on arcs, observation favours the first, which is the
 * default. A disc decides: its radius at the exit less that at the entry is about L<sup>2</sup>/2r, the same with the opposite
 * sign, or 0.
 *
 * <pre>{@code
 * LagGeometry.TANGENT.allowedLag(millimetres(5), millimetres(0.1));
 * }</pre>
 */
public enum LagGeometry {
    /** The front lags along the tangent of the tool path: it swings wide, by sqrt(r<sup>2</sup> + L<sup>2</sup>) - r on the radius r. */
    TANGENT("along the tangent, swinging wide"),
    /** The front is drawn along a tractrix: it cuts in, by r - sqrt(r<sup>2</sup> - L<sup>2</sup>) on the radius r. */
    TRACTRIX("along a tractrix, cutting in"),
    /** The front follows the tool path: no error on arcs and at corners. */
    FOLLOWING("along the path");

    private final String label;

    LagGeometry(String label) {
        this.label = label;
    }

    /** {@return the name for people, in lower case} */
    public String label() {
        return label;
    }

    /**
     * Returns the distance of the front from the tool path on a long arc, on SI numbers.
     *
     * @param lagM lag in m, 0 or more
     * @param radiusM radius of the tool path in m, above 0
     * @return distance in m: outwards in the tangent geometry, inwards in the tractrix geometry, where it ends at the radius
     */
    public double arcErrorSi(double lagM, double radiusM) {
        return switch (this) {
            case TANGENT -> LagKernel.tangentError(lagM, radiusM);
            case TRACTRIX -> LagKernel.tractrixError(lagM, radiusM);
            case FOLLOWING -> 0;
        };
    }

    /**
     * Returns the lag at which the front is at a distance from the tool path on a long arc, on SI numbers: the inverse of
     * {@link #arcErrorSi}.
     *
     * @param errorM distance in m, above 0
     * @param radiusM radius of the tool path in m, above 0
     * @return lag in m; infinite where no lag exceeds the distance
     */
    public double arcLagSi(double errorM, double radiusM) {
        return switch (this) {
            case TANGENT -> LagKernel.tangentLag(errorM, radiusM);
            case TRACTRIX -> LagKernel.tractrixLag(errorM, radiusM);
            case FOLLOWING -> Double.POSITIVE_INFINITY;
        };
    }

    /** Greatest distance at a corner: beyond the old edge (tangent) or from the corner (tractrix). */
    double cornerErrorSi(double lagM, double turnRad) {
        return switch (this) {
            case TANGENT -> LagKernel.tangentCorner(lagM, turnRad);
            case TRACTRIX -> LagKernel.tractrixCorner(lagM, turnRad);
            case FOLLOWING -> 0;
        };
    }

    /**
     * Returns the maximum lag that keeps the bottom edge of an arc within a tolerance.
     *
     * @param radius radius of the arc, above 0: of a part, the minimum
     * @param tolerance maximum distance between bottom edge and arc, above 0
     * @return the lag: sqrt(2 r e + e<sup>2</sup>) in the tangent geometry, sqrt(2 r e - e<sup>2</sup>) in the tractrix geometry;
     *     empty where any lag is allowed
     */
    public Optional<Quantity<Length>> allowedLag(Quantity<Length> radius, Quantity<Length> tolerance) {
        Objects.requireNonNull(radius, "radius");
        Objects.requireNonNull(tolerance, "tolerance");
        double radiusM = Require.positive("radius of the arc", Kind.LENGTH.si(radius), Units.MILLIMETRE);
        double errorM = Require.positive("tolerance on the arc", Kind.LENGTH.si(tolerance), Units.MILLIMETRE);
        double lagM = arcLagSi(errorM, radiusM);
        return Double.isInfinite(lagM) ? Optional.empty() : Optional.of(Kind.LENGTH.of(lagM));
    }
}

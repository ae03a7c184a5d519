package dev.waterjet.kerf;

import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.Serializable;
import java.util.Map;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Length;

/**
 * How far the exit may be off an arc.
 *
 * <pre>{@code
 * ArcTolerance.onRadius(millimetres(5)).within(millimetres(0.1)).allowedLag()
 * }</pre>
 */
public final class ArcTolerance implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    private final double radiusM;
    private final double errorM;

    private ArcTolerance(double radiusM, double errorM) {
        this.radiusM = Require.positive("radius of the arc", radiusM, Units.MILLIMETRE);
        this.errorM = Require.positive("error on the arc", errorM, Units.MILLIMETRE);
    }

    /** An arc for which the error is yet to be told. */
    public static final class OnRadius {

        private final double radiusM;

        private OnRadius(double radiusM) {
            this.radiusM = radiusM;
        }

        /**
         * The tolerance.
         *
         * @param error greatest distance allowed between exit and arc, above zero
         * @return the tolerance on this arc
         */
        public ArcTolerance within(Quantity<Length> error) {
            return new ArcTolerance(radiusM, Kind.LENGTH.si(error));
        }
    }

    /**
     * Names the arc.
     *
     * @param radius its radius, above zero: of a part, the smallest
     * @return what takes the error
     */
    public static OnRadius onRadius(Quantity<Length> radius) {
        return new OnRadius(Require.positive("radius of the arc", Kind.LENGTH.si(radius), Units.MILLIMETRE));
    }

    /**
     * Radius of the arc.
     *
     * @return the radius, in m
     */
    public Quantity<Length> radius() {
        return Kind.LENGTH.of(radiusM);
    }

    /**
     * Greatest distance allowed between exit and arc.
     *
     * @return the distance, in m
     */
    public Quantity<Length> error() {
        return Kind.LENGTH.of(errorM);
    }

    /**
     * Lag that keeps the tolerance, as a number in m: {@code sqrt(2 R e + e^2)} in the tangent picture, {@code sqrt(2 R e - e^2)} in the
     * trailer picture.
     *
     * @param picture how the foot of the jet follows
     * @return the greatest lag; infinite in the trailer picture once the error allowed reaches the radius, and where the
     *     front follows the path
     */
    public double allowedLagSi(LagGeometry picture) {
        if (picture == LagGeometry.FOLLOWING) {
            return Double.POSITIVE_INFINITY;
        }
        return picture == LagGeometry.TANGENT
                ? LagKernel.tangentLag(errorM, radiusM)
                : LagKernel.trailerLag(errorM, radiusM);
    }

    /**
     * Lag that keeps the tolerance in the tangent picture: {@code sqrt(2 R e + e^2)}.
     *
     * @return the greatest lag
     */
    public Quantity<Length> allowedLag() {
        return Kind.LENGTH.of(allowedLagSi(LagGeometry.TANGENT));
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("arc tolerance")
                .put("radius", Kind.LENGTH, radiusM)
                .put("error", Kind.LENGTH, errorM)
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof ArcTolerance that && radiusM == that.radiusM && errorM == that.errorM;
    }

    @Override
    public int hashCode() {
        return Objects.hash(radiusM, errorM);
    }

    @Override
    public String toString() {
        return "within " + errorM + " m on an arc of radius " + radiusM + " m";
    }
}

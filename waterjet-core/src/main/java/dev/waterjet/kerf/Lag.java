package dev.waterjet.kerf;

import dev.waterjet.evidence.Estimate;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.Serializable;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Angle;
import javax.measure.quantity.Length;

/** The curved front that a jet leaves behind at one feed, and what it does to arcs and corners. */
public final class Lag implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    private final double coefficient;
    private final double thicknessM;
    private final double separationDepthM;
    private final double relativeUncertainty;

    private Lag(double coefficient, double thicknessM, double separationDepthM, double relativeUncertainty) {
        this.coefficient = coefficient;
        this.thicknessM = thicknessM;
        this.separationDepthM = separationDepthM;
        this.relativeUncertainty = relativeUncertainty;
    }

    static Lag of(LagModel model, double thicknessM, Separation separation) {
        return new Lag(
                model.coefficient(),
                thicknessM,
                separation.depthM(),
                Math.hypot(model.relativeUncertainty(), separation.relativeUncertainty()));
    }

    /**
     * Lag at a depth.
     *
     * @param depth depth below the entry face, above zero and at most the thickness
     * @return how far the front there is behind the entry
     */
    public Estimate<Length> at(Quantity<Length> depth) {
        double depthM =
                Require.above("depth", Kind.LENGTH.si(depth), 0, Units.MILLIMETRE, "at the entry there is no lag");
        Require.atMost("depth", depthM, thicknessM, Units.MILLIMETRE, "the thickness");
        return estimate(LagKernel.lag(coefficient, depthM, separationDepthM));
    }

    /**
     * Lag at the exit face.
     *
     * @return how far the exit is behind the entry
     */
    public Estimate<Length> atExit() {
        return estimate(exitSi());
    }

    /**
     * Lag at the exit face as a number.
     *
     * @return lag in m
     */
    public double exitSi() {
        return LagKernel.lag(coefficient, thicknessM, separationDepthM);
    }

    private Estimate<Length> estimate(double lagM) {
        return Estimate.withinFactor(Kind.LENGTH, lagM, relativeUncertainty, List.of());
    }

    /**
     * Angle between front and jet at the exit.
     *
     * @return the angle, between 0 and 90 degrees
     */
    public Estimate<Angle> exitAngle() {
        double angle = LagKernel.angle(coefficient, thicknessM, separationDepthM);
        // d(angle)/d(ln tan) = sin cos
        double relative = relativeUncertainty * Math.sin(angle) * Math.cos(angle) / angle;
        return Estimate.withinFactor(Kind.ANGLE, angle, relative, List.of());
    }

    /**
     * Angle by which the head leads, tilted in the direction of travel, so that the exit comes to stand under the entry.
     *
     * @return the lead angle: its tangent is lag over thickness
     */
    public Quantity<Angle> leadAngle() {
        return Kind.ANGLE.of(Math.atan(exitSi() / thicknessM));
    }

    /**
     * Lag that a lead angle leaves at the exit.
     *
     * @param lead lead angle of the head, from 0 to below 90 degrees
     * @return the lag; below zero where the exit then runs ahead
     */
    public Quantity<Length> exitWithLead(Quantity<Angle> lead) {
        double leadRad = Require.between(
                "lead angle",
                Kind.ANGLE.si(lead),
                0,
                Math.nextDown(Math.PI / 2),
                Units.DEGREE,
                "the head stands above");
        return Kind.LENGTH.of(exitSi() - thicknessM * Math.tan(leadRad));
    }

    /**
     * How far the exit is off an arc, by the tangent picture: it swings wide.
     *
     * @param radius radius of the arc, above zero
     * @return the distance
     */
    public Estimate<Length> errorOnArc(Quantity<Length> radius) {
        return errorOnArc(radius, LagGeometry.TANGENT);
    }

    /**
     * How far the exit is off an arc.
     *
     * @param radius radius of the arc, above zero
     * @param picture how the foot follows
     * @return the distance, outwards in the tangent picture, inwards in the trailer picture
     */
    public Estimate<Length> errorOnArc(Quantity<Length> radius, LagGeometry picture) {
        double radiusM = Require.positive("radius of the arc", Kind.LENGTH.si(radius), Units.MILLIMETRE);
        double lag = exitSi();
        double error = picture.arcErrorSi(lag, radiusM);
        if (error == 0) {
            return Estimate.of(Kind.LENGTH, 0, 0);
        }
        double above = picture.arcErrorSi(lag * Math.exp(relativeUncertainty), radiusM);
        double below = picture.arcErrorSi(lag * Math.exp(-relativeUncertainty), radiusM);
        return Estimate.withinFactor(Kind.LENGTH, error, Math.log(above / below) / 2, List.of());
    }

    /**
     * How far the exit is off a corner taken at this feed. In the tangent picture the foot is thrown past an inside corner
     * and notches it; in the trailer picture it is drawn across and leaves material, or cuts an outside corner off.
     *
     * @param turn change of direction at the corner, above 0 and up to 180 degrees
     * @param picture how the foot follows
     * @return the greatest distance: beyond the old line in the tangent picture, from the corner in the trailer picture,
     *     zero where the front follows the path
     */
    public Quantity<Length> errorAtCorner(Quantity<Angle> turn, LagGeometry picture) {
        double turnRad = Require.above("turn", Kind.ANGLE.si(turn), 0, Units.DEGREE, "a straight path has no corner");
        Require.atMost("turn", turnRad, Math.PI, Units.DEGREE, "the path turns back");
        if (picture == LagGeometry.FOLLOWING) {
            return Kind.LENGTH.of(0);
        }
        return Kind.LENGTH.of(
                picture == LagGeometry.TANGENT
                        ? LagKernel.tangentCorner(exitSi(), turnRad)
                        : LagKernel.trailerCorner(exitSi(), turnRad));
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("jet lag")
                .put("coefficient", coefficient)
                .put("thickness", Kind.LENGTH, thicknessM)
                .put("separation_depth", Kind.LENGTH, separationDepthM)
                .put("exit_lag", atExit())
                .put("exit_angle", exitAngle())
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Lag that
                && coefficient == that.coefficient
                && thicknessM == that.thicknessM
                && separationDepthM == that.separationDepthM
                && relativeUncertainty == that.relativeUncertainty;
    }

    @Override
    public int hashCode() {
        return Objects.hash(coefficient, thicknessM, separationDepthM, relativeUncertainty);
    }

    @Override
    public String toString() {
        return "lag at the exit " + atExit();
    }
}

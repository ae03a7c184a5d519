package dev.waterjet.kerf;

import dev.waterjet.evidence.Estimate;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.Serializable;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Angle;
import javax.measure.quantity.Length;

/**
 * Lag of one cut: the distance of its curved front behind the head, and the errors that it causes on arcs and at corners.
 *
 * @param model model of the cut front
 * @param thickness thickness of the workpiece, above 0
 * @param separationDepth depth that the jet just separates at the feed rate, at least the thickness
 */
public record Lag(LagModel model, Quantity<Length> thickness, Estimate<Length> separationDepth)
        implements Described, Serializable {

    /**
     * Checks the components.
     *
     * @throws dev.waterjet.measure.DomainException if the thickness is not above 0 or the jet does not separate it
     * @param model model of the cut front
     * @param thickness thickness of the workpiece, above 0
     * @param separationDepth depth that the jet just separates at the feed rate, at least the thickness
     */
    public Lag {
        Objects.requireNonNull(thickness, "thickness");
        Objects.requireNonNull(model, "model");
        double thicknessM = Require.positive("thickness", Kind.LENGTH.si(thickness), Units.MILLIMETRE);
        thickness = Kind.LENGTH.of(thicknessM);
        separationDepth = Separation.through(thicknessM, separationDepth);
    }

    private double thicknessM() {
        return Kind.LENGTH.si(thickness);
    }

    private double relativeUncertainty() {
        return Math.hypot(model.relativeUncertainty(), separationDepth.relativeUncertainty());
    }

    /**
     * Returns the lag at a depth.
     *
     * @param depth depth below the top side, above 0 and at most the thickness
     * @return distance of the front there behind the entry
     */
    public Estimate<Length> at(Quantity<Length> depth) {
        Objects.requireNonNull(depth, "depth");
        double depthM =
                Require.above("depth", Kind.LENGTH.si(depth), 0, Units.MILLIMETRE, "there is no lag at the entry");
        Require.atMost("depth", depthM, thicknessM(), Units.MILLIMETRE, "the thickness");
        return estimate(model.lagSi(separationDepth.si(), depthM));
    }

    /** {@return the lag at the exit: distance of the exit behind the entry} */
    public Estimate<Length> atExit() {
        return estimate(exitM());
    }

    private double exitM() {
        return model.lagSi(separationDepth.si(), thicknessM());
    }

    private Estimate<Length> estimate(double lagM) {
        return Estimate.withinFactor(Kind.LENGTH, lagM, relativeUncertainty(), List.of());
    }

    /** {@return the angle between the front and the axis of the jet at the exit, from 0 to 90 degrees} */
    public Estimate<Angle> exitAngle() {
        double angle = LagKernel.angle(model.coefficient(), thicknessM(), separationDepth.si());
        // d(angle)/d(ln tan) = sin cos
        double relative = relativeUncertainty() * Math.sin(angle) * Math.cos(angle) / angle;
        return Estimate.withinFactor(Kind.ANGLE, angle, relative, List.of());
    }

    /** {@return the lead angle, a tilt in the cutting direction, that brings the exit under the entry; its tangent is lag over thickness} */
    public Quantity<Angle> leadAngle() {
        return Kind.ANGLE.of(Math.atan(exitM() / thicknessM()));
    }

    /**
     * Returns the lag that remains at the exit with a lead angle.
     *
     * @param lead lead angle of the head, from 0 to below 90 degrees
     * @return the lag; below 0 where the exit runs ahead
     */
    public Quantity<Length> exitWithLead(Quantity<Angle> lead) {
        Objects.requireNonNull(lead, "lead");
        double leadRad = Require.between(
                "lead angle",
                Kind.ANGLE.si(lead),
                0,
                Math.nextDown(Math.PI / 2),
                Units.DEGREE,
                "the head is above the workpiece");
        return Kind.LENGTH.of(exitM() - thicknessM() * Math.tan(leadRad));
    }

    /**
     * Returns the error of the bottom edge on an arc in the tangent geometry: it swings wide.
     *
     * @param radius radius of the arc, above 0
     * @return distance between bottom edge and arc
     */
    public Estimate<Length> errorOnArc(Quantity<Length> radius) {
        return errorOnArc(radius, LagGeometry.TANGENT);
    }

    /**
     * Returns the error of the bottom edge on an arc.
     *
     * @param radius radius of the arc, above 0
     * @param geometry geometric model of the front
     * @return distance between bottom edge and arc: outwards in the tangent geometry, inwards in the tractrix geometry
     */
    public Estimate<Length> errorOnArc(Quantity<Length> radius, LagGeometry geometry) {
        Objects.requireNonNull(geometry, "geometry");
        Objects.requireNonNull(radius, "radius");
        double radiusM = Require.positive("radius of the arc", Kind.LENGTH.si(radius), Units.MILLIMETRE);
        double error = geometry.arcErrorSi(exitM(), radiusM);
        if (error == 0) {
            return Estimate.of(Kind.LENGTH, 0, 0);
        }
        double above = geometry.arcErrorSi(exitM() * Math.exp(relativeUncertainty()), radiusM);
        double below = geometry.arcErrorSi(exitM() * Math.exp(-relativeUncertainty()), radiusM);
        return Estimate.withinFactor(Kind.LENGTH, error, Math.log(above / below) / 2, List.of());
    }

    /**
     * Returns the error of the bottom edge at a corner taken at this feed rate. In the tangent geometry the front passes
     * an inside corner and notches it; in the tractrix geometry it is drawn across, leaves material there and cuts an
     * outside corner off.
     *
     * @param turn change of direction at the corner, above 0 and at most 180 degrees
     * @param geometry geometric model of the front
     * @return the maximum distance: beyond the old edge in the tangent geometry, from the corner in the tractrix geometry, 0
     *     where the front follows the path
     */
    public Quantity<Length> errorAtCorner(Quantity<Angle> turn, LagGeometry geometry) {
        Objects.requireNonNull(geometry, "geometry");
        Objects.requireNonNull(turn, "turn");
        double turnRad = Require.above("turn", Kind.ANGLE.si(turn), 0, Units.DEGREE, "a straight path has no corner");
        Require.atMost("turn", turnRad, Math.PI, Units.DEGREE, "the path turns back");
        return Kind.LENGTH.of(geometry.cornerErrorSi(exitM(), turnRad));
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("lag")
                .put("model", model)
                .put("thickness", Kind.LENGTH, thicknessM())
                .put("separation_depth", separationDepth)
                .put("exit_lag", atExit())
                .put("exit_angle", exitAngle())
                .map();
    }

    @Override
    public String toString() {
        return "lag " + QuantityText.forPeople(Kind.LENGTH, exitM()) + " at the exit";
    }
}

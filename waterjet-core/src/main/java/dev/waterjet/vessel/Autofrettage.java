package dev.waterjet.vessel;

import dev.waterjet.evidence.Caution;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.InvalidObjectException;
import java.io.ObjectInputStream;
import java.io.Serializable;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Pressure;

/**
 * Autofrettage of a tube: one pressure above its working range yields the wall from the bore to a radius <i>c</i>, and the outer
 * wall then holds the bore in compression.
 *
 * <p>By Tresca's criterion, without hardening: <i>p</i> = &sigma;<sub>y</sub> (ln(<i>c</i>/<i>r</i><sub>i</sub>) + (1 -
 * <i>c</i><sup>2</sup>/<i>r</i><sub>o</sub><sup>2</sup>)/2) (Hill, The Mathematical Theory of Plasticity, 1950; form from memory,
 * derived again). Half overstrain of a tube of ratio 2 in steel of 1000 MPa takes 624 MPa and leaves -665 MPa at the bore.
 *
 * <p>Real steel yields back earlier than it yielded (Bauschinger effect; Milligan, Koo, Davidson 1966, from memory): ideal
 * models overstate the compression of the bore by 30 % and more (Jahed, Ghanbari 2003, doi 10.1115/1.1593070, abstract). The
 * residual stress is therefore an estimate with a relative standard uncertainty of 0.3 (assumed).
 */
public final class Autofrettage implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    /** Assumed. */
    private static final double RELATIVE_UNCERTAINTY = 0.3;

    /** Plastic radius over that of the bore above which the Bauschinger effect shows at any thickness (Parker, abstract). */
    private static final double BAUSCHINGER_RATIO = 1.2;

    /** Checked content, and the serial form. */
    private record Values(ThickTube tube, double yieldPa, double plasticRadiusM) implements Serializable {

        private static final long serialVersionUID = 1L;

        Values {
            Objects.requireNonNull(tube, "tube");
            yieldPa = Require.positive("yield strength of the wall", yieldPa, Units.MEGAPASCAL);
            plasticRadiusM = Require.between(
                    "plastic radius",
                    plasticRadiusM,
                    tube.boreSi() / 2,
                    Kind.LENGTH.si(tube.outer()) / 2,
                    Units.MILLIMETRE,
                    "bore and outside");
        }

        private Object readResolve() {
            return new Autofrettage(this);
        }

        double plasticRatio() {
            return Math.min(tube.diameterRatio(), 2 * plasticRadiusM / tube.boreSi());
        }
    }

    private final transient Values values;

    private Autofrettage(Values values) {
        this.values = values;
    }

    /**
     * Returns the autofrettage that yields the wall to a radius.
     *
     * @param tube the tube
     * @param yieldStrength yield strength of the wall in tension, above 0
     * @param plasticRadius radius to which the wall yields, between those of bore and outside
     * @return the autofrettage
     * @throws dev.waterjet.measure.DomainException if the radius lies outside the wall
     */
    public static Autofrettage toRadius(
            ThickTube tube, Quantity<Pressure> yieldStrength, Quantity<Length> plasticRadius) {
        Objects.requireNonNull(tube, "tube");
        Objects.requireNonNull(plasticRadius, "plasticRadius");
        return new Autofrettage(new Values(tube, ThickTube.yieldPa(yieldStrength), Kind.LENGTH.si(plasticRadius)));
    }

    /**
     * Returns the autofrettage by a pressure.
     *
     * @param tube the tube
     * @param yieldStrength yield strength of the wall in tension, above 0
     * @param pressure gauge pressure, from that of first yield to that of the fully plastic wall, both by Tresca
     * @return the autofrettage
     * @throws dev.waterjet.measure.DomainException if the wall does not yield, or yields fully below that pressure
     */
    public static Autofrettage atPressure(
            ThickTube tube, Quantity<Pressure> yieldStrength, Quantity<Pressure> pressure) {
        Objects.requireNonNull(tube, "tube");
        Objects.requireNonNull(pressure, "pressure");
        double yieldPa = ThickTube.yieldPa(yieldStrength);
        double ratio = tube.diameterRatio();
        double pressurePa = Require.between(
                "autofrettage pressure",
                Kind.PRESSURE.si(pressure),
                yieldPa * TubeKernel.autofrettage(ratio, 1),
                yieldPa * TubeKernel.fullPlastic(YieldCriterion.TRESCA, ratio),
                Units.MEGAPASCAL,
                "first yield and fully plastic wall");
        double radiusM = TubeKernel.plasticRatio(ratio, pressurePa / yieldPa) * tube.boreSi() / 2;
        double outerM = Kind.LENGTH.si(tube.outer()) / 2;
        return new Autofrettage(new Values(tube, yieldPa, Math.max(tube.boreSi() / 2, Math.min(outerM, radiusM))));
    }

    /**
     * Returns the diameter ratio above which a tube whose whole wall has yielded yields back when the pressure is released: the
     * root of ln <i>k</i> = (1 + &beta;)/2 (1 - 1/<i>k</i><sup>2</sup>), 2.218 for &beta; = 1.
     *
     * @param reverseYield yield strength &beta; in reverse over that in tension, 0.1 to 1; after large strains 0.3 to 0.7 (value
     *     from memory)
     * @return outer over inner diameter
     */
    public static double criticalDiameterRatio(double reverseYield) {
        Require.between("relative reverse yield strength", reverseYield, 0.1, 1, Units.ONE, "");
        return TubeKernel.criticalRatio(reverseYield);
    }

    /** {@return the tube} */
    public ThickTube tube() {
        return values.tube;
    }

    /** {@return the radius to which the wall yields} */
    public Quantity<Length> plasticRadius() {
        return Kind.LENGTH.of(values.plasticRadiusM);
    }

    /** {@return the gauge pressure that yields the wall to that radius} */
    public Quantity<Pressure> pressure() {
        return Kind.PRESSURE.of(pressurePa());
    }

    private double pressurePa() {
        return values.yieldPa * TubeKernel.autofrettage(values.tube.diameterRatio(), values.plasticRatio());
    }

    /**
     * {@return whether the bore yields in compression when the pressure is released, even without Bauschinger effect}
     */
    public boolean isReverseYielding() {
        return TubeKernel.isReverseYielding(values.tube.diameterRatio(), values.plasticRatio(), 1);
    }

    /**
     * {@return the hoop stress that remains at the bore without pressure, in compression below 0; empty if the bore yields in
     * reverse, where this model does not hold}
     */
    public Optional<Estimate<Pressure>> residualHoopStressAtBore() {
        return residual(1);
    }

    /**
     * Returns the hoop stress that remains at a radius without pressure.
     *
     * @param radius distance from the axis, between the radii of bore and outside
     * @return the stress; empty if the bore yields in reverse, where this model does not hold
     */
    public Optional<Estimate<Pressure>> residualHoopStressAt(Quantity<Length> radius) {
        return residual(values.tube.radiusRatio(radius));
    }

    private Optional<Estimate<Pressure>> residual(double radiusRatio) {
        if (isReverseYielding()) {
            return Optional.empty();
        }
        double stressPa = values.yieldPa
                * TubeKernel.residualHoop(values.tube.diameterRatio(), values.plasticRatio(), radiusRatio);
        return Optional.of(Estimate.of(Kind.PRESSURE, stressPa, RELATIVE_UNCERTAINTY * Math.abs(stressPa))
                .with(cautions()));
    }

    /** {@return the cautions that apply, one or more} */
    public List<Caution> cautions() {
        return VesselCautions.ofAutofrettage(values.plasticRatio(), BAUSCHINGER_RATIO, isReverseYielding());
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("autofrettage")
                .put("tube", values.tube)
                .put("yield_strength", Kind.PRESSURE, values.yieldPa)
                .put("plastic_radius", Kind.LENGTH, values.plasticRadiusM)
                .put("pressure", Kind.PRESSURE, pressurePa())
                .put("residual_hoop_stress_at_bore", residualHoopStressAtBore())
                .put("cautions", cautions())
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Autofrettage that && values.equals(that.values);
    }

    @Override
    public int hashCode() {
        return values.hashCode();
    }

    @Override
    public String toString() {
        return "autofrettage at " + QuantityText.forPeople(Kind.PRESSURE, pressure()) + " of a " + values.tube;
    }

    private Object writeReplace() {
        return values;
    }

    private void readObject(ObjectInputStream in) throws InvalidObjectException {
        throw new InvalidObjectException("read through its values");
    }
}

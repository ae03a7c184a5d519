package dev.waterjet.vessel;

import dev.waterjet.measure.Compressibility;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.InvalidObjectException;
import java.io.ObjectInputStream;
import java.io.Serializable;
import java.util.Map;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Pressure;

/**
 * Thick-walled tube under internal pressure, of an elastic wall. Away from its ends, by Lam&eacute;'s solution, with <i>k</i> outer
 * over inner diameter:
 *
 * <p>hoop stress &sigma; = <i>p</i> (1 + <i>r</i><sub>o</sub><sup>2</sup>/<i>r</i><sup>2</sup>)/(<i>k</i><sup>2</sup> - 1), radial
 * stress <i>p</i> (1 - <i>r</i><sub>o</sub><sup>2</sup>/<i>r</i><sup>2</sup>)/(<i>k</i><sup>2</sup> - 1), axial stress of closed
 * ends <i>p</i>/(<i>k</i><sup>2</sup> - 1). At 380 MPa and <i>k</i> = 3 the hoop stress is 475 MPa at the bore and 95 MPa outside.
 *
 * <p>The wall is steel, 200 GPa and 0.29 (values from memory), unless stated otherwise.
 *
 * <pre>{@code
 * ThickTube tube = ThickTube.of(millimetres(10), millimetres(30));
 * WallStress bore = tube.stressAtBore(megapascals(380), Ends.CLOSED);
 * bore.hoop();   // 475 MPa
 * }</pre>
 */
public final class ThickTube implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    private static final double STEEL_PA = 200e9;
    private static final double STEEL_POISSON = 0.29;

    /** Checked content, and the serial form. */
    private record Values(double boreM, double outerM, double modulusPa, double poissonsRatio) implements Serializable {

        private static final long serialVersionUID = 1L;

        Values {
            boreM = Require.positive("bore of the tube", boreM, Units.MILLIMETRE);
            outerM = Require.above("outer diameter of the tube", outerM, boreM, Units.MILLIMETRE, "the bore");
            Require.finite("diameter ratio of the tube", outerM / boreM, Units.ONE);
            modulusPa = Require.positive("modulus of elasticity of the wall", modulusPa, Units.GIGAPASCAL);
            poissonsRatio = Require.between("Poisson's ratio of the wall", poissonsRatio, 0, 0.5, Units.ONE, "");
        }

        private Object readResolve() {
            return new ThickTube(this);
        }

        double ratio() {
            return outerM / boreM;
        }
    }

    private final transient Values values;

    private ThickTube(Values values) {
        this.values = values;
    }

    /**
     * Returns a tube of steel.
     *
     * @param bore inner diameter, above 0
     * @param outer outer diameter, above the bore
     * @return the tube
     * @throws dev.waterjet.measure.DomainException if a diameter is out of range
     */
    public static ThickTube of(Quantity<Length> bore, Quantity<Length> outer) {
        return new ThickTube(new Values(
                Kind.LENGTH.si(Objects.requireNonNull(bore, "bore")),
                Kind.LENGTH.si(Objects.requireNonNull(outer, "outer")),
                STEEL_PA,
                STEEL_POISSON));
    }

    /**
     * Returns this tube with another elastic material.
     *
     * @param youngsModulus modulus of elasticity, above 0
     * @param poissonsRatio Poisson's ratio, 0 to 0.5
     * @return the tube of that material
     */
    public ThickTube withElasticity(Quantity<Pressure> youngsModulus, double poissonsRatio) {
        Objects.requireNonNull(youngsModulus, "youngsModulus");
        return new ThickTube(new Values(values.boreM, values.outerM, Kind.PRESSURE.si(youngsModulus), poissonsRatio));
    }

    /** {@return the inner diameter} */
    public Quantity<Length> bore() {
        return Kind.LENGTH.of(values.boreM);
    }

    /** {@return the outer diameter} */
    public Quantity<Length> outer() {
        return Kind.LENGTH.of(values.outerM);
    }

    /** {@return outer over inner diameter, above 1} */
    public double diameterRatio() {
        return values.ratio();
    }

    double boreSi() {
        return values.boreM;
    }

    /**
     * Returns the stresses at the bore, where they are highest.
     *
     * @param pressure gauge pressure in the tube, 0 or more
     * @param ends ends of the tube
     * @return the stresses
     */
    public WallStress stressAtBore(Quantity<Pressure> pressure, Ends ends) {
        return stress(pressure, ends, 1);
    }

    /**
     * Returns the stresses at the outside, which strain gauges see.
     *
     * @param pressure gauge pressure in the tube, 0 or more
     * @param ends ends of the tube
     * @return the stresses
     */
    public WallStress stressAtOutside(Quantity<Pressure> pressure, Ends ends) {
        return stress(pressure, ends, values.ratio());
    }

    /**
     * Returns the stresses at a radius.
     *
     * @param pressure gauge pressure in the tube, 0 or more
     * @param ends ends of the tube
     * @param radius distance from the axis, between the radii of bore and outside
     * @return the stresses
     * @throws dev.waterjet.measure.DomainException if the radius lies outside the wall, or the pressure is negative
     */
    public WallStress stressAt(Quantity<Pressure> pressure, Ends ends, Quantity<Length> radius) {
        return stress(pressure, ends, radiusRatio(radius));
    }

    /** A radius over that of the bore. */
    double radiusRatio(Quantity<Length> radius) {
        double radiusM = Require.between(
                "radius in the wall",
                Kind.LENGTH.si(Objects.requireNonNull(radius, "radius")),
                values.boreM / 2,
                values.outerM / 2,
                Units.MILLIMETRE,
                "bore and outside");
        return Math.max(1, Math.min(values.ratio(), 2 * radiusM / values.boreM));
    }

    private WallStress stress(Quantity<Pressure> pressure, Ends ends, double radiusRatio) {
        Objects.requireNonNull(pressure, "pressure");
        Objects.requireNonNull(ends, "ends");
        double pressurePa = Require.notNegative("pressure in the tube", Kind.PRESSURE.si(pressure), Units.MEGAPASCAL);
        double ratio = values.ratio();
        double axialPa = TubeKernel.axial(pressurePa, ratio, ends);
        double boreTrescaPa = TubeKernel.equivalent(
                YieldCriterion.TRESCA, TubeKernel.hoop(pressurePa, ratio, 1), -pressurePa, axialPa);
        return new WallStress(
                Kind.PRESSURE.of(TubeKernel.hoop(pressurePa, ratio, radiusRatio)),
                Kind.PRESSURE.of(TubeKernel.radial(pressurePa, ratio, radiusRatio) + 0.0),
                Kind.PRESSURE.of(axialPa),
                VesselCautions.ofStress(boreTrescaPa));
    }

    /**
     * Returns the pressures at which the bore begins to yield and at which the whole wall has yielded. The second is that of
     * closed ends.
     *
     * @param criterion yield criterion
     * @param ends ends of the tube, for the beginning of yield
     * @param yieldStrength yield strength of the wall in tension, above 0
     * @return the pressures
     */
    public TubeLimits limits(YieldCriterion criterion, Ends ends, Quantity<Pressure> yieldStrength) {
        Objects.requireNonNull(criterion, "criterion");
        Objects.requireNonNull(ends, "ends");
        double yieldPa = yieldPa(yieldStrength);
        return new TubeLimits(
                Kind.PRESSURE.of(yieldPa * TubeKernel.firstYield(criterion, ends, values.ratio())),
                Kind.PRESSURE.of(yieldPa * TubeKernel.fullPlastic(criterion, values.ratio())),
                VesselCautions.all());
    }

    static double yieldPa(Quantity<Pressure> yieldStrength) {
        Objects.requireNonNull(yieldStrength, "yieldStrength");
        return Require.positive("yield strength of the wall", Kind.PRESSURE.si(yieldStrength), Units.MEGAPASCAL);
    }

    /**
     * Returns the relative growth of the volume in the tube per pressure: for open ends 2/<i>E</i> ((<i>k</i><sup>2</sup> +
     * 1)/(<i>k</i><sup>2</sup> - 1) + &nu;), for closed ends (2 (1 + &nu;) <i>k</i><sup>2</sup> + 3 (1 - 2 &nu;))/((<i>k</i><sup>2</sup> -
     * 1) <i>E</i>). It is 1.7e-11 1/Pa for <i>k</i> = 2.5 and steel.
     *
     * @param ends ends of the tube
     * @return the compliance
     */
    public Quantity<Compressibility> compliance(Ends ends) {
        return Kind.COMPRESSIBILITY.of(complianceSi(Objects.requireNonNull(ends, "ends")));
    }

    double complianceSi(Ends ends) {
        return TubeKernel.compliance(values.ratio(), values.modulusPa, values.poissonsRatio, ends);
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("thick tube")
                .put("bore", Kind.LENGTH, values.boreM)
                .put("outer_diameter", Kind.LENGTH, values.outerM)
                .put("modulus_of_elasticity", Kind.PRESSURE, values.modulusPa)
                .put("poissons_ratio", values.poissonsRatio)
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof ThickTube that && values.equals(that.values);
    }

    @Override
    public int hashCode() {
        return values.hashCode();
    }

    @Override
    public String toString() {
        return "tube of " + QuantityText.forPeople(Kind.LENGTH, values.boreM) + " bore, "
                + QuantityText.forPeople(Kind.LENGTH, values.outerM) + " outer diameter";
    }

    private Object writeReplace() {
        return values;
    }

    private void readObject(ObjectInputStream in) throws InvalidObjectException {
        throw new InvalidObjectException("read through its values");
    }
}

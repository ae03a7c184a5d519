package dev.waterjet.hydraulics;

import dev.waterjet.evidence.Caution;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.measure.Compressibility;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.MassFlow;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import dev.waterjet.vessel.Ends;
import dev.waterjet.vessel.ThickTube;
import dev.waterjet.water.Water;
import dev.waterjet.water.WaterState;
import java.io.InvalidObjectException;
import java.io.ObjectInputStream;
import java.io.Serializable;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Pressure;
import javax.measure.quantity.Time;
import javax.measure.quantity.Volume;
import org.apache.commons.math3.analysis.integration.IterativeLegendreGaussIntegrator;
import org.apache.commons.math3.analysis.solvers.BrentSolver;

/**
 * Attenuator: thick-walled vessel that reduces the pressure ripple of a pump by the compressibility of the water in it.
 *
 * <p>d<i>p</i>/d<i>t</i> = <i>K</i> (<i>m</i><sub>in</sub> - <i>m</i><sub>out</sub>)/(&rho; <i>V</i>), with the adiabatic bulk
 * modulus <i>K</i> = &rho; <i>w</i><sup>2</sup> of the water. An elastic wall reduces it:
 * 1/<i>K</i><sub>eff</sub> = 1/<i>K</i> + (2/<i>E</i>) ((<i>D</i><sub>o</sub><sup>2</sup> +
 * <i>D</i><sub>i</sub><sup>2</sup>)/(<i>D</i><sub>o</sub><sup>2</sup> - <i>D</i><sub>i</sub><sup>2</sup>) + &nu;).
 */
public final class Attenuator implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    private static final double ROUNDING = 1e-14;
    private static final int MAX_EVALUATIONS = 200;
    private static final int GAUSS_POINTS = 10;
    private static final double INTEGRAL_ACCURACY = 1e-9;

    private static final Caution BLOW_DOWN = Caution.danger(Message.of(
            "blow-down",
            "a blocked orifice or a closed valve keeps the pressure; before anyone opens a high-pressure part, its"
                    + " pressure is measured to be zero as the machine's manual says"));

    /** Checked content, and the serial form. */
    private record Values(double volumeM3, double wallCompliancePerPa) implements Serializable {

        private static final long serialVersionUID = 1L;

        Values {
            volumeM3 = Require.positive("volume of the attenuator", volumeM3, Units.LITRE);
            wallCompliancePerPa =
                    Require.notNegative("compliance of the wall", wallCompliancePerPa, Kind.COMPRESSIBILITY.siUnit());
        }

        private Object readResolve() {
            return new Attenuator(this);
        }
    }

    private final transient Values values;

    private Attenuator(Values values) {
        this.values = values;
    }

    /**
     * Returns a vessel with a rigid wall.
     *
     * @param volume volume of water in it, above 0
     * @return the attenuator
     */
    public static Attenuator of(Quantity<Volume> volume) {
        Objects.requireNonNull(volume, "volume");
        return new Attenuator(new Values(Kind.VOLUME.si(volume), 0));
    }

    /**
     * Returns this vessel as a tube with an elastic wall. Its closed ends are not considered.
     *
     * @param ratio outer over inner diameter, above 1
     * @param youngsModulus modulus of elasticity of the wall; about 200 GPa for steel (value from memory)
     * @param poissonsRatio Poisson's ratio of the wall, 0 to 0.5; about 0.29 for steel (value from memory)
     * @return the attenuator with that wall
     */
    public Attenuator withDiameterRatio(double ratio, Quantity<Pressure> youngsModulus, double poissonsRatio) {
        Require.above("diameter ratio of the attenuator", ratio, 1, Units.ONE, "");
        ThickTube wall =
                ThickTube.of(Kind.LENGTH.of(1), Kind.LENGTH.of(ratio)).withElasticity(youngsModulus, poissonsRatio);
        return withWall(wall, Ends.OPEN);
    }

    /**
     * Returns this vessel with the elastic wall of a tube.
     *
     * @param wall the tube; its bore is not used
     * @param ends ends of the tube
     * @return the attenuator with that wall
     */
    public Attenuator withWall(ThickTube wall, Ends ends) {
        Objects.requireNonNull(wall, "wall");
        return new Attenuator(new Values(values.volumeM3, Kind.COMPRESSIBILITY.si(wall.compliance(ends))));
    }

    /**
     * Returns this vessel with another volume and the same wall.
     *
     * @param volume volume of water in it, above 0
     * @return the attenuator of that volume
     */
    public Attenuator withVolume(Quantity<Volume> volume) {
        Objects.requireNonNull(volume, "volume");
        return new Attenuator(new Values(Kind.VOLUME.si(volume), values.wallCompliancePerPa));
    }

    /** {@return the volume of water in the vessel} */
    public Quantity<Volume> volume() {
        return Kind.VOLUME.of(values.volumeM3);
    }

    /** {@return the relative increase of the volume per pressure by the elastic wall; 0 if it is rigid} */
    public Quantity<Compressibility> wallCompliance() {
        return Kind.COMPRESSIBILITY.of(values.wallCompliancePerPa);
    }

    /**
     * Returns the bulk modulus of water and wall together.
     *
     * @param water water at the mean pressure in the vessel
     * @return the effective bulk modulus
     */
    public Quantity<Pressure> effectiveBulkModulus(WaterState water) {
        Objects.requireNonNull(water, "water");
        return Kind.PRESSURE.of(modulusPa(water));
    }

    private double modulusPa(WaterState water) {
        double waterPa = water.densitySi() * water.soundSpeedSi() * water.soundSpeedSi();
        return 1 / (1 / waterPa + values.wallCompliancePerPa);
    }

    /**
     * Returns the pressure ripple, peak to peak, while the head draws a volume that the pump does not deliver: from the pressure in
     * the vessel down to the pressure <i>p'</i> at which &rho;(<i>p'</i>) (1 + &chi; (<i>p'</i> - <i>p</i>)) = &rho; (1 - &Delta;<i>V</i>/<i>V</i>) along
     * the isentrope, with the compliance &chi; of the wall. At 400 MPa and a rigid wall 1 % of the vessel takes 48 MPa, 5 % 212 MPa.
     *
     * @param drawn volume drawn at the density in the vessel, 0 or more
     * @param water water at the mean pressure in the vessel
     * @return the pressure ripple, peak to peak
     * @throws dev.waterjet.measure.DomainException if the volume is negative, or so large that the ripple would exceed the gauge
     *     pressure itself
     */
    public Quantity<Pressure> ripple(Quantity<Volume> drawn, WaterState water) {
        Objects.requireNonNull(drawn, "drawn");
        Objects.requireNonNull(water, "water");
        double pressurePa = pressed(water);
        double drawnM3 = Require.between(
                "volume drawn",
                Kind.VOLUME.si(drawn),
                0,
                values.volumeM3 * drawnShare(water, IsentropicKernel.ATMOSPHERE_PA),
                Units.CUBIC_MILLIMETRE,
                "the ripple would exceed the pressure");
        double share = drawnM3 / values.volumeM3;
        if (share == 0) {
            return Kind.PRESSURE.of(0);
        }
        double lowPa = new BrentSolver(ROUNDING, ROUNDING * pressurePa)
                .solve(
                        MAX_EVALUATIONS,
                        lower -> drawnShare(water, lower) - share,
                        IsentropicKernel.ATMOSPHERE_PA,
                        pressurePa);
        return Kind.PRESSURE.of(pressurePa - lowPa);
    }

    /** Share of the vessel that is drawn until the pressure has fallen: 1 - rho' (1 + chi (p' - p))/rho. */
    private double drawnShare(WaterState water, double lowerPa) {
        if (lowerPa == water.pressureSi()) {
            return 0;
        }
        double densityKgPerM3 =
                Water.metastable().atEntropySi(lowerPa, water.entropySi()).densitySi();
        double wall = 1 + values.wallCompliancePerPa * (lowerPa - water.pressureSi());
        return 1 - densityKgPerM3 * wall / water.densitySi();
    }

    private static double pressed(WaterState water) {
        return Require.above(
                "absolute pressure in the attenuator",
                water.pressureSi(),
                IsentropicKernel.ATMOSPHERE_PA,
                Units.MEGAPASCAL,
                "the standard atmosphere");
    }

    /**
     * Returns this vessel in the volume that a pressure ripple requires: the inverse of {@link #ripple}.
     *
     * @param drawn volume drawn that the pump does not deliver, at the density in the vessel
     * @param ripple pressure ripple required, peak to peak, above 0 to the gauge pressure in the vessel
     * @param water water at the mean pressure in the vessel
     * @return the attenuator with that ripple
     * @throws dev.waterjet.measure.DomainException if the ripple exceeds the gauge pressure itself
     */
    public Attenuator forRipple(Quantity<Volume> drawn, Quantity<Pressure> ripple, WaterState water) {
        Objects.requireNonNull(drawn, "drawn");
        Objects.requireNonNull(ripple, "ripple");
        Objects.requireNonNull(water, "water");
        double drawnM3 = Require.positive("volume drawn", Kind.VOLUME.si(drawn), Units.CUBIC_MILLIMETRE);
        double gaugePa = pressed(water) - IsentropicKernel.ATMOSPHERE_PA;
        double ripplePa = Require.atMost(
                "pressure ripple",
                Require.positive("pressure ripple", Kind.PRESSURE.si(ripple), Units.MEGAPASCAL),
                gaugePa,
                Units.MEGAPASCAL,
                "the gauge pressure in the attenuator");
        return new Attenuator(
                new Values(drawnM3 / drawnShare(water, water.pressureSi() - ripplePa), values.wallCompliancePerPa));
    }

    /**
     * Returns the rate at which pressure rises while more water flows in than out: d<i>p</i>/d<i>t</i> = <i>m</i>/(<i>V</i>
     * (1/<i>w</i><sup>2</sup> + &rho; &chi;)). A pump of 0.05 kg/s against a closed head raises the pressure in one litre by 200 MPa
     * each second: relief valve and control must be faster.
     *
     * @param netFlow mass flow in less mass flow out, in kg/s; negative while pressure falls
     * @param water water in the vessel
     * @return the rate in Pa/s
     */
    public double pressureRateSi(Quantity<MassFlow> netFlow, WaterState water) {
        Objects.requireNonNull(netFlow, "netFlow");
        Objects.requireNonNull(water, "water");
        double storedPerPa =
                1 / (water.soundSpeedSi() * water.soundSpeedSi()) + water.densitySi() * values.wallCompliancePerPa;
        return Kind.MASS_FLOW.si(netFlow) / (values.volumeM3 * storedPerPa);
    }

    /**
     * Returns the time in which the pressure falls through an open orifice, without a pump: <i>V</i> &int; d(&rho; (1 + &chi;
     * <i>p</i>))/(<i>C</i><sub>d</sub> <i>A</i> &radic;(2 &rho;<sub>0</sub> <i>p</i>)), along the isentrope. The volume is that of the vessel at
     * rest.
     *
     * @param orifice the open orifice
     * @param from gauge pressure at the start
     * @param to gauge pressure at the end, 0 or more and not above that at the start
     * @param atRest water of the vessel relaxed to the standard atmosphere
     * @return the time, with the uncertainty of the discharge coefficient
     * @throws dev.waterjet.measure.DomainException if a pressure is out of range, or water freezes under way
     */
    public Estimate<Time> blowDownTime(
            Orifice orifice, Quantity<Pressure> from, Quantity<Pressure> to, WaterState atRest) {
        Objects.requireNonNull(atRest, "atRest");
        Objects.requireNonNull(from, "from");
        Objects.requireNonNull(orifice, "orifice");
        Objects.requireNonNull(to, "to");
        double fromPa = Require.positive("pressure at the start", Kind.PRESSURE.si(from), Units.MEGAPASCAL);
        double toPa = Require.between(
                "pressure at the end", Kind.PRESSURE.si(to), 0, fromPa, Units.MEGAPASCAL, "the pressure at the start");
        double entropy = atRest.entropySi();
        double perRoot = orifice.dischargeCoefficientSi()
                * WaterJetKernel.area(orifice.boreSi())
                * Math.sqrt(2 * atRest.densitySi());
        // over the root of the pressure the integrand is smooth down to zero
        double seconds = toPa == fromPa
                ? 0
                : new IterativeLegendreGaussIntegrator(GAUSS_POINTS, INTEGRAL_ACCURACY, INTEGRAL_ACCURACY)
                        .integrate(
                                MAX_EVALUATIONS * GAUSS_POINTS,
                                root -> 2 * storedPerPa(root * root, entropy),
                                Math.sqrt(toPa),
                                Math.sqrt(fromPa));
        Estimate<Dimensionless> coefficient = orifice.dischargeCoefficient();
        double time = values.volumeM3 * seconds / perRoot;
        return Estimate.of(Kind.TIME, time, time * coefficient.standardUncertaintySi() / coefficient.si())
                .with(List.of(BLOW_DOWN));
    }

    /** Mass that a vessel of unit volume at rest takes per pressure, at a gauge pressure. */
    private double storedPerPa(double gaugePa, double entropyJPerKgK) {
        WaterState water = Water.metastable().atEntropySi(gaugePa + IsentropicKernel.ATMOSPHERE_PA, entropyJPerKgK);
        return (1 + values.wallCompliancePerPa * gaugePa) / (water.soundSpeedSi() * water.soundSpeedSi())
                + water.densitySi() * values.wallCompliancePerPa;
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("attenuator")
                .put("volume", Kind.VOLUME, values.volumeM3)
                .put("wall_compliance", Kind.COMPRESSIBILITY, values.wallCompliancePerPa)
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Attenuator that && values.equals(that.values);
    }

    @Override
    public int hashCode() {
        return values.hashCode();
    }

    @Override
    public String toString() {
        return "attenuator of " + QuantityText.forPeople(Kind.VOLUME, volume());
    }

    private Object writeReplace() {
        return values;
    }

    private void readObject(ObjectInputStream in) throws InvalidObjectException {
        throw new InvalidObjectException("read through its values");
    }
}

package dev.waterjet.hydraulics;

import dev.waterjet.measure.Density;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.MassFlow;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import dev.waterjet.measure.VolumeFlow;
import dev.waterjet.water.Water;
import java.io.Serializable;
import java.util.Map;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Force;
import javax.measure.quantity.Power;
import javax.measure.quantity.Pressure;
import javax.measure.quantity.Speed;
import javax.measure.quantity.Temperature;

/**
 * The jet of plain water behind an orifice: its speed, flow, power and push.
 *
 * <p>Volume flow is told at the density of water at rest in the atmosphere, as a pump's intake sees it.
 */
public final class WaterJet implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    private static final double USUAL_TEMPERATURE_K = 293.15;

    /** Density of water at 20 C and atmospheric pressure, in kg/m3 (IAPWS-95 gives 998.207). */
    private static final double DENSITY_AT_20_C = 998.207;

    private static final double HIGHEST_PRESSURE_PA = 1000e6;

    private final Orifice orifice;
    private final double pressurePa;
    private final double temperatureK;
    private final double densityKgPerM3;
    private final JetSpeedModel law;
    private final double speedMPerS;

    private WaterJet(Orifice orifice, double pressurePa, double temperatureK, double densityKgPerM3, JetSpeedModel law) {
        this.orifice = Objects.requireNonNull(orifice, "orifice");
        this.pressurePa = Require.positive("pressure at the orifice", pressurePa, Units.MEGAPASCAL);
        Require.atMost("pressure at the orifice", pressurePa, HIGHEST_PRESSURE_PA, Units.MEGAPASCAL, "");
        this.densityKgPerM3 = Require.positive("density of water", densityKgPerM3, Units.KILOGRAM_PER_CUBIC_METRE);
        this.temperatureK = temperatureK;
        this.law = Objects.requireNonNull(law, "law");
        this.speedMPerS = law.speed(pressurePa, temperatureK, densityKgPerM3);
    }

    /**
     * The jet of an orifice fed with water of 20 C, its speed by the equation of state.
     *
     * @param orifice the orifice
     * @param pressure gauge pressure at the orifice, above 0 to 1000 MPa
     * @return the jet
     * @throws dev.waterjet.measure.DomainException if the pressure is out of range, or if water freezes at it, as it does
     *     at 20 C above 890 MPa
     */
    public static WaterJet of(Orifice orifice, Quantity<Pressure> pressure) {
        return new WaterJet(
                orifice, Kind.PRESSURE.si(pressure), USUAL_TEMPERATURE_K, DENSITY_AT_20_C, JetSpeedModel.ISENTROPIC);
    }

    /**
     * This jet with its speed by another law.
     *
     * @param law how speed follows from pressure
     * @return the jet by that law
     */
    public WaterJet withSpeedModel(JetSpeedModel law) {
        return new WaterJet(orifice, pressurePa, temperatureK, densityKgPerM3, law);
    }

    /**
     * This jet at another pressure.
     *
     * @param pressure gauge pressure at the orifice, above 0 to 1000 MPa
     * @return the jet at that pressure
     */
    public WaterJet withPressure(Quantity<Pressure> pressure) {
        return new WaterJet(orifice, Kind.PRESSURE.si(pressure), temperatureK, densityKgPerM3, law);
    }

    /**
     * This jet fed with warmer or colder water. The density at rest becomes that of water at this temperature and the
     * standard atmosphere.
     *
     * @param temperature temperature before the orifice
     * @return the jet of that water
     * @throws dev.waterjet.measure.DomainException if water is not liquid there, or would boil in the jet
     */
    public WaterJet withTemperature(Quantity<Temperature> temperature) {
        double kelvin = Kind.TEMPERATURE.si(temperature);
        double atRest =
                Water.metastable().atSi(IsentropicKernel.ATMOSPHERE_PA, kelvin).densitySi();
        return new WaterJet(orifice, pressurePa, kelvin, atRest, law);
    }

    /**
     * This jet from another orifice.
     *
     * @param orifice the orifice
     * @return the jet from that orifice
     */
    public WaterJet withOrifice(Orifice orifice) {
        return new WaterJet(orifice, pressurePa, temperatureK, densityKgPerM3, law);
    }

    /**
     * This jet of water with another density at rest, which flow, power and the incompressible and Tait-type speeds follow.
     *
     * @param density density at atmospheric pressure
     * @return the jet of that water
     */
    public WaterJet withWaterDensity(Quantity<Density> density) {
        return new WaterJet(orifice, pressurePa, temperatureK, Kind.DENSITY.si(density), law);
    }

    /**
     * The orifice that makes the jet.
     *
     * @return the orifice
     */
    public Orifice orifice() {
        return orifice;
    }

    /**
     * Pressure at the orifice.
     *
     * @return gauge pressure, in Pa
     */
    public Quantity<Pressure> pressure() {
        return Kind.PRESSURE.of(pressurePa);
    }

    /**
     * Pressure at the orifice as a number.
     *
     * @return gauge pressure in Pa
     */
    public double pressureSi() {
        return pressurePa;
    }

    /**
     * Temperature of the water before the orifice.
     *
     * @return the temperature, in K
     */
    public Quantity<Temperature> temperature() {
        return Kind.TEMPERATURE.of(temperatureK);
    }

    /**
     * Speed of the jet, without loss in the orifice.
     *
     * @return the speed, in m/s
     */
    public Quantity<Speed> speed() {
        return Kind.SPEED.of(speedSi());
    }

    /**
     * Speed of the jet as a number.
     *
     * @return the speed in m/s
     */
    public double speedSi() {
        return speedMPerS;
    }

    /**
     * Speed that this jet would have at another pressure, for loops that make no object per point.
     *
     * @param pressurePa gauge pressure at the orifice in Pa, above 0; the isentropic law refuses pressures at which water
     *     is ice, and pressures above 1000 MPa
     * @return the speed in m/s
     */
    public double speedAtSi(double pressurePa) {
        return law.speed(pressurePa, temperatureK, densityKgPerM3);
    }

    /**
     * Water used, by volume: {@code q = Cd A sqrt(2 p / rho)}.
     *
     * @return the volume flow at atmospheric density, in m3/s
     */
    public Quantity<VolumeFlow> volumeFlow() {
        return Kind.VOLUME_FLOW.of(volumeFlowSi());
    }

    /**
     * Water used, by volume, as a number.
     *
     * @return the volume flow at atmospheric density, in m3/s
     */
    public double volumeFlowSi() {
        return volumeFlowAtSi(pressurePa, orifice.boreSi());
    }

    /**
     * Water that this jet would use at another pressure from another bore, for loops that make no object per point.
     *
     * @param pressurePa gauge pressure at the orifice in Pa; not checked
     * @param boreM bore of the orifice in m; not checked
     * @return the volume flow at atmospheric density, in m3/s
     */
    public double volumeFlowAtSi(double pressurePa, double boreM) {
        return WaterJetKernel.volumeFlow(boreM, orifice.dischargeCoefficientSi(), pressurePa, densityKgPerM3);
    }

    /**
     * Water used, by mass.
     *
     * @return the mass flow, in kg/s
     */
    public Quantity<MassFlow> massFlow() {
        return Kind.MASS_FLOW.of(massFlowSi());
    }

    /**
     * Water used, by mass, as a number.
     *
     * @return the mass flow in kg/s
     */
    public double massFlowSi() {
        return massFlowAtSi(pressurePa, orifice.boreSi());
    }

    /**
     * Water that this jet would use, by mass, at another pressure from another bore.
     *
     * @param pressurePa gauge pressure at the orifice in Pa; not checked
     * @param boreM bore of the orifice in m; not checked
     * @return the mass flow in kg/s
     */
    public double massFlowAtSi(double pressurePa, double boreM) {
        return densityKgPerM3 * volumeFlowAtSi(pressurePa, boreM);
    }

    /**
     * Hydraulic power that the pump puts into the water, {@code p q}.
     *
     * @return the power, in W
     */
    public Quantity<Power> ratedHydraulicPower() {
        return Kind.POWER.of(pressurePa * volumeFlowSi());
    }

    /**
     * Power that flies in the jet, {@code m v^2 / 2}. What is missing against the hydraulic power is elastic and thermal.
     *
     * @return the power, in W
     */
    public Quantity<Power> kineticPower() {
        double speed = speedSi();
        return Kind.POWER.of(massFlowSi() * speed * speed / 2);
    }

    /**
     * Push of the jet on the head, {@code m v}.
     *
     * @return the force, in N
     */
    public Quantity<Force> reactionForce() {
        return Kind.FORCE.of(massFlowSi() * speedSi());
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("water jet")
                .put("orifice", orifice)
                .put("pressure", Kind.PRESSURE, pressurePa)
                .put("temperature", Kind.TEMPERATURE, temperatureK)
                .put("density", Kind.DENSITY, densityKgPerM3)
                .put("speed_model", law)
                .put("speed", Kind.SPEED, speedSi())
                .put("volume_flow", Kind.VOLUME_FLOW, volumeFlowSi())
                .put("mass_flow", Kind.MASS_FLOW, massFlowSi())
                .put("rated_hydraulic_power", Kind.POWER, Kind.POWER.si(ratedHydraulicPower()))
                .put("kinetic_power", Kind.POWER, Kind.POWER.si(kineticPower()))
                .put("reaction_force", Kind.FORCE, Kind.FORCE.si(reactionForce()))
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof WaterJet that
                && orifice.equals(that.orifice)
                && pressurePa == that.pressurePa
                && temperatureK == that.temperatureK
                && densityKgPerM3 == that.densityKgPerM3
                && law == that.law;
    }

    @Override
    public int hashCode() {
        return Objects.hash(orifice, pressurePa, temperatureK, densityKgPerM3, law);
    }

    @Override
    public String toString() {
        return "water jet of " + QuantityText.print(Kind.PRESSURE, pressure(), Units.MEGAPASCAL, 4) + " from a "
                + orifice;
    }
}

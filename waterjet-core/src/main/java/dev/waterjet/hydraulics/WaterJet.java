package dev.waterjet.hydraulics;

import dev.waterjet.evidence.Caution;
import dev.waterjet.measure.Density;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.DomainException;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.MassFlow;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import dev.waterjet.measure.VolumeFlow;
import dev.waterjet.water.Water;
import dev.waterjet.water.WaterState;
import java.io.InvalidObjectException;
import java.io.ObjectInputStream;
import java.io.Serializable;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Force;
import javax.measure.quantity.Power;
import javax.measure.quantity.Pressure;
import javax.measure.quantity.Speed;
import javax.measure.quantity.Temperature;

/**
 * Pure waterjet of an orifice: speed, flow, power and reaction force.
 *
 * <pre>{@code
 * WaterJet jet = WaterJet.of(Orifice.sapphire(millimetres(0.33)), megapascals(380));
 * Quantity<Speed> speed = jet.speed(); // 843.5 m/s
 * }</pre>
 *
 * <p>Volume flow is stated at ambient density, the density of the water at rest in the atmosphere.
 */
public final class WaterJet implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    private static final double DEFAULT_TEMPERATURE_K = 293.15;

    /** Density of water at 20 &deg;C and atmospheric pressure, in kg/m3 (IAPWS-95: 998.207). */
    private static final double DENSITY_AT_20_C = 998.207;

    private static final double MAX_PRESSURE_PA = 1000e6;

    /** Boiling temperature at atmospheric pressure (IAPWS-95: 373.124 K). */
    private static final double BOILING_K = 373.124;

    private static final Caution FLASHES = Caution.warning(Message.of(
            "jet-flashes",
            "the jet leaves the orifice above the boiling temperature; a part of it evaporates at once, and its speed"
                    + " and coherence are not those of this model"));

    /** Checked content, and the serial form. */
    private record Values(
            Orifice orifice, double pressurePa, double temperatureK, double densityKgPerM3, JetSpeedModel model)
            implements Serializable {

        private static final long serialVersionUID = 1L;

        Values {
            Objects.requireNonNull(orifice, "orifice");
            Require.positive("pressure at the orifice", pressurePa, Units.MEGAPASCAL);
            pressurePa = Require.atMost(
                    "pressure at the orifice",
                    pressurePa,
                    model == JetSpeedModel.ISENTROPIC
                            ? MAX_PRESSURE_PA - IsentropicKernel.ATMOSPHERE_PA
                            : MAX_PRESSURE_PA,
                    Units.MEGAPASCAL,
                    "");
            temperatureK = Require.positive("temperature of water", temperatureK, Units.KELVIN);
            densityKgPerM3 = Require.positive("density of water", densityKgPerM3, Units.KILOGRAM_PER_CUBIC_METRE);
            Objects.requireNonNull(model, "model");
        }

        private Object readResolve() throws InvalidObjectException {
            try {
                return new WaterJet(this);
            } catch (DomainException e) {
                throw (InvalidObjectException) new InvalidObjectException(e.getMessage()).initCause(e);
            }
        }
    }

    private final transient Values values;
    private final transient double speedMPerS;

    private WaterJet(Values values) {
        this.values = values;
        this.speedMPerS = values.model.speed(values.pressurePa, values.temperatureK, values.densityKgPerM3);
    }

    private static double ambientDensity(double temperatureK) {
        return Water.metastable()
                .atSi(IsentropicKernel.ATMOSPHERE_PA, temperatureK)
                .densitySi();
    }

    /**
     * Returns the jet of an orifice from water of 20 &deg;C, with the isentropic speed.
     *
     * @param orifice the orifice
     * @param pressure gauge pressure at the orifice, above 0 to 999.8 MPa
     * @return the jet
     * @throws DomainException if the pressure is out of range, or water freezes at it, as it does at 20 &deg;C above 890 MPa
     */
    public static WaterJet of(Orifice orifice, Quantity<Pressure> pressure) {
        Objects.requireNonNull(pressure, "pressure");
        return new WaterJet(new Values(
                orifice, Kind.PRESSURE.si(pressure), DEFAULT_TEMPERATURE_K, DENSITY_AT_20_C, JetSpeedModel.ISENTROPIC));
    }

    /**
     * Returns the jet of an orifice from water of a temperature, with the isentropic speed.
     *
     * @param orifice the orifice
     * @param pressure gauge pressure at the orifice, above 0 to 999.8 MPa
     * @param temperature temperature upstream of the orifice
     * @return the jet
     * @throws DomainException if the pressure is out of range, or water is not liquid upstream of the orifice
     */
    public static WaterJet of(Orifice orifice, Quantity<Pressure> pressure, Quantity<Temperature> temperature) {
        Objects.requireNonNull(pressure, "pressure");
        Objects.requireNonNull(temperature, "temperature");
        double temperatureK = Kind.TEMPERATURE.si(temperature);
        return new WaterJet(new Values(
                orifice,
                Kind.PRESSURE.si(pressure),
                temperatureK,
                ambientDensity(temperatureK),
                JetSpeedModel.ISENTROPIC));
    }

    /**
     * Returns this jet with another jet speed model.
     *
     * @param model jet speed model
     * @return the jet with that model
     */
    public WaterJet withSpeedModel(JetSpeedModel model) {
        return new WaterJet(
                new Values(values.orifice, values.pressurePa, values.temperatureK, values.densityKgPerM3, model));
    }

    /**
     * Returns this jet at another pressure.
     *
     * @param pressure gauge pressure at the orifice, above 0 to 999.8 MPa
     * @return the jet at that pressure
     * @throws DomainException if the pressure is out of range, or water is not liquid upstream of the orifice
     */
    public WaterJet withPressure(Quantity<Pressure> pressure) {
        Objects.requireNonNull(pressure, "pressure");
        return new WaterJet(new Values(
                values.orifice, Kind.PRESSURE.si(pressure), values.temperatureK, values.densityKgPerM3, values.model));
    }

    /**
     * Returns this jet from water of another temperature. The ambient density becomes that of water at this temperature and
     * the standard atmosphere.
     *
     * @param temperature temperature upstream of the orifice
     * @return the jet of that water
     * @throws DomainException if water is not liquid upstream of the orifice
     */
    public WaterJet withTemperature(Quantity<Temperature> temperature) {
        Objects.requireNonNull(temperature, "temperature");
        double temperatureK = Kind.TEMPERATURE.si(temperature);
        return new WaterJet(new Values(
                values.orifice, values.pressurePa, temperatureK, ambientDensity(temperatureK), values.model));
    }

    /**
     * Returns this jet from another orifice.
     *
     * @param orifice the orifice
     * @return the jet from that orifice
     */
    public WaterJet withOrifice(Orifice orifice) {
        return new WaterJet(
                new Values(orifice, values.pressurePa, values.temperatureK, values.densityKgPerM3, values.model));
    }

    /**
     * Returns this jet from water of another ambient density, which determines flow, power and the incompressible and
     * Tait-type speeds.
     *
     * @param density density at atmospheric pressure
     * @return the jet of that water
     */
    public WaterJet withWaterDensity(Quantity<Density> density) {
        Objects.requireNonNull(density, "density");
        return new WaterJet(new Values(
                values.orifice, values.pressurePa, values.temperatureK, Kind.DENSITY.si(density), values.model));
    }

    /** {@return the orifice} */
    public Orifice orifice() {
        return values.orifice;
    }

    /** {@return the gauge pressure at the orifice} */
    public Quantity<Pressure> pressure() {
        return Kind.PRESSURE.of(values.pressurePa);
    }

    /** {@return the gauge pressure at the orifice, in Pa} */
    public double pressureSi() {
        return values.pressurePa;
    }

    /** {@return the temperature of the water upstream of the orifice} */
    public Quantity<Temperature> temperature() {
        return Kind.TEMPERATURE.of(values.temperatureK);
    }

    /** {@return the jet speed, without loss in the orifice} */
    public Quantity<Speed> speed() {
        return Kind.SPEED.of(speedMPerS);
    }

    /** {@return the jet speed, in m/s} */
    public double speedSi() {
        return speedMPerS;
    }

    /**
     * Returns the speed of this jet at another pressure, for loops without an object per point.
     *
     * @param pressurePa gauge pressure at the orifice in Pa, above 0; the isentropic model rejects pressures at which water
     *     is ice, and pressures above 1000 MPa
     * @return the jet speed, in m/s
     */
    public double speedAtSi(double pressurePa) {
        return pressurePa == values.pressurePa
                ? speedMPerS
                : values.model.speed(pressurePa, values.temperatureK, values.densityKgPerM3);
    }

    /**
     * {@return the water flow rate by volume at ambient density, <i>Q</i> = <i>C</i><sub>d</sub> <i>A</i> &radic;(2
     * <i>p</i>/&rho;)}
     */
    public Quantity<VolumeFlow> volumeFlow() {
        return Kind.VOLUME_FLOW.of(volumeFlowSi());
    }

    /** {@return the water flow rate by volume at ambient density, in m<sup>3</sup>/s} */
    public double volumeFlowSi() {
        return volumeFlowAtSi(values.pressurePa, values.orifice.boreSi());
    }

    /**
     * Returns the water flow rate of this jet at another pressure and bore, for loops without an object per point.
     *
     * @param pressurePa gauge pressure at the orifice in Pa; not checked
     * @param boreM bore of the orifice in m; not checked
     * @return the volume flow at ambient density, in m<sup>3</sup>/s
     */
    public double volumeFlowAtSi(double pressurePa, double boreM) {
        return WaterJetKernel.volumeFlow(
                boreM, values.orifice.dischargeCoefficientSi(), pressurePa, values.densityKgPerM3);
    }

    /** {@return the water flow rate by mass} */
    public Quantity<MassFlow> massFlow() {
        return Kind.MASS_FLOW.of(massFlowSi());
    }

    /** {@return the water flow rate by mass, in kg/s} */
    public double massFlowSi() {
        return massFlowAtSi(values.pressurePa, values.orifice.boreSi());
    }

    /**
     * Returns the water flow rate of this jet by mass at another pressure and bore.
     *
     * @param pressurePa gauge pressure at the orifice in Pa; not checked
     * @param boreM bore of the orifice in m; not checked
     * @return the mass flow, in kg/s
     */
    public double massFlowAtSi(double pressurePa, double boreM) {
        return values.densityKgPerM3 * volumeFlowAtSi(pressurePa, boreM);
    }

    /**
     * Returns the cautions of this jet.
     *
     * @return {@code jet-flashes} if it leaves the orifice hotter than it boils at ambient pressure; else empty
     */
    public List<Caution> cautions() {
        return values.temperatureK > BOILING_K && exitK() > BOILING_K ? List.of(FLASHES) : List.of();
    }

    private double exitK() {
        WaterState supply =
                Water.stable().atSi(values.pressurePa + IsentropicKernel.ATMOSPHERE_PA, values.temperatureK);
        return IsentropicJet.from(supply).exit().temperatureSi();
    }

    /** {@return flow, power and force with the standard uncertainty of the discharge coefficient} */
    public JetEstimates estimates() {
        return JetEstimates.of(this);
    }

    /**
     * Returns the rated hydraulic power, <i>p Q</i> with the volume flow at ambient density. The trade rates pumps by it. It
     * exceeds the work that the pump puts into the water, see {@link #pumpWork()}: by 7 % at 400 MPa.
     *
     * @return the power
     */
    public Quantity<Power> ratedHydraulicPower() {
        return Kind.POWER.of(values.pressurePa * volumeFlowSi());
    }

    /**
     * Returns the pump work: the power of a lossless pump that draws this water at ambient pressure and its temperature.
     *
     * @return the isentropic work per time
     * @throws DomainException if water freezes at the outlet of the pump
     */
    public Quantity<Power> pumpWork() {
        return Compression.isentropic(
                        Water.stable().atSi(IsentropicKernel.ATMOSPHERE_PA, values.temperatureK),
                        Kind.PRESSURE.of(values.pressurePa + IsentropicKernel.ATMOSPHERE_PA))
                .power(massFlow());
    }

    /** {@return the kinetic power of the jet, <i>m v</i><sup>2</sup>/2} */
    public Quantity<Power> kineticPower() {
        return Kind.POWER.of(massFlowSi() * speedMPerS * speedMPerS / 2);
    }

    /** {@return the reaction force of the jet on the head, <i>m v</i>} */
    public Quantity<Force> reactionForce() {
        return Kind.FORCE.of(massFlowSi() * speedMPerS);
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("water jet")
                .put("orifice", values.orifice)
                .put("pressure", Kind.PRESSURE, values.pressurePa)
                .put("temperature", Kind.TEMPERATURE, values.temperatureK)
                .put("density", Kind.DENSITY, values.densityKgPerM3)
                .put("speed_model", values.model)
                .put("speed", Kind.SPEED, speedMPerS)
                .put("volume_flow", Kind.VOLUME_FLOW, volumeFlowSi())
                .put("mass_flow", Kind.MASS_FLOW, massFlowSi())
                .put("rated_hydraulic_power", Kind.POWER, Kind.POWER.si(ratedHydraulicPower()))
                .put("kinetic_power", Kind.POWER, Kind.POWER.si(kineticPower()))
                .put("reaction_force", Kind.FORCE, Kind.FORCE.si(reactionForce()))
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof WaterJet that && values.equals(that.values);
    }

    @Override
    public int hashCode() {
        return values.hashCode();
    }

    @Override
    public String toString() {
        return "water jet at " + QuantityText.forPeople(Kind.PRESSURE, pressure()) + ", " + values.orifice;
    }

    private Object writeReplace() {
        return values;
    }

    private void readObject(ObjectInputStream in) throws InvalidObjectException {
        throw new InvalidObjectException("read through its values");
    }
}

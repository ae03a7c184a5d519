package dev.waterjet.hydraulics;

import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import dev.waterjet.measure.VolumeFlow;
import dev.waterjet.water.WaterState;
import java.io.InvalidObjectException;
import java.io.ObjectInputStream;
import java.io.Serializable;
import java.util.Map;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Power;
import javax.measure.quantity.Pressure;

/**
 * Setting of a pump: the pressure that it holds up to a maximum flow.
 *
 * <pre>{@code
 * PumpSetting pump = PumpSetting.ofPower(kilowatts(22), megapascals(380));
 * Orifice largest = pump.largestOrifice(Orifice.sapphire(millimetres(0.33)), 1);
 * }</pre>
 */
public final class PumpSetting implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    private static final double MAX_PRESSURE_PA = 999e6;

    /** Checked content, and the serial form. */
    private record Values(double pressurePa, double maximumFlowM3PerS) implements Serializable {

        private static final long serialVersionUID = 1L;

        Values {
            Require.positive("pressure set at the pump", pressurePa, Units.MEGAPASCAL);
            pressurePa = Require.atMost("pressure set at the pump", pressurePa, MAX_PRESSURE_PA, Units.MEGAPASCAL, "");
            maximumFlowM3PerS = Require.positive("maximum flow of the pump", maximumFlowM3PerS, Units.LITRE_PER_MINUTE);
        }

        private Object readResolve() {
            return new PumpSetting(this);
        }
    }

    private final transient Values values;

    private PumpSetting(Values values) {
        this.values = values;
    }

    /**
     * Returns a pump by its pressure and its maximum flow.
     *
     * @param pressure gauge pressure that is set, above 0 to 999 MPa
     * @param maximumFlow maximum flow at ambient density, above 0
     * @return the setting
     */
    public static PumpSetting of(Quantity<Pressure> pressure, Quantity<VolumeFlow> maximumFlow) {
        Objects.requireNonNull(maximumFlow, "maximumFlow");
        Objects.requireNonNull(pressure, "pressure");
        return new PumpSetting(new Values(Kind.PRESSURE.si(pressure), Kind.VOLUME_FLOW.si(maximumFlow)));
    }

    /**
     * Returns a pump by its rated hydraulic power, as catalogues give it. The work on the water is less, see {@link #ofPumpWork}.
     *
     * @param ratedHydraulicPower gauge pressure times maximum flow at ambient density, above 0
     * @param pressure gauge pressure that is set, above 0 to 999 MPa
     * @return the setting
     * @throws dev.waterjet.measure.DomainException if an argument is out of range
     */
    public static PumpSetting ofPower(Quantity<Power> ratedHydraulicPower, Quantity<Pressure> pressure) {
        Objects.requireNonNull(pressure, "pressure");
        Objects.requireNonNull(ratedHydraulicPower, "ratedHydraulicPower");
        double powerW = Require.positive(
                "rated hydraulic power of the pump", Kind.POWER.si(ratedHydraulicPower), Units.KILOWATT);
        double pressurePa = Require.positive("pressure set at the pump", Kind.PRESSURE.si(pressure), Units.MEGAPASCAL);
        return new PumpSetting(new Values(pressurePa, powerW / pressurePa));
    }

    /**
     * Returns a pump by the power that it puts into the water without loss: motor power times the overall efficiency of {@link
     * Compression#motorPower}. At 400 MPa it delivers 7 % more water than a pump of this rated hydraulic power.
     *
     * @param pumpWork isentropic power, above 0
     * @param compression compression from the water at rest to the pressure that is set
     * @return the setting
     * @throws dev.waterjet.measure.DomainException if the power is not above 0
     */
    public static PumpSetting ofPumpWork(Quantity<Power> pumpWork, Compression compression) {
        Objects.requireNonNull(compression, "compression");
        Objects.requireNonNull(pumpWork, "pumpWork");
        double powerW = Require.positive("pump work", Kind.POWER.si(pumpWork), Units.KILOWATT);
        WaterState inlet = compression.inlet();
        return new PumpSetting(new Values(
                compression.outlet().pressureSi() - inlet.pressureSi(),
                powerW / (Kind.SPECIFIC_ENERGY.si(compression.isentropicWork()) * inlet.densitySi())));
    }

    /** {@return the gauge pressure that is set} */
    public Quantity<Pressure> pressure() {
        return Kind.PRESSURE.of(values.pressurePa);
    }

    /** {@return the maximum flow at ambient density} */
    public Quantity<VolumeFlow> maximumFlow() {
        return Kind.VOLUME_FLOW.of(values.maximumFlowM3PerS);
    }

    /** {@return the rated hydraulic power: gauge pressure times maximum flow at ambient density} */
    public Quantity<Power> ratedHydraulicPower() {
        return Kind.POWER.of(values.pressurePa * values.maximumFlowM3PerS);
    }

    double pressureSi() {
        return values.pressurePa;
    }

    double maximumFlowSi() {
        return values.maximumFlowM3PerS;
    }

    /**
     * Returns the largest orifice that the pump can feed at its pressure if a number of equal heads share its flow.
     *
     * @param like orifice whose material and discharge coefficient the result has
     * @param heads number of heads in operation, 1 or more
     * @return the largest orifice
     * @throws dev.waterjet.measure.DomainException if there is no head, or the bore would be above 5 mm
     */
    public Orifice largestOrifice(Orifice like, int heads) {
        Objects.requireNonNull(like, "like");
        // flow goes with the square of the bore
        return like.withBore(Kind.LENGTH.of(like.boreSi() / Math.sqrt(share(like, heads))));
    }

    /**
     * Returns the number of equal heads that the pump can feed at its pressure.
     *
     * @param orifice orifice of each head
     * @return the number of heads, 0 if the pump cannot feed one
     */
    public int headsFed(Orifice orifice) {
        return (int) Math.min(Integer.MAX_VALUE, Math.floor(values.maximumFlowM3PerS / flowM3PerS(orifice)));
    }

    /**
     * Returns the share of the maximum flow that a number of equal heads takes at the pressure of the pump.
     *
     * @param orifice orifice of each head
     * @param heads number of heads in operation, 1 or more
     * @return the share: 1 is the maximum flow, more cannot be fed
     * @throws dev.waterjet.measure.DomainException if there is no head
     */
    public double share(Orifice orifice, int heads) {
        Require.atLeast("number of heads", heads, 1, Units.ONE, "");
        return flowM3PerS(orifice) * heads / values.maximumFlowM3PerS;
    }

    private double flowM3PerS(Orifice orifice) {
        return WaterJet.of(orifice, pressure()).volumeFlowSi();
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("pump setting")
                .put("pressure", Kind.PRESSURE, values.pressurePa)
                .put("maximum_flow", Kind.VOLUME_FLOW, values.maximumFlowM3PerS)
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof PumpSetting that && values.equals(that.values);
    }

    @Override
    public int hashCode() {
        return values.hashCode();
    }

    @Override
    public String toString() {
        return "pump at " + QuantityText.forPeople(Kind.PRESSURE, pressure()) + ", maximum flow "
                + QuantityText.forPeople(Kind.VOLUME_FLOW, maximumFlow());
    }

    private Object writeReplace() {
        return values;
    }

    private void readObject(ObjectInputStream in) throws InvalidObjectException {
        throw new InvalidObjectException("read through its values");
    }
}

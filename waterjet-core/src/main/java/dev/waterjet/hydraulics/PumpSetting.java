package dev.waterjet.hydraulics;

import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import dev.waterjet.measure.VolumeFlow;
import java.io.Serializable;
import java.util.Map;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Power;
import javax.measure.quantity.Pressure;

/** A pump as the line sees it: it holds the pressure that is set, until it is asked for more flow than it has. */
public final class PumpSetting implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    private final double pressurePa;
    private final double maximumFlowM3PerS;

    private PumpSetting(double pressurePa, double maximumFlowM3PerS) {
        this.pressurePa = Require.positive("pressure set at the pump", pressurePa, Units.MEGAPASCAL);
        Require.atMost("pressure set at the pump", pressurePa, 999e6, Units.MEGAPASCAL, "");
        this.maximumFlowM3PerS =
                Require.positive("maximum flow of the pump", maximumFlowM3PerS, Units.LITRE_PER_MINUTE);
    }

    /**
     * A pump by its pressure and its maximum flow.
     *
     * @param pressure gauge pressure that is set, above 0
     * @param maximumFlow maximum flow, told at the intake
     * @return the setting
     */
    public static PumpSetting of(Quantity<Pressure> pressure, Quantity<VolumeFlow> maximumFlow) {
        return new PumpSetting(Kind.PRESSURE.si(pressure), Kind.VOLUME_FLOW.si(maximumFlow));
    }

    /**
     * Returns a pump by its rated hydraulic power, which is the power of the motor times the efficiency of the pump.
     *
     * @param ratedHydraulicPower gauge pressure times maximum flow at the intake, above 0
     * @param pressure gauge pressure that is set, above 0
     * @return the setting
     * @throws dev.waterjet.measure.DomainException if an argument is not above 0, or the pressure above 999 MPa
     */
    public static PumpSetting ofPower(Quantity<Power> ratedHydraulicPower, Quantity<Pressure> pressure) {
        double powerW = Require.positive("hydraulic power of the pump", Kind.POWER.si(ratedHydraulicPower), Units.KILOWATT);
        double pressurePa = Require.positive("pressure set at the pump", Kind.PRESSURE.si(pressure), Units.MEGAPASCAL);
        return new PumpSetting(pressurePa, powerW / pressurePa);
    }

    /**
     * Returns the largest orifice that the pump can feed at its pressure, when a number of equal heads share its flow.
     *
     * @param like an orifice whose jewel and discharge coefficient the answer has
     * @param heads number of heads that cut at once, 1 or more
     * @return the largest orifice
     * @throws dev.waterjet.measure.DomainException if there is no head, or the bore would be above 5 mm
     */
    public Orifice largestOrifice(Orifice like, int heads) {
        // flow goes with the square of the bore
        return like.withBore(Kind.LENGTH.of(like.boreSi() / Math.sqrt(share(like, heads))));
    }

    /**
     * Returns the number of heads that the pump can feed at its pressure.
     *
     * @param orifice orifice of each head
     * @return the number of heads, 0 if not even one
     */
    public int headsFed(Orifice orifice) {
        return (int) Math.min(Integer.MAX_VALUE, Math.floor(maximumFlowM3PerS / flowOf(orifice)));
    }

    /**
     * Returns the share of the maximum flow that a number of heads takes at the pressure of the pump.
     *
     * @param orifice orifice of each head
     * @param heads number of heads that cut at once, 1 or more
     * @return the share: 1 is the whole flow, more cannot be fed
     * @throws dev.waterjet.measure.DomainException if there is no head
     */
    public double share(Orifice orifice, int heads) {
        Require.atLeast("number of heads", heads, 1, Units.ONE, "");
        return flowOf(orifice) * heads / maximumFlowM3PerS;
    }

    private double flowOf(Orifice orifice) {
        return WaterJet.of(orifice, Kind.PRESSURE.of(pressurePa)).volumeFlowSi();
    }

    /**
     * Returns the rated hydraulic power: gauge pressure times maximum flow at the intake.
     *
     * @return the power, in W
     */
    public Quantity<Power> ratedHydraulicPower() {
        return Kind.POWER.of(pressurePa * maximumFlowM3PerS);
    }

    /**
     * The pressure that is set.
     *
     * @return gauge pressure, in Pa
     */
    public Quantity<Pressure> pressure() {
        return Kind.PRESSURE.of(pressurePa);
    }

    /**
     * The maximum flow.
     *
     * @return the volume flow at the intake, in m3/s
     */
    public Quantity<VolumeFlow> maximumFlow() {
        return Kind.VOLUME_FLOW.of(maximumFlowM3PerS);
    }

    double pressureSi() {
        return pressurePa;
    }

    double maximumFlowSi() {
        return maximumFlowM3PerS;
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("pump setting")
                .put("pressure", Kind.PRESSURE, pressurePa)
                .put("maximum_flow", Kind.VOLUME_FLOW, maximumFlowM3PerS)
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof PumpSetting that
                && pressurePa == that.pressurePa
                && maximumFlowM3PerS == that.maximumFlowM3PerS;
    }

    @Override
    public int hashCode() {
        return Objects.hash(pressurePa, maximumFlowM3PerS);
    }

    @Override
    public String toString() {
        return "pump set to " + QuantityText.print(Kind.PRESSURE, pressure(), Units.MEGAPASCAL, 4) + ", up to "
                + QuantityText.print(Kind.VOLUME_FLOW, maximumFlow(), Units.LITRE_PER_MINUTE, 4);
    }
}

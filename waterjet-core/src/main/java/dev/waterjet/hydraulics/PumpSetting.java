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
import javax.measure.quantity.Pressure;

/** A pump as the line sees it: it holds the pressure that is set, until it is asked for more flow than it has. */
public final class PumpSetting implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    private final double pressurePa;
    private final double largestFlowM3PerS;

    private PumpSetting(double pressurePa, double largestFlowM3PerS) {
        this.pressurePa = Require.positive("pressure set at the pump", pressurePa, Units.MEGAPASCAL);
        Require.atMost("pressure set at the pump", pressurePa, 999e6, Units.MEGAPASCAL, "");
        this.largestFlowM3PerS =
                Require.positive("largest flow of the pump", largestFlowM3PerS, Units.LITRE_PER_MINUTE);
    }

    /**
     * A pump by its pressure and its largest flow.
     *
     * @param pressure gauge pressure that is set, above 0
     * @param largestFlow largest flow, told at the intake
     * @return the setting
     */
    public static PumpSetting of(Quantity<Pressure> pressure, Quantity<VolumeFlow> largestFlow) {
        return new PumpSetting(Kind.PRESSURE.si(pressure), Kind.VOLUME_FLOW.si(largestFlow));
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
     * The largest flow.
     *
     * @return the volume flow at the intake, in m3/s
     */
    public Quantity<VolumeFlow> largestFlow() {
        return Kind.VOLUME_FLOW.of(largestFlowM3PerS);
    }

    double pressureSi() {
        return pressurePa;
    }

    double largestFlowSi() {
        return largestFlowM3PerS;
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("pump setting")
                .put("pressure", Kind.PRESSURE, pressurePa)
                .put("largest_flow", Kind.VOLUME_FLOW, largestFlowM3PerS)
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof PumpSetting that
                && pressurePa == that.pressurePa
                && largestFlowM3PerS == that.largestFlowM3PerS;
    }

    @Override
    public int hashCode() {
        return Objects.hash(pressurePa, largestFlowM3PerS);
    }

    @Override
    public String toString() {
        return "pump set to " + QuantityText.print(Kind.PRESSURE, pressure(), Units.MEGAPASCAL, 4) + ", up to "
                + QuantityText.print(Kind.VOLUME_FLOW, largestFlow(), Units.LITRE_PER_MINUTE, 4);
    }
}

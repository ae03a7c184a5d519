package dev.waterjet.hydraulics;

import dev.waterjet.evidence.Estimate;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.MassFlow;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import dev.waterjet.water.Water;
import dev.waterjet.water.WaterState;
import java.io.Serializable;
import java.util.List;
import java.util.Map;
import javax.measure.Quantity;
import javax.measure.quantity.Pressure;
import javax.measure.quantity.Temperature;

/**
 * Where pump, line and orifices agree: the pressure that is really there at the heads, solved from the pressure that is set
 * at the pump.
 *
 * <p>All orifices stand at the end of one line. The pump holds its pressure while it has flow enough; when the orifices ask
 * for more, its pressure falls until they take just what it has.
 */
public final class OperatingPoint implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    private final List<WaterJet> jets;
    private final double pumpPa;
    private final double headPa;
    private final double massFlowKgPerS;
    private final boolean flowLimited;
    private final Estimate<Pressure> loss;

    private OperatingPoint(List<WaterJet> jets, double pumpPa, double headPa, boolean flowLimited, SupplyLine line) {
        this.jets = List.copyOf(jets);
        this.pumpPa = pumpPa;
        this.headPa = headPa;
        this.flowLimited = flowLimited;
        this.massFlowKgPerS = jets.stream().mapToDouble(WaterJet::massFlowSi).sum();
        Quantity<Temperature> temperature = jets.get(0).temperature();
        this.loss = line.loss(
                Kind.MASS_FLOW.of(massFlowKgPerS), OperatingKernel.inLine(pumpPa, Kind.TEMPERATURE.si(temperature)));
    }

    /**
     * The point at which pump, line and orifices agree.
     *
     * @param pump the pump
     * @param line the line
     * @param temperature temperature of the water in line and heads
     * @param orifices orifices of the heads that run at once, one or more
     * @return the point
     * @throws dev.waterjet.measure.DomainException if there is no orifice, or water is no liquid in the line
     */
    public static OperatingPoint of(
            PumpSetting pump, SupplyLine line, Quantity<Temperature> temperature, List<Orifice> orifices) {
        Require.atLeast("number of orifices", orifices.size(), 1, Units.ONE, "");
        double temperatureK = Kind.TEMPERATURE.si(temperature);
        WaterState atRest = Water.stable().atSi(IsentropicKernel.ATMOSPHERE_PA, temperatureK);
        OperatingKernel kernel = new OperatingKernel(line, temperatureK, atRest.densitySi(), passage(orifices));
        double headPa = kernel.headPressure(pump.pressureSi());
        double pumpPa = pump.pressureSi();
        double maximumKgPerS = pump.maximumFlowSi() * atRest.densitySi();
        boolean limited = kernel.massFlow(headPa) > maximumKgPerS;
        if (limited) {
            headPa = kernel.headPressureOfFlow(maximumKgPerS);
            pumpPa = kernel.pumpPressure(headPa);
        }
        Quantity<Pressure> head = Kind.PRESSURE.of(headPa);
        List<WaterJet> jets = orifices.stream()
                .map(orifice -> WaterJet.of(orifice, head).withTemperature(temperature))
                .toList();
        return new OperatingPoint(jets, pumpPa, headPa, limited, line);
    }

    private static double passage(List<Orifice> orifices) {
        return orifices.stream()
                .mapToDouble(orifice -> orifice.dischargeCoefficientSi() * WaterJetKernel.area(orifice.boreSi()))
                .sum();
    }

    /**
     * Pressure behind the pump.
     *
     * @return gauge pressure, in Pa
     */
    public Quantity<Pressure> pumpPressure() {
        return Kind.PRESSURE.of(pumpPa);
    }

    /**
     * Pressure at the heads.
     *
     * @return gauge pressure, in Pa
     */
    public Quantity<Pressure> headPressure() {
        return Kind.PRESSURE.of(headPa);
    }

    /**
     * Loss of pressure in the line.
     *
     * @return the loss with the uncertainty of friction laws
     */
    public Estimate<Pressure> lineLoss() {
        return loss;
    }

    /**
     * Flow of all heads together.
     *
     * @return the mass flow, in kg/s
     */
    public Quantity<MassFlow> massFlow() {
        return Kind.MASS_FLOW.of(massFlowKgPerS);
    }

    /**
     * Whether the orifices ask for more than the pump has, so that it cannot hold its pressure.
     *
     * @return true if the pump falls behind
     */
    public boolean isFlowLimited() {
        return flowLimited;
    }

    /**
     * The jets of the heads.
     *
     * @return an unmodifiable list, in the order of the orifices
     */
    public List<WaterJet> jets() {
        return jets;
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("operating point")
                .put("pump_pressure", Kind.PRESSURE, pumpPa)
                .put("head_pressure", Kind.PRESSURE, headPa)
                .put("mass_flow", Kind.MASS_FLOW, massFlowKgPerS)
                .put("flow_limited", flowLimited)
                .put("line_loss", loss)
                .put("jets", jets)
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof OperatingPoint that
                && pumpPa == that.pumpPa
                && headPa == that.headPa
                && flowLimited == that.flowLimited
                && jets.equals(that.jets)
                && loss.equals(that.loss);
    }

    @Override
    public int hashCode() {
        return 31 * jets.hashCode() + Double.hashCode(pumpPa);
    }

    @Override
    public String toString() {
        return QuantityText.print(Kind.PRESSURE, pumpPressure(), Units.MEGAPASCAL, 4) + " at the pump, "
                + QuantityText.print(Kind.PRESSURE, headPressure(), Units.MEGAPASCAL, 4) + " at the head";
    }
}

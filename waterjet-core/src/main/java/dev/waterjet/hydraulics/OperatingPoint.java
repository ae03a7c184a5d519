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
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Pressure;
import javax.measure.quantity.Temperature;

/**
 * Operating point of pump, supply line and orifices: the pressure at the heads for the pressure set at the pump.
 *
 * <p>All orifices are at the end of one supply line. The pump holds its pressure up to its maximum flow. If the orifices
 * require more, the pressure falls until they take the maximum flow.
 *
 * @param pumpPressure gauge pressure at the pump, above 0
 * @param lineLoss pressure loss in the supply line, with the uncertainty of friction correlations
 * @param isFlowLimited whether the orifices require more than the maximum flow, so that the pump cannot hold its pressure
 * @param jets jets of the heads, in the order of the orifices, one or more
 */
public record OperatingPoint(
        Quantity<Pressure> pumpPressure, Estimate<Pressure> lineLoss, boolean isFlowLimited, List<WaterJet> jets)
        implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    /**
     * Checks the components.
     *
     * @throws dev.waterjet.measure.DomainException if the pressure is not above 0, or there is no jet
     * @param pumpPressure gauge pressure at the pump, above 0
     * @param lineLoss pressure loss in the supply line, with the uncertainty of friction correlations
     * @param isFlowLimited whether the orifices require more than the maximum flow, so that the pump cannot hold its pressure
     * @param jets jets of the heads, in the order of the orifices, one or more
     */
    public OperatingPoint {
        Objects.requireNonNull(jets, "jets");
        Objects.requireNonNull(pumpPressure, "pumpPressure");
        pumpPressure = Kind.PRESSURE.of(
                Require.positive("pressure at the pump", Kind.PRESSURE.si(pumpPressure), Units.MEGAPASCAL));
        Objects.requireNonNull(lineLoss, "lineLoss");
        jets = List.copyOf(jets);
        Require.atLeast("number of jets", jets.size(), 1, Units.ONE, "");
    }

    /**
     * Returns the operating point of a pump, a supply line and orifices.
     *
     * @param pump the pump
     * @param line the supply line
     * @param temperature temperature of the water in supply line and heads
     * @param orifices orifices of the heads in operation, one or more
     * @return the operating point
     * @throws dev.waterjet.measure.DomainException if there is no orifice, or water is not liquid in the supply line
     */
    public static OperatingPoint of(
            PumpSetting pump, SupplyLine line, Quantity<Temperature> temperature, List<Orifice> orifices) {
        Objects.requireNonNull(line, "line");
        Objects.requireNonNull(orifices, "orifices");
        Objects.requireNonNull(pump, "pump");
        Objects.requireNonNull(temperature, "temperature");
        Require.atLeast("number of orifices", orifices.size(), 1, Units.ONE, "");
        double temperatureK = Kind.TEMPERATURE.si(temperature);
        WaterState ambient = Water.stable().atSi(IsentropicKernel.ATMOSPHERE_PA, temperatureK);
        OperatingKernel kernel =
                new OperatingKernel(line, temperatureK, ambient.densitySi(), effectiveAreaM2(orifices));
        double pumpPa = pump.pressureSi();
        double headPa = kernel.headPressure(pumpPa);
        double maximumKgPerS = pump.maximumFlowSi() * ambient.densitySi();
        boolean isLimited = kernel.massFlow(headPa) > maximumKgPerS;
        if (isLimited) {
            headPa = kernel.headPressureOfFlow(maximumKgPerS);
            pumpPa = kernel.pumpPressure(headPa);
        }
        Quantity<Pressure> head = Kind.PRESSURE.of(headPa);
        List<WaterJet> jets = orifices.stream()
                .map(orifice -> WaterJet.of(orifice, head, temperature))
                .toList();
        Estimate<Pressure> loss = line.loss(massFlow(jets), OperatingKernel.inLine(pumpPa, temperatureK));
        return new OperatingPoint(Kind.PRESSURE.of(pumpPa), loss, isLimited, jets);
    }

    private static double effectiveAreaM2(List<Orifice> orifices) {
        return orifices.stream()
                .mapToDouble(orifice -> orifice.dischargeCoefficientSi() * WaterJetKernel.area(orifice.boreSi()))
                .sum();
    }

    private static Quantity<MassFlow> massFlow(List<WaterJet> jets) {
        return Kind.MASS_FLOW.of(jets.stream().mapToDouble(WaterJet::massFlowSi).sum());
    }

    /** {@return the gauge pressure at the heads} */
    public Quantity<Pressure> headPressure() {
        return jets.get(0).pressure();
    }

    /** {@return the mass flow of all heads together} */
    public Quantity<MassFlow> massFlow() {
        return massFlow(jets);
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("operating point")
                .put("pump_pressure", Kind.PRESSURE, Kind.PRESSURE.si(pumpPressure))
                .put("head_pressure", Kind.PRESSURE, Kind.PRESSURE.si(headPressure()))
                .put("mass_flow", Kind.MASS_FLOW, Kind.MASS_FLOW.si(massFlow()))
                .put("flow_limited", isFlowLimited)
                .put("line_loss", lineLoss)
                .put("jets", jets)
                .map();
    }

    @Override
    public String toString() {
        return QuantityText.forPeople(Kind.PRESSURE, pumpPressure) + " at the pump, "
                + QuantityText.forPeople(Kind.PRESSURE, headPressure()) + " at the head";
    }
}

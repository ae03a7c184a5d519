package dev.waterjet.hydraulics;

import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.MassFlow;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.SpecificEnergy;
import dev.waterjet.measure.Units;
import dev.waterjet.water.Water;
import dev.waterjet.water.WaterState;
import java.io.Serializable;
import java.util.Map;
import javax.measure.Quantity;
import javax.measure.quantity.Power;
import javax.measure.quantity.Pressure;

/**
 * What a pump does to each kilogram of water: the work it takes and the heat it leaves.
 *
 * <p>Without loss the entropy stays: from 20 C and the atmosphere to 400 MPa that takes 374.7 kJ/kg, and the water comes
 * out at 30.8 C. A lossy pump takes the isentropic work over its efficiency, and the rest warms the water.
 */
public final class Compression implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    private final WaterState inlet;
    private final WaterState outlet;
    private final double isentropicWorkJPerKg;

    private Compression(WaterState inlet, double outletPa, double efficiency) {
        Require.above("outlet pressure", outletPa, inlet.pressureSi(), Units.MEGAPASCAL, "the pressure of the inlet");
        Require.positive("isentropic efficiency", efficiency, Units.ONE);
        Require.atMost("isentropic efficiency", efficiency, 1, Units.ONE, "a pump without loss has 1");
        this.inlet = inlet;
        WaterState ideal = Water.stable().atEntropySi(outletPa, inlet.entropySi());
        this.isentropicWorkJPerKg = ideal.enthalpySi() - inlet.enthalpySi();
        this.outlet = efficiency == 1
                ? ideal
                : Water.stable().atEnthalpySi(outletPa, inlet.enthalpySi() + isentropicWorkJPerKg / efficiency);
    }

    /**
     * Compression without loss.
     *
     * @param inlet water that the pump draws
     * @param outletPressure absolute pressure behind the pump, up to 1000 MPa
     * @return the compression
     * @throws dev.waterjet.measure.DomainException if the outlet is no higher than the inlet, or water freezes there
     */
    public static Compression isentropic(WaterState inlet, Quantity<Pressure> outletPressure) {
        return new Compression(inlet, Kind.PRESSURE.si(outletPressure), 1);
    }

    /**
     * Compression with loss, all of which warms the water.
     *
     * @param inlet water that the pump draws
     * @param outletPressure absolute pressure behind the pump, up to 1000 MPa
     * @param efficiency isentropic work over true work in the water, above 0 to 1
     * @return the compression
     * @throws dev.waterjet.measure.DomainException as {@link #isentropic}, or if the efficiency is out of range
     */
    public static Compression of(WaterState inlet, Quantity<Pressure> outletPressure, double efficiency) {
        return new Compression(inlet, Kind.PRESSURE.si(outletPressure), efficiency);
    }

    /**
     * Water before the pump.
     *
     * @return its state
     */
    public WaterState inlet() {
        return inlet;
    }

    /**
     * Water behind the pump.
     *
     * @return its state
     */
    public WaterState outlet() {
        return outlet;
    }

    /**
     * Work per mass without loss.
     *
     * @return the work, in J/kg
     */
    public Quantity<SpecificEnergy> isentropicWork() {
        return Kind.SPECIFIC_ENERGY.of(isentropicWorkJPerKg);
    }

    /**
     * Work per mass that goes into the water.
     *
     * @return the work, in J/kg
     */
    public Quantity<SpecificEnergy> work() {
        return Kind.SPECIFIC_ENERGY.of(workJPerKg());
    }

    private double workJPerKg() {
        return outlet.enthalpySi() - inlet.enthalpySi();
    }

    /**
     * Power that goes into a flow of water.
     *
     * @param flow mass flow, 0 or more
     * @return the power, in W
     */
    public Quantity<Power> power(Quantity<MassFlow> flow) {
        double kgPerS = Require.notNegative("mass flow", Kind.MASS_FLOW.si(flow), Units.KILOGRAM_PER_MINUTE);
        return Kind.POWER.of(workJPerKg() * kgPerS);
    }

    /**
     * Power of the motor, when only a part of it reaches the water.
     *
     * @param flow mass flow, 0 or more
     * @param overallEfficiency isentropic power over power of the motor, above 0 to 1. Common practice, no source: 0.6 to
     *     0.7 for intensifiers, 0.85 to 0.95 for direct-drive pumps
     * @return the power of the motor, in W
     */
    public Quantity<Power> motorPower(Quantity<MassFlow> flow, double overallEfficiency) {
        Require.positive("overall efficiency", overallEfficiency, Units.ONE);
        Require.atMost("overall efficiency", overallEfficiency, 1, Units.ONE, "");
        double kgPerS = Require.notNegative("mass flow", Kind.MASS_FLOW.si(flow), Units.KILOGRAM_PER_MINUTE);
        return Kind.POWER.of(isentropicWorkJPerKg * kgPerS / overallEfficiency);
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("compression")
                .put("inlet", inlet)
                .put("outlet", outlet)
                .put("isentropic_work", Kind.SPECIFIC_ENERGY, isentropicWorkJPerKg)
                .put("work", Kind.SPECIFIC_ENERGY, workJPerKg())
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Compression that && inlet.equals(that.inlet) && outlet.equals(that.outlet);
    }

    @Override
    public int hashCode() {
        return 31 * inlet.hashCode() + outlet.hashCode();
    }

    @Override
    public String toString() {
        return "compression by " + QuantityText.print(Kind.SPECIFIC_ENERGY, work(), Units.KILOJOULE_PER_KILOGRAM, 6)
                + " to " + outlet;
    }
}

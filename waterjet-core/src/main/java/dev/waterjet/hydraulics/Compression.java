package dev.waterjet.hydraulics;

import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.DomainException;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.MassFlow;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.SpecificEnergy;
import dev.waterjet.measure.Units;
import dev.waterjet.water.Water;
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
 * Compression of water in a pump: work per mass and state of the water at the outlet.
 *
 * <p>Without loss the entropy is constant: from 20 &deg;C and ambient pressure to 400 MPa the work is 374.7 kJ/kg, and the
 * water leaves the pump at 30.8 &deg;C. With loss the work is the isentropic work divided by the efficiency, and the
 * difference heats the water.
 */
public final class Compression implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    /** Checked content, and the serial form. */
    private record Values(WaterState inlet, double outletPa, double efficiency) implements Serializable {

        private static final long serialVersionUID = 1L;

        Values {
            outletPa = Require.above(
                    "outlet pressure", outletPa, inlet.pressureSi(), Units.MEGAPASCAL, "the inlet pressure");
            efficiency = requireEfficiency("isentropic efficiency", efficiency);
        }

        private Object readResolve() throws InvalidObjectException {
            try {
                return new Compression(this);
            } catch (DomainException e) {
                throw (InvalidObjectException) new InvalidObjectException(e.getMessage()).initCause(e);
            }
        }
    }

    private final transient Values values;
    private final transient WaterState outlet;
    private final transient double isentropicWorkJPerKg;

    private Compression(Values values) {
        this.values = values;
        WaterState inlet = values.inlet;
        WaterState ideal = Water.stable().atEntropySi(values.outletPa, inlet.entropySi());
        this.isentropicWorkJPerKg = ideal.enthalpySi() - inlet.enthalpySi();
        this.outlet = values.efficiency == 1
                ? ideal
                : Water.stable()
                        .atEnthalpySi(values.outletPa, inlet.enthalpySi() + isentropicWorkJPerKg / values.efficiency);
    }

    private static double requireEfficiency(String name, double efficiency) {
        Require.positive(name, efficiency, Units.ONE);
        return Require.atMost(name, efficiency, 1, Units.ONE, "");
    }

    /**
     * Returns the lossless compression.
     *
     * @param inlet water at the inlet of the pump
     * @param outletPressure absolute pressure at the outlet, above that of the inlet, up to 1000 MPa
     * @return the compression
     * @throws DomainException if the outlet pressure is not above the inlet pressure, or water freezes at the outlet
     */
    public static Compression isentropic(WaterState inlet, Quantity<Pressure> outletPressure) {
        Objects.requireNonNull(inlet, "inlet");
        Objects.requireNonNull(outletPressure, "outletPressure");
        return of(inlet, outletPressure, 1);
    }

    /**
     * Returns the compression with loss, all of which heats the water.
     *
     * @param inlet water at the inlet of the pump
     * @param outletPressure absolute pressure at the outlet, above that of the inlet, up to 1000 MPa
     * @param efficiency isentropic work over work put into the water, above 0 to 1
     * @return the compression
     * @throws DomainException as {@link #isentropic}, or if the efficiency is out of range
     */
    public static Compression of(WaterState inlet, Quantity<Pressure> outletPressure, double efficiency) {
        Objects.requireNonNull(inlet, "inlet");
        Objects.requireNonNull(outletPressure, "outletPressure");
        return new Compression(new Values(inlet, Kind.PRESSURE.si(outletPressure), efficiency));
    }

    /** {@return the water at the inlet} */
    public WaterState inlet() {
        return values.inlet;
    }

    /** {@return the water at the outlet} */
    public WaterState outlet() {
        return outlet;
    }

    /** {@return the work per mass without loss} */
    public Quantity<SpecificEnergy> isentropicWork() {
        return Kind.SPECIFIC_ENERGY.of(isentropicWorkJPerKg);
    }

    /** {@return the work per mass put into the water} */
    public Quantity<SpecificEnergy> work() {
        return Kind.SPECIFIC_ENERGY.of(workJPerKg());
    }

    private double workJPerKg() {
        return outlet.enthalpySi() - values.inlet.enthalpySi();
    }

    /**
     * Returns the power put into a flow of water.
     *
     * @param flow mass flow, 0 or more
     * @return the power
     */
    public Quantity<Power> power(Quantity<MassFlow> flow) {
        Objects.requireNonNull(flow, "flow");
        double kgPerS = Require.notNegative("mass flow", Kind.MASS_FLOW.si(flow), Units.KILOGRAM_PER_MINUTE);
        return Kind.POWER.of(workJPerKg() * kgPerS);
    }

    /**
     * Returns the motor power for an overall efficiency.
     *
     * @param flow mass flow, 0 or more
     * @param overallEfficiency isentropic power over motor power, above 0 to 1. Common practice, no source: 0.6 to 0.7 for
     *     intensifiers, 0.85 to 0.95 for direct-drive pumps
     * @return the motor power
     */
    public Quantity<Power> motorPower(Quantity<MassFlow> flow, double overallEfficiency) {
        Objects.requireNonNull(flow, "flow");
        requireEfficiency("overall efficiency", overallEfficiency);
        double kgPerS = Require.notNegative("mass flow", Kind.MASS_FLOW.si(flow), Units.KILOGRAM_PER_MINUTE);
        return Kind.POWER.of(isentropicWorkJPerKg * kgPerS / overallEfficiency);
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("compression")
                .put("inlet", values.inlet)
                .put("outlet", outlet)
                .put("isentropic_efficiency", values.efficiency)
                .put("isentropic_work", Kind.SPECIFIC_ENERGY, isentropicWorkJPerKg)
                .put("work", Kind.SPECIFIC_ENERGY, workJPerKg())
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Compression that && values.equals(that.values);
    }

    @Override
    public int hashCode() {
        return values.hashCode();
    }

    @Override
    public String toString() {
        return "compression by " + QuantityText.forPeople(Kind.SPECIFIC_ENERGY, work()) + " to " + outlet;
    }

    private Object writeReplace() {
        return values;
    }

    private void readObject(ObjectInputStream in) throws InvalidObjectException {
        throw new InvalidObjectException("read through its values");
    }
}

package dev.waterjet.hydraulics;

import dev.waterjet.evidence.Caution;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.MassFlow;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Frequency;
import javax.measure.quantity.Pressure;

/**
 * Pressure cycles that a part of a pump or circuit goes through: how many in an hour, between which pressures. An input of a fatigue
 * calculation by the code in force, and nothing more: no life follows from it here.
 *
 * @param frequency cycles per time, above 0
 * @param lowest lowest absolute pressure of a cycle
 * @param highest highest absolute pressure of a cycle, above the lowest
 * @param cautions cautions that apply, one or more
 */
public record PressureCycles(
        Quantity<Frequency> frequency, Quantity<Pressure> lowest, Quantity<Pressure> highest, List<Caution> cautions)
        implements Described {

    private static final double SECONDS_PER_HOUR = 3600;

    private static final Caution NO_LIFE = Caution.danger(Message.of(
            "cycles-are-no-life",
            "a count of pressure cycles is no fatigue life; licensed engineers calculate it under the pressure-vessel"
                    + " code in force, and the maker's manual states when parts are inspected and replaced"));

    /**
     * Checks the components.
     *
     * @param frequency cycles per time, above 0
     * @param lowest lowest absolute pressure of a cycle, 0 or more
     * @param highest highest absolute pressure of a cycle, above the lowest
     * @param cautions cautions that apply
     * @throws dev.waterjet.measure.DomainException if one of them is out of range
     */
    public PressureCycles {
        Objects.requireNonNull(frequency, "frequency");
        Objects.requireNonNull(lowest, "lowest");
        Objects.requireNonNull(highest, "highest");
        cautions = List.copyOf(Objects.requireNonNull(cautions, "cautions"));
        Require.positive("frequency of the pressure cycles", Kind.FREQUENCY.si(frequency), Units.HERTZ);
        double lowestPa = Require.notNegative("lowest pressure", Kind.PRESSURE.si(lowest), Units.MEGAPASCAL);
        Require.above("highest pressure", Kind.PRESSURE.si(highest), lowestPa, Units.MEGAPASCAL, "the lowest pressure");
    }

    /**
     * Returns the cycles of a cylinder of a direct-drive pump: one each turn, from intake to outlet.
     *
     * @param pump the pump
     * @param compression compression of the water
     * @return the cycles
     */
    public static PressureCycles ofCylinder(DirectDrivePump pump, Compression compression) {
        Objects.requireNonNull(compression, "compression");
        Objects.requireNonNull(pump, "pump");
        return between(Kind.FREQUENCY.si(pump.speed()), compression);
    }

    /**
     * Returns the cycles of one side of an intensifier: half of all strokes, from intake to outlet.
     *
     * @param pump the intensifier
     * @param flow mass flow, above 0
     * @param compression compression of the water
     * @return the cycles
     */
    public static PressureCycles ofSide(Intensifier pump, Quantity<MassFlow> flow, Compression compression) {
        Objects.requireNonNull(compression, "compression");
        Objects.requireNonNull(flow, "flow");
        Objects.requireNonNull(pump, "pump");
        return between(Kind.FREQUENCY.si(pump.strokes(flow, compression.inlet())) / 2, compression);
    }

    private static PressureCycles between(double hertz, Compression compression) {
        return of(
                Kind.FREQUENCY.of(hertz),
                compression.inlet().pressure(),
                compression.outlet().pressure());
    }

    /**
     * Returns the cycles of another part: starts and stops, valves, or the ripple of a vessel, line or head.
     *
     * @param frequency cycles per time, above 0
     * @param lowest lowest absolute pressure of a cycle, 0 or more
     * @param highest highest absolute pressure of a cycle, above the lowest
     * @return the cycles
     */
    public static PressureCycles of(
            Quantity<Frequency> frequency, Quantity<Pressure> lowest, Quantity<Pressure> highest) {
        return new PressureCycles(frequency, lowest, highest, List.of(NO_LIFE));
    }

    /** {@return the number of cycles in an hour} */
    public double perHour() {
        return SECONDS_PER_HOUR * Kind.FREQUENCY.si(frequency);
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("pressure cycles")
                .put("frequency", Kind.FREQUENCY, Kind.FREQUENCY.si(frequency))
                .put("per_hour", perHour())
                .put("lowest_pressure", Kind.PRESSURE, Kind.PRESSURE.si(lowest))
                .put("highest_pressure", Kind.PRESSURE, Kind.PRESSURE.si(highest))
                .put("cautions", cautions)
                .map();
    }

    @Override
    public String toString() {
        return QuantityText.round(perHour(), 4) + " pressure cycles an hour, "
                + QuantityText.forPeople(Kind.PRESSURE, lowest) + " to "
                + QuantityText.forPeople(Kind.PRESSURE, highest);
    }
}

package dev.waterjet.examples.shop;

import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Units;
import java.util.Optional;
import javax.measure.Unit;

/** Single values of a shop file: section and key, kind of quantity, and the option whose default value they are. */
// kinds and units are immutable, though nothing in their types says so
@SuppressWarnings("ImmutableEnumChecker")
public enum ShopKey {
    /** Gauge pressure at the orifice. */
    PRESSURE("pump.pressure", Kind.PRESSURE, Units.MEGAPASCAL, "--pressure"),
    /** Rated hydraulic power of the pump. */
    POWER("pump.power", Kind.POWER, Units.KILOWATT, "--power"),
    /** Bore of the orifice. */
    ORIFICE("head.orifice", Kind.LENGTH, Units.MILLIMETRE, "--orifice"),
    /** Bore of the focusing tube. */
    TUBE("head.tube", Kind.LENGTH, Units.MILLIMETRE, "--tube"),
    /** Length of the focusing tube. */
    TUBE_LENGTH("head.tube_length", Kind.LENGTH, Units.MILLIMETRE, "--tube-length"),
    /** Stand-off distance. */
    STAND_OFF("head.stand_off", Kind.LENGTH, Units.MILLIMETRE, "--stand-off"),
    /** Abrasive flow rate. */
    ABRASIVE_FLOW("head.abrasive_flow", Kind.MASS_FLOW, Units.GRAM_PER_MINUTE, "--abrasive-flow"),
    /** Discharge coefficient of the orifice. */
    DISCHARGE_COEFFICIENT("head.discharge_coefficient", Kind.RATIO, Units.ONE, "--discharge-coefficient"),
    /** Rapid traverse speed. */
    RAPID_SPEED("machine.rapid_speed", Kind.SPEED, Units.MILLIMETRE_PER_MINUTE, "--rapid-speed"),
    /** Acceleration of each axis. */
    ACCELERATION("machine.acceleration", Kind.ACCELERATION, Units.METRE_PER_SQUARE_SECOND, "--machine-acceleration"),
    /** Jerk of each axis. */
    JERK("machine.jerk", Kind.JERK, Kind.JERK.siUnit(), "--machine-jerk"),
    /** Deviation from a corner that the control allows. */
    CORNER_DEVIATION("machine.corner_deviation", Kind.LENGTH, Units.MILLIMETRE, "--corner-deviation"),
    /** Time that the machine adds to each pierce. */
    PIERCE_DELAY("machine.pierce_delay", Kind.TIME, Units.SECOND, "--per-pierce"),
    /** Time that the machine adds to each rapid traverse. */
    MOVE_DELAY("machine.move_delay", Kind.TIME, Units.SECOND, "--per-move"),
    /** Distance between slats. */
    SLAT_PITCH("machine.slat_pitch", Kind.LENGTH, Units.MILLIMETRE, "--slat-pitch"),
    /** Thickness of a slat. */
    SLAT_THICKNESS("machine.slat_thickness", Kind.LENGTH, Units.MILLIMETRE, "--slat-thickness"),
    /** Maximum inclination of a tilting head. */
    TILT("machine.tilt", Kind.ANGLE, Units.DEGREE, "--tilt"),
    /** Maximum angular speed of a tilting head. */
    TILT_SPEED("machine.tilt_speed", Kind.ANGULAR_SPEED, Units.DEGREE_PER_SECOND, "--tilt-speed"),
    /** Maximum angular acceleration of a tilting head. */
    TILT_ACCELERATION(
            "machine.tilt_acceleration",
            Kind.ANGULAR_ACCELERATION,
            Units.DEGREE_PER_SQUARE_SECOND,
            "--tilt-acceleration"),
    /** Lead angle of a tilting head over the one that compensates the lag at the exit. */
    TILT_LEAD("machine.tilt_lead", Kind.RATIO, Units.ONE, "--tilt-lead");

    private final String path;
    private final Kind<?> kind;
    private final Unit<?> unit;
    private final String option;

    ShopKey(String path, Kind<?> kind, Unit<?> unit, String option) {
        this.path = path;
        this.kind = kind;
        this.unit = unit;
        this.option = option;
    }

    /** {@return section and key, such as {@code machine.jerk}} */
    public String path() {
        return path;
    }

    /** {@return the kind of quantity} */
    public Kind<?> kind() {
        return kind;
    }

    /** {@return the option whose default value this is; empty if no option has it} */
    public Optional<String> option() {
        return option.isEmpty() ? Optional.empty() : Optional.of(option);
    }

    /** Unit of limits in messages. */
    Unit<?> unit() {
        return unit;
    }

    /** Whether 0 is allowed: delays, and a head without lead. */
    boolean mayBeZero() {
        return kind.equals(Kind.TIME) || this == TILT_LEAD;
    }
}

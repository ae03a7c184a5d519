package dev.waterjet.circuit;

import dev.waterjet.evidence.Caution;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.Units;

/** Cautions of this package. */
final class CircuitCautions {

    static final Caution IDEAL = Caution.danger(Message.of(
            "ideal-circuit",
            "this is a calculation of an ideal circuit; it sizes no relief valve and judges no part. Real surges can be"
                    + " higher. Relief and dump valves, vessels and tubing follow the machine's manual, the code in"
                    + " force and licensed practice"));

    static final Caution QUASI_STEADY = Caution.notice(Message.of(
            "quasi-steady-friction",
            "friction in the lines is that of steady flow; real waves are damped more, and ripple in lines is an upper"
                    + " estimate"));

    private CircuitCautions() {}

    static Caution adjusted(double relative) {
        return Caution.notice(Message.of(
                        "wave-speed-adjusted",
                        "a line is so short that its wave speed was changed by {change} to fit the step of time;"
                                + " compute with more reaches")
                .with("change", Kind.RATIO, Math.abs(relative), Units.PERCENT));
    }

    static Caution farFromReference(double lowestPa, double highestPa, double referencePa) {
        return Caution.warning(Message.of(
                        "far-from-reference",
                        "pressure runs from {lowest} to {highest}, far from the reference of {reference} at which wave"
                                + " speed and density of the lines were taken")
                .with("lowest", Kind.PRESSURE, lowestPa, Units.MEGAPASCAL)
                .with("highest", Kind.PRESSURE, highestPa, Units.MEGAPASCAL)
                .with("reference", Kind.PRESSURE, referencePa, Units.MEGAPASCAL));
    }

    static Caution belowAtmosphere(double lowestPa) {
        return Caution.warning(Message.of(
                        "water-column-separates",
                        "the gauge pressure falls to {lowest}; there the water column separates, which is not computed,"
                                + " and what follows is wrong")
                .with("lowest", Kind.PRESSURE, lowestPa, Units.MEGAPASCAL));
    }

    static Caution resonance(double lineHz, double pumpHz) {
        return Caution.warning(Message.of(
                        "line-resonance",
                        "a line resonates at {line}, within 30 % of a harmonic of the pump at {pump}; ripple at its end"
                                + " exceeds that at the attenuator")
                .with("line", Kind.FREQUENCY, lineHz, Units.HERTZ)
                .with("pump", Kind.FREQUENCY, pumpHz, Units.HERTZ));
    }
}

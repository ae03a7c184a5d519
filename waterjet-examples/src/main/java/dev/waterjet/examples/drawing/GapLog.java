package dev.waterjet.examples.drawing;

import dev.waterjet.evidence.Caution;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.Units;
import java.util.Optional;

/** Gaps that were closed; the caution names the widest. */
final class GapLog {

    /** Gaps up to this are rounding of coordinates written to a micrometre or finer, in m. */
    private static final double ROUNDING_M = 1e-6;

    private int count;
    private double widestM;
    private double[] at = {0, 0};
    private Origin origin = Origin.NONE;

    void add(double gapM, double[] place, Origin of) {
        if (gapM <= ROUNDING_M) {
            return;
        }
        count++;
        if (gapM > widestM) {
            widestM = gapM;
            at = place.clone();
            origin = of;
        }
    }

    Optional<Caution> caution() {
        if (count == 0) {
            return Optional.empty();
        }
        return Optional.of(Caution.warning(Message.of(
                        "gap-closed",
                        "gaps closed between ends of lines: {count}, the widest of {gap} at ({x}, {y}), {place}")
                .with("count", count)
                .with("gap", Kind.LENGTH, widestM, Units.MILLIMETRE)
                .with("x", Kind.LENGTH, at[0], Units.MILLIMETRE)
                .with("y", Kind.LENGTH, at[1], Units.MILLIMETRE)
                .with("place", origin.place())));
    }
}

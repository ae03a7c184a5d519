package dev.waterjet.calibrate;

import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.Serializable;
import java.util.Objects;
import javax.measure.Unit;

/**
 * Measured numbers of a test cut, and its further columns.
 *
 * @param thicknessM thickness or depth
 * @param index quality index
 * @param feedMPerS feed rate
 * @param deviations deviations of the measurement
 */
record CutNumbers(Ends thicknessM, Ends index, Ends feedMPerS, Deviations deviations) implements Serializable {

    CutNumbers {
        thicknessM = thicknessM.checked("thickness", Units.MILLIMETRE);
        Require.atLeast("quality index", index.lower, 1, Units.ONE, "below 1 the jet does not separate");
        index = index.checked("quality index", Units.ONE);
        feedMPerS = feedMPerS.checked("feed rate", Units.MILLIMETRE_PER_MINUTE);
        Objects.requireNonNull(deviations, "deviations");
    }

    /** Lower and upper end of what was measured; equal where it was measured exactly. */
    record Ends(double lower, double upper) implements Serializable {

        static Ends of(String quantity, double lower, double upper, Unit<?> unit) {
            Require.positive(quantity, lower, unit);
            return new Ends(
                    lower,
                    lower == upper
                            ? upper
                            : Require.above("upper end of the " + quantity, upper, lower, unit, "the lower end"));
        }

        boolean isExact() {
            return lower == upper;
        }

        Ends checked(String quantity, Unit<?> unit) {
            return of(quantity, lower, upper, unit);
        }
    }

    /** Deviations of the measurement: relative, of the feed rate or the depth, and absolute of the depth of a groove. */
    record Deviations(double relative, double readingM) implements Serializable {

        Deviations {
            relative = Require.notNegative("relative deviation", relative, Units.PERCENT);
            readingM = Require.notNegative("reading deviation", readingM, Units.MILLIMETRE);
        }
    }

    /** Further column of the file, such as the lot or the source. */
    record Attribute(String name, String text) implements Serializable {

        Attribute {
            Objects.requireNonNull(name, "name");
            Objects.requireNonNull(text, "text");
        }
    }
}

package dev.waterjet.reference;

import dev.waterjet.evidence.EvidenceGrade;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityText;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.Unit;

/**
 * One row of the suite.
 *
 * @param file file it stands in, without ending
 * @param id unique name
 * @param subject what is computed
 * @param inputs inputs as written
 * @param expected expected value as written
 * @param tolerance tolerance as written
 * @param grade evidence grade
 * @param source where the expected value stands
 */
public record ReferenceCase(
        String file,
        String id,
        String subject,
        String inputs,
        String expected,
        String tolerance,
        EvidenceGrade grade,
        String source) {

    /** The row of a line of a file, by column. */
    static ReferenceCase of(String file, Map<String, String> row) {
        return new ReferenceCase(
                file,
                column(row, "id"),
                column(row, "subject"),
                column(row, "inputs"),
                column(row, "expected"),
                column(row, "tolerance"),
                gradeOf(row.getOrDefault("grade", "assumed")),
                row.getOrDefault("source", ""));
    }

    private static String column(Map<String, String> row, String name) {
        return Objects.requireNonNull(row.get(name), name);
    }

    static EvidenceGrade gradeOf(String text) {
        return EvidenceGrade.valueOf(text.toUpperCase(Locale.ROOT).replace('-', '_'));
    }

    /** Expected value in SI, read as a quantity of the answer's kind. */
    public double expectedSi(Kind<?> kind) {
        return Inputs.siOf(kind, expected);
    }

    /** Allowed deviation in SI. */
    public double toleranceSi(Kind<?> kind) {
        if (tolerance.endsWith("%")) {
            return Inputs.siOf(Kind.RATIO, tolerance) * Math.abs(expectedSi(kind));
        }
        return differenceSi(kind, tolerance);
    }

    private static <Q extends Quantity<Q>> double differenceSi(Kind<Q> kind, String text) {
        Quantity<Q> difference = kind.parse(text);
        return dev.waterjet.measure.Scale.of(kind, difference.getUnit())
                .differenceToSi(difference.getValue().doubleValue());
    }

    /** Prints a value of the result in the unit of the expected value. */
    public String text(Kind<?> kind, double si, int digits) {
        return printedIn(kind, si, expected, digits);
    }

    private static <Q extends Quantity<Q>> String printedIn(Kind<Q> kind, double si, String like, int digits) {
        Unit<Q> unit = kind.parse(like).getUnit();
        return QuantityText.print(kind, kind.of(si), unit, digits);
    }

    @Override
    public String toString() {
        return id;
    }
}

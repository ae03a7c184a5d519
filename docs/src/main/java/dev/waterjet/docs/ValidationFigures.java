package dev.waterjet.docs;

import dev.waterjet.evidence.EvidenceGrade;
import dev.waterjet.examples.chart.Chart;
import java.util.List;

/** Figure of deviations from the reference suite. */
final class ValidationFigures {

    /** Where deviations that are only rounding are drawn. */
    private static final double FLOOR_PERCENT = 1e-5;

    private static final double CEILING_PERCENT = 100;

    private ValidationFigures() {}

    static List<Figure> all() {
        return List.of(new Figure("validation-deviations", ValidationFigures::deviations));
    }

    private static String deviations() {
        List<Validation.Checked> all = Validation.checked();
        Chart chart = Chart.of(
                        "Deviation of each row of the reference suite",
                        "Relative deviation against relative tolerance, on logarithmic axes. Every point lies below the"
                                + " line where both are equal; deviations under 0.00001 percent are drawn there.")
                .x("tolerance [% of expected]")
                .y("deviation [% of expected], 0.00001 stands for less")
                .logX()
                .logY()
                .line("limit", new double[] {FLOOR_PERCENT, CEILING_PERCENT}, new double[] {
                    FLOOR_PERCENT, CEILING_PERCENT
                });
        for (EvidenceGrade grade : EvidenceGrade.values()) {
            List<Validation.Checked> rows =
                    all.stream().filter(one -> one.row().grade() == grade).toList();
            if (!rows.isEmpty()) {
                chart.points(
                        grade.label(),
                        rows.stream()
                                .mapToDouble(one -> bounded(one.relativeTolerance()))
                                .toArray(),
                        rows.stream()
                                .mapToDouble(one -> bounded(Math.abs(one.relativeDeviation())))
                                .toArray());
            }
        }
        return chart.svg(720, 480);
    }

    private static double bounded(double ratio) {
        return Math.min(CEILING_PERCENT, Math.max(FLOOR_PERCENT, 100 * ratio));
    }
}

package dev.waterjet.part;

import static org.assertj.core.api.Assertions.assertThat;

import dev.waterjet.measure.Kind;
import dev.waterjet.reference.GeometryRow;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Conditioned paths against closed forms. The time along the pieces, by text-book kinematics and stops at corners, must be
 * that of the curve of which the path is a sample.
 */
class ConditioningReferenceTest {

    static List<GeometryRow> rows() {
        return GeometryRow.read("conditioning");
    }

    @ParameterizedTest
    @MethodSource("rows")
    void theTimeAlongThePiecesIsThatOfTheCurve(GeometryRow row) {
        double expected = Double.parseDouble(row.expected());

        double time = time(row);

        assertThat(time).isBetween(expected * (1 - row.tolerance()), expected * (1 + row.tolerance()));
    }

    /** Time from rest to rest along the conditioned path of a row. */
    static double time(GeometryRow row) {
        ConditionedContour conditioned = ContourConditioner.defaults()
                .withTolerance(Kind.LENGTH.of(row.millimetres("tolerance")))
                .withFlattening(Kind.LENGTH.of(row.millimetres("flattening")))
                .condition(row.contour());
        double feed = row.millimetres("F");
        double along = row.number("a_path");
        if (row.settings().containsKey("j_path")) {
            assertThat(conditioned.contour().size()).isEqualTo(1);
            // double-S from rest to rest that reaches its feed
            return conditioned.contour().lengthSi() / feed + feed / along + along / row.number("j_path");
        }
        double across = row.settings().containsKey("a_across") ? row.number("a_across") : Double.POSITIVE_INFINITY;
        return time(conditioned, feed, along, across);
    }

    private static double time(ConditionedContour conditioned, double feed, double along, double across) {
        Contour contour = conditioned.contour();
        int n = contour.size();
        double[] length = new double[n];
        double[] cap = new double[n];
        double[] node = new double[n + 1];
        EdgeCursor edge = new EdgeCursor();
        for (int i = 0; i < n; i++) {
            contour.load(i, edge);
            length[i] = edge.length();
            cap[i] = edge.isArc() ? Math.min(feed, Math.sqrt(across * edge.radius())) : feed;
        }
        for (int i = 1; i < n; i++) {
            node[i] = conditioned.isSmooth(i) ? Math.min(cap[i - 1], cap[i]) : 0;
            node[i] = Math.min(node[i], Math.sqrt(node[i - 1] * node[i - 1] + 2 * along * length[i - 1]));
        }
        double sum = 0;
        for (int i = n - 1; i >= 0; i--) {
            node[i] = Math.min(node[i], Math.sqrt(node[i + 1] * node[i + 1] + 2 * along * length[i]));
        }
        for (int i = 0; i < n; i++) {
            double v0 = node[i];
            double v1 = node[i + 1];
            double peak = Math.min(cap[i], Math.sqrt((v0 * v0 + v1 * v1) / 2 + along * length[i]));
            double ramps = (2 * peak * peak - v0 * v0 - v1 * v1) / (2 * along);
            sum += (2 * peak - v0 - v1) / along + (length[i] - ramps) / peak;
        }
        return sum;
    }
}

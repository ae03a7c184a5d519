package dev.waterjet.toolpath;

import static dev.waterjet.measure.Measures.degrees;
import static dev.waterjet.measure.Measures.millimetres;
import static org.assertj.core.api.Assertions.assertThat;

import dev.waterjet.measure.Kind;
import dev.waterjet.part.Contour;
import dev.waterjet.part.EdgeCursor;
import dev.waterjet.part.Part;
import dev.waterjet.part.Point;
import dev.waterjet.part.Side;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Where a lead enters when there is room everywhere: on a straight edge before an arc, and on the longest. */
class LeadPreferenceTest {

    private static final CuttingRules RULES = CuttingRules.of(millimetres(0.8), millimetres(10));

    /** Edge of a contour that is nearest to the entry of its suggested lead. */
    private static int entered(Contour contour) {
        Point entry = LeadPlacer.of(Part.of(contour), RULES).suggest(0).entry();
        EdgeCursor edge = new EdgeCursor();
        int nearest = 0;
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i < contour.size(); i++) {
            contour.load(i, edge);
            double distance = edge.distance(entry.xSi(), entry.ySi());
            nearest = distance < least ? i : nearest;
            least = Math.min(least, distance);
        }
        assertThat(least).isLessThan(1e-6);
        return nearest;
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, 20, 90, 145, 260})
    void aStraightEdgeIsEnteredBeforeALongerArc(double turn) {
        Contour half = Contour.from(Point.millimetres(0, -50))
                .arcTo(Point.millimetres(0, 50), Point.millimetres(0, 0), Side.LEFT)
                .lineTo(Point.millimetres(0, -50))
                .close()
                .rotatedBy(degrees(turn));

        assertThat(entered(half)).isEqualTo(1);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, 20, 90, 145, 260})
    void theLongestStraightEdgeIsEntered(double turn) {
        Contour kite = Contour.from(Point.millimetres(0, 0))
                .lineTo(Point.millimetres(60, 5))
                .lineTo(Point.millimetres(140, 45))
                .lineTo(Point.millimetres(20, 60))
                .close()
                .rotatedBy(degrees(turn));

        assertThat(entered(kite)).isEqualTo(2);
        Contour later = kite.startingAt(
                Kind.LENGTH.of(0.3e-3 + Kind.LENGTH.si(kite.edge(0).length())));
        assertThat(entered(later)).isEqualTo(1);
    }
}

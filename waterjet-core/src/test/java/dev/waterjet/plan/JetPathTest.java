package dev.waterjet.plan;

import static dev.waterjet.measure.Measures.millimetres;
import static dev.waterjet.plan.PartPlannerTest.MEDIUM;
import static dev.waterjet.plan.PartPlannerTest.PLATE;
import static dev.waterjet.plan.PartPlannerTest.SETUP;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.measure.Kind;
import dev.waterjet.motion.FeedPlan;
import dev.waterjet.motion.FeedPlanner;
import dev.waterjet.part.Contour;
import dev.waterjet.part.EdgeCursor;
import dev.waterjet.part.Part;
import dev.waterjet.part.Point;
import dev.waterjet.part.Side;
import dev.waterjet.program.CutFeeds;
import dev.waterjet.program.OffsetFeed;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Feed words along a path of the jet axis take the time of the plan, whatever lies around corners and before the first word. */
class JetPathTest {

    private static JetPiece line(double x0, double x1, double from, double to) {
        EdgeCursor edge = new EdgeCursor();
        edge.line(x0, 0, x1, 0);
        return new JetPiece(edge, MEDIUM, 0, from, to);
    }

    private static JetPiece arc(double x, double radius, double radiusM, double from, double to) {
        EdgeCursor edge = new EdgeCursor();
        edge.arc(x, 0, x, 2 * radius, x, radius, Math.PI);
        return new JetPiece(edge, MEDIUM, radiusM, from, to);
    }

    /** Across to the start of the offset, 20 mm, around a corner, back 15 mm: lengths along the words 20 and 15 mm. */
    private static JetPath path(boolean startsAcross) {
        List<JetPiece> pieces = new ArrayList<>();
        if (startsAcross) {
            pieces.add(line(-0.002, -0.001, 0, 0));
            pieces.add(line(-0.001, 0, 0, 0));
        }
        pieces.add(line(0, 0.02, 0, 0.02));
        pieces.add(arc(0.02, 0.003, 0, 0.02, 0.02));
        EdgeCursor back = new EdgeCursor();
        back.line(0.02, 0.006, 0.005, 0.006);
        pieces.add(new JetPiece(back, MEDIUM, 0, 0.02, 0.035));
        return JetPath.of(pieces, new double[] {0.02, 0.035});
    }

    private static FeedPlan plan(JetPath path) {
        return FeedPlanner.of(SETUP.machine(), SETUP.conditions(PLATE)).plan(path.axis(), Side.LEFT);
    }

    private static double[] sums(CutFeeds feeds) {
        double length = 0;
        double time = 0;
        for (int i = 0; i < feeds.feeds().size(); i++) {
            length += feeds.paths().si(i);
            time += feeds.paths().si(i) / feeds.feeds().si(i);
        }
        return new double[] {length, time};
    }

    @Test
    void theFeedsTakeTheTimeAndTheLengthOfTheAxis() {
        for (boolean startsAcross : new boolean[] {false, true}) {
            JetPath path = path(startsAcross);
            FeedPlan plan = plan(path);
            for (OffsetFeed convention : OffsetFeed.values()) {
                CutFeeds feeds = path.feeds(plan, 0.03, convention);
                double[] sums = sums(feeds);

                assertThat(sums[0]).isCloseTo(path.axis().lengthSi(), within(1e-9));
                assertThat(sums[1]).isCloseTo(Kind.TIME.si(plan.time()), within(1e-6 * Kind.TIME.si(plan.time())));
                assertThat(feeds.ends().si(feeds.ends().size() - 1)).isEqualTo(0.035);
                assertThat(feeds.ends().toSi()).contains(0.02);
            }
        }
    }

    /** Beside a programmed arc a word that counts along the edge counts as much more as the edge is longer. */
    @Test
    void alongAnArcTheWordsCountTheEdgeOrTheAxis() {
        JetPath path = JetPath.of(List.of(arc(0, 0.01, 0.0105, 0, Math.PI * 0.0105)), new double[] {Math.PI * 0.0105});
        FeedPlan plan = plan(path);

        assertThat(sums(path.feeds(plan, 0.03, OffsetFeed.AXIS))[0]).isCloseTo(Math.PI * 0.01, within(1e-9));
        assertThat(sums(path.feeds(plan, 0.03, OffsetFeed.EDGE))[0]).isCloseTo(Math.PI * 0.0105, within(1e-9));
        for (OffsetFeed convention : OffsetFeed.values()) {
            assertThat(sums(path.feeds(plan, 0.03, convention))[1])
                    .isCloseTo(Kind.TIME.si(plan.time()), within(1e-6 * Kind.TIME.si(plan.time())));
        }
    }

    /** A tab leaves half its width, half a kerf and four kerf widths to the entry: nearer, the lead enters elsewhere. */
    @Test
    void theEntryKeepsFourKerfWidthsFromATab() {
        Part part = Part.of(Contour.rectangle(Point.millimetres(0, 0), Point.millimetres(120, 90), MEDIUM));
        PartPlanner planner =
                PartPlanner.of(SETUP).withKerfWidth(millimetres(1)).withTabWidth(millimetres(2));
        Point entry = Point.millimetres(60, 0);
        assertThat(Kind.LENGTH.si(entry(planner.plan(part, PLATE)).distance(entry)))
                .isLessThan(1e-3);
        double room = (2 + 1) / 2.0 + 4;
        for (double way : new double[] {-1, 1}) {
            for (double more : new double[] {-0.05, 0.05}) {
                Point tab = Point.millimetres(60 + way * (room + more), 0);
                PartPlan plan = planner.withTabs(List.of(tab)).plan(part, PLATE);

                assertThat(Kind.LENGTH.si(entry(plan).distance(entry)) < 1e-3).isEqualTo(more > 0);
            }
        }
    }

    /** Where the lead meets the path. */
    private static Point entry(PartPlan plan) {
        return plan.moves().stream()
                .filter(move -> move.purpose() == Move.Purpose.CUT)
                .findFirst()
                .orElseThrow()
                .start();
    }
}

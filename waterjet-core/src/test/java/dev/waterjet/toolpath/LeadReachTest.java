package dev.waterjet.toolpath;

import static dev.waterjet.Refusals.assertRefused;
import static dev.waterjet.measure.Measures.millimetres;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.measure.Kind;
import dev.waterjet.part.Contour;
import dev.waterjet.part.ContourBuilder;
import dev.waterjet.part.EdgeCursor;
import dev.waterjet.part.GeometryException;
import dev.waterjet.part.Part;
import dev.waterjet.part.Point;
import dev.waterjet.part.Side;
import dev.waterjet.quality.CutQuality;
import dev.waterjet.quality.EdgeRequirement;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** Leads on contours that the jet passes in part only: the entry lies where it passes. */
class LeadReachTest {

    private static final EdgeRequirement MEDIUM = EdgeRequirement.of(CutQuality.MEDIUM);
    private static final double KERF_MM = 1.1;
    private static final CuttingRules RULES = CuttingRules.of(millimetres(KERF_MM), millimetres(10));
    private static final Contour PLATE =
            Contour.rectangle(Point.millimetres(-100, -100), Point.millimetres(100, 100), MEDIUM);

    /** A round chamber of 16 mm, a neck of 0.8 mm, and a longer straight slot that the path of the jet leaves out. */
    private static Contour keyhole() {
        return Contour.from(Point.millimetres(0, -0.4))
                .lineTo(Point.millimetres(5, -0.4))
                .lineTo(Point.millimetres(5, -2))
                .lineTo(Point.millimetres(23, -2))
                .lineTo(Point.millimetres(23, 2))
                .lineTo(Point.millimetres(5, 2))
                .lineTo(Point.millimetres(5, 0.4))
                .lineTo(Point.millimetres(0, 0.4))
                .arcTo(Point.millimetres(0, -0.4), Point.millimetres(-8, 0), Side.LEFT)
                .close();
    }

    @Test
    void theEntryLiesInTheChamberThatTheJetCuts() {
        Part part = Part.of(PLATE, keyhole());
        Lead lead = LeadPlacer.of(part, RULES).suggest(0);

        assertThat(lead.entry().xSi()).isLessThan(1e-3);
        assertThat(cutClearance(part, lead.toolPath())).isGreaterThanOrEqualTo(0.5e-3 * KERF_MM - 1e-6);
        assertThat(cutLength(lead.toolPath())).isCloseTo(2 * Math.PI * (8.01e-3 - 0.55e-3), within(1e-3));
    }

    @Test
    void anEntryInAChamberThatTheJetLeavesOutIsRefused() {
        LeadPlacer placer = LeadPlacer.of(Part.of(PLATE, keyhole()), RULES);

        assertRefused(() -> placer.at(0, millimetres(15)), "entry-out-of-reach");
    }

    /** Holes about as wide as the kerf, of any shape: what is cut keeps half a kerf from the part, or is refused by name. */
    @Test
    void narrowHolesAreCutWhereTheJetFitsOrRefused() {
        int cut = 0;
        for (int seed = 0; seed < 150; seed++) {
            Part part = Part.of(PLATE, ring(new Random(seed)));
            try {
                ToolPath path = LeadPlacer.of(part, RULES).suggest(0).toolPath();
                assertThat(cutClearance(part, path)).as("seed %d", seed).isGreaterThan(0.5e-3 * KERF_MM - 1.2e-5);
                cut++;
            } catch (GeometryException refused) {
                assertThat(Set.of("jet-does-not-fit", "entry-out-of-reach"))
                        .as("seed %d", seed)
                        .contains(refused.code());
            }
        }
        assertThat(cut).isBetween(60, 149);
    }

    /** Places up to 5 um beyond the ends of an arc belong to the end that is nearer, not to the other one. */
    @Test
    void aPlaceBesideAnEndOfAnArcIsThatEnd() {
        EdgeCursor arc = new EdgeCursor();
        for (double sweep : new double[] {0.075, -0.075, 3, -3, 6.2}) {
            double end = Math.toRadians(40) + sweep;
            arc.arc(
                    Math.cos(Math.toRadians(40)),
                    Math.sin(Math.toRadians(40)),
                    Math.cos(end),
                    Math.sin(end),
                    0,
                    0,
                    sweep);
            double before = Math.toRadians(40) - Math.signum(sweep) * 5e-3;
            double after = end + Math.signum(sweep) * 5e-3;
            double within = Math.toRadians(40) + 0.3 * sweep;

            assertThat(arc.shareAt(Math.cos(before), Math.sin(before))).isZero();
            assertThat(arc.shareAt(Math.cos(after), Math.sin(after))).isOne();
            assertThat(arc.shareAt(Math.cos(within), Math.sin(within))).isCloseTo(0.3, within(1e-12));
        }
    }

    /** The path of the jet would be a loop of 0.03 mm: the pierce alone makes such a hole. */
    @Test
    void aHoleAsWideAsTheKerfIsRefused() {
        for (double more : new double[] {-0.1, 0, 1e-6, 0.002, 0.01}) {
            Contour hole = Contour.circle(Point.millimetres(3, 2), millimetres((KERF_MM + more) / 2), MEDIUM);

            assertRefused(() -> LeadPlacer.of(Part.of(PLATE, hole), RULES).suggest(0), "jet-does-not-fit");
        }
        Contour wider = Contour.circle(Point.millimetres(3, 2), millimetres(KERF_MM / 2 + 0.02), MEDIUM);
        assertThat(cutLength(
                        LeadPlacer.of(Part.of(PLATE, wider), RULES).suggest(0).toolPath()))
                .isCloseTo(2 * Math.PI * 2e-5, within(1e-9));
    }

    private static Contour ring(Random random) {
        int n = 3 + random.nextInt(8);
        double size = 0.7 + 1.6 * random.nextDouble();
        ContourBuilder builder = null;
        double beforeX = 0;
        double beforeY = 0;
        for (int i = 0; i < n; i++) {
            double angle = 2 * Math.PI * (i + 0.7 * random.nextDouble()) / n;
            double radius = size * (0.35 + 0.65 * random.nextDouble());
            double x = radius * Math.cos(angle);
            double y = radius * Math.sin(angle);
            Point to = Point.millimetres(x, y);
            if (builder == null) {
                builder = Contour.from(to);
            } else if (random.nextInt(3) == 0) {
                double bulge = 0.15 * (random.nextDouble() - 0.5);
                builder.arcThrough(
                        Point.millimetres(
                                (beforeX + x) / 2 - bulge * (y - beforeY), (beforeY + y) / 2 + bulge * (x - beforeX)),
                        to);
            } else {
                builder.lineTo(to);
            }
            beforeX = x;
            beforeY = y;
        }
        if (builder == null) {
            throw new AssertionError("a ring has corners");
        }
        return builder.close();
    }

    private static double cutLength(ToolPath path) {
        EdgeCursor edge = new EdgeCursor();
        double sum = 0;
        for (int i = 0; i < path.size(); i++) {
            path.contour().load(i, edge);
            sum += path.purpose(i) == ToolPath.Purpose.CUT ? edge.length() : 0;
        }
        return sum;
    }

    /** Least distance of what is cut along the part from the part, sampled. */
    private static double cutClearance(Part part, ToolPath path) {
        EdgeCursor edge = new EdgeCursor();
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i < path.size(); i++) {
            path.contour().load(i, edge);
            for (int k = 0; k <= 20 && path.purpose(i) == ToolPath.Purpose.CUT; k++) {
                Point at = Point.ofSi(edge.xAt(k / 20.0), edge.yAt(k / 20.0));
                least = Math.min(least, Kind.LENGTH.si(part.contours().get(0).clearance(at)));
            }
        }
        return least;
    }
}

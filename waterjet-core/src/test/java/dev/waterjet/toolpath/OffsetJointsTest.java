package dev.waterjet.toolpath;

import static dev.waterjet.measure.Measures.degrees;
import static dev.waterjet.measure.Measures.millimetres;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.part.Contour;
import dev.waterjet.part.ContourBuilder;
import dev.waterjet.part.EdgeCursor;
import dev.waterjet.part.Part;
import dev.waterjet.part.Point;
import dev.waterjet.part.Side;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Joints of offset paths: ramps beside arcs, ends of open paths, extensions that meet, entries at a vertex. */
class OffsetJointsTest {

    /** Two straight flanks of 30 mm, joined by half circles of 10 mm; counter-clockwise from the lower flank. */
    private static Contour stadium(double turn) {
        return Contour.from(Point.millimetres(0, -10))
                .lineTo(Point.millimetres(30, -10))
                .arcTo(Point.millimetres(30, 10), Point.millimetres(30, 0), Side.LEFT)
                .lineTo(Point.millimetres(0, 10))
                .arcTo(Point.millimetres(0, -10), Point.millimetres(0, 0), Side.LEFT)
                .close()
                .rotatedBy(degrees(turn));
    }

    private static Contour path(Contour contour, Side side, double... offsetsMm) {
        double[] offsets = new double[offsetsMm.length];
        for (int i = 0; i < offsets.length; i++) {
            offsets[i] = offsetsMm[i] * 1e-3;
        }
        return KerfOffset.perEdge(QuantityArray.ofSi(Kind.LENGTH, offsets))
                .apply(contour, side)
                .path()
                .contour();
    }

    /** The ramp of twenty times the difference lies beside the edge of the smaller offset and touches its path. */
    @Test
    void rampsBesideArcsTouchTheNarrowPath() {
        for (double turn : new double[] {0, 50, 201}) {
            for (Side side : Side.values()) {
                Contour stadium = stadium(turn);
                assertRamps(stadium, path(stadium, side, 0.6, 0.5, 0.6, 0.5), new double[] {0.6, 0.5, 0.6, 0.5});
                assertRamps(stadium, path(stadium, side, 0.5, 0.6, 0.5, 0.6), new double[] {0.5, 0.6, 0.5, 0.6});
                assertRamps(stadium, path(stadium, side, 0.45, 0.5, 0.55, 0.6), new double[] {0.45, 0.5, 0.55, 0.6});
            }
        }
    }

    /** The sweep of each arc of a path takes its start to its end, in pieces that a ramp has shortened too. */
    @Test
    void arcsEndWhereTheirSweepsLeadTo() {
        for (Side side : Side.values()) {
            for (double[] offsets : new double[][] {{0.6, 0.5, 0.7, 0.4}, {0.5, 0.6, 0.4, 0.7}, {0.5, 0.6, 0.7, 0.8}}) {
                Contour path = path(stadium(37), side, offsets);
                EdgeCursor edge = new EdgeCursor();
                int arcs = 0;
                for (int i = 0; i < path.size(); i++) {
                    path.load(i, edge);
                    if (edge.isArc()) {
                        double cos = Math.cos(edge.sweep());
                        double sin = Math.sin(edge.sweep());
                        double dx = edge.startX() - edge.centreX();
                        double dy = edge.startY() - edge.centreY();
                        assertThat(edge.centreX() + cos * dx - sin * dy).isCloseTo(edge.endX(), within(1e-9));
                        assertThat(edge.centreY() + sin * dx + cos * dy).isCloseTo(edge.endY(), within(1e-9));
                        arcs++;
                    }
                }
                assertThat(arcs).isGreaterThanOrEqualTo(2);
            }
        }
    }

    private static void assertRamps(Contour part, Contour path, double[] offsetsMm) {
        int n = offsetsMm.length;
        EdgeCursor edge = new EdgeCursor();
        int narrow = 0;
        for (double[] at : Plane.samples(path, 40)) {
            int nearest = 0;
            double least = Double.POSITIVE_INFINITY;
            for (int i = 0; i < n; i++) {
                part.load(i, edge);
                double away = Plane.beside(edge, at[0], at[1]);
                nearest = away < least ? i : nearest;
                least = Math.min(least, away);
            }
            part.load(nearest, edge);
            double along = edge.length() * edge.shareAt(at[0], at[1]);
            double own = offsetsMm[nearest];
            double before = Math.max(0, offsetsMm[(nearest + n - 1) % n] - own) * 1e-3;
            double after = Math.max(0, offsetsMm[(nearest + 1) % n] - own) * 1e-3;
            // beside a ramp the offset falls from one value to the other in a line, along an arc in a bend that touches
            double most = Math.max(
                    before * Math.max(0, 1 - along / (20 * before + 1e-12)),
                    after * Math.max(0, 1 - (edge.length() - along) / (20 * after + 1e-12)));
            assertThat(least - own * 1e-3).isBetween(-1e-9, most + 1e-9);
            narrow += most > 0 ? 1 : 0;
        }
        assertThat(narrow).isGreaterThan(20);
        assertThat(path.size()).isEqualTo(8);
        assertJoints(path);
    }

    /** Ramp and narrow path touch; where the ramp meets the wide path it turns by a slope of one in twenty, or one in ten. */
    private static void assertJoints(Contour path) {
        EdgeCursor edge = new EdgeCursor();
        EdgeCursor next = new EdgeCursor();
        for (int i = 0; i < path.size(); i++) {
            path.load(i, edge);
            path.load((i + 1) % path.size(), next);
            assertThat(Math.hypot(next.startX() - edge.endX(), next.startY() - edge.endY()))
                    .isLessThan(1e-12);
            double bend = Math.abs(next.turnFrom(edge));
            assertThat(bend).isLessThan(0.107);
            if (edge.isArc() && next.isArc()) {
                assertThat(bend).isLessThan(1e-9);
            }
        }
    }

    /**
     * At a blunt inner corner the wider path runs on beyond its edge to where it meets the narrower: with the offsets w and n and
     * the turn t by (w cos t - n)/sin t, to (w - n cos t)/sin t along the other edge.
     */
    @Test
    void atABluntInnerCornerTheOffsetLinesMeet() {
        double w = 0.6e-3;
        double n = 0.5e-3;
        for (double degrees : new double[] {5, 12, 20, 30}) {
            double t = Math.toRadians(degrees);
            double on = (w * Math.cos(t) - n) / Math.sin(t);
            double along = (w - n * Math.cos(t)) / Math.sin(t);
            for (Side side : Side.values()) {
                Contour line = Contour.fromSi(-0.03, 0)
                        .lineToSi(0, 0)
                        .lineToSi(0.03 * Math.cos(t), side.sign() * 0.03 * Math.sin(t))
                        .open();
                Contour back = line.reversed();
                for (Contour path : List.of(path(line, side, 0.6, 0.5), path(back, side.opposite(), 0.5, 0.6))) {
                    assertThat(path.lengthSi()).isCloseTo(0.03 + on + 0.03 - along, within(1e-9));
                }
            }
        }
    }

    /** Each end of an open path keeps the offset of its own edge, whatever that of the other end. */
    @Test
    void theEndsOfAnOpenPathHaveTheirOwnOffsets() {
        for (int seed = 0; seed < 40; seed++) {
            Random random = new Random(seed);
            double heading = 6 * random.nextDouble();
            double x = 0;
            double y = 0;
            int n = 2 + random.nextInt(4);
            double[] offset = random.doubles(n, 4e-4, 8e-4).toArray();
            Side side = seed % 2 == 0 ? Side.LEFT : Side.RIGHT;
            double first = heading;
            ContourBuilder builder = Contour.fromSi(0, 0);
            for (int i = 0; i < n; i++) {
                double length = 0.02 + 0.02 * random.nextDouble();
                x += length * Math.cos(heading);
                y += length * Math.sin(heading);
                builder.lineToSi(x, y);
                heading += i + 1 < n ? 2.4 * (random.nextDouble() - 0.5) : 0;
            }
            Contour path = KerfOffset.perEdge(QuantityArray.ofSi(Kind.LENGTH, offset))
                    .apply(builder.open(), side)
                    .path()
                    .contour();
            double one = side.sign() * offset[0];
            double other = side.sign() * offset[n - 1];

            assertThat(path.xSi(0)).isCloseTo(-one * Math.sin(first), within(1e-12));
            assertThat(path.ySi(0)).isCloseTo(one * Math.cos(first), within(1e-12));
            assertThat(path.end().xSi()).isCloseTo(x - other * Math.sin(heading), within(1e-12));
            assertThat(path.end().ySi()).isCloseTo(y + other * Math.cos(heading), within(1e-12));
        }
    }

    /** Teeth of one height whose gaps the jet does not enter: with extended corners it passes them in a straight line. */
    @Test
    void extensionsOverANarrowGapAreOneLine() {
        for (double gap : new double[] {0.2, 0.5, 0.9}) {
            for (double turn : new double[] {0, 90, 33}) {
                Contour comb = Plane.polygon(new double[][] {
                            {0, 0},
                            {0.02, 0},
                            {0.02, 0.01},
                            {0.013, 0.01},
                            {0.013, 0.004},
                            {0.013 - gap * 1e-3, 0.004},
                            {0.013 - gap * 1e-3, 0.01},
                            {0.006, 0.01},
                            {0.006, 0.003},
                            {0.006 - gap * 1e-3, 0.003},
                            {0.006 - gap * 1e-3, 0.01},
                            {0, 0.01}
                        })
                        .rotatedBy(degrees(turn));
                for (Contour contour : List.of(comb, comb.reversed())) {
                    OffsetResult result = KerfOffset.of(millimetres(0.5))
                            .withCorners(KerfOffset.CornerStyle.EXTENDED)
                            .withNarrowPlaces(KerfOffset.NarrowPlaces.SPLIT)
                            .apply(contour, contour.enclosedSide().opposite());

                    assertThat(result.paths()).hasSize(1);
                    // a frame of 20 by 10 mm, 0.5 mm farther out
                    assertThat(result.path().contour().lengthSi()).isCloseTo(0.064, within(1e-9));
                    // the flanks of both gaps and their grounds
                    assertThat(Kind.LENGTH.si(result.unreachedLength()))
                            .isCloseTo(0.013 * 2 + 2 * gap * 1e-3, within(1e-9));
                }
            }
        }
    }

    /** Entered anywhere, at a vertex too, the path goes all the way round and ends where it started. */
    @Test
    void theCutGoesAllTheWayRoundFromAnyEntry() {
        CuttingRules rules = CuttingRules.of(millimetres(0.8), millimetres(8));
        Contour stadium = stadium(17);
        Contour slab = Plane.polygon(new double[][] {{0, 0}, {0.03, 0.002}, {0.02, 0.02}, {0.002, 0.03}});
        for (Contour contour : List.of(stadium, slab, slab.reversed())) {
            double expected = contour.lengthSi() + 2 * Math.PI * 0.4e-3;
            LeadPlacer placer = LeadPlacer.of(Part.of(contour), rules);
            EdgeCursor edge = new EdgeCursor();
            double vertex = 0;
            for (int i = 0; i < contour.size(); i++) {
                for (double more : new double[] {0, 1e-9, 2e-8, 1e-6, 0.001, 0.007}) {
                    ToolPath path = placer.at(0, Kind.LENGTH.of(vertex + more)).toolPath();
                    assertThat(Kind.LENGTH.si(path.length(ToolPath.Purpose.CUT)))
                            .isCloseTo(expected, within(3e-8));
                    assertIsLoop(path);
                }
                contour.load(i, edge);
                vertex += edge.length();
            }
        }
    }

    private static void assertIsLoop(ToolPath path) {
        int first = 0;
        while (path.purpose(first) == ToolPath.Purpose.LEAD_IN) {
            first++;
        }
        int last = first;
        while (last + 1 < path.size() && path.purpose(last + 1) == ToolPath.Purpose.CUT) {
            last++;
        }
        Contour contour = path.contour();
        assertThat(Math.hypot(contour.xSi(first) - contour.xSi(last + 1), contour.ySi(first) - contour.ySi(last + 1)))
                .isLessThan(1e-9);
        assertThat(path.purpose(path.size() - 1)).isEqualTo(ToolPath.Purpose.LEAD_OUT);
        for (int i = first; i <= last; i++) {
            assertThat(path.sourceEdge(i)).isPresent();
            assertThat(path.sourceEnd(i)).isBetween(path.sourceStart(i), 1.0);
        }
    }
}

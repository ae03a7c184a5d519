package dev.waterjet.part;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;

/** Distances of paths from one line or arc against dense samples. */
class PieceCheckTest {

    private static final int SAMPLES = 400;

    private final EdgeCursor piece = new EdgeCursor();
    private final EdgeCursor edge = new EdgeCursor();

    private double ofVertices;
    private double ofArcs;
    private double ofAll;
    private int worstEdge;

    /** A line, or an arc of up to nearly a turn to either side. */
    private void drawPiece(Random random) {
        double heading = 2 * Math.PI * random.nextDouble();
        if (random.nextInt(3) == 0) {
            piece.line(1, 2, 1 + Math.cos(heading), 2 + Math.sin(heading));
            return;
        }
        double r = 0.5 + random.nextDouble();
        double sweep = (random.nextBoolean() ? 1 : -1) * (0.3 + 5.5 * random.nextDouble());
        double cx = 1 - r * Math.cos(heading);
        double cy = 2 - r * Math.sin(heading);
        piece.arc(1, 2, cx + r * Math.cos(heading + sweep), cy + r * Math.sin(heading + sweep), cx, cy, sweep);
    }

    /** A path from the start of the piece to its end, with vertices beside it, of chords and small arcs. */
    private EdgeArrays beside(Random random, double scatter, boolean hasArcs) {
        int n = 4 + random.nextInt(12);
        ContourBuilder builder = Contour.fromSi(piece.startX(), piece.startY());
        for (int i = 1; i <= n; i++) {
            double x = piece.endX();
            double y = piece.endY();
            if (i < n) {
                double off = scatter * (2 * random.nextDouble() - 1);
                double share = (i + 0.6 * random.nextDouble() - 0.3) / n;
                x = piece.xAt(share) - off * piece.directionYAt(share);
                y = piece.yAt(share) + off * piece.directionXAt(share);
            }
            if (hasArcs && random.nextBoolean()) {
                double share = (i - 0.5) / n;
                double off = 2 * scatter * (2 * random.nextDouble() - 1);
                builder.arcThrough(
                        Point.ofSi(
                                piece.xAt(share) - off * piece.directionYAt(share),
                                piece.yAt(share) + off * piece.directionXAt(share)),
                        Point.ofSi(x, y));
            } else {
                builder.lineToSi(x, y);
            }
        }
        return builder.open().edges;
    }

    private void sample(EdgeArrays path) {
        ofVertices = 0;
        ofArcs = 0;
        ofAll = 0;
        for (int i = 0; i < path.size(); i++) {
            path.load(i, edge);
            ofVertices = Math.max(ofVertices, piece.distance(edge.endX(), edge.endY()));
            for (int k = 0; k <= SAMPLES; k++) {
                double share = (double) k / SAMPLES;
                double distance = piece.distance(edge.xAt(share), edge.yAt(share));
                if (distance > ofAll) {
                    ofAll = distance;
                    worstEdge = i;
                }
                ofArcs = edge.isArc() ? Math.max(ofArcs, distance) : ofArcs;
            }
        }
    }

    /** Compares with another arc first, as one check serves many pieces. */
    private boolean isWithin(PieceCheck check, EdgeArrays path) {
        double other = 0.97 * piece.radius();
        double heading = Math.atan2(piece.startY() - piece.centreY(), piece.startX() - piece.centreX());
        check.arc(
                0,
                path.size(),
                piece.startX() - other * Math.cos(heading),
                piece.startY() - other * Math.sin(heading),
                Math.PI);
        check.isWithin(0, path.size() - 1);
        if (piece.isArc()) {
            check.arc(0, path.size(), piece.centreX(), piece.centreY(), piece.sweep());
        } else {
            check.line(0, path.size());
        }
        return check.isWithin(0, path.size() - 1);
    }

    @Test
    void theLargestDistanceAndItsEdgeAreThoseOfTheSamples() {
        Random random = new Random(1);
        for (int round = 0; round < 600; round++) {
            drawPiece(random);
            EdgeArrays path = beside(random, 0.05 * random.nextDouble(), round % 2 == 0);
            sample(path);
            PieceCheck check = new PieceCheck(path, 9);

            assertThat(isWithin(check, path)).isTrue();
            assertThat(check.worst).isCloseTo(ofAll, within(2e-5));
            path.load(check.worstEdge, edge);
            double there = 0;
            for (int k = 0; k <= SAMPLES; k++) {
                double share = (double) k / SAMPLES;
                there = Math.max(there, piece.distance(edge.xAt(share), edge.yAt(share)));
            }
            assertThat(there).as("edge %s, not %s", check.worstEdge, worstEdge).isCloseTo(ofAll, within(2e-5));
        }
    }

    /** Vertices must lie within the tolerance, arcs within five quarters of it; chords of an arc leave it by their sagitta. */
    @Test
    void aPathIsWithinExactlyIfItsVerticesAndArcsAre() {
        Random random = new Random(2);
        for (int round = 0; round < 600; round++) {
            drawPiece(random);
            EdgeArrays path = beside(random, 0.01 + 0.04 * random.nextDouble(), round % 2 == 0);
            sample(path);
            double needed = Math.max(ofVertices, ofArcs / 1.25);
            PieceCheck check = new PieceCheck(path, needed + 1e-4);
            assertThat(isWithin(check, path)).isTrue();
            assertThat(check.worst).isCloseTo(ofAll, within(2e-5));
            assertThat(isWithin(new PieceCheck(path, needed - 1e-5), path)).isFalse();
        }
    }

    @Test
    void aVertexIsWithinIfItsDistanceIs() {
        Random random = new Random(3);
        for (int round = 0; round < 300; round++) {
            drawPiece(random);
            EdgeArrays path = beside(random, 0.2, false);
            for (int vertex = 1; vertex < path.size(); vertex++) {
                double distance = piece.distance(path.x()[vertex], path.y()[vertex]);
                for (double tolerance : new double[] {distance * 0.999, distance * 1.001}) {
                    PieceCheck check = new PieceCheck(path, tolerance);
                    if (piece.isArc()) {
                        check.arc(0, path.size(), piece.centreX(), piece.centreY(), piece.sweep());
                    } else {
                        check.line(0, path.size());
                    }
                    assertThat(check.isVertexWithin(vertex)).isEqualTo(tolerance > distance);
                }
            }
        }
    }

    /** Vertices before the start and beyond the end of a piece are as far from it as from that end. */
    @Test
    void verticesBeyondTheEndsAreMeasuredToTheEnds() {
        EdgeArrays path = Contour.fromSi(0, 0)
                .lineToSi(-0.3, 0.4)
                .lineToSi(2.5, -1.2)
                .lineToSi(2, 0)
                .open()
                .edges;
        PieceCheck check = new PieceCheck(path, 2);
        check.line(0, 3);
        assertThat(check.isWithin(0, 0)).isTrue();
        assertThat(check.worst).isCloseTo(0.5, within(1e-15));
        assertThat(check.worstEdge).isZero();
        assertThat(check.isWithin(1, 2)).isTrue();
        assertThat(check.worst).isCloseTo(1.3, within(1e-15));
        assertThat(check.worstEdge).isEqualTo(1);
        check.line(0, 3);
        assertThat(check.worst).isZero();

        for (int turn = -1; turn <= 1; turn += 2) {
            // a quarter of the unit circle; one vertex before its start, one beyond its end, one opposite
            EdgeArrays round = Contour.fromSi(1, 0)
                    .lineToSi(1.1, -0.2 * turn)
                    .lineToSi(-0.3, 1.3 * turn)
                    .lineToSi(-1, -turn)
                    .lineToSi(0, turn)
                    .open()
                    .edges;
            PieceCheck arc = new PieceCheck(round, 9);
            arc.arc(0, 4, 0, 0, turn * Math.PI / 2);
            arc.isWithin(0, 0);
            assertThat(arc.worst).isCloseTo(Math.hypot(0.1, 0.2), within(1e-15));
            arc.isWithin(1, 1);
            assertThat(arc.worst).isCloseTo(Math.hypot(0.3, 0.3), within(1e-15));
            arc.isWithin(2, 2);
            assertThat(arc.worst).isCloseTo(Math.sqrt(5), within(1e-15));
            assertThat(arc.worstEdge).isEqualTo(2);
        }
    }

    /** Concentric arcs are as far from each other everywhere as their radii differ. */
    @Test
    void anArcOfTheSameCentreIsAsFarAsTheRadiiDiffer() {
        EdgeArrays path = Contour.fromSi(1, 0)
                .lineToSi(1.01, 0)
                .arcToSi(0, 1.01, 0, 0, Side.LEFT)
                .lineToSi(0, 1)
                .open()
                .edges;
        PieceCheck check = new PieceCheck(path, 0.0101);
        check.arc(0, 3, 0, 0, Math.PI / 2);
        assertThat(check.isWithin(0, 2)).isTrue();
        assertThat(check.worst).isCloseTo(0.01, within(1e-12));
        PieceCheck narrow = new PieceCheck(path, 0.0099);
        narrow.arc(0, 3, 0, 0, Math.PI / 2);
        assertThat(narrow.isWithin(0, 2)).isFalse();
    }
}

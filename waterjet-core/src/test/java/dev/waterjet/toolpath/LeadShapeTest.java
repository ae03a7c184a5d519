package dev.waterjet.toolpath;

import static dev.waterjet.measure.Measures.millimetres;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.measure.Kind;
import dev.waterjet.part.Contour;
import dev.waterjet.part.EdgeCursor;
import dev.waterjet.part.Point;
import dev.waterjet.quality.EdgeRequirement;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Forms of leads: continuous, smooth, at the entry, and for the edge of the part wider by the offset. */
class LeadShapeTest {

    private static final double R = 0.0035;
    private static final double L = 0.003;

    private static final List<LeadShape> SHAPES = List.of(
            new LeadShape(LeadShape.Kind.QUARTER, R, L),
            new LeadShape(LeadShape.Kind.QUARTER, R, 0),
            new LeadShape(LeadShape.Kind.HALF, R, 0),
            new LeadShape(LeadShape.Kind.SPIRAL, R, 0.001),
            new LeadShape(LeadShape.Kind.STRAIGHT, 0, L));

    /** Frames in which scrap lies on either side; in the first the scrap lies towards +y. */
    private static List<LeadFrame> frames() {
        Contour line = Contour.from(Point.millimetres(-10, 0))
                .lineTo(Point.millimetres(10, 0))
                .open();
        Contour other =
                Contour.rectangle(Point.millimetres(3, 4), Point.millimetres(50, 80), EdgeRequirement.defaults());
        return List.of(
                LeadFrame.of(line, 0.01, 1, 0),
                LeadFrame.of(line, 0.004, -1, 0.0004),
                LeadFrame.of(other, 0.06, 1, 0.0005),
                LeadFrame.of(other, 0.13, -1, 0.0005));
    }

    private static List<EdgeCursor> drawn(List<LeadShape.Piece> pieces, double x, double y, LeadFrame frame) {
        List<EdgeCursor> edges = new ArrayList<>();
        double fromX = x;
        double fromY = y;
        for (LeadShape.Piece piece : pieces) {
            EdgeCursor edge = new EdgeCursor();
            LeadShape.load(piece, fromX, fromY, frame, edge);
            edges.add(edge);
            fromX = piece.x();
            fromY = piece.y();
        }
        return edges;
    }

    private static double[] at(EdgeCursor edge, double share) {
        return Plane.at(edge, share);
    }

    private static void isAt(LeadFrame frame, double[] place, double along, double out) {
        double x = frame.entryX() + along * frame.alongX() - frame.scrap() * frame.alongY() * (frame.offsetM() + out);
        double y = frame.entryY() + along * frame.alongY() + frame.scrap() * frame.alongX() * (frame.offsetM() + out);
        assertThat(place[0]).isCloseTo(x, within(1e-12));
        assertThat(place[1]).isCloseTo(y, within(1e-12));
    }

    @Test
    void leadsAreSmoothAndMeetThePathAlongIt() {
        for (LeadFrame frame : frames()) {
            for (LeadShape shape : SHAPES) {
                for (double wider : new double[] {0, 0.0004}) {
                    List<EdgeCursor> in = drawn(shape.wayIn(wider), shape.pierceX(), shape.pierceY(), frame);
                    isAt(frame, at(in.get(0), 0), shape.pierceX(), shape.pierceY());
                    isAt(frame, at(in.get(in.size() - 1), 1), 0, -wider);
                    List<EdgeCursor> all = new ArrayList<>(in);
                    all.addAll(drawn(shape.wayOut(wider), 0, -wider, frame));
                    assertIsSmooth(all, wider == 0 ? 0 : 1);
                    assertThat(shape.wayOut(wider)).hasSize(shape.kind() == LeadShape.Kind.STRAIGHT ? 0 : 1);
                }
            }
        }
    }

    /** One piece goes on where the last one ends, and in its direction; the line that switches the offset on may turn. */
    private static void assertIsSmooth(List<EdgeCursor> edges, int first) {
        for (int i = 0; i + 1 < edges.size(); i++) {
            EdgeCursor edge = edges.get(i);
            EdgeCursor next = edges.get(i + 1);
            assertThat(Math.hypot(next.startX() - edge.endX(), next.startY() - edge.endY()))
                    .isLessThan(1e-12);
            if (i >= first) {
                assertThat(next.turnFrom(edge)).isCloseTo(0, within(1e-9));
            }
        }
        for (EdgeCursor edge : edges) {
            if (edge.isArc()) {
                double end = Math.hypot(edge.endX() - edge.centreX(), edge.endY() - edge.centreY());
                assertThat(end).isCloseTo(edge.radius(), within(1e-12));
                assertThat(Math.hypot(at(edge, 1)[0] - edge.endX(), at(edge, 1)[1] - edge.endY()))
                        .isLessThan(1e-12);
            }
        }
    }

    /** By hand: the line of a quarter, the heights of the others above the path. */
    @Test
    void theJetPiercesAtTheHeightOfItsForm() {
        assertThat(SHAPES.get(0).pierceX()).isEqualTo(-R);
        assertThat(SHAPES.get(0).pierceY()).isCloseTo(R + L, within(1e-15));
        assertThat(SHAPES.get(2).pierceX()).isZero();
        assertThat(SHAPES.get(2).pierceY()).isCloseTo(2 * R, within(1e-15));
        // the first half circle of 1 mm from the pierce point up to 2 R, then one of R
        assertThat(SHAPES.get(3).pierceY()).isCloseTo(2 * R - 0.002, within(1e-15));
        assertThat(SHAPES.get(4).pierceY()).isEqualTo(L);
        assertThat(length(SHAPES.get(0), 0)).isCloseTo(L + Math.PI / 2 * R, within(1e-12));
        assertThat(length(SHAPES.get(1), 0)).isCloseTo(Math.PI / 2 * R, within(1e-12));
        assertThat(length(SHAPES.get(2), 0)).isCloseTo(Math.PI * R, within(1e-12));
        assertThat(length(SHAPES.get(3), 0)).isCloseTo(Math.PI * (R + 0.001), within(1e-12));
        assertThat(length(SHAPES.get(4), 0)).isCloseTo(L, within(1e-12));
        // wider arcs, and a line out to where they start
        double w = 0.0004;
        assertThat(length(SHAPES.get(0), w)).isCloseTo(Math.hypot(L, w) + Math.PI / 2 * (R + w), within(1e-12));
        assertThat(length(SHAPES.get(1), w)).isCloseTo(w + Math.PI / 2 * (R + w), within(1e-12));
        assertThat(length(SHAPES.get(2), w)).isCloseTo(w + Math.PI * (R + w), within(1e-12));
        assertThat(length(SHAPES.get(3), w)).isCloseTo(w + Math.PI * (R + 0.001 + 2 * w), within(1e-12));
        assertThat(length(SHAPES.get(4), w)).isCloseTo(L + w, within(1e-12));
    }

    private static double length(LeadShape shape, double wider) {
        return drawn(shape.wayIn(wider), shape.pierceX(), shape.pierceY(), frames().get(0)).stream()
                .mapToDouble(EdgeCursor::length)
                .sum();
    }

    /** Beyond a turn of 60 degrees from the entry, or a margin above it, a lead keeps its full distance. */
    @Test
    void theFarPartOfALeadIsAllButTheTurnBesideTheEntry() {
        LeadFrame frame = frames().get(0);
        for (LeadShape shape : SHAPES.subList(0, 4)) {
            double height = R / 2;
            List<EdgeCursor> near = drawn(shape.wayIn(0), shape.pierceX(), shape.pierceY(), frame);
            List<EdgeCursor> far = drawn(shape.farIn(0.0001), shape.pierceX(), shape.pierceY(), frame);
            EdgeCursor last = far.get(far.size() - 1);
            isAt(frame, at(last, 1), -R * Math.sqrt(3) / 2, height);
            double farLength = far.stream().mapToDouble(EdgeCursor::length).sum();
            double nearLength = near.stream().mapToDouble(EdgeCursor::length).sum();
            assertThat(nearLength - farLength).isCloseTo(R * Math.PI / 3, within(1e-12));
            assertIsSmooth(far, 0);

            EdgeCursor out = drawn(shape.farOut(), shape.farOutX(), shape.farOutY(), frame)
                    .get(0);
            isAt(frame, at(out, 0), R * Math.sqrt(3) / 2, height);
            isAt(frame, at(out, 1), R, R);
            assertThat(out.length()).isCloseTo(R * Math.PI / 6, within(1e-12));
            assertIsSmooth(List.of(out), 0);
        }
        LeadShape straight = SHAPES.get(4);
        List<EdgeCursor> far = drawn(straight.farIn(0.0001), 0, L, frame);
        isAt(frame, at(far.get(0), 1), 0, 0.0001);
        assertThat(straight.farIn(L)).isEmpty();
        assertThat(straight.farIn(0.999 * L)).hasSize(1);
        assertThat(straight.farOut()).isEmpty();
    }

    /** The frame lies on the edge of the part at the distance along it; its out is the normal into the scrap. */
    @Test
    void aFrameLiesAtItsDistanceAlongTheContour() {
        Contour disc = Contour.circle(Point.millimetres(2, 3), millimetres(8), EdgeRequirement.defaults());
        double start = Math.atan2(disc.ySi(0) - 0.003, disc.xSi(0) - 0.002);
        for (double at = 0; at < 2 * Math.PI * 0.008; at += 0.004) {
            for (int scrap : new int[] {1, -1}) {
                LeadFrame frame = LeadFrame.of(disc, at, scrap, 0.0005);
                double turn = Kind.AREA.si(disc.signedArea()) > 0 ? 1 : -1;
                double angle = start + turn * at / 0.008;
                double radius = 0.008 - scrap * turn * 0.0005;

                assertThat(frame.entryX()).isCloseTo(0.002 + 0.008 * Math.cos(angle), within(1e-12));
                assertThat(frame.entryY()).isCloseTo(0.003 + 0.008 * Math.sin(angle), within(1e-12));
                assertThat(frame.x(0, 0)).isCloseTo(0.002 + radius * Math.cos(angle), within(1e-12));
                assertThat(frame.y(0, 0)).isCloseTo(0.003 + radius * Math.sin(angle), within(1e-12));
                assertThat(frame.x(0.001, 0) - frame.x(0, 0)).isCloseTo(-turn * 0.001 * Math.sin(angle), within(1e-12));
                assertThat(frame.y(0.001, 0) - frame.y(0, 0)).isCloseTo(turn * 0.001 * Math.cos(angle), within(1e-12));
            }
        }
    }
}

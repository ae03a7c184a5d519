package dev.waterjet.part;

import static dev.waterjet.Refusals.assertRefused;
import static dev.waterjet.measure.Measures.degrees;
import static dev.waterjet.measure.Measures.millimetres;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.measure.Kind;
import dev.waterjet.quality.CutQuality;
import dev.waterjet.quality.EdgeRequirement;
import org.junit.jupiter.api.Test;

/** Places along contours, other starts, and moved contours. */
class ContourPlacesTest {

    private static final EdgeRequirement FINE = EdgeRequirement.of(CutQuality.FINE);
    private static final EdgeRequirement ROUGH = EdgeRequirement.of(CutQuality.COARSE);

    /** Closed; edges of 10, 5 pi, 10 and 5 pi mm, counter-clockwise; the arcs stand out. */
    private static Contour bar() {
        return Contour.fromSi(0, 0)
                .requirement(FINE)
                .lineToSi(0.01, 0)
                .requirement(ROUGH)
                .arcToSi(0.01, 0.01, 0.01, 0.005, Side.LEFT)
                .requirement(FINE)
                .asCurve(true)
                .lineToSi(0, 0.01)
                .asCurve(false)
                .requirement(ROUGH)
                .arcToSi(0, 0, 0, 0.005, Side.LEFT)
                .close()
                .named("bar");
    }

    private static Contour open() {
        return Contour.fromSi(1, 1).lineToSi(1.03, 1).lineToSi(1.03, 1.02).open();
    }

    private static final double ARC = 0.005 * Math.PI;
    private static final double ROUND = 0.02 + 2 * ARC;

    private static void assertPlace(Contour contour, double distanceM, int edge, double share) {
        assertThat(contour.placeAtSi(distanceM).edge()).as("%s", distanceM).isEqualTo(edge);
        assertThat(contour.placeAtSi(distanceM).share()).isCloseTo(share, within(1e-9));
    }

    @Test
    void aPlaceIsTheEdgeAndTheShareOfItsLength() {
        assertPlace(bar(), 0, 0, 0);
        assertPlace(bar(), 0.004, 0, 0.4);
        assertPlace(bar(), 0.01, 1, 0);
        assertPlace(bar(), 0.01 + ARC / 4, 1, 0.25);
        assertPlace(bar(), 0.01 + ARC + 0.009, 2, 0.9);
        assertPlace(bar(), ROUND - ARC / 3, 3, 2.0 / 3);
    }

    @Test
    void aClosedContourIsPassedAnyNumberOfTimesInBothDirections() {
        assertPlace(bar(), ROUND + 0.004, 0, 0.4);
        assertPlace(bar(), 5 * ROUND + 0.004, 0, 0.4);
        assertPlace(bar(), 0.004 - ROUND, 0, 0.4);
        assertPlace(bar(), -ARC / 2, 3, 0.5);
        assertPlace(bar(), -3 * ROUND - ARC / 2, 3, 0.5);
    }

    @Test
    void anOpenPathHasPlacesUpToItsEnds() {
        assertPlace(open(), 0, 0, 0);
        assertPlace(open(), 0.04, 1, 0.5);
        assertPlace(open(), 0.05, 1, 1);
        assertPlace(open(), 0.05 + 0.9e-9, 1, 1);
        assertPlace(open(), -0.9e-9, 0, 0);
        assertRefused(() -> open().placeAtSi(0.05 + 1.2e-9), "must-be-at-most");
        assertRefused(() -> open().placeAtSi(-1.2e-9), "must-be-at-least");
    }

    @Test
    void anotherStartWithinAnEdgeCutsItInTwoAndKeepsAllElse() {
        EdgeCursor edge = new EdgeCursor();
        for (double share : new double[] {0.1, 0.5, 0.95}) {
            for (int first = 0; first < 4; first++) {
                double before = new double[] {0, 0.01, 0.01 + ARC, 0.02 + ARC}[first];
                double length = first % 2 == 0 ? 0.01 : ARC;
                Contour moved = bar().startingAt(Kind.LENGTH.of(before + share * length));

                bar().load(first, edge);
                assertThat(moved.isClosed()).isTrue();
                assertThat(moved.name()).isEqualTo("bar");
                assertThat(moved.size()).isEqualTo(5);
                assertThat(moved.start().xSi()).isCloseTo(edge.xAt(share), within(1e-12));
                assertThat(moved.start().ySi()).isCloseTo(edge.yAt(share), within(1e-12));
                assertThat(Kind.LENGTH.si(moved.edge(0).length())).isCloseTo((1 - share) * length, within(1e-12));
                assertThat(Kind.LENGTH.si(moved.edge(4).length())).isCloseTo(share * length, within(1e-12));
                for (int i = 0; i < 5; i++) {
                    int source = (first + i) % 4;
                    assertThat(moved.isArc(i)).isEqualTo(source % 2 == 1);
                    assertThat(moved.isCurve(i)).isEqualTo(source == 2);
                    assertThat(moved.requirement(i)).isEqualTo(source % 2 == 0 ? FINE : ROUGH);
                }
                assertThat(Kind.AREA.si(moved.signedArea())).isCloseTo(Kind.AREA.si(bar().signedArea()), within(1e-15));
            }
        }
    }

    /** Nearer to a vertex than the rounding of coordinates, 10 µm, the start is the vertex. */
    @Test
    void anotherStartAtAVertexCutsNoEdge() {
        for (double off : new double[] {-9e-6, 0, 9e-6}) {
            Contour moved = bar().startingAt(Kind.LENGTH.of(0.01 + off));
            assertThat(moved.size()).isEqualTo(4);
            assertThat(moved.start()).isEqualTo(Point.millimetres(10, 0));
            assertThat(moved.isArc(0)).isTrue();
        }
        assertThat(bar().startingAt(Kind.LENGTH.of(0.01 - 11e-6)).size()).isEqualTo(5);
        assertThat(bar().startingAt(Kind.LENGTH.of(0.01 + 11e-6)).size()).isEqualTo(5);
        assertThat(bar().startingAt(millimetres(0))).isEqualTo(bar());
        assertThat(bar().startingAt(Kind.LENGTH.of(ROUND - 5e-6))).isEqualTo(bar());
        assertRefused(() -> open().startingAt(millimetres(1)), "open-contour");
    }

    @Test
    void aTurnedContourHasItsPointsTurned() {
        Contour turned = bar().rotatedBy(degrees(30));
        double cos = Math.sqrt(3) / 2;
        EdgeCursor edge = new EdgeCursor();
        EdgeCursor source = new EdgeCursor();
        for (int i = 0; i < 4; i++) {
            bar().load(i, source);
            turned.load(i, edge);
            for (double share : new double[] {0, 0.3, 1}) {
                double x = source.xAt(share);
                double y = source.yAt(share);
                assertThat(edge.xAt(share)).isCloseTo(cos * x - y / 2, within(1e-15));
                assertThat(edge.yAt(share)).isCloseTo(x / 2 + cos * y, within(1e-15));
            }
            assertThat(turned.requirement(i)).isEqualTo(bar().requirement(i));
            assertThat(turned.isCurve(i)).isEqualTo(bar().isCurve(i));
        }
        assertThat(turned.name()).isEqualTo("bar");
        assertThat(turned.isClosed()).isTrue();
    }

    @Test
    void aReversedContourPassesTheSamePlacesBackwards() {
        Contour back = bar().reversed();
        EdgeCursor edge = new EdgeCursor();
        EdgeCursor source = new EdgeCursor();
        for (int i = 0; i < 4; i++) {
            bar().load(3 - i, source);
            back.load(i, edge);
            for (double share : new double[] {0, 0.3, 1}) {
                assertThat(edge.xAt(share)).isCloseTo(source.xAt(1 - share), within(1e-15));
                assertThat(edge.yAt(share)).isCloseTo(source.yAt(1 - share), within(1e-15));
            }
            assertThat(back.requirement(i)).isEqualTo(bar().requirement(3 - i));
            assertThat(back.isCurve(i)).isEqualTo(bar().isCurve(3 - i));
        }
        assertThat(back.reversed()).isEqualTo(bar());
        assertThat(back).isNotEqualTo(bar());
    }

    @Test
    void aTranslatedContourHasItsArcsMovedToo() {
        Contour moved = bar().translatedBy(Point.ofSi(0.3, -0.2));
        EdgeCursor edge = new EdgeCursor();
        EdgeCursor source = new EdgeCursor();
        for (int i = 0; i < 4; i++) {
            bar().load(i, source);
            moved.load(i, edge);
            assertThat(edge.xAt(0.4)).isCloseTo(source.xAt(0.4) + 0.3, within(1e-15));
            assertThat(edge.yAt(0.4)).isCloseTo(source.yAt(0.4) - 0.2, within(1e-15));
        }
        assertThat(moved.requirements()).containsExactlyElementsOf(bar().requirements());
    }

    @Test
    void theLabelIsTheNameInQuotes() {
        assertThat(bar().label()).isEqualTo("\"bar\"");
        assertThat(open().label()).isEqualTo("contour");
        assertThat(open()).hasToString("open contour of 2 edges from (1000 mm, 1000 mm)");
    }

    @Test
    void anOpenPathEnclosesWhatTheLineBetweenItsEndsEncloses() {
        Contour half = Contour.fromSi(5, 0).arcToSi(-5, 0, 0, 0, Side.LEFT).open();

        assertThat(half.isAround(Point.ofSi(0, 4.9))).isTrue();
        assertThat(half.isAround(Point.ofSi(0, 0.1))).isTrue();
        assertThat(half.isAround(Point.ofSi(0, -0.1))).isFalse();
        assertThat(half.isAround(Point.ofSi(4, 4))).isFalse();
        assertThat(Kind.AREA.si(half.signedArea())).isCloseTo(12.5 * Math.PI, within(1e-12));
        assertThat(Kind.AREA.si(open().signedArea())).isCloseTo(0.0003, within(1e-15));
    }

    @Test
    void whatIsAskedOfAnEdgeOrVertexIsRefusedBeyondTheLast() {
        assertThat(bar().xSi(4)).isZero();
        assertThat(bar().ySi(2)).isEqualTo(0.01);
        assertRefused(() -> bar().xSi(5), "no-such-index");
        assertRefused(() -> bar().ySi(5), "no-such-index");
        assertRefused(() -> bar().ySi(-1), "no-such-index");
        assertRefused(() -> bar().isArc(4), "no-such-index");
        assertRefused(() -> bar().isCurve(4), "no-such-index");
        assertRefused(() -> bar().requirement(4), "no-such-index");
        assertThat(bar().requirementIndex(0)).isEqualTo(bar().requirementIndex(2));
        assertThat(bar().withRequirement(FINE).requirements()).containsExactly(FINE);
    }

    /** Largest distance of an arc from its chord: r (1 - cos(a/2)); of a half circle its radius. */
    @Test
    void theSagittaOfAnArcIsThatOfItsAngle() {
        assertThat(bar().edges.sagitta(0)).isZero();
        assertThat(bar().edges.sagitta(1)).isCloseTo(0.005, within(1e-15));
        for (double angle = 0.2; angle < 6.2; angle += 0.5) {
            Contour arc = Contour.fromSi(3, 1)
                    .arcToSi(1 + 2 * Math.cos(angle), 1 + 2 * Math.sin(angle), 1, 1, Side.LEFT)
                    .open();
            double middleX = (3 + arc.end().xSi()) / 2;
            double middleY = (1 + arc.end().ySi()) / 2;
            EdgeCursor edge = new EdgeCursor();
            arc.load(0, edge);
            double rise = Math.hypot(edge.xAt(0.5) - middleX, edge.yAt(0.5) - middleY);
            assertThat(arc.edges.sagitta(0)).isCloseTo(rise, within(1e-12));
            assertThat(arc.edges.radius(0)).isCloseTo(2, within(1e-12));
            assertThat(arc.edges.chordSquared(0)).isCloseTo(16 * Math.pow(Math.sin(angle / 2), 2), within(1e-12));
        }
    }

    @Test
    void contoursThatDifferInOneNumberOrMarkAreNotEqual() {
        Contour bar = bar();
        assertThat(bar).isEqualTo(bar()).hasSameHashCodeAs(bar());
        for (int k = 0; k < 3; k++) {
            double[] moved = {k == 0 ? 0.011 : 0.01, k == 1 ? 0.001 : 0, k == 2 ? 0.006 : 0.005};
            Contour other = Contour.fromSi(0, moved[1])
                    .lineToSi(moved[0], moved[1])
                    .arcToSi(moved[0], 0.01 + moved[1], moved[0], moved[1] + 0.005, Side.LEFT)
                    .lineToSi(0, 0.01 + moved[1])
                    .arcToSi(0, moved[1], 0, moved[1] + 0.005, Side.LEFT)
                    .close();
            Contour same = Contour.fromSi(0, 0)
                    .lineToSi(0.01, 0)
                    .arcToSi(0.01, 0.01, 0.01, 0.005, Side.LEFT)
                    .lineToSi(0, 0.01)
                    .arcToSi(0, 0, 0, 0.005, Side.LEFT)
                    .close();
            assertThat(other.equals(same)).isEqualTo(k == 2);
        }
        // arcs between the same ends to either side, and of another centre
        Contour left = Contour.fromSi(0, 0).arcToSi(1, 1, 0, 1, Side.LEFT).open();
        Contour right = Contour.fromSi(0, 0).arcToSi(1, 1, 0, 1, Side.RIGHT).open();
        Contour flat = Contour.fromSi(0, 0).arcToSi(1, 1, -1, 2, Side.LEFT).open();
        assertThat(left).isNotEqualTo(right).isNotEqualTo(flat);
        assertThat(left).doesNotHaveSameHashCodeAs(right);
    }

    /** An open path is hollow at its corners within, on the side from which the part is seen. */
    @Test
    void anOpenPathHasInnerRadiiAtItsCornersWithin() {
        Contour hook = Contour.fromSi(0, 0)
                .lineToSi(0.02, 0)
                .arcToSi(0.03, 0.01, 0.02, 0.01, Side.LEFT)
                .lineToSi(0.03, 0.02)
                .lineToSi(0.05, 0.02)
                .open();
        assertThat(hook.minimumInnerRadius(Side.LEFT).map(Kind.LENGTH::si)).contains(0.0);
        assertThat(Kind.LENGTH.si(hook.minimumInnerRadius(Side.RIGHT).orElseThrow()))
                .isCloseTo(0.01, within(1e-9));
        Contour line = Contour.fromSi(0, 0).lineToSi(0.02, 0).open();
        assertThat(line.minimumInnerRadius(Side.LEFT)).isEmpty();
        assertThat(line.minimumInnerRadius(Side.RIGHT)).isEmpty();
    }
}

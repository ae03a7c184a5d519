package dev.waterjet.part;

import dev.waterjet.measure.Kind;
import dev.waterjet.quality.CutQuality;
import dev.waterjet.quality.EdgeRequirement;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.ObjectInputStream;
import java.io.ObjectOutputStream;
import java.util.Random;
import org.junit.jupiter.api.Test;
import static dev.waterjet.measure.Measures.millimetres;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

class ContourTest {

    private static final EdgeRequirement FINISH = EdgeRequirement.of(CutQuality.MEDIUM);

    /** A bar with round ends: 100 mm between the centres, 20 mm wide. */
    private static Contour bar() {
        return Contour.from(Point.millimetres(0, -10))
                .lineTo(Point.millimetres(100, -10))
                .arcTo(Point.millimetres(100, 10), Point.millimetres(100, 0), Side.LEFT)
                .lineTo(Point.millimetres(0, 10))
                .arcTo(Point.millimetres(0, -10), Point.millimetres(0, 0), Side.LEFT)
                .close();
    }

    @Test
    void lengthAndAreaOfABarAreThoseOfGeometry() {
        assertThat(Kind.LENGTH.si(bar().length())).isCloseTo(0.2 + 0.02 * Math.PI, within(1e-15));
        assertThat(Kind.AREA.si(bar().signedArea())).isCloseTo(0.002 + 1e-4 * Math.PI, within(1e-17));
        assertThat(Kind.AREA.si(bar().reversed().signedArea())).isCloseTo(-0.002 - 1e-4 * Math.PI, within(1e-17));
        assertThat(bar().enclosedSide()).isEqualTo(Side.LEFT);
        assertThat(bar().reversed().enclosedSide()).isEqualTo(Side.RIGHT);
    }

    @Test
    void theBoxHoldsTheArcsAndNotOnlyTheirEnds() {
        Box box = bar().box();

        assertThat(box.minimum().xSi()).isCloseTo(-0.01, within(1e-15));
        assertThat(box.maximum().xSi()).isCloseTo(0.11, within(1e-15));
        assertThat(Kind.LENGTH.si(box.height())).isCloseTo(0.02, within(1e-15));
    }

    @Test
    void pointsBetweenChordAndArcAreInside() {
        assertThat(bar().isAround(Point.millimetres(109, 0))).isTrue();
        assertThat(bar().isAround(Point.millimetres(50, 0))).isTrue();
        assertThat(bar().isAround(Point.millimetres(109, 9))).isFalse();
        Contour circle = Contour.circle(Point.millimetres(5, 5), millimetres(3), FINISH);
        assertThat(circle.isAround(Point.millimetres(5, 5))).isTrue();
        assertThat(circle.reversed().isAround(Point.millimetres(2.1, 5))).isTrue();
        assertThat(circle.isAround(Point.millimetres(8.1, 5))).isFalse();
    }

    @Test
    void areaInsideAgreesWithPointsCounted() {
        Contour contour = Contour.from(Point.millimetres(0, 0))
                .lineTo(Point.millimetres(40, 0))
                .arcTo(Point.millimetres(40, 30), Point.millimetres(45, 15), Side.RIGHT)
                .arcThrough(Point.millimetres(20, 45), Point.millimetres(0, 30))
                .close();
        Random random = new Random(7);
        int inside = 0;
        int tries = 200_000;
        for (int i = 0; i < tries; i++) {
            if (contour.isAround(Point.millimetres(-20 + 100 * random.nextDouble(), -20 + 100 * random.nextDouble()))) {
                inside++;
            }
        }
        double area = Kind.AREA.si(contour.signedArea());

        // four standard deviations of the count
        assertThat(0.01 * inside / tries).isCloseTo(area, within(0.01 * 4 * 0.5 / Math.sqrt(tries)));
    }

    @Test
    void clearanceOfCirclesIsThatOfTheirCentres() {
        Contour small = Contour.circle(Point.millimetres(0, 0), millimetres(3), FINISH);
        Contour large = Contour.circle(Point.millimetres(30, 40), millimetres(20), FINISH);

        assertThat(Kind.LENGTH.si(small.clearance(large))).isCloseTo(0.027, within(1e-12));
        assertThat(Kind.LENGTH.si(small.clearance(Contour.circle(Point.millimetres(1, 0), millimetres(10), FINISH))))
                .isCloseTo(0.006, within(1e-12));
        assertThat(Kind.LENGTH.si(small.clearance(Contour.circle(Point.millimetres(4, 0), millimetres(3), FINISH))))
                .isZero();
    }

    @Test
    void clearanceAgreesWithBruteForceOverSamples() {
        Random random = new Random(11);
        for (int round = 0; round < 200; round++) {
            Contour a = arcs(random, 0);
            Contour b = arcs(random, 30);
            double found = Kind.LENGTH.si(a.clearance(b));
            double sampled = sampledDistance(a, b, 200);

            // samples lie on the contours, so they can only be further apart; by at most one step of each
            assertThat(found).isLessThanOrEqualTo(sampled + 1e-12);
            assertThat(sampled - found).isLessThan(0.002);
        }
    }

    private static Contour arcs(Random random, double x) {
        ContourBuilder builder = Contour.from(Point.millimetres(x, 0));
        for (int i = 1; i <= 4; i++) {
            Point middle = Point.millimetres(x + 20 * random.nextDouble(), 10 * i - 5);
            Point end = Point.millimetres(x + 20 * random.nextDouble(), 10 * i);
            if (random.nextBoolean()) {
                builder.lineTo(end);
            } else {
                builder.arcThrough(middle, end);
            }
        }
        return builder.open();
    }

    private static double sampledDistance(Contour a, Contour b, int samples) {
        double least = Double.POSITIVE_INFINITY;
        EdgeCursor shape = new EdgeCursor();
        for (int edge = 0; edge < a.size(); edge++) {
            a.load(edge, shape);
            for (int i = 0; i <= samples; i++) {
                Point point = Point.ofSi(shape.xAt(i / (double) samples), shape.yAt(i / (double) samples));
                least = Math.min(least, Kind.LENGTH.si(b.clearance(point)));
            }
        }
        return least;
    }

    @Test
    void theTreeFindsWhatALoopOverAllPairsFinds() {
        Random random = new Random(5);
        double[] x = new double[2000];
        double[] y = new double[2000];
        for (int i = 0; i < x.length; i++) {
            x[i] = 0.001 * i;
            y[i] = 0.01 * random.nextDouble();
        }
        Contour wave = Contour.polylineSi(x, y, FINISH);
        Contour shifted = wave.translatedBy(Point.millimetres(0.35, 12.5));
        double least = Double.POSITIVE_INFINITY;
        EdgeCursor a = new EdgeCursor();
        EdgeCursor b = new EdgeCursor();
        for (int i = 0; i < wave.size(); i++) {
            wave.load(i, a);
            for (int j = Math.max(0, i - 20); j < Math.min(wave.size(), i + 20); j++) {
                shifted.load(j, b);
                least = Math.min(least, EdgeKernel.distance(a, b, new double[4]));
            }
        }

        assertThat(Kind.LENGTH.si(wave.clearance(shifted))).isCloseTo(least, within(1e-15));
    }

    @Test
    void innerRadiusIsTakenWhereThePartIsHollow() {
        assertThat(bar().minimumInnerRadius(Side.LEFT)).isEmpty();
        assertThat(Kind.LENGTH.si(bar().minimumInnerRadius(Side.RIGHT).orElseThrow()))
                .isCloseTo(0.01, within(1e-15));
        Contour square = Contour.rectangle(Point.millimetres(0, 0), Point.millimetres(10, 10), FINISH);
        assertThat(square.minimumInnerRadius(Side.LEFT)).isEmpty();
        assertThat(Kind.LENGTH.si(square.minimumInnerRadius(Side.RIGHT).orElseThrow()))
                .isZero();
    }

    @Test
    void samplesOfACircleHaveItsRadius() {
        int n = 360;
        ContourBuilder builder = Contour.fromSi(0.02, 0);
        for (int i = 1; i < n; i++) {
            builder.lineToSi(0.02 * Math.cos(2 * Math.PI * i / n), 0.02 * Math.sin(2 * Math.PI * i / n));
        }
        Contour sampled = builder.close();

        assertThat(Kind.LENGTH.si(sampled.minimumInnerRadius(Side.RIGHT).orElseThrow()))
                .isCloseTo(0.02, within(1e-8));
    }

    @Test
    void aClosedContourCanStartAnywhere() {
        Contour moved = bar().startingAt(millimetres(110));

        assertThat(moved.size()).isEqualTo(5);
        assertThat(Kind.LENGTH.si(moved.length())).isCloseTo(Kind.LENGTH.si(bar().length()), within(1e-14));
        assertThat(Kind.AREA.si(moved.signedArea())).isCloseTo(Kind.AREA.si(bar().signedArea()), within(1e-14));
        assertThat(bar().startingAt(millimetres(100)).size()).isEqualTo(4);
    }

    @Test
    void crossingTouchingAndRetracingAreToldWithThePlace() {
        ContourBuilder bow = Contour.from(Point.millimetres(0, 0))
                .lineTo(Point.millimetres(10, 10))
                .lineTo(Point.millimetres(10, 0))
                .lineTo(Point.millimetres(0, 10));
        assertThatThrownBy(() -> bow.close().requireSimple())
                .isInstanceOf(GeometryException.class)
                .hasMessage("edge 0 at (5 mm, 5 mm): it crosses edge 2");

        ContourBuilder spike = Contour.from(Point.millimetres(0, 0))
                .lineTo(Point.millimetres(10, 0))
                .lineTo(Point.millimetres(4, 0))
                .lineTo(Point.millimetres(4, 9));
        assertThatThrownBy(() -> spike.close().requireSimple()).hasMessageContaining("retrace");

        ContourBuilder touching = Contour.from(Point.millimetres(0, 0))
                .lineTo(Point.millimetres(10, 0))
                .lineTo(Point.millimetres(10, 10))
                .lineTo(Point.millimetres(5, 0))
                .lineTo(Point.millimetres(0, 10));
        assertThatThrownBy(() -> touching.close().requireSimple())
                .hasMessage("edge 0 at (5 mm, 0 mm): it crosses edge 2");
        assertThat(bar().requireSimple()).isEqualTo(bar());
    }

    @Test
    void faultsOfDrawingAreToldWithThePlace() {
        assertThatThrownBy(() -> Contour.from(Point.millimetres(1, 2))
                        .lineTo(Point.millimetres(3, 2))
                        .lineTo(Point.millimetres(3, 2)))
                .isInstanceOf(GeometryException.class)
                .hasMessage("edge 1 at (3 mm, 2 mm): the line has no length; the point is given twice");
        assertThatThrownBy(() -> Contour.from(Point.millimetres(1, 2)).lineToSi(Double.NaN, 0))
                .hasMessage("edge 0 at (NaN, 0.0): a coordinate is not a finite number");
        assertThatThrownBy(() -> Contour.from(Point.millimetres(0, 0))
                        .arcTo(Point.millimetres(10, 0), Point.millimetres(6, 0), Side.LEFT))
                .hasMessageContaining("starts 6 mm from its centre and ends 4 mm from it");
        assertThatThrownBy(() -> Contour.from(Point.millimetres(0, 0))
                        .lineTo(Point.millimetres(10, 0))
                        .lineTo(Point.millimetres(10, 10))
                        .closeWithin(millimetres(0.1)))
                .hasMessage("edge 1 at (10 mm, 10 mm): the contour is open: its end lies 14.1421 mm from its start"
                        + " (0 mm, 0 mm)");
        assertThatThrownBy(() -> Contour.from(Point.millimetres(0, 0)).open()).hasMessageContaining("no edges");
        assertThatThrownBy(() -> Contour.from(Point.millimetres(0, 0))
                        .lineTo(Point.millimetres(10, 0))
                        .close())
                .hasMessageContaining("no area");
        assertThatThrownBy(() -> Contour.polylineSi(new double[] {0, 1, 1}, new double[] {0, 0, 0}, FINISH))
                .hasMessage("edge 1 at (1000 mm, 0 mm): the line has no length; the point is given twice");
    }

    @Test
    void aCopyThroughSerializationIsEqual() throws Exception {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ObjectOutputStream out = new ObjectOutputStream(bytes)) {
            out.writeObject(bar());
        }
        try (ObjectInputStream in = new ObjectInputStream(new ByteArrayInputStream(bytes.toByteArray()))) {
            assertThat(in.readObject()).isEqualTo(bar());
        }
    }
}

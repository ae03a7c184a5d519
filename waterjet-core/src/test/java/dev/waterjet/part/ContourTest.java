package dev.waterjet.part;

import static dev.waterjet.measure.Measures.millimetres;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.measure.Kind;
import dev.waterjet.quality.CutQuality;
import dev.waterjet.quality.EdgeRequirement;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.ObjectInputStream;
import java.io.ObjectOutputStream;
import java.util.Random;
import org.assertj.core.api.ThrowableAssert;
import org.junit.jupiter.api.Test;

class ContourTest {

    private static final EdgeRequirement FINISH = EdgeRequirement.of(CutQuality.MEDIUM);
    private static final EdgeRequirement LEAD = FINISH.asLead();

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

    private static void isRefused(String code, ThrowableAssert.ThrowingCallable call, int edge, double xM, double yM) {
        assertThatExceptionOfType(GeometryException.class).isThrownBy(call).satisfies(e -> {
            assertThat(e.code()).isEqualTo(code);
            assertThat(e.edge()).isEqualTo(edge);
            assertThat(e.xSi()).isEqualTo(Double.valueOf(xM));
            assertThat(e.ySi()).isEqualTo(Double.valueOf(yM));
        });
    }

    @Test
    void crossingTouchingAndRetracingAreRefusedWithThePlace() {
        ContourBuilder bow = Contour.from(Point.millimetres(0, 0))
                .lineTo(Point.millimetres(10, 10))
                .lineTo(Point.millimetres(10, 0))
                .lineTo(Point.millimetres(0, 10));
        isRefused("crosses-itself", () -> bow.close().requireSimple(), 0, 0.005, 0.005);

        ContourBuilder spike = Contour.from(Point.millimetres(0, 0))
                .lineTo(Point.millimetres(10, 0))
                .lineTo(Point.millimetres(4, 0))
                .lineTo(Point.millimetres(4, 9));
        isRefused("retraces-itself", () -> spike.close().requireSimple(), 0, 0.004, 0);

        ContourBuilder touching = Contour.from(Point.millimetres(0, 0))
                .lineTo(Point.millimetres(10, 0))
                .lineTo(Point.millimetres(10, 10))
                .lineTo(Point.millimetres(5, 0))
                .lineTo(Point.millimetres(0, 10));
        isRefused("crosses-itself", () -> touching.close().requireSimple(), 0, 0.005, 0);
        assertThat(bar().requireSimple()).isEqualTo(bar());
    }

    @Test
    void faultsOfDrawingAreRefusedWithThePlace() {
        ContourBuilder line = Contour.from(Point.millimetres(1, 2)).lineTo(Point.millimetres(3, 2));
        isRefused("zero-length-edge", () -> line.lineTo(Point.millimetres(3, 2)), 1, 0.003, 0.002);
        isRefused("coordinate-not-finite", () -> line.lineToSi(Double.NaN, 0), 1, Double.NaN, 0);
        isRefused("coordinate-not-finite", () -> Contour.fromSi(0, Double.NaN), 0, 0, Double.NaN);
        ContourBuilder start = Contour.from(Point.millimetres(0, 0));
        isRefused("arc-without-radius", () -> start.arcToSi(1, 0, 0, 0, Side.LEFT), 0, 0, 0);
        isRefused("arc-through-line", () -> start.arcThrough(Point.ofSi(1, 1), Point.ofSi(2, 2)), 0, 0, 0);
        isRefused("empty-path", start::open, 0, 0, 0);
        isRefused(
                "contour-without-area",
                () -> Contour.fromSi(0, 0).lineToSi(0.01, 0).close(),
                2,
                0,
                0);
        ContourBuilder open = Contour.from(Point.millimetres(0, 0))
                .lineTo(Point.millimetres(10, 0))
                .lineTo(Point.millimetres(10, 10));
        isRefused("open-contour", () -> open.closeWithin(millimetres(0.1)), 1, 0.01, 0.01);
        isRefused(
                "zero-length-edge",
                () -> Contour.polylineSi(new double[] {0, 1, 1}, new double[] {0, 0, 0}, FINISH),
                1,
                1,
                0);
    }

    @Test
    void builtContoursGrowAndKeepTheirArcs() {
        ContourBuilder builder = Contour.fromSi(0, 0).requirement(LEAD);
        for (int i = 0; i < 50; i++) {
            builder.arcToSi(2e-3 * (i + 1), 0, 2e-3 * i + 1e-3, 0, i % 2 == 0 ? Side.LEFT : Side.RIGHT);
        }
        Contour wave =
                builder.requirement(EdgeRequirement.defaults()).lineToSi(0.2, 0).open();

        assertThat(wave.size()).isEqualTo(51);
        assertThat(Kind.LENGTH.si(wave.length())).isCloseTo(50 * Math.PI * 1e-3 + 0.1, within(1e-12));
        assertThat(wave.edge(49).turn()).contains(Side.RIGHT);
        assertThat(wave.requirement(49).isLead()).isTrue();
        assertThat(wave.requirement(50).isLead()).isFalse();
        assertThat(Kind.ANGLE.si(wave.reversed().edge(1).sweep())).isCloseTo(Math.PI, within(1e-12));
        assertThat(wave.translatedBy(Point.ofSi(1, 2)).edge(0).centre()).contains(Point.ofSi(1.001, 2));
        assertThat(Contour.fromSi(0, 0)
                        .lineToSi(1, 0)
                        .lineToSi(1, 1)
                        .lineToSi(0.001, 0)
                        .closeWithin(millimetres(1.1))
                        .isClosed())
                .isTrue();
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

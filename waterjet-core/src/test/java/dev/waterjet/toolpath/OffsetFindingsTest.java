package dev.waterjet.toolpath;

import static dev.waterjet.measure.Measures.degrees;
import static dev.waterjet.measure.Measures.millimetres;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.measure.Kind;
import dev.waterjet.part.Contour;
import dev.waterjet.part.Finding;
import dev.waterjet.part.GeometryException;
import dev.waterjet.part.Point;
import dev.waterjet.part.Side;
import dev.waterjet.toolpath.KerfOffset.NarrowPlaces;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Places that an offset does not reach, against closed forms: corners by half their angle, necks and slots by their sides. */
class OffsetFindingsTest {

    private static double number(Map<String, Object> parameters, String key) {
        return ((Number) Objects.requireNonNull(parameters.get(key))).doubleValue();
    }

    private static double number(Finding finding, String key) {
        return number(finding.message().parameters(), key);
    }

    private static List<Finding> of(OffsetResult result, String code) {
        return result.findings().stream()
                .filter(found -> found.code().equals(code))
                .toList();
    }

    private static double apart(Point point, double x, double y) {
        return Math.hypot(point.xSi() - x, point.ySi() - y);
    }

    private static double[][] convex(Random random, int n, double sizeM) {
        double[][] corners = new double[n][];
        for (int i = 0; i < n; i++) {
            double angle = 2 * Math.PI * (i + 0.6 * random.nextDouble()) / n;
            corners[i] = new double[] {sizeM * Math.cos(angle), sizeM * Math.sin(angle)};
        }
        return corners;
    }

    private static double angle(double[] before, double[] at, double[] after) {
        double one = Math.atan2(before[1] - at[1], before[0] - at[0]);
        double other = Math.atan2(after[1] - at[1], after[0] - at[0]);
        double angle = Math.abs(one - other);
        return Math.min(angle, 2 * Math.PI - angle);
    }

    /** In a corner of the angle w the jet stays d/sin(w/2) - d away. */
    @Test
    void everyInnerCornerIsFoundWithTheMaterialThatStays() {
        for (int seed = 0; seed < 40; seed++) {
            Random random = new Random(seed);
            double[][] corners = convex(random, 3 + random.nextInt(5), 0.02);
            int n = corners.length;
            double d = 2e-4 + 4e-4 * random.nextDouble();
            Contour contour = Plane.polygon(corners);
            double tolerance = d * random.nextDouble();
            OffsetResult result = KerfOffset.of(Kind.LENGTH.of(d))
                    .withCornerTolerance(Kind.LENGTH.of(tolerance))
                    .apply(contour, contour.enclosedSide());

            assertThat(result.findings())
                    .hasSize(n)
                    .allMatch(found -> found.code().equals("inner-corner"));
            assertThat(Kind.LENGTH.si(result.unreachedLength())).isZero();
            for (int i = 0; i < n; i++) {
                double[] at = corners[(i + 1) % n];
                int edge = i;
                Finding finding = result.findings().stream()
                        .filter(found -> number(found, "edge") == edge)
                        .findFirst()
                        .orElseThrow();
                double depth = d / Math.sin(angle(corners[i], at, corners[(i + 2) % n]) / 2) - d;

                assertThat(number(finding, "depth_m")).isCloseTo(depth, within(1e-9));
                assertThat(number(finding, "radius_m")).isCloseTo(d, within(1e-12));
                assertThat(number(finding, "limit_m")).isCloseTo(tolerance, within(1e-12));
                assertThat(apart(Objects.requireNonNull(finding.place()), at[0], at[1]))
                        .isLessThan(1e-9);
                assertThat(finding.isSatisfied()).isEqualTo(depth <= tolerance);
                assertThat(finding.remedies()).hasSize(finding.isSatisfied() ? 0 : 1);
            }
            OffsetResult outside = KerfOffset.of(Kind.LENGTH.of(d))
                    .apply(contour, contour.enclosedSide().opposite());
            assertThat(outside.findings()).isEmpty();
        }
    }

    /** A rounding of the radius r below d at a right angle keeps (d - r)(sqrt 2 - 1) of material. */
    @Test
    void aRoundingTighterThanTheJetIsFoundWithTheMaterialThatStays() {
        for (double r : new double[] {0.1, 0.2, 0.255, 0.26, 0.4, 0.49, 0.7}) {
            Contour plate = Contour.from(Point.millimetres(0, 0))
                    .lineTo(Point.millimetres(20 - r, 0))
                    .arcTo(Point.millimetres(20, r), Point.millimetres(20 - r, r), Side.LEFT)
                    .lineTo(Point.millimetres(20, 12))
                    .lineTo(Point.millimetres(0, 12))
                    .close()
                    .rotatedBy(degrees(20));
            List<Finding> found =
                    of(KerfOffset.of(millimetres(0.5)).apply(plate, plate.enclosedSide()), "inner-corner");
            double depth = (0.5e-3 - r * 1e-3) * (Math.sqrt(2) - 1);

            assertThat(found).hasSize(r < 0.5 ? 4 : 3);
            if (r < 0.5) {
                Finding first = found.stream()
                        .filter(one -> number(one, "edge") == 0)
                        .findFirst()
                        .orElseThrow();
                double in = r * (1 - Math.sqrt(0.5));
                Point place = Contour.from(Point.millimetres(20 - in, in))
                        .lineTo(Point.millimetres(0, 0))
                        .open()
                        .rotatedBy(degrees(20))
                        .start();
                assertThat(number(first, "depth_m")).isCloseTo(depth, within(1e-9));
                assertThat(first.isSatisfied()).isEqualTo(depth <= 1e-4);
                assertThat(apart(Objects.requireNonNull(first.place()), place.xSi(), place.ySi()))
                        .isLessThan(1e-9);
            }
        }
    }

    /** Two chambers of 10 and 8 mm, joined by a neck of 4 mm and some width. */
    private static double[][] dumbbell(double neckMm) {
        double low = (5 - neckMm / 2) * 1e-3;
        double high = (5 + neckMm / 2) * 1e-3;
        return new double[][] {
            {0, 0}, {0.01, 0}, {0.01, low}, {0.014, low}, {0.014, 0.001}, {0.022, 0.001},
            {0.022, 0.009}, {0.014, 0.009}, {0.014, high}, {0.01, high}, {0.01, 0.01}, {0, 0.01}
        };
    }

    private static List<Contour> turned(double[][] corners, double turn) {
        List<Contour> contours = new ArrayList<>();
        for (int first = 0; first < corners.length; first++) {
            double[][] shifted = new double[corners.length][];
            for (int i = 0; i < corners.length; i++) {
                shifted[i] = corners[(first + i) % corners.length];
            }
            Contour contour = Plane.polygon(shifted).rotatedBy(degrees(turn));
            contours.add(first % 2 == 0 ? contour : contour.reversed());
        }
        return contours;
    }

    @Test
    void aNeckNarrowerThanTheJetSplitsThePath() {
        double[][] corners = dumbbell(0.6);
        double beyond = Math.asin(0.6);
        for (Contour contour : turned(corners, 33)) {
            KerfOffset offset = KerfOffset.of(millimetres(0.5));
            OffsetResult split = offset.withNarrowPlaces(NarrowPlaces.SPLIT).apply(contour, contour.enclosedSide());
            OffsetResult bridged = offset.withNarrowPlaces(NarrowPlaces.BRIDGE).apply(contour, contour.enclosedSide());

            assertThat(split.paths())
                    .extracting(path -> Math.round(1e9 * path.contour().lengthSi()))
                    .containsExactly(Math.round(1e6 * (36 - 0.6 + beyond)), Math.round(1e6 * (28 - 0.6 + beyond)));
            assertThat(split.path()).isEqualTo(split.paths().get(0));
            assertThat(Kind.LENGTH.si(split.unreachedLength())).isCloseTo(0.008, within(1e-9));
            assertThat(of(split, "inner-corner")).hasSize(8);
            assertThat(of(split, "jet-does-not-fit")).hasSize(2);
            assertThat(bridged.paths()).containsExactly(split.path());
            assertThat(Kind.LENGTH.si(bridged.unreachedLength())).isCloseTo(0.008 + 0.0314, within(1e-9));
            assertThat(of(bridged, "inner-corner")).hasSize(4);
            assertThat(of(bridged, "jet-does-not-fit")).hasSize(1);
            for (OffsetResult result : List.of(split, bridged)) {
                assertThat(of(result, "jet-does-not-fit")).allSatisfy(found -> {
                    assertThat(number(found, "width_m")).isCloseTo(0.0006, within(1e-9));
                    assertThat(number(found, "jet_m")).isCloseTo(0.001, within(1e-12));
                    assertThat(found.isSatisfied()).isFalse();
                    assertIsAtMouth(Objects.requireNonNull(found.place()), 33);
                });
            }
        }
    }

    /** The middle of an end of the neck: (10, 5) or (14, 5). */
    private static void assertIsAtMouth(Point place, double turn) {
        Point back = Contour.from(place)
                .lineTo(Point.ofSi(1, 1))
                .open()
                .rotatedBy(degrees(-turn))
                .start();
        assertThat(Math.min(apart(back, 0.01, 0.005), apart(back, 0.014, 0.005)))
                .isLessThan(1e-9);
    }

    @Test
    void aNeckNarrowerThanTheJetIsRefusedAtItsMouthAndAWiderOneIsNot() {
        for (Contour contour : turned(dumbbell(0.6), 71)) {
            GeometryException refused = catchThrowableOfType(
                    GeometryException.class,
                    () -> KerfOffset.of(millimetres(0.5)).apply(contour, contour.enclosedSide()));

            assertThat(refused.code()).isEqualTo("jet-does-not-fit");
            assertThat(number(refused.parameters(), "width_m")).isCloseTo(0.0006, within(1e-9));
            assertThat(number(refused.parameters(), "jet_m")).isCloseTo(0.001, within(1e-12));
            assertIsAtMouth(Point.ofSi(refused.xSi(), refused.ySi()), 71);
        }
        for (Contour contour : turned(dumbbell(1.002), 71)) {
            OffsetResult result = KerfOffset.of(millimetres(0.5)).apply(contour, contour.enclosedSide());
            assertThat(result.paths()).hasSize(1);
            assertThat(Kind.LENGTH.si(result.unreachedLength())).isZero();
            assertThat(of(result, "inner-corner")).hasSize(8);
        }
    }

    /** A neck that narrows towards one end is as wide as there; the jet passes it as far as it is wider. */
    @Test
    void theWidthOfATaperedNeckIsThatOfItsNarrowEnd() {
        double[][] corners = dumbbell(0.9);
        corners[3][1] += 0.2e-3;
        corners[8][1] -= 0.2e-3;
        for (Contour contour : turned(corners, 0)) {
            OffsetResult result = KerfOffset.of(millimetres(0.5))
                    .withNarrowPlaces(NarrowPlaces.BRIDGE)
                    .apply(contour, contour.enclosedSide());
            Finding narrow = of(result, "jet-does-not-fit").get(0);

            assertThat(number(narrow, "width_m")).isBetween(0.00049, 0.00065);
        }
    }

    /** A jet that fits nowhere: the refusal names the middle and the width of the largest circle. */
    @Test
    void theWidestPlaceOfATriangleIsItsIncircle() {
        for (int seed = 0; seed < 30; seed++) {
            Random random = new Random(seed);
            double[][] p = convex(random, 3, 0.01);
            double a = Math.hypot(p[1][0] - p[2][0], p[1][1] - p[2][1]);
            double b = Math.hypot(p[2][0] - p[0][0], p[2][1] - p[0][1]);
            double c = Math.hypot(p[0][0] - p[1][0], p[0][1] - p[1][1]);
            double area =
                    Math.abs((p[1][0] - p[0][0]) * (p[2][1] - p[0][1]) - (p[2][0] - p[0][0]) * (p[1][1] - p[0][1])) / 2;
            double s = (a + b + c) / 2;
            GeometryException refused = refused(Plane.polygon(p), 1.02 * area / s);

            assertThat(number(refused.parameters(), "width_m")).isCloseTo(2 * area / s, within(2.1e-7));
            assertThat(refused.xSi()).isCloseTo((a * p[0][0] + b * p[1][0] + c * p[2][0]) / (2 * s), within(2e-6));
            assertThat(refused.ySi()).isCloseTo((a * p[0][1] + b * p[1][1] + c * p[2][1]) / (2 * s), within(2e-6));
        }
    }

    private static GeometryException refused(Contour contour, double offsetM) {
        GeometryException refused = catchThrowableOfType(
                GeometryException.class,
                () -> KerfOffset.of(Kind.LENGTH.of(offsetM)).apply(contour, contour.enclosedSide()));
        assertThat(refused.code()).isEqualTo("jet-does-not-fit");
        assertThat(number(refused.parameters(), "jet_m")).isCloseTo(2 * offsetM, within(1e-12));
        return refused;
    }

    /** An L of two arms of the width a: a circle that touches both outer sides and the corner inside, r = a sqrt 2/(1 + sqrt 2). */
    @Test
    void theWidestPlaceOfAnAngleIsItsCorner() {
        for (double turn : new double[] {0, 17, 90, 200}) {
            Contour angle = Plane.polygon(
                            new double[][] {{0, 0}, {0.03, 0}, {0.03, 0.002}, {0.002, 0.002}, {0.002, 0.03}, {0, 0.03}})
                    .rotatedBy(degrees(turn));
            double radius = 0.002 * Math.sqrt(2) / (1 + Math.sqrt(2));
            GeometryException refused = refused(angle, 1.01 * radius);
            double cos = Math.cos(Math.toRadians(turn));
            double sin = Math.sin(Math.toRadians(turn));

            assertThat(number(refused.parameters(), "width_m")).isCloseTo(2 * radius, within(2.1e-7));
            assertThat(refused.xSi()).isCloseTo(radius * (cos - sin), within(2e-6));
            assertThat(refused.ySi()).isCloseTo(radius * (cos + sin), within(2e-6));
        }
    }

    /** A strip of 2 mm with a head of 6 by 6 mm at one end. */
    @Test
    void theWidestPlaceOfAHammerIsItsHead() {
        Contour hammer = Plane.polygon(new double[][] {
            {0, 0.002}, {0.06, 0.002}, {0.06, 0}, {0.066, 0}, {0.066, 0.006}, {0.06, 0.006}, {0.06, 0.004}, {0, 0.004}
        });
        for (int quarter = 0; quarter < 4; quarter++) {
            GeometryException refused = refused(hammer.rotatedBy(degrees(90 * quarter)), 0.0031);
            double[] head = {0.063, 0.003};
            for (int i = 0; i < quarter; i++) {
                head = new double[] {-head[1], head[0]};
            }

            assertThat(number(refused.parameters(), "width_m")).isCloseTo(0.006, within(1e-4));
            assertThat(Math.hypot(refused.xSi() - head[0], refused.ySi() - head[1]))
                    .isLessThan(2e-4);
        }
    }

    @Test
    void theWidestPlaceOfAStripIsAsWideAsTheStrip() {
        for (double[] size : new double[][] {{0.1, 0.002}, {0.002, 0.1}, {0.0021, 0.002}, {0.5, 0.0007}}) {
            double x = 0.03;
            double y = -0.2;
            Contour strip =
                    Plane.polygon(new double[][] {{x, y}, {x + size[0], y}, {x + size[0], y + size[1]}, {x, y + size[1]}
                    });
            double half = Math.min(size[0], size[1]) / 2;
            GeometryException refused = refused(strip, 1.01 * half);

            assertThat(number(refused.parameters(), "width_m")).isCloseTo(2 * half, within(2.1e-7));
            assertThat(Plane.distance(strip, refused.xSi(), refused.ySi())).isCloseTo(half, within(1.1e-7));
        }
    }
}

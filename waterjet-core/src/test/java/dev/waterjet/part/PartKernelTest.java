package dev.waterjet.part;

import dev.waterjet.measure.Kind;
import dev.waterjet.quality.CutQuality;
import dev.waterjet.quality.EdgeRequirement;
import dev.waterjet.sheet.Slats;
import dev.waterjet.toolpath.CuttingRules;
import dev.waterjet.toolpath.HoldingTabs;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import static dev.waterjet.measure.Measures.degrees;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.millimetres;
import static dev.waterjet.measure.Measures.newtons;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

class PartKernelTest {

    private static final EdgeRequirement MEDIUM = EdgeRequirement.of(CutQuality.MEDIUM);

    /** A segment of a disc about (3, 2), from an angle on over 1.9 rad. */
    private static Contour segment(double from) {
        return Contour.fromSi(3 + Math.cos(from), 2 + Math.sin(from))
                .arcToSi(3 + Math.cos(from + 1.9), 2 + Math.sin(from + 1.9), 3, 2, Side.LEFT)
                .close();
    }

    /** Centroid of a segment of a disc: 4 r sin^3(a/2) / (3 (a - sin a)) off its centre (any text-book of statics). */
    @ParameterizedTest
    @ValueSource(doubles = {0, 0.7, 1.9, 3.1, 4.4, 5.8})
    void aSegmentOfADiscHasItsCentreWhereTheTextBookSays(double from) {
        double a = 1.9;
        double off = 4 * Math.pow(Math.sin(a / 2), 3) / (3 * (a - Math.sin(a)));
        for (Contour contour : new Contour[] {segment(from), segment(from).reversed()}) {
            Point centre = Part.of(contour).centroid();

            assertThat(centre.xSi()).isCloseTo(3 + off * Math.cos(from + a / 2), within(1e-12));
            assertThat(centre.ySi()).isCloseTo(2 + off * Math.sin(from + a / 2), within(1e-12));
            assertThat(Kind.AREA.si(Part.of(contour).area())).isCloseTo((a - Math.sin(a)) / 2, within(1e-12));
        }
    }

    @Test
    void aContourReachesAsFarAsItsFarthestSample() {
        EdgeCursor shape = new EdgeCursor();
        for (double from = 0; from < 6; from += 0.5) {
            Contour contour = segment(from);
            for (double angle = 0; angle < 6.2; angle += 0.3) {
                double x = Math.cos(angle);
                double y = Math.sin(angle);
                double most = Double.NEGATIVE_INFINITY;
                contour.load(0, shape);
                for (int i = 0; i <= 2000; i++) {
                    most = Math.max(most, x * shape.xAt(i / 2000.0) + y * shape.yAt(i / 2000.0));
                }
                assertThat(PartKernel.reach(contour, x, y)).isBetween(most - 1e-12, most + 1e-6);
            }
        }
    }

    @Test
    void boxesLieApartAlongAnAxisOrAcross() {
        Box box = Box.ofSi(0, 0, 2, 1);

        assertThat(PartKernel.boxesApart(box, Box.ofSi(5, 5, 6, 6))).isEqualTo(5);
        assertThat(PartKernel.boxesApart(Box.ofSi(5, 5, 6, 6), box)).isEqualTo(5);
        assertThat(PartKernel.boxesApart(box, Box.ofSi(4, 0, 6, 6))).isEqualTo(2);
        assertThat(PartKernel.boxesApart(box, Box.ofSi(0, 4, 6, 6))).isEqualTo(3);
        assertThat(PartKernel.boxesApart(box, Box.ofSi(1, 0, 6, 6))).isEqualTo(-1);
    }

    /** Where a part lies on the sheet does not change whether the slats bear it. */
    @Test
    void slatsBearAPartWhereverItLiesAndTurns() {
        Slats slats = Slats.of(millimetres(50), millimetres(4));
        Contour strip = Contour.rectangle(Point.millimetres(0, 0), Point.millimetres(80, 300), MEDIUM);
        for (Point by : new Point[] {Point.ofSi(0, 0), Point.ofSi(7, -3), Point.ofSi(-2, 9)}) {
            Part part = Part.of(strip.translatedBy(by));

            assertThat(slats.check(part).code()).isEqualTo("slats-tip");
            assertThat(slats.check(part).reason()).contains("reaches only 40 mm", "pitch of 50 mm");
            assertThat(slats.withDirection(degrees(0)).check(part).isSatisfied()).isTrue();
            // turned by t the half width across is 40 cos t + 150 sin t: 5 degrees give 52.9 mm
            assertThat(Kind.ANGLE.si(slats.suggestRotation(part).orElseThrow()))
                    .isCloseTo(Math.toRadians(5), within(1e-12));
        }
        Part narrow = Part.of(Contour.rectangle(Point.millimetres(500, 0), Point.millimetres(545.9, 300), MEDIUM));
        assertThat(slats.check(narrow).code()).isEqualTo("slats-fall");
        assertThat(slats.check(narrow).reason()).contains("reaches 45.9 mm", "gap of 46 mm");
        Part wider = Part.of(Contour.rectangle(Point.millimetres(500, 0), Point.millimetres(546.1, 300), MEDIUM));
        assertThat(slats.check(wider).code()).isEqualTo("slats-tip");
    }

    @Test
    void tabsKeepAwayFromCorners() {
        HoldingTabs tabs = HoldingTabs.of(
                newtons(300), megapascals(150), millimetres(10), CuttingRules.of(millimetres(0.8), millimetres(10)));
        Contour plate = Contour.rectangle(Point.millimetres(0, 0), Point.millimetres(74.5, 25.5), MEDIUM);

        // 200 mm round: of 25, 75, 125 and 175 mm two lie 0.5 mm behind a corner, and go to the middle of their edge
        assertThat(tabs.suggest(plate, 4).toSi())
                .containsExactly(new double[] {0.025, 0.08725, 0.125, 0.18725}, within(1e-12));
    }

    @Test
    void pointsLieApartByPythagoras() {
        assertThat(Kind.LENGTH.si(Point.ofSi(1, 2).distance(Point.ofSi(4, 6)))).isEqualTo(5);
    }
}

package dev.waterjet.examples.dxf;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.evidence.Caution;
import dev.waterjet.examples.drawing.Drawing;
import dev.waterjet.examples.drawing.DrawingSettings;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.TextException;
import dev.waterjet.part.Contour;
import dev.waterjet.part.EdgeCursor;
import dev.waterjet.part.Point;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;

/** Splines that have fit points only; the curves behind the points are known: circles, lines, a sine. */
class FitSplineTest {

    private static Drawing read(String entity) {
        String text = "0 SECTION 2 HEADER 9 $INSUNITS 70 4 0 ENDSEC 0 SECTION 2 ENTITIES " + entity + " 0 ENDSEC 0 EOF";
        return DxfReader.read(text.replaceAll("\\s+", "\n") + "\n", DrawingSettings.defaults());
    }

    private static String point(double x, double y) {
        return String.format(Locale.ROOT, " 11 %.9f 21 %.9f 31 0", x, y);
    }

    private static String circle(int points, double radius, double from, double to) {
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < points; i++) {
            double t = from + (to - from) * i / (points - 1);
            text.append(point(radius * Math.cos(t), radius * Math.sin(t)));
        }
        return text.toString();
    }

    /** Largest distance of the contour from a circle about the origin. */
    private static double fromCircle(Contour contour, double radiusM) {
        EdgeCursor edge = new EdgeCursor();
        double worst = 0;
        for (int i = 0; i < contour.size(); i++) {
            contour.load(i, edge);
            for (double share = 0; share <= 1; share += 0.125) {
                worst = Math.max(worst, Math.abs(Math.hypot(edge.xAt(share), edge.yAt(share)) - radiusM));
            }
        }
        return worst;
    }

    @Test
    void aClosedOneThroughACircleIsNearlyThatCircle() {
        // the error of a periodic cubic spline falls with the fourth power of the step: (2 pi/24)^4/384 R is 0.25 um
        String points = circle(25, 20, 0, 2 * Math.PI);
        Drawing drawing = read("0 SPLINE 8 0 70 11 71 3 74 25" + points);
        Contour contour = drawing.contours().get(0);

        assertThat(contour.isClosed()).isTrue();
        assertThat(fromCircle(contour, 0.02)).isLessThan(1.2e-5);
        assertThat(contour.lengthSi()).isCloseTo(2 * Math.PI * 0.02, within(5e-5));
        assertThat(drawing.cautions()).extracting(Caution::code).contains("spline-fit-points");
        assertThat(drawing.cautions()).extracting(Caution::severity).contains(Caution.Severity.WARNING);
    }

    @Test
    void tangentsOfTheEndsAreKept() {
        String points = circle(9, 20, 0, Math.PI / 2);
        Contour clamped = read("0 SPLINE 8 0 70 8 71 3 12 0 22 1 32 0 13 -3 23 0 33 0" + points)
                .contours()
                .get(0);
        Contour natural = read("0 SPLINE 8 0 70 8 71 3" + points).contours().get(0);

        assertThat(fromCircle(clamped, 0.02)).isLessThan(1.2e-5);
        // without tangents the curve has no curvature at its ends, which a circle has
        assertThat(fromCircle(natural, 0.02)).isBetween(1.5e-5, 2e-4);
        assertThat(clamped.isClosed()).isFalse();
    }

    @Test
    void pointsOnALineAreThatLineWhateverTheirSteps() {
        Contour line = read("0 SPLINE 8 0 71 3" + point(0, 0) + point(1, 2) + point(1, 2) + point(30, 60)
                        + point(50, 100))
                .contours()
                .get(0);

        assertThat(line.lengthSi()).isCloseTo(Math.hypot(0.05, 0.1), within(1e-12));
        assertThat(Kind.LENGTH.si(line.end().distance(Point.millimetres(50, 100))))
                .isLessThan(1e-12);
    }

    @Test
    void everyPointIsOnTheCurve() {
        StringBuilder points = new StringBuilder();
        double[][] at = new double[40][];
        for (int i = 0; i < at.length; i++) {
            at[i] = new double[] {3 * i + (i % 3) * 0.4, 15 * Math.sin(i / 4.0)};
            points.append(point(at[i][0], at[i][1]));
        }
        Contour curve = read("0 SPLINE 8 0 71 3" + points).contours().get(0);

        for (double[] place : at) {
            assertThat(Kind.LENGTH.si(curve.clearance(Point.millimetres(place[0], place[1]))))
                    .isLessThan(1e-5);
        }
    }

    @Test
    void whatDefinesNoCurveIsRefused() {
        for (String entity : List.of(
                "0 SPLINE 8 0 71 3",
                "0 SPLINE 8 0 71 3" + point(4, 4),
                "0 SPLINE 8 0 71 3" + point(4, 4) + point(4, 4),
                "0 SPLINE 8 0 70 1 71 3" + point(0, 0) + point(4, 4),
                "0 SPLINE 8 0 71 3 11 0 21 0 11 4")) {
            assertThatThrownBy(() -> read(entity))
                    .isInstanceOfSatisfying(
                            TextException.class,
                            refusal -> assertThat(refusal.code()).isEqualTo("spline-damaged"));
        }
    }
}

package dev.waterjet.examples.svg;

import static dev.waterjet.measure.Measures.micrometres;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.measure.Kind;
import dev.waterjet.measure.TextException;
import dev.waterjet.part.Contour;
import dev.waterjet.part.EdgeCursor;
import dev.waterjet.part.Side;
import dev.waterjet.quality.CutQuality;
import dev.waterjet.quality.EdgeRequirement;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class SvgReaderTest {

    private static final double TOLERANCE_M = 5e-6;

    private static SvgDrawing read(String svg) {
        return SvgDrawing.read(svg, micrometres(5), EdgeRequirement.defaults());
    }

    /** A drawing of 200 by 100 units of a millimetre. */
    private static SvgDrawing millimetres(String body) {
        return read("<svg xmlns='http://www.w3.org/2000/svg' width='200mm' height='100mm' viewBox='0 0 200 100'>\n"
                + body + "\n</svg>");
    }

    private static Contour path(String data) {
        return millimetres("<path d='" + data + "'/>").contours().get(0);
    }

    private static double lengthMm(Contour contour) {
        return Kind.LENGTH.si(contour.length()) * 1000;
    }

    @Test
    void yIsTurnedOverSoThatThePartStandsUpright() {
        Contour contour = path("M 10 20 h 30 v -5 z");

        assertThat(contour.isClosed()).isTrue();
        assertThat(contour.start().xSi()).isCloseTo(0.010, within(1e-12));
        assertThat(contour.start().ySi()).isCloseTo(0.080, within(1e-12));
        assertThat(contour.edge(1).end().ySi()).isCloseTo(0.085, within(1e-12));
    }

    @Test
    void numbersNeedNoSpaceBetweenThem() {
        Contour contour = path("M0 0L.5.5-1-2");

        assertThat(contour.size()).isEqualTo(2);
        assertThat(contour.end().xSi()).isCloseTo(-0.001, within(1e-15));
        assertThat(contour.end().ySi()).isCloseTo(0.102, within(1e-12));
        assertThat(lengthMm(path("M1e1 0a5 5 0 0110 0"))).isCloseTo(5 * Math.PI, within(1e-9));
    }

    @Test
    void aMoveGoesOnAsALineAndCloseGoesBackToItsStart() {
        SvgDrawing drawing = millimetres("<path d='m 5 5 10 0 0 10 z l 0 -5 5 0 z'/>");

        assertThat(drawing.contours()).hasSize(2);
        assertThat(drawing.contours().get(1).start().xSi()).isCloseTo(0.005, within(1e-12));
        assertThat(drawing.contours().get(0).size()).isEqualTo(3);
    }

    @Test
    void circlesStayArcsAlsoWhenTurnedAndScaled() {
        Contour plain =
                millimetres("<circle cx='50' cy='50' r='10'/>").contours().get(0);
        Contour turned = millimetres("<g transform='rotate(30 50 50) scale(2)'><circle cx='20' cy='20' r='5'/></g>")
                .contours()
                .get(0);

        assertThat(plain.size()).isEqualTo(2);
        assertThat(plain.edge(0).isArc()).isTrue();
        // clockwise on paper as SVG says, and so still on the machine
        assertThat(plain.edge(0).turn()).contains(Side.RIGHT);
        assertThat(lengthMm(plain)).isCloseTo(20 * Math.PI, within(1e-9));
        assertThat(lengthMm(turned)).isCloseTo(20 * Math.PI, within(1e-6));
    }

    @Test
    void ellipsesBecomeFewArcsWithinTheTolerance() {
        Contour ellipse = millimetres("<ellipse cx='50' cy='50' rx='30' ry='10'/>")
                .contours()
                .get(0);

        assertThat(lengthMm(ellipse)).isCloseTo(perimeter(30, 10), within(0.01));
        assertThat(ellipse.size()).isLessThan(60);
        double worst = 0;
        for (int i = 0; i < 20_000; i++) {
            double t = 2 * Math.PI * i / 20_000;
            worst = Math.max(worst, distance(ellipse, 0.05 + 0.030 * Math.cos(t), 0.05 + 0.010 * Math.sin(t)));
        }
        assertThat(worst).isBetween(TOLERANCE_M / 10, TOLERANCE_M);
    }

    private static double perimeter(double a, double b) {
        double sum = 0;
        int steps = 100_000;
        for (int i = 0; i < steps; i++) {
            double t = 2 * Math.PI * (i + 0.5) / steps;
            sum += Math.hypot(a * Math.sin(t), b * Math.cos(t)) * 2 * Math.PI / steps;
        }
        return sum;
    }

    @Test
    void curvesKeepWithinTheToleranceOfADenseSweep() {
        Contour curve = path("M 0 0 C 60 0 0 60 60 60 S 120 0 120 60");
        double worst = 0;
        for (int i = 0; i <= 20_000; i++) {
            double t = i / 20_000.0;
            double s = 1 - t;
            double x = (3 * s * s * t * 60 + t * t * t * 60) / 1000;
            double y = 0.1 - (3 * s * t * t * 60 + t * t * t * 60) / 1000;
            worst = Math.max(worst, distance(curve, x, y));
        }

        assertThat(worst).isBetween(TOLERANCE_M / 10, TOLERANCE_M);
        // the smooth form mirrors its first control point, so that the curve has no corner in the middle
        assertThat(curve.end().xSi()).isCloseTo(0.120, within(1e-12));
    }

    private static double distance(Contour contour, double x, double y) {
        EdgeCursor edge = new EdgeCursor();
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i < contour.size(); i++) {
            contour.load(i, edge);
            least = Math.min(least, edge.distance(x, y));
        }
        return least;
    }

    @Test
    void aQuadraticIsTheCubicThatItIs() {
        Contour quadratic = path("M 0 0 Q 30 60 60 0 T 120 0");
        Contour cubic = path("M 0 0 C 20 40 40 40 60 0 C 80 -40 100 -40 120 0");

        assertThat(lengthMm(quadratic)).isCloseTo(lengthMm(cubic), within(1e-9));
    }

    @ParameterizedTest
    @CsvSource({
        "0,0, 0", "0,1, 0", "1,0, 1", "1,1, 1",
    })
    void theFlagsChooseOneOfFourArcs(int large, int positive, int isLong) {
        Contour arc = path("M 50 50 A 10 10 0 " + large + " " + positive + " 60 50");

        double expected = 10 * (isLong == 1 ? 2 * Math.PI - Math.PI / 3 : Math.PI / 3);
        assertThat(lengthMm(arc)).isCloseTo(expected, within(1e-9));
        assertThat(arc.edge(0).turn()).contains(positive == 1 ? Side.RIGHT : Side.LEFT);
    }

    @Test
    void radiiTooSmallForTheirChordGrow() {
        assertThat(lengthMm(path("M 0 0 A 1 1 0 0 1 20 0"))).isCloseTo(10 * Math.PI, within(1e-9));
    }

    @Test
    void roundedRectanglesHaveFourArcs() {
        Contour contour = millimetres("<rect x='10' y='10' width='40' height='20' rx='5'/>")
                .contours()
                .get(0);

        assertThat(contour.size()).isEqualTo(8);
        assertThat(lengthMm(contour)).isCloseTo(2 * (30 + 10) + 10 * Math.PI, within(1e-9));
    }

    @Test
    void transformsNestFromTheOutside() {
        Contour contour = millimetres("<g transform='translate(10,20)'><g transform='matrix(0 1 -1 0 0 0)'>"
                        + "<polyline points='1,2 3,2'/></g></g>")
                .contours()
                .get(0);

        // (1, 2) turned by a quarter is (-2, 1), shifted (8, 21), turned over at 100
        assertThat(contour.start().xSi()).isCloseTo(0.008, within(1e-12));
        assertThat(contour.start().ySi()).isCloseTo(0.079, within(1e-12));
        assertThat(contour.end().ySi()).isCloseTo(0.077, within(1e-12));
    }

    @ParameterizedTest
    @CsvSource({
        "width='10in' height='10in' viewBox='0 0 1000 1000', 25.4",
        "width='100' height='100', 26.458333333333332",
        "viewBox='0 0 96 96', 26.458333333333332",
        "width='10cm' viewBox='0 0 100 300', 100",
        "width='100%' height='100%' viewBox='0 0 96 96', 26.458333333333332",
        "width='200mm' height='200mm' viewBox='0 0 100 50' preserveAspectRatio='xMinYMin meet', 200",
        "width='200mm' height='200mm' viewBox='0 0 100 50' preserveAspectRatio='xMinYMin slice', 400",
    })
    void sizesAreThoseOfTheRoot(String root, double mm) {
        Contour line = read("<svg " + root + "><line x1='0' y1='0' x2='100' y2='0'/></svg>")
                .contours()
                .get(0);

        assertThat(lengthMm(line)).isCloseTo(mm, within(1e-9));
    }

    @Test
    void gradesComeFromTheDrawingAndWhatIsNeverDrawnIsPassedOver() {
        SvgDrawing drawing = millimetres("<defs><path d='this is no path'/></defs><title>Bracket</title>"
                + "<g data-quality='very-fine'><path id='rim' d='M0 0h10v10z'/></g>"
                + "<path style='display: none' d='nor this'/><rect width='5' height='5'/>");

        assertThat(drawing.names()).containsExactly("rim", "line 2");
        assertThat(drawing.contours().get(0).requirement(0).quality()).isEqualTo(CutQuality.VERY_FINE);
        assertThat(drawing.contours().get(1).requirement(0).quality()).isEqualTo(CutQuality.MEDIUM);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "<path d='M0 0L5 x'/>|line 2, column 17|expected a number, not \"x\"",
                "<path d='L0 0'/>|line 2, column 10|a path starts with M or m",
                "<path d='M0 0 B 4'/>|line 2, column 15|unknown path command \"B\"",
                "<path d='M0 0 A5 5 0 2 1 3 3'/>|line 2, column 22|a flag of an arc is 0 or 1",
                "<path d='M0 0 L5'/>|line 2, column 17|a number is missing",
                "<path d='M0 0 L1e999 0'/>|line 2, column 16|too large",
                "<g transform='turn(5)'><path d='M0 0h1'/></g>|line 2, column 15|unknown transform \"turn\" with 1"
                        + " numbers",
                "<text>Hollow Ridge</text>|line 2, column 1|<text> cannot be cut",
                "<use href='#rim'/>|line 2, column 1|<use> refers to \"#rim\", which does not exist",
                "<circle cx='1'/>|line 2, column 1|<circle> has no r",
                "<circle r='-1'/>|line 2, column 12|r is below zero",
                "<rect width='4em' height='1'/>|line 2, column 15|unknown unit of length \"em\"",
                "<path data-quality='shiny' d='M0 0h1'/>|line 2, column 21|unknown cut quality \"shiny\"",
                "<path d='M0 0h1|line |the XML is broken",
            })
    void faultsAreToldWithTheirPlace(String body, String place, String message) {
        assertThatThrownBy(() -> millimetres(body))
                .isInstanceOf(TextException.class)
                .hasMessageStartingWith(place)
                .hasMessageContaining(message);
    }

    @Test
    void nothingIsLoadedFromOutsideAndNothingExpanded() {
        String body = "<path d='M0 0h9v9z'/>";
        assertThat(read("<!DOCTYPE svg PUBLIC '-//W3C//DTD SVG 1.1//EN' 'http://localhost:1/none.dtd'><svg>" + body
                                + "</svg>")
                        .contours())
                .hasSize(1);
        assertThatThrownBy(() ->
                        read("<!DOCTYPE svg [<!ENTITY x SYSTEM 'file:///etc/passwd'>]><svg><path id='&x;' d='M0 0'/>"
                                + "</svg>"))
                .isInstanceOf(TextException.class);
        StringBuilder bomb = new StringBuilder("<!DOCTYPE svg [<!ENTITY a0 'ha'>");
        for (int i = 1; i < 30; i++) {
            bomb.append("<!ENTITY a")
                    .append(i)
                    .append(" '&a")
                    .append(i - 1)
                    .append(";&a")
                    .append(i - 1)
                    .append(";'>");
        }
        assertThatThrownBy(() -> read(bomb + "]><svg><path id='&a29;' d='M0 0'/></svg>"))
                .isInstanceOf(TextException.class);
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "<html/>", "<svg/>", "hello", "<svg><g><g></g></svg>", "<svg viewBox='0 0 0 9'/>"})
    void whatIsNoDrawingIsRefused(String text) {
        assertThatThrownBy(() -> read(text)).isInstanceOf(TextException.class);
    }

    @Test
    void aLargeDrawingKeepsItsPlaces() {
        StringBuilder body = new StringBuilder();
        for (int i = 0; i < 20_000; i++) {
            body.append("<path d='M").append(i).append(" 0h.5'/>\n");
        }
        assertThat(millimetres(body.toString()).contours()).hasSize(20_000);
        assertThatThrownBy(() -> millimetres(body + "<path d='M0 0 Lx'/>"))
                .hasMessageStartingWith("line 20002, column 16: ");
    }

    @Test
    void drawingsTooDeepAreRefused() {
        assertThatThrownBy(() -> millimetres("<g>".repeat(300) + "</g>".repeat(300)))
                .hasMessageContaining("nested more than 256 deep");
    }
}

package dev.waterjet.examples.svg;

import static dev.waterjet.measure.Measures.millimetres;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.evidence.Caution;
import dev.waterjet.examples.drawing.Drawing;
import dev.waterjet.examples.drawing.DrawingSettings;
import dev.waterjet.examples.drawing.DrawnPart;
import dev.waterjet.examples.drawing.LayerRule;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.TextException;
import dev.waterjet.part.Contour;
import dev.waterjet.part.EdgeCursor;
import dev.waterjet.part.Point;
import dev.waterjet.quality.CutQuality;
import java.util.List;
import java.util.Locale;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Drawings as drawing programs write them: relative moves, style sheets, references, loose segments, curves for circles. */
class SvgOfProgramsTest {

    private static final String OPEN =
            "<svg xmlns='http://www.w3.org/2000/svg' xmlns:xlink='http://www.w3.org/1999/xlink'"
                    + " xmlns:v='urn:layers' width='200mm' height='150mm' viewBox='0 0 200 150'>";

    private static Drawing read(String body) {
        return read(body, DrawingSettings.defaults());
    }

    private static Drawing read(String body, DrawingSettings settings) {
        return SvgReader.read(OPEN + body + "</svg>", settings);
    }

    private static Point centre(Contour contour) {
        return contour.box().centre();
    }

    private static void assertCentre(Contour contour, double xMm, double yMm) {
        assertThat(centre(contour).xSi() * 1000).isCloseTo(xMm, within(1e-6));
        assertThat(centre(contour).ySi() * 1000).isCloseTo(yMm, within(1e-6));
    }

    private static List<String> codes(Drawing drawing) {
        return drawing.cautions().stream().map(Caution::code).toList();
    }

    private static double number(Drawing drawing, String key) {
        return Double.parseDouble(
                String.valueOf(drawing.cautions().get(0).message().parameters().get(key)));
    }

    private static void refused(ThrowingCallable call, String code) {
        assertThatThrownBy(call)
                .isInstanceOfSatisfying(
                        TextException.class,
                        refusal -> assertThat(refusal.code()).isEqualTo(code));
    }

    @Test
    void aRelativeFirstMoveIsAbsoluteWhateverWasDrawnBefore() {
        Drawing relative = read("<rect x='10' y='10' width='150' height='120'/><circle cx='60' cy='60' r='7'/>"
                + "<path d='m 90,40 a 6,6 0 1 0 12,0 a 6,6 0 1 0 -12,0 z m 30,50 h 9 v 9 z'/>"
                + "<path d='m 30,100 l 5,0 0,5 z'/>");

        assertCentre(relative.contours().get(2), 96, 110);
        // within a path a relative move goes on from the start of what was closed
        assertThat(relative.contours().get(3).start().xSi()).isCloseTo(0.120, within(1e-12));
        assertThat(relative.contours().get(3).start().ySi()).isCloseTo(0.060, within(1e-12));
        assertCentre(relative.contours().get(4), 32.5, 47.5);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "<style>.guide{display:none}</style><g class='x guide y'>%s</g>",
                "<style><![CDATA[ /* layers */ g.guide, .other { visibility : hidden } ]]></style><g"
                        + " class='guide'>%s</g>",
                "<style>#help{stroke:red;display:none!important}</style><g id='help' style='display:inline'>%s</g>",
                "<style>circle{display:none}</style>%s",
                "<g visibility='hidden'>%s</g>",
                "<g style='visibility: collapse'>%s</g>",
                "<g display='none'><g display='inline'>%s</g></g>",
                "<svg:g xmlns:svg='http://www.w3.org/2000/svg' style='fill:none;display:none'>%s</svg:g>",
                "<defs>%s</defs>",
            })
    void hiddenShapesAreLeftOutAndCounted(String around) {
        String hidden = "<circle id='guide1' cx='50' cy='50' r='9'/>";
        Drawing drawing = read("<rect id='plate' width='160' height='120'/>" + String.format(around, hidden));

        assertThat(drawing.contours()).extracting(Contour::name).containsExactly("plate");
        if (!around.startsWith("<defs>")) {
            assertThat(codes(drawing)).containsExactly("hidden-shapes");
            assertThat(drawing.cautions().get(0).message().parameters()).containsEntry("names", "guide1");
        }
    }

    @Test
    void aShapeMayBeVisibleWithinAHiddenGroup() {
        Drawing drawing =
                read("<g visibility='hidden'><rect id='shown' visibility='visible' width='9' height='9'/></g>");

        assertThat(drawing.contours()).hasSize(1);
        assertThat(drawing.cautions()).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "<style>g > .a{display:none}</style>",
                "<style>rect:hover{visibility:hidden}</style>",
                "<style>[data-x]{transform:none}</style>",
                "<style>@media print{rect{display:none}}</style>",
                "<style>@import url(other.css);</style>",
            })
    void aStyleSheetThatMayHideAndIsNotReadIsRefused(String style) {
        refused(() -> read(style + "<rect width='9' height='9'/>"), "style-sheet");
    }

    @Test
    void rulesThatOnlyPaintAreNoReasonToRefuse() {
        Drawing drawing =
                read("<style>@font-face{font-family:x;src:url(y)} g > path{stroke:red} .a:hover{fill:blue}</style>"
                        + "<rect width='9' height='9'/>");

        assertThat(drawing.contours()).hasSize(1);
    }

    @ParameterizedTest
    @ValueSource(strings = {"viewBox='0 0 288 288'", "width='288' height='288' viewBox='0 0 288 288'", "width='288px'"})
    void aDrawingWithoutAPhysicalSizeGetsACautionWithItsSize(String root) {
        String body = "<rect x='24' y='24' width='240' height='192'/>";
        Drawing drawing = SvgReader.read("<svg " + root + ">" + body + "</svg>", DrawingSettings.defaults());

        assertThat(codes(drawing)).containsExactly("drawing-unit-assumed");
        assertThat(number(drawing, "width_m")).isCloseTo(240 * 0.0254 / 96, within(1e-12));

        DrawingSettings points = DrawingSettings.defaults().withUnit(Kind.LENGTH.of(0.0254 / 72));
        Drawing inPoints = SvgReader.read("<svg " + root + ">" + body + "</svg>", points);
        assertThat(Kind.LENGTH.si(inPoints.box().width())).isCloseTo(240 * 0.0254 / 72, within(1e-12));
        assertThat(inPoints.cautions()).isEmpty();

        Drawing wide = SvgReader.read(
                "<svg " + root + ">" + body + "</svg>",
                DrawingSettings.defaults().withWidth(millimetres(80)));
        assertThat(Kind.LENGTH.si(wide.box().width())).isCloseTo(0.080, within(1e-9));
        assertThat(Kind.LENGTH.si(wide.box().height())).isCloseTo(0.064, within(1e-9));
        assertThat(wide.cautions()).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "<line x1='10' y1='10' x2='130' y2='10'/><line x1='130' y1='10' x2='130' y2='90'/>"
                        + "<line x1='130' y1='90' x2='10' y2='90'/><line x1='10' y1='90' x2='10' y2='10'/>",
                "<line x1='130' y1='90' x2='10' y2='90'/><line x1='10' y1='10' x2='130' y2='10'/>"
                        + "<line x1='10' y1='10' x2='10' y2='90'/><line x1='130' y1='90' x2='130' y2='10'/>",
                "<path d='M10,10 L130,10 130,90 10,90 10,10'/>",
                "<path d='M10,10 L130,10 M10,10 V90 H130 M130,90 V10'/>",
            })
    void segmentsThatMeetAreOneContourWhateverTheirOrderAndDirection(String body) {
        Drawing drawing = read(body);

        assertThat(drawing.contours()).hasSize(1);
        Contour plate = drawing.contours().get(0);
        assertThat(plate.isClosed()).isTrue();
        assertThat(Math.abs(Kind.AREA.si(plate.signedArea()))).isCloseTo(120e-3 * 80e-3, within(1e-12));
        assertThat(drawing.cautions()).isEmpty();
    }

    @Test
    void aGapWithinTheJoinIsClosedWithACautionThatNamesIt() {
        String body = "<path id='plate' d='M10,10 L130,10 130,90 10,90 10.005,10.005'/>";
        Drawing drawing = read(body);

        assertThat(drawing.contours().get(0).isClosed()).isTrue();
        assertThat(drawing.contours().get(0).size()).isEqualTo(4);
        assertThat(codes(drawing)).containsExactly("gap-closed");
        assertThat(number(drawing, "gap_m")).isCloseTo(Math.hypot(5e-6, 5e-6), within(1e-12));

        Drawing strict = read(body, DrawingSettings.defaults().withJoin(millimetres(0.005)));
        refused(strict::parts, "open-contour");
    }

    @Test
    void branchesAndEndsOnALineAreRefused() {
        String lines = "<path d='M10,10 H60 V60'/><path d='M60,60 H10 V10'/>";
        refused(() -> read(lines + "<line x1='60' y1='60' x2='90' y2='90'/>"), "drawing-branch");
        Drawing spur = read(lines + "<line id='spur' x1='40' y1='60' x2='40' y2='90'/>");
        refused(spur::parts, "contour-ends-on-line");
        Drawing crossing = read(lines + "<circle cx='60' cy='60' r='9'/>");
        refused(crossing::parts, "contours-meet");
        Drawing eight = read("<path id='eight' d='M10 10 L50 50 H10 L50 10 z'/>");
        refused(eight::parts, "crosses-itself");
    }

    @Test
    void partsAreFoundByNestingAndNamedByTheirGroups() {
        Drawing drawing = read(
                "<g id='g1' v:label='east-shutter'><rect x='10' y='10' width='80' height='80'/><circle cx='40' cy='40'"
                        + " r='20'/></g><circle cx='40' cy='40' r='12'/><circle id='pin' cx='40' cy='40' r='5'/><g"
                        + " id='west-shutter'><circle cx='140' cy='40' r='8'/><rect x='110' y='10' width='70'"
                        + " height='80'/></g>");
        List<DrawnPart> parts = drawing.parts();

        assertThat(parts).extracting(DrawnPart::name).containsExactly("east-shutter", "part 2", "west-shutter");
        assertThat(parts).extracting(part -> part.part().holes().size()).containsExactly(1, 1, 1);
        assertThat(Kind.AREA.si(parts.get(1).part().area())).isCloseTo(Math.PI * (144 - 25) * 1e-6, within(1e-12));
        assertThat(parts.get(1).part().holes().get(0).name()).isEqualTo("pin");
        assertThatThrownBy(drawing::onlyPart).isInstanceOfSatisfying(TextException.class, refusal -> {
            assertThat(refusal.code()).isEqualTo("several-parts");
            assertThat(refusal.parameters().get("names")).asString().contains("east-shutter", "west-shutter");
        });
    }

    @Test
    void referencesAreDrawnWhereTheyStand() {
        Drawing drawing = read("<defs><circle id='bolt' r='8'/><g id='pair'><use xlink:href='#bolt'/>"
                + "<use href='#bolt' x='30' id='right'/></g>"
                + "<symbol id='eye' viewBox='0 0 10 10'><circle cx='5' cy='5' r='5'/></symbol></defs>"
                + "<rect width='180' height='140'/><use href='#pair' x='60' y='60' transform='translate(0,10)'/>"
                + "<use href='#eye' x='100' y='20' width='20' height='40'/>");
        List<Contour> contours = drawing.contours();

        assertCentre(contours.get(1), 60, 80);
        assertCentre(contours.get(2), 90, 80);
        assertCentre(contours.get(3), 110, 110);
        assertThat(Kind.LENGTH.si(contours.get(3).box().width())).isCloseTo(0.020, within(1e-9));
        assertThat(contours).extracting(Contour::name).contains("bolt", "right");
    }

    @ParameterizedTest
    @CsvSource({
        "<use href='#none'/>, use-unknown",
        "<use href='other.svg#x'/>, use-outside",
        "<g id='a'><use href='#a'/></g>, use-circular",
        "<g id='a'><use href='#b'/></g><g id='b'><use href='#a'/></g>, use-circular",
    })
    void referencesThatLeadNowhereAreRefused(String body, String code) {
        refused(() -> read(body), code);
    }

    @Test
    void aHugeFamilyOfReferencesEnds() {
        StringBuilder body = new StringBuilder("<defs><g id='u0'/>");
        for (int i = 1; i < 40; i++) {
            body.append("<g id='u").append(i).append("'>");
            for (int k = 0; k < 10; k++) {
                body.append("<use href='#u").append(i - 1).append("'/>");
            }
            body.append("</g>");
        }
        refused(() -> read(body + "</defs><use href='#u39'/>"), "too-many-elements");
    }

    /** Circles of four cubic curves with the usual constant 4/3 (sqrt 2 - 1) leave the true circle by at most 2.73e-4 r. */
    @ParameterizedTest
    @CsvSource({"0, 0, 10, 2", "37, 13, 3, 2", "5, 5, 60, 24", "1, 2, 0.6, 2"})
    void circlesDrawnAsCurvesComeOutAsArcs(double x, double y, double r, int mostEdges) {
        double k = r * 4 / 3 * (Math.sqrt(2) - 1);
        String data = String.format(
                Locale.ROOT,
                "m %f,0 c 0,%f %f,%f %f,%f s %f,%f %f,%f s %f,%f %f,%f s %f,%f %f,%f z",
                x + r,
                k,
                k - r,
                r,
                -r,
                r,
                -r,
                k - r,
                -r,
                -r,
                r - k,
                -r,
                r,
                -r,
                r,
                r - k,
                r,
                r);
        Contour circle = read("<path transform='translate(0," + y + ") rotate(17 40 40)' d='" + data + "'/>")
                .contours()
                .get(0);

        assertThat(circle.isClosed()).isTrue();
        assertThat(circle.size()).isLessThanOrEqualTo(mostEdges);
        EdgeCursor edge = new EdgeCursor();
        for (int i = 0; i < circle.size(); i++) {
            circle.load(i, edge);
            assertThat(edge.isArc()).isTrue();
            assertThat(edge.radius() * 1000).isCloseTo(r, within(0.02 + 0.02 * r));
        }
        assertThat(circle.lengthSi() * 1000).isCloseTo(2 * Math.PI * r, within(0.002 * r + 0.01));
    }

    @Test
    void layersAndColoursDecideTheUseOfTheirShapes() {
        String body = "<rect id='rim' width='160' height='120'/><g v:label='FINE'><circle id='seat' cx='40' cy='40'"
                + " r='9'/></g><circle id='bore' cx='90' cy='40' r='9' stroke='#F00'/><g id='notes'><text>12"
                + " mm</text></g><g id='engrave'><path d='M10 100h30m0 0v9m0 -9h9'/></g><g id='tabs'><line x1='80'"
                + " y1='118' x2='80' y2='123'/></g>";
        refused(() -> read(body), "svg-syntax");
        Drawing drawing = read(
                body,
                DrawingSettings.defaults()
                        .withLayers(List.of(
                                LayerRule.parse("fine = fine"),
                                LayerRule.parse("rgb(255,0,0)=very coarse"),
                                LayerRule.parse("red=name:main bore"),
                                LayerRule.parse("NOTES=skip"),
                                LayerRule.parse("engrave=mark"),
                                LayerRule.parse("tabs=tab"))));

        assertThat(drawing.contours()).extracting(Contour::name).containsExactly("rim", "seat", "main bore");
        assertThat(drawing.contours())
                .extracting(contour -> contour.requirement(0).quality())
                .containsExactly(CutQuality.MEDIUM, CutQuality.FINE, CutQuality.VERY_COARSE);
        assertThat(drawing.marks()).isNotEmpty();
        assertThat(drawing.tabs()).hasSize(1);
        assertThat(drawing.tabs().get(0).contour()).isZero();
        assertThat(drawing.tabs().get(0).place().xSi()).isCloseTo(0.080, within(1e-9));
        assertThat(drawing.tabs().get(0).place().ySi()).isCloseTo(0.030, within(1e-9));
        refused(() -> LayerRule.parse("CUT=shiny"), "unknown-layer-use");
        refused(() -> LayerRule.parse("CUT"), "layer-rule");
    }

    /** A page that a program draws behind the part has an id and no group. */
    @Test
    void aShapeIsLeftOutByItsId() {
        String body = "<rect id='Background' width='200' height='200' fill='white'/><circle cx='90' cy='40' r='9'/>";
        Drawing drawing =
                read(body, DrawingSettings.defaults().withLayers(List.of(LayerRule.parse("background=skip"))));

        assertThat(drawing.contours()).hasSize(1);
        assertThat(Kind.LENGTH.si(drawing.contours().get(0).length())).isCloseTo(0.018 * Math.PI, within(1e-6));
    }

    @Test
    void repeatedAndTinyShapesAreLeftOutAndCounted() {
        Drawing drawing = read("<rect width='160' height='120'/><circle cx='40' cy='40' r='9'/>"
                + "<path d='M49,40 A9 9 0 0 0 31,40 A9 9 0 0 0 49,40z'/><rect width='160' height='120'/>"
                + "<line x1='3' y1='3' x2='3.004' y2='3'/>");

        assertThat(drawing.contours()).hasSize(2);
        assertThat(codes(drawing)).containsExactly("duplicate-entities", "tiny-entities");
        assertThat(drawing.cautions().get(0).message().parameters()).containsEntry("count", 2L);
        assertThat(drawing.onlyPart().part().holes()).hasSize(1);
    }

    @Test
    void shapesWithoutPaintAndClippedShapesGetACaution() {
        Drawing drawing = read("<rect id='frame' width='160' height='120' fill='none'/>"
                + "<clipPath id='c'><rect width='5' height='5'/></clipPath>"
                + "<g clip-path='url(#c)'><circle cx='40' cy='40' r='9'/></g>");

        assertThat(codes(drawing)).containsExactly("unpainted-shapes", "clip-ignored");
        assertThat(drawing.contours()).hasSize(2);
    }
}

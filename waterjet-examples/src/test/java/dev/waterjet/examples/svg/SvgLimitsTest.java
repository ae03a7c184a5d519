package dev.waterjet.examples.svg;

import static dev.waterjet.measure.Measures.micrometres;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.measure.Kind;
import dev.waterjet.measure.TextException;
import dev.waterjet.part.Contour;
import dev.waterjet.quality.EdgeRequirement;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Input at a limit of the reader is read, input beyond it is refused with the limit. */
class SvgLimitsTest {

    private static final String OPEN = "<svg width='200mm' height='100mm' viewBox='0 0 200 100'>";

    private static SvgDrawing read(String body) {
        return SvgDrawing.read(OPEN + body + "</svg>", micrometres(5), EdgeRequirement.defaults());
    }

    private static void refused(String body, String message) {
        assertThatThrownBy(() -> read(body)).isInstanceOf(TextException.class).hasMessageContaining(message);
    }

    private static double lengthMm(SvgDrawing drawing) {
        return 1000 * Kind.LENGTH.si(drawing.contours().get(0).length());
    }

    @Test
    void drawingsHaveTwentyMillionCharacters() {
        String drawing = OPEN + "<path d='M0 0h1'/></svg>";
        String atTheLimit = drawing + " ".repeat(20_000_000 - drawing.length());

        assertThat(SvgDrawing.read(atTheLimit, micrometres(5), EdgeRequirement.defaults())
                        .contours())
                .hasSize(1);
        assertThatThrownBy(() -> SvgDrawing.read(atTheLimit + " ", micrometres(5), EdgeRequirement.defaults()))
                .hasMessageContaining("the drawing has more than 20000000 characters");
    }

    /** The reader of JDK 17 fails on this one with an exception of its message table. */
    @Test
    void aBrokenDocumentTypeIsRefused() {
        assertThatThrownBy(() -> SvgDrawing.read(
                        "<!DOCTYPE svg[ PUBLIC 'http://\0one/no'><svg/>", micrometres(5), EdgeRequirement.defaults()))
                .isInstanceOf(TextException.class)
                .hasMessageContaining("the XML is broken");
    }

    @Test
    void elementsNest256Deep() {
        // the root is the first, the line the last
        assertThat(lengthMm(read("<g>".repeat(254) + "<path d='M0 0h7'/>" + "</g>".repeat(254))))
                .isCloseTo(7, within(1e-9));
        refused("<g>".repeat(255) + "<path d='M0 0h7'/>" + "</g>".repeat(255), "nested more than 256 deep");
    }

    @Test
    void whatIsPassedOverNestsNoDeeper() {
        String line = "<path d='M0 0h7'/>";

        assertThat(lengthMm(read("<defs>" + "<g>".repeat(254) + "</g>".repeat(254) + "</defs>" + line)))
                .isCloseTo(7, within(1e-9));
        refused("<defs>" + "<g>".repeat(255) + "</g>".repeat(255) + "</defs>" + line, "nested more than 256 deep");
    }

    @Test
    void numbersHave64Characters() {
        assertThat(lengthMm(read("<path d='M0 0h" + "0".repeat(63) + "7'/>"))).isCloseTo(7, within(1e-9));
        refused(
                "<path d='M0 0h" + "0".repeat(64) + "7'/>",
                "line 1, column 71: the number has more than 64 characters");
    }

    @Test
    void numbersReachTenToTheNinth() {
        assertThat(lengthMm(read("<g transform='scale(1e-9)'><path d='M0 0h1e9'/></g>")))
                .isCloseTo(1, within(1e-9));
        refused("<path d='M0 0h-1.01e9'/>", "line 1, column 71: the number is too large, beyond 1e9");
    }

    @Test
    void pointsLieWithinAKilometre() {
        assertThat(lengthMm(read("<path d='M0 100 H1e6'/>"))).isCloseTo(1e6, within(1e-6));
        for (String data :
                new String[] {"M0 100 H1.001e6", "M-2e6 0 h1", "M0 0 A9 9 0 1 1 2e6 2e6", "M0 0 C1 1 2 2 9e8 3"}) {
            refused("<path d='" + data + "'/>", "line 1, column 57: ");
        }
        refused("<line x1='0' y1='0' x2='9e8' y2='0'/>", "more than 1000 m from the origin of the drawing");
        refused("<circle r='3e6'/>", "more than 1000 m from the origin of the drawing");
    }

    @Test
    void transformsStayFinite() {
        refused(
                "<g transform='scale(1e9)'>".repeat(40) + "</g>".repeat(40),
                "the transforms up to here have no finite numbers");
        refused("<g transform='" + "scale(1e9)".repeat(40) + "'/>", "the transform has no finite numbers");
        assertThatThrownBy(() -> SvgDrawing.read(
                        "<svg width='1e9mm' height='1e9mm' viewBox='0 0 1e-320 1e-320'/>",
                        micrometres(5),
                        EdgeRequirement.defaults()))
                .hasMessageContaining("the size of the drawing over that of its viewBox is no finite number");
        assertThatThrownBy(() -> SvgDrawing.read(
                        "<svg transform='scale(2)'><path d='M0 0h1'/></svg>",
                        micrometres(5),
                        EdgeRequirement.defaults()))
                .hasMessageContaining("the root has a transform");
    }

    @Test
    void aCurveHasAHundredThousandChords() {
        // half circle flattened: an ellipse of 100 m at a tolerance that wants more chords than there may be
        String ellipse = OPEN + "<ellipse cx='0' cy='0' rx='1e5' ry='9e4'/></svg>";

        assertThat(SvgDrawing.read(ellipse, micrometres(5), EdgeRequirement.defaults())
                        .contours())
                .hasSize(1);
        assertThatThrownBy(() -> SvgDrawing.read(ellipse, micrometres(0.001), EdgeRequirement.defaults()))
                .hasMessageContaining("line 1, column 57: a curve needs more than 100000 chords at this tolerance");
    }

    @Test
    void aDrawingHasAMillionEdges() {
        String drawing = OPEN + "<path d='M0 0" + "h1h-1".repeat(500_000) + "%s'/></svg>";

        assertThat(SvgDrawing.read(String.format(drawing, ""), micrometres(5), EdgeRequirement.defaults())
                        .contours()
                        .get(0)
                        .size())
                .isEqualTo(1_000_000);
        assertThatThrownBy(
                        () -> SvgDrawing.read(String.format(drawing, "h1"), micrometres(5), EdgeRequirement.defaults()))
                .hasMessageContaining("the drawing has more than 1000000 edges at this tolerance");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "id='x d = \"M0 0h3\"' d='M0 0h7'",
                "xmlns:x='urn:x' x:d='M0 0h3' d='M0 0h7'",
                "data-d='M0 0h3' d='M0 0h7'",
                "d = 'M0 0h7' ad='M0 0h3'",
                "d='M0 0&#104;7'",
            })
    void noAttributeIsTakenForAnother(String attributes) {
        assertThat(lengthMm(read("<path " + attributes + "/>"))).isCloseTo(7, within(1e-9));
    }

    @Test
    void anArcWithoutRadiusOrChordIsALine() {
        assertThat(lengthMm(read("<path d='M0 0A1e-300 5 0 0 1 7 0'/>"))).isCloseTo(7, within(1e-9));
        assertThat(lengthMm(read("<path d='M0 0A5 1e-12 30 1 1 7 0'/>"))).isCloseTo(7, within(1e-9));
        assertThat(lengthMm(read("<path d='M0 0h7A5 5 0 1 1 7 1e-15'/>"))).isCloseTo(7, within(1e-9));
    }

    @Test
    void anArcOfAGreatRadiusIsCutIntoChords() {
        // sagitta of a chord of 100 mm on a radius of 2 km: c^2/8R, 0.6 um
        Contour flat = read("<path d='M0 0A2e6 2e6 0 0 1 100 0'/>").contours().get(0);

        assertThat(flat.edge(0).isArc()).isFalse();
        assertThat(1000 * Kind.LENGTH.si(flat.length())).isCloseTo(100, within(1e-6));
    }

    @Test
    void manyElementsTakeNoLongerForTheRestOfTheFile() {
        // an attribute that is missing is sought in its own tag; were the whole file searched, this would take minutes
        assertThat(read("<g/>".repeat(50_000) + "<path d='M0 0h7'/>").contours())
                .hasSize(1);
    }
}

package dev.waterjet.examples.geometry;

import static dev.waterjet.measure.Measures.micrometres;
import static dev.waterjet.measure.Measures.millimetres;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.examples.drawing.DrawingSettings;
import dev.waterjet.examples.svg.SvgReader;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.TextException;
import dev.waterjet.part.Contour;
import dev.waterjet.part.Point;
import java.util.List;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import org.junit.jupiter.api.Test;

class PartFiguresTest {

    private static PartFigures part(String body) {
        return PartFigures.of(SvgReader.read(
                        "<svg width='200mm' height='200mm' viewBox='0 0 200 200'>" + body + "</svg>",
                        DrawingSettings.defaults().withChordTolerance(micrometres(2)))
                .contours());
    }

    private static double mm(Quantity<Length> length) {
        return Kind.LENGTH.si(length) * 1000;
    }

    private static double mm(Optional<Quantity<Length>> length) {
        return mm(length.orElseThrow());
    }

    @Test
    void lengthsAndAreasAreThoseOfTheDrawing() {
        PartFigures part = part("<rect width='60' height='40'/><circle cx='20' cy='20' r='5'/>");

        assertThat(mm(part.cutLength())).isCloseTo(200 + 10 * Math.PI, within(1e-6));
        // chords lie within a micrometre, two thirds of it on average
        assertThat(Kind.AREA.si(part.area()) * 1e6).isCloseTo(2400 - 25 * Math.PI, within(0.022));
        assertThat(mm(part.width())).isCloseTo(60, within(1e-9));
        assertThat(mm(part.height())).isCloseTo(40, within(1e-9));
        assertThat(mm(part.thinnestWall())).isCloseTo(15, within(2e-3));
        assertThat(mm(part.smallestRadius())).isCloseTo(5, within(1e-9));
        assertThat(part.inOrder().get(1).size()).isEqualTo(4);
    }

    @Test
    void slotsNecksAndGapsAreTheNarrowestPassage() {
        // a slot of 3 mm
        assertThat(mm(part("<rect width='60' height='40'/><rect x='10' y='10' width='20' height='3'/>")
                        .narrowestPassage(millimetres(10))))
                .isCloseTo(3, within(2e-3));
        // two chambers joined by a neck of 1.5 mm
        assertThat(mm(part("<rect width='60' height='40'/><path d='M10"
                                + " 10h10v4.25h5v-4.25h10v10h-10v-4.25h-5v4.25h-10z'/>")
                        .narrowestPassage(millimetres(10))))
                .isCloseTo(1.5, within(2e-3));
        // a keyhole in the outline: a gap of 2 mm that opens into a chamber
        assertThat(mm(part("<path d='M0 0h20v10h-5v10h12v-10h-5v-10h38v60h-60z'/>")
                        .narrowestPassage(millimetres(10))))
                .isCloseTo(2, within(2e-3));
        assertThat(part("<circle cx='50' cy='50' r='30'/>").narrowestPassage(millimetres(10)))
                .isEmpty();
    }

    @Test
    void hollowPartsNestCloserThanTheirBoxes() {
        // an arrow: a point of 20 mm on the right, a notch of 20 mm on the left
        PartFigures arrow = part("<path d='M0 0h40l20 20l-20 20h-40l20 -20z'/>");

        double gap = 2;
        // two parallel slanted edges of 45 degrees, their distance is the shift over the root of two
        assertThat(mm(arrow.nestingPitch(millimetres(gap)))).isCloseTo(40 + gap * Math.sqrt(2), within(0.01));
        assertThat(mm(part("<rect width='60' height='40'/>").nestingPitch(millimetres(gap))))
                .isCloseTo(62, within(1e-3));
    }

    @Test
    void contoursThatBoundNoPartAreRefused() {
        assertThatThrownBy(() -> part("<rect width='60' height='40'/><circle cx='60' cy='20' r='5'/>"))
                .isInstanceOf(TextException.class)
                .hasMessageContaining("they cross");
        assertThatThrownBy(() -> PartFigures.of(List.of(Contour.from(Point.millimetres(0, 0))
                        .lineTo(Point.millimetres(5, 0))
                        .open())))
                .hasMessageContaining("no contour is closed");
    }
}

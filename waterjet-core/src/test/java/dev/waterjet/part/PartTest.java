package dev.waterjet.part;

import static dev.waterjet.measure.Measures.millimetres;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.measure.Kind;
import dev.waterjet.measure.WaterjetException;
import dev.waterjet.quality.EdgeRequirement;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class PartTest {

    private static Contour rectangle(double x0, double y0, double x1, double y1) {
        return Contour.rectangle(Point.millimetres(x0, y0), Point.millimetres(x1, y1), EdgeRequirement.defaults());
    }

    private static Contour circle(double x, double y, double r) {
        return Contour.circle(Point.millimetres(x, y), millimetres(r), EdgeRequirement.defaults());
    }

    private static Part flange() {
        return Part.of(circle(0, 0, 60), circle(0, 0, 20).reversed(), circle(40, 0, 5), circle(-40, 0, 5));
    }

    @Test
    void areaAndCentreOfAPartLeaveItsHolesOut() {
        Part part = Part.of(rectangle(10, 10, 50, 30), circle(20, 20, 4));
        double hole = Math.PI * 16;

        assertThat(Kind.AREA.si(part.area())).isCloseTo((800 - hole) * 1e-6, within(1e-15));
        assertThat(part.centroid().xSi()).isCloseTo((800 * 30 - hole * 20) / (800 - hole) * 1e-3, within(1e-15));
        assertThat(part.centroid().ySi()).isCloseTo(0.02, within(1e-15));
    }

    @Test
    void centreOfAHalfDiscIsThatOfTheTextBook() {
        Contour half = Contour.from(Point.millimetres(0, -10))
                .arcTo(Point.millimetres(0, 10), Point.millimetres(0, 0), Side.LEFT)
                .close();

        // 4 r / (3 pi), any text-book of statics
        assertThat(Part.of(half).centroid().xSi()).isCloseTo(0.04 / (3 * Math.PI), within(1e-15));
        assertThat(Part.of(half.reversed()).centroid().xSi()).isCloseTo(0.04 / (3 * Math.PI), within(1e-15));
    }

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
    void theBoxOfATurnedContourReachesAsFarAsItsFarthestSample() {
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
                Box turned = contour.rotatedBy(Kind.ANGLE.of(-angle)).box();
                assertThat(turned.maximum().xSi()).isBetween(most - 1e-12, most + 1e-6);
            }
        }
    }

    @Test
    void theNarrowestWebIsBetweenBoreAndBoltHole() {
        assertThat(Kind.LENGTH.si(flange().minimumWebWidth())).isCloseTo(0.015, within(1e-12));
        assertThat(flange().partSide(0)).isEqualTo(Side.LEFT);
        assertThat(flange().partSide(1)).isEqualTo(Side.RIGHT);
        assertThat(flange().partSide(3)).isEqualTo(Side.LEFT);
    }

    @Test
    void holesOutsideOrMeetingAreRefused() {
        assertThatExceptionOfType(GeometryException.class)
                .isThrownBy(() -> Part.of(circle(0, 0, 10), circle(30, 0, 5)))
                .satisfies(e -> {
                    assertThat(e.code()).isEqualTo("hole-outside");
                    assertThat(e.parameters()).containsEntry("hole", "0");
                    assertThat(e.xSi()).isCloseTo(0.035, within(1e-12));
                    assertThat(e.ySi()).isZero();
                });
        assertThatExceptionOfType(GeometryException.class)
                .isThrownBy(() -> Part.of(
                        circle(0, 0, 50), circle(0, 0, 5), circle(8, 0, 5).named("cable")))
                .satisfies(e -> {
                    assertThat(e.code()).isEqualTo("holes-meet");
                    assertThat(e.parameters())
                            .containsEntry("hole", "\"cable\"")
                            .containsEntry("other", "0");
                });
        assertThatExceptionOfType(WaterjetException.class)
                .isThrownBy(() -> Part.of(circle(0, 0, 50), circle(0, 0, 5), circle(0, 0, 2)))
                .satisfies(e -> assertThat(e.code()).isEqualTo("holes-meet"));
        assertThatExceptionOfType(WaterjetException.class)
                .isThrownBy(() -> Part.of(Contour.from(Point.millimetres(0, 0))
                        .lineTo(Point.millimetres(10, 0))
                        .lineTo(Point.millimetres(10, 10))
                        .open()))
                .satisfies(e -> assertThat(e.code()).isEqualTo("open-contour"));
    }

    @Test
    void contoursAreCalledByTheirNames() {
        Part part = Part.of(circle(0, 0, 60), circle(0, 0, 20).named("bore"), circle(40, 0, 5));

        assertThat(part.label(0)).isEqualTo("\"bore\"");
        assertThat(part.label(1)).isEqualTo("hole 1");
        assertThat(part.label(2)).isEqualTo("outline");
        assertThat(part.holes()
                        .get(0)
                        .reversed()
                        .translatedBy(Point.millimetres(1, 2))
                        .name())
                .isEqualTo("bore");
    }
}

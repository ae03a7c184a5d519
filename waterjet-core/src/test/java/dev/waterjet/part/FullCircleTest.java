package dev.waterjet.part;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.measure.Kind;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class FullCircleTest {

    private static double length(double endX, double endY, Side turn) {
        return Contour.fromSi(0.01, 0).arcToSi(endX, endY, 0, 0, turn).open().lengthSi();
    }

    /** The end is off the start by the rounding of a format, across the path. */
    @ParameterizedTest
    @ValueSource(doubles = {0, 1e-9, 1e-8, 4e-7, 1e-6, 2.5e-6, 9e-6, -4e-7, -9e-6})
    void aFullCircleWithARoundedEndIsKept(double off) {
        assertThat(length(0.01 + off, 0, Side.LEFT)).isCloseTo(0.02 * Math.PI, within(2e-5));
        assertThat(length(0.01 + off, 0, Side.RIGHT)).isCloseTo(0.02 * Math.PI, within(2e-5));
    }

    @ParameterizedTest
    @ValueSource(doubles = {1e-8, 1e-6, 2.5e-6, -1e-8, -1e-6, -5e-6})
    void anEndRoundedAlongThePathIsKeptToo(double off) {
        assertThat(length(0.01, off, Side.LEFT)).isCloseTo(0.02 * Math.PI, within(2e-5));
    }

    /** Fits of splines write arcs of some micrometres; a full circle out of nowhere would be worse. */
    @ParameterizedTest
    @ValueSource(doubles = {4e-6, 8e-6, 20e-6, 1e-4})
    void aShortArcStaysShort(double along) {
        double angle = along / 0.01;
        double x = Math.rint(0.01 * Math.cos(angle) * 1e6) / 1e6;
        double y = Math.rint(0.01 * Math.sin(angle) * 1e6) / 1e6;

        assertThat(length(x, y, Side.LEFT)).isCloseTo(along, within(1e-6));
    }

    @Test
    void theContourClosedFromARoundedEndHasTheAreaOfTheCircle() {
        Contour circle =
                Contour.fromSi(0.01, 0).arcToSi(0.0100004, 0, 0, 0, Side.LEFT).close();

        assertThat(Kind.AREA.si(circle.signedArea())).isCloseTo(Math.PI * 1e-4, within(1e-9));
    }

    @Test
    void radiiThatDifferAreRefusedWithBoth() {
        assertThatExceptionOfType(GeometryException.class)
                .isThrownBy(() -> Contour.fromSi(0.01, 0).arcToSi(0, 0.01002, 0, 0, Side.LEFT))
                .satisfies(e -> {
                    assertThat(e.code()).isEqualTo("arc-radii-differ");
                    assertThat(e.parameters())
                            .containsEntry("start_radius_m", 0.01)
                            .containsEntry("end_radius_m", 0.01002);
                });
    }
}

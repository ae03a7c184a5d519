package dev.waterjet.toolpath;

import static dev.waterjet.measure.Measures.degrees;
import static dev.waterjet.measure.Measures.millimetres;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.ValueContract;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.part.Contour;
import dev.waterjet.part.Point;
import dev.waterjet.part.Side;
import dev.waterjet.quality.EdgeRequirement;
import dev.waterjet.toolpath.ToolPath.Purpose;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Paths beside squares, triangles and lines, by hand. */
class ToolPathTest {

    private static final KerfOffset HALF = KerfOffset.of(millimetres(0.5));

    /** A square of 20 mm: inside it the axis runs along sides of 19 mm, outside with extended corners of 21 mm. */
    private static ToolPath square(boolean isInside) {
        Contour square =
                Contour.rectangle(Point.millimetres(0, 0), Point.millimetres(20, 20), EdgeRequirement.defaults());
        Side side = isInside ? square.enclosedSide() : square.enclosedSide().opposite();
        return HALF.withCorners(KerfOffset.CornerStyle.EXTENDED)
                .apply(square, side)
                .path();
    }

    private static double length(ToolPath path, Purpose purpose) {
        return 1000 * Kind.LENGTH.si(path.length(purpose));
    }

    @Test
    void anOvercutGoesOnOverTheStart() {
        ToolPath closed = square(true);
        ToolPath path = closed.withOvercut(millimetres(19 + 4));

        assertThat(path.contour().isClosed()).isFalse();
        assertThat(length(path, Purpose.CUT)).isCloseTo(76, within(1e-9));
        assertThat(length(path, Purpose.OVERCUT)).isCloseTo(23, within(1e-9));
        assertThat(path.contour().lengthSi()).isCloseTo(0.099, within(1e-12));
        // 4 mm along the second side
        assertThat(Kind.LENGTH.si(path.contour().end().distance(path.contour().start())))
                .isCloseTo(Math.hypot(0.019, 0.004), within(1e-12));
        int last = path.size() - 1;
        assertThat(path.purpose(last)).isEqualTo(Purpose.OVERCUT);
        assertThat(path.sourceEdge(last)).isEqualTo(closed.sourceEdge(1));
        assertThat(path.cuts()).containsExactly(path.contour());
    }

    @Test
    void theLagAtTheEndMustBePassed() {
        ToolPath path = square(true).withOvercut(millimetres(3));

        assertThat(path.checkClosing(millimetres(2.999)).isSatisfied()).isTrue();
        assertThat(path.checkClosing(millimetres(3.001)).isSatisfied()).isFalse();
        assertThat(square(true).checkClosing(millimetres(0.001)).isSatisfied()).isFalse();
    }

    @Test
    void tabsDivideThePathIntoCuts() {
        ToolPath closed = square(true);
        QuantityArray<javax.measure.quantity.Length> places =
                QuantityArray.ofSi(Kind.LENGTH, new double[] {0.0095, 0.0475});
        ToolPath path = closed.withTabs(places, millimetres(2), millimetres(1));
        List<Contour> cuts = path.cuts();

        assertThat(length(path, Purpose.TAB)).isCloseTo(2 * 3, within(1e-9));
        assertThat(length(path, Purpose.CUT)).isCloseTo(76 - 2 * 3, within(1e-9));
        // from the start, between the tabs, and back to the start
        assertThat(cuts).hasSize(3).noneMatch(Contour::isClosed);
        assertThat(cuts)
                .extracting(cut -> Math.round(1e6 * cut.lengthSi()))
                .containsExactly(8000L, 38000L - 3000, 76000L - 49000);
        assertThat(closed.cuts()).containsExactly(closed.contour());
    }

    @Test
    void aPathIsItsContourSideAndPurposes() {
        ValueContract.of(() -> square(true))
                .differs("outside", square(false))
                .differs("overcut", square(true).withOvercut(millimetres(1)))
                .differs("longer overcut", square(true).withOvercut(millimetres(2)))
                .prints("tool path")
                .check();
        assertThat(square(true).describe()).containsKey("length_cut_m").doesNotContainKey("length_overcut_m");
        assertThat((double) java.util.Objects.requireNonNull(
                        square(true).withOvercut(millimetres(1)).describe().get("length_overcut_m")))
                .isCloseTo(0.001, within(1e-12));
    }

    @Test
    void anOffsetIsItsWidthsAndStyles() {
        ValueContract.of(() -> HALF)
                .differs("width", KerfOffset.of(millimetres(0.6)))
                .differs("corners", HALF.withCorners(KerfOffset.CornerStyle.EXTENDED))
                .differs("narrow places", HALF.withNarrowPlaces(KerfOffset.NarrowPlaces.SPLIT))
                .differs("tolerance", HALF.withCornerTolerance(millimetres(0.2)))
                .differs("edges", perEdge(0.5, 0.6))
                .prints("0.5 mm")
                .check();
        assertThat(HALF.toString()).doesNotContain("others");
        assertThat(perEdge(0.5, 0.6).toString()).contains("others");
    }

    private static KerfOffset perEdge(double... offsetsMm) {
        return KerfOffset.perEdge(QuantityArray.ofSi(
                Kind.LENGTH, Arrays.stream(offsetsMm).map(mm -> mm / 1000).toArray()));
    }

    /**
     * Corners of an isosceles triangle with legs of 40 mm that enclose an angle: the offset tangents would meet d/sin(w/2)
     * from a vertex of the angle w, and are cut off across the bisector at the reach of a right angle, d sqrt 2.
     */
    @ParameterizedTest
    @CsvSource({"60, 0", "60, 77", "20, 10", "85, 200", "30, -45"})
    void sharpCornersAreCutOffAtTheReachOfARightAngle(double apex, double turn) {
        double d = 0.5;
        double half = Math.toRadians(apex) / 2;
        double base = 80 * Math.sin(half);
        Contour triangle = Contour.from(Point.millimetres(0, 0))
                .lineTo(Point.millimetres(40 * Math.cos(half), -40 * Math.sin(half)))
                .lineTo(Point.millimetres(40 * Math.cos(half), 40 * Math.sin(half)))
                .close()
                .rotatedBy(degrees(turn));
        double atBase = Math.PI / 4 - half / 2;
        double expected = 80 + base + corner(d, half) + 2 * corner(d, atBase);
        for (Contour one : List.of(triangle, triangle.reversed())) {
            OffsetResult result = HALF.withCorners(KerfOffset.CornerStyle.EXTENDED)
                    .apply(one, one.enclosedSide().opposite());

            assertThat(1000 * result.path().contour().lengthSi()).isCloseTo(expected, within(1e-8));
        }
    }

    /** Path around a corner with the given half angle beyond the ends of the edges. */
    private static double corner(double d, double half) {
        double beyond = Math.max(0, d / Math.sin(half) - d * Math.sqrt(2));
        return 2 * (d / Math.tan(half) - beyond / Math.cos(half)) + 2 * beyond * Math.tan(half);
    }

    /** The path of the wider edge runs to its end, and the ramp of twenty times the difference lies beside the other. */
    @ParameterizedTest
    @ValueSource(doubles = {0, 30, 180, -110})
    void rampsLieBesideTheEdgeOfTheSmallerOffset(double turn) {
        double[][] narrowing = {{0, -0.6}, {50, -0.6}, {52, -0.5}, {100, -0.5}};
        double[][] widening = {{0, -0.5}, {48, -0.5}, {50, -0.6}, {100, -0.6}};

        assertVertices(turn, perEdge(0.6, 0.5), narrowing);
        assertVertices(turn, perEdge(0.5, 0.6), widening);
    }

    private static void assertVertices(double turn, KerfOffset offset, double[][] expectedMm) {
        Contour line = Contour.from(Point.millimetres(0, 0))
                .lineTo(Point.millimetres(50, 0))
                .lineTo(Point.millimetres(100, 0))
                .open()
                .rotatedBy(degrees(turn));
        Contour path = offset.apply(line, Side.RIGHT).path().contour().rotatedBy(degrees(-turn));

        assertThat(path.size()).isEqualTo(expectedMm.length - 1);
        for (int i = 0; i < expectedMm.length; i++) {
            Point vertex = i < path.size() ? Point.ofSi(path.xSi(i), path.ySi(i)) : path.end();
            assertThat(1000 * vertex.xSi()).isCloseTo(expectedMm[i][0], within(1e-9));
            assertThat(1000 * vertex.ySi()).isCloseTo(expectedMm[i][1], within(1e-9));
        }
    }
}

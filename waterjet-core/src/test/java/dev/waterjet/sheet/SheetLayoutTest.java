package dev.waterjet.sheet;

import static dev.waterjet.measure.Measures.millimetres;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.ValueContract;
import dev.waterjet.measure.Kind;
import dev.waterjet.part.Contour;
import dev.waterjet.part.Finding;
import dev.waterjet.part.Part;
import dev.waterjet.part.Point;
import dev.waterjet.quality.EdgeRequirement;
import dev.waterjet.toolpath.CuttingRules;
import java.util.List;
import org.junit.jupiter.api.Test;

class SheetLayoutTest {

    private static final CuttingRules RULES = CuttingRules.of(millimetres(0.8), millimetres(10));

    private static Contour rectangle(double x0, double y0, double x1, double y1) {
        return Contour.rectangle(Point.millimetres(x0, y0), Point.millimetres(x1, y1), EdgeRequirement.defaults());
    }

    private static double number(Finding finding, String key) {
        return (double)
                java.util.Objects.requireNonNull(finding.message().parameters().get(key));
    }

    private static double move(Finding finding) {
        return (double) java.util.Objects.requireNonNull(
                finding.remedies().get(0).parameters().get("length_m"));
    }

    @Test
    void values() {
        Part part = Part.of(rectangle(0, 0, 30, 20));
        ValueContract.of(() -> SheetLayout.of(rectangle(0, 0, 300, 200), List.of(part)))
                .differs("sheet", SheetLayout.of(rectangle(0, 0, 300, 210), List.of(part)))
                .differs("parts", SheetLayout.of(rectangle(0, 0, 300, 200), List.of(part, part)))
                .prints("1 parts on a sheet of 300 mm by 200 mm")
                .check();
    }

    @Test
    void neighboursAndTheEdgeOfTheSheetKeepMaterialBetween() {
        Contour sheet = rectangle(0, 0, 1000, 500);
        Part first = Part.of(rectangle(10, 10, 110, 110));
        SheetLayout good = SheetLayout.of(sheet, List.of(first, first.translatedBy(Point.millimetres(110, 0))));

        assertThat(good.check(RULES)).hasSize(2).allMatch(Finding::isSatisfied);
    }

    @Test
    void partsTooNearMoveApart() {
        Contour sheet = rectangle(0, 0, 1000, 500);
        Part first = Part.of(rectangle(10, 10, 110, 110));
        SheetLayout bad = SheetLayout.of(sheet, List.of(first, first.translatedBy(Point.millimetres(101, 0))));

        // two kerfs of 0.8 mm and a web of 2.5 mm, of which 1 mm is there
        assertThat(bad.check(RULES))
                .filteredOn(found -> !found.isSatisfied())
                .singleElement()
                .satisfies(found -> {
                    assertThat(found.code()).isEqualTo("neighbour-clearance");
                    assertThat(move(found)).isCloseTo(0.0031, within(1e-12));
                });
    }

    @Test
    void aPartNearTheEdgeMovesInwards() {
        Part part = Part.of(rectangle(10, 1, 110, 101));

        Finding finding = SheetLayout.of(rectangle(0, 0, 1000, 500), List.of(part))
                .check(RULES)
                .get(0);

        assertThat(finding.code()).isEqualTo("edge-clearance");
        assertThat(move(finding)).isCloseTo(0.0023, within(1e-12));
    }

    @Test
    void aPartOverTheEdgeMovesInwardsByTheOverhangToo() {
        Part part = Part.of(rectangle(-5, 10, 95, 110));
        CuttingRules rules = CuttingRules.of(millimetres(1), millimetres(12));

        Finding finding = SheetLayout.of(rectangle(0, 0, 1000, 500), List.of(part))
                .check(rules)
                .get(0);

        assertThat(finding.code()).isEqualTo("over-edge");
        assertThat(number(finding, "over_m")).isCloseTo(0.005, within(1e-12));
        assertThat(move(finding)).isCloseTo(0.009, within(1e-12));
    }

    /** Kerf, web and places are powers of two of a metre, so that the distance in doubles is the required one. */
    @Test
    void theRequiredDistanceIsEnough() {
        double unit = 1.0 / 1024;
        CuttingRules rules = CuttingRules.of(Kind.LENGTH.of(unit), Kind.LENGTH.of(8 * unit));
        Contour square = Contour.rectangle(
                Point.ofSi(16 * unit, 16 * unit), Point.ofSi(32 * unit, 32 * unit), EdgeRequirement.defaults());
        Contour sheet =
                Contour.rectangle(Point.ofSi(0, 0), Point.ofSi(128 * unit, 128 * unit), EdgeRequirement.defaults());
        Part part = Part.of(square);

        SheetLayout enough = SheetLayout.of(sheet, List.of(part, part.translatedBy(Point.ofSi(20 * unit, 0))));
        SheetLayout less = SheetLayout.of(sheet, List.of(part, part.translatedBy(Point.ofSi(19.5 * unit, 0))));

        assertThat(enough.check(rules)).hasSize(2).allMatch(Finding::isSatisfied);
        assertThat(less.check(rules)).hasSize(3).anyMatch(found -> found.code().equals("neighbour-clearance"));
    }

    /** A disc of 20 mm radius, 17 mm from each edge in turn. */
    @Test
    void aDiscReachesOverEveryEdgeAlike() {
        Contour sheet = rectangle(0, 0, 1000, 500);
        double[][] centres = {{17, 250}, {983, 250}, {500, 17}, {500, 483}};
        for (double[] centre : centres) {
            Part disc = Part.of(Contour.circle(
                    Point.millimetres(centre[0], centre[1]), millimetres(20), EdgeRequirement.defaults()));

            Finding finding = SheetLayout.of(sheet, List.of(disc)).check(RULES).get(0);

            assertThat(finding.code()).isEqualTo("over-edge");
            assertThat(number(finding, "over_m")).isCloseTo(0.003, within(1e-12));
        }
    }
}

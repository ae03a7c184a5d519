package dev.waterjet.toolpath;

import static dev.waterjet.measure.Measures.millimetres;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.measure.Kind;
import dev.waterjet.part.Contour;
import dev.waterjet.part.EdgeCursor;
import dev.waterjet.part.Finding;
import dev.waterjet.part.Part;
import dev.waterjet.part.Point;
import dev.waterjet.quality.EdgeRequirement;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Leads beside a wall along the edge, by hand: with a kerf of 1.1 mm the jet runs 0.55 mm from the edge, pierces 1.375 mm from
 * anything, and its leads keep 0.66 mm.
 */
class LeadWallTest {

    private static final CuttingRules RULES = CuttingRules.of(millimetres(1.1), millimetres(10));

    private static Contour rectangle(double x0, double y0, double x1, double y1) {
        return Contour.rectangle(Point.millimetres(x0, y0), Point.millimetres(x1, y1), EdgeRequirement.defaults());
    }

    /** The lead in the middle of the lower edge of a plate, with a wall below. */
    private static Lead beside(double gapMm, CuttingRules rules) {
        return LeadPlacer.of(Part.of(rectangle(0, 0, 100, 40)), rules)
                .withNeighbours(List.of(rectangle(-50, -gapMm - 10, 150, -gapMm)))
                .at(0, millimetres(50));
    }

    private static Finding finding(Lead lead, String code) {
        return lead.findings().stream()
                .filter(found -> found.code().equals(code))
                .findFirst()
                .orElseThrow();
    }

    private static double millimetresOf(Lead lead, String code, String key) {
        return 1e3
                * ((Number) Objects.requireNonNull(
                                finding(lead, code).message().parameters().get(key)))
                        .doubleValue();
    }

    private static int arcs(Lead lead) {
        EdgeCursor edge = new EdgeCursor();
        int arcs = 0;
        for (int i = 0; lead.toolPath().purpose(i) == ToolPath.Purpose.LEAD_IN; i++) {
            lead.toolPath().contour().load(i, edge);
            arcs += edge.isArc() ? 1 : 0;
        }
        return arcs;
    }

    /** The straight part and the quarter reach 6.5 mm beyond the jet axis: 0.55 + 6.5 + 1.375 mm. */
    @ParameterizedTest
    @CsvSource({"8.426", "9", "40"})
    void theFullLeadIsTakenWhereItFits(double gap) {
        Lead lead = beside(gap, RULES);

        assertThat(lead.isSatisfied()).isTrue();
        assertThat(lead.pierce().xSi()).isCloseTo(0.0465, within(1e-9));
        assertThat(lead.pierce().ySi()).isCloseTo(-0.00705, within(1e-9));
    }

    /** Else two half circles from half-way: their radii are one sixth and two thirds of the way to the axis. */
    @ParameterizedTest
    @CsvSource({"8.424, true", "5, true", "2.751, true", "2.749, false", "2.2, false"})
    void theMiddleIsPiercedWhereTheFullLeadDoesNotFit(double gap, boolean isClear) {
        Lead lead = beside(gap, RULES);
        double toMiddle = gap / 2 - 0.55;

        assertThat(lead.isClear()).isEqualTo(isClear);
        assertThat(lead.isSatisfied()).isFalse();
        assertThat(lead.pierce().xSi()).isCloseTo(0.05, within(1e-9));
        assertThat(lead.pierce().ySi()).isCloseTo(-gap / 2 * 1e-3, within(1e-9));
        assertThat(arcs(lead)).isEqualTo(2);
        assertThat(millimetresOf(lead, "lead-size", "radius_m")).isCloseTo(toMiddle * 2 / 3, within(1e-6));
        assertThat(millimetresOf(lead, "lead-size", "length_m")).isCloseTo(3, within(1e-9));
        assertThat(millimetresOf(lead, "pierce-clearance", "value_m")).isCloseTo(gap / 2, within(1e-6));
        assertThat(Kind.LENGTH.si(lead.toolPath().length(ToolPath.Purpose.LEAD_IN)))
                .isCloseTo(Math.PI * toMiddle * 5 / 6 * 1e-3, within(1e-9));
        assertThat(Kind.LENGTH.si(lead.toolPath().length(ToolPath.Purpose.LEAD_OUT)))
                .isCloseTo(Math.PI / 2 * toMiddle * 2 / 3 * 1e-3, within(1e-9));
    }

    /** Without a radius the way in is straight, halved until it fits: 0.55 + 3 + 1.375 mm, 0.55 + 1.5 + 1.375 mm. */
    @ParameterizedTest
    @CsvSource({"4.926, 3, true", "4.924, 1.5, true", "3.426, 1.5, true", "3.424, 1.5, false", "9, 3, true"})
    void aStraightWayInIsHalvedUntilItFits(double gap, double length, boolean isClear) {
        Lead lead = beside(gap, RULES.withLead(millimetres(3), millimetres(0)));

        assertThat(lead.isClear()).isEqualTo(isClear);
        assertThat(arcs(lead)).isZero();
        assertThat(millimetresOf(lead, "lead-size", "length_m")).isCloseTo(length, within(1e-9));
        assertThat(lead.pierce().ySi()).isCloseTo(-(0.55 + length) * 1e-3, within(1e-9));
        assertThat(finding(lead, "lead-size").isSatisfied()).isEqualTo(length == 3);
    }

    /** A chord is never longer than the diameter that is requested. */
    @Test
    void theMiddleIsNotSoughtBeyondTheDiameterRequested() {
        // pierced 20 mm from the edge the lead would be clear; the part is as wide as the kerf is far from the wall
        CuttingRules rules = RULES.withLead(millimetres(30), millimetres(2));
        Lead lead = beside(20, rules);

        assertThat(lead.isClear()).isTrue();
        assertThat(lead.pierce().ySi()).isCloseTo(-(0.55 + 4) * 1e-3, within(1e-9));
        assertThat(millimetresOf(lead, "lead-size", "radius_m")).isCloseTo(8.0 / 3, within(1e-9));
    }

    /**
     * In a slot of 5 mm, near its end: the spiral reaches 1.3 mm back from the entry, the half circle 0.975 mm, and both keep
     * 0.66 mm from the end.
     */
    @ParameterizedTest
    @CsvSource({"1.97, 2", "1.95, 1", "1.64, 1"})
    void nearTheEndOfASlotAHalfCircleTakesLessRoom(double fromEnd, int arcs) {
        Part part = Part.of(rectangle(-30, -30, 60, 60), rectangle(0, 0, 30, 5));
        Lead lead =
                LeadPlacer.of(part, RULES.withCornerClearance(millimetres(0))).at(0, millimetres(fromEnd));
        double chord = 2.5 - 0.55;

        assertThat(lead.isClear()).isTrue();
        assertThat(arcs(lead)).isEqualTo(arcs);
        assertThat(lead.pierce().xSi()).isCloseTo(fromEnd * 1e-3, within(1e-9));
        assertThat(lead.pierce().ySi()).isCloseTo(0.0025, within(1e-9));
        assertThat(millimetresOf(lead, "lead-size", "radius_m"))
                .isCloseTo(arcs == 1 ? chord / 2 : chord * 2 / 3, within(1e-6));
        assertThat(Kind.LENGTH.si(lead.toolPath().length(ToolPath.Purpose.LEAD_IN)))
                .isCloseTo(Math.PI * chord * (arcs == 1 ? 0.5 : 5.0 / 6) * 1e-3, within(1e-9));
    }

    /**
     * A triangle of the tangent lengths 2 : 3 : 4 that is hardly wider than the jet: the path of the jet passes the places
     * where the incircle touches, and no place tried first.
     */
    @Test
    void anEntryIsFoundWhereTheIncircleTouches() {
        double scale = 0.56 / Math.sqrt(24.0 / 9) * 1e-3;
        double a = 5 * scale;
        double b = 7 * scale;
        double c = 6 * scale;
        double x = (a * a + c * c - b * b) / (2 * a);
        double y = Math.sqrt(c * c - x * x);
        Contour hole = Plane.polygon(new double[][] {{0, 0}, {a, 0}, {x, y}});
        Part part = Part.of(rectangle(-30, -30, 30, 30), hole);
        Lead lead = LeadPlacer.of(part, RULES).suggest(0);
        // what the jet passes of a side are its tangent lengths about the touch, shorter by the same factor: the middle
        // of it
        double passed = 0.01 / 0.56;
        double one = (2 + passed / 2) / 5;
        double two = (3 + passed / 2) / 7;
        double three = (2 + passed) / 6;
        List<double[]> middles = List.of(
                new double[] {one * a, 0}, new double[] {a + two * (x - a), two * y}, new double[] {three * x, three * y
                });

        assertThat(middles)
                .anyMatch(at ->
                        Math.hypot(lead.entry().xSi() - at[0], lead.entry().ySi() - at[1]) < 1e-8);
        assertThat(Kind.LENGTH.si(lead.toolPath().length(ToolPath.Purpose.CUT)))
                .isCloseTo((a + b + c) * (0.01 / 0.56), within(1e-9));
    }
}

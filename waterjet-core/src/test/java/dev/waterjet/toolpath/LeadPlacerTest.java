package dev.waterjet.toolpath;

import static dev.waterjet.measure.Measures.millimetres;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.measure.Kind;
import dev.waterjet.part.Contour;
import dev.waterjet.part.ContourBuilder;
import dev.waterjet.part.EdgeCursor;
import dev.waterjet.part.Finding;
import dev.waterjet.part.GeometryException;
import dev.waterjet.part.Part;
import dev.waterjet.part.Point;
import dev.waterjet.quality.CutQuality;
import dev.waterjet.quality.EdgeRequirement;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class LeadPlacerTest {

    private static final EdgeRequirement MEDIUM = EdgeRequirement.of(CutQuality.MEDIUM);
    private static final CuttingRules RULES = CuttingRules.of(millimetres(0.8), millimetres(10));
    private static final CuttingRules WIDE = CuttingRules.of(millimetres(1.1), millimetres(10));

    private static Contour rectangle(double x0, double y0, double x1, double y1) {
        return Contour.rectangle(Point.millimetres(x0, y0), Point.millimetres(x1, y1), MEDIUM);
    }

    private static Contour circle(double x, double y, double r) {
        return Contour.circle(Point.millimetres(x, y), millimetres(r), MEDIUM);
    }

    private static Part flange() {
        return Part.of(circle(0, 0, 60), circle(0, 0, 20).reversed(), circle(40, 0, 5), circle(-40, 0, 5));
    }

    private static Finding finding(Lead lead, String code) {
        return lead.findings().stream()
                .filter(found -> found.code().equals(code))
                .findFirst()
                .orElseThrow();
    }

    private static double number(Finding finding, String key) {
        return ((Number) java.util.Objects.requireNonNull(
                        finding.message().parameters().get(key)))
                .doubleValue();
    }

    /** Least distance of the leads of a tool path from the contours of a part, sampled. */
    static double sampledClearance(Part part, ToolPath path) {
        EdgeCursor edge = new EdgeCursor();
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i < path.size(); i++) {
            path.contour().load(i, edge);
            for (int k = 0; k <= 100; k++) {
                Point at = Point.ofSi(edge.xAt(k / 100.0), edge.yAt(k / 100.0));
                for (Contour contour : part.contours()) {
                    least = Math.min(least, Kind.LENGTH.si(contour.clearance(at)));
                }
            }
        }
        return least;
    }

    @Test
    void suggestedLeadsLieInScrapAndSatisfyEveryCheckWhereThereIsRoom() {
        LeadPlacer placer = LeadPlacer.of(flange(), RULES);
        for (int i : new int[] {0, 3}) {
            Lead lead = placer.suggest(i);
            assertThat(lead.isSatisfied()).isTrue();
            Contour contour = flange().contours().get(i);
            assertThat(Kind.LENGTH.si(contour.clearance(lead.entry()))).isLessThan(1e-12);
            // a hole is pierced inside, the outline outside
            assertThat(contour.isAround(lead.pierce())).isEqualTo(i < 3);
            assertThat(lead.path().requirement(0).isLead()).isTrue();
            assertThat(lead.path().requirement(2).isLead()).isFalse();
        }
    }

    /** Common holes in 10 mm plate with a kerf of 1.1 mm: the jet pierces at the centre and enters on half circles. */
    @ParameterizedTest
    @ValueSource(doubles = {3, 4, 5, 6, 8, 10})
    void aRoundHoleIsPiercedAtItsCentre(double diameter) {
        Part part = Part.of(rectangle(0, 0, 200, 200), circle(100, 100, diameter / 2));

        Lead lead = LeadPlacer.of(part, WIDE).suggest(0);

        assertThat(lead.isClear()).isTrue();
        assertThat(lead.pierce().xSi()).isCloseTo(0.1, within(1e-9));
        assertThat(lead.pierce().ySi()).isCloseTo(0.1, within(1e-9));
        assertThat(sampledClearance(part, lead.toolPath())).isGreaterThanOrEqualTo(0.55e-3 - 1e-9);
    }

    @ParameterizedTest
    @ValueSource(doubles = {12, 13, 14, 30})
    void aWiderHoleHasALeadOfTheRequestedSize(double diameter) {
        Part part = Part.of(rectangle(0, 0, 200, 200), circle(100, 100, diameter / 2));

        Lead lead = LeadPlacer.of(part, WIDE).suggest(0);

        assertThat(lead.isSatisfied()).isTrue();
        assertThat(sampledClearance(part, lead.toolPath())).isGreaterThanOrEqualTo(0.55e-3 - 1e-9);
    }

    @ParameterizedTest
    @ValueSource(doubles = {3, 5, 8, 9.5, 20})
    void aSlotHasALeadAtAnyWidth(double width) {
        Part part = Part.of(rectangle(0, 0, 200, 200), rectangle(80, 100, 120, 100 + width));

        Lead lead = LeadPlacer.of(part, WIDE).suggest(0);

        assertThat(lead.isClear()).isTrue();
        assertThat(sampledClearance(part, lead.toolPath())).isGreaterThanOrEqualTo(0.55e-3 - 1e-9);
    }

    @Test
    void smallerLeadsAreAFinding() {
        Part part = Part.of(circle(0, 0, 60), circle(0, 0, 2));

        Finding size = finding(LeadPlacer.of(part, WIDE).suggest(0), "lead-size");

        assertThat(size.isSatisfied()).isFalse();
        // two thirds of the way from the jet's path to the centre
        assertThat(number(size, "radius_m")).isCloseTo(2.0 / 3 * (2 - 0.55) * 1e-3, within(1e-9));
    }

    @Test
    void aHoleThatOnlyJustTakesTheJetHasALeadWithAFinding() {
        Part part = Part.of(circle(0, 0, 60), circle(0, 0, 0.7));

        Lead lead = LeadPlacer.of(part, WIDE).suggest(0);

        assertThat(finding(lead, "pierce-clearance").isSatisfied()).isFalse();
        assertThat(sampledClearance(part, lead.toolPath())).isGreaterThanOrEqualTo(0.55e-3 - 1e-9);
    }

    @Test
    void aHoleSmallerThanTheJetIsRefusedWithItsPlace() {
        Part part = Part.of(circle(0, 0, 60), circle(7, 3, 0.4).named("pin"));

        assertThatExceptionOfType(GeometryException.class)
                .isThrownBy(() -> LeadPlacer.of(part, WIDE).suggest(0))
                .satisfies(e -> {
                    assertThat(e.code()).isEqualTo("jet-does-not-fit");
                    assertThat(e.xSi()).isCloseTo(0.007, within(1e-6));
                    assertThat(e.ySi()).isCloseTo(0.003, within(1e-6));
                });
    }

    @Test
    void leadsMeetThePathWithoutACorner() {
        Lead lead = LeadPlacer.of(flange(), RULES).suggest(3);
        EdgeCursor before = new EdgeCursor();
        EdgeCursor after = new EdgeCursor();
        for (Contour path : List.of(lead.toolPath().contour(), lead.path())) {
            // the first line of the path along the edges switches the offset on
            for (int i = path.equals(lead.path()) ? 1 : 0; i + 1 < path.size(); i++) {
                path.load(i, before);
                path.load(i + 1, after);
                assertThat(after.turnFrom(before)).isCloseTo(0, within(1e-9));
            }
        }
    }

    /** Lead-in and lead-out of a plate by hand: a line and a quarter circle outside, the same circle on from the entry. */
    @Test
    void theMiddleOfTheLongestEdgeIsEnteredFirst() {
        Lead lead = LeadPlacer.of(Part.of(rectangle(0, 0, 60, 100)), RULES).suggest(0);
        double r = 0.0035;
        double l = 0.003;
        double d = 0.0004;

        // of the two long edges that on the right comes first; it runs upwards, scrap lies to its right
        isAt(lead.entry(), 0.060, 0.050);
        isAt(lead.pierce(), 0.060 + d + r + l, 0.050 - r);
        Contour axis = lead.toolPath().contour();
        isAt(axis.edge(0).end(), 0.060 + d + r, 0.050 - r);
        isAt(axis.edge(1).centre().orElseThrow(), 0.060 + d + r, 0.050);
        isAt(axis.edge(1).end(), 0.060 + d, 0.050);
        isAt(axis.end(), 0.060 + d + r, 0.050 + r);
        assertThat(Kind.LENGTH.si(lead.toolPath().length(ToolPath.Purpose.LEAD_IN)))
                .isCloseTo(l + Math.PI * r / 2, within(1e-12));
        assertThat(Kind.LENGTH.si(lead.toolPath().length(ToolPath.Purpose.CUT)))
                .isCloseTo(0.320 + 2 * Math.PI * d, within(1e-12));
        // along the edges of the part the arcs are wider by the offset
        isAt(lead.path().edge(1).centre().orElseThrow(), 0.060 + d + r, 0.050);
        isAt(lead.path().edge(1).end(), 0.060, 0.050);
        isAt(lead.path().end(), 0.060 + d + r, 0.050 + d + r);
    }

    @Test
    void aLeadRequestedBeyondTheMiddleIsDrawnThere() {
        Lead lead = LeadPlacer.of(Part.of(rectangle(0, 0, 60, 100)), RULES).at(0, millimetres(20));

        isAt(lead.entry(), 0.020, 0);
        assertThat(lead.isSatisfied()).isTrue();
        assertThat(number(finding(lead, "lead-corner"), "value_m")).isCloseTo(0.02, within(1e-12));
        assertThat(number(finding(lead, "lead-web"), "value_m")).isCloseTo(0.1, within(1e-12));
    }

    @Test
    void badPlacesHaveFindingsWithARemedy() {
        LeadPlacer placer = LeadPlacer.of(Part.of(rectangle(0, 0, 100, 2)), RULES);

        Finding corner = finding(placer.at(0, millimetres(0.5)), "lead-corner");
        assertThat(corner.isSatisfied()).isFalse();
        assertThat(number(corner, "value_m")).isCloseTo(0.0005, within(1e-12));
        assertThat(number(corner, "limit_m")).isEqualTo(0.0016);
        Lead thin = placer.at(0, millimetres(50));
        assertThat(finding(thin, "lead-web").isSatisfied()).isFalse();
        assertThat(finding(thin, "lead-web").remedies()).isNotEmpty();
        assertThat(finding(thin, "lead-corner").isSatisfied()).isTrue();
        assertThat(finding(placer.at(0, millimetres(101)), "lead-web").isSatisfied())
                .isTrue();
    }

    @Test
    void leadsBesideANeighbourAreShortened() {
        Part strip = Part.of(rectangle(0, 0, 100, 20));
        Contour neighbour = rectangle(0, -8, 100, -5);
        Lead lead =
                LeadPlacer.of(strip, RULES).withNeighbours(List.of(neighbour)).at(0, millimetres(50));

        assertThat(lead.isClear()).isTrue();
        assertThat(finding(lead, "lead-size").isSatisfied()).isFalse();
        assertThat(sampledClearance(Part.of(neighbour), lead.toolPath())).isGreaterThan(0.00044);
    }

    /** Entering 3.6 mm before an inner corner, the lead-out of full size would run into the wall. */
    @Test
    void theKerfOfTheLeadOutStaysClearOfAWallAhead() {
        Contour ell = Contour.from(Point.millimetres(0, 0))
                .lineTo(Point.millimetres(60, 0))
                .lineTo(Point.millimetres(60, -30))
                .lineTo(Point.millimetres(100, -30))
                .lineTo(Point.millimetres(100, 60))
                .lineTo(Point.millimetres(0, 60))
                .close();
        Part part = Part.of(ell);

        Lead lead = LeadPlacer.of(part, CuttingRules.of(millimetres(1.1), millimetres(12)))
                .at(0, millimetres(56.4));

        assertThat(lead.isClear()).isTrue();
        assertThat(sampledClearance(part, lead.toolPath())).isGreaterThanOrEqualTo(0.55e-3 - 1e-9);
    }

    @Test
    void leadsRunAtTheFeedOfASeparationCutUnlessAsked() {
        Part part = Part.of(circle(0, 0, 60).withRequirement(EdgeRequirement.of(CutQuality.VERY_FINE)));

        assertThat(LeadPlacer.of(part, RULES).suggest(0).path().requirement(0).quality())
                .isEqualTo(CutQuality.VERY_COARSE);
        assertThat(LeadPlacer.of(part, RULES.withLeadQuality(CutQuality.FINE))
                        .suggest(0)
                        .toolPath()
                        .contour()
                        .requirement(0)
                        .quality())
                .isEqualTo(CutQuality.FINE);
    }

    @Test
    void aStraightEntryIsDrawnWhereNoRadiusIsRequested() {
        Lead lead = LeadPlacer.of(flange(), RULES.withLead(millimetres(4), millimetres(0)))
                .suggest(3);

        assertThat(lead.isSatisfied()).isTrue();
        assertThat(lead.toolPath().purpose(0)).isEqualTo(ToolPath.Purpose.LEAD_IN);
        assertThat(lead.toolPath().contour().isArc(0)).isFalse();
        assertThat(Kind.LENGTH.si(lead.toolPath().length(ToolPath.Purpose.LEAD_IN)))
                .isCloseTo(0.004, within(1e-12));
        assertThat(Kind.LENGTH.si(lead.toolPath().length(ToolPath.Purpose.LEAD_OUT)))
                .isZero();
    }

    @Test
    void aCurveOfManyShortEdgesIsEnteredWhereItIsSmooth() {
        ContourBuilder builder = Contour.from(Point.millimetres(0, 0));
        int edges = 20_000;
        double radius = 200;
        for (int i = 1; i < edges; i++) {
            double angle = Math.PI * i / edges;
            builder.lineTo(Point.millimetres(radius - radius * Math.cos(angle), radius * Math.sin(angle)));
        }
        Contour dome = builder.lineTo(Point.millimetres(2 * radius, 0)).close();

        Lead lead = LeadPlacer.of(Part.of(dome), RULES).suggest(0);

        assertThat(lead.isSatisfied()).isTrue();
        assertThat(lead.path().start()).isEqualTo(lead.pierce());
    }

    @Test
    void cornersAreNearEitherWayRound() {
        Corners corners = Corners.of(rectangle(0, 0, 30, 10));

        assertThat(corners.distance(0.002)).isCloseTo(0.002, within(1e-15));
        assertThat(corners.distance(0.015)).isCloseTo(0.015, within(1e-15));
        assertThat(corners.distance(0.033)).isCloseTo(0.003, within(1e-15));
        assertThat(corners.distance(0.079)).isCloseTo(0.001, within(1e-15));
        assertThat(Corners.of(circle(0, 0, 5)).distance(0.01)).isInfinite();
    }

    private static void isAt(Point point, double xM, double yM) {
        assertThat(point.xSi()).isCloseTo(xM, within(1e-12));
        assertThat(point.ySi()).isCloseTo(yM, within(1e-12));
    }
}

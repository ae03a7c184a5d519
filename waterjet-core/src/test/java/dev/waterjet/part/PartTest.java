package dev.waterjet.part;

import dev.waterjet.measure.Kind;
import dev.waterjet.quality.CutQuality;
import dev.waterjet.quality.EdgeRequirement;
import dev.waterjet.sheet.SheetLayout;
import dev.waterjet.sheet.Slats;
import dev.waterjet.toolpath.CuttingOrder;
import dev.waterjet.toolpath.CuttingRules;
import dev.waterjet.toolpath.HoldingTabs;
import dev.waterjet.toolpath.Lead;
import dev.waterjet.toolpath.LeadPlacer;
import java.util.List;
import org.junit.jupiter.api.Test;
import static dev.waterjet.measure.Measures.degrees;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.millimetres;
import static dev.waterjet.measure.Measures.newtons;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

class PartTest {

    private static final EdgeRequirement MEDIUM = EdgeRequirement.of(CutQuality.MEDIUM);
    private static final CuttingRules RULES = CuttingRules.of(millimetres(0.8), millimetres(10));

    private static Contour rectangle(double x0, double y0, double x1, double y1) {
        return Contour.rectangle(Point.millimetres(x0, y0), Point.millimetres(x1, y1), MEDIUM);
    }

    private static Contour circle(double x, double y, double r) {
        return Contour.circle(Point.millimetres(x, y), millimetres(r), MEDIUM);
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

    @Test
    void theNarrowestWebIsBetweenBoreAndBoltHole() {
        assertThat(Kind.LENGTH.si(flange().minimumWebWidth())).isCloseTo(0.015, within(1e-12));
        assertThat(flange().partSide(0)).isEqualTo(Side.LEFT);
        assertThat(flange().partSide(1)).isEqualTo(Side.RIGHT);
        assertThat(flange().partSide(3)).isEqualTo(Side.LEFT);
    }

    @Test
    void holesOutsideOrMeetingAreRefused() {
        assertThatThrownBy(() -> Part.of(circle(0, 0, 10), circle(30, 0, 5)))
                .isInstanceOf(GeometryException.class)
                .hasMessage("edge 0 at (35 mm, 0 mm): hole 0 does not lie inside the outline");
        assertThatThrownBy(() -> Part.of(circle(0, 0, 50), circle(0, 0, 5), circle(8, 0, 5)))
                .hasMessageContaining("hole 1 meets hole 0");
        assertThatThrownBy(() -> Part.of(circle(0, 0, 50), circle(0, 0, 5), circle(0, 0, 2)))
                .hasMessageContaining("hole 1 meets hole 0");
        assertThatThrownBy(() -> Part.of(Contour.from(Point.millimetres(0, 0))
                        .lineTo(Point.millimetres(10, 0))
                        .lineTo(Point.millimetres(10, 10))
                        .open()))
                .hasMessageContaining("the contour is open");
    }

    @Test
    void suggestedLeadsMeetEveryCheck() {
        LeadPlacer placer = LeadPlacer.of(flange(), RULES);
        for (int i = 0; i < 4; i++) {
            Lead lead = placer.suggest(i).orElseThrow();
            assertThat(lead.findings()).hasSize(4).allMatch(Finding::isSatisfied);
            Contour contour = flange().contours().get(i);
            assertThat(Kind.LENGTH.si(contour.clearance(lead.entry()))).isLessThan(1e-12);
            // a hole is pierced inside, the outline outside
            assertThat(contour.isAround(lead.pierce())).isEqualTo(i < 3);
            assertThat(lead.path().requirement(0).isLead()).isTrue();
            assertThat(lead.path().requirement(2).isLead()).isFalse();
            double leads = Kind.LENGTH.si(lead.path().length()) - Kind.LENGTH.si(contour.length());
            assertThat(leads).isBetween(0.0005, 0.0141);
        }
    }

    @Test
    void leadsMeetTheContourWithoutACorner() {
        Lead lead = LeadPlacer.of(flange(), RULES).suggest(3).orElseThrow();
        EdgeCursor before = new EdgeCursor();
        EdgeCursor after = new EdgeCursor();
        for (int i = 0; i + 1 < lead.path().size(); i++) {
            lead.path().load(i, before);
            lead.path().load(i + 1, after);
            assertThat(ContourGeometry.turn(before, after)).isCloseTo(0, within(1e-9));
        }
    }

    @Test
    void badPlacesAreToldWithAReasonAndARemedy() {
        Part strip = Part.of(rectangle(0, 0, 100, 2));
        LeadPlacer placer = LeadPlacer.of(strip, RULES);

        Lead onCorner = placer.at(0, millimetres(0.5));
        assertThat(finding(onCorner, "lead-corner").isSatisfied()).isFalse();
        assertThat(finding(onCorner, "lead-corner").reason())
                .isEqualTo("distance of the entry from the nearest corner is 0.5 mm, at least 1.6 mm is wanted");
        Lead thin = placer.at(0, millimetres(50));
        assertThat(finding(thin, "lead-web").reason()).contains("is 2 mm, at least 2.5 mm is wanted");
        assertThat(finding(thin, "lead-web").suggestion()).isNotEmpty();
        assertThat(finding(thin, "lead-corner").isSatisfied()).isTrue();
        Lead end = placer.at(0, millimetres(101));
        assertThat(finding(end, "lead-web").isSatisfied()).isTrue();

        LeadPlacer beside = placer.withNeighbours(List.of(rectangle(0, -8, 100, -5)));
        assertThat(finding(beside.at(0, millimetres(50)), "pierce-room").isSatisfied())
                .isFalse();
        assertThat(finding(beside.at(0, millimetres(50)), "lead-free").isSatisfied()).isFalse();
    }

    private static Finding finding(Lead lead, String code) {
        return lead.findings().stream()
                .filter(found -> found.code().equals(code))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void aHoleTooSmallForAnyLeadGetsNone() {
        Part part = Part.of(circle(0, 0, 60), circle(0, 0, 1.2));

        assertThat(LeadPlacer.of(part, RULES).suggest(0)).isEmpty();
    }

    @Test
    void insideIsCutBeforeOutside() {
        List<Contour> contours = List.of(
                rectangle(0, 0, 100, 100), rectangle(10, 10, 60, 60), circle(30, 30, 5), rectangle(200, 0, 250, 50));
        List<Integer> order = CuttingOrder.suggest(contours);

        assertThat(order.indexOf(2)).isLessThan(order.indexOf(1));
        assertThat(order.indexOf(1)).isLessThan(order.indexOf(0));
        assertThat(order).containsExactlyInAnyOrder(0, 1, 2, 3);
        assertThat(CuttingOrder.check(contours, order)).singleElement().matches(Finding::isSatisfied);
        assertThat(CuttingOrder.check(contours, List.of(0, 1, 2, 3)))
                .hasSize(3)
                .allMatch(found -> !found.isSatisfied())
                .extracting(Finding::suggestion)
                .contains("cut contour 2 first");
    }

    @Test
    void tabsBearTheForceInShearAndBending() {
        HoldingTabs tabs = HoldingTabs.of(newtons(300), megapascals(150), millimetres(10), RULES);

        // shear: 300 N 3 / (2 10 mm 150 MPa) = 0.3 mm; bending asks for more across a kerf of 0.8 mm
        double bending = Math.sqrt(3 * 450 * 0.0008 / (0.01 * Math.sqrt(3) * 150e6));
        assertThat(Kind.LENGTH.si(tabs.width(2))).isCloseTo(bending, within(1e-15));
        assertThat(Kind.LENGTH.si(tabs.width(8))).isLessThan(Kind.LENGTH.si(tabs.width(4)));
        assertThat(tabs.check(rectangle(0, 0, 50, 50), 2, tabs.width(2)).isSatisfied())
                .isTrue();
        assertThat(tabs.check(rectangle(0, 0, 50, 50), 2, millimetres(0.2)).suggestion())
                .startsWith("widen the tabs to");
        assertThat(tabs.check(rectangle(0, 0, 50, 50), 1, millimetres(5)).reason())
                .contains("swing");
        assertThat(tabs.suggest(rectangle(0, 0, 50, 50), 4).toSi())
                .containsExactly(new double[] {0.025, 0.075, 0.125, 0.175}, within(1e-15));
        assertThatThrownBy(() -> tabs.withSafety(0.5)).hasMessageContaining("safety factor is 0.5");
    }

    @Test
    void partsFallTipOrRest() {
        Slats slats = Slats.of(millimetres(50), millimetres(4));

        assertThat(slats.check(Part.of(rectangle(0, 0, 40, 300))).code()).isEqualTo("slats-fall");
        assertThat(slats.check(Part.of(rectangle(0, 0, 40, 300))).suggestion()).contains("turn the part by");
        assertThat(slats.check(Part.of(rectangle(0, 0, 80, 300))).code()).isEqualTo("slats-tip");
        assertThat(slats.check(Part.of(rectangle(0, 0, 101, 30))).code()).isEqualTo("slats-rest");
        assertThat(slats.withDirection(degrees(0))
                        .check(Part.of(rectangle(0, 0, 101, 30)))
                        .code())
                .isEqualTo("slats-fall");
        assertThat(slats.check(Part.of(circle(0, 0, 49))).isSatisfied()).isFalse();
        assertThat(slats.check(Part.of(circle(0, 0, 51))).isSatisfied()).isTrue();
        assertThat(slats.suggestRotation(Part.of(circle(0, 0, 10)))).isEmpty();
    }

    @Test
    void neighboursAndTheEdgeOfTheSheetKeepMaterialBetween() {
        Contour sheet = rectangle(0, 0, 1000, 500);
        Part first = Part.of(rectangle(10, 10, 110, 110));
        SheetLayout good = SheetLayout.of(sheet, List.of(first, first.translatedBy(Point.millimetres(110, 0))));
        SheetLayout bad = SheetLayout.of(
                sheet,
                List.of(first, first.translatedBy(Point.millimetres(101, 0)), first.translatedBy(Point.millimetres(0, -9))));

        assertThat(good.check(RULES)).hasSize(2).allMatch(Finding::isSatisfied);
        assertThat(bad.check(RULES))
                .filteredOn(found -> !found.isSatisfied())
                .extracting(Finding::suggestion)
                .contains("move them apart by 3.1 mm", "move the part inwards by 2.3 mm")
                .hasSize(4);
    }

    @Test
    void aCurveOfManyShortEdgesIsEnteredWhereItIsSmooth() {
        ContourBuilder builder = Contour.from(Point.millimetres(0, 0)).requirement(EdgeRequirement.defaults());
        int edges = 20_000;
        double radius = 200;
        for (int i = 1; i < edges; i++) {
            double angle = Math.PI * i / edges;
            builder.lineTo(Point.millimetres(radius - radius * Math.cos(angle), radius * Math.sin(angle)));
        }
        Contour dome = builder.lineTo(Point.millimetres(2 * radius, 0)).close();

        Lead lead = LeadPlacer.of(Part.of(dome), RULES).suggest(0).orElseThrow();

        assertThat(lead.isGood()).isTrue();
        assertThat(lead.path().size()).isEqualTo(dome.size() + 4);
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

    /** Lead-in and lead-out of a plain plate by hand: a line and a quarter circle outside, the same circle on from the entry. */
    @Test
    void theMiddleOfTheLongestEdgeIsEnteredFirst() {
        Lead lead = LeadPlacer.of(Part.of(rectangle(0, 0, 60, 100)), RULES)
                .suggest(0)
                .orElseThrow();
        double r = RULES.leadRadiusSi();
        double l = RULES.leadLengthSi();

        // of the two long edges that on the right comes first; it runs upwards, scrap lies to its right
        isAt(lead.entry(), 0.060, 0.050);
        isAt(lead.pierce(), 0.060 + r + l, 0.050 - r);
        isAt(lead.path().edge(0).end(), 0.060 + r, 0.050 - r);
        isAt(lead.path().edge(1).centre().orElseThrow(), 0.060 + r, 0.050);
        isAt(lead.path().end(), 0.060 + r, 0.050 + r);
        assertThat(lead.path().size()).isEqualTo(8);
        assertThat(Kind.LENGTH.si(lead.path().length())).isCloseTo(0.320 + l + Math.PI * r, within(1e-12));
    }

    @Test
    void aLeadAskedForBeyondTheMiddleIsDrawnWhereItIsAsked() {
        Lead lead = LeadPlacer.of(Part.of(rectangle(0, 0, 60, 100)), RULES).at(0, millimetres(20));

        isAt(lead.entry(), 0.020, 0);
        assertThat(lead.isGood()).isTrue();
        assertThat(finding(lead, "lead-corner").reason()).contains("is 20 mm");
        assertThat(finding(lead, "lead-web").reason()).contains("is 100 mm");
    }

    private static void isAt(Point point, double xM, double yM) {
        assertThat(point.xSi()).isCloseTo(xM, within(1e-12));
        assertThat(point.ySi()).isCloseTo(yM, within(1e-12));
    }
}

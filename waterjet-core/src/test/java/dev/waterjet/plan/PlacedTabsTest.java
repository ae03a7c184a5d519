package dev.waterjet.plan;

import static dev.waterjet.measure.Measures.degrees;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.millimetres;
import static dev.waterjet.plan.PartPlannerTest.MEDIUM;
import static dev.waterjet.plan.PartPlannerTest.PLATE;
import static dev.waterjet.plan.PartPlannerTest.SETUP;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.Refusals;
import dev.waterjet.measure.Kind;
import dev.waterjet.part.Contour;
import dev.waterjet.part.Finding;
import dev.waterjet.part.Part;
import dev.waterjet.part.Point;
import dev.waterjet.program.PartProgram;
import dev.waterjet.program.ProgramChecks;
import dev.waterjet.program.ProgramCodes;
import dev.waterjet.program.ProgramCut;
import dev.waterjet.program.ProgramWriter;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Holding tabs where the caller wants them: a bridge of the stated width about each place. */
class PlacedTabsTest {

    private static final PartPlanner PLANNER = PartPlanner.of(SETUP).withTabWidth(millimetres(1.2));
    private static final ProgramWriter WRITER =
            ProgramWriter.of(ProgramCodes.defaults().withDecimals(6));

    private static Part turned(double degrees) {
        Contour rim = Contour.rectangle(Point.millimetres(0, 0), Point.millimetres(120, 90), MEDIUM)
                .named("rim");
        Contour bore = Contour.circle(Point.millimetres(60, 45), millimetres(20), MEDIUM)
                .named("bore");
        return Part.of(rim.rotatedBy(degrees(degrees)), bore.rotatedBy(degrees(degrees)));
    }

    private static Point turned(double xMm, double yMm, double degrees) {
        double a = Math.toRadians(degrees);
        return Point.millimetres(xMm * Math.cos(a) - yMm * Math.sin(a), xMm * Math.sin(a) + yMm * Math.cos(a));
    }

    private static EdgeProgram program(PartPlanner planner, Part... parts) {
        return planner.program("", List.of(parts), PLATE, WRITER);
    }

    /** Cuts that end at a tab, and the next one behind it: the middle of the way between them. */
    private static void assertBridges(PartProgram program, double widthM, List<Point> places) {
        int found = 0;
        for (int i = 0; i + 1 < program.cuts().size(); i++) {
            Point end = program.cuts().get(i).path(MEDIUM).end();
            Point start = program.cuts().get(i + 1).start();
            Point middle = Point.ofSi((end.xSi() + start.xSi()) / 2, (end.ySi() + start.ySi()) / 2);
            boolean isAtPlace = places.stream().anyMatch(place -> Kind.LENGTH.si(place.distance(middle)) < 2e-5);
            if (isAtPlace) {
                found++;
                assertThat(Kind.LENGTH.si(end.distance(start))).isCloseTo(widthM, within(2e-5));
            }
        }
        assertThat(found).isEqualTo(places.size());
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, 17.3, 121})
    void aBridgeOfTheWidthStaysAboutEachPlace(double degrees) {
        List<Point> places = List.of(turned(95, 90, degrees), turned(0, 30, degrees), turned(118, 12, degrees));
        List<Point> onRim = List.of(places.get(0), places.get(1), turned(120, 12, degrees));
        EdgeProgram edges = program(PLANNER.withTabs(places), turned(degrees));
        PartProgram program = PartProgram.parse(edges.text());
        PartPlan plan = PLANNER.withTabs(places).plan(turned(degrees), PLATE);
        double offset = Kind.LENGTH.si(plan.cuts().get(1).offset().orElseThrow());

        assertThat(program.cuts()).extracting(ProgramCut::name).containsExactly("bore", "rim", "rim", "rim", "rim");
        assertBridges(program, 1.2e-3 + 2 * offset, onRim);
        assertThat(plan.pierces()).isEqualTo(5);
        assertThat(ProgramChecks.defaults().check(program)).isEmpty();
    }

    @Test
    void eachPlaceBelongsToTheNearestContourOfAllParts() {
        Part left = Part.of(Contour.rectangle(Point.millimetres(0, 0), Point.millimetres(40, 40), MEDIUM)
                .named("left"));
        Part right = Part.of(Contour.circle(Point.millimetres(80, 20), millimetres(25), MEDIUM)
                .named("right"));
        PartProgram program = PartProgram.parse(program(
                        PLANNER.withTabs(List.of(Point.millimetres(54, 20), Point.millimetres(80, 46))), left, right)
                .text());

        assertThat(program.cuts()).extracting(ProgramCut::name).containsExactly("left", "right", "right", "right");
    }

    @Test
    void aLeadKeepsClearOfTabs() {
        Part part = turned(0);
        Point entry = entry(PartProgram.parse(program(PLANNER, part).text()));
        List<Point> places = List.of(entry, Point.millimetres(0, 30));
        EdgeProgram edges = program(PLANNER.withTabs(places), part);
        PartProgram program = PartProgram.parse(edges.text());
        double offset =
                Kind.LENGTH.si(PLANNER.plan(part, PLATE).cuts().get(1).offset().orElseThrow());

        assertThat(edges.findings()).extracting(Finding::code).doesNotContain("tab-beside-lead");
        assertBridges(program, 1.2e-3 + 2 * offset, places);
        assertThat(program.cuts()).hasSize(4);
    }

    private static Point entry(PartProgram program) {
        return program.cuts().get(1).loop(MEDIUM).orElseThrow().start();
    }

    @Test
    void aTabThatLeavesNoOtherEntryIsBesideTheLeadWithAFinding() {
        Part small = Part.of(Contour.circle(Point.millimetres(0, 0), millimetres(5), MEDIUM));
        List<Point> places = List.of(
                Point.millimetres(5, 0), Point.millimetres(0, 5), Point.millimetres(-5, 0), Point.millimetres(0, -5));
        EdgeProgram edges = program(PLANNER.withTabWidth(millimetres(4)).withTabs(places), small);

        assertThat(edges.findings()).extracting(Finding::code).contains("tab-beside-lead");
        assertThat(PartProgram.parse(edges.text()).cuts()).hasSize(5);
    }

    @Test
    void theWidthComesFromTheShearStrengthOrIsStated() {
        List<Point> places = List.of(Point.millimetres(95, 90), Point.millimetres(0, 30));
        PartPlanner withStrength =
                PartPlanner.of(SETUP.withShearStrength(megapascals(200))).withTabs(places);

        assertThat(program(withStrength, turned(0)).findings())
                .filteredOn(finding -> finding.code().equals("tab-width"))
                .hasSize(1)
                .allMatch(Finding::isSatisfied);
        assertThat(program(withStrength.withTabWidth(millimetres(0.01)), turned(0))
                        .findings())
                .filteredOn(finding -> finding.code().equals("tab-width"))
                .noneMatch(Finding::isSatisfied);
        assertThat(Refusals.codeOf(() -> PartPlanner.of(SETUP).withTabs(places).plan(turned(0), PLATE)))
                .isEqualTo("tab-width-missing");
    }
}

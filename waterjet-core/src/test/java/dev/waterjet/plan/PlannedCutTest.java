package dev.waterjet.plan;

import static dev.waterjet.measure.Measures.millimetres;
import static dev.waterjet.plan.PartPlannerTest.MEDIUM;
import static dev.waterjet.plan.PartPlannerTest.PLATE;
import static dev.waterjet.plan.PartPlannerTest.SETUP;
import static org.assertj.core.api.Assertions.assertThat;

import dev.waterjet.part.Contour;
import dev.waterjet.part.Finding;
import dev.waterjet.part.Part;
import dev.waterjet.part.Point;
import org.junit.jupiter.api.Test;

/** Cuts and findings of a plan as they present themselves. */
class PlannedCutTest {

    private static Part part(String rim) {
        return Part.of(
                Contour.rectangle(Point.millimetres(0, 0), Point.millimetres(60, 40), MEDIUM)
                        .named(rim),
                Contour.circle(Point.millimetres(20, 20), millimetres(2), MEDIUM));
    }

    @Test
    void aCutIsCalledByItsNameElseByItsNumber() {
        PartPlan named = PartPlanner.of(SETUP).plan(part("rim"), PLATE);
        PartPlan plain = PartPlanner.of(SETUP).plan(part(""), PLATE);

        assertThat(named.cuts().get(1).toString()).startsWith("rim, ");
        assertThat(plain.cuts()).allSatisfy(cut -> assertThat(cut.toString()).startsWith("cut " + cut.source() + ", "));
        assertThat(named.cuts().get(0).toString()).startsWith("cut 0, ");
    }

    @Test
    void violationsAreTheFindingsThatAreNotSatisfied() {
        PartPlan plan = PartPlanner.of(SETUP).plan(part("rim"), PLATE);

        assertThat(plan.findings()).anyMatch(Finding::isSatisfied).anyMatch(finding -> !finding.isSatisfied());
        assertThat(plan.violations())
                .isNotEmpty()
                .noneMatch(Finding::isSatisfied)
                .hasSize((int) plan.findings().stream()
                        .filter(finding -> !finding.isSatisfied())
                        .count());
    }
}

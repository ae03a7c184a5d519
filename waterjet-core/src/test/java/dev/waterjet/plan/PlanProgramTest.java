package dev.waterjet.plan;

import static dev.waterjet.Refusals.assertRefused;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.millimetres;
import static dev.waterjet.plan.PartPlannerTest.MEDIUM;
import static dev.waterjet.plan.PartPlannerTest.PLATE;
import static dev.waterjet.plan.PartPlannerTest.SETUP;
import static dev.waterjet.plan.PartPlannerTest.bracket;
import static dev.waterjet.plan.PartPlannerTest.mirrorPlate;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.measure.Kind;
import dev.waterjet.part.Contour;
import dev.waterjet.part.Part;
import dev.waterjet.part.Point;
import dev.waterjet.program.PartProgram;
import dev.waterjet.program.ProgramChecks;
import dev.waterjet.program.ProgramCodes;
import dev.waterjet.program.ProgramCut;
import dev.waterjet.program.ProgramWriter;
import dev.waterjet.sheet.Slats;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Plans as part programs: what is written is read back as the plan. */
class PlanProgramTest {

    @Test
    void theProgramOfAPlanIsReadBackAsThePlan() {
        for (boolean isInch : new boolean[] {false, true}) {
            for (Part part : List.of(bracket(), mirrorPlate())) {
                PartPlan plan = PartPlanner.of(SETUP).plan(part, PLATE);
                String text = plan.program(
                        "plate", ProgramWriter.of(ProgramCodes.defaults()).withInches(isInch));
                PartProgram program = PartProgram.parse(text);

                assertThat(program.isInch()).isEqualTo(isInch);
                assertThat(program.findings()).isEmpty();
                assertThat(ProgramChecks.defaults()
                                .withPierceTime(plan.cuts().get(0).pierce().time())
                                .check(program))
                        .isEmpty();
                assertThat(program.cuts())
                        .extracting(ProgramCut::name)
                        .containsExactlyElementsOf(
                                plan.cuts().stream().map(PlannedCut::name).toList());
                assertThat(Kind.LENGTH.si(program.cuttingLength()))
                        .isCloseTo(Kind.LENGTH.si(plan.cutLength()), within(5e-5));
                double sum = 0;
                for (PlannedCut cut : plan.cuts()) {
                    sum += Kind.TIME.si(cut.time());
                }
                assertThat(Kind.TIME.si(program.programmedTime().orElseThrow())).isCloseTo(sum, within(2e-3 * sum));
            }
        }
    }

    @Test
    void tabsAreLeftStandingInTheProgram() {
        Setup setup = SETUP.withSlats(Slats.of(millimetres(50), millimetres(4))).withShearStrength(megapascals(200));
        Part strip = Part.of(Contour.rectangle(Point.millimetres(0, 0), Point.millimetres(30, 20), MEDIUM)
                .named("strip"));
        PartPlan plan = PartPlanner.of(setup).plan(strip, PLATE);
        PartProgram program = PartProgram.parse(plan.program("", ProgramWriter.of(ProgramCodes.defaults())));

        assertThat(plan.pierces()).isEqualTo(4);
        assertThat(program.cuts()).hasSize(4);
        assertThat(Kind.LENGTH.si(program.cuttingLength())).isCloseTo(Kind.LENGTH.si(plan.cutLength()), within(1e-5));
    }

    @Test
    void aPlanOfAProgramIsNotWrittenAsAPathOfTheAxis() {
        PartProgram program = PartProgram.parse("G0 X-5 Y0\nM3\nG41 D1 G1 X0\nY40\nX40\nY0\nX0\nG40 G1 X-5\nM5\n");
        PartPlan plan = PartPlanner.of(SETUP).plan(program, PLATE);

        assertRefused(() -> plan.program("", ProgramWriter.of(ProgramCodes.defaults())), "plan-of-a-program");
        assertThat(PartProgram.parse(ProgramWriter.of(program.codes()).rewrite(program, plan.feeds()))
                        .cuts())
                .hasSize(1);
    }
}

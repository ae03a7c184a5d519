package dev.waterjet.plan;

import static dev.waterjet.measure.Measures.millimetres;
import static dev.waterjet.plan.PartPlannerTest.MEDIUM;
import static dev.waterjet.plan.PartPlannerTest.SETUP;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import dev.waterjet.part.Contour;
import dev.waterjet.part.EdgeCursor;
import dev.waterjet.part.Part;
import dev.waterjet.part.Point;
import dev.waterjet.pierce.PierceMethod;
import dev.waterjet.pierce.PierceSettings;
import dev.waterjet.program.PartProgram;
import dev.waterjet.program.ProgramChecks;
import dev.waterjet.program.ProgramCodes;
import dev.waterjet.program.ProgramCut;
import dev.waterjet.program.ProgramCut.Purpose;
import dev.waterjet.program.ProgramWriter;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Pierces of a moving head: the program moves as long as the plan says, and not where the scrap is narrow. */
class MovingPierceTest {

    private static final Setup ROOMY =
            SETUP.withPierceSettings(PierceSettings.defaults().withPierceClearance(millimetres(30)));
    private static final Workpiece PLATE = Jobs.plate("stainless-304", 30);
    private static final ProgramWriter WRITER = ProgramWriter.of(ProgramCodes.defaults());

    private static final Part FLANGE = Part.of(
            Contour.rectangle(Point.millimetres(0, 0), Point.millimetres(120, 90), MEDIUM)
                    .named("rim"),
            Contour.circle(Point.millimetres(40, 45), millimetres(15), MEDIUM).named("bore"),
            Contour.circle(Point.millimetres(90, 45), millimetres(1.2), MEDIUM).named("pin"));

    private static PlannedCut cut(PartPlan plan, String name) {
        return plan.cuts().stream()
                .filter(cut -> cut.name().equals(name))
                .findFirst()
                .orElseThrow();
    }

    /** Time and length of the blocks of a cut with a purpose, at the feed words of the program. */
    private static double seconds(PartProgram program, ProgramCut cut, Purpose purpose) {
        Contour path = cut.path(MEDIUM);
        EdgeCursor edge = new EdgeCursor();
        double time = 0;
        for (int i = 0; i < cut.size(); i++) {
            path.load(i, edge);
            time += cut.purpose(i) == purpose
                    ? edge.length()
                            / Kind.SPEED.si(program.feed(cut.firstBlock() + i).orElseThrow())
                    : 0;
        }
        return time;
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "G4 P4000~", "G4 P900000~"})
    void theCirclesOfAProgramTakeTheTimeOfThePierce(String dwell) {
        String text = ("G0 X80 Y60~M3~" + dwell + "G3 I-1~G41 D1 G1 X100~G3 I-20~G40 G1 X90~M5~").replace('~', '\n');
        PartProgram program = PartProgram.parse(text);
        PartPlan plan = PartPlanner.of(SETUP).plan(program, PLATE);
        PartProgram written = PartProgram.parse(WRITER.rewrite(program, plan.feeds()));
        double waited = program.cuts().get(0).dwell().map(Kind.TIME::si).orElse(0.0);
        double pierce = Kind.TIME.si(plan.cuts().get(0).pierce().time().upper(0.95));
        double moving = seconds(written, written.cuts().get(0), Purpose.PIERCE);

        assertThat(waited + moving).isGreaterThanOrEqualTo(pierce);
        if (waited == 0) {
            assertThat(moving).isCloseTo(pierce, within(2e-3 * pierce));
        }
    }

    @Test
    void eachContourHasThePierceThatItsScrapAllows() {
        PartPlan plan = PartPlanner.of(ROOMY).plan(FLANGE, PLATE);
        double bore = Kind.TIME.si(cut(plan, "bore").pierce().time().value());
        double pin = Kind.TIME.si(cut(plan, "pin").pierce().time().value());
        double rim = Kind.TIME.si(cut(plan, "rim").pierce().time().value());

        assertThat(cut(plan, "bore").pierce().method()).isEqualTo(PierceMethod.CIRCULAR);
        assertThat(cut(plan, "pin").pierce().method()).isEqualTo(PierceMethod.STATIONARY);
        assertThat(pin).isGreaterThan(bore);
        assertThat(plan.work().jetTime().si())
                .isCloseTo(plan.cuttingTime().si() + bore + pin + rim, within(1e-6 * pin));
    }

    @Test
    void writtenProgramsMoveWhereThePlanDoes() {
        PartPlan plan = PartPlanner.of(ROOMY).plan(FLANGE, PLATE);
        String edges = PartPlanner.of(ROOMY)
                .program("", List.of(FLANGE), PLATE, WRITER)
                .text();
        for (String text : List.of(edges, plan.program("", WRITER))) {
            PartProgram program = PartProgram.parse(text);
            for (ProgramCut cut : program.cuts()) {
                PlannedCut planned = cut(plan, cut.name());
                double pierce = Kind.TIME.si(planned.pierce().time().upper(0.95));
                boolean isMoving = planned.pierce().method() == PierceMethod.CIRCULAR;
                double waited = cut.dwell().map(Kind.TIME::si).orElse(0.0);

                assertThat(cut.isClosed()).isTrue();
                assertThat(waited > 0).as(cut.name()).isEqualTo(!isMoving);
                assertThat(waited + seconds(program, cut, Purpose.PIERCE))
                        .as(cut.name())
                        .isBetween(pierce * 0.999, pierce * 1.003);
            }
            assertThat(ProgramChecks.defaults().check(program)).isEmpty();
        }
        PartProgram program = PartProgram.parse(edges);
        PartPlan again = PartPlanner.of(ROOMY).plan(program, PLATE);
        PartProgram rewritten = PartProgram.parse(WRITER.rewrite(program, again.feeds()));

        assertThat(cut(again, "bore").pierce().method()).isEqualTo(PierceMethod.CIRCULAR);
        assertThat(cut(again, "pin").pierce().method()).isEqualTo(PierceMethod.STATIONARY);
        for (ProgramCut cut : rewritten.cuts()) {
            double pierce = Kind.TIME.si(cut(again, cut.name()).pierce().time().upper(0.95));
            assertThat(cut.dwell().map(Kind.TIME::si).orElse(0.0) + seconds(rewritten, cut, Purpose.PIERCE))
                    .isGreaterThanOrEqualTo(0.999 * pierce);
        }
    }

    @Test
    void theCirclesKeepClearOfThePart() {
        PartProgram program = PartProgram.parse(PartPlanner.of(ROOMY)
                .program("", List.of(FLANGE), PLATE, WRITER)
                .text());
        double bore =
                PartPlanner.of(ROOMY).plan(FLANGE, PLATE).conditions().jet().tubeExitBoreSi();
        EdgeCursor edge = new EdgeCursor();
        int circles = 0;
        for (ProgramCut cut : program.cuts()) {
            Contour path = cut.path(MEDIUM);
            for (int i = 0; i < cut.size(); i++) {
                if (cut.purpose(i) == Purpose.PIERCE) {
                    circles++;
                    path.load(i, edge);
                    for (Contour contour : FLANGE.contours()) {
                        for (double share = 0; share < 1; share += 0.1) {
                            assertThat(Kind.LENGTH.si(contour.clearance(Point.ofSi(edge.xAt(share), edge.yAt(share)))))
                                    .isGreaterThan(bore / 2);
                        }
                    }
                }
            }
        }

        assertThat(circles).isEqualTo(6);
    }
}

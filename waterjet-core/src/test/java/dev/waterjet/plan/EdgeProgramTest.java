package dev.waterjet.plan;

import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.millimetres;
import static dev.waterjet.plan.PartPlannerTest.MEDIUM;
import static dev.waterjet.plan.PartPlannerTest.PLATE;
import static dev.waterjet.plan.PartPlannerTest.SETUP;
import static dev.waterjet.plan.PartPlannerTest.bracket;
import static dev.waterjet.plan.PartPlannerTest.mirrorPlate;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.Refusals;
import dev.waterjet.measure.Kind;
import dev.waterjet.part.Contour;
import dev.waterjet.part.Finding;
import dev.waterjet.part.Part;
import dev.waterjet.part.Point;
import dev.waterjet.program.DwellForm;
import dev.waterjet.program.PartProgram;
import dev.waterjet.program.ProgramChecks;
import dev.waterjet.program.ProgramCodes;
import dev.waterjet.program.ProgramCut;
import dev.waterjet.program.ProgramCut.Offset;
import dev.waterjet.program.ProgramWriter;
import dev.waterjet.quality.CutQuality;
import dev.waterjet.quality.EdgeRequirement;
import dev.waterjet.sheet.Slats;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Programs along the edges of parts: they are the plan of the parts in other words. */
class EdgeProgramTest {

    private static final ProgramWriter WRITER =
            ProgramWriter.of(ProgramCodes.defaults().withDecimals(5));

    private static EdgeProgram program(Setup setup, Part... parts) {
        return PartPlanner.of(setup).program("plate", List.of(parts), PLATE, WRITER);
    }

    private static PartProgram read(EdgeProgram program) {
        return PartProgram.parse(program.text());
    }

    @Test
    void itsPlanIsThatOfThePart() {
        for (Part part : List.of(bracket(), mirrorPlate())) {
            PartProgram program = read(program(SETUP, part));
            PartPlan ofPart = PartPlanner.of(SETUP).plan(part, PLATE);
            PartPlan ofProgram = PartPlanner.of(SETUP).plan(program, PLATE);

            assertThat(ofProgram.cuts())
                    .extracting(PlannedCut::name)
                    .containsExactlyElementsOf(
                            ofPart.cuts().stream().map(PlannedCut::name).toList());
            assertThat(Kind.LENGTH.si(ofProgram.cutLength()))
                    .isCloseTo(Kind.LENGTH.si(ofPart.cutLength()), within(1e-4 * Kind.LENGTH.si(ofPart.cutLength())));
            assertThat(ofProgram.cuttingTime().si())
                    .isCloseTo(
                            ofPart.cuttingTime().si(),
                            within(0.01 * ofPart.cuttingTime().si()));
            assertThat(ofProgram.violations())
                    .extracting(Finding::code)
                    .doesNotContain("offset-not-followed", "jet-does-not-fit");
        }
    }

    @Test
    void theOffsetStartsOnALineAndTheCheckerFindsNothing() {
        for (Part part : List.of(bracket(), mirrorPlate())) {
            PartProgram program = read(program(SETUP, part));
            PartPlan plan = PartPlanner.of(SETUP).plan(program, PLATE);

            assertThat(program.findings()).isEmpty();
            assertThat(ProgramChecks.defaults()
                            .withPierceTime(plan.cuts().get(0).pierce().time())
                            .check(program))
                    .isEmpty();
            for (ProgramCut cut : program.cuts()) {
                assertThat(cut.offset(0)).isEqualTo(Offset.STARTS);
                assertThat(cut.path(MEDIUM).isArc(0)).isFalse();
                assertThat(cut.isClosed()).isTrue();
            }
        }
    }

    @Test
    void tabsAreThoseOfThePlan() {
        Setup setup = SETUP.withSlats(Slats.of(millimetres(50), millimetres(4))).withShearStrength(megapascals(200));
        for (Part part : List.of(
                Part.of(Contour.rectangle(Point.millimetres(0, 0), Point.millimetres(30, 20), MEDIUM)),
                Part.of(Contour.circle(Point.millimetres(5, 7), millimetres(18), MEDIUM)))) {
            PartProgram program = read(program(setup, part));
            PartPlan ofPart = PartPlanner.of(setup).plan(part, PLATE);
            PartPlan ofProgram = PartPlanner.of(setup).plan(program, PLATE);
            List<Move> pierces = pierces(ofPart);
            List<Move> again = pierces(ofProgram);

            assertThat(program.cuts()).hasSize(4);
            assertThat(again).hasSameSizeAs(pierces);
            for (int i = 0; i < again.size(); i++) {
                assertThat(Kind.LENGTH.si(
                                again.get(i).start().distance(pierces.get(i).start())))
                        .isLessThan(2e-5);
            }
            assertThat(Kind.LENGTH.si(ofProgram.cutLength()))
                    .isCloseTo(Kind.LENGTH.si(ofPart.cutLength()), within(1e-4));
            assertThat(program(setup, part).findings())
                    .extracting(Finding::code)
                    .contains("tab-width");
        }
    }

    private static List<Move> pierces(PartPlan plan) {
        return plan.moves().stream()
                .filter(move -> move.purpose() == Move.Purpose.PIERCE)
                .toList();
    }

    @Test
    void partsBesideEachOtherKeepClear() {
        Part left = Part.of(Contour.rectangle(Point.millimetres(0, 0), Point.millimetres(40, 30), MEDIUM)
                .named("left"));
        Part right = Part.of(
                Contour.rectangle(Point.millimetres(44, 0), Point.millimetres(84, 30), MEDIUM)
                        .named("right"),
                Contour.circle(Point.millimetres(64, 15), millimetres(6), MEDIUM)
                        .named("bore"));
        PartProgram program = read(program(SETUP, left, right));

        assertThat(program.cuts()).extracting(ProgramCut::name).containsExactly("left", "bore", "right");
        assertThat(Kind.LENGTH.si(
                        right.outline().clearance(program.cuts().get(0).start())))
                .isGreaterThan(2e-3);
        assertThat(Kind.LENGTH.si(left.outline().clearance(program.cuts().get(2).start())))
                .isGreaterThan(2e-3);
    }

    @Test
    void partsInOpeningsOfOthersAreCutBeforeThem() {
        Part ring = ring("ring", 100, 75);
        Part inner = ring("inner", 60, 35);
        Part core = Part.of(circle("core", 22));
        Part beside = Part.of(Contour.rectangle(Point.millimetres(120, 0), Point.millimetres(160, 40), MEDIUM)
                .named("beside"));
        for (List<Part> parts : List.of(List.of(ring, beside, inner, core), List.of(inner, ring, core, beside))) {
            PartProgram program = read(program(SETUP, parts.toArray(new Part[0])));

            assertThat(program.cuts())
                    .extracting(ProgramCut::name)
                    .containsSubsequence("core", "inner bore", "inner", "ring bore", "ring")
                    .hasSize(6);
            assertThat(ProgramChecks.defaults().check(program)).isEmpty();
        }
    }

    private static Part ring(String name, double outerMm, double innerMm) {
        return Part.of(circle(name, outerMm), circle(name + " bore", innerMm));
    }

    private static Contour circle(String name, double radiusMm) {
        return Contour.circle(Point.millimetres(0, 0), millimetres(radiusMm), MEDIUM)
                .named(name);
    }

    @Test
    void theDialectOfTheWriterHolds() {
        ProgramCodes codes = ProgramCodes.defaults()
                .withJet(62, 63)
                .withDwell(DwellForm.X_SECONDS)
                .withRadiusArcs(true)
                .withCarriageReturns(true)
                .withStartLines(List.of("G17 G40 G49"));
        EdgeProgram program = PartPlanner.of(SETUP)
                .program("", List.of(bracket()), PLATE, ProgramWriter.of(codes).withInches(true));

        assertThat(program.text())
                .startsWith("G20 G90\r\nG17 G40 G49\r\n")
                .contains("M62\r\nG4 X", " R")
                .doesNotContain(" I");
        assertThat(PartProgram.parse(program.text(), codes).cuts()).hasSize(2);
    }

    @Test
    void aHoleThatTheJetCannotCutIsLeftOut() {
        Contour rim = Contour.rectangle(Point.millimetres(0, 0), Point.millimetres(60, 40), MEDIUM);
        EdgeProgram program =
                program(SETUP, Part.of(rim, Contour.circle(Point.millimetres(20, 20), millimetres(0.3), MEDIUM)));

        assertThat(read(program).cuts()).hasSize(1);
        assertThat(program.findings())
                .filteredOn(finding -> !finding.isSatisfied())
                .extracting(Finding::code)
                .contains("jet-does-not-fit");
        assertThat(Refusals.codeOf(() -> program(SETUP))).isEqualTo("must-be-at-least");
    }

    @Test
    void aKerfWidthOfTheCallerMovesThePath() {
        PartPlanner wide = PartPlanner.of(SETUP).withKerfWidth(millimetres(2));
        PartPlan plan = wide.plan(bracket(), PLATE);

        assertThat(Kind.LENGTH.si(plan.cuts().get(0).offset().orElseThrow())).isCloseTo(1e-3, within(1e-12));
        PartPlan ofProgram = wide.plan(
                PartProgram.parse(
                        wide.program("", List.of(bracket()), PLATE, WRITER).text()),
                PLATE);
        assertThat(ofProgram.cuttingTime().si())
                .isCloseTo(
                        plan.cuttingTime().si(),
                        within(0.01 * plan.cuttingTime().si()));
        assertThat(Refusals.codeOf(() -> wide.withKerfWidth(millimetres(0)))).isEqualTo("must-be-above");
    }

    /** A gasket face, a sealed side and two rough ones. */
    private static Part ofThreeQualities() {
        return Part.of(Contour.from(Point.millimetres(0, 0))
                .requirement(EdgeRequirement.of(CutQuality.COARSE))
                .lineTo(Point.millimetres(70, 0))
                .requirement(EdgeRequirement.of(CutQuality.VERY_FINE))
                .lineTo(Point.millimetres(70, 45))
                .requirement(EdgeRequirement.of(CutQuality.MEDIUM))
                .lineTo(Point.millimetres(0, 45))
                .requirement(EdgeRequirement.of(CutQuality.COARSE))
                .close()
                .named("seat"));
    }

    private static double timeOf(PartPlan plan, CutQuality quality) {
        return plan.moves().stream()
                .filter(move -> move.quality().equals(Optional.of(quality)))
                .mapToDouble(move -> Kind.TIME.si(move.time()))
                .sum();
    }

    @Test
    void eachEdgeHasItsQualityInBothPrograms() {
        PartPlan plan = PartPlanner.of(SETUP).plan(ofThreeQualities(), PLATE);
        PartProgram along = read(program(SETUP, ofThreeQualities()));
        PartPlan again = PartPlanner.of(SETUP).plan(along, PLATE);
        PartProgram axis = PartProgram.parse(plan.program("", WRITER));

        assertThat(plan.cuts().get(0).qualities())
                .containsExactly(CutQuality.COARSE, CutQuality.VERY_FINE, CutQuality.MEDIUM);
        assertThat(again.cuts().get(0).qualities()).isEqualTo(plan.cuts().get(0).qualities());
        for (CutQuality quality : plan.cuts().get(0).qualities()) {
            double time = timeOf(plan, quality);
            assertThat(timeOf(again, quality)).as("%s", quality).isCloseTo(time, within(0.01 * time));
            assertThat(edges(along, quality)).as("%s", quality).isPositive();
            assertThat(edges(axis, quality)).as("%s", quality).isPositive();
        }
        assertThat(plan.csv()).contains("very fine", "medium", "coarse");
    }

    @Test
    void aPierceBehindATabHasTheQualityOfItsEdge() {
        Setup held = SETUP.withSlats(Slats.of(millimetres(100), millimetres(3))).withShearStrength(megapascals(300));
        PartProgram along = read(program(held, ofThreeQualities()));

        assertThat(along.cuts()).hasSize(4);
        assertThat(along.cuts().stream().map(cut -> cut.quality().orElseThrow()))
                .containsExactly(CutQuality.COARSE, CutQuality.VERY_FINE, CutQuality.MEDIUM, CutQuality.COARSE);
    }

    private static long edges(PartProgram program, CutQuality quality) {
        return program.cuts().stream()
                .map(cut -> cut.path(MEDIUM))
                .flatMap(path -> IntStream.range(0, path.size()).mapToObj(path::requirement))
                .filter(requirement -> requirement.quality() == quality)
                .count();
    }

    @Test
    void thePlanStatesAKerfWidthThatWasGiven() {
        PartPlanner wide = PartPlanner.of(SETUP).withKerfWidth(millimetres(1.3));

        assertThat(wide.plan(bracket(), PLATE).kerfWidth().map(Kind.LENGTH::si)).contains(1.3e-3);
        assertThat(wide.plan(bracket(), PLATE).describe()).containsEntry("kerf_width_given_m", 1.3e-3);
        assertThat(PartPlanner.of(SETUP).plan(bracket(), PLATE).kerfWidth()).isEmpty();
    }
}

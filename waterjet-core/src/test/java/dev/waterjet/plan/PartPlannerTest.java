package dev.waterjet.plan;

import static dev.waterjet.Refusals.assertRefused;
import static dev.waterjet.measure.Measures.gramsPerMinute;
import static dev.waterjet.measure.Measures.litresPerMinute;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.metresPerSecond;
import static dev.waterjet.measure.Measures.metresPerSquareSecond;
import static dev.waterjet.measure.Measures.millimetres;
import static dev.waterjet.measure.Measures.millimetresPerMinute;
import static dev.waterjet.measure.Measures.seconds;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.ValueContract;
import dev.waterjet.hydraulics.Orifice;
import dev.waterjet.hydraulics.PumpSetting;
import dev.waterjet.jet.Abrasive;
import dev.waterjet.jet.CuttingHead;
import dev.waterjet.jet.FocusingTube;
import dev.waterjet.jet.Mesh;
import dev.waterjet.material.Material;
import dev.waterjet.material.MaterialClass;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import dev.waterjet.motion.MachineLimits;
import dev.waterjet.part.Contour;
import dev.waterjet.part.ContourBuilder;
import dev.waterjet.part.Finding;
import dev.waterjet.part.Part;
import dev.waterjet.part.Point;
import dev.waterjet.program.PartProgram;
import dev.waterjet.quality.CutQuality;
import dev.waterjet.quality.EdgeRequirement;
import dev.waterjet.sheet.Slats;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class PartPlannerTest {

    static final EdgeRequirement MEDIUM = EdgeRequirement.of(CutQuality.MEDIUM);
    static final Setup SETUP = Setup.of(
                    CuttingHead.of(
                            Orifice.sapphire(millimetres(0.25)), FocusingTube.of(millimetres(0.76), millimetres(76))),
                    PumpSetting.of(megapascals(380), litresPerMinute(3.5)),
                    MachineLimits.of(metresPerSecond(0.3), metresPerSquareSecond(0.5)))
            .withAbrasive(Abrasive.garnet(Mesh.of(80)), gramsPerMinute(300))
            .withPrices(Jobs.RATES);
    static final Workpiece PLATE = Jobs.plate("stainless-304", 6);

    static Part bracket() {
        return Part.of(
                Contour.rectangle(Point.millimetres(0, 0), Point.millimetres(60, 40), MEDIUM)
                        .named("rim"),
                Contour.circle(Point.millimetres(20, 20), millimetres(5), EdgeRequirement.of(CutQuality.FINE))
                        .named("bore"));
    }

    private static PartPlan plan() {
        return PartPlanner.of(SETUP).plan(bracket(), PLATE);
    }

    /** A plate of the mirror cell: a wavy rim of a spline and chords, eight holes. */
    static Part mirrorPlate() {
        List<Point> wave = new ArrayList<>();
        for (int i = 0; i <= 190; i++) {
            wave.add(Point.millimetres(200 - i, 120 + 6 * Math.sin(i / 9.0)));
        }
        ContourBuilder rim = Contour.from(Point.millimetres(0, 0))
                .requirement(MEDIUM)
                .lineTo(Point.millimetres(200, 0))
                .lineTo(wave.get(0));
        wave.subList(1, wave.size()).forEach(rim::lineTo);
        rim.splineTo(Point.millimetres(0, 125), Point.millimetres(-12, 60), Point.millimetres(0, 30));
        List<Contour> holes = new ArrayList<>();
        for (int i = 0; i < 8; i++) {
            holes.add(Contour.circle(
                            Point.millimetres(22 + 22 * i, 40 + 20 * (i % 2)),
                            millimetres(1.5 + i),
                            EdgeRequirement.of(CutQuality.FINE))
                    .named("hole " + i));
        }
        return Part.of(rim.close().named("rim"), holes);
    }

    @Test
    void holesAreCutBeforeTheOutline() {
        PartPlan plan = plan();

        assertThat(plan.cuts()).extracting(PlannedCut::name).containsExactly("bore", "rim");
        assertThat(plan.moves().get(0).purpose()).isEqualTo(Move.Purpose.PIERCE);
        assertThat(plan.pierces()).isEqualTo(2);
    }

    @Test
    void movesFollowOneAnotherInPlace() {
        for (Part part : List.of(bracket(), mirrorPlate())) {
            List<Move> moves = PartPlanner.of(SETUP).plan(part, PLATE).moves();
            for (int i = 1; i < moves.size(); i++) {
                assertThat(Kind.LENGTH.si(
                                moves.get(i).start().distance(moves.get(i - 1).end())))
                        .isLessThan(1e-8);
            }
        }
    }

    @Test
    void theFeedRatesOfTheMovesTakeTheTimeOfThePlan() {
        for (double thickness : new double[] {1, 6, 40}) {
            PartPlan plan = PartPlanner.of(SETUP).plan(mirrorPlate(), Jobs.plate("stainless-304", thickness));
            double sum = 0;
            for (Move move : plan.moves()) {
                if (move.limit().isPresent()) {
                    sum += Kind.LENGTH.si(move.length()) / Kind.SPEED.si(move.feed());
                }
            }
            assertThat(sum).isCloseTo(plan.cuttingTime().si(), within(1e-6 * sum));
        }
    }

    @Test
    void thePathKeepsHalfTheKerfFromThePart() {
        PartPlan plan = plan();
        PlannedCut rim = plan.cuts().get(1);
        double offset = Kind.LENGTH.si(rim.offset().orElseThrow());
        Contour outline = bracket().outline();
        for (Move move : plan.moves()) {
            if (move.cut() == 1 && move.purpose() == Move.Purpose.CUT) {
                assertThat(Kind.LENGTH.si(outline.clearance(move.end()))).isCloseTo(offset, within(2e-8));
                assertThat(outline.isAround(move.end())).isFalse();
            }
        }
        assertThat(offset).isCloseTo(rim.kerf().offset().si(), within(1e-15));
    }

    @Test
    void timesAndCostAddUp() {
        PartPlan plan = plan();
        double moves = 0;
        double rapid = 0;
        for (Move move : plan.moves()) {
            moves += Kind.TIME.si(move.time());
            rapid += move.purpose() == Move.Purpose.RAPID ? Kind.TIME.si(move.time()) : 0;
        }

        assertThat(moves).isCloseTo(plan.work().jetTime().si() + rapid, within(1e-6 * moves));
        assertThat(Kind.TIME.si(plan.rapidTime())).isCloseTo(rapid, within(1e-12));
        assertThat(plan.timeByLimit().values().stream()
                        .mapToDouble(Kind.TIME::si)
                        .sum())
                .isCloseTo(plan.cuttingTime().si(), within(1e-9 * moves));
        assertThat(plan.cost(10)).isPresent();
        assertThat(plan.cuttingTime().relativeUncertainty())
                .isLessThanOrEqualTo(plan.conditions().relativeUncertainty());
    }

    @Test
    void delaysAddToTheIdleTime() {
        PartPlan delayed =
                PartPlanner.of(SETUP.withDelays(seconds(4), seconds(1))).plan(bracket(), PLATE);

        assertThat(Kind.TIME.si(delayed.rapidTime()))
                .isCloseTo(Kind.TIME.si(plan().rapidTime()) + 2 * 4 + 1, within(1e-9));
        assertThat(delayed.cuttingTime().si()).isCloseTo(plan().cuttingTime().si(), within(1e-9));
    }

    @Test
    void rapidTraverseSpeedsUpAndBrakes() {
        // 60 m/min is never reached over such a move: 2 sqrt(s/a)
        PartPlan plan = PartPlanner.of(SETUP.withRapidTraverse(millimetresPerMinute(60_000), metresPerSquareSecond(1)))
                .plan(bracket(), PLATE);
        double length = Kind.LENGTH.si(plan.rapidLength());

        assertThat(Kind.TIME.si(plan.rapidTime())).isCloseTo(2 * Math.sqrt(length), within(1e-12));
    }

    @Test
    void cautionsOfEveryModelArrive() {
        PartPlan plan = plan();

        assertThat(plan.cautions())
                .containsAll(plan.conditions().cautions())
                .containsAll(plan.cuts().get(0).pierce().cautions())
                .containsAll(plan.cuts().get(0).kerf().cautions())
                .doesNotHaveDuplicates();
        Workpiece rubber = Workpiece.of(Material.of("rubber", 2000, 0.5, MaterialClass.SOFT), millimetres(20));
        assertThat(PartPlanner.of(SETUP).plan(bracket(), rubber).cautions())
                .extracting(caution -> caution.code())
                .contains("unsure-machinability");
    }

    @Test
    void aHoleThatTheJetCannotCutIsAFindingAndIsLeftOut() {
        Part part = Part.of(
                Contour.rectangle(Point.millimetres(0, 0), Point.millimetres(60, 40), MEDIUM),
                Contour.circle(Point.millimetres(20, 20), millimetres(0.3), MEDIUM)
                        .named("pin"));
        PartPlan plan = PartPlanner.of(SETUP).plan(part, PLATE);

        assertThat(plan.cuts()).hasSize(1);
        assertThat(plan.violations()).extracting(Finding::code).contains("jet-does-not-fit");
    }

    @Test
    void aSmallHoleIsPiercedAndCut() {
        Part part = Part.of(
                Contour.rectangle(Point.millimetres(0, 0), Point.millimetres(60, 40), MEDIUM),
                Contour.circle(Point.millimetres(20, 20), millimetres(1.5), MEDIUM));
        PartPlan plan = PartPlanner.of(SETUP).plan(part, Jobs.plate("mild-steel-a36", 10));

        assertThat(plan.cuts()).hasSize(2);
        assertThat(plan.moves().get(0).start().distance(Point.millimetres(20, 20)))
                .satisfies(distance -> assertThat(Kind.LENGTH.si(distance)).isLessThan(1.2e-3));
    }

    @Test
    void aPartThatTipsIsHeldByTabs() {
        Setup slats = SETUP.withSlats(Slats.of(millimetres(80), millimetres(4)));
        PartPlan loose = PartPlanner.of(slats).plan(bracket(), PLATE);
        PartPlan held =
                PartPlanner.of(slats.withShearStrength(megapascals(300))).plan(bracket(), PLATE);

        assertThat(loose.violations()).extracting(Finding::code).anyMatch(code -> code.startsWith("slats"));
        assertThat(held.pierces()).isEqualTo(loose.pierces() + 3);
        assertThat(Kind.LENGTH.si(held.cutLength())).isLessThan(Kind.LENGTH.si(loose.cutLength()));
    }

    @Test
    void aPlanDescribesItselfWhole() {
        PartPlan plan = plan();

        assertThat((List<?>) plan.describe().get("cuts")).hasSize(2);
        assertThat((List<?>) plan.describe().get("moves")).hasSize(plan.moves().size());
        assertThat(plan.csv().lines().count())
                .isEqualTo(1
                        + plan.moves().stream()
                                .filter(move -> move.limit().isPresent())
                                .count());
    }

    /** A program of the moves, with one feed word each, read back and planned again. */
    @Test
    void postedMovesReadBackHaveTheSameGeometryAndTime() {
        PartPlan plan = PartPlanner.of(SETUP).plan(mirrorPlate(), PLATE);
        PartProgram posted = PartProgram.parse(posted(plan));
        double length = plan.moves().stream()
                .filter(move -> move.limit().isPresent())
                .mapToDouble(move -> Kind.LENGTH.si(move.length()))
                .sum();

        assertThat(posted.cuts()).hasSize(plan.cuts().size());
        assertThat(Kind.LENGTH.si(posted.cuttingLength())).isCloseTo(length, within(1e-4));
        PartPlan again = PartPlanner.of(SETUP).plan(posted, PLATE);
        assertThat(again.cuttingTime().si())
                .isCloseTo(
                        plan.cuttingTime().si(),
                        within(0.08 * plan.cuttingTime().si()));
    }

    private static String posted(PartPlan plan) {
        StringBuilder text = new StringBuilder("G90 G71\n");
        Move before = null;
        for (Move move : plan.moves()) {
            switch (move.purpose()) {
                case RAPID -> text.append("M5\nG0").append(at(move.end())).append('\n');
                case PIERCE -> {
                    if (before == null) {
                        text.append("G0").append(at(move.start())).append('\n');
                    }
                    text.append(String.format(
                            Locale.ROOT,
                            "(waterjet: quality %s)%nM3%n",
                            plan.cuts().get(move.cut()).quality().label()));
                }
                default -> {
                    String word =
                            !move.isArc() ? "G1" : move.turn().orElseThrow().sign() > 0 ? "G3" : "G2";
                    text.append(word).append(at(move.end()));
                    move.centre()
                            .ifPresent(centre -> text.append(String.format(
                                    Locale.ROOT,
                                    " I%.6f J%.6f",
                                    1e3 * (centre.xSi() - move.start().xSi()),
                                    1e3 * (centre.ySi() - move.start().ySi()))));
                    text.append(String.format(Locale.ROOT, " F%.2f%n", 60e3 * Kind.SPEED.si(move.feed())));
                }
            }
            before = move;
        }
        return text.append("M5\nM30\n").toString();
    }

    private static String at(Point point) {
        return String.format(Locale.ROOT, " X%.6f Y%.6f", 1e3 * point.xSi(), 1e3 * point.ySi());
    }

    @Test
    void plansAreTheSameOnManyThreads() {
        PartPlanner planner = PartPlanner.of(SETUP);
        List<String> tables = IntStream.range(0, 8)
                .parallel()
                .mapToObj(i -> planner.plan(mirrorPlate(), PLATE).csv())
                .toList();

        assertThat(tables.stream().distinct()).hasSize(1);
    }

    @Test
    void aProgramIsPlannedBlockByBlock() {
        PartProgram program = PartProgram.parse("""
            G90 G71
            G0 X10 Y10
            (waterjet: quality fine, name window)
            M3
            G1 X40
            G1 Y40
            G1 X10
            G1 Y10
            M5
            M30
            """);
        PartPlan plan = PartPlanner.of(SETUP).plan(program, Jobs.plate("mild-steel-a36", 20));
        List<Move> cutting =
                plan.moves().stream().filter(move -> move.limit().isPresent()).toList();

        assertThat(plan.cuts()).hasSize(1);
        assertThat(plan.cuts().get(0).name()).isEqualTo("window");
        assertThat(plan.cuts().get(0).quality()).isEqualTo(CutQuality.FINE);
        assertThat(cutting).extracting(Move::edge).contains(0, 1, 2, 3);
        assertThat(cutting.size()).isGreaterThan(4);
        assertThat(cutting.stream()
                        .mapToDouble(move -> Kind.LENGTH.si(move.length()) / Kind.SPEED.si(move.feed()))
                        .sum())
                .isCloseTo(plan.cuttingTime().si(), within(1e-6));
    }

    @Test
    void aSetupIsAValue() {
        ValueContract.of(() -> SETUP)
                .has("head", Setup::head, SETUP.head())
                .differs("delay", SETUP.withDelays(seconds(1), seconds(0)))
                .differs("change", SETUP.withFeedChange(0.1))
                .differs("rapid", SETUP.withRapidTraverse(millimetresPerMinute(1), metresPerSquareSecond(1)))
                .differs("abrasive", SETUP.withAbrasive(Abrasive.garnet(Mesh.of(120)), gramsPerMinute(300)))
                .differs("requirement", SETUP.withRequirement(EdgeRequirement.of(CutQuality.FINE)))
                .differs("slats", SETUP.withSlats(Slats.of(millimetres(50), millimetres(4))))
                .check();
        assertRefused(() -> SETUP.withFeedChange(-1), "must-be-at-least");
        assertRefused(() -> SETUP.withDelays(seconds(-1), seconds(0)), "must-be-at-least");
        assertRefused(
                () -> SETUP.withRapidTraverse(millimetresPerMinute(0), metresPerSquareSecond(1)), "must-be-above");
    }
}

package dev.waterjet.plan;

import static dev.waterjet.measure.Measures.degrees;
import static dev.waterjet.measure.Measures.litresPerMinute;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.hydraulics.Orifice;
import dev.waterjet.hydraulics.PumpSetting;
import dev.waterjet.jet.Abrasive;
import dev.waterjet.jet.CuttingHead;
import dev.waterjet.jet.FocusingTube;
import dev.waterjet.jet.Mesh;
import dev.waterjet.material.Material;
import dev.waterjet.material.Materials;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import dev.waterjet.motion.MachineLimits;
import dev.waterjet.part.Contour;
import dev.waterjet.part.ContourBuilder;
import dev.waterjet.part.GeometryException;
import dev.waterjet.part.Part;
import dev.waterjet.part.Point;
import dev.waterjet.program.PartProgram;
import dev.waterjet.program.ProgramChecks;
import dev.waterjet.program.ProgramCodes;
import dev.waterjet.program.ProgramFinding;
import dev.waterjet.program.ProgramWriter;
import dev.waterjet.quality.CutQuality;
import dev.waterjet.quality.EdgeRequirement;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Random parts, heads, machines and workpieces: the moves follow one another, the program written is the plan, a turned part
 * has the same plan. The system property {@code waterjet.random.plans} sets how many, for a longer search.
 */
class RandomPartsTest {

    private static final int PLANS = Integer.getInteger("waterjet.random.plans", 40);

    /** Any other reason to leave a contour out of a plan is a fault of the planner. */
    private static final Set<String> LEFT_OUT = Set.of("jet-does-not-fit", "entry-out-of-reach");

    private static final List<Material> MATERIALS =
            List.copyOf(Materials.standard().all());

    private record Job(Setup setup, Part part, Workpiece workpiece) {}

    @Test
    void theProgramWrittenIsThePlanOfAnyPart() {
        int planned = 0;
        for (long seed = 1; seed <= PLANS; seed++) {
            Job job = job(new Random(7919 * seed));
            PartPlan plan;
            try {
                plan = PartPlanner.of(job.setup).plan(job.part, job.workpiece);
            } catch (GeometryException refused) {
                assertThat(LEFT_OUT).as("seed %d", seed).contains(refused.code());
                continue;
            }
            planned++;
            requireMoves(plan, seed);
            requireContours(plan, seed);
            requireProgram(plan, seed);
            requireEdgeProgram(job, plan, seed);
            requireTurned(job, plan, seed);
        }
        assertThat(planned).isGreaterThan(PLANS / 2);
    }

    /**
     * Parts beyond those of a short search: holes hardly wider than the jet, whose arcs meet their lines in turns of the last
     * digit (136, 594, 804), a cap over four nanometres (276), an arc with a radius of 1.4 km (456).
     */
    @ParameterizedTest
    @ValueSource(longs = {136, 276, 456, 594, 804})
    void theSameHoldsOfRareParts(long seed) {
        Job job = job(new Random(7919 * seed));
        PartPlan plan = PartPlanner.of(job.setup).plan(job.part, job.workpiece);

        requireMoves(plan, seed);
        requireProgram(plan, seed);
        requireEdgeProgram(job, plan, seed);
        requireTurned(job, plan, seed);
    }

    private static void requireMoves(PartPlan plan, long seed) {
        Point before = plan.moves().get(0).start();
        for (Move move : plan.moves()) {
            assertThat(Kind.LENGTH.si(move.start().distance(before)))
                    .as("seed %d: gap before %s", seed, move)
                    .isLessThan(1e-6);
            if (move.purpose().isJetOn() && move.purpose() != Move.Purpose.PIERCE) {
                assertThat(Kind.SPEED.si(move.feed()))
                        .as("seed %d: %s", seed, move)
                        .isPositive();
            }
            before = move.end();
        }
        assertThat(plan.describe() + plan.csv()).as("seed %d", seed).doesNotContain("NaN", "Infinity");
        assertThat(plan.findings().toString()).as("seed %d", seed).doesNotContain("NaN", "Infinity");
    }

    /** Each contour is cut, or named by a finding as too narrow for the jet. */
    private static void requireContours(PartPlan plan, long seed) {
        Stream<String> codes = plan.violations().stream().map(finding -> finding.code());
        assertThat(codes.filter(
                        code -> code.startsWith("arc-") || code.endsWith("-itself") || code.startsWith("zero-")))
                .as("seed %d", seed)
                .isEmpty();
    }

    private static void requireProgram(PartPlan plan, long seed) {
        double sum = 0;
        double length = 0;
        for (PlannedCut cut : plan.cuts()) {
            sum += Kind.TIME.si(cut.time());
            length += Kind.LENGTH.si(cut.length());
        }
        ProgramWriter writer = ProgramWriter.of(ProgramCodes.defaults()).withInches(seed % 2 == 0);
        PartProgram program = PartProgram.parse(plan.program("part", writer));

        assertThat(sum).as("seed %d", seed).isCloseTo(plan.cuttingTime().si(), within(0.03 * sum));
        assertThat(program.cuts()).as("seed %d", seed).hasSize(plan.pierces());
        assertThat(Kind.LENGTH.si(program.cuttingLength()))
                .as("seed %d", seed)
                .isCloseTo(length, within(1e-4 + 1e-3 * length));
        assertThat(Kind.TIME.si(program.programmedTime().orElseThrow()))
                .as("seed %d", seed)
                .isCloseTo(sum, within(0.01 * sum));
        // in a hole hardly wider than the jet the pierce or the lead grazes the part
        assertThat(ProgramChecks.defaults().check(program).stream().map(ProgramFinding::code))
                .as("seed %d", seed)
                .isSubsetOf("pierce-in-part");
    }

    /** Along the edges of the part, with the offset left to the machine, the program is the same plan in other words. */
    private static void requireEdgeProgram(Job job, PartPlan plan, long seed) {
        PartPlanner planner = PartPlanner.of(job.setup);
        ProgramWriter writer = ProgramWriter.of(ProgramCodes.defaults().withDecimals(5));
        PartProgram program = PartProgram.parse(planner.program("part", List.of(job.part), job.workpiece, writer)
                .text());
        PartPlan again = planner.plan(program, job.workpiece);
        // an entry in a corner leaves an edge that is shorter than the offset
        boolean isNarrow = plan.violations().stream()
                .anyMatch(finding ->
                        LEFT_OUT.contains(finding.code()) || finding.code().equals("lead-corner"));

        assertThat(again.cuts()).as("seed %d", seed).hasSameSizeAs(plan.cuts());
        if (isNarrow) {
            return;
        }
        assertThat(again.violations().stream().map(finding -> finding.code()))
                .as("seed %d", seed)
                .doesNotContain("offset-not-followed");
        double length = Kind.LENGTH.si(plan.cutLength());
        assertThat(Kind.LENGTH.si(again.cutLength()))
                .as("seed %d", seed)
                .isCloseTo(length, within(2e-5 + 1e-3 * length));
        double time = plan.cuttingTime().si();
        assertThat(again.cuttingTime().si()).as("seed %d", seed).isCloseTo(time, within(0.02 * time));
    }

    /** A quarter turn swaps the axes, which are equal. */
    private static void requireTurned(Job job, PartPlan plan, long seed) {
        Part turned = Part.of(
                turned(job.part.outline()),
                job.part.holes().stream().map(RandomPartsTest::turned).toList());
        double time = plan.cuttingTime().si();

        assertThat(PartPlanner.of(job.setup)
                        .plan(turned, job.workpiece)
                        .cuttingTime()
                        .si())
                .as("seed %d", seed)
                .isCloseTo(time, within(2e-3 * time));
    }

    private static Contour turned(Contour contour) {
        return contour.rotatedBy(degrees(90)).translatedBy(Point.millimetres(300, -200));
    }

    private static Job job(Random random) {
        double orifice = between(random, 1.5e-4, 4.5e-4);
        double bore = orifice * between(random, 2.5, 4);
        MachineLimits machine = MachineLimits.of(
                Kind.SPEED.of(between(random, 0.05, 1)), Kind.ACCELERATION.of(between(random, 0.1, 5)));
        Setup setup = Setup.of(
                        CuttingHead.of(
                                Orifice.sapphire(Kind.LENGTH.of(orifice)),
                                FocusingTube.of(Kind.LENGTH.of(bore), Kind.LENGTH.of(80 * bore))),
                        PumpSetting.of(Kind.PRESSURE.of(between(random, 150e6, 600e6)), litresPerMinute(8)),
                        random.nextBoolean() ? machine.withJerk(Kind.JERK.of(between(random, 1, 100))) : machine)
                .withAbrasive(Abrasive.garnet(Mesh.of(80)), Kind.MASS_FLOW.of(between(random, 1e-3, 1.2e-2)))
                .withFeedChange(between(random, 0.005, 0.3));
        Material material = MATERIALS.get(random.nextInt(MATERIALS.size()));
        return new Job(setup, part(random), Workpiece.of(material, Kind.LENGTH.of(between(random, 1e-3, 0.1))));
    }

    /** The next random part whose holes lie within it. */
    private static Part part(Random random) {
        while (true) {
            try {
                return anyPart(random);
            } catch (GeometryException overlapping) {
                assertThat(overlapping.code()).isIn("hole-outside", "holes-meet", "crosses-itself", "touches-itself");
            }
        }
    }

    private static Part anyPart(Random random) {
        double size = between(random, 3e-3, 0.4);
        Contour outline = ring(random, 0, 0, size);
        List<Contour> holes = new ArrayList<>();
        int count = random.nextInt(4);
        for (int i = 0; i < count; i++) {
            double angle = 2 * Math.PI * (i + 0.3 * random.nextDouble()) / count;
            double from = count == 1 ? 0 : 0.17 * size;
            holes.add(ring(random, from * Math.cos(angle), from * Math.sin(angle), 0.1 * size)
                    .named("hole " + i));
        }
        return Part.of(outline, holes);
    }

    /** A circle, or a ring of lines and flat arcs about a point, in one quality or several, either way round. */
    private static Contour ring(Random random, double x, double y, double size) {
        EdgeRequirement requirement = requirement(random);
        if (random.nextInt(4) == 0) {
            return Contour.circle(Point.ofSi(x, y), Kind.LENGTH.of(0.35 * size), requirement);
        }
        int n = 3 + random.nextInt(9);
        double[] cornerX = new double[n + 1];
        double[] cornerY = new double[n + 1];
        for (int i = 0; i < n; i++) {
            double angle = 2 * Math.PI * (i + 0.7 * random.nextDouble()) / n;
            double radius = size * (0.35 + 0.65 * random.nextDouble());
            cornerX[i] = x + radius * Math.cos(angle);
            cornerY[i] = y + radius * Math.sin(angle);
        }
        cornerX[n] = cornerX[0];
        cornerY[n] = cornerY[0];
        ContourBuilder builder = Contour.fromSi(cornerX[0], cornerY[0]).requirement(requirement);
        for (int i = 1; i <= n; i++) {
            double dx = cornerX[i] - cornerX[i - 1];
            double dy = cornerY[i] - cornerY[i - 1];
            double bulge = random.nextInt(3) == 0 ? 0.15 * (random.nextDouble() - 0.5) : 0;
            if (random.nextInt(6) == 0) {
                builder.requirement(requirement(random));
            }
            if (Math.abs(bulge) > 1e-3) {
                builder.arcThrough(
                        Point.ofSi(cornerX[i] - dx / 2 - bulge * dy, cornerY[i] - dy / 2 + bulge * dx),
                        Point.ofSi(cornerX[i], cornerY[i]));
            } else {
                builder.lineToSi(cornerX[i], cornerY[i]);
            }
        }
        Contour ring = builder.close();
        return random.nextBoolean() ? ring : ring.reversed();
    }

    private static EdgeRequirement requirement(Random random) {
        return EdgeRequirement.of(List.of(CutQuality.values()).get(random.nextInt(5)));
    }

    private static double between(Random random, double from, double to) {
        return from * Math.pow(to / from, random.nextDouble());
    }
}

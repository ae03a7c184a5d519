package dev.waterjet.program;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.measure.Kind;
import dev.waterjet.measure.WaterjetException;
import dev.waterjet.part.Point;
import dev.waterjet.part.Side;
import dev.waterjet.quality.EdgeRequirement;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

/** Random programs on a coarse grid, where points coincide often: what is read can be used, checked and written again. */
class ProgramRoundTripPropertiesTest {

    private static final String[] DWELLS = {"G4 P500\n", "G4 X1\n", ""};

    private static String program(Random random) {
        StringBuilder text = new StringBuilder();
        text.append(random.nextBoolean() ? "G21 G90\n" : random.nextBoolean() ? "G20 G91\n" : "G71 G90.1 G90\n");
        int cuts = 1 + random.nextInt(4);
        for (int c = 0; c < cuts; c++) {
            text.append("G0 X")
                    .append(number(random))
                    .append(" Y")
                    .append(number(random))
                    .append("\nM3\n");
            text.append(DWELLS[random.nextInt(3)]);
            text.append(random.nextInt(3) == 0 ? "G41 D1 " : random.nextInt(3) == 0 ? "G42 D1 " : "");
            int blocks = 1 + random.nextInt(9);
            for (int i = 0; i < blocks; i++) {
                block(text, random);
            }
            text.append(random.nextBoolean() ? "M5\n" : "M5 G40\n");
        }
        return text.append("M30\n").toString();
    }

    private static void block(StringBuilder text, Random random) {
        int kind = random.nextInt(6);
        if (kind < 3) {
            text.append("G1 X").append(number(random)).append(" Y").append(number(random));
        } else if (kind == 3) {
            text.append(random.nextBoolean() ? "G2" : "G3").append(" I").append(number(random));
        } else if (kind == 4) {
            // half a circle
            int r = 1 + random.nextInt(3);
            text.append("G91 G3 X").append(2 * r).append(" Y0 I").append(r).append(" J0 G90");
        } else {
            text.append("G2 X")
                    .append(number(random))
                    .append(" Y")
                    .append(number(random))
                    .append(" R9");
        }
        text.append(random.nextInt(4) == 0 ? " F100\n" : "\n");
    }

    private static String number(Random random) {
        return String.format(Locale.ROOT, random.nextInt(8) == 0 ? "%.4f" : "%.0f", random.nextDouble(-4, 4));
    }

    private static List<CutFeeds> feeds(PartProgram program, Random random) {
        List<CutFeeds> feeds = new ArrayList<>();
        for (ProgramCut cut : program.cuts()) {
            double length = Kind.LENGTH.si(cut.length());
            double[] ends = random.doubles(12, 0, length).sorted().distinct().toArray();
            ends[ends.length - 1] = length;
            feeds.add(
                    CutFeeds.ofSi(ends, random.doubles(ends.length, 1e-4, 0.02).toArray()));
        }
        return feeds;
    }

    private static double timeS(CutFeeds cut) {
        double sum = 0;
        for (int i = 0; i < cut.feeds().size(); i++) {
            sum += (cut.ends().si(i) - (i == 0 ? 0 : cut.ends().si(i - 1)))
                    / cut.feeds().si(i);
        }
        return sum;
    }

    @Property(tries = 3000, seed = "11")
    void whatIsReadCanBeUsedCheckedAndWritten(@ForAll @IntRange(max = 1_000_000) int seed) {
        Random random = new Random(seed);
        String text = program(random);
        ProgramCodes codes = ProgramCodes.defaults().withOpenContours();
        PartProgram program;
        try {
            program = PartProgram.parse(text, codes);
        } catch (WaterjetException refused) {
            assertThat(refused.code()).isNotBlank();
            return;
        }
        for (ProgramCut cut : program.cuts()) {
            assertThat(cut.path(EdgeRequirement.defaults()).size()).isEqualTo(cut.size());
            assertThat(cut.loop(EdgeRequirement.defaults()).isPresent()).isEqualTo(cut.isClosed());
            assertThat(Kind.LENGTH.si(cut.path(EdgeRequirement.defaults()).length()))
                    .isCloseTo(Kind.LENGTH.si(cut.length()), within(1e-7));
            assertThat(cut.leadIn() + cut.leadOut()).isLessThanOrEqualTo(cut.size());
        }
        assertThat(ProgramChecks.defaults().check(program)).isNotNull();
        double[] feeds = new double[program.size()];
        Arrays.fill(feeds, 0.01);
        assertThat(PartProgram.parse(program.withFeedsSi(feeds), codes).size()).isEqualTo(program.size());
        List<CutFeeds> plan = feeds(program, random);
        String written = ProgramWriter.of(codes).rewrite(program, plan);
        PartProgram again = PartProgram.parse(written, codes);
        double planned =
                plan.stream().mapToDouble(ProgramRoundTripPropertiesTest::timeS).sum();
        assertThat(Kind.TIME.si(again.programmedTime().orElseThrow()))
                .as("%s%n%s", text, written)
                .isCloseTo(planned, within(1.2e-3 * planned));
        assertThat(Kind.LENGTH.si(again.cuttingLength()))
                .as("%s%n%s", text, written)
                .isCloseTo(Kind.LENGTH.si(program.cuttingLength()), within(4e-6 * again.size()));
        assertThat(again.cuts()).hasSameSizeAs(program.cuts());
    }

    /** The ends of an arc may differ by 0.01 mm in their radii; its parts share the difference and are read again. */
    @Test
    void partsOfAnArcThatHardlyFitsItsCentreFit() {
        for (String centre : new String[] {"I-20.0049", "I-19.9951"}) {
            PartProgram program = PartProgram.parse(
                    "G0 X30 Y0\nM3\nG3 X-10 Y0 " + centre + "\nX30 Y0 I20\nM5\n",
                    ProgramCodes.defaults().withOpenContours());
            double length = Kind.LENGTH.si(program.cuttingLength());
            for (double share : new double[] {0.1, 0.25, 0.4}) {
                CutFeeds feeds = CutFeeds.ofSi(new double[] {share * length, length}, new double[] {0.01, 0.002});
                String written = ProgramWriter.of(program.codes()).rewrite(program, List.of(feeds));

                assertThat(PartProgram.parse(written, program.codes()).size()).isEqualTo(3);
            }
        }
    }

    /** Arcs of any size and place are written in words that are read again, in mm and inch. */
    @Test
    void arcsDownToAMicrometreAreWrittenAndReadAgain() {
        Random random = new Random(5);
        for (int i = 0; i < 500; i++) {
            double radius = Math.pow(10, -6 + 4 * random.nextDouble());
            double from = 2 * Math.PI * random.nextDouble();
            double sweep = 0.1 + 6.1 * random.nextDouble();
            double x = 0.1 * random.nextDouble();
            double y = 0.1 * random.nextDouble();
            Point start = Point.ofSi(x + radius * Math.cos(from), y + radius * Math.sin(from));
            Point end = Point.ofSi(x + radius * Math.cos(from + sweep), y + radius * Math.sin(from + sweep));
            List<ProgramMove> moves = List.of(
                    new ProgramMove.Rapid(Point.ofSi(0, 0)),
                    new ProgramMove.JetOn(Kind.TIME.of(1)),
                    new ProgramMove.Line(start, Kind.SPEED.of(0.01)),
                    new ProgramMove.Arc(end, Point.ofSi(x, y), Side.LEFT, Kind.SPEED.of(0.01)),
                    new ProgramMove.JetOff());
            ProgramCodes codes = ProgramCodes.defaults().withOpenContours();
            String text = ProgramWriter.of(codes).withInches(i % 2 == 0).write("", moves);
            double length = Math.hypot(start.xSi(), start.ySi()) + radius * sweep;

            assertThat(Kind.LENGTH.si(PartProgram.parse(text, codes).cuttingLength()))
                    .as(text)
                    .isCloseTo(length, within(2e-5 + 0.03 * radius));
        }
    }

    @Property(tries = 300, seed = "12")
    void codesAreReadBackFromTheirText(@ForAll @IntRange(max = 1_000_000) int seed) {
        Random random = new Random(seed);
        DwellForm[] forms = DwellForm.values();
        int on = random.nextInt(10_000);
        ProgramCodes codes = ProgramCodes.defaults()
                .withJet(on, (on + 1 + random.nextInt(9000)) % 10_000)
                .withPassThrough(List.of("G" + random.nextInt(100) + ".1", "M" + random.nextInt(999))
                        .subList(0, random.nextInt(3)))
                .withDwell(forms[random.nextInt(forms.length)])
                .withDecimals(random.nextInt(10))
                .withRadiusArcs(random.nextBoolean())
                .withCarriageReturns(random.nextBoolean())
                .withSubPrograms(random.nextBoolean())
                .withStartLines(List.of("G17 G40 # = x", "= 3").subList(0, random.nextInt(3)));
        codes = random.nextBoolean() ? codes.withOpenContours() : codes;

        assertThat(ProgramCodes.parse(codes.text())).isEqualTo(codes);
        assertThat(ProgramCodes.parse(codes.text()).text()).isEqualTo(codes.text());
    }
}

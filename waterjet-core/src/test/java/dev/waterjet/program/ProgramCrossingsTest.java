package dev.waterjet.program;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Findings of random programs against what discs and polygons do by their distances and sides. */
class ProgramCrossingsTest {

    private static List<ProgramFinding> check(String program) {
        return ProgramChecks.defaults().check(PartProgram.parse(program));
    }

    private static String discs(double[][] discs, double[] pierces) {
        StringBuilder text = new StringBuilder("G21 G90\n");
        for (int i = 0; i < discs.length; i++) {
            double[] d = discs[i];
            text.append(String.format(Locale.ROOT, "G0 X%.4f Y%.4f\nM3\n", d[0] + d[2] + pierces[i], d[1]));
            text.append(pierces[i] == 0 ? "\n" : String.format(Locale.ROOT, "G1 X%.4f\n", d[0] + d[2]));
            text.append(
                    String.format(Locale.ROOT, "%s X%.4f I%.4f J0\n", i % 2 == 0 ? "G3" : "G2", d[0] - d[2], -d[2]));
            text.append(String.format(Locale.ROOT, "X%.4f I%.4f J0\nM5\n", d[0] + d[2], d[2]));
        }
        return text.append("M30\n").toString();
    }

    private static double other(ProgramFinding finding) {
        return Double.parseDouble(
                String.valueOf(finding.finding().message().parameters().get("other")));
    }

    @Test
    void discsCrossIfTheirCentresAreFartherThanTheDifferenceAndNearerThanTheSumOfTheRadii() {
        Random random = new Random(1);
        int count = 0;
        for (int round = 0; round < 60; round++) {
            int n = 2 + random.nextInt(9);
            double[][] discs = new double[n][];
            for (int i = 0; i < n; i++) {
                discs[i] = new double[] {
                    (round % 2 == 0 ? 200 : 20) * random.nextDouble(),
                    100 * random.nextDouble(),
                    2 + 30 * random.nextDouble()
                };
            }
            Set<String> expected = new TreeSet<>();
            for (int i = 0; i < n; i++) {
                for (int j = 0; j < i; j++) {
                    double apart = Math.hypot(discs[i][0] - discs[j][0], discs[i][1] - discs[j][1]);
                    if (apart > Math.abs(discs[i][2] - discs[j][2]) && apart < discs[i][2] + discs[j][2]) {
                        expected.add(j + " " + i);
                    }
                }
            }
            Set<String> found = new TreeSet<>();
            for (ProgramFinding finding : check(discs(discs, new double[n]))) {
                if (finding.code().equals("contours-cross")) {
                    // six lines a disc, behind one
                    found.add((finding.line() - 2) / 6 + " " + (int) (other(finding) - 2) / 6);
                }
            }
            assertThat(found).isEqualTo(expected);
            count += expected.size();
        }
        assertThat(count).isGreaterThan(100);
    }

    private static double side(double[][] p, int a, int b, int c) {
        return (p[b][0] - p[a][0]) * (p[c][1] - p[a][1]) - (p[c][0] - p[a][0]) * (p[b][1] - p[a][1]);
    }

    @Test
    void aPolygonCrossesItselfIfTwoOfItsSidesDo() {
        Random random = new Random(2);
        int crossing = 0;
        for (int round = 0; round < 200; round++) {
            int n = 4 + random.nextInt(8);
            double[][] p = new double[n][];
            StringBuilder text = new StringBuilder("G21 G90\n");
            for (int i = 0; i < n; i++) {
                double angle = 2 * Math.PI * i / n + (round % 2 == 0 ? 0.9 : 1.5) * random.nextDouble();
                double radius = 20 + 60 * random.nextDouble();
                p[i] = new double[] {radius * Math.cos(angle), (round % 3 + 1) * radius * Math.sin(angle)};
                text.append(String.format(Locale.ROOT, "%s X%.6f Y%.6f\n", i == 0 ? "G0" : "G1", p[i][0], p[i][1]));
                text.append(i == 0 ? "M3\n" : "");
            }
            text.append(String.format(Locale.ROOT, "X%.6f Y%.6f\nM5\n", p[0][0], p[0][1]));
            boolean expected = false;
            for (int i = 0; i < n; i++) {
                for (int j = i + 2; j < n; j++) {
                    int a = (i + 1) % n;
                    int b = (j + 1) % n;
                    expected |= b != i
                            && side(p, i, a, j) * side(p, i, a, b) < 0
                            && side(p, j, b, i) * side(p, j, b, a) < 0;
                }
            }
            PartProgram program = PartProgram.parse(text.toString());
            if (program.cuts().get(0).leadIn() > 0 || program.cuts().get(0).leadOut() > 0) {
                continue;
            }
            boolean found = ProgramChecks.defaults().check(program).stream()
                    .anyMatch(finding -> finding.code().equals("contour-crosses-itself"));
            assertThat(found).as(text.toString()).isEqualTo(expected);
            crossing += expected ? 1 : 0;
        }
        assertThat(crossing).isBetween(20, 180);
    }

    /** Discs within discs and beside them, none crossing another. */
    private static double[][] nested(Random random, int n) {
        List<double[]> discs = new ArrayList<>();
        while (discs.size() < n) {
            double[] disc = {200 * random.nextDouble(), 200 * random.nextDouble(), 3 + 80 * random.nextDouble()};
            boolean isClear = discs.stream().allMatch(other -> {
                double apart = Math.hypot(disc[0] - other[0], disc[1] - other[1]);
                return apart > disc[2] + other[2] + 1.5 || apart < Math.abs(disc[2] - other[2]) - 1.5;
            });
            if (isClear) {
                discs.add(disc);
            }
        }
        return discs.toArray(new double[0][]);
    }

    private static boolean isIn(double[] inner, double[] outer) {
        return outer[2] > inner[2] && Math.hypot(inner[0] - outer[0], inner[1] - outer[1]) < outer[2];
    }

    /** The discs around a disc, the smallest first. */
    private static List<Integer> around(double[][] discs, int inner) {
        List<Integer> around = new ArrayList<>();
        for (int i = 0; i < discs.length; i++) {
            if (isIn(discs[inner], discs[i])) {
                around.add(i);
            }
        }
        around.sort((a, b) -> Double.compare(discs[a][2], discs[b][2]));
        return around;
    }

    @Test
    void aDiscInOneThatWasCutBeforeIsInAFreedPiece() {
        Random random = new Random(3);
        int freed = 0;
        for (int round = 0; round < 60; round++) {
            double[][] discs = nested(random, 3 + random.nextInt(8));
            List<String> expected = new ArrayList<>();
            for (int i = 0; i < discs.length; i++) {
                int cut = i;
                around(discs, i).stream()
                        .filter(outer -> outer < cut)
                        .findFirst()
                        .ifPresent(outer -> expected.add((3 + 6 * cut) + " by " + (5 + 6 * outer)));
            }
            List<String> found = new ArrayList<>();
            for (ProgramFinding finding : check(discs(discs, new double[discs.length]))) {
                assertThat(finding.code()).isEqualTo("cut-in-freed-piece");
                found.add(finding.line() + " by " + (int) other(finding));
            }
            assertThat(found).isEqualTo(expected);
            freed += expected.size();
        }
        assertThat(freed).isGreaterThan(40);
    }

    /** Outlines pierced outside and holes inside, in as many levels as there are; one that is pierced on its other side is found. */
    @Test
    void thePierceOnTheWrongSideIsFoundAmongThoseOnTheRightOnes() {
        Random random = new Random(4);
        int tried = 0;
        for (int round = 0; round < 300 && tried < 40; round++) {
            double[][] discs = nested(random, 3 + random.nextInt(7));
            Arrays.sort(discs, (a, b) -> Double.compare(a[2], b[2]));
            double[] pierces = new double[discs.length];
            int[] family = new int[discs.length];
            for (int i = 0; i < discs.length; i++) {
                List<Integer> around = around(discs, i);
                pierces[i] = around.size() % 2 == 0 ? 0.7 : -0.7;
                family[around.isEmpty() ? i : around.get(around.size() - 1)]++;
            }
            assertThat(check(discs(discs, pierces))).isEmpty();
            int wrong = random.nextInt(discs.length);
            List<Integer> around = around(discs, wrong);
            if (family[around.isEmpty() ? wrong : around.get(around.size() - 1)] < 3) {
                continue;
            }
            pierces[wrong] = -pierces[wrong];
            List<ProgramFinding> found = check(discs(discs, pierces));
            assertThat(found).hasSize(1);
            assertThat(found.get(0).code()).isEqualTo("pierce-in-part");
            assertThat(found.get(0).line()).isEqualTo(3 + 6 * wrong);
            assertThat((Double) found.get(0).finding().message().parameters().get("distance_m"))
                    .isCloseTo(0.0007, within(1e-9));
            tried++;
        }
        assertThat(tried).isGreaterThan(15);
    }

    /** A plate with a slot along a circle of 40 mm: its sides of arcs cross half way by the rounding, or by more. */
    @ParameterizedTest
    @CsvSource({"34.642, 40.001, false", "34.641, 40.000, false", "34.691, 40.05, true", "34.661, 40.02, true"})
    void sidesOfACurvedSlotThatCrossByTheirRoundingDoNotCross(String tip, String foot, boolean crosses) {
        String program = "G21 G90\nG0 X-100 Y0\nM3\nG4 P500\nG1 X40 Y0\nG3 X20 Y" + tip + " R40\n"
                + (tip.equals("34.641") ? "" : "G1 X20 Y34.641\n") + "G2 X" + foot
                + " Y0 R40\nG1 X100\nY100\nX-100\nY0\nM5\n";
        for (String text : List.of(
                program,
                program.replace("X-", "x")
                        .replace("X", "X-")
                        .replace("x", "X")
                        .replace("G3", "g2")
                        .replace("G2 ", "G3 ")
                        .replace("g2", "G2"))) {
            boolean found = check(text).stream().anyMatch(f -> f.code().equals("contour-crosses-itself"));
            assertThat(found).as(text).isEqualTo(crosses);
        }
    }
}

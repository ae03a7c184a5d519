package dev.waterjet.program;

import static dev.waterjet.Refusals.assertRefused;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityArray;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Stretches of constant feed within blocks: neither time nor length of path is lost, at the end of any of them. */
class BlockStretchesTest {

    /** Cut of four blocks: lines of 40, 30, 40 and 30 mm. */
    private static ProgramCut cut() {
        return PartProgram.parse("G21 G90\nG0 X0 Y0\nM3\nG1 X40\nY30\nX0\nY0\nM5\n")
                .cuts()
                .get(0);
    }

    private static final double[] BLOCKS = {0.04, 0.03, 0.04, 0.03};

    /** Amount of paths or times up to a distance along the cut, in proportion within each feed. */
    private static double upTo(double distance, double[] ends, double[] amounts) {
        double sum = 0;
        double from = 0;
        for (int i = 0; i < ends.length; i++) {
            double share = Math.max(0, Math.min(1, (distance - from) / (ends[i] - from)));
            sum += share * amounts[i];
            from = ends[i];
        }
        return sum;
    }

    @Test
    void timeAndPathUpToTheEndOfAnyPieceAreThoseOfTheFeeds() {
        Random random = new Random(1);
        for (int round = 0; round < 300; round++) {
            int n = 1 + random.nextInt(20);
            double scale = 1 + 0.018 * (random.nextDouble() - 0.5);
            double[] ends = random.doubles(n, 1e-5, 0.14).sorted().toArray();
            ends[n - 1] = 0.14;
            if (n > 3 && round % 3 == 0) {
                // a feed that changes at the end of a block
                ends[n / 2] = Math.max(ends[n / 2 - 1] + 1e-7, 0.07);
                for (int i = n / 2 + 1; i < n; i++) {
                    ends[i] = Math.max(ends[i], ends[i - 1] + 1e-7);
                }
            }
            double[] feeds = random.doubles(n, 0.0005, 0.05).toArray();
            double[] paths = new double[n];
            double[] times = new double[n];
            double[] planned = new double[n];
            for (int i = 0; i < n; i++) {
                paths[i] = (ends[i] - (i == 0 ? 0 : ends[i - 1])) * (0.5 + random.nextDouble());
                times[i] = paths[i] / feeds[i];
                planned[i] = ends[i] / scale;
                paths[i] /= scale;
            }
            CutFeeds given = new CutFeeds(
                    QuantityArray.ofSi(Kind.LENGTH, planned),
                    QuantityArray.ofSi(Kind.SPEED, feeds),
                    QuantityArray.ofSi(Kind.LENGTH, paths));
            for (int i = 0; i < n; i++) {
                times[i] = paths[i] / feeds[i];
                paths[i] *= scale;
            }
            double minimum = round % 2 == 0 ? 1e-9 : 0.003;
            BlockStretches pieces = new BlockStretches(given, cut());
            double done = 0;
            double sumS = 0;
            double sumM = 0;
            for (double length : BLOCKS) {
                pieces.take(length, minimum);
                assertThat(pieces.end[pieces.count - 1]).isCloseTo(length, within(1e-12));
                double from = 0;
                double blockS = 0;
                double blockM = 0;
                for (int i = 0; i < pieces.count; i++) {
                    double piece = pieces.end[i] - from;
                    assertThat(piece).isPositive();
                    assertThat(pieces.count == 1 || piece >= minimum).isTrue();
                    blockS += pieces.timeS[i];
                    double path = pieces.pathRatio(i) * piece;
                    blockM += path;
                    from = pieces.end[i];
                    assertThat(sumS + blockS).isCloseTo(upTo(done + from, ends, times), within(1e-3));
                    assertThat(sumM + blockM).isCloseTo(upTo(done + from, ends, paths), within(1e-6));
                }
                assertThat(pieces.totalS()).isCloseTo(blockS, within(1e-12));
                assertThat(pieces.pathM()).isCloseTo(blockM, within(1e-12));
                sumS += blockS;
                sumM += blockM;
                done += length;
            }
        }
    }

    @Test
    void feedsThatChangeAtTheEndsOfBlocksLeaveThemWhole() {
        double[] feeds = {0.01, 0.02, 0.005, 0.03};
        BlockStretches pieces = new BlockStretches(CutFeeds.ofSi(new double[] {0.04, 0.07, 0.11, 0.14}, feeds), cut());
        for (int i = 0; i < 4; i++) {
            pieces.take(BLOCKS[i], 1e-6);
            assertThat(pieces.count).isEqualTo(1);
            assertThat(pieces.timeS[0]).isCloseTo(BLOCKS[i] / feeds[i], within(1e-9));
            assertThat(pieces.pathM()).isCloseTo(BLOCKS[i], within(1e-12));
        }
    }

    @Test
    void subdividedPiecesAreEqualAndNoLongerThanTheMaximum() {
        CutFeeds given = CutFeeds.ofSi(new double[] {0.01, 0.034, 0.14}, new double[] {0.01, 0.02, 0.005});
        for (double maximum : new double[] {1, 0.024, 0.0101, 0.01, 0.0051, 0.001}) {
            BlockStretches pieces = new BlockStretches(given, cut());
            pieces.take(0.04, 1e-6);
            assertThat(pieces.count).isEqualTo(3);
            pieces.subdivide(maximum);
            int expected = 0;
            for (double length : new double[] {0.01, 0.024, 0.006}) {
                expected += (int) Math.ceil(length / maximum - 1e-9);
            }
            assertThat(pieces.count).isEqualTo(expected);
            double from = 0;
            for (int i = 0; i < pieces.count; i++) {
                double piece = pieces.end[i] - from;
                double feed = pieces.end[i] < 0.01 + 1e-9 ? 0.01 : pieces.end[i] < 0.034 + 1e-9 ? 0.02 : 0.005;
                assertThat(piece).isLessThanOrEqualTo(maximum * (1 + 1e-9));
                assertThat(pieces.timeS[i]).isCloseTo(piece / feed, within(1e-9));
                assertThat(pieces.pathRatio(i)).isCloseTo(1, within(1e-9));
                from = pieces.end[i];
            }
            assertThat(pieces.totalS()).isCloseTo(1 + 1.2 + 1.2, within(1e-9));
            assertThat(pieces.pathM()).isCloseTo(0.04, within(1e-12));
        }
    }

    /** Paths are simplified before they are planned; by more than a hundredth the feeds are those of another cut. */
    @Test
    void feedsOfAnotherLengthAreRefused() {
        for (double factor : new double[] {0.9905, 1.0095}) {
            new BlockStretches(CutFeeds.ofSi(new double[] {0.14 * factor}, new double[] {0.01}), cut())
                    .take(0.04, 1e-6);
        }
        for (double factor : new double[] {0.9895, 1.0105}) {
            CutFeeds other = CutFeeds.ofSi(new double[] {0.14 * factor}, new double[] {0.01});
            assertThat(assertRefused(() -> new BlockStretches(other, cut()), "feeds-of-other-cut")
                            .parameters())
                    .containsEntry("planned_m", 0.14 * factor)
                    .containsEntry("length_m", 0.14);
        }
    }
}

package dev.waterjet.kerf;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.evidence.Caution;
import dev.waterjet.measure.DomainException;
import java.util.SplittableRandom;
import java.util.function.DoubleUnaryOperator;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.LongRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class CutFrontTest {

    private static final double THICKNESS = 0.025;
    /** Feed that separates three times the thickness. */
    private static final double STRAIGHT = 1e-3;

    /** A power law that separates three thicknesses at the straight feed, whatever its exponent. */
    static CutFront powerLaw(double exponent) {
        return CutFront.powerLaw(
                LagModel.standard(), THICKNESS, exponent, 3 * THICKNESS * Math.pow(STRAIGHT, 1 / exponent));
    }

    /** H = a u^-0.4 + b/u: no power law, but with a concave lag. */
    static FrontLaw twoPowers() {
        DoubleUnaryOperator depth = u -> 1.2e-3 * Math.pow(u, -0.4) + 2.5e-5 / u;
        return new FrontLaw(depth, d -> {
            double low = 1e-12;
            double high = 1e6;
            for (int i = 0; i < 200; i++) {
                double middle = Math.sqrt(low * high);
                low = depth.applyAsDouble(middle) > d ? middle : low;
                high = depth.applyAsDouble(middle) > d ? high : middle;
            }
            return low;
        });
    }

    /** Feeds that change at random times, as a motion that starts from rest. */
    static NozzleMotion randomMotion(long seed, int pieces) {
        SplittableRandom random = new SplittableRandom(seed);
        double[] times = new double[pieces + 1];
        double[] feeds = new double[pieces];
        for (int i = 0; i < pieces; i++) {
            times[i + 1] = times[i] + 0.02 + 0.4 * random.nextDouble();
            feeds[i] = random.nextInt(8) == 0 ? 0 : STRAIGHT * Math.exp(-3 * random.nextDouble());
        }
        return NozzleMotion.fromRestSi(times, feeds);
    }

    /** The maximum formula over every node and every stationary place. */
    private static double exhaustive(CutFront front, NozzleMotion motion, double depth, double time) {
        double best = 0;
        for (int j = 1; j <= motion.pieces(); j++) {
            double start = motion.endTime(j - 1);
            double feed = motion.feed(j);
            if (start < time) {
                best = Math.max(best, motion.endWay(j - 1) - front.shortfallSi(depth, time - start));
            }
            if (motion.endTime(j) < time) {
                best = Math.max(best, motion.endWay(j) - front.shortfallSi(depth, time - motion.endTime(j)));
            }
            if (feed > 0) {
                double place = time - front.travelTimeSi(feed, depth);
                if (place > start && place < Math.min(motion.endTime(j), time)) {
                    double way = motion.endWay(j - 1) + feed * (place - start);
                    best = Math.max(best, way - front.setBackSi(feed, depth));
                }
            }
        }
        return best;
    }

    @Property(tries = 150, seed = "71")
    void theSearchFindsWhatEveryPlaceWouldGive(
            @ForAll @LongRange(min = 0, max = 1_000_000) long seed,
            @ForAll @IntRange(min = 0, max = 4) int law,
            @ForAll @DoubleRange(min = 0.3, max = 1) double depthRatio) {
        CutFront front = powerLaw(new double[] {1, 1.02, 1.15, 1.6, 2.4}[law]);
        double depth = depthRatio * THICKNESS;
        NozzleMotion motion = randomMotion(seed, 60);
        double[] times = new double[200];
        for (int i = 0; i < times.length; i++) {
            times[i] = motion.endSi() * 1.2 * i / times.length;
        }
        double[] positions = new double[times.length];

        front.positionsSi(motion, depth, times, positions);

        double lag = front.lagSi(STRAIGHT, depth);
        for (int i = 0; i < times.length; i++) {
            assertThat(positions[i]).isCloseTo(exhaustive(front, motion, depth, times[i]), within(1e-11 * lag));
        }
    }

    @Property(tries = 150, seed = "72")
    void theFrontNeverRecedesNorPassesTheNozzle(
            @ForAll @LongRange(min = 0, max = 1_000_000) long seed,
            @ForAll @DoubleRange(min = 1, max = 2.5) double exponent) {
        CutFront front = powerLaw(exponent);
        NozzleMotion motion = randomMotion(seed, 40);
        double before = 0;
        for (int i = 0; i <= 400; i++) {
            double time = motion.endSi() * 1.1 * i / 400;
            double position = motion.waySi(time) - front.lagAtSi(motion, THICKNESS, time);
            assertThat(position).isGreaterThanOrEqualTo(before - 1e-15);
            assertThat(position).isLessThanOrEqualTo(motion.waySi(time) + 1e-15);
            before = position;
        }
    }

    @Property(tries = 100, seed = "73")
    void deeperIsLater(
            @ForAll @LongRange(min = 0, max = 1_000_000) long seed,
            @ForAll @DoubleRange(min = 0.05, max = 0.95) double depthRatio,
            @ForAll @DoubleRange(min = 0, max = 1.2) double timeRatio) {
        CutFront front = powerLaw(1.15);
        NozzleMotion motion = randomMotion(seed, 40);
        double time = timeRatio * motion.endSi();

        assertThat(front.lagAtSi(motion, depthRatio * THICKNESS, time))
                .isLessThanOrEqualTo(front.lagAtSi(motion, THICKNESS, time) + 1e-15);
    }

    @Property(tries = 100, seed = "74")
    void aSlowerNozzleHasNoFrontThatIsAhead(
            @ForAll @LongRange(min = 0, max = 1_000_000) long seed,
            @ForAll @DoubleRange(min = 0.1, max = 1) double slower,
            @ForAll @DoubleRange(min = 0, max = 1.2) double timeRatio) {
        CutFront front = powerLaw(1.3);
        NozzleMotion motion = randomMotion(seed, 40);
        double[] times = new double[motion.pieces() + 1];
        double[] feeds = new double[motion.pieces()];
        for (int i = 0; i < feeds.length; i++) {
            times[i + 1] = motion.endTime(i + 1);
            feeds[i] = motion.feed(i + 1) * (i % 3 == 1 ? slower : 1);
        }
        NozzleMotion slow = NozzleMotion.fromRestSi(times, feeds);
        double time = timeRatio * motion.endSi();

        assertThat(slow.waySi(time) - front.lagAtSi(slow, THICKNESS, time))
                .isLessThanOrEqualTo(motion.waySi(time) - front.lagAtSi(motion, THICKNESS, time) + 1e-15);
    }

    @Property(tries = 100, seed = "75")
    void aPieceThatIsCutInTwoChangesNothing(
            @ForAll @LongRange(min = 0, max = 1_000_000) long seed,
            @ForAll @IntRange(min = 1, max = 20) int piece,
            @ForAll @DoubleRange(min = 0.01, max = 0.99) double share) {
        CutFront front = powerLaw(1.15);
        NozzleMotion motion = randomMotion(seed, 20);
        int index = Math.min(piece, motion.pieces());
        double[] times = new double[motion.pieces() + 2];
        double[] feeds = new double[motion.pieces() + 1];
        for (int i = 1, j = 1; i <= motion.pieces(); i++, j++) {
            if (i == index) {
                times[j] = motion.endTime(i - 1) + share * (motion.endTime(i) - motion.endTime(i - 1));
                feeds[j - 1] = motion.feed(i);
                j++;
            }
            times[j] = motion.endTime(i);
            feeds[j - 1] = motion.feed(i);
        }

        assertThat(front.lagAtSi(NozzleMotion.fromRestSi(times, feeds), THICKNESS, motion.endSi()))
                .isCloseTo(front.lagAtSi(motion, THICKNESS, motion.endSi()), within(1e-15));
    }

    @Property(tries = 200, seed = "76")
    void aStepInClosedFormIsThatOfTheMaximumFormula(
            @ForAll @DoubleRange(min = 1, max = 2.5) double exponent,
            @ForAll @DoubleRange(min = 0.02, max = 1) double before,
            @ForAll @DoubleRange(min = 0, max = 1) double after,
            @ForAll @DoubleRange(min = 0.01, max = 20) double time) {
        CutFront front = powerLaw(exponent);
        NozzleMotion motion =
                NozzleMotion.fromSteadyFeedSi(before * STRAIGHT, new double[] {0, 30}, new double[] {after * STRAIGHT});

        assertThat(front.lagAtSi(motion, THICKNESS, time))
                .isCloseTo(
                        front.lagAfterStepSi(before * STRAIGHT, after * STRAIGHT, THICKNESS, time),
                        within(1e-12 * front.exitLagSi(STRAIGHT)));
    }

    @Property(tries = 100, seed = "77")
    void aRunInLeavesAtMostTheSteadyLagWhateverWentBefore(
            @ForAll @LongRange(min = 0, max = 1_000_000) long seed,
            @ForAll @DoubleRange(min = 1, max = 2.5) double exponent,
            @ForAll @DoubleRange(min = 0.02, max = 1) double slow) {
        CutFront front = powerLaw(exponent);
        NozzleMotion before = randomMotion(seed, 20);
        double feed = slow * STRAIGHT;
        double[] times = new double[before.pieces() + 2];
        double[] feeds = new double[before.pieces() + 1];
        for (int i = 0; i < before.pieces(); i++) {
            times[i + 1] = before.endTime(i + 1);
            feeds[i] = before.feed(i + 1);
        }
        feeds[before.pieces()] = feed;
        times[before.pieces() + 1] = before.endSi() + front.runInSi(feed) / feed;
        NozzleMotion motion = NozzleMotion.fromRestSi(times, feeds);

        assertThat(front.lagAtSi(motion, THICKNESS, motion.endSi()))
                .isLessThanOrEqualTo(front.exitLagSi(feed) * (1 + 1e-9));
    }

    @ParameterizedTest
    @ValueSource(doubles = {1.15, 1.6})
    void theUpwindSolutionTendsToTheMaximumFormulaAsItsStepDoes(double exponent) {
        CutFront front = powerLaw(exponent);

        assertUpwindTendsTo(front, STRAIGHT, STRAIGHT / 5);
        assertUpwindTendsTo(front, STRAIGHT, 0);
    }

    @Test
    void theUpwindSolutionTendsToTheTableOfALawThatIsNoPower() {
        CutFront front = twoPowers().front(LagModel.standard().coefficient(), THICKNESS);

        assertThat(front).isInstanceOf(TabulatedFront.class);
        assertUpwindTendsTo(front, STRAIGHT, STRAIGHT / 5);
    }

    private static void assertUpwindTendsTo(CutFront front, double before, double after) {
        double coarse = upwindError(front, before, after, 100);
        double fine = upwindError(front, before, after, 400);
        assertThat(coarse).isLessThan(0.02);
        assertThat(fine).isLessThan(0.4 * coarse);
    }

    private static double upwindError(CutFront front, double before, double after, int cells) {
        UpwindFront upwind = new UpwindFront(front, before, cells, UpwindFront.recession(front));
        // signals run down at 1/tau in units of z^2, fastest at the faster feed
        double signal = 1 / front.travelTimeSi(before, 1);
        double worst = 0;
        for (int i = 1; i <= 8; i++) {
            double time = i * 0.4 * front.travelTimeSi(before, THICKNESS);
            upwind.run(after, time, signal);
            double lag = front.lagAfterStepSi(before, after, THICKNESS, time);
            worst = Math.max(worst, Math.abs(upwind.exitLag() - lag));
        }
        return worst / front.exitLagSi(before);
    }

    @Test
    void theExponentOneIsAPureDelay() {
        CutFront front = powerLaw(1);
        double delay = front.travelTimeSi(STRAIGHT, THICKNESS);
        NozzleMotion motion = randomMotion(5, 60);

        for (int i = 0; i <= 50; i++) {
            double time = motion.endSi() * i / 50;
            assertThat(motion.waySi(time) - front.lagAtSi(motion, THICKNESS, time))
                    .isCloseTo(Math.max(0, motion.waySi(time - delay)), within(1e-15));
        }
    }

    @Test
    void anExponentNearOneIsNearlyAPureDelay() {
        CutFront near = powerLaw(1.002);
        CutFront one = powerLaw(1);
        NozzleMotion motion = randomMotion(6, 40);

        for (int i = 0; i <= 50; i++) {
            double time = motion.endSi() * i / 50;
            assertThat(near.lagAtSi(motion, THICKNESS, time))
                    .isCloseTo(one.lagAtSi(motion, THICKNESS, time), within(0.05 * one.exitLagSi(STRAIGHT)));
        }
    }

    @Test
    void aPowerLawInATableIsTheClosedForm() {
        CutFront closed = powerLaw(1.4);
        TabulatedFront table = new TabulatedFront(
                closed.lagCoefficient(), THICKNESS, new FrontLaw(closed::separationDepthSi, closed::separationFeedSi));
        NozzleMotion motion = randomMotion(8, 60);

        for (int i = 0; i <= 60; i++) {
            double time = motion.endSi() * 1.3 * i / 60;
            assertThat(table.lagAtSi(motion, THICKNESS, time))
                    .isCloseTo(closed.lagAtSi(motion, THICKNESS, time), within(1e-6 * closed.exitLagSi(STRAIGHT)));
        }
    }

    @Property(tries = 60, seed = "78")
    void theShortfallOfATableIsTheGreatestLagAboveALine(@ForAll @DoubleRange(min = 0, max = 5) double logTime) {
        CutFront front = twoPowers().front(LagModel.standard().coefficient(), THICKNESS);
        double fastest = front.separationFeedSi(THICKNESS);
        double time = Math.exp(logTime) * front.travelTimeSi(fastest, THICKNESS);
        double most = 0;
        for (int i = 0; i <= 20000; i++) {
            double feed = fastest * Math.exp(-10 * i / 20000.0);
            most = Math.max(most, front.lagSi(feed, THICKNESS) - time * feed);
        }

        assertThat(front.shortfallSi(THICKNESS, time)).isCloseTo(most, within(1e-6 * front.exitLagSi(STRAIGHT)));
    }

    @Test
    void aConvexLagIsReplacedByTheLineThroughTheFeedThatSeparatesThePlate() {
        CutFront front = powerLaw(0.8);
        double separation = front.separationFeedSi(THICKNESS);

        assertThat(front.exitLagSi(separation / 4))
                .isCloseTo(front.exitLagSi(separation) / 4, within(1e-12 * THICKNESS));
        assertThat(front.cautions(STRAIGHT)).extracting(Caution::code).containsExactly("front-law-not-concave");
    }

    @Test
    void aLawThatBendsTheWrongWayLiesBelowItsHull() {
        // the depth is bounded: a slow nozzle leaves a lag that hardly falls
        DoubleUnaryOperator depth = u -> 1 / (2 + 40 * Math.pow(u / STRAIGHT, 1.3));
        FrontLaw law = new FrontLaw(depth, d -> STRAIGHT * Math.pow(Math.max(0, 1 / d - 2) / 40, 1 / 1.3));
        double c = LagModel.standard().coefficient();
        CutFront front = law.front(c, THICKNESS);

        for (int i = 1; i <= 40; i++) {
            double feed = front.separationFeedSi(THICKNESS) * i / 40;
            assertThat(front.exitLagSi(feed))
                    .isGreaterThanOrEqualTo(c * THICKNESS * THICKNESS / depth.applyAsDouble(feed) * (1 - 1e-12));
            assertThat(front.feedForLagSi(front.exitLagSi(feed), THICKNESS)).isCloseTo(feed, within(1e-9 * feed));
        }
    }

    @Property(tries = 200, seed = "79")
    void theFeedForALagIsItsInverse(
            @ForAll @DoubleRange(min = 0.7, max = 2.5) double exponent,
            @ForAll @DoubleRange(min = 0.01, max = 5) double ratio) {
        CutFront front = powerLaw(exponent);
        double feed = ratio * STRAIGHT;

        assertThat(front.feedForLagSi(front.lagSi(feed, 0.01), 0.01)).isCloseTo(feed, within(1e-12 * feed));
    }

    @Test
    void aLagAtAHighIndexIsExtrapolated() {
        assertThat(powerLaw(1.15).cautions(STRAIGHT)).isEmpty();
        assertThat(powerLaw(1.15).cautions(STRAIGHT / 10))
                .extracting(Caution::code)
                .containsExactly("lag-extrapolated");
    }

    @Test
    void timesMustAscend() {
        CutFront front = powerLaw(1.15);
        NozzleMotion motion = randomMotion(1, 3);

        assertThatThrownBy(() -> front.positionsSi(motion, THICKNESS, new double[] {1, 0}, new double[2]))
                .isInstanceOf(DomainException.class);
    }
}

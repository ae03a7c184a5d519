package dev.waterjet.calibrate;

import static dev.waterjet.measure.Measures.millimetresPerMinute;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.Refusals;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.measure.Kind;
import java.util.List;
import java.util.Optional;
import javax.measure.quantity.Speed;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Order of trials that finds the separation feed rate of a plate. */
class FeedLadderTest {

    private static Estimate<Speed> expected(double relative) {
        return Estimate.withinFactor(Kind.SPEED, 0.008, relative, List.of());
    }

    /** Shares of the gaps below, between and above the rungs. */
    private static double[] shares(FeedLadder ladder, Estimate<Speed> expected) {
        double[] feeds = ladder.trials().stream()
                .mapToDouble(trial -> Kind.SPEED.si(trial.feed()))
                .sorted()
                .toArray();
        double[] shares = new double[feeds.length + 1];
        double sum = 0;
        for (int k = 0; k < feeds.length; k++) {
            double atMost = expected.probabilityAtMost(Kind.SPEED.of(feeds[k]));
            shares[k] = atMost - sum;
            sum = atMost;
        }
        shares[feeds.length] = 1 - sum;
        return shares;
    }

    /** Smallest expected number of trials over all orders, by trying each rung first. */
    private static double least(double[] shares, int from, int to) {
        if (from == to) {
            return 0;
        }
        double sum = 0;
        double best = Double.POSITIVE_INFINITY;
        for (int gap = from; gap <= to; gap++) {
            sum += shares[gap];
        }
        for (int rung = from; rung < to; rung++) {
            best = Math.min(best, least(shares, from, rung) + least(shares, rung + 1, to));
        }
        return sum + best;
    }

    @ParameterizedTest
    @CsvSource({"0.05, 0.1", "0.1, 0.1", "0.2, 0.2", "0.3, 0.3", "0.01, 0.1"})
    void noOrderNeedsFewerTrials(double relative, double step) {
        FeedLadder ladder = FeedLadder.of(expected(relative), step);

        assertThat(ladder.expectedTrials())
                .isCloseTo(
                        least(
                                shares(ladder, expected(relative)),
                                0,
                                ladder.trials().size()),
                        within(1e-9));
        assertThat(ladder.expectedTrials()).isLessThanOrEqualTo(ladder.climbingTrials());
    }

    /** No order of yes and no takes fewer trials than the entropy, and the best one at most 2 more (Gilbert and Moore 1959). */
    @ParameterizedTest
    @CsvSource({"0.15, 0.05", "0.3, 0.05", "0.5, 0.02"})
    void theNumberOfTrialsIsThatOfTheEntropy(double relative, double step) {
        FeedLadder ladder = FeedLadder.of(expected(relative), step);
        double entropy = 0;
        for (double share : shares(ladder, expected(relative))) {
            entropy -= share > 0 ? share * Math.log(share) / Math.log(2) : 0;
        }

        assertThat(ladder.expectedTrials()).isBetween(entropy, entropy + 2);
        assertThat(ladder.expectedTrials()).isLessThan(ladder.climbingTrials() / 2);
    }

    /** Whatever the separation feed rate is, the trials lead to the two rungs that it lies between. */
    @Test
    void theOutcomesLeadToTheInterval() {
        FeedLadder ladder = FeedLadder.of(expected(0.15), 0.1);
        double[] rungs = ladder.trials().stream()
                .mapToDouble(trial -> Kind.SPEED.si(trial.feed()))
                .sorted()
                .toArray();
        for (double truth = 0.8 * rungs[0]; truth < 1.2 * rungs[rungs.length - 1]; truth *= 1.013) {
            double separated = 0;
            double failed = Double.POSITIVE_INFINITY;
            int count = 0;
            Optional<FeedLadder.Trial> next = find(ladder, separated, failed);
            while (next.isPresent()) {
                double feed = Kind.SPEED.si(next.get().feed());
                assertThat(next.get().number()).isEqualTo(++count);
                separated = truth >= feed ? feed : separated;
                failed = truth >= feed ? failed : feed;
                next = find(ladder, separated, failed);
            }
            assertThat(count).isBetween(1, ladder.mostTrials());
            assertThat(truth).isGreaterThanOrEqualTo(separated).isLessThan(failed);
            if (separated > 0 && Double.isFinite(failed)) {
                assertThat(failed / separated).isCloseTo(1.1, within(1e-9));
            }
        }
    }

    private static Optional<FeedLadder.Trial> find(FeedLadder ladder, double separated, double failed) {
        return ladder.trials().stream()
                .filter(trial -> trial.separated().map(Kind.SPEED::si).orElse(0.0) == separated
                        && trial.failed().map(Kind.SPEED::si).orElse(Double.POSITIVE_INFINITY) == failed)
                .findFirst();
    }

    /** Another unit of the feed rates changes no trial. */
    @Test
    void theLadderScalesWithTheFeedRate() {
        FeedLadder one = FeedLadder.of(expected(0.2), 0.1);
        FeedLadder other = FeedLadder.of(Estimate.withinFactor(Kind.SPEED, 8e-6, 0.2, List.of()), 0.1);

        assertThat(other.expectedTrials()).isCloseTo(one.expectedTrials(), within(1e-9));
        for (int i = 0; i < one.trials().size(); i++) {
            assertThat(Kind.SPEED.si(other.trials().get(i).feed()))
                    .isCloseTo(Kind.SPEED.si(one.trials().get(i).feed()) / 1000, within(1e-12));
        }
    }

    @Test
    void aStepFarBelowTheUncertaintyIsRefused() {
        Refusals.assertRefused(() -> FeedLadder.of(expected(0.5), 1e-4), "too-many-rungs");
        Refusals.assertRefused(() -> FeedLadder.of(expected(0.5), 0), "must-be-above");
        Estimate<Speed> zero = Estimate.of(Kind.SPEED, 0, 0.1);
        assertThat(Refusals.of(() -> FeedLadder.of(zero, 0.1))).isNotEqualTo("no refusal");
        assertThat(FeedLadder.of(Estimate.of(Kind.SPEED, Kind.SPEED.si(millimetresPerMinute(500)), 0.004), 0.1)
                        .mostTrials())
                .isBetween(2, 14);
    }

    /** Two rungs in closed form: a feed rate that is uncertain by little lies between the rungs to both sides of the middle. */
    @Test
    void threeRungsAreSearchedFromTheMiddle() {
        Estimate<Speed> narrow = Estimate.withinFactor(Kind.SPEED, 0.008, 0.03, List.of());
        FeedLadder ladder = FeedLadder.of(narrow, 0.1);
        double[] shares = shares(ladder, narrow);

        assertThat(ladder.trials()).hasSize(3);
        assertThat(ladder.step()).isEqualTo(0.1);
        assertThat(ladder.mostTrials()).isEqualTo(2);
        assertThat(ladder.expectedTrials()).isCloseTo(2, within(1e-9));
        assertThat(ladder.climbingTrials())
                .isCloseTo(shares[0] + 2 * shares[1] + 3 * (shares[2] + shares[3]), within(1e-9));
        FeedLadder.Trial first = ladder.trials().get(0);
        assertThat(Kind.SPEED.si(first.feed())).isCloseTo(0.008, within(1e-15));
        assertThat(first.separated()).isEmpty();
        assertThat(first.failed()).isEmpty();
        assertThat(first.probability()).isCloseTo(1, within(1e-9));
        FeedLadder.Trial slower = ladder.trials().get(1);
        FeedLadder.Trial faster = ladder.trials().get(2);
        assertThat(slower.number()).isEqualTo(2);
        assertThat(slower.probability()).isCloseTo(shares[0] + shares[1], within(1e-9));
        assertThat(faster.probability()).isCloseTo(shares[2] + shares[3], within(1e-9));
        assertThat(Kind.SPEED.si(slower.failed().orElseThrow())).isCloseTo(0.008, within(1e-15));
        assertThat(Kind.SPEED.si(faster.separated().orElseThrow())).isCloseTo(0.008, within(1e-15));
        assertThat(slower.separated()).isEmpty();
        assertThat(faster.failed()).isEmpty();
        assertThat(Kind.SPEED.si(faster.feed()) / 0.008).isCloseTo(1.1, within(1e-12));
    }

    /** The rungs reach just beyond the interval of 95 %. */
    @ParameterizedTest
    @CsvSource({"0.15, 0.05", "0.3, 0.1", "0.5, 0.2"})
    void theRungsHoldTheInterval(double relative, double step) {
        Estimate<Speed> expected = expected(relative);
        double[] rungs = FeedLadder.of(expected, step).trials().stream()
                .mapToDouble(trial -> Kind.SPEED.si(trial.feed()))
                .sorted()
                .toArray();
        double lower = Kind.SPEED.si(expected.lower(0.95));
        double upper = Kind.SPEED.si(expected.upper(0.95));

        assertThat(rungs[0]).isLessThanOrEqualTo(lower).isGreaterThan(lower / (1 + step) / 1.000001);
        assertThat(rungs[rungs.length - 1]).isGreaterThanOrEqualTo(upper).isLessThan(upper * (1 + step) * 1.000001);
    }

    @Test
    void aLadderIsDescribedWithItsTrials() {
        FeedLadder ladder = FeedLadder.of(expected(0.15), 0.1);
        assertThat(ladder.describe())
                .containsEntry(
                        "first_feed_m_per_s",
                        Kind.SPEED.si(ladder.trials().get(0).feed()))
                .containsEntry("rungs", (long) ladder.trials().size())
                .containsEntry("step", 0.1)
                .containsEntry("expected_trials", ladder.expectedTrials())
                .containsEntry("climbing_trials", ladder.climbingTrials());
        FeedLadder.Trial third = ladder.trials().get(2);
        assertThat(third.describe())
                .containsEntry(
                        "separated_m_per_s", Kind.SPEED.si(third.separated().orElseThrow()))
                .containsEntry("number", 2L);
        FeedLadder.Trial second = ladder.trials().get(1);
        assertThat(second.describe())
                .containsEntry("failed_m_per_s", Kind.SPEED.si(second.failed().orElseThrow()))
                .containsEntry("probability", second.probability());
    }

    /** At most 400 rungs. */
    @Test
    void theNumberOfRungsIsLimited() {
        Estimate<Speed> wide = expected(0.5);
        double span = Math.log(Kind.SPEED.si(wide.upper(0.95)) / 0.008);
        double few = Math.expm1(span / 198.5);
        double many = Math.expm1(span / 200.5);

        assertThat(FeedLadder.of(wide, few).trials().size()).isBetween(398, 401);
        Refusals.assertRefused(() -> FeedLadder.of(wide, many), "too-many-rungs", "number of rungs", 400);
    }

    /** First the trial that everyone makes, then the second ones by their feed rates, and so on. */
    @Test
    void trialsAreInTheOrderOfTheirNumbers() {
        List<FeedLadder.Trial> trials = FeedLadder.of(expected(0.3), 0.05).trials();
        for (int i = 1; i < trials.size(); i++) {
            FeedLadder.Trial before = trials.get(i - 1);
            FeedLadder.Trial trial = trials.get(i);
            assertThat(trial.number()).isBetween(before.number(), before.number() + 1);
            if (trial.number() == before.number()) {
                assertThat(Kind.SPEED.si(trial.feed())).isGreaterThan(Kind.SPEED.si(before.feed()));
            }
        }
        assertThat(trials.get(0).number()).isEqualTo(1);
    }
}

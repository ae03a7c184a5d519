package dev.waterjet.calibrate;

import dev.waterjet.evidence.Estimate;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.DomainException;
import dev.waterjet.measure.Experimental;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Speed;

/**
 * Order of trials that finds the separation feed rate of one plate on a ladder with the fewest trials. Each trial is at a rung, and
 * its outcome decides the next one.
 *
 * <pre>{@code
 * FeedLadder ladder = FeedLadder.of(model.feed(jet, workpiece, 1), 0.1);
 * Quantity<Speed> first = ladder.trials().get(0).feed();
 * }</pre>
 *
 * <p>The rungs hold the 95 % interval of what is expected, and the order is the binary search tree of the smallest expected number of
 * trials (Knuth 1971, from memory). All trials are on one plate, best side by side: it has one separation feed rate. The result is
 * recorded as an interval, from the fastest feed rate that separated to the slowest that did not.
 *
 * @param trials all trials that may be needed, in order of their number, then of feed rate
 * @param step ratio of neighbouring rungs less 1
 * @param expectedTrials expected number of trials
 * @param mostTrials largest number of trials
 * @param climbingTrials expected number if the rungs are climbed one by one from the lowest until one fails
 */
@Experimental
public record FeedLadder(List<Trial> trials, double step, double expectedTrials, int mostTrials, double climbingTrials)
        implements Described {

    private static final double COVERAGE = 0.95;
    private static final int MOST_RUNGS = 400;

    /**
     * Trial of a ladder.
     *
     * @param number its number on the way to it, from 1
     * @param feed its feed rate
     * @param separated fastest feed rate that has separated before; empty if none has
     * @param failed slowest feed rate that has failed before; empty if none has
     * @param probability probability that it is needed
     */
    public record Trial(
            int number,
            Quantity<Speed> feed,
            Optional<Quantity<Speed>> separated,
            Optional<Quantity<Speed>> failed,
            double probability)
            implements Described {

        /**
         * Checks the components.
         *
         * @param number its number
         * @param feed its feed rate
         * @param separated fastest feed rate that has separated before
         * @param failed slowest feed rate that has failed before
         * @param probability probability that it is needed
         */
        public Trial {
            Require.atLeast("number of the trial", number, 1, Units.ONE, "");
            Objects.requireNonNull(feed, "feed");
            Objects.requireNonNull(separated, "separated");
            Objects.requireNonNull(failed, "failed");
            probability = Require.notNegative("probability", probability, Units.ONE);
        }

        @Override
        public Map<String, Object> describe() {
            Description description =
                    Description.of("trial").put("number", number).put("feed", Kind.SPEED, Kind.SPEED.si(feed));
            separated.ifPresent(speed -> description.put("separated", Kind.SPEED, Kind.SPEED.si(speed)));
            failed.ifPresent(speed -> description.put("failed", Kind.SPEED, Kind.SPEED.si(speed)));
            return description.put("probability", probability).map();
        }
    }

    /**
     * Checks the components.
     *
     * @param trials all trials that may be needed
     * @param step ratio of neighbouring rungs less 1
     * @param expectedTrials expected number of trials
     * @param mostTrials largest number of trials
     * @param climbingTrials expected number if the rungs are climbed
     */
    public FeedLadder {
        trials = List.copyOf(Objects.requireNonNull(trials, "trials"));
        Require.atLeast("number of trials", trials.size(), 1, Units.ONE, "");
        step = Require.positive("step of the ladder", step, Units.ONE);
        expectedTrials = Require.positive("expected number of trials", expectedTrials, Units.ONE);
        Require.atLeast("largest number of trials", mostTrials, 1, Units.ONE, "");
        climbingTrials = Require.positive("expected number of trials", climbingTrials, Units.ONE);
    }

    /**
     * Returns the ladder for a feed rate that is expected.
     *
     * @param expected separation feed rate as a model or a calibration predicts it, with its uncertainty
     * @param step ratio of neighbouring rungs less 1, such as 0.1
     * @return the ladder
     * @throws DomainException if more than 400 rungs are within the uncertainty
     */
    public static FeedLadder of(Estimate<Speed> expected, double step) {
        Objects.requireNonNull(expected, "expected");
        double ratio = Math.log1p(Require.positive("step of the ladder", step, Units.ONE));
        double middle = Math.log(Require.positive("feed rate", expected.si(), Units.MILLIMETRE_PER_MINUTE));
        double lowest = Math.max(Kind.SPEED.si(expected.lower(COVERAGE)), expected.si() / 1000);
        int below = (int) Math.ceil((middle - Math.log(lowest)) / ratio);
        int above = (int) Math.ceil((Math.log(Kind.SPEED.si(expected.upper(COVERAGE))) - middle) / ratio);
        int rungs = below + above + 1;
        if (rungs > MOST_RUNGS) {
            throw new DomainException(
                    Message.of(
                            "too-many-rungs",
                            "the uncertainty has {value} rungs of the ladder; it may have {limit}: give a larger step"),
                    "number of rungs",
                    rungs,
                    MOST_RUNGS,
                    Units.ONE);
        }
        double[] feeds = new double[rungs];
        double[] shares = new double[rungs + 1];
        double sum = 0;
        for (int k = 0; k < rungs; k++) {
            feeds[k] = Math.exp(middle + (k - below) * ratio);
            double atMost = expected.probabilityAtMost(Kind.SPEED.of(feeds[k]));
            shares[k] = Math.max(0, atMost - sum);
            sum = atMost;
        }
        shares[rungs] = 1 - sum;
        return new Search(feeds, shares).ladder(step);
    }

    /** Search tree over rungs, by the shares of the gaps below, between and above them. */
    private static final class Search {

        private final double[] feeds;
        private final double[] shares;
        private final int[][] root;
        private final double[][] cost;
        private final List<Trial> trials = new ArrayList<>();

        Search(double[] feeds, double[] shares) {
            this.feeds = feeds;
            this.shares = shares;
            int n = shares.length;
            this.root = new int[n][n];
            this.cost = new double[n][n];
            for (int size = 1; size < n; size++) {
                for (int from = 0; from + size < n; from++) {
                    choose(from, from + size);
                }
            }
        }

        /** Rung k lies between the gaps k and k + 1. */
        private void choose(int from, int to) {
            double best = Double.POSITIVE_INFINITY;
            for (int rung = from; rung < to; rung++) {
                double both = cost[from][rung] + cost[rung + 1][to];
                if (both < best - 1e-12) {
                    best = both;
                    root[from][to] = rung;
                }
            }
            cost[from][to] = best + share(from, to);
        }

        private double share(int from, int to) {
            double sum = 0;
            for (int gap = from; gap <= to; gap++) {
                sum += shares[gap];
            }
            return sum;
        }

        private void walk(int from, int to, int number) {
            if (from == to) {
                return;
            }
            int rung = root[from][to];
            trials.add(new Trial(
                    number,
                    Kind.SPEED.of(feeds[rung]),
                    from == 0 ? Optional.empty() : Optional.of(Kind.SPEED.of(feeds[from - 1])),
                    to == feeds.length ? Optional.empty() : Optional.of(Kind.SPEED.of(feeds[to])),
                    share(from, to)));
            walk(from, rung, number + 1);
            walk(rung + 1, to, number + 1);
        }

        FeedLadder ladder(double step) {
            walk(0, feeds.length, 1);
            trials.sort(Comparator.comparingInt(Trial::number).thenComparingDouble(t -> Kind.SPEED.si(t.feed())));
            double climbing = 0;
            for (int gap = 0; gap < shares.length; gap++) {
                climbing += shares[gap] * Math.min(gap + 1, feeds.length);
            }
            int most = trials.get(trials.size() - 1).number();
            return new FeedLadder(trials, step, cost[0][feeds.length], most, climbing);
        }
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("feed ladder")
                .put("first_feed", Kind.SPEED, Kind.SPEED.si(trials.get(0).feed()))
                .put("rungs", trials.size())
                .put("step", step)
                .put("expected_trials", expectedTrials)
                .put("most_trials", mostTrials)
                .put("climbing_trials", climbingTrials)
                .map();
    }
}

package dev.waterjet.calibrate;

import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Experimental;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.TextException;
import dev.waterjet.measure.Units;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Speed;

/**
 * Worth of one more test cut: how far it narrows the feed rate that matters, and for what cost.
 *
 * <pre>{@code
 * List<NextCut> ranked = NextCut.rank(own, jet, millimetres(12), List.of(jet, jet.withPressure(megapascals(250))));
 * }</pre>
 *
 * <p>The scatter of a cut and the spread between plates remain, however many cuts are made; below a narrowing of 2 % another cut
 * is not worth its plate.
 *
 * @param jet the jet of the cut
 * @param thickness thickness of its plate
 * @param way how it is made, and what it costs
 * @param trialFeed feed rate of the cut: the one that separates with even chances, at which a trial says most
 * @param narrowing share by which the cut would narrow the interval of one more cut at the target
 */
@Experimental
public record NextCut(AbrasiveJet jet, Quantity<Length> thickness, Way way, Quantity<Speed> trialFeed, double narrowing)
        implements Described {

    /** Share of the information of a measured feed rate that a trial at even chances has. */
    private static final double TRIAL = 2 / Math.PI;

    /**
     * Way to make a test cut, with its cost.
     *
     * @param test separation, interval or trial
     * @param step of an interval the ratio of its ends less 1; else 0
     * @param plate name of a plate that was among the cuts; empty for a new one
     * @param cost cost in any unit, above 0
     */
    public record Way(TestCut.Test test, double step, String plate, double cost) implements Described {

        /**
         * Checks the components.
         *
         * @param test separation, interval or trial
         * @param step of an interval the ratio of its ends less 1
         * @param plate name of a plate, or empty
         * @param cost cost
         */
        public Way {
            Objects.requireNonNull(test, "test");
            Objects.requireNonNull(plate, "plate");
            step = test == TestCut.Test.INTERVAL
                    ? Require.positive("step of the ladder", step, Units.ONE)
                    : Require.notNegative("step of the ladder", step, Units.ONE);
            cost = Require.positive("cost", cost, Units.ONE);
        }

        @Override
        public Map<String, Object> describe() {
            return Description.of("way to make a test cut")
                    .put("test", test)
                    .put("step", step)
                    .put("plate", plate)
                    .put("cost", cost)
                    .map();
        }

        /** {@return a measured feed rate, as of a wedge, on a new plate, of cost 1} */
        public static Way measured() {
            return new Way(TestCut.Test.SEPARATION, 0, "", 1);
        }

        /**
         * Returns an interval of a ladder on a new plate, of cost 1.
         *
         * @param step ratio of neighbouring rungs less 1, such as 0.1
         * @return the way
         */
        public static Way ladder(double step) {
            return new Way(TestCut.Test.INTERVAL, step, "", 1);
        }

        /** {@return a trial that separates or not, on a new plate, of cost 1} */
        public static Way trial() {
            return new Way(TestCut.Test.TRIAL, 0, "", 1);
        }

        /**
         * Returns this way on a plate that was among the cuts.
         *
         * @param name name of the plate
         * @return the way
         */
        public Way onPlate(String name) {
            return new Way(test, step, Objects.requireNonNull(name, "name"), cost);
        }

        /**
         * Returns this way with its cost.
         *
         * @param number cost in any unit, above 0: minutes, or money
         * @return the way
         */
        public Way withCost(double number) {
            return new Way(test, step, plate, number);
        }
    }

    /**
     * Checks the components.
     *
     * @param jet the jet of the cut
     * @param thickness thickness of its plate
     * @param way how it is made
     * @param trialFeed feed rate of the cut
     * @param narrowing share by which the interval would narrow
     */
    public NextCut {
        Objects.requireNonNull(thickness, "thickness");
        Objects.requireNonNull(trialFeed, "trialFeed");
        Objects.requireNonNull(jet, "jet");
        Objects.requireNonNull(way, "way");
        thickness = Kind.LENGTH.of(Require.positive("thickness", Kind.LENGTH.si(thickness), Units.MILLIMETRE));
        trialFeed = Kind.SPEED.of(Require.positive("feed rate", Kind.SPEED.si(trialFeed), Units.MILLIMETRE_PER_MINUTE));
        narrowing = Require.finite("narrowing", narrowing, Units.ONE);
    }

    /**
     * Ranks settings of one more cut, each a measured feed rate on a new plate.
     *
     * @param own the calibration so far
     * @param target jet at which the feed rate matters
     * @param thickness thickness at which it matters, and of the cuts
     * @param candidates jets with which the cut could be made
     * @return the candidates, the one that narrows most first
     */
    public static List<NextCut> rank(
            CalibratedFeed own, AbrasiveJet target, Quantity<Length> thickness, List<AbrasiveJet> candidates) {
        return rank(own, target, thickness, candidates, List.of(Way.measured()));
    }

    /**
     * Ranks settings of one more cut and ways to make it by what they narrow for their cost.
     *
     * @param own the calibration so far
     * @param target jet at which the feed rate of a new plate matters
     * @param thickness thickness at which it matters, and of the cuts
     * @param candidates jets with which the cut could be made
     * @param ways ways in which it could be made
     * @return every candidate in every way, the one that narrows most for its cost first
     * @throws TextException if a way names a plate that is not in the fit; code {@code unknown-plate}
     */
    public static List<NextCut> rank(
            CalibratedFeed own,
            AbrasiveJet target,
            Quantity<Length> thickness,
            List<AbrasiveJet> candidates,
            List<Way> ways) {
        double thicknessM = Require.positive("thickness", Kind.LENGTH.si(thickness), Units.MILLIMETRE);
        return candidates.stream()
                .flatMap(jet -> ways.stream().map(way -> of(own.fit(), target, jet, thicknessM, way)))
                .sorted(Comparator.comparingDouble(NextCut::narrowingPerCost).reversed())
                .toList();
    }

    private static NextCut of(CutFit fit, AbrasiveJet target, AbrasiveJet jet, double thicknessM, Way way) {
        double[] slopes = fit.slopes(new FitPoint(target, thicknessM, 1));
        FitPoint candidate = new FitPoint(jet, thicknessM, 1);
        double[][] covariance = fit.solution().covariance();
        double own = fit.scatter() * fit.scatter() + fit.plateScatter() * fit.plateScatter();
        double before = Matrices.square(slopes, covariance);
        double share = way.test() == TestCut.Test.INTERVAL && own > 0
                ? Gains.ladderEfficiency(Math.log1p(way.step()) / fit.slope(candidate) / Math.sqrt(own))
                : 1;
        double after = way.plate().isEmpty()
                ? Gains.variance(covariance, slopes, fit.slopes(candidate), own / share)
                : onPlate(fit, slopes, fit.slopes(candidate), place(fit, way.plate()), share);
        double gained = (before - after) * (way.test() == TestCut.Test.TRIAL ? TRIAL : 1);
        double feed = Math.exp(fit.logFeed(candidate, Solution.Part.NEW_PLATE, -1)[0]);
        return new NextCut(
                jet,
                Kind.LENGTH.of(thicknessM),
                way,
                Kind.SPEED.of(feed),
                before + own > 0 ? 1 - Math.sqrt((before - gained + own) / (before + own)) : 0);
    }

    private static int place(CutFit fit, String plate) {
        int cut = fit.plateScatter() > 0 ? fit.spec().groups(fit.cuts()).indexOf(plate) : -1;
        if (cut < 0) {
            throw new TextException(Message.of("unknown-plate", "no test cut of this fit is on plate {plate}")
                    .withInput("plate", plate));
        }
        return fit.spec().places(fit.cuts())[cut];
    }

    /** A further cut on a plate that was cut adds less to the information: its plate is known in part. */
    private static double onPlate(CutFit fit, double[] slopes, double[] candidate, int plate, double share) {
        CutRows rows = FitRows.linearized(fit).withPlates(fit.spec().places(fit.cuts()));
        double[][] gained = Matrices.sum(
                Gains.information(rows.with(candidate, plate), fit.scatter(), fit.plateScatter()),
                Matrices.scaled(Gains.information(rows, fit.scatter(), fit.plateScatter()), -1));
        double[][] known = Matrices.inverse(fit.solution().covariance());
        return Matrices.square(slopes, Matrices.inverse(Matrices.sum(known, Matrices.scaled(gained, share))));
    }

    /** {@return the narrowing over the cost} */
    public double narrowingPerCost() {
        return narrowing / way.cost();
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("next cut")
                .put("jet", jet)
                .put("thickness", Kind.LENGTH, Kind.LENGTH.si(thickness))
                .put("test", way.test().text())
                .put("step", way.step())
                .put("plate", way.plate())
                .put("cost", way.cost())
                .put("trial_feed", Kind.SPEED, Kind.SPEED.si(trialFeed))
                .put("narrowing", narrowing)
                .map();
    }
}

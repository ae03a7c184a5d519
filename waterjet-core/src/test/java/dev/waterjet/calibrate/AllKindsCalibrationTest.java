package dev.waterjet.calibrate;

import static dev.waterjet.Refusals.assertRefused;
import static dev.waterjet.measure.Measures.millimetres;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.evidence.Estimate;
import dev.waterjet.feed.FeedExponent;
import dev.waterjet.feed.MachinabilityFeed;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.material.Material;
import dev.waterjet.material.MaterialClass;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Speed;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.distribution.TDistribution;
import org.junit.jupiter.api.Test;

/** Cuts of all kinds in one fit, against the sum of the logarithms of the probability of each by itself. */
class AllKindsCalibrationTest {

    private static final double INFINITE = Double.POSITIVE_INFINITY;
    private static final MachinabilityFeed MODEL = MachinabilityFeed.published();
    private static final Material ALLOY = Material.of("dome-alloy", 115, 0.1, MaterialClass.DUCTILE);
    private static final double[] NOISE = {0.03, -0.05, 0.02, 0.06, -0.03, -0.01, 0.04, -0.02, 0.05, -0.06};

    private static AbrasiveJet jet(int i) {
        return CalibrationTest.jet(280 + 25 * (i % 4), 300);
    }

    private static double feed(int i, double depthM) {
        return MODEL.separationFeedSi(jet(i), ALLOY, depthM) * Math.exp(1.15 * NOISE[i]);
    }

    private static List<TestCut> cuts() {
        List<TestCut> cuts = new ArrayList<>();
        for (int i = 0; i < 10; i++) {
            double depth = 0.004 + 0.003 * i;
            Quantity<Length> thickness = Kind.LENGTH.of(depth);
            Quantity<Speed> feed = Kind.SPEED.of(feed(i, depth));
            Quantity<Speed> failed = Kind.SPEED.of(1.08 * feed(i, depth));
            Quantity<Length> third = Kind.LENGTH.of(depth / 3);
            cuts.add(
                    switch (i) {
                        case 1 -> TestCut.between(jet(i), thickness, feed, failed);
                        case 2 -> TestCut.trial(jet(i), thickness, feed, true);
                        case 3 -> TestCut.trial(jet(i), thickness, feed, false);
                        case 4 -> TestCut.graded(jet(i), third, 3, feed);
                        case 5 -> TestCut.gradedBetween(jet(i), third, 3, 3.2, feed);
                        case 6 -> TestCut.groove(jet(i), thickness, feed).withReadingDeviation(millimetres(0.5));
                        case 7 -> TestCut.grooveBetween(jet(i), thickness, Kind.LENGTH.of(1.1 * depth), feed);
                        default -> TestCut.separated(jet(i), thickness, feed).withRelativeDeviation(i == 8 ? 0.04 : 0);
                    });
        }
        return cuts;
    }

    /** Natural logarithm of number; exponents of feed rate and pressure; logarithm of the scatter. */
    private static double logLikelihood(double[] at) {
        MachinabilityFeed model =
                MODEL.withExponent(FeedExponent.FEED, at[1]).withExponent(FeedExponent.PRESSURE, at[2]);
        Material material = Material.of("tried", Math.exp(at[0]), 0, MaterialClass.DUCTILE);
        double sigma = Math.exp(at[3]);
        double sum = 0;
        for (int i = 0; i < 10; i++) {
            double depth = 0.004 + 0.003 * i;
            double feed = feed(i, depth);
            double mean = Math.log(model.separationDepthSi(jet(i), material, feed) / depth);
            // ends of how much deeper than the model the jet cuts
            double lower = -mean;
            double upper = switch (i) {
                case 1 -> -Math.log(model.separationDepthSi(jet(i), material, 1.08 * feed) / depth);
                case 2 -> INFINITE;
                case 5 -> lower + Math.log(3.2 / 3);
                case 7 -> lower + Math.log(1.1);
                default -> lower;
            };
            lower = i == 3 ? -INFINITE : lower;
            double known = i == 4 ? 0.1 / at[1] : i == 6 ? 0.5e-3 / depth : i == 8 ? 0.04 / at[1] : 0;
            NormalDistribution normal = new NormalDistribution(null, 0, Math.hypot(sigma, known));
            sum += lower < upper
                    ? Math.log(normal.probability(lower, upper))
                    : normal.logDensity(lower) - (i == 6 ? 0 : Math.log(at[1]));
        }
        return sum;
    }

    private static double[] found(CutFit fit) {
        List<String> names = fit.names();
        return new double[] {
            Math.log(fit.value("machinability")),
            names.contains("feed exponent") ? fit.value("feed exponent") : 1.15,
            names.contains("pressure exponent") ? fit.value("pressure exponent") : 1.594,
            Math.log(fit.scatter())
        };
    }

    @Test
    void theFitIsTheTopOfTheSumOfTheLogarithms() {
        for (FeedExponent[] freed :
                new FeedExponent[][] {{}, {FeedExponent.PRESSURE}, {FeedExponent.FEED, FeedExponent.PRESSURE}}) {
            CutFit fit =
                    Calibration.ofMachinability(ALLOY, MODEL, freed).fit(cuts()).fit();
            double[] at = found(fit);
            if (freed.length == 2) {
                // stated with n - p; the likelihood has n
                at[3] -= Math.log(10 / 7.0) / 2;
            }
            assertThat(fit.logLikelihood()).isCloseTo(logLikelihood(at), within(1e-6));
            for (int j = 0; j < 4; j++) {
                boolean isFree = j == 0 || j == 3 || (j == 1 && freed.length == 2) || (j == 2 && freed.length > 0);
                double curvature = -Differences.slope(
                        x -> Differences.slope(AllKindsCalibrationTest::logLikelihood, x, 0, 1e-3), at, 0, 1e-3);
                if (isFree) {
                    assertThat(Differences.slope(AllKindsCalibrationTest::logLikelihood, at, j, 1e-4)
                                    / Math.sqrt(curvature))
                            .as("%s of %s", j, freed.length)
                            .isCloseTo(0, within(1e-3));
                }
            }
        }
    }

    /** The profile ends where no machinability and scatter are more likely than a drop of n/2 ln(1 + t^2/f) allows. */
    @Test
    void theIntervalOfANumberIsThatOfItsProfile() {
        CutFit fit = Calibration.ofMachinability(ALLOY, MODEL).fit(cuts()).fit();
        double t = Solution.student(9, 0.9);
        double drop = 10 / 2.0 * Math.log1p(t * t / 9);
        for (double end : new double[] {fit.lower("machinability", 0.9), fit.upper("machinability", 0.9)}) {
            double best = Double.NEGATIVE_INFINITY;
            for (double s = -6; s < 0; s += 0.002) {
                best = Math.max(best, logLikelihood(new double[] {Math.log(end), 1.15, 1.594, s}));
            }
            assertThat(fit.logLikelihood() - best).isCloseTo(drop, within(1e-4));
        }
        assertThat(fit.lower("machinability", 0.9)).isLessThan(fit.value("machinability"));
        assertThat(fit.degreesOfFreedom()).isEqualTo(9);
        assertThat(fit.method()).isEqualTo(CutFit.Method.PROFILE_LIKELIHOOD);
    }

    /** Narrow intervals predict the next cut as measured ones do. */
    @Test
    void narrowIntervalsPredictAsMeasuredCuts() {
        List<TestCut> measured = new ArrayList<>();
        List<TestCut> narrow = new ArrayList<>();
        for (int i = 0; i < 6; i++) {
            double feed = feed(i, 0.01);
            measured.add(TestCut.separated(jet(i), millimetres(10), Kind.SPEED.of(feed)));
            narrow.add(TestCut.between(jet(i), millimetres(10), Kind.SPEED.of(feed), Kind.SPEED.of(feed * 1.0001)));
        }
        Calibration calibration = Calibration.ofMachinability(ALLOY, MODEL);
        Estimate<Speed> one = next(calibration.fit(measured));
        Estimate<Speed> other = next(calibration.fit(narrow));

        assertThat(other.si() / one.si()).isCloseTo(1, within(1e-3));
        assertThat(other.relativeUncertainty() / one.relativeUncertainty()).isCloseTo(1, within(5e-3));
        assertThat(other.degreesOfFreedom()).isCloseTo(5, within(0.1));
    }

    private static Estimate<Speed> next(CalibratedFeed own) {
        return own.feed(jet(1), Workpiece.of(own.material(), millimetres(10)), 1);
    }

    /** Intervals of depth that rise with the pressure: a line meets them all, however heavy the tails. */
    @Test
    void intervalsThatALineMeetsShowNoScatterToARobustFit() {
        double[] from = {0.80, 0.88, 0.97, 1.06, 1.15};
        List<TestCut> rising = new ArrayList<>(IntStream.range(0, 5)
                .mapToObj(i -> {
                    AbrasiveJet jet = CalibrationTest.jet(260 + 30 * i, 300);
                    double feed = MODEL.separationFeedSi(jet, ALLOY, 0.01) * from[i];
                    return TestCut.between(jet, millimetres(10), Kind.SPEED.of(feed), Kind.SPEED.of(1.1 * feed));
                })
                .toList());
        Calibration slope = Calibration.ofMachinability(ALLOY, MODEL, FeedExponent.PRESSURE);

        assertRefused(() -> slope.fit(rising), "undetermined-scatter");
        assertRefused(() -> slope.withStudentErrors(4).fit(rising), "undetermined-scatter");
    }

    /** Heavy tails of intervals: the sum of the logarithms by Student's distribution has no slope. */
    @Test
    void heavyTailsOfIntervalsAreTheTopOfTheirProbabilities() {
        List<TestCut> cuts = new ArrayList<>();
        double[] logs = {0.02, -0.06, 0.05, -0.01, 0.08, 0.01, 0.9};
        for (double log : logs) {
            double feed = MODEL.separationFeedSi(jet(0), ALLOY, 0.01) * Math.exp(1.15 * log);
            cuts.add(TestCut.between(jet(0), millimetres(10), Kind.SPEED.of(feed), Kind.SPEED.of(feed * 1.05)));
        }
        CutFit fit = Calibration.ofMachinability(ALLOY, MODEL)
                .withStudentErrors(3)
                .fit(cuts)
                .fit();
        ToDoubleFunction<double[]> sum = at -> {
            double total = 0;
            TDistribution student = new TDistribution(null, 3);
            for (double log : logs) {
                double a = (log - at[0]) / Math.exp(at[1]);
                double b = (log + Math.log(1.05) / 1.15 - at[0]) / Math.exp(at[1]);
                total += Math.log(student.probability(a, b));
            }
            return total;
        };
        double[] at = {Math.log(fit.value("machinability") / 115), Math.log(fit.scatter())};

        assertThat(Differences.slope(sum, at, 0, 1e-4)).isCloseTo(0, within(0.01));
        assertThat(Differences.slope(sum, at, 1, 1e-4)).isCloseTo(0, within(1e-3));
        assertThat(fit.logLikelihood()).isCloseTo(sum.applyAsDouble(at), within(1e-6));
        assertThat(fit.weights()[6]).isLessThan(0.05);
        assertThat(fit.weights()[3]).isGreaterThan(0.9);
        assertThat(fit.tailDegreesOfFreedom()).isEqualTo(3);
        assertThat(fit.degreesOfFreedom()).isEqualTo(6);
        assertThat(fit.method().label()).isEqualTo("heavy tails");
    }

    /** Intervals on plates: one degree of freedom less than there are plates. */
    @Test
    void intervalsOnPlatesHaveTheFreedomOfTheirPlates() {
        List<TestCut> cuts = new ArrayList<>();
        double[] effects = {0.15, -0.1, 0.05, -0.2};
        for (int i = 0; i < 10; i++) {
            double feed = feed(i, 0.01) * Math.exp(effects[i % 4]);
            cuts.add(TestCut.between(jet(i), millimetres(10), Kind.SPEED.of(feed), Kind.SPEED.of(1.03 * feed))
                    .withPlate("P" + i % 4));
        }
        CalibratedFeed own =
                Calibration.ofMachinability(ALLOY, MODEL).withPlates().fit(cuts);
        CutFit fit = own.fit();
        double half = Solution.student(3, 0.9)
                * Math.sqrt(10 / 9.0)
                * fit.standardError("machinability")
                / fit.value("machinability");

        assertThat(fit.degreesOfFreedom()).isEqualTo(3);
        assertThat(next(own).degreesOfFreedom()).isEqualTo(3);
        assertThat(fit.method()).isEqualTo(CutFit.Method.PROFILE_LIKELIHOOD);
        assertThat(Math.log(fit.upper("machinability", 0.9) / fit.value("machinability")))
                .isCloseTo(half, within(1e-9));
        assertThat(fit.plateScatter()).isBetween(0.03, 0.3);
        assertThat(fit.fittedNumbers()).isEqualTo(3);
    }

    /** Stated deviations: a leverage is the share of a cut in the sum of the weights, and residuals are over their deviations. */
    @Test
    void statedDeviationsWeighTheInfluence() {
        double[] stated = {0, 0.04, 0, 0.02, 0, 0.05, 0, 0};
        List<TestCut> cuts = new ArrayList<>();
        for (int i = 0; i < 8; i++) {
            cuts.add(TestCut.separated(jet(i), millimetres(10), Kind.SPEED.of(feed(i, 0.01)))
                    .withRelativeDeviation(stated[i]));
        }
        CutFit fit = Calibration.ofMachinability(ALLOY, MODEL).fit(cuts).fit();
        double[] weights = new double[8];
        double sum = 0;
        double squares = 0;
        double mean = Math.log(fit.value("machinability") / 115);
        for (int i = 0; i < 8; i++) {
            weights[i] = 1 / (Math.pow(fit.scatter(), 2) + Math.pow(stated[i] / 1.15, 2));
            sum += weights[i];
            squares += weights[i] * Math.pow(NOISE[i] - mean, 2);
        }
        assertThat(fit.method()).isEqualTo(CutFit.Method.PROFILE_LIKELIHOOD);
        for (int i = 0; i < 8; i++) {
            double leverage = weights[i] / sum;
            double residual = (NOISE[i] - mean) * Math.sqrt(weights[i]);
            double without = (squares - residual * residual / (1 - leverage)) / 6;

            assertThat(fit.leverages()[i]).isCloseTo(leverage, within(1e-6));
            assertThat(fit.studentizedResiduals()[i])
                    .isCloseTo(residual / Math.sqrt(without * (1 - leverage)), within(1e-5));
            assertThat(fit.cookDistances()[i])
                    .isCloseTo(
                            residual * residual * leverage / (squares / 7) / Math.pow(1 - leverage, 2), within(1e-5));
        }
    }
}

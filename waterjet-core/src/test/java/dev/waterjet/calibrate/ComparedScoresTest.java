package dev.waterjet.calibrate;

import static dev.waterjet.measure.Measures.millimetres;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.calibrate.ModelComparison.Verdict;
import dev.waterjet.feed.FeedExponent;
import dev.waterjet.feed.MachinabilityFeed;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.material.Material;
import dev.waterjet.material.MaterialClass;
import dev.waterjet.measure.Kind;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.apache.commons.math3.distribution.TDistribution;
import org.apache.commons.math3.stat.descriptive.moment.StandardDeviation;
import org.junit.jupiter.api.Test;

/** Scores by which models are compared, for cuts of every kind, against Student's distribution of Commons Math. */
class ComparedScoresTest {

    private static final MachinabilityFeed MODEL = MachinabilityFeed.published();
    private static final Material ALLOY = Material.of("dome-alloy", 115, 0.1, MaterialClass.DUCTILE);
    private static final AbrasiveJet JET = CalibrationTest.jet(350, 300);
    private static final Calibration FIXED = Calibration.ofMachinability(ALLOY, MODEL);
    private static final Calibration FREE = Calibration.ofMachinability(ALLOY, MODEL, FeedExponent.PRESSURE);
    private static final double[] NOISE = {0.03, -0.05, 0.02, 0.06, -0.03, -0.01, 0.04, -0.02};

    private static AbrasiveJet jet(int i) {
        return CalibrationTest.jet(280 + 20 * (i % 5), 300);
    }

    private static double feed(AbrasiveJet jet, double thickness, double log) {
        return MODEL.separationFeedSi(jet, ALLOY, thickness) * Math.exp(log);
    }

    private static List<TestCut> measured() {
        List<TestCut> cuts = new ArrayList<>();
        for (int i = 0; i < 8; i++) {
            double thickness = 0.004 * (i + 1);
            double feed = feed(jet(i), thickness, NOISE[i]);
            cuts.add(TestCut.separated(jet(i), Kind.LENGTH.of(thickness), Kind.SPEED.of(feed)));
        }
        return cuts;
    }

    private static double leftOut(double[] y, int left) {
        int n = y.length - 1;
        double mean = (Arrays.stream(y).sum() - y[left]) / n;
        double squares = 0;
        for (int i = 0; i < y.length; i++) {
            squares += i == left ? 0 : (y[i] - mean) * (y[i] - mean);
        }
        double scale = Math.sqrt(squares / (n - 1) * (1 + 1.0 / n));
        return new TDistribution(null, n - 1).logDensity((y[left] - mean) / scale) - Math.log(scale);
    }

    /** Two models of one parameter: the mean of the logarithms over each model, and Student's density of what is left out. */
    @Test
    void measuredCutsAreScoredByStudentsDensity() {
        List<TestCut> cuts = measured();
        CalibratedFeed one = FIXED.fit(cuts);
        CalibratedFeed other = Calibration.ofSpecificEnergy(ALLOY).fit(cuts);
        double[] energies = new double[8];
        Arrays.setAll(
                energies,
                k -> Math.log(cuts.get(k).feedSi()
                        / other.separationFeedSi(
                                jet(k), other.material(), cuts.get(k).thicknessSi())));
        double[] differences = new double[8];
        Arrays.setAll(differences, i -> leftOut(NOISE, i) - leftOut(energies, i));
        ModelComparison comparison = ModelComparison.of(one, other);

        assertThat(comparison.difference()).isCloseTo(Arrays.stream(differences).sum(), within(1e-4));
        assertThat(comparison.standardError())
                .isCloseTo(Math.sqrt(8) * new StandardDeviation().evaluate(differences), within(1e-4));
        assertThat(comparison.firstAicc()).isEqualTo(one.fit().aicc());
        assertThat(comparison.secondAicc()).isEqualTo(other.fit().aicc());
        assertThat(comparison.describe())
                .containsEntry("difference", comparison.difference())
                .containsEntry("standard_error", comparison.standardError())
                .containsEntry("first_aicc", comparison.firstAicc())
                .containsEntry("second_aicc", comparison.secondAicc());
    }

    /** Measured cuts and one of each other kind; their ends are logarithms of feed rates over the model's. */
    private static List<TestCut> kinds() {
        List<TestCut> cuts = new ArrayList<>(measured());
        cuts.add(TestCut.between(
                JET, millimetres(10), Kind.SPEED.of(feed(JET, 0.01, -0.06)), Kind.SPEED.of(feed(JET, 0.01, 0.05))));
        cuts.add(TestCut.trial(JET, millimetres(12), Kind.SPEED.of(feed(JET, 0.012, -0.02)), true));
        cuts.add(TestCut.trial(JET, millimetres(14), Kind.SPEED.of(feed(JET, 0.014, 0.03)), false));
        cuts.add(TestCut.graded(JET, millimetres(6), 3, Kind.SPEED.of(feed(JET, 0.018, 0.1))));
        cuts.add(TestCut.gradedBetween(JET, millimetres(6), 2, 2.2, Kind.SPEED.of(feed(JET, 0.012, -0.02))));
        cuts.add(TestCut.grooveBetween(JET, millimetres(5), millimetres(5.5), Kind.SPEED.of(feed(JET, 0.005, -0.03))));
        cuts.add(TestCut.groove(JET, millimetres(7), Kind.SPEED.of(feed(JET, 0.007, -0.04)))
                .withReadingDeviation(millimetres(0.2)));
        return cuts;
    }

    private static final double INFINITE = Double.POSITIVE_INFINITY;

    /** Ends of the last seven: thicker by a factor is slower by its power of 1.15. */
    private static final double[][] ENDS = {
        {-0.06, 0.05},
        {-0.02, INFINITE},
        {-INFINITE, 0.03},
        {0.1, 0.1},
        {-0.02, -0.02 + 1.15 * Math.log(1.1)},
        {-0.03, -0.03 + 1.15 * Math.log(1.1)},
        {-0.04, -0.04}
    };

    /** Known deviations of the logarithm of the feed rate: 10 % of a judged surface, and 0.2 mm of 7 mm to the power of 1.15. */
    private static final double[] KNOWN = {0, 0, 0, 0.1, 0, 0, 1.15 * 0.2 / 7};

    private static double score(Calibration calibration, int left) {
        List<TestCut> others = kinds();
        TestCut cut = others.remove(left);
        CutFit fit = calibration.fit(others).fit();
        double[] predicted = fit.logFeed(FitPoint.of(cut), Solution.Part.NEW_PLATE, -1);
        double model = Math.log(MODEL.feedSi(cut.jet(), ALLOY, cut.thicknessSi(), cut.index()));
        double[] ends = left < 8 ? new double[] {NOISE[left], NOISE[left]} : ENDS[left - 8];
        double scale = Math.hypot(predicted[1], left < 8 ? 0 : KNOWN[left - 8]);
        TDistribution student = new TDistribution(null, predicted[2]);
        double a = (model + ends[0] - predicted[0]) / scale;
        double b = (model + ends[1] - predicted[0]) / scale;
        return a == b
                ? student.logDensity(a) - Math.log(scale)
                : Math.log((b == INFINITE ? 1 : student.cumulativeProbability(b))
                        - (a == -INFINITE ? 0 : student.cumulativeProbability(a)));
    }

    @Test
    void cutsOfEveryKindAreScoredByTheirProbability() {
        double sum = 0;
        for (int i = 0; i < kinds().size(); i++) {
            sum += score(FIXED, i) - score(FREE, i);
        }

        assertThat(ModelComparison.of(FIXED.fit(kinds()), FREE.fit(kinds())).difference())
                .isCloseTo(sum, within(1e-6));
    }

    /** A plate is left out as a whole, and its cuts are scored by the fit to the others. */
    @Test
    void platesAreScoredByTheFitToTheOthers() {
        List<TestCut> cuts = new ArrayList<>();
        for (int i = 0; i < 8; i++) {
            cuts.add(measured().get(i).withPlate("P" + i / 2));
        }
        double[] differences = new double[4];
        for (int i = 0; i < 8; i++) {
            int plate = i / 2;
            List<TestCut> others = cuts.stream()
                    .filter(cut -> !cut.plate().equals("P" + plate))
                    .toList();
            for (int sign = 1; sign >= -1; sign -= 2) {
                CutFit fit = (sign == 1 ? FIXED : FREE).fit(others).fit();
                double[] predicted = fit.logFeed(FitPoint.of(cuts.get(i)), Solution.Part.NEW_PLATE, -1);
                double z = (Math.log(cuts.get(i).feedSi()) - predicted[0]) / predicted[1];
                differences[plate] +=
                        sign * (new TDistribution(null, predicted[2]).logDensity(z) - Math.log(predicted[1]));
            }
        }
        ModelComparison comparison = ModelComparison.byPlates(FIXED.fit(cuts), FREE.fit(cuts));

        assertThat(comparison.difference()).isCloseTo(Arrays.stream(differences).sum(), within(1e-9));
        assertThat(comparison.standardError())
                .isCloseTo(2 * new StandardDeviation().evaluate(differences), within(1e-9));
        assertThat(comparison.firstAicc()).isEqualTo(FIXED.fit(cuts).fit().aicc());
        assertThat(comparison.secondAicc()).isEqualTo(FREE.fit(cuts).fit().aicc());
    }

    /** More than two, and more than two standard errors. */
    @Test
    void theVerdictNeedsAClearDifference() {
        assertThat(verdict(2.1, 1)).isEqualTo(Verdict.FIRST);
        assertThat(verdict(-2.1, 1)).isEqualTo(Verdict.SECOND);
        assertThat(verdict(2, 0.5)).isEqualTo(Verdict.CANNOT_TELL);
        assertThat(verdict(-2, 0.5)).isEqualTo(Verdict.CANNOT_TELL);
        assertThat(verdict(4, 2)).isEqualTo(Verdict.CANNOT_TELL);
        assertThat(verdict(4.1, 2)).isEqualTo(Verdict.FIRST);
        assertThat(verdict(1.9, 0.1)).isEqualTo(Verdict.CANNOT_TELL);
        assertThat(verdict(5, 2.6)).isEqualTo(Verdict.CANNOT_TELL);
    }

    private static Verdict verdict(double difference, double error) {
        return new ModelComparison(0, 0, difference, error).verdict();
    }

    /** Residuals of intervals and trials are what the fit expects of them, by sums over the normal distribution. */
    @Test
    void residualsOfIntervalsAreTheirExpectedOnes() {
        CutFit fit = FIXED.fit(kinds()).fit();
        double number = Math.log(fit.value("machinability") / 115);
        double[] residuals = fit.residuals();
        for (int k = 0; k < ENDS.length; k++) {
            double sigma = fit.scatter();
            double[] ends = ENDS[k];
            double scale = k >= 5 ? 1 : 1.15;
            if (ends[0] == ends[1]) {
                assertThat(residuals[8 + k] / scale).isCloseTo(ends[0] / 1.15 - number, within(1e-9));
                continue;
            }
            double weight = 0;
            double sum = 0;
            double a = Math.max(-9, (ends[0] / 1.15 - number) / sigma);
            double b = Math.min(9, (ends[1] / 1.15 - number) / sigma);
            int steps = 20_000;
            for (int i = 0; i < steps; i++) {
                double z = a + (b - a) * (i + 0.5) / steps;
                weight += Math.exp(-z * z / 2);
                sum += z * Math.exp(-z * z / 2);
            }
            assertThat(residuals[8 + k] / scale).as("kind %s", k).isCloseTo(sigma * sum / weight, within(1e-6));
        }
        assertThat(Arrays.stream(fit.leverages())).allMatch(leverage -> leverage > 0 && leverage < 1);
        assertThat(fit.studentizedResiduals()).containsOnly(0);
        assertThat(fit.cookDistances()).containsOnly(0);
        assertThat(fit.weights()).containsOnly(1);
    }
}

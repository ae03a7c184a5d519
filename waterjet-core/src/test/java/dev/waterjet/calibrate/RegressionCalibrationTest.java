package dev.waterjet.calibrate;

import static dev.waterjet.measure.Measures.millimetres;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.evidence.Estimate;
import dev.waterjet.feed.FeedExponent;
import dev.waterjet.feed.MachinabilityFeed;
import dev.waterjet.feed.SpecificEnergyFeed;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.material.Material;
import dev.waterjet.material.MaterialClass;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.ToDoubleFunction;
import javax.measure.quantity.Speed;
import org.apache.commons.math3.distribution.TDistribution;
import org.apache.commons.math3.stat.regression.SimpleRegression;
import org.junit.jupiter.api.Test;

/**
 * Calibrations that are regression lines in the logarithms: of the feed rate over the thickness, whose slope is minus the feed
 * exponent, or over the pressure. The lines are those of Commons Math.
 */
class RegressionCalibrationTest {

    private static final MachinabilityFeed MODEL = MachinabilityFeed.published();
    private static final Material ALLOY = Material.of("dome-alloy", 115, 0.1, MaterialClass.DUCTILE);
    private static final double[] THICKNESS_MM = {3, 5, 8, 12, 20, 30, 40};
    private static final double[] PRESSURE_MPA = {200, 240, 290, 330, 360, 385, 400};
    private static final double[] NOISE = {0.06, -0.04, 0.02, -0.07, 0.05, 0.03, -0.05};
    private static final double FEED_EXPONENT = 1.15;

    private static List<TestCut> ofThickness() {
        List<TestCut> cuts = new ArrayList<>();
        for (int i = 0; i < NOISE.length; i++) {
            AbrasiveJet jet = CalibrationTest.jet(350, 300);
            double feed = MODEL.separationFeedSi(jet, ALLOY, THICKNESS_MM[i] / 1e3)
                    * Math.exp(NOISE[i] - 0.1 * Math.log(THICKNESS_MM[i]));
            cuts.add(TestCut.separated(jet, millimetres(THICKNESS_MM[i]), Kind.SPEED.of(feed)));
        }
        return cuts;
    }

    private static List<TestCut> ofPressure() {
        List<TestCut> cuts = new ArrayList<>();
        for (int i = 0; i < NOISE.length; i++) {
            AbrasiveJet jet = CalibrationTest.jet(PRESSURE_MPA[i], 300);
            double feed = MODEL.separationFeedSi(jet, ALLOY, 0.01) * Math.exp(NOISE[i]);
            cuts.add(TestCut.separated(jet, millimetres(10), Kind.SPEED.of(feed)));
        }
        return cuts;
    }

    private static SimpleRegression line(List<TestCut> cuts, ToDoubleFunction<TestCut> x, ToDoubleFunction<TestCut> y) {
        SimpleRegression line = new SimpleRegression();
        cuts.forEach(cut -> line.addData(x.applyAsDouble(cut), y.applyAsDouble(cut)));
        return line;
    }

    private static SimpleRegression ofLogFeed() {
        return line(ofThickness(), cut -> Math.log(cut.thicknessSi()), cut -> Math.log(cut.feedSi()));
    }

    private static double logLikelihood(double squares, int count) {
        return -count / 2.0 * (Math.log(2 * Math.PI * squares / count) + 1);
    }

    private static double quantile(int freedom) {
        return new TDistribution(null, freedom).inverseCumulativeProbability(0.975);
    }

    @Test
    void aFreeFeedExponentIsTheSlopeOfTheLine() {
        SimpleRegression line = ofLogFeed();
        CutFit fit = Calibration.ofMachinability(ALLOY, MODEL, FeedExponent.FEED)
                .fit(ofThickness())
                .fit();
        double half = quantile(5) * line.getSlopeStdErr();

        assertThat(fit.value("feed exponent")).isCloseTo(-line.getSlope(), within(1e-7));
        assertThat(fit.standardError("feed exponent")).isCloseTo(line.getSlopeStdErr(), within(1e-5));
        assertThat(fit.lower("feed exponent", 0.95)).isCloseTo(-line.getSlope() - half, within(1e-4));
        assertThat(fit.upper("feed exponent", 0.95)).isCloseTo(-line.getSlope() + half, within(1e-4));
        assertThat(fit.scatter() * fit.value("feed exponent"))
                .isCloseTo(Math.sqrt(line.getMeanSquareError()), within(1e-6));
        double log = logLikelihood(line.getSumSquaredErrors(), 7);
        assertThat(fit.logLikelihood()).isCloseTo(log, within(1e-6));
        assertThat(fit.fittedNumbers()).isEqualTo(3);
        assertThat(fit.aicc()).isCloseTo(-2 * log + 6 + 24 / 3.0, within(1e-5));
        assertThat(fit.degreesOfFreedom()).isEqualTo(5);
        assertThat(fit.method()).isEqualTo(CutFit.Method.LIKELIHOOD);
        assertThat(fit.plates()).isZero();
        assertThat(fit.plateScatter()).isZero();
        assertThat(fit.names()).containsExactly("machinability", "feed exponent");
    }

    /** Residuals, leverages and deleted residuals of the line at each cut. */
    @Test
    void influenceIsThatOnTheLine() {
        SimpleRegression line = ofLogFeed();
        CutFit fit = Calibration.ofMachinability(ALLOY, MODEL, FeedExponent.FEED)
                .fit(ofThickness())
                .fit();
        List<TestCut> cuts = ofThickness();
        double mean = cuts.stream()
                .mapToDouble(cut -> Math.log(cut.thicknessSi()))
                .average()
                .orElseThrow();
        for (int i = 0; i < 7; i++) {
            double x = Math.log(cuts.get(i).thicknessSi());
            double residual = Math.log(cuts.get(i).feedSi()) - line.predict(x);
            double leverage = 1 / 7.0 + (x - mean) * (x - mean) / line.getXSumSquares();
            double rest = 1 - leverage;
            double without = (line.getSumSquaredErrors() - residual * residual / rest) / 4;

            assertThat(fit.residuals()[i]).isCloseTo(residual, within(1e-6));
            assertThat(fit.leverages()[i]).isCloseTo(leverage, within(1e-6));
            assertThat(fit.studentizedResiduals()[i]).isCloseTo(residual / Math.sqrt(without * rest), within(1e-4));
            assertThat(fit.cookDistances()[i])
                    .isCloseTo(
                            residual * residual * leverage / (2 * line.getMeanSquareError() * rest * rest),
                            within(1e-4));
            assertThat(fit.weights()[i]).isEqualTo(1);
        }
    }

    /** Mean and further value of the line at a thickness, with Student's intervals. */
    @Test
    void feedRatesHaveTheIntervalsOfTheLine() {
        SimpleRegression line = ofLogFeed();
        CalibratedFeed own =
                Calibration.ofMachinability(ALLOY, MODEL, FeedExponent.FEED).fit(ofThickness());
        AbrasiveJet jet = CalibrationTest.jet(350, 300);
        double mean = ofThickness().stream()
                .mapToDouble(cut -> Math.log(cut.thicknessSi()))
                .average()
                .orElseThrow();
        for (double thicknessMm : new double[] {4, 15, 60}) {
            double x = Math.log(thicknessMm / 1e3);
            double ofMean = line.getMeanSquareError() * (1 / 7.0 + (x - mean) * (x - mean) / line.getXSumSquares());
            Estimate<Speed> average = own.meanFeed(jet, millimetres(thicknessMm), 1);
            Estimate<Speed> next = own.feed(jet, Workpiece.of(own.material(), millimetres(thicknessMm)), 1);

            assertThat(Math.log(average.si())).isCloseTo(line.predict(x), within(1e-6));
            assertThat(average.relativeUncertainty()).isCloseTo(Math.sqrt(ofMean), within(1e-5));
            assertThat(average.degreesOfFreedom()).isEqualTo(5);
            assertThat(next.si()).isCloseTo(average.si(), within(1e-12));
            assertThat(next.relativeUncertainty())
                    .isCloseTo(Math.sqrt(ofMean + line.getMeanSquareError()), within(1e-5));
            // a quality index of 2 is cut as twice the thickness
            assertThat(own.meanFeed(jet, millimetres(thicknessMm / 2), 2).si()).isCloseTo(average.si(), within(1e-9));
            double t = new TDistribution(null, 5).inverseCumulativeProbability(0.9);
            assertThat(Kind.SPEED.si(own.feedThatSeparates(jet, millimetres(thicknessMm), 0.9)))
                    .isCloseTo(next.si() * Math.exp(-t * next.relativeUncertainty()), within(1e-9));
        }
    }

    /** The logarithm of depth over the model's, against the logarithm of the pressure over 345 MPa. */
    @Test
    void aFreePressureExponentIsALineTooWithItsCovariance() {
        SimpleRegression line = line(
                ofPressure(),
                cut -> Math.log(cut.jet().pressureSi() / 345e6),
                cut -> Math.log(cut.feedSi() / MODEL.separationFeedSi(cut.jet(), ALLOY, 0.01)) / FEED_EXPONENT);
        CutFit fit = Calibration.ofMachinability(ALLOY, MODEL, FeedExponent.PRESSURE)
                .fit(ofPressure())
                .fit();
        double number = 115 * Math.exp(line.getIntercept());
        double mean = ofPressure().stream()
                .mapToDouble(cut -> Math.log(cut.jet().pressureSi() / 345e6))
                .average()
                .orElseThrow();
        double covariance = -mean * line.getMeanSquareError() / line.getXSumSquares();

        assertThat(fit.value("pressure exponent")).isCloseTo(1.594 + line.getSlope(), within(1e-9));
        assertThat(fit.standardError("pressure exponent")).isCloseTo(line.getSlopeStdErr(), within(1e-9));
        assertThat(fit.value("machinability")).isCloseTo(number, within(1e-7));
        assertThat(fit.standardError("machinability")).isCloseTo(number * line.getInterceptStdErr(), within(1e-7));
        assertThat(fit.covariance("machinability", "pressure exponent")).isCloseTo(number * covariance, within(1e-7));
        assertThat(fit.covariance("machinability", "machinability"))
                .isCloseTo(Math.pow(number * line.getInterceptStdErr(), 2), within(1e-7));
        assertThat(fit.correlation("pressure exponent", "machinability"))
                .isCloseTo(covariance / line.getSlopeStdErr() / line.getInterceptStdErr(), within(1e-9));
        double half = quantile(5) * line.getInterceptStdErr();
        assertThat(fit.lower("machinability", 0.95)).isCloseTo(number * Math.exp(-half), within(1e-6));
        assertThat(fit.upper("machinability", 0.95)).isCloseTo(number * Math.exp(half), within(1e-6));
        assertThat(fit.method().label()).isEqualTo("least squares");
        assertThat(fit.aicc())
                .isCloseTo(
                        -2 * (logLikelihood(line.getSumSquaredErrors(), 7) - 7 * Math.log(1.15)) + 6 + 8, within(1e-8));
    }

    @Test
    void theDescriptionHasWhatTheFitAnswers() {
        CutFit fit = Calibration.ofMachinability(ALLOY, MODEL, FeedExponent.PRESSURE)
                .fit(ofPressure())
                .fit();
        Map<String, Object> all = fit.describe();
        Object parameters = java.util.Objects.requireNonNull(all.get("parameters"));

        assertThat(all)
                .containsEntry("scatter", fit.scatter())
                .containsEntry("degrees_of_freedom", 5.0)
                .containsEntry("log_likelihood", fit.logLikelihood())
                .containsEntry("plate_scatter", 0.0);
        assertThat(parameters.toString())
                .contains(
                        "pressure_exponent",
                        String.valueOf(fit.standardError("pressure exponent")),
                        String.valueOf(fit.lower("pressure exponent", 0.95)),
                        String.valueOf(fit.upper("pressure exponent", 0.95)),
                        String.valueOf(fit.value("machinability")));
        assertThat(fit.toString()).contains("machinability", "from 7 cuts by least squares");
    }

    /** The feed rate goes with one over energy and thickness: the mean of the logarithms of what each cut says. */
    @Test
    void theSpecificEnergyIsAGeometricMean() {
        List<TestCut> cuts = ofThickness();
        CutFit fit = Calibration.ofSpecificEnergy(ALLOY).fit(cuts).fit();
        double published = SpecificEnergyFeed.ofSteel().specificEnergy(ALLOY).si();
        double sum = 0;
        double squares = 0;
        for (TestCut cut : cuts) {
            double log = Math.log(
                    SpecificEnergyFeed.ofSteel().separationFeedSi(cut.jet(), ALLOY, cut.thicknessSi()) / cut.feedSi());
            sum += log;
            squares += log * log;
        }
        double deviation = Math.sqrt((squares - sum * sum / 7) / 6);
        String name = fit.names().get(0);

        assertThat(Math.log(fit.values()[0] / published)).isCloseTo(sum / 7, within(1e-7));
        assertThat(fit.standardError(name) / fit.values()[0]).isCloseTo(deviation / Math.sqrt(7), within(1e-6));
        assertThat(fit.scatter()).isCloseTo(deviation, within(1e-6));
        assertThat(fit.logLikelihood()).isCloseTo(logLikelihood(deviation * deviation * 6, 7), within(1e-6));
        assertThat(Math.log(fit.upper(name, 0.95) / fit.values()[0]))
                .isCloseTo(quantile(6) * deviation / Math.sqrt(7), within(1e-5));
        assertThat(fit.fittedNumbers()).isEqualTo(2);
    }

    /** Grooves say the logarithm of the depth, cut through or not: the same number, and a scatter of depth. */
    @Test
    void groovesAndCutsSayTheSame() {
        AbrasiveJet jet = CalibrationTest.jet(350, 300);
        List<TestCut> cuts = new ArrayList<>();
        double squares = 0;
        for (double noise : NOISE) {
            double depth = MODEL.separationDepthSi(jet, ALLOY, 0.005) * Math.exp(noise);
            cuts.add(TestCut.groove(jet, Kind.LENGTH.of(depth), Kind.SPEED.of(0.005)));
            squares += noise * noise;
        }
        CutFit fit = Calibration.ofMachinability(ALLOY, MODEL).fit(cuts).fit();

        assertThat(fit.value("machinability")).isCloseTo(115, within(1e-6));
        assertThat(fit.scatter()).isCloseTo(Math.sqrt(squares / 6), within(1e-9));
        assertThat(fit.residuals()).containsExactly(NOISE, within(1e-9));
        assertThat(fit.logLikelihood()).isCloseTo(logLikelihood(squares, 7), within(1e-9));
    }
}

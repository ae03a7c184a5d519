package dev.waterjet.calibrate;

import static dev.waterjet.measure.Measures.celsius;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.millimetres;
import static dev.waterjet.measure.Measures.millimetresPerMinute;
import static dev.waterjet.measure.Measures.seconds;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.Refusals;
import dev.waterjet.feed.PlainWaterFeed;
import dev.waterjet.fit.Fit;
import dev.waterjet.hydraulics.Orifice;
import dev.waterjet.hydraulics.WaterJet;
import dev.waterjet.kerf.LagGeometry;
import dev.waterjet.kerf.LagModel;
import dev.waterjet.material.Material;
import dev.waterjet.material.Materials;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.pierce.PierceModel;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import javax.measure.quantity.Length;
import org.apache.commons.math3.stat.descriptive.moment.StandardDeviation;
import org.apache.commons.math3.stat.regression.SimpleRegression;
import org.junit.jupiter.api.Test;

/** Models fitted to measurements, against the sums of least squares. */
class MeasurementFormulasTest {

    private static QuantityArray<Length> mm(double... numbers) {
        return QuantityArray.ofSi(
                Kind.LENGTH, Arrays.stream(numbers).map(v -> v / 1e3).toArray());
    }

    /** Through zero: k = sum d l / sum d^2, with its standard error, and 30 % as no other line was read. */
    @Test
    void oneDragLineIsALineThroughZero() {
        double[] depths = {5, 10, 15, 20, 30};
        double[] lags = {0.2, 0.7, 1.8, 2.9, 7};
        SimpleRegression line = new SimpleRegression(false);
        for (int i = 0; i < 5; i++) {
            line.addData(depths[i] * depths[i] / 40, lags[i]);
        }
        LagMeasurement plain = LagMeasurement.of(millimetres(40));
        FittedModel<LagModel> fitted = LagMeasurement.fit(List.of(plain, plain.withLags(mm(depths), mm(lags))));
        LagModel model = fitted.model();

        assertThat(model.coefficient()).isCloseTo(line.getSlope(), within(1e-7));
        assertThat(model.relativeUncertainty())
                .isCloseTo(Math.hypot(0.3, line.getSlopeStdErr() / line.getSlope()), within(1e-6));
        assertThat(fitted.fit().observations()).isEqualTo(5);
        assertThat(model.evidence().source().toString()).contains("5 points of one line");
        assertThat(fitted.toString()).endsWith("fitted to 5 observations");
        assertThat(fitted.describe()).containsKeys("model", "fit");
    }

    /** Geometric mean of the slopes; one more line has their deviation and that of the mean. */
    @Test
    void severalDragLinesAreOneNumberEach() {
        double[] slopes = {0.21, 0.3, 0.27, 0.36};
        List<LagMeasurement> lines = new ArrayList<>();
        for (int l = 0; l < 4; l++) {
            double k = slopes[l];
            double depth = 30 + 5 * l;
            double[] lags =
                    IntStream.of(5, 12, 20).mapToDouble(z -> k * z * z / depth).toArray();
            lines.add(LagMeasurement.of(millimetres(depth)).withLags(mm(5, 12, 20), mm(lags)));
        }
        double[] logs = Arrays.stream(slopes).map(Math::log).toArray();
        double deviation = new StandardDeviation().evaluate(logs);
        LagModel model = LagMeasurement.fit(lines).model();

        assertThat(Math.log(model.coefficient()))
                .isCloseTo(Arrays.stream(logs).average().orElseThrow(), within(1e-8));
        assertThat(model.relativeUncertainty()).isCloseTo(Math.sqrt(1.25) * deviation, within(1e-7));
        assertThat(model.evidence().source().toString()).contains("4 lines");
        lines.set(2, LagMeasurement.of(millimetres(40)).withLags(mm(5, 12), mm(0, 0)));
        assertThat(Refusals.assertRefused(() -> LagMeasurement.fit(lines), "line-without-lag")
                        .parameters())
                .containsEntry("line", 3L);
        assertThat(lines.get(0).describe())
                .containsKeys("depths_m", "lags_m")
                .containsEntry("separation_depth_m", 0.03);
        assertThat(lines.get(0).toString()).isEqualTo("drag line of 3 readings, separation depth 30 mm");
    }

    private static final double[] RADII = {4e-3, 6e-3, 10e-3, 5e-3};

    private static List<ArcMeasurement> arcs(LagGeometry geometry, double lagM, double... readings) {
        List<ArcMeasurement> arcs = new ArrayList<>();
        for (int i = 0; i < 4; i++) {
            double sign = geometry == LagGeometry.TRACTRIX ? -1 : 1;
            double shift = sign * geometry.arcErrorSi(lagM, RADII[i]) + readings[i];
            arcs.add(ArcMeasurement.of(millimetres(20), millimetres(50), Kind.LENGTH.of(RADII[i]))
                    .withShift(Kind.LENGTH.of(shift)));
        }
        return arcs;
    }

    /** Sum of squares of the shifts about those of a coefficient: a tangent is outwards, a tractrix inwards. */
    private static double squares(LagGeometry geometry, List<ArcMeasurement> arcs, double coefficient) {
        double sum = 0;
        for (int i = 0; i < 4; i++) {
            double lag = coefficient * 0.02 * 0.02 / 0.05;
            double error = geometry == LagGeometry.TANGENT
                    ? Math.sqrt(RADII[i] * RADII[i] + lag * lag) - RADII[i]
                    : Math.sqrt(RADII[i] * RADII[i] - lag * lag) - RADII[i];
            sum += Math.pow(Kind.LENGTH.si(arcs.get(i).shift()) - error, 2);
        }
        return sum;
    }

    @Test
    void arcsAreFittedByLeastSquares() {
        for (LagGeometry geometry : new LagGeometry[] {LagGeometry.TANGENT, LagGeometry.TRACTRIX}) {
            List<ArcMeasurement> arcs = arcs(geometry, 2e-3, 8e-6, -5e-6, 3e-6, -9e-6);
            ArcMeasurement.Result result = ArcMeasurement.fit(arcs);
            LagModel model = result.lag().model();
            double k = model.coefficient();
            double h = 1e-3;
            double middle = squares(geometry, arcs, k);
            double slope = (squares(geometry, arcs, k + h) - squares(geometry, arcs, k - h)) / (2 * h);
            double curvature = (squares(geometry, arcs, k + h) + squares(geometry, arcs, k - h) - 2 * middle) / h / h;

            assertThat(result.geometry()).isEqualTo(geometry);
            assertThat(slope / curvature).isCloseTo(0, within(1e-5));
            double error = Math.sqrt(middle / 3 * 2 / curvature);
            assertThat(model.relativeUncertainty()).isCloseTo(error / k * Math.sqrt(5), within(0.01 * error / k));
            assertThat(result.describe()).containsKeys("geometry", "lag");
            assertThat(model.evidence().source().toString()).contains("4 arcs");
        }
        ArcMeasurement one = arcs(LagGeometry.TANGENT, 2e-3, 0, 0, 0, 0).get(0);
        assertThat(one.describe())
                .containsEntry("thickness_m", 0.02)
                .containsEntry("separation_depth_m", 0.05)
                .containsEntry("radius_m", 4e-3)
                .containsKey("shift_m");
    }

    /** A slope through zero that is twice its error is clear; by hand for four arcs with readings to both sides. */
    @Test
    void shiftsHaveToBeTwiceTheirError() {
        for (double share : new double[] {0.5, 0.95, 1.05, 2}) {
            List<ArcMeasurement> clean = arcs(LagGeometry.TANGENT, 2e-3, 0, 0, 0, 0);
            double k = LagModel.standard().coefficient();
            double[] expected = new double[4];
            double squares = 0;
            for (int i = 0; i < 4; i++) {
                expected[i] = LagGeometry.TANGENT.arcErrorSi(k * 0.02 * 0.02 / 0.05, RADII[i]);
                squares += expected[i] * expected[i];
            }
            // readings across the expected shifts: e x e = 0
            double[] across = {expected[1], -expected[0], expected[3], -expected[2]};
            double slope = 0.05;
            // error of the slope: root of sum of squares of the readings over 3, over that of the shifts
            double factor = slope / 2 * Math.sqrt(3) / share;
            List<ArcMeasurement> read = new ArrayList<>();
            for (int i = 0; i < 4; i++) {
                read.add(clean.get(i).withShift(Kind.LENGTH.of(slope * expected[i] + factor * across[i])));
            }
            assertThat(squares).isPositive();
            String code = Refusals.of(() -> ArcMeasurement.fit(read));
            if (share < 1) {
                assertThat(code).isEqualTo("arcs-without-lag");
            } else {
                assertThat(code).isEqualTo("no refusal");
            }
        }
    }

    private static List<PierceMeasurement> pierces(double[] depthsMm, double[] noise, double dampingMm) {
        List<PierceMeasurement> pierces = new ArrayList<>();
        for (int i = 0; i < depthsMm.length; i++) {
            double time = depthsMm[i] / 2 * (1 + depthsMm[i] / (2 * dampingMm)) * Math.exp(noise[i]);
            pierces.add(PierceMeasurement.of(millimetres(depthsMm[i]), seconds(time)));
        }
        return pierces;
    }

    /** Depths of a factor of two show the damping; a little less do not, and the rate is a geometric mean. */
    @Test
    void theDampingNeedsThreePiercesOverAFactorOfTwo() {
        double[] none = new double[3];
        assertThat(damping(pierces(new double[] {5, 7, 10}, none, 20))).isCloseTo(20, within(1e-4));
        assertThat(damping(pierces(new double[] {5, 7, 9.9}, none, 20))).isCloseTo(7.5, within(1e-12));
        assertThat(damping(pierces(new double[] {5, 10}, none, 20))).isCloseTo(7.5, within(1e-12));
    }

    private static double damping(List<PierceMeasurement> pierces) {
        return 1e3
                * Kind.LENGTH.si(
                        PierceMeasurement.fit(pierces).model().damping().orElseThrow());
    }

    @Test
    void theRateWithAGivenDampingIsAGeometricMean() {
        double[] depths = {5, 7, 9};
        double[] noise = {0.1, -0.06, 0.05};
        FittedModel<PierceModel> fitted = PierceMeasurement.fit(pierces(depths, noise, 8), millimetres(8));
        double mean = Arrays.stream(noise).average().orElseThrow();

        assertThat(Kind.SPEED.si(fitted.model().rate().orElseThrow())).isCloseTo(2e-3 * Math.exp(-mean), within(1e-9));
        assertThat(fitted.model().relativeUncertainty())
                .isCloseTo(new StandardDeviation().evaluate(noise), within(1e-7));
        assertThat(fitted.model().evidence().source().toString()).contains("3 pierces");
        PierceMeasurement first = pierces(depths, noise, 8).get(0).withPlate("P4");
        assertThat(first.describe())
                .containsEntry("depth_m", 0.005)
                .containsEntry("plate", "P4")
                .containsEntry("time_s", Kind.TIME.si(first.time()));
        assertThat(first.toString()).startsWith("5 mm pierced in ");
    }

    /** Both numbers: the sum of squares of the logarithms falls to no side, and its curvature gives the errors. */
    @Test
    void rateAndDampingAreLeastSquaresOfTheLogarithms() {
        double[] depths = {3, 6, 12, 25, 40, 60};
        double[] noise = {0.02, -0.03, 0.01, 0.025, -0.02, 0.015};
        List<PierceMeasurement> pierces = pierces(depths, noise, 12);
        FittedModel<PierceModel> fitted = PierceMeasurement.fit(pierces);
        double rate = Math.log(Kind.SPEED.si(fitted.model().rate().orElseThrow()));
        double damping = Math.log(Kind.LENGTH.si(fitted.model().damping().orElseThrow()));
        double h = 1e-4;

        assertThat(squares(pierces, rate + h, damping) - squares(pierces, rate - h, damping))
                .isCloseTo(0, within(1e-9));
        assertThat(squares(pierces, rate, damping + h) - squares(pierces, rate, damping - h))
                .isCloseTo(0, within(1e-9));
        assertThat(fitted.model().relativeUncertainty())
                .isCloseTo(Math.sqrt(squares(pierces, rate, damping) / 4), within(1e-7));
    }

    private static double squares(List<PierceMeasurement> pierces, double logRate, double logDamping) {
        double sum = 0;
        for (PierceMeasurement pierce : pierces) {
            double depth = Kind.LENGTH.si(pierce.depth());
            double time = depth / Math.exp(logRate) * (1 + depth / (2 * Math.exp(logDamping)));
            sum += Math.pow(Math.log(time / Kind.TIME.si(pierce.time())), 2);
        }
        return sum;
    }

    /** So much scatter that the coefficient of the square is less than its error: the typical damping is kept. */
    @Test
    void aDampingThatTheScatterHidesIsNotFitted() {
        double[] depths = {5, 6, 8, 10, 12};
        double[] noise = {0.3, -0.35, 0.25, -0.3, 0.2};

        assertThat(damping(pierces(depths, noise, 30))).isCloseTo(7.5, within(1e-12));
        assertThat(damping(pierces(depths, new double[5], 30))).isCloseTo(30, within(1e-3));
    }

    private static final Material SOFT = Materials.standard().all().iterator().next();

    private static PlainWaterCut water(double pressureMpa, double depthMm, double feed) {
        return PlainWaterCut.of(
                WaterJet.of(Orifice.sapphire(millimetres(0.15)), megapascals(pressureMpa), celsius(20)),
                millimetres(5),
                millimetres(depthMm),
                millimetresPerMinute(feed));
    }

    /** Residuals of the cuts alone, over the exponent of the feed rate: the scatter of a feed rate. */
    @Test
    void theScatterOfWaterCutsIsThatOfTheirResiduals() {
        List<PlainWaterCut> cuts =
                List.of(water(350, 30, 4000), water(350, 12, 4000), water(350, 21, 6000), water(350, 9, 6000));
        FittedModel<PlainWaterFeed> fitted = PlainWaterCut.fit(SOFT, cuts, 0.5);
        Fit fit = fitted.fit();
        double sum = 0;
        for (int i = 0; i < 4; i++) {
            sum += fit.residuals()[i] * fit.residuals()[i];
        }

        assertThat(fitted.model().relativeUncertainty(SOFT))
                .isCloseTo(Math.sqrt(sum / 4) / fit.value("exponent of the feed rate"), within(1e-12));
        assertThat(fitted.model().relativeUncertainty(SOFT)).isGreaterThan(0.3);
        assertThat(fit.observations()).isEqualTo(7);
        assertThat(cuts.get(0).describe())
                .containsEntry("stand_off_m", 0.005)
                .containsEntry("depth_m", 0.03)
                .containsKeys("jet", "feed_m_per_s");
        assertThat(cuts.get(0).toString()).isEqualTo("30 mm cut by pure water at 4000 mm/min");
        assertThat(PlainWaterCut.fit(SOFT, cuts.subList(0, 2), 1).fit().observations())
                .isEqualTo(5);
        Refusals.assertRefused(
                () -> PlainWaterCut.fit(SOFT, cuts, 1.01), "must-be-at-most", "relative deviation of the depth", 1);
    }
}

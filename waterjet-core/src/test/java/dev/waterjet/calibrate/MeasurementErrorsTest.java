package dev.waterjet.calibrate;

import static dev.waterjet.measure.Measures.celsius;
import static dev.waterjet.measure.Measures.gramsPerMinute;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.millimetres;
import static dev.waterjet.measure.Measures.millimetresPerMinute;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.feed.CutConditions;
import dev.waterjet.feed.MachinabilityFeed;
import dev.waterjet.feed.PlainWaterFeed;
import dev.waterjet.fit.Fit;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.jet.MixingModel;
import dev.waterjet.kerf.KerfModel;
import dev.waterjet.material.Material;
import dev.waterjet.material.Materials;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.surface.RoughnessModel;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.Test;

/** Errors of fitted numbers that hold for another specimen, and numbers with a prior as the top of a sum of squares. */
class MeasurementErrorsTest {

    private static final AbrasiveJet JET = CalibrationTest.jet(380, 400);
    private static final String TEXTURE = "Ra at the entry over the mean grain size";
    private static final String STRIATIONS = "growth of the striations over the bore";
    private static final String DOSE = "spread of the dose over the bore";
    private static final String SLOPE = "slope of the edge of the jet";

    private static double number(Described model, String key) {
        return ((Number) Objects.requireNonNull(model.describe().get(key))).doubleValue();
    }

    /** Jackknife by hand: (n - 1)/n times the sum of squares of the logarithms without each specimen. */
    private static <T> double jackknife(List<T> all, Function<List<T>, Fit> fit, String parameter) {
        double[] logs = new double[all.size()];
        for (int i = 0; i < logs.length; i++) {
            List<T> others = new ArrayList<>(all);
            others.remove(i);
            logs[i] = Math.log(fit.apply(others).value(parameter));
        }
        double mean = Arrays.stream(logs).average().orElseThrow();
        double sum = Arrays.stream(logs).map(log -> (log - mean) * (log - mean)).sum();
        return Math.sqrt((logs.length - 1.0) / logs.length * sum);
    }

    private static double relative(Fit fit, String parameter) {
        return fit.standardError(parameter) / fit.value(parameter);
    }

    private static RoughnessMeasurement surface(double factor, double... ra) {
        double[] depths = {1e-3, 4e-3, 8e-3, 12e-3, 16e-3, 20e-3};
        return RoughnessMeasurement.of(JET, millimetres(20))
                .withRa(
                        QuantityArray.ofSi(Kind.LENGTH, Arrays.copyOf(depths, ra.length)),
                        QuantityArray.ofSi(
                                Kind.LENGTH,
                                Arrays.stream(ra).map(r -> factor * r * 1e-6).toArray()));
    }

    private static void hasErrors(List<RoughnessMeasurement> surfaces, double texture, double striations) {
        RoughnessModel model = RoughnessMeasurement.fit(surfaces).model();
        assertThat(number(model, "texture_ratio_relative_uncertainty")).isCloseTo(texture, within(1e-6));
        assertThat(number(model, "striation_growth_relative_uncertainty")).isCloseTo(striations, within(1e-6));
    }

    @Test
    void roughnessIsAsUncertainAsItsSurfacesOrItsReadings() {
        List<RoughnessMeasurement> three = List.of(
                surface(0.7, 3.1, 3.5, 4.2, 12, 30, 45),
                surface(1, 3.0, 3.6, 4.1, 13, 28, 47),
                surface(1.5, 3.1, 3.5, 4.2, 12, 30, 45));
        Function<List<RoughnessMeasurement>, Fit> fit =
                all -> RoughnessMeasurement.fit(all).fit();

        hasErrors(three, jackknife(three, fit, TEXTURE), jackknife(three, fit, STRIATIONS));
        assertThat(jackknife(three, fit, TEXTURE)).isGreaterThan(relative(fit.apply(three), TEXTURE));
        // of one or two surfaces factors of 1.5 and 2 are assumed, unless the readings scatter by more
        hasErrors(three.subList(0, 2), Math.log(1.5), Math.log(2));
        List<RoughnessMeasurement> poor = List.of(surface(1, 1, 9, 2, 60, 5));
        Fit found = fit.apply(poor);
        assertThat(relative(found, TEXTURE)).isGreaterThan(Math.log(1.5));
        hasErrors(poor, relative(found, TEXTURE), Math.max(Math.log(2), relative(found, STRIATIONS)));
        assertThat(three.get(0).describe())
                .containsKeys("jet", "depths_m", "ra_m")
                .containsEntry("separation_depth_m", 0.02);
        assertThat(three.get(0).toString()).isEqualTo("6 roughness readings, separation depth 20 mm");
    }

    private static KerfMeasurement kerf(double standOffMm, double depthMm, double offsetMm) {
        CutConditions cut = CutConditions.of(
                JET.withHead(JET.head().withStandOff(millimetres(standOffMm))),
                Workpiece.of(Materials.standard().get("mild-steel"), millimetres(20)),
                MachinabilityFeed.published());
        KerfMeasurement measured = KerfMeasurement.of(cut, millimetres(depthMm));
        for (double at : new double[] {0, 0.01, 0.02}) {
            double width = 2 * KerfModel.standard().halfWidthSi(cut, depthMm / 1e3, at) + offsetMm / 1e3;
            measured = measured.withWidthAt(Kind.LENGTH.of(at), Kind.LENGTH.of(width));
        }
        return measured;
    }

    @Test
    void aKerfIsAsUncertainAsItsCutsOrItsWidths() {
        List<KerfMeasurement> cuts =
                List.of(kerf(1.5, 30, 0.04), kerf(4, 30, -0.03), kerf(2, 120, 0.05), kerf(4, 120, -0.05));
        Function<List<KerfMeasurement>, Fit> fit =
                all -> KerfMeasurement.fit(all).fit();
        KerfModel model = KerfMeasurement.fit(cuts).model();
        Fit whole = fit.apply(cuts);

        assertThat(number(model, "dose_relative_uncertainty"))
                .isCloseTo(Math.max(jackknife(cuts, fit, DOSE), relative(whole, DOSE)), within(1e-6));
        assertThat(number(model, "half_angle_relative_uncertainty"))
                .isCloseTo(Math.max(jackknife(cuts, fit, SLOPE), relative(whole, SLOPE)), within(1e-6));
        List<KerfMeasurement> three = cuts.subList(0, 3);
        assertThat(number(KerfMeasurement.fit(three).model(), "dose_relative_uncertainty"))
                .isCloseTo(Math.max(jackknife(three, fit, DOSE), relative(fit.apply(three), DOSE)), within(1e-6));
        assertThat(jackknife(three, fit, DOSE)).isGreaterThan(relative(fit.apply(three), DOSE));
        List<KerfMeasurement> two = cuts.subList(1, 3);
        KerfModel few = KerfMeasurement.fit(two).model();
        assertThat(number(few, "dose_relative_uncertainty")).isCloseTo(relative(fit.apply(two), DOSE), within(1e-9));
        assertThat(number(few, "half_angle_relative_uncertainty"))
                .isCloseTo(relative(fit.apply(two), SLOPE), within(1e-9));
        assertThat(cuts.get(0).toString()).endsWith("separation depth 30 mm").startsWith("3 kerf widths");
        assertThat(cuts.get(0).describe()).containsKeys("jet", "workpiece", "depths_m", "widths_m");
        assertThat(cuts.get(0).jet()).isEqualTo(cuts.get(0).cut().jet());
    }

    private static ParticleSpeedMeasurement speed(double flow, double metresPerSecond) {
        AbrasiveJet jet = CalibrationTest.jet(380, flow);
        return ParticleSpeedMeasurement.of(jet, Kind.SPEED.of(metresPerSecond));
    }

    /** Slope of a sum of squares by the logarithm of a number, in standard errors. */
    private static double slope(ToDoubleFunction<double[]> squares, double[] at, int j) {
        double[] up = at.clone();
        double[] down = at.clone();
        up[j] *= Math.exp(1e-4);
        down[j] *= Math.exp(-1e-4);
        double first = (squares.applyAsDouble(up) - squares.applyAsDouble(down)) / 2e-4;
        double second =
                (squares.applyAsDouble(up) + squares.applyAsDouble(down) - 2 * squares.applyAsDouble(at)) / 1e-8;
        return first / Math.sqrt(second);
    }

    /** Deviations of the prior: a factor of e^0.9 for the drag and of 2 for the wall. */
    @Test
    void particleSpeedsAndTheirPriorAreOneSumOfSquares() {
        List<ParticleSpeedMeasurement> speeds = List.of(speed(250, 480), speed(300, 500), speed(350, 450));
        FittedModel<MixingModel> fitted = ParticleSpeedMeasurement.fit(speeds, 0.05);
        Fit fit = fitted.fit();
        assertThat(number(fitted.model(), "contact_drag_log_deviation"))
                .isCloseTo(relative(fit, "contact drag"), within(1e-12));
        assertThat(number(fitted.model(), "wall_coefficient_log_deviation"))
                .isCloseTo(relative(fit, "wall coefficient"), within(1e-12));
        assertThat(number(fitted.model(), "correlation"))
                .isCloseTo(fit.correlation("contact drag", "wall coefficient"), within(1e-12));
        ToDoubleFunction<double[]> squares = at -> {
            MixingModel model =
                    MixingModel.of(at[0], at[1], MixingModel.standard().evidence());
            double sum = Math.pow(Math.log(at[0] / MixingModel.standard().contactDrag()) / 0.9, 2)
                    + Math.pow(Math.log(at[1] / MixingModel.standard().wallCoefficient()) / Math.log(2), 2);
            for (ParticleSpeedMeasurement one : speeds) {
                sum += Math.pow(Math.log(model.particleSpeedSi(one.jet()) / Kind.SPEED.si(one.speed())) / 0.05, 2);
            }
            return sum;
        };
        double[] at = fit.values();

        assertThat(at).hasSize(2);
        assertThat(slope(squares, at, 0)).isCloseTo(0, within(1e-3));
        assertThat(slope(squares, at, 1)).isCloseTo(0, within(1e-3));
        assertThat(speeds.get(0).describe())
                .containsEntry("speed_m_per_s", 480.0)
                .containsKey("jet");
        assertThat(speeds.get(0).toString()).startsWith("particles of 480 m/s from a ");
    }

    /** Four speeds over a factor of three in loading tell crowding; a little less do not. */
    @Test
    void crowdingNeedsAFactorOfThreeInLoading() {
        MixingModel truth = MixingModel.standard().withCrowding(0.4);
        assertThat(crowding(truth, 100, 150, 220, 301)).isTrue();
        assertThat(crowding(truth, 100, 150, 220, 299)).isFalse();
        assertThat(crowding(truth, 100, 200, 301)).isFalse();
    }

    private static boolean crowding(MixingModel truth, double... flows) {
        List<ParticleSpeedMeasurement> speeds = Arrays.stream(flows)
                .mapToObj(flow -> {
                    AbrasiveJet jet = JET.withAbrasiveFlow(gramsPerMinute(flow));
                    return ParticleSpeedMeasurement.of(jet, Kind.SPEED.of(truth.particleSpeedSi(jet)));
                })
                .toList();
        return ParticleSpeedMeasurement.fit(speeds, 0.005)
                .model()
                .crowdingScale()
                .isPresent();
    }

    private static final Material SOFT = Materials.standard().all().iterator().next();

    private static PlainWaterCut water(double pressureMpa, double boreMm, double depthMm, double feed) {
        return PlainWaterCut.of(
                dev.waterjet.hydraulics.WaterJet.of(
                        dev.waterjet.hydraulics.Orifice.sapphire(millimetres(boreMm)),
                        megapascals(pressureMpa),
                        celsius(20)),
                millimetres(5),
                millimetres(depthMm),
                millimetresPerMinute(feed));
    }

    /** Exponents of bore, pressure and feed rate have priors of 1, 1.5 and 0.9 within 0.3, 0.3 and 0.2. */
    @Test
    void waterCutsAndTheirPriorAreOneSumOfSquares() {
        List<PlainWaterCut> cuts =
                List.of(water(300, 0.15, 20, 4000), water(350, 0.2, 29, 5000), water(320, 0.1, 9, 6000));
        Fit fit = PlainWaterCut.fit(SOFT, cuts, 0.1).fit();
        ToDoubleFunction<double[]> squares = at -> {
            PlainWaterCut first = cuts.get(0);
            PlainWaterFeed model = PlainWaterFeed.of(
                            SOFT, first.jet(), first.standOff(), Kind.LENGTH.of(at[0]), first.feed())
                    .withExponents(at[1], at[2], at[3]);
            double sum = Math.pow((at[1] - 1) / 0.3, 2)
                    + Math.pow((at[2] - 1.5) / 0.3, 2)
                    + Math.pow((at[3] - 0.9) / 0.2, 2);
            for (PlainWaterCut cut : cuts) {
                double depth =
                        model.depth(cut.jet(), cut.standOff(), SOFT, cut.feed()).si();
                sum += Math.pow(Math.log(depth / Kind.LENGTH.si(cut.depth())) / 0.1, 2);
            }
            return sum;
        };
        double[] at = fit.values();

        assertThat(at).hasSize(4);
        for (int j = 0; j < 4; j++) {
            assertThat(slope(squares, at, j)).as("number %s", j).isCloseTo(0, within(2e-3));
        }
    }

    /** Pressures over a factor of 1.3 show a threshold; a little less do not. */
    @Test
    void aThresholdNeedsAFactorInPressure() {
        assertThat(threshold(300, 340, 370, 388)).isZero();
        assertThat(threshold(300, 340, 370, 392)).isGreaterThan(50e6);
        assertThat(threshold(300, 392)).isZero();
    }

    private static double threshold(double... pressures) {
        PlainWaterCut first = water(350, 0.15, 20, 4000);
        PlainWaterFeed truth = PlainWaterFeed.of(SOFT, first.jet(), first.standOff(), first.depth(), first.feed())
                .withExponents(1, 1.5, 0.9)
                .withThreshold(megapascals(120));
        List<PlainWaterCut> cuts = new ArrayList<>();
        for (double pressure : pressures) {
            PlainWaterCut cut = water(pressure, 0.15, 20, 4000);
            double depth =
                    truth.depth(cut.jet(), cut.standOff(), SOFT, cut.feed()).si();
            cuts.add(PlainWaterCut.of(cut.jet(), cut.standOff(), Kind.LENGTH.of(depth), cut.feed()));
        }
        return Kind.PRESSURE.si(PlainWaterCut.fit(SOFT, cuts, 0.002).model().threshold());
    }
}

package dev.waterjet.simulate;

import static dev.waterjet.measure.Measures.degrees;
import static dev.waterjet.measure.Measures.millimetres;
import static dev.waterjet.simulate.CornerPredictions.CUT;
import static dev.waterjet.simulate.CornerPredictions.KERF;
import static dev.waterjet.simulate.CornerPredictions.OFFSET;
import static dev.waterjet.simulate.CornerPredictions.PROFILE;
import static dev.waterjet.simulate.CornerPredictions.SIMULATOR;
import static dev.waterjet.simulate.CornerPredictions.part;
import static dev.waterjet.simulate.CornerPredictions.profile;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.Refusals;
import dev.waterjet.evidence.Caution;
import dev.waterjet.kerf.LagGeometry;
import dev.waterjet.kerf.LagModel;
import dev.waterjet.measure.Kind;
import dev.waterjet.part.Contour;
import dev.waterjet.part.Side;
import dev.waterjet.surface.RoughnessModel;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Choices of a caller are kept whatever their order, and predictions that would not end are refused. */
class CutSettingsTest {

    private static final RoughnessModel ROUGH = RoughnessModel.standard()
            .withTextureRatio(0.9, 0.1, RoughnessModel.standard().evidence());

    private static final List<UnaryOperator<CutSimulator>> CHOICES = List.of(
            simulator -> simulator.withDepths(4),
            simulator -> simulator.withPoints(40),
            simulator -> simulator.withTolerance(millimetres(0.123)),
            simulator -> simulator.withTilt(degrees(1.5), degrees(-2)),
            CutSimulator::withUncertainty,
            simulator -> simulator.withRoughness(ROUGH),
            simulator -> simulator.withGeometry(LagGeometry.FOLLOWING));

    private static PredictedCut chosen(List<UnaryOperator<CutSimulator>> choices) {
        CutSimulator simulator = CutSimulator.of(CUT, KERF, LagModel.standard());
        for (UnaryOperator<CutSimulator> choice : choices) {
            simulator = choice.apply(simulator);
        }
        return simulator.predict(profile(0.5, 16e-3), part(), Side.RIGHT);
    }

    @Test
    void choicesAreKeptInAnyOrder() {
        List<UnaryOperator<CutSimulator>> reversed = new ArrayList<>(CHOICES);
        Collections.reverse(reversed);
        PredictedCut cut = chosen(CHOICES);

        assertThat(chosen(reversed)).isEqualTo(cut);
        assertThat(cut.map().depths().size()).isEqualTo(4);
        assertThat(cut.map().size()).isBetween(35, 60);
        assertThat(cut.map().hasUncertainty()).isTrue();
        assertThat(cut.places())
                .allSatisfy(
                        place -> assertThat(Kind.LENGTH.si(place.tolerance())).isCloseTo(0.123e-3, within(1e-15)));
        assertThat(cut.cautions()).extracting(Caution::code).contains("leaning-front-unknown");
    }

    /** Each choice is seen in the prediction: without it, another one results. */
    @Test
    void eachChoiceHasAnEffect() {
        PredictedCut cut = chosen(CHOICES);
        for (int i = 0; i < CHOICES.size(); i++) {
            List<UnaryOperator<CutSimulator>> others = new ArrayList<>(CHOICES);
            others.remove(i);
            assertThat(chosen(others)).as("choice %d", i).isNotEqualTo(cut);
        }
    }

    /** A jet that leans towards the part by an angle is displaced at the bottom by the tangent of it times the thickness. */
    @ParameterizedTest
    @CsvSource({"LEFT, 2", "RIGHT, 2", "LEFT, -1"})
    void aSideTiltTurnsTheWallTowardsThePart(Side side, double deg) {
        Contour part = Contour.fromSi(0, 0).lineToSi(20e-3, 0).open();
        double away = -side.sign() * OFFSET;
        Contour path = Contour.fromSi(-10e-3, away).lineToSi(30e-3, away).open();
        FeedProfile profile =
                FeedProfile.constant(path, Kind.SPEED.of(CUT.feedSi(3))).afterSteadyFeed();
        DeviationMap upright = SIMULATOR.predict(profile, part, side).map();
        DeviationMap leaning = SIMULATOR
                .withTilt(degrees(deg), degrees(0))
                .predict(profile, part, side)
                .map();
        int middle = upright.size() / 2;
        double z = upright.depths().si(5);

        assertThat(leaning.deviationSi(middle, 5))
                .isCloseTo(upright.deviationSi(middle, 5) - z * Math.tan(Math.toRadians(deg)), within(1e-7));
        assertThat(leaning.addedSi(middle, 5)).isCloseTo(0, within(1e-7));
    }

    /** Beyond the ends of the part and beside a path that turns away, feed and offset of an edge are its own. */
    @ParameterizedTest
    @ValueSource(doubles = {0, 0.3e-3, -0.2e-3})
    void theStraightCutOfAnEdgeHasItsFeedAndOffset(double shift) {
        Contour path = Contour.fromSi(-5e-3, OFFSET + shift)
                .lineToSi(20e-3 - OFFSET, OFFSET + shift)
                .lineToSi(20e-3 - OFFSET, 25e-3)
                .open();
        double[] feeds = {CUT.feedSi(4), CUT.feedSi(2)};
        DeviationMap map = SIMULATOR
                .predict(
                        FeedProfile.perEdge(path, dev.waterjet.measure.QuantityArray.ofSi(Kind.SPEED, feeds))
                                .afterSteadyFeed(),
                        part(),
                        Side.RIGHT)
                .map();
        for (int depth = 0; depth < 6; depth++) {
            double z = map.depths().si(depth);
            double[] expected = {
                OFFSET + shift - PROFILE.halfWidthSi(z, feeds[0]), OFFSET - PROFILE.halfWidthSi(z, feeds[1])
            };
            for (int i = 0; i < map.size(); i++) {
                if (map.isSeparated(i, depth)) {
                    double straight = map.deviationSi(i, depth) - map.addedSi(i, depth);
                    assertThat(straight).isCloseTo(expected[map.edge(i)], within(2e-9));
                }
            }
        }
    }

    @Test
    void numbersOutsideOfTheirRangesAreRefused() {
        Refusals.assertRefused(() -> SIMULATOR.withDepths(1), "must-be-at-least", "number of depths", 2);
        Refusals.assertRefused(() -> SIMULATOR.withDepths(1001), "must-be-at-most", "number of depths", 1000);
        assertThat(Refusals.of(() -> SIMULATOR.withDepths(1000))).isEqualTo("no refusal");
        Refusals.assertRefused(() -> SIMULATOR.withPoints(0), "must-be-at-least", "number of points", 1);
        assertThat(Refusals.of(() -> SIMULATOR.withPoints(1))).isEqualTo("no refusal");
        Refusals.assertRefused(() -> SIMULATOR.withTolerance(millimetres(0)), "must-be-above", "tolerance", 0);
        double limit = Math.PI / 4;
        Refusals.assertRefused(
                () -> SIMULATOR.withTilt(degrees(45.1), degrees(0)), "must-be-at-most", "side tilt", limit);
        Refusals.assertRefused(
                () -> SIMULATOR.withTilt(degrees(0), degrees(-45.1)), "must-be-at-least", "lead angle", -limit);
        assertThat(Refusals.of(() -> SIMULATOR.withTilt(degrees(45), degrees(-45))))
                .isEqualTo("no refusal");
        assertThat(SIMULATOR.conditions()).isEqualTo(CUT);
        assertThat(SIMULATOR.geometry()).isEqualTo(LagGeometry.TANGENT);
        assertThat(SIMULATOR.withTilt(degrees(3), degrees(0))).asString().contains("3°", "Mild steel", "12 mm");
    }

    private static Contour line(double length) {
        return Contour.fromSi(0, 0).lineToSi(length, 0).open();
    }

    private static FeedProfile steady(double length) {
        return FeedProfile.constant(line(length), Kind.SPEED.of(CUT.feedSi(2)));
    }

    @Test
    void pathsAndContoursAbove500MetresAreRefused() {
        Refusals.assertRefused(
                () -> SIMULATOR.predict(steady(500.1), line(1), Side.RIGHT),
                "must-be-at-most",
                "length of the tool path",
                500);
        Refusals.assertRefused(
                () -> SIMULATOR.predict(steady(1), line(500.1), Side.RIGHT),
                "must-be-at-most",
                "length of the contour",
                500);
    }

    /** 200 million doses are the limit: points, times depths, times the lag over the spread of the dose. */
    @Test
    void predictionsOfTooManyDosesAreRefused() {
        CutSimulator fine = SIMULATOR.withDepths(1000).withPoints(20_000);
        CutSimulator repeated = SIMULATOR.withDepths(1000).withPoints(14_000);
        double reach = CutRun.reachInwards(PROFILE, CUT.feedSi(2), CUT.thicknessSi()) / PROFILE.spreadSi();

        assertThat(20_000.0 * 1000 * reach).isGreaterThan(2e8);
        // uncertainties count as 9/5 of the doses
        assertThat(14_000.0 * 1000 * reach).isBetween(2e8 / 1.8, 2e8);
        Refusals.assertRefused(
                () -> fine.predict(steady(0.1), line(0.1), Side.RIGHT),
                "must-be-at-most",
                "number of doses of the prediction",
                2e8);
        Refusals.assertRefused(
                () -> repeated.withUncertainty().predict(steady(0.1), line(0.1), Side.RIGHT),
                "must-be-at-most",
                "number of doses of the prediction",
                2e8);
    }
}

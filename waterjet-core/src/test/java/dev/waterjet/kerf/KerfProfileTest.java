package dev.waterjet.kerf;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.feed.CutConditions;
import dev.waterjet.feed.FeedModel;
import dev.waterjet.feed.MachinabilityFeed;
import dev.waterjet.feed.SpecificEnergyFeed;
import dev.waterjet.measure.Kind;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.apache.commons.math3.special.Erf;
import org.junit.jupiter.api.Test;

class KerfProfileTest {

    private static final double SLOPE = Math.tan(Math.toRadians(1));

    @Property(tries = 500, seed = "81")
    void theErrorFunctionIsThatOfCommonsMath(@ForAll @DoubleRange(min = -7, max = 7) double x) {
        assertThat(ErrorFunction.value(x)).isCloseTo(Erf.erf(x), within(1e-15));
    }

    @Test
    void theErrorFunctionKeepsItsDigitsNearZero() {
        assertThat(ErrorFunction.value(1e-9)).isCloseTo(1e-9 * 2 / Math.sqrt(Math.PI), within(1e-24));
    }

    @Test
    void theErrorFunctionOfNoNumberIsNoNumber() {
        assertThat(ErrorFunction.value(Double.NaN)).isNaN();
    }

    @Property(tries = 300, seed = "82")
    void aGaussianOfTheDoseLeavesTheWallOfAGaussianOfTheDepth(
            @ForAll @DoubleRange(min = 1, max = 2.5) double exponent,
            @ForAll @DoubleRange(min = 0.05, max = 1) double depthRatio,
            @ForAll @DoubleRange(min = 0.05, max = 1.5) double feedRatio) {
        CutFront front = CutFrontTest.powerLaw(exponent);
        double depthSpread = 0.27e-3;
        KerfProfile profile = KerfProfile.ofSi(
                front,
                KerfProfile.doseSpreadSi(depthSpread, exponent),
                KerfProfile.entryRadiusSi(1e-3, 2e-3, SLOPE),
                SLOPE);
        double depth = depthRatio * front.thicknessSi();
        double feed = feedRatio * 1e-3;
        double reach = depthSpread * Math.sqrt(2 * Math.max(0, Math.log(front.separationDepthSi(feed) / depth)));

        double expected = reach > 0
                ? Math.pow(Math.pow(reach, -8) + Math.pow(KerfKernel.jetRadius(depth, 1e-3, 2e-3, SLOPE), -8), -0.125)
                : 0;

        assertThat(profile.halfWidthSi(depth, feed)).isCloseTo(expected, within(1e-14));
    }

    @Test
    void theWallOfTheKerfModelIsTheSameForEveryFeedModel() {
        for (FeedModel model : List.of(MachinabilityFeed.published(), SpecificEnergyFeed.ofSteel())) {
            CutConditions cut = Kerfs.steel(10).withFeedModel(model);
            KerfProfile profile = KerfProfile.of(Kerfs.MODEL, CutFront.of(LagModel.standard(), cut), cut.jet());
            double feed = cut.feedSi(2.5);
            Kerf kerf = Kerfs.MODEL.kerf(cut, Kind.SPEED.of(feed));
            for (double depth : new double[] {0.0002, 0.003, 0.007, 0.01}) {
                assertThat(kerf.halfWidthSi(depth)).isCloseTo(profile.halfWidthSi(depth, feed), within(1e-12));
            }
        }
    }

    @Test
    void noWidthIsLeftWhereTheFeedDoesNotSeparateTheDepth() {
        CutFront front = CutFrontTest.powerLaw(1.15);
        KerfProfile profile = KerfProfile.ofSi(front, 0.25e-3, 0.5e-3, SLOPE);

        assertThat(profile.halfWidthSi(0.01, front.separationFeedSi(0.01))).isZero();
    }

    @Test
    void theEntryIsAsWideAsTheJet() {
        KerfProfile profile = KerfProfile.ofSi(CutFrontTest.powerLaw(1.15), 0.25e-3, 0.5e-3, SLOPE);

        assertThat(profile.halfWidthSi(0, 1e-3)).isEqualTo(0.5e-3);
    }
}

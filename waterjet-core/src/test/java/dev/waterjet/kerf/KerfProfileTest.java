package dev.waterjet.kerf;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

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

        assertThat(profile.halfWidthSi(depth, feed))
                .isCloseTo(
                        KerfKernel.halfWidth(
                                depth,
                                front.separationDepthSi(feed),
                                depthSpread,
                                KerfKernel.jetRadius(depth, 1e-3, 2e-3, SLOPE)),
                        within(1e-15));
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

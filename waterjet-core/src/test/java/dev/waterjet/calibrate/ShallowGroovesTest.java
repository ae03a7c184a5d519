package dev.waterjet.calibrate;

import static dev.waterjet.measure.Measures.millimetres;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.evidence.Caution;
import dev.waterjet.feed.FeedExponent;
import dev.waterjet.feed.MachinabilityFeed;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.material.Material;
import dev.waterjet.material.MaterialClass;
import dev.waterjet.measure.Kind;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import javax.measure.Quantity;
import javax.measure.quantity.Speed;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Grooves less deep than the bore of the focusing tube, fitted with a speed exponent of their own. */
class ShallowGroovesTest {

    private static final Material ALLOY = Material.of("mirror-blank", 100, 0.3, MaterialClass.DUCTILE);
    private static final AbrasiveJet JET = CalibrationTest.jet(300, 400);
    private static final MachinabilityFeed MODEL = MachinabilityFeed.published();

    /** Depth 0.6 mm at 1 m/min, and as the speed to a negative power elsewhere. */
    private static double depthM(double feed, double exponent) {
        return 0.6e-3 * Math.pow(feed * 60, -exponent);
    }

    private static List<TestCut> grooves(double exponent) {
        Random random = new Random(2);
        List<TestCut> cuts = new ArrayList<>();
        for (double feed : new double[] {0.8, 1.2, 2, 3, 5, 8}) {
            for (int k = 0; k < 2; k++) {
                double depth = depthM(feed / 60, exponent) * Math.exp(0.02 * random.nextGaussian());
                cuts.add(TestCut.groove(JET, Kind.LENGTH.of(depth), Kind.SPEED.of(feed / 60)));
            }
        }
        return cuts;
    }

    private static List<String> codes(List<Caution> cautions) {
        return cautions.stream().map(Caution::code).toList();
    }

    /** Depth goes with the speed to minus 1.3 to 1.6 in grooves, to minus 0.87 by the published model. */
    @ParameterizedTest
    @ValueSource(doubles = {1.3, 1.45, 1.6})
    void theSpeedExponentIsThatOfTheGrooves(double exponent) {
        CalibratedFeed own =
                Calibration.ofMachinability(ALLOY, MODEL, FeedExponent.FEED).fit(grooves(exponent));

        assertThat(1 / own.fit().value("feed exponent")).isCloseTo(exponent, within(0.03));
        double feed = 1.6 / 60;
        assertThat(own.separationDepthSi(JET, own.material(), feed))
                .isCloseTo(depthM(feed, exponent), within(0.02 * depthM(feed, exponent)));
        assertThat(codes(own.remarks())).contains("shallow-grooves-only");
    }

    /** Among its grooves the model has no caution; a cut through a plate is outside them. */
    @Test
    void theModelIsForSuchGroovesOnly() {
        CalibratedFeed own =
                Calibration.ofMachinability(ALLOY, MODEL, FeedExponent.FEED).fit(grooves(1.45));
        Quantity<Speed> feed = Kind.SPEED.of(2.0 / 60);

        assertThat(codes(MODEL.depth(JET, ALLOY, Kind.SPEED.of(1)).cautions())).contains("shallow-groove");
        assertThat(codes(own.depth(JET, own.material(), feed).cautions()))
                .doesNotContain("shallow-groove", "outside-test-cuts");
        assertThat(codes(own.cautions(JET, own.material(), 0.01, 0.002))).contains("outside-test-cuts");
        CalibratedFeed published = Calibration.ofMachinability(ALLOY, MODEL).fit(grooves(1.45));
        assertThat(codes(published.depth(JET, published.material(), feed).cautions()))
                .contains("shallow-groove");
    }

    @Test
    void groovesAmongOtherCutsHaveARemark() {
        List<TestCut> cuts = new ArrayList<>(grooves(1.45));
        cuts.add(TestCut.separated(JET, millimetres(10), Kind.SPEED.of(0.008)));
        cuts.add(TestCut.groove(JET, millimetres(9), Kind.SPEED.of(0.01)));

        assertThat(codes(Calibration.ofMachinability(ALLOY, MODEL).fit(cuts).remarks()))
                .contains("shallow-and-deep")
                .doesNotContain("shallow-grooves-only");
        assertThat(codes(Calibration.ofMachinability(ALLOY, MODEL)
                        .fit(cuts.subList(12, 14))
                        .remarks()))
                .doesNotContain("shallow-and-deep", "shallow-grooves-only");
    }
}

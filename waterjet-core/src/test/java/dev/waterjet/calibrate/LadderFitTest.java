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
import java.util.List;
import java.util.stream.IntStream;
import javax.measure.quantity.Speed;
import org.junit.jupiter.api.Test;

/** Fits of cuts that are all intervals of ladders. */
class LadderFitTest {

    private static final MachinabilityFeed MODEL = MachinabilityFeed.published();
    private static final Material ALLOY = Material.of("dome-alloy", 115, 0.1, MaterialClass.DUCTILE);
    private static final double[] PRESSURES = {250, 290, 330, 370};
    private static final Calibration PLAIN = Calibration.ofMachinability(ALLOY, MODEL);
    private static final Calibration SLOPE = Calibration.ofMachinability(ALLOY, MODEL, FeedExponent.PRESSURE);

    private static TestCut interval(double pressureMpa, double from, double to) {
        AbrasiveJet jet = CalibrationTest.jet(pressureMpa, 300);
        double feed = MODEL.separationFeedSi(jet, ALLOY, 0.01);
        return TestCut.between(jet, millimetres(10), Kind.SPEED.of(feed * from), Kind.SPEED.of(feed * to));
    }

    private static List<TestCut> intervals(double[] from, double ratio) {
        return IntStream.range(0, from.length)
                .mapToObj(i -> interval(PRESSURES[i], from[i], from[i] * ratio))
                .toList();
    }

    /** The intervals rise with the pressure, so that no constant meets all, but a slope does: the scatter may be none at all. */
    @Test
    void intervalsThatASlopeMeetsDoNotShowAScatter() {
        List<TestCut> rising = intervals(new double[] {0.80, 0.88, 0.97, 1.06}, 1.1);

        assertRefused(() -> SLOPE.fit(rising), "undetermined-scatter");
        assertThat(PLAIN.fit(rising).fit().scatter()).isPositive();
        Estimate<Speed> feed = feed(SLOPE.withPrior(CutPrior.catalogue(ALLOY)).fit(rising));
        assertThat(feed.relativeUncertainty()).isBetween(0.02, 0.5);
    }

    @Test
    void intervalsThatAllOverlapDoNotShowAScatter() {
        assertRefused(() -> PLAIN.fit(intervals(new double[] {0.95, 0.97, 0.99, 1.01}, 1.1)), "undetermined-scatter");
        // the ends touch: the common point is one feed rate
        assertRefused(() -> PLAIN.fit(intervals(new double[] {0.9, 1.0, 0.9, 1.0}, 1 / 0.9)), "undetermined-scatter");
    }

    @Test
    void narrowIntervalsAreMeasuredCuts() {
        double[] feeds = {0.93, 1.04, 0.98, 1.07};
        double ratio = 1 + 1e-5;
        CutFit narrow = PLAIN.fit(intervals(feeds, ratio)).fit();
        CalibratedFeed measured = PLAIN.fit(intervals(feeds, ratio).stream()
                .map(cut -> TestCut.separated(cut.jet(), cut.thickness(), cut.feed()))
                .toList());

        assertThat(narrow.value("machinability")).isCloseTo(measured.fit().value("machinability"), within(1e-3));
        assertThat(narrow.lower("machinability", 0.95))
                .isCloseTo(measured.fit().lower("machinability", 0.95), within(0.01));
        Estimate<Speed> one = feed(PLAIN.fit(intervals(feeds, ratio)));
        assertThat(one.lower(0.95).getValue().doubleValue()
                        / feed(measured).lower(0.95).getValue().doubleValue())
                .isCloseTo(1, within(0.01));
    }

    private static Estimate<Speed> feed(CalibratedFeed own) {
        return own.feed(CalibrationTest.jet(300, 300), Workpiece.of(own.material(), millimetres(10)), 1);
    }
}

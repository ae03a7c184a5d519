package dev.waterjet.calibrate;

import static dev.waterjet.measure.Measures.millimetres;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.evidence.Estimate;
import dev.waterjet.feed.MachinabilityFeed;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.material.Material;
import dev.waterjet.material.MaterialClass;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.DoubleStream;
import javax.measure.quantity.Speed;
import org.junit.jupiter.api.Test;

/** Fits with a prior of the scatter alone. */
class ScatterPriorTest {

    private static final MachinabilityFeed MODEL = MachinabilityFeed.published();
    private static final Material ALLOY = Material.of("dome-alloy", 115, 0.1, MaterialClass.DUCTILE);
    private static final AbrasiveJet JET = CalibrationTest.jet(350, 300);
    private static final Calibration CALIBRATION =
            Calibration.ofMachinability(ALLOY, MODEL).withPrior(CutPrior.ofScatter(4, 0.05));

    private static List<TestCut> cuts(double... logs) {
        return DoubleStream.of(logs).mapToObj(log -> cut(log, 0)).toList();
    }

    private static TestCut cut(double log, double width) {
        double feed = MODEL.separationFeedSi(JET, ALLOY, 0.01) * Math.exp(1.15 * log);
        return width == 0
                ? TestCut.separated(JET, millimetres(10), Kind.SPEED.of(feed))
                : TestCut.between(
                        JET, millimetres(10), Kind.SPEED.of(feed), Kind.SPEED.of(feed * Math.exp(1.15 * width)));
    }

    private static Estimate<Speed> feed(CalibratedFeed own) {
        return own.feed(JET, Workpiece.of(own.material(), millimetres(10)), 1);
    }

    /** By hand: 4 + 2 - 1 degrees of freedom, variance (4 0.05^2 + 2 0.03^2) / 5, mean 0.01 above the catalogue. */
    @Test
    void twoCutsHaveStudentsPosterior() {
        CalibratedFeed own = CALIBRATION.fit(cuts(-0.02, 0.04));
        double scale = Math.sqrt((4 * 0.0025 + 2 * 0.0009) / 5 * 1.5);

        assertThat(own.fit().value("machinability")).isCloseTo(115 * Math.exp(0.01), within(1e-9));
        assertThat(feed(own).degreesOfFreedom()).isEqualTo(5);
        // 2.5705818: quantile 0.975 of Student's distribution with 5 degrees of freedom, any table
        assertThat(Math.log(Kind.SPEED.si(feed(own).upper(0.95)) / feed(own).si()))
                .isCloseTo(1.15 * scale * 2.5705818, within(1e-7));
    }

    /** The catalogue is of no account: another start gives the same. */
    @Test
    void theStartDoesNotMatter() {
        Material other = Material.of("dome-alloy", 40, 0.1, MaterialClass.DUCTILE);
        CalibratedFeed own = CALIBRATION.fit(cuts(-0.02, 0.04));
        CalibratedFeed started = Calibration.ofMachinability(other, MODEL)
                .withPrior(CutPrior.ofScatter(4, 0.05))
                .fit(cuts(-0.02, 0.04));

        assertThat(started.fit().value("machinability")).isCloseTo(own.fit().value("machinability"), within(1e-9));
        assertThat(feed(started).lower(0.95).getValue().doubleValue())
                .isCloseTo(feed(own).lower(0.95).getValue().doubleValue(), within(1e-9));
    }

    /** Narrow intervals come to the same by the grid as measured cuts do in closed form. */
    @Test
    void theGridAgreesWithTheClosedForm() {
        CalibratedFeed measured = CALIBRATION.fit(cuts(-0.02, 0.04, 0.01));
        CalibratedFeed narrow = CALIBRATION.fit(List.of(cut(-0.02, 1e-6), cut(0.04, 1e-6), cut(0.01, 1e-6)));

        assertThat(narrow.fit().value("machinability")).isCloseTo(measured.fit().value("machinability"), within(1e-3));
        assertThat(Kind.SPEED.si(feed(narrow).upper(0.95))
                        / Kind.SPEED.si(feed(measured).upper(0.95)))
                .isCloseTo(1, within(2e-3));
    }

    @Test
    void aLadderWhoseIntervalsAllOverlapHasAnAnswer() {
        CalibratedFeed own = CALIBRATION.fit(List.of(cut(0, 0.08), cut(0.01, 0.08), cut(-0.02, 0.08)));

        assertThat(Math.log(own.fit().value("machinability") / 115)).isBetween(0.01, 0.06);
        assertThat(feed(own).relativeUncertainty()).isBetween(0.03, 0.2);
    }

    /** A quadrature has places, its posterior has none: intervals widen evenly with their coverage. */
    @Test
    void intervalsOfAParameterWidenEvenly() {
        Material alloy = Material.of("dome-alloy", 115, 0.1, MaterialClass.DUCTILE);
        List<TestCut> cuts = new ArrayList<>();
        for (int i = 0; i < 4; i++) {
            cuts.add(TestCut.between(
                            CalibrationTest.jet(360, 400),
                            millimetres(12),
                            Kind.SPEED.of(0.009 + 0.0005 * i),
                            Kind.SPEED.of(0.010 + 0.0005 * i))
                    .withPlate(i < 2 ? "P1" : "P2"));
        }
        CutFit fit = Calibration.ofMachinability(alloy, MachinabilityFeed.published())
                .withPlates()
                .withPrior(CutPrior.catalogue(alloy))
                .fit(cuts)
                .fit();
        double step = fit.upper("machinability", 0.22) - fit.upper("machinability", 0.2);
        for (double coverage = 0.22; coverage < 0.6; coverage += 0.02) {
            double next = fit.upper("machinability", coverage + 0.02) - fit.upper("machinability", coverage);

            assertThat(next).isBetween(0.9 * step, 1.2 * step);
            step = next;
        }
    }
}

package dev.waterjet.feed;

import static dev.waterjet.measure.Measures.degrees;
import static dev.waterjet.measure.Measures.millimetres;
import static dev.waterjet.measure.Measures.millimetresPerMinute;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.ValueContract;
import dev.waterjet.evidence.Caution;
import dev.waterjet.evidence.Evidence;
import dev.waterjet.hydraulics.WaterJet;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.jet.JetSettings;
import dev.waterjet.material.Material;
import dev.waterjet.material.MaterialClass;
import dev.waterjet.material.Materials;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityArray;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Settings of a sweep as a model sees them, and answers at the limits of the cautions. */
class SettingsTest {

    private static final Material STEEL = Materials.standard().get("mild-steel");
    private static final AbrasiveJet JET = FeedModelContract.jet(380, 0.3, 0.9, 400);

    /** A model that keeps all that it reads of a jet. */
    @SuppressWarnings("serial") // never written
    private static final class Reader implements FeedModel {

        private final List<double[]> seen = new ArrayList<>();

        static double[] all(JetSettings jet) {
            return new double[] {
                jet.pressureSi(),
                jet.orificeBoreSi(),
                jet.tubeBoreSi(),
                jet.tubeExitBoreSi(),
                jet.standOffSi(),
                jet.abrasiveFlowSi(),
                jet.waterVolumeFlowSi(),
                jet.waterMassFlowSi(),
                jet.waterSpeedSi(),
                jet.particleSpeedSi(),
                jet.abrasive().mesh().meanGrainSizeSi()
            };
        }

        @Override
        public String name() {
            return "reader";
        }

        @Override
        public Evidence evidence() {
            return MachinabilityFeed.published().evidence();
        }

        @Override
        public double separationFeedSi(JetSettings jet, Material material, double depthM) {
            seen.add(all(jet));
            return 0.01 / (1 + depthM);
        }

        @Override
        public double separationDepthSi(JetSettings jet, Material material, double feedMPerS) {
            return 0.01 / feedMPerS;
        }

        @Override
        public double relativeUncertainty(Material material) {
            return 0.1;
        }
    }

    /** Also with a worn tube, and with each setting changed once and changed back. */
    @ParameterizedTest
    @ValueSource(doubles = {0, 0.15})
    void sweptSettingsAreThoseOfTheJetThatHasThem(double wearMm) {
        AbrasiveJet jet = JET.withHead(JET.head().withTube(JET.head().tube().withExitBore(millimetres(0.9 + wearMm))));
        Reader reader = new Reader();
        List<double[]> expected = new ArrayList<>();
        FeedSweep sweep = FeedSweep.of(reader, jet, Workpiece.of(STEEL, millimetres(10)), 2)
                .overPressure(QuantityArray.ofSi(Kind.PRESSURE, 200e6, 380e6, 380e6))
                .overOrifice(QuantityArray.ofSi(Kind.LENGTH, 0.3e-3, 0.25e-3))
                .overTube(QuantityArray.ofSi(Kind.LENGTH, 0.9e-3, 1.1e-3))
                .overAbrasiveFlow(QuantityArray.ofSi(Kind.MASS_FLOW, 0.004, 0.008));
        sweep.each((p, o, t, m, h, q, feed) -> expected.add(Reader.all(Jets.at(jet, p, o, t, m))));
        assertThat(expected).hasSize(24);
        List<double[]> seen = new ArrayList<>(reader.seen);
        // a model may be asked once more than there are points
        assertThat(seen).hasSizeGreaterThanOrEqualTo(24);
        int at = 0;
        for (double[] row : expected) {
            double[] own = row.clone();
            if (own[2] != jet.tubeBoreSi()) {
                // a swept tube is worn by as much as that of the jet
                own[3] = own[2] + wearMm / 1000;
            }
            double[] found = seen.get(at++);
            for (int i = 0; i < own.length; i++) {
                assertThat(found[i]).as("setting %s", i).isEqualTo(own[i], within(1e-12 * Math.abs(own[i])));
            }
        }
    }

    @Test
    void sweepsAreTheirModelJetPlateAndRanges() {
        Workpiece plate = Workpiece.of(STEEL, millimetres(10));
        MachinabilityFeed model = MachinabilityFeed.published();
        FeedSweep sweep = FeedSweep.of(model, JET, plate, 2);
        ValueContract.of(() -> FeedSweep.of(model, JET, plate, 2))
                .has("size", FeedSweep::size, 1L)
                .differs("model", FeedSweep.of(model.withModelUncertainty(0.3), JET, plate, 2))
                .differs("jet", FeedSweep.of(model, FeedModelContract.jet(381, 0.3, 0.9, 400), plate, 2))
                .differs("plate", FeedSweep.of(model, JET, Workpiece.of(STEEL, millimetres(11)), 2))
                .differs("index", FeedSweep.of(model, JET, plate, 3))
                .differs("pressures", sweep.overPressure(QuantityArray.ofSi(Kind.PRESSURE, 1e8)))
                .differs("orifices", sweep.overOrifice(QuantityArray.ofSi(Kind.LENGTH, 0.2e-3)))
                .differs("tubes", sweep.overTube(QuantityArray.ofSi(Kind.LENGTH, 0.8e-3)))
                .differs("flows", sweep.overAbrasiveFlow(QuantityArray.ofSi(Kind.MASS_FLOW, 0.001)))
                .check();
    }

    private static List<String> codes(List<Caution> cautions) {
        return cautions.stream().map(Caution::code).toList();
    }

    @Test
    void cautionsBeginBeyondTheirLimits() {
        for (double inside : new double[] {0.5e-3, 0.01, 0.3}) {
            assertThat(FeedCautions.ofThickness(inside)).isEmpty();
        }
        assertThat(FeedCautions.ofThickness(Math.nextDown(0.5e-3))).hasSize(1);
        assertThat(FeedCautions.ofThickness(Math.nextUp(0.3))).hasSize(1);
        double fast = 5 / 60.0;
        assertThat(FeedCautions.of(JET, STEEL, fast)).isEmpty();
        assertThat(codes(FeedCautions.of(JET, STEEL, Math.nextUp(fast)))).containsExactly("thin-sheet");
        assertThat(FeedCautions.of(JET, material(40), 0.01)).isEmpty();
        assertThat(codes(FeedCautions.of(JET, material(Math.nextDown(40.0)), 0.01)))
                .containsExactly("harder-than-abrasive");
        AbrasiveJet worn = JET.withHead(JET.head().withTube(JET.head().tube().withExitBore(millimetres(1))));
        assertThat(codes(FeedCautions.of(worn, material(10), 1)))
                .containsExactly("thin-sheet", "worn-tube", "harder-than-abrasive");
        assertThat(FeedCautions.ofGroove(worn, worn.tubeExitBoreSi())).isEmpty();
        assertThat(codes(FeedCautions.ofGroove(worn, Math.nextDown(worn.tubeExitBoreSi()))))
                .containsExactly("shallow-groove");
    }

    private static Material material(double machinability) {
        return Material.of("ridge-stone", machinability, 0.1, MaterialClass.BRITTLE);
    }

    /** Feed rates go with depth^-1.15, so that a depth is as uncertain as its feed rate over 1.15. */
    @ParameterizedTest
    @ValueSource(doubles = {20, 150, 900})
    void depthIsUncertainByTheSlopeOfTheModel(double feed) {
        MachinabilityFeed model = MachinabilityFeed.published();
        var depth = model.depth(JET, STEEL, millimetresPerMinute(feed));
        assertThat(depth.relativeUncertainty())
                .isEqualTo(model.relativeUncertainty(STEEL) / 1.15, within(1e-3 * depth.relativeUncertainty()));
        assertThat(model.separationFeedSi(JET, STEEL, depth.si())).isEqualTo(feed / 60e3, within(1e-12));
    }

    /** 0.4 d (1/a_t - 1/a_0): the wear without an initial angle less d/a_0, with a_0 = 0.768 R^0.4 (C_k/(9 V))^(1/3). */
    @ParameterizedTest
    @CsvSource({"20, 3", "100, 3", "60, 2"})
    void cuttingWearLosesItsInitialAngle(double feed, double forceRatio) {
        Material titanium = Materials.standard().get("titanium");
        ErosionFeed plain = ErosionFeed.standard();
        double whole = Kind.LENGTH.si(plain.cuttingWear(JET, titanium, millimetresPerMinute(feed)));
        double strength = 113.8e9 / 14;
        double density = Kind.DENSITY.si(JET.abrasive().density());
        double characteristic = Math.sqrt(3 * strength * Math.pow(0.4, 0.6) / density);
        double initial = 0.768
                * Math.pow(0.4, 0.4)
                * Math.cbrt(characteristic / (forceRatio * forceRatio * JET.particleSpeedSi()));
        double expected = 0.4 * (whole - 0.9e-3 / initial);
        assertThat(expected).isPositive();
        assertThat(Kind.LENGTH.si(
                        plain.withInitialAngle(forceRatio).cuttingWear(JET, titanium, millimetresPerMinute(feed))))
                .isEqualTo(expected, within(1e-3 * expected));
    }

    /** The limit of thin sheet is announced where the formula gives more, and not where it gives less. */
    @Test
    void plainWaterIsLimitedWhereItsFormulaGivesMore() {
        WaterJet water = JET.water();
        PlainWaterFeed model =
                PlainWaterFeed.of(STEEL, water, millimetres(5), millimetres(1), millimetresPerMinute(10_000));
        double maximum = model.maximumFeedSi();
        for (double mm : new double[] {0.001, 0.01, 0.1, 1, 10}) {
            Workpiece sheet = Workpiece.of(STEEL, millimetres(mm));
            var feed = model.feed(water, millimetres(5), sheet, 1);
            boolean isLimited = feed.si() == maximum;
            assertThat(codes(feed.cautions()).contains("feed-limit")).isEqualTo(isLimited);
            assertThat(feed.si()).isLessThanOrEqualTo(maximum);
        }
        assertThat(model.feed(water, millimetres(5), Workpiece.of(STEEL, millimetres(0.001)), 1)
                        .si())
                .isEqualTo(maximum);
    }

    @Test
    void declinationRisesWithTheFeed() {
        DeclinationFeed model = DeclinationFeed.linear(MachinabilityFeed.published());
        Workpiece plate = Workpiece.of(STEEL, millimetres(12));
        double slow = model.feedForDeclination(JET, plate, degrees(5)).si();
        double fast = model.feedForDeclination(JET, plate, degrees(10)).si();
        assertThat(fast).isEqualTo(2 * slow, within(1e-9));
    }
}

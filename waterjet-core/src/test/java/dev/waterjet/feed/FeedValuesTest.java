package dev.waterjet.feed;

import static dev.waterjet.measure.Measures.degrees;
import static dev.waterjet.measure.Measures.joulesPerCubicMillimetre;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.metresPerSecond;
import static dev.waterjet.measure.Measures.millimetres;
import static dev.waterjet.measure.Measures.millimetresPerMinute;
import static org.assertj.core.api.Assertions.assertThat;

import dev.waterjet.ValueContract;
import dev.waterjet.evidence.Evidence;
import dev.waterjet.evidence.EvidenceGrade;
import dev.waterjet.evidence.Source;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.jet.MixingEfficiency;
import dev.waterjet.material.Material;
import dev.waterjet.material.Materials;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityArray;
import java.util.List;
import javax.measure.quantity.Length;
import org.junit.jupiter.api.Test;

class FeedValuesTest {

    private static final Evidence OWN = Evidence.of(EvidenceGrade.ASSUMED, Source.of("logbook of Hollow Ridge"));
    private static final Material STEEL = Materials.standard().get("mild-steel");
    private static final Material PINE = Materials.standard().get("pine");

    private final AbrasiveJet jet = FeedModelContract.jet(380, 0.3, 0.9, 400);

    @Test
    void machinabilityModelsAreTheirFormExponentsAndEvidence() {
        MachinabilityFeed own = MachinabilityFeed.published().withExponent(FeedExponent.PRESSURE, 1.4);
        ValueContract.of(MachinabilityFeed::published)
                .has("name", MachinabilityFeed::name, "machinability")
                .has("pressure exponent", model -> model.exponent(FeedExponent.PRESSURE), 1.594)
                .change("evidence", model -> model.withEvidence(OWN), MachinabilityFeed::evidence, OWN)
                .differs("form", MachinabilityFeed.publishedByWaterFlow())
                .differs("uncertainty", MachinabilityFeed.published().withModelUncertainty(0.1))
                .differs("exponent", own)
                .prints("machinability")
                .check();
        assertThat(MachinabilityFeed.publishedByWaterFlow()).hasToString("machinability by water flow");
        assertThat(own.withModelUncertainty(0.1).withEvidence(OWN).exponent(FeedExponent.PRESSURE))
                .isEqualTo(1.4);
        assertThat(own.withExponent(FeedExponent.PRESSURE, 1.594).feedSi(jet, STEEL, 0.01, 1))
                .isEqualTo(MachinabilityFeed.published().feedSi(jet, STEEL, 0.01, 1));
    }

    @Test
    void aSpecificEnergyIsItsFigureItsMaterialAndItsEvidence() {
        ValueContract.of(() -> SpecificEnergyFeed.of(STEEL, joulesPerCubicMillimetre(11), 0.2, OWN))
                .has("evidence", SpecificEnergyFeed::evidence, OWN)
                .has("name", SpecificEnergyFeed::name, "specific energy")
                .differs("energy", SpecificEnergyFeed.of(STEEL, joulesPerCubicMillimetre(12), 0.2, OWN))
                .differs("material", SpecificEnergyFeed.of(PINE, joulesPerCubicMillimetre(11), 0.2, OWN))
                .differs("uncertainty", SpecificEnergyFeed.of(STEEL, joulesPerCubicMillimetre(11), 0.3, OWN))
                .differs(
                        "evidence",
                        SpecificEnergyFeed.of(
                                STEEL,
                                joulesPerCubicMillimetre(11),
                                0.2,
                                SpecificEnergyFeed.ofSteel().evidence()))
                .prints("specific energy")
                .check();
    }

    @Test
    void anErosionModelIsItsParameters() {
        ErosionFeed usual = ErosionFeed.standard();
        ValueContract.of(ErosionFeed::standard)
                .has("name", ErosionFeed::name, "erosion")
                .has("uncertainty", model -> model.relativeUncertainty(STEEL), 0.4)
                .differs(
                        "strengths",
                        usual.withStrengths(FlowStrengths.standard().with(STEEL, megapascals(9000))))
                .differs("roundness", usual.withRoundness(0.35))
                .differs("share", usual.withDeformingShare(0.8))
                .differs("threshold", usual.withThreshold(metresPerSecond(100)))
                .differs("uncertainty", usual.withModelUncertainty(0.3, usual.evidence()))
                .differs("evidence", usual.withModelUncertainty(0.4, OWN))
                .prints("erosion")
                .check();
        assertThat(usual.withModelUncertainty(0.4, OWN).evidence()).isEqualTo(OWN);
    }

    @Test
    void aThresholdLawIsItsMaterialJetAndNumbers() {
        ThresholdFeed law = law(STEEL, jet, 8e-9, 60, 1);
        ValueContract.of(() -> law(STEEL, jet, 8e-9, 60, 1))
                .has("threshold", ThresholdFeed::threshold, megapascals(60))
                .has("coefficient", ThresholdFeed::coefficient, 8e-9)
                .has("name", ThresholdFeed::name, "threshold pressure")
                .has("grade", one -> one.evidence().grade(), EvidenceGrade.ASSUMED)
                .differs("material", law(PINE, jet, 8e-9, 60, 1))
                .differs("jet", law(STEEL, FeedModelContract.jet(380, 0.35, 0.9, 400), 8e-9, 60, 1))
                .differs("coefficient", law(STEEL, jet, 9e-9, 60, 1))
                .differs("threshold", law(STEEL, jet, 8e-9, 70, 1))
                .differs("unit", law(STEEL, jet, 8e-9, 60, 2))
                .differs("uncertainty", law.withModelUncertainty(0.3, law.evidence()))
                .differs("evidence", law.withModelUncertainty(0.2, OWN))
                .prints("threshold pressure above 60 MPa in mild-steel")
                .check();
        assertThat(law.relativeUncertainty(STEEL)).isEqualTo(0.2);
        assertThat(law.withModelUncertainty(0.3, OWN).evidence()).isEqualTo(OWN);
    }

    private static ThresholdFeed law(
            Material material, AbrasiveJet jet, double coefficient, double thresholdMpa, double unitMmPerMin) {
        return ThresholdFeed.of(
                material, jet, coefficient, megapascals(thresholdMpa), millimetresPerMinute(unitMmPerMin));
    }

    @Test
    void modelsOnOthersAreThoseAndTheirOwnNumbers() {
        FeedModel base = MachinabilityFeed.published();
        FeedModel rival = SpecificEnergyFeed.ofSteel();
        MixingEfficiency falling = MixingEfficiency.decreasing(0.9, 0.1, 0.6, OWN);
        ValueContract.of(() -> DeclinationFeed.linear(base))
                .has("model", DeclinationFeed::model, base)
                .has("name", DeclinationFeed::name, "declination 1")
                .differs("model", DeclinationFeed.linear(rival))
                .differs("exponent", DeclinationFeed.threeHalvesPower(base))
                .differs("angle", DeclinationFeed.linear(base).withLimitingAngle(degrees(20)))
                .prints("declination 1 on machinability")
                .check();
        assertThat(DeclinationFeed.threeHalvesPower(base).name()).isEqualTo("declination 1.5");
        assertThat(DeclinationFeed.threeHalvesPower(base).withExponent(2).name())
                .isEqualTo("declination 2.0");
        assertThat(DeclinationFeed.linear(base).evidence().grade()).isEqualTo(EvidenceGrade.DERIVED);
        ValueContract.of(() -> base.corrected(falling, 0.15))
                .has("model", one -> ((ForwardingFeed) one).model(), base)
                .has("name", FeedModel::name, "machinability, loaded")
                .differs("model", rival.corrected(falling, 0.15))
                .differs("mixing", base.corrected(MixingEfficiency.standard(), 0.15))
                .differs("loading", base.corrected(falling, 0.2))
                .prints("machinability, loaded")
                .check();
        Evidence loaded = base.corrected(falling, 0.15).evidence();
        assertThat(loaded.grade()).isEqualTo(EvidenceGrade.DERIVED);
        assertThat(loaded.source().citation())
                .isEqualTo(base.evidence().source().citation());
        assertThat(loaded.note()).contains("logbook of Hollow Ridge");
        ValueContract.of(() -> base.capped(millimetresPerMinute(3000)))
                .has("model", one -> ((ForwardingFeed) one).model(), base)
                .has("name", FeedModel::name, "machinability")
                .has("evidence", FeedModel::evidence, base.evidence())
                .has("highest", FeedModel::maximumFeedSi, 0.05)
                .differs("model", rival.capped(millimetresPerMinute(3000)))
                .differs("limit", base.capped(millimetresPerMinute(4000)))
                .prints("machinability", "3000 mm/min")
                .check();
    }

    @Test
    void strengthsAndTablesAreTheirEntries() {
        ValueContract.of(FlowStrengths::standard)
                .has("grade", strengths -> strengths.evidence().grade(), EvidenceGrade.FROM_MEMORY)
                .differs("one more", FlowStrengths.standard().with(PINE, megapascals(700)))
                .prints("flow strengths of", "copper", "titanium")
                .check();
        // sigma_f = E/14
        assertThat(FlowStrengths.standard()
                        .strengthSi(Materials.standard().get("titanium"))
                        .orElseThrow())
                .isEqualTo(113.8e9 / 14);
        assertThat(FlowStrengths.standard()
                        .strengthSi(Materials.standard().get("brass"))
                        .orElseThrow())
                .isEqualTo(105e9 / 14);
        for (String other : List.of("pine", "polycarbonate", "float-glass", "granite", "cfrp", "alumina-ad90")) {
            assertThat(FlowStrengths.standard().strengthSi(Materials.standard().get(other)))
                    .isEmpty();
        }
        assertThat(FlowStrengths.standard()
                        .with(PINE, megapascals(700))
                        .strengthSi(PINE)
                        .orElseThrow())
                .isEqualTo(700e6);
    }

    @Test
    void curvesAndStacksAreTheirPoints() {
        QuantityArray<Length> thicknesses = QuantityArray.evenly(Kind.LENGTH, millimetres(3), millimetres(30), 4);
        QuantityArray<Length> others = QuantityArray.evenly(Kind.LENGTH, millimetres(3), millimetres(31), 4);
        MachinabilityFeed model = MachinabilityFeed.published();
        ValueContract.of(() -> model.curve(jet, STEEL, 2, thicknesses))
                .has("thicknesses", FeedCurve::thicknesses, thicknesses)
                .has("size", FeedCurve::size, 4)
                .has("uncertainty", FeedCurve::relativeUncertainty, Math.hypot(0.15, 0.115))
                .differs("thickness", model.curve(jet, STEEL, 2, others))
                .differs("feeds", model.curve(jet, STEEL, 3, thicknesses))
                .differs("uncertainty", model.withModelUncertainty(0.1).curve(jet, STEEL, 2, thicknesses))
                .prints("feed curve of 4 points")
                .check();
        FeedCurve curve = model.curve(jet, STEEL, 2, thicknesses);
        assertThat(curve.feed(3).si()).isEqualTo(curve.feeds().si(3));
        assertThat(curve.feed(3).relativeUncertainty()).isEqualTo(curve.relativeUncertainty());
    }
}

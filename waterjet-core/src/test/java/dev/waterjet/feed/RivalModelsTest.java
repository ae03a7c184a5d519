package dev.waterjet.feed;

import static dev.waterjet.Refusals.assertRefused;
import static dev.waterjet.Refusals.refusal;
import static dev.waterjet.measure.Measures.degrees;
import static dev.waterjet.measure.Measures.joulesPerCubicMillimetre;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.metresPerSecond;
import static dev.waterjet.measure.Measures.millimetres;
import static dev.waterjet.measure.Measures.millimetresPerMinute;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.evidence.Caution;
import dev.waterjet.evidence.Evidence;
import dev.waterjet.evidence.EvidenceGrade;
import dev.waterjet.evidence.Source;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.jet.MixingEfficiency;
import dev.waterjet.material.Material;
import dev.waterjet.material.Materials;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.NoSolutionException;
import dev.waterjet.measure.Units;
import java.util.List;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class RivalModelsTest {

    private static final Evidence TEST = Evidence.of(EvidenceGrade.ASSUMED, Source.of("test"));

    private static final Material STEEL = Materials.standard().get("mild-steel");

    private static final List<String> METALS = List.of(
            "mild-steel", "tool-steel-hardened", "stainless-304", "stainless-316l", "titanium", "aluminium", "copper");

    private static Iterable<Material> metals() {
        return METALS.stream().map(Materials.standard()::get).toList();
    }

    /** The jet of the comparisons: 345 MPa, orifice 0.35 mm, tube 1.0 mm, 600 g/min. */
    private static AbrasiveJet comparisonJet(double efficiency) {
        AbrasiveJet jet = FeedModelContract.jet(345, 0.35, 1.0, 600);
        return jet.withHead(jet.head().withMixing(MixingEfficiency.of(efficiency, 0, TEST)));
    }

    @Nested
    class Erosion extends FeedModelContract {
        @Override
        FeedModel model() {
            return ErosionFeed.standard();
        }

        @Override
        Iterable<Material> materials() {
            return metals();
        }
    }

    @Nested
    class ErosionWithThreshold extends FeedModelContract {
        @Override
        FeedModel model() {
            return ErosionFeed.standard().withThreshold(metresPerSecond(120)).withRoundness(0.35);
        }

        @Override
        Iterable<Material> materials() {
            return metals();
        }
    }

    @Nested
    class SpecificEnergy extends FeedModelContract {
        @Override
        FeedModel model() {
            return SpecificEnergyFeed.ofSteel();
        }
    }

    @Nested
    class LinearDeclination extends FeedModelContract {
        @Override
        FeedModel model() {
            return DeclinationFeed.linear(MachinabilityFeed.published());
        }
    }

    @Nested
    class SteepDeclination extends FeedModelContract {
        @Override
        FeedModel model() {
            return DeclinationFeed.threeHalvesPower(SpecificEnergyFeed.ofSteel());
        }
    }

    @Nested
    class OwnExponents extends FeedModelContract {
        @Override
        FeedModel model() {
            return MachinabilityFeed.published()
                    .withExponent(FeedExponent.PRESSURE, 1.4)
                    .withExponent(FeedExponent.FEED, 1.05);
        }
    }

    @Nested
    class Threshold extends FeedModelContract {
        @Override
        FeedModel model() {
            return threshold();
        }

        @Override
        Iterable<Material> materials() {
            return List.of(STEEL);
        }

        /** The law holds for one orifice, and warns of another. */
        @Override
        @Test
        void aLargerOrificeCutsFaster() {
            Workpiece piece = Workpiece.of(STEEL, millimetres(10));

            assertThat(model().feed(jet(380, 0.35, 0.9, 400), piece, 2).cautions())
                    .extracting(Caution::code)
                    .contains("other-jet");
            assertThat(model().feed(jet(380, 0.3, 0.9, 400), piece, 2).cautions())
                    .extracting(Caution::code)
                    .doesNotContain("other-jet");
        }
    }

    private static ThresholdFeed threshold() {
        return ThresholdFeed.of(
                STEEL, FeedModelContract.jet(380, 0.3, 0.9, 400), 8e-9, megapascals(60), millimetresPerMinute(1));
    }

    /** Re-derived: with sigma_f = E/14, C_1 = 1 and an efficiency of 0.7 erosion lies 20 to 60 percent higher. */
    @ParameterizedTest
    @ValueSource(strings = {"aluminium", "mild-steel", "titanium"})
    void erosionLiesAboveMachinability(String id) {
        Material material = Materials.standard().get(id);
        AbrasiveJet jet = comparisonJet(0.7);
        double erosion = ErosionFeed.standard()
                .depth(jet, material, millimetresPerMinute(120))
                .si();
        double machinability = MachinabilityFeed.published()
                .depth(jet, material, millimetresPerMinute(120))
                .si();

        assertThat(erosion / machinability).isBetween(1.2, 1.6);
    }

    /** Rival models agree within a factor of 3 for metals over the usual range of jets and thicknesses. */
    @Test
    void modelsAgreeWithinAFactorOverTheUsualRange() {
        for (double pressure : new double[] {250, 345, 415}) {
            for (double thickness : new double[] {5, 10, 25, 60}) {
                AbrasiveJet jet = FeedModelContract.jet(pressure, 0.35, 1.0, 500);
                for (String id : List.of("aluminium", "mild-steel", "titanium", "stainless-304")) {
                    Workpiece piece = Workpiece.of(Materials.standard().get(id), millimetres(thickness));
                    double machinability =
                            MachinabilityFeed.published().feed(jet, piece, 1).si();
                    for (FeedModel rival : List.of(ErosionFeed.standard(), SpecificEnergyFeed.ofSteel())) {
                        assertThat(rival.feed(jet, piece, 1).si() / machinability)
                                .as("%s in %s at %s MPa", rival, piece, pressure)
                                .isBetween(1 / 3.0, 3.0);
                    }
                }
            }
        }
    }

    /** The lecture of IIT Kharagpur uses 13.4 J/mm3 for steel; with an efficiency of 0.7 machinability implies 10 to 14. */
    @ParameterizedTest
    @ValueSource(doubles = {5, 8, 10, 15, 20, 40})
    void machinabilityImpliesTheSpecificEnergyOfSteel(double thickness) {
        assertThat(SpecificEnergyFeed.impliedBy(
                                MachinabilityFeed.published(),
                                comparisonJet(0.7),
                                Workpiece.of(STEEL, millimetres(thickness)))
                        .to(Units.JOULE_PER_CUBIC_MILLIMETRE))
                .isBetween(10.0, 14.0);
    }

    @Test
    void theImpliedEnergyGivesTheFeedBack() {
        AbrasiveJet jet = comparisonJet(0.7);
        Workpiece piece = Workpiece.of(STEEL, millimetres(10));
        var implied = SpecificEnergyFeed.impliedBy(MachinabilityFeed.published(), jet, piece);
        FeedModel model = SpecificEnergyFeed.of(STEEL, implied.value(), 0.1, TEST);

        assertThat(model.feed(jet, piece, 1).si())
                .isCloseTo(MachinabilityFeed.published().feed(jet, piece, 1).si(), within(1e-12));
        assertThat(SpecificEnergyFeed.ofSteel().specificEnergy(STEEL).si()).isCloseTo(13.4e9, within(1.0));
        assertThat(SpecificEnergyFeed.of(STEEL, joulesPerCubicMillimetre(10), 0.1, TEST)
                        .specificEnergy(Materials.standard().get("aluminium"))
                        .to(Units.JOULE_PER_CUBIC_MILLIMETRE))
                .isCloseTo(10 * 87.6 / 213, within(1e-9));
    }

    @Test
    void erosionIsTheSumOfItsParts() {
        AbrasiveJet jet = comparisonJet(0.7);
        var feed = millimetresPerMinute(120);
        double cutting = Kind.LENGTH.si(ErosionFeed.standard().cuttingWear(jet, STEEL, feed));
        double deformation = Kind.LENGTH.si(ErosionFeed.standard().deformationWear(jet, STEEL, feed));

        // evaluated apart from this library, with the same inputs
        assertThat(cutting).isCloseTo(6.0e-3, within(0.06e-3));
        assertThat(deformation).isCloseTo(45.5e-3, within(0.3e-3));
        assertThat(ErosionFeed.standard().depth(jet, STEEL, feed).si()).isCloseTo(cutting + deformation, within(1e-15));
        assertThat(Kind.LENGTH.si(ErosionFeed.standard()
                        .withThreshold(metresPerSecond(900))
                        .deformationWear(jet, STEEL, feed)))
                .isZero();
    }

    @Test
    void erosionAnswersOnlyForKnownStrengths() {
        Material pine = Materials.standard().get("pine");
        AbrasiveJet jet = comparisonJet(0.7);

        assertThat(assertRefused(
                                () -> ErosionFeed.standard().depth(jet, pine, millimetresPerMinute(120)),
                                "no-flow-strength")
                        .parameters())
                .containsEntry("material", pine.name());
        assertThat(ErosionFeed.standard()
                        .withStrengths(FlowStrengths.standard().with(pine, megapascals(700)))
                        .depth(jet, pine, millimetresPerMinute(120))
                        .si())
                .isPositive();
    }

    @Test
    void belowTheThresholdNothingIsCut() {
        Workpiece piece = Workpiece.of(STEEL, millimetres(10));

        assertThat(refusal(
                                NoSolutionException.class,
                                () -> threshold().feed(FeedModelContract.jet(50, 0.3, 0.9, 400), piece, 1))
                        .best(Kind.SPEED))
                .contains(Kind.SPEED.of(0));
        assertThat(assertRefused(
                                () -> threshold()
                                        .feed(
                                                FeedModelContract.jet(380, 0.3, 0.9, 400),
                                                Workpiece.of(
                                                        Materials.standard().get("granite"), millimetres(10)),
                                                1),
                                "other-material")
                        .parameters())
                .containsEntry("calibrated", STEEL.id())
                .containsEntry("material", "granite");
    }

    /** theta = theta_lim (v/v_lim)^n, by hand. */
    @Test
    void declinationFollowsItsPowerLaw() {
        AbrasiveJet jet = comparisonJet(0.7);
        Workpiece piece = Workpiece.of(STEEL, millimetres(10));
        double limit = MachinabilityFeed.published().feed(jet, piece, 1).si();
        DeclinationFeed steep =
                DeclinationFeed.threeHalvesPower(MachinabilityFeed.published()).withLimitingAngle(degrees(20));

        assertThat(steep.declination(jet, piece, metresPerSecond(limit / 4)).to(Units.DEGREE))
                .isCloseTo(20 / 8.0, within(1e-9));
        assertThat(steep.feedForDeclination(jet, piece, degrees(2.5)).si()).isCloseTo(limit / 4, within(1e-12));
        assertThat(DeclinationFeed.linear(MachinabilityFeed.published())
                        .feed(jet, piece, 4)
                        .si())
                .isCloseTo(limit / 4, within(1e-12));
        assertThat(DeclinationFeed.linear(MachinabilityFeed.published())
                        .declination(jet, piece, metresPerSecond(limit))
                        .to(Units.DEGREE))
                .isCloseTo(27.26, within(0.01));
        NoSolutionException tooFast =
                refusal(NoSolutionException.class, () -> steep.declination(jet, piece, metresPerSecond(2 * limit)));
        assertThat(tooFast.code()).isEqualTo("not-separated");
        assertThat(Kind.SPEED.si(tooFast.best(Kind.SPEED).orElseThrow())).isCloseTo(limit, within(1e-15));
    }

    /** A changed exponent leaves the feed at its reference setting as it was. */
    @Test
    void exponentsTurnTheModelAboutTheirReference() {
        Workpiece piece = Workpiece.of(STEEL, millimetres(10));
        FeedModel published = MachinabilityFeed.published();
        FeedModel own = MachinabilityFeed.published()
                .withExponent(FeedExponent.PRESSURE, 1.2)
                .withExponent(FeedExponent.ABRASIVE_FLOW, 0.5);
        AbrasiveJet reference = FeedModelContract.jet(345, 0.3, 0.9, 600);
        AbrasiveJet twice = FeedModelContract.jet(172.5, 0.3, 0.9, 600);

        assertThat(own.feed(reference, piece, 1).si())
                .isCloseTo(published.feed(reference, piece, 1).si(), within(1e-12));
        assertThat(own.feed(reference, piece, 1).si()
                        / own.feed(twice, piece, 1).si())
                .isCloseTo(Math.pow(2, 1.2 * 1.15), within(1e-9));
        FeedModel flat = MachinabilityFeed.published().withExponent(FeedExponent.FEED, 1);
        assertThat(flat.depth(reference, STEEL, millimetresPerMinute(120)).si())
                .isCloseTo(
                        published
                                .depth(reference, STEEL, millimetresPerMinute(120))
                                .si(),
                        within(1e-12));
        assertThat(flat.feed(reference, piece, 1).si()
                        / flat.feed(reference, piece, 3).si())
                .isCloseTo(3, within(1e-9));
    }
}

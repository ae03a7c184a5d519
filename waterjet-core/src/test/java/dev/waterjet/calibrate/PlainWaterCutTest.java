package dev.waterjet.calibrate;

import static dev.waterjet.Refusals.assertRefused;
import static dev.waterjet.measure.Measures.celsius;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.millimetres;
import static dev.waterjet.measure.Measures.millimetresPerMinute;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.Refusals;
import dev.waterjet.evidence.EvidenceGrade;
import dev.waterjet.feed.PlainWaterFeed;
import dev.waterjet.hydraulics.Orifice;
import dev.waterjet.hydraulics.WaterJet;
import dev.waterjet.material.Material;
import dev.waterjet.material.Materials;
import dev.waterjet.measure.Kind;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class PlainWaterCutTest {

    private static final Material SOFT = Materials.standard().all().iterator().next();

    private static WaterJet jet(double pressureMpa, double boreMm) {
        return WaterJet.of(Orifice.sapphire(millimetres(boreMm)), megapascals(pressureMpa), celsius(20));
    }

    private static PlainWaterFeed truth() {
        return PlainWaterFeed.of(SOFT, jet(350, 0.15), millimetres(5), millimetres(20), millimetresPerMinute(10_000))
                .withThreshold(megapascals(80))
                .withExponents(1.1, 1.3, 0.8);
    }

    private static PlainWaterCut cut(double pressureMpa, double boreMm, double feed, double factor) {
        double depth = truth().depth(jet(pressureMpa, boreMm), millimetres(5), SOFT, millimetresPerMinute(feed))
                .si();
        return PlainWaterCut.of(
                jet(pressureMpa, boreMm), millimetres(5), Kind.LENGTH.of(factor * depth), millimetresPerMinute(feed));
    }

    @Test
    void cutsAtOneSettingScaleTheModelAndKeepThePriors() {
        PlainWaterCut same = cut(350, 0.15, 10_000, 1);
        PlainWaterFeed own = PlainWaterCut.fit(SOFT, List.of(same, same), 0.1).model();
        PlainWaterFeed expected =
                PlainWaterFeed.of(SOFT, jet(350, 0.15), millimetres(5), millimetres(20), millimetresPerMinute(10_000));
        for (double pressure : new double[] {200, 350}) {
            assertThat(own.depth(jet(pressure, 0.2), millimetres(5), SOFT, millimetresPerMinute(4000))
                            .si())
                    .isCloseTo(
                            expected.depth(jet(pressure, 0.2), millimetres(5), SOFT, millimetresPerMinute(4000))
                                    .si(),
                            within(1e-8));
        }
        assertThat(own.evidence().grade()).isEqualTo(EvidenceGrade.FITTED);
        assertThat(own.relativeUncertainty(SOFT)).isCloseTo(0.25, within(1e-12));
    }

    @Test
    void manyCutsGiveExponentsAndThreshold() {
        List<PlainWaterCut> cuts = new ArrayList<>();
        for (double pressure : new double[] {110, 150, 220, 300, 390}) {
            for (double bore : new double[] {0.1, 0.2}) {
                for (double feed : new double[] {2000, 9000}) {
                    cuts.add(cut(pressure, bore, feed, 1));
                }
            }
        }
        FittedModel<PlainWaterFeed> fitted = PlainWaterCut.fit(SOFT, cuts, 0.01);
        assertThat(fitted.fit().value("exponent of the orifice bore")).isCloseTo(1.1, within(0.005));
        assertThat(fitted.fit().value("exponent of the pressure")).isCloseTo(1.3, within(0.02));
        assertThat(fitted.fit().value("exponent of the feed rate")).isCloseTo(0.8, within(0.005));
        assertThat(Kind.PRESSURE.si(fitted.model().threshold())).isCloseTo(80e6, within(2e6));
        WaterJet other = jet(260, 0.16);
        assertThat(fitted.model()
                                .depth(other, millimetres(5), SOFT, millimetresPerMinute(5000))
                                .si()
                        / truth().depth(other, millimetres(5), SOFT, millimetresPerMinute(5000))
                                .si())
                .isCloseTo(1, within(0.01));
    }

    @Test
    void scatteredCutsWidenTheAnswer() {
        Random random = new Random(3);
        List<PlainWaterCut> cuts = new ArrayList<>();
        for (int i = 0; i < 12; i++) {
            cuts.add(cut(250 + 10 * (i % 4), 0.15, 4000 + 500 * (i % 3), Math.exp(0.5 * random.nextGaussian())));
        }
        FittedModel<PlainWaterFeed> fitted = PlainWaterCut.fit(SOFT, cuts, 0.5);
        assertThat(fitted.model().relativeUncertainty(SOFT)).isBetween(0.4, 0.9);
        assertThat(Kind.PRESSURE.si(fitted.model().threshold())).isZero();
    }

    @Test
    void cutsOutOfRangeAreRefused() {
        List<PlainWaterCut> one = List.of(cut(300, 0.15, 5000, 1));
        assertThat(Refusals.of(() -> PlainWaterCut.fit(SOFT, one, 0.1))).isEqualTo("too-few-plain-water-cuts");
        assertRefused(
                () -> PlainWaterCut.fit(SOFT, one, 0), "must-be-at-least", "relative deviation of the depth", 0.001);
        assertRefused(
                () -> PlainWaterCut.of(jet(300, 0.15), millimetres(5), millimetres(0), millimetresPerMinute(100)),
                "must-be-above",
                "depth of the cut",
                0);
    }
}

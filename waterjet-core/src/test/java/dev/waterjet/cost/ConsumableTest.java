package dev.waterjet.cost;

import static dev.waterjet.measure.Measures.hours;
import static dev.waterjet.measure.Measures.millimetres;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import dev.waterjet.hydraulics.Orifice;
import dev.waterjet.jet.FocusingTube;
import dev.waterjet.jet.TubeWear;
import dev.waterjet.measure.Kind;
import dev.waterjet.plan.Jobs;
import java.util.Random;
import org.apache.commons.math3.distribution.LogNormalDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ConsumableTest {

    private static final Consumable TUBE = Consumable.focusingTube();

    @Test
    void chancesAreThoseOfALogNormalDistribution() {
        // Commons Math as the second opinion: median sqrt(50 x 150) h, deviation ln(3)/2
        LogNormalDistribution life = new LogNormalDistribution(Math.log(Math.sqrt(50 * 150.0)), Math.log(3) / 2);
        for (double h = 5; h < 500; h += 7) {
            assertThat(TUBE.failureProbability(hours(h))).isCloseTo(life.cumulativeProbability(h), within(1e-9));
        }
        for (double chance : new double[] {0.01, 0.1, 0.5, 0.9}) {
            assertThat(Kind.TIME.si(TUBE.replacementTime(chance)) / 3600)
                    .isCloseTo(life.inverseCumulativeProbability(chance), within(1e-6));
        }
    }

    @Test
    void meanServiceIsTheAreaUnderTheChanceToLast() {
        // E[min(T, a)] is the integral of 1 - F from 0 to a
        double integral = 0;
        double step = 10;
        for (double t = step / 2; t < 80 * 3600; t += step) {
            integral += step * (1 - TUBE.failureProbability(Kind.TIME.of(t)));
        }
        assertThat(Kind.TIME.si(TUBE.meanService(hours(80)))).isCloseTo(integral, within(1e-3 * integral));
        assertThat(Kind.TIME.si(TUBE.meanService(hours(80)))).isLessThan(80 * 3600);
    }

    /** Renewal: tubes are drawn and replaced one after the other, on failure or at an age, over many hours. */
    @ParameterizedTest
    @ValueSource(doubles = {40, 80, 1e6})
    void anHourOfJetCostsTheReplacementsOfALongRun(double ageH) {
        Consumable tube = ageH < 1e6 ? TUBE.replacedAt(hours(ageH)) : TUBE;
        Prices prices = Jobs.RATES.withLives(Consumable.orifice(Orifice.Jewel.SAPPHIRE), tube);
        Random random = new Random(7);
        double used = 0;
        int count = 200_000;
        for (int i = 0; i < count; i++) {
            used += Math.min(ageH, Math.sqrt(50 * 150.0) * Math.exp(Math.log(3) / 2 * random.nextGaussian()));
        }

        assertThat(prices.jetItems(Jobs.JET).get(CostItem.TUBE)).isCloseTo(110 * count / used, withinPercentage(0.5));
    }

    @Test
    void theRangeToldIsTwoTimesOutOfThree() {
        Consumable sapphire = Consumable.orifice(Orifice.Jewel.SAPPHIRE);

        assertThat(sapphire.failureProbability(hours(100)) - sapphire.failureProbability(hours(50)))
                .isCloseTo(0.6827, within(1e-4));
        assertThat(Consumable.orifice(Orifice.Jewel.DIAMOND).life().si())
                .isGreaterThan(3 * sapphire.life().si());
    }

    @Test
    void whatIsLeftRunsOut() {
        double due = Kind.TIME.si(TUBE.replacementTime(0.1));

        assertThat(Kind.TIME.si(TUBE.remainingLife(hours(10), 0.1))).isCloseTo(due - 36000, within(1e-6));
        assertThat(Kind.TIME.si(TUBE.remainingLife(hours(1000), 0.1))).isZero();
        assertThatThrownBy(() -> TUBE.remainingLife(hours(-1), 0.1))
                .hasMessageContaining("age of the focusing tube is -1 h");
        assertThatThrownBy(() -> TUBE.replacementTime(1)).hasMessageContaining("failure probability");
    }

    @Test
    void aSureLifeEndsAllAtOnce() {
        Consumable sure = Consumable.of("filter", hours(100), hours(100), TUBE.evidence());

        assertThat(sure.failureProbability(hours(99.9))).isZero();
        assertThat(sure.failureProbability(hours(100))).isEqualTo(1);
        assertThat(Kind.TIME.si(sure.meanService(hours(40)))).isEqualTo(40 * 3600);
    }

    @Test
    void theExitBoreGrowsAsMeasured() {
        FocusingTube tube = FocusingTube.of(millimetres(0.76), millimetres(76));
        TubeWear wear = TubeWear.measured(tube.withExitBore(millimetres(0.80)), hours(20));

        assertThat(Kind.SPEED.si(wear.rate()) * 3.6e9).isCloseTo(2, within(1e-9));
        assertThat(wear.after(tube, hours(30)).exitBoreSi()).isCloseTo(0.82e-3, within(1e-12));
        assertThat(Kind.TIME.si(wear.until(tube, millimetres(0.90)))).isCloseTo(70 * 3600, within(1e-3));
        assertThatThrownBy(() -> TubeWear.measured(tube, hours(20))).hasMessageContaining("wear rate");
    }
}

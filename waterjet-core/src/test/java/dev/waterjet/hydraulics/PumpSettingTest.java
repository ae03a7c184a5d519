package dev.waterjet.hydraulics;

import static dev.waterjet.Refusals.assertRefused;
import static dev.waterjet.measure.Measures.celsius;
import static dev.waterjet.measure.Measures.kilowatts;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.millimetres;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.measure.Kind;
import dev.waterjet.water.Water;
import dev.waterjet.water.WaterState;
import org.junit.jupiter.api.Test;

class PumpSettingTest {

    private final Orifice orifice = Orifice.sapphire(millimetres(0.25));

    @Test
    void theLargestOrificeTakesTheWholeFlow() {
        PumpSetting pump = PumpSetting.ofPower(kilowatts(22), megapascals(380));

        for (int heads = 1; heads <= 4; heads++) {
            Orifice largest = pump.largestOrifice(orifice, heads);
            assertThat(pump.share(largest, heads)).isCloseTo(1, within(1e-12));
        }
    }

    @Test
    void headsFedNeverExceedTheMaximumFlow() {
        PumpSetting pump = PumpSetting.ofPower(kilowatts(37), megapascals(400));
        int heads = pump.headsFed(orifice);

        assertThat(heads).isPositive();
        assertThat(pump.share(orifice, heads)).isLessThanOrEqualTo(1);
        assertThat(pump.share(orifice, heads + 1)).isGreaterThan(1);
    }

    /** A pump of the work that a jet requires feeds exactly that jet; by rated power it would seem 7 % too weak. */
    @Test
    void pumpOfTheWorkOfAJetFeedsIt() {
        WaterState inlet = Water.stable().at(megapascals(0.101325), celsius(20));
        Compression compression = Compression.isentropic(inlet, megapascals(400.101325));
        WaterJet jet = WaterJet.of(Orifice.sapphire(millimetres(0.3)), megapascals(400));
        PumpSetting pump = PumpSetting.ofPumpWork(jet.pumpWork(), compression);
        assertThat(Kind.PRESSURE.si(pump.pressure())).isCloseTo(400e6, within(1.0));
        assertThat(pump.share(jet.orifice(), 1)).isCloseTo(1, within(1e-6));
        assertThat(PumpSetting.ofPower(jet.pumpWork(), megapascals(400)).share(jet.orifice(), 1))
                .isCloseTo(1.069, within(0.001));
        assertRefused(() -> PumpSetting.ofPumpWork(Kind.POWER.of(0), compression), "must-be-above", "pump work", 0);
    }

    @Test
    void noHeadsIsRefused() {
        PumpSetting pump = PumpSetting.ofPower(kilowatts(37), megapascals(400));

        assertRefused(() -> pump.largestOrifice(orifice, 0), "must-be-at-least", "number of heads", 1);
        assertRefused(
                () -> PumpSetting.ofPower(kilowatts(-1), megapascals(400)),
                "must-be-above",
                "rated hydraulic power of the pump",
                0);
    }

    @Test
    void speedLawsOrderAsWaterGivesWay() {
        WaterJet jet = WaterJet.of(orifice, megapascals(400));

        assertThat(jet.withSpeedModel(JetSpeedModel.TAIT).speedSi())
                .isLessThan(jet.withSpeedModel(JetSpeedModel.INCOMPRESSIBLE).speedSi());
        assertThat(WaterJetKernel.taitFactor(1e-3)).isCloseTo(1, within(1e-11));
        assertThat(WaterJetKernel.taitFactor(0)).isEqualTo(1);
    }

    @Test
    void impossibleOrificesAreRefused() {
        assertRefused(() -> Orifice.sapphire(millimetres(0)), "must-be-above", "orifice bore", 0);
        assertRefused(() -> orifice.withDischargeCoefficient(1.2), "must-be-at-most", "discharge coefficient", 1);
        assertRefused(
                () -> WaterJet.of(orifice, megapascals(1500)),
                "must-be-at-most",
                "pressure at the orifice",
                1e9 - 101_325);
    }
}

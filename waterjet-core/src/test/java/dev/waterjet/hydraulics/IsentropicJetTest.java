package dev.waterjet.hydraulics;

import static dev.waterjet.Refusals.assertRefused;
import static dev.waterjet.measure.Measures.celsius;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.millimetres;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import dev.waterjet.measure.DomainException;
import dev.waterjet.measure.Kind;
import dev.waterjet.water.Water;
import java.util.List;
import org.junit.jupiter.api.Test;

class IsentropicJetTest {

    private static final String PRESSURE = "absolute pressure at the orifice";

    private final Orifice orifice = Orifice.sapphire(millimetres(0.3));

    @Test
    void theFastSpeedIsWithin1e8OfTheExactOneWhereverWaterIsLiquid() {
        int liquid = 0;
        int frozen = 0;
        for (double pressureMpa = 20; pressureMpa <= 1000; pressureMpa += 7) {
            for (double temperatureC = 1; temperatureC <= 60; temperatureC += 0.5) {
                double pressurePa = pressureMpa * 1e6;
                double temperatureK = temperatureC + 273.15;
                if (temperatureC < meltingC(pressurePa)) {
                    assertRefused(() -> IsentropicJet.fastSpeedSi(pressurePa, temperatureK), "water-freezes");
                    frozen++;
                } else {
                    double exact = IsentropicJet.from(Water.stable().atSi(pressurePa, temperatureK))
                            .speedSi();
                    assertThat(IsentropicJet.fastSpeedSi(pressurePa, temperatureK) / exact)
                            .as("%s MPa, %s C", pressureMpa, temperatureC)
                            .isCloseTo(1, within(1e-8));
                    liquid++;
                }
            }
        }
        assertThat(liquid).isGreaterThan(14_000);
        assertThat(frozen).isGreaterThan(1_000);
    }

    private static double meltingC(double pressurePa) {
        return dev.waterjet.water.Ice.meltingTemperature(dev.waterjet.measure.Kind.PRESSURE.of(pressurePa))
                        .getValue()
                        .doubleValue()
                - 273.15;
    }

    @Test
    void theFastSpeedStandsOnTheFitThatMadeIt() {
        List<List<Double>> rows = JetSpeedFit.rows();
        for (double pressurePa : new double[] {20e6, 333e6, 600e6}) {
            for (double temperatureK : new double[] {274.15, 300, 333.15}) {
                double x = 2 * (mapped(pressurePa) - mapped(20e6)) / (mapped(1e9) - mapped(20e6)) - 1;
                double y = 2 * (temperatureK - 274.15) / 59 - 1;
                double sum = 0;
                for (int j = 0; j < rows.size(); j++) {
                    for (int i = 0; i < rows.get(j).size(); i++) {
                        sum += rows.get(j).get(i) * Math.pow(x, i) * Math.pow(y, j);
                    }
                }
                double speed = Math.sqrt(2 * (pressurePa - 101325)) * sum;
                assertThat(IsentropicJet.fastSpeedSi(pressurePa, temperatureK) / speed)
                        .isCloseTo(1, within(1e-11));
            }
        }
    }

    private static double mapped(double pressurePa) {
        return pressurePa / (pressurePa + 1e9);
    }

    @Test
    void theFastSpeedRefusesWhatItWasNotMadeFor() {
        assertRefused(() -> IsentropicJet.fastSpeedSi(19e6, 300), "must-be-at-least", PRESSURE, 20e6);
        assertRefused(() -> IsentropicJet.fastSpeedSi(1001e6, 330), "must-be-at-most", PRESSURE, 1e9);
        assertRefused(
                () -> IsentropicJet.fastSpeedSi(100e6, 273.15), "must-be-at-least", "temperature of water", 274.15);
        assertRefused(
                () -> IsentropicJet.fastSpeedSi(100e6, 334.15), "must-be-at-most", "temperature of water", 333.15);
        assertThatThrownBy(() -> IsentropicJet.fastSpeedSi(100e6, Double.NaN)).isInstanceOf(DomainException.class);
    }

    /** Losses of the approximate forms against the isentropic jet at 20 C, worked out outside this project. */
    @Test
    void approximateFormsAreAsFarOffAsKnown() {
        double[][] known = {{100, 1.011, 1.0004}, {400, 1.036, 1.0025}, {600, 1.049, 1.0040}};
        for (double[] row : known) {
            WaterJet jet = WaterJet.of(orifice, megapascals(row[0] - 0.101325));
            double exact = jet.speedSi();
            assertThat(jet.withSpeedModel(JetSpeedModel.INCOMPRESSIBLE).speedSi() / exact)
                    .isCloseTo(row[1], within(6e-4));
            assertThat(jet.withSpeedModel(JetSpeedModel.TAIT).speedSi() / exact).isCloseTo(row[2], within(6e-5));
        }
    }

    @Test
    void warmWaterIsFasterAndAColdExitIsMetastable() {
        WaterJet jet = WaterJet.of(orifice, megapascals(400));

        assertThat(jet.withTemperature(celsius(40)).speedSi()).isGreaterThan(jet.speedSi());
        assertThat(jet.withTemperature(celsius(20)).speedSi()).isEqualTo(jet.speedSi());
        assertThat(IsentropicJet.of(megapascals(400), celsius(20)).exit().isMetastable())
                .isFalse();
        assertThat(IsentropicJet.of(megapascals(600), celsius(5)).exit().isMetastable())
                .isTrue();
        assertThat(IsentropicJet.of(megapascals(400), celsius(20)))
                .isEqualTo(IsentropicJet.from(Water.stable().atSi(400e6, 293.15)));
    }

    /** Of water that hardly yields, v = sqrt(2 p/rho): down to pressures at which enthalpies differ by rounding alone. */
    @Test
    void aLowPressureGivesTheSpeedOfBernoulli() {
        for (double kelvin : new double[] {275, 279.0219584443151, 293.15, 330}) {
            double density = Water.stable().atSi(101_325, kelvin).densitySi();
            for (double gauge = 1e-6; gauge < 2e4; gauge *= 3) {
                double speed = IsentropicJet.of(Kind.PRESSURE.of(101_325 + gauge), Kind.TEMPERATURE.of(kelvin))
                        .speedSi();

                assertThat(speed).isCloseTo(Math.sqrt(2 * gauge / density), withinPercentage(1e-3));
            }
        }
    }

    @Test
    void noJetFromIceOrFromTheAtmosphere() {
        assertRefused(() -> WaterJet.of(orifice, megapascals(950)), "water-freezes");
        assertRefused(() -> IsentropicJet.of(megapascals(0.1), celsius(20)), "must-be-above", PRESSURE, 101325);
        // below 20 MPa the law falls back on the exact solve, without a step
        double below = WaterJet.of(orifice, megapascals(20 - 0.101325 - 1e-6)).speedSi();
        double above = WaterJet.of(orifice, megapascals(20 - 0.101325 + 1e-6)).speedSi();
        assertThat(above / below).isCloseTo(1 + 5e-8, within(2e-8));
    }
}

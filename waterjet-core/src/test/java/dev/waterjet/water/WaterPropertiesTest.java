package dev.waterjet.water;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.measure.DomainException;
import net.jqwik.api.Assume;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.apache.commons.math3.analysis.integration.IterativeLegendreGaussIntegrator;

/** Laws of thermodynamics that hold for any equation of state: what breaks them is a slip of the pen in ours. */
class WaterPropertiesTest {

    private static final String SEED = "19950";
    private static final double HALF_STEP = 1e-4;

    private final Water stable = Water.stable();
    private final Water metastable = Water.metastable();

    @Property(tries = 300, seed = SEED)
    void isentropeIntegralEqualsTheFallOfEnthalpy(
            @ForAll @DoubleRange(min = 5, max = 1000) double pressureMpa,
            @ForAll @DoubleRange(min = 274.15, max = 370) double temperatureK) {
        assumeLiquid(pressureMpa * 1e6, temperatureK);
        WaterState supply = stable.atSi(pressureMpa * 1e6, temperatureK);
        WaterState exit = metastable.atEntropySi(101325, supply.entropySi());
        // int dp/rho along s = const, in ln p
        double integral = new IterativeLegendreGaussIntegrator(24, 1e-10, 1e-12)
                .integrate(
                        10_000,
                        log -> Math.exp(log)
                                / metastable
                                        .atEntropySi(Math.exp(log), supply.entropySi())
                                        .densitySi(),
                        Math.log(101325),
                        Math.log(pressureMpa * 1e6));

        assertThat(integral / (supply.enthalpySi() - exit.enthalpySi())).isCloseTo(1, within(1e-9));
    }

    /** (dp/dT) at constant rho = rho^2 (-ds/drho) at constant T; (drho/dT) at constant p = rho^2 (ds/dp) at constant T. */
    @Property(tries = 500, seed = SEED)
    void maxwellRelationsHold(
            @ForAll @DoubleRange(min = 1, max = 980) double pressureMpa,
            @ForAll @DoubleRange(min = 275, max = 640) double temperatureK) {
        assumeLiquid(pressureMpa * 1e6 * (1 - 2 * HALF_STEP), temperatureK - 1);
        double pressurePa = pressureMpa * 1e6;
        assumeLiquid(pressurePa, temperatureK + 1);
        double dp = pressurePa * HALF_STEP;
        double entropySlope = (stable.atSi(pressurePa + dp, temperatureK).entropySi()
                        - stable.atSi(pressurePa - dp, temperatureK).entropySi())
                / (2 * dp);
        WaterState state = stable.atSi(pressurePa, temperatureK);

        assertThat(entropySlope * state.densitySi())
                .isCloseTo(-state.expansionSi(), within(1e-5 * Math.abs(state.expansionSi()) + 2e-8));
    }

    @Property(tries = 500, seed = SEED)
    void soundSpeedIsTheSlopeOfTheIsentrope(
            @ForAll @DoubleRange(min = 1, max = 980) double pressureMpa,
            @ForAll @DoubleRange(min = 275, max = 620) double temperatureK) {
        double pressurePa = pressureMpa * 1e6;
        assumeLiquid(pressurePa, temperatureK);
        WaterState state = stable.atSi(pressurePa, temperatureK);
        double dp = pressurePa * 0.01;
        double entropy = state.entropySi();
        double rise = metastable.atEntropySi(pressurePa + dp, entropy).densitySi()
                - metastable.atEntropySi(pressurePa - dp, entropy).densitySi();

        assertThat(Math.sqrt(2 * dp / rise) / state.soundSpeedSi()).isCloseTo(1, within(1e-4));
    }

    @Property(tries = 500, seed = SEED)
    void heatCapacitiesAndCompressibilityAgree(
            @ForAll @DoubleRange(min = 1, max = 1000) double pressureMpa,
            @ForAll @DoubleRange(min = 274, max = 640) double temperatureK) {
        assumeLiquid(pressureMpa * 1e6, temperatureK);
        WaterState state = stable.atSi(pressureMpa * 1e6, temperatureK);
        double difference = state.temperatureSi()
                * state.expansionSi()
                * state.expansionSi()
                / (state.densitySi() * state.compressibilitySi());

        assertThat(state.isobaricHeatCapacitySi() - state.isochoricHeatCapacitySi())
                .isCloseTo(difference, within(1e-9 * state.isobaricHeatCapacitySi()));
        assertThat(state.soundSpeedSi() * state.soundSpeedSi() * state.densitySi() * state.compressibilitySi())
                .isCloseTo(state.isobaricHeatCapacitySi() / state.isochoricHeatCapacitySi(), within(1e-9));
    }

    @Property(tries = 1500, seed = SEED)
    void everyQuestionEndsInAStateOrALimit(
            @ForAll @DoubleRange(min = -3, max = 3.1) double logPressureMpa,
            @ForAll @DoubleRange(min = 220, max = 680) double temperatureK) {
        double pressurePa = Math.pow(10, logPressureMpa) * 1e6;
        try {
            WaterState state = stable.atSi(pressurePa, temperatureK);
            assertThat(state.isMetastable()).isFalse();
            assertThat(state.densitySi()).isBetween(322.0, 1400.0);
            assertThat(stable.atDensitySi(state.densitySi(), temperatureK).pressureSi())
                    .isCloseTo(pressurePa, within(1e-10 / state.compressibilitySi()));
            assertThat(stable.atEntropySi(pressurePa, state.entropySi()).temperatureSi())
                    .isCloseTo(temperatureK, within(1e-6));
            assertThat(stable.atEnthalpySi(pressurePa, state.enthalpySi()).temperatureSi())
                    .isCloseTo(temperatureK, within(1e-6));
        } catch (DomainException e) {
            assertThat(e.getMessage()).contains("it must be ");
            assertThat(e.limit().orElseThrow()).isFinite();
        }
    }

    @Property(tries = 1000, seed = SEED)
    void anyDensityEndsInAStateOrALimit(
            @ForAll @DoubleRange(min = -3, max = 3.2) double logDensity,
            @ForAll @DoubleRange(min = 230, max = 1300) double temperatureK) {
        try {
            WaterState state = stable.atDensitySi(Math.pow(10, logDensity), temperatureK);
            assertThat(state.pressureSi()).isBetween(0.0, 1.000001e9);
            assertThat(state.soundSpeedSi()).isBetween(1.0, 5000.0);
        } catch (DomainException e) {
            assertThat(e.limit().orElseThrow()).isFinite();
        }
    }

    private void assumeLiquid(double pressurePa, double temperatureK) {
        boolean liquid;
        try {
            liquid = !stable.atSi(pressurePa, temperatureK).isMetastable();
        } catch (DomainException e) {
            liquid = false;
        }
        Assume.that(liquid);
    }
}

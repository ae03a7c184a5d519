package dev.waterjet.water;

import static dev.waterjet.measure.Measures.celsius;
import static dev.waterjet.measure.Measures.kelvins;
import static dev.waterjet.measure.Measures.kilogramsPerCubicMetre;
import static dev.waterjet.measure.Measures.megapascals;
import static org.assertj.core.api.Assertions.assertThat;

import dev.waterjet.ValueContract;
import dev.waterjet.measure.Kind;
import org.junit.jupiter.api.Test;

class WaterValuesTest {

    private final WaterState state = Water.stable().at(megapascals(400), celsius(20));

    @Test
    void waterIsStableOrMayBeMetastable() {
        ValueContract.of(Water::stable)
                .differs("metastable", Water.metastable())
                .prints("stable water")
                .check();
    }

    @Test
    void aStateIsItsTemperatureAndPressure() {
        ValueContract.of(() -> Water.stable().at(megapascals(400), celsius(20)))
                .has("temperature", WaterState::temperature, celsius(20))
                .has("pressure", WaterState::pressure, megapascals(400))
                .has("stable", WaterState::isMetastable, false)
                .differs("temperature", Water.stable().at(megapascals(400), celsius(21)))
                .differs("pressure", Water.stable().at(megapascals(401), celsius(20)))
                .differs("metastable", Water.metastable().at(megapascals(0.1), celsius(-5)))
                .prints("400 MPa", "20 ")
                .check();
    }

    /** Liquid and vapour share temperature and pressure, and are not the same water. */
    @Test
    void boilingWaterIsTwoStates() {
        ValueContract.of(() -> Saturation.at(kelvins(450)))
                .has("temperature", boiling -> boiling.vapour().temperature(), kelvins(450))
                .differs("temperature", Saturation.at(kelvins(451)))
                .prints("0.9322 MPa")
                .check();
        Saturation boiling = Saturation.at(kelvins(450));
        assertThat(boiling.pressure()).isEqualTo(boiling.liquid().pressure());
        assertThat(boiling.liquid()).isNotEqualTo(boiling.vapour()).doesNotHaveSameHashCodeAs(boiling.vapour());
    }

    @Test
    void eachPropertyIsOneNumberInTwoForms() {
        assertThat(Kind.TEMPERATURE.si(state.temperature())).isEqualTo(state.temperatureSi());
        assertThat(Kind.PRESSURE.si(state.pressure())).isEqualTo(state.pressureSi());
        assertThat(Kind.DENSITY.si(state.density())).isEqualTo(state.densitySi());
        assertThat(Kind.SPECIFIC_ENERGY.si(state.enthalpy())).isEqualTo(state.enthalpySi());
        assertThat(Kind.SPECIFIC_HEAT.si(state.entropy())).isEqualTo(state.entropySi());
        assertThat(Kind.SPECIFIC_HEAT.si(state.isobaricHeatCapacity())).isEqualTo(state.isobaricHeatCapacitySi());
        assertThat(Kind.SPECIFIC_HEAT.si(state.isochoricHeatCapacity())).isEqualTo(state.isochoricHeatCapacitySi());
        assertThat(Kind.SPEED.si(state.soundSpeed())).isEqualTo(state.soundSpeedSi());
        assertThat(Kind.COMPRESSIBILITY.si(state.compressibility())).isEqualTo(state.compressibilitySi());
        assertThat(Kind.THERMAL_EXPANSION.si(state.expansion())).isEqualTo(state.expansionSi());
        assertThat(Kind.DYNAMIC_VISCOSITY.si(state.viscosity())).isEqualTo(state.viscositySi());
        assertThat(state.describe())
                .containsKeys("temperature_K", "pressure_Pa", "metastable", "density_kg_per_m3", "sound_speed_m_per_s");
    }

    @Test
    void eachQuestionComesInTwoForms() {
        Water water = Water.stable();

        assertThat(water.at(megapascals(400), celsius(20))).isEqualTo(water.atSi(400e6, 293.15));
        assertThat(water.atDensity(kilogramsPerCubicMetre(1100), kelvins(300))).isEqualTo(water.atDensitySi(1100, 300));
        assertThat(water.atEntropy(megapascals(100), state.entropy()))
                .isEqualTo(water.atEntropySi(100e6, state.entropySi()));
        assertThat(water.atEnthalpy(megapascals(100), state.enthalpy()))
                .isEqualTo(water.atEnthalpySi(100e6, state.enthalpySi()));
    }
}

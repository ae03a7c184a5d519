package dev.waterjet.hydraulics;

import static dev.waterjet.Refusals.assertRefused;
import static dev.waterjet.measure.Measures.celsius;
import static dev.waterjet.measure.Measures.kilogramsPerCubicMetre;
import static dev.waterjet.measure.Measures.litresPerMinute;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.metres;
import static dev.waterjet.measure.Measures.millimetres;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.evidence.Caution;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.measure.DomainException;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Measures;
import dev.waterjet.measure.Units;
import dev.waterjet.water.Water;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class WaterJetTest {

    private final Orifice orifice = Orifice.sapphire(millimetres(0.3)).withDischargeCoefficient(0.7);
    private final WaterJet jet = WaterJet.of(orifice, megapascals(400)).withWaterDensity(kilogramsPerCubicMetre(1000));

    /** By hand: sqrt(2 * 400e6 / 1000) = 894.427 m/s through 0.7 * pi/4 * (0.3 mm)^2. */
    @Test
    void theContractedJetCarriesTheMassFlow() {
        for (double velocity : new double[] {0.9, 0.98, 1}) {
            WaterJet jet = WaterJet.of(Orifice.sapphire(millimetres(0.33)), megapascals(300));
            JetContraction contraction = JetContraction.of(jet, velocity);
            double densityKgPerM3 = Water.metastable()
                    .atEntropySi(
                            101_325,
                            Water.stable()
                                    .atSi(300e6 + 101_325, Kind.TEMPERATURE.si(jet.temperature()))
                                    .entropySi())
                    .densitySi();
            double areaM2 = Math.PI / 4 * Math.pow(Kind.LENGTH.si(contraction.diameter()), 2);
            assertThat(densityKgPerM3 * areaM2 * Kind.SPEED.si(contraction.speed()))
                    .isCloseTo(jet.massFlowSi(), within(1e-9 * jet.massFlowSi()));
        }
        Orifice full = Orifice.sapphire(millimetres(0.3)).withDischargeCoefficient(1);
        assertRefused(
                () -> JetContraction.of(WaterJet.of(full, megapascals(300)), 0.98),
                "must-be-at-most",
                "contraction coefficient",
                1);
        assertRefused(
                () -> JetContraction.of(WaterJet.of(full, megapascals(300)), 1.01),
                "must-be-at-most",
                "velocity coefficient",
                1);
    }

    @Test
    void flowPowerAndPushFollowFromTheSpeeds() {
        double volume = 0.7 * Math.PI / 4 * 9e-8 * Math.sqrt(8e5);

        assertThat(jet.volumeFlowSi()).isCloseTo(volume, within(1e-18));
        assertThat(Kind.VOLUME_FLOW.si(jet.volumeFlow())).isEqualTo(jet.volumeFlowSi());
        assertThat(jet.massFlowSi()).isCloseTo(1000 * volume, within(1e-15));
        assertThat(Kind.MASS_FLOW.si(jet.massFlow())).isEqualTo(jet.massFlowSi());
        assertThat(Kind.POWER.si(jet.ratedHydraulicPower())).isCloseTo(400e6 * volume, within(1e-8));
        double speed = jet.speedSi();
        assertThat(Kind.SPEED.si(jet.speed())).isEqualTo(speed);
        assertThat(Kind.POWER.si(jet.kineticPower())).isCloseTo(1000 * volume * speed * speed / 2, within(1e-8));
        assertThat(Kind.FORCE.si(jet.reactionForce())).isCloseTo(1000 * volume * speed, within(1e-11));
        assertThat(Kind.TEMPERATURE.si(jet.temperature())).isEqualTo(293.15);
        assertThat(jet.pressureSi()).isEqualTo(400e6);
    }

    /**
     * Handbook forms in US units (fire protection and hydraulic handbooks, from memory): 12.19 ft/s for each root of psi, 29.84
     * gal/min for each square inch times the coefficient and root of psi, 0.0526 lbf for each gal/min times root of psi, 1714 psi
     * gal/min in a horsepower.
     */
    @ParameterizedTest
    @CsvSource({"55000, 0.010, 0.65", "87000, 0.007, 0.68", "12000, 0.040, 0.7"})
    void incompressibleJetsAgreeWithHandbookFormsInUsUnits(double psi, double inch, double coefficient) {
        Orifice bore = Orifice.sapphire(Measures.inches(inch)).withDischargeCoefficient(coefficient);
        WaterJet water = WaterJet.of(bore, Measures.psi(psi)).withSpeedModel(JetSpeedModel.INCOMPRESSIBLE);
        double gallons = Units.fromSi(water.volumeFlowSi(), Units.GALLON_PER_MINUTE);
        assertThat(Units.fromSi(water.speedSi(), Units.FOOT_PER_SECOND) / Math.sqrt(psi))
                .isCloseTo(12.19, within(0.01));
        assertThat(gallons / (coefficient * inch * inch * Math.sqrt(psi))).isCloseTo(29.84, within(0.03));
        assertThat(Units.fromSi(Kind.FORCE.si(water.reactionForce()), Units.POUND_FORCE) / (gallons * Math.sqrt(psi)))
                .isCloseTo(0.0526, within(0.0001));
        assertThat(psi * gallons / Units.fromSi(Kind.POWER.si(water.ratedHydraulicPower()), Units.HORSEPOWER))
                .isCloseTo(1714, within(1.0));
    }

    /** At 20 MPa water of 120 °C leaves at about 119 °C, at 600 MPa water of 101 °C below 100 °C. */
    @Test
    void jetAboveItsBoilingTemperatureHasACaution() {
        Orifice bore = Orifice.sapphire(millimetres(0.3));
        assertThat(WaterJet.of(bore, megapascals(20), celsius(120)).cautions())
                .extracting(Caution::code)
                .containsExactly("jet-flashes");
        assertThat(WaterJet.of(bore, megapascals(600), celsius(101)).cautions()).isEmpty();
        assertThat(WaterJet.of(bore, megapascals(400), celsius(99)).cautions()).isEmpty();
    }

    /** The work of a lossless pump from the same inlet: 374.7 kJ/kg to 400 MPa absolute, worked out from IAPWS-95. */
    @Test
    void pumpWorkIsThatOfALosslessPump() {
        WaterJet cold = WaterJet.of(orifice, Kind.PRESSURE.of(400e6 - 101_325));

        assertThat(Kind.POWER.si(cold.pumpWork()) / cold.massFlowSi()).isCloseTo(374.711e3, within(1.0));
        assertThat(Kind.POWER.si(cold.pumpWork())).isLessThan(Kind.POWER.si(cold.ratedHydraulicPower()));
    }

    /** At 900 MPa water of 20 C is ice, water of 60 C is not. */
    @Test
    void warmWaterStaysLiquidAtPressuresThatFreezeColdWater() {
        WaterJet warm = WaterJet.of(orifice, megapascals(900), celsius(60));

        assertThat(warm.temperature()).isEqualTo(Kind.TEMPERATURE.of(333.15));
        assertRefused(() -> WaterJet.of(orifice, megapascals(900)), "water-freezes");
        assertThat(WaterJet.of(orifice, megapascals(400), celsius(40)))
                .isEqualTo(WaterJet.of(orifice, megapascals(400)).withTemperature(celsius(40)));
    }

    @Test
    void aLoopOverSettingsSeesWhatAJetOfThoseSettingsSees() {
        for (JetSpeedModel law : JetSpeedModel.values()) {
            WaterJet one = jet.withSpeedModel(law);
            WaterJet other = one.withPressure(megapascals(250)).withOrifice(orifice.withBore(millimetres(0.2)));
            assertThat(one.speedAtSi(250e6)).isEqualTo(other.speedSi());
            assertThat(one.volumeFlowAtSi(250e6, 0.0002)).isEqualTo(other.volumeFlowSi());
            assertThat(one.massFlowAtSi(250e6, 0.0002)).isEqualTo(other.massFlowSi());
        }
    }

    @Test
    void warmWaterIsThinnerAtRest() {
        // IAPWS R6-95 gives 992.2 kg/m3 at 40 C and the atmosphere
        WaterJet warm = WaterJet.of(orifice, megapascals(400)).withTemperature(celsius(40));

        assertThat(warm.massFlowSi() / warm.volumeFlowSi()).isCloseTo(992.2, within(0.05));
    }

    @Test
    void pressuresBoresAndCoefficientsEndWhereTheySay() {
        WaterJet simple = jet.withSpeedModel(JetSpeedModel.INCOMPRESSIBLE);

        assertThat(simple.withPressure(megapascals(1000)).pressureSi()).isEqualTo(1e9);
        assertRefused(
                () -> simple.withPressure(megapascals(1000.1)), "must-be-at-most", "pressure at the orifice", 1e9);
        assertRefused(() -> simple.withPressure(megapascals(0)), "must-be-above", "pressure at the orifice", 0);
        assertRefused(() -> simple.withWaterDensity(kilogramsPerCubicMetre(0)), "must-be-above", "density of water", 0);
        assertThat(orifice.withBore(millimetres(5)).boreSi()).isEqualTo(0.005);
        assertRefused(() -> orifice.withBore(millimetres(5.1)), "must-be-at-most", "orifice bore", 0.005);
        assertThat(orifice.withDischargeCoefficient(1).dischargeCoefficientSi()).isEqualTo(1);
        assertRefused(() -> orifice.withDischargeCoefficient(0), "must-be-above", "discharge coefficient", 0);
    }

    /** The range of the fast form belongs to it, edges and all. */
    @Test
    void theFastSpeedReachesItsEdges() {
        for (double pressurePa : new double[] {20e6, 300e6, 600e6}) {
            for (double temperatureK : new double[] {274.15, 300, 333.15}) {
                double exact = IsentropicJet.of(Kind.PRESSURE.of(pressurePa), Kind.TEMPERATURE.of(temperatureK))
                        .speedSi();
                assertThat(IsentropicJet.fastSpeedSi(pressurePa, temperatureK) / exact)
                        .isCloseTo(1, within(1e-8));
            }
        }
        assertThat(IsentropicJet.fastSpeedSi(1000e6, 333.15)).isGreaterThan(IsentropicJet.fastSpeedSi(999e6, 333.15));
        assertThatThrownBy(() -> IsentropicJet.fastSpeedSi(100e6, 274.1))
                .isInstanceOfSatisfying(
                        DomainException.class,
                        e -> assertThat(e.limit().orElseThrow()).isEqualTo(1));
        assertThatThrownBy(() -> IsentropicJet.fastSpeedSi(100e6, 333.2))
                .isInstanceOfSatisfying(
                        DomainException.class,
                        e -> assertThat(e.limit().orElseThrow()).isEqualTo(60));
        assertThatThrownBy(() -> IsentropicJet.fastSpeedSi(Double.NaN, 300)).isInstanceOf(DomainException.class);
    }

    /** Temperature counts from the start: warm water is liquid at pressures at which water of 20 C is ice. */
    @Test
    void warmWaterIsLiquidWhereCoolWaterIsIce() {
        OperatingPoint point = OperatingPoint.of(
                PumpSetting.of(megapascals(920), litresPerMinute(5)),
                SupplyLine.of(SupplyLine.Section.ofBore(millimetres(2.4)).withLength(metres(3))),
                celsius(60),
                List.of(Orifice.sapphire(millimetres(0.2))));
        assertThat(Kind.PRESSURE.si(point.headPressure())).isCloseTo(919.5e6, within(0.2e6));
        assertRefused(() -> WaterJet.of(Orifice.sapphire(millimetres(0.2)), megapascals(920)), "water-freezes");
        WaterJet warm = WaterJet.of(Orifice.sapphire(millimetres(0.2)), megapascals(500), celsius(60));
        assertThat(warm.withPressure(megapascals(999.8)).pressureSi()).isEqualTo(999.8e6);
        assertRefused(
                () -> warm.withPressure(megapascals(1000)),
                "must-be-at-most",
                "pressure at the orifice",
                1e9 - 101_325);
    }

    /** Flow, power and force are proportional to the discharge coefficient, and so is their uncertainty. */
    @Test
    void flowPowerAndForceAreAsUncertainAsTheDischargeCoefficient() {
        WaterJet jet = WaterJet.of(Orifice.sapphire(millimetres(0.33)), megapascals(380));
        JetEstimates estimates = jet.estimates();
        assertThat(estimates.massFlow().si()).isEqualTo(jet.massFlowSi());
        assertThat(estimates.reactionForce().si()).isEqualTo(Kind.FORCE.si(jet.reactionForce()));
        for (Estimate<?> estimate : List.of(
                estimates.volumeFlow(), estimates.massFlow(), estimates.kineticPower(), estimates.reactionForce())) {
            assertThat(estimate.relativeUncertainty()).isCloseTo(0.02 / 0.65, within(1e-12));
        }
        WaterJet known = jet.withOrifice(jet.orifice().withDischargeCoefficient(0.7));
        assertThat(known.estimates().massFlow().standardUncertaintySi()).isZero();
    }
}

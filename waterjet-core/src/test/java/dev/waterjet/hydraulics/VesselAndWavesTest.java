package dev.waterjet.hydraulics;

import static dev.waterjet.Refusals.assertRefused;
import static dev.waterjet.measure.Measures.celsius;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.millimetres;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.measure.Kind;
import dev.waterjet.vessel.Ends;
import dev.waterjet.vessel.ThickTube;
import dev.waterjet.water.Saturation;
import dev.waterjet.water.Water;
import dev.waterjet.water.WaterState;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Waves in elastic lines, the emptying of vessels and the numbers of a contracted jet, from their definitions. */
class VesselAndWavesTest {

    private static final WaterState TAP = Water.stable().atSi(101_325, 293.15);

    /** 1/a^2 = 1/w^2 + rho chi. */
    @ParameterizedTest
    @CsvSource({"4.8, 14.4, 380", "2.4, 9.6, 100", "10, 11, 20"})
    void wallsSlowWavesDown(double boreMm, double outerMm, double megapascals) {
        ThickTube wall = ThickTube.of(millimetres(boreMm), millimetres(outerMm));
        WaterState water = Water.stable().atSi(megapascals * 1e6, 293.15);
        for (Ends ends : Ends.values()) {
            SupplyLine.Section section =
                    SupplyLine.Section.ofBore(millimetres(boreMm)).withWall(wall, ends);
            double speed = Kind.SPEED.si(section.waveSpeed(water));
            double chi = Kind.COMPRESSIBILITY.si(wall.compliance(ends));
            double sound = water.soundSpeedSi();
            assertThat(1 / (speed * speed))
                    .isEqualTo(1 / (sound * sound) + water.densitySi() * chi, within(1e-12 / (speed * speed)));
            assertThat(speed).isLessThan(sound);
        }
        assertThat(Kind.SPEED.si(SupplyLine.Section.ofBore(millimetres(boreMm)).waveSpeed(water)))
                .isEqualTo(water.soundSpeedSi(), within(1e-9));
    }

    /** Time as the sum of small drops of pressure, and as uncertain as the discharge coefficient. */
    @ParameterizedTest
    @CsvSource({"380, 0.2, 1.0", "100, 10, 0.3", "600, 300, 5"})
    void aVesselEmptiesByItsFlow(double fromMpa, double toMpa, double litres) {
        Attenuator vessel =
                Attenuator.of(Kind.VOLUME.of(litres * 1e-3)).withDiameterRatio(2.5, megapascals(200_000), 0.29);
        double chi = Kind.COMPRESSIBILITY.si(vessel.wallCompliance());
        Orifice orifice = Orifice.sapphire(millimetres(0.3)).withDischargeCoefficient(0.7);
        var time = vessel.blowDownTime(orifice, megapascals(fromMpa), megapascals(toMpa), TAP);
        double perRoot = 0.7 * Math.PI / 4 * 0.0003 * 0.0003 * Math.sqrt(2 * TAP.densitySi());
        int steps = 400;
        double sum = 0;
        double root = Math.sqrt(toMpa * 1e6);
        double width = (Math.sqrt(fromMpa * 1e6) - root) / steps;
        for (int i = 0; i < steps; i++) {
            double middle = root + (i + 0.5) * width;
            double gauge = middle * middle;
            WaterState water = Water.metastable().atEntropySi(gauge + 101_325, TAP.entropySi());
            double sound = water.soundSpeedSi();
            // d(rho V)/dp of a vessel whose volume is given at rest
            double stored = litres * 1e-3 * ((1 + chi * gauge) / (sound * sound) + water.densitySi() * chi);
            sum += 2 * stored / perRoot * width;
        }
        assertThat(time.si()).isEqualTo(sum, within(1e-5 * sum));
        var coefficient = orifice.dischargeCoefficient();
        assertThat(time.standardUncertaintySi() / time.si())
                .isEqualTo(coefficient.standardUncertaintySi() / coefficient.si(), within(1e-12));
    }

    /** Contraction from the balance of mass; Reynolds and Weber number of the jet behind it. */
    @ParameterizedTest
    @CsvSource({"380, 0.25, 0.98", "100, 0.4, 0.97", "400, 0.1, 1"})
    void aContractedJetHasItsNumbers(double megapascals, double boreMm, double velocityCoefficient) {
        WaterJet jet = WaterJet.of(Orifice.sapphire(millimetres(boreMm)), megapascals(megapascals), celsius(20));
        JetContraction contraction = JetContraction.of(jet, velocityCoefficient);
        WaterState supply = Water.stable().atSi(megapascals * 1e6 + 101_325, 293.15);
        WaterState exit = Water.metastable().atEntropySi(101_325, supply.entropySi());
        double speed = velocityCoefficient * Math.sqrt(2 * (supply.enthalpySi() - exit.enthalpySi()));
        double diameter = Kind.LENGTH.si(contraction.diameter());
        assertThat(Kind.SPEED.si(contraction.speed())).isEqualTo(speed, within(1e-6 * speed));
        assertThat(exit.densitySi() * speed * Math.PI / 4 * diameter * diameter)
                .isEqualTo(jet.massFlowSi(), within(1e-6 * jet.massFlowSi()));
        assertThat(contraction.coefficient()).isEqualTo(Math.pow(diameter * 1000 / boreMm, 2), within(1e-9));
        double reynolds = exit.densitySi() * speed * diameter / exit.viscositySi();
        assertThat(contraction.reynolds()).isEqualTo(reynolds, within(1e-6 * reynolds));
        double weber = exit.densitySi()
                * speed
                * speed
                * diameter
                / Kind.SURFACE_TENSION.si(Saturation.surfaceTension(exit.temperature()));
        assertThat(contraction.weber()).isEqualTo(weber, within(1e-6 * weber));
        assertThat(contraction.describe())
                .containsEntry("diameter_m", diameter)
                .containsEntry("reynolds", contraction.reynolds())
                .containsEntry("weber", contraction.weber());
    }

    @Test
    void velocityCoefficientsAreAtMostOne() {
        WaterJet jet = WaterJet.of(Orifice.sapphire(millimetres(0.25)), megapascals(380), celsius(20));
        assertRefused(() -> JetContraction.of(jet, 1.01), "must-be-at-most", "velocity coefficient", 1);
        assertRefused(() -> JetContraction.of(jet, 0), "must-be-above", "velocity coefficient", 0);
    }

    /** A cylinder of a crank comes to pressure once a turn, a side of an intensifier every second stroke. */
    @Test
    void partsOfPumpsAreCycled() {
        Compression compression = Compression.isentropic(TAP, megapascals(380));
        DirectDrivePump crank = DirectDrivePump.of(3, Kind.VOLUME.of(2e-6), Kind.FREQUENCY.of(10));
        PressureCycles cylinder = PressureCycles.ofCylinder(crank, compression);
        assertThat(cylinder.perHour()).isEqualTo(36_000, within(1e-9));
        assertThat(cylinder.describe())
                .containsEntry("per_hour", cylinder.perHour())
                .containsEntry("frequency_Hz", 10.0)
                .containsEntry("lowest_pressure_Pa", compression.inlet().pressureSi())
                .containsEntry("highest_pressure_Pa", compression.outlet().pressureSi())
                .containsKey("cautions");
        assertThat(cylinder.toString()).startsWith("36000 pressure cycles an hour, ");
        Intensifier intensifier = Intensifier.of(20, Kind.VOLUME.of(1e-4));
        double strokes = 0.05 / (TAP.densitySi() * 1e-4);
        assertThat(PressureCycles.ofSide(intensifier, Kind.MASS_FLOW.of(0.05), compression)
                        .perHour())
                .isEqualTo(3600 * strokes / 2, within(1e-6));
    }
}

package dev.waterjet.vessel;

import static dev.waterjet.Refusals.assertRefused;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.millimetres;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.evidence.Caution;
import dev.waterjet.measure.Kind;
import dev.waterjet.water.Water;
import dev.waterjet.water.WaterState;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Places in a wall, and where it yields back. */
class WallPlacesTest {

    private static final ThickTube TUBE = ThickTube.of(millimetres(10), millimetres(22));

    /** Lame: p a^2/(b^2 - a^2) (1 +- b^2/r^2), at every radius from the bore to the outside and at neither beyond. */
    @ParameterizedTest
    @CsvSource({"5", "5.5", "8", "10.9", "11"})
    void stressesAreThoseOfTheirRadius(double radiusMm) {
        double share = 300e6 * 25 / (121 - 25);
        for (Ends ends : Ends.values()) {
            WallStress stress = TUBE.stressAt(megapascals(300), ends, millimetres(radiusMm));
            double bend = 121 / (radiusMm * radiusMm);
            assertThat(Kind.PRESSURE.si(stress.hoop())).isEqualTo(share * (1 + bend), within(1.0));
            assertThat(Kind.PRESSURE.si(stress.radial())).isEqualTo(share * (1 - bend), within(1.0));
            assertThat(Kind.PRESSURE.si(stress.axial())).isEqualTo(ends == Ends.CLOSED ? share : 0, within(1.0));
        }
        assertThat(Kind.PRESSURE.si(
                        TUBE.stressAtOutside(megapascals(300), Ends.OPEN).radial()))
                .isZero();
    }

    @Test
    void placesOutsideTheWallAreRefused() {
        assertRefused(
                () -> TUBE.stressAt(megapascals(300), Ends.OPEN, millimetres(4.99)),
                "must-be-at-least",
                "radius in the wall",
                0.005);
        assertRefused(
                () -> TUBE.stressAt(megapascals(300), Ends.OPEN, millimetres(11.01)),
                "must-be-at-most",
                "radius in the wall",
                0.011);
        assertRefused(
                () -> TUBE.stressAtBore(megapascals(-1), Ends.OPEN), "must-be-at-least", "pressure in the tube", 0);
    }

    /** In the wall that yields, hoop less radial stress is the yield strength under pressure; what is left is elastic unloading. */
    @ParameterizedTest
    @CsvSource({"5", "5.6", "6.2", "7", "9", "11"})
    void residualStressIsTheLoadedOneLessTheElasticOne(double radiusMm) {
        double yield = 900e6;
        double plasticMm = 6.2;
        Autofrettage autofrettage = Autofrettage.toRadius(TUBE, Kind.PRESSURE.of(yield), millimetres(plasticMm));
        double pressure = yield * (Math.log(plasticMm / 5) + (1 - plasticMm * plasticMm / 121) / 2);
        assertThat(Kind.PRESSURE.si(autofrettage.pressure())).isEqualTo(pressure, within(1.0));
        double loaded;
        if (radiusMm <= plasticMm) {
            double radial = -pressure + yield * Math.log(radiusMm / 5);
            loaded = radial + yield;
        } else {
            // the elastic ring is a tube of its own, at the limit of yield at its inside
            loaded = yield / 2 * plasticMm * plasticMm / 121 * (1 + 121 / (radiusMm * radiusMm));
        }
        double unloading = Kind.PRESSURE.si(TUBE.stressAt(Kind.PRESSURE.of(pressure), Ends.OPEN, millimetres(radiusMm))
                .hoop());
        assertThat(autofrettage
                        .residualHoopStressAt(millimetres(radiusMm))
                        .orElseThrow()
                        .si())
                .isEqualTo(loaded - unloading, within(1e-6 * yield));
        // assumed: known to 30 %
        assertThat(autofrettage
                        .residualHoopStressAt(millimetres(radiusMm))
                        .orElseThrow()
                        .standardUncertaintySi())
                .isEqualTo(0.3 * Math.abs(loaded - unloading), within(1e-6 * yield));
    }

    /** A pressure and the radius to which it yields the wall are one autofrettage. */
    @ParameterizedTest
    @CsvSource({"5", "5.4", "7.7", "10.5", "11"})
    void pressureAndRadiusOfAnAutofrettageBelongTogether(double plasticMm) {
        Autofrettage byRadius = Autofrettage.toRadius(TUBE, megapascals(900), millimetres(plasticMm));
        Autofrettage byPressure = Autofrettage.atPressure(TUBE, megapascals(900), byRadius.pressure());
        assertThat(Kind.LENGTH.si(byPressure.plasticRadius())).isEqualTo(plasticMm / 1000, within(1e-9));
        assertRefused(
                () -> Autofrettage.toRadius(TUBE, megapascals(900), millimetres(4.99)),
                "must-be-at-least",
                "plastic radius",
                0.005);
    }

    private static double parameter(Caution caution, String key) {
        return (double) Objects.requireNonNull(caution.message().parameters().get(key));
    }

    /** The caution names the Tresca stress of the bore wherever the stress is asked for: the hoop stress there plus the pressure. */
    @ParameterizedTest
    @CsvSource({"5", "8", "11"})
    void theStressThatComesAndGoesIsThatOfTheBore(double radiusMm) {
        for (Ends ends : Ends.values()) {
            WallStress stress = TUBE.stressAt(megapascals(300), ends, millimetres(radiusMm));
            double tresca = 300e6 * 2 * 121 / (121 - 25);
            assertThat(parameter(stress.cautions().get(1), "stress_Pa")).isEqualTo(tresca, within(1.0));
        }
    }

    /** ln k for Tresca and 2/sqrt 3 times as much for Mises; the bore begins to yield where its equivalent stress does. */
    @Test
    void wallsYieldFromTheBoreOutwards() {
        for (Ends ends : Ends.values()) {
            TubeLimits tresca = TUBE.limits(YieldCriterion.TRESCA, ends, megapascals(900));
            TubeLimits mises = TUBE.limits(YieldCriterion.MISES, ends, megapascals(900));
            double full = 900e6 * Math.log(2.2);
            assertThat(Kind.PRESSURE.si(tresca.fullPlastic())).isEqualTo(full, within(1.0));
            assertThat(Kind.PRESSURE.si(mises.fullPlastic())).isEqualTo(2 / Math.sqrt(3) * full, within(1.0));
            // (k^2 - 1)/(2 k^2)
            assertThat(Kind.PRESSURE.si(tresca.firstYield()))
                    .isEqualTo(900e6 * (2.2 * 2.2 - 1) / (2 * 2.2 * 2.2), within(1.0));
            WallStress atYield = TUBE.stressAtBore(mises.firstYield(), ends);
            double h = Kind.PRESSURE.si(atYield.hoop());
            double r = Kind.PRESSURE.si(atYield.radial());
            double a = Kind.PRESSURE.si(atYield.axial());
            assertThat(Math.sqrt(((h - r) * (h - r) + (r - a) * (r - a) + (a - h) * (a - h)) / 2))
                    .isEqualTo(900e6, within(10.0));
        }
    }

    @Test
    void deepPlasticZonesYieldBackEarlier() {
        List<Caution> cautions =
                Autofrettage.toRadius(TUBE, megapascals(900), millimetres(6.2)).cautions();
        assertThat(cautions.get(1).code()).isEqualTo("bauschinger");
        assertThat(parameter(cautions.get(1), "ratio")).isEqualTo(1.24, within(1e-12));
        assertThat(parameter(cautions.get(1), "limit")).isEqualTo(1.2);
        Autofrettage full =
                Autofrettage.atPressure(TUBE, megapascals(900), Kind.PRESSURE.of(900e6 * Math.log(2.2) * (1 - 1e-12)));
        assertThat(Kind.LENGTH.si(full.plasticRadius())).isEqualTo(0.011, within(1e-7));
        assertRefused(() -> Autofrettage.atPressure(TUBE, megapascals(900), megapascals(720)), "must-be-at-most");
        assertRefused(() -> Autofrettage.atPressure(TUBE, megapascals(900), megapascals(300)), "must-be-at-least");
    }

    /** Work of the water against the atmosphere along its isentrope, the integral of (p - p0) dv, by Simpson's rule. */
    @ParameterizedTest
    @CsvSource({"0.3", "5", "100", "600"})
    void waterGivesBackTheWorkOfItsExpansion(double gaugeMpa) {
        WaterState water = Water.stable().atSi(gaugeMpa * 1e6 + 101_325, 300);
        int steps = 200;
        double sum = 0;
        double width = gaugeMpa * 1e6 / steps;
        for (int i = 0; i <= steps; i++) {
            double over = i * width;
            WaterState state = Water.metastable().atEntropySi(over + 101_325, water.entropySi());
            double rho = state.densitySi();
            double sound = state.soundSpeedSi();
            // -dv/dp along the isentrope is 1/(rho w)^2
            sum += over / (rho * rho * sound * sound) * (i == 0 || i == steps ? 1 : i % 2 == 1 ? 4 : 2);
        }
        double expected = sum * width / 3 * water.densitySi() * 2e-3;
        double found = Kind.ENERGY.si(
                StoredEnergy.of(water, Kind.VOLUME.of(2e-3), TUBE, Ends.CLOSED).water());
        // enthalpies of some hundred kJ/kg subtract
        assertThat(found).isEqualTo(expected, within(1e-6 * expected + 1e-6));
    }
}

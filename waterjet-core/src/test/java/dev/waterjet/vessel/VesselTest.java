package dev.waterjet.vessel;

import static dev.waterjet.Refusals.assertRefused;
import static dev.waterjet.measure.Measures.celsius;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.millimetres;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.evidence.Caution;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Units;
import dev.waterjet.water.Water;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.apache.commons.math3.analysis.integration.IterativeLegendreGaussIntegrator;
import org.junit.jupiter.api.Test;

class VesselTest {

    private final ThickTube half = ThickTube.of(millimetres(10), millimetres(20));

    private static double mpa(javax.measure.Quantity<javax.measure.quantity.Pressure> stress) {
        return Kind.PRESSURE.si(stress) / 1e6;
    }

    private static List<String> codes(List<Caution> cautions) {
        return cautions.stream().map(Caution::code).toList();
    }

    @Property(tries = 100, seed = "11")
    void theWallCarriesThePressure(
            @ForAll @DoubleRange(min = 1.01, max = 12) double ratio,
            @ForAll @DoubleRange(min = 0.1, max = 900) double pressureMpa) {
        ThickTube tube = ThickTube.of(Kind.LENGTH.of(2), Kind.LENGTH.of(2 * ratio));
        double force = new IterativeLegendreGaussIntegrator(12, 1e-11, 1e-11)
                .integrate(
                        100_000,
                        r -> mpa(tube.stressAt(megapascals(pressureMpa), Ends.CLOSED, Kind.LENGTH.of(r))
                                .hoop()),
                        1,
                        ratio);
        // force balance of half a tube of bore radius 1
        assertThat(force).isCloseTo(pressureMpa, within(1e-8 * pressureMpa));
        WallStress bore = tube.stressAtBore(megapascals(pressureMpa), Ends.CLOSED);
        assertThat(mpa(bore.radial())).isCloseTo(-pressureMpa, within(1e-9 * pressureMpa));
        assertThat(mpa(tube.stressAtOutside(megapascals(pressureMpa), Ends.OPEN).radial()))
                .isCloseTo(0, within(1e-9 * pressureMpa));
        // Tresca is at most 2/sqrt 3 of Mises and never below it
        double mises = mpa(bore.equivalent(YieldCriterion.MISES));
        assertThat(mpa(bore.equivalent(YieldCriterion.TRESCA))).isBetween(mises, 1.1547006 * mises);
    }

    @Property(tries = 100, seed = "12")
    void theBoreYieldsAtItsYieldStrengthAndBeforeTheWholeWall(
            @ForAll @DoubleRange(min = 1.01, max = 8) double ratio,
            @ForAll Ends ends,
            @ForAll YieldCriterion criterion) {
        ThickTube tube = ThickTube.of(Kind.LENGTH.of(0.02), Kind.LENGTH.of(0.02 * ratio));
        TubeLimits limits = tube.limits(criterion, ends, megapascals(850));
        assertThat(mpa(tube.stressAtBore(limits.firstYield(), ends).equivalent(criterion)))
                .isCloseTo(850, within(1e-6));
        assertThat(mpa(limits.firstYield())).isLessThan(mpa(limits.fullPlastic()));
        assertThat(codes(limits.cautions())).contains("no-assessment");
    }

    @Property(tries = 60, seed = "13")
    void residualStressesBalance(
            @ForAll @DoubleRange(min = 1.05, max = 2.2) double ratio,
            @ForAll @DoubleRange(min = 0.01, max = 0.99) double overstrain) {
        ThickTube tube = ThickTube.of(Kind.LENGTH.of(2), Kind.LENGTH.of(2 * ratio));
        double plasticM = 1 + overstrain * (ratio - 1);
        Autofrettage autofrettage = Autofrettage.toRadius(tube, megapascals(1000), Kind.LENGTH.of(plasticM));
        assertThat(autofrettage.isReverseYielding()).isFalse();
        IterativeLegendreGaussIntegrator integrator = new IterativeLegendreGaussIntegrator(12, 1e-11, 1e-11);
        org.apache.commons.math3.analysis.UnivariateFunction hoop = r -> autofrettage
                        .residualHoopStressAt(Kind.LENGTH.of(r))
                        .orElseThrow()
                        .si()
                / 1e6;
        double sum =
                integrator.integrate(100_000, hoop, 1, plasticM) + integrator.integrate(100_000, hoop, plasticM, ratio);
        assertThat(sum).isCloseTo(0, within(1e-7));
        Autofrettage again = Autofrettage.atPressure(tube, megapascals(1000), autofrettage.pressure());
        assertThat(Kind.LENGTH.si(again.plasticRadius())).isCloseTo(plasticM, within(1e-7));
    }

    @Test
    void autofrettageTurnsTheTensionOfTheBore() {
        // half overstrain of a tube of ratio 2: independent calculation, force balance to 1e-13
        Autofrettage autofrettage = Autofrettage.toRadius(half, megapascals(1000), millimetres(7.5));
        double residual = autofrettage.residualHoopStressAtBore().orElseThrow().to(Units.MEGAPASCAL);
        assertThat(residual
                        + mpa(half.stressAtBore(megapascals(380), Ends.CLOSED).hoop()))
                .isCloseTo(-31.2403, within(5e-5));
        assertThat(autofrettage
                        .residualHoopStressAt(millimetres(7.5))
                        .orElseThrow()
                        .to(Units.MEGAPASCAL))
                .isCloseTo(203.2730, within(5e-5));
        assertThat(codes(autofrettage.cautions())).containsExactly("no-assessment", "bauschinger");
        assertThat(codes(Autofrettage.toRadius(half, megapascals(1000), millimetres(5.9))
                        .cautions()))
                .containsExactly("no-assessment");
    }

    @Test
    void aTubeThatYieldsBackHasNoResidualStress() {
        ThickTube thick = ThickTube.of(millimetres(10), millimetres(30));
        Autofrettage full = Autofrettage.toRadius(thick, megapascals(1000), millimetres(15));
        assertThat(full.isReverseYielding()).isTrue();
        assertThat(full.residualHoopStressAtBore()).isEmpty();
        assertThat(codes(full.cautions())).contains("reverse-yield");
        double critical = Autofrettage.criticalDiameterRatio(1);
        for (double side : new double[] {0.9999, 1.0001}) {
            ThickTube near = ThickTube.of(Kind.LENGTH.of(1), Kind.LENGTH.of(critical * side));
            assertThat(Autofrettage.toRadius(near, megapascals(500), Kind.LENGTH.of(critical * side / 2))
                            .isReverseYielding())
                    .isEqualTo(side > 1);
        }
        assertThat(Autofrettage.criticalDiameterRatio(0.3)).isLessThan(critical);
    }

    @Test
    void impossibleTubesAndPlacesAreRefused() {
        assertRefused(
                () -> ThickTube.of(millimetres(10), millimetres(10)),
                "must-be-above",
                "outer diameter of the tube",
                0.01);
        assertRefused(
                () -> half.withElasticity(megapascals(200_000), 0.51),
                "must-be-at-most",
                "Poisson's ratio of the wall",
                0.5);
        assertRefused(
                () -> half.stressAt(megapascals(380), Ends.OPEN, millimetres(4.9)),
                "must-be-at-least",
                "radius in the wall",
                0.005);
        assertRefused(
                () -> half.stressAtBore(megapascals(-1), Ends.OPEN), "must-be-at-least", "pressure in the tube", 0);
        // first yield and fully plastic wall of ratio 2, Tresca: 375 MPa and 1000 ln 2 MPa
        assertRefused(
                () -> Autofrettage.atPressure(half, megapascals(1000), megapascals(370)),
                "must-be-at-least",
                "autofrettage pressure",
                375e6);
        assertRefused(
                () -> Autofrettage.atPressure(half, megapascals(1000), megapascals(700)),
                "must-be-at-most",
                "autofrettage pressure",
                1e9 * Math.log(2));
        assertRefused(
                () -> Autofrettage.criticalDiameterRatio(0),
                "must-be-at-least",
                "relative reverse yield strength",
                0.1);
    }

    @Test
    void storedEnergyExceedsThatOfAConstantModulusAtPressure() {
        for (double pressureMpa : new double[] {50, 200, 400, 600}) {
            var water = Water.stable().at(megapascals(pressureMpa), celsius(20));
            StoredEnergy energy = StoredEnergy.of(water, Kind.VOLUME.of(1e-3), half, Ends.CLOSED);
            double modulusPa = water.densitySi() * water.soundSpeedSi() * water.soundSpeedSi();
            double bySquare = Math.pow(pressureMpa * 1e6, 2) / 2 / modulusPa * 1e-3;
            assertThat(Kind.ENERGY.si(energy.water())).isBetween(bySquare, 2.2 * bySquare);
            assertThat(codes(energy.cautions())).containsExactly("no-assessment", "stored-energy");
        }
        var rest = Water.stable().at(megapascals(0.101325), celsius(20));
        assertThat(Kind.ENERGY.si(StoredEnergy.of(rest, Kind.VOLUME.of(1), half, Ends.OPEN)
                        .water()))
                .isCloseTo(0, within(1e-3));
        assertRefused(
                () -> StoredEnergy.of(
                        Water.stable().at(megapascals(0.05), celsius(20)), Kind.VOLUME.of(1), half, Ends.OPEN),
                "must-be-at-least");
    }

    @Test
    void stressesWarnOfCyclesAndDeferToTheCode() {
        WallStress stress = half.stressAtBore(megapascals(380), Ends.CLOSED);
        assertThat(codes(stress.cautions())).containsExactly("no-assessment", "cyclic-stress");
    }
}

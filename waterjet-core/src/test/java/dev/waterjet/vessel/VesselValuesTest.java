package dev.waterjet.vessel;

import static dev.waterjet.Refusals.assertRefused;
import static dev.waterjet.measure.Measures.celsius;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.millimetres;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.ValueContract;
import dev.waterjet.measure.Kind;
import dev.waterjet.water.Water;
import dev.waterjet.water.WaterState;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Tubes as values, and closed forms of what their walls do. */
class VesselValuesTest {

    private static final ThickTube TUBE = ThickTube.of(millimetres(10), millimetres(20));

    @Test
    void aTubeIsItsDiametersAndElasticity() {
        ValueContract.of(() -> TUBE)
                .has("bore", ThickTube::bore, millimetres(10))
                .has("outer", ThickTube::outer, millimetres(20))
                .has("ratio", ThickTube::diameterRatio, 2.0)
                .differs("bore", ThickTube.of(millimetres(11), millimetres(20)))
                .differs("outer", ThickTube.of(millimetres(10), millimetres(21)))
                .differs("modulus", TUBE.withElasticity(megapascals(190_000), 0.29))
                .differs("Poisson's ratio", TUBE.withElasticity(megapascals(200_000), 0.3))
                .prints("10 mm", "20 mm")
                .check();
        assertRefused(() -> ThickTube.of(Kind.LENGTH.of(1e-200), Kind.LENGTH.of(1e200)), "must-be-at-most");
    }

    @Test
    void anAutofrettageIsItsTubeStrengthAndRadius() {
        ValueContract.of(() -> Autofrettage.toRadius(TUBE, megapascals(1000), millimetres(7.5)))
                .has("tube", Autofrettage::tube, TUBE)
                .has("radius", Autofrettage::plasticRadius, millimetres(7.5))
                .differs("radius", Autofrettage.toRadius(TUBE, megapascals(1000), millimetres(7)))
                .differs("strength", Autofrettage.toRadius(TUBE, megapascals(900), millimetres(7.5)))
                .differs(
                        "tube",
                        Autofrettage.toRadius(
                                ThickTube.of(millimetres(10), millimetres(21)), megapascals(1000), millimetres(7.5)))
                .prints("autofrettage")
                .check();
        assertRefused(
                () -> Autofrettage.toRadius(TUBE, megapascals(1000), millimetres(10.01)),
                "must-be-at-most",
                "plastic radius",
                0.01);
    }

    /**
     * Hooke's law at the bore gives the growth of the volume: twice the hoop strain, and the axial strain where the wall carries
     * the ends; open ends stay where other parts hold them.
     */
    @ParameterizedTest
    @CsvSource({"1.05, 0.29", "1.5, 0.29", "2, 0.3", "3, 0", "8, 0.5"})
    void theBoreGrowsByTheStrainsOfHookesLaw(double ratio, double poissonsRatio) {
        double modulusPa = 193e9;
        ThickTube tube = ThickTube.of(Kind.LENGTH.of(0.01), Kind.LENGTH.of(0.01 * ratio))
                .withElasticity(Kind.PRESSURE.of(modulusPa), poissonsRatio);
        for (Ends ends : Ends.values()) {
            WallStress bore = tube.stressAtBore(Kind.PRESSURE.of(1), ends);
            double hoop = Kind.PRESSURE.si(bore.hoop());
            double radial = Kind.PRESSURE.si(bore.radial());
            double axial = Kind.PRESSURE.si(bore.axial());
            double hoopStrain = (hoop - poissonsRatio * (radial + axial)) / modulusPa;
            double axialStrain = (axial - poissonsRatio * (hoop + radial)) / modulusPa;
            double expected = 2 * hoopStrain + (ends == Ends.CLOSED ? axialStrain : 0);

            assertThat(Kind.COMPRESSIBILITY.si(tube.compliance(ends))).isCloseTo(expected, within(1e-12 * expected));
            // half of pressure times growth
            WaterState water = Water.stable().at(megapascals(200.101325), celsius(20));
            assertThat(Kind.ENERGY.si(StoredEnergy.of(water, Kind.VOLUME.of(0.003), tube, ends)
                            .wall()))
                    .isCloseTo(0.003 * 200e6 * 200e6 * expected / 2, within(1e-9 * 60e3));
        }
    }

    /** Tada, Paris, Irwin, from memory: a crack of length 2 a under stress s opens by 2 pi a^2 s/E; flow of an orifice. */
    @Test
    void aCrackOpensAndLeaks() {
        CrackLeak leak = CrackLeak.of(millimetres(20), megapascals(100), megapascals(200_000));
        double area = 2 * Math.PI * 1e-4 * 100 / 200_000;
        WaterState rest = Water.stable().at(megapascals(0.101325), celsius(20));

        assertThat(leak.openingArea().si()).isCloseTo(area, within(1e-12 * area));
        double bore = Kind.LENGTH.si(leak.equivalentBore());
        assertThat(Math.PI / 4 * bore * bore).isCloseTo(area, within(1e-12 * area));
        double flow = 0.65 * area * Math.sqrt(2 * rest.densitySi() * 400e6);
        assertThat(leak.massFlow(megapascals(400), rest).si()).isCloseTo(flow, within(1e-12 * flow));
        assertThat(leak.massFlow(megapascals(0), rest).si()).isZero();
        assertThat(leak.describe()).containsEntry("equivalent_bore_m", bore);
        assertThat(leak.toString()).contains("bore of");
    }

    /** Ratio 2 under 300 MPa: 5/3 of the pressure; a Tresca stress of 8/3 of it, 1000 MPa at 375 MPa. */
    @Test
    void resultsDescribeWhatTheyHold() {
        WallStress bore = TUBE.stressAtBore(megapascals(300), Ends.CLOSED);
        TubeLimits limits = TUBE.limits(YieldCriterion.TRESCA, Ends.CLOSED, megapascals(1000));

        assertThat(bore.describe()).containsEntry("hoop_stress_Pa", Kind.PRESSURE.si(bore.hoop()));
        assertThat(limits.describe()).containsValue(Kind.PRESSURE.si(limits.firstYield()));
        assertThat(TUBE.describe()).containsEntry("bore_m", 0.01);
        assertThat(bore.toString()).contains("500 MPa");
        assertThat(limits.toString()).contains("375 MPa");
    }
}

package dev.waterjet.jet;

import static dev.waterjet.Refusals.assertRefused;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.metresPerSecond;
import static dev.waterjet.measure.Measures.millimetres;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.evidence.Caution;
import dev.waterjet.hydraulics.Orifice;
import dev.waterjet.hydraulics.WaterJet;
import dev.waterjet.measure.Kind;
import org.junit.jupiter.api.Test;

class PlainJetTest {

    private final WaterJet water = WaterJet.of(Orifice.sapphire(millimetres(0.25)), megapascals(380));
    private final PlainJet jet = new PlainJet(water, millimetres(0.2));

    @Test
    void pressureNeverRisesWithDistance() {
        double last = Double.POSITIVE_INFINITY;
        for (double mm = 0; mm < 2000; mm += 3.3) {
            double pressurePa = jet.corePressure(millimetres(mm)).si();
            assertThat(pressurePa).isPositive().isLessThanOrEqualTo(last);
            last = pressurePa;
        }
        assertThat(jet.corePressure(millimetres(0)).si()).isCloseTo(380e6, within(1e-3));
        assertThat(jet.corePressure(millimetres(100.0001)).si())
                .isCloseTo(jet.corePressure(millimetres(99.9999)).si(), within(1e3));
    }

    @Test
    void zonesFollowTheDiameterAndUncertaintyGrows() {
        assertThat(jet.zoneAt(millimetres(19.9))).isEqualTo(PlainJet.Zone.COHERENT);
        assertThat(jet.zoneAt(millimetres(20.1))).isEqualTo(PlainJet.Zone.MAIN);
        assertThat(jet.zoneAt(millimetres(100.1))).isEqualTo(PlainJet.Zone.DROPS);
        assertThat(Kind.LENGTH.si(jet.coherentLength().value())).isCloseTo(0.02, within(1e-12));
        assertThat(jet.corePressure(millimetres(50)).relativeUncertainty())
                .isLessThan(jet.corePressure(millimetres(300)).relativeUncertainty());
        assertThat(jet.corePressure(millimetres(50)).cautions())
                .extracting(Caution::code)
                .containsExactly("jet-injection");
        // contracted by an orifice of discharge coefficient 0.65: independent calculation of the diameter
        PlainJet sharp = PlainJet.of(
                WaterJet.of(Orifice.sapphire(millimetres(0.25)).withDischargeCoefficient(0.65), megapascals(380)));
        assertThat(Kind.LENGTH.si(sharp.diameter())).isCloseTo(0.2069384e-3, within(1e-9));
        assertRefused(() -> jet.corePressure(millimetres(-1)), "must-be-at-least", "distance from the orifice", 0);
    }

    /** Values by hand: 23.438 N stops to 2 m/s within 0.536 m of water; 100 d p/0.7 MPa is 10.9 m. */
    @Test
    void catcherAndDangerZoneAreThoseOfARoundJet() {
        double thrust = Kind.FORCE.si(water.reactionForce());
        double depth = 6.2 * Math.sqrt(4 * thrust / (Math.PI * 998.2)) / 2;
        assertThat(jet.catcherDepth(metresPerSecond(2)).si()).isCloseTo(depth, within(1e-12));
        assertThat(jet.catcherDepth(metresPerSecond(2)).cautions())
                .extracting(Caution::code)
                .containsExactly("dwelling-jet");
        assertThat(jet.dangerZone().si()).isCloseTo(100 * 0.2e-3 * 380 / 0.7, within(1e-9));
        assertThat(jet.dangerZone().cautions()).extracting(Caution::code).containsExactly("jet-injection");
        PlainJet weak = PlainJet.of(WaterJet.of(Orifice.sapphire(millimetres(0.25)), megapascals(1)));
        // at low pressure drops and air decide: axis speed as fast as 0.7 MPa makes water
        double drops = 6.2
                * Math.sqrt(4 * Kind.FORCE.si(weak.water().reactionForce()) / (Math.PI * 1.2041))
                / Math.sqrt(2 * 0.7e6 / 998.2);
        assertThat(weak.dangerZone().si())
                .isCloseTo(Math.max(drops, weak.coherentLength().si() / 0.7), within(1e-9));
        assertRefused(() -> jet.catcherDepth(metresPerSecond(0)), "must-be-above", "remaining speed", 0);
    }

    /** Quadratic drag with C_D near 0.4 takes the factor e off 180 um garnet within 2 m; larger particles fly farther. */
    @Test
    void particlesFlyMetres() {
        double coarse =
                Abrasive.garnet(Mesh.of(50)).flightLength(metresPerSecond(500)).si();
        double fine =
                Abrasive.garnet(Mesh.of(120)).flightLength(metresPerSecond(500)).si();
        assertThat(Abrasive.garnet(Mesh.of(80))
                        .flightLength(metresPerSecond(500))
                        .si())
                .isBetween(1.0, 3.0);
        assertThat(coarse).isGreaterThan(fine);
    }
}

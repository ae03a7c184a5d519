package dev.waterjet.jet;

import dev.waterjet.measure.DomainException;
import org.junit.jupiter.api.Test;
import static dev.waterjet.measure.Measures.micrometres;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

class MeshTest {

    /** Openings of ASTM E11: the mean is the sieve itself, the finest grains pass one sieve finer, the largest three coarser. */
    @Test
    void sievesStandBesideTheirNeighbours() {
        assertGrains(Mesh.of(80), 150, 180, 300);
        assertGrains(Mesh.of(120), 106, 125, 212);
        assertGrains(Mesh.of(45), 300, 355, 600);
    }

    @Test
    void atTheEndsOfTheSeriesTheLastSieveStandsIn() {
        assertGrains(Mesh.of(30), 500, 600, 600);
        assertGrains(Mesh.of(35), 425, 500, 600);
        assertGrains(Mesh.of(400), 38, 38, 63);
    }

    /** As for 80 mesh, 300 over 180: mean 185 um, so 111 and 308.3. */
    @Test
    void gritsSpreadLikeEightyMesh() {
        Mesh grit = Mesh.fepa(80);

        assertGrains(grit, 111, 185, 925 / 3.0);
        assertThat(grit).hasToString("F80");
        assertThat(Mesh.fepa(220).meanGrainSizeSi()).isCloseTo(58e-6, within(1e-18));
        assertThat(Mesh.fepa(30).meanGrainSizeSi()).isCloseTo(625e-6, within(1e-18));
    }

    private static void assertGrains(Mesh mesh, double smallestUm, double meanUm, double largestUm) {
        assertThat(mesh.minimumGrainSize().getValue().doubleValue() * 1e6).isCloseTo(smallestUm, within(1e-9));
        assertThat(mesh.meanGrainSize().getValue().doubleValue() * 1e6).isCloseTo(meanUm, within(1e-9));
        assertThat(mesh.maximumGrainSize().getValue().doubleValue() * 1e6).isCloseTo(largestUm, within(1e-9));
    }

    @Test
    void aNumberOutsideTheSeriesIsAnsweredWithTheNearest() {
        assertRefused(85, 80);
        assertRefused(99, 100);
        assertRefused(131, 140);
        assertRefused(10, 30);
        assertRefused(1000, 400);
        // as far from 80 as from 100: the coarser one
        assertRefused(90, 80);
        assertThatThrownBy(() -> Mesh.fepa(50))
                .isInstanceOf(DomainException.class)
                .hasMessage("grit designation is 50; it must be one of the standard series, for example 46");
    }

    private static void assertRefused(int number, double nearest) {
        assertThatThrownBy(() -> Mesh.of(number)).isInstanceOfSatisfying(DomainException.class, e -> {
            assertThat(e.quantity()).isEqualTo("sieve number");
            assertThat(e.value()).isEqualTo(number);
            assertThat(e.limit()).isEqualTo(nearest);
        });
    }

    @Test
    void grainsThatAreNotInOrderAreRefused() {
        assertThatThrownBy(() -> Mesh.ofGrainSizes(micrometres(0), micrometres(100), micrometres(300)))
                .hasMessageContaining("smallest grain is 0 um");
        assertThatThrownBy(() -> Mesh.ofGrainSizes(micrometres(100), micrometres(200), micrometres(150)))
                .hasMessage("largest grain is 150 um; it must be at least 200 um (the mean grain)");
        assertThat(Mesh.ofGrainSizes(micrometres(100), micrometres(100), micrometres(100))
                        .maximumGrainSizeSi())
                .isEqualTo(1e-4);
    }
}

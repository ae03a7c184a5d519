package dev.waterjet.jet;

import static dev.waterjet.Refusals.assertRefused;
import static dev.waterjet.measure.Measures.micrometres;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class MeshTest {

    /** Openings of ASTM E11: the mean is the sieve itself, the finest grains pass one sieve finer, the largest three coarser. */
    @Test
    void meshesSpanFourSieves() {
        assertGrains(Mesh.of(80), 150, 180, 300);
        assertGrains(Mesh.of(120), 106, 125, 212);
        assertGrains(Mesh.of(45), 300, 355, 600);
    }

    @Test
    void endsOfTheSeriesHaveSievesBeyondThem() {
        assertGrains(Mesh.of(16), 1000, 1180, 2000);
        assertGrains(Mesh.of(30), 500, 600, 1000);
        assertGrains(Mesh.of(35), 425, 500, 850);
        assertGrains(Mesh.of(40), 355, 425, 710);
        assertGrains(Mesh.of(400), 32, 38, 63);
        assertGrains(Mesh.of(500), 20, 25, 45);
    }

    /** As for 80 mesh, 300 over 180: mean 185 um, so 111 and 308.3. */
    @Test
    void gritsAreAsWideAsEightyMesh() {
        Mesh grit = Mesh.fepa(80);

        assertGrains(grit, 111, 185, 925 / 3.0);
        assertThat(grit.name()).isEqualTo("F80");
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
        assertNearest(85, 80);
        assertNearest(99, 100);
        assertNearest(131, 140);
        assertNearest(10, 16);
        assertNearest(1000, 500);
        // as far from 80 as from 100: the coarser one
        assertNearest(90, 80);
        assertRefused(() -> Mesh.fepa(50), "not-in-series", "grit designation", 46);
    }

    private static void assertNearest(int number, double nearest) {
        assertThat(assertRefused(() -> Mesh.of(number), "not-in-series", "sieve number", nearest)
                        .parameters())
                .containsEntry("value", (double) number);
    }

    @Test
    void grainsThatAreNotInOrderAreRefused() {
        assertRefused(
                () -> Mesh.ofGrainSizes(micrometres(0), micrometres(100), micrometres(300)),
                "must-be-above",
                "minimum grain size",
                0);
        assertRefused(
                () -> Mesh.ofGrainSizes(micrometres(100), micrometres(200), micrometres(150)),
                "must-be-at-least",
                "maximum grain size",
                2e-4);
        assertThat(Mesh.ofGrainSizes(micrometres(100), micrometres(100), micrometres(100))
                        .maximumGrainSizeSi())
                .isEqualTo(1e-4);
    }
}

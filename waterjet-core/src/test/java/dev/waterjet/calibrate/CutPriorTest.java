package dev.waterjet.calibrate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.Refusals;
import dev.waterjet.material.Material;
import dev.waterjet.material.MaterialClass;
import org.junit.jupiter.api.Test;

class CutPriorTest {

    private static Material material(double relativeUncertainty) {
        return Material.of("dome-alloy", 115, relativeUncertainty, MaterialClass.DUCTILE);
    }

    /** The numbers of the documentation. */
    @Test
    void theCatalogueHasItsUncertaintyButNoLessThanFivePercent() {
        assertThat(CutPrior.catalogue(material(0.3))).isEqualTo(new CutPrior(0.3, 0.13, 2, 0.06, 2, 0.05));
        assertThat(CutPrior.catalogue(material(0.02)).material()).isEqualTo(0.05);
        assertThat(CutPrior.catalogue(material(0.3)).machinability()).isCloseTo(Math.hypot(0.3, 0.13), within(1e-15));
        assertThat(CutPrior.catalogue(material(0.3)).isOfScatterAlone()).isFalse();
        assertThat(CutPrior.ofScatter(4, 0.07).isOfScatterAlone()).isTrue();
        assertThat(CutPrior.ofScatter(4, 0.07).scatter()).isEqualTo(0.07);
        assertThat(CutPrior.ofScatter(4, 0.07).scatterFreedom()).isEqualTo(4);
    }

    @Test
    void eachPartIsChangedByItself() {
        CutPrior prior = new CutPrior(0.1, 0.2, 3, 0.04, 5, 0.06);

        assertThat(prior.withScatter(7, 0.08)).isEqualTo(new CutPrior(0.1, 0.2, 7, 0.08, 5, 0.06));
        assertThat(prior.withPlates(7, 0.08)).isEqualTo(new CutPrior(0.1, 0.2, 3, 0.04, 7, 0.08));
        assertThat(prior.withShop(0)).isEqualTo(new CutPrior(0.1, 0, 3, 0.04, 5, 0.06));
        assertThat(prior.describe())
                .containsEntry("material", 0.1)
                .containsEntry("shop", 0.2)
                .containsEntry("scatter_degrees_of_freedom", 3.0)
                .containsEntry("scatter", 0.04)
                .containsEntry("plate_degrees_of_freedom", 5.0)
                .containsEntry("plate_spread", 0.06);
    }

    @Test
    void deviationsAreAboveZero() {
        CutPrior prior = CutPrior.catalogue(material(0.1));

        Refusals.assertRefused(
                () -> prior.withScatter(0, 0.1), "must-be-above", "degrees of freedom of the scatter", 0);
        Refusals.assertRefused(() -> prior.withScatter(1, 0), "must-be-above", "scatter", 0);
        Refusals.assertRefused(() -> prior.withPlates(0, 0.1), "must-be-above", "degrees of freedom of the plates", 0);
        Refusals.assertRefused(() -> prior.withPlates(1, 0), "must-be-above", "spread between plates", 0);
        Refusals.assertRefused(() -> prior.withShop(-0.1), "must-be-at-least", "deviation of the shop", 0);
        Refusals.assertRefused(() -> new CutPrior(0, 0.1, 1, 1, 1, 1), "must-be-above", "deviation of the material", 0);
    }
}

package dev.waterjet.calibrate;

import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.Serializable;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * Specification of a fit: models, priors and method.
 *
 * @param family the models among which the fit chooses
 * @param prior what is known before the cuts; null if the fit uses the cuts alone
 * @param group attribute whose values are random effects; null if cuts are independent
 * @param tailFreedom degrees of freedom of the scatter; 0 for a normal scatter, {@link #ESTIMATED} if the cuts are to show it, {@link #HIGH_BREAKDOWN}
 *     for weights that leave out far cuts
 */
record CalibrationSpec(
        Family family, @Nullable CutPrior prior, @Nullable String group, double tailFreedom) implements Serializable {

    /** Below all that a caller may state. */
    static final double ESTIMATED = 0.25;

    static final double HIGH_BREAKDOWN = 0.125;

    CalibrationSpec {
        Objects.requireNonNull(family, "family");
        tailFreedom = Require.notNegative("degrees of freedom of the scatter", tailFreedom, Units.ONE);
    }

    /** Names of the plates of the cuts, an empty one for a cut that has none. */
    List<String> groups(List<TestCut> cuts) {
        String name = Objects.requireNonNull(group);
        return cuts.stream().map(cut -> cut.attributes().getOrDefault(name, "")).toList();
    }

    /** Place of the plate of each cut; empty if plates have no part in the fit. */
    int[] places(List<TestCut> cuts) {
        return group == null ? new int[0] : AbilityRows.places(groups(cuts));
    }
}

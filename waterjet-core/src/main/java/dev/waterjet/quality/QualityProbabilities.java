package dev.waterjet.quality;

import dev.waterjet.evidence.Estimate;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Measures;
import dev.waterjet.measure.QuantityText;
import java.util.EnumMap;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import javax.measure.quantity.Dimensionless;

/**
 * Cut quality of a surface and the probability of each level, from its quality index. A surface has the finest level whose
 * index it reaches; below the index of the coarsest level it has none.
 *
 * @param index quality index of the surface: separation depth over thickness
 * @param table quality index of each level
 */
public record QualityProbabilities(Estimate<Dimensionless> index, QualityIndexTable table) implements Described {

    /** An index this little below that of a level is rounding. */
    private static final double ROUNDING = 1e-12;

    /**
     * Checks the components.
     *
     * @param index quality index of the surface: separation depth over thickness
     * @param table quality index of each level
     */
    public QualityProbabilities {
        Objects.requireNonNull(index, "index");
        Objects.requireNonNull(table, "table");
    }

    /** {@return the finest level that the best value of the index reaches; empty if it does not reach the coarsest} */
    public Optional<CutQuality> quality() {
        CutQuality[] levels = CutQuality.values();
        for (int i = levels.length - 1; i >= 0; i--) {
            if (index.si() >= table.index(levels[i]) * (1 - ROUNDING)) {
                return Optional.of(levels[i]);
            }
        }
        return Optional.empty();
    }

    /**
     * Returns the probability that the surface has a level or a finer one.
     *
     * @param quality cut quality
     * @return the probability, 0 to 1
     */
    public double atLeast(CutQuality quality) {
        return 1 - index.probabilityAtMost(Measures.ratio(Math.nextDown(table.index(quality))));
    }

    /** {@return the probability of each level; together with {@link #none()} they make 1} */
    public Map<CutQuality, Double> probabilities() {
        Map<CutQuality, Double> probabilities = new EnumMap<>(CutQuality.class);
        CutQuality[] levels = CutQuality.values();
        double finer = 0;
        for (int i = levels.length - 1; i >= 0; i--) {
            double reached = atLeast(levels[i]);
            probabilities.put(levels[i], reached - finer);
            finer = reached;
        }
        return probabilities;
    }

    /** {@return the probability of no level: with the standard table, that the jet does not cut through} */
    public double none() {
        return 1 - atLeast(CutQuality.VERY_COARSE);
    }

    @Override
    public Map<String, Object> describe() {
        Description description = Description.of("quality probabilities")
                .put("index", index)
                .put("table", table)
                .put("none", none());
        probabilities().forEach((level, share) -> description.put(level.label().replace(' ', '_'), share));
        return description.map();
    }

    @Override
    public String toString() {
        return quality().map(CutQuality::label).orElse("not separated") + " at quality index "
                + QuantityText.round(index.si(), 3);
    }
}

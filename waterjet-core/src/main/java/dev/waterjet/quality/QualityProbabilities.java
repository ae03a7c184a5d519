package dev.waterjet.quality;

import dev.waterjet.evidence.Estimate;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Measures;
import java.io.Serializable;
import java.util.EnumMap;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import javax.measure.quantity.Dimensionless;

/**
 * Grade of a face, and the probability of each grade, from its quality index and how sure that is. A face has the finest
 * grade whose index it reaches; below the index of the coarsest it has none.
 */
public final class QualityProbabilities implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    private final Estimate<Dimensionless> index;
    private final QualityIndexTable table;

    private QualityProbabilities(Estimate<Dimensionless> index, QualityIndexTable table) {
        this.index = Objects.requireNonNull(index, "index");
        this.table = Objects.requireNonNull(table, "table");
    }

    /**
     * The odds of a face.
     *
     * @param index its quality index: separation depth over thickness
     * @param table what index a grade wants
     * @return the odds
     */
    public static QualityProbabilities of(Estimate<Dimensionless> index, QualityIndexTable table) {
        return new QualityProbabilities(index, table);
    }

    /**
     * Quality index of the face.
     *
     * @return the index
     */
    public Estimate<Dimensionless> index() {
        return index;
    }

    /**
     * The grade by the best value of the index.
     *
     * @return the finest grade reached; nothing if not even the coarsest is
     */
    public Optional<CutQuality> quality() {
        CutQuality[] grades = CutQuality.values();
        for (int i = grades.length - 1; i >= 0; i--) {
            if (index.si() >= table.index(grades[i]) * (1 - 1e-12)) {
                return Optional.of(grades[i]);
            }
        }
        return Optional.empty();
    }

    /**
     * Probability that the face reaches a grade or a finer one.
     *
     * @param grade the grade
     * @return the probability, 0 to 1
     */
    public double atLeast(CutQuality grade) {
        return 1 - index.probabilityAtMost(Measures.ratio(Math.nextDown(table.index(grade))));
    }

    /**
     * Probability of each grade.
     *
     * @return a probability for each; together with {@link #none()} they make 1
     */
    public Map<CutQuality, Double> probabilities() {
        EnumMap<CutQuality, Double> odds = new EnumMap<>(CutQuality.class);
        CutQuality[] grades = CutQuality.values();
        double finer = 0;
        for (int i = grades.length - 1; i >= 0; i--) {
            double reached = atLeast(grades[i]);
            odds.put(grades[i], reached - finer);
            finer = reached;
        }
        return odds;
    }

    /**
     * Probability that the face misses even the coarsest grade: by the standard table, that the jet does not cut through.
     *
     * @return the probability, 0 to 1
     */
    public double none() {
        return 1 - atLeast(CutQuality.VERY_COARSE);
    }

    @Override
    public Map<String, Object> describe() {
        Description description =
                Description.of("grade odds").put("index", index).put("none", none());
        probabilities().forEach((grade, odds) -> description.put(grade.label().replace(' ', '_'), odds));
        return description.map();
    }

    @Override
    public String toString() {
        return quality().map(CutQuality::label).orElse("no grade") + " at index " + index;
    }
}

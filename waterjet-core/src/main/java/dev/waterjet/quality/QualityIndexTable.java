package dev.waterjet.quality;

import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.Serializable;
import java.util.EnumMap;
import java.util.Map;

/**
 * Ties face grades to the quality index of a feed model: the index is how many times the thickness the jet could just
 * separate at the chosen feed.
 *
 * <p>The standard table is the scale of Zeng and Kim, 1 for a cut that just separates to 5 for the best finish (from
 * memory): PARTING 1, COARSE 2, MEDIUM 3, FINE 4, EXTRA_FINE 5. A shop that has measured its own faces replaces it.
 *
 * <p>In aluminium, cast iron and stainless steel the smooth zone ends at 0.52 of the separation depth (Momber, Kovacevic,
 * Proc. IMechE B 209 (1995)), so that the whole face is smooth from an index of 1/0.52 = 1.92 on: with the standard table
 * only PARTING leaves grooves, from about the middle of the face, and COARSE ends just above them. The finer grades differ
 * in how far the foot of the cut trails and how rough the smooth zone is.
 */
public final class QualityIndexTable implements Serializable {

    private static final long serialVersionUID = 1L;

    private static final QualityIndexTable STANDARD = new QualityIndexTable(Map.of(
            CutQuality.VERY_COARSE, 1.0,
            CutQuality.COARSE, 2.0,
            CutQuality.MEDIUM, 3.0,
            CutQuality.FINE, 4.0,
            CutQuality.VERY_FINE, 5.0));

    private final EnumMap<CutQuality, Double> indices;

    private QualityIndexTable(Map<CutQuality, Double> indices) {
        this.indices = new EnumMap<>(CutQuality.class);
        this.indices.putAll(indices);
        double lowest = 1;
        for (CutQuality grade : CutQuality.values()) {
            Double index = indices.get(grade);
            lowest = Require.atLeast(
                    "index of the grade " + grade.label(),
                    index == null ? Double.NaN : index,
                    lowest,
                    Units.ONE,
                    "a finer grade has no lower index, and below 1 the jet does not separate");
        }
    }

    /**
     * The scale of Zeng and Kim: 1 to 5.
     *
     * @return the standard table
     */
    public static QualityIndexTable standard() {
        return STANDARD;
    }

    /**
     * A table of one's own.
     *
     * @param indices an index of 1 or more for each grade, none lower than that of a coarser grade
     * @return the table
     */
    public static QualityIndexTable of(Map<CutQuality, Double> indices) {
        return new QualityIndexTable(indices);
    }

    /**
     * The index of a grade.
     *
     * @param grade the grade
     * @return its index, 1 or more
     */
    public double index(CutQuality grade) {
        Double index = indices.get(grade);
        if (index == null) {
            throw new IllegalStateException("no index for " + grade);
        }
        return index;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof QualityIndexTable that && indices.equals(that.indices);
    }

    @Override
    public int hashCode() {
        return indices.hashCode();
    }

    @Override
    public String toString() {
        return indices.toString();
    }
}

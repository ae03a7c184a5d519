package dev.waterjet.quality;

import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.InvalidObjectException;
import java.io.ObjectInputStream;
import java.io.Serializable;
import java.util.Arrays;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;

/**
 * Quality index of each level of cut quality. The index is the depth that the jet could just separate at the chosen feed
 * rate over the thickness of the workpiece.
 *
 * <p>The standard table is the scale of Zeng and Kim, from 1 for a separation cut to 5 for the best finish (from memory):
 * very coarse 1, coarse 2, medium 3, fine 4, very fine 5. A shop that has measured its own cut surfaces replaces it.
 *
 * <p>In aluminium, cast iron and stainless steel the smooth zone ends at about 0.52 of the separation depth (derived from
 * the critical depth of Momber, Kovacevic, Proc. IMechE B 209 (1995)), so that the whole cut surface is smooth from an index
 * of 1/0.52 = 1.92. With the standard table only very coarse cuts have a striation zone, on about half of the thickness. The
 * finer levels differ in lag and in the roughness of the smooth zone.
 */
public final class QualityIndexTable implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    private static final QualityIndexTable STANDARD = of(Map.of(
            CutQuality.VERY_COARSE, 1.0,
            CutQuality.COARSE, 2.0,
            CutQuality.MEDIUM, 3.0,
            CutQuality.FINE, 4.0,
            CutQuality.VERY_FINE, 5.0));

    /** Checked content, and the serial form. */
    private record Values(Map<CutQuality, Double> indices) implements Serializable {

        Values {
            indices = Map.copyOf(indices);
            double coarser = 1;
            for (CutQuality quality : CutQuality.values()) {
                coarser = Require.atLeast(
                        "quality index of " + quality.label(),
                        indices.getOrDefault(quality, Double.NaN),
                        coarser,
                        Units.ONE,
                        "a finer level has at least the index of the coarser one; below 1 the jet does not separate");
            }
        }

        private Object readResolve() {
            return new QualityIndexTable(this);
        }
    }

    private final transient Values values;

    private QualityIndexTable(Values values) {
        this.values = values;
    }

    /** {@return the scale of Zeng and Kim: 1 to 5} */
    public static QualityIndexTable standard() {
        return STANDARD;
    }

    /**
     * Makes a custom table.
     *
     * @param indices index of 1 or more for each level, none below that of a coarser level
     * @return the table
     */
    public static QualityIndexTable of(Map<CutQuality, Double> indices) {
        return new QualityIndexTable(new Values(indices));
    }

    /**
     * Returns the index of a level.
     *
     * @param quality cut quality
     * @return its index, 1 or more
     */
    public double index(CutQuality quality) {
        return Objects.requireNonNull(values.indices.get(Objects.requireNonNull(quality, "quality")));
    }

    @Override
    public Map<String, Object> describe() {
        Description description = Description.of("quality index table");
        for (CutQuality quality : CutQuality.values()) {
            description.put(quality.label().replace(' ', '_'), index(quality));
        }
        return description.map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof QualityIndexTable that && values.equals(that.values);
    }

    @Override
    public int hashCode() {
        return values.hashCode();
    }

    @Override
    public String toString() {
        return Arrays.stream(CutQuality.values())
                .map(quality -> quality.label() + " " + QuantityText.round(index(quality), 4))
                .collect(Collectors.joining(", "));
    }

    private Object writeReplace() {
        return values;
    }

    private void readObject(ObjectInputStream in) throws InvalidObjectException {
        throw new InvalidObjectException("read through its values");
    }
}

package dev.waterjet.jet;

import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.InvalidObjectException;
import java.io.ObjectInputStream;
import java.io.Serializable;
import java.util.Map;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Length;

/**
 * Mesh of an abrasive: minimum, mean and maximum grain size.
 *
 * <p>The designation "80 mesh" of the trade is a mixture, not one sieve: grains of about 150 &micro;m to 300 &micro;m with a
 * mean of 180 &micro;m. The mean is the opening of the ASTM E11 sieve of that number. The minimum is taken one sieve finer and
 * the maximum three sieves coarser, as for 80 mesh; for every other number they are derived.
 */
public final class Mesh implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    private static final double UM = 1e6;
    private static final int SIEVES_TO_MINIMUM = 1;
    private static final int SIEVES_TO_MAXIMUM = 3;

    /** Maximum over mean grain size of a mixture of which only the mean is known, as for 80 mesh: 300 / 180. */
    private static final double MAXIMUM_OVER_MEAN = 300.0 / 180.0;

    /** Checked content, and the serial form. */
    private record Values(String name, double minimumM, double meanM, double maximumM) implements Serializable {

        private static final long serialVersionUID = 1L;

        Values {
            Objects.requireNonNull(name, "name");
            minimumM = Require.positive("minimum grain size", minimumM, Units.MICROMETRE);
            meanM = Require.atLeast("mean grain size", meanM, minimumM, Units.MICROMETRE, "the minimum grain size");
            maximumM = Require.atLeast("maximum grain size", maximumM, meanM, Units.MICROMETRE, "the mean grain size");
        }

        private Object readResolve() {
            return new Mesh(this);
        }
    }

    private final transient Values values;

    private Mesh(Values values) {
        this.values = values;
    }

    /**
     * Returns the mixture that the trade designates by a sieve number of ASTM E11.
     *
     * @param number a number of the series 16, 18, 20, 25, 30, 35, 40, 45, 50, 60, 70, 80, 100, 120, 140, 170, 200, 230, 270,
     *     325, 400, 450, 500
     * @return the mesh
     */
    public static Mesh of(int number) {
        int index = SieveTables.sieveIndex(number);
        return new Mesh(new Values(
                number + " mesh",
                SieveTables.sieveOpeningUm(index + SIEVES_TO_MINIMUM) / UM,
                SieveTables.sieveOpeningUm(index) / UM,
                SieveTables.sieveOpeningUm(index - SIEVES_TO_MAXIMUM) / UM));
    }

    /**
     * Returns a grit of the FEPA F series (mean sizes from memory).
     *
     * @param designation the number after the F: 30, 36, 40, 46, 54, 60, 70, 80, 90, 100, 120, 150, 180 or 220
     * @return the mesh
     */
    public static Mesh fepa(int designation) {
        double meanM = SieveTables.gritMeanUm(designation) / UM;
        return new Mesh(new Values("F" + designation, meanM / MAXIMUM_OVER_MEAN, meanM, meanM * MAXIMUM_OVER_MEAN));
    }

    /**
     * Returns a mixture with measured grain sizes.
     *
     * @param minimum size that few grains fall below, above 0
     * @param mean mean size
     * @param maximum size that few grains exceed
     * @return the mesh
     */
    public static Mesh ofGrainSizes(Quantity<Length> minimum, Quantity<Length> mean, Quantity<Length> maximum) {
        Objects.requireNonNull(maximum, "maximum");
        Objects.requireNonNull(mean, "mean");
        Objects.requireNonNull(minimum, "minimum");
        return new Mesh(new Values(
                "measured grain sizes", Kind.LENGTH.si(minimum), Kind.LENGTH.si(mean), Kind.LENGTH.si(maximum)));
    }

    /** {@return the name, such as {@code 80 mesh} or {@code F80}} */
    public String name() {
        return values.name;
    }

    /** {@return the size that few grains fall below} */
    public Quantity<Length> minimumGrainSize() {
        return Kind.LENGTH.of(values.minimumM);
    }

    /** {@return the mean grain size} */
    public Quantity<Length> meanGrainSize() {
        return Kind.LENGTH.of(values.meanM);
    }

    /** {@return the size that few grains exceed} */
    public Quantity<Length> maximumGrainSize() {
        return Kind.LENGTH.of(values.maximumM);
    }

    /** {@return the mean grain size, in m} */
    public double meanGrainSizeSi() {
        return values.meanM;
    }

    /** {@return the size that few grains exceed, in m} */
    public double maximumGrainSizeSi() {
        return values.maximumM;
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("mesh")
                .put("name", values.name)
                .put("minimum_grain_size", Kind.LENGTH, values.minimumM)
                .put("mean_grain_size", Kind.LENGTH, values.meanM)
                .put("maximum_grain_size", Kind.LENGTH, values.maximumM)
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Mesh that && values.equals(that.values);
    }

    @Override
    public int hashCode() {
        return values.hashCode();
    }

    @Override
    public String toString() {
        return values.name;
    }

    private Object writeReplace() {
        return values;
    }

    private void readObject(ObjectInputStream in) throws InvalidObjectException {
        throw new InvalidObjectException("read through its values");
    }
}

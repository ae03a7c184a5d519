package dev.waterjet.jet;

import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.Serializable;
import java.util.Map;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Length;

/**
 * Size of the grains of an abrasive.
 *
 * <p>The trade's "80 mesh" names a mixture, not one sieve: grains of roughly 150 to 300 um with a mean of 180 um. The mean
 * is the opening of the ASTM E11 sieve of that number; smallest and largest grain are taken one sieve finer and three
 * sieves coarser, as they lie for 80 mesh, and are derived for every other number.
 */
public final class Mesh implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    private static final double UM = 1e6;
    private static final int SIEVES_TO_SMALLEST = 1;
    private static final int SIEVES_TO_LARGEST = 3;

    /** Largest over mean grain for a mixture of which only the mean is known, as for 80 mesh: 300 / 180. */
    private static final double LARGEST_OVER_MEAN = 300.0 / 180.0;

    private final String name;
    private final double smallestM;
    private final double meanM;
    private final double largestM;

    private Mesh(String name, double smallestM, double meanM, double largestM) {
        this.name = name;
        this.smallestM = Require.positive("smallest grain", smallestM, Units.MICROMETRE);
        this.meanM = Require.atLeast("mean grain", meanM, smallestM, Units.MICROMETRE, "the smallest grain");
        this.largestM = Require.atLeast("largest grain", largestM, meanM, Units.MICROMETRE, "the mean grain");
    }

    /**
     * The mixture that the trade calls by a sieve number of ASTM E11.
     *
     * @param number a number of the series 30, 35, 40, 45, 50, 60, 70, 80, 100, 120, 140, 170, 200, 230, 270, 325, 400
     * @return the mesh
     */
    public static Mesh of(int number) {
        int index = SieveTables.sieveIndex(number);
        return new Mesh(
                number + " mesh",
                SieveTables.sieveOpeningUm(index + SIEVES_TO_SMALLEST) / UM,
                SieveTables.sieveOpeningUm(index) / UM,
                SieveTables.sieveOpeningUm(index - SIEVES_TO_LARGEST) / UM);
    }

    /**
     * A grit of the FEPA F series (mean sizes from memory).
     *
     * @param designation the number behind the F: 30, 36, 40, 46, 54, 60, 70, 80, 90, 100, 120, 150, 180 or 220
     * @return the mesh
     */
    public static Mesh fepa(int designation) {
        double meanM = SieveTables.gritMeanUm(designation) / UM;
        return new Mesh("F" + designation, meanM / LARGEST_OVER_MEAN, meanM, meanM * LARGEST_OVER_MEAN);
    }

    /**
     * A mixture whose grains were measured.
     *
     * @param smallest size that few grains fall below
     * @param mean mean size
     * @param largest size that few grains exceed
     * @return the mesh
     */
    public static Mesh ofGrainSizes(Quantity<Length> smallest, Quantity<Length> mean, Quantity<Length> largest) {
        return new Mesh("measured grains", Kind.LENGTH.si(smallest), Kind.LENGTH.si(mean), Kind.LENGTH.si(largest));
    }

    /**
     * Name of the mesh.
     *
     * @return a name such as {@code "80 mesh"} or {@code "F80"}
     */
    public String name() {
        return name;
    }

    /**
     * Size that few grains fall below.
     *
     * @return the size, in m
     */
    public Quantity<Length> minimumGrainSize() {
        return Kind.LENGTH.of(smallestM);
    }

    /**
     * Mean size of the grains.
     *
     * @return the size, in m
     */
    public Quantity<Length> meanGrainSize() {
        return Kind.LENGTH.of(meanM);
    }

    /**
     * Size that few grains exceed.
     *
     * @return the size, in m
     */
    public Quantity<Length> maximumGrainSize() {
        return Kind.LENGTH.of(largestM);
    }

    /**
     * Mean size of the grains as a number.
     *
     * @return the size in m
     */
    public double meanGrainSizeSi() {
        return meanM;
    }

    /**
     * Size that few grains exceed, as a number.
     *
     * @return the size in m
     */
    public double maximumGrainSizeSi() {
        return largestM;
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("mesh")
                .put("name", name)
                .put("minimum_grain_size", Kind.LENGTH, smallestM)
                .put("mean_grain_size", Kind.LENGTH, meanM)
                .put("maximum_grain_size", Kind.LENGTH, largestM)
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Mesh that
                && name.equals(that.name)
                && smallestM == that.smallestM
                && meanM == that.meanM
                && largestM == that.largestM;
    }

    @Override
    public int hashCode() {
        return Objects.hash(name, smallestM, meanM, largestM);
    }

    @Override
    public String toString() {
        return name;
    }
}

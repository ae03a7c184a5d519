package dev.waterjet.head;

import dev.waterjet.hydraulics.Orifice;
import dev.waterjet.jet.Abrasive;
import dev.waterjet.jet.Mesh;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.MassFlow;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.Serializable;
import java.util.List;
import java.util.Objects;
import javax.measure.quantity.Length;

/**
 * What a shop has on its shelf: orifices, bores and lengths of focusing tubes, abrasives, and the flows that its feeder
 * gives. Every combination is a head to be tried.
 */
public final class HeadInventory implements Serializable {

    private static final long serialVersionUID = 1L;

    private static final double MOST_COMBINATIONS = 2e6;

    private final List<Orifice> orifices;
    private final QuantityArray<Length> tubeBores;
    private final QuantityArray<Length> tubeLengths;
    private final List<Abrasive> abrasives;
    private final QuantityArray<MassFlow> flows;

    private HeadInventory(
            List<Orifice> orifices,
            QuantityArray<Length> tubeBores,
            QuantityArray<Length> tubeLengths,
            List<Abrasive> abrasives,
            QuantityArray<MassFlow> flows) {
        this.orifices = List.copyOf(orifices);
        this.tubeBores = tubeBores;
        this.tubeLengths = tubeLengths;
        this.abrasives = List.copyOf(abrasives);
        this.flows = flows;
        some("orifices", orifices.size());
        some("bores of focusing tubes", tubeBores.size());
        some("lengths of focusing tubes", tubeLengths.size());
        some("abrasives", abrasives.size());
        some("flows of abrasive", flows.size());
        Require.atMost("number of heads to try", combinations(), MOST_COMBINATIONS, Units.ONE, "");
        tubeBores.stream().forEach(m -> Require.positive("bore of a focusing tube", m, Units.MILLIMETRE));
        tubeLengths.stream().forEach(m -> Require.positive("length of a focusing tube", m, Units.MILLIMETRE));
        flows.stream().forEach(kg -> Require.positive("flow of abrasive", kg, Units.GRAM_PER_MINUTE));
    }

    private static void some(String what, int size) {
        Require.atLeast("number of " + what, size, 1, Units.ONE, "a list of heads needs one of each");
    }

    /**
     * A shelf of one's own.
     *
     * @param orifices the orifices
     * @param tubeBores bores of the focusing tubes, each above zero
     * @param tubeLengths their lengths, each above zero; every bore is tried in every length
     * @param abrasives the abrasives
     * @param flows flows of abrasive, each above zero
     * @return the list
     * @throws dev.waterjet.measure.DomainException if one of them is empty, or there are more than two million combinations
     */
    public static HeadInventory of(
            List<Orifice> orifices,
            QuantityArray<Length> tubeBores,
            QuantityArray<Length> tubeLengths,
            List<Abrasive> abrasives,
            QuantityArray<MassFlow> flows) {
        return new HeadInventory(orifices, tubeBores, tubeLengths, abrasives, flows);
    }

    /**
     * Sizes that are commonly sold: sapphire from 0.08 to 0.40 mm, tubes from 0.20 to 1.20 mm, garnet from 50 to 230 mesh,
     * 10 to 900 g/min (common practice, no source).
     *
     * @return the list, to be replaced by the shop's own
     */
    public static HeadInventory standard() {
        return new HeadInventory(
                QuantityArray.of(
                                Kind.LENGTH,
                                new double[] {
                                    0.08, 0.10, 0.13, 0.15, 0.18, 0.20, 0.23, 0.25, 0.28, 0.30, 0.33, 0.36, 0.40
                                },
                                Units.MILLIMETRE)
                        .stream()
                        .mapToObj(m -> Orifice.sapphire(Kind.LENGTH.of(m)))
                        .toList(),
                QuantityArray.of(
                        Kind.LENGTH,
                        new double[] {0.20, 0.25, 0.30, 0.40, 0.50, 0.60, 0.76, 0.89, 1.02, 1.20},
                        Units.MILLIMETRE),
                QuantityArray.of(Kind.LENGTH, new double[] {20, 35, 50, 76, 102}, Units.MILLIMETRE),
                List.of(50, 80, 120, 230).stream()
                        .map(number -> Abrasive.garnet(Mesh.of(number)))
                        .toList(),
                QuantityArray.of(
                        Kind.MASS_FLOW,
                        new double[] {10, 20, 40, 70, 100, 150, 200, 250, 300, 400, 500, 600, 750, 900},
                        Units.GRAM_PER_MINUTE));
    }

    /**
     * A shelf as text: CSV with the header {@code part,size}, each row one size. A part is {@code orifice}, {@code tube},
     * {@code length}, {@code mesh} or {@code flow}; orifices are sapphire and the abrasive is garnet.
     *
     * <pre>{@code
     * part,size
     * orifice,0.25 mm
     * tube,0.76 mm
     * length,76 mm
     * mesh,80
     * flow,300 g/min
     * }</pre>
     *
     * @param csv the text
     * @return the list
     * @throws dev.waterjet.measure.TextException with line and column, if the header or a row cannot be read
     * @throws dev.waterjet.measure.DomainException if one of the five parts has no row, or a size is impossible
     */
    public static HeadInventory parse(String csv) {
        return HeadInventoryText.parse(csv);
    }

    /**
     * This list with other abrasives.
     *
     * @param abrasives the abrasives, one or more
     * @return the list with those
     */
    public HeadInventory withAbrasives(List<Abrasive> abrasives) {
        return new HeadInventory(orifices, tubeBores, tubeLengths, abrasives, flows);
    }

    /**
     * How many heads there are to be tried.
     *
     * @return the count
     */
    public int size() {
        return (int) combinations();
    }

    private double combinations() {
        return 1.0 * orifices.size() * tubeBores.size() * tubeLengths.size() * abrasives.size() * flows.size();
    }

    /**
     * The orifices.
     *
     * @return the orifices, unmodifiable
     */
    public List<Orifice> orifices() {
        return orifices;
    }

    /**
     * Bores of the focusing tubes.
     *
     * @return the bores
     */
    public QuantityArray<Length> tubeBores() {
        return tubeBores;
    }

    /**
     * Lengths of the focusing tubes.
     *
     * @return the lengths
     */
    public QuantityArray<Length> tubeLengths() {
        return tubeLengths;
    }

    /**
     * The abrasives.
     *
     * @return the abrasives, unmodifiable
     */
    public List<Abrasive> abrasives() {
        return abrasives;
    }

    /**
     * Flows of abrasive.
     *
     * @return the flows
     */
    public QuantityArray<MassFlow> flows() {
        return flows;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof HeadInventory that
                && orifices.equals(that.orifices)
                && tubeBores.equals(that.tubeBores)
                && tubeLengths.equals(that.tubeLengths)
                && abrasives.equals(that.abrasives)
                && flows.equals(that.flows);
    }

    @Override
    public int hashCode() {
        return Objects.hash(orifices, tubeBores, tubeLengths, abrasives, flows);
    }

    @Override
    public String toString() {
        return size() + " heads";
    }
}

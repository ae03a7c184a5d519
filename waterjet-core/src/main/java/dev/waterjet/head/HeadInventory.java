package dev.waterjet.head;

import dev.waterjet.hydraulics.Orifice;
import dev.waterjet.jet.Abrasive;
import dev.waterjet.jet.Mesh;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.MassFlow;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.InvalidObjectException;
import java.io.ObjectInputStream;
import java.io.Serializable;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import javax.measure.quantity.Length;

/**
 * Inventory of a shop: orifices, bores and lengths of focusing tubes, abrasives, and the flow rates of its feeder. Every
 * combination is a head to try.
 */
public final class HeadInventory implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    private static final double MAX_COMBINATIONS = 2e6;

    /** Checked content, and the serial form. */
    private record Values(
            List<Orifice> orifices,
            QuantityArray<Length> tubeBores,
            QuantityArray<Length> tubeLengths,
            List<Abrasive> abrasives,
            QuantityArray<MassFlow> flows)
            implements Serializable {

        private static final long serialVersionUID = 1L;

        Values {
            orifices = List.copyOf(orifices);
            abrasives = List.copyOf(abrasives);
            some("orifices", orifices.size());
            some("bores of focusing tubes", tubeBores.size());
            some("lengths of focusing tubes", tubeLengths.size());
            some("abrasives", abrasives.size());
            some("abrasive flow rates", flows.size());
            double combinations =
                    1.0 * orifices.size() * tubeBores.size() * tubeLengths.size() * abrasives.size() * flows.size();
            Require.atMost("number of heads to try", combinations, MAX_COMBINATIONS, Units.ONE, "");
            tubeBores.stream().forEach(m -> Require.positive("bore of a focusing tube", m, Units.MILLIMETRE));
            tubeLengths.stream().forEach(m -> Require.positive("length of a focusing tube", m, Units.MILLIMETRE));
            flows.stream().forEach(kg -> Require.positive("abrasive flow rate", kg, Units.GRAM_PER_MINUTE));
        }

        private static void some(String name, int size) {
            Require.atLeast("number of " + name, size, 1, Units.ONE, "an inventory needs one of each");
        }

        private Object readResolve() {
            return new HeadInventory(this);
        }
    }

    private final transient Values values;

    private HeadInventory(Values values) {
        this.values = values;
    }

    /**
     * Returns an inventory.
     *
     * @param orifices the orifices
     * @param tubeBores bores of the focusing tubes, each above zero
     * @param tubeLengths their lengths, each above zero; every bore is tried in every length
     * @param abrasives the abrasives
     * @param flows abrasive flow rates, each above zero
     * @return the inventory
     * @throws dev.waterjet.measure.DomainException if one of them is empty, or there are more than two million combinations
     */
    public static HeadInventory of(
            List<Orifice> orifices,
            QuantityArray<Length> tubeBores,
            QuantityArray<Length> tubeLengths,
            List<Abrasive> abrasives,
            QuantityArray<MassFlow> flows) {
        Objects.requireNonNull(abrasives, "abrasives");
        Objects.requireNonNull(flows, "flows");
        Objects.requireNonNull(orifices, "orifices");
        Objects.requireNonNull(tubeBores, "tubeBores");
        Objects.requireNonNull(tubeLengths, "tubeLengths");
        return new HeadInventory(new Values(orifices, tubeBores, tubeLengths, abrasives, flows));
    }

    /**
     * Returns sizes in common use: sapphire from 0.08 to 0.40 mm, tubes from 0.20 to 1.20 mm, garnet from 50 to 230 mesh,
     * 10 to 900 g/min (common practice, no source).
     *
     * @return the inventory, to be replaced by that of the shop
     */
    public static HeadInventory standard() {
        return of(
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
     * Reads an inventory: CSV with the header {@code part,size}, each row one size. A part is {@code orifice}, {@code tube},
     * {@code length}, {@code mesh} or {@code flow}; orifices are sapphire and the abrasive is garnet.
     *
     * <pre>
     * part,size
     * orifice,0.25 mm
     * tube,0.76 mm
     * length,76 mm
     * mesh,80
     * flow,300 g/min
     * </pre>
     *
     * @param csv the text
     * @return the inventory
     * @throws dev.waterjet.measure.TextException with line and column, if the header or a row cannot be read
     * @throws dev.waterjet.measure.DomainException if one of the five parts has no row, or a size is impossible
     */
    public static HeadInventory parse(String csv) {
        return HeadInventoryText.parse(csv);
    }

    /**
     * Returns this inventory with other abrasives.
     *
     * @param abrasives the abrasives, one or more
     * @return the inventory
     */
    public HeadInventory withAbrasives(List<Abrasive> abrasives) {
        Objects.requireNonNull(abrasives, "abrasives");
        return of(values.orifices, values.tubeBores, values.tubeLengths, abrasives, values.flows);
    }

    /** {@return the number of heads to try} */
    public int size() {
        return values.orifices.size()
                * values.tubeBores.size()
                * values.tubeLengths.size()
                * values.abrasives.size()
                * values.flows.size();
    }

    /** {@return the orifices, unmodifiable} */
    public List<Orifice> orifices() {
        return values.orifices;
    }

    /** {@return the bores of the focusing tubes} */
    public QuantityArray<Length> tubeBores() {
        return values.tubeBores;
    }

    /** {@return the lengths of the focusing tubes} */
    public QuantityArray<Length> tubeLengths() {
        return values.tubeLengths;
    }

    /** {@return the abrasives, unmodifiable} */
    public List<Abrasive> abrasives() {
        return values.abrasives;
    }

    /** {@return the abrasive flow rates} */
    public QuantityArray<MassFlow> flows() {
        return values.flows;
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("head inventory")
                .put("orifices", values.orifices)
                .put("tube_bores", values.tubeBores)
                .put("tube_lengths", values.tubeLengths)
                .put("abrasives", values.abrasives)
                .put("abrasive_flows", values.flows)
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof HeadInventory that && values.equals(that.values);
    }

    @Override
    public int hashCode() {
        return values.hashCode();
    }

    @Override
    public String toString() {
        return "inventory of " + size() + " heads";
    }

    private Object writeReplace() {
        return values;
    }

    private void readObject(ObjectInputStream in) throws InvalidObjectException {
        throw new InvalidObjectException("read through its values");
    }
}

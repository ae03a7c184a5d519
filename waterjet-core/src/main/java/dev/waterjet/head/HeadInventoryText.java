package dev.waterjet.head;

import dev.waterjet.hydraulics.Orifice;
import dev.waterjet.jet.Abrasive;
import dev.waterjet.jet.Mesh;
import dev.waterjet.measure.CsvText;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.MassFlow;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.measure.TextException;
import dev.waterjet.measure.WaterjetException;
import java.util.ArrayList;
import java.util.List;
import javax.measure.Quantity;
import javax.measure.quantity.Length;

/** Reader of a head inventory. */
final class HeadInventoryText {

    private static final List<String> HEADER = List.of("part", "size");

    private final List<Orifice> orifices = new ArrayList<>();
    private final List<Quantity<Length>> bores = new ArrayList<>();
    private final List<Quantity<Length>> lengths = new ArrayList<>();
    private final List<Abrasive> abrasives = new ArrayList<>();
    private final List<Quantity<MassFlow>> flows = new ArrayList<>();

    private HeadInventoryText() {}

    static HeadInventory parse(String csv) {
        List<CsvText.Row> rows = CsvText.parse(csv);
        if (rows.isEmpty() || !rows.get(0).cells().equals(HEADER)) {
            throw new TextException(
                    rows.isEmpty() ? 1 : rows.get(0).line(),
                    1,
                    Message.of("inventory-header", "the header must be \"part,size\""));
        }
        HeadInventoryText text = new HeadInventoryText();
        rows.subList(1, rows.size()).forEach(text::read);
        return HeadInventory.of(
                text.orifices,
                array(Kind.LENGTH, text.bores),
                array(Kind.LENGTH, text.lengths),
                text.abrasives,
                array(Kind.MASS_FLOW, text.flows));
    }

    private static <Q extends Quantity<Q>> QuantityArray<Q> array(Kind<Q> kind, List<Quantity<Q>> quantities) {
        return QuantityArray.ofSi(
                kind, quantities.stream().mapToDouble(kind::si).toArray());
    }

    private void read(CsvText.Row row) {
        if (row.cells().size() != HEADER.size()) {
            throw row.fault(row.cells().size() - 1, Message.of("inventory-row", "a row has a part and its size"));
        }
        String size = row.cells().get(1);
        try {
            switch (row.cells().get(0)) {
                case "orifice" -> orifices.add(Orifice.sapphire(Kind.LENGTH.parse(size)));
                case "tube" -> bores.add(Kind.LENGTH.parse(size));
                case "length" -> lengths.add(Kind.LENGTH.parse(size));
                case "mesh" -> abrasives.add(Abrasive.garnet(Mesh.of(number(size))));
                case "flow" -> flows.add(Kind.MASS_FLOW.parse(size));
                default ->
                    throw row.fault(
                            0,
                            Message.of(
                                            "unknown-head-part",
                                            "unknown part {part}; use orifice, tube, length, mesh or flow")
                                    .withInput("part", row.cells().get(0)));
            }
        } catch (WaterjetException e) {
            throw e instanceof TextException text && text.line() > 0 ? e : row.fault(1, e.message());
        }
    }

    private static int number(String text) {
        try {
            return Integer.parseInt(text);
        } catch (NumberFormatException e) {
            throw new TextException(Message.of("not-a-sieve-number", "{text} is not a sieve number")
                    .withInput("text", text));
        }
    }
}

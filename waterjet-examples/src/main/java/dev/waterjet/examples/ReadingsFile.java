package dev.waterjet.examples;

import dev.waterjet.measure.CsvText;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.TextException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import javax.measure.Quantity;
import javax.measure.Unit;
import org.jspecify.annotations.Nullable;
import tech.units.indriya.quantity.Quantities;

/** File of readings as comma-separated text: columns of quantities carry their unit, as in {@code depth_mm}. */
final class ReadingsFile {

    private final Map<String, Integer> places = new LinkedHashMap<>();
    private final Map<String, String> units = new LinkedHashMap<>();
    private final List<Row> rows = new ArrayList<>();

    private ReadingsFile() {}

    /**
     * Reads a file.
     *
     * @param name name of the file, for messages
     * @param text its text
     * @param kinds kinds of the columns of quantities, by name; other columns are words
     */
    static ReadingsFile parse(String name, String text, Map<String, Kind<?>> kinds) {
        List<CsvText.Row> lines = CsvText.parse(text);
        if (lines.size() < 2) {
            throw new TextException(name + " contains no readings; start it with a row of column names");
        }
        ReadingsFile file = new ReadingsFile();
        CsvText.Row header = lines.get(0);
        for (int i = 0; i < header.cells().size(); i++) {
            String heading = header.cells().get(i).strip();
            String column = kinds.keySet().stream()
                    .filter(known -> heading.startsWith(known + "_"))
                    .max((one, other) -> Integer.compare(one.length(), other.length()))
                    .orElse(heading);
            if (kinds.containsKey(heading)) {
                throw new TextException(name + ", line 1: column " + heading + " has no unit; write it as "
                        + kinds.get(heading).column(heading));
            }
            if (file.places.put(column, i) != null) {
                throw new TextException(name + ", line 1: column " + column + " is repeated");
            }
            if (column.length() < heading.length()) {
                file.units.put(column, heading.substring(column.length() + 1).replace("_per_", "/"));
            }
        }
        for (CsvText.Row line : lines.subList(1, lines.size())) {
            if (line.cells().size() != header.cells().size()) {
                throw new TextException(name + ", line " + line.line() + ": the row has "
                        + line.cells().size() + " cells, the header "
                        + header.cells().size());
            }
            file.rows.add(new Row(name, line, file));
        }
        return file;
    }

    List<Row> rows() {
        return rows;
    }

    /**
     * Row of readings.
     *
     * @param file name of the file
     * @param cells its cells
     * @param columns the file with its columns
     */
    record Row(String file, CsvText.Row cells, ReadingsFile columns) {

        /** Text of a column; empty if there is none. */
        String text(String column) {
            Integer place = columns.places.get(column);
            return place == null ? "" : cells.cells().get(place).strip();
        }

        boolean has(String column) {
            return !text(column).isEmpty();
        }

        /** Quantity of a column that must be there. */
        <Q extends Quantity<Q>> Quantity<Q> required(String column, Kind<Q> kind) {
            Quantity<Q> quantity = optional(column, kind);
            if (quantity == null) {
                throw fault("a row of " + text("reading") + " needs the column " + kind.column(column));
            }
            return quantity;
        }

        /** Quantity of a column; null if it is empty or missing. */
        <Q extends Quantity<Q>> @Nullable Quantity<Q> optional(String column, Kind<Q> kind) {
            Integer place = columns.places.get(column);
            if (place == null || !has(column)) {
                return null;
            }
            Unit<Q> unit = QuantityText.parseUnit(kind, columns.units.getOrDefault(column, ""));
            return Quantities.getQuantity(cells.number(place, column), unit);
        }

        TextException fault(String words) {
            return new TextException(file + ", line " + cells.line() + ": " + words);
        }
    }
}

package dev.waterjet.examples;

import dev.waterjet.measure.CsvText;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Units;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import javax.measure.Quantity;
import javax.measure.Unit;
import org.jspecify.annotations.Nullable;

/**
 * Result in rows and columns. A cell of a quantity is given in SI. {@link #text()} prints it rounded in the unit of its
 * column, {@link #writeCsv(Appendable)} in SI with all digits.
 */
final class Table {

    private record Column(
            String label, @Nullable Kind<?> kind, @Nullable Unit<?> unit, int digits) {

        String heading() {
            String symbol = unit == null ? "" : Units.symbol(unit);
            return symbol.isEmpty() ? label : label + " [" + symbol + "]";
        }

        String csvHeading() {
            String name = label.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]+", "_");
            return kind == null ? name : kind.column(name);
        }

        boolean isNumber() {
            return digits > 0;
        }
    }

    private final String title;
    private final List<Column> columns = new ArrayList<>();
    private final List<Object[]> rows = new ArrayList<>();
    private final List<String> notes = new ArrayList<>();

    private Table(String title) {
        this.title = title;
    }

    static Table of(String title) {
        return new Table(title);
    }

    /**
     * Adds a column of quantities.
     *
     * @param label name of the column; the CSV joins them by underscores and adds the SI unit
     * @param kind kind of its quantities
     * @param unit unit in the table for people
     * @param digits significant digits in the table for people
     */
    <Q extends Quantity<Q>> Table column(String label, Kind<Q> kind, Unit<Q> unit, int digits) {
        columns.add(new Column(label, kind, unit, digits));
        return this;
    }

    /** Adds a column of plain numbers, without unit. */
    Table number(String label, int digits) {
        columns.add(new Column(label, null, null, digits));
        return this;
    }

    /** Adds a column of words. */
    Table words(String label) {
        columns.add(new Column(label, null, null, 0));
        return this;
    }

    /**
     * Adds a row.
     *
     * @param cells a {@code Number} in SI or an {@code OptionalDouble} for numbers, anything else for words
     */
    Table row(Object... cells) {
        if (cells.length != columns.size()) {
            throw new IllegalArgumentException(cells.length + " cells for " + columns.size() + " columns");
        }
        rows.add(cells.clone());
        return this;
    }

    /** Adds a line under the table, not in the CSV. */
    Table note(String line) {
        notes.add(line);
        return this;
    }

    /** Returns the table for people. */
    String text() {
        List<String[]> lines = new ArrayList<>();
        lines.add(columns.stream().map(Column::heading).toArray(String[]::new));
        for (Object[] row : rows) {
            String[] line = new String[row.length];
            Arrays.setAll(line, i -> text(columns.get(i), row[i]));
            lines.add(line);
        }
        int[] widths = new int[columns.size()];
        for (String[] line : lines) {
            for (int i = 0; i < widths.length; i++) {
                widths[i] = Math.max(widths[i], line[i].length());
            }
        }
        StringBuilder text = new StringBuilder();
        if (!title.isEmpty()) {
            text.append(title).append("\n\n");
        }
        for (int r = 0; r < lines.size(); r++) {
            text.append(aligned(lines.get(r), widths)).append('\n');
            if (r == 0) {
                text.append("-".repeat(Arrays.stream(widths).sum() + 2 * (widths.length - 1)))
                        .append('\n');
            }
        }
        if (!notes.isEmpty()) {
            text.append('\n');
            notes.forEach(note -> text.append(note).append('\n'));
        }
        return text.toString();
    }

    private String aligned(String[] line, int[] widths) {
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < line.length; i++) {
            String pad = " ".repeat(widths[i] - line[i].length());
            text.append(i == 0 ? "" : "  ");
            text.append(columns.get(i).isNumber() ? pad + line[i] : line[i] + pad);
        }
        return text.toString().stripTrailing();
    }

    private static String text(Column column, Object cell) {
        OptionalDouble number = number(cell);
        if (number.isEmpty()) {
            return cell instanceof OptionalDouble ? "" : cell.toString();
        }
        double si = number.getAsDouble();
        return column.isNumber()
                ? QuantityText.round(column.unit == null ? si : Units.fromSi(si, column.unit), column.digits)
                : exact(cell, si);
    }

    private static OptionalDouble number(Object cell) {
        return cell instanceof OptionalDouble optional
                ? optional
                : cell instanceof Number number ? OptionalDouble.of(number.doubleValue()) : OptionalDouble.empty();
    }

    /**
     * Writes the table as CSV (RFC 4180, but with plain line feeds).
     *
     * @param out where to write
     * @throws IOException if it cannot be written
     */
    void writeCsv(Appendable out) throws IOException {
        out.append(CsvText.row(columns.stream().map(Column::csvHeading).toList()))
                .append('\n');
        for (Object[] row : rows) {
            List<String> cells = new ArrayList<>();
            for (Object cell : row) {
                OptionalDouble number = number(cell);
                cells.add(
                        number.isPresent()
                                ? exact(cell, number.getAsDouble())
                                : cell instanceof OptionalDouble ? "" : cell.toString());
            }
            out.append(CsvText.row(cells)).append('\n');
        }
    }

    private static String exact(Object cell, double si) {
        return cell instanceof Integer || cell instanceof Long ? cell.toString() : Double.toString(si);
    }
}

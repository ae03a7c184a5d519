package dev.waterjet.measure;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/**
 * Comma-separated text by RFC 4180: quoted cells, doubled quotes, line ends within quotes. Lines that start with {@code #} and
 * empty lines are skipped.
 *
 * <p>Limits of what is read: 20 million characters, 200,000 rows, 256 cells in a row, 10,000 characters in a cell, numbers
 * from -1e100 to 1e100. Catalogues of materials, quality scales, test cuts and head inventories are read through this class
 * and share its limits.
 */
public final class CsvText {

    private static final int MAX_CHARACTERS = 20_000_000;
    private static final int MAX_ROWS = 200_000;
    private static final int MAX_CELLS = 256;
    private static final int MAX_CELL = 10_000;

    private static final String BYTE_ORDER_MARK = "\uFEFF";

    private CsvText() {}

    /**
     * Returns a name for a cell that a spreadsheet takes for text: with an apostrophe before a character that begins a formula,
     * and question marks for control characters.
     *
     * @param name a name that a user gave, or another text
     * @return the text of the cell, without the quotes of {@link #row}
     */
    public static String name(String name) {
        String plain = Objects.requireNonNull(name, "name").replaceAll("\\p{Cntrl}", "?");
        return plain.isEmpty() || "=+-@".indexOf(plain.charAt(0)) < 0 ? plain : "'" + plain;
    }

    /**
     * Row of cells.
     *
     * @param line line on which the row starts, from 1
     * @param cells the cells
     * @param columns column in the text at which each cell starts, from 1
     */
    public record Row(int line, List<String> cells, List<Integer> columns) {

        /**
         * Keeps unmodifiable copies.
         *
         * @param line line on which the row starts, from 1
         * @param cells the cells
         * @param columns column in the text at which each cell starts, from 1
         */
        public Row {
            cells = List.copyOf(Objects.requireNonNull(cells, "cells"));
            columns = List.copyOf(Objects.requireNonNull(columns, "columns"));
        }

        /**
         * Returns the number in a cell.
         *
         * @param cell index of the cell from 0
         * @param name name of the number, for the message
         * @return the number, finite
         * @throws TextException with the cell's place, if it holds no decimal number or one larger than 1e100
         * @throws DomainException if there is no such cell
         */
        public double number(int cell, String name) {
            Objects.requireNonNull(name, "name");
            String text = cells.get(Require.index("cell", cell, cells.size()));
            if (!isDecimal(text)) {
                throw fault(
                        cell,
                        Message.of("not-a-number", "{name} {text} is not a decimal number")
                                .with("name", name)
                                .withInput("text", text));
            }
            double number = Double.parseDouble(text);
            if (Math.abs(number) > QuantityText.LARGEST_NUMBER) {
                throw fault(
                        cell,
                        Message.of("number-too-large", "{name} is larger than 1e100")
                                .with("name", name));
            }
            return number;
        }

        /**
         * Creates an error at a cell.
         *
         * @param cell index of the cell from 0; beyond the last cell, the last is meant
         * @param message code, parameters and sentence
         * @return the exception to throw
         */
        public TextException fault(int cell, Message message) {
            Objects.requireNonNull(message, "message");
            return new TextException(line, place(cell), message);
        }

        private int place(int cell) {
            return columns.isEmpty() ? 1 : columns.get(Math.max(0, Math.min(cell, columns.size() - 1)));
        }
    }

    /**
     * Reads all rows.
     *
     * @param text the text
     * @return the rows
     * @throws TextException if a quoted cell never ends or is followed by other letters, or the text goes beyond a limit
     */
    public static List<Row> parse(String text) {
        Objects.requireNonNull(text, "text");
        if (text.length() > MAX_CHARACTERS) {
            throw new TextException(Message.of("text-too-long", "the text has more than {limit} characters")
                    .with("limit", MAX_CHARACTERS));
        }
        return new Reader(text).rows();
    }

    /**
     * Writes a row, without line end. Cells are quoted where necessary, so that {@link #parse} returns them.
     *
     * @param cells the cells
     * @return the row
     */
    public static String row(List<String> cells) {
        Objects.requireNonNull(cells, "cells");
        StringBuilder row = new StringBuilder();
        for (int i = 0; i < cells.size(); i++) {
            if (i > 0) {
                row.append(',');
            }
            String cell = cells.get(i);
            boolean mustQuote = cell.chars().anyMatch(c -> c == ',' || c == '"' || c == '\n' || c == '\r')
                    || !cell.equals(cell.strip())
                    || (i == 0 && (cell.isEmpty() || cell.startsWith("#") || cell.startsWith(BYTE_ORDER_MARK)));
            row.append(mustQuote ? '"' + cell.replace("\"", "\"\"") + '"' : cell);
        }
        return row.toString();
    }

    /** A plain decimal number; Java's own reader would also take NaN, hexadecimal digits and a letter for the type. */
    private static boolean isDecimal(String text) {
        int start = text.startsWith("-") || text.startsWith("+") ? 1 : 0;
        int whole = digits(text, start);
        int point = whole < text.length() && text.charAt(whole) == '.' ? whole + 1 : whole;
        int end = digits(text, point);
        if (end == start || (end == point && whole == start)) {
            return false;
        }
        if (end < text.length() && (text.charAt(end) == 'e' || text.charAt(end) == 'E')) {
            boolean hasSign = text.startsWith("-", end + 1) || text.startsWith("+", end + 1);
            int exponent = hasSign ? end + 2 : end + 1;
            end = digits(text, exponent);
            return end == text.length() && end > exponent;
        }
        return end == text.length();
    }

    /** The place behind the digits that begin at a place. */
    private static int digits(String text, int start) {
        int at = start;
        while (at < text.length() && text.charAt(at) >= '0' && text.charAt(at) <= '9') {
            at++;
        }
        return at;
    }

    /** Walks through the text once. */
    private static final class Reader {

        private final String text;
        private int at;
        private int line = 1;
        private int lineStart;

        /** The next comma and the next ends of lines; searched anew only when the walk has passed them. */
        private int comma = -1;

        private int lineFeed = -1;
        private int carriageReturn = -1;

        Reader(String text) {
            this.text = text;
            this.at = text.startsWith(BYTE_ORDER_MARK) ? 1 : 0;
            this.lineStart = at;
        }

        List<Row> rows() {
            List<Row> rows = new ArrayList<>();
            while (at < text.length()) {
                if (text.charAt(at) == '#' || atLineEnd()) {
                    skipLine();
                } else if (rows.size() == MAX_ROWS) {
                    throw new TextException(
                            line,
                            1,
                            Message.of("too-many-rows", "the text has more than {limit} rows")
                                    .with("limit", MAX_ROWS));
                } else {
                    rows.add(row());
                }
            }
            return rows;
        }

        /** A row up to its end of line, which is then passed over like that of an empty line. */
        private Row row() {
            int firstLine = line;
            List<String> cells = new ArrayList<>();
            List<Integer> columns = new ArrayList<>();
            do {
                if (!cells.isEmpty()) {
                    at++;
                }
                int column = at - lineStart + 1;
                if (cells.size() == MAX_CELLS) {
                    throw new TextException(
                            line,
                            column,
                            Message.of("too-many-cells", "the row has more than {limit} cells")
                                    .with("limit", MAX_CELLS));
                }
                String cell = at < text.length() && text.charAt(at) == '"' ? quoted() : plain();
                if (cell.length() > MAX_CELL) {
                    throw new TextException(
                            firstLine,
                            column,
                            Message.of("cell-too-long", "the cell has more than {limit} characters")
                                    .with("limit", MAX_CELL));
                }
                columns.add(column);
                cells.add(cell);
            } while (at < text.length() && text.charAt(at) == ',');
            return new Row(firstLine, cells, columns);
        }

        private String plain() {
            int start = at;
            if (comma < at) {
                comma = next(',');
            }
            at = Math.min(comma, lineEnd());
            return text.substring(start, at).strip();
        }

        private String quoted() {
            int openLine = line;
            int openColumn = at - lineStart + 1;
            StringBuilder cell = new StringBuilder();
            at++;
            for (int quote = next('"'); quote < text.length(); quote = next('"')) {
                int from = at;
                while (lineEnd() < quote) {
                    at = lineEnd();
                    endLine();
                }
                cell.append(text, from, quote);
                at = quote + 1;
                if (at == text.length() || text.charAt(at) == ',' || atLineEnd()) {
                    return cell.toString();
                }
                if (text.charAt(at) != '"') {
                    throw new TextException(
                            line, at - lineStart + 1, Message.of("comma-missing", "a comma must follow a quoted cell"));
                }
                cell.append('"');
                at++;
            }
            throw new TextException(
                    openLine, openColumn, Message.of("open-quote", "the quoted cell never ends; add a closing quote"));
        }

        private int next(char c) {
            int found = text.indexOf(c, at);
            return found < 0 ? text.length() : found;
        }

        private int lineEnd() {
            if (lineFeed < at) {
                lineFeed = next('\n');
            }
            if (carriageReturn < at) {
                carriageReturn = next('\r');
            }
            return Math.min(lineFeed, carriageReturn);
        }

        private boolean atLineEnd() {
            return text.charAt(at) == '\n' || text.charAt(at) == '\r';
        }

        private void skipLine() {
            at = lineEnd();
            endLine();
        }

        private void endLine() {
            if (at < text.length() && text.charAt(at) == '\r') {
                at++;
                if (at == text.length() || text.charAt(at) != '\n') {
                    newLine();
                    return;
                }
            }
            if (at < text.length() && text.charAt(at) == '\n') {
                at++;
                newLine();
            }
        }

        private void newLine() {
            line++;
            lineStart = at;
        }
    }
}

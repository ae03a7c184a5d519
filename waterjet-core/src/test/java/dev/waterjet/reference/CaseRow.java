package dev.waterjet.reference;

import java.util.Map;
import java.util.Objects;

/**
 * One row of a file of cases, whatever its columns.
 *
 * @param kind columns of the file
 * @param columns cells by name of the column
 */
public record CaseRow(CaseKind kind, Map<String, String> columns) {

    /** Name under which a row keeps the folder of its file. */
    public static final String FOLDER = "folder of the file";

    /** A cell; empty if it is. */
    public String get(String column) {
        return Objects.requireNonNull(columns.get(column), column);
    }

    /** Name of the row: its id, or what makes it unique. */
    public String id() {
        return kind.id(this);
    }
}

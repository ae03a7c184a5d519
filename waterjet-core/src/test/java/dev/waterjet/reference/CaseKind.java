package dev.waterjet.reference;

import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;

/** Kinds of files of cases, by their columns. */
@SuppressWarnings("ImmutableEnumChecker") // the lists are those of List.of
public enum CaseKind {
    /** Rows of the reference suite: a subject with inputs. */
    SUITE(List.of("id", "subject", "inputs", "expected", "tolerance"), List.of("id")),
    /** Paths and limits: conditioning, offset, motion, speeds. */
    PATH(List.of("id", "group", "path", "limits", "expected", "tolerance_rel"), List.of("id")),
    /** Quantities of the predicted cut for a setting. */
    VIRTUAL_CUT(
            List.of("setting", "parameters_SI", "quantity", "argument", "value", "relative_tolerance"),
            List.of("setting", "quantity", "argument")),
    /** Results of a statistical program on a data set. */
    STATISTICS(List.of("dataset", "quantity", "value", "relative_tolerance"), List.of("dataset", "quantity"));

    private final List<String> columns;
    private final List<String> names;

    CaseKind(List<String> columns, List<String> names) {
        this.columns = columns;
        this.names = names;
    }

    /** The kind of a file with a header. */
    static CaseKind of(Set<String> header) {
        for (CaseKind kind : values()) {
            if (header.containsAll(kind.columns)) {
                return kind;
            }
        }
        throw new IllegalArgumentException("unknown columns: " + String.join(", ", header));
    }

    String id(CaseRow row) {
        return names.stream().map(row::get).filter(text -> !text.isEmpty()).collect(Collectors.joining(": "));
    }

    /** Column of the expected value. */
    String expectedColumn() {
        return columns.contains("expected") ? "expected" : "value";
    }

    /** Column of the tolerance. */
    String toleranceColumn() {
        return columns.get(columns.size() - 1);
    }
}

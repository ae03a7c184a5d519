package dev.waterjet.material;

import dev.waterjet.evidence.Evidence;
import dev.waterjet.evidence.EvidenceGrade;
import dev.waterjet.evidence.Source;
import dev.waterjet.measure.CsvText;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.TextException;
import dev.waterjet.measure.WaterjetException;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.StringJoiner;

/** Text form of a catalogue. */
final class MaterialText {

    private static final List<String> COLUMNS =
            List.of("id", "name", "machinability", "relative_uncertainty", "trait", "grade", "source", "note");

    private MaterialText() {}

    static List<Material> parse(String csv) {
        List<CsvText.Row> rows = CsvText.parse(csv);
        if (rows.isEmpty() || !rows.get(0).cells().equals(COLUMNS)) {
            throw new TextException(
                    rows.isEmpty() ? 1 : rows.get(0).line(),
                    1,
                    Message.of("wrong-columns", "the columns are not {columns}")
                            .with("columns", String.join(",", COLUMNS)));
        }
        List<Material> materials = new ArrayList<>();
        Set<String> ids = new HashSet<>();
        for (CsvText.Row row : rows.subList(1, rows.size())) {
            Material material = material(row);
            if (!ids.add(material.id())) {
                throw row.fault(
                        0,
                        Message.of("repeated-material-id", "repeated material id {id}")
                                .withInput("id", material.id()));
            }
            materials.add(material);
        }
        return materials;
    }

    private static Material material(CsvText.Row row) {
        List<String> cells = row.cells();
        if (cells.size() != COLUMNS.size()) {
            throw row.fault(
                    cells.size(),
                    Message.of("wrong-cell-count", "the row has {cells} cells; the heading has {columns}")
                            .with("cells", cells.size())
                            .with("columns", COLUMNS.size()));
        }
        Evidence evidence = Evidence.of(oneOf(EvidenceGrade.values(), row, 5), Source.of(cells.get(6)))
                .withNote(cells.get(7));
        double machinability = row.number(2, COLUMNS.get(2));
        double relativeUncertainty = row.number(3, COLUMNS.get(3));
        MaterialClass materialClass = oneOf(MaterialClass.values(), row, 4);
        try {
            return Material.of(cells.get(0), cells.get(1), machinability, relativeUncertainty, materialClass, evidence);
        } catch (WaterjetException e) {
            throw row.fault(0, e.message());
        }
    }

    private static <E extends Enum<E>> E oneOf(E[] constants, CsvText.Row row, int cell) {
        String text = row.cells().get(cell);
        StringJoiner known = new StringJoiner(", ");
        for (E constant : constants) {
            String name = constant.name().toLowerCase(Locale.ROOT).replace('_', '-');
            if (name.equalsIgnoreCase(text.replace('_', '-'))) {
                return constant;
            }
            known.add(name);
        }
        throw row.fault(
                cell,
                Message.of("unknown-value", "unknown {column} {value}; use one of {known}")
                        .with("column", COLUMNS.get(cell))
                        .withInput("value", text)
                        .with("known", known.toString()));
    }
}

package dev.waterjet.material;

import dev.waterjet.evidence.Evidence;
import dev.waterjet.evidence.EvidenceGrade;
import dev.waterjet.evidence.Source;
import dev.waterjet.measure.CsvText;
import dev.waterjet.measure.TextException;
import dev.waterjet.measure.WaterjetException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;

/** The written form of a catalogue. */
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
                    "a catalogue of materials starts with the columns " + String.join(",", COLUMNS));
        }
        List<Material> materials = new ArrayList<>();
        Set<String> ids = new HashSet<>();
        for (CsvText.Row row : rows.subList(1, rows.size())) {
            Material material = material(row);
            if (!ids.add(material.id())) {
                throw row.fault(0, "the id " + material.id() + " stands twice");
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
                    "the row has " + cells.size() + " cells, not the " + COLUMNS.size() + " of the heading");
        }
        Evidence evidence = Evidence.of(oneOf(EvidenceGrade.class, row, 5), Source.of(cells.get(6)))
                .withNote(cells.get(7));
        double machinability = number(row, 2);
        double relativeUncertainty = number(row, 3);
        MaterialClass trait = oneOf(MaterialClass.class, row, 4);
        try {
            return Material.of(cells.get(0), machinability, relativeUncertainty, trait)
                    .withName(cells.get(1))
                    .withMachinability(machinability, relativeUncertainty, evidence);
        } catch (WaterjetException e) {
            throw row.fault(0, e.getMessage());
        }
    }

    private static double number(CsvText.Row row, int cell) {
        return row.number(cell, COLUMNS.get(cell));
    }

    private static <E extends Enum<E>> E oneOf(Class<E> type, CsvText.Row row, int cell) {
        String text = row.cells().get(cell).toUpperCase(Locale.ROOT).replace('-', '_');
        for (E constant : type.getEnumConstants()) {
            if (constant.name().equals(text)) {
                return constant;
            }
        }
        throw row.fault(
                cell,
                COLUMNS.get(cell) + " \"" + row.cells().get(cell) + "\" is none of "
                        + String.join(
                                ", ",
                                Arrays.stream(type.getEnumConstants())
                                        .map(c -> c.name()
                                                .toLowerCase(Locale.ROOT)
                                                .replace('_', '-'))
                                        .toList()));
    }
}

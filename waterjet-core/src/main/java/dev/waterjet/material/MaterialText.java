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
import org.jspecify.annotations.Nullable;

/** Text form of a catalogue. */
final class MaterialText {

    /** Columns that every catalogue has, in this order, and those that may follow, in any order. */
    private static final List<String> COLUMNS =
            List.of("id", "name", "machinability", "relative_uncertainty", "trait", "grade", "source", "note");

    private static final List<String> MORE_COLUMNS = List.of(
            "group",
            "aliases",
            "recall",
            "rule",
            "density_kg_per_m3",
            "young_gpa",
            "strength_mpa",
            "strength_uncertainty",
            "water_alone",
            "hazard");

    private static final double PA_PER_MPA = 1e6;
    private static final double PA_PER_GPA = 1e9;

    private static final EvidenceGrade[] GRADES = EvidenceGrade.values();
    private static final MaterialClass[] CLASSES = MaterialClass.values();

    /** Places of the further columns in a row; -1 where the table has none. */
    private final int[] places;

    private final int cells;

    private MaterialText(List<String> heading) {
        this.cells = heading.size();
        this.places = MORE_COLUMNS.stream().mapToInt(heading::indexOf).toArray();
    }

    static List<Material> parse(String csv) {
        List<CsvText.Row> rows = CsvText.parse(csv);
        if (rows.isEmpty() || !isHeading(rows.get(0).cells())) {
            throw new TextException(
                    rows.isEmpty() ? 1 : rows.get(0).line(),
                    1,
                    Message.of("wrong-columns", "the columns are not {columns}")
                            .with("columns", String.join(",", COLUMNS)));
        }
        MaterialText text = new MaterialText(rows.get(0).cells());
        List<Material> materials = new ArrayList<>();
        Set<String> ids = new HashSet<>();
        for (CsvText.Row row : rows.subList(1, rows.size())) {
            Material material = text.material(row);
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

    private static boolean isHeading(List<String> cells) {
        int fixed = COLUMNS.size();
        if (cells.size() < fixed || !cells.subList(0, fixed).equals(COLUMNS)) {
            return false;
        }
        List<String> more = cells.subList(fixed, cells.size());
        return MORE_COLUMNS.containsAll(more) && Set.copyOf(more).size() == more.size();
    }

    private Material material(CsvText.Row row) {
        List<String> texts = row.cells();
        if (texts.size() != cells) {
            throw row.fault(
                    texts.size(),
                    Message.of("wrong-cell-count", "the row has {cells} cells; the heading has {columns}")
                            .with("cells", texts.size())
                            .with("columns", cells));
        }
        Evidence evidence =
                Evidence.of(oneOf(GRADES, row, 5), Source.of(texts.get(6))).withNote(texts.get(7));
        double machinability = row.number(2, COLUMNS.get(2));
        double relativeUncertainty = row.number(3, COLUMNS.get(3));
        MaterialClass materialClass = oneOf(CLASSES, row, 4);
        try {
            return Material.of(
                    texts.get(0),
                    texts.get(1),
                    machinability,
                    relativeUncertainty,
                    materialClass,
                    evidence,
                    facts(row));
        } catch (TextException e) {
            throw e.line() > 0 ? e : row.fault(0, e.message());
        } catch (WaterjetException e) {
            throw row.fault(0, e.message());
        }
    }

    private MaterialFacts facts(CsvText.Row row) {
        Double recall = number(row, "recall", 1);
        Double strengthUncertainty = number(row, "strength_uncertainty", 1);
        return new MaterialFacts(
                word(row, "group"),
                aliases(word(row, "aliases")),
                recall == null ? 0 : recall,
                word(row, "rule"),
                number(row, "density_kg_per_m3", 1),
                number(row, "young_gpa", PA_PER_GPA),
                number(row, "strength_mpa", PA_PER_MPA),
                strengthUncertainty == null ? 0 : strengthUncertainty,
                word(row, "water_alone"),
                word(row, "hazard"));
    }

    private static List<String> aliases(String cell) {
        List<String> aliases = new ArrayList<>();
        for (String alias : cell.split(";", -1)) {
            if (!alias.isBlank()) {
                aliases.add(alias.strip());
            }
        }
        return aliases;
    }

    private String word(CsvText.Row row, String column) {
        int place = places[MORE_COLUMNS.indexOf(column)];
        return place < 0 ? "" : row.cells().get(place);
    }

    private @Nullable Double number(CsvText.Row row, String column, double scale) {
        int place = places[MORE_COLUMNS.indexOf(column)];
        return place < 0 || row.cells().get(place).isEmpty() ? null : (Double) (scale * row.number(place, column));
    }

    private static <E extends Enum<E>> E oneOf(E[] constants, CsvText.Row row, int cell) {
        String text = row.cells().get(cell);
        String name = text.replace('-', '_');
        for (E constant : constants) {
            if (constant.name().equalsIgnoreCase(name)) {
                return constant;
            }
        }
        StringJoiner known = new StringJoiner(", ");
        for (E constant : constants) {
            known.add(constant.name().toLowerCase(Locale.ROOT).replace('_', '-'));
        }
        throw row.fault(
                cell,
                Message.of("unknown-value", "unknown {column} {value}; use one of {known}")
                        .with("column", COLUMNS.get(cell))
                        .withInput("value", text)
                        .with("known", known.toString()));
    }
}

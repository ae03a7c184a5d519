package dev.waterjet.examples;

import dev.waterjet.material.Material;
import dev.waterjet.material.Materials;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.CsvText;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.TextException;
import dev.waterjet.measure.WaterjetException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Options of a workpiece of several sheets or layers, in place of a thickness. */
final class StackOptions {

    private static final String MATERIAL = "material";
    private static final String THICKNESS = "thickness";

    @Option(
            names = "--stack",
            converter = Sheets.Converter.class,
            paramLabel = "<count x length>",
            description = "Stack of equal sheets cut in one pass, such as \"3 x 2 mm\", instead of --thickness.")
    private Optional<Sheets> stack = Optional.empty();

    @Option(
            names = "--layers",
            paramLabel = "<file>",
            description =
                    "CSV file of layers, the top one first, instead of --material and --thickness: columns material and"
                            + " thickness, as in \"steel-dc01,2 mm\", or thickness_mm with numbers.")
    private Optional<Path> layers = Optional.empty();

    @Spec(Spec.Target.MIXEE)
    private CommandSpec program;

    /**
     * Equal sheets.
     *
     * @param count number of sheets
     * @param thickness thickness of one
     */
    record Sheets(int count, Quantity<Length> thickness) {

        private static final Pattern FORM = Pattern.compile("\\s*(\\d{1,4})\\s*[x\u00d7*]\\s*(.+)");

        /** Reads text such as {@code 3 x 2 mm}. */
        static final class Converter implements ITypeConverter<Sheets> {
            @Override
            public Sheets convert(String text) {
                Matcher form = FORM.matcher(text);
                if (!form.matches()) {
                    throw new TextException("\"" + text
                            + "\" is not a stack; write number and thickness of the sheets, as in 3 x 2 mm");
                }
                return new Sheets(Integer.parseInt(form.group(1)), Kind.LENGTH.parse(form.group(2)));
            }
        }
    }

    /** Whether a stack or layers are stated. */
    boolean isStated() {
        return stack.isPresent() || layers.isPresent();
    }

    /** The material of the top layer; empty if no layers are stated. */
    Optional<Material> topMaterial() {
        return layers.map(file -> read(TextFiles.read(file)).layers().get(0).material());
    }

    /**
     * Returns the workpiece: stated layers or sheets, else a plate.
     *
     * @param material material of a plate or of the sheets
     * @param thickness thickness of a plate
     * @return the workpiece
     */
    Workpiece workpiece(Material material, Quantity<Length> thickness) {
        if (!isStated()) {
            return Workpiece.of(material, thickness);
        }
        if ((stack.isPresent() && layers.isPresent())
                || program.commandLine().getParseResult().hasMatchedOption("--thickness")) {
            throw new TextException("give one of --thickness, --stack and --layers");
        }
        if (layers.isPresent() && program.commandLine().getParseResult().hasMatchedOption("--material")) {
            throw new TextException("give one of --material and --layers");
        }
        return stack.map(sheets -> Workpiece.sheets(Workpiece.of(material, sheets.thickness()), sheets.count()))
                .orElseGet(() -> read(TextFiles.read(layers.orElseThrow())));
    }

    private Workpiece read(String csv) {
        List<CsvText.Row> rows = CsvText.parse(csv);
        List<String> heading = rows.isEmpty() ? List.of() : rows.get(0).cells();
        if (heading.size() != 2
                || !heading.get(0).equals(MATERIAL)
                || !heading.get(1).matches(THICKNESS + "(_[a-z]+)?")) {
            throw new TextException(
                    rows.isEmpty() ? 1 : rows.get(0).line(), 1, "the columns are not material,thickness");
        }
        String unit = heading.get(1).substring(THICKNESS.length()).replace("_", " ");
        Materials catalogue = ShopDefaults.materials(program.commandLine());
        List<Workpiece> all = new ArrayList<>();
        for (CsvText.Row row : rows.subList(1, rows.size())) {
            if (row.cells().size() != 2) {
                throw row.fault(0, Message.of("wrong-layer", "a layer has a material and a thickness"));
            }
            try {
                all.add(Workpiece.of(
                        catalogue.get(row.cells().get(0)),
                        Kind.LENGTH.parse(row.cells().get(1) + unit)));
            } catch (WaterjetException e) {
                throw row.fault(0, e.message());
            }
        }
        return Workpiece.layers(all);
    }
}

package dev.waterjet.examples;

import dev.waterjet.evidence.Caution;
import dev.waterjet.examples.drawing.FileKind;
import dev.waterjet.examples.plan.BuiltIn;
import dev.waterjet.examples.predict.ContourCut;
import dev.waterjet.examples.predict.DeviationDrawing;
import dev.waterjet.examples.predict.PredictionJson;
import dev.waterjet.hydraulics.PumpSetting;
import dev.waterjet.kerf.LagGeometry;
import dev.waterjet.material.Material;
import dev.waterjet.material.Materials;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Measures;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Units;
import dev.waterjet.part.Box;
import dev.waterjet.part.Finding;
import dev.waterjet.part.Part;
import dev.waterjet.plan.PartPlanner;
import dev.waterjet.plan.Setup;
import dev.waterjet.program.PartProgram;
import dev.waterjet.quality.CutQuality;
import dev.waterjet.quality.EdgeRequirement;
import dev.waterjet.simulate.CutPlace;
import dev.waterjet.simulate.CutSimulator;
import dev.waterjet.simulate.DeviationMap;
import dev.waterjet.simulate.PredictedCut;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Program that predicts the cut of a part program or drawing: what its path and feeds leave on the part. */
@Command(
        name = "predict",
        description = {
            "Predict the cut of a part program (ISO 6983) or a drawing (SVG, DXF): deviation of the part from its"
                    + " contour over the depth, with the planned feed rates or those of the program.",
            "Example: waterjet predict bracket.nc --thickness \"25 mm\" --svg predicted.svg",
            "No published measurement of a corner confirms the prediction: it does not replace a test cut."
        })
final class Predict extends Program {

    /** Least deviation at which a colour is full. */
    private static final double MIN_RANGE_M = 10e-6;

    /** Share of the size of a part by which its bottom edge is drawn off the contour at most. */
    private static final double DRAWN_SHARE = 0.06;

    private static final double MAX_EXAGGERATION = 200;

    @Parameters(
            arity = "0..1",
            paramLabel = "<file>",
            description = "Part program or drawing; it is only read. Default: the built-in bracket.")
    private Optional<Path> input = Optional.empty();

    @Option(
            names = "--material",
            converter = Typed.Catalogued.class,
            paramLabel = "<material>",
            description = "Material, such as titanium; the program materials lists them. Default: aluminium 6061-T6.")
    private Material material = Materials.standard().get("aluminium-6061-t6");

    @Mixin
    private final StackOptions stack = new StackOptions();

    @Option(
            names = "--thickness",
            converter = Typed.Length.class,
            paramLabel = "<thickness>",
            description = "Thickness of the plate. Default: 12 mm.")
    private Quantity<Length> thickness = Measures.millimetres(12);

    @Option(
            names = "--quality",
            converter = Typed.Face.class,
            paramLabel = "<level>",
            description = "Cut quality where the file specifies none: very coarse, coarse, medium, fine, very fine."
                    + " Default: medium.")
    private CutQuality quality = CutQuality.MEDIUM;

    @Mixin
    private final HeadOptions head = new HeadOptions();

    @Mixin
    private final DrawingOptions drawing = new DrawingOptions();

    @Mixin
    private final ModelOption model = new ModelOption();

    @Mixin
    private final CalibrationOptions calibration = new CalibrationOptions();

    @Mixin
    private final KerfOptions kerf = new KerfOptions();

    @Mixin
    private final MachineOptions machine = new MachineOptions();

    @Mixin
    private final ProgramOptions codes = new ProgramOptions();

    @Option(
            names = "--feeds-as-written",
            description = "Take the feed rates of the program, block by block, and not planned ones.")
    private boolean isAsWritten;

    @Option(
            names = "--lag-geometry",
            paramLabel = "<tangent|tractrix|following>",
            description = "Geometric model of the lag where the path bends. Default: tangent.")
    private LagGeometry geometry = LagGeometry.TANGENT;

    @Option(names = "--json", description = "Print JSON in SI units; null where the part is not separated.")
    private boolean json;

    @Option(
            names = "--svg",
            paramLabel = "<file>",
            description = "Draw the unrolled deviations and the bottom edge of each contour to a file.")
    private Optional<Path> svg = Optional.empty();

    @Option(
            names = "--points",
            paramLabel = "<count>",
            description =
                    "Number of points along each contour. Default: every 0.2 mm, closer on arcs and near corners.")
    private Optional<Integer> points = Optional.empty();

    @Option(
            names = "--uncertainty",
            description = "Add the standard uncertainty of each deviation to CSV and JSON; takes nine times as long.")
    private boolean isUncertain;

    @Option(names = "--roughness", description = "Add the roughness Ra of each point to CSV and JSON.")
    private boolean isRough;

    @Option(names = "--depths", paramLabel = "<count>", description = "Number of depths. Default: 9.")
    private int depths = 9;

    /** Predictions of all contours, with their names. */
    private record Predicted(Workpiece workpiece, List<String> names, List<PredictedCut> cuts) {}

    private Predicted predict() throws IOException {
        CalibrationOptions.Choice choice = calibration.choose(material, model.model());
        Setup setup = machine.on(Setup.of(
                        head.head(), PumpSetting.of(head.pressure(), Measures.litresPerMinute(20)), machine.limits()))
                .withAbrasive(head.abrasive(), head.jet().abrasiveFlow())
                .withRequirement(EdgeRequirement.of(quality))
                .withFeedModel(choice.model())
                .withKerfModel(kerf.model());
        Workpiece workpiece = stack.workpiece(choice.material(), thickness);
        CutSimulator simulator = CutSimulator.of(
                        setup.conditions(workpiece),
                        setup.kerfModel(),
                        setup.kerfModel().lagModel())
                .withGeometry(geometry)
                .withDepths(depths);
        simulator = points.map(simulator::withPoints).orElse(simulator);
        simulator = isUncertain ? simulator.withUncertainty() : simulator;
        List<String> names = new ArrayList<>();
        List<PredictedCut> cuts = new ArrayList<>();
        for (ContourCut cut : contours(PartPlanner.of(setup), workpiece)) {
            names.add(unique(cut.name(), names));
            cuts.add(simulator.predict(cut.profile(), cut.contour(), cut.partSide()));
        }
        Predicted predicted = new Predicted(workpiece, names, cuts);
        svg.ifPresent(file -> TextFiles.write(file, drawing(predicted)));
        return predicted;
    }

    /** Contours of the file, with the paths and feeds of a plan: the only place that plans. */
    private List<ContourCut> contours(PartPlanner planner, Workpiece workpiece) throws IOException {
        byte[] content = input.isPresent()
                ? Files.readAllBytes(input.get())
                : BuiltIn.program().getBytes(StandardCharsets.UTF_8);
        if (FileKind.require(content, FileKind.PROGRAM, FileKind.SVG, FileKind.DXF) != FileKind.PROGRAM) {
            Part part = DrawingReader.read(content, drawing.settings(EdgeRequirement.of(quality)))
                    .onlyPart()
                    .part();
            return ContourCut.of(part, planner.plan(part, workpiece));
        }
        PartProgram program = PartProgram.parse(FileKind.text(content), codes.codes());
        return ContourCut.of(program, planner.plan(program, workpiece), isAsWritten);
    }

    private static String drawing(Predicted predicted) {
        DeviationDrawing drawing = DeviationDrawing.of(
                "Predicted cut", "Deviations of each contour, unrolled and as the bottom edge over the contour.");
        double largest = MIN_RANGE_M;
        for (PredictedCut cut : predicted.cuts()) {
            for (CutPlace place : cut.places()) {
                largest = Math.max(largest, Math.abs(place.added().si()));
            }
        }
        for (int i = 0; i < predicted.cuts().size(); i++) {
            DeviationMap map = predicted.cuts().get(i).map();
            drawing.unrolled(predicted.names().get(i), map, atLeast(largest))
                    .bottomEdge(predicted.names().get(i), map, exaggeration(map, largest));
        }
        return drawing.svg();
    }

    private static double exaggeration(DeviationMap map, double largestM) {
        Box box = map.contour().box();
        double size = Math.max(Kind.LENGTH.si(box.width()), Kind.LENGTH.si(box.height()));
        return Math.max(1, atLeast(Math.min(MAX_EXAGGERATION, DRAWN_SHARE * size / largestM) / 2));
    }

    /** The least of 1, 2, 5, 10, 20 ... that is a number or above. */
    private static double atLeast(double number) {
        double decade = Math.pow(10, Math.floor(Math.log10(number)));
        for (double round : new double[] {1, 2, 5}) {
            if (round * decade >= number * (1 - 1e-9)) {
                return round * decade;
            }
        }
        return 10 * decade;
    }

    /** Names of contours, distinguished where a file names several alike. */
    private static String unique(String name, List<String> others) {
        String unique = name;
        for (int i = 2; others.contains(unique); i++) {
            unique = name + " (" + i + ")";
        }
        return unique;
    }

    @Override
    protected Table table() {
        throw new UnsupportedOperationException("a prediction prints its own table");
    }

    @Override
    protected void print(PrintWriter out) throws IOException {
        Predicted predicted = predict();
        if (json) {
            out.print(PredictionJson.of(predicted.names(), predicted.cuts(), isRough));
            return;
        }
        Table table = Table.of("Predicted cut in " + predicted.workpiece()
                        + ", deviations beside those of a straight cut (above 0: material left, below 0: gouge)")
                .words("contour")
                .words("level")
                .number("edge", 4)
                .column("distance", Kind.LENGTH, Units.MILLIMETRE, 4)
                .column("deviation", Kind.LENGTH, Units.MILLIMETRE, 3)
                .column("uncertainty", Kind.LENGTH, Units.MILLIMETRE, 2)
                .column("tolerance", Kind.LENGTH, Units.MILLIMETRE, 3)
                .words("within");
        Set<String> cautions = new LinkedHashSet<>();
        for (int i = 0; i < predicted.cuts().size(); i++) {
            PredictedCut cut = predicted.cuts().get(i);
            String name = predicted.names().get(i);
            cut.places().forEach(place -> row(table, name, place));
            cut.findings().stream()
                    .filter(finding -> !finding.isSatisfied())
                    .forEach(finding -> table.note(note(name, finding)));
            for (Caution caution : cut.cautions()) {
                cautions.add(caution.severity().name().toLowerCase(Locale.ROOT) + ": " + caution.text());
            }
        }
        cautions.forEach(table::note);
        out.print(table.text());
    }

    private static void row(Table table, String name, CutPlace place) {
        table.row(
                name,
                place.level().name().toLowerCase(Locale.ROOT),
                place.edge() + 1,
                Kind.LENGTH.si(place.distance()),
                place.added().si(),
                place.added().standardUncertaintySi(),
                Kind.LENGTH.si(place.tolerance()),
                place.isWithinTolerance() ? "yes" : "no");
    }

    private static String note(String name, Finding finding) {
        String place = Optional.ofNullable(finding.place())
                .map(at -> " at x " + QuantityText.round(at.xSi() * 1e3, 5) + " mm, y "
                        + QuantityText.round(at.ySi() * 1e3, 5) + " mm")
                .orElse("");
        return name + place + ": " + finding.text();
    }

    @Override
    protected void printCsv(PrintWriter out) {
        try {
            Predicted predicted = predict();
            Table table = Table.of("")
                    .words("contour")
                    .number("edge", 4)
                    .column("distance", Kind.LENGTH, Units.MILLIMETRE, 6)
                    .column("depth", Kind.LENGTH, Units.MILLIMETRE, 6)
                    .column("deviation", Kind.LENGTH, Units.MILLIMETRE, 6)
                    .column("feed", Kind.SPEED, Units.MILLIMETRE_PER_MINUTE, 6)
                    .column("lag", Kind.LENGTH, Units.MILLIMETRE, 6)
                    .column("half width", Kind.LENGTH, Units.MILLIMETRE, 6);
            if (isUncertain) {
                table.column("deviation uncertainty", Kind.LENGTH, Units.MILLIMETRE, 6);
            }
            if (isRough) {
                table.column("roughness", Kind.LENGTH, Units.MICROMETRE, 6);
            }
            for (int i = 0; i < predicted.cuts().size(); i++) {
                rows(table, predicted.names().get(i), predicted.cuts().get(i).map());
            }
            table.writeCsv(out);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Rows by point and depth; a place that is not separated has no numbers. */
    private void rows(Table table, String name, DeviationMap map) {
        double[] depth = map.depths().toSi();
        for (int i = 0; i < map.size(); i++) {
            for (int d = 0; d < depth.length; d++) {
                boolean isCut = map.isSeparated(i, d);
                List<Object> row = new ArrayList<>(List.of(
                        name,
                        map.edge(i) + 1,
                        map.distanceSi(i),
                        depth[d],
                        cell(isCut, map.deviationSi(i, d)),
                        cell(isCut, map.feedSi(i, d)),
                        cell(isCut, map.lagSi(i, d)),
                        cell(isCut, map.halfWidthSi(i, d))));
                if (isUncertain) {
                    double uncertainty = map.uncertaintySi(i, d);
                    row.add(cell(uncertainty < Double.POSITIVE_INFINITY, uncertainty));
                }
                if (isRough) {
                    row.add(cell(isCut, map.roughnessSi(i, d)));
                }
                table.row(row.toArray());
            }
        }
    }

    private static java.util.OptionalDouble cell(boolean isCut, double value) {
        return isCut ? java.util.OptionalDouble.of(value) : java.util.OptionalDouble.empty();
    }
}

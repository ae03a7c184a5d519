package dev.waterjet.examples;

import dev.waterjet.calibrate.TestCut;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.examples.chart.Chart;
import dev.waterjet.feed.FeedModel;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.material.Material;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.measure.TextException;
import dev.waterjet.measure.Units;
import dev.waterjet.quality.CutQuality;
import dev.waterjet.quality.QualityIndexTable;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Length;
import javax.measure.quantity.Speed;
import picocli.CommandLine.Command;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Program that prints feed rates over thickness for models and materials. */
@Command(
        name = "curve",
        description = {
            "Print feed rates over thickness, for any models and materials, with standard uncertainty.",
            "Give --feed instead of --thickness to get the thickness that each feed rate cuts.",
            "Example: waterjet curve --model machinability,erosion --material titanium --thickness \"2 mm..30 mm\""
        })
final class SpeedCurves extends Program {

    @Mixin
    private final HeadOptions head = new HeadOptions();

    @Mixin
    private final CalibrationOptions calibration = new CalibrationOptions();

    @Option(
            names = "--model",
            split = ",",
            paramLabel = "<model>",
            description = "Feed models: " + Models.NAMES + ". Default: machinability.")
    private List<String> models = new ArrayList<>(List.of("machinability"));

    @Option(
            names = "--material",
            split = ",",
            paramLabel = "<material>",
            description = "Materials of the catalogue, by id or a part of it. Default: mild-steel.")
    private List<String> materials = new ArrayList<>(List.of("mild-steel"));

    @Mixin
    private final StackOptions stack = new StackOptions();

    @Option(
            names = "--thickness",
            converter = Typed.Lengths.class,
            paramLabel = "<lengths>",
            description = "Thickness of the workpiece, or range. Default: \"5 mm..50 mm step 5 mm\".")
    private QuantityArray<Length> thicknesses = QuantityArray.parse(Kind.LENGTH, "5 mm..50 mm step 5 mm");

    @Option(
            names = "--feed",
            converter = Typed.Speeds.class,
            paramLabel = "<speeds>",
            description = "Feed rate or range, instead of --thickness: the thickness that it cuts at the index.")
    private Optional<QuantityArray<Speed>> feeds = Optional.empty();

    @Option(
            names = "--index",
            converter = Indices.class,
            paramLabel = "<index>",
            description = "Quality index or range: 1 just separates, 5 is very fine. Default: 1.")
    private QuantityArray<Dimensionless> indices = QuantityArray.ofSi(Kind.RATIO, 1);

    @Option(
            names = "--svg",
            paramLabel = "<file>",
            description = "Draw the curves, each with its 95 %% band, to a file.")
    private Optional<Path> svg = Optional.empty();

    @Option(
            names = "--cuts",
            paramLabel = "<file>",
            description = "Draw test cuts over the curves; a CSV file as for the program fit.")
    private Optional<Path> cuts = Optional.empty();

    /** A range of plain numbers. */
    static final class Indices implements ITypeConverter<QuantityArray<Dimensionless>> {
        @Override
        public QuantityArray<Dimensionless> convert(String text) {
            return QuantityArray.parse(Kind.RATIO, text);
        }
    }

    /** One model in one material at one index. */
    private record Curve(String name, FeedModel model, Material material, double index) {

        String label() {
            return name + ", " + material.name();
        }
    }

    private List<Curve> curves() {
        boolean isModelStated = isStated("--model");
        List<Material> stated =
                materials.stream().map(id -> materials().get(id)).toList();
        List<Curve> curves = new ArrayList<>();
        for (Material material : stated) {
            CalibrationOptions.Choice choice = calibration.choose(material, Models.get(models.get(0)));
            if (choice.isCalibrated()) {
                add("calibration", choice.model(), choice.material(), curves);
            }
        }
        for (String name : models) {
            for (Material material : stated) {
                CalibrationOptions.Choice choice = calibration.choose(material, Models.get(name));
                if (!choice.isCalibrated()) {
                    add(name, choice.model(), choice.material(), curves);
                } else if (isModelStated) {
                    add(
                            name,
                            Models.get(name),
                            materials().get(choice.material().id()),
                            curves);
                }
            }
        }
        return curves;
    }

    private void add(String name, FeedModel model, Material material, List<Curve> into) {
        for (double index : indices.toSi()) {
            into.add(new Curve(name, model, material, index));
        }
    }

    @Override
    protected Table table() {
        AbrasiveJet jet = head.jet();
        Table table = Table.of("Feed rates: " + jet)
                .words("model")
                .words("material")
                .column("thickness", Kind.LENGTH, Units.MILLIMETRE, 4)
                .words("quality")
                .number("index", 3)
                .column("speed", Kind.SPEED, Units.MILLIMETRE_PER_MINUTE, 4)
                .column("standard uncertainty", Kind.SPEED, Units.MILLIMETRE_PER_MINUTE, 2);
        List<String> notes = new ArrayList<>();
        for (Curve curve : curves()) {
            for (Point point : points(jet, curve)) {
                table.row(
                        curve.name(),
                        curve.material().id(),
                        point.thicknessM(),
                        quality(curve.index()),
                        curve.index(),
                        point.feed().si(),
                        point.feed().standardUncertaintySi());
                point.feed().cautions().stream()
                        .map(caution -> curve.label() + ": " + caution.text() + ".")
                        .filter(note -> !notes.contains(note))
                        .forEach(notes::add);
            }
        }
        notes.forEach(table::note);
        draw(jet);
        return table;
    }

    private record Point(double thicknessM, Estimate<Speed> feed) {}

    private List<Point> points(AbrasiveJet jet, Curve curve) {
        List<Point> points = new ArrayList<>();
        if (stack.isStated()) {
            if (feeds.isPresent()) {
                throw new TextException("give one of --feed, --stack and --layers");
            }
            Workpiece workpiece = stack.workpiece(curve.material(), thicknesses.get(0));
            return List.of(new Point(workpiece.thicknessSi(), curve.model().feed(jet, workpiece, curve.index())));
        }
        if (feeds.isEmpty()) {
            for (int i = 0; i < thicknesses.size(); i++) {
                points.add(point(jet, curve, thicknesses.si(i)));
            }
            return points;
        }
        for (int i = 0; i < feeds.get().size(); i++) {
            double depth = curve.model()
                    .depth(jet, curve.material(), feeds.get().get(i))
                    .si();
            points.add(new Point(
                    depth / curve.index(),
                    Estimate.withinFactor(
                            Kind.SPEED,
                            feeds.get().si(i),
                            curve.model().relativeUncertainty(curve.material()),
                            jet.cautions())));
        }
        return points;
    }

    private static Point point(AbrasiveJet jet, Curve curve, double thicknessM) {
        return new Point(
                thicknessM,
                curve.model().feed(jet, Workpiece.of(curve.material(), Kind.LENGTH.of(thicknessM)), curve.index()));
    }

    /** The cut quality with this index, or an empty text. */
    private static String quality(double index) {
        return Arrays.stream(CutQuality.values())
                .filter(quality -> QualityIndexTable.standard().index(quality) == index)
                .findFirst()
                .map(CutQuality::label)
                .orElse("");
    }

    private void draw(AbrasiveJet jet) {
        if (svg.isEmpty()) {
            return;
        }
        Chart chart = Chart.of("Feed over thickness", "Curves of feed over thickness, each with its 95 % band.")
                .x("thickness [mm]")
                .y("feed rate [mm/min]")
                .logY();
        for (Curve curve : curves()) {
            List<Point> points = points(jet, curve);
            double[] x = points.stream().mapToDouble(p -> p.thicknessM() * 1000).toArray();
            chart.band("95 % of " + curve.label(), x, bound(points, -1), bound(points, 1))
                    .line(curve.label() + ", index " + curve.index(), x, bound(points, 0));
        }
        cuts.ifPresent(file -> drawCuts(chart, TestCut.parse(TextFiles.read(file))));
        TextFiles.write(svg.get(), chart.svg(860, 560));
    }

    private static double[] bound(List<Point> points, int side) {
        return points.stream()
                .mapToDouble(p -> side == 0
                        ? p.feed().to(Units.MILLIMETRE_PER_MINUTE)
                        : 60e3
                                * Kind.SPEED.si(
                                        side < 0
                                                ? p.feed().lower(0.95)
                                                : p.feed().upper(0.95)))
                .toArray();
    }

    /** A cut at another index is drawn at the thickness with the same separation depth. */
    private void drawCuts(Chart chart, List<TestCut> drawn) {
        double index = indices.si(0);
        chart.points(
                "test cuts",
                drawn.stream()
                        .mapToDouble(cut -> 1000 * Kind.LENGTH.si(cut.thickness()) * cut.index() / index)
                        .toArray(),
                drawn.stream()
                        .mapToDouble(cut -> 60e3 * Kind.SPEED.si(cut.feed()))
                        .toArray());
    }

    @Override
    protected void print(PrintWriter out) {
        out.print(table().text());
        svg.ifPresent(file -> out.println("\nDrawn to " + file));
    }
}

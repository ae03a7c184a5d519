package dev.waterjet.examples;

import dev.waterjet.evidence.Estimate;
import dev.waterjet.examples.chart.KerfDrawing;
import dev.waterjet.feed.CutConditions;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.kerf.Kerf;
import dev.waterjet.kerf.TaperCompensation;
import dev.waterjet.material.Material;
import dev.waterjet.material.Materials;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Speed;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Program that prints walls, taper, lag and offset of one cut. */
@Command(
        name = "kerf",
        description = {
            "Compute the kerf of a cut over its depth: widths, taper, lag, kerf offset and minimum features.",
            "Example: waterjet kerf --material titanium --thickness \"12 mm\" --feed \"100 mm/min\" --svg kerf.svg"
        })
final class KerfSections extends Program {

    @Mixin
    private final HeadOptions head = new HeadOptions();

    @Mixin
    private final CalibrationOptions calibration = new CalibrationOptions();

    @Mixin
    private final KerfOptions kerfModel = new KerfOptions();

    @Mixin
    private final ModelOption model = new ModelOption();

    @Option(
            names = "--material",
            converter = Typed.Catalogued.class,
            paramLabel = "<material>",
            description = "Material of the catalogue, by id or a part of it. Default: mild-steel.")
    private Material material = Materials.standard().get("mild-steel");

    @Mixin
    private final StackOptions stack = new StackOptions();

    @Option(
            names = "--thickness",
            converter = Typed.Length.class,
            paramLabel = "<length>",
            description = "Thickness of the workpiece. Default: 10 mm.")
    private Quantity<Length> thickness = Kind.LENGTH.parse("10 mm");

    @Option(
            names = "--feed",
            converter = Typed.Speed.class,
            paramLabel = "<speed>",
            description = "Feed rate. Default: the feed rate of --index.")
    private Optional<Quantity<Speed>> feed = Optional.empty();

    @Option(
            names = "--index",
            paramLabel = "<index>",
            description = "Quality index that sets the feed rate: 1 just separates, 5 is very fine. Default: 3.")
    private double index = 3;

    @Option(
            names = "--exit-bore",
            converter = Typed.Length.class,
            paramLabel = "<bore>",
            description = "Exit bore of a worn focusing tube. Default: the bore of the new tube.")
    private Optional<Quantity<Length>> exitBore = Optional.empty();

    @Option(names = "--points", paramLabel = "<count>", description = "Steps of the profile, 1 to 10000. Default: 10.")
    private int points = 10;

    @Option(
            names = "--svg",
            paramLabel = "<file>",
            description = "Draw the cross-section and the cut front, both to scale, to a file.")
    private Optional<Path> svg = Optional.empty();

    private AbrasiveJet jet() {
        AbrasiveJet jet = head.jet();
        return exitBore.map(bore ->
                        jet.withHead(jet.head().withTube(jet.head().tube().withExitBore(bore))))
                .orElse(jet);
    }

    private CutConditions cut() {
        CalibrationOptions.Choice choice = calibration.choose(material, model.model());
        return CutConditions.of(jet(), stack.workpiece(choice.material(), thickness), choice.model());
    }

    private Quantity<Speed> runningFeed(CutConditions cut) {
        return feed.orElseGet(() -> cut.feed(index).value());
    }

    private Kerf kerf(CutConditions cut) {
        return kerfModel.model().kerf(cut, runningFeed(cut));
    }

    @Override
    protected Table table() {
        return table(kerf(cut()));
    }

    private Table table(Kerf kerf) {
        Require.between("points of the profile", points, 1, 10_000, Units.ONE, "one step and more");
        Table table = Table.of("Kerf in " + kerf.workpiece())
                .column("depth", Kind.LENGTH, Units.MILLIMETRE, 4)
                .column("half width", Kind.LENGTH, Units.MILLIMETRE, 4)
                .column("width", Kind.LENGTH, Units.MILLIMETRE, 4)
                .column("width uncertainty", Kind.LENGTH, Units.MILLIMETRE, 2)
                .column("lag", Kind.LENGTH, Units.MILLIMETRE, 3);
        double thicknessM = Kind.LENGTH.si(kerf.thickness());
        for (int i = 0; i <= points; i++) {
            double depth = i == points ? thicknessM : thicknessM * i / points;
            Estimate<Length> width = kerf.widthAt(Kind.LENGTH.of(depth));
            double lag = i == 0 ? 0 : kerf.lag().at(Kind.LENGTH.of(depth)).si();
            table.row(depth, kerf.halfWidthSi(depth), width.si(), width.standardUncertaintySi(), lag);
        }
        draw(kerf);
        return table;
    }

    @Override
    protected void print(PrintWriter out) {
        CutConditions cut = cut();
        Kerf kerf = kerf(cut);
        TaperCompensation tilt = TaperCompensation.forSquarePartSide(kerf);
        Table table = table(kerf)
                .note("Feed rate " + QuantityText.forPeople(Kind.SPEED, runningFeed(cut)) + ", quality index "
                        + QuantityText.round(kerf.index(), 3) + ", "
                        + kerf.regime().label())
                .note("Taper per side " + shown(kerf.taperPerSide()) + ", included angle "
                        + shown(kerf.includedAngle()))
                .note("Kerf offset for size at the top side " + shown(kerf.offset()))
                .note("Minimum inner radius " + shown(kerf.minimumInnerRadius()) + ", minimum slot width "
                        + shown(kerf.minimumSlotWidth()))
                .note("Exit lag " + shown(kerf.lag().atExit()) + ", angle between front and jet axis there "
                        + shown(kerf.lag().exitAngle()))
                .note("Tilt angle for a square part side " + QuantityText.forPeople(Kind.ANGLE, tilt.tilt())
                        + ", taper of the scrap side then " + shown(tilt.scrapSideTaper()))
                .note(kerfModel
                        .model()
                        .feedOfZeroTaper(cut)
                        .map(zero -> "Feed rate of zero taper " + shown(zero))
                        .orElse("No feed rate has zero taper"))
                .note("\u00b1 is one standard uncertainty.");
        kerf.cautions().forEach(caution -> table.note("Caution: " + caution.text() + "."));
        table.note("Do not run a machine on this alone: the machine's manual, local codes and trained people decide.");
        out.print(table.text());
        svg.ifPresent(file -> out.println("\nDrawn to " + file));
    }

    private static String shown(Estimate<?> estimate) {
        return QuantityText.forPeople(estimate.kind(), estimate.si(), estimate.standardUncertaintySi());
    }

    private void draw(Kerf kerf) {
        svg.ifPresent(file -> TextFiles.write(
                file,
                KerfDrawing.of(
                                "Kerf in " + kerf.workpiece(),
                                "Cross-section of the kerf with both walls, and the cut front seen from the side, each"
                                        + " to scale.")
                        .section("cross-section", kerf)
                        .front("cut front, head going right", kerf)
                        .svg()));
    }
}

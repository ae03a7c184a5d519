package dev.waterjet.examples;

import dev.waterjet.evidence.Estimate;
import dev.waterjet.examples.chart.KerfDrawing;
import dev.waterjet.feed.FeedModel;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.kerf.Kerf;
import dev.waterjet.kerf.KerfModel;
import dev.waterjet.kerf.TaperCompensation;
import dev.waterjet.material.Material;
import dev.waterjet.material.Materials;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Length;
import javax.measure.quantity.Speed;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Walls and lag of one cut. */
@Command(
        name = "kerf",
        description = {
            "Walls of a kerf over the depth, its taper, its lag, the offset of the path, the smallest features.",
            "Example: waterjet kerf --material titanium --thickness \"12 mm\" --feed \"100 mm/min\" --svg kerf.svg"
        })
final class KerfSections extends Program {

    @Mixin
    private final HeadOptions head = new HeadOptions();

    @Option(names = "--model", paramLabel = "<model>", description = "Feed model, as in curve. Usual: machinability.")
    private String model = "machinability";

    @Option(
            names = "--material",
            converter = Typed.Catalogued.class,
            paramLabel = "<material>",
            description = "Material of the catalogue, by id or a part of it. Usual: mild-steel.")
    private Material material = Materials.standard().get("mild-steel");

    @Option(
            names = "--thickness",
            converter = Typed.Length.class,
            paramLabel = "<length>",
            description = "Thickness of the workpiece. Usual: 10 mm.")
    private Quantity<Length> thickness = Kind.LENGTH.parse("10 mm");

    @Option(
            names = "--feed",
            converter = Typed.Speed.class,
            paramLabel = "<speed>",
            description = "Feed. Without it the feed of --index.")
    private Optional<Quantity<Speed>> feed = Optional.empty();

    @Option(
            names = "--index",
            paramLabel = "<index>",
            description = "Quality index that sets the feed: 1 just separates, 5 is the best face. Usual: 3.")
    private double index = 3;

    @Option(
            names = "--exit-bore",
            converter = Typed.Length.class,
            paramLabel = "<bore>",
            description = "Exit bore of a worn focusing tube. Usual: as new.")
    private Optional<Quantity<Length>> exitBore = Optional.empty();

    @Option(names = "--points", paramLabel = "<count>", description = "Steps of the profile, 1 to 10000. Usual: 10.")
    private int points = 10;

    @Option(
            names = "--svg",
            paramLabel = "<file>",
            description = "Draw the cross-section and the front, both to scale, to a file.")
    private Optional<Path> svg = Optional.empty();

    private AbrasiveJet jet() {
        AbrasiveJet jet = head.jet();
        return exitBore.map(bore -> jet.head()
                        .withTube(jet.head().tube().withExitBore(bore))
                        .jet(jet.water().pressure(), jet.abrasive(), jet.abrasiveFlow())
                        .withWater(jet.water()))
                .orElse(jet);
    }

    private Workpiece piece() {
        return Workpiece.of(material, thickness);
    }

    private Quantity<Speed> runningFeed(FeedModel feeds) {
        return feed.orElseGet(() -> feeds.feed(jet(), piece(), index).value());
    }

    private Kerf kerf() {
        FeedModel feeds = Models.get(model);
        return KerfModel.standard().kerf(jet(), piece(), feeds, runningFeed(feeds));
    }

    @Override
    protected Table table() {
        Require.between("points of the profile", points, 1, 10_000, Units.ONE, "one step and more");
        Kerf kerf = kerf();
        Table table = Table.of("Kerf in " + piece())
                .column("depth", Kind.LENGTH, Units.MILLIMETRE, 4)
                .column("half width", Kind.LENGTH, Units.MILLIMETRE, 4)
                .column("width", Kind.LENGTH, Units.MILLIMETRE, 4)
                .column("width uncertainty", Kind.LENGTH, Units.MILLIMETRE, 2)
                .column("lag", Kind.LENGTH, Units.MILLIMETRE, 3);
        double deepest = piece().thicknessSi();
        for (int i = 0; i <= points; i++) {
            double depth = i == points ? deepest : deepest * i / points;
            Estimate<Length> width = kerf.widthAt(Kind.LENGTH.of(depth));
            double lag = i == 0 ? 0 : kerf.lag().at(Kind.LENGTH.of(depth)).si();
            table.row(depth, kerf.halfWidthSi(depth), width.si(), width.standardUncertaintySi(), lag);
        }
        draw(kerf);
        return table;
    }

    @Override
    protected void print(PrintWriter out) {
        FeedModel feeds = Models.get(model);
        Kerf kerf = kerf();
        Table table = table().note(
                        "feed " + QuantityText.print(Kind.SPEED, runningFeed(feeds), Units.MILLIMETRE_PER_MINUTE, 4)
                                + ", index " + QuantityText.round(kerf.index(), 3) + ", "
                                + kerf.regime().label())
                .note("taper per side " + told(kerf.taperPerSide(), Units.DEGREE) + ", included angle "
                        + told(kerf.includedAngle(), Units.DEGREE))
                .note("path offset for size at the entry " + told(kerf.offset(), Units.MILLIMETRE))
                .note("smallest inner radius " + told(kerf.minimumInnerRadius(), Units.MILLIMETRE)
                        + ", narrowest slot " + told(kerf.smallestSlot(), Units.MILLIMETRE))
                .note("lag at the exit " + told(kerf.lag().atExit(), Units.MILLIMETRE) + ", front there "
                        + told(kerf.lag().exitAngle(), Units.DEGREE) + " from the jet")
                .note("tilt that squares the part side "
                        + QuantityText.print(Kind.ANGLE, TaperCompensation.forSquarePartSide(kerf).tilt(), Units.DEGREE, 3)
                        + ", scrap side then " + told(TaperCompensation.forSquarePartSide(kerf).scrapSideTaper(), Units.DEGREE))
                .note(KerfModel.standard()
                        .feedOfZeroTaper(jet(), piece(), feeds)
                        .map(zero -> "feed of zero taper " + told(zero, Units.MILLIMETRE_PER_MINUTE))
                        .orElse("no feed has zero taper"));
        kerf.cautions().stream().map(caution -> caution.text() + ".").distinct().forEach(table::note);
        table.note("Run nothing on this alone: the machine's manual, local codes and trained people decide.");
        out.print(table.text());
        svg.ifPresent(file -> out.println("\nDrawn to " + file));
    }

    private static <Q extends Quantity<Q>> String told(Estimate<Q> estimate, Unit<Q> unit) {
        double uncertainty = Units.fromSi(estimate.standardUncertaintySi(), unit);
        return QuantityText.print(estimate.kind(), estimate.value(), unit, 3) + " +/- "
                + QuantityText.round(uncertainty, 2);
    }

    private void draw(Kerf kerf) {
        svg.ifPresent(file -> TextFiles.write(
                file,
                KerfDrawing.of(
                                "Kerf in " + piece(),
                                "Cross-section of the kerf with both walls, and the front seen from the side, each to"
                                        + " scale.")
                        .section("cross-section", kerf)
                        .front("front, head going right", kerf)
                        .svg()));
    }
}

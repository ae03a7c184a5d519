package dev.waterjet.examples;

import dev.waterjet.examples.geometry.PartFigures;
import dev.waterjet.examples.svg.SvgReader;
import dev.waterjet.head.HeadCandidate;
import dev.waterjet.head.HeadFault;
import dev.waterjet.head.HeadSelection;
import dev.waterjet.head.HeadSelector;
import dev.waterjet.head.PartRequirement;
import dev.waterjet.head.RankBy;
import dev.waterjet.material.Material;
import dev.waterjet.material.Materials;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Units;
import dev.waterjet.quality.CutQuality;
import dev.waterjet.quality.EdgeRequirement;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Pressure;
import javax.measure.quantity.Speed;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.metres;
import static dev.waterjet.measure.Measures.micrometres;
import static dev.waterjet.measure.Measures.millimetres;
import static dev.waterjet.measure.Measures.millimetresPerMinute;

/** Which head for a part. */
@Command(
        name = "heads",
        description =
                "Tries every orifice, focusing tube, abrasive and flow of a shelf on a part, says why each fails, and"
                        + " ranks the rest by time or cost.")
final class Heads extends Program {

    @Option(
            names = "--material",
            converter = Typed.Catalogued.class,
            paramLabel = "<name>",
            description = "Material of the plate. Usual: stainless-304.")
    private Material material = Materials.standard().get("stainless-304");

    @Option(
            names = "--thickness",
            converter = Typed.Length.class,
            paramLabel = "<thickness>",
            description = "Thickness of the plate. Usual: 6 mm.")
    private Quantity<Length> thickness = millimetres(6);

    @Option(
            names = "--grade",
            converter = Typed.Face.class,
            paramLabel = "<grade>",
            description = "Grade of the faces: parting, coarse, medium, fine, extra fine. Usual: medium.")
    private CutQuality grade = CutQuality.MEDIUM;

    @Option(
            names = "--length",
            converter = Typed.Length.class,
            paramLabel = "<length>",
            description = "Length of cut of one part. Usual: 1.5 m.")
    private Quantity<Length> length = metres(1.5);

    @Option(names = "--pierces", paramLabel = "<count>", description = "Pierces of one part. Usual: 1.")
    private int pierces = 1;

    @Option(
            names = "--radius",
            converter = Typed.Length.class,
            paramLabel = "<radius>",
            description = "Smallest inner radius of the part.")
    private Optional<Quantity<Length>> radius = Optional.empty();

    @Option(
            names = "--passage",
            converter = Typed.Length.class,
            paramLabel = "<width>",
            description = "Narrowest slot or neck that the jet must go through.")
    private Optional<Quantity<Length>> passage = Optional.empty();

    @Option(
            names = "--tolerance",
            converter = Typed.Length.class,
            paramLabel = "<length>",
            description = "How far a wall may be from straight and square.")
    private Optional<Quantity<Length>> tolerance = Optional.empty();

    @Option(
            names = "--least-feed",
            converter = Typed.Speed.class,
            paramLabel = "<feed>",
            description = "Feed below which a head is too weak. Usual: 1 mm/min.")
    private Quantity<Speed> leastFeed = millimetresPerMinute(1);

    @Option(
            names = "--drawing",
            paramLabel = "<file>",
            description = "SVG of the part; length, pierces, radius and passage are then measured in it.")
    private Optional<Path> drawing = Optional.empty();

    @Option(
            names = "--pressure",
            converter = Typed.Pressure.class,
            paramLabel = "<pressure>",
            description = "Gauge pressure at the orifice. Usual: 380 MPa.")
    private Quantity<Pressure> pressure = megapascals(380);

    @Option(names = "--by", paramLabel = "<time|cost>", description = "What to rank by: time or cost. Usual: time.")
    private RankBy by = RankBy.TIME;

    @Option(
            names = "--most",
            paramLabel = "<count>",
            description = "How many heads to print. Usual: 12; CSV prints all.")
    private int most = 12;

    @Option(names = "--refused", description = "Print the heads that do not serve instead, each with its reasons.")
    private boolean showsRefused;

    @Mixin
    private ShopOptions shop = new ShopOptions();

    @Override
    protected Table table() {
        HeadSelection selection = HeadSelector.of(shop.shelf(), pressure, shop.power())
                .withRates(shop.rates())
                .withPiercing(shop.piercing())
                .select(demand());
        return showsRefused ? refused(selection) : serving(selection);
    }

    private PartRequirement demand() {
        Workpiece plate = Workpiece.of(material, thickness);
        PartRequirement demand = drawing.map(file -> measured(plate, file))
                .orElseGet(() -> PartRequirement.of(plate, grade, length).withPierces(pierces));
        if (radius.isPresent()) {
            demand = demand.withSmallestRadius(radius.get());
        }
        if (passage.isPresent()) {
            demand = demand.withMinimumSlotWidth(passage.get());
        }
        if (tolerance.isPresent()) {
            demand = demand.withTolerance(tolerance.get());
        }
        return demand.withMinimumFeed(leastFeed);
    }

    /** Figures that a geometry kernel measured, handed to the library as plain lengths. */
    private PartRequirement measured(Workpiece plate, Path file) {
        PartFigures part = PartFigures.of(SvgReader.read(TextFiles.read(file), micrometres(2), EdgeRequirement.defaults())
                .contours());
        PartRequirement demand = PartRequirement.of(plate, grade, part.cutLength())
                .withPierces(part.inOrder().size());
        Optional<Quantity<Length>> hollow = part.smallestRadius();
        if (hollow.isPresent()) {
            demand = demand.withSmallestRadius(hollow.get());
        }
        Optional<Quantity<Length>> narrow = part.narrowestPassage(millimetres(5));
        return narrow.isPresent() ? demand.withMinimumSlotWidth(narrow.get()) : demand;
    }

    private Table serving(HeadSelection selection) {
        Table table = sizes(Table.of(selection.explanation(by)).number("rank", 4))
                .column("power", Kind.POWER, Units.KILOWATT, 3)
                .column("feed", Kind.SPEED, Units.MILLIMETRE_PER_MINUTE, 3)
                .column("kerf", Kind.LENGTH, Units.MILLIMETRE, 3)
                .column("time", Kind.TIME, Units.SECOND, 4)
                .number("cost", 4)
                .words("trade-off");
        Set<HeadCandidate> front = new HashSet<>(selection.paretoFront());
        List<HeadCandidate> ranked = selection.ranked(by);
        int rank = 0;
        for (HeadCandidate trial : ranked.subList(0, isCsv() ? ranked.size() : Math.min(most, ranked.size()))) {
            rank++;
            table.row(
                    rank,
                    trial.jet().head().orifice().boreSi(),
                    trial.jet().head().tube().boreSi(),
                    trial.jet().head().tube().lengthSi(),
                    trial.jet().abrasive().mesh().name(),
                    trial.jet().abrasiveFlowSi(),
                    Kind.POWER.si(trial.jet().water().ratedHydraulicPower()),
                    trial.feed().si(),
                    trial.kerfSi(),
                    trial.timeSi(),
                    trial.cost(),
                    front.contains(trial) ? "best" : "");
        }
        return table.note("Time is that of one part without corners and moves; cost is in "
                        + shop.rates().currency()
                        + (shop.isInvented() ? ", at invented prices: give your own with --price." : "."))
                .note(
                        "\"best\": no other head is both quicker and cheaper. The feed model does not know grain sizes, so"
                                + " meshes rank alike.")
                .note("Feeds of published models are good to some 20 %; try the head on scrap, within the limits of the"
                        + " machine's manual.");
    }

    private static Table refused(HeadSelection selection) {
        Table table = sizes(Table.of("Heads that do not serve")).words("reason");
        for (HeadSelection.Refused head : selection.refused()) {
            table.row(
                    head.orificeM(),
                    head.tubeM(),
                    head.lengthM(),
                    head.abrasive().mesh().name(),
                    head.flowKgPerS(),
                    head.faults().stream().map(HeadFault::text).collect(Collectors.joining("; ")));
        }
        return table;
    }

    private static Table sizes(Table table) {
        return table.column("orifice", Kind.LENGTH, Units.MILLIMETRE, 3)
                .column("tube", Kind.LENGTH, Units.MILLIMETRE, 3)
                .column("tube length", Kind.LENGTH, Units.MILLIMETRE, 3)
                .words("mesh")
                .column("abrasive flow", Kind.MASS_FLOW, Units.GRAM_PER_MINUTE, 4);
    }
}

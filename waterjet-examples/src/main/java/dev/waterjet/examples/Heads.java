package dev.waterjet.examples;

import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.metres;
import static dev.waterjet.measure.Measures.micrometres;
import static dev.waterjet.measure.Measures.millimetres;
import static dev.waterjet.measure.Measures.millimetresPerMinute;

import dev.waterjet.examples.drawing.DrawingSettings;
import dev.waterjet.examples.geometry.PartFigures;
import dev.waterjet.head.HeadCandidate;
import dev.waterjet.head.HeadSelection;
import dev.waterjet.head.HeadSelector;
import dev.waterjet.head.HeadSelector.Ranking;
import dev.waterjet.head.PartRequirement;
import dev.waterjet.kerf.KerfModel;
import dev.waterjet.material.Material;
import dev.waterjet.material.Materials;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Require;
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

/** Program that selects a head for a part. */
@Command(
        name = "heads",
        description =
                "Select a head for a part: try every orifice, focusing tube, abrasive and flow rate of an inventory,"
                        + " give the reasons of each rejection, and rank the others by time or cost.")
final class Heads extends Program {

    @Option(
            names = "--material",
            converter = Typed.Catalogued.class,
            paramLabel = "<name>",
            description = "Material of the plate. Default: stainless-304.")
    private Material material = Materials.standard().get("stainless-304");

    @Mixin
    private final StackOptions stack = new StackOptions();

    @Option(
            names = "--thickness",
            converter = Typed.Length.class,
            paramLabel = "<thickness>",
            description = "Thickness of the plate. Default: 6 mm.")
    private Quantity<Length> thickness = millimetres(6);

    @Option(
            names = "--quality",
            converter = Typed.Face.class,
            paramLabel = "<level>",
            description = "Cut quality: very coarse, coarse, medium, fine, very fine. Default: medium.")
    private CutQuality quality = CutQuality.MEDIUM;

    @Option(
            names = "--length",
            converter = Typed.Length.class,
            paramLabel = "<length>",
            description = "Length of cut of one part. Default: 1.5 m.")
    private Quantity<Length> length = metres(1.5);

    @Option(names = "--pierces", paramLabel = "<count>", description = "Pierces of one part. Default: 1.")
    private int pierces = 1;

    @Option(
            names = "--min-radius",
            converter = Typed.Length.class,
            paramLabel = "<radius>",
            description = "Minimum inner radius of the part.")
    private Optional<Quantity<Length>> radius = Optional.empty();

    @Option(
            names = "--min-slot",
            converter = Typed.Length.class,
            paramLabel = "<width>",
            description = "Minimum slot width of the part.")
    private Optional<Quantity<Length>> slot = Optional.empty();

    @Option(
            names = "--wall-tolerance",
            converter = Typed.Length.class,
            paramLabel = "<length>",
            description = "Maximum deviation of a wall from straight and square.")
    private Optional<Quantity<Length>> tolerance = Optional.empty();

    @Option(
            names = "--min-feed",
            converter = Typed.Speed.class,
            paramLabel = "<feed>",
            description = "Minimum feed rate; a head below it is rejected. Default: 1 mm/min.")
    private Quantity<Speed> minimumFeed = millimetresPerMinute(1);

    @Option(
            names = "--drawing",
            paramLabel = "<file>",
            description =
                    "Drawing of the part in SVG or DXF, from which length, pierces, minimum radius and minimum slot"
                            + " width are measured.")
    private Optional<Path> drawing = Optional.empty();

    @Option(
            names = "--pressure",
            converter = Typed.Pressure.class,
            paramLabel = "<pressure>",
            description = "Gauge pressure at the orifice. Default: 380 MPa.")
    private Quantity<Pressure> pressure = megapascals(380);

    @Option(
            names = "--rank-by",
            paramLabel = "<time|cost>",
            description = "Ranking criterion: time or cost. Default: time.")
    private Ranking ranking = Ranking.TIME;

    @Option(
            names = "--limit",
            paramLabel = "<count>",
            description = "Maximum number of heads to print. Default: 12; CSV prints all.")
    private int limit = 12;

    @Option(names = "--show-rejected", description = "Print the rejected heads instead, each with its reasons.")
    private boolean showsRejected;

    @Mixin
    private final DrawingOptions drawingOptions = new DrawingOptions();

    @Mixin
    private ShopOptions shop = new ShopOptions();

    @Mixin
    private final ModelOption model = new ModelOption();

    @Mixin
    private final CalibrationOptions calibration = new CalibrationOptions();

    @Override
    protected Table table() {
        CalibrationOptions.Choice choice = calibration.choose(material, model.model());
        HeadSelection selection = HeadSelector.of(shop.inventory(), pressure, shop.power())
                .withPrices(shop.rates())
                .withPierceSettings(shop.piercing())
                .withModels(choice.model(), KerfModel.standard())
                .select(requirement(stack.workpiece(choice.material(), thickness)));
        return showsRejected ? rejected(selection) : feasible(selection);
    }

    private PartRequirement requirement(Workpiece plate) {
        PartRequirement requirement = drawing.map(file -> measured(plate, file))
                .orElseGet(() -> PartRequirement.of(plate, quality, length).withPierces(pierces));
        if (radius.isPresent()) {
            requirement = requirement.withMinimumInnerRadius(radius.get());
        }
        if (slot.isPresent()) {
            requirement = requirement.withMinimumSlotWidth(slot.get());
        }
        if (tolerance.isPresent()) {
            requirement = requirement.withWallTolerance(tolerance.get());
        }
        return requirement.withMinimumFeed(minimumFeed);
    }

    /** Requirement measured in a drawing. */
    private PartRequirement measured(Workpiece plate, Path file) {
        DrawingSettings settings =
                drawingOptions.settings(EdgeRequirement.of(quality)).withChordTolerance(micrometres(2));
        PartFigures part = PartFigures.of(
                DrawingReader.read(TextFiles.bytes(file), settings).contours());
        PartRequirement requirement = PartRequirement.of(plate, quality, part.cutLength())
                .withPierces(part.inOrder().size());
        Optional<Quantity<Length>> hollow = part.smallestRadius();
        if (hollow.isPresent()) {
            requirement = requirement.withMinimumInnerRadius(hollow.get());
        }
        Optional<Quantity<Length>> narrow = part.narrowestPassage(millimetres(5));
        return narrow.isPresent() ? requirement.withMinimumSlotWidth(narrow.get()) : requirement;
    }

    private Table feasible(HeadSelection selection) {
        Table table = sizes(Table.of(selection.explanation(ranking)).number("rank", 4))
                .column("power", Kind.POWER, Units.KILOWATT, 3)
                .column("feed", Kind.SPEED, Units.MILLIMETRE_PER_MINUTE, 3)
                .column("kerf", Kind.LENGTH, Units.MILLIMETRE, 3)
                .column("time", Kind.TIME, Units.SECOND, 4)
                .number("cost", 4)
                .words("trade-off");
        Set<HeadCandidate> front = new HashSet<>(selection.paretoFront());
        List<HeadCandidate> ranked = selection.ranked(ranking);
        int rank = 0;
        double most = Require.atLeast("number of heads to print", limit, 1, Units.ONE, "");
        for (HeadCandidate candidate :
                ranked.subList(0, isCsv() ? ranked.size() : (int) Math.min(most, ranked.size()))) {
            rank++;
            table.row(
                    rank,
                    candidate.jet().head().orifice().boreSi(),
                    candidate.jet().head().tube().boreSi(),
                    candidate.jet().head().tube().lengthSi(),
                    candidate.jet().abrasive().mesh().name(),
                    candidate.jet().abrasiveFlowSi(),
                    Kind.POWER.si(candidate.jet().water().ratedHydraulicPower()),
                    candidate.feed().si(),
                    Kind.LENGTH.si(candidate.kerfWidth()),
                    candidate.time().si(),
                    candidate.cost(),
                    front.contains(candidate) ? "best" : "");
        }
        return table.note("Time is that of one part without corners and rapid traverse; cost is in "
                        + shop.rates().currency()
                        + (shop.hasExamplePrices() ? " (example prices; set yours with --price)." : "."))
                .note("\"best\": no other head is both faster and cheaper. The feed model does not include the grain"
                        + " size, so mesh sizes rank equal.")
                .note("Feed rates of published models have a standard uncertainty of about 20 %; make a test cut,"
                        + " within the limits of the machine's manual.");
    }

    private static Table rejected(HeadSelection selection) {
        Table table = sizes(Table.of("Rejected heads")).words("reason");
        for (HeadSelection.Rejected head : selection.rejected()) {
            table.row(
                    Kind.LENGTH.si(head.orificeBore()),
                    Kind.LENGTH.si(head.tubeBore()),
                    Kind.LENGTH.si(head.tubeLength()),
                    head.abrasive().mesh().name(),
                    Kind.MASS_FLOW.si(head.abrasiveFlow()),
                    head.findings().stream()
                            .map(finding -> finding.message().text())
                            .collect(Collectors.joining("; ")));
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

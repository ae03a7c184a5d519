package dev.waterjet.examples;

import dev.waterjet.evidence.Caution;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.feed.CutConditions;
import dev.waterjet.material.Material;
import dev.waterjet.material.Materials;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.TextException;
import dev.waterjet.measure.Units;
import dev.waterjet.quality.CutQuality;
import dev.waterjet.quality.EdgeRequirement;
import dev.waterjet.quality.Iso9013;
import dev.waterjet.quality.QualityScale;
import dev.waterjet.surface.CutSurface;
import dev.waterjet.surface.FastestFeed;
import dev.waterjet.surface.SurfaceModel;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.Collectors;
import javax.measure.Quantity;
import javax.measure.quantity.Angle;
import javax.measure.quantity.Length;
import javax.measure.quantity.Speed;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Program that classifies cut surfaces: measured, predicted or required. */
@Command(
        name = "grade",
        description = {
            "Classify cut surfaces: measured, predicted for a feed rate, or required by a drawing.",
            "With --perpendicularity or --profile-height: the range of ISO 9013 of a measured cut surface.",
            "With --material and --feed: the cut surface at this feed rate.",
            "With --material and --quality, --taper, --roughness, ...: the maximum feed rate for the requirements.",
            "ISO 9013 is written for thermal cutting; it applies to waterjet cuts by agreement only.",
            "Example: waterjet grade --thickness \"10 mm\" --perpendicularity \"0.2 mm\"",
            "Example: waterjet grade --material mild-steel --thickness \"12 mm\" --taper \"0.5 deg\" --roughness \"6"
                    + " um\""
        })
final class GradeTable extends Program {

    @Mixin
    private final HeadOptions head = new HeadOptions();

    @Mixin
    private final CalibrationOptions calibration = new CalibrationOptions();

    @Mixin
    private final StackOptions stack = new StackOptions();

    @Option(
            names = "--thickness",
            converter = Typed.Length.class,
            paramLabel = "<length>",
            description = "Thickness of the workpiece. Default: 10 mm.")
    private Quantity<Length> thickness = Kind.LENGTH.parse("10 mm");

    @Option(
            names = "--perpendicularity",
            converter = Typed.Length.class,
            paramLabel = "<length>",
            description = "Measured perpendicularity tolerance u of ISO 9013.")
    private Optional<Quantity<Length>> perpendicularity = Optional.empty();

    @Option(
            names = "--profile-height",
            converter = Typed.Length.class,
            paramLabel = "<length>",
            description = "Measured mean profile height Rz5.")
    private Optional<Quantity<Length>> profileHeight = Optional.empty();

    @Option(
            names = "--scale",
            paramLabel = "<file>",
            description = "Custom scale beside ISO 9013, as CSV with the columns level, measure, above_thickness,"
                    + " to_thickness, constant, per_thickness. Its level is printed below the table, not in the CSV.")
    private Optional<Path> scale = Optional.empty();

    @Option(
            names = "--material",
            converter = Typed.Catalogued.class,
            paramLabel = "<material>",
            description = "Material of the catalogue, by id or a part of it.")
    private Optional<Material> material = Optional.empty();

    @Mixin
    private final ModelOption model = new ModelOption();

    @Option(
            names = "--feed",
            converter = Typed.Speed.class,
            paramLabel = "<speed>",
            description = "Feed rate for which the cut surface is predicted.")
    private Optional<Quantity<Speed>> feed = Optional.empty();

    @Option(
            names = "--quality",
            converter = Typed.Face.class,
            paramLabel = "<level>",
            description = "Required cut quality: \"very coarse\", coarse, medium, fine, \"very fine\".")
    private Optional<CutQuality> quality = Optional.empty();

    @Option(
            names = "--perpendicularity-range",
            paramLabel = "<range>",
            description = "Required range of ISO 9013 for perpendicularity, 1 to 5.")
    private Optional<Integer> perpendicularityRange = Optional.empty();

    @Option(
            names = "--profile-height-range",
            paramLabel = "<range>",
            description = "Required range of ISO 9013 for the profile height, 1 to 4.")
    private Optional<Integer> profileHeightRange = Optional.empty();

    @Option(
            names = "--taper",
            converter = Typed.Angle.class,
            paramLabel = "<angle>",
            description = "Maximum taper per side.")
    private Optional<Quantity<Angle>> taper = Optional.empty();

    @Option(
            names = "--roughness",
            converter = Typed.Length.class,
            paramLabel = "<length>",
            description = "Maximum roughness Ra at the exit.")
    private Optional<Quantity<Length>> roughness = Optional.empty();

    @Option(
            names = "--arc-radius",
            converter = Typed.Length.class,
            paramLabel = "<length>",
            description = "Minimum arc radius of the part; requires --arc-error.")
    private Optional<Quantity<Length>> arcRadius = Optional.empty();

    @Option(
            names = "--arc-error",
            converter = Typed.Length.class,
            paramLabel = "<length>",
            description = "Maximum error of the bottom edge on the arc of --arc-radius.")
    private Optional<Quantity<Length>> arcError = Optional.empty();

    @Override
    protected Table table() {
        if (perpendicularity.isPresent() || profileHeight.isPresent()) {
            // the ranges of a measured cut surface are those of any material
            Material any =
                    material.or(stack::topMaterial).orElse(Materials.standard().get("mild-steel-a36"));
            thickness = stack.workpiece(any, thickness).thickness();
            return measured();
        }
        Material stated = material.or(stack::topMaterial)
                .orElseThrow(() -> new TextException(
                        "give --perpendicularity or --profile-height of a measured cut surface, or --material or"
                                + " --layers of one to be cut"));
        CalibrationOptions.Choice choice = calibration.choose(stated, model.model());
        CutConditions cut = CutConditions.of(head.jet(), stack.workpiece(choice.material(), thickness), choice.model());
        return feed.map(speed -> predicted(cut, speed)).orElseGet(() -> required(cut));
    }

    private Table measured() {
        Iso9013 standard = Iso9013.forThickness(thickness);
        Table table = Table.of("Ranges of ISO 9013")
                .column("thickness", Kind.LENGTH, Units.MILLIMETRE, 4)
                .column("perpendicularity", Kind.LENGTH, Units.MILLIMETRE, 4)
                .column("profile height", Kind.LENGTH, Units.MICROMETRE, 4)
                .words("perpendicularity range")
                .words("profile height range")
                .row(
                        Kind.LENGTH.si(thickness),
                        length(perpendicularity),
                        length(profileHeight),
                        cell(perpendicularity.map(standard::perpendicularityRange)),
                        cell(profileHeight.map(standard::profileHeightRange)))
                .note("Range 1 has the narrowest tolerance. "
                        + Iso9013.byAgreement().text() + ".");
        scale.map(TextFiles::read).map(QualityScale::parse).ifPresent(own -> {
            perpendicularity.ifPresent(value -> table.note(level(own, QualityScale.Measure.PERPENDICULARITY, value)));
            profileHeight.ifPresent(value -> table.note(level(own, QualityScale.Measure.PROFILE_HEIGHT, value)));
        });
        return table;
    }

    private String level(QualityScale own, QualityScale.Measure measure, Quantity<Length> value) {
        return "By the custom scale, " + measure.label() + ": "
                + own.forThickness(thickness).level(measure, value).orElse("no level") + ".";
    }

    private static OptionalDouble length(Optional<Quantity<Length>> length) {
        return length.map(value -> OptionalDouble.of(Kind.LENGTH.si(value))).orElse(OptionalDouble.empty());
    }

    private static Object cell(Optional<OptionalInt> range) {
        return cell(range.orElse(OptionalInt.empty()));
    }

    private static Object cell(OptionalInt range) {
        return range.isPresent() ? (Object) range.getAsInt() : "";
    }

    private Table predicted(CutConditions conditions, Quantity<Speed> speed) {
        CutSurface cut = SurfaceModel.standard().surface(conditions, speed);
        Estimate<Length> wall = cut.perpendicularity();
        Estimate<Length> height = cut.profileHeight();
        Table table = Table.of("Predicted cut surface of " + conditions.workpiece())
                .column("feed", Kind.SPEED, Units.MILLIMETRE_PER_MINUTE, 4)
                .number("index", 3)
                .words("quality")
                .column("perpendicularity", Kind.LENGTH, Units.MILLIMETRE, 3)
                .column("perpendicularity uncertainty", Kind.LENGTH, Units.MILLIMETRE, 2)
                .words("perpendicularity range")
                .column("profile height", Kind.LENGTH, Units.MICROMETRE, 3)
                .column("profile height uncertainty", Kind.LENGTH, Units.MICROMETRE, 2)
                .words("profile height range")
                .column("ra at entry", Kind.LENGTH, Units.MICROMETRE, 3)
                .column("ra at exit", Kind.LENGTH, Units.MICROMETRE, 3)
                .column("smooth zone", Kind.LENGTH, Units.MILLIMETRE, 3)
                .row(
                        Kind.SPEED.si(speed),
                        cut.kerf().index(),
                        cut.quality().quality().map(CutQuality::label).orElse(""),
                        wall.si(),
                        wall.standardUncertaintySi(),
                        cell(cut.perpendicularityRange()),
                        height.si(),
                        height.standardUncertaintySi(),
                        cell(cut.profileHeightRange()),
                        cut.roughness().raSi(0),
                        cut.roughness().raAtExit().si(),
                        cut.roughness().smoothZone().si())
                .note("Probability of each cut quality: "
                        + Arrays.stream(CutQuality.values())
                                .map(level -> level.label() + " "
                                        + percent(cut.quality().probabilities().getOrDefault(level, 0.0)))
                                .collect(Collectors.joining(", "))
                        + ", not through " + percent(cut.quality().none()) + ".");
        cut.cautions().stream().map(caution -> caution.text() + ".").distinct().forEach(table::note);
        return table;
    }

    private static String percent(double share) {
        return Math.round(100 * share) + " %";
    }

    private EdgeRequirement requirement() {
        if (arcRadius.isPresent() != arcError.isPresent()) {
            throw new TextException("--arc-radius and --arc-error belong together");
        }
        EdgeRequirement required = EdgeRequirement.of(quality.orElse(CutQuality.VERY_COARSE));
        required =
                perpendicularityRange.map(required::withPerpendicularityRange).orElse(required);
        required = profileHeightRange.map(required::withProfileHeightRange).orElse(required);
        required = taper.map(required::withTaper).orElse(required);
        required = roughness.map(required::withRoughness).orElse(required);
        required = arcError.map(required::withLagTolerance).orElse(required);
        return arcRadius.map(required::withArcRadius).orElse(required);
    }

    private Table required(CutConditions cut) {
        FastestFeed fastest = SurfaceModel.standard().fastestFeed(cut, requirement());
        Table table = Table.of("Fastest feed rate for the requirements of " + cut.workpiece())
                .words("requirement")
                .column("feed", Kind.SPEED, Units.MILLIMETRE_PER_MINUTE, 4)
                .column("feed uncertainty", Kind.SPEED, Units.MILLIMETRE_PER_MINUTE, 2)
                .column("minimum feed", Kind.SPEED, Units.MILLIMETRE_PER_MINUTE, 4)
                .words("governs");
        Set<Caution> cautions = new LinkedHashSet<>();
        for (FastestFeed.Range range : fastest.ranges()) {
            table.row(
                    range.requirement().label(),
                    si(range.maximum().map(Estimate::si)),
                    si(range.maximum().map(Estimate::standardUncertaintySi)),
                    si(range.minimum().map(Estimate::si)),
                    role(range, fastest));
            range.maximum().ifPresent(feed -> cautions.addAll(feed.cautions()));
        }
        if (fastest.feed().isEmpty()) {
            table.note("No feed rate meets all requirements.");
        }
        cautions.forEach(caution -> table.note("Caution: " + caution.text() + "."));
        return table.note("Estimates: taper and roughness use assumed values until they are fitted to test cuts.")
                .note("Do not run a machine on this alone: the machine's manual, local codes and trained people"
                        + " decide.");
    }

    private static OptionalDouble si(Optional<Double> number) {
        return number.map(OptionalDouble::of).orElse(OptionalDouble.empty());
    }

    private static String role(FastestFeed.Range range, FastestFeed fastest) {
        if (range.maximum().isEmpty()) {
            return "out of reach";
        }
        if (fastest.conflicting().isPresent() && fastest.conflicting().get() == range.requirement()) {
            return "conflicts";
        }
        return range.requirement() == fastest.governing() ? "yes" : "";
    }
}

package dev.waterjet.examples;

import dev.waterjet.evidence.Estimate;
import dev.waterjet.examples.drawing.Drawing;
import dev.waterjet.examples.drawing.DrawnPart;
import dev.waterjet.examples.drawing.FileKind;
import dev.waterjet.examples.plan.BlockTable;
import dev.waterjet.examples.plan.BuiltIn;
import dev.waterjet.examples.plan.HeadChoice;
import dev.waterjet.examples.plan.JobFacts;
import dev.waterjet.examples.plan.PlanFiles;
import dev.waterjet.examples.plan.PlanJson;
import dev.waterjet.examples.plan.PlanReport;
import dev.waterjet.examples.plan.Remarks;
import dev.waterjet.examples.plan.ReportUnits;
import dev.waterjet.examples.plan.Sheet;
import dev.waterjet.examples.plan.Shop;
import dev.waterjet.examples.plan.Summary;
import dev.waterjet.feed.FeedModel;
import dev.waterjet.head.HeadInventory;
import dev.waterjet.head.HeadSelection;
import dev.waterjet.head.HeadSelector;
import dev.waterjet.head.HeadSelector.Ranking;
import dev.waterjet.hydraulics.PumpSetting;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.material.Material;
import dev.waterjet.material.Materials;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Measures;
import dev.waterjet.part.Part;
import dev.waterjet.plan.PartPlan;
import dev.waterjet.plan.PartPlanner;
import dev.waterjet.plan.PlannedCut;
import dev.waterjet.plan.Setup;
import dev.waterjet.program.PartProgram;
import dev.waterjet.program.ProgramWriter;
import dev.waterjet.quality.CutQuality;
import dev.waterjet.quality.EdgeRequirement;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Time;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Program that plans a part: a part program with feed rates, a table of blocks, and a sheet for people. */
@Command(
        name = "plan",
        description = {
            "Plan a part: compute the feed rate, time, consumption and cost of each cut of a part program (ISO 6983).",
            "Writes three files: the program with feed rates, its blocks as CSV, and a sheet for people as HTML."
                    + " With --tilt also the moves with their tilt as CSV, which --csv then prints."
                    + " Without a program it plans a bracket of the mirror cell of the observatory on Hollow Ridge.",
            "Without --orifice, --discharge-coefficient, --tube, --tube-length and --abrasive-flow the head is"
                    + " selected from the sizes in stock; where one of them is given, the others have their defaults.",
            ""
        })
final class Plan extends Program {

    @Parameters(
            arity = "0..1",
            paramLabel = "<program>",
            description =
                    "File with the part program, or a drawing in SVG or DXF, whose contours are pierced and cut with"
                            + " lead-ins, holes first. The file is read, never written.")
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
            description = "Cut quality where the program specifies none: very coarse, coarse, medium, fine, very fine."
                    + " Default: medium. The comment (waterjet: quality fine) sets that of the next cut.")
    private CutQuality quality = CutQuality.MEDIUM;

    @Option(
            names = "--lag-tolerance",
            converter = Typed.Length.class,
            paramLabel = "<length>",
            description = "Maximum error of the bottom edge caused by jet lag on arcs and at corners. Default: by cut"
                    + " quality and thickness, the perpendicularity ranges of ISO 9013.")
    private Optional<Quantity<Length>> lagTolerance = Optional.empty();

    @Mixin
    private final HeadOptions head = new HeadOptions();

    @Mixin
    private final DrawingOptions drawing = new DrawingOptions();

    @Mixin
    private final ShopOptions shop = new ShopOptions();

    @Mixin
    private final MachineOptions machine = new MachineOptions();

    @Mixin
    private final ProgramOptions codes = new ProgramOptions();

    @Mixin
    private final LocationOptions place = new LocationOptions();

    @Mixin
    private final ModelOption model = new ModelOption();

    @Mixin
    private final CalibrationOptions calibration = new CalibrationOptions();

    @Mixin
    private final KerfOptions kerf = new KerfOptions();

    @Option(
            names = "--rank-by",
            paramLabel = "<time|cost>",
            description =
                    "Criterion to select a head of --inventory, unless an option states a part of one. Default: time.")
    private Ranking ranking = Ranking.TIME;

    @Mixin
    private final SupportOptions support = new SupportOptions();

    @Option(
            names = "--kerf-width",
            converter = Typed.Length.class,
            paramLabel = "<width>",
            description =
                    "Kerf width, as measured: half of it is the kerf offset, and leads of a drawing keep clear by it."
                            + " Default: that of the kerf model.")
    private Optional<Quantity<Length>> kerfWidth = Optional.empty();

    @Option(names = "--parts", paramLabel = "<count>", description = "Number of parts in the batch. Default: 1.")
    private int parts = 1;

    @Option(
            names = "--units",
            paramLabel = "<metric|inch>",
            description = "Units of summary and sheet. Default: those of the program.")
    private Optional<UnitSystem> units = Optional.empty();

    @Option(names = "--feeds-per-edge", description = "One feed word for each block of the program; none is split.")
    private boolean feedsPerEdge;

    @Option(
            names = "--pierce-dwell",
            description = "Write a dwell for each pierce that has none. A drawing gets it in any case.")
    private boolean pierceDwell;

    @Option(names = "--json", order = 101, description = "Print the whole plan as JSON, in SI units.")
    private boolean json;

    @Option(
            names = "--output-dir",
            paramLabel = "<folder>",
            description = "Folder for the three files, created if missing. Default: plan.")
    private Path folder = Path.of("plan");

    @Option(names = "--force", description = "Replace files that were written for another input of the same name.")
    private boolean force;

    /** Units of a report. */
    enum UnitSystem {
        METRIC,
        INCH
    }

    private PlanFiles.Source source() throws IOException {
        return input.isPresent() ? PlanFiles.Source.read(input.get()) : PlanFiles.Source.of(BuiltIn.program());
    }

    private EdgeRequirement requirement() {
        EdgeRequirement requirement = EdgeRequirement.of(quality);
        return lagTolerance.isPresent() ? requirement.withLagTolerance(lagTolerance.get()) : requirement;
    }

    private Planned plan(PlanFiles.Source source) {
        CalibrationOptions.Choice cut = calibration.choose(material, model.model());
        Workpiece workpiece = stack.workpiece(cut.material(), thickness);
        thickness = workpiece.thickness();
        boolean isDrawing =
                FileKind.require(source.bytes(), FileKind.PROGRAM, FileKind.SVG, FileKind.DXF) != FileKind.PROGRAM;
        Optional<Drawing> drawn = isDrawing
                ? Optional.of(DrawingReader.read(source.bytes(), drawing.settings(requirement())))
                : Optional.empty();
        Optional<PartProgram> given =
                isDrawing ? Optional.empty() : Optional.of(PartProgram.parse(source.text(), codes.codes()));
        Optional<HeadSelection> selection = head.isHeadGiven()
                ? Optional.empty()
                : Optional.of(select(selector(cut.model()), given, parts(drawn), workpiece));
        AbrasiveJet jet = selection.map(this::chosen).orElseGet(head::jet);
        Setup setup = setup(jet).withFeedModel(cut.model());
        PartPlanner planner = support.on(planner(setup), drawn);
        PlanInput.Read read = given.map(PlanInput.Read::of)
                .orElseGet(() ->
                        PlanInput.Read.of(named().title(), drawn.orElseThrow(), planner, workpiece, codes.codes()))
                .movedBy(place.move());
        PartProgram program = read.program();
        PartPlan plan = planner.plan(program, workpiece);
        Estimate<Time> pierce = longestPierce(plan);
        PlanReport report = new PlanReport(
                named().title(),
                plan,
                program,
                PlanReport.around(program, plan.setup().requirement()),
                PartProgram.parse(written(plan, program, isDrawing), program.codes()),
                parts(drawn).stream()
                        .map(part -> place.move().map(to -> to.apply(part)).orElse(part))
                        .toList(),
                named().fileName(),
                named().written(isDrawing),
                isInch(program) ? ReportUnits.INCH : ReportUnits.METRIC,
                place.cautions(drawn.map(PlanInput::cautions).orElse(List.of())),
                read.findings().stream()
                        .filter(finding -> !finding.isSatisfied())
                        .toList(),
                PlanInput.check(program, isDrawing ? Optional.empty() : Optional.of(pierce), pierceDwell));
        Shop where = new Shop(
                shop.rates(),
                shop.hasExamplePrices(),
                shop.piercing(),
                parts,
                support.slats(),
                support.shearStrength(),
                drawn.map(found -> found.tabs().size()).orElse(0),
                selection.map(found -> found.explanation(ranking)));
        return new Planned(report, JobFacts.of(report, where));
    }

    private PlanInput named() {
        return new PlanInput(input);
    }

    private static List<Part> parts(Optional<Drawing> drawing) {
        return drawing.map(Drawing::parts).orElse(List.of()).stream()
                .map(DrawnPart::part)
                .toList();
    }

    private HeadSelection select(
            HeadSelector selector, Optional<PartProgram> program, List<Part> parts, Workpiece workpiece) {
        return program.map(given -> HeadChoice.of(selector, given, workpiece, quality))
                .orElseGet(() -> HeadChoice.of(selector, parts, workpiece));
    }

    private PartPlanner planner(Setup setup) {
        PartPlanner planner = PartPlanner.of(setup).withProgress(PlanProgress.on(errors()));
        return kerfWidth.map(planner::withKerfWidth).orElse(planner);
    }

    private boolean isInch(PartProgram program) {
        return units.map(system -> system == UnitSystem.INCH).orElse(program.isInch());
    }

    private Setup setup(AbrasiveJet jet) {
        Setup setup = machine.on(Setup.of(
                        jet.head(),
                        PumpSetting.ofPower(shop.power(), jet.water().pressure()),
                        machine.limits()))
                .withAbrasive(jet.abrasive(), jet.abrasiveFlow())
                .withRequirement(requirement())
                .withPierceSettings(shop.piercing())
                .withPrices(shop.rates())
                .withKerfModel(kerf.model());
        setup = support.on(setup);
        return feedsPerEdge ? setup.withFeedChange(Setup.ANY_FEED_CHANGE) : setup;
    }

    /** Time of the pierce that takes longest: a moving one is shorter. */
    private static Estimate<Time> longestPierce(PartPlan plan) {
        Estimate<Time> longest = plan.cuts().get(0).pierce().time();
        for (PlannedCut cut : plan.cuts()) {
            longest = cut.pierce().time().si() > longest.si() ? cut.pierce().time() : longest;
        }
        return longest;
    }

    /** The program with the feed rates of the plan. */
    private String written(PartPlan plan, PartProgram program, boolean isDrawing) {
        ProgramWriter writer = ProgramWriter.of(program.codes());
        Quantity<Time> longest = longestPierce(plan).upper(0.95);
        return (isDrawing || pierceDwell ? writer.withPierceDwell(longest) : writer).rewrite(program, plan.feeds());
    }

    /** A plan and its facts for the shop. */
    private record Planned(PlanReport report, JobFacts job) {}

    private HeadSelector selector(FeedModel model) {
        HeadInventory inventory =
                head.isMeshGiven() ? shop.inventory().withAbrasives(List.of(head.abrasive())) : shop.inventory();
        return HeadSelector.of(inventory, head.pressure(), shop.power())
                .withPrices(shop.rates())
                .withPierceSettings(shop.piercing())
                .withModels(model, kerf.model());
    }

    private AbrasiveJet chosen(HeadSelection selection) {
        return head.atStandOff(selection.best(ranking).jet());
    }

    /** Refuses to replace the files of another input with the same stem. */
    private void requireSameInput(Path sheet) throws IOException {
        Optional<String> before = Sheet.input(sheet);
        if (!force && before.filter(name -> !name.equals(named().fileName())).isPresent()) {
            throw new IOException(sheet + ": it was written for " + before.get()
                    + "; write elsewhere with --output-dir, or replace it with --force");
        }
    }

    @Override
    protected Table table() {
        throw new UnsupportedOperationException("a plan prints its own summary");
    }

    @Override
    protected void print(PrintWriter out) {
        try {
            PlanFiles.Source source = source();
            Planned planned = plan(source);
            if (json) {
                out.println(PlanJson.text(planned.report(), planned.job()));
                return;
            }
            PlanReport report = planned.report();
            Path program = folder.resolve(report.writtenName());
            Path blocks = folder.resolve(named().stem() + "-blocks.csv");
            Path sheet = folder.resolve(named().stem() + "-sheet.html");
            requireSameInput(sheet);
            Path moves = folder.resolve(named().stem() + "-moves.csv");
            boolean isTilted = report.plan().setup().tiltingHead().isPresent();
            PlanFiles files = isTilted
                    ? new PlanFiles().add(moves, report.plan().csv(), StandardCharsets.UTF_8)
                    : new PlanFiles();
            List<Path> replaced = files.add(program, report.written().text(), source.charset())
                    .add(blocks, BlockTable.csv(report), StandardCharsets.UTF_8)
                    .add(
                            sheet,
                            Sheet.html(report, planned.job(), LocalDate.now(ZoneId.systemDefault())),
                            StandardCharsets.UTF_8)
                    .write(input.orElse(program.resolveSibling("no input")));
            out.print(Summary.text(report, planned.job()));
            out.println();
            for (Path file : isTilted ? List.of(program, blocks, sheet, moves) : List.of(program, blocks, sheet)) {
                out.println((replaced.contains(file) ? "replaced: " : "written: ") + file);
            }
            out.println();
            Remarks.print(out, planned.report(), planned.job());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @Override
    protected void printCsv(PrintWriter out) throws IOException {
        PlanReport report = plan(source()).report();
        boolean isTilted = report.plan().setup().tiltingHead().isPresent();
        out.print(isTilted ? report.plan().csv() : BlockTable.csv(report));
    }
}

package dev.waterjet.examples;

import dev.waterjet.evidence.Caution;
import dev.waterjet.examples.plan.BlockTable;
import dev.waterjet.examples.plan.BuiltIn;
import dev.waterjet.examples.plan.HeadChoice;
import dev.waterjet.examples.plan.JobFacts;
import dev.waterjet.examples.plan.PartPlan;
import dev.waterjet.examples.plan.PlanFiles;
import dev.waterjet.examples.plan.PlanRequest;
import dev.waterjet.examples.plan.Progress;
import dev.waterjet.examples.plan.Remarks;
import dev.waterjet.examples.plan.Sheet;
import dev.waterjet.examples.plan.Shop;
import dev.waterjet.examples.plan.Summary;
import dev.waterjet.examples.svg.DrawnProgram;
import dev.waterjet.examples.svg.SvgDrawing;
import dev.waterjet.examples.svg.SvgReader;
import dev.waterjet.head.HeadInventory;
import dev.waterjet.head.HeadSelection;
import dev.waterjet.head.HeadSelector;
import dev.waterjet.head.RankBy;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.material.Material;
import dev.waterjet.material.Materials;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Measures;
import dev.waterjet.motion.MachineLimits;
import dev.waterjet.program.PartProgram;
import dev.waterjet.program.ProgramCodes;
import dev.waterjet.quality.CutQuality;
import dev.waterjet.quality.EdgeRequirement;
import dev.waterjet.sheet.Slats;
import dev.waterjet.toolpath.CuttingRules;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Acceleration;
import javax.measure.quantity.Length;
import javax.measure.quantity.Pressure;
import javax.measure.quantity.Speed;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** The main job: a part program becomes one with feeds, a table of blocks, and a sheet to read. */
@Command(
        name = "plan",
        description = {
            "Plans a part: reads its program (ISO 6983 words) and finds the feed of every cutting block.",
            "Writes three files: the same program with feeds, its blocks as CSV, and a sheet for people as HTML."
                    + " Without a program it plans a bracket of the mirror cell on Hollow Ridge.",
            ""
        })
final class Plan extends Program {

    /** Programs of more blocks than this tell their progress on a terminal. */
    private static final int LONG = 20_000;

    @Parameters(
            arity = "0..1",
            paramLabel = "<program>",
            description =
                    "File with the part program, or a drawing in SVG (*.svg): its contours are then pierced, led in and"
                            + " cut, holes first. It is only read, never written.")
    private Optional<Path> input = Optional.empty();

    @Option(
            names = "--material",
            converter = Typed.Catalogued.class,
            paramLabel = "<material>",
            description = "Material, such as titanium; the program materials lists them. Usual: aluminium 6061-T6.")
    private Material material = Materials.standard().get("aluminium-6061-t6");

    @Option(
            names = "--thickness",
            converter = Typed.Length.class,
            paramLabel = "<thickness>",
            description = "Thickness of the plate. Usual: 12 mm.")
    private Quantity<Length> thickness = Measures.millimetres(12);

    @Option(
            names = "--grade",
            converter = Typed.Face.class,
            paramLabel = "<grade>",
            description = "Grade of faces of which the program says nothing: parting, coarse, medium, fine,"
                    + " \"extra fine\". Usual: medium. A comment (waterjet: grade fine) sets that of the next cut.")
    private CutQuality grade = CutQuality.MEDIUM;

    @Option(
            names = "--tolerance",
            converter = Typed.Length.class,
            paramLabel = "<length>",
            description = "How far the foot of the cut may lie off the edge on arcs and at corners. Usual: 0.1 mm.")
    private Quantity<Length> tolerance = Measures.millimetres(0.1);

    @Mixin
    private final HeadOptions head = new HeadOptions();

    @Mixin
    private final ShopOptions shop = new ShopOptions();

    @Option(
            names = "--by",
            paramLabel = "<time|cost>",
            description = "What a head is chosen by where none is given. Usual: time.")
    private RankBy by = RankBy.TIME;

    @Option(
            names = "--slat-pitch",
            converter = Typed.Length.class,
            paramLabel = "<distance>",
            description = "Distance from slat to slat of the table. Usual: 50 mm.")
    private Quantity<Length> slatPitch = Measures.millimetres(50);

    @Option(
            names = "--slat-thickness",
            converter = Typed.Length.class,
            paramLabel = "<thickness>",
            description = "Thickness of a slat. Usual: 4 mm.")
    private Quantity<Length> slatThickness = Measures.millimetres(4);

    @Option(
            names = "--shear-strength",
            converter = Typed.Pressure.class,
            paramLabel = "<strength>",
            description =
                    "Shear strength of the plate, from its data sheet, to size holding tabs where the part may fall.")
    private Optional<Quantity<Pressure>> shearStrength = Optional.empty();

    @Option(
            names = "--curves",
            converter = Typed.Length.class,
            paramLabel = "<length>",
            description = "How far a chord may lie from a curve of a drawing. Usual: 0.01 mm.")
    private Quantity<Length> curves = Measures.millimetres(0.01);

    @Option(
            names = "--kerf-room",
            converter = Typed.Length.class,
            paramLabel = "<width>",
            description = "Width of kerf that leads into a drawing keep clear of. Usual: 1 mm.")
    private Quantity<Length> kerfRoom = Measures.millimetres(1);

    @Option(names = "--parts", paramLabel = "<count>", description = "Parts cut in one go. Usual: 1.")
    private int parts = 1;

    @Option(
            names = "--machine-speed",
            converter = Typed.Speed.class,
            paramLabel = "<speed>",
            description = "Fastest move of the machine. Usual: 10000 mm/min.")
    private Quantity<Speed> machineSpeed = Measures.millimetresPerMinute(10_000);

    @Option(
            names = "--machine-acceleration",
            converter = Typed.Acceleration.class,
            paramLabel = "<acceleration>",
            description = "Acceleration of each axis. Usual: 0.5 m/s2.")
    private Quantity<Acceleration> machineAcceleration = Measures.metresPerSquareSecond(0.5);

    @Option(
            names = "--jet-on",
            paramLabel = "<code>",
            description = "Number of the M word that opens the jet: see the machine's manual. Usual: 3.")
    private int jetOn = 3;

    @Option(
            names = "--jet-off",
            paramLabel = "<code>",
            description = "Number of the M word that closes the jet. Usual: 5.")
    private int jetOff = 5;

    @Option(
            names = "--pass",
            split = ",",
            paramLabel = "<code>",
            description = "Numbers of other M words that neither move the head nor touch the jet.")
    private List<Integer> passed = List.of();

    @Option(names = "--open", description = "Cuts need not close, as when trimming.")
    private boolean mayStayOpen;

    @Option(
            names = "--into",
            paramLabel = "<folder>",
            description = "Folder for the three files, made if need be. Usual: plan.")
    private Path folder = Path.of("plan");

    private PlanFiles.Source source() throws IOException {
        return input.isPresent()
                ? PlanFiles.Source.read(input.get())
                : new PlanFiles.Source(BuiltIn.program(), StandardCharsets.UTF_8);
    }

    private String stem() {
        String name = input.map(file -> String.valueOf(file.getFileName())).orElse(BuiltIn.NAME);
        int dot = name.lastIndexOf('.');
        return dot > 0 ? name.substring(0, dot) : name;
    }

    /** The program, written from the drawing if the input is one. The leads hang on the kerf, and so on the head. */
    private String program(String text) {
        if (!isDrawing()) {
            return text;
        }
        SvgDrawing drawing = SvgReader.read(text, curves, EdgeRequirement.of(grade));
        return DrawnProgram.text(title(), drawing, CuttingRules.of(kerfRoom, thickness), jetOn, jetOff);
    }

    private boolean isDrawing() {
        return input.map(file -> String.valueOf(file.getFileName())
                        .toLowerCase(Locale.ROOT)
                        .endsWith(".svg"))
                .orElse(false);
    }

    private Planned plan(String text) {
        ProgramCodes codes = ProgramCodes.defaults().withPassThrough(passed);
        codes = jetOn == codes.jetOff()
                ? codes.withJetOff(jetOff).withJetOn(jetOn)
                : codes.withJetOn(jetOn).withJetOff(jetOff);
        PartProgram program = PartProgram.parse(program(text), mayStayOpen ? codes.withOpenContours() : codes);
        Workpiece piece = Workpiece.of(material, thickness);
        Optional<HeadSelection> selection =
                head.isHeadGiven() ? Optional.empty() : Optional.of(HeadChoice.of(selector(), program, piece, grade));
        PlanRequest request = new PlanRequest(
                title(),
                program,
                selection.map(this::chosen).orElseGet(head::jet),
                piece,
                grade,
                tolerance,
                MachineLimits.of(machineSpeed, machineAcceleration),
                machineSpeed);
        PartPlan plan = PartPlan.of(request, progress(program.size()));
        Shop where = new Shop(
                shop.rates(),
                shop.isInvented(),
                shop.piercing(),
                parts,
                Slats.of(slatPitch, slatThickness),
                shearStrength,
                selection.map(found -> found.explanation(by)));
        return new Planned(plan, JobFacts.of(plan, where));
    }

    /** A plan and what the shop adds to it. */
    private record Planned(PartPlan plan, JobFacts job) {}

    private HeadSelector selector() {
        HeadInventory shelf = head.isMeshGiven() ? shop.shelf().withAbrasives(List.of(head.abrasive())) : shop.shelf();
        return HeadSelector.of(shelf, head.pressure(), shop.power())
                .withRates(shop.rates())
                .withPiercing(shop.piercing());
    }

    private AbrasiveJet chosen(HeadSelection selection) {
        return head.atStandOff(selection.best(by).jet());
    }

    private String title() {
        String words = stem().replaceAll("[_-]+", " ").strip();
        return words.isEmpty() ? "Part" : words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
    }

    /** From Java 22 on, a console need be no terminal; progress then reaches a log as well, which does no harm. */
    @SuppressWarnings("SystemConsoleNull")
    private Progress progress(int blocks) {
        if (blocks < LONG || System.console() == null) {
            return Progress.SILENT;
        }
        int[] told = {-1};
        return (done, of) -> {
            int percent = (int) (100L * done / of);
            if (percent != told[0]) {
                told[0] = percent;
                errors().print("\rplanned " + percent + " % of " + of + " blocks" + (done == of ? "\n" : ""));
                errors().flush();
            }
        };
    }

    @Override
    protected Table table() {
        throw new UnsupportedOperationException("a plan prints its own summary");
    }

    @Override
    protected void print(PrintWriter out) {
        try {
            PlanFiles.Source source = source();
            Planned planned = plan(source.text());
            PartPlan plan = planned.plan();
            JobFacts job = planned.job();
            Path program = folder.resolve(stem() + "-with-feeds.nc");
            Path blocks = folder.resolve(stem() + "-blocks.csv");
            Path sheet = folder.resolve(stem() + "-sheet.html");
            new PlanFiles()
                    .add(program, plan.programWithFeeds(), source.charset())
                    .add(blocks, BlockTable.csv(plan), StandardCharsets.UTF_8)
                    .add(sheet, Sheet.html(plan, job), StandardCharsets.UTF_8)
                    .write(input.orElse(program.resolveSibling("no input")));
            out.print(Summary.text(plan, job));
            out.println();
            out.println("written: " + program);
            out.println("         " + blocks);
            out.println("         " + sheet);
            out.println();
            for (Caution caution : Remarks.cautions(plan, job)) {
                if (caution.weight() != Caution.Weight.NOTICE) {
                    out.println(caution.weight().name().toLowerCase(Locale.ROOT) + ": " + caution.text());
                }
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @Override
    protected void printCsv(PrintWriter out) throws IOException {
        out.print(BlockTable.csv(plan(source().text()).plan()));
    }
}

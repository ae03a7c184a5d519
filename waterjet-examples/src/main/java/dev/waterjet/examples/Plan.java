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
import dev.waterjet.head.HeadSelector.Ranking;
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

/** Program that plans a part: a part program with feed rates, a table of blocks, and a sheet for people. */
@Command(
        name = "plan",
        description = {
            "Plan a part: compute the feed rate, time, consumption and cost of each cut of a part program (ISO 6983).",
            "Writes three files: the program with feed rates, its blocks as CSV, and a sheet for people as HTML."
                    + " Without a program it plans a bracket of the mirror cell of the observatory on Hollow Ridge.",
            ""
        })
final class Plan extends Program {

    /** Programs of more blocks than this print their progress on a terminal. */
    private static final int LONG = 20_000;

    @Parameters(
            arity = "0..1",
            paramLabel = "<program>",
            description =
                    "File with the part program, or a drawing in SVG (*.svg), whose contours are pierced and cut with"
                            + " lead-ins, holes first. The file is read, never written.")
    private Optional<Path> input = Optional.empty();

    @Option(
            names = "--material",
            converter = Typed.Catalogued.class,
            paramLabel = "<material>",
            description = "Material, such as titanium; the program materials lists them. Default: aluminium 6061-T6.")
    private Material material = Materials.standard().get("aluminium-6061-t6");

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
            description = "Maximum error of the bottom edge caused by jet lag on arcs and at corners. Default: 0.1 mm.")
    private Quantity<Length> lagTolerance = Measures.millimetres(0.1);

    @Mixin
    private final HeadOptions head = new HeadOptions();

    @Mixin
    private final ShopOptions shop = new ShopOptions();

    @Option(
            names = "--rank-by",
            paramLabel = "<time|cost>",
            description = "Criterion by which a head is selected where none is given. Default: time.")
    private Ranking ranking = Ranking.TIME;

    @Option(
            names = "--slat-pitch",
            converter = Typed.Length.class,
            paramLabel = "<distance>",
            description = "Distance between the slats of the table. Default: 50 mm.")
    private Quantity<Length> slatPitch = Measures.millimetres(50);

    @Option(
            names = "--slat-thickness",
            converter = Typed.Length.class,
            paramLabel = "<thickness>",
            description = "Thickness of a slat. Default: 4 mm.")
    private Quantity<Length> slatThickness = Measures.millimetres(4);

    @Option(
            names = "--shear-strength",
            converter = Typed.Pressure.class,
            paramLabel = "<strength>",
            description = "Shear strength of the plate, from its data sheet, to size tabs where the part may fall.")
    private Optional<Quantity<Pressure>> shearStrength = Optional.empty();

    @Option(
            names = "--chord-tolerance",
            converter = Typed.Length.class,
            paramLabel = "<length>",
            description = "Maximum distance of a chord from a curve of a drawing. Default: 0.01 mm.")
    private Quantity<Length> chordTolerance = Measures.millimetres(0.01);

    @Option(
            names = "--kerf-width",
            converter = Typed.Length.class,
            paramLabel = "<width>",
            description = "Kerf width for the clearances of leads in a drawing. Default: 1 mm.")
    private Quantity<Length> kerfWidth = Measures.millimetres(1);

    @Option(names = "--parts", paramLabel = "<count>", description = "Number of parts in the batch. Default: 1.")
    private int parts = 1;

    @Option(
            names = "--rapid-speed",
            converter = Typed.Speed.class,
            paramLabel = "<speed>",
            description = "Rapid traverse speed of the machine. Default: 10000 mm/min.")
    private Quantity<Speed> rapidSpeed = Measures.millimetresPerMinute(10_000);

    @Option(
            names = "--machine-acceleration",
            converter = Typed.Acceleration.class,
            paramLabel = "<acceleration>",
            description = "Acceleration of each axis. Default: 0.5 m/s2.")
    private Quantity<Acceleration> machineAcceleration = Measures.metresPerSquareSecond(0.5);

    @Option(
            names = "--jet-on",
            paramLabel = "<code>",
            description = "Number of the M word that switches the jet on: see the machine's manual. Default: 3.")
    private int jetOn = 3;

    @Option(
            names = "--jet-off",
            paramLabel = "<code>",
            description = "Number of the M word that switches the jet off. Default: 5.")
    private int jetOff = 5;

    @Option(
            names = "--pass-through",
            split = ",",
            paramLabel = "<word>",
            description =
                    "Other words to copy unchanged, such as G5.1,M8, that neither move the head nor switch the jet.")
    private List<String> passed = List.of();

    @Option(names = "--open", description = "Contours need not close, as in trimming.")
    private boolean mayStayOpen;

    @Option(
            names = "--output-dir",
            paramLabel = "<folder>",
            description = "Folder for the three files, created if missing. Default: plan.")
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

    /** The program, generated from the drawing if the input is one. */
    private String program(String text) {
        if (!isDrawing()) {
            return text;
        }
        SvgDrawing drawing = SvgReader.read(text, chordTolerance, EdgeRequirement.of(quality));
        return DrawnProgram.text(title(), drawing, CuttingRules.of(kerfWidth, thickness), jetOn, jetOff);
    }

    private boolean isDrawing() {
        return input.map(file -> String.valueOf(file.getFileName())
                        .toLowerCase(Locale.ROOT)
                        .endsWith(".svg"))
                .orElse(false);
    }

    private Planned plan(String text) {
        ProgramCodes codes = ProgramCodes.defaults().withPassThrough(passed).withJet(jetOn, jetOff);
        PartProgram program = PartProgram.parse(program(text), mayStayOpen ? codes.withOpenContours() : codes);
        Workpiece workpiece = Workpiece.of(material, thickness);
        Optional<HeadSelection> selection = head.isHeadGiven()
                ? Optional.empty()
                : Optional.of(HeadChoice.of(selector(), program, workpiece, quality));
        PlanRequest request = new PlanRequest(
                title(),
                program,
                selection.map(this::chosen).orElseGet(head::jet),
                workpiece,
                quality,
                lagTolerance,
                MachineLimits.of(rapidSpeed, machineAcceleration),
                rapidSpeed);
        PartPlan plan = PartPlan.of(request, progress(program.size()));
        Shop where = new Shop(
                shop.rates(),
                shop.hasExamplePrices(),
                shop.piercing(),
                parts,
                Slats.of(slatPitch, slatThickness),
                shearStrength,
                selection.map(found -> found.explanation(ranking)));
        return new Planned(plan, JobFacts.of(plan, where));
    }

    /** A plan and its facts for the shop. */
    private record Planned(PartPlan plan, JobFacts job) {}

    private HeadSelector selector() {
        HeadInventory inventory =
                head.isMeshGiven() ? shop.inventory().withAbrasives(List.of(head.abrasive())) : shop.inventory();
        return HeadSelector.of(inventory, head.pressure(), shop.power())
                .withPrices(shop.rates())
                .withPierceSettings(shop.piercing());
    }

    private AbrasiveJet chosen(HeadSelection selection) {
        return head.atStandOff(selection.best(ranking).jet());
    }

    private String title() {
        String spaced = stem().replaceAll("[_-]+", " ").strip();
        return spaced.isEmpty() ? "Part" : spaced.substring(0, 1).toUpperCase(Locale.ROOT) + spaced.substring(1);
    }

    /** From Java 22 on, a console can be something other than a terminal; progress then reaches a log as well. */
    @SuppressWarnings("SystemConsoleNull")
    private Progress progress(int blocks) {
        if (blocks < LONG || System.console() == null) {
            return Progress.SILENT;
        }
        int[] printed = {-1};
        return (done, of) -> {
            int percent = (int) (100L * done / of);
            if (percent != printed[0]) {
                printed[0] = percent;
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
                if (caution.severity() != Caution.Severity.NOTICE) {
                    out.println(caution.severity().name().toLowerCase(Locale.ROOT) + ": " + caution.text());
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

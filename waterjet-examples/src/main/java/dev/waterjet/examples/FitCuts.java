package dev.waterjet.examples;

import dev.waterjet.calibrate.CalibratedFeed;
import dev.waterjet.calibrate.FeedLadder;
import dev.waterjet.calibrate.ShopFit;
import dev.waterjet.calibrate.TestCut;
import dev.waterjet.feed.MachinabilityFeed;
import dev.waterjet.material.Material;
import dev.waterjet.material.Materials;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.TextException;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Program that fits a feed model to test cuts. */
@Command(
        name = "fit",
        subcommands = FitWalls.class,
        description = {
            "Fit a feed model to the test cuts of a CSV file: parameters, standard errors and intervals.",
            "Columns: test (separation, interval, trial, depth or graded), thickness, feed, pressure, orifice, tube,"
                    + " abrasive_flow, each with its unit as thickness_mm or feed_mm_per_min; failed_feed of an interval,"
                    + " separated (yes or no) of a trial; optional index, mesh, tube_length, stand_off,"
                    + " discharge_coefficient, relative_deviation, reading_deviation, label, plate. Other columns are"
                    + " kept.",
            "fit walls fits kerf and lag models to widths, drag lines, arcs and corners.",
            "A file whose column material names several is fitted as a whole, with a factor common to the shop;"
                    + " --material is then that of --predict.",
            "Example: waterjet fit cuts.csv --material titanium --predict \"thickness=8 mm, pressure=360 MPa\""
        })
final class FitCuts extends Program {

    @Parameters(arity = "0..1", paramLabel = "<file>", description = "File of test cuts.")
    private Path file = Path.of("");

    @Option(
            names = "--material",
            converter = Typed.Catalogued.class,
            paramLabel = "<material>",
            description = "Material of the cuts. Default: mild-steel, only as the start of the search.")
    private Optional<Material> material = Optional.empty();

    @Option(
            names = "--model",
            paramLabel = "<model>",
            description = "Feed model: machinability, specific-energy, erosion, threshold or declination. Default:"
                    + " machinability.")
    private String model = "machinability";

    @Option(
            names = "--free",
            split = ",",
            paramLabel = "<exponent>",
            description = "Exponents of the machinability model to fit as well: pressure, orifice, abrasive-flow, tube,"
                    + " feed.")
    private List<String> freed = new ArrayList<>();

    @Option(
            names = "--robust",
            description =
                    "Fit with a heavy-tailed scatter (Student, 4 degrees of freedom), so that single wrong cuts lose"
                            + " their weight; it takes no --prior and no --group.")
    private boolean isRobust;

    @Option(
            names = "--high-breakdown",
            description =
                    "Fit so that a bad series of up to nearly half of the cuts is left out; measured cuts only, and it"
                            + " takes no --prior and no --group.")
    private boolean isHighBreakdown;

    @Option(
            names = "--prior",
            paramLabel = "<prior>",
            description =
                    "Prior: catalogue, for the machinability of --material, the scatter and the plates; scatter, for"
                            + " scatter and plates alone; or none. Default: catalogue if --material is given, else none.")
    private Optional<String> prior = Optional.empty();

    @Option(
            names = "--group",
            paramLabel = "<column>",
            description =
                    "Column whose values are plates, batches or days, which differ. Default: plate, if the file has"
                            + " it.")
    private Optional<String> group = Optional.empty();

    @Option(
            names = "--predict",
            paramLabel = "<setting>",
            description =
                    "Predict one more cut, such as \"thickness=8 mm, pressure=360 MPa, index=3\"; what is left out is"
                            + " that of the first cut.")
    private Optional<String> predicted = Optional.empty();

    @Option(
            names = "--compare",
            arity = "0..1",
            fallbackValue = FitReport.ALL,
            paramLabel = "<model>",
            description =
                    "Compare with another model of the same cuts, or with all that they can fit, by leaving out each"
                            + " cut in turn, or each of 4 and more plates.")
    private Optional<String> rival = Optional.empty();

    @Option(
            names = "--next",
            description =
                    "Rank ways to make one more cut by how far they narrow the feed rate of --predict, or of the first"
                            + " cut, for their cost; pressures too, if --free has it.")
    private boolean isNext;

    @Option(names = "--trial-cost", paramLabel = "<cost>", description = "Cost of a trial, in any unit. Default: 1.")
    private double trialCost = 1;

    @Option(
            names = "--plate-cost",
            paramLabel = "<cost>",
            description = "Cost of a new plate, in the same unit. Default: 0.")
    private double plateCost;

    @Option(
            names = "--ladder",
            arity = "0..1",
            fallbackValue = "0.1",
            paramLabel = "<step>",
            description =
                    "Order of trials that finds the separation feed rate of --predict, or of the first cut, on one"
                            + " plate with the fewest trials; step 0.1 for rungs of 10 %%. Without a file, by the"
                            + " published model: --predict then has thickness, pressure, orifice, tube and abrasive_flow.")
    private Optional<Double> ladder = Optional.empty();

    @Option(names = "--save", paramLabel = "<file>", description = "Save the calibration to a file (JSON).")
    private Optional<Path> save = Optional.empty();

    @Option(
            names = "--calibration",
            paramLabel = "<file>",
            description = "Read a saved calibration in place of test cuts, and check it by fitting again.")
    private Optional<Path> saved = Optional.empty();

    @Option(names = "--coverage", paramLabel = "<share>", description = "Probability of the intervals. Default: 0.95.")
    private double coverage = 0.95;

    @Option(names = "--svg", paramLabel = "<file>", description = "Draw the residuals to a file.")
    private Optional<Path> svg = Optional.empty();

    @Option(
            names = "--quantiles",
            paramLabel = "<file>",
            description = "Draw the quantiles of the residuals to a file.")
    private Optional<Path> quantiles = Optional.empty();

    @Option(
            names = "--profile",
            paramLabel = "<file>",
            description = "Draw the interval of the first parameter over its coverage to a file.")
    private Optional<Path> profile = Optional.empty();

    /** Stated material, else that of a column of the cuts, by its id. */
    private Optional<Material> stated(List<TestCut> cuts) {
        Materials known = materials();
        return material.or(() -> cuts.stream()
                .flatMap(cut -> Stream.ofNullable(cut.attributes().get("material")))
                .flatMap(name -> known.all().stream().filter(one -> one.id().equals(name)))
                .findFirst());
    }

    /** Material by its id; one that is not stated is only where the search starts. */
    private Material material(String id) {
        return materials().get(id.isEmpty() ? "mild-steel" : id);
    }

    private FitRequest request(List<TestCut> cuts) {
        String column = group.orElse(FitRequest.PLATE);
        long groups = distinct(cuts, column);
        if (group.isPresent() && groups == 0) {
            throw new TextException(file + " has no column " + column);
        }
        boolean isAlone = isRobust || isHighBreakdown;
        if (isAlone
                && (group.isPresent()
                        || prior.filter(p -> !p.equals(FitRequest.NONE)).isPresent())) {
            throw new TextException((isRobust ? "--robust" : "--high-breakdown")
                    + " takes no --prior and no --group: its scatter is for the cuts alone");
        }
        String chosen = prior.orElse(
                material.isPresent() && !model.equals("threshold") && !isAlone
                        ? FitRequest.CATALOGUE
                        : FitRequest.NONE);
        boolean isGrouped = !isAlone && groups > 0 && groups < cuts.size();
        return new FitRequest(
                model,
                freed,
                stated(cuts).map(Material::id).orElse(""),
                chosen,
                isGrouped ? column : "",
                isRobust,
                isHighBreakdown);
    }

    private static long distinct(List<TestCut> cuts, String column) {
        return cuts.stream()
                .map(cut -> cut.attributes().getOrDefault(column, "").strip())
                .filter(name -> !name.isEmpty())
                .distinct()
                .count();
    }

    private FitFile.Content content() {
        FitFile.Content content = saved.isPresent() ? read(saved.get()) : fittedToFile();
        if (content instanceof FitFile.OfMaterial fitted) {
            svg.ifPresent(target -> TextFiles.write(target, FitTables.residualChart(fitted.own())));
            quantiles.ifPresent(target -> TextFiles.write(target, FitCharts.quantiles(fitted.own())));
            profile.ifPresent(target ->
                    TextFiles.write(target, FitCharts.profile(fitted.own().fit())));
        } else if (isRobust
                || isHighBreakdown
                || isNext
                || ladder.isPresent()
                || rival.isPresent()
                || Stream.of(svg, quantiles, profile).anyMatch(Optional::isPresent)) {
            throw new TextException(
                    "a file of several materials takes --predict, --coverage, --material and --save; fit"
                            + " each material by itself for the other options");
        }
        return content;
    }

    private FitFile.Content read(Path known) {
        return FitFile.read(TextFiles.read(known), known.toString(), materials(), this::material);
    }

    private FitFile.Content fittedToFile() {
        if (file.toString().isEmpty()) {
            throw new TextException("name a file of test cuts, or a calibration by --calibration");
        }
        List<TestCut> cuts = TestCut.parse(TextFiles.read(file));
        if (cuts.isEmpty()) {
            throw new TextException(file + " contains no test cuts");
        }
        if (model.equals("machinability") && distinct(cuts, ShopFit.MATERIAL) > 1) {
            return ofShop(cuts);
        }
        FitRequest request = request(cuts);
        CalibratedFeed own =
                request.calibration(cuts, material(request.material())).fit(cuts);
        save.ifPresent(target -> TextFiles.write(target, FitFile.write(request, own)));
        return new FitFile.OfMaterial(request, own);
    }

    private FitFile.Content ofShop(List<TestCut> cuts) {
        boolean isOfPlates = group.orElse(FitRequest.PLATE).equals(FitRequest.PLATE);
        boolean isOfCatalogue = prior.orElse(FitRequest.CATALOGUE).equals(FitRequest.CATALOGUE);
        if (!freed.isEmpty() || !isOfPlates || !isOfCatalogue) {
            throw new TextException("a file of several materials has the prior of the catalogue, the column plate and"
                    + " fixed exponents; fit each material by itself for other ones");
        }
        ShopFit shop = ShopFit.of(cuts, materials());
        save.ifPresent(target -> TextFiles.write(target, FitFile.write(shop)));
        return new FitFile.OfShop(shop);
    }

    private FitReport report(FitFile.OfMaterial fitted) {
        return new FitReport(
                fitted.request(),
                fitted.own(),
                this::material,
                coverage,
                predicted,
                rival,
                isNext ? Optional.of(new FitReport.Costs(trialCost, plateCost)) : Optional.empty(),
                ladder);
    }

    /** Ladder for the first cuts, before there is a fit. */
    private boolean isFirstLadder() {
        return ladder.isPresent() && file.toString().isEmpty() && saved.isEmpty();
    }

    private Table firstLadder() {
        if (predicted.isEmpty() || material.isEmpty()) {
            throw new TextException("--ladder without a file of test cuts requires --material and --predict");
        }
        TestCut cut = CutSetting.parse(predicted.get());
        return FitTables.ladder(FeedLadder.of(
                MachinabilityFeed.published().feed(cut.jet(), Workpiece.of(material.get(), cut.thickness()), 1),
                ladder.orElseThrow()));
    }

    @Override
    protected Table table() {
        if (isFirstLadder()) {
            return firstLadder();
        }
        FitFile.Content content = content();
        return content instanceof FitFile.OfMaterial fitted
                ? report(fitted).parameters()
                : FitTables.shop(((FitFile.OfShop) content).fit(), coverage);
    }

    @Override
    protected void printCsv(PrintWriter out) throws IOException {
        if (isFirstLadder()) {
            firstLadder().writeCsv(out);
            return;
        }
        FitFile.Content content = content();
        if (content instanceof FitFile.OfMaterial fitted) {
            report(fitted).printCsv(out);
        } else if (content instanceof FitFile.OfShop shop) {
            new ShopReport(shop.fit(), coverage, predicted, material).printCsv(out);
        }
    }

    @Override
    protected void print(PrintWriter out) {
        if (isFirstLadder()) {
            out.print(firstLadder().text());
            return;
        }
        FitFile.Content content = content();
        if (content instanceof FitFile.OfMaterial fitted) {
            report(fitted).print(out);
        } else if (content instanceof FitFile.OfShop shop) {
            new ShopReport(shop.fit(), coverage, predicted, material).print(out);
        }
        svg.ifPresent(target -> out.println("\nDrawn to " + target));
    }
}

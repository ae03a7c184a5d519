package dev.waterjet.examples;

import dev.waterjet.calibrate.CalibratedFeed;
import dev.waterjet.calibrate.CutFit;
import dev.waterjet.calibrate.ModelComparison;
import dev.waterjet.calibrate.NextCut;
import dev.waterjet.calibrate.ShopFit;
import dev.waterjet.calibrate.TestCut;
import dev.waterjet.evidence.Caution;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.material.Material;
import dev.waterjet.material.Materials;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.TextException;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import javax.measure.quantity.Speed;
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

    /** With fewer plates those that are left do not show their spread. */
    private static final int MIN_PLATES = 4;

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
                            + " their weight; without prior and plates.")
    private boolean isRobust;

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
            paramLabel = "<model>",
            description =
                    "Compare with another model of the same cuts, by leaving out each cut in turn, or each of 4 and"
                            + " more plates.")
    private Optional<String> rival = Optional.empty();

    @Option(
            names = "--next",
            description =
                    "Rank pressures of one more cut by how far they narrow the feed rate of --predict, or of the first"
                            + " cut.")
    private boolean isNext;

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
        String column = group.orElse("plate");
        long groups = cuts.stream()
                .map(cut -> cut.attributes().getOrDefault(column, ""))
                .filter(name -> !name.isEmpty())
                .distinct()
                .count();
        if (group.isPresent() && groups == 0) {
            throw new TextException(file + " has no column " + column);
        }
        String chosen = prior.orElse(
                material.isPresent() && !model.equals("threshold") ? FitRequest.CATALOGUE : FitRequest.NONE);
        boolean isGrouped = !isRobust && groups > 0 && groups < cuts.size();
        return new FitRequest(
                model, freed, stated(cuts).map(Material::id).orElse(""), chosen, isGrouped ? column : "", isRobust);
    }

    private CalibratedFeed fitted() {
        CalibratedFeed own = saved.map(known -> FitFile.read(TextFiles.read(known), known.toString(), this::material))
                .orElseGet(this::fittedToFile);
        svg.ifPresent(target -> TextFiles.write(target, FitTables.residualChart(own)));
        return own;
    }

    private CalibratedFeed fittedToFile() {
        if (file.toString().isEmpty()) {
            throw new TextException("name a file of test cuts, or a calibration by --calibration");
        }
        List<TestCut> cuts = TestCut.parse(TextFiles.read(file));
        if (cuts.isEmpty()) {
            throw new TextException(file + " contains no test cuts");
        }
        FitRequest request = request(cuts);
        CalibratedFeed own =
                request.calibration(cuts, material(request.material())).fit(cuts);
        save.ifPresent(target -> TextFiles.write(target, FitFile.write(request, own)));
        return own;
    }

    /** Fit of a file whose column material names several; empty for any other. */
    private Optional<ShopFit> ofShop() {
        if (saved.isPresent() || file.toString().isEmpty() || !model.equals("machinability")) {
            return Optional.empty();
        }
        List<TestCut> cuts = TestCut.parse(TextFiles.read(file));
        long count = cuts.stream()
                .flatMap(cut -> Stream.ofNullable(cut.attributes().get(ShopFit.MATERIAL)))
                .filter(name -> !name.isBlank())
                .distinct()
                .count();
        if (count < 2) {
            return Optional.empty();
        }
        if (isRobust
                || isNext
                || rival.isPresent()
                || save.isPresent()
                || !freed.isEmpty()
                || group.isPresent()
                || prior.isPresent()) {
            throw new TextException("a file of several materials takes --predict, --coverage and --material only; fit"
                    + " each material by itself for the other options");
        }
        return Optional.of(ShopFit.of(cuts, materials()));
    }

    private Table prediction(ShopFit shop, boolean isForPrograms) {
        TestCut first = shop.cuts().get(0);
        TestCut next = CutSetting.parse(predicted.orElseThrow(), first);
        Material target = material.orElseGet(() -> shop.materials().get(0));
        Estimate<Speed> feed = shop.feed(next.jet(), Workpiece.of(target, next.thickness()), next.index());
        return isForPrograms
                ? FitTables.predictionRow(feed, coverage)
                : FitTables.prediction(feed, coverage).note("In " + target.name() + ".");
    }

    @Override
    protected Table table() {
        return FitTables.parameters(fitted().fit(), model, coverage);
    }

    @Override
    protected void printCsv(PrintWriter out) throws IOException {
        Optional<ShopFit> shop = ofShop();
        if (shop.isPresent()) {
            FitTables.shop(shop.get(), coverage).writeCsv(out);
            if (predicted.isPresent()) {
                out.println();
                prediction(shop.get(), true).writeCsv(out);
            }
            return;
        }
        CalibratedFeed own = fitted();
        FitTables.parameters(own.fit(), model, coverage).writeCsv(out);
        if (predicted.isPresent()) {
            out.println();
            FitTables.predictionRow(predicted(own), coverage).writeCsv(out);
        }
        if (rival.isPresent()) {
            out.println();
            comparison(own).writeCsv(out);
        }
        if (isNext) {
            out.println();
            next(own).writeCsv(out);
        }
    }

    private Table comparison(CalibratedFeed own) {
        String other = rival.orElseThrow();
        FitRequest request = request(own.cuts()).with(other);
        CalibratedFeed second =
                request.calibration(own.cuts(), material(request.material())).fit(own.cuts());
        boolean byPlates = request.group().equals("plate")
                && own.cuts().stream().map(TestCut::plate).distinct().count() >= MIN_PLATES;
        return FitTables.comparison(
                model,
                other,
                byPlates ? "plate" : "cut",
                byPlates ? ModelComparison.byPlates(own, second) : ModelComparison.of(own, second));
    }

    private TestCut target(CalibratedFeed own) {
        TestCut first = own.cuts().get(0);
        return predicted.map(setting -> CutSetting.parse(setting, first)).orElse(first);
    }

    private Table next(CalibratedFeed own) {
        TestCut target = target(own);
        double[] pressures = own.cuts().stream()
                .mapToDouble(cut -> Kind.PRESSURE.si(Kind.PRESSURE.of(cut.jet().pressureSi())))
                .sorted()
                .toArray();
        double lowest = pressures[0];
        double highest = pressures[pressures.length - 1];
        List<AbrasiveJet> jets = DoubleStream.of(0.8 * lowest, lowest, (lowest + highest) / 2, highest)
                .distinct()
                .mapToObj(pressure -> target.jet().withPressure(Kind.PRESSURE.of(pressure)))
                .toList();
        return FitTables.next(NextCut.rank(own, target.jet(), target.thickness(), jets));
    }

    private Estimate<Speed> predicted(CalibratedFeed own) {
        TestCut next = target(own);
        return own.feed(next.jet(), Workpiece.of(own.material(), next.thickness()), next.index());
    }

    @Override
    protected void print(PrintWriter out) {
        Optional<ShopFit> shop = ofShop();
        if (shop.isPresent()) {
            out.print(FitTables.shop(shop.get(), coverage).text());
            predicted.ifPresent(
                    setting -> out.print("\n" + prediction(shop.get(), false).text()));
            return;
        }
        CalibratedFeed own = fitted();
        CutFit fit = own.fit();
        out.print(FitTables.parameters(fit, model, coverage).text());
        out.println();
        out.println("Scatter of a cut about the fit: " + QuantityText.round(100 * own.scatter(), 3)
                + " % of the feed rate; " + QuantityText.round(fit.degreesOfFreedom(), 3) + " degrees of freedom; "
                + fit.method().label() + ".");
        if (fit.plateScatter() > 0) {
            out.println("Between plates " + QuantityText.round(100 * fit.plateScatter(), 3) + " %, within a plate "
                    + QuantityText.round(100 * fit.scatter(), 3) + " % of the depth; " + fit.plates() + " plates.");
        }
        List<String> kept = own.cuts().stream()
                .flatMap(cut -> cut.attributes().keySet().stream())
                .distinct()
                .toList();
        if (!kept.isEmpty()) {
            out.println("Columns kept: " + String.join(", ", kept) + ".");
        }
        predicted.ifPresent(setting ->
                out.print("\n" + FitTables.prediction(predicted(own), coverage).text()));
        rival.ifPresent(other -> out.print("\n" + comparison(own).text()));
        if (isNext) {
            out.print("\n" + next(own).note(NextSetting.text(own, target(own))).text());
        }
        IntStream.range(0, fit.names().size())
                .boxed()
                .flatMap(i -> IntStream.range(0, i).mapToObj(j ->
                        new String[] {fit.names().get(j), fit.names().get(i)}))
                .forEach(pair -> out.println("Correlation of " + pair[0] + " and " + pair[1] + ": "
                        + QuantityText.round(fit.correlation(pair[0], pair[1]), 3)));
        out.println();
        out.print(FitTables.cuts(own).text());
        for (Caution remark : own.remarks()) {
            out.println("Caution: " + remark.text() + ".");
        }
        svg.ifPresent(target -> out.println("\nDrawn to " + target));
    }
}

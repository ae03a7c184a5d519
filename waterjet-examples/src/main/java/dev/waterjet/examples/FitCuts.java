package dev.waterjet.examples;

import dev.waterjet.calibrate.CalibratedFeed;
import dev.waterjet.calibrate.Calibration;
import dev.waterjet.calibrate.CutFit;
import dev.waterjet.calibrate.CutPrior;
import dev.waterjet.calibrate.TestCut;
import dev.waterjet.evidence.Caution;
import dev.waterjet.feed.ErosionFeed;
import dev.waterjet.feed.FeedExponent;
import dev.waterjet.feed.MachinabilityFeed;
import dev.waterjet.material.Material;
import dev.waterjet.material.Materials;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Measures;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.TextException;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.IntStream;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Program that fits a feed model to test cuts. */
@Command(
        name = "fit",
        description = {
            "Fit a feed model to the test cuts of a CSV file: parameters, standard errors and intervals.",
            "Columns: test (separation, interval, trial, depth or graded), thickness, feed, pressure, orifice, tube,"
                + " abrasive_flow, each with its unit as thickness_mm or feed_mm_per_min; failed_feed of an interval,"
                + " separated (yes or no) of a trial; optional index, mesh, tube_length, stand_off,"
                + " discharge_coefficient, relative_deviation, reading_deviation, label, plate. Other columns are"
                + " kept.",
            "Example: waterjet fit cuts.csv --material titanium --predict \"thickness=8 mm, pressure=360 MPa\""
        })
final class FitCuts extends Program {

    /** By common practice, no source. */
    private static final double TAIL_FREEDOM = 4;

    @Parameters(paramLabel = "<file>", description = "File of test cuts.")
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
            description = "Prior: catalogue, for the machinability of --material, the scatter and the plates; or none."
                    + " Default: catalogue if --material is given, else none.")
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

    @Option(names = "--coverage", paramLabel = "<share>", description = "Probability of the intervals. Default: 0.95.")
    private double coverage = 0.95;

    @Option(names = "--svg", paramLabel = "<file>", description = "Draw the residuals to a file.")
    private Optional<Path> svg = Optional.empty();

    private Material material() {
        return material.orElseGet(() -> Materials.standard().get("mild-steel"));
    }

    private Calibration calibration(List<TestCut> cuts) {
        Calibration plain = ofModel(cuts);
        if (isRobust) {
            return plain.withStudentErrors(TAIL_FREEDOM);
        }
        String column = group.orElse("plate");
        long groups = cuts.stream()
                .map(cut -> cut.attributes().getOrDefault(column, ""))
                .filter(name -> !name.isEmpty())
                .distinct()
                .count();
        if (group.isPresent() && groups == 0) {
            throw new TextException(file + " has no column " + column);
        }
        Calibration grouped = groups > 0 && groups < cuts.size() ? plain.withGroups(column) : plain;
        return usesPrior() ? grouped.withPrior(CutPrior.catalogue(material())) : grouped;
    }

    private boolean usesPrior() {
        String chosen = prior.orElse(material.isPresent() && !model.equals("threshold") ? "catalogue" : "none");
        if (!chosen.equals("catalogue") && !chosen.equals("none")) {
            throw new TextException("unknown prior \"" + chosen + "\"; use catalogue or none");
        }
        return chosen.equals("catalogue");
    }

    private Calibration ofModel(List<TestCut> cuts) {
        if (!freed.isEmpty() && !model.equals("machinability")) {
            throw new TextException("--free requires the machinability model");
        }
        return switch (model) {
            case "machinability" ->
                Calibration.ofMachinability(
                        material(),
                        MachinabilityFeed.published(),
                        freed.stream().map(FitCuts::exponent).toArray(FeedExponent[]::new));
            case "specific-energy" -> Calibration.ofSpecificEnergy(material());
            case "erosion" -> Calibration.ofErosion(material(), ErosionFeed.standard());
            case "declination" -> Calibration.ofDeclination(material());
            case "threshold" ->
                Calibration.ofThreshold(material(), cuts.get(0).jet(), Measures.millimetresPerMinute(1));
            default ->
                throw new TextException("unknown model \"" + model
                        + "\"; use one of machinability, specific-energy, erosion, threshold, declination");
        };
    }

    private static FeedExponent exponent(String name) {
        return Arrays.stream(FeedExponent.values())
                .filter(exponent -> exponent.name()
                        .toLowerCase(Locale.ROOT)
                        .replace('_', '-')
                        .equals(name))
                .findFirst()
                .orElseThrow(() -> new TextException(
                        "unknown exponent \"" + name + "\"; use pressure, orifice, abrasive-flow, tube or feed"));
    }

    private CalibratedFeed fitted() {
        List<TestCut> cuts = TestCut.parse(TextFiles.read(file));
        if (cuts.isEmpty()) {
            throw new TextException(file + " contains no test cuts");
        }
        CalibratedFeed own = calibration(cuts).fit(cuts);
        svg.ifPresent(target -> TextFiles.write(target, FitTables.residualChart(own)));
        return own;
    }

    @Override
    protected Table table() {
        return FitTables.parameters(fitted().fit(), model, coverage);
    }

    @Override
    protected void printCsv(PrintWriter out) throws IOException {
        CalibratedFeed own = fitted();
        FitTables.parameters(own.fit(), model, coverage).writeCsv(out);
        if (predicted.isPresent()) {
            out.println();
            prediction(own).writeCsv(out);
        }
    }

    private Table prediction(CalibratedFeed own) {
        TestCut next = CutSetting.parse(predicted.orElseThrow(), own.cuts().get(0));
        return FitTables.prediction(
                own.feed(next.jet(), Workpiece.of(own.material(), next.thickness()), next.index()), coverage);
    }

    @Override
    protected void print(PrintWriter out) {
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
        predicted.ifPresent(setting -> out.print("\n" + prediction(own).text()));
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

package dev.waterjet.examples;

import dev.waterjet.calibrate.CalibratedFeed;
import dev.waterjet.calibrate.Calibration;
import dev.waterjet.calibrate.TestCut;
import dev.waterjet.evidence.Caution;
import dev.waterjet.examples.chart.Chart;
import dev.waterjet.feed.ErosionFeed;
import dev.waterjet.feed.FeedExponent;
import dev.waterjet.feed.MachinabilityFeed;
import dev.waterjet.fit.Fit;
import dev.waterjet.material.Material;
import dev.waterjet.material.Materials;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Measures;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.TextException;
import dev.waterjet.measure.Units;
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
            "Columns: test (separation, depth or graded), thickness, feed, pressure, orifice, tube, abrasive_flow, each"
                    + " with its unit as thickness_mm or feed_mm_per_min; optional index, mesh, tube_length,"
                    + " discharge_coefficient, relative_deviation, label.",
            "Example: waterjet fit cuts.csv --material titanium --free pressure --svg residuals.svg"
        })
final class FitCuts extends Program {

    @Parameters(paramLabel = "<file>", description = "File of test cuts.")
    private Path file = Path.of("");

    @Option(
            names = "--material",
            converter = Typed.Catalogued.class,
            paramLabel = "<material>",
            description = "Material with whose machinability the search starts. Default: mild-steel.")
    private Material material = Materials.standard().get("mild-steel");

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

    @Option(names = "--robust", description = "Fit with robust weights, so that outliers lose their weight.")
    private boolean isRobust;

    @Option(names = "--coverage", paramLabel = "<share>", description = "Probability of the intervals. Default: 0.95.")
    private double coverage = 0.95;

    @Option(names = "--svg", paramLabel = "<file>", description = "Draw the residuals to a file.")
    private Optional<Path> svg = Optional.empty();

    private Calibration calibration(List<TestCut> cuts) {
        if (!freed.isEmpty() && !model.equals("machinability")) {
            throw new TextException("--free requires the machinability model");
        }
        return switch (model) {
            case "machinability" ->
                Calibration.ofMachinability(
                        material,
                        MachinabilityFeed.published(),
                        freed.stream().map(FitCuts::exponent).toArray(FeedExponent[]::new));
            case "specific-energy" -> Calibration.ofSpecificEnergy(material);
            case "erosion" -> Calibration.ofErosion(material, ErosionFeed.standard());
            case "declination" -> Calibration.ofDeclination(material);
            case "threshold" -> Calibration.ofThreshold(material, cuts.get(0).jet(), Measures.millimetresPerMinute(1));
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
        Calibration plain = calibration(cuts);
        CalibratedFeed own = (isRobust ? plain.withRobustWeights() : plain).fit(cuts);
        svg.ifPresent(target -> TextFiles.write(target, residualChart(own)));
        return own;
    }

    @Override
    protected Table table() {
        return parameters(fitted().fit());
    }

    private Table parameters(Fit fit) {
        Table table = Table.of("Fit of the " + model + " model to " + fit.observations() + " test cuts")
                .words("parameter")
                .number("value", 5)
                .number("standard error", 2)
                .number("lower", 5)
                .number("upper", 5);
        for (String name : fit.names()) {
            table.row(
                    name,
                    fit.value(name),
                    fit.standardError(name),
                    fit.lower(name, coverage),
                    fit.upper(name, coverage));
        }
        return table.note("Lower and upper: " + QuantityText.round(100 * coverage, 4) + " % interval.");
    }

    private static Table cuts(CalibratedFeed own) {
        Table table = Table.of("")
                .words("cut")
                .words("test")
                .column("thickness", Kind.LENGTH, Units.MILLIMETRE, 4)
                .number("index", 3)
                .column("feed", Kind.SPEED, Units.MILLIMETRE_PER_MINUTE, 4)
                .number("residual", 2)
                .number("studentized", 2)
                .number("leverage", 2)
                .number("weight", 2);
        double[] residuals = own.fit().residuals();
        double[] studentized = own.fit().studentizedResiduals();
        double[] leverages = own.fit().leverages();
        double[] weights = own.fit().weights();
        for (int i = 0; i < residuals.length; i++) {
            TestCut cut = own.cuts().get(i);
            table.row(
                    cut.label().isEmpty() ? String.valueOf(i + 1) : cut.label(),
                    cut.test().text(),
                    Kind.LENGTH.si(cut.thickness()),
                    cut.index(),
                    Kind.SPEED.si(cut.feed()),
                    residuals[i],
                    studentized[i],
                    leverages[i],
                    weights[i]);
        }
        return table.note("residual: logarithm of the measured over the fitted value; 0.1 is about 10 %");
    }

    private static String residualChart(CalibratedFeed own) {
        double[] fitted = own.cuts().stream()
                .mapToDouble(cut -> 1000 * cut.index() * Kind.LENGTH.si(cut.thickness()))
                .toArray();
        double minimum = Arrays.stream(fitted).min().orElse(0);
        double maximum = Arrays.stream(fitted).max().orElse(1);
        double[] ends = {minimum, maximum};
        double band = 200 * own.scatter();
        double[] percent =
                Arrays.stream(own.fit().residuals()).map(r -> 100 * r).toArray();
        return Chart.of(
                        "Residuals of the fit",
                        "Residual of each test cut in percent over the depth that it separates.")
                .x("thickness times index [mm]")
                .y("measured over fitted [%]")
                .line("fit", ends, new double[] {0, 0})
                .line("two standard deviations above", ends, new double[] {band, band})
                .line("two below", ends, new double[] {-band, -band})
                .points("test cuts", fitted, percent)
                .svg(820, 460);
    }

    @Override
    protected void print(PrintWriter out) {
        CalibratedFeed own = fitted();
        Fit fit = own.fit();
        out.print(parameters(fit).text());
        out.println();
        out.println("Scatter of a cut about the fit: " + QuantityText.round(100 * own.scatter(), 3)
                + " % of the feed rate; " + fit.degreesOfFreedom() + " degrees of freedom.");
        IntStream.range(0, fit.names().size())
                .boxed()
                .flatMap(i -> IntStream.range(0, i).mapToObj(j ->
                        new String[] {fit.names().get(j), fit.names().get(i)}))
                .forEach(pair -> out.println("Correlation of " + pair[0] + " and " + pair[1] + ": "
                        + QuantityText.round(fit.correlation(pair[0], pair[1]), 3)));
        out.println();
        out.print(cuts(own).text());
        for (Caution remark : own.remarks()) {
            out.println("Caution: " + remark.text() + ".");
        }
        svg.ifPresent(target -> out.println("\nDrawn to " + target));
    }
}

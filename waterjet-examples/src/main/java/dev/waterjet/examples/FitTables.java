package dev.waterjet.examples;

import dev.waterjet.calibrate.CalibratedFeed;
import dev.waterjet.calibrate.CutFit;
import dev.waterjet.calibrate.FeedLadder;
import dev.waterjet.calibrate.NextCut;
import dev.waterjet.calibrate.ShopFit;
import dev.waterjet.calibrate.TestCut;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.examples.chart.Chart;
import dev.waterjet.material.Material;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Units;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Speed;

/** Tables and picture of a fit to test cuts. */
final class FitTables {

    private FitTables() {}

    static Table parameters(CutFit fit, String model, double coverage) {
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

    /** Parameters of a fit to several materials. */
    static Table shop(ShopFit shop, double coverage) {
        Table table = Table.of(
                        "Fit of the machinability model to " + shop.cuts().size() + " test cuts of "
                                + shop.materials().size() + " materials")
                .words("parameter")
                .number("value", 5)
                .number("standard error", 2)
                .number("lower", 5)
                .number("upper", 5);
        row("shop factor", shop.factor(), coverage, table);
        for (Material material : shop.materials()) {
            row("machinability of " + material.id(), shop.machinability(material), coverage, table);
        }
        return table.note(
                "Shop factor: machinability over that of the catalogue, common to all materials. Scatter of a cut "
                        + QuantityText.round(100 * shop.scatter(), 3) + " % of the feed rate.");
    }

    private static void row(String name, Estimate<Dimensionless> number, double coverage, Table into) {
        into.row(
                name,
                number.si(),
                number.standardUncertaintySi(),
                Kind.RATIO.si(number.lower(coverage)),
                Kind.RATIO.si(number.upper(coverage)));
    }

    static Table cuts(CalibratedFeed own) {
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

    static String residualChart(CalibratedFeed own) {
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

    static Table prediction(Estimate<Speed> feed, double coverage) {
        return Table.of("One more cut, on a new plate")
                .words("prediction")
                .column("feed", Kind.SPEED, Units.MILLIMETRE_PER_MINUTE, 4)
                .column("standard uncertainty", Kind.SPEED, Units.MILLIMETRE_PER_MINUTE, 2)
                .column("lower", Kind.SPEED, Units.MILLIMETRE_PER_MINUTE, 4)
                .column("upper", Kind.SPEED, Units.MILLIMETRE_PER_MINUTE, 4)
                .number("degrees of freedom", 3)
                .row(
                        "prediction",
                        feed.si(),
                        feed.standardUncertaintySi(),
                        Kind.SPEED.si(feed.lower(coverage)),
                        Kind.SPEED.si(feed.upper(coverage)),
                        feed.degreesOfFreedom());
    }

    /** The same for programs: the columns of the interval have the unit of the feed rate. */
    static Table predictionRow(Estimate<Speed> feed, double coverage) {
        return Table.of("")
                .words("prediction")
                .column("feed", Kind.SPEED, Units.MILLIMETRE_PER_MINUTE, 4)
                .number("standard uncertainty", 2)
                .number("lower", 4)
                .number("upper", 4)
                .number("degrees of freedom", 3)
                .row(
                        "prediction",
                        feed.si(),
                        feed.standardUncertaintySi(),
                        Kind.SPEED.si(feed.lower(coverage)),
                        Kind.SPEED.si(feed.upper(coverage)),
                        feed.degreesOfFreedom());
    }

    static Table next(List<NextCut> ranked) {
        Table table = Table.of("One more cut: how far it would narrow the feed rate that matters")
                .words("next")
                .words("test")
                .words("plate")
                .column("gauge pressure", Kind.PRESSURE, Units.MEGAPASCAL, 4)
                .column("thickness", Kind.LENGTH, Units.MILLIMETRE, 4)
                .column("trial feed", Kind.SPEED, Units.MILLIMETRE_PER_MINUTE, 4)
                .number("step", 2)
                .number("narrowing", 2)
                .number("cost", 3)
                .number("narrowing per cost", 2);
        for (NextCut cut : ranked) {
            table.row(
                    "next",
                    cut.way().test().text(),
                    cut.way().plate().isEmpty() ? "new" : cut.way().plate(),
                    cut.jet().pressureSi(),
                    Kind.LENGTH.si(cut.thickness()),
                    Kind.SPEED.si(cut.trialFeed()),
                    cut.way().step(),
                    cut.narrowing(),
                    cut.way().cost(),
                    cut.narrowingPerCost());
        }
        return table.note("Trial feed: separates with even chances, where a yes or no says most. Narrowing below 0.02:"
                        + " stop.")
                .note("Cost: trials of a cut, with the expected number on a ladder, and its plate; see --trial-cost and"
                        + " --plate-cost.");
    }

    static Table ladder(FeedLadder ladder) {
        Table table = Table.of("Trials on one plate that find its separation feed rate within a step of "
                        + QuantityText.round(100 * ladder.step(), 3) + " %")
                .words("ladder")
                .number("trial", 3)
                .column("feed", Kind.SPEED, Units.MILLIMETRE_PER_MINUTE, 4)
                .column("separated", Kind.SPEED, Units.MILLIMETRE_PER_MINUTE, 4)
                .column("failed", Kind.SPEED, Units.MILLIMETRE_PER_MINUTE, 4)
                .number("probability", 2);
        for (FeedLadder.Trial trial : ladder.trials()) {
            table.row(
                    "ladder",
                    trial.number(),
                    Kind.SPEED.si(trial.feed()),
                    si(trial.separated()),
                    si(trial.failed()),
                    trial.probability());
        }
        return table.note("Start with trial 1; the next one is that whose separated and failed feed rates are those"
                        + " found so far. " + QuantityText.round(ladder.expectedTrials(), 2) + " trials are expected, "
                        + ladder.mostTrials() + " at most; climbing the rungs from below takes "
                        + QuantityText.round(ladder.climbingTrials(), 2) + ".")
                .note("Record an interval: feed is the fastest that separated, failed_feed the slowest that did not.");
    }

    private static OptionalDouble si(Optional<Quantity<Speed>> feed) {
        return feed.map(known -> OptionalDouble.of(Kind.SPEED.si(known))).orElseGet(OptionalDouble::empty);
    }
}

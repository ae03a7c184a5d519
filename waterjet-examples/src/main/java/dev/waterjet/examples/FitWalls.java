package dev.waterjet.examples;

import dev.waterjet.calibrate.ArcMeasurement;
import dev.waterjet.calibrate.FittedModel;
import dev.waterjet.calibrate.KerfMeasurement;
import dev.waterjet.calibrate.LagMeasurement;
import dev.waterjet.fit.Fit;
import dev.waterjet.kerf.KerfModel;
import dev.waterjet.kerf.LagGeometry;
import dev.waterjet.kerf.LagModel;
import dev.waterjet.material.Material;
import dev.waterjet.material.Materials;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Units;
import dev.waterjet.simulate.CornerMeasurement;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Program that fits kerf and lag models to measured cuts. */
@Command(
        name = "walls",
        description = {
            "Fit the kerf model and the lag model to measured kerf widths, drag lines, arcs and corners of a CSV file.",
            "Columns: reading (width, lag, arc or corner), thickness, feed, value, each with its unit as thickness_mm;"
                    + " depth of a width or lag; line, the name of a drag line; radius of the tool path of an arc; turn of"
                    + " a corner, and corner_feed with zone where it was slowed; optional stand_off.",
            "value: the width of the kerf; the lag behind the entry; the radius of the bottom edge less that of the"
                    + " top edge, less the taper; the largest deviation of the bottom edge near a re-entrant corner, less"
                    + " that of its straight edge, below 0 where gouged.",
            "Separation depths follow from the feed model: calibrate it first.",
            "Example: waterjet fit walls walls.csv --material titanium --tube \"0.76 mm\""
        })
final class FitWalls extends Program {

    /** Standard uncertainties by which two coefficients of the lag have to differ to disagree. */
    private static final double DISAGREE = 2;

    @Parameters(paramLabel = "<file>", description = "File of readings.")
    private Path file = Path.of("");

    @Option(
            names = "--material",
            converter = Typed.Catalogued.class,
            paramLabel = "<material>",
            description = "Material of the cuts. Default: mild-steel.")
    private Material material = Materials.standard().get("mild-steel");

    @Mixin
    private final HeadOptions head = new HeadOptions();

    @Mixin
    private final ModelOption model = new ModelOption();

    @Mixin
    private final CalibrationOptions calibration = new CalibrationOptions();

    @Option(names = "--coverage", paramLabel = "<share>", description = "Probability of the intervals. Default: 0.95.")
    private double coverage = 0.95;

    /** Coefficients of the lag, each from its readings. */
    private final List<LagModel> lags = new ArrayList<>();

    @Override
    protected Table table() {
        CalibrationOptions.Choice choice = calibration.choose(material, model.model());
        WallReadings readings = WallReadings.parse(
                file.toString(), TextFiles.read(file), head.jet(), choice.material(), choice.model());
        Table table = Table.of("Fit of kerf and lag models to " + file.getFileName())
                .words("readings")
                .number("count", 4)
                .words("parameter")
                .number("value", 4)
                .number("standard error", 2)
                .number("lower", 4)
                .number("upper", 4)
                .column("scatter", Kind.LENGTH, Units.MILLIMETRE, 2);
        KerfModel kerf = kerf(readings, table);
        Optional<LagGeometry> geometry = lag(readings, kerf, table);
        return finished(table, readings.widths().isEmpty() ? Optional.empty() : Optional.of(kerf), geometry);
    }

    private KerfModel kerf(WallReadings readings, Table table) {
        if (readings.widths().isEmpty()) {
            return KerfModel.standard();
        }
        FittedModel<KerfModel> fitted = KerfMeasurement.fit(readings.widths());
        rows("width", fitted.fit(), table);
        return fitted.model();
    }

    private Optional<LagGeometry> lag(WallReadings readings, KerfModel kerf, Table table) {
        Optional<LagGeometry> geometry = Optional.empty();
        if (!readings.lines().isEmpty()) {
            lag("lag", LagMeasurement.fit(readings.lines()), table);
        }
        if (!readings.arcs().isEmpty()) {
            geometry = Optional.of(result("arc", ArcMeasurement.fit(readings.arcs()), table));
        }
        if (!readings.corners().isEmpty()) {
            LagGeometry atCorners = result("corner", CornerMeasurement.fit(readings.corners(), kerf), table);
            if (geometry.isPresent() && geometry.get() != atCorners) {
                table.note("Arcs lag " + geometry.get().label() + ", corners " + atCorners.label()
                        + ": no one geometric model fits both.");
            }
            geometry = Optional.of(atCorners);
        }
        return geometry;
    }

    private LagGeometry result(String reading, ArcMeasurement.Result result, Table table) {
        lag(reading, result.lag(), table);
        return result.geometry();
    }

    private void lag(String reading, FittedModel<LagModel> fitted, Table table) {
        rows(reading, fitted.fit(), table);
        lags.add(fitted.model());
    }

    private void rows(String reading, Fit fit, Table table) {
        for (String name : fit.names()) {
            table.row(
                    reading,
                    fit.observations(),
                    name,
                    fit.value(name),
                    fit.standardError(name),
                    fit.lower(name, coverage),
                    fit.upper(name, coverage),
                    // residuals of several drag lines are logarithms
                    reading.equals("lag") ? OptionalDouble.empty() : OptionalDouble.of(fit.residualDeviation()));
        }
    }

    private Table finished(Table table, Optional<KerfModel> kerf, Optional<LagGeometry> geometry) {
        StringBuilder options = new StringBuilder();
        kerf.ifPresent(model -> options.append(" --dose-spread ")
                .append(QuantityText.round(model.doseRatio(), 4))
                .append(" --half-angle \"")
                .append(QuantityText.round(Units.fromSi(Kind.ANGLE.si(model.halfAngle()), Units.DEGREE), 4))
                .append(" deg\""));
        if (!lags.isEmpty()) {
            options.append(" --lag-coefficient ").append(QuantityText.round(mean(), 4));
        }
        geometry.ifPresent(
                one -> options.append(" --lag-geometry ").append(one.name().toLowerCase(java.util.Locale.ROOT)));
        if (doLagsDisagree()) {
            table.note(
                    "The coefficients of the lag differ by more than their uncertainties: one kind of readings does not"
                            + " fit the model.");
        }
        return table.note("Lower and upper: " + QuantityText.round(100 * coverage, 4)
                        + " % interval. Spread of the dose in exit bores, slope as a tangent.")
                .note("Use in predict, plan and kerf:" + options
                        + geometry.map(one -> "; in predict --lag-geometry "
                                        + one.name().toLowerCase(java.util.Locale.ROOT))
                                .orElse(""));
    }

    /** Mean of the logarithms, each weighted with its uncertainty. */
    private double mean() {
        double sum = 0;
        double weights = 0;
        for (LagModel lag : lags) {
            double weight = 1 / Math.max(1e-12, lag.relativeUncertainty() * lag.relativeUncertainty());
            sum += weight * Math.log(lag.coefficient());
            weights += weight;
        }
        return Math.exp(sum / weights);
    }

    private boolean doLagsDisagree() {
        for (LagModel one : lags) {
            for (LagModel other : lags) {
                double apart = Math.abs(Math.log(one.coefficient() / other.coefficient()));
                if (apart > DISAGREE * Math.hypot(one.relativeUncertainty(), other.relativeUncertainty())) {
                    return true;
                }
            }
        }
        return false;
    }
}

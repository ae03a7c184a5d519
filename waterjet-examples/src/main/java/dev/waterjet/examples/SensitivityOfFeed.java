package dev.waterjet.examples;

import dev.waterjet.feed.CutConditions;
import dev.waterjet.feed.FeedModel;
import dev.waterjet.hydraulics.Orifice;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.jet.FocusingTube;
import dev.waterjet.material.Material;
import dev.waterjet.material.Materials;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Units;
import dev.waterjet.uncertainty.Distribution;
import dev.waterjet.uncertainty.Measurand;
import dev.waterjet.uncertainty.MonteCarlo;
import dev.waterjet.uncertainty.MonteCarloResult;
import dev.waterjet.uncertainty.SobolIndices;
import dev.waterjet.uncertainty.SobolStudy;
import dev.waterjet.uncertainty.UncertainInputs;
import dev.waterjet.uncertainty.UncertaintyBudget;
import java.io.PrintWriter;
import java.util.Locale;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Length;
import picocli.CommandLine.Command;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Program that prints the contribution of each input to the uncertainty of a feed rate. */
@Command(
        name = "sensitivity",
        description = {
            "Print the contribution of each input to the uncertainty of a feed rate: first order, and by Monte Carlo.",
            "Spreads are relative standard uncertainties, such as \"2 %%\"; each input has a log-normal distribution.",
            "Example: waterjet sensitivity --material titanium --thickness \"8 mm\" --index 4 --tube-spread \"6 %%\""
        })
final class SensitivityOfFeed extends Program {

    @Mixin
    private final HeadOptions head = new HeadOptions();

    @Mixin
    private final CalibrationOptions calibration = new CalibrationOptions();

    @Mixin
    private final ModelOption model = new ModelOption();

    @Option(
            names = "--material",
            converter = Typed.Catalogued.class,
            paramLabel = "<material>",
            description = "Material of the catalogue, by id or a part of it. Default: mild-steel.")
    private Material stated = Materials.standard().get("mild-steel");

    @Mixin
    private final StackOptions stack = new StackOptions();

    @Option(
            names = "--thickness",
            converter = Typed.Length.class,
            paramLabel = "<length>",
            description = "Thickness of the workpiece. Default: 10 mm.")
    private Quantity<Length> thickness = Kind.LENGTH.parse("10 mm");

    @Option(names = "--index", paramLabel = "<index>", description = "Quality index, 1 or more. Default: 3.")
    private double index = 3;

    @Option(
            names = "--pressure-spread",
            converter = Share.class,
            paramLabel = "<share>",
            description = "Spread of the pressure. Default: 2 %%.")
    private Quantity<Dimensionless> pressureSpread = Kind.RATIO.parse("2 %");

    @Option(
            names = "--orifice-spread",
            converter = Share.class,
            paramLabel = "<share>",
            description = "Spread of the orifice bore. Default: 2 %%.")
    private Quantity<Dimensionless> orificeSpread = Kind.RATIO.parse("2 %");

    @Option(
            names = "--tube-spread",
            converter = Share.class,
            paramLabel = "<share>",
            description = "Spread of the focusing-tube bore, which grows by wear. Default: 5 %%.")
    private Quantity<Dimensionless> tubeSpread = Kind.RATIO.parse("5 %");

    @Option(
            names = "--abrasive-flow-spread",
            converter = Share.class,
            paramLabel = "<share>",
            description = "Spread of the abrasive flow rate. Default: 5 %%.")
    private Quantity<Dimensionless> flowSpread = Kind.RATIO.parse("5 %");

    @Option(
            names = "--thickness-spread",
            converter = Share.class,
            paramLabel = "<share>",
            description = "Spread of the thickness. Default: 1 %%.")
    private Quantity<Dimensionless> thicknessSpread = Kind.RATIO.parse("1 %");

    @Option(names = "--trials", paramLabel = "<count>", description = "Number of Monte Carlo trials. Default: 65536.")
    private int trials = 65_536;

    @Option(
            names = "--seed",
            paramLabel = "<number>",
            description = "Seed; the same seed gives the same digits. Default: 1.")
    private long seed = 1;

    @Option(
            names = "--threads",
            paramLabel = "<count>",
            description = "Number of threads; it changes no digit. Default: one per processor.")
    private int threads = Runtime.getRuntime().availableProcessors();

    @Option(names = "--progress", description = "Print the progress of the study on the error stream.")
    private boolean printsProgress;

    /** A share, such as {@code "2 %"} or {@code 0.02}. */
    static final class Share implements ITypeConverter<Quantity<Dimensionless>> {
        @Override
        public Quantity<Dimensionless> convert(String text) {
            return Kind.RATIO.parse(text);
        }
    }

    private static final String MATERIAL_AND_MODEL = "material and model";

    private UncertainInputs inputs(FeedModel feedModel, Material material, AbrasiveJet jet) {
        return UncertainInputs.none()
                .with("pressure", spread(jet.water().pressureSi(), pressureSpread))
                .with("orifice", spread(jet.head().orifice().boreSi(), orificeSpread))
                .with("tube", spread(jet.head().tube().boreSi(), tubeSpread))
                .with("abrasive flow", spread(jet.abrasiveFlowSi(), flowSpread))
                .with("thickness", spread(Kind.LENGTH.si(thickness), thicknessSpread))
                .with(MATERIAL_AND_MODEL, Distribution.logNormal(1, feedModel.relativeUncertainty(material)));
    }

    private static Distribution spread(double si, Quantity<Dimensionless> share) {
        return Distribution.logNormal(si, Kind.RATIO.si(share));
    }

    private static Measurand feed(FeedModel feedModel, AbrasiveJet jet, Material material, double index) {
        return in -> feedModel.feedSi(drawn(jet, in), material, in[4], index) * in[5];
    }

    /** The jet with pressure, orifice bore, tube bore and abrasive flow rate as drawn. */
    private static AbrasiveJet drawn(AbrasiveJet jet, double[] in) {
        Orifice orifice = jet.head().orifice().withBore(Kind.LENGTH.of(in[1]));
        FocusingTube tube =
                FocusingTube.of(Kind.LENGTH.of(in[2]), jet.head().tube().length());
        return jet.withHead(jet.head().withOrifice(orifice).withTube(tube))
                .withPressure(Kind.PRESSURE.of(in[0]))
                .withAbrasiveFlow(Kind.MASS_FLOW.of(in[3]));
    }

    @Override
    protected Table table() {
        CalibrationOptions.Choice choice = calibration.choose(stated, model.model());
        AbrasiveJet jet = head.jet();
        Workpiece workpiece = stack.workpiece(choice.material(), thickness);
        thickness = workpiece.thickness();
        FeedModel feedModel = CutConditions.of(jet, workpiece, choice.model()).feedModel();
        Material material = workpiece.material();
        feedModel.feed(jet, workpiece, index);
        UncertainInputs inputs = inputs(feedModel, material, jet);
        Measurand feed = feed(feedModel, jet, material, index);
        UncertaintyBudget budget = UncertaintyBudget.of(feed, inputs);
        SobolIndices shares = SobolStudy.of(feed, inputs)
                .withTrials(trials)
                .withSeed(seed)
                .withThreads(threads)
                .withProgress(this::printProgress)
                .run();
        MonteCarloResult drawn = MonteCarlo.of(feed, inputs)
                .withTrials(trials)
                .withSeed(seed)
                .withThreads(threads)
                .run();
        Table table = Table.of("Uncertainty of the feed rate: " + material.name() + ", "
                        + QuantityText.print(Kind.LENGTH, thickness, Units.MILLIMETRE, 4) + ", index "
                        + QuantityText.round(index, 3))
                .words("input")
                .number("relative spread", 2)
                .column("contribution", Kind.SPEED, Units.MILLIMETRE_PER_MINUTE, 3)
                .number("first order share", 3)
                .number("standard error", 1)
                .number("total share", 3);
        for (int i = 0; i < inputs.size(); i++) {
            String name = inputs.names().get(i);
            table.row(
                    name,
                    inputs.distribution(i).standardUncertainty()
                            / inputs.distribution(i).value(),
                    budget.contribution(name),
                    shares.firstOrder(name),
                    shares.standardError(name),
                    shares.total(name));
        }
        return table.note("Feed rate " + text(budget.value()) + " ± " + text(budget.standardUncertainty())
                        + " by the law of propagation (JCGM 100).")
                .note("Monte Carlo of " + drawn.trials() + " trials (JCGM 101): " + text(drawn.mean()) + " ± "
                        + text(drawn.standardUncertainty()) + ", 95 % interval " + text(drawn.lower(0.95)) + " to "
                        + text(drawn.upper(0.95)) + ".");
    }

    private void printProgress(double share) {
        if (printsProgress) {
            errors().printf(Locale.ROOT, "%.0f %% of the trials%n", 100 * share);
            errors().flush();
        }
    }

    private static String text(double feedMPerS) {
        return QuantityText.print(Kind.SPEED, Kind.SPEED.of(feedMPerS), Units.MILLIMETRE_PER_MINUTE, 4);
    }

    @Override
    protected void print(PrintWriter out) {
        out.print(table().text());
    }
}

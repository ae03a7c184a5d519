package dev.waterjet.examples;

import dev.waterjet.evidence.Evidence;
import dev.waterjet.evidence.EvidenceGrade;
import dev.waterjet.evidence.Source;
import dev.waterjet.kerf.KerfModel;
import dev.waterjet.kerf.LagModel;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Angle;
import picocli.CommandLine.Option;

/** Options of the kerf model and the lag model; mixed into every program that predicts walls. */
final class KerfOptions {

    private static final Evidence STATED = Evidence.of(EvidenceGrade.ASSUMED, Source.of("options of the program"))
            .withNote("Stated by the user; relative uncertainties are those of the standard models.");

    @Option(
            names = "--dose-spread",
            paramLabel = "<ratio>",
            description = "Spread of the dose over the exit bore, as fit walls prints it. Default: 0.2518.")
    private Optional<Double> doseSpread = Optional.empty();

    @Option(
            names = "--half-angle",
            converter = Typed.Angle.class,
            paramLabel = "<angle>",
            description = "Half-angle of the jet, as fit walls prints it. Default: 1.38 deg.")
    private Optional<Quantity<Angle>> halfAngle = Optional.empty();

    @Option(
            names = "--lag-coefficient",
            paramLabel = "<ratio>",
            description = "Lag at the depth that just separates over that depth, as fit walls prints it. Default:"
                    + " 0.2576.")
    private Optional<Double> lagCoefficient = Optional.empty();

    /** {@return the standard models with the numbers that are given} */
    KerfModel model() {
        KerfModel model = KerfModel.standard();
        if (doseSpread.isPresent() || halfAngle.isPresent()) {
            model = model.withDoseSpread(doseSpread.orElse(model.doseRatio()), model.doseRelativeUncertainty(), STATED)
                    .withHalfAngle(halfAngle.orElse(model.halfAngle()), model.angleRelativeUncertainty(), STATED);
        }
        LagModel lag = model.lagModel();
        return lagCoefficient.isPresent()
                ? model.withLag(LagModel.of(lagCoefficient.get(), lag.relativeUncertainty(), STATED))
                : model;
    }
}

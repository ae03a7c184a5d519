package dev.waterjet.kerf;

import dev.waterjet.evidence.Caution;
import dev.waterjet.evidence.Evidence;
import dev.waterjet.evidence.EvidenceGrade;
import dev.waterjet.evidence.ValidityRange;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.Units;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.measure.quantity.Dimensionless;

/** Range over which a kerf model was compared with cuts, and the cautions outside it. */
final class KerfRange {

    /** Name of the input that limits a kerf model in its evidence. */
    private static final String THICKNESS = "thickness over exit bore";

    /** Range of the published tapers that the assumed numbers were compared with; see docs/kerf.md. */
    private static final double MIN_BORES = 5;

    private static final double MAX_BORES = 12.5;

    /** Below this exit bore the assumed scatter goes with the bore. Common practice, no source. */
    static final double MIN_BORE_M = 0.5e-3;

    private KerfRange() {}

    static ValidityRange<Dimensionless> ofAssumedNumbers() {
        return of(MIN_BORES, MAX_BORES);
    }

    static ValidityRange<Dimensionless> of(double minimumBores, double maximumBores) {
        return ValidityRange.of(THICKNESS, Kind.RATIO, Kind.RATIO.of(minimumBores), Kind.RATIO.of(maximumBores));
    }

    /** The cautions of a model with this evidence for the kerf of one cut. */
    static List<Caution> cautions(Evidence evidence, KerfShape shape) {
        double bores = shape.thicknessM() / shape.boreM();
        if (evidence.grade() == EvidenceGrade.FITTED) {
            return outsideOfCuts(evidence, bores).map(List::of).orElse(List.of());
        }
        List<Caution> cautions = new ArrayList<>();
        cautions.add(Caution.notice(Message.of(
                "kerf-not-fitted", "widths rest on assumed numbers; fit the kerf model to widths of your own cuts")));
        if (bores < MIN_BORES) {
            cautions.add(Caution.warning(Message.of(
                            "kerf-thin-sheet",
                            "the thickness is {bores} exit bores; below {limit} the kerf model overestimates the taper,"
                                    + " measure the widths of a cut")
                    .with("bores", bores)
                    .with("limit", MIN_BORES)));
        } else if (bores > MAX_BORES) {
            cautions.add(Caution.notice(Message.of(
                            "kerf-thick-plate",
                            "the thickness is {bores} exit bores; above {limit} the wall profile is extrapolated with"
                                    + " a jet that diverges in the slot as in air, compare it with a cross-section")
                    .with("bores", bores)
                    .with("limit", MAX_BORES)));
        }
        if (shape.boreM() < MIN_BORE_M) {
            cautions.add(smallBore(shape));
        }
        return cautions;
    }

    private static Optional<Caution> outsideOfCuts(Evidence evidence, double bores) {
        return evidence.ranges().stream()
                .filter(range -> range.input().equals(THICKNESS) && !range.contains(bores))
                .findFirst()
                .map(range -> Caution.notice(Message.of(
                                "kerf-outside-range",
                                "the thickness is {bores} exit bores; widths were measured from {minimum} to {maximum}")
                        .with("bores", bores)
                        .with("minimum", range.minimum().getValue().doubleValue())
                        .with("maximum", range.maximum().getValue().doubleValue())));
    }

    private static Caution smallBore(KerfShape shape) {
        return Caution.warning(Message.of(
                        "kerf-small-bore",
                        "the exit bore is {bore}; below {limit} the assumed numbers are scaled from larger heads, here"
                                + " with a stand-off distance of {stand_off}, {bores} bores: fit the kerf model to widths"
                                + " of this head")
                .with("bore", Kind.LENGTH, shape.boreM(), Units.MILLIMETRE)
                .with("limit", Kind.LENGTH, MIN_BORE_M, Units.MILLIMETRE)
                .with("stand_off", Kind.LENGTH, shape.standOffM(), Units.MILLIMETRE)
                .with("bores", shape.standOffM() / shape.boreM()));
    }
}

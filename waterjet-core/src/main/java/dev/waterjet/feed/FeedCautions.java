package dev.waterjet.feed;

import dev.waterjet.evidence.Caution;
import dev.waterjet.evidence.ValidityRange;
import dev.waterjet.jet.JetSettings;
import dev.waterjet.material.Material;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.NoSolutionException;
import dev.waterjet.measure.Units;
import java.util.ArrayList;
import java.util.List;
import javax.measure.quantity.Length;

/** Cautions and refusals that hold for every feed model. */
final class FeedCautions {

    /**
     * Feed rate above which no cuts are known that a published model rests on. Common practice, no source: thin soft sheet is
     * cut at 3 m/min to 5 m/min.
     */
    private static final double FAST_M_PER_S = 5 / 60.0;

    /** Thickest and thinnest plates that abrasive jets cut (common practice, no source). */
    private static final double MAX_THICKNESS_M = 0.3;

    private static final double MIN_THICKNESS_M = 0.5e-3;

    /**
     * Machinability number below which a material is taken for harder than garnet (assumed): alumina and silicon carbide have
     * 10 to 17, hardened steel 80.
     */
    private static final double HARD_MACHINABILITY = 40;

    /** The range as a value is made when it is first needed: a feed rate within it loads no quantity. */
    private static final class Thickness {

        static final ValidityRange<Length> RANGE = ValidityRange.of(
                "thickness", Kind.LENGTH, Kind.LENGTH.of(MIN_THICKNESS_M), Kind.LENGTH.of(MAX_THICKNESS_M));
    }

    private FeedCautions() {}

    /** Cautions of a feed rate, whatever the model. */
    static List<Caution> of(JetSettings jet, Material material, double feedMPerS) {
        boolean isWorn = jet.tubeExitBoreSi() > jet.tubeBoreSi();
        boolean isHard = material.machinabilitySi() < HARD_MACHINABILITY
                && jet.abrasive().name().equals("garnet");
        if (feedMPerS <= FAST_M_PER_S && !isWorn && !isHard) {
            return List.of();
        }
        List<Caution> all = new ArrayList<>();
        if (feedMPerS > FAST_M_PER_S) {
            all.add(Caution.warning(Message.of(
                            "thin-sheet",
                            "{feed} is above {known}, beyond the test cuts of the model; thin and soft sheet is"
                                    + " usually cut slower than the formula gives")
                    .with("feed", Kind.SPEED, feedMPerS, Units.MILLIMETRE_PER_MINUTE)
                    .with("known", Kind.SPEED, FAST_M_PER_S, Units.MILLIMETRE_PER_MINUTE)));
        }
        if (isWorn) {
            all.add(worn(jet));
        }
        if (isHard) {
            all.add(Caution.warning(Message.of(
                            "harder-than-abrasive",
                            "{material} is harder than garnet (machinability number {machinability}); make test cuts,"
                                    + " or use a harder abrasive")
                    .with("material", material.name())
                    .with("machinability", material.machinabilitySi())));
        }
        return List.copyOf(all);
    }

    private static Caution worn(JetSettings jet) {
        return Caution.notice(Message.of(
                        "worn-tube",
                        "the focusing tube is worn to {exit_bore} at its exit; the model was established with new"
                                + " tubes and takes this bore for the bore {bore}")
                .with("exit_bore", Kind.LENGTH, jet.tubeExitBoreSi(), Units.MILLIMETRE)
                .with("bore", Kind.LENGTH, jet.tubeBoreSi(), Units.MILLIMETRE));
    }

    /** Cautions of a plate. */
    static List<Caution> ofThickness(double thicknessM) {
        if (thicknessM >= MIN_THICKNESS_M && thicknessM <= MAX_THICKNESS_M) {
            return List.of();
        }
        return Thickness.RANGE.check(thicknessM, Units.MILLIMETRE).stream().toList();
    }

    /** Cautions of a groove. */
    static List<Caution> ofGroove(JetSettings jet, double depthM) {
        if (depthM >= jet.tubeExitBoreSi()) {
            return List.of();
        }
        return List.of(Caution.notice(Message.of(
                        "shallow-groove",
                        "the depth {depth} is below the bore {bore}; depths of shallow grooves decrease faster with"
                                + " the feed rate than the model gives")
                .with("depth", Kind.LENGTH, depthM, Units.MILLIMETRE)
                .with("bore", Kind.LENGTH, jet.tubeExitBoreSi(), Units.MILLIMETRE)));
    }

    /** Caution of a feed rate held at the maximum. */
    static List<Caution> ofLimit(double formulaMPerS, double limitMPerS) {
        return List.of(Caution.warning(Message.of(
                        "feed-limit",
                        "the formula gives {formula}, beyond its use in thin or soft sheet; the feed rate is limited to"
                                + " {limit}")
                .with("formula", Kind.SPEED, formulaMPerS, Units.MILLIMETRE_PER_MINUTE)
                .with("limit", Kind.SPEED, limitMPerS, Units.MILLIMETRE_PER_MINUTE)));
    }

    /** Refuses a material on which a model with calibrated coefficients has no answer. */
    static void requireCalibrated(String model, String calibratedId, Material material) {
        if (!material.id().equals(calibratedId)) {
            throw new NoSolutionException(Message.of(
                            "other-material",
                            "the {model} model is calibrated with {calibrated}; it has no answer for {material}")
                    .with("model", model)
                    .with("calibrated", calibratedId)
                    .with("material", material.id()));
        }
    }

    /** Refusal of a jet that does not cut. */
    static NoSolutionException noCut(Material material) {
        return new NoSolutionException(
                Message.of("no-cut", "the jet does not cut {material} at all").with("material", material.name()),
                Kind.SPEED,
                0);
    }
}

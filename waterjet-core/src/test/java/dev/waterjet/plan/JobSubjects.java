package dev.waterjet.plan;

import dev.waterjet.calibrate.PierceMeasurement;
import dev.waterjet.cost.Consumable;
import dev.waterjet.evidence.Evidence;
import dev.waterjet.evidence.EvidenceGrade;
import dev.waterjet.evidence.Source;
import dev.waterjet.hydraulics.Orifice;
import dev.waterjet.measure.Kind;
import dev.waterjet.pierce.PierceModel;
import dev.waterjet.pierce.PierceSettings;
import dev.waterjet.reference.Computed;
import dev.waterjet.reference.Inputs;
import dev.waterjet.reference.Subjects;
import dev.waterjet.sheet.SheetFill;
import dev.waterjet.toolpath.CuttingRules;
import dev.waterjet.toolpath.HoldingTabs;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import javax.measure.Quantity;

/** Subjects of the reference suite in this package. */
public final class JobSubjects implements Subjects {

    @Override
    public Map<String, Subject> subjects() {
        return Map.of(
                "blind-hole-pressure",
                in -> Computed.of(Kind.PRESSURE, PierceSettings.blindHolePressure(in.get("pressure", Kind.PRESSURE))),
                "table-fill",
                JobSubjects::tableFill,
                "wear-chance",
                JobSubjects::wearChance,
                "pierce-time-quadratic",
                in -> Computed.of(
                        Kind.TIME, damped(in).time(in.get("depth", Kind.LENGTH)).value()),
                "pierce-depth-quadratic",
                in -> Computed.of(
                        Kind.LENGTH, damped(in).depth(in.get("time", Kind.TIME)).value()),
                "pierce-fit-rate",
                in -> Computed.of(Kind.SPEED, fitted(in).rate().orElseThrow()),
                "pierce-fit-damping",
                in -> Computed.of(Kind.LENGTH, fitted(in).damping().orElseThrow()),
                "tab-width",
                JobSubjects::tabWidth,
                "pierce-fit-scatter",
                in -> Computed.of(fitted(in).relativeUncertainty()));
    }

    private static PierceModel damped(Inputs in) {
        return PierceModel.damped(
                in.get("rate", Kind.SPEED),
                in.get("damping", Kind.LENGTH),
                0.5,
                Evidence.of(EvidenceGrade.ASSUMED, Source.of("row of the suite")));
    }

    private static PierceModel fitted(Inputs in) {
        double[] depths = all(in.text("depths"), Kind.LENGTH);
        double[] times = all(in.text("times"), Kind.TIME);
        List<PierceMeasurement> pierces = new ArrayList<>();
        for (int i = 0; i < depths.length; i++) {
            pierces.add(PierceMeasurement.of(Kind.LENGTH.of(depths[i]), Kind.TIME.of(times[i])));
        }
        return (in.has("damping")
                        ? PierceMeasurement.fit(pierces, in.get("damping", Kind.LENGTH))
                        : PierceMeasurement.fit(pierces))
                .model();
    }

    /** Numbers before one unit, such as {@code 6 12 20 mm}, in SI. */
    private static <Q extends Quantity<Q>> double[] all(String text, Kind<Q> kind) {
        String[] words = text.strip().split("[\\s,]+", -1);
        double[] numbers = new double[words.length - 1];
        for (int i = 0; i < numbers.length; i++) {
            numbers[i] = kind.si(kind.parse(words[i] + " " + words[words.length - 1]));
        }
        return numbers;
    }

    private static Computed tableFill(Inputs in) {
        return Computed.of(SheetFill.sheet(in.get("sheet", Kind.LENGTH), in.get("sheet", Kind.LENGTH))
                .withGap(in.get("gap", Kind.LENGTH))
                .square(in.get("part", Kind.LENGTH), in.get("part", Kind.LENGTH))
                .parts());
    }

    private static Computed tabWidth(Inputs in) {
        CuttingRules rules = CuttingRules.of(in.get("kerf", Kind.LENGTH), in.get("kerf", Kind.LENGTH));
        return Computed.of(
                Kind.LENGTH,
                HoldingTabs.of(
                                in.get("force", Kind.FORCE),
                                in.get("shear-strength", Kind.PRESSURE),
                                in.get("plate", Kind.LENGTH),
                                rules)
                        .withSafety(in.number("safety"))
                        .width((int) in.number("count")));
    }

    private static Computed wearChance(Inputs in) {
        Consumable part = in.text("part").equals("tube")
                ? Consumable.focusingTube()
                : Consumable.orifice(Orifice.Jewel.valueOf(in.text("part").toUpperCase(Locale.ROOT)));
        return Computed.of(part.failureProbability(in.get("age", Kind.TIME)));
    }
}

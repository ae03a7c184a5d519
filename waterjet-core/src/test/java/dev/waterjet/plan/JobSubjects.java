package dev.waterjet.plan;

import dev.waterjet.cost.Consumable;
import dev.waterjet.hydraulics.Orifice;
import dev.waterjet.measure.Kind;
import dev.waterjet.pierce.PierceSettings;
import dev.waterjet.reference.Computed;
import dev.waterjet.reference.Inputs;
import dev.waterjet.reference.Subjects;
import dev.waterjet.sheet.SheetFill;
import java.util.Locale;
import java.util.Map;

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
                JobSubjects::wearChance);
    }

    private static Computed tableFill(Inputs in) {
        return Computed.of(SheetFill.sheet(in.get("sheet", Kind.LENGTH), in.get("sheet", Kind.LENGTH))
                .withGap(in.get("gap", Kind.LENGTH))
                .square(in.get("part", Kind.LENGTH), in.get("part", Kind.LENGTH))
                .parts());
    }

    private static Computed wearChance(Inputs in) {
        Consumable part = in.text("part").equals("tube")
                ? Consumable.focusingTube()
                : Consumable.orifice(Orifice.Jewel.valueOf(in.text("part").toUpperCase(Locale.ROOT)));
        return Computed.of(part.failureProbability(in.get("age", Kind.TIME)));
    }
}

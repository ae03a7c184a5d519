package dev.waterjet.pierce;

import dev.waterjet.evidence.Caution;
import dev.waterjet.feed.CutConditions;
import dev.waterjet.material.MaterialClass;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.Units;
import java.util.OptionalDouble;

/** Cautions of a pierce into a plate that can crack or delaminate. */
final class PierceCautions {

    private PierceCautions() {}

    static Caution of(CutConditions cut, double pressurePa, double depthM, OptionalDouble strength) {
        Message message = strength.isEmpty()
                ? Message.of(
                        "strength-unknown",
                        "half of the pressure must be below the strength that keeps this plate whole, which is"
                                + " unknown; try on scrap or drill the hole")
                : cut.material().materialClass() == MaterialClass.LAMINATED
                        ? Message.of(
                                "delamination",
                                "water under {pressure} can separate the layers; start the abrasive before the jet,"
                                        + " raise the pressure only after {depth}, and try on scrap")
                        : Message.of(
                                "cracking",
                                "the first blow of a jet of {pressure} can crack the plate; start the abrasive before"
                                        + " the jet, raise the pressure only after {depth}, and try on scrap");
        return Caution.warning(message.with("pressure", Kind.PRESSURE, pressurePa, Units.MEGAPASCAL)
                .with("depth", Kind.LENGTH, depthM, Units.MILLIMETRE));
    }
}

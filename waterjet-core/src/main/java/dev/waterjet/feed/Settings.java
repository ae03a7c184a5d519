package dev.waterjet.feed;

import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.jet.CuttingHead;
import dev.waterjet.jet.FocusingTube;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;

/** Jets that differ from a given one in their settings only, and what every model asks of its settings. */
public final class Settings {

    private Settings() {}

    static AbrasiveJet of(AbrasiveJet jet, double pressurePa, double orificeM, double tubeM, double abrasiveKgPerS) {
        CuttingHead head = jet.head();
        if (orificeM != head.orifice().boreSi()) {
            head = head.withOrifice(head.orifice().withBore(Kind.LENGTH.of(orificeM)));
        }
        if (tubeM != head.tube().boreSi()) {
            head = head.withTube(
                    FocusingTube.of(Kind.LENGTH.of(tubeM), head.tube().length()));
        }
        return jet.withHead(head)
                .withPressure(Kind.PRESSURE.of(pressurePa))
                .withAbrasiveFlow(Kind.MASS_FLOW.of(abrasiveKgPerS));
    }

    /** A relative uncertainty of a model, no more than a factor of e^10 either way. */
    static double uncertainty(double relative) {
        return Require.between(
                "relative uncertainty of the model", relative, 0, 10, Units.PERCENT, "beyond it nothing is known");
    }

    /** A quality index. */
    static double index(double index) {
        return Require.atLeast("quality index", index, 1, Units.ONE, "below 1 the jet does not separate");
    }

    public static AbrasiveJet withPressure(AbrasiveJet jet, double pressurePa) {
        return jet.withPressure(Kind.PRESSURE.of(pressurePa));
    }

    public static AbrasiveJet withAbrasiveFlow(AbrasiveJet jet, double abrasiveKgPerS) {
        return jet.withAbrasiveFlow(Kind.MASS_FLOW.of(abrasiveKgPerS));
    }

    public static AbrasiveJet withOrifice(AbrasiveJet jet, double orificeM) {
        return jet.withHead(jet.head().withOrifice(jet.head().orifice().withBore(Kind.LENGTH.of(orificeM))));
    }
}

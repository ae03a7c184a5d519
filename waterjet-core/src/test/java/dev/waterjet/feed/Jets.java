package dev.waterjet.feed;

import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.jet.CuttingHead;
import dev.waterjet.jet.FocusingTube;
import dev.waterjet.measure.Kind;

/** Jets that differ from a given one in their settings only, made through the public factories. */
final class Jets {

    private Jets() {}

    static AbrasiveJet at(AbrasiveJet jet, double pressurePa, double orificeM, double tubeM, double abrasiveKgPerS) {
        FocusingTube tube = tubeM == jet.tubeBoreSi()
                ? jet.head().tube()
                : FocusingTube.of(Kind.LENGTH.of(tubeM), jet.head().tube().length());
        CuttingHead head = jet.head()
                .withOrifice(jet.head().orifice().withBore(Kind.LENGTH.of(orificeM)))
                .withTube(tube);
        return withAbrasiveFlow(jet.withHead(head).withPressure(Kind.PRESSURE.of(pressurePa)), abrasiveKgPerS);
    }

    static AbrasiveJet withAbrasiveFlow(AbrasiveJet jet, double kgPerS) {
        return jet.withAbrasiveFlow(Kind.MASS_FLOW.of(kgPerS));
    }
}

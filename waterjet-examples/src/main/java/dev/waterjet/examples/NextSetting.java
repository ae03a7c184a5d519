package dev.waterjet.examples;

import dev.waterjet.calibrate.CalibratedFeed;
import dev.waterjet.calibrate.NextCut;
import dev.waterjet.calibrate.TestCut;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.jet.FocusingTube;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityText;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Setting whose change in one more cut narrows a feed rate most. */
final class NextSetting {

    /** Changes that a shop can make: a quarter in flow rate and pressure, a third in a bore. */
    private static final double SETTING = 0.75;

    private static final double BORE = 0.7;

    private NextSetting() {}

    /** Sentence for people. */
    static String text(CalibratedFeed own, TestCut target) {
        Map<String, AbrasiveJet> jets = jets(target.jet());
        Map<String, Double> narrowings = new LinkedHashMap<>();
        jets.forEach((name, jet) -> narrowings.put(
                name,
                NextCut.rank(own, target.jet(), target.thickness(), List.of(jet))
                        .get(0)
                        .narrowing()));
        Map.Entry<String, Double> best = narrowings.entrySet().stream()
                .max(Comparator.comparingDouble(Map.Entry::getValue))
                .orElseThrow();
        double same = NextCut.rank(own, target.jet(), target.thickness(), List.of(target.jet()))
                .get(0)
                .narrowing();
        if (best.getValue() <= same + 1e-3) {
            return "No change of a setting narrows more than one more cut at the setting that matters.";
        }
        return "Setting that narrows most when it is changed: " + best.getKey() + " ("
                + QuantityText.round(100 * best.getValue(), 2) + " %, without a change "
                + QuantityText.round(100 * same, 2) + " %).";
    }

    private static Map<String, AbrasiveJet> jets(AbrasiveJet jet) {
        FocusingTube tube = jet.head().tube();
        Map<String, AbrasiveJet> jets = new LinkedHashMap<>();
        double pressure = SETTING * jet.pressureSi();
        jets.put(
                "gauge pressure " + QuantityText.forPeople(Kind.PRESSURE, Kind.PRESSURE.of(pressure)),
                jet.withPressure(Kind.PRESSURE.of(pressure)));
        double flow = SETTING * jet.abrasiveFlowSi();
        jets.put(
                "abrasive flow rate " + QuantityText.forPeople(Kind.MASS_FLOW, Kind.MASS_FLOW.of(flow)),
                jet.withAbrasiveFlow(Kind.MASS_FLOW.of(flow)));
        double orifice = BORE * jet.orificeBoreSi();
        jets.put(
                "orifice " + QuantityText.forPeople(Kind.LENGTH, Kind.LENGTH.of(orifice)),
                jet.withHead(jet.head().withOrifice(jet.head().orifice().withBore(Kind.LENGTH.of(orifice)))));
        double bore = tube.boreSi() / BORE;
        jets.put(
                "focusing tube " + QuantityText.forPeople(Kind.LENGTH, Kind.LENGTH.of(bore)),
                jet.withHead(jet.head().withTube(FocusingTube.of(Kind.LENGTH.of(bore), tube.length()))));
        return jets;
    }
}

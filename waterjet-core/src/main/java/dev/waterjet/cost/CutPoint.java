package dev.waterjet.cost;

import dev.waterjet.evidence.Estimate;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import java.io.Serializable;
import java.util.Map;
import javax.measure.quantity.Speed;

/**
 * Jet settings for a cut, with feed rate and cost.
 *
 * @param jet the jet
 * @param feed feed rate with its uncertainty
 * @param costPerMetre cost of a metre of cut, in the currency of the rates
 */
public record CutPoint(AbrasiveJet jet, Estimate<Speed> feed, double costPerMetre) implements Described, Serializable {
    @Override
    public Map<String, Object> describe() {
        return Description.of("cut point")
                .put("jet", jet)
                .put("feed", feed)
                .put("cost_per_metre", costPerMetre)
                .map();
    }
}

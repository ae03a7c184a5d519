package dev.waterjet.head;

import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Units;
import java.io.Serializable;
import java.util.Locale;
import java.util.Map;

/**
 * Why a head does not serve a part.
 *
 * @param rule the rule that it breaks
 * @param valueSi what it has, in SI
 * @param limitSi what is allowed, in SI
 */
public record HeadFault(Rule rule, double valueSi, double limitSi) implements Described, Serializable {

    /** What a head must keep to. */
    public enum Rule {
        /** The focusing tube is wider than the orifice by the usual ratio. */
        BORE_RATIO("the focusing tube is %s orifice bores wide, outside the usual limit of %s"),
        /** The tube is neither too short nor too long for its bore. */
        TUBE_LENGTH("the focusing tube is %s bores long, outside the usual limit of %s"),
        /** The grains pass the tube. */
        GRAIN("the largest grains are %s of the tube's bore, above %s: it may clog"),
        /** The jet is not overloaded with abrasive. */
        LOADING("the loading ratio is %s, above %s"),
        /** The pump can feed it. */
        POWER("the jet takes %s, the pump gives %s"),
        /** It is fast enough. */
        FEED("the feed is %s, below %s"),
        /** Its kerf goes into the tightest corner. */
        RADIUS("the kerf leaves a radius of %s, above the part's %s"),
        /** Its kerf goes through the narrowest passage. */
        PASSAGE("the kerf is %s wide, wider than the passage of %s"),
        /** Its walls are square enough. */
        TOLERANCE("the walls are off by %s, above the tolerance of %s");

        private final String sentence;

        Rule(String sentence) {
            this.sentence = sentence;
        }

        private String told(double si) {
            return switch (this) {
                case POWER -> QuantityText.print(Kind.POWER, Kind.POWER.of(si), Units.KILOWATT, 3);
                case FEED -> QuantityText.print(Kind.SPEED, Kind.SPEED.of(si), Units.MILLIMETRE_PER_MINUTE, 3);
                case RADIUS, PASSAGE, TOLERANCE ->
                    QuantityText.print(Kind.LENGTH, Kind.LENGTH.of(si), Units.MILLIMETRE, 3);
                case BORE_RATIO, TUBE_LENGTH, GRAIN, LOADING -> QuantityText.round(si, 3);
            };
        }
    }

    /**
     * The fault in words.
     *
     * @return one clause with value, limit and unit
     */
    public String text() {
        return String.format(Locale.ROOT, rule.sentence, rule.told(valueSi), rule.told(limitSi));
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("head fault")
                .put("rule", rule)
                .put("text", text())
                .map();
    }

    @Override
    public String toString() {
        return text();
    }
}

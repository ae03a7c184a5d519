package dev.waterjet.part;

import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.Units;
import java.io.Serializable;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import javax.measure.Unit;
import org.jspecify.annotations.Nullable;

/**
 * Outcome of the check of one rule.
 *
 * @param isSatisfied whether the rule is satisfied
 * @param message code of the rule, what was found and what is required
 * @param remedies what would help, best first; empty if the rule is satisfied
 * @param place where it was found; null where a rule has no place
 */
@SuppressWarnings({"exports", "InvalidParam"}) // the annotation is for analysis only
public record Finding(
        boolean isSatisfied,
        Message message,
        List<Message> remedies,
        @Nullable Point place) implements Described, Serializable {

    /**
     * Checks the components.
     *
     * @param isSatisfied whether the rule is satisfied
     * @param message code of the rule, what was found and what is required
     * @param remedies what would help, best first
     * @param place where it was found; null where a rule has no place
     */
    public Finding {
        Objects.requireNonNull(remedies, "remedies");
        Objects.requireNonNull(message, "message");
        remedies = isSatisfied ? List.of() : List.copyOf(remedies);
    }

    /**
     * Returns a finding that a rule is satisfied.
     *
     * @param message code of the rule and what was found
     * @param place where
     * @return the finding
     */
    public static Finding satisfied(Message message, Point place) {
        Objects.requireNonNull(place, "place");
        return new Finding(true, message, List.of(), place);
    }

    /**
     * Returns a finding that a rule is not satisfied.
     *
     * @param message code of the rule, what was found and what is required
     * @param place where
     * @param remedies what would help, best first
     * @return the finding
     */
    public static Finding violated(Message message, Point place, Message... remedies) {
        Objects.requireNonNull(place, "place");
        Objects.requireNonNull(remedies, "remedies");
        return new Finding(false, message, List.of(remedies), place);
    }

    /**
     * Returns the finding of a length that must not fall below a limit.
     *
     * @param message code and sentence, which can use the parameters {@code value} and {@code limit}
     * @param valueM the length, in m; infinite where nothing limits it
     * @param limitM the limit, in m
     * @param place where
     * @param remedies what would help, best first
     * @return the finding
     */
    public static Finding atLeast(Message message, double valueM, double limitM, Point place, Message... remedies) {
        Objects.requireNonNull(message, "message");
        Objects.requireNonNull(place, "place");
        Objects.requireNonNull(remedies, "remedies");
        Message full = message.with("value", Kind.LENGTH, Math.min(valueM, Double.MAX_VALUE), Units.MILLIMETRE)
                .with("limit", Kind.LENGTH, limitM, Units.MILLIMETRE);
        return valueM >= limitM ? satisfied(full, place) : violated(full, place, remedies);
    }

    /** {@return the stable name of the rule, in lower case with hyphens} */
    public String code() {
        return message.code();
    }

    /** {@return the sentence for people, with the remedies} */
    public String text() {
        return text(Map.of());
    }

    /**
     * Returns the sentence for people, with the remedies, in other units.
     *
     * @param replaced units of the sentence and those that are shown in their place, of the same kind; other units stay
     * @return the sentence
     */
    public String text(Map<? extends Unit<?>, ? extends Unit<?>> replaced) {
        StringBuilder text = new StringBuilder(message.text(replaced));
        for (int i = 0; i < remedies.size(); i++) {
            text.append(i == 0 ? "; " : ", or ").append(remedies.get(i).text(replaced));
        }
        return text.toString();
    }

    @Override
    public Map<String, Object> describe() {
        Description description = Description.of("finding")
                .put("code", code())
                .put("satisfied", isSatisfied)
                .put("message", message)
                .put("remedies", remedies);
        if (place != null) {
            description.put("x", Kind.LENGTH, place.xSi()).put("y", Kind.LENGTH, place.ySi());
        }
        return description.map();
    }

    @Override
    public String toString() {
        return code() + (isSatisfied ? ": " : " not satisfied: ") + text();
    }
}

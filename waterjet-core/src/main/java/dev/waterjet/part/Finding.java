package dev.waterjet.part;

import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import java.io.Serializable;
import java.util.Map;

/** Outcome of one check: whether it is met, why, and where not, what would help. */
public final class Finding implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    private final String code;
    private final boolean isMet;
    private final String reason;
    private final String suggestion;
    private final Point place;

    private Finding(String code, boolean isMet, String reason, String suggestion, Point place) {
        this.code = code;
        this.isMet = isMet;
        this.reason = reason;
        this.suggestion = suggestion;
        this.place = place;
    }

    /** A length that must not fall below a limit. */
    public static Finding atLeast(String code, String what, double valueM, double limitM, String suggestion, Point place) {
        boolean isMet = valueM >= limitM;
        String value = valueM < Double.POSITIVE_INFINITY ? ContourBuilder.told(valueM) : "free";
        String reason = what + " is " + value + ", at least " + ContourBuilder.told(limitM) + " is wanted";
        return new Finding(code, isMet, reason, isMet ? "" : suggestion, place);
    }

    public static Finding of(String code, boolean isMet, String reason, String suggestion, Point place) {
        return new Finding(code, isMet, reason, isMet ? "" : suggestion, place);
    }

    /**
     * Stable name of the check.
     *
     * @return lower case with hyphens
     */
    public String code() {
        return code;
    }

    /**
     * Whether the check is met.
     *
     * @return true if all is well
     */
    public boolean isSatisfied() {
        return isMet;
    }

    /**
     * What was found, and what is wanted.
     *
     * @return a sentence without full stop
     */
    public String reason() {
        return reason;
    }

    /**
     * What would help.
     *
     * @return a sentence without full stop; empty if the check is met
     */
    public String suggestion() {
        return suggestion;
    }

    /**
     * Where it was found.
     *
     * @return the place
     */
    public Point place() {
        return place;
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("finding")
                .put("code", code)
                .put("met", isMet)
                .put("reason", reason)
                .put("suggestion", suggestion)
                .put("x", Kind.LENGTH, place.xSi())
                .put("y", Kind.LENGTH, place.ySi())
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Finding that && describe().equals(that.describe());
    }

    @Override
    public int hashCode() {
        return describe().hashCode();
    }

    @Override
    public String toString() {
        return code + (isMet ? ": " : " not met: ") + reason + (suggestion.isEmpty() ? "" : "; " + suggestion);
    }
}

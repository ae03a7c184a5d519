package dev.waterjet.evidence;

import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import java.io.Serializable;
import java.util.Map;
import java.util.Objects;

/** Where a number or a formula stands: a citation, and the place in it. */
public final class Source implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    private final String citation;
    private final String place;

    private Source(String citation, String place) {
        this.citation = Objects.requireNonNull(citation, "citation");
        this.place = Objects.requireNonNull(place, "place");
    }

    /**
     * A whole work.
     *
     * @param citation authors, title or journal, year
     * @return the source
     */
    public static Source of(String citation) {
        return new Source(citation, "");
    }

    /**
     * A place in a work.
     *
     * @param place equation, table, section or page
     * @return this work, at that place
     */
    public Source at(String place) {
        return new Source(citation, place);
    }

    /**
     * The work.
     *
     * @return authors, title or journal, year
     */
    public String citation() {
        return citation;
    }

    /**
     * The place in the work.
     *
     * @return equation, table, section or page; empty if none is given
     */
    public String place() {
        return place;
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("source")
                .put("citation", citation)
                .put("place", place)
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Source that && citation.equals(that.citation) && place.equals(that.place);
    }

    @Override
    public int hashCode() {
        return Objects.hash(citation, place);
    }

    @Override
    public String toString() {
        return place.isEmpty() ? citation : citation + ", " + place;
    }
}

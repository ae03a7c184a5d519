package dev.waterjet.evidence;

import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import java.io.InvalidObjectException;
import java.io.ObjectInputStream;
import java.io.Serializable;
import java.util.Map;
import java.util.Objects;

/** Source of a number or a formula: a citation, and the place in the cited work. */
public final class Source implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    /** Checked content, and the serial form. */
    private record Values(String citation, String place) implements Serializable {

        Values {
            Objects.requireNonNull(citation, "citation");
            Objects.requireNonNull(place, "place");
        }

        private Object readResolve() {
            return new Source(this);
        }
    }

    private final transient Values values;

    private Source(Values values) {
        this.values = values;
    }

    /**
     * Returns a whole work.
     *
     * @param citation authors, title or journal, year
     * @return the source
     */
    public static Source of(String citation) {
        return new Source(new Values(citation, ""));
    }

    /**
     * Returns a place in this work.
     *
     * @param place equation, table, section or page
     * @return this work, at that place
     */
    public Source at(String place) {
        return new Source(new Values(values.citation, place));
    }

    /** {@return the work: authors, title or journal, year} */
    public String citation() {
        return values.citation;
    }

    /** {@return the place in the work: equation, table, section or page; empty if none is given} */
    public String place() {
        return values.place;
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("source")
                .put("citation", values.citation)
                .put("place", values.place)
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Source that && values.equals(that.values);
    }

    @Override
    public int hashCode() {
        return values.hashCode();
    }

    @Override
    public String toString() {
        return values.place.isEmpty() ? values.citation : values.citation + ", " + values.place;
    }

    private Object writeReplace() {
        return values;
    }

    private void readObject(ObjectInputStream in) throws InvalidObjectException {
        throw new InvalidObjectException("read through its values");
    }
}

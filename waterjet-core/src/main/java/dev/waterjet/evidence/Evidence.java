package dev.waterjet.evidence;

import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import java.io.InvalidObjectException;
import java.io.ObjectInputStream;
import java.io.Serializable;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/**
 * What speaks for a model, a constant or a material value: its grade, its source, a note, and the ranges over which it
 * is known to hold.
 */
public final class Evidence implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    /** Checked content, and the serial form. */
    private record Values(EvidenceGrade grade, Source source, String note, List<ValidityRange<?>> ranges)
            implements Serializable {

        Values {
            Objects.requireNonNull(grade, "grade");
            Objects.requireNonNull(source, "source");
            Objects.requireNonNull(note, "note");
            ranges = List.copyOf(ranges);
        }

        private Object readResolve() {
            return new Evidence(this);
        }
    }

    private final transient Values values;

    private Evidence(Values values) {
        this.values = values;
    }

    /**
     * Evidence without note or range.
     *
     * @param grade how well the number is attested
     * @param source where it stands
     * @return the evidence
     */
    public static Evidence of(EvidenceGrade grade, Source source) {
        return new Evidence(new Values(grade, source, "", List.of()));
    }

    /**
     * This evidence with a note.
     *
     * @param note one or two sentences for a reader
     * @return the evidence with that note
     */
    public Evidence withNote(String note) {
        return new Evidence(new Values(values.grade, values.source, note, values.ranges));
    }

    /**
     * This evidence with the ranges over which it holds.
     *
     * @param ranges ranges of inputs
     * @return the evidence with those ranges
     */
    public Evidence withRanges(ValidityRange<?>... ranges) {
        return new Evidence(new Values(values.grade, values.source, values.note, List.of(ranges)));
    }

    /**
     * How well the number is attested.
     *
     * @return the grade
     */
    public EvidenceGrade grade() {
        return values.grade;
    }

    /**
     * Where the number stands.
     *
     * @return the source
     */
    public Source source() {
        return values.source;
    }

    /**
     * What a reader should know beside the source.
     *
     * @return one or two sentences, or an empty text
     */
    public String note() {
        return values.note;
    }

    /**
     * Ranges over which the number is known to hold.
     *
     * @return the ranges; empty if none is known
     */
    public List<ValidityRange<?>> ranges() {
        return values.ranges;
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("evidence")
                .put("grade", values.grade)
                .put("source", values.source)
                .put("note", values.note)
                .put("ranges", values.ranges)
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Evidence that && values.equals(that.values);
    }

    @Override
    public int hashCode() {
        return values.hashCode();
    }

    @Override
    public String toString() {
        return values.grade.words() + ": " + values.source + (values.note.isEmpty() ? "" : ". " + values.note);
    }

    private Object writeReplace() {
        return values;
    }

    private void readObject(ObjectInputStream in) throws InvalidObjectException {
        throw new InvalidObjectException("read through its values");
    }
}

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
 * Evidence for a model, a constant or a material value: its grade, its source, a note, and the ranges in which it is valid.
 *
 * <pre>{@code
 * Evidence.of(EvidenceGrade.FITTED, Source.of("Test cuts of the Hollow Ridge workshop").at("log 14"))
 *         .withNote("six cuts in titanium")
 *         .withRanges(ValidityRange.of("pressure", Kind.PRESSURE, megapascals(200), megapascals(380)));
 * }</pre>
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
     * Returns evidence without note or range.
     *
     * @param grade grade of the evidence
     * @param source source of the number
     * @return the evidence
     */
    public static Evidence of(EvidenceGrade grade, Source source) {
        return new Evidence(new Values(grade, source, "", List.of()));
    }

    /**
     * Returns this evidence with a note.
     *
     * @param note one or two sentences for a reader
     * @return the evidence with that note
     */
    public Evidence withNote(String note) {
        return new Evidence(new Values(values.grade, values.source, note, values.ranges));
    }

    /**
     * Returns this evidence with the ranges in which it is valid.
     *
     * @param ranges ranges of inputs
     * @return the evidence with those ranges
     */
    public Evidence withRanges(ValidityRange<?>... ranges) {
        Objects.requireNonNull(ranges, "ranges");
        return new Evidence(new Values(values.grade, values.source, values.note, List.of(ranges)));
    }

    /** {@return the grade of the evidence} */
    public EvidenceGrade grade() {
        return values.grade;
    }

    /** {@return the source of the number} */
    public Source source() {
        return values.source;
    }

    /** {@return the note beside the source: one or two sentences, or an empty text} */
    public String note() {
        return values.note;
    }

    /** {@return the ranges in which the number is valid; empty if none is known} */
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
        return values.grade.label() + ": " + values.source + (values.note.isEmpty() ? "" : ". " + values.note);
    }

    private Object writeReplace() {
        return values;
    }

    private void readObject(ObjectInputStream in) throws InvalidObjectException {
        throw new InvalidObjectException("read through its values");
    }
}

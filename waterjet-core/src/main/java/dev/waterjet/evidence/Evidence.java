package dev.waterjet.evidence;

import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
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

    private final EvidenceGrade grade;
    private final Source source;
    private final String note;
    private final List<ValidityRange<?>> ranges;

    private Evidence(EvidenceGrade grade, Source source, String note, List<ValidityRange<?>> ranges) {
        this.grade = Objects.requireNonNull(grade, "grade");
        this.source = Objects.requireNonNull(source, "source");
        this.note = Objects.requireNonNull(note, "note");
        this.ranges = List.copyOf(ranges);
    }

    /**
     * Evidence without note or range.
     *
     * @param grade how well the number is attested
     * @param source where it stands
     * @return the evidence
     */
    public static Evidence of(EvidenceGrade grade, Source source) {
        return new Evidence(grade, source, "", List.of());
    }

    /**
     * This evidence with a note.
     *
     * @param note one or two sentences for a reader
     * @return the evidence with that note
     */
    public Evidence withNote(String note) {
        return new Evidence(grade, source, note, ranges);
    }

    /**
     * This evidence with the ranges over which it holds.
     *
     * @param ranges ranges of inputs
     * @return the evidence with those ranges
     */
    public Evidence withRanges(ValidityRange<?>... ranges) {
        return new Evidence(grade, source, note, List.of(ranges));
    }

    /**
     * How well the number is attested.
     *
     * @return the grade
     */
    public EvidenceGrade grade() {
        return grade;
    }

    /**
     * Where the number stands.
     *
     * @return the source
     */
    public Source source() {
        return source;
    }

    /**
     * What a reader should know beside the source.
     *
     * @return one or two sentences, or an empty text
     */
    public String note() {
        return note;
    }

    /**
     * Ranges over which the number is known to hold.
     *
     * @return the ranges; empty if none is known
     */
    public List<ValidityRange<?>> ranges() {
        return ranges;
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("evidence")
                .put("grade", grade)
                .put("source", source)
                .put("note", note)
                .put("ranges", ranges)
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Evidence that
                && grade == that.grade
                && source.equals(that.source)
                && note.equals(that.note)
                && ranges.equals(that.ranges);
    }

    @Override
    public int hashCode() {
        return Objects.hash(grade, source, note, ranges);
    }

    @Override
    public String toString() {
        return grade.words() + ": " + source + (note.isEmpty() ? "" : ". " + note);
    }
}

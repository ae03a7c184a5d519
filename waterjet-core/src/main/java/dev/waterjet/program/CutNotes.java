package dev.waterjet.program;

import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.TextException;
import dev.waterjet.measure.Units;
import dev.waterjet.measure.WaterjetException;
import dev.waterjet.quality.CutQuality;
import java.io.Serializable;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** What a comment says of the next cut: {@code (waterjet: name outer edge, grade fine, tolerance 0.05 mm, open)}. */
final class CutNotes implements Serializable {

    private static final long serialVersionUID = 1L;

    static final String PREFIX = "waterjet:";

    static final CutNotes NONE = new CutNotes("", null, Double.NaN, false);

    private final String name;
    private final @Nullable CutQuality grade;
    private final double toleranceM;
    private final boolean isOpen;

    private CutNotes(String name, @Nullable CutQuality grade, double toleranceM, boolean isOpen) {
        this.name = name;
        this.grade = grade;
        this.toleranceM = toleranceM;
        this.isOpen = isOpen;
    }

    /** These notes with those of a comment; a fault is told by its offset in the comment. */
    CutNotes with(BlockWords words) {
        String comment = words.comment();
        int at = comment.indexOf(PREFIX) + PREFIX.length();
        CutNotes notes = this;
        while (at <= comment.length()) {
            int comma = comment.indexOf(',', at);
            int end = comma < 0 ? comment.length() : comma;
            String note = comment.substring(at, end);
            int blanks = note.length() - note.stripLeading().length();
            try {
                notes = notes.with(note.strip());
            } catch (WaterjetException e) {
                throw words.fault(words.commentFrom() + at + blanks, e.getMessage());
            }
            at = end + 1;
        }
        return notes;
    }

    private CutNotes with(String note) {
        String[] parts = note.split("\\s+", 2);
        String value = parts.length > 1 ? parts[1] : "";
        return switch (parts[0].toLowerCase(Locale.ROOT)) {
            case "name" -> new CutNotes(value, grade, toleranceM, isOpen);
            case "grade" -> new CutNotes(name, grade(value), toleranceM, isOpen);
            case "tolerance" -> new CutNotes(name, grade, tolerance(value), isOpen);
            case "open" -> new CutNotes(name, grade, toleranceM, true);
            default ->
                throw new TextException("\"" + note + "\" says nothing of a cut; write name, grade, tolerance or open");
        };
    }

    private static double tolerance(String text) {
        return Require.positive("tolerance of a cut", Kind.LENGTH.si(Kind.LENGTH.parse(text)), Units.MILLIMETRE);
    }

    private static CutQuality grade(String text) {
        String wanted = text.toLowerCase(Locale.ROOT).replaceAll("[\\s_-]+", " ");
        for (CutQuality grade : CutQuality.values()) {
            if (grade.label().equals(wanted)) {
                return grade;
            }
        }
        throw new TextException("\"" + text + "\" is not a face grade: use one of "
                + Arrays.stream(CutQuality.values()).map(CutQuality::label).collect(Collectors.joining(", ")));
    }

    String name() {
        return name;
    }

    Optional<CutQuality> grade() {
        return Optional.ofNullable(grade);
    }

    OptionalDouble toleranceSi() {
        return Double.isNaN(toleranceM) ? OptionalDouble.empty() : OptionalDouble.of(toleranceM);
    }

    boolean isOpen() {
        return isOpen;
    }
}

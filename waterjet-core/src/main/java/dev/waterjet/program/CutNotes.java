package dev.waterjet.program;

import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.TextException;
import dev.waterjet.measure.Units;
import dev.waterjet.measure.WaterjetException;
import dev.waterjet.quality.CutQuality;
import dev.waterjet.quality.EdgeRequirement;
import java.util.Locale;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/**
 * Notes of a comment for the next cut: {@code (waterjet: name outer edge, quality fine, tolerance 0.05 mm, open)}, in small
 * or capital letters. Within a cut, quality and tolerance may change.
 *
 * @param name name of the cut, or an empty text
 * @param quality required cut quality, if stated
 * @param toleranceM tolerance in m, if stated
 * @param isOpen whether the cut need not close
 */
record CutNotes(
        String name, @Nullable CutQuality quality, @Nullable Double toleranceM, boolean isOpen) {

    private static final String ADDRESS = "waterjet";

    static final CutNotes NONE = new CutNotes("", null, null, false);

    /** Whether a comment begins with the word that addresses notes. */
    static boolean isAddressed(String comment) {
        String text = comment.stripLeading();
        return text.regionMatches(true, 0, ADDRESS, 0, ADDRESS.length())
                && (text.length() == ADDRESS.length() || !Character.isLetterOrDigit(text.charAt(ADDRESS.length())));
    }

    /** Whether a comment that is addressed holds notes: a colon follows. */
    static boolean isNote(String comment) {
        return comment.strip().substring(ADDRESS.length()).stripLeading().startsWith(":");
    }

    /** A requirement with what the notes state. */
    EdgeRequirement on(EdgeRequirement unstated) {
        EdgeRequirement requirement = quality == null ? unstated : unstated.withQuality(quality);
        return toleranceM == null ? requirement : requirement.withLagTolerance(Kind.LENGTH.of(toleranceM));
    }

    /** These notes with those of a comment. A fault is reported at its offset in the comment. */
    CutNotes with(BlockWords words, Consumer<Message> unknown) {
        String comment = words.comment();
        int at = comment.indexOf(':') + 1;
        CutNotes notes = this;
        while (at <= comment.length()) {
            int comma = comment.indexOf(',', at);
            int end = comma < 0 ? comment.length() : comma;
            String note = comment.substring(at, end);
            int blanks = note.length() - note.stripLeading().length();
            try {
                notes = notes.with(note.strip(), unknown);
            } catch (WaterjetException e) {
                throw words.refusalAt(words.commentFrom() + at + blanks, e.message());
            }
            at = end + 1;
        }
        return notes;
    }

    private CutNotes with(String note, Consumer<Message> unknown) {
        String[] parts = note.split("\\s+", 2);
        String value = parts.length > 1 ? parts[1] : "";
        return switch (parts[0].toLowerCase(Locale.ROOT)) {
            case "name" -> new CutNotes(value, quality, toleranceM, isOpen);
            case "quality", "grade" -> new CutNotes(name, CutQuality.parse(value), toleranceM, isOpen);
            case "tolerance" -> new CutNotes(name, quality, toleranceOf(value), isOpen);
            case "open" -> new CutNotes(name, quality, toleranceM, true);
            default -> {
                unknown.accept(Message.of("unknown-note", "unknown note {note}; use name, quality, tolerance or open")
                        .withInput("note", note));
                yield this;
            }
        };
    }

    private static double toleranceOf(String text) {
        double tolerance;
        try {
            tolerance = Kind.LENGTH.si(Kind.LENGTH.parse(text));
        } catch (TextException e) {
            // programs are written in capital letters: 0.05 MM
            String small = text.toLowerCase(Locale.ROOT);
            if (small.equals(text)) {
                throw e;
            }
            tolerance = Kind.LENGTH.si(Kind.LENGTH.parse(small));
        }
        return Require.positive("tolerance of a cut", tolerance, Units.MILLIMETRE);
    }
}

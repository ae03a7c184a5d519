package dev.waterjet.program;

import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.TextException;
import dev.waterjet.measure.Units;
import dev.waterjet.measure.WaterjetException;
import dev.waterjet.quality.CutQuality;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * Notes of a comment for the next cut: {@code (waterjet: name outer edge, quality fine, tolerance 0.05 mm, open)}.
 *
 * @param name name of the cut, or an empty text
 * @param quality required cut quality, if stated
 * @param toleranceM tolerance in m, if stated
 * @param isOpen whether the cut need not close
 */
record CutNotes(
        String name, @Nullable CutQuality quality, @Nullable Double toleranceM, boolean isOpen) {

    static final String PREFIX = "waterjet:";

    static final CutNotes NONE = new CutNotes("", null, null, false);

    /** These notes with those of a comment. A fault is reported at its offset in the comment. */
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
                throw words.refusalAt(words.commentFrom() + at + blanks, e.message());
            }
            at = end + 1;
        }
        return notes;
    }

    private CutNotes with(String note) {
        String[] parts = note.split("\\s+", 2);
        String value = parts.length > 1 ? parts[1] : "";
        return switch (parts[0].toLowerCase(Locale.ROOT)) {
            case "name" -> new CutNotes(value, quality, toleranceM, isOpen);
            case "quality" -> new CutNotes(name, CutQuality.parse(value), toleranceM, isOpen);
            case "tolerance" -> new CutNotes(name, quality, toleranceOf(value), isOpen);
            case "open" -> new CutNotes(name, quality, toleranceM, true);
            default ->
                throw new TextException(
                        Message.of("unknown-note", "unknown note {note}; use name, quality, tolerance or open")
                                .withInput("note", note));
        };
    }

    private static double toleranceOf(String text) {
        return Require.positive("tolerance of a cut", Kind.LENGTH.si(Kind.LENGTH.parse(text)), Units.MILLIMETRE);
    }
}

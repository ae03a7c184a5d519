package dev.waterjet.program;

import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.TextException;
import dev.waterjet.measure.Units;
import dev.waterjet.part.Point;
import dev.waterjet.part.Side;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/** Cuts of a program while it is read: from jet on to jet off, with the notes before them. */
final class CutReader {

    private final BlockWords words;
    private final ModalState state;
    private final ProgramCodes codes;
    private final ProgramBlocks blocks;
    private final List<ProgramCut> cuts = new ArrayList<>();

    private CutNotes notes = CutNotes.NONE;
    private int spots;
    private boolean isOn;

    /** The current cut: where the jet was switched on, and its first block. */
    private int onLine;

    private int onColumn;
    private int onLineTo;

    private double onX;
    private double onY;
    private int firstBlock;
    private final List<ProgramCut.NotesFrom> changes = new ArrayList<>();
    private int changeLine;
    private int changeColumn;
    private @Nullable Side cutSide;
    private @Nullable Double dwellS;
    private int dwellLine;

    CutReader(BlockWords words, ModalState state, ProgramCodes codes, ProgramBlocks blocks) {
        this.words = words;
        this.state = state;
        this.codes = codes;
        this.blocks = blocks;
    }

    boolean isOn() {
        return isOn;
    }

    int onLine() {
        return onLine;
    }

    int spots() {
        return spots;
    }

    List<ProgramCut> result() {
        return cuts;
    }

    void takeNotes(Consumer<Message> found) {
        if (!words.unreadComment().isEmpty()) {
            found.accept(
                    Message.of("note-not-read", "the comment {comment} is not read; a note begins with \"waterjet:\"")
                            .withInput("comment", words.unreadComment()));
        }
        if (words.comment().isEmpty()) {
            return;
        }
        CutNotes stated = notes.with(words, found);
        if (isOn) {
            within(stated);
        }
        notes = stated;
    }

    /** Takes notes within a cut: they hold from the next block. */
    private void within(CutNotes stated) {
        if (!stated.name().equals(notes.name()) || stated.isOpen() != notes.isOpen()) {
            throw words.refusalAt(
                    words.commentFrom(),
                    Message.of("note-with-jet-on", "the jet is already on; write the note before the cut"));
        }
        int block = blocks.count - firstBlock;
        if (changes.get(changes.size() - 1).block() == block) {
            changes.remove(changes.size() - 1);
        }
        changes.add(new ProgramCut.NotesFrom(block, stated));
        changeLine = words.line;
        changeColumn = words.columnAt(words.commentFrom());
    }

    void turnOn(int word, double x, double y) {
        if (isOn) {
            throw words.refusal(
                    word,
                    Message.of("jet-already-on", "the jet is already on, since line {line}")
                            .with("line", onLine));
        }
        isOn = true;
        onColumn = words.column(word);
        onLine = words.line;
        onLineTo = words.lineEnd;
        onX = x;
        onY = y;
        firstBlock = blocks.count;
        changes.clear();
        changes.add(new ProgramCut.NotesFrom(0, notes));
        cutSide = null;
        dwellS = null;
    }

    /** Takes the dwell of a block; before the first move it is time to pierce. */
    void dwell() {
        if (!isOn || blocks.count > firstBlock) {
            return;
        }
        double seconds = 0;
        for (int i = 0; i < words.count; i++) {
            switch (words.letter[i]) {
                case 'P' -> seconds += words.number[i] * (codes.dwell().letter == 'P' ? codes.dwell().unitS : 0.001);
                case 'X', 'U', 'F' -> seconds += words.number[i];
                default -> {}
            }
        }
        dwellLine = dwellS == null ? words.line : dwellLine;
        dwellS = (dwellS == null ? 0 : dwellS) + Math.max(0, seconds);
    }

    void addBlock() {
        if (state.jetSide != null) {
            cutSide = state.jetSide;
        }
    }

    void turnOff(double x, double y) {
        if (!isOn) {
            return;
        }
        isOn = false;
        if (blocks.count == firstBlock) {
            // a test of the valve leaves the notes to the next cut
            spots++;
            return;
        }
        requireBlockBehindNote();
        ProgramCut cut = new ProgramCut(
                blocks,
                firstBlock,
                blocks.count,
                Point.ofSi(onX, onY),
                new ProgramCut.JetOn(onLine, onLineTo, dwellS, dwellLine),
                changes,
                cutSide);
        if (!codes.allowsOpenContours() && !notes.isOpen() && !cut.isClosed()) {
            throw neverCloses(x, y);
        }
        cuts.add(cut);
        notes = CutNotes.NONE;
    }

    /** A note behind the last block of a cut is not for this cut, nor clearly for the next. */
    private void requireBlockBehindNote() {
        if (changes.get(changes.size() - 1).block() == blocks.count - firstBlock) {
            throw new TextException(
                    changeLine,
                    changeColumn,
                    Message.of(
                            "note-behind-last-block",
                            "no block of this cut follows the note; write a note for the next cut after the jet is"
                                    + " off"));
        }
    }

    void requireEnd() {
        if (isOn) {
            throw new TextException(
                    onLine, onColumn, Message.of("jet-never-off", "the jet is switched on here and never off"));
        }
    }

    private TextException neverCloses(double x, double y) {
        Message message = Message.of(
                        "contour-not-closed",
                        "the contour that starts here never closes: it ends on line {end_line}, {gap} from its start,"
                                + " and passes no point twice; write (waterjet: open) before it if it need not close")
                .with("end_line", blocks.line[blocks.count - 1])
                .with("gap", Kind.LENGTH, Math.hypot(x - onX, y - onY), Units.MILLIMETRE);
        return new TextException(onLine, onColumn, message);
    }
}

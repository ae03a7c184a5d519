package dev.waterjet.program;

import dev.waterjet.measure.Message;
import dev.waterjet.part.Point;
import dev.waterjet.placement.RigidMove;

/**
 * Rewrites the places of a program for a part that lies elsewhere: X, Y, I and J of every move, with all other characters as they
 * are. The head starts at the origin in both programs.
 */
final class ProgramMover {

    /** An arc by its radius over a wider angle is written by its centre, on which the rounding of its ends acts less. */
    private static final double MAX_RADIUS_ARC = MoveWriter.MAX_RADIUS_ARC + 1e-9;

    private final String text;
    private final ProgramCodes codes;
    private final RigidMove move;
    private final BlockWords words;
    private final ModalState state = new ModalState();
    private final MovedBlock out;

    /** Place of the head as the program states it. */
    private double x;

    private double y;
    private boolean hasMoved;
    private boolean isEnded;

    ProgramMover(PartProgram program, RigidMove move) {
        this.text = program.unrolledText();
        this.codes = program.codes();
        this.move = move;
        this.words = new BlockWords(text);
        this.out = new MovedBlock(text, words, state, codes);
    }

    String moved() {
        ProgramLines.each(text, (line, from, to) -> {
            if (from < to) {
                words.read(line, from, to);
                block();
            }
            return !isEnded;
        });
        return out.text();
    }

    private void block() {
        state.startBlock();
        MachineWords machine = MachineWords.NONE;
        for (int i = 0; i < words.count; i++) {
            if (words.letter[i] == 'G') {
                state.take(words, i, codes);
            } else if (words.letter[i] == 'M') {
                machine = machine.with(words, i, codes);
            }
        }
        isEnded = machine.isEnd();
        out.startBlock();
        if (state.isDwell) {
            return;
        }
        int xWord = words.find('X');
        int yWord = words.find('Y');
        if (state.isShift) {
            shift(xWord, yWord);
            return;
        }
        boolean isArc = state.motion == ModalState.Motion.ARC_LEFT || state.motion == ModalState.Motion.ARC_RIGHT;
        boolean hasCentre = isArc && Math.max(words.find('I'), Math.max(words.find('J'), words.find('R'))) >= 0;
        if (xWord < 0 && yWord < 0 && !hasCentre) {
            return;
        }
        double toX = xWord < 0 ? x : target(xWord, x, state.shiftX);
        double toY = yWord < 0 ? y : target(yWord, y, state.shiftY);
        if (isArc) {
            arc(Math.max(0, Math.max(xWord, yWord)), toX, toY);
        } else {
            out.line(move.apply(Point.ofSi(toX, toY)), toX != x || toY != y);
        }
        x = toX;
        y = toY;
        hasMoved = true;
    }

    private double target(int word, double now, double shift) {
        double number = state.metres(words.number[word]);
        return state.isIncremental ? now + number : number + shift;
    }

    /** A shift names the place of the head, wherever it is: its numbers stay. */
    private void shift(int xWord, int yWord) {
        double toX = xWord < 0 ? x - state.shiftX : state.metres(words, xWord);
        double toY = yWord < 0 ? y - state.shiftY : state.metres(words, yWord);
        if (!hasMoved && (toX != 0 || toY != 0)) {
            throw words.refusal(
                    Math.max(xWord, yWord),
                    Message.of(
                            "origin-at-head",
                            "the program takes its origin from the place where the head stands, so that a location on"
                                    + " the machine does not apply; use a work offset, G54"));
        }
        state.shiftX = x - toX;
        state.shiftY = y - toY;
        out.shift(xWord < 0 ? null : toX, yWord < 0 ? null : toY);
    }

    private void arc(int at, double toX, double toY) {
        int side = state.motion == ModalState.Motion.ARC_LEFT ? 1 : -1;
        double[] centre = ArcReader.centre(words, state, at, x, y, toX, toY, side);
        boolean isByRadius = words.find('R') >= 0;
        boolean isFull = !isByRadius && ArcGeometry.isFullCircle(x, y, toX, toY, centre[0], centre[1]);
        double chord = Math.hypot(toX - x, toY - y);
        double sweep = isFull ? 2 * Math.PI : Math.abs(ArcGeometry.sweep(x, y, toX, toY, centre[0], centre[1], side));
        if (!isFull && chord <= MoveWriter.SHORT_ARC_M && sweep < Math.PI) {
            out.shortArc(move.apply(Point.ofSi(toX, toY)));
        } else if (isByRadius && sweep <= MAX_RADIUS_ARC) {
            out.radiusArc(move.apply(Point.ofSi(toX, toY)));
        } else {
            out.centreArc(move.apply(Point.ofSi(toX, toY)), move.apply(Point.ofSi(centre[0], centre[1])), isFull);
        }
    }
}

package dev.waterjet.program;

import dev.waterjet.feed.FaceGrade;
import dev.waterjet.measure.TextException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Reads a program block by block and keeps what carries over from one to the next. */
final class ProgramReader {

    private static final int MOST_CHARACTERS = 200_000_000;
    private static final double FARTHEST_M = 1000;
    private static final double INCH_M = 0.0254;
    private static final double MILLIMETRE_M = 0.001;

    /** How far the ends of an arc may differ in their distance from its centre, in m. */
    private static final double ARC_TOLERANCE_M = 20e-6;

    /** Incremental positions add up with rounding; nothing that is cut is shorter than this, in m. */
    private static final double ROUNDING_M = 1e-9;

    private static final String FACE = "face:";
    private static final String OPEN = "open cut";

    /** G words that a planner may pass over: plane, compensation off and on, work offsets, cycle off, feed a minute. */
    private static final List<Integer> PASSED_OVER = List.of(17, 40, 41, 42, 54, 55, 56, 57, 58, 59, 80, 94);

    private final String text;
    private final JetWords jetWords;
    private final BlockScanner block;
    private final MoveStore moves = new MoveStore();
    private final List<ProgramContour> contours = new ArrayList<>();

    private int motion;
    private boolean isIncremental;
    private boolean isInch;
    private boolean isJetOn;
    private double x;
    private double y;
    private int jetOnLine;
    private int jetOnColumn;
    private int contourStart;
    private Optional<FaceGrade> grade = Optional.empty();
    private boolean mayBeOpen;

    ProgramReader(String text, JetWords jetWords) {
        if (text.length() > MOST_CHARACTERS) {
            throw new TextException("the program has more than " + MOST_CHARACTERS + " characters");
        }
        this.text = text;
        this.jetWords = jetWords;
        this.block = new BlockScanner(text);
    }

    void read() {
        int line = 1;
        int start = text.startsWith("\uFEFF") ? 1 : 0;
        while (start < text.length()) {
            int end = start;
            while (end < text.length() && text.charAt(end) != '\n' && text.charAt(end) != '\r') {
                end++;
            }
            block.read(line, start, end);
            readBlock();
            if (end + 1 < text.length() && text.charAt(end) == '\r' && text.charAt(end + 1) == '\n') {
                end++;
            }
            start = end + 1;
            line++;
        }
        if (isJetOn) {
            throw new TextException(jetOnLine, jetOnColumn, "the jet is started here and never stopped");
        }
        if (moves.size() == 0) {
            throw new TextException("the program cuts nothing: no line or arc is run while the jet is on (" + jetWords
                    + "; other words can be set)");
        }
    }

    MoveStore moves() {
        return moves;
    }

    List<ProgramContour> contours() {
        return contours;
    }

    private void readBlock() {
        for (int i = 0; i < block.comments(); i++) {
            heed(i);
        }
        BlockWords words = new BlockWords();
        for (int i = 0; i < block.words(); i++) {
            words.take(i);
        }
        // a jet started in a block is on for its move, a jet stopped in it is off behind it
        if (words.jetOn >= 0) {
            startJet(words.jetOn);
        }
        if (!words.isDwell && (words.hasTarget() || words.hasCentre())) {
            move(words);
        }
        if (words.jetOff >= 0) {
            stopJet();
        }
    }

    private void heed(int comment) {
        String said = block.comment(comment).toLowerCase(Locale.ROOT).replaceAll("\\s+", " ");
        if (said.equals(OPEN)) {
            mayBeOpen = true;
        } else if (said.startsWith(FACE)) {
            String wanted = said.substring(FACE.length()).strip().replace('-', ' ');
            for (FaceGrade candidate : FaceGrade.values()) {
                if (candidate.words().equals(wanted)) {
                    grade = Optional.of(candidate);
                    return;
                }
            }
            throw block.fault(
                    block.commentFrom(comment),
                    "\"" + wanted + "\" is no grade of a face: use parting, coarse, medium, fine or extra fine");
        }
    }

    private void startJet(int word) {
        if (isJetOn) {
            throw block.faultAtWord(word, "the jet is started again while it is on");
        }
        isJetOn = true;
        TextException place = block.faultAtWord(word, "");
        jetOnLine = place.line();
        jetOnColumn = place.column();
        contourStart = moves.size();
    }

    private void stopJet() {
        if (isJetOn && moves.size() > contourStart) {
            endContour();
        }
        isJetOn = false;
    }

    private void endContour() {
        int count = moves.size() - contourStart;
        int[] loop = LoopFinder.find(moves, contourStart, moves.size() - 1);
        if (loop == null && !mayBeOpen) {
            throw new TextException(
                    jetOnLine,
                    jetOnColumn,
                    "the contour that starts here never closes: it ends on line " + moves.line(moves.size() - 1)
                            + " and comes back to no point of its own; write (" + OPEN + ") before it if it need not");
        }
        contours.add(new ProgramContour(
                contourStart,
                count,
                loop == null ? 0 : loop[0] - contourStart,
                loop == null ? count : loop[1] - contourStart,
                loop != null,
                grade));
        grade = Optional.empty();
        mayBeOpen = false;
    }

    private void move(BlockWords words) {
        double toX = target(words.x, x);
        double toY = target(words.y, y);
        if (isJetOn) {
            if (motion == 0) {
                throw block.faultAtWord(words.firstTarget(), "a rapid move (G0) while the jet is on");
            }
            if (words.z >= 0) {
                throw block.faultAtWord(
                        words.z, "a move of the height while the jet is on: this reader plans in the plane");
            }
            int feedFrom = words.feed >= 0 ? block.from(words.feed) : block.to(block.words() - 1);
            int feedTo = words.feed >= 0 ? block.to(words.feed) : feedFrom;
            moves.add(motion == 1 ? line(toX, toY, words) : arc(toX, toY, words), feedFrom, feedTo, isInch);
        } else if (motion >= 2) {
            arc(toX, toY, words);
        }
        x = toX;
        y = toY;
    }

    private double target(int word, double from) {
        if (word < 0) {
            return from;
        }
        double metres = block.value(word) * unit();
        double to = isIncremental ? from + metres : metres;
        if (!(Math.abs(to) <= FARTHEST_M)) {
            throw block.faultAtWord(word, block.written(word) + " lies more than 1000 m from the origin");
        }
        return to;
    }

    private double unit() {
        return isInch ? INCH_M : MILLIMETRE_M;
    }

    private int lineNumber() {
        return block.faultAtWord(0, "").line();
    }

    private ProgramMove line(double toX, double toY, BlockWords words) {
        if (words.hasCentre() || words.radius >= 0) {
            throw block.faultAtWord(words.firstOfArc(), "I, J and R belong to an arc (G2, G3), not to a line");
        }
        if (isHere(toX, toY)) {
            throw block.faultAtWord(words.firstTarget(), "the line has no length: it ends where it starts");
        }
        return new ProgramMove(lineNumber(), ProgramMove.Shape.LINE, x, y, toX, toY, x, y);
    }

    private ProgramMove arc(double toX, double toY, BlockWords words) {
        if (words.radius >= 0 && words.hasCentre()) {
            throw block.faultAtWord(words.radius, "an arc has a radius (R) or a centre (I, J), not both");
        }
        if (words.radius < 0 && !words.hasCentre()) {
            throw block.faultAtWord(words.firstTarget(), "the arc has neither a centre (I, J) nor a radius (R)");
        }
        double[] centre = words.radius >= 0 ? centreByRadius(toX, toY, words.radius) : centreByOffset(toX, toY, words);
        boolean isCircle = isHere(toX, toY);
        return new ProgramMove(
                lineNumber(),
                motion == 2 ? ProgramMove.Shape.CLOCKWISE : ProgramMove.Shape.COUNTER_CLOCKWISE,
                x,
                y,
                isCircle ? x : toX,
                isCircle ? y : toY,
                centre[0],
                centre[1]);
    }

    /** Whether a point is the present one but for the rounding of sums. */
    private boolean isHere(double toX, double toY) {
        return Math.hypot(toX - x, toY - y) < ROUNDING_M;
    }

    private double[] centreByOffset(double toX, double toY, BlockWords words) {
        double centreX = x + (words.i < 0 ? 0 : block.value(words.i) * unit());
        double centreY = y + (words.j < 0 ? 0 : block.value(words.j) * unit());
        double atStart = Math.hypot(x - centreX, y - centreY);
        double atEnd = Math.hypot(toX - centreX, toY - centreY);
        if (!(atStart > 0) || atStart > FARTHEST_M) {
            throw block.faultAtWord(words.firstOfArc(), "the arc's radius must be above 0 and at most 1000 m");
        }
        if (Math.abs(atStart - atEnd) > ARC_TOLERANCE_M) {
            throw block.faultAtWord(
                    words.firstOfArc(),
                    String.format(
                            Locale.ROOT,
                            "the arc's ends do not fit its centre: they lie %.4f and %.4f %s from it",
                            atStart / unit(),
                            atEnd / unit(),
                            isInch ? "in" : "mm"));
        }
        return new double[] {centreX, centreY};
    }

    private double[] centreByRadius(double toX, double toY, int word) {
        double radius = block.value(word) * unit();
        double chord = Math.hypot(toX - x, toY - y);
        if (chord < ROUNDING_M) {
            throw block.faultAtWord(word, "an arc that ends where it starts needs a centre (I, J): R leaves it open");
        }
        double reach = 2 * Math.abs(radius);
        if (!(reach > 0) || chord > reach + ARC_TOLERANCE_M || Math.abs(radius) > FARTHEST_M) {
            throw block.faultAtWord(
                    word,
                    String.format(
                            Locale.ROOT,
                            "the arc's ends do not fit its radius: they lie %.4f %s apart, more than 2 R",
                            chord / unit(),
                            isInch ? "in" : "mm"));
        }
        // the centre lies off the middle of the chord; R below zero asks for the longer arc
        double off = Math.sqrt(Math.max(0, radius * radius - chord * chord / 4));
        double side = (motion == 3) == (radius > 0) ? 1 : -1;
        return new double[] {
            (x + toX) / 2 - side * off * (toY - y) / chord, (y + toY) / 2 + side * off * (toX - x) / chord
        };
    }

    /** The words of one block by their letter; -1 where there is none. */
    private final class BlockWords {

        private int x = -1;
        private int y = -1;
        private int z = -1;
        private int i = -1;
        private int j = -1;
        private int radius = -1;
        private int feed = -1;
        private int motionWord = -1;
        private int jetOn = -1;
        private int jetOff = -1;
        private boolean isDwell;

        void take(int word) {
            switch (block.letter(word)) {
                case 'G' -> takeG(word);
                case 'M' -> takeM(word);
                case 'X' -> x = once(x, word);
                case 'Y' -> y = once(y, word);
                case 'Z' -> z = once(z, word);
                case 'I' -> i = once(i, word);
                case 'J' -> j = once(j, word);
                case 'R' -> radius = once(radius, word);
                case 'F' -> feed = once(feed, word);
                case 'N', 'O', 'S', 'T', 'D', 'H', 'P' -> {
                    // block and program number, machine functions, time of a dwell: kept as they are
                }
                default ->
                    throw block.faultAtWord(word, "the word " + block.written(word) + " is not known to this reader");
            }
        }

        private int once(int before, int word) {
            if (before >= 0) {
                throw block.faultAtWord(word, "the word " + block.letter(word) + " stands twice in one block");
            }
            return word;
        }

        private void takeG(int word) {
            double value = block.value(word);
            int g = (int) value;
            if (g != value || g < 0) {
                throw unknownG(word);
            }
            switch (g) {
                case 0, 1, 2, 3 -> {
                    motionWord = once(motionWord, word);
                    motion = g;
                }
                case 4 -> isDwell = true;
                case 20, 70 -> isInch = true;
                case 21, 71 -> isInch = false;
                case 90 -> isIncremental = false;
                case 91 -> isIncremental = true;
                default -> {
                    if (!PASSED_OVER.contains(g)) {
                        throw unknownG(word);
                    }
                }
            }
        }

        private TextException unknownG(int word) {
            return block.faultAtWord(
                    word,
                    "the word " + block.written(word)
                            + " is not known to this reader: it knows G0 to G4, G20, G21, G70, G71, G90, G91 and passes"
                            + " over G17, G40 to G42, G54 to G59, G80, G94");
        }

        private void takeM(int word) {
            double value = block.value(word);
            int m = (int) value;
            if (m != value || m < 0) {
                throw block.faultAtWord(word, "an M word has a whole number");
            }
            if (jetWords.isOn(m)) {
                jetOn = once(jetOn, word);
            } else if (jetWords.isOff(m)) {
                jetOff = once(jetOff, word);
            }
        }

        boolean hasTarget() {
            return x >= 0 || y >= 0;
        }

        boolean hasCentre() {
            return i >= 0 || j >= 0;
        }

        int firstTarget() {
            return x >= 0 ? x : y >= 0 ? y : Math.max(0, motionWord);
        }

        int firstOfArc() {
            return i >= 0 ? i : j >= 0 ? j : radius;
        }
    }
}

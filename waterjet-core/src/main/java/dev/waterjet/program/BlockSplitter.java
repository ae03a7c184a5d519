package dev.waterjet.program;

import dev.waterjet.part.EdgeCursor;
import java.math.BigDecimal;

/** Text of one cutting block, split where its feed changes. */
final class BlockSplitter {

    private final ProgramCodes codes;
    private final ProgramBlocks blocks;
    private final String text;
    private final BlockWords words;
    private final EdgeCursor edge = new EdgeCursor();

    BlockSplitter(PartProgram program) {
        this.codes = program.codes();
        this.blocks = program.blocks();
        this.text = program.unrolledText();
        this.words = new BlockWords(text);
    }

    /** Writes a block without the end of its last line. */
    void write(int block, BlockStretches pieces, StringBuilder out) {
        int from = blocks.lineFrom[block];
        int to = blocks.lineTo[block];
        words.read(blocks.line[block], from, to);
        blocks.load(block, edge);
        if (pieces.count == 1 || !isSplittable(block)) {
            double feed = pieces.pathM() / pieces.totalS();
            out.append(text, from, blocks.feedFrom[block]);
            out.append(blocks.feedFrom[block] == blocks.feedTo[block] ? blankAt(blocks.feedFrom[block]) : "");
            out.append('F').append(ProgramNumbers.feed(feed, blocks.unitM(block)));
            out.append(text, blocks.feedTo[block], to);
            return;
        }
        if (edge.isArc() && words.find('R') >= 0) {
            pieces.subdivide(MoveWriter.MAX_RADIUS_ARC * edge.radius());
        }
        SplitPlaces places = new SplitPlaces(blocks, block, edge, words, codes, pieces);
        String blank = blankAt(blocks.feedFrom[block]);
        first(block, places, blank, out);
        for (int i = 1; i < pieces.count; i++) {
            out.append(lineEnding(to));
            out.append(places.motion());
            join(out, blank, places.words(i));
            join(out, blank, places.feed(i));
            if (i + 1 == pieces.count) {
                endWords(blank, out);
            }
        }
    }

    /** Words that take effect at the end of a block, or in the course of its whole move, belong to no part of it. */
    private boolean isSplittable(int block) {
        if (words.find('Z') >= 0 || blocks.changesOffset(block)) {
            return false;
        }
        for (int i = 0; i < words.count; i++) {
            double number = words.number[i];
            if (words.letter[i] == 'G' && number >= 40 && number <= 42) {
                return false;
            }
        }
        return true;
    }

    /** The first part: the words of the block with other places, and without those that take effect at its end. */
    private void first(int block, SplitPlaces places, String blank, StringBuilder out) {
        int at = blocks.lineFrom[block];
        boolean hasPlaces = false;
        for (int i = 0; i < words.count; i++) {
            char letter = words.letter[i];
            boolean isPlace = "XYIJR".indexOf(letter) >= 0;
            int start = words.from[i];
            if (isPlace && !hasPlaces) {
                out.append(text, at, start);
                appendWords(out, blank, places.words(0));
                hasPlaces = true;
            } else if (isPlace || letter == 'F' || isEndWord(i)) {
                // with the blanks before it
                out.append(text.substring(at, start).stripTrailing());
            } else {
                out.append(text, at, words.to[i]);
            }
            at = words.to[i];
            if (i + 1 == words.count) {
                join(out, blank, places.feed(0));
            }
        }
        out.append(text, at, blocks.lineTo[block]);
    }

    private static void appendWords(StringBuilder out, String blank, String list) {
        out.append(blank.isEmpty() ? list.replace(" ", "") : list);
    }

    private static void join(StringBuilder out, String blank, String list) {
        if (!list.isEmpty()) {
            out.append(blank);
            appendWords(out, blank, list);
        }
    }

    private boolean isEndWord(int word) {
        double number = words.number[word];
        return words.letter[word] == 'M'
                && (number == codes.jetOff() || number == 0 || number == 1 || number == 2 || number == 30);
    }

    private void endWords(String blank, StringBuilder out) {
        for (int i = 0; i < words.count; i++) {
            if (isEndWord(i)) {
                join(out, blank, words.written(i));
            }
        }
    }

    /** A blank where the line that ends at an offset separates its words by blanks; else nothing. */
    String blankAt(int end) {
        for (int i = end - 1; i >= 0; i--) {
            char c = text.charAt(i);
            if (c == ' ' || c == '\t') {
                return " ";
            }
            if (c == '\n' || c == '\r') {
                return "";
            }
        }
        return "";
    }

    /** End of the line at an offset; that of the dialect for the last line. */
    String lineEnding(int at) {
        if (at >= text.length()) {
            return codes.lineEnding();
        }
        boolean isPair = text.charAt(at) == '\r' && at + 1 < text.length() && text.charAt(at + 1) == '\n';
        return isPair ? "\r\n" : String.valueOf(text.charAt(at));
    }

    /** A word with its number. */
    static String word(char letter, BigDecimal number) {
        return letter + ProgramNumbers.plain(number);
    }
}

package dev.waterjet.program;

import dev.waterjet.part.EdgeCursor;
import java.math.BigDecimal;

/** Places and feeds of the parts of a split block, in the words of the block: absolute or incremental, by centre or radius. */
final class SplitPlaces {

    /** Decimals of a place that the block does not state. */
    private static final int FULL_DECIMALS = 6;

    private final ProgramBlocks blocks;
    private final int block;
    private final EdgeCursor edge;
    private final BlockWords words;
    private final BlockStretches pieces;
    private final double unitM;
    private final int decimals;
    private final boolean isIncremental;
    private final int radiusWord;

    /** Places in m as they are written, and the numbers of their words. */
    private final double[] placeX;

    private final double[] placeY;
    private final BigDecimal[] wordX;
    private final BigDecimal[] wordY;

    SplitPlaces(
            ProgramBlocks blocks,
            int block,
            EdgeCursor edge,
            BlockWords words,
            ProgramCodes codes,
            BlockStretches pieces) {
        this.blocks = blocks;
        this.block = block;
        this.edge = edge;
        this.words = words;
        this.pieces = pieces;
        this.unitM = blocks.unitM(block);
        this.decimals = ProgramNumbers.decimals(codes, blocks.has(block, ProgramBlocks.INCH));
        this.isIncremental = blocks.has(block, ProgramBlocks.INCREMENTAL);
        this.radiusWord = words.find('R');
        int count = pieces.count;
        this.placeX = new double[count + 1];
        this.placeY = new double[count + 1];
        this.wordX = new BigDecimal[count];
        this.wordY = new BigDecimal[count];
        placeX[0] = edge.startX();
        placeY[0] = edge.startY();
        double length = edge.length();
        for (int i = 0; i < count; i++) {
            double share = pieces.end[i] / length;
            boolean isLast = i + 1 == count;
            wordX[i] = isLast ? last('X', edge.endX(), wordX) : at(x(share), 'X', wordX, i);
            wordY[i] = isLast ? last('Y', edge.endY(), wordY) : at(y(share), 'Y', wordY, i);
            placeX[i + 1] = isLast ? edge.endX() : place(wordX, i, 'X');
            placeY[i + 1] = isLast ? edge.endY() : place(wordY, i, 'Y');
        }
    }

    private double x(double share) {
        return edge.isArc() ? edge.centreX() + widening(share) * (edge.xAt(share) - edge.centreX()) : edge.xAt(share);
    }

    private double y(double share) {
        return edge.isArc() ? edge.centreY() + widening(share) * (edge.yAt(share) - edge.centreY()) : edge.yAt(share);
    }

    /** The ends of an arc may lie at slightly different radii; places between share the difference. */
    private double widening(double share) {
        double end = Math.hypot(edge.endX() - edge.centreX(), edge.endY() - edge.centreY());
        return 1 + share * (end / edge.radius() - 1);
    }

    private double origin(char axis) {
        if (isIncremental) {
            return axis == 'X' ? edge.startX() : edge.startY();
        }
        return axis == 'X' ? blocks.originX[block] : blocks.originY[block];
    }

    /** Number of the word of a place between: from the origin, or from the part before. */
    private BigDecimal at(double place, char axis, BigDecimal[] before, int count) {
        BigDecimal fromOrigin = ProgramNumbers.rounded(place - origin(axis), unitM, decimals);
        return isIncremental ? fromOrigin.subtract(sum(before, count)) : fromOrigin;
    }

    /** Number of the word of the end, which is that of the block itself. */
    private BigDecimal last(char axis, double end, BigDecimal[] before) {
        int word = words.find(axis);
        BigDecimal whole;
        if (word >= 0) {
            whole = BigDecimal.valueOf(words.number[word]);
        } else {
            whole = isIncremental
                    ? BigDecimal.ZERO
                    : ProgramNumbers.rounded(end - origin(axis), unitM, Math.max(decimals, FULL_DECIMALS));
        }
        return isIncremental ? whole.subtract(sum(before, before.length - 1)) : whole;
    }

    private static BigDecimal sum(BigDecimal[] numbers, int count) {
        BigDecimal sum = BigDecimal.ZERO;
        for (int i = 0; i < count; i++) {
            sum = sum.add(numbers[i]);
        }
        return sum;
    }

    private double place(BigDecimal[] numbers, int index, char axis) {
        BigDecimal fromOrigin = isIncremental ? sum(numbers, index + 1) : numbers[index];
        return origin(axis) + fromOrigin.doubleValue() * unitM;
    }

    /** Motion word of the block. */
    String motion() {
        return edge.isArc() ? (edge.sweep() > 0 ? "G3" : "G2") : "G1";
    }

    /** Words of the place, and of the centre of an arc, of a part. */
    String words(int part) {
        StringBuilder list = new StringBuilder();
        if (edge.isArc() || words.find('X') >= 0) {
            list.append(BlockSplitter.word('X', wordX[part]));
        }
        if (edge.isArc() || words.find('Y') >= 0) {
            list.append(list.length() == 0 ? "" : " ").append(BlockSplitter.word('Y', wordY[part]));
        }
        if (edge.isArc() && radiusWord >= 0) {
            BigDecimal radius = BigDecimal.valueOf(Math.abs(words.number[radiusWord]));
            list.append(' ').append(BlockSplitter.word('R', radius));
        } else if (edge.isArc()) {
            list.append(' ').append(BlockSplitter.word('I', centreX(part)));
            list.append(' ').append(BlockSplitter.word('J', centreY(part)));
        } else if (radiusWord >= 0) {
            // an arc so short that it was read as a line
            list.append(' ').append(words.written(radiusWord));
        }
        return list.toString();
    }

    private BigDecimal centreX(int part) {
        return centre('I', edge.centreX(), blocks.originX[block], placeX[part], part);
    }

    private BigDecimal centreY(int part) {
        return centre('J', edge.centreY(), blocks.originY[block], placeY[part], part);
    }

    private BigDecimal centre(char letter, double centre, double originM, double start, int part) {
        boolean isAbsolute = blocks.has(block, ProgramBlocks.CENTRE_ABSOLUTE);
        int word = words.find(letter);
        if (word >= 0 && (isAbsolute || part == 0)) {
            return BigDecimal.valueOf(words.number[word]);
        }
        return isAbsolute
                ? ProgramNumbers.rounded(centre - originM, unitM, Math.max(decimals, FULL_DECIMALS))
                : ProgramNumbers.rounded(centre - start, unitM, decimals);
    }

    /** Feed word of a part: its length as it is written, times what the control runs for each metre of it, over its time. */
    String feed(int part) {
        return 'F' + ProgramNumbers.feed(length(part) * pieces.pathRatio(part) / pieces.timeS[part], unitM);
    }

    private double length(int part) {
        double x0 = placeX[part];
        double y0 = placeY[part];
        double x1 = placeX[part + 1];
        double y1 = placeY[part + 1];
        if (!edge.isArc()) {
            return Math.hypot(x1 - x0, y1 - y0);
        }
        int turn = edge.sweep() > 0 ? 1 : -1;
        if (radiusWord >= 0) {
            double chord = Math.hypot(x1 - x0, y1 - y0);
            double angle = 2 * Math.asin(Math.min(1, chord / 2 / edge.radius()));
            return edge.radius() * angle;
        }
        boolean isAbsolute = blocks.has(block, ProgramBlocks.CENTRE_ABSOLUTE);
        double atX = (isAbsolute ? blocks.originX[block] : x0) + centreX(part).doubleValue() * unitM;
        double atY = (isAbsolute ? blocks.originY[block] : y0) + centreY(part).doubleValue() * unitM;
        return ArcGeometry.length(x0, y0, x1, y1, atX, atY, turn);
    }
}

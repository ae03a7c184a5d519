package dev.waterjet.program;

/** Rounding of the coordinates of a cut, by the decimal places of its words. */
final class WordRounding {

    /** Places after the point that are taken as written where there are fewer: X10 is 10.000 mm, or 10.0000 in. */
    private static final int MIN_METRIC_PLACES = 3;

    private static final int MIN_INCH_PLACES = 4;

    private WordRounding() {}

    /** Last place of the coordinates of a range of blocks, in m. */
    static double placeM(ProgramBlocks blocks, int first, int end, String text) {
        int places = blocks.has(first, ProgramBlocks.INCH) ? MIN_INCH_PLACES : MIN_METRIC_PLACES;
        for (int block = first; block < end; block++) {
            for (int at = blocks.lineFrom[block]; at < blocks.lineTo[block]; at++) {
                char letter = Character.toUpperCase(text.charAt(at));
                if (letter == '(' || letter == ';') {
                    break;
                }
                if ("XYIJ".indexOf(letter) >= 0) {
                    places = Math.max(places, placesOfNumber(text, at + 1, blocks.lineTo[block]));
                }
            }
        }
        return blocks.unitM(first) * Math.pow(10, -places);
    }

    private static int placesOfNumber(String text, int from, int end) {
        int point = -1;
        int at = from;
        while (at < end && (" +-.".indexOf(text.charAt(at)) >= 0 || Character.isDigit(text.charAt(at)))) {
            point = text.charAt(at) == '.' ? at : point;
            at++;
        }
        int last = at;
        while (last > from && text.charAt(last - 1) == ' ') {
            last--;
        }
        return point < 0 ? 0 : last - point - 1;
    }
}

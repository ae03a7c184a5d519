package dev.waterjet.program;

import dev.waterjet.measure.QuantityText;

/** Finds the centre of an arc from the words of its block. */
final class ArcReader {

    private ArcReader() {}

    static double[] centre(
            BlockWords words, ModalState state, int at, double x, double y, double toX, double toY, int turn) {
        int iWord = words.find('I');
        int jWord = words.find('J');
        int rWord = words.find('R');
        if (words.find('Z') >= 0) {
            throw words.faultAtWord(words.find('Z'), "an arc with Z is a helix; the jet cuts in the XY plane");
        }
        if (rWord >= 0) {
            if (iWord >= 0 || jWord >= 0) {
                throw words.faultAtWord(rWord, "an arc has either R or a centre by I and J");
            }
            return byRadius(words, rWord, state.metres(words, rWord), x, y, toX, toY, turn);
        }
        if (iWord < 0 && jWord < 0) {
            throw words.faultAtWord(at, "an arc needs its centre, by I and J, or its radius, by R");
        }
        double i = iWord < 0 ? Double.NaN : state.metres(words, iWord);
        double j = jWord < 0 ? Double.NaN : state.metres(words, jWord);
        double atX = state.isCentreAbsolute ? (iWord < 0 ? x : i + state.shiftX) : x + (iWord < 0 ? 0 : i);
        double atY = state.isCentreAbsolute ? (jWord < 0 ? y : j + state.shiftY) : y + (jWord < 0 ? 0 : j);
        double atStart = Math.hypot(x - atX, y - atY);
        double atEnd = Math.hypot(toX - atX, toY - atY);
        int word = Math.max(iWord, jWord);
        if (Math.min(atStart, atEnd) < ArcKernel.SHORTEST_M) {
            throw words.faultAtWord(word, "the arc has no radius");
        }
        if (Math.abs(atStart - atEnd) > ArcKernel.ROUNDING_M) {
            throw words.faultAtWord(
                    word,
                    "the ends of the arc do not fit its centre: it starts " + told(atStart) + " from it and ends "
                            + told(atEnd) + " from it");
        }
        return new double[] {atX, atY};
    }

    private static double[] byRadius(
            BlockWords words, int word, double radius, double x, double y, double toX, double toY, int turn) {
        double chord = Math.hypot(toX - x, toY - y);
        if (chord < ArcKernel.SHORTEST_M) {
            throw words.faultAtWord(word, "a full circle cannot be told by its radius; write its centre by I and J");
        }
        if (Math.abs(radius) < ArcKernel.SHORTEST_M) {
            throw words.faultAtWord(word, "the arc has no radius");
        }
        if (chord > 2 * Math.abs(radius) + ArcKernel.ROUNDING_M) {
            throw words.faultAtWord(
                    word,
                    "the ends of the arc do not fit its radius: they lie " + told(chord) + " apart, more than twice "
                            + told(Math.abs(radius)));
        }
        double offset = ArcKernel.centreOffset(chord, radius, turn);
        return new double[] {(x + toX) / 2 - offset * (toY - y) / chord, (y + toY) / 2 + offset * (toX - x) / chord};
    }

    private static String told(double lengthM) {
        return QuantityText.round(lengthM * 1000, 6) + " mm";
    }
}

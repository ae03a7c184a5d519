package dev.waterjet.program;

import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.Units;

/** Centre of an arc from the words of its block. */
final class ArcReader {

    private ArcReader() {}

    static double[] centre(
            BlockWords words, ModalState state, int at, double x, double y, double toX, double toY, int turn) {
        int iWord = words.find('I');
        int jWord = words.find('J');
        int rWord = words.find('R');
        if (words.find('Z') >= 0) {
            throw words.refusal(
                    words.find('Z'),
                    Message.of("helix", "an arc with {word} is a helix; the jet cuts in the XY plane"));
        }
        if (rWord >= 0) {
            if (iWord >= 0 || jWord >= 0) {
                throw words.refusal(
                        rWord,
                        Message.of("radius-and-centre", "an arc has either a radius {word} or a centre by I and J"));
            }
            return byRadius(words, rWord, state.metres(words, rWord), x, y, toX, toY, turn);
        }
        if (iWord < 0 && jWord < 0) {
            throw words.refusal(
                    at,
                    Message.of("arc-without-centre", "an arc requires its centre, by I and J, or its radius, by R"));
        }
        double i = iWord < 0 ? Double.NaN : state.metres(words, iWord);
        double j = jWord < 0 ? Double.NaN : state.metres(words, jWord);
        double atX = state.isCentreAbsolute ? (iWord < 0 ? x : i + state.shiftX) : x + (iWord < 0 ? 0 : i);
        double atY = state.isCentreAbsolute ? (jWord < 0 ? y : j + state.shiftY) : y + (jWord < 0 ? 0 : j);
        return checked(words, Math.max(iWord, jWord), atX, atY, x, y, toX, toY);
    }

    private static double[] checked(
            BlockWords words, int word, double atX, double atY, double x, double y, double toX, double toY) {
        double atStart = Math.hypot(x - atX, y - atY);
        double atEnd = Math.hypot(toX - atX, toY - atY);
        if (Math.min(atStart, atEnd) < ArcGeometry.MIN_LENGTH_M) {
            throw words.refusal(word, Message.of("zero-radius", "the arc has no radius"));
        }
        if (Math.abs(atStart - atEnd) > ArcGeometry.ROUNDING_M) {
            throw words.refusal(
                    word,
                    Message.of(
                                    "arc-misses-centre",
                                    "the ends of the arc do not fit its centre: the start radius is {start_radius}, the"
                                            + " end radius {end_radius}")
                            .with("start_radius", Kind.LENGTH, atStart, Units.MILLIMETRE)
                            .with("end_radius", Kind.LENGTH, atEnd, Units.MILLIMETRE));
        }
        return new double[] {atX, atY};
    }

    private static double[] byRadius(
            BlockWords words, int word, double radius, double x, double y, double toX, double toY, int turn) {
        double chord = Math.hypot(toX - x, toY - y);
        if (chord < ArcGeometry.MIN_LENGTH_M) {
            throw words.refusal(
                    word,
                    Message.of(
                            "circle-by-radius",
                            "a full circle is not defined by its radius; write its centre by I and J"));
        }
        if (Math.abs(radius) < ArcGeometry.MIN_LENGTH_M) {
            throw words.refusal(word, Message.of("zero-radius", "the arc has no radius"));
        }
        if (chord > 2 * Math.abs(radius) + ArcGeometry.ROUNDING_M) {
            throw words.refusal(
                    word,
                    Message.of(
                                    "arc-misses-radius",
                                    "the ends of the arc do not fit its radius: their distance {chord} exceeds twice"
                                            + " {radius}")
                            .with("chord", Kind.LENGTH, chord, Units.MILLIMETRE)
                            .with("radius", Kind.LENGTH, Math.abs(radius), Units.MILLIMETRE));
        }
        double offset = ArcGeometry.centreOffset(chord, radius, turn);
        return new double[] {(x + toX) / 2 - offset * (toY - y) / chord, (y + toY) / 2 + offset * (toX - x) / chord};
    }
}

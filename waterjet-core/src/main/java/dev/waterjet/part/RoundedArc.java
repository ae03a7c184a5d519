package dev.waterjet.part;

import dev.waterjet.measure.Message;
import org.jspecify.annotations.Nullable;

/**
 * Arc from its ends and a centre that were rounded: the centre is moved onto the line of equal distances, so that one circle
 * passes through both ends.
 *
 * <p>Where both ends nearly coincide, that line does not determine the circle, and an arc of no length and a full circle look
 * alike. Ends nearer than a ten-thousandth of an inch are taken for one point: no format in use writes arcs that short. Up to
 * the accepted rounding they are one point if they differ across the path rather than along it.
 *
 * @param centreX x of the centre in m
 * @param centreY y of the centre in m
 * @param sweepRad signed sweep
 * @param isFullCircle whether the ends are one point
 * @param fault the refusal; null if the arc is drawn
 */
record RoundedArc(
        double centreX,
        double centreY,
        double sweepRad,
        boolean isFullCircle,
        @Nullable Message fault) {

    /** Largest difference of the distances of both ends from the centre. */
    static final double ROUNDING_M = 1e-5;

    /** A ten-thousandth of an inch. */
    private static final double ONE_POINT_M = 2.55e-6;

    static RoundedArc of(double x0, double y0, double x1, double y1, double atX, double atY, int turn) {
        double atStart = Math.hypot(x0 - atX, y0 - atY);
        double atEnd = Math.hypot(x1 - atX, y1 - atY);
        if (Math.min(atStart, atEnd) <= EdgeArrays.TOUCH_M) {
            return refused(ContourCheck.noRadius());
        }
        if (Math.abs(atStart - atEnd) > ROUNDING_M) {
            return refused(ContourCheck.radiiDiffer(atStart, atEnd, ROUNDING_M));
        }
        double chordX = x1 - x0;
        double chordY = y1 - y0;
        double chord = Math.hypot(chordX, chordY);
        if (isOnePoint(chord, atStart, atEnd)) {
            return new RoundedArc(atX, atY, turn * 2 * Math.PI, true, null);
        }
        double off = ((atX - (x0 + x1) / 2) * chordX + (atY - (y0 + y1) / 2) * chordY) / (chord * chord);
        double onX = atX - off * chordX;
        double onY = atY - off * chordY;
        double sweep = angle(x0, y0, x1, y1, onX, onY, turn);
        double length = sweep * Math.hypot(x0 - onX, y0 - onY);
        double given = angle(x0, y0, x1, y1, atX, atY, turn) * atStart;
        // the centre may move along a short chord by more than the rounding, as long as the arc itself does not
        if (Math.abs(length - given) > 2 * ROUNDING_M && Math.abs(off) * chord > ROUNDING_M) {
            return refused(ContourCheck.radiiDiffer(atStart, atEnd, ROUNDING_M));
        }
        return new RoundedArc(onX, onY, turn * sweep, false, null);
    }

    private static RoundedArc refused(Message fault) {
        return new RoundedArc(0, 0, 0, false, fault);
    }

    private static boolean isOnePoint(double chord, double atStart, double atEnd) {
        boolean isWide = Math.min(atStart, atEnd) > 10 * ROUNDING_M;
        boolean isAcross = Math.abs(atStart - atEnd) > chord / 2;
        return chord <= EdgeArrays.TOUCH_M || (isWide && (chord <= ONE_POINT_M || (chord <= ROUNDING_M && isAcross)));
    }

    /** Angle from one point to another about a centre in the sense of a turn, above 0 to 2 pi. */
    private static double angle(double x0, double y0, double x1, double y1, double atX, double atY, int turn) {
        double cross = (x0 - atX) * (y1 - atY) - (y0 - atY) * (x1 - atX);
        double dot = (x0 - atX) * (x1 - atX) + (y0 - atY) * (y1 - atY);
        double angle = Math.atan2(cross, dot) * turn;
        return angle > 0 ? angle : angle + 2 * Math.PI;
    }
}

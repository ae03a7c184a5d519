package dev.waterjet.part;

/**
 * Moves the joints of lines and arcs to the vertex at which the line touches the circle. A line that leaves its vertex first
 * runs into the arc behind it until the tolerance is used up, {@code sqrt(2 e R)} too far; an arc before a line likewise.
 */
final class JointShift {

    private static final int MAX_ROUNDS = 3;
    private static final int PASSES = 2;

    private final EdgeArrays path;
    private final PieceList pieces;
    private final PieceCheck ofLine;
    private final PieceCheck ofArc;

    private double sweep;
    private double centreX;
    private double centreY;

    JointShift(EdgeArrays path, PieceList pieces, double tolerance) {
        this.path = path;
        this.pieces = pieces;
        this.ofLine = new PieceCheck(path, PieceList.limit(tolerance));
        this.ofArc = new PieceCheck(path, PieceList.limit(tolerance));
    }

    void run() {
        // twice, since the far end of an arc may have moved
        for (int pass = 0; pass < PASSES; pass++) {
            for (int i = 0; i + 1 < pieces.size; i++) {
                boolean isLineFirst = pieces.sweep[i] == 0;
                int arc = isLineFirst ? i + 1 : i;
                if (isLineFirst != (pieces.sweep[i + 1] == 0)
                        && pieces.last[arc] > pieces.first[arc]
                        && path.isAlike(pieces.last[i], pieces.first[i + 1])) {
                    shift(i, isLineFirst);
                }
            }
        }
    }

    private void shift(int i, boolean isLineFirst) {
        int line = isLineFirst ? i : i + 1;
        int arc = isLineFirst ? i + 1 : i;
        for (int round = 0; round < MAX_ROUNDS; round++) {
            int joint = nearestToTouch(i, line, arc);
            int from = pieces.first[i];
            int to = pieces.last[i + 1] + 1;
            if (joint == pieces.first[i + 1] || joint <= from || joint >= to) {
                return;
            }
            int far = isLineFirst ? from : to;
            int other = isLineFirst ? to : from;
            ofLine.line(Math.min(joint, far), Math.max(joint, far));
            if (!ofLine.isWithin(Math.min(joint, far), Math.max(joint, far) - 1)
                    || !((touching(joint, far, other) && isArcWithin(arc, joint, other))
                            || (threePoint(joint, other) && isArcWithin(arc, joint, other)))) {
                return;
            }
            pieces.replace(line, Math.min(joint, far), Math.max(joint, far) - 1, 0, 0, 0, ofLine);
            pieces.replace(arc, Math.min(joint, other), Math.max(joint, other) - 1, sweep, centreX, centreY, ofArc);
        }
    }

    private boolean isArcWithin(int arc, int joint, int other) {
        int from = Math.min(joint, other);
        int to = Math.max(joint, other);
        double radius = Math.hypot(path.x()[joint] - centreX, path.y()[joint] - centreY);
        if (sweep * pieces.sweep[arc] <= 0 || !pieces.isFineEnough(from, to - 1, radius)) {
            return false;
        }
        ofArc.arc(from, to, centreX, centreY, sweep);
        return ofArc.isWithin(from, to - 1);
    }

    /** The vertex of both pieces nearest to the projection of the circle's centre onto the line, going from the joint. */
    private int nearestToTouch(int i, int line, int arc) {
        int start = pieces.first[line];
        int end = pieces.last[line] + 1;
        double dx = path.x()[end] - path.x()[start];
        double dy = path.y()[end] - path.y()[start];
        double share = ((pieces.centreX[arc] - path.x()[start]) * dx + (pieces.centreY[arc] - path.y()[start]) * dy)
                / (dx * dx + dy * dy);
        double x = path.x()[start] + share * dx;
        double y = path.y()[start] + share * dy;
        int joint = pieces.first[i + 1];
        int step = distance2(joint - 1, x, y) < distance2(joint, x, y) ? -1 : 1;
        while (joint + step > pieces.first[i]
                && joint + step <= pieces.last[i + 1]
                && distance2(joint + step, x, y) < distance2(joint, x, y)) {
            joint += step;
        }
        return joint;
    }

    private double distance2(int vertex, double x, double y) {
        double dx = path.x()[vertex] - x;
        double dy = path.y()[vertex] - y;
        return dx * dx + dy * dy;
    }

    /** The arc between the joint and its other end that touches the line from the joint to {@code far}. */
    private boolean touching(int joint, int far, int other) {
        double alongX = path.x()[joint] - path.x()[far];
        double alongY = path.y()[joint] - path.y()[far];
        double chordX = path.x()[other] - path.x()[joint];
        double chordY = path.y()[other] - path.y()[joint];
        return setArc(joint, other, turn(alongX, alongY, chordX, chordY));
    }

    /** The arc between the joint and its other end through the vertex half-way. */
    private boolean threePoint(int joint, int other) {
        int middle = (joint + other) / 2;
        double ax = path.x()[middle] - path.x()[joint];
        double ay = path.y()[middle] - path.y()[joint];
        double bx = path.x()[other] - path.x()[middle];
        double by = path.y()[other] - path.y()[middle];
        return middle != joint && middle != other && setArc(joint, other, turn(ax, ay, bx, by));
    }

    /** Angle from one direction to another, positive to the left. */
    private static double turn(double ax, double ay, double bx, double by) {
        return Math.atan2(ax * by - ay * bx, ax * bx + ay * by);
    }

    /** Takes the arc from the joint to its other end that turns by twice an angle. */
    private boolean setArc(int joint, int other, double half) {
        double chordX = path.x()[other] - path.x()[joint];
        double chordY = path.y()[other] - path.y()[joint];
        double towards = 1 / (2 * Math.tan(half));
        centreX = path.x()[joint] + chordX / 2 - towards * chordY;
        centreY = path.y()[joint] + chordY / 2 + towards * chordX;
        sweep = joint < other ? 2 * half : -2 * half;
        return Math.abs(half) > 1e-9 && Math.abs(half) < 3;
    }
}

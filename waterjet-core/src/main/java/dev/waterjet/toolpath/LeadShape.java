package dev.waterjet.toolpath;

import dev.waterjet.part.EdgeCursor;
import java.util.ArrayList;
import java.util.List;

/**
 * Shape of a lead of the jet axis, in the frame of its entry: x along the path, y into the scrap, the entry at the origin.
 * All arcs turn to the scrap. In metres.
 *
 * @param kind form of the lead-in
 * @param radiusM radius of the arc that meets the path; zero for a straight entry
 * @param lengthM length of the straight part, or radius of the first arc of a spiral
 */
record LeadShape(Kind kind, double radiusM, double lengthM) {

    /** Forms of a lead-in. */
    enum Kind {
        /** A straight part towards the path, then a quarter of a circle. */
        QUARTER,
        /** Half a circle. */
        HALF,
        /** Two half circles, the first smaller. */
        SPIRAL,
        /** A straight line at right angles to the path. */
        STRAIGHT
    }

    /** A turn of the arc that meets the path within which it is too near to the part for a margin. */
    private static final double NEAR_RAD = Math.PI / 3;

    /** A line or arc of a lead: where it ends, its centre, its turn, zero for a line. */
    record Piece(double x, double y, double centreX, double centreY, double turn) {}

    /** Pierce point: x. */
    double pierceX() {
        return kind == Kind.QUARTER ? -radiusM : 0;
    }

    /** Pierce point: y. */
    double pierceY() {
        return switch (kind) {
            case QUARTER -> radiusM + lengthM;
            case HALF -> 2 * radiusM;
            case SPIRAL -> 2 * radiusM - 2 * lengthM;
            case STRAIGHT -> lengthM;
        };
    }

    /**
     * Returns the lead-in from the pierce point.
     *
     * @param wider increase of arc radii: 0 for the jet axis, its offset for the edge of the part
     */
    List<Piece> wayIn(double wider) {
        List<Piece> pieces = new ArrayList<>();
        double r = radiusM + wider;
        switch (kind) {
            case QUARTER -> {
                addLine(pieces, -r, radiusM);
                pieces.add(new Piece(0, -wider, 0, radiusM, Math.PI / 2));
            }
            case HALF -> {
                addLine(pieces, 0, radiusM + r);
                pieces.add(new Piece(0, -wider, 0, radiusM, Math.PI));
            }
            case SPIRAL -> {
                double first = 2 * radiusM - lengthM;
                addLine(pieces, 0, first - lengthM - wider);
                pieces.add(new Piece(0, radiusM + r, 0, first, Math.PI));
                pieces.add(new Piece(0, -wider, 0, radiusM, Math.PI));
            }
            case STRAIGHT -> addLine(pieces, 0, -wider);
        }
        return pieces;
    }

    private void addLine(List<Piece> pieces, double x, double y) {
        if (Math.hypot(x - pierceX(), y - pierceY()) > OffsetDrawing.SHORT_M) {
            pieces.add(new Piece(x, y, 0, 0, 0));
        }
    }

    /** Lead-out: a quarter of a circle, or nothing after a straight entry. */
    List<Piece> wayOut(double wider) {
        return kind == Kind.STRAIGHT
                ? List.of()
                : List.of(new Piece(radiusM + wider, radiusM, 0, radiusM, Math.PI / 2));
    }

    /** The part of the lead-in that keeps the full margin from the part: all but the end, which nears it. */
    List<Piece> farIn(double margin) {
        List<Piece> pieces = wayIn(0);
        Piece last = pieces.remove(pieces.size() - 1);
        if (last.turn() == 0) {
            if (pierceY() > margin) {
                pieces.add(new Piece(0, margin, 0, 0, 0));
            }
        } else if (last.turn() > NEAR_RAD) {
            double x = -radiusM * Math.sin(NEAR_RAD);
            double y = radiusM * (1 - Math.cos(NEAR_RAD));
            pieces.add(new Piece(x, y, last.centreX(), last.centreY(), last.turn() - NEAR_RAD));
        }
        return pieces;
    }

    /** The same for the lead-out: where it starts to be far, and the rest. */
    List<Piece> farOut() {
        return kind == Kind.STRAIGHT
                ? List.of()
                : List.of(new Piece(radiusM, radiusM, 0, radiusM, Math.PI / 2 - NEAR_RAD));
    }

    double farOutX() {
        return radiusM * Math.sin(NEAR_RAD);
    }

    double farOutY() {
        return radiusM * (1 - Math.cos(NEAR_RAD));
    }

    /** Loads a piece that starts at a point, turned into place. */
    static void load(Piece piece, double fromX, double fromY, LeadFrame frame, EdgeCursor into) {
        double x0 = frame.x(fromX, fromY);
        double y0 = frame.y(fromX, fromY);
        double x1 = frame.x(piece.x(), piece.y());
        double y1 = frame.y(piece.x(), piece.y());
        if (piece.turn() == 0) {
            into.line(x0, y0, x1, y1);
        } else {
            double cx = frame.x(piece.centreX(), piece.centreY());
            double cy = frame.y(piece.centreX(), piece.centreY());
            into.arc(x0, y0, x1, y1, cx, cy, frame.scrap() * piece.turn());
        }
    }
}

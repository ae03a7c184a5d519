package dev.waterjet.plan;

import dev.waterjet.part.EdgeCursor;
import dev.waterjet.program.OffsetFeed;
import dev.waterjet.quality.EdgeRequirement;

/** Line or arc of the jet axis beside a programmed path, in metres. */
final class JetPiece {

    final EdgeCursor edge;
    final EdgeRequirement requirement;

    /** Radius of the programmed arc beside it; zero for a line, and for what goes around a corner. */
    final double radiusM;

    /** Distances along the programmed cut between which it lies; equal around a corner. */
    double fromM;

    double toM;

    /** Distance at which its programmed edge ends, whatever is cut off at a corner. */
    final double edgeEndM;

    JetPiece(EdgeCursor edge, EdgeRequirement requirement, double radiusM, double fromM, double toM) {
        this.edge = edge;
        this.requirement = requirement;
        this.radiusM = radiusM;
        this.fromM = fromM;
        this.toM = toM;
        this.edgeEndM = toM;
    }

    /** Length that a control counts for each metre of the axis. */
    double wordRatio(OffsetFeed convention) {
        return convention == OffsetFeed.EDGE && edge.isArc() && radiusM > 0 ? radiusM / edge.radius() : 1;
    }

    /** Lets it end at a point of itself. */
    void endAt(double x, double y) {
        double share = edge.shareAt(x, y);
        toM = fromM + share * (toM - fromM);
        if (edge.isArc()) {
            edge.arc(edge.startX(), edge.startY(), x, y, edge.centreX(), edge.centreY(), edge.sweep() * share);
        } else {
            edge.line(edge.startX(), edge.startY(), x, y);
        }
    }

    /** Lets it start at a point of itself. */
    void startAt(double x, double y) {
        double share = edge.shareAt(x, y);
        fromM += share * (toM - fromM);
        if (edge.isArc()) {
            edge.arc(x, y, edge.endX(), edge.endY(), edge.centreX(), edge.centreY(), edge.sweep() * (1 - share));
        } else {
            edge.line(x, y, edge.endX(), edge.endY());
        }
    }

    /** Lets it start at a point that is its start but for rounding. */
    void joinTo(double x, double y) {
        if (edge.isArc()) {
            edge.arc(x, y, edge.endX(), edge.endY(), edge.centreX(), edge.centreY(), edge.sweep());
        } else {
            edge.line(x, y, edge.endX(), edge.endY());
        }
    }
}

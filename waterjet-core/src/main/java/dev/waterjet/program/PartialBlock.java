package dev.waterjet.program;

import dev.waterjet.part.EdgeCursor;

/** Stretches of blocks, and the area between them and a point. */
final class PartialBlock {

    private PartialBlock() {}

    /** Keeps the stretch of an edge from a place on it to its end. */
    static void keepFrom(EdgeCursor edge, double x, double y) {
        if (!edge.isArc()) {
            edge.line(x, y, edge.endX(), edge.endY());
            return;
        }
        int turn = edge.sweep() > 0 ? 1 : -1;
        double sweep = ArcGeometry.sweep(x, y, edge.endX(), edge.endY(), edge.centreX(), edge.centreY(), turn);
        edge.arc(x, y, edge.endX(), edge.endY(), edge.centreX(), edge.centreY(), sweep);
    }

    /** Keeps the stretch of an edge from its start to a place on it. */
    static void keepTo(EdgeCursor edge, double x, double y) {
        if (!edge.isArc()) {
            edge.line(edge.startX(), edge.startY(), x, y);
            return;
        }
        int turn = edge.sweep() > 0 ? 1 : -1;
        double sweep = ArcGeometry.sweep(edge.startX(), edge.startY(), x, y, edge.centreX(), edge.centreY(), turn);
        edge.arc(edge.startX(), edge.startY(), x, y, edge.centreX(), edge.centreY(), sweep);
    }

    /** Signed area between a block and a point. */
    static double areaTerm(ProgramBlocks blocks, int block, double fromX, double fromY) {
        double chord = lineTerm(
                blocks.startX[block], blocks.startY[block], blocks.endX[block], blocks.endY[block], fromX, fromY);
        if (blocks.turn[block] == 0) {
            return chord;
        }
        double radius =
                Math.hypot(blocks.startX[block] - blocks.centreX[block], blocks.startY[block] - blocks.centreY[block]);
        double sweep = ArcGeometry.sweep(
                blocks.startX[block],
                blocks.startY[block],
                blocks.endX[block],
                blocks.endY[block],
                blocks.centreX[block],
                blocks.centreY[block],
                blocks.turn[block]);
        return chord + segment(radius, sweep);
    }

    /** Signed area between an edge and a point. */
    static double areaTerm(EdgeCursor edge, double fromX, double fromY) {
        return lineTerm(edge.startX(), edge.startY(), edge.endX(), edge.endY(), fromX, fromY)
                + segment(edge.radius(), edge.sweep());
    }

    static double lineTerm(double x0, double y0, double x1, double y1, double fromX, double fromY) {
        return ((x0 - fromX) * (y1 - fromY) - (x1 - fromX) * (y0 - fromY)) / 2;
    }

    private static double segment(double radius, double sweep) {
        return radius * radius / 2 * (sweep - Math.sin(sweep));
    }
}

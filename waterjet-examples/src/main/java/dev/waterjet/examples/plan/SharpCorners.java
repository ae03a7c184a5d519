package dev.waterjet.examples.plan;

import dev.waterjet.part.Contour;
import dev.waterjet.part.Edge;
import dev.waterjet.part.Point;
import dev.waterjet.part.Side;

/** Number of sharp inner corners of a loop, where the path turns away from the part by more than ten degrees. */
final class SharpCorners {

    private static final double MIN_TURN = Math.toRadians(10);

    private SharpCorners() {}

    static int count(Contour loop, Side part) {
        int count = 0;
        for (int i = 0; i < loop.size(); i++) {
            double out = heading(loop.edge(i), false);
            double in = heading(loop.edge((i + 1) % loop.size()), true);
            double turn = Math.IEEEremainder(in - out, 2 * Math.PI);
            double away = part == Side.LEFT ? -turn : turn;
            count += away > MIN_TURN ? 1 : 0;
        }
        return count;
    }

    /** Direction of an edge at its start or end, in rad. */
    private static double heading(Edge edge, boolean atStart) {
        if (!edge.isArc()) {
            return Math.atan2(
                    edge.end().ySi() - edge.start().ySi(),
                    edge.end().xSi() - edge.start().xSi());
        }
        Point at = atStart ? edge.start() : edge.end();
        Point centre = edge.centre().orElseThrow();
        double outwards = Math.atan2(at.ySi() - centre.ySi(), at.xSi() - centre.xSi());
        return outwards + (edge.turn().orElseThrow() == Side.LEFT ? Math.PI / 2 : -Math.PI / 2);
    }
}

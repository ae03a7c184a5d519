package dev.waterjet.toolpath;

import dev.waterjet.measure.Kind;
import dev.waterjet.part.Box;
import dev.waterjet.part.BoxTree;
import dev.waterjet.part.EdgeCursor;
import dev.waterjet.part.EdgeTree;
import dev.waterjet.part.Point;
import java.util.PriorityQueue;

/**
 * Largest circle inside a closed contour, found by halving squares: one whose middle is too far from being better than the
 * best so far is dropped.
 */
final class LargestCircle {

    private static final double PRECISION_M = 1e-7;
    private static final int MAX_SQUARES = 20_000;

    private final EdgeTree tree;
    private final BoxTree.Walk walk;
    private final EdgeCursor edge = new EdgeCursor();
    private final PriorityQueue<Square> open =
            new PriorityQueue<>((one, other) -> Double.compare(other.bound(), one.bound()));

    private double x;
    private double y;
    private double radius = Double.NEGATIVE_INFINITY;

    private LargestCircle(EdgeTree tree) {
        this.tree = tree;
        this.walk = tree.walk();
    }

    private record Square(double x, double y, double half, double distance) {

        double bound() {
            return distance + half * Math.sqrt(2);
        }
    }

    /** The circle, as x, y and radius. */
    static double[] in(EdgeTree tree) {
        LargestCircle search = new LargestCircle(tree);
        search.run();
        return new double[] {search.x, search.y, search.radius};
    }

    private void run() {
        Box box = tree.contour().box();
        double width = Kind.LENGTH.si(box.width());
        double height = Kind.LENGTH.si(box.height());
        double size = Math.min(width, height);
        int columns = (int) Math.ceil(width / size);
        int rows = (int) Math.ceil(height / size);
        for (int i = 0; i < Math.min(columns, MAX_SQUARES / 4); i++) {
            for (int j = 0; j < Math.min(rows, MAX_SQUARES / 4); j++) {
                look(box.minimum().xSi() + (i + 0.5) * size, box.minimum().ySi() + (j + 0.5) * size, size / 2);
            }
        }
        look(box.centre().xSi(), box.centre().ySi(), 0);
        int squares = 0;
        while (!open.isEmpty() && open.peek().bound() > radius + PRECISION_M && squares++ < MAX_SQUARES) {
            Square square = open.poll();
            double half = square.half() / 2;
            look(square.x() - half, square.y() - half, half);
            look(square.x() + half, square.y() - half, half);
            look(square.x() - half, square.y() + half, half);
            look(square.x() + half, square.y() + half, half);
        }
    }

    private void look(double atX, double atY, double half) {
        tree.contour().load(0, edge);
        double away = tree.distance(atX, atY, edge.distance(atX, atY), walk, edge);
        if (away + half * Math.sqrt(2) <= radius) {
            return;
        }
        boolean isInside = tree.contour().isAround(Point.ofSi(atX, atY));
        double distance = isInside ? away : -away;
        if (distance > radius) {
            radius = distance;
            x = atX;
            y = atY;
        }
        if (half > 0 && distance + half * Math.sqrt(2) > radius) {
            open.add(new Square(atX, atY, half, distance));
        }
    }
}

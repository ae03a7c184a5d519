package dev.waterjet.examples.drawing;

import dev.waterjet.measure.Kind;
import dev.waterjet.part.Box;
import dev.waterjet.part.Contour;
import dev.waterjet.part.EdgeCursor;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Finds strokes that lie on an earlier one within a tolerance, in either direction and wherever they start. Strokes are
 * compared only with those of nearly the same length and middle, kept in a grid.
 */
final class Duplicates {

    private static final int SAMPLES = 7;

    /** A stroke with what is compared first. */
    private record Shape(Contour path, Box box, double lengthM) {}

    private final double toleranceM;
    private final Map<List<Long>, List<Shape>> cells = new HashMap<>();

    Duplicates(double toleranceM) {
        this.toleranceM = Math.max(toleranceM, 1e-9);
    }

    /** Whether a stroke repeats an earlier one; if not, it is kept for comparison. */
    boolean isRepeated(Contour path) {
        Shape shape = new Shape(path, path.box(), path.lengthSi());
        long column = cell(shape.box().centre().xSi());
        long row = cell(shape.box().centre().ySi());
        long length = cell(shape.lengthM() / 4);
        for (long c = column - 1; c <= column + 1; c++) {
            for (long r = row - 1; r <= row + 1; r++) {
                for (long l = length - 1; l <= length + 1; l++) {
                    for (Shape other : cells.getOrDefault(List.of(c, r, l), List.of())) {
                        if (isSame(shape, other)) {
                            return true;
                        }
                    }
                }
            }
        }
        cells.computeIfAbsent(List.of(column, row, length), key -> new ArrayList<>())
                .add(shape);
        return false;
    }

    private long cell(double value) {
        return (long) Math.floor(value / toleranceM);
    }

    private boolean isSame(Shape one, Shape other) {
        return one.path().isClosed() == other.path().isClosed()
                && Math.abs(one.lengthM() - other.lengthM()) <= 4 * toleranceM
                && Kind.LENGTH.si(one.box().minimum().distance(other.box().minimum())) <= 2 * toleranceM
                && Kind.LENGTH.si(one.box().maximum().distance(other.box().maximum())) <= 2 * toleranceM
                && isOn(one.path(), other.path())
                && isOn(other.path(), one.path());
    }

    /** Whether samples of a path lie on another: the middles of up to seven edges, and an end. */
    private boolean isOn(Contour path, Contour other) {
        EdgeCursor edge = new EdgeCursor();
        int step = Math.max(1, path.size() / SAMPLES);
        for (int i = 0; i < path.size(); i += step) {
            path.load(i, edge);
            if (distance(other, edge.xAt(0.37), edge.yAt(0.37)) > toleranceM
                    || distance(other, edge.startX(), edge.startY()) > toleranceM) {
                return false;
            }
        }
        return true;
    }

    private static double distance(Contour path, double x, double y) {
        EdgeCursor edge = new EdgeCursor();
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i < path.size(); i++) {
            path.load(i, edge);
            least = Math.min(least, edge.distance(x, y));
        }
        return least;
    }
}

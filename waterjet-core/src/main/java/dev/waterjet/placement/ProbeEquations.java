package dev.waterjet.placement;

import dev.waterjet.measure.Kind;
import dev.waterjet.part.Point;
import java.util.List;

/**
 * Residuals of probed points over their uncertainties, for a rotation about a centre of the drawing and the place of that centre on
 * the machine in units of a typical length: so scaled, the three unknowns are alike in size.
 */
final class ProbeEquations {

    private final List<ProbedPoint> points;
    private final int size;
    private final double centreX;
    private final double centreY;
    private final double probedX;
    private final double probedY;
    private final double lengthM;

    ProbeEquations(List<ProbedPoint> points) {
        this.points = List.copyOf(points);
        this.size = points.stream().mapToInt(ProbedPoint::equations).sum();
        centreX = points.stream()
                .mapToDouble(point -> middle(point).xSi())
                .average()
                .orElseThrow();
        centreY = points.stream()
                .mapToDouble(point -> middle(point).ySi())
                .average()
                .orElseThrow();
        probedX = points.stream()
                .mapToDouble(point -> point.probed().xSi())
                .average()
                .orElseThrow();
        probedY = points.stream()
                .mapToDouble(point -> point.probed().ySi())
                .average()
                .orElseThrow();
        double spread = 0;
        for (ProbedPoint point : points) {
            spread = Math.max(
                    spread,
                    Math.hypot(point.probed().xSi() - probedX, point.probed().ySi() - probedY));
        }
        lengthM = spread > 0 ? spread : 1;
    }

    private static Point middle(ProbedPoint point) {
        return Point.ofSi(
                (point.known().xSi() + point.end().xSi()) / 2,
                (point.known().ySi() + point.end().ySi()) / 2);
    }

    double[] start(double rotationRad) {
        return new double[] {rotationRad, 0, 0};
    }

    /** Place of a point of the drawing on the machine. */
    private Point placed(double[] p, double xM, double yM) {
        double cos = Math.cos(p[0]);
        double sin = Math.sin(p[0]);
        double x = xM - centreX;
        double y = yM - centreY;
        return Point.ofSi(probedX + lengthM * p[1] + cos * x - sin * y, probedY + lengthM * p[2] + sin * x + cos * y);
    }

    /** Place of the drawing's origin on the machine. */
    Point shift(double[] p) {
        return placed(p, 0, 0);
    }

    /** Derivatives of rotation and shift by the three unknowns. */
    double[][] toShift(double[] p) {
        Point shift = shift(p);
        double armX = shift.xSi() - probedX - lengthM * p[1];
        double armY = shift.ySi() - probedY - lengthM * p[2];
        return new double[][] {{1, 0, 0}, {-armY, lengthM, 0}, {armX, 0, lengthM}};
    }

    /** Residual of a point in m: distance for a hole, signed distance for an edge or a wall. */
    double residual(ProbedPoint point, double[] p) {
        Point known = placed(p, point.known().xSi(), point.known().ySi());
        double dx = point.probed().xSi() - known.xSi();
        double dy = point.probed().ySi() - known.ySi();
        return switch (point.feature()) {
            case HOLE -> Math.hypot(dx, dy);
            case EDGE -> {
                double[] normal = normal(point, p);
                yield normal[0] * dx + normal[1] * dy;
            }
            case WALL -> Math.hypot(dx, dy) - Kind.LENGTH.si(point.radius());
        };
    }

    /** Unit normal to the left of an edge, on the machine. */
    private static double[] normal(ProbedPoint point, double[] p) {
        double ex = point.end().xSi() - point.known().xSi();
        double ey = point.end().ySi() - point.known().ySi();
        double length = Math.hypot(ex, ey);
        double cos = Math.cos(p[0]);
        double sin = Math.sin(p[0]);
        return new double[] {-(sin * ex + cos * ey) / length, (cos * ex - sin * ey) / length};
    }

    double[] values(double[] p) {
        double[] values = new double[size];
        int row = 0;
        for (ProbedPoint point : points) {
            double weight = 1 / Kind.LENGTH.si(point.uncertainty());
            if (point.feature() == ProbedPoint.Feature.HOLE) {
                Point known = placed(p, point.known().xSi(), point.known().ySi());
                values[row++] = weight * (point.probed().xSi() - known.xSi());
                values[row++] = weight * (point.probed().ySi() - known.ySi());
            } else {
                values[row++] = weight * residual(point, p);
            }
        }
        return values;
    }

    /** Derivatives of {@link #values}. */
    double[][] jacobian(double[] p) {
        double[][] rows = new double[size][];
        int row = 0;
        for (ProbedPoint point : points) {
            double weight = 1 / Kind.LENGTH.si(point.uncertainty());
            Point known = placed(p, point.known().xSi(), point.known().ySi());
            double armX = known.xSi() - probedX - lengthM * p[1];
            double armY = known.ySi() - probedY - lengthM * p[2];
            double dx = point.probed().xSi() - known.xSi();
            double dy = point.probed().ySi() - known.ySi();
            switch (point.feature()) {
                case HOLE -> {
                    rows[row++] = new double[] {weight * armY, -weight * lengthM, 0};
                    rows[row++] = new double[] {-weight * armX, 0, -weight * lengthM};
                }
                case EDGE -> {
                    double[] n = normal(point, p);
                    // the normal turns too: dn/dtheta = (-n_y, n_x)
                    double turn = -n[1] * dx + n[0] * dy + n[0] * armY - n[1] * armX;
                    rows[row++] = new double[] {weight * turn, -weight * lengthM * n[0], -weight * lengthM * n[1]};
                }
                case WALL -> {
                    double distance = Math.max(Math.hypot(dx, dy), Double.MIN_NORMAL);
                    double ux = dx / distance;
                    double uy = dy / distance;
                    rows[row++] = new double[] {
                        weight * (ux * armY - uy * armX), -weight * lengthM * ux, -weight * lengthM * uy
                    };
                }
            }
        }
        return rows;
    }
}

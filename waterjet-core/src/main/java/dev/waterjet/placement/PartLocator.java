package dev.waterjet.placement;

import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.NoSolutionException;
import dev.waterjet.part.Point;
import java.util.List;
import java.util.Objects;
import org.apache.commons.math3.exception.MathIllegalStateException;
import org.apache.commons.math3.fitting.leastsquares.LeastSquaresBuilder;
import org.apache.commons.math3.fitting.leastsquares.LeastSquaresOptimizer.Optimum;
import org.apache.commons.math3.fitting.leastsquares.LevenbergMarquardtOptimizer;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.DecompositionSolver;
import org.apache.commons.math3.linear.QRDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.SingularValueDecomposition;
import org.jspecify.annotations.Nullable;

/**
 * Locator of a part or fixture from probed points: the rigid move from the drawing to the machine with the least squares of the
 * residuals over their uncertainties.
 *
 * <pre>{@code
 * Location location = PartLocator.locate(points);
 * Contour placed = location.move().apply(contour);
 * }</pre>
 *
 * <p>The points must fix three coordinates: two holes; two edges that are not parallel, one of them with two points; or more. With
 * points on edges and walls alone two places can fit equally well; the one nearest to the expected place is taken.
 */
public final class PartLocator {

    private static final int PARAMETERS = 3;

    /** Rotations from which the search starts. */
    private static final int STARTS = 24;

    private static final int MAX_EVALUATIONS = 2000;
    private static final int MAX_ITERATIONS = 1000;

    /** Least singular value over the largest at which the points still tell the move. */
    private static final double MIN_CONDITION = 1e-7;

    /** Costs that differ by less are equal: two places fit alike. */
    private static final double SAME_COST = 1e-6;

    private static final int MAX_POLISHING_STEPS = 30;

    /** Least pivot of a step; worse ones are refused by the condition. */
    private static final double SINGULAR = 1e-12;

    private PartLocator() {}

    /**
     * Returns the place of a part that lies about as drawn.
     *
     * @param points probed points
     * @return the place
     * @throws NoSolutionException if the points do not tell it; code {@code points-cannot-tell}
     */
    public static Location locate(List<ProbedPoint> points) {
        return locate(points, RigidMove.none());
    }

    /**
     * Returns the place of a part.
     *
     * @param points probed points
     * @param expected approximate move from the drawing to the machine; it decides between places that fit equally well
     * @return the place
     * @throws NoSolutionException if the points do not tell it; code {@code points-cannot-tell}
     */
    public static Location locate(List<ProbedPoint> points, RigidMove expected) {
        Objects.requireNonNull(points, "points");
        Objects.requireNonNull(expected, "expected");
        int equations = points.stream().mapToInt(ProbedPoint::equations).sum();
        if (equations < PARAMETERS) {
            throw cannotTell();
        }
        ProbeEquations probes = new ProbeEquations(points);
        @Nullable Optimum best = null;
        double bestTurn = 0;
        for (int i = 0; i < STARTS; i++) {
            double rotation = expected.rotationSi() + 2 * Math.PI * i / STARTS;
            @Nullable Optimum found = search(probes, equations, probes.start(rotation));
            if (found == null) {
                continue;
            }
            double turn =
                    Math.abs(Math.IEEEremainder(found.getPoint().getEntry(0) - expected.rotationSi(), 2 * Math.PI));
            double tolerance = SAME_COST * (1 + (best == null ? 0 : best.getCost()));
            boolean isBetter = best == null || found.getCost() < best.getCost() - tolerance;
            boolean isNearer = best != null && found.getCost() <= best.getCost() + tolerance && turn < bestTurn;
            if (isBetter || isNearer) {
                best = found;
                bestTurn = turn;
            }
        }
        if (best == null) {
            throw cannotTell();
        }
        return location(probes, best, equations, points);
    }

    private static @Nullable Optimum search(ProbeEquations probes, int equations, double[] start) {
        try {
            return new LevenbergMarquardtOptimizer()
                    .withCostRelativeTolerance(1e-15)
                    .withParameterRelativeTolerance(1e-15)
                    .withOrthoTolerance(1e-15)
                    .optimize(new LeastSquaresBuilder()
                            .start(start)
                            .model(probes::values, probes::jacobian)
                            .target(new double[equations])
                            .maxEvaluations(MAX_EVALUATIONS)
                            .maxIterations(MAX_ITERATIONS)
                            .build());
        } catch (MathIllegalStateException e) {
            // this start leads nowhere; another one does, or the points cannot tell
            return null;
        }
    }

    private static NoSolutionException cannotTell() {
        return new NoSolutionException(Message.of(
                "points-cannot-tell",
                "the probed points do not tell the place; probe two holes, or two points on one edge and one on an"
                        + " edge that is not parallel to it"));
    }

    /** Gauss-Newton steps while they shrink: the search ends where the cost no longer changes, at half of the figures. */
    private static double[] polished(ProbeEquations probes, double[] start) {
        double[] found = start.clone();
        double last = Double.POSITIVE_INFINITY;
        for (int i = 0; i < MAX_POLISHING_STEPS; i++) {
            DecompositionSolver solver =
                    new QRDecomposition(new Array2DRowRealMatrix(probes.jacobian(found)), SINGULAR).getSolver();
            if (!solver.isNonSingular()) {
                break;
            }
            double[] step = solver.solve(new ArrayRealVector(probes.values(found), false))
                    .toArray();
            double size = Math.hypot(step[0], Math.hypot(step[1], step[2]));
            if (!(size < last)) {
                break;
            }
            for (int j = 0; j < PARAMETERS; j++) {
                found[j] -= step[j];
            }
            last = size;
        }
        return found;
    }

    private static Location location(ProbeEquations probes, Optimum best, int equations, List<ProbedPoint> points) {
        double[] found = polished(probes, best.getPoint().toArray());
        RealMatrix jacobian = new Array2DRowRealMatrix(probes.jacobian(found));
        SingularValueDecomposition svd = new SingularValueDecomposition(jacobian);
        double[] singular = svd.getSingularValues();
        if (!(singular[PARAMETERS - 1] > MIN_CONDITION * singular[0])) {
            throw cannotTell();
        }
        int freedom = equations - PARAMETERS;
        double scatter = freedom == 0 ? 0 : best.getCost() / Math.sqrt(freedom);
        double widening = Math.max(1, scatter);
        RealMatrix toShift = new Array2DRowRealMatrix(probes.toShift(found));
        RealMatrix covariance = toShift.multiply(svd.getCovariance(0))
                .multiply(toShift.transpose())
                .scalarMultiply(widening * widening);
        Point shift = probes.shift(found);
        return Location.of(
                RigidMove.of(Kind.ANGLE.of(found[0]), shift),
                covariance.getData(),
                scatter,
                freedom,
                points.stream()
                        .mapToDouble(point -> probes.residual(point, found))
                        .toArray());
    }
}

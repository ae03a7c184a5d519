package dev.waterjet.calibrate;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Random;
import java.util.TreeSet;
import java.util.stream.IntStream;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.SingularValueDecomposition;
import org.apache.commons.math3.util.Combinations;
import org.apache.commons.math3.util.CombinatoricsUtils;

/**
 * Fit that withstands wrong cuts up to nearly half of all (MM-estimate of Yohai 1987, from memory): the coefficients of the smallest
 * scale of the residuals, found from fits through as few cuts as there are coefficients, then bisquare weights with that scale held.
 * The same cuts give the same answer: all such fits are tried, or 3000 of them by a fixed seed.
 *
 * <p>Above a third of wrong cuts that scale grows with them. If the shortest half of the residuals (Rousseeuw and Leroy 1987, from
 * memory) has less than half of it, far cuts are left out by the shortest half first, and the others are fitted by themselves.
 *
 * @param rows measured rows
 * @param beta coefficients
 * @param scale scale of the residuals of the good cuts
 */
@SuppressWarnings("ArrayRecordComponent") // never compared
record HighBreakdown(CutRows rows, double[] beta, double scale) {

    private static final int MOST_STARTS = 3000;
    private static final int KEPT = 10;
    private static final int FIRST_STEPS = 2;
    private static final int MOST_STEPS = 200;
    private static final double HALF = 0.5;

    /** Share of the scale of all residuals below which the shortest half shows that wrong cuts have increased it. */
    private static final double INFLATED = 0.75;

    private static final long SEED = 20;

    /** Share of a row outside a plane below which it lies in it. */
    private static final double FLAT = 1e-9;

    static HighBreakdown of(CutRows rows) {
        RobustRows robust = new RobustRows(rows);
        List<double[]> starts = starts(robust);
        HighBreakdown best = ofSmallestScale(robust, starts);
        HighBreakdown half = ofShortestHalf(robust, starts);
        if (!(half.scale > 0) || half.scale > INFLATED * best.scale) {
            return best;
        }
        double[] weights = half.settled().weights();
        CutRows near = rows.only(
                IntStream.range(0, weights.length).filter(i -> weights[i] > 0).toArray());
        if (near.size() - mostInOnePlane(near) < 1) {
            return half.settled();
        }
        RobustRows others = new RobustRows(near);
        HighBreakdown found = ofSmallestScale(others, starts(others));
        return new HighBreakdown(rows, found.beta, found.scale);
    }

    private static List<double[]> starts(RobustRows robust) {
        List<double[]> starts = new ArrayList<>(List.of(robust.ofHuber()));
        for (int[] subset : subsets(robust.rows().size(), robust.rows().width())) {
            double[] start = through(robust.rows(), subset);
            if (start.length > 0) {
                starts.add(start);
            }
        }
        return starts;
    }

    private static HighBreakdown ofSmallestScale(RobustRows robust, List<double[]> starts) {
        TreeSet<HighBreakdown> kept = new TreeSet<>(Comparator.comparingDouble(HighBreakdown::scale));
        for (double[] start : starts) {
            double[] beta = nearer(robust, start);
            double[] residuals = robust.residuals(beta);
            // without a search for its scale: whether that is smaller than the largest of those that are kept
            if (kept.size() < KEPT || robust.loss(residuals, kept.last().scale) < HALF) {
                kept.add(new HighBreakdown(robust.rows(), beta, robust.scale(residuals, RobustRows.median(residuals))));
                if (kept.size() > KEPT) {
                    kept.pollLast();
                }
            }
        }
        return kept.stream()
                .map(one -> refined(robust, one.beta, MOST_STEPS))
                .min(Comparator.comparingDouble(HighBreakdown::scale))
                .orElseThrow()
                .settled();
    }

    /** A few steps towards a smaller scale, with a scale that is near enough. */
    private static double[] nearer(RobustRows robust, double[] start) {
        double[] beta = start;
        double scale = RobustRows.median(robust.residuals(beta));
        for (int step = 0; step < FIRST_STEPS && scale > 0; step++) {
            scale *= Math.sqrt(robust.loss(robust.residuals(beta), scale) / HALF);
            beta = robust.step(beta, scale, scaled -> RobustRows.bisquare(scaled, RobustRows.HALF));
        }
        return beta;
    }

    private HighBreakdown settled() {
        return scale > 0
                ? new HighBreakdown(
                        rows,
                        new RobustRows(rows)
                                .settled(beta, scale, scaled -> RobustRows.bisquare(scaled, RobustRows.BISQUARE)),
                        scale)
                : this;
    }

    /** The start whose shortest interval with half of the residuals is the shortest, moved to the middle of it. */
    private static HighBreakdown ofShortestHalf(RobustRows robust, List<double[]> starts) {
        CutRows rows = robust.rows();
        int half = rows.size() / 2 + (rows.width() + 1) / 2;
        double correction = (1 + 5.0 / (rows.size() - rows.width())) / RobustRows.MAD;
        HighBreakdown best = new HighBreakdown(rows, starts.get(0), Double.POSITIVE_INFINITY);
        for (double[] start : starts) {
            double[] sorted = robust.residuals(start);
            Arrays.sort(sorted);
            for (int k = 0; k + half <= sorted.length; k++) {
                double length = (sorted[k + half - 1] - sorted[k]) / 2;
                if (length * correction < best.scale) {
                    double[] beta = start.clone();
                    beta[0] += (sorted[k + half - 1] + sorted[k]) / 2;
                    best = new HighBreakdown(rows, beta, length * correction);
                }
            }
        }
        return best;
    }

    /** Steps towards a smaller scale. */
    private static HighBreakdown refined(RobustRows robust, double[] start, int steps) {
        double[] beta = start;
        double[] residuals = robust.residuals(beta);
        double scale = robust.scale(residuals, RobustRows.median(residuals));
        for (int step = 0; step < steps && scale > 0; step++) {
            double[] next = robust.step(beta, scale, scaled -> RobustRows.bisquare(scaled, RobustRows.HALF));
            residuals = robust.residuals(next);
            double smaller = robust.scale(residuals, scale);
            if (!(smaller < scale) || RobustRows.isNear(beta, next, scale)) {
                break;
            }
            beta = next;
            scale = smaller;
        }
        return new HighBreakdown(robust.rows(), beta, scale);
    }

    /** All choices of {@code size} of {@code count} rows; if they are too many, some of them by a fixed seed. */
    private static Iterable<int[]> subsets(int count, int size) {
        if (size < count && CombinatoricsUtils.binomialCoefficientLog(count, size) < Math.log(MOST_STARTS + 0.5)) {
            return new Combinations(count, size);
        }
        Random random = new Random(SEED);
        List<int[]> drawn = new ArrayList<>();
        for (int k = 0; k < MOST_STARTS; k++) {
            drawn.add(random.ints(0, count).distinct().limit(size).toArray());
        }
        return drawn;
    }

    /** Coefficients of the plane through some rows; none if these do not determine it. */
    private static double[] through(CutRows rows, int[] subset) {
        int p = subset.length;
        double[][] x = new double[p][];
        double[] y = new double[p];
        for (int k = 0; k < p; k++) {
            x[k] = rows.x()[subset[k]];
            y[k] = rows.middle(subset[k]);
        }
        SingularValueDecomposition values = new SingularValueDecomposition(new Array2DRowRealMatrix(x));
        return values.getConditionNumber() < 1 / FLAT
                ? values.getSolver().getInverse().operate(y)
                : new double[0];
    }

    /** Weight of each row, 0 for one that is far off. */
    double[] weights() {
        return Arrays.stream(new RobustRows(rows).residuals(beta))
                .map(residual -> RobustRows.bisquare(residual / scale, RobustRows.BISQUARE))
                .toArray();
    }

    /** Factor of the inverse of the squares of the settings (Huber 1981, eq. 6.5 of chapter 7, from memory). */
    double variance() {
        int n = rows.size();
        int p = rows.width();
        double squares = 0;
        double slope = 0;
        double slopeSquares = 0;
        for (double residual : new RobustRows(rows).residuals(beta)) {
            double scaled = residual / scale;
            double share = Math.min(1, Math.pow(scaled / RobustRows.BISQUARE, 2));
            double psi = scaled * (1 - share) * (1 - share);
            double derivative = (1 - share) * (1 - 5 * share);
            squares += psi * psi;
            slope += derivative / n;
            slopeSquares += derivative * derivative / n;
        }
        double correction = 1 + p / (double) n * (slopeSquares - slope * slope) / (slope * slope);
        return scale * scale * correction * correction * squares / (n - p) / (slope * slope);
    }

    /**
     * Number of wrong cuts, wherever they are, that the fit withstands: {@code (n - q - 1) / 2} rounded down, where q is the
     * largest number of cuts whose settings alone leave a coefficient open (Mili and Coakley 1996, from memory).
     */
    static int withstood(CutRows rows) {
        return Math.max(0, (rows.size() - mostInOnePlane(rows) - 1) / 2);
    }

    /** Largest number of rows whose settings leave a coefficient open. */
    static int mostInOnePlane(CutRows rows) {
        int p = rows.width();
        if (p == 1) {
            return 0;
        }
        int most = 0;
        for (int[] subset : subsets(rows.size(), p - 1)) {
            double[][] x = new double[p][p];
            for (int k = 0; k < p - 1; k++) {
                x[k] = rows.x()[subset[k]];
            }
            double[] normal = new SingularValueDecomposition(new Array2DRowRealMatrix(x))
                    .getV()
                    .getColumn(p - 1);
            int inside = 0;
            for (double[] row : rows.x()) {
                inside += Math.abs(Matrices.dot(row, normal)) <= FLAT * Math.sqrt(Matrices.dot(row, row)) ? 1 : 0;
            }
            most = Math.max(most, inside);
        }
        return most;
    }
}

package dev.waterjet.calibrate;

import dev.waterjet.calibrate.Family.Start;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.NoSolutionException;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.SingularValueDecomposition;

/** Refusals of what cuts do not determine. */
final class FitRefusals {

    /** Ratio of singular values of scaled columns below which they are one. */
    private static final double RANK = 1e-8;

    private static final double NO_SCATTER = 1e-6;

    private FitRefusals() {}

    /** Requires more cuts than parameters, and settings that separate these. */
    static void requireRank(CutRows rows, List<Start> starts) {
        List<String> names = starts.stream().map(Start::name).toList();
        if (rows.size() <= rows.width()) {
            throw undetermined(names, rows.size());
        }
        double[][] scaled = new double[rows.size()][rows.width()];
        for (int j = 0; j < rows.width(); j++) {
            double size = 0;
            for (double[] row : rows.x()) {
                size = Math.hypot(size, row[j]);
            }
            for (int i = 0; i < scaled.length; i++) {
                scaled[i][j] = size == 0 ? 0 : rows.x()[i][j] / size;
            }
        }
        SingularValueDecomposition values = new SingularValueDecomposition(new Array2DRowRealMatrix(scaled));
        double[] sizes = values.getSingularValues();
        int last = sizes.length - 1;
        if (!(sizes[last] > RANK * sizes[0])) {
            List<String> entangled = new ArrayList<>();
            for (int j = 0; j < names.size(); j++) {
                if (Math.abs(values.getV().getEntry(j, last)) > 0.1) {
                    entangled.add(names.get(j));
                }
            }
            throw undetermined(entangled, rows.size());
        }
    }

    /**
     * Whether measured cuts differ by no more than the deviations stated for them, so that no scatter beside those can be found.
     * The spread of the cuts then holds both.
     */
    static boolean isWithoutScatter(CutRows rows) {
        double[] beta = rows.width() == 0 ? new double[0] : CensoredFit.middle(rows);
        double squares = 0;
        double stated = 0;
        for (int i = 0; i < rows.size(); i++) {
            double residual = rows.middle(i) - rows.predicted(i, beta);
            squares += residual * residual;
            stated += rows.deviation(i, 0) * rows.deviation(i, 0);
        }
        return squares / Math.max(1, rows.size() - rows.width())
                < Math.max(NO_SCATTER * NO_SCATTER, stated / rows.size());
    }

    static NoSolutionException undetermined(List<String> parameters, int cuts) {
        return new NoSolutionException(Message.of(
                        "undetermined-parameters",
                        "{cuts} test cuts do not determine {parameters}; vary the settings that distinguish them, fix"
                                + " one of them, make more cuts, or give a prior")
                .with("cuts", cuts)
                .with("parameters", String.join(", ", parameters)));
    }

    /** Requires rows that show a scatter: not trials alone that never disagree, and not intervals that all overlap. */
    static void requireScatter(CutRows rows) {
        double mostYes = Double.NEGATIVE_INFINITY;
        double leastYes = Double.POSITIVE_INFINITY;
        double leastNo = Double.POSITIVE_INFINITY;
        double mostNo = Double.NEGATIVE_INFINITY;
        boolean hasValue = false;
        for (int i = 0; i < rows.size(); i++) {
            hasValue |= rows.isExact(i);
            if (!Double.isInfinite(rows.lo()[i])) {
                mostYes = Math.max(mostYes, rows.lo()[i]);
                leastYes = Math.min(leastYes, rows.lo()[i]);
            }
            if (!Double.isInfinite(rows.up()[i])) {
                leastNo = Math.min(leastNo, rows.up()[i]);
                mostNo = Math.max(mostNo, rows.up()[i]);
            }
        }
        if (hasValue) {
            return;
        }
        if (Double.isInfinite(mostNo) || Double.isInfinite(mostYes)) {
            double bound = Math.exp(Double.isInfinite(mostNo) ? mostYes : leastNo);
            throw new NoSolutionException(
                    Message.of(
                                    "only-a-bound",
                                    "trials that all ended alike give only a bound, {bound}; add a trial that ends the"
                                            + " other way")
                            .with("bound", bound),
                    Kind.RATIO,
                    bound);
        }
        if (mostYes <= leastNo && rows.width() == 1) {
            throw scatter(rows);
        }
    }

    static NoSolutionException scatter(CutRows rows) {
        return new NoSolutionException(Message.of(
                        "undetermined-scatter",
                        "{cuts} trials or intervals that never disagree bound the ability but not the scatter; give a"
                                + " prior of the scatter, or make cuts closer together")
                .with("cuts", rows.size()));
    }

    /** Requires of a robust fit that some cuts could be missing: a wrong one that alone determines a slope is not found. */
    static void requireReserve(CutRows rows, int least) {
        int reserve = rows.size() - HighBreakdown.mostInOnePlane(rows);
        if (reserve < least) {
            throw new NoSolutionException(Message.of(
                            "no-reserve-for-robust-fit",
                            "{reserve} of {cuts} cuts alone determine a parameter, so that a wrong one among them"
                                    + " cannot be found; vary the settings in at least {least} cuts")
                    .with("reserve", reserve)
                    .with("cuts", rows.size())
                    .with("least", least));
        }
    }

    static void requireIndependent(CutRows rows) {
        if (rows.plates() > 0) {
            throw new NoSolutionException(Message.of(
                    "plates-with-heavy-tails",
                    "plates and a heavy-tailed scatter cannot be fitted together; leave one of them out"));
        }
    }
}

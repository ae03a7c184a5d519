package dev.waterjet.calibrate;

import java.util.Arrays;
import java.util.stream.IntStream;

/**
 * Cuts as a fit sees them: on the scale of the logarithm of depth. The ability of the jet in row i is normal about {@code x
 * beta + plate}, and all that is known of it is that it lies between {@code lo} and {@code up}. Both are equal for a measured
 * value, and one is infinite for a trial.
 *
 * @param lo lower end of each row; minus infinity if the plate was not separated
 * @param up upper end of each row; infinity if only a separation was seen
 * @param x settings of each row, one for each coefficient
 * @param delta known deviation of the measurement of each row, added to the scatter
 * @param plate index of the plate of each row
 * @param plates number of plates; 0 if plates have no part in the fit
 */
@SuppressWarnings("ArrayRecordComponent") // never compared
record CutRows(double[] lo, double[] up, double[][] x, double[] delta, int[] plate, int plates) {

    static CutRows exact(double[] y, double[][] x) {
        return new CutRows(y, y, x, new double[y.length], new int[y.length], 0);
    }

    CutRows withPlates(int[] places) {
        return new CutRows(
                lo, up, x, delta, places, 1 + Arrays.stream(places).max().orElse(-1));
    }

    /** Rows less an offset each. */
    CutRows shifted(double[] offsets) {
        double[] lower = lo.clone();
        double[] upper = up.clone();
        for (int i = 0; i < lower.length; i++) {
            lower[i] -= offsets[i];
            upper[i] -= offsets[i];
        }
        return new CutRows(lower, upper, x, delta, plate, plates);
    }

    CutRows withDelta(double[] deviations) {
        return new CutRows(lo, up, x, deviations, plate, plates);
    }

    CutRows withX(double[][] settings) {
        return new CutRows(lo, up, settings, delta, plate, plates);
    }

    /** The rows of which an index is given, with the plates that they have, in their order. */
    CutRows only(int... rows) {
        int[] kept = Arrays.stream(rows).map(i -> plate[i]).distinct().toArray();
        int[] place = new int[plates + 1];
        for (int k = 0; k < kept.length; k++) {
            place[kept[k]] = k;
        }
        return new CutRows(
                Arrays.stream(rows).mapToDouble(i -> lo[i]).toArray(),
                Arrays.stream(rows).mapToDouble(i -> up[i]).toArray(),
                Arrays.stream(rows).mapToObj(i -> x[i]).toArray(double[][]::new),
                Arrays.stream(rows).mapToDouble(i -> delta[i]).toArray(),
                Arrays.stream(rows).map(i -> plates == 0 ? 0 : place[plate[i]]).toArray(),
                plates == 0 ? 0 : kept.length);
    }

    CutRows without(int row) {
        return only(IntStream.range(0, size()).filter(i -> i != row).toArray());
    }

    CutRows ofPlate(int number, boolean isKept) {
        return only(IntStream.range(0, size())
                .filter(i -> (plate[i] == number) == isKept)
                .toArray());
    }

    /** With one more measured row on a plate, whose value is of no account. */
    CutRows with(double[] settings, int onPlate) {
        int n = size();
        double[][] more = Arrays.copyOf(x, n + 1);
        more[n] = settings;
        int[] places = Arrays.copyOf(plate, n + 1);
        places[n] = onPlate;
        return new CutRows(
                Arrays.copyOf(lo, n + 1),
                Arrays.copyOf(up, n + 1),
                more,
                Arrays.copyOf(delta, n + 1),
                places,
                Math.max(plates, onPlate + 1));
    }

    int size() {
        return lo.length;
    }

    /** Number of coefficients. */
    int width() {
        return x.length == 0 ? 0 : x[0].length;
    }

    boolean isExact(int row) {
        return lo[row] == up[row];
    }

    boolean isExact() {
        return IntStream.range(0, size()).allMatch(this::isExact);
    }

    boolean hasDelta() {
        return Arrays.stream(delta).anyMatch(d -> d > 0);
    }

    /** Value in the middle of what is known; the end itself where there is only one. */
    double middle(int row) {
        return Double.isInfinite(lo[row]) ? up[row] : Double.isInfinite(up[row]) ? lo[row] : (lo[row] + up[row]) / 2;
    }

    double deviation(int row, double sigma) {
        return delta[row] == 0 ? sigma : Math.sqrt(sigma * sigma + delta[row] * delta[row]);
    }

    double predicted(int row, double[] beta) {
        double sum = 0;
        for (int j = 0; j < beta.length; j++) {
            sum += x[row][j] * beta[j];
        }
        return sum;
    }

    /** Each row over its deviation, so that all have the same. */
    CutRows scaled(double sigma) {
        int n = size();
        double[] lower = new double[n];
        double[] upper = new double[n];
        double[][] settings = new double[n][];
        for (int i = 0; i < n; i++) {
            double deviation = deviation(i, sigma);
            lower[i] = lo[i] / deviation;
            upper[i] = up[i] / deviation;
            settings[i] = Arrays.stream(x[i]).map(v -> v / deviation).toArray();
        }
        return new CutRows(lower, upper, settings, new double[n], plate, plates);
    }

    /** Sum of the squares and products of the settings. */
    double[][] unitInformation() {
        return new MarginalLikelihood(this)
                .derivatives(new double[width()], 1, 0)
                .information();
    }

    /** Rows of each plate. */
    int[][] byPlate() {
        int[][] rows = new int[plates][];
        for (int g = 0; g < plates; g++) {
            int number = g;
            rows[g] = IntStream.range(0, size()).filter(i -> plate[i] == number).toArray();
        }
        return rows;
    }
}

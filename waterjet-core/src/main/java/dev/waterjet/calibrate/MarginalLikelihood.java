package dev.waterjet.calibrate;

import java.util.Arrays;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegrator;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegratorFactory;

/**
 * Likelihood of cuts with normal scatter within plates and a normal effect of each plate, integrated over the plates.
 *
 * <p>Rows are independent given the effect of their plate. The integral of a plate of measured values is known in closed
 * form; that of a plate with intervals or trials is taken by adaptive Gauss-Hermite quadrature about its mode.
 */
final class MarginalLikelihood {

    /** Nodes of a quadrature; 15 give five digits for a single trial. */
    static final GaussIntegrator HERMITE = new GaussIntegratorFactory().hermite(15);

    private static final int MAX_STEPS = 100;
    private static final double SETTLED = 1e-10;

    /** The same about which a quadrature is laid: its value does not depend on a small part of its width. */
    private static final double NEAR = 1e-5;

    private final CutRows rows;
    private final int[][] byPlate;

    /** Value, gradient and information (minus the matrix of second derivatives) by the coefficients. */
    @SuppressWarnings("ArrayRecordComponent") // never compared
    record Derivatives(double value, double[] gradient, double[][] information) {

        static Derivatives zero(int width) {
            return new Derivatives(0, new double[width], new double[width][width]);
        }
    }

    MarginalLikelihood(CutRows rows) {
        this.rows = rows;
        this.byPlate = rows.plates() == 0 ? singles(rows.size()) : rows.byPlate();
    }

    private static int[][] singles(int size) {
        int[][] single = new int[size][];
        for (int i = 0; i < size; i++) {
            single[i] = new int[] {i};
        }
        return single;
    }

    /** Value alone, which costs less. */
    double value(double[] beta, double sigma, double tau) {
        boolean isGrouped = rows.plates() > 0 && tau > 0;
        Sum sum = new Sum(rows.width());
        for (int[] plate : byPlate) {
            if (!isGrouped) {
                for (int i : plate) {
                    sum.value += value(i, rows.predicted(i, beta), sigma);
                }
            } else if (isExact(plate)) {
                addExact(plate, beta, sigma, tau, sum);
            } else {
                sum.value += ofCensored(plate, beta, sigma, tau);
            }
        }
        return sum.value;
    }

    private double value(int row, double mean, double sigma) {
        return CutTerm.value(ErrorLaw.NORMAL, rows.lo()[row], rows.up()[row], mean, rows.deviation(row, sigma));
    }

    private double ofCensored(int[] plate, double[] beta, double sigma, double tau) {
        double[] means = means(plate, beta);
        double[] mode = mode(plate, means, sigma, tau, NEAR);
        double scale = Math.sqrt(2 / mode[1]);
        double[] logs = new double[HERMITE.getNumberOfPoints()];
        double top = Double.NEGATIVE_INFINITY;
        for (int k = 0; k < logs.length; k++) {
            double node = HERMITE.getPoint(k);
            double effect = mode[0] + scale * node;
            logs[k] = Math.log(HERMITE.getWeight(k)) + node * node - effect * effect / (2 * tau * tau);
            for (int i = 0; i < plate.length; i++) {
                logs[k] += value(plate[i], means[i] + effect, sigma);
            }
            top = Math.max(top, logs[k]);
        }
        double total = 0;
        for (double log : logs) {
            total += Math.exp(log - top);
        }
        return top + Math.log(total * scale) - NormalTails.LOG_ROOT_TWO_PI - Math.log(tau);
    }

    private double[] means(int[] plate, double[] beta) {
        return Arrays.stream(plate).mapToDouble(i -> rows.predicted(i, beta)).toArray();
    }

    Derivatives derivatives(double[] beta, double sigma, double tau) {
        Sum sum = new Sum(rows.width());
        boolean isGrouped = rows.plates() > 0 && tau > 0;
        for (int[] plate : byPlate) {
            if (!isGrouped) {
                for (int i : plate) {
                    double mean = rows.predicted(i, beta);
                    CutTerm term = CutTerm.normal(rows.lo()[i], rows.up()[i], mean, rows.deviation(i, sigma));
                    sum.value += term.value();
                    sum.add(rows.x()[i], term.slope(), term.information());
                }
            } else if (isExact(plate)) {
                addExact(plate, beta, sigma, tau, sum);
            } else {
                addCensored(plate, beta, sigma, tau, sum);
            }
        }
        return new Derivatives(sum.value, sum.gradient, sum.information);
    }

    private boolean isExact(int[] plate) {
        for (int i : plate) {
            if (!rows.isExact(i)) {
                return false;
            }
        }
        return true;
    }

    /** Sums over rows. */
    private static final class Sum {

        private double value;
        private final double[] gradient;
        private final double[][] information;

        Sum(int width) {
            gradient = new double[width];
            information = new double[width][width];
        }

        void add(double[] x, double slope, double weight) {
            for (int j = 0; j < x.length; j++) {
                gradient[j] += slope * x[j];
            }
            addSquare(x, weight);
        }

        void addSquare(double[] x, double weight) {
            for (int j = 0; j < x.length; j++) {
                for (int k = 0; k < x.length; k++) {
                    information[j][k] += weight * x[j] * x[k];
                }
            }
        }

        boolean isConvex() {
            for (int j = 0; j < gradient.length; j++) {
                if (!(information[j][j] >= 0)) {
                    return false;
                }
            }
            return true;
        }

        void replaceInformation(double[][] other) {
            for (int j = 0; j < gradient.length; j++) {
                System.arraycopy(other[j], 0, information[j], 0, gradient.length);
            }
        }

        void addScaled(Sum other, double scale) {
            for (int j = 0; j < gradient.length; j++) {
                gradient[j] += scale * other.gradient[j];
                for (int k = 0; k < gradient.length; k++) {
                    information[j][k] += scale * other.information[j][k];
                }
            }
        }
    }

    /** The covariance of a plate is diag(d) + tau^2 11'; its inverse and determinant are known in closed form. */
    private void addExact(int[] plate, double[] beta, double sigma, double tau, Sum sum) {
        double[] weighted = new double[rows.width()];
        double weights = 0;
        double first = 0;
        for (int i : plate) {
            double deviation = rows.deviation(i, sigma);
            double weight = 1 / (deviation * deviation);
            double residual = rows.lo()[i] - rows.predicted(i, beta);
            sum.value -= NormalTails.LOG_ROOT_TWO_PI + Math.log(deviation) + weight * residual * residual / 2;
            sum.add(rows.x()[i], weight * residual, weight);
            weights += weight;
            first += weight * residual;
            for (int j = 0; j < weighted.length; j++) {
                weighted[j] += weight * rows.x()[i][j];
            }
        }
        double shrink = tau * tau / (1 + tau * tau * weights);
        sum.value += shrink * first * first / 2 - Math.log1p(tau * tau * weights) / 2;
        sum.add(weighted, -shrink * first, -shrink);
    }

    private void addCensored(int[] plate, double[] beta, double sigma, double tau, Sum sum) {
        double[] means = means(plate, beta);
        double[] mode = mode(plate, means, sigma, tau, NEAR);
        double scale = Math.sqrt(2 / mode[1]);
        int nodes = HERMITE.getNumberOfPoints();
        double[] logs = new double[nodes];
        Sum[] sums = new Sum[nodes];
        double top = Double.NEGATIVE_INFINITY;
        for (int k = 0; k < nodes; k++) {
            double node = HERMITE.getPoint(k);
            sums[k] = at(plate, means, mode[0] + scale * node, sigma, tau);
            logs[k] = Math.log(HERMITE.getWeight(k)) + node * node + sums[k].value;
            top = Math.max(top, logs[k]);
        }
        double total = 0;
        for (double log : logs) {
            total += Math.exp(log - top);
        }
        sum.value += top + Math.log(total * scale) - NormalTails.LOG_ROOT_TWO_PI - Math.log(tau);
        Sum whole = new Sum(rows.width());
        for (int k = 0; k < nodes; k++) {
            double share = Math.exp(logs[k] - top) / total;
            whole.addScaled(sums[k], share);
            whole.addSquare(sums[k].gradient, -share);
        }
        whole.addSquare(whole.gradient, 1);
        if (!whole.isConvex()) {
            // a scatter far below the spread makes steps of the integrand, on which a quadrature loses the second
            // derivative
            Sum middle = at(plate, means, mode[0], sigma, tau);
            whole.replaceInformation(middle.information);
        }
        sum.addScaled(whole, 1);
    }

    /** Sums over a plate whose effect is {@code effect}. */
    private Sum at(int[] plate, double[] means, double effect, double sigma, double tau) {
        Sum sum = new Sum(rows.width());
        sum.value = -effect * effect / (2 * tau * tau);
        for (int k = 0; k < plate.length; k++) {
            int i = plate[k];
            CutTerm term = CutTerm.normal(rows.lo()[i], rows.up()[i], means[k] + effect, rows.deviation(i, sigma));
            sum.value += term.value();
            sum.add(rows.x()[i], term.slope(), term.information());
        }
        return sum;
    }

    /** Most likely effect of a plate, and the curvature there; the logarithm of the likelihood is concave. */
    private double[] mode(int[] plate, double[] means, double sigma, double tau, double settled) {
        double effect = 0;
        double information = 1 / (tau * tau);
        for (int step = 0; step < MAX_STEPS; step++) {
            double slope = -effect / (tau * tau);
            information = 1 / (tau * tau);
            for (int k = 0; k < plate.length; k++) {
                int i = plate[k];
                CutTerm term = CutTerm.normal(rows.lo()[i], rows.up()[i], means[k] + effect, rows.deviation(i, sigma));
                slope += term.slope();
                information += term.information();
            }
            double move = slope / information;
            effect += move;
            if (Math.abs(move) < settled * tau + 1e-14) {
                break;
            }
        }
        return new double[] {effect, information};
    }

    /** Most likely effect of a plate and its variance, given the coefficients; exact for measured values. */
    double[] effect(int number, double[] beta, double sigma, double tau) {
        int[] plate = byPlate[number];
        double[] means = means(plate, beta);
        double[] mode = mode(plate, means, sigma, tau, SETTLED);
        return new double[] {mode[0], 1 / mode[1]};
    }

    /** Effects of all plates. */
    double[][] effects(double[] beta, double sigma, double tau) {
        double[][] effects = new double[rows.plates()][];
        for (int g = 0; g < effects.length; g++) {
            effects[g] = effect(g, beta, sigma, tau);
        }
        return effects;
    }
}

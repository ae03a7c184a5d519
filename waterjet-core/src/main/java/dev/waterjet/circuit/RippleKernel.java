package dev.waterjet.circuit;

import java.util.List;
import org.apache.commons.math3.complex.Complex;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;
import org.apache.commons.math3.transform.DftNormalization;
import org.apache.commons.math3.transform.FastFourierTransformer;
import org.apache.commons.math3.transform.TransformType;

/**
 * Periodic ripple of a circuit about its steady state: the flow of the plungers as a Fourier sum, each harmonic through vessels,
 * lines with waves, and heads. The flow is taken as its mean in each of equal parts of the period, so that jumps do not ring.
 */
final class RippleKernel {

    private static final int PARTS = 2048;
    private static final int PERIODS = 2;

    private final List<CircuitNode> nodes;
    private final List<LineWaves> lines;
    private final SteadyFlow steady;

    RippleKernel(List<CircuitNode> nodes, List<LineWaves> lines, SteadyFlow steady) {
        this.nodes = nodes;
        this.lines = lines;
        this.steady = steady;
    }

    /** Ripple, peak to peak, at each node, in Pa. */
    double[] ripple(int pumpNode, PumpMotion.Crank pump) {
        FastFourierTransformer transformer = new FastFourierTransformer(DftNormalization.STANDARD);
        double partS = 1 / (pump.plungerHz() * PARTS);
        double[] masses = pump.masses(PARTS, steady.pressure(pumpNode));
        Complex[] flow = transformer.transform(masses, TransformType.FORWARD);
        Complex[][] pressures = new Complex[nodes.size()][PARTS];
        for (Complex[] ofNode : pressures) {
            ofNode[0] = Complex.ZERO;
            ofNode[PARTS / PERIODS] = Complex.ZERO;
        }
        for (int h = 1; h < PARTS / PERIODS; h++) {
            Complex[] answer = answer(2 * Math.PI * pump.plungerHz() * h, pumpNode);
            for (int i = 0; i < nodes.size(); i++) {
                Complex pressure = answer[i].multiply(flow[h]).divide(partS);
                pressures[i][h] = pressure;
                pressures[i][PARTS - h] = pressure.conjugate();
            }
        }
        double[] ripple = new double[nodes.size()];
        for (int i = 0; i < ripple.length; i++) {
            double maximum = Double.NEGATIVE_INFINITY;
            double minimum = Double.POSITIVE_INFINITY;
            for (Complex sample : transformer.transform(pressures[i], TransformType.INVERSE)) {
                maximum = Math.max(maximum, sample.getReal());
                minimum = Math.min(minimum, sample.getReal());
            }
            ripple[i] = maximum - minimum;
        }
        return ripple;
    }

    /** Pressures of all nodes for a flow of 1 into one of them, at an angular frequency. */
    Complex[] answer(double angularHz, int source) {
        int n = nodes.size();
        Complex[][] matrix = new Complex[n][n];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                matrix[i][j] = Complex.ZERO;
            }
            matrix[i][i] = nodes.get(i).admittance(steady.pressure(i), angularHz);
        }
        for (int j = 0; j < lines.size(); j++) {
            LineWaves line = lines.get(j);
            Complex[] ends = line.admittances(steady.flow(j), angularHz);
            add(matrix, line.from(), line.from(), ends[0]);
            add(matrix, line.to(), line.to(), ends[0]);
            add(matrix, line.from(), line.to(), ends[1]);
            add(matrix, line.to(), line.from(), ends[1]);
        }
        for (int i = 0; i < n; i++) {
            if (nodes.get(i).isReservoir()) {
                for (int j = 0; j < n; j++) {
                    matrix[i][j] = i == j ? Complex.ONE : Complex.ZERO;
                }
            }
        }
        return solved(matrix, source);
    }

    private static void add(Complex[][] matrix, int row, int column, Complex value) {
        matrix[row][column] = matrix[row][column].add(value);
    }

    /** Solves a complex system as a real one of twice the size, since the decomposition of Commons Math pivots real numbers only. */
    private static Complex[] solved(Complex[][] matrix, int source) {
        int n = matrix.length;
        RealMatrix real = new Array2DRowRealMatrix(2 * n, 2 * n);
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                real.setEntry(i, j, matrix[i][j].getReal());
                real.setEntry(i, n + j, -matrix[i][j].getImaginary());
                real.setEntry(n + i, j, matrix[i][j].getImaginary());
                real.setEntry(n + i, n + j, matrix[i][j].getReal());
            }
        }
        RealVector right = new ArrayRealVector(2 * n);
        right.setEntry(source, 1);
        RealVector solution = new LUDecomposition(real, 0).getSolver().solve(right);
        Complex[] answer = new Complex[n];
        for (int i = 0; i < n; i++) {
            answer[i] = new Complex(solution.getEntry(i), solution.getEntry(n + i));
        }
        return answer;
    }
}

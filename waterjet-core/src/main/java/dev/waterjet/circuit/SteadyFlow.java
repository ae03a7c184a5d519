package dev.waterjet.circuit;

import dev.waterjet.measure.Message;
import dev.waterjet.measure.NoSolutionException;
import java.util.List;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.SingularMatrixException;

/**
 * Steady pressures of the nodes and flows of the lines, pumps at their mean flow: Newton's method on the losses of all lines and
 * the balances of all nodes, in units of the reference pressure and of a typical flow.
 */
final class SteadyFlow {

    private static final int MAX_STEPS = 200;
    private static final int MAX_HALVINGS = 40;
    private static final double AGREEMENT = 1e-12;
    private static final double SMALL = 1e-6;

    /** Keeps the equations solvable where no flow depends on pressure, as below the set pressure of a relief valve. */
    private static final double STIFFENING = 1e-9;

    private static final double MAX_PRESSURE_STEP = 0.1;
    private static final double MIN_FLOW_KG_PER_S = 1e-6;

    private final List<CircuitNode> nodes;
    private final List<LineWaves> lines;
    private final double unitPa;
    private final double unitKgPerS;
    private double[] unknowns;

    SteadyFlow(List<CircuitNode> nodes, List<LineWaves> lines, double referencePa) {
        this.nodes = nodes;
        this.lines = lines;
        this.unitPa = referencePa;
        double flow = MIN_FLOW_KG_PER_S;
        for (CircuitNode node : nodes) {
            flow = Math.max(flow, Math.abs(node.meanInflow(referencePa)));
        }
        this.unitKgPerS = flow;
        this.unknowns = new double[nodes.size() + lines.size()];
        for (int i = 0; i < nodes.size(); i++) {
            unknowns[i] = 1;
        }
        for (int j = 0; j < lines.size(); j++) {
            unknowns[nodes.size() + j] = 0.5;
        }
    }

    double pressure(int node) {
        return unknowns[node] * unitPa;
    }

    double flow(int line) {
        return unknowns[nodes.size() + line] * unitKgPerS;
    }

    /** Solves, or refuses: pumps may deliver more than any valve takes. */
    void solve() {
        double[] rest = residual(unknowns);
        for (int i = 0; i < MAX_STEPS && norm(rest) > AGREEMENT; i++) {
            double[] step = step(rest);
            double[] next = moved(step, 1);
            double[] nextRest = residual(next);
            double share = 1;
            for (int h = 0; h < MAX_HALVINGS && !(norm(nextRest) <= norm(rest)); h++) {
                share /= 2;
                next = moved(step, share);
                nextRest = residual(next);
            }
            unknowns = next;
            rest = nextRest;
        }
        boolean isPressed = true;
        for (int i = 0; i < nodes.size(); i++) {
            isPressed &= pressure(i) >= IsentropeKernel.ATMOSPHERE_PA && pressure(i) <= IsentropeKernel.MAX_PRESSURE_PA;
        }
        if (!(norm(rest) <= Math.sqrt(AGREEMENT)) || !isPressed) {
            throw new NoSolutionException(Message.of(
                    "no-steady-state",
                    "the circuit has no steady state between ambient pressure and 1000 MPa to start from; pumps, heads"
                            + " and relief valves must be able to balance"));
        }
    }

    private double[] residual(double[] at) {
        int n = nodes.size();
        double[] rest = new double[at.length];
        for (int i = 0; i < n; i++) {
            CircuitNode node = nodes.get(i);
            rest[i] = node.isReservoir() ? at[i] - 1 : node.meanInflow(at[i] * unitPa) / unitKgPerS;
        }
        for (int j = 0; j < lines.size(); j++) {
            LineWaves line = lines.get(j);
            double flow = at[n + j];
            if (!nodes.get(line.from()).isReservoir()) {
                rest[line.from()] -= flow;
            }
            if (!nodes.get(line.to()).isReservoir()) {
                rest[line.to()] += flow;
            }
            rest[n + j] = at[line.from()] - at[line.to()] - line.loss(flow * unitKgPerS) / unitPa;
        }
        return rest;
    }

    private double[] step(double[] rest) {
        int n = nodes.size();
        RealMatrix matrix = new Array2DRowRealMatrix(rest.length, rest.length);
        for (int i = 0; i < n; i++) {
            CircuitNode node = nodes.get(i);
            double p = unknowns[i] * unitPa;
            double slope = (node.meanInflow(p + SMALL * unitPa) - node.meanInflow(p - SMALL * unitPa))
                    / (2 * SMALL * unitKgPerS);
            matrix.setEntry(i, i, node.isReservoir() ? 1 : slope - STIFFENING);
        }
        for (int j = 0; j < lines.size(); j++) {
            LineWaves line = lines.get(j);
            if (!nodes.get(line.from()).isReservoir()) {
                matrix.setEntry(line.from(), n + j, -1);
            }
            if (!nodes.get(line.to()).isReservoir()) {
                matrix.setEntry(line.to(), n + j, 1);
            }
            double m = unknowns[n + j] * unitKgPerS;
            double h = SMALL * unitKgPerS;
            matrix.setEntry(n + j, line.from(), 1);
            matrix.setEntry(n + j, line.to(), -1);
            matrix.setEntry(n + j, n + j, -(line.loss(m + h) - line.loss(m - h)) / (2 * SMALL * unitPa) - STIFFENING);
        }
        try {
            return new LUDecomposition(matrix, 0)
                    .getSolver()
                    .solve(new ArrayRealVector(rest))
                    .toArray();
        } catch (SingularMatrixException e) {
            return new double[rest.length];
        }
    }

    private double[] moved(double[] step, double share) {
        double longest = 0;
        for (int i = 0; i < nodes.size(); i++) {
            longest = Math.max(longest, Math.abs(step[i]));
        }
        double scale = share * Math.min(1, MAX_PRESSURE_STEP / Math.max(longest, MAX_PRESSURE_STEP));
        double[] next = unknowns.clone();
        for (int i = 0; i < next.length; i++) {
            next[i] -= scale * step[i];
        }
        return next;
    }

    private static double norm(double[] rest) {
        double sum = 0;
        for (double part : rest) {
            sum += part * part;
        }
        return Math.sqrt(sum);
    }
}

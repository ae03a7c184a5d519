package dev.waterjet.motion;

/**
 * Slacks and multipliers of rows {@code value <= 0} of an interior point method. The residual {@code value + slack} goes
 * to zero, and the product of slack and multiplier to a common small number.
 *
 * <p>The methods with a row index are the arithmetic of one row; the others run over all rows.
 */
final class Slacks {

    /** Rounding of a row's value, as a share of the sum of its terms without their signs. */
    static final double ROUNDING = 1e-15;

    private final double[] slack;
    private final double[] multiplier;
    private final double[] inverse;
    private final double[] residual;
    /** Change of the slack that the predictor finds, over the slack. */
    private final double[] predicted;

    private final double[] slackStep;
    private final double[] multiplierStep;
    private int count;

    // sums and extremes of the last pass
    private double gap;
    private double linear;
    private double quadratic;
    private double slackFall;
    private double multiplierFall;

    Slacks(int capacity) {
        slack = new double[capacity];
        multiplier = new double[capacity];
        inverse = new double[capacity];
        residual = new double[capacity];
        predicted = new double[capacity];
        slackStep = new double[capacity];
        multiplierStep = new double[capacity];
    }

    void setCount(int rows) {
        count = rows;
    }

    int count() {
        return count;
    }

    double multiplier(int row) {
        return multiplier[row];
    }

    /** Sets a row's slack to what its value leaves, or to a floor where the value is at or beyond its bound. */
    void start(int row, double value, double floor) {
        slack[row] = Math.max(-value, floor);
    }

    void startMultipliers(double product) {
        for (int i = 0; i < count; i++) {
            multiplier[i] = product / slack[i];
        }
    }

    /** Takes a row's value; a slack below what the value leaves follows it. Returns the residual. */
    double take(int row, double value) {
        double s = slack[row];
        if (s < -value) {
            s = -value;
            slack[row] = s;
        }
        inverse[row] = 1 / s;
        double rest = value + s;
        residual[row] = rest;
        return rest;
    }

    /** Weight of a row in the matrix. */
    double weight(int row) {
        return multiplier[row] * inverse[row];
    }

    /** Force of a row in the right side of the predictor. */
    double predictorForce(int row) {
        return multiplier[row] * residual[row] * inverse[row];
    }

    /** Keeps what the predictor makes of a row whose value changes. */
    void predict(int row, double change) {
        predicted[row] = -(residual[row] + change) * inverse[row];
    }

    /** Product to aim at: the common one less the second-order term of the predictor. */
    private double aim(int row, double product) {
        double p = predicted[row];
        return product + slack[row] * multiplier[row] * p * (1 + p);
    }

    /** Force of a row in the right side of the corrector. */
    double correctorForce(int row, double product) {
        return (aim(row, product) + multiplier[row] * residual[row]) * inverse[row];
    }

    /** Sets the steps of a row whose value changes. */
    void correct(int row, double change, double product) {
        double ds = -residual[row] - change;
        slackStep[row] = ds;
        multiplierStep[row] = (aim(row, product) - multiplier[row] * ds) * inverse[row] - multiplier[row];
    }

    /** Sum of the products of slack and multiplier. */
    double gap() {
        double sum = 0;
        for (int i = 0; i < count; i++) {
            sum += slack[i] * multiplier[i];
        }
        gap = sum;
        return sum;
    }

    /** Sums up the predictor: extremes of its changes, and the terms of the gap behind it. */
    void sumPredictor() {
        double least = 0;
        double greatest = -1;
        double first = 0;
        double second = 0;
        for (int i = 0; i < count; i++) {
            double p = predicted[i];
            double term = slack[i] * multiplier[i] * p;
            first += term;
            second += term * p;
            if (p < least) {
                least = p;
            }
            if (p > greatest) {
                greatest = p;
            }
        }
        linear = first;
        quadratic = second;
        slackFall = -least;
        multiplierFall = 1 + greatest;
    }

    /**
     * Returns the sum of the products after predictor steps of the given lengths. A slack s changes by s p and its
     * multiplier z by -z (1 + p).
     */
    double predictedGap(double slackLength, double multiplierLength) {
        double kept = 1 - multiplierLength;
        return kept * gap
                + (slackLength * kept - multiplierLength) * linear
                - slackLength * multiplierLength * quadratic;
    }

    /** Finds the extremes of the corrector's steps. */
    void sumCorrector() {
        double ofSlack = 0;
        double ofMultiplier = 0;
        for (int i = 0; i < count; i++) {
            double s = -slackStep[i] * inverse[i];
            double z = -multiplierStep[i] / multiplier[i];
            if (s > ofSlack) {
                ofSlack = s;
            }
            if (z > ofMultiplier) {
                ofMultiplier = z;
            }
        }
        slackFall = ofSlack;
        multiplierFall = ofMultiplier;
    }

    /** Greatest decrease of a slack relative to it, in the last sum. */
    double slackFall() {
        return slackFall;
    }

    /** Greatest decrease of a multiplier relative to it, in the last sum. */
    double multiplierFall() {
        return multiplierFall;
    }

    void move(double slackLength, double multiplierLength) {
        for (int i = 0; i < count; i++) {
            slack[i] += slackLength * slackStep[i];
            multiplier[i] += multiplierLength * multiplierStep[i];
        }
    }
}

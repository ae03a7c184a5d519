package dev.waterjet.calibrate;

import org.apache.commons.math3.stat.descriptive.moment.StandardDeviation;

/** Difference of two models' scores of the same cuts, and its standard error. */
final class ScoreDifference {

    private ScoreDifference() {}

    static double[] of(double[] one, double[] other) {
        double[] differences = new double[one.length];
        double sum = 0;
        for (int i = 0; i < differences.length; i++) {
            differences[i] = one[i] - other[i];
            sum += differences[i];
        }
        return new double[] {sum, Math.sqrt(differences.length) * new StandardDeviation().evaluate(differences)};
    }
}

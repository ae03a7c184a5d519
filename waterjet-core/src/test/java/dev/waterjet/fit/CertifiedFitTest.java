package dev.waterjet.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/**
 * Non-linear regression sets of the NIST Statistical Reference Datasets, data and certified values from memory. A datum
 * recalled wrongly would miss the certified figures, which stand to eleven digits.
 */
class CertifiedFitTest {

    /** Dental research, Misra, D. (1978). */
    private static final double[] MISRA_Y = {
        10.07, 14.73, 17.94, 23.93, 29.61, 35.18, 40.02, 44.82, 50.76, 55.05, 61.01, 66.40, 75.47, 81.78
    };

    private static final double[] MISRA_X = {
        77.6, 114.9, 141.1, 190.8, 239.9, 289.0, 332.8, 378.4, 434.8, 477.3, 536.8, 593.1, 689.1, 760.0
    };

    private static void check(Fit fit, double sumOfSquares, double[] values, double[] errors) {
        assertThat(fit.chiSquare()).isCloseTo(sumOfSquares, within(1e-8 * sumOfSquares));
        for (int j = 0; j < values.length; j++) {
            String name = fit.names().get(j);
            assertThat(fit.value(name)).as(name).isCloseTo(values[j], within(1e-7 * values[j]));
            assertThat(fit.standardError(name)).as("error of " + name).isCloseTo(errors[j], within(1e-6 * errors[j]));
        }
    }

    @Test
    void misra1aFromTheFarStart() {
        Fit fit = LeastSquares.of((i, b) -> b[0] * (1 - Math.exp(-b[1] * MISRA_X[i])))
                .withParameter("b1", 500)
                .withParameter("b2", 0.0001)
                .fit(MISRA_Y);

        check(fit, 1.2455138894E-01, new double[] {2.3894212918E+02, 5.5015643181E-04}, new double[] {
            2.7070075241E+00, 7.2668688436E-06
        });
        assertThat(fit.residualDeviation()).isCloseTo(1.0187876330E-01, within(1e-9));
    }

    @Test
    void misra1bFromTheFarStart() {
        Fit fit = LeastSquares.of((i, b) -> b[0] * (1 - Math.pow(1 + b[1] * MISRA_X[i] / 2, -2)))
                .withParameter("b1", 500)
                .withParameter("b2", 0.0001)
                .fit(MISRA_Y);

        check(fit, 7.5464681533E-02, new double[] {3.3799746163E+02, 3.9039091287E-04}, new double[] {
            3.1643950207E+00, 4.2547321834E-06
        });
    }

    @Test
    void misra1cFromTheFarStart() {
        Fit fit = LeastSquares.of((i, b) -> b[0] * (1 - Math.pow(1 + 2 * b[1] * MISRA_X[i], -0.5)))
                .withParameter("b1", 500)
                .withParameter("b2", 0.0001)
                .fit(MISRA_Y);

        check(fit, 4.0966836971E-02, new double[] {6.3642725809E+02, 2.0813627256E-04}, new double[] {
            4.6638326572E+00, 1.7728423155E-06
        });
    }

    @Test
    void danWoodFromTheFarStart() {
        double[] x = {1.309, 1.471, 1.490, 1.565, 1.611, 1.680};
        double[] y = {2.138, 3.421, 3.597, 4.340, 4.882, 5.660};
        Fit fit = LeastSquares.of((i, b) -> b[0] * Math.pow(x[i], b[1]))
                .withParameter("b1", 1)
                .withParameter("b2", 5)
                .fit(y);

        check(fit, 4.3173084083E-03, new double[] {7.6886226176E-01, 3.8604055871E+00}, new double[] {
            1.8281973860E-02, 5.1726610913E-02
        });
    }

    @Test
    void rat42FromTheFarStart() {
        double[] x = {9, 14, 21, 28, 42, 57, 63, 70, 79};
        double[] y = {8.93, 10.80, 18.59, 22.33, 39.35, 56.11, 61.73, 64.62, 67.08};
        Fit fit = LeastSquares.of((i, b) -> b[0] / (1 + Math.exp(b[1] - b[2] * x[i])))
                .withParameter("b1", 100)
                .withParameter("b2", 1)
                .withParameter("b3", 0.1)
                .fit(y);

        check(fit, 8.0565229338E+00, new double[] {7.2462237576E+01, 2.6180768402E+00, 6.7359200066E-02}, new double[] {
            1.7340283401E+00, 8.8295217536E-02, 3.4465663377E-03
        });
    }

    @Test
    void boxBodFromTheFarStart() {
        double[] x = {1, 2, 3, 5, 7, 10};
        double[] y = {109, 149, 149, 191, 213, 224};
        Fit fit = LeastSquares.of((i, b) -> b[0] * (1 - Math.exp(-b[1] * x[i])))
                .withPositiveParameter("b1", 100)
                .withPositiveParameter("b2", 0.75)
                .fit(y);

        check(fit, 1.1680088766E+03, new double[] {2.1380940889E+02, 5.4723748542E-01}, new double[] {
            1.2354515176E+01, 1.0455993237E-01
        });
    }
}

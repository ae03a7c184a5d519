package dev.waterjet.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.measure.DomainException;
import dev.waterjet.measure.NoSolutionException;
import java.util.Arrays;
import java.util.Random;
import org.apache.commons.math3.stat.regression.SimpleRegression;
import org.junit.jupiter.api.Test;

class LeastSquaresTest {

    private static final double[] X = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10};

    private static LeastSquares line() {
        return LeastSquares.of((i, b) -> b[0] + b[1] * X[i])
                .withParameter("intercept", 0)
                .withParameter("slope", 1);
    }

    private static double[] noisyLine() {
        Random random = new Random(20);
        return Arrays.stream(X)
                .map(x -> 3 + 2 * x + 0.1 * random.nextGaussian())
                .toArray();
    }

    /** Linear regression in closed form, by Apache Commons Math. */
    @Test
    void aLineIsThatOfTheClosedForm() {
        double[] y = noisyLine();
        SimpleRegression closed = new SimpleRegression();
        for (int i = 0; i < y.length; i++) {
            closed.addData(X[i], y[i]);
        }
        Fit fit = line().fit(y);

        assertThat(fit.value("slope")).isCloseTo(closed.getSlope(), within(1e-9));
        assertThat(fit.standardError("slope")).isCloseTo(closed.getSlopeStdErr(), within(1e-9));
        assertThat(fit.standardError("intercept")).isCloseTo(closed.getInterceptStdErr(), within(1e-9));
        assertThat(fit.rSquared()).isCloseTo(closed.getRSquare(), within(1e-12));
        assertThat(fit.upper("slope", 0.95) - fit.value("slope"))
                .isCloseTo(closed.getSlopeConfidenceInterval(0.05), within(1e-9));
    }

    /** Leverage of a straight line: 1/n + (x - mean)^2 / S_xx. */
    @Test
    void leveragesAreThoseOfTheClosedForm() {
        Fit fit = line().fit(noisyLine());

        for (int i = 0; i < X.length; i++) {
            assertThat(fit.leverages()[i]).isCloseTo(0.1 + (X[i] - 5.5) * (X[i] - 5.5) / 82.5, within(1e-9));
        }
        assertThat(Arrays.stream(fit.leverages()).sum()).isCloseTo(2, within(1e-9));
    }

    @Test
    void theWeightIsTheInverseSquareOfTheDeviation() {
        double[] y = {1, 2, 4};
        Fit fit = LeastSquares.of((i, b) -> b[0])
                .withParameter("mean", 1)
                .withKnownDeviations()
                .fit(y, new double[] {1, 1, 2});

        // weights 1, 1 and 1/4
        assertThat(fit.value("mean")).isCloseTo(4 / 2.25, within(1e-9));
        assertThat(fit.standardError("mean")).isCloseTo(1 / 1.5, within(1e-9));
        assertThat(fit.upper("mean", 0.95) - fit.value("mean")).isCloseTo(1.959963984540054 / 1.5, within(1e-8));
    }

    @Test
    void anOutlierLosesItsWeight() {
        double[] y = noisyLine();
        double clean = line().fit(y).value("slope");
        y[9] += 15;
        Fit plain = line().fit(y);
        Fit robust = line().withRobustWeights().fit(y);

        assertThat(Math.abs(plain.value("slope") - clean)).isGreaterThan(0.5);
        assertThat(robust.value("slope")).isCloseTo(clean, within(0.02));
        assertThat(robust.weights()[9]).isZero();
        assertThat(robust.weights()[4]).isGreaterThan(0.5);
        assertThat(robust.standardError("slope")).isLessThan(plain.standardError("slope") / 5);
    }

    @Test
    void withoutOutliersRobustAndPlainErrorsAgree() {
        Random random = new Random(5);
        double[] x = new double[400];
        double[] y = new double[400];
        for (int i = 0; i < 400; i++) {
            x[i] = i / 40.0;
            y[i] = 3 + 2 * x[i] + random.nextGaussian();
        }
        LeastSquares line = LeastSquares.of((i, b) -> b[0] + b[1] * x[i])
                .withParameter("intercept", 0)
                .withParameter("slope", 1);

        // 95 percent efficient, so about 2.6 percent wider
        assertThat(line.withRobustWeights().fit(y).standardError("slope")
                        / line.fit(y).standardError("slope"))
                .isBetween(0.95, 1.12);
    }

    @Test
    void aPositiveParameterKeepsItsIntervalAboveZero() {
        double[] y = {0.2, 2.1, 0.4, 3.5};
        Fit fit =
                LeastSquares.of((i, b) -> b[0]).withPositiveParameter("mean", 9).fit(y);

        assertThat(fit.value("mean")).isCloseTo(1.55, within(1e-7));
        assertThat(fit.lower("mean", 0.999)).isPositive();
    }

    private static void isUndetermined(LeastSquares question, double[] observed, String parameters) {
        assertThatExceptionOfType(NoSolutionException.class)
                .isThrownBy(() -> question.fit(observed))
                .satisfies(e -> assertThat(e.code()).isEqualTo("undetermined-parameters"))
                .satisfies(e -> assertThat(e.parameters()).containsEntry("parameters", parameters));
    }

    @Test
    void parametersThatActAsOneAreRefusedByName() {
        LeastSquares product = LeastSquares.of((i, b) -> b[0] * b[1] * X[i])
                .withParameter("hardness", 2)
                .withParameter("sharpness", 3);

        isUndetermined(product, noisyLine(), "hardness, sharpness");
    }

    @Test
    void aParameterWithoutEffectIsRefusedByName() {
        LeastSquares slope =
                LeastSquares.of((i, b) -> b[0] * X[i]).withParameter("slope", 2).withParameter("colour", 3);

        isUndetermined(slope, noisyLine(), "colour");
    }

    @Test
    void asManyObservationsAsParametersAreTooFew() {
        isUndetermined(line(), new double[] {1, 2}, "intercept, slope");
    }

    /** The sum of squares overflows, so that no step can lower it. */
    @Test
    void aSearchThatDoesNotConvergeIsRefused() {
        LeastSquares question = LeastSquares.of((i, b) -> 1e200 * b[0] * X[i]).withParameter("slope", 1);

        assertThatExceptionOfType(NoSolutionException.class)
                .isThrownBy(() -> question.fit(noisyLine()))
                .satisfies(e -> assertThat(e.code()).isEqualTo("fit-not-converged"));
    }

    private static void isRefused(double[] observed, double[] deviations, String quantity) {
        assertThatExceptionOfType(DomainException.class)
                .isThrownBy(() -> line().fit(observed, deviations))
                .satisfies(e -> assertThat(e.quantity()).isEqualTo(quantity));
    }

    @Test
    void impossibleDataAreRefused() {
        double[] y = noisyLine();
        y[3] = Double.NaN;

        isRefused(y, noisyLine(), "observation 4");
        isRefused(noisyLine(), new double[10], "standard deviation of observation 1");
    }
}

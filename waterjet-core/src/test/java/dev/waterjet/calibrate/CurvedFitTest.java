package dev.waterjet.calibrate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;

class CurvedFitTest {

    private static final double[] X = {0.3, -0.8, 1.1, 0.5, -0.2, 1.7};
    private static final double[] NOISE = {0.03, -0.05, 0.02, 0.04, -0.06, 0.02};

    /** Residuals of a line, as of any other model. */
    private static CutRows line(double[] at, double noise) {
        double[] residuals = new double[X.length];
        for (int i = 0; i < X.length; i++) {
            residuals[i] = 2 + 0.7 * X[i] + noise * NOISE[i] - at[0] - at[1] * X[i];
        }
        return CutRows.exact(residuals, new double[X.length][0]);
    }

    private static CutRows settings() {
        double[][] x = new double[X.length][];
        double[] y = new double[X.length];
        for (int i = 0; i < X.length; i++) {
            x[i] = new double[] {1, X[i]};
            y[i] = 2 + 0.7 * X[i] + NOISE[i];
        }
        return CutRows.exact(y, x);
    }

    /** The line by the other way to fit it. */
    @Test
    void aModelThatIsALineIsFittedAsALine() {
        CurvedFit fit = CurvedFit.of(at -> line(at, 1), new double[] {1, 0}, new double[] {0.1, 0.1}, false);
        CensoredFit linear = CensoredFit.of(settings(), ErrorLaw.NORMAL);

        assertThat(fit.parameters()).containsExactly(linear.beta(), within(1e-7));
        assertThat(fit.sigma()).isCloseTo(linear.sigma(), within(1e-7));
        assertThat(fit.tau()).isZero();
        assertThat(fit.maximum().value()).isCloseTo(linear.logLikelihood(), within(1e-9));
        for (int j = 0; j < 3; j++) {
            assertThat(fit.maximum().covariance()[j])
                    .containsExactly(linear.maximum().covariance()[j], within(1e-8));
        }
        // a density of the rows that is e times that of what was measured
        CurvedRows scaled = new CurvedRows() {
            @Override
            public CutRows at(double[] parameters) {
                return line(parameters, 1);
            }

            @Override
            public double logJacobian(double[] parameters) {
                return 1;
            }
        };
        assertThat(CurvedFit.of(scaled, new double[] {1, 0}, new double[] {0.1, 0.1}, false)
                        .maximum()
                        .value())
                .isCloseTo(linear.logLikelihood() + 1, within(1e-9));
    }

    /** A scatter of rounding: the information is that of the settings over its square, and 2 n for its logarithm. */
    @Test
    void withoutScatterTheErrorsAreThoseOfRounding() {
        CurvedFit fit = CurvedFit.withoutScatter(at -> line(at, 1e-5), new double[] {2, 0.7});
        double squares = 1e-24;
        for (double noise : NOISE) {
            squares += 1e-10 * noise * noise / 6;
        }
        double[][] unit = settings().unitInformation();

        assertThat(fit.parameters()).containsExactly(2, 0.7);
        assertThat(fit.sigma() * fit.sigma() / squares).isCloseTo(1, within(1e-6));
        for (int i = 0; i < 2; i++) {
            for (int j = 0; j < 2; j++) {
                assertThat(fit.maximum().information()[i][j] * squares).isCloseTo(unit[i][j], within(1e-5));
            }
        }
        assertThat(fit.maximum().information()[2]).containsExactly(0, 0, 12);
        double log = -3 * (Math.log(2 * Math.PI * squares) + 1);
        assertThat(fit.maximum().value()).isCloseTo(log, within(1e-5));
        assertThat(CurvedFit.withoutScatter(at -> line(at, 0), new double[] {2, 0.7})
                        .sigma())
                .isCloseTo(1e-12, within(1e-15));
    }

    /** Where the model has no answer there is no likelihood: the search stays on the other side. */
    @Test
    void placesWithoutAnAnswerAreLeft() {
        CurvedRows rows = at -> at[0] < 1.5 ? line(new double[] {Double.NaN, 0}, 1) : line(at, 1);
        CurvedFit fit = CurvedFit.of(rows, new double[] {1.9, 0}, new double[] {1, 1}, false);

        assertThat(fit.parameters())
                .containsExactly(CensoredFit.of(settings(), ErrorLaw.NORMAL).beta(), within(1e-6));
    }

    /** Plates in the order in which they appear, and a place of its own for a cut without one. */
    @Test
    void cutsWithoutAPlateAreEachOnTheirOwn() {
        assertThat(AbilityRows.places(List.of("b", "", "a", "b", "", " "))).containsExactly(0, 2, 1, 0, 3, 4);
        assertThat(AbilityRows.isOnePlate(new int[] {3, 3})).isTrue();
        assertThat(AbilityRows.isOnePlate(new int[] {3, 4})).isFalse();
        assertThat(AbilityRows.isOnePlate(new int[0])).isFalse();
    }
}

package dev.waterjet.calibrate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;

class CutTermTest {

    /** Central differences of the value by the mean. */
    @Test
    void slopeAndInformationAreTheDerivatives() {
        Random random = new Random(5);
        for (int k = 0; k < 500; k++) {
            double lo = random.nextGaussian();
            double up = k % 4 == 0 ? lo : k % 4 == 1 ? Double.POSITIVE_INFINITY : lo + random.nextDouble();
            double lower = k % 4 == 2 ? Double.NEGATIVE_INFINITY : lo;
            double mean = random.nextGaussian();
            double deviation = 0.2 + random.nextDouble();
            double h = 1e-4;
            CutTerm at = CutTerm.normal(lower, up, mean, deviation);
            double less = CutTerm.normal(lower, up, mean - h, deviation).value();
            double more = CutTerm.normal(lower, up, mean + h, deviation).value();

            assertThat(at.slope()).isCloseTo((more - less) / (2 * h), within(1e-5 * (1 + Math.abs(at.slope()))));
            assertThat(at.information())
                    .isCloseTo(-(more + less - 2 * at.value()) / (h * h), within(1e-4 * (1 + at.information())));
            assertThat(CutTerm.value(ErrorLaw.NORMAL, lower, up, mean, deviation))
                    .isEqualTo(at.value());
        }
    }

    @Test
    void aTrialFarFromItsEndSaysNothing() {
        CutTerm term = CutTerm.normal(-50, Double.POSITIVE_INFINITY, 0, 1);

        assertThat(term.value()).isZero();
        assertThat(term.slope()).isZero();
        assertThat(term.information()).isZero();
    }
}

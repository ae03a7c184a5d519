package dev.waterjet.kerf;

import dev.waterjet.calibrate.LagFit;
import dev.waterjet.calibrate.LagMeasurement;
import dev.waterjet.feed.FeedModel;
import dev.waterjet.feed.MachinabilityFeed;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.measure.DomainException;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.measure.Units;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;
import org.junit.jupiter.api.Test;
import static dev.waterjet.measure.Measures.degrees;
import static dev.waterjet.measure.Measures.millimetres;
import static dev.waterjet.measure.Measures.millimetresPerMinute;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

class LagTest {

    private static final FeedModel FEEDS = MachinabilityFeed.published();
    private static final AbrasiveJet JET = KerfTest.jet(0.33, 1, 2, 400, 380);

    @Test
    void theLeadAngleBringsTheExitUnderTheEntry() {
        Lag lag = KerfTest.kerf(20, 2).lag();

        assertThat(Kind.LENGTH.si(lag.exitWithLead(lag.leadAngle()))).isCloseTo(0, within(1e-15));
        assertThat(Kind.LENGTH.si(lag.exitWithLead(degrees(0)))).isEqualTo(lag.exitSi());
        assertThat(Kind.LENGTH.si(lag.exitWithLead(degrees(20)))).isNegative();
        assertThat(lag.at(millimetres(10)).si()).isCloseTo(lag.exitSi() / 4, within(1e-15));
    }

    @Test
    void feedAndLagAreInverse() {
        LagModel model = LagModel.standard();
        for (double lag : new double[] {0.1e-3, 0.5e-3, 2e-3}) {
            double feed = model.feedForExitLagSi(JET, KerfTest.steel(20), FEEDS, lag);
            assertThat(model.exitLagSi(JET, KerfTest.steel(20), FEEDS, feed)).isCloseTo(lag, within(1e-12));
        }
        double fastest = FEEDS.feed(JET, KerfTest.steel(20), 1).si();
        assertThat(model.feedForExitLagSi(JET, KerfTest.steel(20), FEEDS, 1)).isEqualTo(fastest);
        Lag lag = model.lag(JET, KerfTest.steel(20), FEEDS, millimetresPerMinute(60));
        assertThat(lag.exitSi()).isEqualTo(model.exitLagSi(JET, KerfTest.steel(20), FEEDS, 1e-3));
    }

    @Property(tries = 200, seed = "7")
    void allowedLagIsTheInverseOfTheError(
            @ForAll @Scale(6) @DoubleRange(min = 0.1, max = 500) double radiusMm,
            @ForAll @Scale(6) @DoubleRange(min = 0.001, max = 0.9) double errorOverRadius) {
        double radius = radiusMm / 1000;
        double error = errorOverRadius * radius;
        ArcTolerance tolerance = ArcTolerance.onRadius(Kind.LENGTH.of(radius)).within(Kind.LENGTH.of(error));

        assertThat(LagKernel.tangentError(tolerance.allowedLagSi(LagGeometry.TANGENT), radius))
                .isCloseTo(error, within(1e-12));
        assertThat(LagKernel.trailerError(tolerance.allowedLagSi(LagGeometry.TRACTRIX), radius))
                .isCloseTo(error, within(1e-12));
    }

    @Test
    void aSmallLagKeepsItsDigitsOnALargeArc() {
        // e = L^2 / 2R to first order
        assertThat(LagKernel.tangentError(1e-6, 1)).isCloseTo(5e-13, within(1e-24));
        assertThat(LagKernel.trailerError(2, 1)).isEqualTo(1);
    }

    /** The curve of a trailer round a right-angled corner is a tractrix; here it is stepped along by Euler's rule. */
    @Test
    void trailerRoundACornerAgreesWithItsPath() {
        for (double turn : new double[] {30, 60, 90, 100, 135, 170}) {
            double lag = 1;
            double x = -lag * Math.cos(Math.toRadians(turn));
            double y = -lag * Math.sin(Math.toRadians(turn));
            double nearest = lag;
            double step = 1e-5;
            for (double head = step; head < 5; head += step) {
                double distance = Math.hypot(head - x, y);
                x = head - (head - x) / distance * lag;
                y = y / distance * lag;
                nearest = Math.min(nearest, Math.hypot(x, y));
            }
            assertThat(LagKernel.trailerCorner(lag, Math.toRadians(turn))).isCloseTo(nearest, within(2e-4));
        }
        assertThat(LagKernel.trailerCorner(1, Math.PI)).isEqualTo(1);
    }

    @Test
    void aCornerNotchesByTheLagFromARightAngleOn() {
        Lag lag = KerfTest.kerf(20, 2).lag();

        assertThat(Kind.LENGTH.si(lag.errorAtCorner(degrees(90), LagGeometry.TANGENT)))
                .isCloseTo(lag.exitSi(), within(1e-15));
        assertThat(Kind.LENGTH.si(lag.errorAtCorner(degrees(150), LagGeometry.TANGENT)))
                .isCloseTo(lag.exitSi(), within(1e-15));
        assertThat(Kind.LENGTH.si(lag.errorAtCorner(degrees(30), LagGeometry.TANGENT)))
                .isCloseTo(lag.exitSi() / 2, within(1e-15));
        assertThatThrownBy(() -> lag.errorAtCorner(degrees(0), LagGeometry.TANGENT))
                .isInstanceOf(DomainException.class)
                .hasMessageContaining("turn");
    }

    @Test
    void lagLinesGiveTheCoefficientBack() {
        LagMeasurement line = LagMeasurement.of(millimetres(40))
                .withDepths(QuantityArray.of(Kind.LENGTH, new double[] {5, 10, 15, 20}, Units.MILLIMETRE))
                .withLags(QuantityArray.of(Kind.LENGTH, new double[] {0.20, 0.76, 1.68, 3.01}, Units.MILLIMETRE));
        LagFit fit = LagFit.of(List.of(line));

        assertThat(fit.model().coefficient()).isCloseTo(0.3, within(0.003));
        assertThat(fit.model().relativeUncertainty()).isBetween(0.0005, 0.02);
        assertThatThrownBy(() -> LagFit.of(List.of(line.withLags(QuantityArray.ofSi(Kind.LENGTH, 1e-3)))))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("4 depths on the lag line, but 1 lags");
    }
}

package dev.waterjet.kerf;

import dev.waterjet.ValueContract;
import dev.waterjet.calibrate.LagFit;
import dev.waterjet.calibrate.LagMeasurement;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.evidence.Evidence;
import dev.waterjet.evidence.EvidenceGrade;
import dev.waterjet.evidence.Source;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.measure.Units;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import static dev.waterjet.measure.Measures.degrees;
import static dev.waterjet.measure.Measures.millimetres;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

/** What lag, its model and its tolerance hold, and how sure they are. */
class LagValuesTest {

    private static final Evidence OWN = Evidence.of(EvidenceGrade.FITTED, Source.of("lag lines of Hollow Ridge"));

    private static Lag lag(double coefficient, double relative, double thicknessMm, double index) {
        return KerfModel.standard()
                .withLag(LagModel.of(coefficient, relative, OWN))
                .kerf(
                        KerfTest.jet(0.33, 1, 2, 400, 380),
                        KerfTest.steel(thicknessMm),
                        Estimate.withinFactor(Kind.LENGTH, index * thicknessMm / 1000, 0.15, List.of()))
                .lag();
    }

    /** Momber, Kovacevic, Proc. IMechE B 209 (1995): 15 degrees at 0.52 of the depth; tan 15 / 1.04 = 0.25764. */
    @Test
    void theCoefficientFollowsFromTheCriticalPoint() {
        assertThat(LagKernel.coefficient(0.52, Math.toRadians(15))).isCloseTo(0.25764, within(5e-6));
        assertThat(LagModel.standard().coefficient()).isCloseTo(0.25764, within(5e-6));
    }

    /** Plate of 20 mm at index 2, k = 0.25: tan of the exit angle is 2 k/q = 0.25, the lag k h/q = 2.5 mm. */
    @Test
    void theDoubtOfTheAngleIsThatOfItsTangent() {
        Lag lag = lag(0.25, 0.2, 20, 2);
        double angle = Math.atan(0.25);

        assertThat(lag.exitAngle().si()).isCloseTo(angle, within(1e-12));
        double doubt = lag.atExit().relativeUncertainty();
        assertThat(lag.exitAngle().relativeUncertainty()).isCloseTo(doubt * 0.25 / (1 + 0.0625) / angle, within(1e-12));
        assertThat(lag.exitSi()).isCloseTo(0.0025, within(1e-15));
        assertThat(lag.at(millimetres(10)).relativeUncertainty()).isCloseTo(doubt, within(1e-12));
    }

    @Test
    void theDoubtOnAnArcGoesByTheErrorItself() {
        Lag lag = lag(0.25, 0.2, 20, 2);
        double doubt = lag.atExit().relativeUncertainty();
        double more = 2.5 * Math.exp(doubt);
        double less = 2.5 * Math.exp(-doubt);

        assertThat(lag.errorOnArc(millimetres(10)).to(Units.MILLIMETRE))
                .isCloseTo(Math.sqrt(106.25) - 10, within(1e-9));
        assertThat(lag.errorOnArc(millimetres(10)).relativeUncertainty())
                .isCloseTo(Math.log((Math.hypot(10, more) - 10) / (Math.hypot(10, less) - 10)) / 2, within(1e-9));
        assertThat(lag.errorOnArc(millimetres(10), LagGeometry.TRACTRIX).relativeUncertainty())
                .isCloseTo(
                        Math.log((10 - Math.sqrt(100 - more * more)) / (10 - Math.sqrt(100 - less * less))) / 2,
                        within(1e-9));
    }

    @Test
    void aTrailerWithinItsRadiusMayBeAnyLength() {
        assertThat(LagKernel.trailerLag(1, 1)).isInfinite();
        assertThat(LagKernel.trailerLag(Math.nextDown(1.0), 1)).isCloseTo(1, within(1e-9));
        assertThat(LagKernel.trailerError(1, 1)).isEqualTo(1);
        assertThat(LagKernel.trailerCorner(2, Math.PI)).isEqualTo(2);
    }

    @Test
    void aToleranceIsItsArcAndError() {
        ValueContract.of(() -> ArcTolerance.onRadius(millimetres(5)).within(millimetres(0.1)))
                .tells("radius", ArcTolerance::radius, millimetres(5))
                .tells("error", ArcTolerance::error, millimetres(0.1))
                .differs("radius", ArcTolerance.onRadius(millimetres(6)).within(millimetres(0.1)))
                .differs("error", ArcTolerance.onRadius(millimetres(5)).within(millimetres(0.2)))
                .says("within 1.0E-4 m", "radius 0.005 m")
                .check();
        assertThat(ArcTolerance.onRadius(millimetres(5))
                        .within(millimetres(0.1))
                        .describe())
                .containsEntry("radius_m", 0.005)
                .containsEntry("error_m", 1e-4);
    }

    @Test
    void aLagIsItsFrontAndItsPlate() {
        ValueContract.of(() -> lag(0.25, 0.2, 20, 2))
                .differs("coefficient", lag(0.26, 0.2, 20, 2))
                .differs("thickness", lag(0.25, 0.2, 21, 2 * 20 / 21.0))
                .differs("index", lag(0.25, 0.2, 20, 3))
                .differs("doubt", lag(0.25, 0.3, 20, 2))
                .says("lag at the exit 0.0025 m")
                .check();
        assertThat(lag(0.25, 0.2, 20, 2).describe())
                .containsEntry("coefficient", 0.25)
                .containsEntry("thickness_m", 0.02)
                .containsKeys("exit_lag", "exit_angle");
    }

    @Test
    void aModelIsItsCoefficientAndWhatSpeaksForIt() {
        ValueContract.of(() -> LagModel.of(0.25, 0.2, OWN))
                .tells("coefficient", LagModel::coefficient, 0.25)
                .tells("doubt", LagModel::relativeUncertainty, 0.2)
                .differs("coefficient", LagModel.of(0.26, 0.2, OWN))
                .differs("doubt", LagModel.of(0.25, 0.3, OWN))
                .says("lag 0.25 z^2/H")
                .check();
        assertThat(LagModel.of(0.25, 0.2, OWN))
                .isNotEqualTo(LagModel.of(0.25, 0.2, LagModel.standard().evidence()));
        assertThat(Arrays.stream(LagGeometry.values()).map(LagGeometry::label))
                .doesNotHaveDuplicates()
                .noneMatch(String::isBlank);
    }

    @Test
    void aFitTellsItself() {
        LagFit fit = LagFit.of(List.of(LagMeasurement.of(millimetres(40))
                .withDepths(QuantityArray.of(Kind.LENGTH, new double[] {5, 10, 15, 20}, Units.MILLIMETRE))
                .withLags(QuantityArray.of(Kind.LENGTH, new double[] {0.20, 0.76, 1.68, 3.01}, Units.MILLIMETRE))));

        assertThat(fit.toString()).isEqualTo(fit.fit().toString()).isNotBlank();
        assertThat(fit.model().relativeUncertainty())
                .isCloseTo(
                        fit.fit().standardError("lag coefficient") / fit.model().coefficient(), within(1e-12));
    }

    @Test
    void leadAnglesAreThoseOfLagOverThickness() {
        assertThat(Kind.ANGLE.si(lag(0.25, 0.2, 20, 2).leadAngle())).isCloseTo(Math.atan(0.125), within(1e-12));
        assertThat(Kind.LENGTH.si(lag(0.25, 0.2, 20, 2).exitWithLead(degrees(45))))
                .isCloseTo(0.0025 - 0.020, within(1e-12));
    }
}

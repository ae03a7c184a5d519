package dev.waterjet.kerf;

import static dev.waterjet.kerf.Kerfs.FEEDS;
import static dev.waterjet.kerf.Kerfs.MODEL;
import static dev.waterjet.kerf.Kerfs.OWN;
import static dev.waterjet.kerf.Kerfs.kerf;
import static dev.waterjet.kerf.Kerfs.steel;
import static dev.waterjet.measure.Measures.degrees;
import static dev.waterjet.measure.Measures.millimetres;
import static dev.waterjet.measure.Measures.millimetresPerMinute;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.Refusals;
import dev.waterjet.ValueContract;
import dev.waterjet.feed.CutConditions;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Units;
import org.junit.jupiter.api.Test;

/** Lag of a cut and its model. */
class LagTest {

    private static Lag lag(double coefficient, double relative, double thicknessMm, double index) {
        return kerf(MODEL.withLag(LagModel.of(coefficient, relative, OWN)), thicknessMm, index, 0.15)
                .lag();
    }

    private static double exitM(Lag lag) {
        return lag.atExit().si();
    }

    /** Momber, Kovacevic, Proc. IMechE B 209 (1995): 15 degrees at 0.52 of the depth; tan 15 / 1.04 = 0.25764. */
    @Test
    void theCoefficientFollowsFromTheCriticalPoint() {
        assertThat(LagKernel.coefficient(0.52, Math.toRadians(15))).isCloseTo(0.25764, within(5e-6));
        assertThat(LagModel.standard().coefficient()).isCloseTo(0.25764, within(5e-6));
    }

    @Test
    void theLeadAngleBringsTheExitUnderTheEntry() {
        Lag lag = kerf(20, 2).lag();

        assertThat(Kind.LENGTH.si(lag.exitWithLead(lag.leadAngle()))).isCloseTo(0, within(1e-15));
        assertThat(Kind.LENGTH.si(lag.exitWithLead(degrees(0)))).isEqualTo(exitM(lag));
        assertThat(Kind.LENGTH.si(lag.exitWithLead(degrees(20)))).isNegative();
        assertThat(lag.at(millimetres(10)).si()).isCloseTo(exitM(lag) / 4, within(1e-15));
        assertThat(Kind.ANGLE.si(lag(0.25, 0.2, 20, 2).leadAngle())).isCloseTo(Math.atan(0.125), within(1e-12));
    }

    /** Plate of 20 mm at index 2, k = 0.25: tan of the exit angle is 2 k/q = 0.25, the lag k h/q = 2.5 mm. */
    @Test
    void theUncertaintyOfTheAngleIsThatOfItsTangent() {
        Lag lag = lag(0.25, 0.2, 20, 2);
        double angle = Math.atan(0.25);
        double relative = lag.atExit().relativeUncertainty();

        assertThat(relative).isCloseTo(Math.hypot(0.2, 0.15), within(1e-12));
        assertThat(lag.exitAngle().si()).isCloseTo(angle, within(1e-12));
        assertThat(lag.exitAngle().relativeUncertainty())
                .isCloseTo(relative * 0.25 / (1 + 0.0625) / angle, within(1e-12));
        assertThat(exitM(lag)).isCloseTo(0.0025, within(1e-15));
        assertThat(lag.at(millimetres(10)).relativeUncertainty()).isCloseTo(relative, within(1e-12));
    }

    @Test
    void theUncertaintyOnAnArcIsThatOfTheErrorItself() {
        Lag lag = lag(0.25, 0.2, 20, 2);
        double relative = lag.atExit().relativeUncertainty();
        double more = 2.5 * Math.exp(relative);
        double less = 2.5 * Math.exp(-relative);

        assertThat(lag.errorOnArc(millimetres(10)).to(Units.MILLIMETRE))
                .isCloseTo(Math.sqrt(106.25) - 10, within(1e-9));
        assertThat(lag.errorOnArc(millimetres(10)).relativeUncertainty())
                .isCloseTo(Math.log((Math.hypot(10, more) - 10) / (Math.hypot(10, less) - 10)) / 2, within(1e-9));
        assertThat(lag.errorOnArc(millimetres(10), LagGeometry.TRACTRIX).relativeUncertainty())
                .isCloseTo(
                        Math.log((10 - Math.sqrt(100 - more * more)) / (10 - Math.sqrt(100 - less * less))) / 2,
                        within(1e-9));
        assertThat(lag.errorOnArc(millimetres(10), LagGeometry.FOLLOWING).si()).isZero();
    }

    @Test
    void aCornerNotchesByTheLagFromARightAngleOn() {
        Lag lag = kerf(20, 2).lag();

        assertThat(Kind.LENGTH.si(lag.errorAtCorner(degrees(90), LagGeometry.TANGENT)))
                .isCloseTo(exitM(lag), within(1e-15));
        assertThat(Kind.LENGTH.si(lag.errorAtCorner(degrees(150), LagGeometry.TANGENT)))
                .isCloseTo(exitM(lag), within(1e-15));
        assertThat(Kind.LENGTH.si(lag.errorAtCorner(degrees(30), LagGeometry.TANGENT)))
                .isCloseTo(exitM(lag) / 2, within(1e-15));
        assertThat(Kind.LENGTH.si(lag.errorAtCorner(degrees(90), LagGeometry.FOLLOWING)))
                .isZero();
        assertThat(Refusals.of(() -> lag.errorAtCorner(degrees(0), LagGeometry.TANGENT)))
                .isEqualTo("must-be-above");
    }

    @Test
    void aLagIsItsModelThicknessAndSeparationDepth() {
        ValueContract.of(() -> lag(0.25, 0.2, 20, 2))
                .has("thickness", Lag::thickness, millimetres(20))
                .has("model", Lag::model, LagModel.of(0.25, 0.2, OWN))
                .differs("coefficient", lag(0.26, 0.2, 20, 2))
                .differs("thickness", lag(0.25, 0.2, 21, 2 * 20 / 21.0))
                .differs("index", lag(0.25, 0.2, 20, 3))
                .differs("uncertainty", lag(0.25, 0.3, 20, 2))
                .check();
        Lag lag = lag(0.25, 0.2, 20, 2);
        assertThat(Refusals.of(() -> new Lag(lag.model(), millimetres(50), lag.separationDepth())))
                .isEqualTo("must-be-at-least");
        assertThat(Refusals.of(() -> lag.at(millimetres(21)))).isEqualTo("must-be-at-most");
    }

    @Test
    void aModelIsItsCoefficientAndEvidence() {
        ValueContract.of(() -> LagModel.of(0.25, 0.2, OWN))
                .has("coefficient", LagModel::coefficient, 0.25)
                .has("uncertainty", LagModel::relativeUncertainty, 0.2)
                .differs("coefficient", LagModel.of(0.26, 0.2, OWN))
                .differs("uncertainty", LagModel.of(0.25, 0.3, OWN))
                .differs("evidence", LagModel.of(0.25, 0.2, LagModel.standard().evidence()))
                .check();
    }

    @Test
    void theFeedModelGivesTheSeparationDepth() {
        CutConditions cut = steel(20);

        assertThat(LagModel.standard().lag(cut, millimetresPerMinute(60)).separationDepth())
                .isEqualTo(FEEDS.depth(cut.jet(), cut.material(), millimetresPerMinute(60)));
    }
}

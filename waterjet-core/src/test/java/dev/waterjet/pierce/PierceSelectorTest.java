package dev.waterjet.pierce;

import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.millimetres;
import static dev.waterjet.measure.Measures.seconds;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.Refusals;
import dev.waterjet.ValueContract;
import dev.waterjet.evidence.Caution;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.evidence.Evidence;
import dev.waterjet.evidence.EvidenceGrade;
import dev.waterjet.evidence.Source;
import dev.waterjet.feed.CutConditions;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class PierceSelectorTest {

    private static final PierceSettings DEFAULTS = PierceSettings.defaults();

    private static Pierce select(PierceSettings settings, CutConditions cut) {
        return PierceSelector.of(settings).select(cut);
    }

    @Test
    void metalIsPiercedAtFullPressureStationaryOrMoving() {
        CutConditions steel = Pierces.cut("stainless-304", 25);
        Pierce stationary = select(DEFAULTS, steel);
        Pierce moving = select(DEFAULTS.withPierceClearance(millimetres(4)), steel);

        assertThat(stationary.method()).isEqualTo(PierceMethod.STATIONARY);
        assertThat(stationary.reason().code()).isEqualTo("pierce-without-clearance");
        // four bores of 0.76 mm
        assertThat((double) java.util.Objects.requireNonNull(
                        stationary.reason().parameters().get("clearance_m")))
                .isCloseTo(0.00304, within(1e-12));
        assertThat(moving.method()).isEqualTo(PierceMethod.MOVING);
        assertThat(moving.reason().code()).isEqualTo("pierce-moving");
        assertThat(moving.time().si()).isLessThan(stationary.time().si());
        assertThat(Kind.PRESSURE.si(moving.pressure())).isEqualTo(380e6);
    }

    @Test
    void thinMetalGainsNothingByMoving() {
        Pierce pierce = select(DEFAULTS.withPierceClearance(millimetres(50)), Pierces.cut("aluminium", 1));

        assertThat(pierce.method()).isEqualTo(PierceMethod.STATIONARY);
        assertThat(pierce.reason().code()).isEqualTo("pierce-stationary");
    }

    /** Laminates are not pierced at full pressure (common practice, no source). */
    @ParameterizedTest
    @ValueSource(doubles = {30, 60, 100, 150})
    void laminatesAreNotPiercedAtFullPressure(double strengthMpa) {
        Pierce pierce = select(DEFAULTS.withStrength(megapascals(strengthMpa)), Pierces.laminate(6));

        assertThat(pierce.method()).isNotIn(PierceMethod.STATIONARY, PierceMethod.MOVING);
        if (pierce.method() == PierceMethod.LOW_PRESSURE) {
            double holePa = Kind.PRESSURE.si(PierceSettings.blindHolePressure(pierce.pressure()));
            assertThat(holePa).isLessThan(strengthMpa * 1e6);
            assertThat(Kind.PRESSURE.si(pierce.pressure())).isLessThan(380e6);
        }
    }

    @Test
    void aDelicatePlateOfUnknownStrengthGetsTheMinimumPressureAndACaution() {
        Pierce pierce = select(DEFAULTS, Pierces.cut("float-glass", 8));

        assertThat(pierce.method()).isEqualTo(PierceMethod.LOW_PRESSURE);
        assertThat(pierce.reason().code()).isEqualTo("pierce-strength-unknown");
        assertThat(Kind.PRESSURE.si(pierce.pressure())).isEqualTo(70e6);
        assertThat(pierce.cautions()).extracting(Caution::code).contains("strength-unknown");
        assertThat(Kind.TIME.si(pierce.idleTime())).isEqualTo(3);
    }

    /** 0.8 of 2 x 40 MPa is 64 MPa, below the 70 MPa of the pump; 2 x 44 MPa gives 70.4 MPa, just above. */
    @Test
    void aPlateThatEvenTheMinimumPressureWouldCrackIsDrilled() {
        CutConditions glass = Pierces.cut("float-glass", 8);
        Pierce drilled = select(DEFAULTS.withStrength(megapascals(40)), glass);

        assertThat(drilled.method()).isEqualTo(PierceMethod.PRE_DRILLED);
        assertThat(drilled.time().si()).isZero();
        assertThat(drilled.idleTime()).isEqualTo(DEFAULTS.drillTime());
        assertThat(drilled.reason().parameters()).containsEntry("strength_Pa", 40e6);
        assertThat(select(DEFAULTS.withStrength(megapascals(44)), glass).method())
                .isEqualTo(PierceMethod.LOW_PRESSURE);
    }

    @Test
    void aBrittlePlateThatBearsTheHoleIsPiercedAtFullPressure() {
        Pierce pierce = select(DEFAULTS.withStrength(megapascals(300)), Pierces.cut("alumina-ad85", 1));

        assertThat(pierce.method()).isEqualTo(PierceMethod.STATIONARY);
        assertThat(Kind.PRESSURE.si(pierce.pressure())).isEqualTo(380e6);
    }

    @Test
    void aModelTimedByTheShopReplacesTheDerivedOne() {
        PierceModel timed = PierceModel.of(
                millimetres(5), 1, 0.1, Evidence.of(EvidenceGrade.FITTED, Source.of("pierces at Hollow Ridge")));
        Pierce pierce = PierceSelector.of(DEFAULTS)
                .withModel(PierceMethod.STATIONARY, timed)
                .select(Pierces.cut("aluminium", 10));

        assertThat(pierce.time().si()).isCloseTo(2, within(1e-12));
        assertThat(pierce.cautions()).isEmpty();
    }

    @Test
    void settingsAreTheirNumbers() {
        ValueContract.of(PierceSettings::defaults)
                .change(
                        "minimum pressure",
                        settings -> settings.withMinimumPressure(megapascals(50)),
                        PierceSettings::minimumPressure,
                        megapascals(50))
                .change(
                        "clearance",
                        settings -> settings.withPierceClearance(millimetres(4)),
                        PierceSettings::pierceClearance,
                        millimetres(4))
                .change("ramp", settings -> settings.withRampTime(seconds(5)), PierceSettings::rampTime, seconds(5))
                .change(
                        "drill",
                        settings -> settings.withDrillTime(seconds(20)),
                        PierceSettings::drillTime,
                        seconds(20))
                .differs("strength", DEFAULTS.withStrength(megapascals(60)))
                .check();
        ValueContract.of(() -> DEFAULTS.withStrength(megapascals(60)).withRampTime(seconds(5)))
                .differs("strength", DEFAULTS.withStrength(megapascals(61)).withRampTime(seconds(5)))
                .check();
        assertThat(DEFAULTS.strength()).isEmpty();
        assertThat(DEFAULTS.withStrength(megapascals(60)).strength().map(Kind.PRESSURE::si))
                .contains(60e6);
    }

    /** Half of the supply in the hole, with a fifth to spare: 0.8 x 60 / 0.5. */
    @Test
    void theSafePressureLeavesAMarginOfAFifth() {
        assertThat(DEFAULTS.withStrength(megapascals(60)).safePressure().map(Kind.PRESSURE::si))
                .contains(96e6);
        assertThat(DEFAULTS.safePressure()).isEmpty();
        assertThat(Kind.PRESSURE.si(PierceSettings.blindHolePressure(megapascals(300))))
                .isEqualTo(150e6);
    }

    @Test
    void impossibleSettingsAreRefused() {
        assertThat(Refusals.of(() -> DEFAULTS.withStrength(megapascals(0)))).isEqualTo("must-be-above");
        assertThat(Refusals.of(() -> DEFAULTS.withMinimumPressure(megapascals(-1))))
                .isEqualTo("must-be-above");
        assertThat(Refusals.of(() -> DEFAULTS.withPierceClearance(millimetres(-1))))
                .isEqualTo("must-be-at-least");
        assertThat(Refusals.of(() -> DEFAULTS.withRampTime(seconds(-1)))).isEqualTo("must-be-at-least");
        assertThat(Refusals.of(() -> DEFAULTS.withDrillTime(seconds(-1)))).isEqualTo("must-be-at-least");
        assertThat(Refusals.of(() -> PierceSettings.blindHolePressure(megapascals(0))))
                .isEqualTo("must-be-above");
    }

    private static Pierce pierce(double mpa, double idleS, Caution... cautions) {
        return new Pierce(
                PierceMethod.LOW_PRESSURE,
                megapascals(mpa),
                Estimate.withinFactor(Kind.TIME, 10, 0.5, List.of()),
                seconds(idleS),
                Message.of("delicate", "a delicate plate"),
                List.of(cautions));
    }

    @Test
    void aPierceIsAllItsComponents() {
        ValueContract.of(() -> pierce(70, 2))
                .has("pressure", Pierce::pressure, megapascals(70))
                .has("idle", Pierce::idleTime, seconds(2))
                .differs("pressure", pierce(71, 2))
                .differs("idle", pierce(70, 3))
                .differs("caution", pierce(70, 2, Caution.notice(Message.of("try", "on scrap"))))
                .check();
        assertThat(Refusals.of(() -> pierce(0, 2))).isEqualTo("must-be-above");
        assertThat(Refusals.of(() -> pierce(70, -1))).isEqualTo("must-be-at-least");
        assertThat(Arrays.stream(PierceMethod.values()).map(PierceMethod::label))
                .doesNotHaveDuplicates();
    }
}

package dev.waterjet.pierce;

import dev.waterjet.evidence.Caution;
import dev.waterjet.evidence.Evidence;
import dev.waterjet.evidence.EvidenceGrade;
import dev.waterjet.evidence.Source;
import dev.waterjet.feed.MachinabilityFeed;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import dev.waterjet.plan.Jobs;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.millimetres;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

class PierceSelectorTest {

    private static final PierceSettings USUAL = PierceSettings.defaults();

    private static Pierce choose(PierceSettings practice, Workpiece piece) {
        return PierceSelector.of(MachinabilityFeed.published(), practice).choose(Jobs.JET, piece);
    }

    @Test
    void metalIsPiercedAtFullPressureStandingOrMoving() {
        Workpiece steel = Jobs.plate("stainless-304", 25);
        Pierce standing = choose(USUAL, steel);
        Pierce moving = choose(USUAL.withPierceClearance(millimetres(4)), steel);

        assertThat(standing.method()).isEqualTo(PierceMethod.STATIONARY);
        assertThat(standing.reason()).contains("no room of 3 mm");
        assertThat(moving.method()).isEqualTo(PierceMethod.MOVING);
        assertThat(moving.time().si()).isLessThan(standing.time().si());
        assertThat(Kind.PRESSURE.si(moving.pressure())).isEqualTo(380e6);
    }

    @Test
    void thinMetalGainsNothingByMoving() {
        assertThat(choose(USUAL.withPierceClearance(millimetres(50)), Jobs.plate("aluminium", 1))
                        .method())
                .isEqualTo(PierceMethod.STATIONARY);
    }

    /** Laminates are not pierced at full pressure (common practice, no source). */
    @ParameterizedTest
    @ValueSource(doubles = {30, 60, 100, 150})
    void laminatesAreNotPiercedAtFullPressure(double strengthMpa) {
        Pierce pierce = choose(USUAL.withStrength(megapascals(strengthMpa)), Jobs.laminate(6));

        assertThat(pierce.method()).isNotIn(PierceMethod.STATIONARY, PierceMethod.MOVING);
        if (pierce.method() == PierceMethod.LOW_PRESSURE) {
            double holePa = Kind.PRESSURE.si(PierceSettings.blindHolePressure(pierce.pressure()));
            assertThat(holePa).isLessThan(strengthMpa * 1e6);
            assertThat(Kind.PRESSURE.si(pierce.pressure())).isLessThan(380e6);
        }
    }

    @Test
    void aDelicatePlateOfUnknownStrengthGetsTheLowestPressureAndACaution() {
        Pierce pierce = choose(USUAL, Jobs.plate("float-glass", 8));

        assertThat(pierce.method()).isEqualTo(PierceMethod.LOW_PRESSURE);
        assertThat(Kind.PRESSURE.si(pierce.pressure())).isEqualTo(70e6);
        assertThat(pierce.cautions()).extracting(Caution::code).contains("strength-unknown");
        assertThat(pierce.idleTimeSi()).isEqualTo(3);
    }

    @Test
    void whatEvenTheLowestPressureWouldCrackIsDrilled() {
        // 0.8 of 2 x 40 MPa is 64 MPa, below the pump's 70 MPa; 2 x 44 MPa gives 70.4 MPa, just above
        assertThat(choose(USUAL.withStrength(megapascals(40)), Jobs.plate("float-glass", 8))
                        .method())
                .isEqualTo(PierceMethod.PRE_DRILLED);
        assertThat(choose(USUAL.withStrength(megapascals(44)), Jobs.plate("float-glass", 8))
                        .method())
                .isEqualTo(PierceMethod.LOW_PRESSURE);
    }

    @Test
    void aBrittlePlateThatBearsTheHoleIsPiercedAtFullPressure() {
        Pierce pierce = choose(USUAL.withStrength(megapascals(300)), Jobs.plate("alumina-ad85", 1));

        assertThat(pierce.method()).isEqualTo(PierceMethod.STATIONARY);
        assertThat(pierce.reason()).contains("half of the supply pressure");
    }

    @Test
    void aLawTimedByTheShopReplacesTheDerivedOne() {
        PierceModel timed = PierceModel.of(
                millimetres(5), 1, 0.1, Evidence.of(EvidenceGrade.FITTED, Source.of("pierces at Hollow Ridge")));
        Pierce pierce = PierceSelector.of(MachinabilityFeed.published(), USUAL)
                .withModel(PierceMethod.STATIONARY, timed)
                .choose(Jobs.JET, Jobs.plate("aluminium", 10));

        assertThat(pierce.time().si()).isCloseTo(2, within(1e-12));
        assertThat(pierce.cautions()).isEmpty();
    }

    @Test
    void badPracticeIsRefusedByName() {
        assertThatThrownBy(() -> USUAL.withStrength(megapascals(0)))
                .hasMessage("strength of the plate is 0 MPa; it must be above 0 MPa");
        assertThatThrownBy(() -> USUAL.withMinimumPressure(megapascals(-1)))
                .hasMessageContaining("lowest pressure of the pump is -1 MPa");
    }
}

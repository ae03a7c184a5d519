package dev.waterjet.pierce;

import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.millimetres;
import static dev.waterjet.measure.Measures.seconds;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.evidence.Caution;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.evidence.Evidence;
import dev.waterjet.evidence.EvidenceGrade;
import dev.waterjet.evidence.Source;
import dev.waterjet.feed.CutConditions;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import java.util.List;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Pressure;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Limits at which the selected method changes, and the numbers stated on each side. */
class PierceLimitsTest {

    private static final PierceSettings DEFAULTS = PierceSettings.defaults();

    private static final Evidence TIMED =
            Evidence.of(EvidenceGrade.FITTED, Source.of("pierce log of the Hollow Ridge workshop"));

    private static PierceModel timed(double mmPerS, double relativeUncertainty) {
        return PierceModel.of(millimetres(mmPerS), 1, relativeUncertainty, TIMED);
    }

    private static Pierce select(PierceSettings settings, CutConditions cut) {
        return PierceSelector.of(settings).select(cut);
    }

    private static double parameter(Message message, String key) {
        return (double) Objects.requireNonNull(message.parameters().get(key));
    }

    /** On a circle from 10 mm on. */
    @ParameterizedTest
    @CsvSource({"9.99, MOVING", "10, CIRCULAR", "10.01, CIRCULAR"})
    void aThickPlateIsPiercedOnACircle(double mm, PierceMethod method) {
        assertThat(select(DEFAULTS.withPierceClearance(millimetres(4)), Pierces.cut("stainless-304", mm))
                        .method())
                .isEqualTo(method);
    }

    /** Both settings and scrap must give four bores: exactly these are enough, a micrometre less is not. */
    @Test
    void fourBoresOfClearanceAreEnoughForAMovingJet() {
        CutConditions steel = Pierces.cut("stainless-304", 25);
        double bores = 4 * steel.jet().tubeExitBoreSi();
        Quantity<Length> enough = Kind.LENGTH.of(bores);
        Quantity<Length> less = Kind.LENGTH.of(bores - 1e-6);
        PierceSelector exact = PierceSelector.of(DEFAULTS.withPierceClearance(enough));
        PierceSelector narrow = PierceSelector.of(DEFAULTS.withPierceClearance(less));

        assertThat(exact.select(steel).method()).isEqualTo(PierceMethod.CIRCULAR);
        assertThat(exact.select(steel, enough).method()).isEqualTo(PierceMethod.CIRCULAR);
        assertThat(exact.select(steel, less).reason().code()).isEqualTo("pierce-in-narrow-scrap");
        assertThat(narrow.select(steel, enough).reason().code()).isEqualTo("pierce-without-clearance");
        assertThat(parameter(exact.select(steel).reason(), "clearance_m")).isCloseTo(bores, within(1e-15));
    }

    /** 8 mm at 4 mm/s and 8 mm/s: exactly one second is saved, and more than one is required. */
    @Test
    void aMovingPierceMustSaveMoreThanASecond() {
        CutConditions steel = Pierces.cut("stainless-304", 8);
        PierceSelector stationary = PierceSelector.of(DEFAULTS.withPierceClearance(millimetres(4)))
                .withModel(PierceMethod.STATIONARY, timed(4, 0.1));
        Pierce same = stationary.withModel(PierceMethod.MOVING, timed(8, 0.1)).select(steel);
        Pierce faster =
                stationary.withModel(PierceMethod.MOVING, timed(8.01, 0.1)).select(steel);

        assertThat(same.reason().code()).isEqualTo("pierce-stationary");
        assertThat(parameter(same.reason(), "saved_s")).isEqualTo(1);
        assertThat(same.time().si()).isEqualTo(2);
        assertThat(faster.reason().code()).isEqualTo("pierce-moving");
        assertThat(parameter(faster.reason(), "saved_s")).isCloseTo(2 - 8 / 8.01, within(1e-12));
    }

    @Test
    void theReasonNamesTheClassOfTheMaterialAndTheTimeSaved() {
        CutConditions steel = Pierces.cut("mild-steel-a36", 20);
        Pierce pierce = select(DEFAULTS, steel);
        double saved = PierceModel.derived(steel, PierceMethod.STATIONARY)
                        .time(millimetres(20))
                        .si()
                - PierceModel.derived(steel, PierceMethod.CIRCULAR)
                        .time(millimetres(20))
                        .si();

        assertThat(pierce.reason().parameters()).containsEntry("material_class", "ductile");
        assertThat(parameter(pierce.reason(), "saved_s")).isCloseTo(saved, within(1e-12));
        assertThat(select(DEFAULTS, Pierces.brittle(8)).reason().parameters())
                .containsEntry("material_class", "brittle")
                .containsEntry("low_depth_m", 0.002);
        assertThat(select(DEFAULTS, Pierces.brittle(1.5)).reason().parameters()).containsEntry("low_depth_m", 0.0015);
    }

    /** A strength of 1 bears 0.8/0.5 of it as supply pressure, so that a jet of exactly this pressure pierces at once. */
    @Test
    void aBrittlePlateIsPiercedAtTheSafePressureAtOnceAndAboveItInTwoSteps() {
        PierceSettings settings = DEFAULTS.withStrength(megapascals(200));
        Quantity<Pressure> safe = settings.safePressure().orElseThrow();
        CutConditions tile = Pierces.brittle(8);
        CutConditions atSafe = tile.withJet(tile.jet().withPressure(safe));
        CutConditions above = tile.withJet(tile.jet().withPressure(megapascals(320.01)));
        Pierce inTwoSteps = select(settings, above);

        assertThat(Kind.PRESSURE.si(safe)).isCloseTo(320e6, within(1e-3));
        assertThat(select(settings, atSafe).method()).isEqualTo(PierceMethod.STATIONARY);
        assertThat(inTwoSteps.method()).isEqualTo(PierceMethod.LOW_PRESSURE);
        assertThat(Kind.PRESSURE.si(inTwoSteps.pressure())).isCloseTo(320e6, within(1e-3));
        assertThat(inTwoSteps.reason().code()).isEqualTo("pierce-within-strength");
        assertThat(parameter(inTwoSteps.reason(), "strength_Pa")).isEqualTo(200e6);
    }

    /** 70 MPa leaves 35 MPa in the hole: layers that bear exactly these are not separated. */
    @ParameterizedTest
    @CsvSource({"35, LOW_PRESSURE", "34.99, PRE_DRILLED"})
    void aLaminateIsDrilledBelowThePressureInItsHole(double mpa, PierceMethod method) {
        assertThat(select(DEFAULTS.withStrength(megapascals(mpa)), Pierces.laminate(8))
                        .method())
                .isEqualTo(method);
    }

    /** Both steps may be slow together: their uncertainties add. */
    @ParameterizedTest
    @CsvSource({"0, 3", "0.2, 3", "1.5, 3", "0.2, 0.5"})
    void theUncertaintiesOfBothStepsAdd(double ofFull, double lowDepthMm) {
        CutConditions granite = Pierces.cut("granite", 40);
        CutConditions atLow = granite.withJet(granite.jet().withPressure(megapascals(70)));
        Estimate<?> low = PierceModel.derived(atLow, PierceMethod.LOW_PRESSURE).time(millimetres(lowDepthMm));
        Pierce pierce = PierceSelector.of(DEFAULTS.withLowPressureDepth(millimetres(lowDepthMm)))
                .withModel(PierceMethod.STATIONARY, timed(2, ofFull))
                .select(granite);
        double full = (40 - lowDepthMm) / 2;

        assertThat(pierce.time().si()).isCloseTo(low.si() + full, within(1e-9));
        assertThat(pierce.time().standardUncertaintySi())
                .isCloseTo(low.standardUncertaintySi() + full * ofFull, within(1e-9));
    }

    /**
     * The plate is through before the pressure is raised: one model, one caution. Above that, each uncertainty of a step has a
     * caution: with a machinability of steel the time at full pressure is known better.
     */
    @Test
    void aLowPressureDepthOfTheThicknessIsOneStep() {
        CutConditions glass = Pierces.brittle(85, 2);
        CutConditions atLow = glass.withJet(glass.jet().withPressure(megapascals(70)));
        Pierce pierce = select(DEFAULTS, glass);

        assertThat(pierce.time())
                .isEqualTo(PierceModel.derived(atLow, PierceMethod.LOW_PRESSURE).time(millimetres(2)));
        assertThat(codes(pierce)).containsExactly("pierce-time", "strength-unknown");
        assertThat(codes(select(DEFAULTS, Pierces.brittle(85, 2.1))))
                .containsExactly("pierce-time", "pierce-time", "strength-unknown");
        assertThat(codes(select(DEFAULTS, Pierces.brittle(400, 2.1))))
                .containsExactly("pierce-time", "strength-unknown");
    }

    private static List<String> codes(Pierce pierce) {
        return pierce.cautions().stream().map(Caution::code).toList();
    }

    @Test
    void modelsOfSeveralMethodsAreKeptTogether() {
        PierceSelector both = PierceSelector.of(DEFAULTS.withPierceClearance(millimetres(4)))
                .withModel(PierceMethod.STATIONARY, timed(1, 0.1))
                .withModel(PierceMethod.LOW_PRESSURE, timed(0.5, 0.1))
                .withModel(PierceMethod.CIRCULAR, timed(20, 0.1));

        assertThat(both.select(Pierces.cut("aluminium", 20), millimetres(0))
                        .time()
                        .si())
                .isEqualTo(20);
        assertThat(both.select(Pierces.cut("aluminium", 20)).time().si()).isCloseTo(1, within(1e-12));
        assertThat(both.select(Pierces.brittle(20)).time().si()).isCloseTo(40, within(1e-12));
    }

    @Test
    void textsNameWhatTheShopMustKnow() {
        Pierce jet = select(DEFAULTS, Pierces.cut("aluminium", 20));
        Pierce drilled = select(DEFAULTS.withStrength(megapascals(20)), Pierces.laminate(8));

        assertThat(jet).asString().contains("stationary", "380 MPa").doesNotContain("drilled");
        assertThat(drilled).asString().contains("pre-drilled", "380 MPa");
        assertThat(drilled.time().si()).isZero();
        assertThat(DEFAULTS).asString().contains("70 MPa", "unknown");
        assertThat(DEFAULTS.withStrength(megapascals(60)).withRampTime(seconds(1)))
                .asString()
                .contains("70 MPa", "60 MPa");
        assertThat(List.of(jet.describe().get("method"), drilled.describe().get("method")))
                .doesNotHaveDuplicates();
    }
}

package dev.waterjet.pierce;

import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.millimetres;
import static dev.waterjet.measure.Measures.millimetresPerMinute;
import static dev.waterjet.measure.Measures.seconds;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import dev.waterjet.Refusals;
import dev.waterjet.ValueContract;
import dev.waterjet.evidence.Caution;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.evidence.Evidence;
import dev.waterjet.evidence.EvidenceGrade;
import dev.waterjet.evidence.Source;
import dev.waterjet.feed.CutConditions;
import dev.waterjet.feed.ThresholdFeed;
import dev.waterjet.material.MaterialClass;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.part.Contour;
import dev.waterjet.part.Part;
import dev.waterjet.part.Point;
import dev.waterjet.quality.EdgeRequirement;
import java.util.Arrays;
import java.util.List;
import javax.measure.quantity.Pressure;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
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
        assertThat(moving.method()).isEqualTo(PierceMethod.CIRCULAR);
        assertThat(moving.reason().code()).isEqualTo("pierce-circular");
        Pierce onALine = select(DEFAULTS.withPierceClearance(millimetres(4)), Pierces.cut("stainless-304", 8));
        assertThat(onALine.method()).isEqualTo(PierceMethod.MOVING);
        assertThat(onALine.reason().code()).isEqualTo("pierce-moving");
        assertThat(moving.time().si()).isLessThan(stationary.time().si());
        assertThat(Kind.PRESSURE.si(moving.pressure())).isEqualTo(380e6);
    }

    /** A moving jet of a 0.76 mm tube requires 3.04 mm: a hole of 2.8 mm has them nowhere, one of 40 mm not near its wall. */
    @ParameterizedTest
    @CsvSource({
        "10, 10, STATIONARY, pierce-in-narrow-scrap",
        "60, 60, CIRCULAR, pierce-circular",
        "60, 78.4, CIRCULAR, pierce-circular",
        "60, 78.6, STATIONARY, pierce-in-narrow-scrap",
        "-1.6, 50, CIRCULAR, pierce-circular",
        "-1.4, 50, STATIONARY, pierce-in-narrow-scrap"
    })
    void eachContourIsPiercedByTheScrapAroundItsPiercePoint(double xMm, double yMm, PierceMethod method, String code) {
        Part part = Part.of(
                Contour.from(Point.millimetres(0, 0))
                        .lineTo(Point.millimetres(100, 0))
                        .lineTo(Point.millimetres(100, 100))
                        .lineTo(Point.millimetres(0, 100))
                        .close(),
                List.of(
                        Contour.circle(Point.millimetres(10, 10), millimetres(1.4), EdgeRequirement.defaults()),
                        Contour.circle(Point.millimetres(60, 60), millimetres(20), EdgeRequirement.defaults())));
        CutConditions steel = Pierces.cut("stainless-304", 25);
        PierceSelector selector = PierceSelector.of(DEFAULTS.withPierceClearance(millimetres(30)));
        Pierce pierce = selector.select(steel, part, Point.millimetres(xMm, yMm));

        assertThat(pierce.method()).isEqualTo(method);
        assertThat(pierce.reason().code()).isEqualTo(code);
        assertThat(pierce.time())
                .isEqualTo(select(
                                method == PierceMethod.STATIONARY
                                        ? DEFAULTS
                                        : DEFAULTS.withPierceClearance(millimetres(4)),
                                steel)
                        .time());
        // a shop without a moving pierce has none anywhere
        assertThat(PierceSelector.of(DEFAULTS).select(steel, part, Point.millimetres(xMm, yMm)))
                .isEqualTo(select(DEFAULTS, steel));
    }

    /** The scrap around the point changes nothing where the jet does not move, as in glass. */
    @Test
    void aDelicatePlateIsPiercedAlikeEverywhere() {
        CutConditions glass = Pierces.brittle(8);

        assertThat(PierceSelector.of(DEFAULTS).select(glass, millimetres(0))).isEqualTo(select(DEFAULTS, glass));
        assertThat(Refusals.of(() -> PierceSelector.of(DEFAULTS).select(glass, millimetres(-1))))
                .isEqualTo("must-be-at-least");
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
        CutConditions glass = Pierces.brittle(8);
        Pierce pierce = select(DEFAULTS, glass);

        assertThat(pierce.method()).isEqualTo(PierceMethod.LOW_PRESSURE);
        assertThat(pierce.reason().code()).isEqualTo("pierce-strength-unknown");
        assertThat(Kind.PRESSURE.si(pierce.pressure())).isEqualTo(70e6);
        assertThat(pierce.cautions()).extracting(Caution::code).contains("strength-unknown");
        assertThat(Kind.TIME.si(pierce.idleTime())).isEqualTo(3);
    }

    /**
     * Glass and stone are pierced at the minimum pressure of the pump (common practice, no source), whether or not a strength is
     * stated that leaves no margin there: 0.8 of 2 x 40 MPa is 64 MPa.
     */
    @ParameterizedTest
    @ValueSource(strings = {"float-glass", "granite", "marble-white", "sandstone", "borosilicate-glass"})
    void glassAndStoneAreAnsweredAlikeWithAndWithoutAStrength(String material) {
        CutConditions cut = Pierces.cut(material, 10);
        Pierce known = select(DEFAULTS.withStrength(megapascals(40)), cut);
        Pierce unknown = select(DEFAULTS, Pierces.brittle(10));
        Pierce ofCatalogue = select(DEFAULTS, cut);

        assertThat(List.of(known, unknown, ofCatalogue)).allSatisfy(pierce -> {
            assertThat(pierce.method()).isEqualTo(PierceMethod.LOW_PRESSURE);
            assertThat(Kind.PRESSURE.si(pierce.pressure())).isBetween(70e6, 81e6);
        });
        assertThat(known.time())
                .isEqualTo(select(DEFAULTS.withStrength(megapascals(20)), cut).time());
        assertThat(known.reason().code()).isEqualTo("pierce-above-strength");
        assertThat(known.cautions()).extracting(Caution::code).contains("cracking");
    }

    /** A handbook strength is uncertain: no more than its lower end raises the pressure; a laminate is judged too weak by its value. */
    @ParameterizedTest
    @CsvSource({"alumina-ad90", "alumina-ad85", "cfrp", "cast-iron-grey-250", "silicon-carbide", "aramid-laminate"})
    void aStrengthOfTheCatalogueCountsWithItsLowerEnd(String material) {
        CutConditions cut = Pierces.cut(material, 6);
        Estimate<Pressure> strength = cut.material().strength().orElseThrow();
        double borne = strength.si() * Math.exp(-1.6449 * strength.relativeUncertainty());
        Pierce pierce = select(DEFAULTS, cut);

        if (cut.material().materialClass() == MaterialClass.LAMINATED && strength.si() < 35e6) {
            assertThat(pierce.method()).isEqualTo(PierceMethod.PRE_DRILLED);
        } else {
            assertThat(Kind.PRESSURE.si(pierce.pressure()))
                    .isCloseTo(Math.min(380e6, Math.max(70e6, 1.6 * borne)), withinPercentage(0.1));
        }
    }

    /** 70 MPa leaves 35 MPa in the hole; layers that bear 30 MPa separate. */
    @Test
    void aLaminateThatSeparatesAtTheMinimumPressureIsDrilled() {
        CutConditions laminate = Pierces.laminate(8);
        Pierce drilled = select(DEFAULTS.withStrength(megapascals(30)), laminate);

        assertThat(drilled.method()).isEqualTo(PierceMethod.PRE_DRILLED);
        assertThat(drilled.reason().code()).isEqualTo("pierce-drilled");
        assertThat(drilled.idleTime()).isEqualTo(DEFAULTS.drillTime());
        assertThat(drilled.reason().parameters()).containsEntry("strength_Pa", 30e6);
        Pierce slow = select(DEFAULTS.withStrength(megapascals(36)), laminate);
        assertThat(slow.method()).isEqualTo(PierceMethod.LOW_PRESSURE);
        assertThat(slow.cautions()).extracting(Caution::code).contains("delamination");
    }

    /** t = t_low(h1) + t_full(h) - t_full(h1), each by the damped form; all the way at low pressure it is far longer. */
    @Test
    void thePressureIsRaisedAfterTheFirstMillimetres() {
        CutConditions granite = Pierces.cut("granite", 100);
        CutConditions atLow = granite.withJet(granite.jet().withPressure(megapascals(70)));
        PierceModel low = PierceModel.derived(atLow, PierceMethod.LOW_PRESSURE);
        PierceModel full = PierceModel.derived(granite, PierceMethod.STATIONARY);
        Pierce pierce = select(DEFAULTS, granite);
        Pierce allTheWay = select(DEFAULTS.withLowPressureDepth(millimetres(100)), granite);

        assertThat(pierce.time().si())
                .isCloseTo(
                        low.time(millimetres(2)).si()
                                + full.time(millimetres(100)).si()
                                - full.time(millimetres(2)).si(),
                        within(1e-9));
        assertThat(allTheWay.time().si()).isCloseTo(low.time(millimetres(100)).si(), within(1e-9));
        assertThat(pierce.time().si()).isLessThan(allTheWay.time().si() / 5);
    }

    @Test
    void aJetThatDoesNotCutAtLowPressureAsksForADrilledHole() {
        CutConditions cut = Pierces.brittle(5);
        ThresholdFeed threshold =
                ThresholdFeed.of(cut.material(), cut.jet(), 1, megapascals(100), millimetresPerMinute(100));
        Pierce pierce = select(DEFAULTS, cut.withFeedModel(threshold));

        assertThat(pierce.method()).isEqualTo(PierceMethod.PRE_DRILLED);
        assertThat(pierce.reason().code()).isEqualTo("pierce-not-at-low-pressure");
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
                .change(
                        "depth at low pressure",
                        settings -> settings.withLowPressureDepth(millimetres(3)),
                        PierceSettings::lowPressureDepth,
                        millimetres(3))
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
        assertThat(Refusals.of(() -> DEFAULTS.withLowPressureDepth(millimetres(0))))
                .isEqualTo("must-be-above");
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

package dev.waterjet.hydraulics;

import static dev.waterjet.Refusals.assertRefused;
import static dev.waterjet.measure.Measures.celsius;
import static dev.waterjet.measure.Measures.kilogramsPerSecond;
import static dev.waterjet.measure.Measures.litresPerMinute;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.metres;
import static dev.waterjet.measure.Measures.micrometres;
import static dev.waterjet.measure.Measures.millimetres;
import static dev.waterjet.measure.Measures.seconds;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.measure.Kind;
import dev.waterjet.water.Water;
import dev.waterjet.water.WaterState;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Supply of the head against formulas worked by hand, and each input at its limit. */
class SupplyFormulasTest {

    private final WaterState tap = Water.stable().at(megapascals(0.101325), celsius(20));
    private final WaterState pressed = Water.stable().at(megapascals(380.101325), celsius(20));
    private final Orifice orifice = Orifice.sapphire(millimetres(0.25)).withDischargeCoefficient(0.7);
    private final double passageM2 = 0.7 * Math.PI / 4 * 0.25e-3 * 0.25e-3;
    private final double lineM2 = Math.PI / 4 * 1e-6;

    /** A line of fittings alone: loss K (m/A)^2 / (2 rho), so p_head = p / (1 + K (Cd A_o / A)^2 rho_rest / rho). */
    @Test
    void headAndFittingsShareThePressure() {
        SupplyLine fittings =
                SupplyLine.of(SupplyLine.Section.ofBore(millimetres(1)).withFittings(8));
        OperatingPoint point = OperatingPoint.of(
                PumpSetting.of(megapascals(380), litresPerMinute(10)), fittings, celsius(20), List.of(orifice));
        double square = passageM2 / lineM2 * passageM2 / lineM2;
        double headPa = 380e6 / (1 + 8 * square * tap.densitySi() / pressed.densitySi());

        assertThat(Kind.PRESSURE.si(point.headPressure())).isCloseTo(headPa, within(1e-3));
        assertThat(Kind.PRESSURE.si(point.pumpPressure())).isEqualTo(380e6);
        assertThat(point.lineLoss().si()).isCloseTo(380e6 - headPa, within(1.0));
        assertThat(Kind.MASS_FLOW.si(point.massFlow()))
                .isCloseTo(passageM2 * Math.sqrt(2 * tap.densitySi() * headPa), within(1e-12));
        assertThat(point.isFlowLimited()).isFalse();
        assertThat(point.jets()).singleElement().satisfies(jet -> {
            assertThat(jet.pressureSi()).isCloseTo(headPa, within(1e-3));
            assertThat(Kind.TEMPERATURE.si(jet.temperature())).isCloseTo(293.15, within(1e-12));
        });
    }

    /** A pump of 1 L/min: p_head = rho (q/(Cd A))^2 / 2, and the pump holds only what the line and the heads take. */
    @Test
    void aPumpBelowTheRequiredFlowLosesPressure() {
        SupplyLine fittings =
                SupplyLine.of(SupplyLine.Section.ofBore(millimetres(1)).withFittings(8));
        OperatingPoint point = OperatingPoint.of(
                PumpSetting.of(megapascals(380), litresPerMinute(1)), fittings, celsius(20), List.of(orifice));
        double speed = 1e-3 / 60 / passageM2;
        double headPa = tap.densitySi() * speed * speed / 2;
        double pumpPa = Kind.PRESSURE.si(point.pumpPressure());
        double inLine = Water.stable().atSi(pumpPa + 101325, 293.15).densitySi();
        double flow = tap.densitySi() * 1e-3 / 60;

        assertThat(point.isFlowLimited()).isTrue();
        assertThat(Kind.PRESSURE.si(point.headPressure())).isCloseTo(headPa, within(1e-3));
        assertThat(pumpPa - headPa).isCloseTo(8 * flow * flow / (2 * inLine * lineM2 * lineM2), within(1e-3));
        assertThat(Kind.MASS_FLOW.si(point.massFlow())).isCloseTo(flow, within(1e-12));
    }

    @Test
    void theNarrowestSectionHasTheHighestReynoldsNumberAndSurge() {
        SupplyLine.Section wide = SupplyLine.Section.ofBore(millimetres(5)).withLength(metres(10));
        SupplyLine.Section narrow = SupplyLine.Section.ofBore(millimetres(2)).withLength(metres(1));
        SupplyLine line = SupplyLine.of(wide, narrow);

        assertThat(line.reynolds(kilogramsPerSecond(0.05), pressed))
                .isCloseTo(4 * 0.05 / (Math.PI * 2e-3 * pressed.viscositySi()), within(1e-6));
        assertThat(Kind.PRESSURE.si(line.surge(kilogramsPerSecond(0.05), pressed)))
                .isCloseTo(0.05 / (Math.PI / 4 * 4e-6) * pressed.soundSpeedSi(), within(1e-3));
    }

    /** Hagen and Poiseuille: dp = 128 mu L q / (pi D^4). */
    @Test
    void slowFlowIsLaminar() {
        double flow = 1e-4;
        SupplyLine line =
                SupplyLine.of(SupplyLine.Section.ofBore(millimetres(3)).withLength(metres(10)));

        assertThat(line.reynolds(kilogramsPerSecond(flow), pressed)).isLessThan(100);
        assertThat(line.lossSi(flow, pressed))
                .isCloseTo(
                        128 * pressed.viscositySi() * 10 * flow / pressed.densitySi() / (Math.PI * 81e-12),
                        within(1e-6));
        assertRefused(() -> line.lossSi(-1, pressed), "must-be-at-least", "mass flow", 0);
    }

    @Test
    void sectionsAreCheckedAtTheirLimits() {
        SupplyLine.Section tube = SupplyLine.Section.ofBore(millimetres(3));

        assertThatCode(() -> tube.withLength(metres(0)).withFittings(0).withRoughness(micrometres(0)))
                .doesNotThrowAnyException();
        assertThatCode(() -> tube.withRoughness(micrometres(150))).doesNotThrowAnyException();
        assertThatCode(() -> SupplyLine.Section.ofBore(micrometres(10))).doesNotThrowAnyException();
        assertRefused(() -> tube.withLength(metres(-1)), "must-be-at-least", "length of the supply line", 0);
        assertRefused(() -> tube.withFittings(-1), "must-be-at-least", "loss coefficient of the fittings", 0);
        assertRefused(() -> tube.withRoughness(micrometres(-1)), "must-be-at-least", "roughness of the supply line", 0);
        assertRefused(
                () -> tube.withRoughness(micrometres(151)), "must-be-at-most", "roughness of the supply line", 1.5e-4);
    }

    @Test
    void everyCorrelationButChurchillIsLaminarUpTo2300() {
        for (FrictionCorrelation correlation :
                List.of(FrictionCorrelation.COLEBROOK, FrictionCorrelation.HAALAND, FrictionCorrelation.SWAMEE_JAIN)) {
            assertThat(correlation.factor(2300, 0.05)).isEqualTo(64 / 2300.0);
            // between laminar and turbulent the factor rises without a step
            assertThat(correlation.factor(2300.1, 0.05)).isEqualTo(64 / 2300.0, within(1e-5));
            assertThat(correlation.factor(3150, 0.05))
                    .isEqualTo((64 / 2300.0 + correlation.factor(4000, 0.05)) / 2, within(1e-15));
            assertThat(correlation.factor(3999.9, 0.05)).isEqualTo(correlation.factor(4000, 0.05), within(1e-5));
        }
        assertThat(FrictionCorrelation.CHURCHILL.factor(2300, 0.05)).isNotEqualTo(64 / 2300.0);
    }

    /** Pump pressure is head pressure and loss, through the onset of turbulence too. */
    @Test
    void balanceOfTheOperatingPointHoldsThroughTheTransition() {
        SupplyLine line =
                SupplyLine.of(SupplyLine.Section.ofBore(millimetres(2.4)).withLength(metres(50)));
        PumpSetting pump = PumpSetting.of(megapascals(380), litresPerMinute(10));
        for (double boreMm = 0.07; boreMm < 0.16; boreMm += 7e-5) {
            OperatingPoint point =
                    OperatingPoint.of(pump, line, celsius(20), List.of(Orifice.sapphire(millimetres(boreMm))));
            double gapPa = 380e6
                    - Kind.PRESSURE.si(point.headPressure())
                    - point.lineLoss().si();
            assertThat(gapPa).as("%s mm", boreMm).isEqualTo(0, within(10.0));
        }
    }

    /** K = rho w^2 of a stiff vessel, and ripple = K dV / V for small volumes. */
    @Test
    void aStiffVesselRipplesByTheModulusOfWater() {
        Attenuator vessel = Attenuator.of(Kind.VOLUME.of(1e-3));
        double modulus = pressed.densitySi() * pressed.soundSpeedSi() * pressed.soundSpeedSi();

        assertThat(Kind.PRESSURE.si(vessel.effectiveBulkModulus(pressed))).isCloseTo(modulus, within(1.0));
        assertThat(Kind.PRESSURE.si(vessel.ripple(Kind.VOLUME.of(1e-6), pressed)))
                .isCloseTo(modulus / 1000, within(0.004 * modulus / 1000));
        assertThat(Kind.PRESSURE.si(vessel.ripple(Kind.VOLUME.of(0), pressed))).isZero();
        assertThat(Kind.PRESSURE.si(vessel.ripple(Kind.VOLUME.of(1e-9), pressed)))
                .isCloseTo(modulus / 1e6, within(1e-4 * modulus / 1e6));
        assertThat(Kind.VOLUME.si(vessel.forRipple(Kind.VOLUME.of(1e-6), Kind.PRESSURE.of(modulus / 2e6), pressed)
                        .volume()))
                .isCloseTo(2, within(2e-4));
        assertRefused(() -> vessel.ripple(Kind.VOLUME.of(-1e-6), pressed), "must-be-at-least", "volume drawn", 0);
        assertRefused(
                () -> vessel.forRipple(Kind.VOLUME.of(0), megapascals(1), pressed), "must-be-above", "volume drawn", 0);
        assertRefused(
                () -> vessel.forRipple(Kind.VOLUME.of(1e-6), megapascals(0), pressed),
                "must-be-above",
                "pressure ripple",
                0);
        assertRefused(
                () -> vessel.withDiameterRatio(3, megapascals(0), 0.3),
                "must-be-above",
                "modulus of elasticity of the wall",
                0);
        assertRefused(
                () -> vessel.withDiameterRatio(3, megapascals(200_000), 0.6),
                "must-be-at-most",
                "Poisson's ratio of the wall",
                0.5);
        assertRefused(() -> Attenuator.of(Kind.VOLUME.of(0)), "must-be-above", "volume of the attenuator", 0);
    }

    @Test
    void pumpsAreCheckedAtTheirLimits() {
        Compression compression = Compression.isentropic(tap, megapascals(400));
        Intensifier pump = Intensifier.of(20, Kind.VOLUME.of(2e-4));

        assertThat(Kind.POWER.si(compression.power(kilogramsPerSecond(0.05))))
                .isCloseTo(0.05 * Kind.SPECIFIC_ENERGY.si(compression.work()), within(1e-9));
        assertThat(Kind.POWER.si(compression.power(kilogramsPerSecond(0)))).isZero();
        assertThat(Kind.POWER.si(compression.motorPower(kilogramsPerSecond(0), 1)))
                .isZero();
        assertThat(Kind.SPECIFIC_ENERGY.si(compression.isentropicWork()))
                .isCloseTo(Kind.SPECIFIC_ENERGY.si(compression.work()), within(1e-6));
        assertRefused(() -> compression.power(kilogramsPerSecond(-1)), "must-be-at-least", "mass flow", 0);
        assertRefused(() -> compression.motorPower(kilogramsPerSecond(-1), 1), "must-be-at-least", "mass flow", 0);
        assertRefused(() -> compression.motorPower(kilogramsPerSecond(1), 0), "must-be-above", "overall efficiency", 0);
        assertRefused(
                () -> compression.motorPower(kilogramsPerSecond(1), 1.1), "must-be-at-most", "overall efficiency", 1);
        assertRefused(() -> Compression.of(tap, megapascals(400), 0), "must-be-above", "isentropic efficiency", 0);
        assertRefused(
                () -> Compression.isentropic(tap, megapascals(0.101325)), "must-be-above", "outlet pressure", 101325);
        assertRefused(() -> Intensifier.of(1, Kind.VOLUME.of(2e-4)), "must-be-above", "area ratio", 1);
        assertRefused(() -> Intensifier.of(20, Kind.VOLUME.of(0)), "must-be-above", "stroke volume", 0);
        assertRefused(() -> pump.withReversalTime(seconds(-1)), "must-be-at-least", "reversal time", 0);
        assertRefused(() -> pump.strokes(kilogramsPerSecond(-1), tap), "must-be-at-least", "mass flow", 0);
        assertRefused(
                () -> pump.fluctuatingVolume(kilogramsPerSecond(0), compression), "must-be-above", "mass flow", 0);
        assertThat(Kind.FREQUENCY.si(pump.strokes(kilogramsPerSecond(0), tap))).isZero();
        assertThat(Kind.RATIO.si(pump.compressionFraction(compression)))
                .isCloseTo(1 - tap.densitySi() / compression.outlet().densitySi(), within(1e-15));
        assertRefused(
                () -> PumpSetting.of(megapascals(0), litresPerMinute(4)),
                "must-be-above",
                "pressure set at the pump",
                0);
        assertRefused(
                () -> PumpSetting.of(megapascals(1000), litresPerMinute(4)),
                "must-be-at-most",
                "pressure set at the pump",
                999e6);
        assertRefused(
                () -> PumpSetting.of(megapascals(380), litresPerMinute(0)),
                "must-be-above",
                "maximum flow of the pump",
                0);
    }

    @Test
    void directDrivePumpsAreCheckedAtTheirLimits() {
        DirectDrivePump three = DirectDrivePump.of(3, Kind.VOLUME.of(2e-6), Kind.FREQUENCY.of(10));

        assertThatCode(() -> three.withRodRatio(0).withVolumetricEfficiency(1)).doesNotThrowAnyException();
        assertThatCode(() -> three.withRodRatio(0.5)).doesNotThrowAnyException();
        assertThatCode(() -> DirectDrivePump.of(24, Kind.VOLUME.of(2e-6), Kind.FREQUENCY.of(10)))
                .doesNotThrowAnyException();
        assertRefused(
                () -> DirectDrivePump.of(0, Kind.VOLUME.of(2e-6), Kind.FREQUENCY.of(10)),
                "must-be-at-least",
                "number of plungers",
                1);
        assertRefused(
                () -> DirectDrivePump.of(25, Kind.VOLUME.of(2e-6), Kind.FREQUENCY.of(10)),
                "must-be-at-most",
                "number of plungers",
                24);
        assertRefused(
                () -> DirectDrivePump.of(3, Kind.VOLUME.of(0), Kind.FREQUENCY.of(10)),
                "must-be-above",
                "stroke volume",
                0);
        assertRefused(
                () -> DirectDrivePump.of(3, Kind.VOLUME.of(2e-6), Kind.FREQUENCY.of(0)),
                "must-be-above",
                "speed of the crank",
                0);
        assertRefused(() -> three.withVolumetricEfficiency(1.1), "must-be-at-most", "volumetric efficiency", 1);
        assertRefused(() -> three.withVolumetricEfficiency(0), "must-be-above", "volumetric efficiency", 0);
    }

    /**
     * Two plungers on endless rods: flow pi/2 |sin a|, whose surplus over the mean between its two crossings is cos b
     * - (pi - 2 b)/pi of half a turn, sin b = 2/pi; half of it as a part of the volume of a turn. A single one: 2 pi/2.
     */
    @Test
    void twoPlungersFluctuateLikeARectifiedSine() {
        double b = Math.asin(2 / Math.PI);
        double gap = (Math.cos(b) - (Math.PI - 2 * b) / Math.PI) / 2;
        DirectDrivePump twin = DirectDrivePump.of(2, Kind.VOLUME.of(3e-6), Kind.FREQUENCY.of(10))
                .withRodRatio(0)
                .withVolumetricEfficiency(0.9);

        assertThat(Kind.VOLUME.si(twin.fluctuatingVolume())).isCloseTo(2 * 3e-6 * 0.9 * gap, within(1e-11));
        assertThat(Kind.RATIO.si(twin.flowRipple())).isCloseTo(Math.PI / 2, within(1e-6));
    }

    /**
     * A single plunger on rods of five cranks: pi (sin a - sin(2 a)/10) is highest where cos a = -c, and c solves
     * 0.4 c^2 + c = 0.2; it is zero on the way back.
     */
    @Test
    void shortRodsIncreaseTheRipple() {
        double c = (-1 + Math.sqrt(1.32)) / 0.8;
        double s = Math.sqrt(1 - c * c);

        assertThat(new CrankKernel(1, 0.2, 0, 0).ripple()).isCloseTo(Math.PI * (s + 0.2 * s * c), within(1e-10));
    }

    /** Churchill's formula at a Reynolds number where both of its parts count, evaluated apart from this library. */
    @Test
    void churchillBetweenLaminarAndTurbulentFlow() {
        assertThat(FrictionCorrelation.CHURCHILL.factor(3000, 1e-4)).isCloseTo(0.04304899257104456, within(1e-14));
        assertThat(FrictionCorrelation.CHURCHILL.factor(2500, 1e-4)).isCloseTo(0.03515134789279207, within(1e-14));
    }

    @Test
    void reversalTakesAtMostNineTenthsOfAStroke() {
        Compression compression = Compression.isentropic(tap, megapascals(400));
        Intensifier pump = Intensifier.of(20, Kind.VOLUME.of(2e-4));
        double cycle = 1 / Kind.FREQUENCY.si(pump.strokes(kilogramsPerSecond(0.06), tap));

        assertThat(Kind.VOLUME.si(pump.withReversalTime(seconds(0.89 * cycle))
                        .fluctuatingVolume(kilogramsPerSecond(0.06), compression)))
                .isPositive();
        assertRefused(
                () -> pump.withReversalTime(seconds(0.91 * cycle))
                        .fluctuatingVolume(kilogramsPerSecond(0.06), compression),
                "must-be-at-most",
                "reversal time",
                0.9 * cycle);
    }

    @Test
    void aPumpOfOneHeadsPowerFeedsOneHead() {
        double power = Kind.POWER.si(WaterJet.of(orifice, megapascals(400)).ratedHydraulicPower());
        PumpSetting pump = PumpSetting.ofPower(Kind.POWER.of(power), megapascals(400));

        assertThat(pump.share(orifice, 1)).isCloseTo(1, within(1e-12));
        assertThat(pump.largestOrifice(orifice, 1).boreSi()).isCloseTo(0.25e-3, within(1e-15));
        assertThat(pump.headsFed(orifice.withBore(millimetres(0.1)))).isEqualTo(6);
        assertRefused(() -> pump.share(orifice, 0), "must-be-at-least", "number of heads", 1);
        assertRefused(
                () -> PumpSetting.ofPower(Kind.POWER.of(1), megapascals(0)),
                "must-be-above",
                "pressure set at the pump",
                0);
    }
}

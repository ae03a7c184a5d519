package dev.waterjet.hydraulics;

import static dev.waterjet.Refusals.assertRefused;
import static dev.waterjet.measure.Measures.bars;
import static dev.waterjet.measure.Measures.celsius;
import static dev.waterjet.measure.Measures.kilogramsPerSecond;
import static dev.waterjet.measure.Measures.litresPerMinute;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.metres;
import static dev.waterjet.measure.Measures.millimetres;
import static dev.waterjet.measure.Measures.seconds;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.measure.Kind;
import dev.waterjet.water.Water;
import dev.waterjet.water.WaterState;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

class SupplyTest {

    private final WaterState tap = Water.stable().at(megapascals(0.101325), celsius(20));
    private final WaterState pressed = Water.stable().at(megapascals(380), celsius(20));
    private final SupplyLine.Section tube =
            SupplyLine.Section.ofBore(millimetres(3)).withLength(metres(20));

    @Property(tries = 100, seed = "33")
    void pumpLineAndHeadsAgree(
            @ForAll @DoubleRange(min = 30, max = 600) double pressureMpa,
            @ForAll @DoubleRange(min = 0.1, max = 0.5) double boreMm,
            @ForAll @DoubleRange(min = 1.5, max = 8) double lineMm,
            @ForAll @DoubleRange(min = 0.5, max = 12) double pumpLitres,
            @ForAll @IntRange(min = 1, max = 4) int heads) {
        SupplyLine line = SupplyLine.of(SupplyLine.Section.ofBore(millimetres(lineMm))
                .withLength(metres(15))
                .withFittings(4));
        Orifice orifice = Orifice.sapphire(millimetres(boreMm));
        OperatingPoint point = OperatingPoint.of(
                PumpSetting.of(megapascals(pressureMpa), litresPerMinute(pumpLitres)),
                line,
                celsius(20),
                java.util.Collections.nCopies(heads, orifice));
        double pumpPa = Kind.PRESSURE.si(point.pumpPressure());
        double headPa = Kind.PRESSURE.si(point.headPressure());

        assertThat(headPa + point.lineLoss().si()).isCloseTo(pumpPa, within(1e-7 * pumpPa));
        assertThat(pumpPa).isLessThanOrEqualTo(pressureMpa * 1e6 * (1 + 1e-12));
        assertThat(Kind.MASS_FLOW.si(point.massFlow()) / tap.densitySi() * 60e3)
                .isLessThanOrEqualTo(pumpLitres * (1 + 1e-9));
        if (point.isFlowLimited()) {
            assertThat(Kind.MASS_FLOW.si(point.massFlow()) / tap.densitySi() * 60e3)
                    .isCloseTo(pumpLitres, within(1e-9 * pumpLitres));
        } else {
            assertThat(pumpPa).isCloseTo(pressureMpa * 1e6, within(1e-9 * pumpPa));
        }
        assertThat(point.jets()).hasSize(heads);
    }

    /** Maximum power theorem of hydraulics: with loss as the square of flow, the line takes a third. */
    @Test
    void powerAtTheHeadIsGreatestWhenTheLineTakesAThird() {
        // a rough line: friction goes with the square of the flow
        SupplyLine line = SupplyLine.of(SupplyLine.Section.ofBore(millimetres(1.6))
                .withLength(metres(20))
                .withRoughness(millimetres(0.05)));
        double best = 0;
        double share = 0;
        for (double boreMm = 0.05; boreMm < 1.5; boreMm += 0.002) {
            OperatingPoint point = OperatingPoint.of(
                    PumpSetting.of(megapascals(300), litresPerMinute(1000)),
                    line,
                    celsius(20),
                    List.of(Orifice.sapphire(millimetres(boreMm))));
            double power = Kind.PRESSURE.si(point.headPressure()) * Kind.MASS_FLOW.si(point.massFlow());
            if (power > best) {
                best = power;
                share = point.lineLoss().si() / 300e6;
            }
        }
        assertThat(share).isCloseTo(1 / 3.0, within(0.01));
    }

    @Test
    void lossesAddUpAndScale() {
        SupplyLine one = SupplyLine.of(tube);
        SupplyLine two = SupplyLine.of(tube, tube);
        double flow = 0.05;

        assertThat(two.lossSi(flow, pressed)).isCloseTo(2 * one.lossSi(flow, pressed), within(1e-6));
        assertThat(one.lossSi(0, pressed)).isZero();
        double velocity = flow / (pressed.densitySi() * Math.PI / 4 * 9e-6);
        SupplyLine fittings =
                SupplyLine.of(SupplyLine.Section.ofBore(millimetres(3)).withFittings(2.5));
        assertThat(fittings.lossSi(flow, pressed))
                .isCloseTo(2.5 * pressed.densitySi() * velocity * velocity / 2, within(1e-6));
        for (FrictionCorrelation correlation : FrictionCorrelation.values()) {
            assertThat(one.withFrictionCorrelation(correlation).lossSi(flow, pressed) / one.lossSi(flow, pressed))
                    .isCloseTo(1, within(0.03));
        }
        assertThat(one.loss(kilogramsPerSecond(flow), pressed).relativeUncertainty())
                .isCloseTo(0.07, within(1e-12));
        assertThat(one.reynolds(kilogramsPerSecond(flow), pressed))
                .isCloseTo(4 * flow / (Math.PI * 3e-3 * pressed.viscositySi()), within(1e-6));
    }

    /** Joukowsky: rho a dv. */
    @Test
    void aSuddenStopIsASurge() {
        double velocity = 0.05 / (pressed.densitySi() * Math.PI / 4 * 9e-6);

        assertThat(Kind.PRESSURE.si(SupplyLine.of(tube).surge(kilogramsPerSecond(-0.05), pressed)))
                .isCloseTo(pressed.densitySi() * pressed.soundSpeedSi() * velocity, within(1e-3));
    }

    @Test
    void frictionCorrelationsAreLaminarBelow2300() {
        assertThat(FrictionCorrelation.CHURCHILL.factor(1000, 1e-4)).isCloseTo(0.064, within(1e-4));
        assertThat(FrictionCorrelation.COLEBROOK.factor(2300, 1e-4)).isEqualTo(64 / 2300.0);
        assertThat(FrictionCorrelation.COLEBROOK.factor(4000, 1e-4)).isGreaterThan(0.04);
        assertRefused(() -> FrictionCorrelation.HAALAND.factor(0, 0), "must-be-above", "Reynolds number", 0);
        assertRefused(
                () -> FrictionCorrelation.HAALAND.factor(1e5, 0.1), "must-be-at-most", "relative roughness", 0.05);
    }

    @Test
    void anElasticWallReducesTheBulkModulus() {
        Attenuator stiff = Attenuator.of(Kind.VOLUME.of(1.5e-3));
        Attenuator springy = stiff.withDiameterRatio(3, megapascals(200_000), 0.29);

        assertThat(Kind.PRESSURE.si(springy.effectiveBulkModulus(pressed)))
                .isCloseTo(
                        1 / (1 / Kind.PRESSURE.si(stiff.effectiveBulkModulus(pressed)) + 2 / 200e9 * (10 / 8.0 + 0.29)),
                        within(1.0));
        Attenuator sized = springy.forRipple(Kind.VOLUME.of(1e-5), megapascals(10), pressed);
        assertThat(Kind.PRESSURE.si(sized.ripple(Kind.VOLUME.of(1e-5), pressed)))
                .isCloseTo(10e6, within(1e-3));
        assertRefused(
                () -> stiff.withDiameterRatio(1, megapascals(200_000), 0.29),
                "must-be-above",
                "diameter ratio of the attenuator",
                1);
        // the vessel relaxed to the atmosphere has lost 1 - rho'/rho of its water
        double emptied =
                1 - Water.metastable().atEntropySi(101_325, pressed.entropySi()).densitySi() / pressed.densitySi();
        assertRefused(
                () -> stiff.ripple(Kind.VOLUME.of(1e-3), pressed), "must-be-at-most", "volume drawn", 1.5e-3 * emptied);
        assertRefused(
                () -> stiff.forRipple(Kind.VOLUME.of(1e-5), megapascals(380), pressed),
                "must-be-at-most",
                "pressure ripple",
                380e6 - 101_325);
    }

    @Test
    void anIntensifierIsInterruptedAtEachReversal() {
        Intensifier pump = Intensifier.of(20, Kind.VOLUME.of(2e-4)).withReversalTime(seconds(0.03));
        Compression compression = Compression.isentropic(tap, megapascals(400));
        double flow = 0.06;

        assertThat(Kind.PRESSURE.si(pump.waterPressure(bars(200)))).isCloseTo(400e6, within(1e-3));
        assertThat(Kind.PRESSURE.si(pump.oilPressure(megapascals(400)))).isCloseTo(20e6, within(1e-6));
        double strokes = Kind.FREQUENCY.si(pump.strokes(kilogramsPerSecond(flow), tap));
        assertThat(strokes * 2e-4 * tap.densitySi()).isCloseTo(flow, within(1e-15));
        double share = Kind.RATIO.si(pump.compressionFraction(compression));
        assertThat(share).isBetween(0.10, 0.13);
        double gap = Kind.VOLUME.si(pump.fluctuatingVolume(kilogramsPerSecond(flow), compression));
        assertThat(gap)
                .isCloseTo(
                        flow / compression.outlet().densitySi() * (0.03 + share * (1 / strokes - 0.03)), within(1e-15));
        assertRefused(
                () -> pump.withReversalTime(seconds(60)).fluctuatingVolume(kilogramsPerSecond(flow), compression),
                "must-be-at-most",
                "reversal time",
                0.9 / strokes);
    }

    @Test
    void lossesOfAPumpHeatTheWater() {
        Compression ideal = Compression.isentropic(tap, megapascals(400));
        Compression lossy = Compression.of(tap, megapascals(400), 0.8);

        assertThat(Kind.SPECIFIC_ENERGY.si(lossy.work()))
                .isCloseTo(Kind.SPECIFIC_ENERGY.si(ideal.work()) / 0.8, within(1e-3));
        assertThat(lossy.outlet().temperatureSi()).isGreaterThan(ideal.outlet().temperatureSi() + 20);
        assertThat(Kind.POWER.si(ideal.motorPower(kilogramsPerSecond(0.05), 0.65)))
                .isCloseTo(0.05 * Kind.SPECIFIC_ENERGY.si(ideal.work()) / 0.65, within(1e-6));
        assertRefused(() -> Compression.of(tap, megapascals(400), 1.1), "must-be-at-most", "isentropic efficiency", 1);
        assertRefused(
                () -> Compression.isentropic(tap, megapascals(0.05)), "must-be-above", "outlet pressure", 101_325);
    }

    @Test
    void flowRipplesOfDirectDrivePumps() {
        DirectDrivePump three = DirectDrivePump.of(3, Kind.VOLUME.of(2e-6), Kind.FREQUENCY.of(10))
                .withVolumetricEfficiency(0.9);

        assertThat(Kind.VOLUME_FLOW.si(three.flow())).isCloseTo(3 * 2e-6 * 10 * 0.9, within(1e-18));
        assertThat(Kind.RATIO.si(three.flowRipple())).isGreaterThan(0.1403);
        // endless rods: half sines, whose surplus against the mean is the integral of |cos| between two crossings
        double single = new CrankKernel(1, 0, 0, 0).fluctuation();
        double crossing = Math.asin(1 / Math.PI);
        assertThat(single)
                .isCloseTo((2 * Math.PI * Math.cos(crossing) - (Math.PI - 2 * crossing)) / (2 * Math.PI), within(1e-5));
        assertRefused(() -> three.withRodRatio(0.7), "must-be-at-most", "rod ratio", 0.5);
    }

    @Property(tries = 100, seed = "35")
    void compressedWaterIsDeliveredByMass(
            @ForAll @IntRange(min = 1, max = 9) int plungers,
            @ForAll @DoubleRange(min = 0, max = 0.5) double rodRatio,
            @ForAll @DoubleRange(min = 0, max = 3) double deadVolume,
            @ForAll @DoubleRange(min = 1, max = 500) double pressureMpa) {
        Compression compression = Compression.isentropic(tap, megapascals(pressureMpa));
        double ratio = compression.outlet().densitySi() / tap.densitySi();
        DirectDrivePump pump = DirectDrivePump.of(plungers, Kind.VOLUME.of(2e-6), Kind.FREQUENCY.of(10))
                .withRodRatio(rodRatio)
                .withDeadVolume(deadVolume);

        assertThat(Kind.RATIO.si(pump.volumetricEfficiency(compression)))
                .isCloseTo(1 - deadVolume * (ratio - 1), within(1e-10));
        CrankKernel kernel = new CrankKernel(plungers, rodRatio, (1 - 1 / ratio) * (1 + deadVolume), 0);
        double angle = Kind.ANGLE.si(pump.deliveryAngle(compression));
        assertThat(CrankKernel.position(rodRatio, angle)).isCloseTo((1 - 1 / ratio) * (1 + deadVolume), within(1e-11));
        // the extremes of a dense sample lie within those of the kernel, and close to them
        double[] flow = new double[20_000];
        double sum = 0;
        double[] volume = new double[flow.length];
        for (int i = 0; i < flow.length; i++) {
            for (int k = 0; k < plungers; k++) {
                double a = (2 * Math.PI * ((i + 0.5) / flow.length + (double) k / plungers)) % (2 * Math.PI);
                flow[i] += a > angle && a < Math.PI ? Math.sin(a) - rodRatio / 2 * Math.sin(2 * a) : 0;
            }
            sum += flow[i];
            volume[i] = sum;
        }
        double mean = sum / flow.length;
        for (int i = 0; i < flow.length; i++) {
            volume[i] = volume[i] / sum - (i + 1.0) / flow.length;
        }
        assertThat(kernel.ripple()).isCloseTo((max(flow) + max(negative(flow))) / mean, within(2e-3 / mean));
        assertThat(kernel.fluctuation()).isCloseTo(max(volume) + max(negative(volume)), within(5e-4));
        assertThat(Kind.VOLUME.si(pump.fluctuatingVolume(compression)))
                .isCloseTo(plungers * 2e-6 * kernel.net() * kernel.fluctuation(), within(1e-15));
    }

    private static double max(double[] values) {
        return java.util.Arrays.stream(values).max().orElseThrow();
    }

    private static double[] negative(double[] values) {
        return java.util.Arrays.stream(values).map(value -> -value).toArray();
    }

    @Test
    void aVesselBlowsDownInPartsAsInOne() {
        Attenuator vessel = Attenuator.of(Kind.VOLUME.of(1e-3)).withDiameterRatio(3, megapascals(200_000), 0.29);
        Orifice orifice = Orifice.sapphire(millimetres(0.3));
        double whole = vessel.blowDownTime(orifice, megapascals(380), megapascals(0), tap)
                .si();
        double first = vessel.blowDownTime(orifice, megapascals(380), megapascals(90), tap)
                .si();
        double second = vessel.blowDownTime(orifice, megapascals(90), megapascals(0), tap)
                .si();
        assertThat(first + second).isCloseTo(whole, within(1e-8 * whole));
        assertThat(vessel.blowDownTime(orifice, megapascals(380), megapascals(380), tap)
                        .si())
                .isZero();
        // the slope of the time is the rate of the pressure, but for the volume, which is given at rest there
        double step = vessel.blowDownTime(orifice, megapascals(300.01), megapascals(300), tap)
                .si();
        WaterState at300 = Water.stable().atEntropySi(300e6 + 101_325, tap.entropySi());
        double kgPerS = 0.65 * Math.PI / 4 * 0.09e-6 * Math.sqrt(2 * tap.densitySi() * 300e6);
        double rate = Attenuator.of(Kind.VOLUME.of(1e-3)).pressureRateSi(kilogramsPerSecond(-kgPerS), at300);
        double stiff = Attenuator.of(Kind.VOLUME.of(1e-3))
                .blowDownTime(orifice.withDischargeCoefficient(0.65), megapascals(300.01), megapascals(300), tap)
                .si();
        assertThat(-1e4 / rate).isCloseTo(stiff, within(1e-4 * stiff));
        assertThat(step).isGreaterThan(stiff);
        assertRefused(
                () -> vessel.blowDownTime(orifice, megapascals(100), megapascals(101), tap),
                "must-be-at-most",
                "pressure at the end",
                100e6);
    }

    @Test
    void tooMuchDeadVolumeDeliversNothing() {
        Compression compression = Compression.isentropic(tap, megapascals(380));
        double limit = 1 / (compression.outlet().densitySi() / tap.densitySi() - 1);
        DirectDrivePump pump = DirectDrivePump.of(3, Kind.VOLUME.of(2e-6), Kind.FREQUENCY.of(10));

        assertThat(Kind.RATIO.si(pump.withDeadVolume(0.99 * limit).volumetricEfficiency(compression)))
                .isCloseTo(0.01, within(1e-9));
        assertRefused(
                () -> pump.withDeadVolume(1.01 * limit).flowRipple(compression),
                "pump-delivers-nothing",
                "dead volume over stroke volume",
                limit);
        assertRefused(() -> pump.withDeadVolume(-0.1), "must-be-at-least", "dead volume over stroke volume", 0);
        // leaks and re-expansion multiply
        assertThat(Kind.VOLUME_FLOW.si(
                        pump.withDeadVolume(0.5).withVolumetricEfficiency(0.9).flow(compression)))
                .isCloseTo(3 * 2e-6 * 10 * 0.9 * (1 - 0.5 / limit), within(1e-14));
    }

    @Test
    void wearShowsInFlowAndPressure() {
        Orifice asNew = Orifice.sapphire(millimetres(0.25));
        WaterJet worn =
                WaterJet.of(asNew.withBore(millimetres(0.28)), megapascals(380)).withTemperature(celsius(20));
        OrificeWear wear = OrificeWear.measured(asNew, megapascals(380), worn.volumeFlow(), celsius(20));

        assertThat(wear.boreAtConstantCoefficient().si()).isCloseTo(0.28e-3, within(1e-12));
        assertThat(wear.boreAtConstantCoefficient().relativeUncertainty()).isCloseTo(0.02 / 0.65 / 2, within(1e-9));
        assertThat(wear.coefficientAtConstantBore().si()).isCloseTo(0.65 * 0.28 * 0.28 / 0.0625, within(1e-9));
        assertThat(Kind.PRESSURE.si(wear.pressureAtEqualFlow(megapascals(380))))
                .isCloseTo(380e6 / Math.pow(0.28 / 0.25, 4), within(1.0));
        assertRefused(
                () -> OrificeWear.measured(asNew, megapascals(380), litresPerMinute(0), celsius(20)),
                "must-be-above",
                "water flow rate",
                0);
    }

    @Test
    void aLineNeedsASectionAndHeadsNeedAnOrifice() {
        assertRefused(SupplyLine::of, "must-be-at-least", "number of sections of the supply line", 1);
        assertRefused(
                () -> OperatingPoint.of(
                        PumpSetting.of(megapascals(380), litresPerMinute(4)),
                        SupplyLine.of(tube),
                        celsius(20),
                        List.of()),
                "must-be-at-least",
                "number of orifices",
                1);
        assertRefused(() -> SupplyLine.Section.ofBore(millimetres(-1)), "must-be-above", "bore of the supply line", 0);
        assertRefused(
                () -> tube.withRoughness(millimetres(1)), "must-be-at-most", "roughness of the supply line", 1.5e-4);
    }
}

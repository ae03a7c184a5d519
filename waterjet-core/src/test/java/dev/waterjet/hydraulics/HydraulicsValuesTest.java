package dev.waterjet.hydraulics;

import static dev.waterjet.measure.Measures.celsius;
import static dev.waterjet.measure.Measures.kilogramsPerCubicMetre;
import static dev.waterjet.measure.Measures.litresPerMinute;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.metres;
import static dev.waterjet.measure.Measures.micrometres;
import static dev.waterjet.measure.Measures.millimetres;
import static dev.waterjet.measure.Measures.seconds;
import static org.assertj.core.api.Assertions.assertThat;

import dev.waterjet.ValueContract;
import dev.waterjet.measure.Kind;
import dev.waterjet.water.Water;
import dev.waterjet.water.WaterState;
import java.util.List;
import org.junit.jupiter.api.Test;

class HydraulicsValuesTest {

    private final WaterState tap = Water.stable().at(megapascals(0.101325), celsius(20));

    private static Orifice orifice() {
        return Orifice.sapphire(millimetres(0.25));
    }

    private static SupplyLine line() {
        return SupplyLine.of(tube());
    }

    private static SupplyLine.Section tube() {
        return SupplyLine.Section.ofBore(millimetres(3)).withLength(metres(10));
    }

    @Test
    void anOrificeIsItsJewelBoreAndCoefficient() {
        ValueContract.of(HydraulicsValuesTest::orifice)
                .has("jewel", Orifice::jewel, Orifice.Jewel.SAPPHIRE)
                .has("uncertainty", known -> known.dischargeCoefficient().standardUncertaintySi() > 0, true)
                .change("bore", known -> known.withBore(millimetres(0.3)), Orifice::bore, millimetres(0.3))
                .differs("uncertainty", orifice().withDischargeCoefficient(0.65))
                .differs("coefficient", orifice().withDischargeCoefficient(0.7))
                .differs("ruby", Orifice.ruby(millimetres(0.25)))
                .differs("diamond", Orifice.diamond(millimetres(0.25)))
                .check();
        assertThat(orifice().boreSi()).isEqualTo(0.00025);
        assertThat(Orifice.ruby(millimetres(0.25)).jewel()).isEqualTo(Orifice.Jewel.RUBY);
        assertThat(Orifice.diamond(millimetres(0.25)).jewel()).isEqualTo(Orifice.Jewel.DIAMOND);
        assertThat(orifice()
                        .withDischargeCoefficient(0.7)
                        .dischargeCoefficient()
                        .si())
                .isEqualTo(0.7);
    }

    @Test
    void aWaterJetIsItsOrificePressureWaterAndSpeedModel() {
        Orifice ruby = Orifice.ruby(millimetres(0.3));
        WaterJet jet = WaterJet.of(orifice(), megapascals(380));
        ValueContract.of(() -> WaterJet.of(orifice(), megapascals(380)))
                .change("pressure", one -> one.withPressure(megapascals(300)), WaterJet::pressure, megapascals(300))
                .change("temperature", one -> one.withTemperature(celsius(35)), WaterJet::temperature, celsius(35))
                .change("orifice", one -> one.withOrifice(ruby), WaterJet::orifice, ruby)
                .differs("model", jet.withSpeedModel(JetSpeedModel.TAIT))
                .differs("density", jet.withWaterDensity(kilogramsPerCubicMetre(1000)))
                .prints("380 MPa", "0.25 mm")
                .check();
    }

    @Test
    void anIsentropicJetIsItsSupply() {
        ValueContract.of(() -> IsentropicJet.of(megapascals(400), celsius(20)))
                .has("supply", IsentropicJet::supply, Water.stable().at(megapascals(400), celsius(20)))
                .differs("pressure", IsentropicJet.of(megapascals(390), celsius(20)))
                .differs("temperature", IsentropicJet.of(megapascals(400), celsius(21)))
                .prints("864.1 m/s")
                .check();
        IsentropicJet jet = IsentropicJet.of(megapascals(400), celsius(20));
        assertThat(Kind.SPEED.si(jet.speed())).isEqualTo(jet.speedSi());
        assertThat(Kind.TEMPERATURE.si(jet.exitTemperature()))
                .isEqualTo(jet.exit().temperatureSi());
        assertThat(Kind.DENSITY.si(jet.exitDensity())).isEqualTo(jet.exit().densitySi());
        assertThat(jet.exit().pressureSi()).isEqualTo(101325);
    }

    @Test
    void pumpsAreTheirSettings() {
        ValueContract.of(() -> PumpSetting.of(megapascals(380), litresPerMinute(4)))
                .has("pressure", PumpSetting::pressure, megapascals(380))
                .has("maximum flow", PumpSetting::maximumFlow, litresPerMinute(4))
                .differs("pressure", PumpSetting.of(megapascals(390), litresPerMinute(4)))
                .differs("flow", PumpSetting.of(megapascals(380), litresPerMinute(5)))
                .prints("380 MPa", "4 L/min")
                .check();
        ValueContract.of(() -> DirectDrivePump.of(3, Kind.VOLUME.of(2e-6), Kind.FREQUENCY.of(10)))
                .differs("plungers", DirectDrivePump.of(5, Kind.VOLUME.of(2e-6), Kind.FREQUENCY.of(10)))
                .differs("stroke", DirectDrivePump.of(3, Kind.VOLUME.of(3e-6), Kind.FREQUENCY.of(10)))
                .differs("speed", DirectDrivePump.of(3, Kind.VOLUME.of(2e-6), Kind.FREQUENCY.of(11)))
                .differs(
                        "efficiency",
                        DirectDrivePump.of(3, Kind.VOLUME.of(2e-6), Kind.FREQUENCY.of(10))
                                .withVolumetricEfficiency(0.9))
                .differs(
                        "rod",
                        DirectDrivePump.of(3, Kind.VOLUME.of(2e-6), Kind.FREQUENCY.of(10))
                                .withRodRatio(0.25))
                .prints("3 plungers", "3.6 L/min")
                .check();
        ValueContract.of(() -> Intensifier.of(20, Kind.VOLUME.of(2e-4)))
                .differs("ratio", Intensifier.of(21, Kind.VOLUME.of(2e-4)))
                .differs("stroke", Intensifier.of(20, Kind.VOLUME.of(3e-4)))
                .differs(
                        "reversal time",
                        Intensifier.of(20, Kind.VOLUME.of(2e-4)).withReversalTime(seconds(0.05)))
                .prints("20 : 1", "0.2 L")
                .check();
    }

    @Test
    void anAttenuatorIsItsVolumeAndItsWall() {
        Attenuator stiff = Attenuator.of(Kind.VOLUME.of(1.5e-3));
        ValueContract.of(() -> Attenuator.of(Kind.VOLUME.of(1.5e-3)))
                .change("volume", one -> one.withVolume(Kind.VOLUME.of(2e-3)), Attenuator::volume, Kind.VOLUME.of(2e-3))
                .differs("wall", stiff.withDiameterRatio(3, megapascals(200_000), 0.29))
                .prints("1.5 L")
                .check();
    }

    @Test
    void aSupplyLineIsItsSectionsAndItsFrictionCorrelation() {
        ValueContract.of(HydraulicsValuesTest::tube)
                .differs("bore", SupplyLine.Section.ofBore(millimetres(4)).withLength(metres(10)))
                .differs("length", tube().withLength(metres(11)))
                .differs("roughness", tube().withRoughness(micrometres(2)))
                .differs("fittings", tube().withFittings(1))
                .prints("10 m of 3 mm bore")
                .check();
        ValueContract.of(HydraulicsValuesTest::line)
                .has("sections", SupplyLine::sections, List.of(tube()))
                .differs("model", line().withFrictionCorrelation(FrictionCorrelation.CHURCHILL))
                .differs("sections", SupplyLine.of(tube(), tube()))
                .check();
        assertThat(line().withFrictionCorrelation(FrictionCorrelation.CHURCHILL).sections())
                .isEqualTo(line().sections());
    }

    @Test
    void aCompressionIsItsInletAndItsOutlet() {
        ValueContract.of(() -> Compression.isentropic(tap, megapascals(400)))
                .has("inlet", Compression::inlet, tap)
                .has("outlet pressure", pressed -> pressed.outlet().pressureSi(), 400e6)
                .differs("inlet", Compression.isentropic(Water.stable().atSi(101325, 300), megapascals(400)))
                .differs("outlet", Compression.isentropic(tap, megapascals(300)))
                .differs("efficiency", Compression.of(tap, megapascals(400), 0.8))
                .prints("374.7 kJ/kg", "400 MPa")
                .check();
        assertThat(Compression.of(tap, megapascals(400), 1)).isEqualTo(Compression.isentropic(tap, megapascals(400)));
    }

    @Test
    void anOperatingPointIsItsPressuresAndItsJets() {
        PumpSetting pump = PumpSetting.of(megapascals(380), litresPerMinute(4));
        List<Orifice> one = List.of(orifice());
        ValueContract.of(() -> OperatingPoint.of(pump, line(), celsius(20), one))
                .has("limit", OperatingPoint::isFlowLimited, false)
                .has("pump pressure", OperatingPoint::pumpPressure, megapascals(380))
                .differs(
                        "pump",
                        OperatingPoint.of(
                                PumpSetting.of(megapascals(300), litresPerMinute(4)), line(), celsius(20), one))
                .differs("line", OperatingPoint.of(pump, SupplyLine.of(tube(), tube()), celsius(20), one))
                .differs("temperature", OperatingPoint.of(pump, line(), celsius(25), one))
                .differs("orifices", OperatingPoint.of(pump, line(), celsius(20), List.of(orifice(), orifice())))
                .prints("380 MPa", "MPa")
                .check();
    }

    @Test
    void wearIsTheOrificeAsNewAndItsEffectiveAreaRatio() {
        WaterJet now = WaterJet.of(orifice().withBore(millimetres(0.28)), megapascals(380))
                .withTemperature(celsius(20));
        ValueContract.of(() -> OrificeWear.measured(orifice(), megapascals(380), now.volumeFlow(), celsius(20)))
                .has("ratio", OrificeWear::effectiveAreaRatio, Kind.RATIO.of(Math.pow(0.28 / 0.25, 2)))
                .differs(
                        "as new",
                        OrificeWear.measured(
                                orifice().withDischargeCoefficient(0.65),
                                megapascals(380),
                                now.volumeFlow(),
                                celsius(20)))
                .differs("flow", OrificeWear.measured(orifice(), megapascals(380), litresPerMinute(2), celsius(20)))
                .check();
    }
}

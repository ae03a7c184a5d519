package dev.waterjet.benchmarks;

import dev.waterjet.circuit.Circuit;
import dev.waterjet.circuit.CircuitBuilder;
import dev.waterjet.circuit.DirectDrive;
import dev.waterjet.circuit.PressureHistory;
import dev.waterjet.circuit.ValveEvent;
import dev.waterjet.hydraulics.Attenuator;
import dev.waterjet.hydraulics.Compression;
import dev.waterjet.hydraulics.DirectDrivePump;
import dev.waterjet.hydraulics.FrictionCorrelation;
import dev.waterjet.hydraulics.Intensifier;
import dev.waterjet.hydraulics.IsentropicJet;
import dev.waterjet.hydraulics.JetContraction;
import dev.waterjet.hydraulics.JetSpeedModel;
import dev.waterjet.hydraulics.OperatingPoint;
import dev.waterjet.hydraulics.Orifice;
import dev.waterjet.hydraulics.PumpSetting;
import dev.waterjet.hydraulics.SupplyLine;
import dev.waterjet.hydraulics.WaterJet;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.MassFlow;
import dev.waterjet.vessel.Autofrettage;
import dev.waterjet.vessel.CrackLeak;
import dev.waterjet.vessel.Ends;
import dev.waterjet.vessel.StoredEnergy;
import dev.waterjet.vessel.ThickTube;
import dev.waterjet.vessel.WallStress;
import dev.waterjet.vessel.YieldCriterion;
import dev.waterjet.water.Ice;
import dev.waterjet.water.Saturation;
import dev.waterjet.water.Water;
import dev.waterjet.water.WaterState;
import java.util.List;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Pressure;

/** Random states of water, walls, pumps, lines and circuits. */
final class RandomSupplies {

    private RandomSupplies() {}

    static void water(Draws draws) {
        double pressurePa = draws.between(1e5, 900e6);
        double temperatureK = draws.evenly(270, 370);
        WaterState state = Water.stable().atSi(pressurePa, temperatureK);
        double density = draws.positive(state.densitySi());
        draws.finite(state.enthalpySi());
        draws.finite(state.entropySi());
        draws.positive(state.isobaricHeatCapacitySi());
        draws.rises(
                "heat capacity at constant pressure", state.isochoricHeatCapacitySi(), state.isobaricHeatCapacitySi());
        draws.positive(state.soundSpeedSi());
        draws.positive(state.compressibilitySi());
        draws.finite(state.expansionSi());
        draws.positive(state.viscositySi());
        draws.rises("density with pressure", density, Water.fastDensitySi(1.01 * pressurePa, temperatureK));
    }

    static void branches(Draws draws) {
        switch (draws.below(4)) {
            case 0 -> {
                Saturation saturation = Saturation.at(Kind.TEMPERATURE.of(draws.evenly(273.16, 647)));
                draws.positive(Kind.PRESSURE.si(saturation.pressure()));
                draws.rises(
                        "density from vapour to liquid",
                        saturation.vapour().densitySi(),
                        saturation.liquid().densitySi());
            }
            case 1 -> {
                Quantity<Pressure> pressure = draws.of(Kind.PRESSURE, 1e5, 2e9);
                Ice ice = Ice.at(pressure);
                double meltingK = draws.positive(Kind.TEMPERATURE.si(Ice.meltingTemperature(pressure)));
                double back = Kind.PRESSURE.si(ice.meltingPressure(Kind.TEMPERATURE.of(meltingK)));
                draws.require(
                        Math.abs(back / Kind.PRESSURE.si(pressure) - 1) < 1e-4,
                        "melting pressure at the melting temperature is " + back);
            }
            case 2 -> {
                WaterState state = Water.stable().atSi(draws.between(1e5, 600e6), draws.evenly(280, 360));
                WaterState again = Water.stable().atEntropySi(draws.between(1e5, 600e6), state.entropySi());
                draws.require(
                        Math.abs(again.entropySi() - state.entropySi()) < 1e-3,
                        "entropy of the state of an entropy is another one");
            }
            default -> {
                WaterState state = Water.stable().atSi(draws.between(1e5, 600e6), draws.evenly(280, 360));
                draws.positive(Water.stable()
                        .atEnthalpySi(draws.between(1e5, 600e6), state.enthalpySi())
                        .temperatureSi());
            }
        }
    }

    static void jet(Draws draws) {
        Quantity<Pressure> pressure = draws.of(Kind.PRESSURE, 1e6, 700e6);
        WaterJet jet = WaterJet.of(draws.orifice(), pressure, Kind.TEMPERATURE.of(draws.evenly(275, 340)))
                .withSpeedModel(draws.pick(JetSpeedModel.values()));
        double speed = draws.positive(jet.speedSi());
        draws.rises(
                "speed with pressure",
                speed,
                jet.withPressure(Kind.PRESSURE.of(1.1 * Kind.PRESSURE.si(pressure)))
                        .speedSi());
        draws.positive(jet.massFlowSi());
        draws.positive(Kind.POWER.si(jet.pumpWork()));
        draws.positive(Kind.POWER.si(jet.kineticPower()));
        draws.positive(Kind.FORCE.si(jet.reactionForce()));
        JetContraction contraction = JetContraction.of(jet, draws.evenly(0.9, 1));
        draws.positive(Kind.LENGTH.si(contraction.diameter()));
        draws.positive(contraction.reynolds());
    }

    static void pump(Draws draws) {
        WaterState inlet = Water.stable().atSi(draws.between(1e5, 1e6), draws.evenly(278, 320));
        Compression compression = Compression.of(inlet, draws.of(Kind.PRESSURE, 10e6, 600e6), draws.evenly(0.5, 1));
        draws.positive(Kind.SPECIFIC_ENERGY.si(compression.isentropicWork()));
        draws.rises(
                "work beside isentropic work",
                Kind.SPECIFIC_ENERGY.si(compression.isentropicWork()),
                Kind.SPECIFIC_ENERGY.si(compression.work()));
        draws.positive(IsentropicJet.from(compression.outlet()).speedSi());
        DirectDrivePump pump = DirectDrivePump.of(
                        1 + draws.below(7), draws.of(Kind.VOLUME, 1e-6, 1e-3), draws.of(Kind.FREQUENCY, 1, 30))
                .withRodRatio(draws.evenly(0, 0.4))
                .withDeadVolume(draws.evenly(0, 1));
        draws.notNegative(Kind.RATIO.si(pump.flowRipple()));
        draws.share(Kind.RATIO.si(pump.volumetricEfficiency(compression)));
        draws.notNegative(Kind.RATIO.si(pump.flowRipple(compression)));
        Attenuator vessel = Attenuator.of(draws.of(Kind.VOLUME, 1e-4, 1e-2));
        draws.notNegative(Kind.PRESSURE.si(vessel.ripple(pump.fluctuatingVolume(compression), compression.outlet())));
        Intensifier intensifier = Intensifier.of(draws.evenly(5, 30), draws.of(Kind.VOLUME, 1e-5, 1e-2))
                .withReversalTime(draws.of(Kind.TIME, 1e-3, 0.2));
        draws.notNegative(Kind.RATIO.si(intensifier.flowRipple(draws.of(Kind.MASS_FLOW, 1e-3, 0.1), compression)));
    }

    static void friction(Draws draws) {
        FrictionCorrelation law = draws.pick(FrictionCorrelation.values());
        double reynolds = draws.between(1, 1e8);
        double roughness = draws.between(1e-7, 0.05);
        double factor = draws.positive(law.factor(reynolds, roughness));
        if (reynolds > 4000) {
            draws.rises("friction with roughness", factor, law.factor(reynolds, 1.2 * roughness));
        }
        WaterState state = Water.stable().atSi(draws.between(1e5, 600e6), draws.evenly(278, 350));
        SupplyLine line = SupplyLine.of(section(draws)).withFrictionCorrelation(law);
        Quantity<MassFlow> flow = draws.of(Kind.MASS_FLOW, 1e-4, 0.2);
        draws.positive(line.loss(flow, state));
        draws.positive(Kind.PRESSURE.si(line.surge(flow, state)));
    }

    private static SupplyLine.Section section(Draws draws) {
        double boreM = draws.between(1e-3, 1e-2);
        SupplyLine.Section section = SupplyLine.Section.ofBore(Kind.LENGTH.of(boreM))
                .withLength(draws.of(Kind.LENGTH, 0.1, 100))
                .withRoughness(Kind.LENGTH.of(boreM * draws.between(1e-5, 1e-2)));
        return draws.chance()
                ? section
                : section.withWall(
                        ThickTube.of(Kind.LENGTH.of(boreM), Kind.LENGTH.of(boreM * draws.evenly(1.5, 5)))
                                .withElasticity(Kind.PRESSURE.of(200e9), 0.29),
                        draws.pick(Ends.values()));
    }

    static void operatingPoint(Draws draws) {
        PumpSetting pump = PumpSetting.of(draws.of(Kind.PRESSURE, 50e6, 600e6), draws.of(Kind.VOLUME_FLOW, 1e-5, 3e-4));
        OperatingPoint point = OperatingPoint.of(
                pump,
                SupplyLine.of(section(draws)),
                Kind.TEMPERATURE.of(draws.evenly(278, 330)),
                draws.chance() ? List.of(draws.orifice()) : List.of(draws.orifice(), draws.orifice()));
        draws.positive(Kind.MASS_FLOW.si(point.massFlow()));
        draws.rises(
                "pressure from head to pump",
                Kind.PRESSURE.si(point.headPressure()),
                Kind.PRESSURE.si(point.pumpPressure()));
        draws.positive(point.lineLoss());
    }

    static void vessel(Draws draws) {
        double boreM = draws.between(1e-3, 0.3);
        ThickTube tube = ThickTube.of(Kind.LENGTH.of(boreM), Kind.LENGTH.of(boreM * draws.evenly(1.05, 6)))
                .withElasticity(draws.of(Kind.PRESSURE, 60e9, 300e9), draws.evenly(0.1, 0.45));
        Quantity<Pressure> pressure = draws.of(Kind.PRESSURE, 1e6, 700e6);
        Ends ends = draws.pick(Ends.values());
        WallStress stress = tube.stressAtBore(pressure, ends);
        double hoop = draws.positive(Kind.PRESSURE.si(stress.hoop()));
        draws.rises(
                "hoop stress towards the bore",
                Kind.PRESSURE.si(tube.stressAtOutside(pressure, ends).hoop()),
                hoop);
        draws.rises(
                "equivalent stress of Tresca beside that of Mises",
                Kind.PRESSURE.si(stress.equivalent(YieldCriterion.MISES)),
                Kind.PRESSURE.si(stress.equivalent(YieldCriterion.TRESCA)));
        draws.positive(Kind.COMPRESSIBILITY.si(tube.compliance(ends)));
        Quantity<Pressure> yield = draws.of(Kind.PRESSURE, 200e6, 1500e6);
        draws.positive(Kind.PRESSURE.si(
                tube.limits(draws.pick(YieldCriterion.values()), ends, yield).firstYield()));
        Quantity<Length> radius = Kind.LENGTH.of(boreM / 2 * draws.evenly(1, tube.diameterRatio()));
        Autofrettage treated = Autofrettage.toRadius(tube, yield, radius);
        draws.notNegative(Kind.PRESSURE.si(treated.pressure()));
        treated.residualHoopStressAtBore().ifPresent(residual -> draws.notNegative(-residual.si()));
        WaterState state = Water.stable().atSi(draws.between(1e6, 600e6), 293.15);
        StoredEnergy energy = StoredEnergy.of(state, draws.of(Kind.VOLUME, 1e-5, 0.1), tube, ends);
        draws.positive(Kind.ENERGY.si(energy.water()));
        draws.positive(Kind.ENERGY.si(energy.wall()));
        CrackLeak leak = CrackLeak.of(draws.of(Kind.LENGTH, 1e-4, 0.05), pressure, Kind.PRESSURE.of(200e9));
        draws.positive(leak.openingArea());
    }

    private static CircuitBuilder circuit(Draws draws, Orifice orifice, ValveEvent... events) {
        double pressurePa = draws.between(50e6, 600e6);
        WaterState inlet = Water.stable().atSi(1e5, draws.evenly(278, 310));
        double flow = WaterJet.of(orifice, Kind.PRESSURE.of(pressurePa)).volumeFlowSi();
        int plungers = 1 + draws.below(5);
        double turnsPerS = draws.between(2, 20);
        DirectDrivePump pump = DirectDrivePump.of(
                plungers, Kind.VOLUME.of(1.2 * flow / plungers / turnsPerS), Kind.FREQUENCY.of(turnsPerS));
        return Circuit.around(Kind.PRESSURE.of(pressurePa), inlet)
                .vessel("vessel", Attenuator.of(draws.of(Kind.VOLUME, 1e-4, 3e-3)))
                .pump("vessel", new DirectDrive(pump))
                .line("vessel", "head", section(draws))
                .head("head", orifice, events);
    }

    static void ripple(Draws draws) {
        Circuit circuit = circuit(draws, draws.orifice()).build();
        for (Quantity<Pressure> ripple : circuit.ripple().ripples().values()) {
            draws.notNegative(Kind.PRESSURE.si(ripple));
        }
    }

    static void transients(Draws draws) {
        Circuit circuit = circuit(
                        draws, draws.orifice(), ValveEvent.closing(Kind.TIME.of(0.01), draws.of(Kind.TIME, 1e-3, 0.05)))
                .build();
        PressureHistory history = circuit.run(draws.of(Kind.TIME, 0.02, 0.1));
        for (String node : circuit.nodes()) {
            draws.positive(Kind.PRESSURE.si(history.highest(node)));
            draws.rises(
                    "highest beside lowest pressure",
                    Kind.PRESSURE.si(history.lowest(node)),
                    Kind.PRESSURE.si(history.highest(node)));
        }
        draws.finite(history.massImbalance());
    }
}

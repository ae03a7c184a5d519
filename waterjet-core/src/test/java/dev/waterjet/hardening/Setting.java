package dev.waterjet.hardening;

import dev.waterjet.hydraulics.Orifice;
import dev.waterjet.jet.Abrasive;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.jet.CuttingHead;
import dev.waterjet.jet.FocusingTube;
import dev.waterjet.jet.Mesh;
import dev.waterjet.material.Material;
import dev.waterjet.material.MaterialClass;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import java.util.EnumMap;
import java.util.Map;
import java.util.SplittableRandom;

/** One drawn cut, of which one thing at a time is turned. */
final class Setting {

    /** Inputs to vary, each over the range of common practice (no source) or slightly more. */
    enum Knob {
        PRESSURE(100e6, 600e6),
        ORIFICE(0.15e-3, 0.42e-3),
        TUBE(0.6e-3, 1.5e-3),
        ABRASIVE_FLOW(1e-3, 10e-3),
        THICKNESS(1e-3, 150e-3),
        INDEX(1, 5),
        MACHINABILITY(50, 900),
        FEED(0.05e-3, 8e-3),
        TEMPERATURE(283, 360),
        BORE(2e-3, 8e-3),
        LENGTH(1, 60),
        WATER_FLOW(0.01, 0.15),
        VOLUME(0.1e-3, 5e-3),
        HOURS(1, 400),
        PARTS(1, 500),
        SPEED(0.5e-3, 0.5),
        ACCELERATION(0.05, 5);

        private final double lowest;
        private final double highest;

        Knob(double lowest, double highest) {
            this.lowest = lowest;
            this.highest = highest;
        }

        double draw(SplittableRandom random) {
            return lowest * Math.pow(highest / lowest, random.nextDouble());
        }
    }

    private final EnumMap<Knob, Double> values;

    private Setting(EnumMap<Knob, Double> values) {
        this.values = values;
    }

    static Setting draw(SplittableRandom random) {
        EnumMap<Knob, Double> values = new EnumMap<>(Knob.class);
        for (Knob knob : Knob.values()) {
            values.put(knob, knob.draw(random));
        }
        return new Setting(values);
    }

    Setting with(Knob knob, double value) {
        EnumMap<Knob, Double> changed = new EnumMap<>(values);
        changed.put(knob, value);
        return new Setting(changed);
    }

    double get(Knob knob) {
        return values.get(knob);
    }

    Orifice orifice() {
        return Orifice.sapphire(Kind.LENGTH.of(get(Knob.ORIFICE)));
    }

    AbrasiveJet jet() {
        FocusingTube tube = FocusingTube.of(Kind.LENGTH.of(get(Knob.TUBE)), Kind.LENGTH.of(76e-3));
        return CuttingHead.of(orifice(), tube)
                .jet(
                        Kind.PRESSURE.of(get(Knob.PRESSURE)),
                        Abrasive.garnet(Mesh.of(120)),
                        Kind.MASS_FLOW.of(get(Knob.ABRASIVE_FLOW)));
    }

    Material material() {
        return Material.of("trial", get(Knob.MACHINABILITY), 0.1, MaterialClass.DUCTILE);
    }

    Workpiece piece() {
        return Workpiece.of(material(), Kind.LENGTH.of(get(Knob.THICKNESS)));
    }

    @Override
    public String toString() {
        return Map.copyOf(values).toString();
    }
}

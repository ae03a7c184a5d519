package dev.waterjet.vessel;

import dev.waterjet.measure.Kind;
import dev.waterjet.reference.Computed;
import dev.waterjet.reference.Inputs;
import dev.waterjet.reference.Subjects;
import dev.waterjet.water.Water;
import dev.waterjet.water.WaterState;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.function.Function;
import javax.measure.Quantity;
import javax.measure.quantity.Energy;
import javax.measure.quantity.Length;
import javax.measure.quantity.Pressure;

/** Subjects of the reference suite in this package. */
public final class VesselSubjects implements Subjects {

    private static final double ATMOSPHERE_PA = 101_325;
    private static final double ROOM_K = 293.15;

    @Override
    public Map<String, Subject> subjects() {
        Map<String, Subject> all = new HashMap<>();
        all.put("tube-hoop-stress-bore", stress(in -> atBore(in).hoop()));
        all.put("tube-axial-stress", stress(in -> atBore(in).axial()));
        all.put("tube-radial-stress-bore", stress(in -> atBore(in).radial()));
        all.put(
                "tube-hoop-stress-outside",
                stress(in -> tube(in).stressAtOutside(pressure(in), ends(in)).hoop()));
        all.put("tube-tresca-bore", stress(in -> atBore(in).equivalent(YieldCriterion.TRESCA)));
        all.put("tube-mises-bore", stress(in -> atBore(in).equivalent(YieldCriterion.MISES)));
        for (YieldCriterion criterion : YieldCriterion.values()) {
            String name = criterion.name().toLowerCase(Locale.ROOT);
            all.put(
                    "tube-first-yield-" + name,
                    stress(in -> limits(in, criterion).firstYield()));
            all.put(
                    "tube-full-plastic-" + name,
                    stress(in -> limits(in, criterion).fullPlastic()));
        }
        all.put("tube-compliance", in -> Computed.of(Kind.COMPRESSIBILITY, tube(in).compliance(ends(in))));
        addAutofrettage(all);
        addEnergies(all);
        return all;
    }

    private static void addAutofrettage(Map<String, Subject> all) {
        all.put("autofrettage-pressure", stress(in -> autofrettage(in).pressure()));
        all.put(
                "autofrettage-residual-hoop-bore",
                in -> Computed.of(autofrettage(in).residualHoopStressAtBore().orElseThrow()));
        all.put(
                "autofrettage-residual-hoop-outside",
                in -> Computed.of(autofrettage(in)
                        .residualHoopStressAt(Kind.LENGTH.of(length(in, "outer")))
                        .orElseThrow()));
        all.put(
                "autofrettage-critical-ratio",
                in -> Computed.of(Autofrettage.criticalDiameterRatio(in.number("bauschinger"))));
    }

    private static void addEnergies(Map<String, Subject> all) {
        all.put(
                "stored-energy-water",
                in -> Computed.of(
                        Kind.ENERGY,
                        StoredEnergy.of(
                                        Water.stable()
                                                .atSi(
                                                        absolutePa(in, "pressure"),
                                                        in.si("temperature", Kind.TEMPERATURE)),
                                        in.get("volume", Kind.VOLUME),
                                        ThickTube.of(Kind.LENGTH.of(1), Kind.LENGTH.of(2)),
                                        Ends.CLOSED)
                                .water()));
        all.put("stored-energy-wall", in -> Computed.of(Kind.ENERGY, wallEnergy(in)));
        all.put(
                "crack-opening-area",
                in -> Computed.of(CrackLeak.of(
                                in.get("length", Kind.LENGTH),
                                in.get("stress", Kind.PRESSURE),
                                in.get("E", Kind.PRESSURE))
                        .openingArea()));
    }

    private static Quantity<Energy> wallEnergy(Inputs in) {
        WaterState water = Water.stable().atSi(pressurePa(in, "pressure") + ATMOSPHERE_PA, ROOM_K);
        return StoredEnergy.of(water, in.get("volume", Kind.VOLUME), tube(in), ends(in))
                .wall();
    }

    private static Subject stress(Function<Inputs, Quantity<Pressure>> of) {
        return in -> Computed.of(Kind.PRESSURE, of.apply(in));
    }

    private static WallStress atBore(Inputs in) {
        return tube(in).stressAtBore(pressure(in), ends(in));
    }

    private static Quantity<Pressure> pressure(Inputs in) {
        return Kind.PRESSURE.of(pressurePa(in, "pressure"));
    }

    private static TubeLimits limits(Inputs in, YieldCriterion criterion) {
        return tube(in).limits(criterion, ends(in), in.get("yield", Kind.PRESSURE));
    }

    private static Ends ends(Inputs in) {
        return in.has("ends") ? Ends.valueOf(in.text("ends").toUpperCase(Locale.ROOT)) : Ends.CLOSED;
    }

    /** Radii or diameters alike: only their ratio is used. */
    private static ThickTube tube(Inputs in) {
        ThickTube tube = in.has("inner")
                ? ThickTube.of(Kind.LENGTH.of(2 * length(in, "inner")), Kind.LENGTH.of(2 * length(in, "outer")))
                : ThickTube.of(Kind.LENGTH.of(1), Kind.LENGTH.of(in.number(in.has("k") ? "k" : "outer-to-inner")));
        return in.has("E") ? tube.withElasticity(in.get("E", Kind.PRESSURE), in.number("nu")) : tube;
    }

    private static Autofrettage autofrettage(Inputs in) {
        return Autofrettage.toRadius(tube(in), in.get("yield", Kind.PRESSURE), Kind.LENGTH.of(length(in, "plastic")));
    }

    /** A length, or a number in a unit that does not matter. */
    private static double length(Inputs in, String name) {
        String text = in.text(name);
        if (text.matches("[-+.eE\\d]+")) {
            return Double.parseDouble(text);
        }
        Quantity<Length> length = in.get(name, Kind.LENGTH);
        return Kind.LENGTH.si(length);
    }

    private static double pressurePa(Inputs in, String name) {
        return Kind.PRESSURE.si(Kind.PRESSURE.parse(
                in.text(name).replaceAll("\\b(absolute|abs|gauge)\\b", "").strip()));
    }

    private static double absolutePa(Inputs in, String name) {
        return pressurePa(in, name) + (in.text(name).contains("gauge") ? ATMOSPHERE_PA : 0);
    }
}

package dev.waterjet.water;

import dev.waterjet.measure.Kind;
import dev.waterjet.reference.Computed;
import dev.waterjet.reference.Inputs;
import dev.waterjet.reference.Subjects;
import java.util.HashMap;
import java.util.Map;
import java.util.function.Function;

/** Subjects of the reference suite in this package. */
public final class WaterSubjects implements Subjects {

    @Override
    public Map<String, Subject> subjects() {
        Map<String, Subject> all = new HashMap<>();
        all.put("iapws95-helmholtz", in -> Computed.of(helmholtz(in)));
        all.put("water-pressure", fluid(state -> Computed.of(Kind.PRESSURE, state.pressure())));
        all.put("water-sound-speed", fluid(state -> Computed.of(Kind.SPEED, state.soundSpeed())));
        all.put("water-entropy", fluid(state -> Computed.of(Kind.SPECIFIC_HEAT, state.entropy())));
        all.put(
                "water-isochoric-heat-capacity",
                fluid(state -> Computed.of(Kind.SPECIFIC_HEAT, state.isochoricHeatCapacity())));
        all.put(
                "fast-density",
                in -> new Computed(
                        Kind.DENSITY,
                        Water.fastDensitySi(
                                Kind.PRESSURE.si(Kind.PRESSURE.parse(in.text("pressure")
                                        .replace("absolute", "")
                                        .strip())),
                                in.si("temperature", Kind.TEMPERATURE))));
        all.put(
                "surface-tension",
                in -> Computed.of(
                        Kind.SURFACE_TENSION, Saturation.surfaceTension(in.get("temperature", Kind.TEMPERATURE))));
        all.put("liquid-density", liquid(state -> Computed.of(Kind.DENSITY, state.density())));
        all.put("liquid-sound-speed", liquid(state -> Computed.of(Kind.SPEED, state.soundSpeed())));
        all.put(
                "saturation-pressure",
                in -> Computed.of(Kind.PRESSURE, saturation(in).pressure()));
        all.put("saturation-density", in -> Computed.of(Kind.DENSITY, phase(in).density()));
        all.put(
                "saturation-enthalpy",
                in -> Computed.of(Kind.SPECIFIC_ENERGY, phase(in).enthalpy()));
        all.put(
                "saturation-entropy",
                in -> Computed.of(Kind.SPECIFIC_HEAT, phase(in).entropy()));
        all.put(
                "water-viscosity",
                in -> new Computed(
                        Kind.DYNAMIC_VISCOSITY,
                        ViscosityKernel.viscosityPaS(
                                in.si("temperature", Kind.TEMPERATURE), in.si("density", Kind.DENSITY))));
        all.put(
                "melting-pressure",
                in -> Computed.of(
                        Kind.PRESSURE,
                        Ice.valueOf(in.text("ice").toUpperCase(java.util.Locale.ROOT))
                                .meltingPressure(in.get("temperature", Kind.TEMPERATURE))));
        all.put(
                "melting-temperature",
                in -> Computed.of(Kind.TEMPERATURE, Ice.meltingTemperature(in.get("pressure", Kind.PRESSURE))));
        return all;
    }

    private static Subject fluid(Function<WaterState, Computed> property) {
        return in -> property.apply(
                Water.stable().atDensity(in.get("density", Kind.DENSITY), in.get("temperature", Kind.TEMPERATURE)));
    }

    private static Subject liquid(Function<WaterState, Computed> property) {
        return in -> property.apply(
                Water.stable().at(in.get("pressure", Kind.PRESSURE), in.get("temperature", Kind.TEMPERATURE)));
    }

    private static Saturation saturation(Inputs in) {
        return Saturation.at(in.get("temperature", Kind.TEMPERATURE));
    }

    private static WaterState phase(Inputs in) {
        return in.text("phase").equals("liquid")
                ? saturation(in).liquid()
                : saturation(in).vapour();
    }

    /** A derivative of the reduced Helmholtz energy, as table 6 of IAPWS R6-95 prints it. */
    private static double helmholtz(Inputs in) {
        Iapws95Kernel equation = new Iapws95Kernel();
        equation.at(in.si("temperature", Kind.TEMPERATURE), in.si("density", Kind.DENSITY));
        double d = equation.delta;
        double t = equation.tau;
        return switch (in.text("term")) {
            case "phi0" -> equation.ideal;
            case "phi0-d" -> 1 / d;
            case "phi0-dd" -> -1 / (d * d);
            case "phi0-t" -> equation.idealT / t;
            case "phi0-tt" -> equation.idealTt / (t * t);
            case "phi0-dt" -> 0;
            case "phir" -> equation.residual;
            case "phir-d" -> equation.residualD / d;
            case "phir-dd" -> equation.residualDd / (d * d);
            case "phir-t" -> equation.residualT / t;
            case "phir-tt" -> equation.residualTt / (t * t);
            case "phir-dt" -> equation.residualDt / (d * t);
            default -> throw new IllegalArgumentException("no term " + in.text("term"));
        };
    }
}

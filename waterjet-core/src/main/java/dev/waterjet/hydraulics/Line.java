package dev.waterjet.hydraulics;

import dev.waterjet.evidence.Estimate;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.MassFlow;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import dev.waterjet.water.WaterState;
import java.io.Serializable;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;
import javax.measure.Quantity;
import javax.measure.quantity.Pressure;

/**
 * The tubing from pump to head: sections of several lengths and bores, one behind the other.
 *
 * <p>Its loss goes with the fifth power of the bore. Power at the head is greatest when the line takes a third of the
 * pump's pressure, and no shop wants it there: a good line takes a few per cent.
 */
public final class Line implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    /** Standard uncertainty of friction factors, relative: handbooks tell 10 to 15 per cent at 95 per cent (from memory). */
    private static final double RELATIVE_UNCERTAINTY = 0.07;

    private final List<LineSection> sections;
    private final FrictionLaw law;

    private Line(List<LineSection> sections, FrictionLaw law) {
        this.sections = List.copyOf(sections);
        Require.atLeast("number of sections of the line", this.sections.size(), 1, Units.ONE, "");
        this.law = Objects.requireNonNull(law, "law");
    }

    /**
     * Sections in series, with friction by Colebrook.
     *
     * @param sections the sections, one or more
     * @return the line
     */
    public static Line of(LineSection... sections) {
        return new Line(List.of(sections), FrictionLaw.COLEBROOK);
    }

    /**
     * This line with another law of friction.
     *
     * @param law the law
     * @return the line by that law
     */
    public Line withFrictionLaw(FrictionLaw law) {
        return new Line(sections, law);
    }

    /**
     * The sections.
     *
     * @return an unmodifiable list, in the order of flow
     */
    public List<LineSection> sections() {
        return sections;
    }

    /**
     * Loss of pressure, with density and viscosity of the water in the line.
     *
     * @param flow mass flow, 0 or more
     * @param water water at the pressure of the line
     * @return the loss, with the uncertainty of friction laws
     * @throws dev.waterjet.measure.DomainException if the flow is negative, or the water too hot for its formula of
     *     viscosity
     */
    public Estimate<Pressure> loss(Quantity<MassFlow> flow, WaterState water) {
        double lossPa = lossSi(Kind.MASS_FLOW.si(flow), water);
        return Estimate.of(Kind.PRESSURE, lossPa, RELATIVE_UNCERTAINTY * lossPa);
    }

    /**
     * Loss of pressure as a number.
     *
     * @param massFlowKgPerS mass flow in kg/s, 0 or more
     * @param water water at the pressure of the line
     * @return the loss in Pa
     * @throws dev.waterjet.measure.DomainException as {@link #loss}
     */
    public double lossSi(double massFlowKgPerS, WaterState water) {
        Require.notNegative("mass flow", massFlowKgPerS, Units.KILOGRAM_PER_MINUTE);
        double densityKgPerM3 = water.densitySi();
        double viscosityPaS = water.viscositySi();
        double sum = 0;
        for (LineSection section : sections) {
            sum += section.lossPa(massFlowKgPerS, densityKgPerM3, viscosityPaS, law);
        }
        return sum;
    }

    /**
     * Greatest Reynolds number of the flow, which is that of the narrowest section.
     *
     * @param flow mass flow
     * @param water water at the pressure of the line
     * @return the Reynolds number
     */
    public double reynolds(Quantity<MassFlow> flow, WaterState water) {
        double massFlowKgPerS = Kind.MASS_FLOW.si(flow);
        return sections.stream()
                .mapToDouble(section -> section.reynolds(massFlowKgPerS, water))
                .max()
                .orElseThrow();
    }

    /**
     * Pressure wave when the flow changes at once, as behind a valve that shuts: {@code rho a dv} in the narrowest section
     * (Joukowsky), with the speed of sound of the water between stiff walls.
     *
     * @param change change of the mass flow
     * @param water water at the pressure of the line
     * @return height of the wave above or below the pressure of the line, in Pa
     */
    public Quantity<Pressure> surge(Quantity<MassFlow> change, WaterState water) {
        double narrowestM2 =
                sections.stream().mapToDouble(LineSection::areaM2).min().orElseThrow();
        return Kind.PRESSURE.of(Math.abs(Kind.MASS_FLOW.si(change)) / narrowestM2 * water.soundSpeedSi());
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("line")
                .put("friction_law", law)
                .put("sections", sections)
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Line that && law == that.law && sections.equals(that.sections);
    }

    @Override
    public int hashCode() {
        return Objects.hash(sections, law);
    }

    @Override
    public String toString() {
        return sections.stream().map(LineSection::toString).collect(Collectors.joining(" + ", "line: ", ""));
    }
}

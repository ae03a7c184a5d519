package dev.waterjet.hydraulics;

import dev.waterjet.evidence.Estimate;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.MassFlow;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import dev.waterjet.water.WaterState;
import java.io.Serializable;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Pressure;

/**
 * The tubing from pump to head: sections of several lengths and bores, one behind the other.
 *
 * <p>Its loss goes with the fifth power of the bore. Power at the head is greatest when the line takes a third of the
 * pump's pressure, and no shop wants it there: a good line takes a few per cent.
 */
public final class SupplyLine implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    /** Standard uncertainty of friction factors, relative: handbooks tell 10 to 15 per cent at 95 per cent (from memory). */
    private static final double RELATIVE_UNCERTAINTY = 0.07;

    private final List<Section> sections;
    private final FrictionCorrelation correlation;

    private SupplyLine(List<Section> sections, FrictionCorrelation correlation) {
        this.sections = List.copyOf(sections);
        Require.atLeast("number of sections of the line", this.sections.size(), 1, Units.ONE, "");
        this.correlation = Objects.requireNonNull(correlation, "correlation");
    }

    /**
     * Sections in series, with friction by Colebrook.
     *
     * @param sections the sections, one or more
     * @return the line
     */
    public static SupplyLine of(Section... sections) {
        return new SupplyLine(List.of(sections), FrictionCorrelation.COLEBROOK);
    }

    /**
     * This line with another friction correlation.
     *
     * @param correlation the correlation
     * @return the line by that correlation
     */
    public SupplyLine withFrictionCorrelation(FrictionCorrelation correlation) {
        return new SupplyLine(sections, correlation);
    }

    /**
     * The sections.
     *
     * @return an unmodifiable list, in the order of flow
     */
    public List<Section> sections() {
        return sections;
    }

    /**
     * Loss of pressure, with density and viscosity of the water in the line.
     *
     * @param flow mass flow, 0 or more
     * @param water water at the pressure of the line
     * @return the loss, with the uncertainty of friction correlations
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
        for (Section section : sections) {
            sum += section.lossPa(massFlowKgPerS, densityKgPerM3, viscosityPaS, correlation);
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
                sections.stream().mapToDouble(Section::areaM2).min().orElseThrow();
        return Kind.PRESSURE.of(Math.abs(Kind.MASS_FLOW.si(change)) / narrowestM2 * water.soundSpeedSi());
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("supply line")
                .put("friction_correlation", correlation)
                .put("sections", sections)
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof SupplyLine that && correlation == that.correlation && sections.equals(that.sections);
    }

    @Override
    public int hashCode() {
        return Objects.hash(sections, correlation);
    }

    @Override
    public String toString() {
        return sections.stream().map(Section::toString).collect(Collectors.joining(" + ", "line: ", ""));
    }

    /** A straight piece of high-pressure tubing of one bore, with the fittings on it. */
    public static final class Section implements Described, Serializable {

        private static final long serialVersionUID = 1L;

        /** Roughness of drawn tubing, in m (value from memory: 1.5 um in handbooks). */
        private static final double DRAWN_ROUGHNESS_M = 1.5e-6;

        private final double boreM;
        private final double lengthM;
        private final double roughnessM;
        private final double minorLoss;

        private Section(double boreM, double lengthM, double roughnessM, double minorLoss) {
            this.boreM = Require.positive("bore of the line", boreM, Units.MILLIMETRE);
            this.lengthM = Require.notNegative("length of the line", lengthM, Units.METRE);
            this.roughnessM = Require.notNegative("roughness of the line", roughnessM, Units.MICROMETRE);
            Require.atMost("roughness of the line", roughnessM, 0.05 * boreM, Units.MICROMETRE, "a twentieth of the bore");
            this.minorLoss = Require.notNegative("loss coefficient of the fittings", minorLoss, Units.ONE);
        }

        /**
         * A bore, as yet without length, of drawn tubing: 1.5 um rough (value from memory).
         *
         * @param bore inner diameter, above 0
         * @return a section of no length
         */
        public static Section ofBore(Quantity<Length> bore) {
            return new Section(Kind.LENGTH.si(bore), 0, Math.min(DRAWN_ROUGHNESS_M, 0.05 * Kind.LENGTH.si(bore)), 0);
        }

        /**
         * This section with a length.
         *
         * @param length length, 0 or more
         * @return the section of that length
         */
        public Section withLength(Quantity<Length> length) {
            return new Section(boreM, Kind.LENGTH.si(length), roughnessM, minorLoss);
        }

        /**
         * This section with another roughness.
         *
         * @param roughness roughness of the wall as friction correlations mean it, up to a twentieth of the bore
         * @return the section of that roughness
         */
        public Section withRoughness(Quantity<Length> roughness) {
            return new Section(boreM, lengthM, Kind.LENGTH.si(roughness), minorLoss);
        }

        /**
         * This section with fittings: elbows, tees, valves, swivels.
         *
         * @param coefficient sum of their loss coefficients K, each a share of {@code rho v^2 / 2}; 0 or more
         * @return the section with those fittings
         */
        public Section withFittings(double coefficient) {
            return new Section(boreM, lengthM, roughnessM, coefficient);
        }

        /** Loss of pressure in Pa by Darcy and Weisbach: (f L/D + K) rho v^2/2. */
        double lossPa(double massFlowKgPerS, double densityKgPerM3, double viscosityPaS, FrictionCorrelation correlation) {
            if (massFlowKgPerS == 0) {
                return 0;
            }
            double areaM2 = WaterJetKernel.area(boreM);
            double speed = massFlowKgPerS / (densityKgPerM3 * areaM2);
            double factor = correlation.factorSi(densityKgPerM3 * speed * boreM / viscosityPaS, roughnessM / boreM);
            return (factor * lengthM / boreM + minorLoss) * densityKgPerM3 * speed * speed / 2;
        }

        double areaM2() {
            return WaterJetKernel.area(boreM);
        }

        /** Reynolds number 4 m/(pi D mu). */
        double reynolds(double massFlowKgPerS, WaterState water) {
            return massFlowKgPerS * boreM / (areaM2() * water.viscositySi());
        }

        @Override
        public Map<String, Object> describe() {
            return Description.of("supply line section")
                    .put("bore", Kind.LENGTH, boreM)
                    .put("length", Kind.LENGTH, lengthM)
                    .put("roughness", Kind.LENGTH, roughnessM)
                    .put("minor_loss", minorLoss)
                    .map();
        }

        @Override
        public boolean equals(Object other) {
            return other instanceof Section that
                    && boreM == that.boreM
                    && lengthM == that.lengthM
                    && roughnessM == that.roughnessM
                    && minorLoss == that.minorLoss;
        }

        @Override
        public int hashCode() {
            return Objects.hash(boreM, lengthM, roughnessM, minorLoss);
        }

        @Override
        public String toString() {
            return QuantityText.print(Kind.LENGTH, Kind.LENGTH.of(lengthM), Units.METRE, 4) + " of "
                    + QuantityText.print(Kind.LENGTH, Kind.LENGTH.of(boreM), Units.MILLIMETRE, 4) + " bore";
        }
    }
}

package dev.waterjet.hydraulics;

import dev.waterjet.evidence.Estimate;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.MassFlow;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import dev.waterjet.vessel.Ends;
import dev.waterjet.vessel.ThickTube;
import dev.waterjet.water.WaterState;
import java.io.InvalidObjectException;
import java.io.ObjectInputStream;
import java.io.Serializable;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Pressure;
import javax.measure.quantity.Speed;

/**
 * Supply line from pump to head: sections of high-pressure tubing in series.
 *
 * <p>The pressure loss varies inversely with about the fifth power of the bore. The power at the head has its maximum if the line
 * takes a third of the pump pressure; a well-sized line takes a few %.
 */
public final class SupplyLine implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    /** Relative standard uncertainty of friction factors: handbooks give 10 % to 15 % at 95 % (value from memory). */
    private static final double RELATIVE_UNCERTAINTY = 0.07;

    /** Checked content, and the serial form. */
    private record Values(List<Section> sections, FrictionCorrelation correlation) implements Serializable {

        private static final long serialVersionUID = 1L;

        Values {
            sections = List.copyOf(sections);
            Require.atLeast("number of sections of the supply line", sections.size(), 1, Units.ONE, "");
            Objects.requireNonNull(correlation, "correlation");
        }

        private Object readResolve() {
            return new SupplyLine(this);
        }
    }

    private final transient Values values;

    private SupplyLine(Values values) {
        this.values = values;
    }

    /**
     * Returns sections in series, with friction by Colebrook.
     *
     * @param sections sections in the order of flow, one or more
     * @return the supply line
     */
    public static SupplyLine of(Section... sections) {
        Objects.requireNonNull(sections, "sections");
        return new SupplyLine(new Values(List.of(sections), FrictionCorrelation.COLEBROOK));
    }

    /**
     * Returns this supply line with another friction correlation.
     *
     * @param correlation the friction correlation
     * @return the supply line with that correlation
     */
    public SupplyLine withFrictionCorrelation(FrictionCorrelation correlation) {
        return new SupplyLine(new Values(values.sections, correlation));
    }

    /** {@return the sections in the order of flow, unmodifiable} */
    public List<Section> sections() {
        return values.sections;
    }

    /**
     * Returns the pressure loss, with density and viscosity of the water in the line.
     *
     * @param flow mass flow, 0 or more
     * @param water water at the pressure of the line
     * @return the pressure loss, with the uncertainty of friction correlations
     * @throws dev.waterjet.measure.DomainException if the flow is negative, or the temperature above the range of the
     *     viscosity formulation
     */
    public Estimate<Pressure> loss(Quantity<MassFlow> flow, WaterState water) {
        Objects.requireNonNull(flow, "flow");
        Objects.requireNonNull(water, "water");
        double lossPa = lossSi(Kind.MASS_FLOW.si(flow), water);
        return Estimate.of(Kind.PRESSURE, lossPa, RELATIVE_UNCERTAINTY * lossPa);
    }

    double lossSi(double massFlowKgPerS, WaterState water) {
        Require.notNegative("mass flow", massFlowKgPerS, Units.KILOGRAM_PER_MINUTE);
        double densityKgPerM3 = water.densitySi();
        double viscosityPaS = water.viscositySi();
        double sum = 0;
        for (Section section : values.sections) {
            sum += section.lossPa(massFlowKgPerS, densityKgPerM3, viscosityPaS, values.correlation);
        }
        return sum;
    }

    /**
     * Returns the maximum Reynolds number, that of the section with the smallest bore.
     *
     * @param flow mass flow
     * @param water water at the pressure of the line
     * @return the Reynolds number
     */
    public double reynolds(Quantity<MassFlow> flow, WaterState water) {
        Objects.requireNonNull(flow, "flow");
        Objects.requireNonNull(water, "water");
        double massFlowKgPerS = Kind.MASS_FLOW.si(flow);
        return values.sections.stream()
                .mapToDouble(section -> section.reynolds(massFlowKgPerS, water))
                .max()
                .orElseThrow();
    }

    /**
     * Returns the pressure surge of a sudden change of flow, as at a valve that closes: &rho; <i>a</i> &Delta;<i>v</i> (Joukowsky) in
     * the section where it is highest, with the {@linkplain Section#waveSpeed wave speed} <i>a</i> of that section.
     *
     * @param change change of the mass flow
     * @param water water at the pressure of the line
     * @return amplitude of the surge above or below the pressure of the line
     */
    public Quantity<Pressure> surge(Quantity<MassFlow> change, WaterState water) {
        Objects.requireNonNull(change, "change");
        Objects.requireNonNull(water, "water");
        double perFlow = values.sections.stream()
                .mapToDouble(section -> section.waveSpeedSi(water) / section.areaM2())
                .max()
                .orElseThrow();
        return Kind.PRESSURE.of(Math.abs(Kind.MASS_FLOW.si(change)) * perFlow);
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("supply line")
                .put("friction_correlation", values.correlation)
                .put("sections", values.sections)
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof SupplyLine that && values.equals(that.values);
    }

    @Override
    public int hashCode() {
        return values.hashCode();
    }

    @Override
    public String toString() {
        return values.sections.stream().map(Section::toString).collect(Collectors.joining(" + ", "supply line: ", ""));
    }

    private Object writeReplace() {
        return values;
    }

    private void readObject(ObjectInputStream in) throws InvalidObjectException {
        throw new InvalidObjectException("read through its values");
    }

    /** Section of a supply line: straight high-pressure tubing of one bore, with its fittings. */
    public static final class Section implements Described, Serializable {

        private static final long serialVersionUID = 1L;

        /** Roughness of drawn tubing, in m (value from memory: 1.5 &micro;m in handbooks). */
        private static final double DRAWN_ROUGHNESS_M = 1.5e-6;

        private static final double MAX_RELATIVE_ROUGHNESS = 0.05;

        /** Checked content, and the serial form. */
        private record SectionValues(
                double boreM, double lengthM, double roughnessM, double lossCoefficient, double wallCompliancePerPa)
                implements Serializable {

            private static final long serialVersionUID = 1L;

            SectionValues {
                boreM = Require.positive("bore of the supply line", boreM, Units.MILLIMETRE);
                lengthM = Require.notNegative("length of the supply line", lengthM, Units.METRE);
                roughnessM = Require.between(
                        "roughness of the supply line",
                        roughnessM,
                        0,
                        MAX_RELATIVE_ROUGHNESS * boreM,
                        Units.MICROMETRE,
                        "a twentieth of the bore");
                lossCoefficient = Require.notNegative("loss coefficient of the fittings", lossCoefficient, Units.ONE);
                wallCompliancePerPa = Require.notNegative(
                        "compliance of the wall", wallCompliancePerPa, Kind.COMPRESSIBILITY.siUnit());
            }

            private Object readResolve() {
                return new Section(this);
            }
        }

        private final transient SectionValues values;

        private Section(SectionValues values) {
            this.values = values;
        }

        /**
         * Returns a section of drawn tubing, 1.5 &micro;m rough (value from memory), with length 0.
         *
         * @param bore inner diameter, above 0
         * @return the section
         */
        public static Section ofBore(Quantity<Length> bore) {
            Objects.requireNonNull(bore, "bore");
            double boreM = Kind.LENGTH.si(bore);
            return new Section(
                    new SectionValues(boreM, 0, Math.min(DRAWN_ROUGHNESS_M, MAX_RELATIVE_ROUGHNESS * boreM), 0, 0));
        }

        /**
         * Returns this section with a length.
         *
         * @param length length, 0 or more
         * @return the section of that length
         */
        public Section withLength(Quantity<Length> length) {
            Objects.requireNonNull(length, "length");
            return new Section(new SectionValues(
                    values.boreM,
                    Kind.LENGTH.si(length),
                    values.roughnessM,
                    values.lossCoefficient,
                    values.wallCompliancePerPa));
        }

        /**
         * Returns this section with another roughness.
         *
         * @param roughness equivalent sand roughness of the wall, 0 to a twentieth of the bore
         * @return the section of that roughness
         */
        public Section withRoughness(Quantity<Length> roughness) {
            Objects.requireNonNull(roughness, "roughness");
            return new Section(new SectionValues(
                    values.boreM,
                    values.lengthM,
                    Kind.LENGTH.si(roughness),
                    values.lossCoefficient,
                    values.wallCompliancePerPa));
        }

        /**
         * Returns this section with fittings: elbows, tees, valves, swivels.
         *
         * @param coefficient sum of their loss coefficients <i>K</i>, relative to &rho; <i>v</i><sup>2</sup>/2; 0 or more
         * @return the section with those fittings
         */
        public Section withFittings(double coefficient) {
            return new Section(new SectionValues(
                    values.boreM, values.lengthM, values.roughnessM, coefficient, values.wallCompliancePerPa));
        }

        /**
         * Returns this section with the elastic wall of a tube, which slows pressure waves. Without it the wall is rigid.
         *
         * @param wall the tube; only its diameter ratio and material are used
         * @param ends ends of the tube: closed if the tubing carries the axial force of the pressure
         * @return the section with that wall
         */
        public Section withWall(ThickTube wall, Ends ends) {
            Objects.requireNonNull(wall, "wall");
            return new Section(new SectionValues(
                    values.boreM,
                    values.lengthM,
                    values.roughnessM,
                    values.lossCoefficient,
                    Kind.COMPRESSIBILITY.si(wall.compliance(ends))));
        }

        /** {@return the inner diameter} */
        public Quantity<Length> bore() {
            return Kind.LENGTH.of(values.boreM);
        }

        /** {@return the length} */
        public Quantity<Length> length() {
            return Kind.LENGTH.of(values.lengthM);
        }

        /** {@return the equivalent sand roughness of the wall} */
        public Quantity<Length> roughness() {
            return Kind.LENGTH.of(values.roughnessM);
        }

        /** {@return the loss coefficient of the fittings} */
        public double lossCoefficient() {
            return values.lossCoefficient;
        }

        /**
         * Returns the speed of pressure waves: 1/&radic;(1/<i>w</i><sup>2</sup> + &rho; &chi;), with the compliance &chi; of the wall. In
         * 4.8 mm by 14.4 mm tubing at 380 MPa it is 2012 m/s, 3.6 % below the speed of sound of the water.
         *
         * @param water water at the pressure of the line
         * @return the wave speed
         */
        public Quantity<Speed> waveSpeed(WaterState water) {
            Objects.requireNonNull(water, "water");
            return Kind.SPEED.of(waveSpeedSi(water));
        }

        double waveSpeedSi(WaterState water) {
            double soundMPerS = water.soundSpeedSi();
            return 1 / Math.sqrt(1 / (soundMPerS * soundMPerS) + water.densitySi() * values.wallCompliancePerPa);
        }

        /** Pressure loss in Pa by Darcy and Weisbach: (f L/D + K) rho v<sup>2</sup>/2. */
        double lossPa(
                double massFlowKgPerS, double densityKgPerM3, double viscosityPaS, FrictionCorrelation correlation) {
            if (massFlowKgPerS == 0) {
                return 0;
            }
            double boreM = values.boreM;
            double speed = massFlowKgPerS / (densityKgPerM3 * areaM2());
            double factor =
                    correlation.factorSi(densityKgPerM3 * speed * boreM / viscosityPaS, values.roughnessM / boreM);
            return (factor * values.lengthM / boreM + values.lossCoefficient) * densityKgPerM3 * speed * speed / 2;
        }

        double areaM2() {
            return WaterJetKernel.area(values.boreM);
        }

        /** Reynolds number 4 m/(pi D mu). */
        double reynolds(double massFlowKgPerS, WaterState water) {
            return massFlowKgPerS * values.boreM / (areaM2() * water.viscositySi());
        }

        @Override
        public Map<String, Object> describe() {
            return Description.of("supply line section")
                    .put("bore", Kind.LENGTH, values.boreM)
                    .put("length", Kind.LENGTH, values.lengthM)
                    .put("roughness", Kind.LENGTH, values.roughnessM)
                    .put("loss_coefficient", values.lossCoefficient)
                    .put("wall_compliance", Kind.COMPRESSIBILITY, values.wallCompliancePerPa)
                    .map();
        }

        @Override
        public boolean equals(Object other) {
            return other instanceof Section that && values.equals(that.values);
        }

        @Override
        public int hashCode() {
            return values.hashCode();
        }

        @Override
        public String toString() {
            return QuantityText.print(Kind.LENGTH, Kind.LENGTH.of(values.lengthM), Units.METRE, 4) + " of "
                    + QuantityText.forPeople(Kind.LENGTH, values.boreM) + " bore";
        }

        private Object writeReplace() {
            return values;
        }

        private void readObject(ObjectInputStream in) throws InvalidObjectException {
            throw new InvalidObjectException("read through its values");
        }
    }
}

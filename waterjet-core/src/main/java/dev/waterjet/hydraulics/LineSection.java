package dev.waterjet.hydraulics;

import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import dev.waterjet.water.WaterState;
import java.io.Serializable;
import java.util.Map;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Length;

/** A straight piece of high-pressure tubing of one bore, with the fittings on it. */
public final class LineSection implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    /** Roughness of drawn tubing, in m (value from memory: 1.5 um in handbooks). */
    private static final double USUAL_ROUGHNESS_M = 1.5e-6;

    private final double boreM;
    private final double lengthM;
    private final double roughnessM;
    private final double minorLoss;

    private LineSection(double boreM, double lengthM, double roughnessM, double minorLoss) {
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
    public static LineSection ofBore(Quantity<Length> bore) {
        return new LineSection(Kind.LENGTH.si(bore), 0, Math.min(USUAL_ROUGHNESS_M, 0.05 * Kind.LENGTH.si(bore)), 0);
    }

    /**
     * This section with a length.
     *
     * @param length length, 0 or more
     * @return the section of that length
     */
    public LineSection withLength(Quantity<Length> length) {
        return new LineSection(boreM, Kind.LENGTH.si(length), roughnessM, minorLoss);
    }

    /**
     * This section with another roughness.
     *
     * @param roughness roughness of the wall as friction laws mean it, up to a twentieth of the bore
     * @return the section of that roughness
     */
    public LineSection withRoughness(Quantity<Length> roughness) {
        return new LineSection(boreM, lengthM, Kind.LENGTH.si(roughness), minorLoss);
    }

    /**
     * This section with fittings: elbows, tees, valves, swivels.
     *
     * @param coefficient sum of their loss coefficients K, each a share of {@code rho v^2 / 2}; 0 or more
     * @return the section with those fittings
     */
    public LineSection withFittings(double coefficient) {
        return new LineSection(boreM, lengthM, roughnessM, coefficient);
    }

    /** Loss of pressure in Pa by Darcy and Weisbach: (f L/D + K) rho v^2/2. */
    double lossPa(double massFlowKgPerS, double densityKgPerM3, double viscosityPaS, FrictionLaw law) {
        if (massFlowKgPerS == 0) {
            return 0;
        }
        double areaM2 = WaterJetKernel.area(boreM);
        double speed = massFlowKgPerS / (densityKgPerM3 * areaM2);
        double factor = law.factorSi(densityKgPerM3 * speed * boreM / viscosityPaS, roughnessM / boreM);
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
        return Description.of("line section")
                .put("bore", Kind.LENGTH, boreM)
                .put("length", Kind.LENGTH, lengthM)
                .put("roughness", Kind.LENGTH, roughnessM)
                .put("minor_loss", minorLoss)
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof LineSection that
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

package dev.waterjet.hydraulics;

import dev.waterjet.evidence.Estimate;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.Serializable;
import java.util.Map;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Length;

/**
 * The jewel with the bore that makes the water jet.
 *
 * <p>Its discharge coefficient Cd is the volume flow, told at the density of water at rest in the atmosphere, over bore
 * area times the <em>incompressible</em> speed {@code sqrt(2 p / rho)}. Tied to the true speed of the jet it would be a
 * few per cent larger: a table of coefficients is worth nothing without that word. Coefficients of 0.60 to 0.70 are usual
 * for sharp jewels, about 0.65 in the middle (value from memory); a worn or rounded edge passes more.
 */
public final class Orifice implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    private static final double USUAL_DISCHARGE = 0.65;
    private static final double USUAL_DISCHARGE_UNCERTAINTY = 0.02;
    private static final double LARGEST_BORE_M = 0.005;

    /** What the jewel is made of. */
    public enum Jewel {
        /** Synthetic sapphire. Lasts 50 to 100 h (Machines 10 (2022) 756). */
        SAPPHIRE,
        /** Synthetic ruby, alike to sapphire in use. */
        RUBY,
        /** Diamond. Lasts several hundred to a thousand hours (from memory). */
        DIAMOND
    }

    private final Jewel jewel;
    private final double boreM;
    private final double dischargeCoefficient;
    private final double dischargeUncertainty;

    private Orifice(Jewel jewel, double boreM, double dischargeCoefficient, double dischargeUncertainty) {
        this.jewel = Objects.requireNonNull(jewel, "jewel");
        this.boreM = Require.positive("orifice bore", boreM, Units.MILLIMETRE);
        Require.atMost("orifice bore", boreM, LARGEST_BORE_M, Units.MILLIMETRE, "no cutting jet is wider");
        this.dischargeCoefficient = Require.positive("discharge coefficient", dischargeCoefficient, Units.ONE);
        Require.atMost("discharge coefficient", dischargeCoefficient, 1, Units.ONE, "an ideal orifice has 1");
        this.dischargeUncertainty =
                Require.notNegative("uncertainty of the discharge coefficient", dischargeUncertainty, Units.ONE);
    }

    /**
     * An orifice with the usual discharge coefficient, 0.65.
     *
     * @param jewel what it is made of
     * @param bore diameter of its bore, above 0 to 5 mm
     * @return the orifice
     */
    public static Orifice of(Jewel jewel, Quantity<Length> bore) {
        return new Orifice(jewel, Kind.LENGTH.si(bore), USUAL_DISCHARGE, USUAL_DISCHARGE_UNCERTAINTY);
    }

    /**
     * A sapphire orifice with the usual discharge coefficient, 0.65.
     *
     * @param bore diameter of its bore, above 0 to 5 mm
     * @return the orifice
     */
    public static Orifice sapphire(Quantity<Length> bore) {
        return of(Jewel.SAPPHIRE, bore);
    }

    /**
     * A ruby orifice with the usual discharge coefficient, 0.65.
     *
     * @param bore diameter of its bore, above 0 to 5 mm
     * @return the orifice
     */
    public static Orifice ruby(Quantity<Length> bore) {
        return of(Jewel.RUBY, bore);
    }

    /**
     * A diamond orifice with the usual discharge coefficient, 0.65.
     *
     * @param bore diameter of its bore, above 0 to 5 mm
     * @return the orifice
     */
    public static Orifice diamond(Quantity<Length> bore) {
        return of(Jewel.DIAMOND, bore);
    }

    /**
     * This orifice with a known discharge coefficient, taken as exact.
     *
     * @param coefficient relative to the incompressible speed, above 0 to 1
     * @return the orifice with that coefficient
     */
    public Orifice withDischargeCoefficient(double coefficient) {
        return new Orifice(jewel, boreM, coefficient, 0);
    }

    /**
     * This orifice with another bore.
     *
     * @param bore diameter of the bore, above 0 to 5 mm
     * @return the orifice with that bore
     */
    public Orifice withBore(Quantity<Length> bore) {
        return new Orifice(jewel, Kind.LENGTH.si(bore), dischargeCoefficient, dischargeUncertainty);
    }

    /**
     * What the orifice is made of.
     *
     * @return the jewel
     */
    public Jewel jewel() {
        return jewel;
    }

    /**
     * Diameter of the bore.
     *
     * @return the bore, in m
     */
    public Quantity<Length> bore() {
        return Kind.LENGTH.of(boreM);
    }

    /**
     * Diameter of the bore as a number.
     *
     * @return the bore in m
     */
    public double boreSi() {
        return boreM;
    }

    /**
     * The discharge coefficient, relative to the incompressible speed.
     *
     * @return the coefficient with its standard uncertainty
     */
    public Estimate<Dimensionless> dischargeCoefficient() {
        return Estimate.of(Kind.RATIO, dischargeCoefficient, dischargeUncertainty);
    }

    /**
     * The discharge coefficient as a number.
     *
     * @return the coefficient, relative to the incompressible speed
     */
    public double dischargeCoefficientSi() {
        return dischargeCoefficient;
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("orifice")
                .put("jewel", jewel)
                .put("bore", Kind.LENGTH, boreM)
                .put("discharge_coefficient", dischargeCoefficient)
                .put("discharge_uncertainty", dischargeUncertainty)
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Orifice that
                && jewel == that.jewel
                && boreM == that.boreM
                && dischargeCoefficient == that.dischargeCoefficient
                && dischargeUncertainty == that.dischargeUncertainty;
    }

    @Override
    public int hashCode() {
        return Objects.hash(jewel, boreM, dischargeCoefficient, dischargeUncertainty);
    }

    @Override
    public String toString() {
        return jewel.name().toLowerCase(java.util.Locale.ROOT) + " orifice "
                + QuantityText.print(Kind.LENGTH, bore(), Units.MILLIMETRE, 4) + ", Cd "
                + QuantityText.round(dischargeCoefficient, 4);
    }
}

package dev.waterjet.hydraulics;

import dev.waterjet.evidence.Estimate;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.InvalidObjectException;
import java.io.ObjectInputStream;
import java.io.Serializable;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Length;

/**
 * Orifice that forms the water jet.
 *
 * <p>Its discharge coefficient <i>C</i><sub>d</sub> is the volume flow at ambient density, divided by the area of the bore and
 * the <em>incompressible</em> jet speed &radic;(2 <i>p</i>/&rho;). Relative to the compressible jet speed it would be a few per
 * cent larger; tables of coefficients are only comparable if they state the reference. Sharp-edged orifices have 0.60 to 0.70,
 * about 0.65 in the middle (value from memory); a worn or rounded edge has more.
 */
public final class Orifice implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    private static final double TYPICAL_COEFFICIENT = 0.65;
    private static final double TYPICAL_COEFFICIENT_UNCERTAINTY = 0.02;
    private static final double MAX_BORE_M = 0.005;

    /** Material of an orifice. */
    public enum Jewel {
        /** Synthetic sapphire. Service life 50 h to 100 h (Machines 10 (2022) 756). */
        SAPPHIRE,
        /** Synthetic ruby, similar to sapphire in use. */
        RUBY,
        /** Diamond. Service life several hundred to a thousand hours (value from memory). */
        DIAMOND;

        /** {@return the name for people} */
        public String label() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    /** Checked content, and the serial form. */
    private record Values(Jewel jewel, double boreM, double dischargeCoefficient, double coefficientUncertainty)
            implements Serializable {

        private static final long serialVersionUID = 1L;

        Values {
            Objects.requireNonNull(jewel, "jewel");
            Require.positive("orifice bore", boreM, Units.MILLIMETRE);
            boreM = Require.atMost("orifice bore", boreM, MAX_BORE_M, Units.MILLIMETRE, "maximum for cutting jets");
            Require.positive("discharge coefficient", dischargeCoefficient, Units.ONE);
            dischargeCoefficient = Require.atMost("discharge coefficient", dischargeCoefficient, 1, Units.ONE, "");
            coefficientUncertainty =
                    Require.notNegative("uncertainty of the discharge coefficient", coefficientUncertainty, Units.ONE);
        }

        private Object readResolve() {
            return new Orifice(this);
        }
    }

    private final transient Values values;

    private Orifice(Values values) {
        this.values = values;
    }

    /**
     * Returns an orifice with a discharge coefficient of 0.65 &plusmn; 0.02.
     *
     * @param jewel material of the orifice
     * @param bore diameter of the bore, above 0 to 5 mm
     * @return the orifice
     */
    public static Orifice of(Jewel jewel, Quantity<Length> bore) {
        Objects.requireNonNull(bore, "bore");
        return new Orifice(
                new Values(jewel, Kind.LENGTH.si(bore), TYPICAL_COEFFICIENT, TYPICAL_COEFFICIENT_UNCERTAINTY));
    }

    /**
     * Returns a sapphire orifice with a discharge coefficient of 0.65 &plusmn; 0.02.
     *
     * @param bore diameter of the bore, above 0 to 5 mm
     * @return the orifice
     */
    public static Orifice sapphire(Quantity<Length> bore) {
        Objects.requireNonNull(bore, "bore");
        return of(Jewel.SAPPHIRE, bore);
    }

    /**
     * Returns a ruby orifice with a discharge coefficient of 0.65 &plusmn; 0.02.
     *
     * @param bore diameter of the bore, above 0 to 5 mm
     * @return the orifice
     */
    public static Orifice ruby(Quantity<Length> bore) {
        Objects.requireNonNull(bore, "bore");
        return of(Jewel.RUBY, bore);
    }

    /**
     * Returns a diamond orifice with a discharge coefficient of 0.65 &plusmn; 0.02.
     *
     * @param bore diameter of the bore, above 0 to 5 mm
     * @return the orifice
     */
    public static Orifice diamond(Quantity<Length> bore) {
        Objects.requireNonNull(bore, "bore");
        return of(Jewel.DIAMOND, bore);
    }

    /**
     * Returns this orifice with a known discharge coefficient, taken as exact.
     *
     * @param coefficient relative to the incompressible jet speed, above 0 to 1
     * @return the orifice with that coefficient
     */
    public Orifice withDischargeCoefficient(double coefficient) {
        return new Orifice(new Values(values.jewel, values.boreM, coefficient, 0));
    }

    /**
     * Returns this orifice with another bore.
     *
     * @param bore diameter of the bore, above 0 to 5 mm
     * @return the orifice with that bore
     */
    public Orifice withBore(Quantity<Length> bore) {
        Objects.requireNonNull(bore, "bore");
        return new Orifice(new Values(
                values.jewel, Kind.LENGTH.si(bore), values.dischargeCoefficient, values.coefficientUncertainty));
    }

    /** {@return the material of the orifice} */
    public Jewel jewel() {
        return values.jewel;
    }

    /** {@return the diameter of the bore} */
    public Quantity<Length> bore() {
        return Kind.LENGTH.of(values.boreM);
    }

    /** {@return the diameter of the bore, in m} */
    public double boreSi() {
        return values.boreM;
    }

    /** {@return the discharge coefficient relative to the incompressible jet speed, with its standard uncertainty} */
    public Estimate<Dimensionless> dischargeCoefficient() {
        return Estimate.of(Kind.RATIO, values.dischargeCoefficient, values.coefficientUncertainty);
    }

    double dischargeCoefficientSi() {
        return values.dischargeCoefficient;
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("orifice")
                .put("jewel", values.jewel)
                .put("bore", Kind.LENGTH, values.boreM)
                .put("discharge_coefficient", values.dischargeCoefficient)
                .put("discharge_coefficient_uncertainty", values.coefficientUncertainty)
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Orifice that && values.equals(that.values);
    }

    @Override
    public int hashCode() {
        return values.hashCode();
    }

    @Override
    public String toString() {
        return values.jewel.label() + " orifice " + QuantityText.forPeople(Kind.LENGTH, bore())
                + ", discharge coefficient " + QuantityText.round(values.dischargeCoefficient, 4);
    }

    private Object writeReplace() {
        return values;
    }

    private void readObject(ObjectInputStream in) throws InvalidObjectException {
        throw new InvalidObjectException("read through its values");
    }
}

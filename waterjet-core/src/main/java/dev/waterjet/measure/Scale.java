package dev.waterjet.measure;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.UnitConverter;

/**
 * The straight line between one unit and the SI unit of its kind, found once and then applied in a few nanoseconds.
 *
 * <p>{@code si = value * multiplier / divisor + offset}, where one of multiplier and divisor is 1: the scale keeps
 * whichever of the factor and its inverse a double can hold exactly, so that 1 mm is 1/1000 m to the last bit. Only
 * degrees Celsius and Fahrenheit have an offset.
 *
 * @param <Q> the JSR-385 quantity type
 */
public final class Scale<Q extends Quantity<Q>> {

    private final double multiplier;
    private final double divisor;
    private final double offset;

    private Scale(double multiplier, double divisor, double offset) {
        this.multiplier = multiplier;
        this.divisor = divisor;
        this.offset = offset;
    }

    /**
     * The scale of a unit. Units of {@link Units} are looked up; any other unit is resolved through its own converter,
     * which costs about a microsecond: keep the scale where that matters.
     *
     * @param kind the kind of quantity that the unit must measure
     * @param unit the unit
     * @param <Q> the JSR-385 quantity type
     * @return the scale
     * @throws DomainException with code {@code wrong-kind} if the unit is of another dimension, or is not on a straight line with SI
     */
    public static <Q extends Quantity<Q>> Scale<Q> of(Kind<Q> kind, Unit<Q> unit) {
        Objects.requireNonNull(kind, "kind");
        Objects.requireNonNull(unit, "unit");
        Scale<Q> known = UnitTable.scale(kind, unit);
        return known != null ? known : resolve(kind, unit);
    }

    /** The exact factor {@code numerator/denominator}, without offset. */
    static <Q extends Quantity<Q>> Scale<Q> ofRational(long numerator, long denominator) {
        long common = gcd(numerator, denominator);
        long top = numerator / common;
        long bottom = denominator / common;
        return top == 1 ? new Scale<>(1, bottom, 0) : new Scale<>(quotient(top, bottom), 1, 0);
    }

    /** The double nearest to a fraction: of two exact doubles by their quotient, which IEEE 754 rounds once. */
    static double quotient(long numerator, long denominator) {
        if (Math.max(Math.abs(numerator), Math.abs(denominator)) <= 1L << 53) {
            return (double) numerator / denominator;
        }
        return BigDecimal.valueOf(numerator)
                .divide(BigDecimal.valueOf(denominator), MathContext.DECIMAL128)
                .doubleValue();
    }

    private static long gcd(long a, long b) {
        return b == 0 ? a : gcd(b, a % b);
    }

    static <Q extends Quantity<Q>> Scale<Q> ofLine(double multiplier, double offset) {
        return new Scale<>(multiplier, 1, offset);
    }

    private static <Q extends Quantity<Q>> Scale<Q> resolve(Kind<Q> kind, Unit<Q> unit) {
        try {
            Unit<Q> si = Dimensions.siOf(kind, unit);
            if (si != null) {
                return resolve(kind, unit, unit.getConverterTo(si));
            }
        } catch (DomainException e) {
            throw e;
        } catch (RuntimeException e) {
            throw DomainException.wrongKind(kind, unit, e);
        }
        throw DomainException.wrongKind(kind, unit, null);
    }

    private static <Q extends Quantity<Q>> Scale<Q> resolve(Kind<Q> kind, Unit<Q> unit, UnitConverter toSi) {
        double offset = toSi.convert(0.0);
        double factor = toSi.convert(1.0) - offset;
        double bend = toSi.convert(2.0) - offset - 2 * factor;
        boolean isLine = Math.abs(bend) <= 1e-12 * Math.max(Math.abs(factor), Math.abs(offset));
        if (!isLine || !Double.isFinite(factor) || factor == 0) {
            throw DomainException.wrongKind(kind, unit, null);
        }
        double inverse = toSi.inverse().convert(1.0);
        boolean inverseIsExact = offset == 0 && inverse > 1 && inverse == Math.rint(inverse);
        return inverseIsExact ? new Scale<>(1, inverse, 0) : new Scale<>(factor, 1, offset);
    }

    /**
     * Converts a value to SI.
     *
     * @param value value in the unit of this scale
     * @return value in SI
     */
    public double toSi(double value) {
        return value * multiplier / divisor + offset;
    }

    /**
     * Converts a value from SI.
     *
     * @param si value in SI
     * @return value in the unit of this scale
     */
    public double fromSi(double si) {
        return (si - offset) * divisor / multiplier;
    }

    /**
     * Converts a difference of two values from SI, which no offset touches: a standard uncertainty, say.
     *
     * @param si difference in SI
     * @return difference in the unit of this scale
     */
    public double differenceFromSi(double si) {
        return si * divisor / multiplier;
    }

    /**
     * Converts a difference of two values to SI, which no offset touches.
     *
     * @param value difference in the unit of this scale
     * @return difference in SI
     */
    public double differenceToSi(double value) {
        return value * multiplier / divisor;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Scale<?> that
                && multiplier == that.multiplier
                && divisor == that.divisor
                && offset == that.offset;
    }

    @Override
    public int hashCode() {
        return Objects.hash(multiplier, divisor, offset);
    }

    @Override
    public String toString() {
        return "si = value * " + multiplier + " / " + divisor + " + " + offset;
    }
}

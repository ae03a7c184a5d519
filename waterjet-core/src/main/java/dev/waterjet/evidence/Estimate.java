package dev.waterjet.evidence;

import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.InvalidObjectException;
import java.io.ObjectInputStream;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalDouble;
import javax.measure.Quantity;
import javax.measure.Unit;
import org.apache.commons.math3.distribution.TDistribution;
import org.apache.commons.math3.special.Erf;

/**
 * Result of an empirical model: a value, its standard uncertainty, and the cautions that apply. Exact physics returns a plain
 * {@code Quantity} instead.
 *
 * <pre>{@code
 * Estimate<Speed> feed = Estimate.withinFactor(Kind.SPEED, 0.0086, 0.2, List.of());
 * feed.to(Units.MILLIMETRE_PER_MINUTE);           // 516
 * feed.lower(0.95, Units.MILLIMETRE_PER_MINUTE);  // 348.7
 * feed.upper(0.95, Units.MILLIMETRE_PER_MINUTE);  // 763.6
 * feed.toString();                                // 520 mm/min ± 100 mm/min
 * }</pre>
 *
 * <p>The standard uncertainty is that of JCGM 100. The spread of a positive quantity that is known within a factor is
 * {@linkplain #withinFactor log-normal}: its interval never reaches zero. Otherwise the spread is normal. An uncertainty that
 * comes from few data has {@linkplain #withDegreesOfFreedom degrees of freedom}; its interval is then that of Student's
 * distribution (JCGM 100, annex G.3), for a log-normal spread on the logarithm.
 *
 * @param <Q> the JSR-385 quantity type
 */
public final class Estimate<Q extends Quantity<Q>> implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    /** Checked content, and the serial form. */
    private record Values<Q extends Quantity<Q>>(
            Kind<Q> kind,
            double si,
            double standardUncertainty,
            boolean isLogNormal,
            double degreesOfFreedom,
            List<Caution> cautions)
            implements Serializable {

        Values {
            Objects.requireNonNull(kind, "kind");
            if (!(Double.isFinite(si) && standardUncertainty >= 0 && standardUncertainty < Double.POSITIVE_INFINITY)) {
                // the names are joined only for a message: estimates are made in inner loops
                Require.finite("estimated " + kind, si, kind.siUnit());
                Require.notNegative("standard uncertainty of " + kind, standardUncertainty, kind.siUnit());
            }
            if (isLogNormal && !(si > 0)) {
                Require.positive("estimated " + kind, si, kind.siUnit());
            }
            if (degreesOfFreedom != Double.POSITIVE_INFINITY) {
                Require.atLeast("degrees of freedom", degreesOfFreedom, 1, Units.ONE, "");
            }
            si += 0.0;
            standardUncertainty += 0.0;
            cautions = List.copyOf(cautions);
        }

        private Object readResolve() {
            return new Estimate<>(this);
        }
    }

    private final transient Values<Q> values;

    private Estimate(Values<Q> values) {
        this.values = values;
    }

    private static <Q extends Quantity<Q>> Estimate<Q> of(
            Kind<Q> kind, double si, double uncertainty, boolean isLogNormal, List<Caution> cautions) {
        return new Estimate<>(new Values<>(kind, si, uncertainty, isLogNormal, Double.POSITIVE_INFINITY, cautions));
    }

    /**
     * Returns an estimate with a normal spread.
     *
     * @param kind kind of quantity
     * @param si value in SI
     * @param standardUncertainty standard uncertainty in SI, zero or more
     * @param <Q> the JSR-385 quantity type
     * @return the estimate
     */
    public static <Q extends Quantity<Q>> Estimate<Q> of(Kind<Q> kind, double si, double standardUncertainty) {
        return of(kind, si, standardUncertainty, false, List.of());
    }

    /**
     * Returns an estimate of a positive quantity with a relative, log-normal spread.
     *
     * @param kind kind of quantity
     * @param si value in SI, above zero: the median
     * @param relativeUncertainty standard uncertainty of the logarithm: 0.1 for about 10 %
     * @param cautions cautions that apply
     * @param <Q> the JSR-385 quantity type
     * @return the estimate
     */
    public static <Q extends Quantity<Q>> Estimate<Q> withinFactor(
            Kind<Q> kind, double si, double relativeUncertainty, List<Caution> cautions) {
        Objects.requireNonNull(kind, "kind");
        Objects.requireNonNull(cautions, "cautions");
        if (!(si > 0) || !(relativeUncertainty >= 0)) {
            Require.positive("estimated " + kind, si, kind.siUnit());
            Require.notNegative("relative uncertainty of " + kind, relativeUncertainty, Units.ONE);
        }
        return of(kind, si, si * relativeUncertainty, true, cautions);
    }

    /**
     * Returns this estimate with more cautions.
     *
     * @param more cautions to add
     * @return the estimate with its own cautions and these
     */
    public Estimate<Q> with(List<Caution> more) {
        Objects.requireNonNull(more, "more");
        if (more.isEmpty()) {
            return this;
        }
        List<Caution> all = new ArrayList<>(values.cautions);
        all.addAll(more);
        return with(values.kind, values.si, values.standardUncertainty, values.degreesOfFreedom, all);
    }

    /**
     * Returns this estimate with degrees of freedom: the number of data from which the standard uncertainty was found, less
     * the number of parameters found from them (JCGM 100, 4.2.6), or an effective number (annex G.4). Infinite by default.
     *
     * @param degreesOfFreedom 1 or more; infinite for a known uncertainty
     * @return the estimate with the same value and standard uncertainty, and wider intervals
     */
    public Estimate<Q> withDegreesOfFreedom(double degreesOfFreedom) {
        return with(values.kind, values.si, values.standardUncertainty, degreesOfFreedom, values.cautions);
    }

    private <R extends Quantity<R>> Estimate<R> with(
            Kind<R> kind, double si, double uncertainty, double degreesOfFreedom, List<Caution> cautions) {
        return new Estimate<>(new Values<>(kind, si, uncertainty, values.isLogNormal, degreesOfFreedom, cautions));
    }

    /**
     * Multiplies value and uncertainty by an exact factor.
     *
     * @param factor the factor, not 0; above 0 for a log-normal spread
     * @return the estimate, with the same cautions and degrees of freedom
     */
    public Estimate<Q> scaled(double factor) {
        return scaled(values.kind, factor);
    }

    /**
     * Multiplies value and uncertainty by an exact factor that has a unit: a depth by a width gives an area.
     *
     * @param kind kind of the result
     * @param factor the factor in SI, not 0; above 0 for a log-normal spread
     * @param <R> the JSR-385 type of the result
     * @return the estimate, with the same cautions and degrees of freedom
     */
    public <R extends Quantity<R>> Estimate<R> scaled(Kind<R> kind, double factor) {
        double size = Require.positive("size of the factor", Math.abs(factor), Units.ONE);
        return with(
                kind, values.si * factor, values.standardUncertainty * size, values.degreesOfFreedom, values.cautions);
    }

    /**
     * Divides an exact number by this estimate: a length by a feed rate gives a time. To first order for a normal spread, exact
     * for a log-normal one.
     *
     * @param kind kind of the result
     * @param numerator the number in SI, above 0
     * @param <R> the JSR-385 type of the result
     * @return the estimate with the same relative uncertainty, cautions and degrees of freedom
     */
    public <R extends Quantity<R>> Estimate<R> reciprocal(Kind<R> kind, double numerator) {
        Require.positive("numerator", numerator, Units.ONE);
        double quotient = numerator / values.si;
        return with(
                kind, quotient, Math.abs(quotient) * relativeUncertainty(), values.degreesOfFreedom, values.cautions);
    }

    /** {@return the kind of the quantity} */
    public Kind<Q> kind() {
        return values.kind;
    }

    /** {@return the best value; the median of a log-normal spread} */
    public Quantity<Q> value() {
        return values.kind.of(values.si);
    }

    /** {@return the best value in SI} */
    public double si() {
        return values.si;
    }

    /**
     * Returns the best value in a unit.
     *
     * @param unit the unit
     * @return the number of that unit
     */
    public double to(Unit<Q> unit) {
        return Units.fromSi(values.si, unit);
    }

    /** {@return the standard uncertainty of the value (JCGM 100), in SI} */
    public double standardUncertaintySi() {
        return values.standardUncertainty;
    }

    /**
     * Returns the standard uncertainty of the value in a unit.
     *
     * @param unit the unit
     * @return the number of that unit: 0.5 for half a degree Celsius or half a kelvin
     */
    public double standardUncertainty(Unit<Q> unit) {
        return Units.differenceFromSi(values.standardUncertainty, unit);
    }

    /** {@return the standard uncertainty over the value; not a number if the value is zero} */
    public double relativeUncertainty() {
        return values.standardUncertainty / Math.abs(values.si);
    }

    /** {@return the degrees of freedom of the standard uncertainty; infinite if it is known} */
    public double degreesOfFreedom() {
        return values.degreesOfFreedom;
    }

    /**
     * Returns the lower end of the interval that contains the true value with a given probability.
     *
     * @param coverage probability above 0 and below 1, such as 0.95
     * @return lower end
     */
    public Quantity<Q> lower(double coverage) {
        return values.kind.of(bound(-1, coverage));
    }

    /**
     * Returns the upper end of the interval that contains the true value with a given probability.
     *
     * @param coverage probability above 0 and below 1, such as 0.95
     * @return upper end
     */
    public Quantity<Q> upper(double coverage) {
        return values.kind.of(bound(1, coverage));
    }

    /**
     * Returns the lower end of the interval that contains the true value with a given probability, in a unit.
     *
     * @param coverage probability above 0 and below 1, such as 0.95
     * @param unit the unit
     * @return number of that unit
     */
    public double lower(double coverage, Unit<Q> unit) {
        return Units.fromSi(bound(-1, coverage), unit);
    }

    /**
     * Returns the upper end of the interval that contains the true value with a given probability, in a unit.
     *
     * @param coverage probability above 0 and below 1, such as 0.95
     * @param unit the unit
     * @return number of that unit
     */
    public double upper(double coverage, Unit<Q> unit) {
        return Units.fromSi(bound(1, coverage), unit);
    }

    private double bound(int side, double coverage) {
        Require.coverage(coverage);
        double deviations = side * halfWidth(coverage);
        return values.isLogNormal
                ? values.si * Math.exp(deviations * values.standardUncertainty / values.si)
                : values.si + deviations * values.standardUncertainty;
    }

    /** Half width of a symmetric interval, in standard uncertainties. */
    private double halfWidth(double coverage) {
        return isKnown()
                ? Math.sqrt(2) * Erf.erfInv(coverage)
                : new TDistribution(values.degreesOfFreedom).inverseCumulativeProbability((1 + coverage) / 2);
    }

    private boolean isKnown() {
        return values.degreesOfFreedom == Double.POSITIVE_INFINITY;
    }

    /**
     * Returns the probability that the true value is no greater than a limit, by the spread of this estimate.
     *
     * @param limit the limit
     * @return the probability, 0 to 1; 0 or 1 where the value is exact
     */
    public double probabilityAtMost(Quantity<Q> limit) {
        Objects.requireNonNull(limit, "limit");
        double limitSi = values.kind.si(limit);
        if (values.standardUncertainty == 0) {
            return values.si <= limitSi ? 1 : 0;
        }
        double deviations = deviations(limitSi);
        return isKnown() || Double.isInfinite(deviations)
                ? Erf.erfc(-deviations / Math.sqrt(2)) / 2
                : new TDistribution(values.degreesOfFreedom).cumulativeProbability(deviations);
    }

    private double deviations(double limitSi) {
        if (!values.isLogNormal) {
            return (limitSi - values.si) / values.standardUncertainty;
        }
        return limitSi > 0
                ? Math.log(limitSi / values.si) * values.si / values.standardUncertainty
                : Double.NEGATIVE_INFINITY;
    }

    /** {@return the cautions that apply to the value, unmodifiable; empty if there are none} */
    public List<Caution> cautions() {
        return values.cautions;
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("estimate")
                .put("kind", values.kind.name())
                .put("value", values.kind, values.si)
                .put("standard_uncertainty", values.kind, values.standardUncertainty)
                .put("spread", spread())
                .put("degrees_of_freedom", Kind.RATIO, finite(values.degreesOfFreedom))
                .put("lower_95", values.kind, finite(bound(-1, 0.95)))
                .put("upper_95", values.kind, finite(bound(1, 0.95)))
                .put("cautions", values.cautions)
                .map();
    }

    private String spread() {
        if (isKnown()) {
            return values.isLogNormal ? "log-normal" : "normal";
        }
        return values.isLogNormal ? "log-student" : "student";
    }

    private static OptionalDouble finite(double number) {
        return Double.isFinite(number) ? OptionalDouble.of(number) : OptionalDouble.empty();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Estimate<?> that && values.equals(that.values);
    }

    @Override
    public int hashCode() {
        return values.hashCode();
    }

    /** {@return value and standard uncertainty in a unit of the trade, then the cautions} */
    @Override
    public String toString() {
        return QuantityText.forPeople(values.kind, values.si, values.standardUncertainty)
                + (values.cautions.isEmpty() ? "" : " " + values.cautions);
    }

    private Object writeReplace() {
        return values;
    }

    private void readObject(ObjectInputStream in) throws InvalidObjectException {
        throw new InvalidObjectException("read through its values");
    }
}

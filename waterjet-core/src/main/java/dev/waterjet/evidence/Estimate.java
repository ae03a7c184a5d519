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
import org.apache.commons.math3.special.Erf;

/**
 * What an empirical model answers: a value, how far it may be off, and the cautions that apply. Exact physics returns a
 * plain {@code Quantity} instead.
 *
 * <p>The standard uncertainty is that of JCGM 100. A quantity that can only be positive and is known within a factor has
 * a {@linkplain #withinFactor relative} spread: its interval is then that of a log-normal distribution and never reaches
 * zero. Otherwise the interval is that of a normal distribution.
 *
 * @param <Q> the JSR-385 quantity type
 */
public final class Estimate<Q extends Quantity<Q>> implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    /** Checked content, and the serial form. */
    private record Values<Q extends Quantity<Q>>(
            Kind<Q> kind, double si, double standardUncertainty, boolean isLogNormal, List<Caution> cautions)
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

    /**
     * An estimate with a normal spread, in SI.
     *
     * @param kind kind of quantity
     * @param si value in SI
     * @param standardUncertainty standard uncertainty in SI, zero or more
     * @param <Q> the JSR-385 quantity type
     * @return the estimate
     */
    public static <Q extends Quantity<Q>> Estimate<Q> of(Kind<Q> kind, double si, double standardUncertainty) {
        return new Estimate<>(new Values<>(kind, si, standardUncertainty, false, List.of()));
    }

    /**
     * An estimate of a positive quantity with a relative, log-normal spread, in SI.
     *
     * @param kind kind of quantity
     * @param si value in SI, above zero: the median
     * @param relativeUncertainty standard uncertainty of the logarithm: 0.1 for about 10 percent
     * @param cautions cautions that apply
     * @param <Q> the JSR-385 quantity type
     * @return the estimate
     */
    public static <Q extends Quantity<Q>> Estimate<Q> withinFactor(
            Kind<Q> kind, double si, double relativeUncertainty, List<Caution> cautions) {
        if (!(si > 0) || !(relativeUncertainty >= 0)) {
            Require.positive("estimated " + kind, si, kind.siUnit());
            Require.notNegative("relative uncertainty of " + kind, relativeUncertainty, Units.ONE);
        }
        return new Estimate<>(new Values<>(kind, si, si * relativeUncertainty, true, cautions));
    }

    /**
     * This estimate with more cautions.
     *
     * @param more cautions to add
     * @return the estimate with the cautions it had and these
     */
    public Estimate<Q> with(List<Caution> more) {
        if (more.isEmpty()) {
            return this;
        }
        List<Caution> all = new ArrayList<>(values.cautions);
        all.addAll(more);
        return new Estimate<>(
                new Values<>(values.kind, values.si, values.standardUncertainty, values.isLogNormal, all));
    }

    /**
     * Kind of the quantity.
     *
     * @return the kind
     */
    public Kind<Q> kind() {
        return values.kind;
    }

    /**
     * The best value.
     *
     * @return the value, in SI
     */
    public Quantity<Q> value() {
        return values.kind.of(values.si);
    }

    /**
     * The best value as a number.
     *
     * @return the value in SI
     */
    public double si() {
        return values.si;
    }

    /**
     * The best value in a unit.
     *
     * @param unit the unit
     * @return the number of that unit
     */
    public double to(Unit<Q> unit) {
        return Units.fromSi(values.si, unit);
    }

    /**
     * Standard uncertainty of the value (JCGM 100).
     *
     * @return standard uncertainty in SI
     */
    public double standardUncertaintySi() {
        return values.standardUncertainty;
    }

    /**
     * Standard uncertainty over value.
     *
     * @return the ratio; not a number if the value is zero
     */
    public double relativeUncertainty() {
        return values.standardUncertainty / Math.abs(values.si);
    }

    /**
     * Lower end of the interval that holds the true value with a given probability.
     *
     * @param coverage probability above 0 and below 1, such as 0.95
     * @return lower end
     */
    public Quantity<Q> lower(double coverage) {
        return values.kind.of(bound(-1, coverage));
    }

    /**
     * Upper end of the interval that holds the true value with a given probability.
     *
     * @param coverage probability above 0 and below 1, such as 0.95
     * @return upper end
     */
    public Quantity<Q> upper(double coverage) {
        return values.kind.of(bound(1, coverage));
    }

    private double bound(int side, double coverage) {
        Require.above("coverage", coverage, 0, Units.ONE, "");
        Require.atMost("coverage", coverage, Math.nextDown(1.0), Units.ONE, "");
        double deviations = side * Math.sqrt(2) * Erf.erfInv(coverage);
        return values.isLogNormal
                ? values.si * Math.exp(deviations * values.standardUncertainty / values.si)
                : values.si + deviations * values.standardUncertainty;
    }

    /**
     * Probability that the true value is no greater than a limit, by the spread of this estimate.
     *
     * @param limit the limit
     * @return the probability, 0 to 1; 0 or 1 where the value is exact
     */
    public double probabilityAtMost(Quantity<Q> limit) {
        double limitSi = values.kind.si(limit);
        if (values.standardUncertainty == 0) {
            return values.si <= limitSi ? 1 : 0;
        }
        double deviations = values.isLogNormal
                ? (limitSi > 0 ? Math.log(limitSi / values.si) * values.si / values.standardUncertainty : Double.NEGATIVE_INFINITY)
                : (limitSi - values.si) / values.standardUncertainty;
        return Erf.erfc(-deviations / Math.sqrt(2)) / 2;
    }

    /**
     * Cautions that apply to the value.
     *
     * @return the cautions, unmodifiable; empty if there are none
     */
    public List<Caution> cautions() {
        return values.cautions;
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("estimate")
                .put("kind", values.kind.name())
                .put("value", values.kind, values.si)
                .put("standard_uncertainty", values.kind, values.standardUncertainty)
                .put("spread", values.isLogNormal ? "log-normal" : "normal")
                .put("lower_95", values.kind, finite(bound(-1, 0.95)))
                .put("upper_95", values.kind, finite(bound(1, 0.95)))
                .put("cautions", values.cautions)
                .map();
    }

    private static OptionalDouble finite(double bound) {
        return Double.isFinite(bound) ? OptionalDouble.of(bound) : OptionalDouble.empty();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Estimate<?> that && values.equals(that.values);
    }

    @Override
    public int hashCode() {
        return values.hashCode();
    }

    @Override
    public String toString() {
        Unit<Q> unit = values.kind.siUnit();
        return QuantityText.print(values.kind, values.kind.of(values.si), unit, 4) + " +/- " + QuantityText.round(values.standardUncertainty, 2)
                + (values.cautions.isEmpty() ? "" : " " + values.cautions);
    }

    private Object writeReplace() {
        return values;
    }

    private void readObject(ObjectInputStream in) throws InvalidObjectException {
        throw new InvalidObjectException("read through its values");
    }
}

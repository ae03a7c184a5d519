package dev.waterjet.placement;

import dev.waterjet.evidence.Estimate;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import dev.waterjet.part.Point;
import java.io.InvalidObjectException;
import java.io.ObjectInputStream;
import java.io.Serializable;
import java.util.Collections;
import java.util.EnumMap;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Temperature;
import org.apache.commons.math3.distribution.NormalDistribution;

/**
 * Accuracy of a feature as a budget by JCGM 100: each cause adds a known deviation and a standard uncertainty; the deviations add
 * up, the uncertainties add in quadrature as independent ones.
 *
 * <pre>{@code
 * AccuracyBudget hole = AccuracyBudget.none()
 *         .withLimit(AccuracyBudget.Cause.MACHINE, micrometres(50))
 *         .withLocating(location, Point.millimetres(300, 40))
 *         .with(AccuracyBudget.Cause.KERF_OFFSET, offsetError);
 * double chance = hole.probabilityWithin(millimetres(0.1));
 * }</pre>
 *
 * <p>All lengths are deviations of one dimension or place of the feature from its drawing. A chance assumes a normal distribution.
 */
public final class AccuracyBudget implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    /** Cause of a deviation. */
    public enum Cause {
        /** Positioning of the machine. */
        MACHINE,
        /** Place of the part on the machine. */
        LOCATING,
        /** Expansion of workpiece or machine against 20 degrees Celsius. */
        THERMAL_EXPANSION,
        /** Error of the kerf offset that is set in the control. */
        KERF_OFFSET,
        /** Growth of the kerf as orifice and focusing tube wear. */
        WEAR,
        /** Predicted deviation of the cut surface, from taper, lag or corners. */
        PREDICTED_DEVIATION;

        /** {@return the name for people, in lower case} */
        public String label() {
            return name().toLowerCase(Locale.ROOT).replace('_', ' ');
        }
    }

    private static final double MAX_DEVIATION_M = 1000;

    /** Deviation and standard uncertainty of one cause, in m. */
    private record Share(double deviationM, double uncertaintyM) implements Serializable {

        private static final long serialVersionUID = 1L;

        Share {
            deviationM =
                    Require.between("deviation", deviationM, -MAX_DEVIATION_M, MAX_DEVIATION_M, Units.MILLIMETRE, "");
            Require.notNegative("standard uncertainty", uncertaintyM, Units.MILLIMETRE);
            uncertaintyM = Require.atMost("standard uncertainty", uncertaintyM, MAX_DEVIATION_M, Units.MILLIMETRE, "");
        }
    }

    /** Checked content, and the serial form. */
    private record Values(Map<Cause, Share> shares) implements Serializable {

        private static final long serialVersionUID = 1L;

        Values {
            Map<Cause, Share> sorted = new EnumMap<>(Cause.class);
            sorted.putAll(Map.copyOf(shares));
            shares = Collections.unmodifiableMap(sorted);
        }

        private Object readResolve() {
            return new AccuracyBudget(this);
        }
    }

    private final transient Values values;

    private AccuracyBudget(Values values) {
        this.values = values;
    }

    /** {@return a budget without any cause} */
    public static AccuracyBudget none() {
        return new AccuracyBudget(new Values(Map.of()));
    }

    /**
     * Returns this budget with a cause; its deviation is the value of the estimate.
     *
     * @param cause cause, in place of an earlier one of the same kind
     * @param deviation deviation of the feature, with its standard uncertainty
     * @return the budget with that cause
     */
    public AccuracyBudget with(Cause cause, Estimate<Length> deviation) {
        Objects.requireNonNull(deviation, "deviation");
        return with(cause, deviation.si(), deviation.standardUncertaintySi());
    }

    /**
     * Returns this budget with a cause that deviates by no more than a limit, anything within being equally likely: its standard
     * uncertainty is the limit over the square root of 3 (JCGM 100, 4.3.7).
     *
     * @param cause cause, in place of an earlier one of the same kind
     * @param limit limit of the deviation on either side, 0 or more
     * @return the budget with that cause
     */
    public AccuracyBudget withLimit(Cause cause, Quantity<Length> limit) {
        Objects.requireNonNull(limit, "limit");
        double limitM = Require.notNegative("limit of a deviation", Kind.LENGTH.si(limit), Units.MILLIMETRE);
        return with(cause, 0, limitM / Math.sqrt(3));
    }

    /**
     * Returns this budget with the uncertainty of locating at a place of the drawing.
     *
     * @param location place of the part
     * @param feature place of the feature in the drawing
     * @return the budget with that cause
     */
    public AccuracyBudget withLocating(Location location, Point feature) {
        Objects.requireNonNull(feature, "feature");
        Objects.requireNonNull(location, "location");
        return with(Cause.LOCATING, 0, Kind.LENGTH.si(location.uncertaintyAt(feature)));
    }

    /**
     * Returns this budget with thermal expansion that is not compensated: the deviation {@code alpha L (T - 20 degC)} with the
     * uncertainty of the temperature.
     *
     * @param length length from the reference of the dimension, 0 or more
     * @param expansionPerKelvin coefficient of linear expansion in 1/K, such as 11.5e-6 for steel
     * @param temperature temperature of the workpiece, with its standard uncertainty
     * @return the budget with that cause
     */
    public AccuracyBudget withThermalExpansion(
            Quantity<Length> length, double expansionPerKelvin, Estimate<Temperature> temperature) {
        Objects.requireNonNull(length, "length");
        Objects.requireNonNull(temperature, "temperature");
        double lengthM = Require.notNegative("length", Kind.LENGTH.si(length), Units.MILLIMETRE);
        double perKelvin = Require.finite("coefficient of expansion", expansionPerKelvin, Units.ONE) * lengthM;
        return with(
                Cause.THERMAL_EXPANSION,
                perKelvin * (temperature.si() - REFERENCE_K),
                Math.abs(perKelvin) * temperature.standardUncertaintySi());
    }

    /** Reference temperature of dimensions, 20 degC (ISO 1). */
    private static final double REFERENCE_K = 293.15;

    private AccuracyBudget with(Cause cause, double deviationM, double uncertaintyM) {
        Map<Cause, Share> shares = new EnumMap<>(Cause.class);
        shares.putAll(values.shares);
        shares.put(Objects.requireNonNull(cause, "cause"), new Share(deviationM, uncertaintyM));
        return new AccuracyBudget(new Values(shares));
    }

    /** {@return the sum of the known deviations, with the combined standard uncertainty} */
    public Estimate<Length> deviation() {
        double variance = 0;
        double deviation = 0;
        for (Share share : values.shares.values()) {
            variance += share.uncertaintyM * share.uncertaintyM;
            deviation += share.deviationM;
        }
        return Estimate.of(Kind.LENGTH, deviation, Math.sqrt(variance));
    }

    /**
     * Returns the share of a cause in the mean square deviation: of its squared deviation and its variance in the sum of those of all
     * causes.
     *
     * @param cause cause
     * @return the share, 0 to 1
     */
    public double share(Cause cause) {
        double sum = values.shares.values().stream()
                .mapToDouble(AccuracyBudget::square)
                .sum();
        Share own = values.shares.get(Objects.requireNonNull(cause, "cause"));
        return own == null || sum == 0 ? 0 : square(own) / sum;
    }

    private static double square(Share share) {
        return share.deviationM * share.deviationM + share.uncertaintyM * share.uncertaintyM;
    }

    /** {@return the cause with the largest share; empty if there is none} */
    public Optional<Cause> dominant() {
        return values.shares.keySet().stream()
                .filter(cause -> share(cause) > 0)
                .max((one, other) -> Double.compare(share(one), share(other)));
    }

    /**
     * Returns the probability that the feature lies within a tolerance on either side of its drawing.
     *
     * @param tolerance half of the width of the tolerance zone, above 0
     * @return the probability, 0 to 1
     */
    public double probabilityWithin(Quantity<Length> tolerance) {
        Objects.requireNonNull(tolerance, "tolerance");
        double limit = Require.positive("tolerance", Kind.LENGTH.si(tolerance), Units.MILLIMETRE);
        Estimate<Length> deviation = deviation();
        double uncertainty = deviation.standardUncertaintySi();
        if (uncertainty == 0) {
            return Math.abs(deviation.si()) <= limit ? 1 : 0;
        }
        NormalDistribution normal = new NormalDistribution(null, 0, 1);
        return normal.cumulativeProbability((limit - deviation.si()) / uncertainty)
                - normal.cumulativeProbability((-limit - deviation.si()) / uncertainty);
    }

    @Override
    public Map<String, Object> describe() {
        Description description = Description.of("accuracy budget").put("deviation", deviation());
        values.shares
                .keySet()
                .forEach(cause -> description.put("share_of_" + cause.name().toLowerCase(Locale.ROOT), share(cause)));
        return description.map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof AccuracyBudget that && values.equals(that.values);
    }

    @Override
    public int hashCode() {
        return values.hashCode();
    }

    @Override
    public String toString() {
        return "deviation " + QuantityText.forPeople(Kind.LENGTH, deviation().si()) + ", standard uncertainty "
                + QuantityText.forPeople(Kind.LENGTH, deviation().standardUncertaintySi());
    }

    private Object writeReplace() {
        return values;
    }

    private void readObject(ObjectInputStream in) throws InvalidObjectException {
        throw new InvalidObjectException("read through its values");
    }
}

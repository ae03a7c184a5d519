package dev.waterjet.measure;

import java.io.InvalidObjectException;
import java.io.ObjectInputStream;
import java.io.Serializable;
import java.util.Arrays;
import java.util.Map;
import java.util.Objects;
import java.util.function.DoubleUnaryOperator;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.DoubleStream;
import javax.measure.Quantity;
import javax.measure.Unit;

/**
 * Array of quantities of one kind, stored as SI doubles: the unit is resolved once, bulk work then costs as much as the
 * arithmetic. Immutable; every value is finite.
 *
 * @param <Q> the JSR-385 quantity type
 */
public final class QuantityArray<Q extends Quantity<Q>> implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    private static final int MAX_VALUES = 10_000_000;
    private static final int MAX_LENGTH = 600;

    /** Compiled when the first text is read. */
    private static final class RangeText {
        static final Pattern PATTERN = Pattern.compile("(.+?)\\.\\.(.+?)(?:\\s+step\\s+(.+))?", Pattern.DOTALL);
    }

    /** Serial form: an array is compared by identity in a record, so the checked array itself stays outside. */
    @SuppressWarnings("ArrayRecordComponent")
    private record Form<Q extends Quantity<Q>>(Kind<Q> kind, double[] si) implements Serializable {

        Form {
            si = checked(kind, si.clone());
        }

        private Object readResolve() {
            return new QuantityArray<>(kind, si);
        }
    }

    private final transient Kind<Q> kind;
    private final transient double[] si;

    private QuantityArray(Kind<Q> kind, double[] si) {
        this.kind = Objects.requireNonNull(kind, "kind");
        this.si = checked(kind, si);
    }

    /** Every value finite, zero without sign; works in place. */
    private static double[] checked(Kind<?> kind, double[] si) {
        for (int i = 0; i < si.length; i++) {
            double value = si[i];
            if (!Double.isFinite(value)) {
                throw Require.infinite(kind + " " + i + " of an array", value, kind.siUnit());
            }
            si[i] = value + 0.0;
        }
        return si;
    }

    /**
     * Returns an array of values in a unit.
     *
     * @param kind kind of quantity
     * @param values values in the unit; copied
     * @param unit the unit
     * @param <Q> the JSR-385 quantity type
     * @return the array
     */
    public static <Q extends Quantity<Q>> QuantityArray<Q> of(Kind<Q> kind, double[] values, Unit<Q> unit) {
        Objects.requireNonNull(kind, "kind");
        Objects.requireNonNull(values, "values");
        Objects.requireNonNull(unit, "unit");
        Scale<Q> scale = Scale.of(kind, unit);
        double[] si = new double[values.length];
        for (int i = 0; i < si.length; i++) {
            si[i] = scale.toSi(values[i]);
        }
        return new QuantityArray<>(kind, si);
    }

    /**
     * Returns an array of values in SI.
     *
     * @param kind kind of quantity
     * @param si values in the SI unit of the kind; copied
     * @param <Q> the JSR-385 quantity type
     * @return the array
     */
    public static <Q extends Quantity<Q>> QuantityArray<Q> ofSi(Kind<Q> kind, double... si) {
        Objects.requireNonNull(kind, "kind");
        Objects.requireNonNull(si, "si");
        return new QuantityArray<>(kind, si.clone());
    }

    /**
     * Returns values at equal distances, both ends included.
     *
     * @param kind kind of quantity
     * @param first first value
     * @param last last value
     * @param count number of values, 2 or more
     * @param <Q> the JSR-385 quantity type
     * @return the array
     */
    public static <Q extends Quantity<Q>> QuantityArray<Q> evenly(
            Kind<Q> kind, Quantity<Q> first, Quantity<Q> last, int count) {
        Objects.requireNonNull(kind, "kind");
        Objects.requireNonNull(first, "first");
        Objects.requireNonNull(last, "last");
        Require.between("number of values", count, 2, MAX_VALUES, Units.ONE, "");
        double from = kind.si(first);
        double to = kind.si(last);
        double[] si = new double[count];
        for (int i = 0; i < count; i++) {
            double share = i / (double) (count - 1);
            si[i] = from * (1 - share) + to * share;
        }
        return new QuantityArray<>(kind, si);
    }

    /**
     * Reads a range or a single value: {@code "50 MPa..600 MPa step 50 MPa"}, {@code "1 mm..20 mm"} (eleven values),
     * {@code "380 MPa"}. Each value of a range is computed from the first in the unit of the step, so that rounding
     * errors do not add up, and the last is included where the step meets it.
     *
     * <p>Limits: 600 characters, ten million values, and for each quantity those of {@link QuantityText}.
     *
     * @param kind kind of quantity
     * @param text the range
     * @param <Q> the JSR-385 quantity type
     * @return the array
     * @throws TextException if the text is not a range of this kind, or goes beyond a limit
     */
    public static <Q extends Quantity<Q>> QuantityArray<Q> parse(Kind<Q> kind, String text) {
        Objects.requireNonNull(kind, "kind");
        Objects.requireNonNull(text, "text");
        if (text.length() > MAX_LENGTH) {
            throw refusal(
                    kind,
                    text,
                    Message.of("text-too-long", "cannot read {text} as {kind}; it has more than {limit} characters")
                            .with("limit", MAX_LENGTH));
        }
        Matcher matcher = RangeText.PATTERN.matcher(text.strip());
        if (!matcher.matches()) {
            return new QuantityArray<>(kind, new double[] {kind.si(kind.parse(text))});
        }
        Quantity<Q> first = kind.parse(matcher.group(1));
        Quantity<Q> last = kind.parse(matcher.group(2));
        return matcher.group(3) == null
                ? evenly(kind, first, last, 11)
                : stepwise(kind, text, first, last, kind.parse(matcher.group(3)));
    }

    private static <Q extends Quantity<Q>> QuantityArray<Q> stepwise(
            Kind<Q> kind, String text, Quantity<Q> first, Quantity<Q> last, Quantity<Q> step) {
        Scale<Q> scale = Scale.of(kind, step.getUnit());
        double from = scale.fromSi(kind.si(first));
        double by = step.getValue().doubleValue();
        double steps = (scale.fromSi(kind.si(last)) - from) / by;
        if (!(by != 0) || !(steps >= 0)) {
            throw refusal(
                    kind,
                    text,
                    Message.of(
                            "endless-range", "{text} never ends; the step must lead from the first value to the last"));
        }
        if (steps >= MAX_VALUES) {
            throw refusal(
                    kind,
                    text,
                    Message.of("range-too-long", "{text} has more than {limit} values")
                            .with("limit", MAX_VALUES));
        }
        double[] si = new double[(int) Math.floor(steps + 1e-9) + 1];
        for (int i = 0; i < si.length; i++) {
            si[i] = scale.toSi(from + i * by);
        }
        return new QuantityArray<>(kind, si);
    }

    private static TextException refusal(Kind<?> kind, String text, Message message) {
        return new TextException(message.withInput("text", text).with("kind", kind.name()));
    }

    /** {@return the kind of the quantities} */
    public Kind<Q> kind() {
        return kind;
    }

    /** {@return the number of quantities} */
    public int size() {
        return si.length;
    }

    /**
     * Returns a quantity.
     *
     * @param index index from 0
     * @return the quantity, in SI
     * @throws DomainException with code {@code no-such-index} if there is no such value
     */
    public Quantity<Q> get(int index) {
        return kind.of(si(index));
    }

    /**
     * Returns a value.
     *
     * @param index index from 0
     * @return the value in SI
     * @throws DomainException with code {@code no-such-index} if there is no such value
     */
    public double si(int index) {
        return si[Require.index("value", index, si.length)];
    }

    /**
     * Returns all values in SI.
     *
     * @return a new array
     */
    public double[] toSi() {
        return si.clone();
    }

    /**
     * Returns all values in a unit.
     *
     * @param unit the unit
     * @return a new array
     */
    public double[] to(Unit<Q> unit) {
        Objects.requireNonNull(unit, "unit");
        Scale<Q> scale = Scale.of(kind, unit);
        double[] values = new double[si.length];
        for (int i = 0; i < values.length; i++) {
            values[i] = scale.fromSi(si[i]);
        }
        return values;
    }

    /** {@return a stream of the values in SI} */
    public DoubleStream stream() {
        return Arrays.stream(si);
    }

    /**
     * Applies a function to each value.
     *
     * @param resultKind kind of the results
     * @param function from a value in SI to a result in SI
     * @param <R> the JSR-385 type of the results
     * @return the results, in the same order
     */
    public <R extends Quantity<R>> QuantityArray<R> map(Kind<R> resultKind, DoubleUnaryOperator function) {
        Objects.requireNonNull(resultKind, "resultKind");
        Objects.requireNonNull(function, "function");
        double[] results = new double[si.length];
        for (int i = 0; i < results.length; i++) {
            results[i] = function.applyAsDouble(si[i]);
        }
        return new QuantityArray<>(resultKind, results);
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("quantities")
                .put("kind", kind.name())
                .put("values", this)
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof QuantityArray<?> that && kind.equals(that.kind) && Arrays.equals(si, that.si);
    }

    @Override
    public int hashCode() {
        return Objects.hash(kind.name(), Arrays.hashCode(si));
    }

    @Override
    public String toString() {
        return si.length + " values of " + kind + " in " + Units.symbol(kind.siUnit());
    }

    private Object writeReplace() {
        return new Form<>(kind, si);
    }

    private void readObject(ObjectInputStream in) throws InvalidObjectException {
        throw new InvalidObjectException("read through its form");
    }
}

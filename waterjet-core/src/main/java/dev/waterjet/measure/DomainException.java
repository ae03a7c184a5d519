package dev.waterjet.measure;

import java.util.Objects;
import java.util.OptionalDouble;
import javax.measure.Unit;
import org.jspecify.annotations.Nullable;

/**
 * Argument outside the domain that physics, practice or its kind allows: a negative thickness, a focusing tube narrower than
 * its orifice, a length for a mass flow, an index that does not exist. It carries the name of the quantity and, where the
 * domain has a limit, the value, the limit and the unit of both.
 *
 * <p>Codes of the library's checks: {@code must-be-above}, {@code must-be-at-least}, {@code must-be-below},
 * {@code must-be-at-most}, {@code must-be-finite}, {@code wrong-kind}; others stand beside the code that raises them.
 */
public class DomainException extends WaterjetException {

    private static final long serialVersionUID = 1L;

    private final String quantity;
    private final @Nullable Double value;
    private final @Nullable Double limit;
    private final String unit;

    /**
     * Creates a refusal where {@link Require} has no fitting check.
     *
     * @param quantity name of the quantity, in the words of the trade
     * @param valueSi offending value, in SI
     * @param relation required relation: {@code "above"}, {@code "at least"}, {@code "below"} or {@code "at most"}
     * @param limitSi limit, in SI
     * @param unit unit in which value and limit are printed; it decides no dimension
     * @param reason why the limit holds, or an empty text
     */
    public DomainException(
            String quantity, double valueSi, String relation, double limitSi, Unit<?> unit, String reason) {
        this(rule(relation), quantity, valueSi, limitSi, unit, reason);
    }

    /**
     * Creates a refusal with a custom code and sentence. The sentence can use the parameters {@code quantity},
     * {@code value}, {@code limit} and {@code reason}.
     *
     * @param message code and sentence, with further parameters
     * @param quantity name of the quantity, in the words of the trade
     * @param valueSi offending value, in SI
     * @param limitSi limit, in SI
     * @param unit unit in which value and limit are printed; it decides no dimension
     */
    public DomainException(Message message, String quantity, double valueSi, double limitSi, Unit<?> unit) {
        this(message, quantity, valueSi, limitSi, unit, "");
    }

    private DomainException(
            Message message, String quantity, double valueSi, double limitSi, Unit<?> unit, String reason) {
        super(complete(message, quantity, valueSi, limitSi, unit, reason));
        this.quantity = quantity;
        this.value = Units.fromSi(valueSi, unit);
        this.limit = Units.fromSi(limitSi, unit);
        this.unit = Units.symbol(unit);
    }

    /**
     * Creates a refusal of an argument whose domain has no limit in numbers.
     *
     * @param message code and sentence, with further parameters; the sentence can use {@code quantity} too
     * @param quantity name of the quantity or argument
     */
    public DomainException(Message message, String quantity) {
        super(message.with("quantity", Objects.requireNonNull(quantity, "quantity")));
        this.quantity = quantity;
        this.value = null;
        this.limit = null;
        this.unit = "";
    }

    /** A unit of another kind: the argument is outside the domain of the kind, whatever its number. */
    static DomainException wrongKind(Kind<?> kind, Unit<?> unit, @Nullable Throwable cause) {
        Message message = Kind.RATIO.equals(kind)
                ? Message.of("wrong-kind", "a ratio is a number without a unit; it cannot be given in \"{unit}\"")
                : Message.of("wrong-kind", "{quantity} cannot be given in \"{unit}\"; its SI unit is {si_unit}");
        DomainException refusal = new DomainException(
                message.with("unit", Units.symbol(unit)).with("si_unit", Units.symbol(kind.siUnit())), kind.name());
        refusal.initCause(cause);
        return refusal;
    }

    private static Message complete(
            Message message, String quantity, double valueSi, double limitSi, Unit<?> unit, String reason) {
        int limitFigures = QuantityText.limitFigures(limitSi, unit);
        boolean isClose = !QuantityText.ordersAlike(valueSi, limitSi, unit, limitFigures);
        int figures = isClose
                ? QuantityText.figuresApart(valueSi, limitSi, unit, limitFigures)
                : QuantityText.FIGURES_FOR_PEOPLE;
        String value = QuantityText.brief(valueSi, unit, figures);
        String limit = QuantityText.brief(limitSi, unit, isClose ? figures : limitFigures);
        return message.with("quantity", Objects.requireNonNull(quantity, "quantity"))
                .with("value", column("value", unit), valueSi, value)
                .with("limit", column("limit", unit), limitSi, limit)
                .with("reason", reason, reason.isEmpty() ? "" : " (" + reason + ")");
    }

    private static String column(String label, Unit<?> unit) {
        String suffix = Units.columnSuffix(unit.getSystemUnit());
        return suffix.isEmpty() ? label : label + "_" + suffix;
    }

    private static Message rule(String relation) {
        return switch (relation) {
            case "above" -> Message.of("must-be-above", "{quantity} is {value}; it must be above {limit}{reason}");
            case "at least" ->
                Message.of("must-be-at-least", "{quantity} is {value}; it must be at least {limit}{reason}");
            case "below" -> Message.of("must-be-below", "{quantity} is {value}; it must be below {limit}{reason}");
            case "at most" ->
                Message.of("must-be-at-most", "{quantity} is {value}; it must be at most {limit}{reason}");
            default -> throw new AssertionError("unknown relation \"" + relation + "\"");
        };
    }

    /** {@return the name of the quantity} */
    public String quantity() {
        return quantity;
    }

    /** {@return the offending value, in {@link #unit()}; empty if the domain has no limit in numbers} */
    public OptionalDouble value() {
        return value == null ? OptionalDouble.empty() : OptionalDouble.of(value);
    }

    /** {@return the limit, in {@link #unit()}; empty if the domain has no limit in numbers} */
    public OptionalDouble limit() {
        return limit == null ? OptionalDouble.empty() : OptionalDouble.of(limit);
    }

    /** {@return the symbol of the unit of value and limit, empty for a ratio or without a limit} */
    public String unit() {
        return unit;
    }
}

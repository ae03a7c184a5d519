package dev.waterjet.measure;

import java.util.Objects;
import javax.measure.Unit;

/**
 * A quantity lies where the physics or the trade allows none: a negative thickness, a focusing tube narrower than its
 * orifice. It carries the quantity's name, the value, the limit it broke and the unit of both.
 */
public class DomainException extends WaterjetException {

    private static final long serialVersionUID = 1L;

    private final String quantity;
    private final double value;
    private final double limit;
    private final String unit;

    /**
     * Made where {@link Require} has no fitting check.
     *
     * @param quantity name of the quantity, in the words of the trade
     * @param valueSi offending value, in SI
     * @param relation what it must be, such as {@code "at least"} or {@code "below"}
     * @param limitSi limit, in SI
     * @param unit unit in which value and limit are told; it decides no dimension
     * @param reason why the limit holds, or an empty text
     */
    public DomainException(
            String quantity, double valueSi, String relation, double limitSi, Unit<?> unit, String reason) {
        super(message(quantity, valueSi, relation, limitSi, unit, reason));
        this.quantity = Objects.requireNonNull(quantity, "quantity");
        this.value = Units.fromSi(valueSi, unit);
        this.limit = Units.fromSi(limitSi, unit);
        this.unit = Units.symbol(unit);
    }

    private static String message(
            String quantity, double valueSi, String relation, double limitSi, Unit<?> unit, String reason) {
        String limit = QuantityText.brief(limitSi, unit, "");
        String text =
                quantity + " is " + QuantityText.brief(valueSi, unit, limit) + "; it must be " + relation + " " + limit;
        return reason.isEmpty() ? text : text + " (" + reason + ")";
    }

    /**
     * Name of the quantity.
     *
     * @return name in the words of the trade
     */
    public String quantity() {
        return quantity;
    }

    /**
     * The offending value.
     *
     * @return value in {@link #unit()}
     */
    public double value() {
        return value;
    }

    /**
     * The limit it broke.
     *
     * @return limit in {@link #unit()}
     */
    public double limit() {
        return limit;
    }

    /**
     * Unit of value and limit.
     *
     * @return symbol of the unit, empty for a ratio
     */
    public String unit() {
        return unit;
    }
}

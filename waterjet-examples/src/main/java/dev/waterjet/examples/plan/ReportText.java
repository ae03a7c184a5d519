package dev.waterjet.examples.plan;

import dev.waterjet.evidence.Estimate;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Units;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Locale;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Time;

/** Quantities and estimates as text of a report. */
final class ReportText {

    private ReportText() {}

    static <Q extends Quantity<Q>> String of(Kind<Q> kind, Quantity<Q> quantity, Unit<Q> unit) {
        return QuantityText.print(kind, quantity, unit, 3);
    }

    /** Value and standard uncertainty to the same place, as {@code 1.12 mm ± 0.06 mm}. */
    static <Q extends Quantity<Q>> String of(Estimate<Q> estimate, Unit<Q> unit) {
        double value = estimate.to(unit);
        return of(value, Math.abs(value) * estimate.relativeUncertainty(), symbol(unit));
    }

    /** Value and standard uncertainty to the same place, each before the text of a unit. */
    static String of(double value, double deviation, String symbol) {
        if (!(deviation > 0)) {
            return QuantityText.round(value, 3) + symbol;
        }
        // two digits where the first is a one, else one
        int first = (int) Math.floor(Math.log10(deviation));
        int place = deviation < 2 * Math.pow(10, first) ? first - 1 : first;
        return rounded(value, place) + symbol + " \u00b1 " + rounded(deviation, place) + symbol;
    }

    private static String rounded(double value, int place) {
        BigDecimal rounded = BigDecimal.valueOf(value).setScale(-place, RoundingMode.HALF_EVEN);
        return (place > 0 ? rounded.setScale(0, RoundingMode.UNNECESSARY) : rounded).toPlainString();
    }

    /** The best value of an estimate. */
    static <Q extends Quantity<Q>> String best(Estimate<Q> estimate, Unit<Q> unit) {
        return QuantityText.round(estimate.to(unit), 3) + symbol(unit);
    }

    /** Symbol of a unit with the space before it, which degrees of an angle have not. */
    private static String symbol(Unit<?> unit) {
        String symbol = Units.symbol(unit);
        return symbol.equals("\u00b0") ? symbol : " " + symbol;
    }

    /** A time as minutes and seconds, or hours and minutes. */
    static String time(double seconds) {
        long whole = Math.round(seconds);
        return whole >= 3600
                ? String.format(Locale.ROOT, "%d h %02d min", whole / 3600, whole % 3600 / 60)
                : String.format(Locale.ROOT, "%d min %02d s", whole / 60, whole % 60);
    }

    static String time(Estimate<Time> estimate) {
        return time(estimate.si()) + " (95 % interval " + time(Kind.TIME.si(estimate.lower(0.95))) + " to "
                + time(Kind.TIME.si(estimate.upper(0.95))) + ")";
    }
}

package dev.waterjet.measure;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import javax.measure.MetricPrefix;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.UnitConverter;
import org.jspecify.annotations.Nullable;
import tech.units.indriya.function.MultiplyConverter;
import tech.units.indriya.unit.TransformedUnit;

/**
 * Units with their symbols and scales: makes units and finds them again, by identity in some nanoseconds, else by equality.
 * Filled by the static initialisation of the class that holds it, read-only afterwards.
 */
final class UnitTable {

    /** Unit of a kind. */
    record Entry(Kind<?> kind, Unit<?> unit, String symbol, Scale<?> scale) {}

    private final IdentityHashMap<Unit<?>, Entry> byIdentity = new IdentityHashMap<>();
    private final List<Entry> order = new ArrayList<>();

    /** Enters the SI unit of a kind. */
    <Q extends Quantity<Q>> Unit<Q> si(Kind<Q> kind, String symbol) {
        return enter(kind, kind.siUnit(), symbol, Scale.ofRational(1, 1));
    }

    /** Makes a unit of {@code numerator/denominator} SI units. */
    <Q extends Quantity<Q>> Unit<Q> unit(Kind<Q> kind, String symbol, long numerator, long denominator) {
        return add(
                kind,
                symbol,
                MultiplyConverter.ofRational(numerator, denominator),
                Scale.ofRational(numerator, denominator));
    }

    /** Makes the SI unit of a kind with a prefix of a power of ten. */
    <Q extends Quantity<Q>> Unit<Q> unit(Kind<Q> kind, String symbol, MetricPrefix prefix) {
        int exponent = prefix.getExponent();
        long power = 1;
        for (int i = 0; i < Math.abs(exponent); i++) {
            power *= 10;
        }
        return add(
                kind,
                symbol,
                MultiplyConverter.ofPrefix(prefix),
                exponent < 0 ? Scale.ofRational(1, power) : Scale.ofRational(power, 1));
    }

    /** Makes a unit with a converter to SI, and the scale that does the same. */
    <Q extends Quantity<Q>> Unit<Q> add(Kind<Q> kind, String symbol, UnitConverter toSi, Scale<?> scale) {
        return add(kind, symbol, kind.siUnit(), toSi, scale);
    }

    /** Makes a unit with a converter to another unit, and the scale to SI. */
    <Q extends Quantity<Q>> Unit<Q> add(
            Kind<Q> kind, String symbol, Unit<Q> parent, UnitConverter toParent, Scale<?> scale) {
        return enter(kind, new TransformedUnit<>(symbol, parent, toParent), symbol, scale);
    }

    private <Q extends Quantity<Q>> Unit<Q> enter(Kind<Q> kind, Unit<Q> unit, String symbol, Scale<?> scale) {
        Entry entry = new Entry(kind, unit, symbol, scale);
        order.add(entry);
        byIdentity.put(unit, entry);
        return unit;
    }

    /** All entries, in the order in which they were made. */
    List<Entry> entries() {
        return order;
    }

    /** Units equal to known ones but made elsewhere; filled when the first of them comes. */
    private static final class ByEquality {
        private static final Map<Unit<?>, Entry> ENTRIES = new HashMap<>();

        static {
            MoreUnits.TABLE.order.forEach(entry -> ENTRIES.put(entry.unit(), entry));
            Units.TABLE.order.forEach(entry -> ENTRIES.put(entry.unit(), entry));
        }
    }

    /** The scale of a known unit of the kind, or null: then the unit is unknown, or known to be of another kind. */
    @SuppressWarnings("unchecked")
    static <Q extends Quantity<Q>> @Nullable Scale<Q> scale(Kind<Q> kind, Unit<Q> unit) {
        Entry entry = find(unit);
        return entry != null && entry.kind().equals(kind) ? (Scale<Q>) entry.scale() : null;
    }

    /** Entry of a unit, or null for an unknown unit. */
    static @Nullable Entry find(Unit<?> unit) {
        Entry entry = Units.TABLE.byIdentity.get(unit);
        if (entry == null) {
            entry = MoreUnits.TABLE.byIdentity.get(unit);
        }
        return entry != null ? entry : ByEquality.ENTRIES.get(unit);
    }
}

package dev.waterjet.measure;

import java.text.Normalizer;
import java.util.HashMap;
import java.util.Map;
import javax.measure.Quantity;
import javax.measure.Unit;
import org.jspecify.annotations.Nullable;
import tech.units.indriya.AbstractUnit;

/** Comparison of units of different JSR-385 implementations: by the symbols and powers of their base units. */
final class Dimensions {

    private Dimensions() {}

    /**
     * The unit to whose numbers a unit must be converted to get SI values of a kind: the SI unit of the kind, or for a unit of
     * another implementation that implementation's own SI unit. Null if the unit is of another dimension.
     */
    static <Q extends Quantity<Q>> @Nullable Unit<Q> siOf(Kind<Q> kind, Unit<Q> unit) {
        if (unit instanceof AbstractUnit) {
            return unit.isCompatible(kind.siUnit()) ? kind.siUnit() : null;
        }
        Unit<Q> system = unit.getSystemUnit();
        return bases(system).equals(bases(kind.siUnit())) ? system : null;
    }

    private static Map<String, Integer> bases(Unit<?> unit) {
        Map<String, Integer> bases = new HashMap<>();
        collect(unit, 1, bases);
        bases.values().removeIf(power -> power == 0);
        return bases;
    }

    /** By JSR-385, a base unit has no base units. A derived unit may give derived units, which are taken apart in turn. */
    private static void collect(Unit<?> unit, int power, Map<String, Integer> bases) {
        Map<? extends Unit<?>, Integer> parts = unit.getBaseUnits();
        if (parts == null) {
            bases.merge(symbol(unit), power, Integer::sum);
        } else {
            parts.forEach((part, exponent) -> collect(part, power * exponent, bases));
        }
    }

    /** In composed form: a kelvin may be written by the letter K or by a separate sign. */
    private static String symbol(Unit<?> base) {
        String symbol = base.getSymbol();
        return Normalizer.normalize(symbol != null ? symbol : base.toString(), Normalizer.Form.NFC);
    }
}

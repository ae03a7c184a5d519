package dev.waterjet.hardening;

import dev.waterjet.evidence.Estimate;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.measure.WaterjetException;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.ConcurrentHashMap;
import javax.measure.Quantity;
import javax.measure.Unit;

/** All numbers in an answer, in SI. */
final class Numbers {

    private static final Map<Unit<?>, Kind<?>> KINDS = new ConcurrentHashMap<>();

    /** Parts of a long list that are looked at: its parts are of one make. */
    private static final int MOST_PARTS = 20;

    private Numbers() {}

    static List<Double> of(Object answer) {
        List<Double> numbers = new ArrayList<>();
        collect(answer, numbers);
        return numbers;
    }

    private static void collect(Object answer, List<Double> into) {
        if (answer instanceof Quantity<?> quantity) {
            into.add(si(quantity));
        } else if (answer instanceof Estimate<?> estimate) {
            into.add(estimate.si());
            into.add(estimate.standardUncertaintySi());
        } else if (answer instanceof QuantityArray<?> array) {
            array.stream().forEach(into::add);
        } else if (answer instanceof Number number) {
            into.add(number.doubleValue());
        } else if (answer instanceof double[] array) {
            for (double value : array) {
                into.add(value);
            }
        } else if (answer instanceof OptionalDouble optional) {
            optional.ifPresent(into::add);
        } else if (answer instanceof Optional<?> optional) {
            optional.ifPresent(value -> collect(value, into));
        } else if (answer instanceof Described described) {
            collect(description(described), into);
        } else if (answer instanceof Collection<?> parts) {
            parts.stream().limit(MOST_PARTS).forEach(part -> collect(part, into));
        } else if (answer instanceof Map<?, ?> map && map.keySet().stream().allMatch(String.class::isInstance)) {
            map.forEach((key, value) -> {
                if (!key.equals("cautions")) {
                    collect(value, into);
                }
            });
        }
    }

    /** Numbers in the description of a result; one that cannot be described counts as not a number. */
    private static Object description(Described described) {
        try {
            return described.describe();
        } catch (WaterjetException e) {
            return Double.NaN;
        }
    }

    private static double si(Quantity<?> quantity) {
        Kind<?> kind = KINDS.computeIfAbsent(quantity.getUnit(), Numbers::kindOf);
        return siOf(kind, quantity);
    }

    static Kind<?> kindOf(Unit<?> unit) {
        for (Kind<?> kind : Kind.all()) {
            if (kind.siUnit().getDimension().equals(unit.getDimension())) {
                return kind;
            }
        }
        throw new IllegalArgumentException("no kind measures " + unit);
    }

    @SuppressWarnings("unchecked")
    private static <Q extends Quantity<Q>> double siOf(Kind<Q> kind, Quantity<?> quantity) {
        return kind.si((Quantity<Q>) quantity);
    }
}

package dev.waterjet.hardening;

import dev.waterjet.evidence.Estimate;
import dev.waterjet.evidence.ValidityRange;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.measure.QuantityText;
import java.lang.reflect.Executable;
import java.lang.reflect.Method;
import java.lang.reflect.Modifier;
import java.lang.reflect.Parameter;
import java.lang.reflect.ParameterizedType;
import java.lang.reflect.Type;
import java.lang.reflect.TypeVariable;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import java.util.function.DoubleUnaryOperator;
import javax.measure.Quantity;
import javax.measure.Unit;

/** Makes arguments for the public methods: at random, in the ranges of the trade or hostile, from a fixed seed. */
@SuppressWarnings("ReferenceEquality")
final class Values {

    private static final List<Double> HOSTILE =
            List.of(Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY, 0.0, -0.0);

    private static final List<String> TEXTS =
            List.of("titanium", "sample-1", "380 MPa", "1 mm..20 mm", "0.25", "a", "");

    private static final int[] COUNTS = {1, 2, 3, 4, 5, 7, 10, 30, 80, 120};

    /** Range of each kind in which most arguments fall, in SI. */
    private static final Map<Kind<?>, double[]> RANGES = ranges();

    private static final Map<String, Kind<?>> UNIT_OF_NAME = unitNames();

    private final SplittableRandom random;
    private final Pool pool;
    private final double hostility;

    Values(SplittableRandom random, Pool pool, double hostility) {
        this.random = random;
        this.pool = pool;
        this.hostility = hostility;
    }

    private static Map<Kind<?>, double[]> ranges() {
        Map<Kind<?>, double[]> ranges = new HashMap<>();
        ranges.put(Kind.LENGTH, new double[] {1e-4, 0.3});
        ranges.put(Kind.AREA, new double[] {1e-8, 1});
        ranges.put(Kind.VOLUME, new double[] {1e-9, 0.1});
        ranges.put(Kind.TIME, new double[] {0.1, 1e5});
        ranges.put(Kind.FREQUENCY, new double[] {0.1, 100});
        ranges.put(Kind.SPEED, new double[] {1e-5, 1000});
        ranges.put(Kind.ACCELERATION, new double[] {0.1, 20});
        ranges.put(Kind.JERK, new double[] {1, 1000});
        ranges.put(Kind.ANGLE, new double[] {1e-3, 1.5});
        ranges.put(Kind.ANGULAR_SPEED, new double[] {1e-2, 100});
        ranges.put(Kind.ANGULAR_ACCELERATION, new double[] {0.1, 1000});
        ranges.put(Kind.MASS, new double[] {1e-3, 1000});
        ranges.put(Kind.FORCE, new double[] {1, 1e5});
        ranges.put(Kind.PRESSURE, new double[] {1e6, 6e8});
        ranges.put(Kind.TEMPERATURE, new double[] {274, 350});
        ranges.put(Kind.POWER, new double[] {100, 1e5});
        ranges.put(Kind.ENERGY, new double[] {1, 1e8});
        ranges.put(Kind.MASS_FLOW, new double[] {1e-4, 0.05});
        ranges.put(Kind.VOLUME_FLOW, new double[] {1e-6, 1e-3});
        ranges.put(Kind.DENSITY, new double[] {900, 5000});
        ranges.put(Kind.DYNAMIC_VISCOSITY, new double[] {1e-4, 1e-2});
        ranges.put(Kind.SPECIFIC_ENERGY, new double[] {1e3, 1e6});
        ranges.put(Kind.SPECIFIC_HEAT, new double[] {100, 5000});
        ranges.put(Kind.ENERGY_DENSITY, new double[] {1e8, 1e11});
        ranges.put(Kind.COMPRESSIBILITY, new double[] {1e-11, 1e-8});
        ranges.put(Kind.SURFACE_TENSION, new double[] {1e-3, 0.1});
        ranges.put(Kind.THERMAL_EXPANSION, new double[] {1e-6, 1e-3});
        ranges.put(Kind.RATIO, new double[] {0.01, 10});
        return ranges;
    }

    private static Map<String, Kind<?>> unitNames() {
        Map<String, Kind<?>> names = new LinkedHashMap<>();
        names.put("MPerS2", Kind.ACCELERATION);
        names.put("KgPerM3", Kind.DENSITY);
        names.put("M3PerS", Kind.VOLUME_FLOW);
        names.put("KgPerS", Kind.MASS_FLOW);
        names.put("JPerM3", Kind.ENERGY_DENSITY);
        names.put("MPerS", Kind.SPEED);
        names.put("Pa", Kind.PRESSURE);
        names.put("Rad", Kind.ANGLE);
        names.put("W", Kind.POWER);
        names.put("K", Kind.TEMPERATURE);
        names.put("M", Kind.LENGTH);
        names.put("S", Kind.TIME);
        return names;
    }

    /** Arguments for a call, or nothing if no value of some parameter's type is known. */
    Optional<Surface.Call> call(Executable executable) {
        Object receiver = null;
        if (executable instanceof Method method && !Modifier.isStatic(method.getModifiers())) {
            Optional<Object> found = pool.any(method.getDeclaringClass(), random);
            if (found.isEmpty()) {
                return Optional.empty();
            }
            receiver = found.get();
        }
        Kind<?> kind = receiver == null ? anyKind() : kindOf(receiver).orElseGet(this::anyKind);
        List<Object> arguments = new ArrayList<>();
        for (Parameter parameter : executable.getParameters()) {
            Optional<?> value = value(parameter.getParameterizedType(), parameter.getName(), kind);
            if (value.isEmpty()) {
                return Optional.empty();
            }
            arguments.add(value.get());
        }
        return Optional.of(new Surface.Call(executable, receiver, arguments));
    }

    private static Optional<Kind<?>> kindOf(Object receiver) {
        if (receiver instanceof Kind<?> kind) {
            return Optional.of(kind);
        }
        if (receiver instanceof Estimate<?> estimate) {
            return Optional.of(estimate.kind());
        }
        return receiver instanceof QuantityArray<?> array ? Optional.of(array.kind()) : Optional.empty();
    }

    private Kind<?> anyKind() {
        return Kind.all().get(random.nextInt(Kind.all().size()));
    }

    private Optional<?> value(Type type, String name, Kind<?> bound) {
        if (type instanceof ParameterizedType generic) {
            return generic((Class<?>) generic.getRawType(), generic.getActualTypeArguments(), name, bound);
        }
        return type instanceof Class<?> plain ? plain(plain, name) : Optional.empty();
    }

    private Optional<?> generic(Class<?> raw, Type[] of, String name, Kind<?> bound) {
        if (raw == Optional.class) {
            return Optional.of(random.nextInt(3) == 0 ? Optional.empty() : value(of[0], name, bound));
        }
        if (Collection.class.isAssignableFrom(raw) || raw == List.class) {
            List<Object> parts = new ArrayList<>();
            for (int i = random.nextInt(5); i > 0; i--) {
                value(of[0], name, bound).ifPresent(parts::add);
            }
            return raw.isInstance(parts) ? Optional.of(parts) : Optional.empty();
        }
        if (raw == Map.class) {
            Map<Object, Object> entries = new LinkedHashMap<>();
            for (int i = random.nextInt(6); i > 0; i--) {
                Optional<?> value = value(of[1], name, bound);
                value(of[0], name, bound).ifPresent(key -> value.ifPresent(v -> entries.put(key, v)));
            }
            return Optional.of(entries);
        }
        Kind<?> kind = kindOf(of[0], bound);
        if (raw == Kind.class) {
            return Optional.of(kind);
        }
        if (raw == Quantity.class) {
            return Optional.of(quantity(kind));
        }
        if (raw == Unit.class) {
            return Optional.of(unit(kind));
        }
        if (raw == QuantityArray.class) {
            double[] values = new double[1 + random.nextInt(8)];
            for (int i = 0; i < values.length; i++) {
                values[i] = ordinary(RANGES.get(kind));
            }
            java.util.Arrays.sort(values);
            return Optional.of(QuantityArray.ofSi(kind, values));
        }
        if (raw == Estimate.class) {
            double value = ordinary(RANGES.get(kind));
            return Optional.of(Estimate.of(kind, value, value * 0.1 * random.nextDouble()));
        }
        if (raw == ValidityRange.class) {
            return Optional.of(range(kind));
        }
        return pool.any(raw, random);
    }

    private static <Q extends Quantity<Q>> ValidityRange<Q> range(Kind<Q> kind) {
        double[] range = RANGES.get(kind);
        return ValidityRange.of("sample", kind, kind.of(range[0]), kind.of(range[1]));
    }

    private static Kind<?> kindOf(Type of, Kind<?> bound) {
        for (Kind<?> kind : Kind.all()) {
            if (kind.type() == of) {
                return kind;
            }
        }
        return of instanceof TypeVariable<?> || of instanceof java.lang.reflect.WildcardType ? bound : Kind.RATIO;
    }

    private Optional<?> plain(Class<?> type, String name) {
        if (type == double.class || type == Double.class) {
            return Optional.of(named(name));
        }
        if (type == int.class || type == Integer.class) {
            return Optional.of(
                    random.nextDouble() < hostility ? -random.nextInt(3) : COUNTS[random.nextInt(COUNTS.length)]);
        }
        if (type == long.class) {
            return Optional.of((long) COUNTS[random.nextInt(COUNTS.length)]);
        }
        if (type == boolean.class) {
            return Optional.of(random.nextBoolean());
        }
        if (type == String.class || type == CharSequence.class) {
            return Optional.of(TEXTS.get(random.nextInt(TEXTS.size())));
        }
        if (type.isEnum()) {
            Object[] constants = type.getEnumConstants();
            return Optional.of(constants[random.nextInt(constants.length)]);
        }
        if (type == double[].class) {
            double[] values = new double[1 + random.nextInt(8)];
            for (int i = 0; i < values.length; i++) {
                values[i] = named(name);
            }
            return Optional.of(values);
        }
        if (type == OptionalDouble.class) {
            return Optional.of(random.nextBoolean() ? OptionalDouble.empty() : OptionalDouble.of(named(name)));
        }
        if (type == DoubleUnaryOperator.class) {
            return Optional.of((DoubleUnaryOperator) x -> x / (1 + Math.abs(x)));
        }
        if (type == Object.class) {
            return Optional.of("something else");
        }
        if (type.isArray()) {
            return array(type.getComponentType(), name);
        }
        return pool.any(type, random);
    }

    private Optional<?> array(Class<?> component, String name) {
        if (component.isPrimitive()) {
            return Optional.empty();
        }
        List<Object> parts = new ArrayList<>();
        for (int i = random.nextInt(4); i > 0; i--) {
            plain(component, name).ifPresent(parts::add);
        }
        Object array = java.lang.reflect.Array.newInstance(component, parts.size());
        for (int i = 0; i < parts.size(); i++) {
            java.lang.reflect.Array.set(array, i, parts.get(i));
        }
        return Optional.of(array);
    }

    private double named(String name) {
        for (Map.Entry<String, Kind<?>> entry : UNIT_OF_NAME.entrySet()) {
            if (name.endsWith(entry.getKey())) {
                // a bare number with a unit in its name is the caller's own care: inner loops check nothing
                return ordinary(RANGES.get(entry.getValue()));
            }
        }
        String lower = name.toLowerCase(java.util.Locale.ROOT);
        if (lower.contains("index")) {
            return number(new double[] {1, 5});
        }
        if (lower.contains("coverage") || lower.contains("share") || lower.contains("fraction")) {
            return number(new double[] {0.01, 0.99});
        }
        if (lower.contains("uncertainty")) {
            return number(new double[] {0.001, 0.5});
        }
        return number(new double[] {0.01, 1000});
    }

    /** A quantity in any of the units of its kind. */
    private <Q extends Quantity<Q>> Quantity<Q> quantity(Kind<Q> kind) {
        double si = number(RANGES.get(kind));
        return kind.of(Double.isFinite(si) ? si : -ordinary(RANGES.get(kind)), unit(kind));
    }

    private <Q extends Quantity<Q>> Unit<Q> unit(Kind<Q> kind) {
        if (kind == Kind.RATIO) {
            return kind.siUnit();
        }
        List<String> symbols = dev.waterjet.measure.SymbolsOf.kind(kind);
        return QuantityText.parseUnit(kind, symbols.get(random.nextInt(symbols.size())));
    }

    private double number(double[] range) {
        if (random.nextDouble() >= hostility) {
            return ordinary(range);
        }
        int choice = random.nextInt(HOSTILE.size() + 3);
        if (choice < HOSTILE.size()) {
            return HOSTILE.get(choice);
        }
        double value = ordinary(range);
        return choice == HOSTILE.size() ? -value : choice == HOSTILE.size() + 1 ? value * 1e6 : value * 1e-6;
    }

    private double ordinary(double[] range) {
        return range[0] * Math.pow(range[1] / range[0], random.nextDouble());
    }
}

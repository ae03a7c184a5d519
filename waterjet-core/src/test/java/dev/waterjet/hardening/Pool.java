package dev.waterjet.hardening;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SplittableRandom;

/** Objects of the library that calls have brought forth, to be receivers and arguments of further calls. */
final class Pool {

    private static final int MOST_OF_A_TYPE = 40;

    private final Map<Class<?>, List<Object>> byType = new HashMap<>();

    /** Keeps an object, in the place of another of its type if there are many. */
    void add(Object object, SplittableRandom random) {
        for (Class<?> type : typesOf(object.getClass())) {
            List<Object> known = byType.computeIfAbsent(type, key -> new ArrayList<>());
            if (known.size() < MOST_OF_A_TYPE) {
                known.add(object);
            } else {
                known.set(random.nextInt(MOST_OF_A_TYPE), object);
            }
        }
    }

    /** In a fixed order, so that a walk with one seed is the same walk in every run. */
    private static Set<Class<?>> typesOf(Class<?> type) {
        Set<Class<?>> types = new LinkedHashSet<>();
        collect(type, types);
        return types;
    }

    private static void collect(Class<?> type, Set<Class<?>> into) {
        if (type != null && type.getName().startsWith("dev.waterjet.")) {
            into.add(type);
            for (Class<?> face : type.getInterfaces()) {
                collect(face, into);
            }
            collect(type.getSuperclass(), into);
        }
    }

    /** Any object of a type. */
    Optional<Object> any(Class<?> type, SplittableRandom random) {
        List<Object> known = byType.getOrDefault(type, List.of());
        return known.isEmpty() ? Optional.empty() : Optional.of(known.get(random.nextInt(known.size())));
    }

    /** Whether any object of a type is known. */
    boolean has(Class<?> type) {
        return !byType.getOrDefault(type, List.of()).isEmpty();
    }
}

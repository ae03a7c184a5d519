package dev.waterjet.hardening;

import dev.waterjet.LibraryClasses;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.WaterjetException;
import java.lang.reflect.Constructor;
import java.lang.reflect.Executable;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.lang.reflect.Modifier;
import java.lang.reflect.Parameter;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** Every public method and constructor of the library, to be called at random. */
public final class Surface {

    /** Views and kernels that one package opens for another; their callers keep their rules. */
    private static final Set<String> INNER =
            Set.of("ArcLagKernel", "EdgeCursor", "EdgeTree", "BoxTree", "Walk", "LagKernel", "RoughnessKernel");

    private static final List<Executable> ALL = find();

    private Surface() {}

    /** All callables, in a fixed order. */
    static List<Executable> all() {
        return ALL;
    }

    private static List<Executable> find() {
        List<Executable> found = new ArrayList<>();
        for (Class<?> type : LibraryClasses.all()) {
            if (!Throwable.class.isAssignableFrom(type)
                    && type != Description.class
                    && !INNER.contains(type.getSimpleName())) {
                for (Method method : type.getMethods()) {
                    if (method.getDeclaringClass() == type && !method.isSynthetic() && !isOfEnum(method)) {
                        found.add(method);
                    }
                }
                if (!Modifier.isAbstract(type.getModifiers())) {
                    found.addAll(Arrays.asList(type.getConstructors()));
                }
            }
        }
        found.sort(Comparator.comparing(Executable::toGenericString));
        return found;
    }

    private static boolean isOfEnum(Method method) {
        return method.getDeclaringClass().isEnum()
                && (method.getName().equals("values") || method.getName().equals("valueOf"));
    }

    /** One call, with its receiver and arguments. */
    public record Call(Executable executable, Object receiver, List<Object> arguments) {

        /** The places of arguments that must not be null: objects not marked as nullable. */
        List<Integer> objects() {
            Parameter[] parameters = executable.getParameters();
            List<Integer> places = new ArrayList<>();
            for (int i = 0; i < parameters.length; i++) {
                if (!parameters[i].getType().isPrimitive()
                        && !parameters[i].getAnnotatedType().isAnnotationPresent(Nullable.class)) {
                    places.add(i);
                }
            }
            return places;
        }

        /** The same call with null in one place. */
        Call withNull(int place) {
            List<Object> changed = new ArrayList<>(arguments);
            changed.set(place, null);
            return new Call(executable, receiver, changed);
        }

        Outcome run() {
            try {
                Object[] given = arguments.toArray();
                Object result = executable instanceof Method method
                        ? method.invoke(receiver, given)
                        : ((Constructor<?>) executable).newInstance(given);
                return new Outcome(Optional.ofNullable(result), Optional.empty());
            } catch (InvocationTargetException e) {
                return new Outcome(Optional.empty(), Optional.of(e.getCause()));
            } catch (ReflectiveOperationException e) {
                throw new IllegalStateException(toString(), e);
            }
        }

        @Override
        public String toString() {
            return executable.getDeclaringClass().getSimpleName() + "." + executable.getName() + arguments + " on "
                    + receiver;
        }
    }

    /** Result of a call, or the exception by which it ended. */
    public record Outcome(Optional<Object> result, Optional<Throwable> thrown) {

        /** Whether the library answered, or refused by an exception of its family. */
        boolean isAnswerOrRefusal() {
            return thrown.isEmpty() || thrown.get() instanceof WaterjetException;
        }
    }
}

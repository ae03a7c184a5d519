package dev.waterjet.hardening;

import dev.waterjet.LibraryClasses;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.WaterjetException;
import java.lang.reflect.Constructor;
import java.lang.reflect.Executable;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.lang.reflect.Modifier;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** Every public method and constructor of the library, to be called at random. */
public final class Surface {

    private static final List<Executable> ALL = find();

    private Surface() {}

    /** All callables, in a fixed order. */
    static List<Executable> all() {
        return ALL;
    }

    private static List<Executable> find() {
        List<Executable> found = new ArrayList<>();
        for (Class<?> type : LibraryClasses.all()) {
            if (!Throwable.class.isAssignableFrom(type) && type != Description.class) {
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

    /** What a call came to. */
    public record Outcome(Optional<Object> result, Optional<Throwable> thrown) {

        /** Whether the library answered, or refused in words of its own. */
        boolean isAnswerOrRefusal() {
            return thrown.isEmpty()
                    || thrown.get() instanceof WaterjetException
                    // as java.util.List does
                    || thrown.get() instanceof IndexOutOfBoundsException
                    || ((thrown.get() instanceof IllegalArgumentException
                                    || thrown.get() instanceof IllegalStateException)
                            && isOwn(thrown.get()));
        }

        private static boolean isOwn(Throwable wrong) {
            return wrong.getStackTrace()[0].getClassName().startsWith("dev.waterjet.") && wrong.getMessage() != null;
        }
    }
}

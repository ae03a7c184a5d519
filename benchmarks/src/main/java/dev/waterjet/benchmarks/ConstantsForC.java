package dev.waterjet.benchmarks;

import java.lang.reflect.Array;
import java.lang.reflect.Field;
import java.lang.reflect.Modifier;
import java.util.StringJoiner;

/**
 * Prints the constants of the equation of state as a header of C, so that the yardstick in C computes with the very
 * numbers of the library. Doubles are printed in hexadecimal: nothing is rounded.
 */
public final class ConstantsForC {

    private static final String[] CLASSES = {
        "Iapws95Constants", "Iapws95Kernel", "Iapws95TermsKernel", "Iapws95CriticalKernel"
    };

    private ConstantsForC() {}

    /**
     * Prints the header.
     *
     * @param args none
     * @throws ReflectiveOperationException if a class of the library has moved
     */
    public static void main(String... args) throws ReflectiveOperationException {
        System.out.println(
                "/* Printed by dev.waterjet.benchmarks.ConstantsForC from the classes of dev.waterjet.water. */");
        for (String name : CLASSES) {
            System.out.println("\n/* " + name + " */");
            for (Field field : Class.forName("dev.waterjet.water." + name).getDeclaredFields()) {
                if (Modifier.isStatic(field.getModifiers()) && Modifier.isFinal(field.getModifiers())) {
                    field.setAccessible(true);
                    System.out.println(line(field.getName(), field.get(null)));
                }
            }
        }
    }

    private static String line(String name, Object value) {
        if (!value.getClass().isArray()) {
            return "#define " + name + " " + number(value);
        }
        StringJoiner numbers = new StringJoiner(", ", "{", "}");
        for (int i = 0; i < Array.getLength(value); i++) {
            numbers.add(number(Array.get(value, i)));
        }
        return "static const " + value.getClass().getComponentType() + " " + name + "[] = " + numbers + ";";
    }

    private static String number(Object value) {
        return value instanceof Double d ? "(" + Double.toHexString(d) + ")" : String.valueOf(value);
    }
}

package dev.waterjet.embedding;

import static org.assertj.core.api.Assertions.assertThat;

import dev.waterjet.LibraryClasses;
import dev.waterjet.measure.Kind;
import java.io.IOException;
import java.io.InputStream;
import java.lang.reflect.Constructor;
import java.lang.reflect.Field;
import java.lang.reflect.Member;
import java.lang.reflect.Method;
import java.lang.reflect.Modifier;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/**
 * Nothing that callers were promised may vanish or change. The promise is the list {@code api/baseline.txt}: every public
 * or protected member of every exported package, as {@code toGenericString} writes it. What is new joins it at a release,
 * by copying {@code target/api.txt} over it.
 */
class ApiBaselineTest {

    @Test
    void promisesAreKept() throws IOException {
        Set<String> now = listing();
        Files.write(Path.of("target", "api.txt"), now);

        Set<String> missing = new TreeSet<>(baseline());
        missing.removeAll(now);
        assertThat(missing)
                .as("members of the baseline that are gone or changed")
                .isEmpty();
    }

    @Test
    void theListingSeesEveryMember() {
        assertThat(listing())
                .contains(
                        "public static <Q extends javax.measure.Quantity<Q>> dev.waterjet.evidence.Estimate<Q>"
                                + " dev.waterjet.evidence.Estimate.of(dev.waterjet.measure.Kind<Q>,double,double)",
                        "public static final dev.waterjet.measure.Kind<javax.measure.quantity.Length>"
                                + " dev.waterjet.measure.Kind.LENGTH",
                        "public abstract interface dev.waterjet.evidence.HasEvidence")
                // one kernel is public until the cost of a cut asks the solver of feeds instead
                .noneMatch(line -> line.contains("Kernel") && !line.contains("dev.waterjet.feed.InverseKernel"));
    }

    private static Set<String> baseline() throws IOException {
        try (InputStream stream = ApiBaselineTest.class.getResourceAsStream("/api/baseline.txt")) {
            return new String(stream.readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .collect(Collectors.toCollection(TreeSet::new));
        }
    }

    private static Set<String> listing() {
        Set<String> exported = Kind.class.getModule().isNamed()
                ? Kind.class.getModule().getPackages().stream()
                        .filter(Kind.class.getModule()::isExported)
                        .collect(Collectors.toSet())
                : Set.of();
        Set<String> lines = new TreeSet<>();
        for (Class<?> type : LibraryClasses.all()) {
            if (exported.isEmpty() || exported.contains(type.getPackageName())) {
                list(type, lines);
            }
        }
        return lines;
    }

    private static void list(Class<?> type, Set<String> into) {
        into.add(type.toGenericString());
        for (Class<?> face : type.getInterfaces()) {
            into.add(type.getName() + " implements " + face.getName());
        }
        for (Field field : type.getDeclaredFields()) {
            add(field, field.toGenericString(), into);
        }
        for (Method method : type.getDeclaredMethods()) {
            add(method, method.toGenericString(), into);
        }
        for (Constructor<?> constructor : type.getDeclaredConstructors()) {
            add(constructor, constructor.toGenericString(), into);
        }
    }

    private static void add(Member member, String line, Set<String> into) {
        boolean isOpen = Modifier.isPublic(member.getModifiers()) || Modifier.isProtected(member.getModifiers());
        if (isOpen && !member.isSynthetic()) {
            into.add(line);
        }
    }
}

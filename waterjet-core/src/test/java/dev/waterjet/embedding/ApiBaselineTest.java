package dev.waterjet.embedding;

import static org.assertj.core.api.Assertions.assertThat;

import dev.waterjet.LibraryClasses;
import dev.waterjet.measure.Experimental;
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
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/**
 * Nothing that callers were promised may vanish or change. The promise is the list {@code api/baseline.txt}: every public
 * or protected member of every exported package, as {@code toGenericString} writes it. A line that begins with
 * "experimental" belongs to an {@link Experimental} type or package, or names one. The test writes the list of today to
 * {@code target/api.txt}; {@code .ci/release} copies it over the baseline, so that what is new joins it at a release.
 */
class ApiBaselineTest {

    private static final String EXPERIMENTAL = "experimental ";

    @Test
    void promisesAreKept() throws IOException {
        Set<String> now = listing();
        Files.write(Path.of("target", "api.txt"), now);

        assertThat(baseline())
                .filteredOn(line -> !line.startsWith(EXPERIMENTAL))
                .as("stable members that are gone or changed: a new major version, or a new y of 0.y.z")
                .isSubsetOf(now);
    }

    @Test
    void changesOfExperimentalMembersAreSeen() throws IOException {
        Set<String> now = listing();
        assertThat(baseline())
                .filteredOn(line -> line.startsWith(EXPERIMENTAL))
                .filteredOn(line -> !now.contains(line.substring(EXPERIMENTAL.length())))
                .as("experimental members that are gone or changed: state it in the changelog, take them off the list")
                .isSubsetOf(now);
    }

    @Test
    void theListingSeesEveryMember() {
        assertThat(listing())
                .contains(
                        "public static <Q extends javax.measure.Quantity<Q>> dev.waterjet.evidence.Estimate<Q>"
                                + " dev.waterjet.evidence.Estimate.of(dev.waterjet.measure.Kind<Q>,double,double)",
                        "public static final dev.waterjet.measure.Kind<javax.measure.quantity.Length>"
                                + " dev.waterjet.measure.Kind.LENGTH",
                        "public abstract interface dev.waterjet.evidence.HasEvidence",
                        "experimental public final class dev.waterjet.jet.MixingModel",
                        "experimental public double dev.waterjet.circuit.ValveEvent.opening()",
                        "experimental public dev.waterjet.plan.Setup"
                                + " dev.waterjet.plan.Setup.withTiltingHead(dev.waterjet.motion.TiltingHead)")
                .noneMatch(line -> line.contains("Kernel"));
    }

    private static Set<String> baseline() throws IOException {
        try (InputStream stream = ApiBaselineTest.class.getResourceAsStream("/api/baseline.txt")) {
            return new String(stream.readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .collect(Collectors.toCollection(TreeSet::new));
        }
    }

    private static Set<String> listing() {
        Set<String> lines = new TreeSet<>();
        Set<String> experimental = new TreeSet<>();
        for (Class<?> type : LibraryClasses.all()) {
            list(type, lines);
            if (isExperimental(type)) {
                experimental.add(type.getName());
            }
        }
        Pattern names = Pattern.compile("(?<![\\w.$])(?:"
                + experimental.stream().map(Pattern::quote).collect(Collectors.joining("|")) + ")(?![\\w])");
        return lines.stream()
                .map(line -> names.matcher(line).find() ? EXPERIMENTAL + line : line)
                .collect(Collectors.toCollection(TreeSet::new));
    }

    private static boolean isExperimental(Class<?> type) {
        return type.isAnnotationPresent(Experimental.class)
                || type.getPackage().isAnnotationPresent(Experimental.class)
                || (type.getEnclosingClass() != null && isExperimental(type.getEnclosingClass()));
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

package dev.waterjet.embedding;

import static com.tngtech.archunit.core.domain.JavaCall.Predicates.target;
import static com.tngtech.archunit.core.domain.properties.HasName.Predicates.nameMatching;
import static com.tngtech.archunit.core.domain.properties.HasOwner.Predicates.With.owner;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.fields;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.methods;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noFields;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaModifier;
import com.tngtech.archunit.core.importer.ImportOption.DoNotIncludeTests;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;
import java.io.Serializable;
import java.util.TreeSet;
import org.jspecify.annotations.NullMarked;

/** A library lives in another's program: what it may not touch there. */
@AnalyzeClasses(packages = "dev.waterjet", importOptions = DoNotIncludeTests.class)
class GoodGuestTest {

    @ArchTest
    static final ArchRule REACHES_NOTHING_OUTSIDE = noClasses()
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage(
                    "java.net..",
                    "java.nio.file..",
                    "java.nio.channels..",
                    "java.util.logging..",
                    "java.util.prefs..",
                    "java.lang.reflect..",
                    "java.lang.management..",
                    "sun..")
            .orShould()
            .dependOnClassesThat()
            .haveNameMatching("java\\.io\\.(File.*|RandomAccessFile|Console|Print.*)")
            .orShould()
            .dependOnClassesThat()
            .haveNameMatching("java\\.lang\\.System\\$Logger.*|java\\.util\\.ServiceLoader.*");

    /** Only the Monte Carlo studies work in threads, which end before the call does. */
    @ArchTest
    static final ArchRule STARTS_AND_STOPS_NOTHING = noClasses()
            .that()
            .resideOutsideOfPackage("dev.waterjet.uncertainty..")
            .should()
            .dependOnClassesThat()
            .haveNameMatching("java\\.lang\\.(Thread|ThreadGroup|ThreadLocal|Process.*|Runtime)")
            .orShould()
            .dependOnClassesThat()
            .haveNameMatching(
                    "java\\.util\\.(Timer.*|concurrent\\.(Executor.*|ForkJoin.*|Completable.*|ThreadFactory))")
            .orShould()
            .callMethodWhere(calls("java\\.lang\\.System", "exit|gc|setProperty|clearProperty|load|loadLibrary"));

    @ArchTest
    static final ArchRule ANSWERS_THE_SAME_ANYWHERE = noClasses()
            .should()
            .callMethodWhere(calls(
                    "java\\.lang\\.System",
                    "getProperty|getProperties|getenv|currentTimeMillis|nanoTime|lineSeparator"))
            .orShould()
            .callMethodWhere(calls("java\\.util\\.(Locale|TimeZone)", "getDefault|setDefault"))
            .orShould()
            .callMethodWhere(calls("java\\.nio\\.charset\\.Charset", "defaultCharset"))
            .orShould()
            .callMethodWhere(calls("java\\.lang\\.Math", "random"))
            .orShould()
            .callMethodWhere(calls("java\\.time\\..*", "now"))
            .orShould()
            .callMethod(String.class, "toLowerCase")
            .orShould()
            .callMethod(String.class, "toUpperCase")
            .orShould()
            .callMethod(String.class, "formatted", Object[].class)
            .orShould()
            .callMethod(String.class, "format", String.class, Object[].class)
            .orShould()
            .callMethod(String.class, "getBytes")
            .orShould()
            .callConstructor(java.util.Random.class)
            .orShould()
            .callConstructor(java.io.InputStreamReader.class, java.io.InputStream.class);

    @ArchTest
    static final ArchRule LOOKS_UP_NO_CLASSES = noClasses()
            .should()
            .callMethodWhere(calls(
                    "java\\.lang\\.Class",
                    "forName|newInstance|getDeclared.*|getField.*|getMethod.*|getConstructor.*|getClassLoader"));

    @ArchTest
    static final ArchRule NO_STATIC_INVITES_WRITING = noFields()
            .that()
            .areStatic()
            .and()
            .areNotPrivate()
            .and()
            .haveNameNotStartingWith("$")
            .should()
            .haveRawType(isArray())
            .orShould()
            .haveRawType(nameMatching("java\\.util\\.concurrent\\..*|java\\.util\\..*(Map|Set|Buffer|Builder)")
                    .as("a collection that can change"));

    @ArchTest
    static final ArchRule VALUES_NEVER_CHANGE = fields().that()
            .areDeclaredInClassesThat()
            .areAssignableTo(Serializable.class)
            .and()
            .areDeclaredInClassesThat()
            .arePublic()
            .should()
            .beFinal();

    /** The hard keywords of Kotlin, by its grammar, which a caller there could write only between back-ticks. */
    @ArchTest
    static final ArchRule NO_NAME_IS_A_WORD_OF_KOTLIN = methods()
            .that()
            .areDeclaredInClassesThat()
            .arePublic()
            .and()
            .arePublic()
            .should()
            .haveNameNotMatching("as|fun|in|is|object|typealias|typeof|val|var|when");

    @ArchTest
    static final ArchRule PUBLIC_CLASSES_ARE_CLOSED = classes()
            .that()
            .arePublic()
            .and()
            .areNotInterfaces()
            .and()
            .areNotEnums()
            .and()
            .doNotHaveModifier(JavaModifier.ABSTRACT)
            .and()
            .areNotAssignableTo(Throwable.class)
            .should()
            .haveModifier(JavaModifier.FINAL);

    @ArchTest
    static void everyPackageIsMarkedForNullness(JavaClasses all) {
        TreeSet<String> packages = new TreeSet<>();
        TreeSet<String> marked = new TreeSet<>();
        for (JavaClass type : all) {
            packages.add(type.getPackageName());
            if (type.getSimpleName().equals("package-info") && type.isAnnotatedWith(NullMarked.class)) {
                marked.add(type.getPackageName());
            }
        }
        packages.remove("");

        assertThat(marked).isEqualTo(packages).contains("dev.waterjet.measure");
    }

    private static DescribedPredicate<com.tngtech.archunit.core.domain.JavaCall<?>> calls(String owner, String method) {
        return target(owner(nameMatching(owner)))
                .and(target(nameMatching(method)))
                .as(owner + "." + method);
    }

    private static DescribedPredicate<JavaClass> isArray() {
        return DescribedPredicate.describe("an array", JavaClass::isArray);
    }
}

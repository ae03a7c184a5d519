package dev.waterjet;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.fields;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.importer.ImportOption.DoNotIncludeTests;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;
import dev.waterjet.measure.WaterjetException;
import java.util.List;

@AnalyzeClasses(packages = "dev.waterjet", importOptions = DoNotIncludeTests.class)
class ArchitectureTest {

    /** Each package may use only those before it. */
    private static final List<String> ORDER = List.of(
            "measure",
            "evidence",
            "fit",
            "uncertainty",
            "water",
            "vessel",
            "hydraulics",
            "circuit",
            "jet",
            "material",
            "quality",
            "part",
            "placement",
            "program",
            "feed",
            "kerf",
            "surface",
            "pierce",
            "calibrate",
            "toolpath",
            "sheet",
            "motion",
            "cost",
            "head",
            "simulate",
            "plan");

    @ArchTest
    static void everyPackageIsListed(com.tngtech.archunit.core.domain.JavaClasses all) {
        assertThat(all.stream()
                        .map(JavaClass::getPackageName)
                        .filter(name -> name.startsWith("dev.waterjet."))
                        .map(name -> name.substring("dev.waterjet.".length())))
                .isNotEmpty()
                .allMatch(ORDER::contains);
    }

    @ArchTest
    static void packagesUseOnlyThoseAboveThem(com.tngtech.archunit.core.domain.JavaClasses all) {
        for (int i = 0; i < ORDER.size() - 1; i++) {
            String[] below = ORDER.subList(i + 1, ORDER.size()).stream()
                    .map(name -> "dev.waterjet." + name + "..")
                    .toArray(String[]::new);
            noClasses()
                    .that()
                    .resideInAPackage("dev.waterjet." + ORDER.get(i) + "..")
                    .should()
                    .dependOnClassesThat()
                    .resideInAnyPackage(below)
                    .allowEmptyShould(true)
                    .check(all);
        }
    }

    @ArchTest
    static final ArchRule KERNELS_KNOW_NO_UNITS = noClasses()
            .that()
            .haveSimpleNameEndingWith("Kernel")
            .should()
            .dependOnClassesThat()
            .resideInAPackage("javax.measure..")
            .allowEmptyShould(true);

    @ArchTest
    static final ArchRule STATICS_ARE_FINAL =
            fields().that().areStatic().and().doNotHaveName("$VALUES").should().beFinal();

    @ArchTest
    static final ArchRule NOTHING_PRINTS_OR_TOUCHES_FILES = noClasses()
            .should()
            .accessField(System.class, "out")
            .orShould()
            .accessField(System.class, "err")
            .orShould()
            .dependOnClassesThat()
            .resideInAnyPackage("java.nio.file..", "java.util.logging..", "java.lang.reflect..")
            .orShould()
            .dependOnClassesThat()
            .haveFullyQualifiedName("java.io.File");

    @ArchTest
    static final ArchRule EXCEPTIONS_ARE_OF_ONE_FAMILY =
            classes().that().areAssignableTo(Throwable.class).should().beAssignableTo(WaterjetException.class);
}

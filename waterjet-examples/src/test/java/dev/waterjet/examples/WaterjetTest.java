package dev.waterjet.examples;

import static org.assertj.core.api.Assertions.assertThat;

import dev.waterjet.material.Materials;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import picocli.CommandLine;

class WaterjetTest {

    static String[] programs() {
        return Waterjet.PROGRAMS.stream()
                .map(type -> type.getAnnotation(CommandLine.Command.class).name())
                .toArray(String[]::new);
    }

    @Test
    void listsTheProgramsWithoutArguments() {
        Ran ran = Ran.of();
        assertThat(ran.status()).isZero();
        assertThat(ran.out()).contains(programs()).contains("380 MPa").contains("manual");
    }

    @Test
    void printsItsVersion() {
        Ran ran = Ran.of("--version");
        assertThat(ran.status()).isZero();
        // a version is in the manifest of the jar, which is packed after the tests
        assertThat(ran.out().strip()).matches("waterjet (\\d+\\.\\d+\\.\\d+(-SNAPSHOT)?|without a version: .*)");
        assertThat(ran.err()).isEmpty();
    }

    @ParameterizedTest
    @MethodSource("programs")
    void everyProgramHasHelpAndCsv(String program) {
        Ran ran = Ran.of(program, "--help");
        assertThat(ran.status()).isZero();
        assertThat(ran.out()).contains("Usage: waterjet " + program).contains("--csv");
        assertThat(ran.err()).isEmpty();
    }

    @ParameterizedTest
    @MethodSource("programs")
    void everyProgramRefusesAnUnknownOptionInOneLine(String program) {
        Ran ran = Ran.of(program, "--no-such-option");
        assertThat(ran.status()).isEqualTo(2);
        assertThat(ran.out()).isEmpty();
        assertThat(ran.err().strip().lines()).hasSize(1);
        assertThat(ran.err())
                .startsWith("waterjet " + program + ": ")
                .containsAnyOf("--no-such-option", "Missing required parameter");
    }

    @Test
    void everyProgramIsListedWithAWholeSentence() {
        for (Class<?> program : Waterjet.PROGRAMS) {
            CommandLine.Command command = program.getAnnotation(CommandLine.Command.class);
            assertThat(command.description()[0]).as(command.name()).matches("[A-Z].*[.:]");
        }
    }

    @Test
    void refusesANegativeCountOfHeads() {
        Ran ran = Ran.of("heads", "--limit", "-3");
        assertThat(ran.status()).isEqualTo(2);
        assertThat(ran.out()).isEmpty();
        assertThat(ran.err().strip().lines()).hasSize(1);
    }

    @Test
    void refusesAnUnknownProgramInOneLine() {
        Ran ran = Ran.of("knit");
        assertThat(ran.status()).isEqualTo(2);
        assertThat(ran.err()).startsWith("waterjet: ").contains("knit");
        assertThat(ran.err().strip().lines()).hasSize(1);
    }

    @Test
    void listsEveryMaterialInAnyLocale() {
        Locale before = Locale.getDefault();
        try {
            Locale.setDefault(Locale.GERMANY);
            Ran ran = Ran.of("materials", "--csv");
            assertThat(ran.rows()).hasSameSizeAs(Materials.standard().all());
            assertThat(ran.out()).contains("81.9").doesNotContain("81,9");
            assertThat(ran.rows().get(0).toMap())
                    .containsKeys("material", "name", "machinability", "relative_uncertainty", "evidence");
        } finally {
            Locale.setDefault(before);
        }
    }
}

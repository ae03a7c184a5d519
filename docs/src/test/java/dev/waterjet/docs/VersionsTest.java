package dev.waterjet.docs;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Texts that state the version of the library state that of its POM. */
class VersionsTest {

    private static final Pattern OF_POM =
            Pattern.compile("<artifactId>waterjet</artifactId>\\s*<version>([^<]+)</version>");

    private static String version() throws IOException {
        return OF_POM.matcher(Files.readString(Page.ROOT.resolve("pom.xml")))
                .results()
                .map(found -> found.group(1))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void theCitationHasTheVersionOfThePom() throws IOException {
        assertThat(Files.readAllLines(Page.ROOT.resolve("CITATION.cff"))).contains("version: " + version());
    }

    @ParameterizedTest
    @ValueSource(strings = {"README.md", "docs/calling.md"})
    void dependenciesHaveTheVersionOfThePom(String page) throws IOException {
        List<String> stated = Pattern.compile("<artifactId>waterjet-core</artifactId>\\s*<version>([^<]+)</version>")
                .matcher(Files.readString(Page.ROOT.resolve(page)))
                .results()
                .map((MatchResult found) -> found.group(1))
                .toList();
        assertThat(stated).isNotEmpty().containsOnly(version());
    }
}

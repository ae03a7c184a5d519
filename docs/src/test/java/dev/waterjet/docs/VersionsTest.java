package dev.waterjet.docs;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Texts that name the library as a dependency state the version that the POM installs; the citation states the newest release. */
class VersionsTest {

    private static final Pattern OF_POM =
            Pattern.compile("<artifactId>waterjet</artifactId>\\s*<version>([^<]+)</version>");

    private static final Pattern OF_CHANGES = Pattern.compile("(?m)^## (\\d+\\.\\d+\\.\\d+) - \\d{4}-\\d{2}-\\d{2}$");

    private static Optional<String> first(Pattern pattern, Path file) throws IOException {
        return pattern.matcher(Files.readString(file))
                .results()
                .map(found -> found.group(1))
                .findFirst();
    }

    private static String ofPom() throws IOException {
        return first(OF_POM, Page.ROOT.resolve("pom.xml")).orElseThrow();
    }

    private static Optional<String> released() throws IOException {
        return first(OF_CHANGES, Page.ROOT.resolve("CHANGELOG.md"));
    }

    @Test
    void aReleaseIsTheNewestOfTheChangelog() throws IOException {
        if (!ofPom().endsWith("-SNAPSHOT")) {
            assertThat(released()).contains(ofPom());
        }
        assertThat(Files.readAllLines(Page.ROOT.resolve("CHANGELOG.md")).contains("## Unreleased"))
                .isEqualTo(ofPom().endsWith("-SNAPSHOT"));
    }

    @Test
    void everyPomHasTheVersionOfTheRoot() throws IOException {
        try (Stream<Path> files = Files.walk(Page.ROOT, 3)) {
            List<Path> poms = files.filter(file -> file.endsWith("pom.xml"))
                    .filter(file -> !file.equals(Page.ROOT.resolve("pom.xml")))
                    .toList();
            assertThat(poms).hasSizeGreaterThan(4);
            for (Path pom : poms) {
                assertThat(first(OF_POM, pom)).as(pom.toString()).contains(ofPom());
            }
        }
    }

    @Test
    void theCitationHasTheNewestRelease() throws IOException {
        assertThat(Files.readAllLines(Page.ROOT.resolve("CITATION.cff")))
                .contains("version: " + released().orElse(ofPom()));
    }

    @ParameterizedTest
    @ValueSource(strings = {"README.md", "docs/calling.md"})
    void dependenciesHaveTheVersion(String page) throws IOException {
        List<String> versions = Pattern.compile("<artifactId>waterjet-core</artifactId>\\s*<version>([^<]+)</version>")
                .matcher(Files.readString(Page.ROOT.resolve(page)))
                .results()
                .map(found -> found.group(1))
                .toList();
        assertThat(versions).isNotEmpty().containsOnly(ofPom());
    }
}

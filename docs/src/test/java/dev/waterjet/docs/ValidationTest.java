package dev.waterjet.docs;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

class ValidationTest {

    private static final Path CORE = Path.of("../waterjet-core/src");

    private static final Pattern TYPE = Pattern.compile(
            "(?m)^public (?:(?:final|abstract|sealed|non-sealed) )*(?:class|interface|enum|record) (\\w+)[^{]*\\{");

    /** An interface, its forwarding implementation, and results of fits and searches. */
    private static final Set<String> WITHOUT_PHYSICS =
            Set.of("FeedModel", "ForwardingFeed", "FittedModel", "CalibratedFeed", "HasEvidence");

    @Test
    void thePageShowsWhatTheLibraryComputesNow() throws IOException {
        assertThat(Files.readString(Path.of("validation.md")))
                .as("docs/validation.md is stale; run .ci/regenerate")
                .isEqualTo(Validation.page());
    }

    /** Models are known by their evidence, or by their names. */
    @Test
    void everyModelNamesItsLastComparison() throws IOException {
        Set<String> named = new TreeSet<>();
        Comparisons.all().forEach(one -> named.addAll(one.types()));
        Set<String> models = new TreeSet<>();
        Set<String> all = new TreeSet<>();
        try (Stream<Path> files = Files.walk(CORE.resolve("main/java"))) {
            for (Path file :
                    files.filter(file -> file.toString().endsWith(".java")).toList()) {
                Matcher type = TYPE.matcher(Files.readString(file));
                if (type.find()) {
                    all.add(type.group(1));
                    if (type.group().matches("(?s).*(HasEvidence|FeedModel)\\b.*\\{")
                            || type.group(1).matches("\\w+(Model|Efficiency|Correlation|Mixing)")) {
                        models.add(type.group(1));
                    }
                }
            }
        }
        models.removeAll(WITHOUT_PHYSICS);
        assertThat(models).hasSizeGreaterThan(15);
        assertThat(named)
                .as("models in compared.csv, the table of their last comparisons")
                .containsAll(models);
        assertThat(all).containsAll(named);
    }

    @Test
    void everyComparisonIsFound() throws IOException {
        Set<String> tests;
        try (Stream<Path> files = Files.walk(CORE.resolve("test/java"))) {
            tests = files.map(file -> file.getFileName().toString()).collect(Collectors.toSet());
        }
        for (Comparisons.Comparison one : Comparisons.all()) {
            assertThat(Comparisons.KINDS).contains(one.kind());
            assertThat(one.where().isEmpty())
                    .as(one.toString())
                    .isEqualTo(one.kind().equals("nothing from outside"));
            if (one.where().endsWith(".csv")) {
                assertThat(CORE.resolve("test/resources/reference").resolve(one.where()))
                        .exists();
            } else if (!one.where().isEmpty()) {
                assertThat(tests).contains(one.where() + ".java");
            }
        }
    }

    @Test
    void everyRowIsShown() {
        String page = Validation.page();

        Validation.checked()
                .forEach(one -> assertThat(page).contains("| " + one.row().id().replace("_", "\\_") + " |"));
    }
}

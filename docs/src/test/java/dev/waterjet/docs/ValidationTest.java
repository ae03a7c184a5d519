package dev.waterjet.docs;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;

class ValidationTest {

    @Test
    void thePageShowsWhatTheLibraryComputesNow() throws IOException {
        assertThat(Files.readString(Path.of("validation.md")))
                .as("docs/validation.md is stale; run .ci/regenerate")
                .isEqualTo(Validation.page());
    }

    @Test
    void everyRowIsShown() {
        String page = Validation.page();

        Validation.checked()
                .forEach(one -> assertThat(page).contains("| " + one.row().id().replace("_", "\\_") + " |"));
    }
}

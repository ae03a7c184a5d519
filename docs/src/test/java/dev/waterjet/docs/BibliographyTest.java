package dev.waterjet.docs;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.util.List;
import org.junit.jupiter.api.Test;

class BibliographyTest {

    @Test
    void thePageListsWhatTheLibraryCitesNow() throws IOException {
        assertThat(Files.readString(Page.ROOT.resolve("docs/bibliography.md")))
                .as("docs/bibliography.md is stale; run dev.waterjet.docs.Bibliography")
                .isEqualTo(Bibliography.page(Page.ROOT));
    }

    @Test
    void everyCitationOfEvidenceIsListed() throws IOException {
        List<Bibliography.Work> works = Bibliography.works();
        List<String> citations = Bibliography.citations(Page.ROOT);
        assertThat(citations).hasSizeGreaterThan(40);
        assertThat(citations.stream()
                        .filter(text -> works.stream()
                                .noneMatch(work -> work.match().matcher(text).find())))
                .isEmpty();
    }

    @Test
    void noWorkIsListedThatNothingCites() throws IOException {
        var texts = Bibliography.citing(Page.ROOT).values();
        for (Bibliography.Work work : Bibliography.works()) {
            boolean isInGuide = Page.all().stream()
                    .filter(page -> !page.file().endsWith("bibliography.md"))
                    .anyMatch(page -> work.match().matcher(page.text()).find());
            assertThat(isInGuide
                            || texts.stream()
                                    .anyMatch(text -> work.match().matcher(text).find()))
                    .as(work.key())
                    .isTrue();
        }
    }
}

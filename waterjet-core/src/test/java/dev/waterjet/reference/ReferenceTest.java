package dev.waterjet.reference;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class ReferenceTest {

    static List<ReferenceCase> cases() {
        return ReferenceSuite.cases();
    }

    @ParameterizedTest
    @MethodSource("cases")
    void answersAsTheSourceSays(ReferenceCase row) {
        Computed computed = ReferenceSuite.compute(row);

        assertThat(Math.abs(computed.si() - row.expectedSi(computed.kind())))
                .as(
                        "%s: computed %s, expected %s within %s (%s)",
                        row.id(),
                        row.text(computed.kind(), computed.si(), 12),
                        row.expected(),
                        row.tolerance(),
                        row.source())
                .isLessThanOrEqualTo(row.toleranceSi(computed.kind()));
    }

    @Test
    void everyRowIsUniqueAndSourced() {
        Set<String> ids = new HashSet<>();
        for (ReferenceCase row : ReferenceSuite.cases()) {
            assertThat(ids.add(row.id())).as("%s stands once", row.id()).isTrue();
            assertThat(row.source()).as("source of %s", row.id()).isNotBlank();
        }
    }

    @Test
    void everySubjectIsAskedFor() {
        Set<String> asked = new HashSet<>();
        ReferenceSuite.cases().forEach(row -> asked.add(row.subject()));

        assertThat(asked).isEqualTo(ReferenceSuite.subjects().keySet());
    }
}

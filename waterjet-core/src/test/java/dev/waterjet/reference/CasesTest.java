package dev.waterjet.reference;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The program that runs files of cases agrees with the tests of the rows. */
class CasesTest {

    private static final Path FOLDER = Path.of("src/test/resources/reference");

    @ParameterizedTest
    @ValueSource(
            strings = {
                "feed.csv",
                "kerf.csv",
                "motion/conditioning.csv",
                "motion/offset.csv",
                "virtual-cut/virtual-cut.csv"
            })
    void everyRowOfTheSuiteIsCoveredAndPasses(String file) {
        List<CaseRow> rows = Cases.read(FOLDER.resolve(file));

        assertThat(rows).isNotEmpty();
        assertThat(rows).allSatisfy(row -> assertThat(Cases.line(row)).endsWith("true"));
    }

    /** The promise of the guide to the suite: 800 rows, 600 of them about neither water nor ISO 9013. */
    @Test
    void theSuiteIsAsLargeAsItsGuideSays() {
        List<ReferenceCase> rows = ReferenceSuite.cases();
        long elsewhere = rows.stream()
                .filter(row -> !row.file().equals("water") && !row.subject().startsWith("iso9013"))
                .count();

        assertThat(rows).hasSizeGreaterThanOrEqualTo(800);
        assertThat(elsewhere).isGreaterThanOrEqualTo(600);
    }

    @Test
    void aRowThatNoPackageComputesIsNotCovered() {
        CaseRow row = new CaseRow(
                CaseKind.STATISTICS,
                Map.of("dataset", "a.csv", "quantity", "mean", "value", "1", "relative_tolerance", "1e-9"));

        assertThat(Cases.line(row)).containsExactly("a.csv: mean", "1", "", "1e-9", "not covered");
    }

    @Test
    void aRowThatIsRefusedHasNotPassed() {
        CaseRow row = new CaseRow(
                CaseKind.PATH,
                Map.of("id", "x", "group", "acc", "path", "Q", "limits", "", "expected", "1", "tolerance_rel", "1"));

        assertThat(Cases.line(row)).endsWith("false");
    }

    @Test
    void aWrongValueHasNotPassed() {
        CaseRow row = new CaseRow(
                CaseKind.VIRTUAL_CUT,
                Map.of(
                        "setting",
                        "M",
                        "parameters_SI",
                        "k=1 A=2.5e-5 h=0.015 d=0.00076 S=0.002 u1=0.0005 u2=0.00015",
                        "quantity",
                        "H",
                        "argument",
                        "u1",
                        "value",
                        "0.051",
                        "unit",
                        "m",
                        "relative_tolerance",
                        "1e-9"));

        assertThat(Cases.line(row)).endsWith("false");
    }
}

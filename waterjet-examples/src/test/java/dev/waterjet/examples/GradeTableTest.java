package dev.waterjet.examples;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class GradeTableTest {

    /** ISO 9013:2017: u = 0.05 + 0.003 a, 0.15 + 0.007 a, ..., 1.2 + 0.035 a; Rz5 = 10 + 0.6 a, ..., 110 + 1.8 a. */
    @ParameterizedTest
    @CsvSource({
        "10 mm, 0.08 mm, 1, 16 um, 1",
        "10 mm, 0.08000000000000002 mm, 2, 16.000000000000004 um, 2",
        "12.7 mm, 0.2389 mm, 2, 50.16 um, 2",
        "40 mm, 2.6 mm, 5, 182 um, 4",
        "40 mm, 2.61 mm, '', 182.1 um, ''",
    })
    void limitsOfTheStandard(String thickness, String u, String uRange, String height, String heightRange) {
        Ran ran =
                Ran.of("grade", "--csv", "--thickness", thickness, "--perpendicularity", u, "--profile-height", height);
        CSVRecord row = ran.rows().get(0);

        assertThat(ran.out().lines().findFirst())
                .contains(
                        "thickness_m,perpendicularity_m,profile_height_m,perpendicularity_range,profile_height_range");
        assertThat(row.get("perpendicularity_range")).isEqualTo(uRange);
        assertThat(row.get("profile_height_range")).isEqualTo(heightRange);
    }

    @Test
    void cellsOfMissingInputsAreEmpty() {
        CSVRecord row = Ran.of("grade", "--csv", "--thickness", "10 mm", "--profile-height", "30 um")
                .rows()
                .get(0);

        assertThat(row.get("perpendicularity_m")).isEmpty();
        assertThat(row.get("perpendicularity_range")).isEmpty();
        assertThat(row.get("profile_height_range")).isEqualTo("2");
    }

    @Test
    void predictsACutSurfaceAndStatesThatTheStandardAppliesByAgreement() {
        Ran ran = Ran.of("grade", "--material", "mild-steel", "--thickness", "12 mm", "--feed", "100 mm/min");

        assertThat(ran.out()).contains("medium").contains("by agreement").contains("Probability of each cut quality");
    }

    @Test
    void printsTheGoverningRequirement() {
        Ran ran = Ran.of(
                "grade",
                "--csv",
                "--material",
                "mild-steel",
                "--thickness",
                "12 mm",
                "--taper",
                "0.1 deg",
                "--quality",
                "coarse");

        assertThat(ran.rows()).hasSize(2);
        assertThat(ran.rows().stream().filter(row -> row.get("governs").equals("yes")))
                .singleElement()
                .satisfies(row -> assertThat(row.get("requirement")).isEqualTo("taper per side"));
        assertThat(Ran.of("grade", "--material", "mild-steel", "--roughness", "1 um")
                        .out())
                .contains("out of reach");
    }

    @Test
    void printsTheLevelOfACustomScale(@TempDir Path folder) throws Exception {
        Path file = Files.writeString(folder.resolve("ridge.csv"), """
            level,measure,above_thickness,to_thickness,constant,per_thickness
            ridge-a,perpendicularity,0 mm,50 mm,0.04 mm,0.002
            ridge-b,perpendicularity,0 mm,50 mm,0.10 mm,0.005
            """);
        Ran ran = Ran.of("grade", "--thickness", "10 mm", "--perpendicularity", "0.12 mm", "--scale", file.toString());

        assertThat(ran.out()).contains("perpendicularity: ridge-b.");
    }

    @Test
    void refusesIncompleteInput() {
        assertThat(Ran.of("grade").err()).contains("give --perpendicularity");
        assertThat(Ran.of("grade", "--material", "mild-steel", "--arc-radius", "5 mm")
                        .err())
                .contains("--arc-radius and --arc-error belong together");
        assertThat(Ran.of("grade", "--thickness", "10 mm", "--perpendicularity", "-1 mm")
                        .status())
                .isEqualTo(2);
    }
}

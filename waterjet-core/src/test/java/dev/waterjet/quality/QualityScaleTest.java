package dev.waterjet.quality;

import static dev.waterjet.measure.Measures.micrometres;
import static dev.waterjet.measure.Measures.millimetres;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.ValueContract;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Measures;
import dev.waterjet.measure.TextException;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class QualityScaleTest {

    private static final String SCALE = """
        # rule of the Hollow Ridge workshop, invented
        level,measure,above_thickness,to_thickness,constant,per_thickness
        ridge-a,perpendicularity,0 mm,50 mm,0.04 mm,0.002
        ridge-b,perpendicularity,0 mm,50 mm,0.10 mm,0.005
        ridge-a,roughness-ra,0 mm,50 mm,4 um,0
        """;

    @Test
    void aScaleOfTheUserGradesByItsOwnLimits() {
        var scale = QualityScale.parse(SCALE).forThickness(millimetres(10));

        assertThat(scale.level(QualityScale.Measure.PERPENDICULARITY, micrometres(59.9)))
                .contains("ridge-a");
        assertThat(scale.level(QualityScale.Measure.PERPENDICULARITY, micrometres(60.1)))
                .contains("ridge-b");
        assertThat(scale.level(QualityScale.Measure.PERPENDICULARITY, micrometres(151)))
                .isEmpty();
        assertThat(scale.level(QualityScale.Measure.PROFILE_HEIGHT, micrometres(1)))
                .isEmpty();
        assertThat(QualityScale.parse(SCALE)
                        .forThickness(millimetres(51))
                        .level(QualityScale.Measure.PERPENDICULARITY, micrometres(1)))
                .isEmpty();
        Map<String, Double> odds =
                scale.probabilities(QualityScale.Measure.PERPENDICULARITY, Estimate.of(Kind.LENGTH, 60e-6, 10e-6));
        assertThat(odds.keySet()).containsExactly("ridge-a", "ridge-b");
        assertThat(odds.get("ridge-a")).isCloseTo(0.5, within(1e-6));
    }

    @Test
    void aFaultInAScaleIsFoundByLineAndColumn() {
        assertThatThrownBy(() -> QualityScale.parse(SCALE + "ridge-c,gloss,0 mm,50 mm,1 mm,0\n"))
                .isInstanceOf(TextException.class)
                .hasMessageContaining("line 6")
                .hasMessageContaining("gloss");
        assertThatThrownBy(() -> QualityScale.parse(SCALE + "ridge-c,perpendicularity,0 mm,50 mm,1 MPa,0\n"))
                .isInstanceOf(TextException.class)
                .hasMessageContaining("line 6");
        assertThatThrownBy(() -> QualityScale.parse("level\n"))
                .isInstanceOf(TextException.class)
                .hasMessageContaining("start with the columns");
    }

    private static final String HEADING = "level,measure,above_thickness,to_thickness,constant,per_thickness\n";

    @Test
    void limitsOfAScaleHoldUpToTheirEnds() {
        QualityScale scale = QualityScale.parse(
                HEADING + "ridge-a,roughness-ra,5 mm,10 mm,4 um,0\nridge-b,roughness-ra,5 mm,10 mm,8 um,0.001\n");

        assertThat(scale.forThickness(millimetres(10)).level(QualityScale.Measure.ROUGHNESS_RA, micrometres(4)))
                .contains("ridge-a");
        assertThat(scale.forThickness(millimetres(5)).level(QualityScale.Measure.ROUGHNESS_RA, micrometres(1)))
                .isEmpty();
        assertThat(scale.forThickness(millimetres(10.001)).level(QualityScale.Measure.ROUGHNESS_RA, micrometres(1)))
                .isEmpty();
        Map<String, Double> odds = scale.forThickness(millimetres(10))
                .probabilities(QualityScale.Measure.ROUGHNESS_RA, Estimate.of(Kind.LENGTH, 8e-6, 4e-6));
        // normal table: below 4 um, one deviation under the middle; below 8 + 10 um, two and a half above
        assertThat(odds.get("ridge-a")).isCloseTo(0.158655, within(1e-6));
        assertThat(odds.get("ridge-b")).isCloseTo(0.993790 - 0.158655, within(2e-6));
        assertThat(scale).hasToString("quality scale of 2 limits");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '~',
            value = {
                "~~ | line 1, column 1: the text must start with the columns",
                "~# a\n\nlevels\n~ | line 3, column 1: the text must start with the columns",
            })
    void aScaleStartsWithItsColumns(String text, String message) {
        assertThatThrownBy(() -> QualityScale.parse(text))
                .isInstanceOf(TextException.class)
                .hasMessageStartingWith(message);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "a,roughness-ra,0 mm,9 mm,4 um | line 2, column 1: the row has 5 cells",
                ",roughness-ra,0 mm,9 mm,4 um,0 | line 2, column 1: the level has no name",
                "a,roughness-ra,0 mm,9 mm,-4 um,0 | line 2, column 26: constant is -0.004 mm",
                "a,roughness-ra,0 mm,9 mm,4 um,NaN | line 2, column 31: per_thickness \"NaN\" is not a decimal number",
                "a,roughness-ra,0 mm,9 mm,4 um,-1 | line 2, column 31: per_thickness is -1",
                "a,roughness-ra,0 mm,9 mm,4 um,1e101 | line 2, column 31: per_thickness is larger than 1e100",
            })
    void rowsOfAScaleAreChecked(String row, String message) {
        String text = HEADING + (row.startsWith(",") ? "\"\"" + row : row);

        assertThatThrownBy(() -> QualityScale.parse(text))
                .isInstanceOf(TextException.class)
                .hasMessageContaining(message.substring(message.indexOf(": ") + 2))
                .hasMessageStartingWith("line 2, column ");
        assertThatThrownBy(() -> QualityScale.parse(HEADING)).hasMessageContaining("the scale has no level");
    }

    @Test
    void theStandardIsThatOfAThickness() {
        ValueContract.of(() -> Iso9013.forThickness(millimetres(10)))
                .differs("thickness", Iso9013.forThickness(millimetres(11)))
                .prints("ISO 9013 at 10")
                .check();
        assertThat(Iso9013.forThickness(Measures.metres(0.01)))
                .hasSameHashCodeAs(Iso9013.forThickness(millimetres(10)));
    }

    /** Normal spread about the limit of range 2, 40 + 0.8 a = 48 um (ISO 9013) at 10 mm. */
    @Test
    void oddsOfProfileHeightsAddUp() {
        Iso9013 standard = Iso9013.forThickness(millimetres(10));
        double limit = Kind.LENGTH.si(standard.profileHeightLimit(2));
        List<Double> odds = standard.profileHeightProbabilities(Estimate.of(Kind.LENGTH, limit, limit / 10));

        assertThat(odds).hasSize(Iso9013.profileHeightRanges() + 1);
        assertThat(odds.get(0) + odds.get(1)).isCloseTo(0.5, within(1e-9));
        assertThat(odds.stream().mapToDouble(Double::doubleValue).sum()).isCloseTo(1, within(1e-12));
    }
}

package dev.waterjet.examples;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Stacks and layers in the programs that take a thickness. */
class StackOptionTest {

    private static double feed(String... arguments) {
        return Double.parseDouble(Ran.of(arguments).rows().get(0).get("speed_m_per_s"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"3 x 4 mm", "4x3mm", "12 x 1000 um", "2 * 0.6 cm"})
    void equalSheetsAreCutAsOnePlate(String sheets) {
        assertThat(feed("curve", "--material", "brass", "--stack", sheets, "--csv"))
                .isCloseTo(
                        feed("curve", "--material", "brass", "--thickness", "12 mm", "--csv"), withinPercentage(1e-9));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {"thickness|2 mm|10 mm", "thickness_mm|2|10", "thickness_m|0.002|0.01"})
    void layersAddUpByTheirMachinability(String heading, String thin, String thick, @TempDir Path folder)
            throws IOException {
        Path file = folder.resolve("clad.csv");
        Files.writeString(file, "material," + heading + "\n1.4301," + thin + "\nmild steel," + thick + "\n");
        double equivalentMm = 2 * 87.6 / 81.9 + 10;

        assertThat(feed("curve", "--layers", file.toString(), "--csv"))
                .isCloseTo(
                        feed("curve", "--material", "mild-steel-a36", "--thickness", equivalentMm + " mm", "--csv"),
                        withinPercentage(1e-6));
    }

    @ParameterizedTest
    @ValueSource(strings = {"kerf", "heads", "sensitivity --trials 4096", "grade --feed 100mm/min", "curve"})
    void everyProgramTakesAStack(String program) {
        String[] words = (program + " --material mild-steel-a36 --csv --stack").split(" ");
        String[] arguments = java.util.Arrays.copyOf(words, words.length + 1);
        arguments[words.length] = "2 x 3 mm";
        String[] plate = arguments.clone();
        plate[words.length - 1] = "--thickness";
        plate[words.length] = "6 mm";

        assertThat(Ran.of(arguments).out()).isEqualTo(Ran.of(plate).out());
    }

    /** Layers of one material are a plate of it. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "kerf",
                "heads",
                "sensitivity --trials 4096",
                "grade --feed 100mm/min",
                "grade --taper 1deg",
                "curve",
                "plan --orifice 0.33mm --tube 1.02mm"
            })
    void everyProgramTakesLayersWithoutAMaterial(String program, @TempDir Path folder) throws IOException {
        Path file = folder.resolve("layers.csv");
        Files.writeString(file, "material,thickness\n1.4301,2 mm\nX5CrNi18-10,0.4 cm\n");

        String layered =
                Ran.of((program + " --csv --layers " + file).split(" ")).out();
        String plate = Ran.of((program + " --csv --thickness 6mm --material 1.4301").split(" "))
                .out();
        String[] cells = layered.split("[,\n]", -1);
        String[] expected = plate.split("[,\n]", -1);

        assertThat(cells).hasSameSizeAs(expected).hasSizeGreaterThan(4);
        for (int i = 0; i < cells.length; i++) {
            if (expected[i].matches("-?[0-9.]+(E-?[0-9]+)?")) {
                double value = Double.parseDouble(expected[i]);
                assertThat(Double.parseDouble(cells[i])).isCloseTo(value, within(1e-5 * Math.abs(value) + 1e-12));
            }
        }
        assertThat(Ran.of((program + " --material titanium --layers " + file).split(" "))
                        .err())
                .contains("--material and --layers");
    }

    @Test
    void aMeasuredCutSurfaceHasTheThicknessOfAllSheets() {
        String measured = "grade --csv --perpendicularity 0.3mm";

        assertThat(Ran.of((measured + " --stack 3x10mm").split(" ")).out())
                .isEqualTo(Ran.of((measured + " --thickness 30mm").split(" ")).out())
                .isNotEqualTo(Ran.of(measured.split(" ")).out());
    }

    @Test
    void aPlanTakesAStack(@TempDir Path folder) {
        Ran ran = Ran.of("plan", "--stack", "3 x 4 mm", "--output-dir", folder.toString());

        assertThat(ran.status()).isZero();
        assertThat(ran.out()).contains("12 mm").contains("in 3 sheets");
        assertThat(ran.out() + ran.err()).contains("clamp the stack");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "--stack|3 of 2 mm|not a stack",
                "--stack|0 x 2 mm|number of layers",
                "--stack|3 x|not a stack",
                "--stack|2000 x 1 mm|number of layers",
            })
    void otherTextsAreRefusedInOneLine(String option, String text, String reason) {
        Ran ran = Ran.of("kerf", option, text);

        assertThat(ran.status()).isEqualTo(2);
        assertThat(ran.err()).contains(reason);
        assertThat(ran.err().strip().lines()).hasSize(1);
    }

    @Test
    void faultyLayersAreRefusedWithTheirLine(@TempDir Path folder) throws IOException {
        Path file = folder.resolve("layers.csv");
        Files.writeString(file, "material,thickness\nsteel-dc01,2 mm\nunobtainium,1 mm\n");
        assertThat(Ran.of("kerf", "--layers", file.toString()).err())
                .contains("line 3")
                .contains("unobtainium");
        Files.writeString(file, "depth,material\n1,2\n");
        assertThat(Ran.of("kerf", "--layers", file.toString()).err()).contains("material,thickness");
        assertThat(Ran.of("kerf", "--stack", "2 x 2 mm", "--thickness", "4 mm").err())
                .contains("one of --thickness");
    }
}

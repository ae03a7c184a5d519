package dev.waterjet.examples;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.function.IntToDoubleFunction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Predicted deviations on the sheet of a plan: equal holes are predicted once, too many different ones not at all. */
class PredictionOfPlanTest {

    @TempDir
    private Path folder;

    @Test
    void equalHolesDeviateAsOneOfThem() throws IOException {
        List<String> one = deviations(1, i -> 3);
        List<String> many = deviations(120, i -> 3);

        assertThat(one).hasSize(3);
        assertThat(many).isEqualTo(one);
    }

    @Test
    void theWorstOfDifferentHolesIsNamed() throws IOException {
        assertThat(deviations(12, i -> i == 7 ? 1 : 4))
                .anySatisfy(row -> assertThat(row).contains("Deviation, bottom", "left on, cut 8,"));
    }

    @Test
    void moreThanAHundredDifferentOnesAreLeftToPredict() throws IOException {
        assertThat(deviations(101, i -> 2 + 0.01 * i))
                .singleElement()
                .asString()
                .contains("not computed for 101 different contours; see predict");
    }

    /** Rows of the sheet for a row of holes. */
    private List<String> deviations(int holes, IntToDoubleFunction radiusMm) throws IOException {
        StringBuilder text = new StringBuilder("G21 G90\n");
        for (int i = 0; i < holes; i++) {
            double radius = radiusMm.applyAsDouble(i);
            text.append(String.format(
                    Locale.ROOT,
                    "G0 X%1$.3f Y%2$.3f%nM3%nG3 X%1$.3f Y%2$.3f I-%3$.3f J0%nM5%n",
                    12.3456 * (i % 12) + radius,
                    12.0005 * Math.floorDiv(i, 12),
                    radius));
        }
        Path program = Files.writeString(folder.resolve("holes.nc"), text.append("M30\n"));
        Path plan = folder.resolve("plan" + holes);
        Ran ran = Ran.of("plan", program.toString(), "--orifice", "0.33 mm", "--output-dir", plan.toString(), "--open");
        assertThat(ran.status()).isZero();
        return Files.readAllLines(plan.resolve("holes-sheet.html")).stream()
                .filter(line -> line.contains("Deviation, ") || line.contains("Predicted cut</th>"))
                .toList();
    }
}

package dev.waterjet.examples;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A drawing in inches gives a program and a report in inches, of the same size as that in millimetres. */
class InchDrawingTest {

    @TempDir
    private Path folder;

    private Ran plan(String name, String size, double unit) throws IOException {
        Path file = Files.writeString(
                folder.resolve(name),
                "<svg xmlns=\"http://www.w3.org/2000/svg\" " + size + "<rect x=\"" + unit + "\" y=\"" + unit
                        + "\" width=\"" + 3 * unit + "\" height=\"" + unit + "\"/></svg>");
        return Ran.of("plan", file.toString(), "--orifice", "0.33 mm", "--output-dir", folder.toString());
    }

    @Test
    void theProgramAndTheReportAreInTheUnitOfTheDrawing() throws IOException {
        String inch = plan("a.svg", "width=\"5in\" height=\"4in\" viewBox=\"0 0 5 4\">", 1)
                .out();
        String metric = plan("b.svg", "width=\"127mm\" height=\"101.6mm\" viewBox=\"0 0 127 101.6\">", 25.4)
                .out();

        assertThat(inch).contains("3 in × 1 in", "in/min");
        assertThat(metric).contains("76.2 mm × 25.4 mm");
        assertThat(Files.readString(folder.resolve("a-with-feeds.nc"))).contains("G20 ");
        assertThat(Files.readString(folder.resolve("b-with-feeds.nc"))).contains("G21 ");
        assertThat(line(inch, "Cutting time")).isEqualTo(line(metric, "Cutting time"));
    }

    private static String line(String text, String label) {
        return text.lines().filter(line -> line.startsWith(label)).findFirst().orElseThrow();
    }
}

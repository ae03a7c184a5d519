package dev.waterjet.examples;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DrawingTableTest {

    @TempDir
    private Path folder;

    private Ran run(String content, String... options) throws IOException {
        Path file = folder.resolve("drawing");
        Files.writeString(file, content, StandardCharsets.UTF_8);
        String[] args = new String[options.length + 2];
        args[0] = "drawing";
        args[1] = file.toString();
        System.arraycopy(options, 0, args, 2, options.length);
        return Ran.of(args);
    }

    @ParameterizedTest
    @CsvSource({"mm, 0.2", "in, 5.08", "1/72 in, 0.070555555556", "0.5 mm, 0.1", "1 / 4 mm, 0.05"})
    void theUnitOfADrawingCanBeGiven(String unit, double lengthM) throws IOException {
        String drawing = "<svg viewBox='0 0 90 90'><rect width='60' height='40'/></svg>";

        Ran ran = run(drawing, "--csv", "--drawing-unit", unit);
        assertThat(Double.parseDouble(ran.rows().get(0).get("length_m"))).isCloseTo(lengthM, within(1e-9));
        assertThat(run(drawing).out()).contains("assumed").contains("--drawing-unit");
        assertThat(run(drawing, "--drawing-unit", "1/0 mm").status()).isEqualTo(2);
        assertThat(run(drawing, "--drawing-unit", "kg").status()).isEqualTo(2);
    }

    @Test
    void widthAndLayersAreOptions() throws IOException {
        String drawing = "<svg viewBox='0 0 90 90'><rect width='60' height='40'/>"
                + "<g id='seat'><circle cx='20' cy='20' r='5'/></g></svg>";

        Ran ran = run(drawing, "--csv", "--width", "120 mm", "--layer", "seat=very fine", "--layer", "black=coarse");
        assertThat(ran.rows().get(0).get("use")).isEqualTo("coarse");
        assertThat(Double.parseDouble(ran.rows().get(0).get("area_m2"))).isCloseTo(Math.PI * 1e-4, within(1e-10));
        Ran typo = run(drawing, "--layer", "seta=fine");
        assertThat(typo.out()).contains("seta");
        assertThat(run(drawing, "--layer", "seat=shiny").status()).isEqualTo(2);
    }

    @Test
    void whatIsNoDrawingIsRefusedInOneLine() throws IOException {
        Ran refused = run("%PDF-1.4");

        assertThat(refused.status()).isEqualTo(2);
        assertThat(refused.err()).hasLineCount(1).contains("PDF");
        assertThat(Ran.of("drawing", folder.resolve("none.dxf").toString()).status())
                .isEqualTo(2);
    }
}

package dev.waterjet.examples;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The list of cuts on a sheet: rows of equal cuts keep their columns on paper, and the drawing has their numbers. */
class CutListTest {

    @TempDir
    private Path folder;

    @Test
    void aRowOfManyCutsListsTheFirstNumbersAndTheLastAndTheDrawingAll() throws IOException {
        StringBuilder program = new StringBuilder("G21 G90\n");
        for (int i = 0; i < 80; i++) {
            int radius = i % 2 == 0 ? 5 : 8;
            program.append("G0 X").append(30 * i).append(" Y0\nM3\nG4 P9000\nG42 D1 G1 X");
            program.append(30 * i + radius).append("\nG2 I-").append(radius).append("\nM5\nG40\n");
        }
        Path input = Files.writeString(folder.resolve("holes.nc"), program.toString());
        Ran ran = Ran.of("plan", input.toString(), "--orifice", "0.33 mm", "--output-dir", folder.toString());

        assertThat(ran.status()).isZero();
        String sheet = Files.readString(folder.resolve("holes-sheet.html"));
        assertThat(sheet).contains(">1</text>", ">80</text>", "Numbers: order of pierces. Arrows: direction.");
        assertThat(Pattern.compile("<td class=\"n order\">([^<]*)</td>")
                        .matcher(sheet)
                        .results()
                        .map(found -> found.group(1)))
                .containsExactly(
                        "1, 3, 5, 7, 9, 11, 13, 15, 17, 19, 21, 23, \u2026 79",
                        "2, 4, 6, 8, 10, 12, 14, 16, 18, 20, 22, 24, \u2026 80");
    }
}

package dev.waterjet.examples;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Tabs and marks of a drawing: the first are in its program, of the others it is said that they are not. */
class DrawnTabsTest {

    private static final String DRAWING = "<svg width='200mm' height='200mm' viewBox='0 0 200 200'>"
            + "<rect id='lid' x='20' y='20' width='120' height='90'/>"
            + "<g id='TABS'><path d='M80 15v10'/><path d='M15 60h10'/></g>"
            + "<path id='scribe' d='M40 40h20'/></svg>";

    @TempDir
    private Path folder;

    private Ran plan(String... more) throws IOException {
        Path input = Files.writeString(folder.resolve("lid.svg"), DRAWING);
        String[] args = {
            "plan",
            input.toString(),
            "--orifice",
            "0.33 mm",
            "--layer",
            "TABS=tab",
            "--layer",
            "scribe=mark",
            "--output-dir",
            folder.toString()
        };
        String[] all = Arrays.copyOf(args, args.length + more.length);
        System.arraycopy(more, 0, all, args.length, more.length);
        return Ran.of(all);
    }

    @Test
    void bridgesStayWhereTheDrawingMarksThem() throws IOException {
        Ran ran = plan("--tab-width", "1.5 mm");

        assertThat(ran.err()).isEmpty();
        assertThat(ran.out())
                .contains("3 cuts", "warning: lines to mark are not in the program: 1, the first \"scribe\"")
                .containsPattern("Tabs +2 in the program where the drawing marks them")
                .doesNotContain("finding:");
        assertThat(Files.readString(folder.resolve("lid-with-feeds.nc")))
                .contains("caution: lines to mark are not in the program")
                .containsPattern("X20 Y13[89]\\.\\d+ F[\\d.]+\\nM5\\nG0 X20 Y141\\.\\d+\\n");
    }

    @Test
    void aTabWithoutAWidthIsRefusedWithItsRemedies() throws IOException {
        assertThat(plan().err()).contains("--tab-width", "--shear-strength");
        assertThat(plan("--shear-strength", "200 MPa").out()).contains("3 cuts");
    }
}

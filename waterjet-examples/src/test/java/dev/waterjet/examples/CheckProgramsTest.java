package dev.waterjet.examples;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CheckProgramsTest {

    private static final String RING = "G21 G90\nG0 X20 Y0\nM3\nG41 D1 G1 X25\nG3 I-25\nM5\nM30\n";

    @TempDir
    private Path folder;

    private String file(String name, String text) throws IOException {
        Path file = folder.resolve(name);
        Files.writeString(file, text, StandardCharsets.ISO_8859_1);
        return file.toString();
    }

    @Test
    void aCleanProgramEndsWithStatusZeroAndPrintsNothing() throws IOException {
        assertThat(Ran.of("check", file("ring.nc", RING))).isEqualTo(new Ran(0, "", ""));
    }

    @Test
    void findingsArePrintedByFileLineAndCode() throws IOException {
        String ring = file("ring.nc", RING);
        String wrong = file("wrong.nc", RING.replace("G3", "G2").replace("M5", "M0\nM5"));
        Ran ran = Ran.of("check", ring, wrong);

        assertThat(ran.status()).isEqualTo(1);
        assertThat(ran.err()).isEmpty();
        assertThat(ran.out().lines()).hasSize(2).first().asString().startsWith(wrong + ":5: jet-in-part: ");
        assertThat(ran.out().lines().skip(1)).first().asString().startsWith(wrong + ":6: stop-with-jet-on: ");
    }

    @Test
    void contradictoryWordsAreAFinding() throws IOException {
        Ran ran = Ran.of("check", file("both.nc", "G20 G21\n" + RING));

        assertThat(ran.status()).isEqualTo(1);
        assertThat(ran.out()).contains("both.nc:1: words-contradict: ");
    }

    @Test
    void whatIsNoProgramIsNamedByWhatItIs() throws IOException {
        Ran ran = Ran.of("check", file("part.nc", "%PDF-1.4\nxx\n"));

        assertThat(ran.status()).isEqualTo(2);
        assertThat(ran.err()).contains("part.nc").contains("PDF").hasLineCount(1);
    }

    @Test
    void dwellsAreJudgedByThePierceTime() throws IOException {
        String ring = file("ring.nc", RING.replace("M3\n", "M3\nG4 P500\n"));

        assertThat(Ran.of("check", ring, "--pierce-time", "0.5 s").status()).isZero();
        assertThat(Ran.of("check", ring, "--pierce-time", "0.6 s").out()).contains(":4: short-dwell: ");
        assertThat(Ran.of("check", ring, "--pierce-time", "0.6 m").status()).isEqualTo(2);
    }

    @Test
    void codesComeFromAFileAndFromOptions() throws IOException {
        String text = "G5.1\n" + RING.replace("M3\n", "M62\nG4 P2\n").replace("M5", "M63");
        String program = file("own.nc", text);
        String codes = file("codes.txt", "jet_on = M62\njet_off = M63\npass_through = G5.1\ndwell = G4 P s\n");

        assertThat(Ran.of("check", program).status()).isEqualTo(2);
        assertThat(Ran.of("check", program, "--codes", codes, "--pierce-time", "2 s"))
                .isEqualTo(new Ran(0, "", ""));
        assertThat(Ran.of("check", program, "--jet-on", "62", "--jet-off", "63", "--pass-through", "G5.1,M8")
                        .status())
                .isZero();
        assertThat(Ran.of("check", program, "--codes", file("bad.txt", "jet_off = M3\n"))
                        .err())
                .contains("line 1, column 1");
    }

    @Test
    void whatCannotBeReadEndsWithStatusTwo() throws IOException {
        String wrong = file("wrong.nc", RING.replace("G3", "G2"));
        Ran ran = Ran.of("check", folder.resolve("none.nc").toString(), file("x.dxf", "0\nSECTION\n"), wrong);

        assertThat(ran.status()).isEqualTo(2);
        assertThat(ran.err().lines()).hasSize(2);
        assertThat(ran.out()).contains("wrong.nc:5: jet-in-part");
        assertThat(Ran.of("check").status()).isEqualTo(2);
        assertThat(Ran.of("check", folder.toString()).err()).contains("directory");
    }

    @Test
    void csvHoldsLineCodeAndPlace() throws IOException {
        Ran ran = Ran.of("check", "--csv", file("wrong.nc", RING.replace("G3", "G2")));

        assertThat(ran.status()).isEqualTo(1);
        assertThat(ran.rows()).singleElement().satisfies(row -> {
            assertThat(row.get("line")).isEqualTo("5");
            assertThat(row.get("code")).isEqualTo("jet-in-part");
            assertThat(Double.parseDouble(row.get("x_m"))).isEqualTo(0.025);
        });
    }
}

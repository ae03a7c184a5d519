package dev.waterjet.examples;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Dwells of pierces in written programs: every pierce has time, or a caution says that it has none. */
class PierceDwellTest {

    private static final String PROGRAM = "G21 G90\nG0 X0 Y-5\nM3\nG41 D1 G1 Y0\nY40\nX40\nY0\nX0\nM5\n";

    @TempDir
    private Path folder;

    private Ran plan(String name, String text, String... more) throws IOException {
        Path input = Files.writeString(folder.resolve(name), text);
        String[] args = {"plan", input.toString(), "--orifice", "0.33 mm", "--output-dir", folder.toString()};
        String[] all = Arrays.copyOf(args, args.length + more.length);
        System.arraycopy(more, 0, all, args.length, more.length);
        return Ran.of(all);
    }

    @Test
    void aProgramWithoutDwellsIsToldSoOrGetsThem() throws IOException {
        assertThat(plan("square.nc", PROGRAM).out()).contains("finding: line 3: the jet moves off without a dwell");
        assertThat(Files.readString(folder.resolve("square-with-feeds.nc"))).doesNotContain("G4 P");

        assertThat(plan("square.nc", PROGRAM, "--pierce-dwell").out()).doesNotContain("without a dwell");
        assertThat(Files.readString(folder.resolve("square-with-feeds.nc"))).containsPattern("M3\nG4 P\\d{4,6}\nG41");
    }

    @Test
    void jsonHoldsTheFindingsOfTheProgramAndAllCautions() throws IOException {
        JsonNode json =
                new ObjectMapper().readTree(plan("square.nc", PROGRAM, "--json").out());

        assertThat(json.at("/program_findings/0/line").asInt()).isEqualTo(3);
        assertThat(json.at("/program_findings/0/finding/code").asText()).isEqualTo("no-dwell");
        assertThat(json.get("lead_findings")).isEmpty();
        assertThat(json.get("report_cautions").findValuesAsText("code")).contains("cutting-jet", "offset-by-machine");
    }

    @Test
    void aDwellThatIsTooShortStaysAFinding() throws IOException {
        Ran ran = plan("square.nc", PROGRAM.replace("M3\n", "M3\nG4 P100\n"), "--pierce-dwell");

        assertThat(ran.out()).contains("finding: line 4: the dwell of 0.1 s is shorter than the pierce");
    }

    @Test
    void aMachineThatWaitsByItselfGetsNoDwellAndACaution() throws IOException {
        Path codes = Files.writeString(folder.resolve("codes.txt"), "dwell = machine\n");
        String lid = "<svg width='99mm' viewBox='0 0 99 99'><circle cx='50' cy='50' r='30'/></svg>";

        assertThat(plan("lid.svg", lid, "--codes", codes.toString()).out())
                .contains("warning: the program has no dwell: the machine must wait");
        assertThat(Files.readString(folder.resolve("lid-with-feeds.nc")))
                .startsWith("(caution: no dwell in this program")
                .doesNotContain("G4 ");
    }
}

package dev.waterjet.examples;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import dev.waterjet.measure.CsvText;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Cut quality of each edge, and a kerf width of the user, in all that the program plan writes. */
class PlanQualityTest {

    private static final String FRAME = """
        G21 G90
        (waterjet: name frame, quality coarse)
        G0 X-6 Y0
        M3
        G4 P90000
        G42 D1 G1 X0 Y0
        G1 X60
        (waterjet: quality fine)
        G1 Y40
        G1 X0
        (waterjet: quality coarse)
        G1 Y0
        G40 G1 Y-6
        M5
        """;

    /** A plate of 80 mm by 50 mm; the red side is 50 mm long. */
    private static final String PLATE = """
        <svg xmlns="http://www.w3.org/2000/svg" width="100mm" height="80mm" viewBox="0 0 100 80">
        <path d="M 90 60 L 10 60 L 10 10 L 90 10" stroke="black" fill="none"/>
        <path d="M 90 10 L 90 60" stroke="red" fill="none"/>
        </svg>
        """;

    @TempDir
    private Path folder;

    private Ran plan(Path input, String... more) {
        String[] args = new String[more.length + 6];
        String[] first = {"plan", input.toString(), "--orifice", "0.33 mm", "--output-dir", folder.toString()};
        System.arraycopy(first, 0, args, 0, first.length);
        System.arraycopy(more, 0, args, first.length, more.length);
        return Ran.of(args);
    }

    private Path write(String name, String text) throws IOException {
        return Files.writeString(folder.resolve(name), text);
    }

    /** Length by quality, without leads, in mm. */
    private static Map<String, Double> lengths(String csv) {
        Map<String, Double> lengths = new TreeMap<>();
        CsvText.parse(csv).stream()
                .skip(1)
                .filter(row -> row.cells().get(5).equals("no"))
                .forEach(row -> lengths.merge(row.cells().get(2), 1000 * row.number(13, "length"), Double::sum));
        return lengths;
    }

    @Test
    void notesWithinACutGiveEachBlockItsQuality() throws IOException {
        Path input = write("frame.nc", FRAME);
        Map<String, Double> lengths = lengths(plan(input, "--csv").out());
        plan(input);

        assertThat(lengths).containsOnlyKeys("coarse", "fine");
        // outer corners add a quarter of a circle around them, at most 1 mm long
        assertThat(lengths.get("fine")).isCloseTo(100, within(2.0));
        assertThat(lengths.get("coarse")).isCloseTo(100, within(2.0));
        assertThat(Files.readString(folder.resolve("frame-sheet.html"))).contains("<td>coarse, fine</td>");
        assertThat(Files.readString(folder.resolve("frame-with-feeds.nc"))).contains("\n(waterjet: quality fine)\n");
    }

    @Test
    void segmentsOfOneContourKeepTheQualityOfTheirColour() throws IOException {
        Path input = write("plate.svg", PLATE);
        Map<String, Double> lengths =
                lengths(plan(input, "--layer", "red=fine", "--csv").out());
        Ran drawn = Ran.of("drawing", input.toString(), "--layer", "red=fine", "--csv");
        plan(input, "--layer", "red=fine");

        assertThat(lengths).containsOnlyKeys("medium", "fine");
        assertThat(lengths.get("fine")).isCloseTo(50, within(2.0));
        assertThat(lengths.get("medium")).isCloseTo(210, within(4.0));
        assertThat(drawn.out()).contains("\"medium, fine\"");
        assertThat(Files.readString(folder.resolve("plate-with-feeds.nc")))
                .contains("quality medium)", "(waterjet: quality fine)", "(waterjet: quality medium)");
    }

    @Test
    void aKerfWidthGivenIsStatedAsSuch() throws IOException {
        Path input = write("frame.nc", FRAME);
        Ran ran = plan(input, "--kerf-width", "1.3 mm");
        JsonNode json = new ObjectMapper()
                .readTree(plan(input, "--kerf-width", "1.3 mm", "--json").out());
        String sheet = Files.readString(folder.resolve("frame-sheet.html"));

        assertThat(ran.err()).isEmpty();
        assertThat(ran.out())
                .containsPattern(
                        "Kerf offset +0\\.65 mm \\(half of the kerf width given, 1\\.3 mm\\); the kerf model has");
        assertThat(sheet)
                .contains("0.65 mm (half of the kerf width given, 1.3 mm)", "1.3 mm, the kerf width given")
                .contains("the plan has the kerf width given, 1.3 mm");
        assertThat(json.get("kerf_width_given_m").asDouble()).isEqualTo(1.3e-3);
        assertThat(json.get("cuts").get(0).get("offset_m").asDouble()).isEqualTo(6.5e-4);
        assertThat(plan(input, "--json").out()).doesNotContain("kerf_width_given");
    }
}

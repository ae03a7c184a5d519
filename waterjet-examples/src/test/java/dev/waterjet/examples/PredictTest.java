package dev.waterjet.examples;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class PredictTest {

    @TempDir
    private Path folder;

    private Path program(String feed) throws IOException {
        return Files.writeString(
                folder.resolve("square.nc"),
                String.join(
                        "\n",
                        "%",
                        "G21 G90",
                        "(waterjet: contour square)",
                        "G0 X-5 Y10",
                        "M3",
                        "G1 X0 Y10" + feed,
                        "G1 X0 Y30" + feed,
                        "G1 X30 Y30" + feed,
                        "G1 X30 Y0" + feed,
                        "G1 X0 Y0" + feed,
                        "G1 X0 Y10" + feed,
                        "G1 X0 Y14" + feed,
                        "M5",
                        "M30",
                        "%"));
    }

    @Test
    void theBuiltInPartIsPredictedInCsv() {
        Ran ran = Ran.of("predict", "--csv", "--points", "20", "--depths", "3");

        assertThat(ran.status()).as(ran.err()).isZero();
        assertThat(ran.out())
                .startsWith("contour,edge,distance_m,depth_m,deviation_m,feed_m_per_s,lag_m,half_width_m\n");
        assertThat(ran.rows()).hasSizeGreaterThan(9 * 3 * 15);
    }

    @Test
    void aProgramIsPredictedAtItsOwnFeeds() throws IOException {
        Ran ran = Ran.of("predict", program(" F120").toString(), "--feeds-as-written", "--csv", "--points", "40");

        assertThat(ran.status()).as(ran.err()).isZero();
        List<CSVRecord> cut = ran.rows().stream()
                .filter(row -> !row.get("feed_m_per_s").isEmpty())
                .toList();
        assertThat(cut).isNotEmpty();
        assertThat(cut)
                .allSatisfy(row ->
                        assertThat(Double.parseDouble(row.get("feed_m_per_s"))).isBetween(0.0019, 0.0021));
    }

    @Test
    void feedsThatAProgramDoesNotStateAreMissed() throws IOException {
        Ran ran = Ran.of("predict", program("").toString(), "--feeds-as-written");

        assertThat(ran.status()).isEqualTo(2);
        assertThat(ran.err()).contains("states no feed rate");
    }

    @Test
    void aDrawingIsMadeOfEachContour() throws IOException {
        Path file = folder.resolve("cut.svg");
        Ran ran = Ran.of("predict", program(" F120").toString(), "--svg", file.toString(), "--points", "60");

        assertThat(ran.status()).as(ran.err()).isZero();
        assertThat(Files.readString(file))
                .startsWith("<svg")
                .contains("not separated")
                .contains("bottom edge");
        assertThat(ran.out()).contains("bottom").contains("test cut");
    }

    @Test
    void jsonHoldsAnObjectForEachContour() throws IOException {
        Ran ran = Ran.of("predict", program(" F120").toString(), "--json", "--points", "10");

        assertThat(ran.status()).as(ran.err()).isZero();
        assertThat(ran.out())
                .startsWith("[\n{\"contour\": ")
                .contains("\"deviation_m\": [")
                .endsWith("]\n");
    }
}

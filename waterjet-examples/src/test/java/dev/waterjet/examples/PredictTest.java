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
    void uncertaintyAndRoughnessAreFurtherColumns() throws IOException {
        String file = program(" F120").toString();
        Ran ran = Ran.of("predict", file, "--csv", "--points", "30", "--depths", "3", "--uncertainty", "--roughness");
        Ran json = Ran.of("predict", file, "--json", "--points", "30", "--depths", "3", "--uncertainty", "--roughness");

        assertThat(ran.status()).as(ran.err()).isZero();
        assertThat(ran.out())
                .startsWith("contour,edge,distance_m,depth_m,deviation_m,feed_m_per_s,lag_m,half_width_m,"
                        + "deviation_uncertainty_m,roughness_m\n");
        List<CSVRecord> cut = ran.rows().stream()
                .filter(row -> !row.get("deviation_uncertainty_m").isEmpty())
                .toList();
        assertThat(cut).hasSizeGreaterThan(60).allSatisfy(row -> {
            assertThat(Double.parseDouble(row.get("deviation_uncertainty_m"))).isBetween(1e-6, 2e-3);
            assertThat(Double.parseDouble(row.get("roughness_m"))).isBetween(1e-6, 100e-6);
        });
        assertThat(json.out()).contains("\"deviation_uncertainty_m\": [", "\"roughness_m\": [");
    }

    @Test
    void numbersOfTheModelsChangeTheWalls() throws IOException {
        String file = program(" F120").toString();

        double standard = taper(Ran.of("predict", file, "--csv", "--points", "400"));
        double narrow = taper(Ran.of("predict", file, "--csv", "--points", "400", "--dose-spread", "0.2"));
        double wide = taper(Ran.of("predict", file, "--csv", "--points", "400", "--half-angle", "2.5 deg"));

        assertThat(narrow).isNotEqualTo(standard);
        assertThat(wide).isNotEqualTo(standard);
    }

    @Test
    void contoursWithoutNamesAreToldApart() throws IOException {
        Path drawing = Files.writeString(
                folder.resolve("two.svg"),
                "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"80mm\" height=\"80mm\" viewBox=\"0 0 80 80\">"
                        + "<path d=\"M10 10 H70 V70 H10 Z\"/><circle cx=\"40\" cy=\"40\" r=\"9\"/></svg>");

        Ran ran = Ran.of("predict", drawing.toString(), "--csv", "--points", "10", "--depths", "2");

        assertThat(ran.status()).as(ran.err()).isZero();
        assertThat(ran.rows().stream().map(row -> row.get("contour")).distinct())
                .hasSize(2);
    }

    /** The taper of the wall along the middle of the edge at x = 30 mm: deviation at the bottom less that at the top. */
    private static double taper(Ran ran) {
        assertThat(ran.status()).as(ran.err()).isZero();
        List<CSVRecord> middle =
                ran.rows().stream().filter(row -> row.get("edge").equals("3")).toList();
        List<CSVRecord> at = middle.stream()
                .filter(row -> row.get("distance_m")
                        .equals(middle.get(middle.size() / 2).get("distance_m")))
                .toList();
        return Double.parseDouble(at.get(at.size() - 1).get("deviation_m"))
                - Double.parseDouble(at.get(0).get("deviation_m"));
    }

    @Test
    void aTiltingHeadTakesTheTaper() throws IOException {
        String file = program(" F120").toString();

        double upright = taper(Ran.of("predict", file, "--csv", "--points", "400"));
        double tilted = taper(Ran.of("predict", file, "--csv", "--points", "400", "--tilt", "8 deg"));
        double lead = taper(
                Ran.of("predict", file, "--csv", "--points", "400", "--tilt", "8 deg", "--tilt-speed", "0 deg/s"));

        assertThat(Math.abs(tilted)).isLessThan(0.2 * Math.abs(upright));
        assertThat(lead).isEqualTo(upright);
    }

    @Test
    void aTiltBeyondTheRangeOfAHeadIsRefused() {
        Ran ran = Ran.of("plan", "--csv", "--tilt", "60 deg");

        assertThat(ran.status()).isEqualTo(2);
        assertThat(ran.err()).contains("maximum inclination");
    }

    @Test
    void aPlanWithATiltingHeadPrintsItsMoves() {
        Ran ran = Ran.of(
                "plan", "--csv", "--tilt", "8 deg", "--tilt-speed", "45 deg/s", "--tilt-acceleration", "3 rad/s2");

        assertThat(ran.status()).as(ran.err()).isZero();
        assertThat(ran.rows()).hasSizeGreaterThan(100).allSatisfy(row -> {
            double x = Double.parseDouble(row.get("end_tilt_x"));
            double y = Double.parseDouble(row.get("end_tilt_y"));
            double z = Double.parseDouble(row.get("end_tilt_z"));
            assertThat(Math.sqrt(x * x + y * y + z * z)).isCloseTo(1, org.assertj.core.api.Assertions.within(1e-12));
            assertThat(z).isGreaterThanOrEqualTo(Math.cos(Math.toRadians(8.0001)));
        });
        assertThat(Ran.of("plan", "--json", "--tilt", "8 deg").out()).contains("gimbal_a_rad");
    }

    @Test
    void aFileThatIsNeitherIsRefusedByWhatItIs() throws IOException {
        Path file = Files.writeString(folder.resolve("cover.pdf"), "%PDF-1.4\n");

        assertThat(Ran.of("predict", file.toString()).err()).contains("this is a PDF");
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

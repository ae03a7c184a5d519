package dev.waterjet.examples;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class LocateTest {

    private static Path file(Path folder, String text) throws IOException {
        return Files.writeString(folder.resolve("points.csv"), text);
    }

    /** A part turned by a quarter: (0, 0) lies at (100, 50) and (80, 0) at (100, 130). */
    @Test
    void twoHolesGiveThePlaceAndTheResidualOfEach(@TempDir Path folder) throws IOException {
        Ran ran = Ran.of("locate", file(folder, """
            feature,known_x_mm,known_y_mm,probed_x_mm,probed_y_mm
            hole,0,0,100,50
            hole,80,0,100,130
            """).toString(), "--csv");
        List<String> lines = ran.out().lines().toList();
        String[] place = lines.get(1).split(",", -1);

        assertThat(ran.status()).isZero();
        assertThat(lines.get(0)).startsWith("rotation_rad,shift_x_m,shift_y_m,");
        assertThat(Double.parseDouble(place[0])).isCloseTo(Math.PI / 2, within(1e-9));
        assertThat(Double.parseDouble(place[1])).isCloseTo(0.1, within(1e-9));
        assertThat(Double.parseDouble(place[2])).isCloseTo(0.05, within(1e-9));
        assertThat(lines.get(3)).isEqualTo("point,feature,residual_m");
        assertThat(lines).hasSize(6);
    }

    @Test
    void edgesAndWallsAreReadInAnyUnit(@TempDir Path folder) throws IOException {
        Ran ran = Ran.of("locate", file(folder, """
            feature,known_x,known_y,end_x,end_y,radius,probed_x,probed_y,uncertainty
            edge,0 mm,0 mm,2 in,0 mm,,11 mm,5 mm,10 um
            edge,0 mm,0 mm,2 in,0 mm,,40 mm,5 mm,10 um
            wall,10 mm,20 mm,,,4 mm,24 mm,25 mm,10 um
            """).toString(), "--csv");
        String[] place = ran.out().lines().toList().get(1).split(",", -1);

        assertThat(Double.parseDouble(place[0])).isCloseTo(0, within(1e-9));
        assertThat(Double.parseDouble(place[1])).isCloseTo(0.010, within(1e-9));
        assertThat(Double.parseDouble(place[2])).isCloseTo(0.005, within(1e-9));
    }

    @Test
    void pointsThatCannotTellAreRefusedInOneLine(@TempDir Path folder) throws IOException {
        String heading = "feature,known_x_mm,known_y_mm,probed_x_mm,probed_y_mm\n";

        Ran single = Ran.of("locate", file(folder, heading + "hole,0,0,1,1\n").toString());
        assertThat(single.status()).isEqualTo(2);
        assertThat(single.err()).contains("do not tell the place");
        assertThat(Ran.of("locate", file(folder, heading + "bump,0,0,1,1\n").toString())
                        .err())
                .contains("line 2")
                .contains("bump");
        assertThat(Ran.of("locate", file(folder, "x,y\n1,2\n").toString()).err())
                .contains("feature");
        assertThat(Ran.of("locate", file(folder, heading + "edge,0,0,1,1\n").toString())
                        .err())
                .contains("end_x");
    }

    /** By JCGM 100: sqrt(u_L^2 + 50^2/3 + 6^2) um, and of two holes 20 um each the middle is known within 20/sqrt(2). */
    @Test
    void theAccuracyOfAFeatureIsABudget(@TempDir Path folder) throws IOException {
        String points = file(folder, """
            feature,known_x_mm,known_y_mm,probed_x_mm,probed_y_mm
            hole,0,0,100,50
            hole,80,0,100,130
            """).toString();
        Ran ran = Ran.of(
                "locate",
                points,
                "--feature",
                "40 mm, 0 in",
                "--deviation",
                "machine=within 50 um",
                "--deviation",
                "Kerf Offset=-0.01 mm +/- 6 um",
                "--tolerance",
                "0.1 mm",
                "--csv");
        List<String> lines = ran.out().lines().toList();
        String[] together = lines.get(lines.size() - 1).split(",", -1);
        double locating = 20e-6 / Math.sqrt(2);

        assertThat(ran.status()).isZero();
        assertThat(lines.get(lines.size() - 5)).isEqualTo("cause,deviation_m,standard_uncertainty_m,share");
        assertThat(together[0]).isEqualTo("together");
        assertThat(Double.parseDouble(together[1])).isCloseTo(-10e-6, within(1e-12));
        assertThat(Double.parseDouble(together[2]))
                .isCloseTo(Math.sqrt(locating * locating + 2500e-12 / 3 + 36e-12), within(1e-9));
        Ran text = Ran.of("locate", points, "--feature", "40 mm, 0 mm", "--deviation", "wear=± 9 um");
        assertThat(text.out()).contains("(100 mm, 90 mm)").contains("Largest share: locating");
        assertThat(Ran.of("locate", points, "--feature", "4 mm").err()).contains("not a place");
        assertThat(Ran.of("locate", points, "--tolerance", "4 mm").err()).contains("--feature");
        assertThat(Ran.of("locate", points, "--feature", "0 mm,0 mm", "--deviation", "locating=1 um +/- 1 um")
                        .err())
                .contains("not a cause");
        assertThat(Ran.of("locate", points, "--feature", "0 mm,0 mm", "--deviation", "wear=1 um")
                        .err())
                .contains("no uncertainty");
    }

    /** A quarter of a turn about the origin leaves a machine with equal axes its times. */
    @Test
    void aPlanIsMadeAndWrittenWhereThePartLies(@TempDir Path folder) throws IOException {
        Path program = Files.writeString(
                folder.resolve("lug.nc"),
                "G21 G90\nG0 X10 Y-5\nM3\nG42 D1 G1 Y0\nX40\nG3 X50 Y10 R10\nG1 Y30\nX0\nY0\nX10\nM5\nM30\n");
        Path points = file(folder, """
            feature,known_x_mm,known_y_mm,probed_x_mm,probed_y_mm
            hole,0,0,100,50
            hole,80,0,100,130
            """);
        Ran asDrawn = Ran.of("plan", program.toString(), "--csv");
        Ran located = Ran.of("plan", program.toString(), "--location", points.toString(), "--csv");
        Ran written = Ran.of(
                "plan",
                program.toString(),
                "--location",
                points.toString(),
                "--feeds-per-edge",
                "--output-dir",
                folder.toString());

        assertThat(located.status()).isZero();
        assertThat(column(located, "time_s"))
                .usingElementComparator((one, other) -> Math.abs(one - other) < 1e-6 ? 0 : 1)
                .containsExactlyElementsOf(column(asDrawn, "time_s"));
        assertThat(written.out()).contains("turned by 90");
        assertThat(Files.readString(folder.resolve("lug-with-feeds.nc")))
                .contains("G0 X105 Y60\n")
                .contains("G42 D1 G1 X100 Y60 F")
                .contains("G3 X90 Y100 R10 F");
    }

    private static List<Double> column(Ran ran, String name) {
        List<String> lines = ran.out().lines().toList();
        int column = List.of(lines.get(0).split(",")).indexOf(name);
        return lines.stream()
                .skip(1)
                .map(line -> Double.valueOf(line.split(",", -1)[column]))
                .toList();
    }
}

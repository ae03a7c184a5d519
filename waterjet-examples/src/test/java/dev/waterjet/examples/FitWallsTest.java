package dev.waterjet.examples;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.feed.CutConditions;
import dev.waterjet.feed.MachinabilityFeed;
import dev.waterjet.hydraulics.Orifice;
import dev.waterjet.jet.Abrasive;
import dev.waterjet.jet.CuttingHead;
import dev.waterjet.jet.FocusingTube;
import dev.waterjet.jet.Mesh;
import dev.waterjet.kerf.LagGeometry;
import dev.waterjet.material.Materials;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Measures;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class FitWallsTest {

    private static final String HEADER =
            "reading,thickness_mm,feed_mm_per_min,value_mm,depth_mm,line,radius_mm,turn_deg";

    @TempDir
    private Path directory;

    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();

    private int run(String... args) {
        return Waterjet.run(new PrintWriter(out, true), new PrintWriter(err, true), args);
    }

    private String file(String text) throws IOException {
        return Files.writeString(directory.resolve("walls.csv"), text).toString();
    }

    private double value(String reading, String parameter) {
        return out.toString()
                .lines()
                .map(line -> line.split(",", -1))
                .filter(cells -> cells[0].equals(reading) && cells[2].equals(parameter))
                .mapToDouble(cells -> Double.parseDouble(cells[3]))
                .findFirst()
                .orElseThrow();
    }

    private static String row(String reading, double valueMm, String rest) {
        return String.format(Locale.ROOT, "%n%s,25,60,%.9f,%s", reading, valueMm, rest);
    }

    /** Drag lines k z^2/H and shifts sqrt(R^2 + L^2) - R of known coefficients, with H of the feed model. */
    @Test
    void dragLinesAndArcsGiveTheCoefficientsTheyWereMadeWith() throws IOException {
        double separated = 1e3
                * CutConditions.of(
                                CuttingHead.of(
                                                Orifice.sapphire(Measures.millimetres(0.33)),
                                                FocusingTube.of(Measures.millimetres(1.02), Measures.millimetres(102)))
                                        .jet(
                                                Measures.megapascals(380),
                                                Abrasive.garnet(Mesh.of(80)),
                                                Measures.gramsPerMinute(450)),
                                Workpiece.of(Materials.standard().get("mild-steel"), Measures.millimetres(25)),
                                MachinabilityFeed.published())
                        .separationDepthSi(Kind.SPEED.si(Measures.millimetresPerMinute(60)));
        StringBuilder text = new StringBuilder(HEADER);
        for (double depth : new double[] {8, 16, 24}) {
            text.append(row("lag", 0.31 * depth * depth / separated * 0.99, depth + ",a,,"));
            text.append(row("lag", 0.31 * depth * depth / separated / 0.99, depth + ",b,,"));
        }
        double lag = LagGeometry.TRACTRIX.arcLagSi(1e-4, 5e-3) * 1e3;
        double coefficient = lag * separated / (25 * 25);
        for (double radius : new double[] {5, 8, 10}) {
            text.append(
                    row("arc", -1e3 * LagGeometry.TRACTRIX.arcErrorSi(lag * 1e-3, radius * 1e-3), ",," + radius + ","));
        }

        assertThat(run("fit", "walls", file(text.toString()), "--csv")).isZero();

        assertThat(value("lag", "lag coefficient")).isCloseTo(0.31, within(1e-6));
        assertThat(value("arc", "lag coefficient")).isCloseTo(coefficient, within(1e-6));
    }

    @Test
    void widthsAndCornersAreFittedAndNamedForOtherPrograms() throws IOException {
        String text = HEADER
                + row("width", 1.14, "0,,,")
                + row("width", 1.02, "12,,,")
                + row("width", 0.85, "25,,,")
                + row("corner", -2.0, ",,,90")
                + row("corner", -1.9, ",,,90")
                + row("corner", -2.1, ",,,90");

        assertThat(run("fit", "walls", file(text))).isZero();

        assertThat(out.toString())
                .contains("--dose-spread ", "--half-angle ", "--lag-coefficient ", "--lag-geometry tangent");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "reading,thickness_mm,feed_mm_per_min,value_mm",
                "reading,thickness,feed_mm_per_min,value_mm\nwidth,12,80,1",
                "reading,thickness_mm,feed_mm_per_min,value_mm\nwidth,12,80,1",
                "reading,thickness_mm,feed_mm_per_min,value_mm,depth_mm\nwidht,12,80,1,0",
                "reading,thickness_mm,feed_mm_per_min,value_mm,depth_mm\nwidth,12,80,1,13",
                "reading,thickness_mm,feed_mm_per_min,value_mm,depth_mm\nwidth,12,80,1",
                "reading,thickness_mm,feed_mm_per_min,value_mm,depth_mm\nwidth,12,one,1,0",
                "reading,thickness_mm,feed_mm_per_min,value_mm,value_in\nwidth,12,80,1,0",
            })
    void filesThatCannotBeReadAreRefusedInOneLine(String text) throws IOException {
        assertThat(run("fit", "walls", file(text))).isEqualTo(2);

        assertThat(err.toString().lines()).hasSize(1);
        assertThat(out.toString()).isEmpty();
    }
}

package dev.waterjet.examples;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class FeedProgramsTest {

    @TempDir
    private Path folder;

    private Path cuts() throws IOException {
        StringBuilder text = new StringBuilder(
                "label,test,thickness_mm,index,feed_mm_per_min,pressure_MPa,orifice_mm,tube_mm,abrasive_flow_g_per_min\n");
        double[] noise = {1.03, 0.96, 1.01, 0.98, 1.05, 0.97, 1.02, 0.99};
        for (int i = 0; i < noise.length; i++) {
            double pressure = 280 + 20 * i;
            double thickness = 6 + 2 * (i % 3);
            // the machinability equation with 100 in millimetres, by hand
            double ability = 100
                    * Math.pow(pressure, 1.594)
                    * Math.pow(0.3, 1.374)
                    * Math.pow(350, 0.343)
                    / (788 * Math.pow(0.9, 0.618));
            double feed = noise[i] * Math.pow(ability / thickness, 1.15);
            text.append("cut " + i + ",separation," + thickness + ",1," + feed + "," + pressure + ",0.3,0.9,350\n");
        }
        return Files.writeString(folder.resolve("cuts.csv"), text);
    }

    /** Mild steel of 10 mm by the metric constant 788, evaluated by hand: 603.079 mm/min. */
    @Test
    void curveHasItsColumnsAndTheFeedOfTheEquation() {
        Ran ran = Ran.of(
                "curve",
                "--csv",
                "--thickness",
                "10 mm",
                "--pressure",
                "345 MPa",
                "--orifice",
                "0.35 mm",
                "--tube",
                "1 mm",
                "--abrasive-flow",
                "600 g/min",
                "--model",
                "machinability,erosion");

        assertThat(ran.err()).isEmpty();
        assertThat(ran.out())
                .startsWith("model,material,thickness_m,quality,index,speed_m_per_s,standard_uncertainty_m_per_s\n");
        CSVRecord row = ran.rows().get(0);
        assertThat(row.get("model")).isEqualTo("machinability");
        assertThat(row.get("material")).isEqualTo("mild-steel-a36");
        assertThat(row.get("quality")).isEqualTo("very coarse");
        assertThat(60e3 * Double.parseDouble(row.get("speed_m_per_s"))).isCloseTo(603.079, within(0.01));
        assertThat(ran.rows()).hasSize(2);
        assertThat(ran.status()).isZero();
    }

    @Test
    void curveGivesTheThicknessOfAFeedRate() {
        Ran there = Ran.of("curve", "--csv", "--thickness", "17 mm", "--index", "2.5");
        String feed = there.rows().get(0).get("speed_m_per_s") + " m/s";
        Ran back = Ran.of("curve", "--csv", "--feed", feed, "--index", "2.5");

        assertThat(Double.parseDouble(back.rows().get(0).get("thickness_m"))).isCloseTo(0.017, within(1e-12));
        assertThat(back.rows().get(0).get("quality")).isEmpty();
    }

    @Test
    void curveDrawsBandsAndCuts() throws IOException {
        Path svg = folder.resolve("curve.svg");
        Ran ran = Ran.of("curve", "--svg", svg.toString(), "--cuts", cuts().toString());

        assertThat(ran.err()).isEmpty();
        assertThat(ran.out()).contains("Drawn to ");
        assertThat(Files.readString(svg)).contains("<svg", "test cuts", "95 % of");
    }

    @Test
    void curveRefusesUnknownModelsAndMaterials() {
        assertThat(Ran.of("curve", "--model", "guess").err())
                .contains("unknown model \"guess\"; use one of machinability");
        Ran pine = Ran.of("curve", "--model", "erosion", "--material", "pine");
        assertThat(pine.status()).isEqualTo(2);
        assertThat(pine.err()).contains("no flow strength of Pine wood").hasLineCount(1);
        assertThat(Ran.of("curve", "--index", "0.5").err()).contains("quality index is 0.5; it must be at least 1");
    }

    @Test
    void fitFindsTheMachinabilityOfTheCuts() throws IOException {
        Path svg = folder.resolve("residuals.svg");
        Ran ran = Ran.of("fit", cuts().toString(), "--csv", "--svg", svg.toString());

        assertThat(ran.err()).isEmpty();
        assertThat(ran.out()).startsWith("parameter,value,standard_error,lower,upper\n");
        CSVRecord row = ran.rows().get(0);
        assertThat(Double.parseDouble(row.get("value"))).isCloseTo(100, within(1.5));
        assertThat(Double.parseDouble(row.get("lower"))).isLessThan(100);
        assertThat(Double.parseDouble(row.get("upper"))).isGreaterThan(100);
        assertThat(Files.readString(svg)).contains("<svg", "test cuts");
    }

    @Test
    void aSavedCalibrationPredictsAsTheCutsDid() throws IOException {
        Path own = folder.resolve("own.json");
        String setting = "thickness=9 mm, pressure=340 MPa";
        Ran first = Ran.of("fit", cuts().toString(), "--csv", "--predict", setting, "--save", own.toString());
        Ran again = Ran.of("fit", "--calibration", own.toString(), "--csv", "--predict", setting);

        assertThat(first.err()).isEmpty();
        assertThat(first.out())
                .contains("\n\nprediction,feed_m_per_s,standard_uncertainty,lower,upper,degrees_of_freedom\n");
        assertThat(again.out()).isEqualTo(first.out());
    }

    @Test
    void aCalibrationChangedByHandIsRefused() throws IOException {
        Path own = folder.resolve("own.json");
        Ran.of("fit", cuts().toString(), "--csv", "--save", own.toString());
        Files.writeString(own, Files.readString(own).replaceFirst("\"value\" : 1", "\"value\" : 2"));

        assertThat(Ran.of("fit", "--calibration", own.toString()).err()).contains("changed by hand");
    }

    /** Calibrated titanium: programs compute its feed rate with the calibration, and that of granite with a caution. */
    @Test
    void programsTakeACalibration() throws IOException {
        Path own = saved("--material", "titanium");
        String predicted = Ran.of(
                        "fit",
                        "--calibration",
                        own.toString(),
                        "--csv",
                        "--predict",
                        "thickness=9 mm, pressure=340 MPa")
                .out();
        String[] jet = {
            "--thickness",
            "9 mm",
            "--pressure",
            "340 MPa",
            "--orifice",
            "0.3 mm",
            "--tube",
            "0.9 mm",
            "--abrasive-flow",
            "350 g/min",
            "--calibration",
            own.toString(),
            "--csv"
        };
        CSVRecord calibrated = Ran.of(with(jet, "curve")).rows().get(0);

        assertThat(calibrated.get("model")).isEqualTo("calibration");
        assertThat(calibrated.get("material")).isEqualTo("titanium");
        assertThat(predicted).contains("\nprediction," + calibrated.get("speed_m_per_s") + ",");
        assertThat(Ran.of(with(jet, "curve", "--material", "titanium")).out())
                .isEqualTo(Ran.of(with(jet, "curve")).out());
        assertThat(Ran.of(with(jet, "curve", "--material", "granite"))
                        .rows()
                        .get(0)
                        .get("model"))
                .isEqualTo("machinability");
        assertThat(Ran.of("curve", "--material", "granite", "--calibration", own.toString())
                        .out())
                .contains("no calibration is for Granite");
        for (String program : List.of("kerf", "sensitivity", "heads")) {
            assertThat(Ran.of(program, "--material", "titanium", "--thickness", "9 mm", "--calibration", own.toString())
                            .status())
                    .isZero();
        }
    }

    @Test
    void theShopFileNamesCalibrations() throws IOException {
        Path own = saved("--material", "titanium");
        Path named = folder.resolve("shop.json");
        Files.writeString(named, "{\"calibrations\": [\"own.json\"]}");
        Path inside = folder.resolve("inside.json");
        Files.writeString(inside, "{\"calibrations\": [" + Files.readString(own) + "]}");
        String direct = Ran.of("curve", "--material", "titanium", "--csv", "--calibration", own.toString())
                .out();

        for (Path shop : List.of(named, inside)) {
            assertThat(Ran.of("curve", "--material", "titanium", "--csv", "--shop", shop.toString())
                            .out())
                    .isEqualTo(direct);
        }
    }

    @Test
    void aCalibrationWithoutMaterialIsForTheStatedOneOnly() throws IOException {
        Path own = saved();

        assertThat(Ran.of("curve", "--calibration", own.toString()).err())
                .contains("does not state the material of its cuts")
                .hasLineCount(1);
        assertThat(Ran.of("curve", "--csv", "--material", "titanium", "--calibration", own.toString())
                        .rows()
                        .get(0)
                        .get("model"))
                .isEqualTo("calibration");
    }

    /** Intervals that all overlap show no scatter; a prior of it alone is enough. */
    @Test
    void aLadderWithoutMaterialTakesAPriorOfTheScatter() throws IOException {
        Path ladder = Files.writeString(folder.resolve("ladder.csv"), """
            test,thickness_mm,feed_mm_per_min,failed_feed_mm_per_min,pressure_MPa,orifice_mm,tube_mm,abrasive_flow_g_per_min
            interval,10,300,330,360,0.3,0.9,350
            interval,10,310,340,360,0.3,0.9,350
            """);

        assertThat(Ran.of("fit", ladder.toString()).err())
                .contains("give a prior")
                .hasLineCount(1);
        assertThat(Ran.of("fit", ladder.toString(), "--prior", "scatter", "--csv")
                        .rows()
                        .get(0)
                        .get("parameter"))
                .isEqualTo("machinability");
        assertThat(Ran.of("fit", ladder.toString(), "--prior", "luck").err()).contains("unknown prior \"luck\"");
    }

    @Test
    void aFileOfSeveralMaterialsHasAFactorOfTheShop() throws IOException {
        List<String> lines = Files.readAllLines(cuts());
        StringBuilder text = new StringBuilder(lines.get(0) + ",material\n");
        for (int i = 1; i < lines.size(); i++) {
            text.append(lines.get(i) + (i % 2 == 0 ? ",titanium\n" : ",mild-steel-a36\n"));
        }
        Path both = Files.writeString(folder.resolve("both.csv"), text);
        Ran ran = Ran.of("fit", both.toString(), "--csv", "--material", "granite", "--predict", "thickness=9 mm");

        assertThat(ran.err()).isEmpty();
        assertThat(ran.out())
                .startsWith("parameter,value,standard_error,lower,upper\nshop factor,")
                .contains(
                        "\nmachinability of titanium,",
                        "\nmachinability of mild-steel-a36,",
                        "\n\nprediction,feed_m_per_s,");
        assertThat(Ran.of("fit", both.toString(), "--predict", "thickness=9 mm").out())
                .contains("Scatter of a cut", "degrees of freedom");
        assertThat(Ran.of("fit", both.toString(), "--quantiles", "none.svg").err())
                .contains("a file of several materials");
        assertThat(Ran.of("fit", both.toString(), "--next").err())
                .contains("a file of several materials")
                .hasLineCount(1);
    }

    private Path saved(String... more) throws IOException {
        Path own = folder.resolve("own.json");
        assertThat(Ran.of(with(more, "fit", cuts().toString(), "--save", own.toString()))
                        .err())
                .isEmpty();
        return own;
    }

    private static String[] with(String[] rest, String... first) {
        return Stream.concat(Stream.of(first), Stream.of(rest)).toArray(String[]::new);
    }

    @Test
    void rivalsAreComparedAndTheNextCutIsRanked() throws IOException {
        Ran ran = Ran.of("fit", cuts().toString(), "--csv", "--compare", "specific-energy", "--next");

        assertThat(ran.err()).isEmpty();
        assertThat(ran.out())
                .contains("\n\ncomparison,verdict,difference,standard_error,")
                .contains("\n\nnext,test,plate,gauge_pressure_Pa,thickness_m,trial_feed_m_per_s,step,narrowing,cost,");
    }

    /** With the pressure exponent free only a change of the pressure says more; with none free all settings are alike. */
    @Test
    void theSettingToVaryIsNamed() throws IOException {
        assertThat(Ran.of("fit", cuts().toString(), "--free", "pressure", "--next", "--predict", "pressure=200 MPa")
                        .out())
                .contains("Setting that narrows most when it is changed: gauge pressure 150 MPa");
        assertThat(Ran.of("fit", cuts().toString(), "--next").out()).contains("No change of a setting narrows more");
    }

    @Test
    void fitPrintsEveryCutForPeople() throws IOException {
        Ran ran = Ran.of("fit", cuts().toString(), "--free", "pressure", "--robust");

        assertThat(ran.err()).isEmpty();
        assertThat(ran.out())
                .contains("machinability", "pressure exponent", "Correlation of machinability and pressure exponent")
                .contains("cut 7", "leverage", "degrees of freedom");
        assertThat(Ran.of("fit", cuts().toString(), "--model", "specific-energy")
                        .out())
                .contains("specific energy in J/m3");
    }

    @Test
    void fitRefusesInOneLine() throws IOException {
        Ran ran = Ran.of("fit", cuts().toString(), "--free", "orifice");
        assertThat(ran.status()).isEqualTo(2);
        assertThat(ran.err()).contains("do not determine").hasLineCount(1);
        assertThat(Ran.of("fit", folder.resolve("none.csv").toString()).err()).contains("file not found");
        assertThat(Ran.of("fit", cuts().toString(), "--free", "luck").err()).contains("unknown exponent \"luck\"");
        assertThat(Ran.of("fit", cuts().toString(), "--model", "luck").err()).contains("unknown model \"luck\"");
    }

    /** Of first order the shares of a product are those of the squared exponents times spreads. */
    @Test
    void sensitivityGivesTheSharesOfAProduct() {
        Ran ran = Ran.of("sensitivity", "--csv", "--threads", "2");

        assertThat(ran.err()).isEmpty();
        assertThat(ran.out())
                .startsWith(
                        "input,relative_spread,contribution_m_per_s,first_order_share,standard_error,total_share\n");
        double[] parts = {
            1.594 * 1.15 * 0.02,
            1.374 * 1.15 * 0.02,
            0.618 * 1.15 * 0.05,
            0.343 * 1.15 * 0.05,
            1.15 * 0.01,
            Math.hypot(0.15, 1.15 * 0.1)
        };
        double sum = 0;
        for (double part : parts) {
            sum += part * part;
        }
        for (int i = 0; i < parts.length; i++) {
            assertThat(Double.parseDouble(ran.rows().get(i).get("first_order_share")))
                    .isCloseTo(parts[i] * parts[i] / sum, within(0.02));
        }
        assertThat(Ran.of("sensitivity", "--csv", "--threads", "1").out()).isEqualTo(ran.out());
        assertThat(Ran.of("sensitivity", "--progress", "--trials", "9000").err())
                .contains("100 % of the trials");
    }
}

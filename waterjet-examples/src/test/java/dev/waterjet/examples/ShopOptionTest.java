package dev.waterjet.examples;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The shop file gives defaults, and options override it. */
class ShopOptionTest {

    private static final String SHOP = "src/test/resources/dev/waterjet/examples/shop/hollow-ridge.json";

    private static Ran run(String... args) {
        return Ran.of(args);
    }

    @Test
    void theHeadOfTheShopIsTheDefault() {
        String typed = run(
                        "curve",
                        "--csv",
                        "--pressure",
                        "360 MPa",
                        "--orifice",
                        "0.30 mm",
                        "--tube",
                        "0.91 mm",
                        "--tube-length",
                        "76 mm",
                        "--stand-off",
                        "1.5 mm",
                        "--mesh",
                        "120",
                        "--abrasive-flow",
                        "350 g/min")
                .out();
        String shop = run("curve", "--csv", "--shop", SHOP).out();

        assertThat(shop).isEqualTo(typed).isNotEqualTo(run("curve", "--csv").out());
    }

    @Test
    void optionsOverrideTheShop() {
        String fromShop = run("curve", "--csv", "--shop=" + SHOP).out();
        String overridden =
                run("curve", "--csv", "--shop=" + SHOP, "--pressure", "300 MPa").out();

        assertThat(overridden).isNotEqualTo(fromShop);
        assertThat(overridden)
                .isEqualTo(run("curve", "--csv", "--pressure", "300 MPa", "--shop", SHOP)
                        .out());
    }

    @Test
    void theMachineOfTheShopPlansAsItsOptionsDo(@TempDir Path folder) throws IOException {
        Path file = folder.resolve("shop.json");
        Files.writeString(file, """
            {"units": "inch", "machine": {"rapid_speed": "9 m/min", "acceleration": "0.7 m/s2", "jerk": "15 m/s3",
             "corner_deviation": "0.03 mm", "pierce_delay": "1.5 s", "move_delay": "0.25 s"}}\
            """, StandardCharsets.UTF_8);
        String[] typed = {
            "--rapid-speed=9 m/min",
            "--machine-acceleration=0.7 m/s2",
            "--machine-jerk=15 m/s3",
            "--corner-deviation=0.03 mm",
            "--per-pierce=1.5 s",
            "--per-move=0.25 s",
            "--units=inch"
        };
        String shop = plan(folder, "--shop=" + file);

        assertThat(shop).isEqualTo(plan(folder, typed)).contains(" in/min");
        for (String option : typed) {
            List<String> others = new ArrayList<>(List.of(typed));
            others.remove(option);
            assertThat(plan(folder, others.toArray(String[]::new))).as(option).isNotEqualTo(shop);
        }
    }

    @Test
    void theTiltingHeadOfTheShopPlansAsItsOptionsDo(@TempDir Path folder) throws IOException {
        Path file = folder.resolve("shop.json");
        Files.writeString(file, """
            {"machine": {"tilt": "7 deg", "tilt_speed": "40 deg/s", "tilt_acceleration": "200 deg/s2", "tilt_lead": 0}}\
            """, StandardCharsets.UTF_8);
        String[] typed = {"--tilt=7 deg", "--tilt-speed=40 deg/s", "--tilt-acceleration=200 deg/s2", "--tilt-lead=0"};
        String shop = plan(folder, "--shop=" + file);

        assertThat(shop).isEqualTo(plan(folder, typed)).contains("-moves.csv");
        for (String option : List.of(typed[0], typed[3])) {
            List<String> others = new ArrayList<>(List.of(typed));
            others.remove(option);
            assertThat(plan(folder, others.toArray(String[]::new))).as(option).isNotEqualTo(shop);
        }
    }

    /** Summary and JSON of the built-in part. */
    private static String plan(Path folder, String... options) {
        List<String> args =
                new ArrayList<>(List.of("plan", "--output-dir=" + folder.resolve("out"), "--orifice=0.33 mm"));
        args.addAll(List.of(options));
        String summary = run(args.toArray(String[]::new)).out().replace("replaced:", "written:");
        args.add("--json");
        return summary + run(args.toArray(String[]::new)).out();
    }

    @Test
    void materialsOfTheShopAreListedAndTaken() {
        assertThat(run("materials", "--shop", SHOP).out()).contains("dome-steel");
        assertThat(run("materials").out()).doesNotContain("dome-steel");
        assertThat(run("heads", "--material", "dome-steel", "--thickness", "10 mm", "--shop", SHOP)
                        .status())
                .isZero();
        assertThat(run("heads", "--material", "dome-steel", "--thickness", "10 mm")
                        .status())
                .isEqualTo(2);
    }

    @Test
    void faultsOfTheShopFileAreOneLine(@TempDir Path folder) throws IOException {
        Path bad = folder.resolve("shop.json");
        Files.writeString(bad, "{\"pump\": {\"power\": \"-3 kW\"}}", StandardCharsets.UTF_8);

        Ran refused = run("heads", "--shop", bad.toString());
        assertThat(refused.status()).isEqualTo(2);
        assertThat(refused.err()).contains("pump.power").hasLineCount(1);
        assertThat(run("heads", "--shop", folder.resolve("none.json").toString())
                        .status())
                .isEqualTo(2);
        assertThat(run("heads", "--shop").status()).isEqualTo(2);
    }
}

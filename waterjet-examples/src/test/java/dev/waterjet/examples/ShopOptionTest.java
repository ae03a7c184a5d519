package dev.waterjet.examples;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
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

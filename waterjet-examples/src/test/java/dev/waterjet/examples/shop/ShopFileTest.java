package dev.waterjet.examples.shop;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.cost.CostItem;
import dev.waterjet.examples.shop.ShopFile.LengthUnits;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.TextException;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ShopFileTest {

    private static String json() throws IOException {
        return Files.readString(
                Path.of("src/test/resources/dev/waterjet/examples/shop/hollow-ridge.json"), StandardCharsets.UTF_8);
    }

    @Test
    void aWholeFileIsRead() throws IOException {
        ShopFile shop = ShopFile.parse(json());

        assertThat(shop.units()).contains(LengthUnits.METRIC);
        assertThat(shop.defaultOf("--units")).contains("metric");
        assertThat(ShopFile.empty().units()).isEmpty();
        assertThat(Kind.SPEED.si(shop.quantity(ShopKey.RAPID_SPEED, Kind.SPEED).orElseThrow()))
                .isCloseTo(0.2, within(1e-12));
        assertThat(Kind.TIME.si(shop.quantity(ShopKey.PIERCE_DELAY, Kind.TIME).orElseThrow()))
                .isCloseTo(0.4, within(1e-12));
        assertThat(shop.defaultOf("--mesh")).contains("120");
        assertThat(shop.defaultOf("--pressure")).contains("360 MPa");
        assertThat(shop.defaultOf("--price")).isEmpty();
        assertThat(shop.hasHead()).isTrue();
        assertThat(shop.prices()).containsEntry(CostItem.TUBE, 120.0).hasSize(8);
        assertThat(shop.inventory().orElseThrow().size()).isEqualTo(2 * 2 * 1 * 2 * 2);
        assertThat(shop.materials()).hasSize(1);
        assertThat(shop.materials().get(0).machinabilitySi()).isEqualTo(82);
        assertThat(shop.programCodes()).contains("codes.txt");
    }

    @Test
    void whatIsPrintedIsReadBackAsTheSame() throws IOException {
        ShopFile shop = ShopFile.parse(json());

        assertThat(ShopFile.parse(shop.print())).isEqualTo(shop).hasSameHashCodeAs(shop);
        assertThat(ShopFile.parse(shop.print()).values()).isEqualTo(shop.values());
        assertThat(ShopFile.empty()).isNotEqualTo(shop);
    }

    @Test
    void calibrationsAreKeptWordForWord() {
        String saved = "{\"material\":\"dome-steel\",\"exponents\":[1.25,0.5],\"fitted\":{\"at\":1}}";
        ShopFile shop = ShopFile.parse("{\"calibrations\": [" + saved + "]}");

        assertThat(shop.calibrations()).containsExactly(saved);
        assertThat(ShopFile.parse(shop.print()).calibrations()).containsExactly(saved);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "{\"machine\":{\"acceleration\":\"-1 m/s2\"}}|shop-value|machine.acceleration",
                "{\"machine\":{\"jerk\":\"0 m/s3\"}}|shop-value|machine.jerk",
                "{\"machine\":{\"pierce_delay\":\"-0.1 s\"}}|shop-value|machine.pierce_delay",
                "{\"machine\":{\"rapid_speed\":12}}|shop-value|machine.rapid_speed",
                "{\"machine\":{\"rapid_speed\":\"12 kg\"}}|shop-value|machine.rapid_speed",
                "{\"machine\":[]}|shop-value|machine",
                "{\"machine\":{\"speed\":\"1 m/s\"}}|shop-key|machine.speed",
                "{\"pumps\":{}}|shop-key|pumps",
                "{\"head\":{\"mesh\":\"eighty\"}}|shop-value|head.mesh",
                "{\"head\":{\"mesh\":7777}}|shop-value|head.mesh",
                "{\"units\":\"feet\"}|shop-value|units",
                "{\"prices\":{\"machine\":\"90\"}}|shop-value|prices.machine",
                "{\"prices\":{\"machine\":-90}}|shop-value|prices.machine",
                "{\"prices\":{\"coffee\":1}}|shop-key|prices.coffee",
                "{\"inventory\":{\"orifices\":[\"0.3 mm\"]}}|shop-value|inventory.meshes",
                "{\"inventory\":{\"orifices\":[\"0.3\"]}}|shop-value|inventory.orifices",
                "{\"materials\":[{\"id\":\"x\"}]}|shop-value|materials[0].machinability",
                "{\"materials\":[{\"machinability\":3}]}|shop-value|materials[0]",
                "{\"materials\":[{\"id\":\"No"
                        + " Good\",\"machinability\":3,\"relative_uncertainty\":0.1}]}|shop-value|materials[0]",
                "{\"materials\":[{\"id\":\"x\",\"machinability\":3,\"relative_uncertainty\":0.1,\"class\":\"odd\"}]}"
                        + "|shop-value|materials[0].class",
                "{\"calibrations\":{}}|shop-value|calibrations",
                "{\"calibrations\":[3]}|shop-value|calibrations[0]",
            })
    void faultsNameTheKey(String json, String code, String key) {
        assertThatThrownBy(() -> ShopFile.parse(json)).isInstanceOfSatisfying(TextException.class, refusal -> {
            assertThat(refusal.code()).isEqualTo(code);
            assertThat(refusal.parameters()).containsEntry("key", key);
        });
    }

    @Test
    void aValueBelowItsLimitIsRefusedWithBoth() {
        assertThatThrownBy(() -> ShopFile.parse("{\"head\":{\"orifice\":\"-0.3 mm\"}}"))
                .hasMessageContaining("-0.3 mm")
                .hasMessageContaining("above 0 mm");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "|1",
                "[]|0",
                "{\"units\":|1",
                "{\"units\":\"inch\",\"units\":\"metric\"}|1",
                "{} {}|1",
                "part,size|1"
            })
    void whatIsNotJsonIsRefusedWithItsPlace(String json, int line) {
        String text = json == null ? "{" : json;
        assertThatThrownBy(() -> ShopFile.parse(text)).isInstanceOfSatisfying(TextException.class, refusal -> {
            assertThat(refusal.code()).isEqualTo("shop-syntax");
            assertThat(refusal.line()).isEqualTo(line);
        });
    }
}

package dev.waterjet.examples.drawing;

import static org.assertj.core.api.Assertions.assertThat;

import dev.waterjet.examples.dxf.DxfReader;
import dev.waterjet.examples.shop.ShopFile;
import dev.waterjet.examples.svg.SvgReader;
import dev.waterjet.measure.Measures;
import dev.waterjet.measure.WaterjetException;
import dev.waterjet.part.Contour;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Drawings and shop files with bytes changed at random, from a fixed seed: each is read or refused in words of the library.
 * {@code .ci/fuzz} searches for longer.
 */
class MutatedInputsTest {

    private static final Path FOLDER = Path.of("src/test/resources/dev/waterjet/examples");
    private static final int ROUNDS = 250;
    private static final String[] WORDS = {
        "0",
        "-1",
        "1e308",
        "-1e-308",
        "NaN",
        "\n0\nENDSEC\n",
        "\n70\n1\n",
        "SPLINE",
        "\"",
        "<",
        "/>",
        "{",
        "]",
        "m0 0z",
        "\n",
        "999999999999",
        "\u0000",
        "\u00e9",
        "null",
        "[[",
        " 11\n"
    };

    /** A text with one to four changes: a byte, a stretch left out, one repeated, a word put in. */
    private static String mutated(String text, Random random) {
        StringBuilder changed = new StringBuilder(text);
        for (int k = random.nextInt(4); k >= 0; k--) {
            int at = random.nextInt(changed.length());
            int end = Math.min(changed.length(), at + 1 + random.nextInt(40));
            switch (random.nextInt(4)) {
                case 0 -> changed.setCharAt(at, (char) (32 + random.nextInt(95)));
                case 1 -> changed.delete(at, end);
                case 2 -> changed.insert(at, changed.substring(at, end));
                default -> changed.insert(at, WORDS[random.nextInt(WORDS.length)]);
            }
            if (changed.length() == 0) {
                changed.append('0');
            }
        }
        return changed.toString();
    }

    private static String text(String file) throws IOException {
        return Files.readString(FOLDER.resolve(file), StandardCharsets.UTF_8);
    }

    private static void assertNamed(WaterjetException refused, String text) {
        assertThat(refused.code()).as(text).isNotEqualTo("unspecified");
        assertThat(refused.getMessage()).as(text).isNotBlank();
    }

    private static void assertSound(Drawing drawing, String text) {
        assertThat(drawing.summary()).isNotBlank();
        for (Contour contour : drawing.contours()) {
            assertThat(contour.lengthSi()).as(text).isPositive().isFinite();
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "flange-r12.dxf",
                "bracket-2000.dxf",
                "spline-2018-inch.dxf",
                "shutters-2000.dxf",
                "exploded-2010-cm.dxf",
                "layers-in-groups.svg",
                "references.svg",
                "classes-in-points.svg"
            })
    void aDrawingIsReadOrRefused(String file) throws IOException {
        String text = text("drawings/" + file);
        DrawingSettings settings = DrawingSettings.defaults().withUnit(Measures.millimetres(1));
        Random random = new Random(file.hashCode());
        int read = 0;
        for (int i = 0; i < ROUNDS; i++) {
            String changed = mutated(text, random);
            try {
                assertSound(
                        file.endsWith(".svg") ? SvgReader.read(changed, settings) : DxfReader.read(changed, settings),
                        changed);
                read++;
            } catch (WaterjetException refused) {
                assertNamed(refused, changed);
            }
        }

        assertThat(read).isBetween(1, ROUNDS - 1);
    }

    @ParameterizedTest
    @ValueSource(longs = {3, 14, 15})
    void aShopFileIsReadAndPrintedOrRefused(long seed) throws IOException {
        String text = text("shop/hollow-ridge.json");
        Random random = new Random(seed);
        int read = 0;
        for (int i = 0; i < ROUNDS; i++) {
            String changed = mutated(text, random);
            ShopFile shop;
            try {
                shop = ShopFile.parse(changed);
            } catch (WaterjetException refused) {
                assertNamed(refused, changed);
                continue;
            }
            read++;
            ShopFile back = ShopFile.parse(shop.print());
            assertThat(back.values()).isEqualTo(shop.values());
            assertThat(back.materials()).isEqualTo(shop.materials());
        }

        assertThat(read).isBetween(1, ROUNDS - 1);
    }
}

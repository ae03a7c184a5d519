package dev.waterjet.examples.fuzz;

import dev.waterjet.examples.shop.ShopFile;
import dev.waterjet.measure.WaterjetException;
import java.nio.charset.StandardCharsets;

/**
 * Whatever text comes as a shop file, it is read or refused in words of the library; and what was read is printed and read back
 * as the same. Started by {@code .ci/fuzz}.
 */
public final class ShopFuzz {

    private ShopFuzz() {}

    /**
     * One run.
     *
     * @param data the shop file in UTF-8
     */
    public static void fuzzerTestOneInput(byte[] data) {
        ShopFile shop;
        try {
            shop = ShopFile.parse(new String(data, StandardCharsets.UTF_8));
        } catch (WaterjetException refused) {
            if (refused.getMessage().isBlank() || refused.code().equals("unspecified")) {
                throw new IllegalStateException("refused without code or word: " + refused);
            }
            return;
        }
        ShopFile back = ShopFile.parse(shop.print());
        boolean isSame = back.equals(shop)
                && back.values().equals(shop.values())
                && back.prices().equals(shop.prices())
                && back.materials().equals(shop.materials());
        if (!isSame) {
            throw new IllegalStateException("what was printed is read back differently:\n" + shop.print());
        }
    }
}

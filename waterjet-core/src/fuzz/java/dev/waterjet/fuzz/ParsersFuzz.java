package dev.waterjet.fuzz;

import com.code_intelligence.jazzer.api.FuzzedDataProvider;
import dev.waterjet.calibrate.TestCutText;
import dev.waterjet.material.Materials;
import dev.waterjet.measure.CsvText;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.WaterjetException;
import dev.waterjet.program.PartProgram;

/** Whatever text comes, every parser reads it or refuses it in words of its own. Started by {@code .ci/fuzz}. */
public final class ParsersFuzz {

    private ParsersFuzz() {}

    /**
     * One run: a parser and a text, both chosen by the fuzzer.
     *
     * @param data bytes from the fuzzer
     */
    public static void fuzzerTestOneInput(FuzzedDataProvider data) {
        int parser = data.consumeInt(0, 5);
        Kind<?> kind = Kind.all().get(data.consumeInt(0, Kind.all().size() - 1));
        String text = data.consumeRemainingAsString();
        try {
            parse(parser, kind, text);
        } catch (WaterjetException refused) {
            if (refused.getMessage() == null || refused.getMessage().isBlank()) {
                throw new IllegalStateException("refused without a word", refused);
            }
        }
    }

    private static void parse(int parser, Kind<?> kind, String text) {
        switch (parser) {
            case 0 -> PartProgram.parse(text);
            case 1 -> Materials.parse(text);
            case 2 -> CsvText.parse(text);
            case 3 -> TestCutText.parse(text);
            case 4 -> QuantityText.print(kind.parse(text));
            default -> QuantityArray.parse(kind, text);
        }
    }
}

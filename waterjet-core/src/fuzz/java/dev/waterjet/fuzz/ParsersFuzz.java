package dev.waterjet.fuzz;

import dev.waterjet.calibrate.TestCut;
import dev.waterjet.head.HeadInventory;
import dev.waterjet.material.Materials;
import dev.waterjet.measure.CsvText;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Measures;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.WaterjetException;
import dev.waterjet.program.CutFeeds;
import dev.waterjet.program.PartProgram;
import dev.waterjet.program.ProgramChecks;
import dev.waterjet.program.ProgramCodes;
import dev.waterjet.program.ProgramCut;
import dev.waterjet.program.ProgramWriter;
import dev.waterjet.quality.EdgeRequirement;
import dev.waterjet.quality.QualityScale;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import javax.measure.Quantity;

/**
 * Whatever text comes, every parser reads it or refuses it in words of its own; and what it has read can be used. Started by
 * {@code .ci/fuzz}.
 */
public final class ParsersFuzz {

    /** One letter for each parser, the first of a text. */
    private static final String PARSERS = "pmctqurshd";

    private ParsersFuzz() {}

    /**
     * One run. The first letter names the parser, the second the kind of quantity.
     *
     * @param data bytes from the fuzzer
     */
    public static void fuzzerTestOneInput(byte[] data) {
        if (data.length < 2) {
            return;
        }
        int named = PARSERS.indexOf(data[0]);
        char parser = named >= 0 ? (char) data[0] : PARSERS.charAt(Math.floorMod(data[0], PARSERS.length()));
        Kind<?> kind = Kind.all().get(Math.floorMod(data[1], Kind.all().size()));
        String text = new String(data, 2, data.length - 2, StandardCharsets.UTF_8);
        try {
            parse(parser, kind, text);
        } catch (WaterjetException refused) {
            require(refused.getMessage() != null && !refused.getMessage().isBlank(), "refused without a word");
        }
    }

    private static void parse(char parser, Kind<?> kind, String text) {
        switch (parser) {
            case 'p' -> program(text);
            case 'd' -> codes(text);
            case 'm' -> Materials.parse(text);
            case 'c' -> table(text);
            case 't' -> cuts(text);
            case 'q' -> quantity(kind, text);
            case 'u' -> QuantityText.parseUnit(kind, text);
            case 'r' ->
                QuantityArray.parse(kind, text).stream()
                        .forEach(si -> require(Double.isFinite(si), "a value of a range is not finite"));
            case 's' ->
                QualityScale.parse(text)
                        .forThickness(Measures.millimetres(10))
                        .level(QualityScale.Measure.ROUGHNESS_RA, Measures.micrometres(3));
            default -> HeadInventory.parse(text);
        }
    }

    private static void program(String text) {
        PartProgram program = PartProgram.parse(text);
        require(isFinite(Kind.LENGTH.si(program.cuttingLength())), "the length of cuts is not finite");
        require(isFinite(Kind.LENGTH.si(program.rapidLength())), "the length of moves is not finite");
        int blocks = 0;
        for (ProgramCut cut : program.cuts()) {
            blocks += cut.path(EdgeRequirement.defaults()).size();
            require(cut.isClosed() == cut.loop(EdgeRequirement.defaults()).isPresent(), "a closed cut has no loop");
        }
        require(blocks == program.size(), "blocks are missing");
        double[] feeds = new double[blocks];
        Arrays.fill(feeds, 0.01);
        PartProgram written = again(() -> PartProgram.parse(program.withFeedsSi(feeds)));
        require(written.size() == blocks, "the program with feeds has other blocks");
        ProgramChecks.defaults().check(program);
        List<CutFeeds> halves = program.cuts().stream().map(ParsersFuzz::halves).toList();
        String rewritten = ProgramWriter.of(program.codes()).rewrite(program, halves);
        try {
            PartProgram split = PartProgram.parse(rewritten);
            require(split.cuts().size() == program.cuts().size(), "the split program has other cuts");
        } catch (WaterjetException refused) {
            // a contour that only touches itself within an arc may be parted by the rounding of the new ends
            if (!refused.code().equals("contour-not-closed")) {
                throw new IllegalStateException("a split program is not read back", refused);
            }
        }
    }

    private static CutFeeds halves(ProgramCut cut) {
        double length = Kind.LENGTH.si(cut.length());
        return CutFeeds.ofSi(new double[] {length / 2, length}, new double[] {0.01, 0.002});
    }

    private static void codes(String text) {
        ProgramCodes codes = ProgramCodes.parse(text);
        require(
                again(() -> ProgramCodes.parse(codes.text())).equals(codes),
                "codes are not read back as they were written");
    }

    private static void table(String text) {
        StringBuilder written = new StringBuilder();
        List<CsvText.Row> rows = CsvText.parse(text);
        rows.forEach(row -> written.append(CsvText.row(row.cells())).append('\n'));
        List<List<String>> back = again(() -> CsvText.parse(written.toString())).stream()
                .map(CsvText.Row::cells)
                .toList();
        require(
                back.equals(rows.stream().map(CsvText.Row::cells).toList()),
                "a table is not read back as it was written");
    }

    private static void cuts(String text) {
        List<TestCut> cuts = TestCut.parse(text);
        require(again(() -> TestCut.parse(TestCut.print(cuts))).size() == cuts.size(), "cuts are missing");
    }

    private static <Q extends Quantity<Q>> void quantity(Kind<Q> kind, String text) {
        Quantity<Q> quantity = kind.parse(text);
        require(isFinite(kind.si(quantity)), "a quantity is not finite");
        Quantity<Q> back = again(() -> kind.parse(QuantityText.print(quantity)));
        require(back.getValue().doubleValue() == quantity.getValue().doubleValue(), "a quantity is not read back");
    }

    /** Reads what the library itself has written, and so must not refuse. */
    private static <T> T again(java.util.function.Supplier<T> reading) {
        try {
            return reading.get();
        } catch (WaterjetException refused) {
            throw new IllegalStateException("what was written is not read back", refused);
        }
    }

    private static boolean isFinite(double number) {
        return Double.isFinite(number);
    }

    private static void require(boolean holds, String otherwise) {
        if (!holds) {
            throw new IllegalStateException(otherwise);
        }
    }
}

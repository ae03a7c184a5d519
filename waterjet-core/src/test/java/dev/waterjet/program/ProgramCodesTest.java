package dev.waterjet.program;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import dev.waterjet.Refusals;
import dev.waterjet.measure.TextException;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ProgramCodesTest {

    @Test
    void anEmptyFileMeansTheDefaults() {
        assertThat(ProgramCodes.parse("")).isEqualTo(ProgramCodes.defaults());
        assertThat(ProgramCodes.parse("# my machine\r\n\r\n  Decimals=3\r\n")).isEqualTo(ProgramCodes.defaults());
    }

    @Test
    void aFileSetsWhatItNames() {
        ProgramCodes codes = ProgramCodes.parse("""
            jet_off = 3
            jet_on = m5
            pass_through = G49, m8 9
            dwell = g4 x s
            offset_feed = Edge
            decimals = 2
            arcs = R
            line_ending = CRLF
            sub_programs = refused
            open_contours = yes
            start = G17 G40
            start = G94
            """);

        assertThat(codes.jetOn()).isEqualTo(5);
        assertThat(codes.jetOff()).isEqualTo(3);
        assertThat(codes.passThrough()).containsExactly("G49", "M8", "M9");
        assertThat(codes.dwell()).isEqualTo(DwellForm.X_SECONDS);
        assertThat(codes.offsetFeed()).isEqualTo(OffsetFeed.EDGE);
        assertThat(codes.decimals()).isEqualTo(2);
        assertThat(codes.hasRadiusArcs()).isTrue();
        assertThat(codes.hasCarriageReturns()).isTrue();
        assertThat(codes.unrollsSubPrograms()).isFalse();
        assertThat(codes.allowsOpenContours()).isTrue();
        assertThat(codes.startLines()).isEqualTo(List.of("G17 G40", "G94"));
        assertThat(ProgramCodes.parse(codes.text())).isEqualTo(codes);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '~',
            value = {
                "jet = M3 | line 1, column 1: unknown-key",
                "decimals = 3~dwell | line 2, column 1: not-a-setting",
                "decimals = three | line 1, column 1: not-a-whole-number",
                "decimals = 10 | line 1, column 1: must-be-at-most",
                "decimals = 1~decimals = 1 | line 2, column 1: key-twice",
                "dwell = G4 P min | line 1, column 1: unknown-value",
                "arcs = K | line 1, column 1: unknown-value",
                "offset_feed = tool | line 1, column 1: unknown-value",
                "decimals = 3~jet_off = M3 | line 2, column 1: must-be-above",
                "jet_on = M10000 | line 1, column 1: must-be-at-most",
                "pass_through = X5 | line 1, column 1: not-a-word-to-pass",
                "start = | line 1, column 1: not-a-line",
            })
    void whatAFileCannotMeanIsRefusedWithItsLine(String text, String refusal) {
        assertThat(Refusals.of(() -> ProgramCodes.parse(text.replace('~', '\n'))))
                .isEqualTo(refusal);
    }

    @Test
    void anUnknownKeyIsRefusedWithTheKeysThatExist() {
        TextException refusal = catchThrowableOfType(TextException.class, () -> ProgramCodes.parse("jet = M3\n"));

        assertThat(refusal.message().parameters().get("known"))
                .asString()
                .contains("jet_on", "jet_off", "decimals", "dwell", "arcs", "offset_feed", "pass_through");
    }
}

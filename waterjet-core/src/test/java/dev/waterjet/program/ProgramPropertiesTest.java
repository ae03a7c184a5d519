package dev.waterjet.program;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.measure.Kind;
import dev.waterjet.measure.TextException;
import dev.waterjet.part.Contour;
import dev.waterjet.quality.EdgeRequirement;
import java.math.BigDecimal;
import java.util.Arrays;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.CharRange;
import net.jqwik.api.constraints.Chars;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.StringLength;

class ProgramPropertiesTest {

    /** A polygon on a circle, its last corner the first again. */
    private static String polygon(int corners, double radiusMm) {
        StringBuilder program = new StringBuilder(32 * corners);
        for (int i = 0; i <= corners; i++) {
            double angle = 2 * Math.PI * (i % corners) / corners;
            program.append(i == 0 ? "G0 X" : "G1 X")
                    .append(millimetres(radiusMm * Math.cos(angle)))
                    .append(" Y")
                    .append(millimetres(radiusMm * Math.sin(angle)))
                    .append(i == 0 ? "\nM3\n" : "\n");
        }
        return program.append("M5\n").toString();
    }

    /** Six decimals. */
    private static BigDecimal millimetres(double mm) {
        return BigDecimal.valueOf(Math.round(mm * 1e6), 6);
    }

    @Property(tries = 60, seed = "1")
    void polygonsCloseAndHaveTheirLength(
            @ForAll @IntRange(min = 3, max = 200) int corners, @ForAll @DoubleRange(min = 2, max = 900) double radius) {
        PartProgram program = PartProgram.parse(polygon(corners, radius));

        assertThat(program.size()).isEqualTo(corners);
        assertThat(program.cuts().get(0).isClosed()).isTrue();
        assertThat(Kind.LENGTH.si(program.cuttingLength()))
                .isCloseTo(2 * corners * radius / 1000 * Math.sin(Math.PI / corners), within(1e-8 * corners));
    }

    @Property(tries = 40, seed = "1")
    void whatIsWrittenIsReadBackAsTheSameCut(
            @ForAll @IntRange(min = 3, max = 60) int corners, @ForAll @DoubleRange(min = 2, max = 900) double radius) {
        PartProgram program = PartProgram.parse(polygon(corners, radius));
        double[] feeds = new double[corners];
        Arrays.setAll(feeds, i -> (50 + 7.3 * i) / 60000);
        PartProgram again = PartProgram.parse(program.withFeedsSi(feeds));

        Contour before = program.cuts().get(0).loop(EdgeRequirement.defaults()).orElseThrow();
        Contour after = again.cuts().get(0).loop(EdgeRequirement.defaults()).orElseThrow();
        assertThat(after.size()).isEqualTo(corners).isEqualTo(before.size());
        for (int i = 0; i < corners; i++) {
            assertThat(after.edge(i)).isEqualTo(before.edge(i));
        }
        assertThat(again.withFeedsSi(feeds)).isEqualTo(again.text());
    }

    @Property(tries = 500, seed = "1")
    void anyTextIsReadOrRefusedByName(
            @ForAll
                    @Chars({
                        'G', 'M', 'X', 'Y', 'I', 'J', 'R', 'F', '0', '1', '2', '3', '5', '.', '-', ' ', '\n', '(', ')',
                        ';'
                    })
                    @CharRange(from = 'a', to = 'f')
                    @StringLength(max = 60)
                    String text) {
        try {
            assertThat(PartProgram.parse(text).size()).isPositive();
        } catch (TextException e) {
            assertThat(e.getMessage()).isNotBlank();
        }
    }

    @Example
    void aProgramOfAHundredThousandBlocksIsRead() {
        StringBuilder comb = new StringBuilder("G0 X0 Y0\nM3\nG1\n");
        for (int i = 1; i <= 99_998; i++) {
            comb.append('X').append(i).append(" Y").append(i % 2).append('\n');
        }
        PartProgram program = PartProgram.parse(comb.append("Y-9\nX0 Y0\nM5\n").toString());

        assertThat(program.size()).isEqualTo(100_000);
        assertThat(program.cuts().get(0).isClosed()).isTrue();
        assertThat(program.line(99_999)).isEqualTo(100_003);
    }
}

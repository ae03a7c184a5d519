package dev.waterjet.program;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.measure.Kind;
import dev.waterjet.measure.TextException;
import dev.waterjet.path.Contour;
import dev.waterjet.path.Finish;
import java.util.Arrays;
import java.util.Locale;
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
        StringBuilder program = new StringBuilder();
        for (int i = 0; i <= corners; i++) {
            double angle = 2 * Math.PI * (i % corners) / corners;
            program.append(String.format(
                    Locale.ROOT,
                    "%s X%.6f Y%.6f%n",
                    i == 0 ? "G0" : "G1",
                    radiusMm * Math.cos(angle),
                    radiusMm * Math.sin(angle)));
            if (i == 0) {
                program.append("M3\n");
            }
        }
        return program.append("M5\n").toString();
    }

    @Property(tries = 100)
    void polygonsCloseAndHaveTheirLength(
            @ForAll @IntRange(min = 3, max = 400) int corners, @ForAll @DoubleRange(min = 2, max = 900) double radius) {
        PartProgram program = PartProgram.parse(polygon(corners, radius));

        assertThat(program.size()).isEqualTo(corners);
        assertThat(program.cuts().get(0).isClosed()).isTrue();
        assertThat(Kind.LENGTH.si(program.cuttingLength()))
                .isCloseTo(2 * corners * radius / 1000 * Math.sin(Math.PI / corners), within(1e-8 * corners));
    }

    @Property(tries = 100)
    void whatIsWrittenIsReadBackAsTheSameCut(
            @ForAll @IntRange(min = 3, max = 60) int corners, @ForAll @DoubleRange(min = 2, max = 900) double radius) {
        PartProgram program = PartProgram.parse(polygon(corners, radius));
        double[] feeds = new double[corners];
        Arrays.setAll(feeds, i -> (50 + 7.3 * i) / 60000);
        PartProgram again = PartProgram.parse(program.withFeedsSi(feeds));

        Contour before = program.cuts().get(0).loop(Finish.usual()).orElseThrow();
        Contour after = again.cuts().get(0).loop(Finish.usual()).orElseThrow();
        assertThat(after.size()).isEqualTo(corners).isEqualTo(before.size());
        for (int i = 0; i < corners; i++) {
            assertThat(after.edge(i)).isEqualTo(before.edge(i));
        }
        assertThat(again.withFeedsSi(feeds)).isEqualTo(again.text());
    }

    @Property(tries = 1000)
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
        PartProgram program = PartProgram.parse(polygon(100_000, 900));

        assertThat(program.size()).isEqualTo(100_000);
    }
}

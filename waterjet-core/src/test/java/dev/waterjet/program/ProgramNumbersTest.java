package dev.waterjet.program;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.LongRange;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Numbers of words against Java's own reader of doubles and its decimal arithmetic. */
class ProgramNumbersTest {

    @Property(tries = 5000)
    void numbersAreThoseOfTheStandardReader(
            @ForAll @LongRange(min = -99_999_999_999_999L, max = 99_999_999_999_999L) long digits,
            @ForAll @IntRange(max = 14) int decimals) {
        String text = BigDecimal.valueOf(digits, decimals).toPlainString();

        assertThat(ProgramNumbers.value("X" + text + "Y", 1, 1 + text.length())).isEqualTo(Double.parseDouble(text));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "0",
                "-0",
                "+0.0",
                ".5",
                "-.5",
                "5.",
                "+12",
                "007",
                "0.1",
                "0.3",
                "-0.000001",
                "123456789012345",
                "1.2345678901234",
                "0.00000000000001",
                "999999999999999",
                "12345678901234567890",
                "0.1234567890123456789"
            })
    void everyFormOfANumberIsRead(String text) {
        assertThat(ProgramNumbers.value(text, 0, text.length())).isEqualTo(Double.parseDouble(text));
    }

    @Property(tries = 5000)
    void feedsAreRoundedDownToFourDigits(@ForAll @LongRange(min = 1, max = 1_000_000_000_000L) long tenMillionths) {
        double feed = tenMillionths / 1e7 / 60_000;

        BigDecimal expected =
                BigDecimal.valueOf(feed * 60 / 1e-3 * (1 + 1e-12)).round(new MathContext(4, RoundingMode.DOWN));
        assertThat(new BigDecimal(ProgramNumbers.feed(feed, 1e-3))).isEqualByComparingTo(expected);
        assertThat(ProgramNumbers.feed(feed, 1e-3))
                .doesNotContain("E")
                .doesNotEndWith(".")
                .doesNotMatch(".*\\..*0");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"300", "254.5", "1", "9.999", "10", "99.99", "100.1", "999.9", "1000", "9999", "0.1234", "12340"
            })
    void feedsOfFourDigitsAreWrittenAsTheyAre(String feed) {
        assertThat(ProgramNumbers.feed(Double.parseDouble(feed) / 60 * 1e-3, 1e-3))
                .isEqualTo(feed);
    }
}

package dev.waterjet.program;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/** Numbers of words, as a program is written. */
final class ProgramNumbers {

    /** Feeds are written to four digits, rounded down: the head never runs faster than planned. */
    private static final MathContext FEED_DIGITS = new MathContext(4, RoundingMode.DOWN);

    /** Powers of ten that a double holds exactly. */
    private static final double[] TENS = {
        1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15
    };

    /** Numbers of so many digits are exact as a double. */
    private static final int EXACT_DIGITS = 15;

    private ProgramNumbers() {}

    /** The number between two offsets of a text: a sign if any, digits, and a point among them if any. */
    static double value(String text, int from, int to) {
        if (to - from > EXACT_DIGITS) {
            return Double.parseDouble(text.substring(from, to));
        }
        // a quotient of two exact doubles is rounded once, as the standard parser rounds
        long digits = 0;
        int decimals = -1;
        boolean isNegative = false;
        for (int i = from; i < to; i++) {
            char c = text.charAt(i);
            if (c == '.') {
                decimals = 0;
            } else if (c == '-') {
                isNegative = true;
            } else if (c != '+') {
                digits = digits * 10 + (c - '0');
                decimals += decimals >= 0 ? 1 : 0;
            }
        }
        double value = decimals > 0 ? digits / TENS[decimals] : digits;
        return isNegative ? -value : value;
    }

    /** Feed per minute in a unit of length. */
    static String feed(double feedMPerS, double unitM) {
        // 1e-12 is added first, so that 300 mm/min in m/s does not come out as 299.9
        double rate = feedMPerS * 60 / unitM * (1 + 1e-12);
        if (rate >= 1 && rate < 1e4) {
            int decimals = rate < 10 ? 3 : rate < 100 ? 2 : rate < 1000 ? 1 : 0;
            double scaled = rate * TENS[decimals];
            int digits = (int) scaled;
            // a product that may have been rounded to the next whole number is left to decimal arithmetic
            if (scaled - digits > 1e-9 && digits + 1 - scaled > 1e-9) {
                return plain(digits, decimals);
            }
        }
        return plain(BigDecimal.valueOf(rate).round(FEED_DIGITS));
    }

    private static String plain(int digits, int decimals) {
        int left = digits;
        int places = decimals;
        while (places > 0 && left % 10 == 0) {
            left /= 10;
            places--;
        }
        String text = Integer.toString(left);
        int point = text.length() - places;
        return places == 0 ? text : text.substring(0, point) + "." + text.substring(point);
    }

    /** A length in a unit, rounded. */
    static BigDecimal rounded(double lengthM, double unitM, int decimals) {
        return BigDecimal.valueOf(lengthM / unitM).setScale(decimals, RoundingMode.HALF_EVEN);
    }

    static String plain(BigDecimal number) {
        return number.signum() == 0 ? "0" : number.stripTrailingZeros().toPlainString();
    }

    /** Dwell of a machine, rounded up; empty where the machine waits by itself. */
    static String dwell(DwellForm form, double seconds, String blank) {
        if (form == DwellForm.MACHINE) {
            return "";
        }
        int decimals = form == DwellForm.P_MILLISECONDS ? 0 : 3;
        BigDecimal number =
                BigDecimal.valueOf(seconds / form.unitS * (1 - 1e-12)).setScale(decimals, RoundingMode.UP);
        return "G4" + blank + form.letter + plain(number);
    }

    /** Decimals of a place: inches have one more. */
    static int decimals(ProgramCodes codes, boolean isInch) {
        return codes.decimals() + (isInch ? 1 : 0);
    }
}

package dev.waterjet.program;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/** Numbers of words, as a program is written. */
final class ProgramNumbers {

    /** Feeds are written to four digits, rounded down: the head never runs faster than planned. */
    private static final MathContext FEED_DIGITS = new MathContext(4, RoundingMode.DOWN);

    private ProgramNumbers() {}

    /** Feed per minute in a unit of length. */
    static String feed(double feedMPerS, double unitM) {
        // 1e-12 is added first, so that 300 mm/min in m/s does not come out as 299.9
        BigDecimal rate = BigDecimal.valueOf(feedMPerS * 60 / unitM * (1 + 1e-12));
        return plain(rate.round(FEED_DIGITS));
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

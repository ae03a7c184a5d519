package dev.waterjet.quality;

import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Units;
import java.math.BigDecimal;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Length;

/**
 * Lengths as the decimals that people write. Limits of a standard are decimals; a value on a limit must count as within it
 * and its neighbour above as beyond it, which binary fractions of a metre do not keep.
 */
final class DecimalLength {

    private DecimalLength() {}

    /** The shortest decimal of a quantity in mm, exact where its own unit is mm or µm. */
    static BigDecimal millimetres(Quantity<Length> length) {
        Unit<Length> unit = length.getUnit();
        double number = length.getValue().doubleValue();
        if (unit.equals(Units.MILLIMETRE)) {
            return BigDecimal.valueOf(number);
        }
        if (unit.equals(Units.MICROMETRE)) {
            return BigDecimal.valueOf(number).movePointLeft(3);
        }
        return BigDecimal.valueOf(Kind.LENGTH.si(length)).movePointRight(3);
    }
}

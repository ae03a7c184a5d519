package dev.waterjet.quality;

import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Length;

/**
 * Cut-off with which a roughness is measured, by the rule of ISO 4288:1996 for profiles without a period (superseded by ISO
 * 21920-3:2021): 0.8 mm for Ra above 0.1 µm up to 2 µm, 2.5 mm up to 10 µm, 8 mm beyond.
 */
public enum CutOff {
    /** For Ra above 0.1 µm up to 2 µm. */
    MM_0_8(0.8e-3),
    /** For Ra above 2 µm up to 10 µm. */
    MM_2_5(2.5e-3),
    /** For Ra above 10 µm. */
    MM_8(8e-3);

    private static final double FINEST_M = 0.1e-6;
    private static final double FINE_M = 2e-6;
    private static final double MIDDLE_M = 10e-6;

    private final double lengthM;

    CutOff(double lengthM) {
        this.lengthM = lengthM;
    }

    /**
     * Returns the cut-off for a roughness.
     *
     * @param ra Ra as expected or first measured, above 0.1 µm
     * @return the cut-off
     */
    public static CutOff forRa(Quantity<Length> ra) {
        Objects.requireNonNull(ra, "ra");
        double raM = Require.above(
                "roughness Ra",
                Kind.LENGTH.si(ra),
                FINEST_M,
                Units.MICROMETRE,
                "the rule begins there; no jet cuts finer");
        if (raM <= FINE_M) {
            return MM_0_8;
        }
        return raM <= MIDDLE_M ? MM_2_5 : MM_8;
    }

    /** {@return the length of the cut-off} */
    public Quantity<Length> length() {
        return Kind.LENGTH.of(lengthM);
    }
}

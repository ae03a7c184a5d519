package dev.waterjet.jet;

import dev.waterjet.measure.DomainException;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.Units;

/** Sieve openings and grain sizes of the standards, in &micro;m. */
final class SieveTables {

    /** Sieve numbers of ASTM E11 that designate a mesh, coarse to fine. */
    private static final int[] SIEVE = {
        16, 18, 20, 25, 30, 35, 40, 45, 50, 60, 70, 80, 100, 120, 140, 170, 200, 230, 270, 325, 400, 450, 500
    };

    /** Sieves that are coarser than the first of those, for the largest grains. */
    private static final int COARSER = 3;

    /** Openings of No. 10, 12 and 14, of those sieves, and of No. 635, in &micro;m. ASTM E11. */
    private static final int[] SIEVE_OPENING_UM = {
        2000, 1700, 1400, 1180, 1000, 850, 710, 600, 500, 425, 355, 300, 250, 212, 180, 150, 125, 106, 90, 75, 63, 53,
        45, 38, 32, 25, 20
    };

    /** Macrogrit designations of FEPA, coarse to fine. */
    private static final int[] GRIT = {30, 36, 40, 46, 54, 60, 70, 80, 90, 100, 120, 150, 180, 220};

    /** Mean grain sizes of those grits in &micro;m. FEPA F series, values from memory. */
    private static final int[] GRIT_MEAN_UM = {625, 525, 438, 370, 310, 260, 218, 185, 154, 129, 109, 82, 69, 58};

    private SieveTables() {}

    /** Index of a sieve number in the series. */
    static int sieveIndex(int number) {
        return index(SIEVE, number, "sieve number");
    }

    /** Opening of the sieve at an index of the series, or up to three coarser or one finer than that. */
    static int sieveOpeningUm(int index) {
        return SIEVE_OPENING_UM[index + COARSER];
    }

    static int gritMeanUm(int designation) {
        return GRIT_MEAN_UM[index(GRIT, designation, "grit designation")];
    }

    private static int index(int[] series, int number, String name) {
        int nearest = 0;
        for (int i = 0; i < series.length; i++) {
            if (series[i] == number) {
                return i;
            }
            if (Math.abs(series[i] - number) < Math.abs(series[nearest] - number)) {
                nearest = i;
            }
        }
        throw new DomainException(
                Message.of(
                        "not-in-series",
                        "{quantity} is {value}; it must be one of the standard series, for example {limit}"),
                name,
                number,
                series[nearest],
                Units.ONE);
    }
}

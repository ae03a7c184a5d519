package dev.waterjet.kerf;

/**
 * Walls of a kerf, on SI doubles.
 *
 * <p>Derived: the flux of abrasive particles across a jet is Gaussian (Balz et al., Exp. Fluids 2013), and so is the dose that
 * a pass leaves across the kerf.
 */
final class KerfKernel {

    /**
     * Sharpness of the change from the edge of the jet to its dose: half-width^-8 is the sum of both half-widths^-8. Chosen
     * here, without source; it rounds the corner between the two by at most 8 %.
     */
    private static final double HALF_SHARPNESS = 4;

    private static final int SCAN_STEPS = 64;
    private static final int GOLDEN_STEPS = 40;
    private static final double GOLDEN = (Math.sqrt(5) - 1) / 2;

    private KerfKernel() {}

    /** Radius of the diverging jet: d/2 + (S + z) tan(alpha). */
    static double jetRadius(double depthM, double boreM, double standOffM, double spreadSlope) {
        return boreM / 2 + (standOffM + depthM) * spreadSlope;
    }

    /**
     * Half-width of the kerf. The dose alone reaches y_D = s sqrt(2 E), with E the logarithm of the dose over the dose that
     * just separates the depth; the jet alone reaches y_J. The wall is at y = (y_D^-8 + y_J^-8)^(-1/8), below both and smooth.
     * Zero where E is not above 0.
     */
    static double halfWidth(double excess, double doseSpreadM, double jetRadiusM) {
        if (!(excess > 0)) {
            return 0;
        }
        double share = Math.pow(jetRadiusM * jetRadiusM / (2 * doseSpreadM * doseSpreadM * excess), HALF_SHARPNESS);
        return jetRadiusM / Math.sqrt(Math.sqrt(Math.sqrt(1 + share)));
    }

    /**
     * Derivative dy/dz. With w = y_J^8/(y_D^8 + y_J^8), the weight of the dose: y'/y = (1 - w) tan(alpha)/y_J + w E'/(2 E).
     *
     * @param excessSlope E' = dE/dz, below 0
     */
    static double slope(double excess, double excessSlope, double doseSpreadM, double jetRadiusM, double spreadSlope) {
        double share = Math.pow(jetRadiusM * jetRadiusM / (2 * doseSpreadM * doseSpreadM * excess), HALF_SHARPNESS);
        double weight = share / (1 + share);
        return halfWidth(excess, doseSpreadM, jetRadiusM)
                * ((1 - weight) * spreadSlope / jetRadiusM + weight * excessSlope / (2 * excess));
    }

    /**
     * Excess E of the dose at the exit at which the exit is as wide as the entry: from y(h) = y_J(0), E = y_J(h)^2 / (2 s^2
     * ((y_J(h)/y_J(0))^8 - 1)^(1/4)). Infinite where the jet does not diverge.
     */
    static double zeroTaperExcess(double doseSpreadM, double entryRadiusM, double exitRadiusM) {
        double growth = Math.pow(exitRadiusM / entryRadiusM, 2 * HALF_SHARPNESS) - 1;
        return exitRadiusM * exitRadiusM / (2 * doseSpreadM * doseSpreadM * Math.pow(growth, 1 / HALF_SHARPNESS));
    }

    /** Depth between two depths at which the kerf is widest. */
    static double widestDepth(KerfShape shape, double fromM, double toM) {
        int best = 0;
        double widest = -1;
        for (int i = 0; i <= SCAN_STEPS; i++) {
            double halfWidth = shape.halfWidth(scanned(i, fromM, toM));
            if (halfWidth > widest) {
                widest = halfWidth;
                best = i;
            }
        }
        if (best == 0 || best == SCAN_STEPS) {
            return scanned(best, fromM, toM);
        }
        double low = scanned(best - 1, fromM, toM);
        double high = scanned(best + 1, fromM, toM);
        for (int i = 0; i < GOLDEN_STEPS; i++) {
            double left = high - GOLDEN * (high - low);
            double right = low + GOLDEN * (high - low);
            if (shape.halfWidth(left) < shape.halfWidth(right)) {
                low = left;
            } else {
                high = right;
            }
        }
        return (low + high) / 2;
    }

    /** Depth between two depths at which the kerf is narrowest, to within the scan: nearly always one of the ends. */
    static double narrowestDepth(KerfShape shape, double fromM, double toM) {
        double best = fromM;
        for (int i = 1; i <= SCAN_STEPS; i++) {
            double depth = scanned(i, fromM, toM);
            if (shape.halfWidth(depth) < shape.halfWidth(best)) {
                best = depth;
            }
        }
        return best;
    }

    /** Steps lie close near the entry, where the wall turns fastest. */
    private static double scanned(int step, double fromM, double toM) {
        double part = (double) step / SCAN_STEPS;
        return step == SCAN_STEPS ? toM : fromM + (toM - fromM) * part * part;
    }
}

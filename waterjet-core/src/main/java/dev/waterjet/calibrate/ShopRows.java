package dev.waterjet.calibrate;

/**
 * Cuts of several materials in one fit. The logarithm of machinability over that of the catalogue is a factor common to the
 * shop plus a deviation of the material.
 *
 * @param rows rows whose coefficients are the logarithm of the factor, then the deviation of each material
 * @param spreads standard deviation of each material by the catalogue
 * @param common standard deviation of the factor of a shop
 */
@SuppressWarnings("ArrayRecordComponent") // never compared
record ShopRows(CutRows rows, double[] spreads, double common) {

    /** Rows less the catalogue, with the place of the material of each. */
    static ShopRows of(CutRows rows, int[] materials, double[] spreads, double common) {
        double[][] x = new double[rows.size()][];
        for (int i = 0; i < x.length; i++) {
            x[i] = settings(materials[i], spreads.length);
        }
        return new ShopRows(rows.withX(x), spreads, common);
    }

    private static double[] settings(int material, int count) {
        double[] settings = new double[1 + count];
        settings[0] = 1;
        settings[1 + material] = 1;
        return settings;
    }

    double[] material(int place) {
        return settings(place, spreads.length);
    }

    double[] factor() {
        double[] settings = new double[1 + spreads.length];
        settings[0] = 1;
        return settings;
    }

    GaussianPrior prior(double freedom, double scatter) {
        double[][] precision = new double[1 + spreads.length][1 + spreads.length];
        // a factor known exactly has no inverse variance; this one is as good as known
        double known = Math.max(1e-6, common);
        precision[0][0] = 1 / (known * known);
        for (int j = 0; j < spreads.length; j++) {
            precision[j + 1][j + 1] = 1 / (spreads[j] * spreads[j]);
        }
        return new GaussianPrior(new double[precision.length], precision, freedom, scatter, freedom, scatter);
    }

    /** Prior of a shop, with the spreads of the materials by the catalogue. */
    GaussianPrior prior(CutPrior of) {
        GaussianPrior plain = prior(of.scatterFreedom(), of.scatter());
        return new GaussianPrior(
                plain.mean(),
                plain.precision(),
                of.scatterFreedom(),
                of.scatter(),
                of.plateFreedom(),
                of.plateSpread());
    }
}

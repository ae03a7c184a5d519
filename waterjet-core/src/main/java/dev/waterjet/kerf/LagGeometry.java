package dev.waterjet.kerf;

/**
 * Path of the cut front below the top side where the tool path bends. All three are derived and none is proved by a measured
 * corner; on arcs, observation favours the first, which is the default wherever none is named. A disc decides: the difference
 * of its radii at exit and entry is about {@code L^2/2r}, the same with the opposite sign, or zero.
 */
public enum LagGeometry {
    /** The front lags along the tangent of the tool path: it swings wide, by {@code sqrt(r^2 + L^2) - r} on radius r. */
    TANGENT("along the tangent, swinging wide"),
    /** The front is drawn on a string of the length of the lag: it cuts in, by {@code r - sqrt(r^2 - L^2)} on radius r. */
    TRACTRIX("like a trailer, cutting in"),
    /** The front follows the tool path: no error on arcs and at corners. */
    FOLLOWING("along the path");

    private final String label;

    LagGeometry(String label) {
        this.label = label;
    }

    /**
     * {@return the geometry for people, in lower case}
     */
    public String label() {
        return label;
    }

    /**
     * Returns the distance of the front from the tool path on a long arc.
     *
     * @param lagM lag, 0 or more
     * @param radiusM radius of the tool path, above 0
     * @return the distance, 0 or more: to the outside in the tangent geometry, to the inside in the tractrix geometry
     */
    public double arcErrorSi(double lagM, double radiusM) {
        if (this == FOLLOWING) {
            return 0;
        }
        return this == TANGENT ? LagKernel.tangentError(lagM, radiusM) : LagKernel.trailerError(lagM, radiusM);
    }
}

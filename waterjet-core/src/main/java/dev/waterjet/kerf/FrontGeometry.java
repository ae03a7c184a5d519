package dev.waterjet.kerf;

/**
 * Path of the cut front below the top side where the tool path bends. None is proved by a measured corner; on arcs,
 * observation favours the first. A disc decides: the difference of its radii at exit and entry over L^2/2r is 1, -1 or 0.
 */
public enum FrontGeometry {
    /** The front lags along the tangent of the tool path: it swings wide on arcs, and past corners. */
    TANGENT("tangent"),
    /** The front is drawn behind on a string of the length of the lag: it cuts in on arcs, and cuts corners off. */
    TRACTRIX("tractrix"),
    /** The front follows the tool path: no error on arcs and at corners. */
    FOLLOWING("following");

    private final String label;

    FrontGeometry(String label) {
        this.label = label;
    }

    /**
     * {@return the name for people, in lower case}
     */
    public String label() {
        return label;
    }

    /**
     * Returns the distance of the front from the tool path on a long arc.
     *
     * @param lagM lag, 0 or more
     * @param radiusM radius of the tool path, above 0
     * @return {@code sqrt(r^2 + L^2) - r}, {@code r - sqrt(r^2 - L^2)} (the radius, if the lag is greater) or 0
     */
    public double arcErrorSi(double lagM, double radiusM) {
        if (this == TANGENT) {
            return lagM * lagM / (Math.hypot(radiusM, lagM) + radiusM);
        }
        if (this == TRACTRIX) {
            return lagM >= radiusM
                    ? radiusM
                    : lagM * lagM / (radiusM + Math.sqrt((radiusM - lagM) * (radiusM + lagM)));
        }
        return 0;
    }
}

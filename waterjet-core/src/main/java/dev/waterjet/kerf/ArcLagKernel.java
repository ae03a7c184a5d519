package dev.waterjet.kerf;

/** How far the trailing bottom of the cut lies off the path, in metres. Derived; the lag lies along the tangent. */
public final class ArcLagKernel {

    private ArcLagKernel() {}

    /** Error on an arc: the bottom swings wide by sqrt(R^2 + L^2) - R. */
    public static double arcError(double radiusM, double lagM) {
        return lagM * lagM / (Math.hypot(radiusM, lagM) + radiusM);
    }

    /** Lag on an arc within an error e: sqrt(2 R e + e^2). */
    public static double arcLag(double radiusM, double errorM) {
        return Math.sqrt(errorM * (2 * radiusM + errorM));
    }

    /**
     * Error at a corner: when the head has turned, the bottom still trails by the lag, along the new direction, and lies
     * L sin(turn) off the old edge; by the whole lag from a right angle on.
     */
    public static double cornerError(double sineOfTurn, double cosineOfTurn, double lagM) {
        return cosineOfTurn <= 0 ? lagM : lagM * Math.abs(sineOfTurn);
    }

    /** Lag at a corner within an error. */
    public static double cornerLag(double sineOfTurn, double cosineOfTurn, double errorM) {
        return cosineOfTurn <= 0 ? errorM : errorM / Math.abs(sineOfTurn);
    }
}

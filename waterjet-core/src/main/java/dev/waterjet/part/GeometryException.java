package dev.waterjet.part;

import dev.waterjet.measure.WaterjetException;

/** A path that cannot be cut as it stands: what is wrong, at which edge, and where on the sheet. */
public class GeometryException extends WaterjetException {

    private static final long serialVersionUID = 1L;

    private final int edge;
    private final double xM;
    private final double yM;

    public GeometryException(int edge, double xM, double yM, String fault) {
        super("edge " + edge + " at " + (Double.isFinite(xM + yM) ? Point.told(xM, yM) : "(" + xM + ", " + yM + ")")
                + ": " + fault);
        this.edge = edge;
        this.xM = xM;
        this.yM = yM;
    }

    /**
     * The edge at fault.
     *
     * @return index of the edge from 0, in the order in which the edges were given
     */
    public int edge() {
        return edge;
    }

    /**
     * Where it happens, along x.
     *
     * @return x in m, as it was given: it may be no number where that is the fault
     */
    public double xSi() {
        return xM;
    }

    /**
     * Where it happens, along y.
     *
     * @return y in m, as it was given: it may be no number where that is the fault
     */
    public double ySi() {
        return yM;
    }
}

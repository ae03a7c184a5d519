package dev.waterjet.part;

import dev.waterjet.measure.Message;
import dev.waterjet.measure.WaterjetException;

/** Error in geometry that cannot be cut: message, edge, and place on the sheet. */
public class GeometryException extends WaterjetException {

    private static final long serialVersionUID = 1L;

    private final int edge;
    private final double xM;
    private final double yM;

    /**
     * Creates a refusal.
     *
     * @param edge index of the edge from 0, in the order in which edges were given
     * @param xM x of the place in m, as it was given
     * @param yM y of the place in m, as it was given
     * @param message code, parameters and sentence
     */
    public GeometryException(int edge, double xM, double yM, Message message) {
        this("edge " + edge, edge, xM, yM, message);
    }

    /**
     * Creates a refusal of an edge of a named contour.
     *
     * @param contour the contour
     * @param edge index of the edge from 0, in the order in which edges were given
     * @param xM x of the place in m, as it was given
     * @param yM y of the place in m, as it was given
     * @param message code, parameters and sentence
     */
    public GeometryException(Contour contour, int edge, double xM, double yM, Message message) {
        this((contour.name().isEmpty() ? "" : contour.label() + ", ") + "edge " + edge, edge, xM, yM, message);
    }

    private GeometryException(String label, int edge, double xM, double yM, Message message) {
        super(label + " at " + place(xM, yM), message);
        this.edge = edge;
        this.xM = xM;
        this.yM = yM;
    }

    private static String place(double xM, double yM) {
        return Double.isFinite(xM + yM) ? Point.text(xM, yM) : "(" + xM + ", " + yM + ")";
    }

    /** {@return the index of the edge at fault from 0, in the order in which edges were given} */
    public int edge() {
        return edge;
    }

    /** {@return x of the place in m, as it was given: not a number where that is the fault} */
    public double xSi() {
        return xM;
    }

    /** {@return y of the place in m, as it was given: not a number where that is the fault} */
    public double ySi() {
        return yM;
    }
}

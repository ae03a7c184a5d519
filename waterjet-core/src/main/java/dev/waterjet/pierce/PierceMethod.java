package dev.waterjet.pierce;

/** Method by which the jet first goes through a plate. */
public enum PierceMethod {
    /** The jet is stationary at full pressure until it is through. */
    STATIONARY("stationary"),
    /** The jet moves on a short line at full pressure, so that the returning water does not meet it. */
    MOVING("moving"),
    /** The jet moves on a small circle at full pressure: the hole is wider than the jet, and the water has a way out. */
    CIRCULAR("circular"),
    /** The abrasive flows first, the jet starts at low pressure, and the pressure is raised after the first millimetres. */
    LOW_PRESSURE("low pressure, abrasive first"),
    /** The hole is drilled, and the jet starts in it. */
    PRE_DRILLED("pre-drilled");

    private final String label;

    PierceMethod(String label) {
        this.label = label;
    }

    /** {@return the name for people, in lower case} */
    public String label() {
        return label;
    }
}

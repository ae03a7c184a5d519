package dev.waterjet.feed;

/**
 * An exponent of the machinability model that a calibration may free. A changed exponent turns the model about a reference
 * setting, at which the feed and so the meaning of the machinability number stay as published.
 */
public enum FeedExponent {
    /** Of the pressure, 1.594 as published; about 345 MPa. */
    PRESSURE("pressure exponent", MachinabilityKernel.PRESSURE_EXPONENT, 345e6),
    /** Of the bore of the orifice, 1.374 as published; about 0.35 mm. */
    ORIFICE("orifice exponent", MachinabilityKernel.ORIFICE_EXPONENT, 0.35e-3),
    /** Of the flow of abrasive, 0.343 as published; about 600 g/min. */
    ABRASIVE_FLOW("abrasive-flow exponent", MachinabilityKernel.ABRASIVE_EXPONENT, 0.01),
    /** Of the bore of the focusing tube, -0.618 as published; about 1 mm. */
    TUBE("tube exponent", -MachinabilityKernel.TUBE_EXPONENT, 1e-3),
    /** Of ability over depth in the feed, 1.15 as published; about 120 mm/min. */
    FEED("feed exponent", MachinabilityKernel.FEED_EXPONENT, 0.002);

    private final String words;
    private final double published;
    private final double reference;

    FeedExponent(String words, double published, double reference) {
        this.words = words;
        this.published = published;
        this.reference = reference;
    }

    /**
     * The exponent in words, as a fit names it.
     *
     * @return lower-case words
     */
    public String label() {
        return words;
    }

    /**
     * Its published value, in the orifice form of the equation.
     *
     * @return the exponent
     */
    public double published() {
        return published;
    }

    /**
     * The setting about which a changed exponent turns the model.
     *
     * @return Pa, m, kg/s or m/s
     */
    public double referenceSi() {
        return reference;
    }
}

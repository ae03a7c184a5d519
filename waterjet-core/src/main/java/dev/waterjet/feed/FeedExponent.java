package dev.waterjet.feed;

import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;

/**
 * Exponent of the machinability model that a calibration can free. A changed exponent pivots the model about a reference
 * setting, at which the feed rate, and so the meaning of the machinability number, stays as published.
 */
public enum FeedExponent {
    /** Of the pressure, 1.594 as published; about 345 MPa. */
    PRESSURE("pressure exponent", MachinabilityKernel.PRESSURE_EXPONENT, 345e6),
    /** Of the bore of the orifice, 1.374 as published; about 0.35 mm. */
    ORIFICE("orifice exponent", MachinabilityKernel.ORIFICE_EXPONENT, 0.35e-3),
    /** Of the abrasive flow rate, 0.343 as published; about 600 g/min. */
    ABRASIVE_FLOW("abrasive-flow exponent", MachinabilityKernel.ABRASIVE_EXPONENT, 0.01),
    /** Of the bore of the focusing tube, -0.618 as published; about 1 mm. */
    TUBE("tube exponent", -MachinabilityKernel.TUBE_EXPONENT, 1e-3),
    /** Of ability over depth in the feed rate, 1.15 as published; about 120 mm/min. */
    FEED("feed exponent", MachinabilityKernel.FEED_EXPONENT, 0.002);

    private static final double MAX = 10;
    private static final double MIN_OF_FEED = 0.1;

    /** Sums of an exponent and its change differ from the limit by rounding. */
    private static final double ROUNDING = 1e-12;

    private final String label;
    private final double published;
    private final double reference;

    FeedExponent(String label, double published, double reference) {
        this.label = label;
        this.published = published;
        this.reference = reference;
    }

    /** The value, -10 to 10; that of the feed rate 0.1 to 10. */
    double require(double value) {
        return this == FEED
                ? Require.between(label, value, MIN_OF_FEED, MAX, Units.ONE, "the feed rate decreases with the depth")
                : Require.between(label, value, -MAX, MAX, Units.ONE, "no cut depends on a setting so steeply");
    }

    /** The difference from the published value. */
    double requireChange(double change) {
        double minimum = this == FEED ? MIN_OF_FEED : -MAX;
        return Require.between(
                "change of an exponent",
                change,
                minimum - published - ROUNDING,
                MAX - published + ROUNDING,
                Units.ONE,
                "");
    }

    /** {@return the name for people, as a fit uses it} */
    public String label() {
        return label;
    }

    /** {@return the published value, in the orifice form of the equation} */
    public double published() {
        return published;
    }

    /** {@return the setting about which a changed exponent pivots the model, in Pa, m, kg/s or m/s} */
    public double referenceSi() {
        return reference;
    }
}

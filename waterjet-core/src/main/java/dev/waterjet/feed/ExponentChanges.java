package dev.waterjet.feed;

import java.io.Serializable;

/** Differences of the exponents of the machinability model from the published ones. */
record ExponentChanges(double pressure, double orifice, double abrasiveFlow, double tube, double feed)
        implements Serializable {

    static final ExponentChanges NONE = new ExponentChanges(0, 0, 0, 0, 0);

    private static final long serialVersionUID = 1L;

    ExponentChanges {
        pressure = FeedExponent.PRESSURE.requireChange(pressure);
        orifice = FeedExponent.ORIFICE.requireChange(orifice);
        abrasiveFlow = FeedExponent.ABRASIVE_FLOW.requireChange(abrasiveFlow);
        tube = FeedExponent.TUBE.requireChange(tube);
        feed = FeedExponent.FEED.requireChange(feed);
    }

    /** Whether nothing is changed. Called for every model made: {@code equals} of a record would cost a start-up. */
    boolean isNone() {
        return pressure == 0 && orifice == 0 && abrasiveFlow == 0 && tube == 0 && feed == 0;
    }

    double get(FeedExponent exponent) {
        return switch (exponent) {
            case PRESSURE -> pressure;
            case ORIFICE -> orifice;
            case ABRASIVE_FLOW -> abrasiveFlow;
            case TUBE -> tube;
            case FEED -> feed;
        };
    }

    ExponentChanges with(FeedExponent exponent, double change) {
        return switch (exponent) {
            case PRESSURE -> new ExponentChanges(change, orifice, abrasiveFlow, tube, feed);
            case ORIFICE -> new ExponentChanges(pressure, change, abrasiveFlow, tube, feed);
            case ABRASIVE_FLOW -> new ExponentChanges(pressure, orifice, change, tube, feed);
            case TUBE -> new ExponentChanges(pressure, orifice, abrasiveFlow, change, feed);
            case FEED -> new ExponentChanges(pressure, orifice, abrasiveFlow, tube, change);
        };
    }

    /** Factor on the cutting ability of a jet with these settings. */
    double factor(double pressurePa, double orificeM, double tubeM, double abrasiveKgPerS) {
        return MachinabilityKernel.change(pressurePa, FeedExponent.PRESSURE.referenceSi(), pressure)
                * MachinabilityKernel.change(orificeM, FeedExponent.ORIFICE.referenceSi(), orifice)
                * MachinabilityKernel.change(abrasiveKgPerS, FeedExponent.ABRASIVE_FLOW.referenceSi(), abrasiveFlow)
                * MachinabilityKernel.change(tubeM, FeedExponent.TUBE.referenceSi(), tube)
                * MachinabilityKernel.changedFeedExponent(
                        FeedExponent.FEED.referenceSi(), FeedExponent.FEED.published() + feed);
    }
}

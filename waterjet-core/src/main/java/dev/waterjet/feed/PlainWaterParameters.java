package dev.waterjet.feed;

import dev.waterjet.evidence.Evidence;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.Serializable;
import java.util.Objects;

/** Threshold, exponents, scatter and evidence. */
record PlainWaterParameters(
        double thresholdPa,
        double boreExponent,
        double pressureExponent,
        double feedExponent,
        double uncertainty,
        Evidence evidence)
        implements Serializable {

    private static final long serialVersionUID = 1L;

    private static final double MAX_EXPONENT = 5;

    PlainWaterParameters {
        thresholdPa = Require.notNegative("threshold pressure", thresholdPa, Units.MEGAPASCAL);
        boreExponent = exponent("exponent of the orifice bore", boreExponent);
        pressureExponent = exponent("exponent of the pressure", pressureExponent);
        feedExponent = exponent("exponent of the feed rate", feedExponent);
        uncertainty = Settings.uncertainty(uncertainty);
        Objects.requireNonNull(evidence, "evidence");
    }

    private static double exponent(String name, double exponent) {
        return Require.atMost(name, Require.positive(name, exponent, Units.ONE), MAX_EXPONENT, Units.ONE, "");
    }

    PlainWaterParameters withThreshold(double pa) {
        return new PlainWaterParameters(pa, boreExponent, pressureExponent, feedExponent, uncertainty, evidence);
    }

    PlainWaterParameters withExponents(double bore, double pressure, double feed) {
        return new PlainWaterParameters(thresholdPa, bore, pressure, feed, uncertainty, evidence);
    }

    PlainWaterParameters withUncertainty(double relative, Evidence found) {
        return new PlainWaterParameters(thresholdPa, boreExponent, pressureExponent, feedExponent, relative, found);
    }
}

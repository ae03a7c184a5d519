package dev.waterjet.kerf;

import dev.waterjet.measure.Require;
import java.io.Serializable;
import java.util.function.ToDoubleFunction;

/**
 * How sure the numbers of a {@link KerfShape} are, and what that does to anything computed from them.
 *
 * <p>Each uncertain number is moved up and down by its standard uncertainty, and half of the change counts: JCGM 100,
 * 5.1.3 note 2. Unlike a derivative this stays finite where the exit closes.
 *
 * @param depthRelative relative standard uncertainty of the separation depth
 * @param doseRelative relative standard uncertainty of the dose's spread
 * @param slopeRelative relative standard uncertainty of the jet's half-angle
 * @param correlation correlation of the logarithms of dose spread and half-angle, as a fit finds it
 * @param widthM standard deviation of one measured width about the model
 */
record KerfSpread(double depthRelative, double doseRelative, double slopeRelative, double correlation, double widthM)
        implements Serializable {

    private static final String REASON = "a kerf computed from it would tell nothing";

    KerfSpread {
        Require.relativeUncertainty("separation depth", depthRelative, REASON);
        Require.relativeUncertainty("dose's spread", doseRelative, REASON);
        Require.relativeUncertainty("jet's half-angle", slopeRelative, REASON);
    }

    KerfSpread withDepth(double relative) {
        return new KerfSpread(relative, doseRelative, slopeRelative, correlation, widthM);
    }

    /** Standard uncertainty of something computed from a shape, without the scatter of widths. */
    double of(KerfShape shape, ToDoubleFunction<KerfShape> computed) {
        double depth = Math.exp(depthRelative);
        double dose = Math.exp(doseRelative);
        double slope = Math.exp(slopeRelative);
        double byDepth = computed.applyAsDouble(shape.withSeparationDepth(shape.separationDepthM() * depth))
                - computed.applyAsDouble(shape.withSeparationDepth(shape.separationDepthM() / depth));
        double byDose = computed.applyAsDouble(shape.withDoseRatio(shape.doseRatio() * dose))
                - computed.applyAsDouble(shape.withDoseRatio(shape.doseRatio() / dose));
        double bySlope = computed.applyAsDouble(shape.withSpreadSlope(shape.spreadSlope() * slope))
                - computed.applyAsDouble(shape.withSpreadSlope(shape.spreadSlope() / slope));
        // JCGM 100, equation 13
        double variance = byDepth * byDepth + byDose * byDose + bySlope * bySlope + 2 * correlation * byDose * bySlope;
        return Math.sqrt(Math.max(0, variance)) / 2;
    }
}

package dev.waterjet.kerf;

import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.Serializable;
import java.util.function.ToDoubleFunction;

/**
 * Uncertainty of the numbers of a {@link KerfShape}, and of any result computed from them.
 *
 * <p>Each uncertain number is moved up and down by its standard uncertainty, and half of the change counts: JCGM 100,
 * 5.1.3 note 2. Unlike a derivative this stays finite where the exit closes.
 *
 * @param depthRelative relative standard uncertainty of the separation depth
 * @param doseRelative relative standard uncertainty of the spread of the dose
 * @param slopeRelative relative standard uncertainty of the jet's half-angle
 * @param correlation correlation of the logarithms of dose spread and half-angle, from a fit
 * @param widthM standard deviation of one measured width about the model
 * @param fullBoreM exit bore below which that deviation falls in proportion to the bore; 0 if it does not
 */
record KerfSpread(
        double depthRelative,
        double doseRelative,
        double slopeRelative,
        double correlation,
        double widthM,
        double fullBoreM)
        implements Serializable {

    private static final String REASON = "a kerf computed from it would not be known at all";

    KerfSpread {
        depthRelative = Require.relativeUncertainty("separation depth", depthRelative, REASON);
        doseRelative = Require.relativeUncertainty("spread of the dose", doseRelative, REASON);
        slopeRelative = Require.relativeUncertainty("half-angle of the jet", slopeRelative, REASON);
        correlation = Require.between("correlation of dose spread and half-angle", correlation, -1, 1, Units.ONE, "");
        widthM = Require.notNegative("scatter of a width", widthM, Units.MILLIMETRE);
        fullBoreM = Require.notNegative("bore of the scatter", fullBoreM, Units.MILLIMETRE);
    }

    /** Numbers with a scatter that is the same for every bore. */
    KerfSpread(double depthRelative, double doseRelative, double slopeRelative, double correlation, double widthM) {
        this(depthRelative, doseRelative, slopeRelative, correlation, widthM, 0);
    }

    /** Standard deviation of one measured width of a head. */
    double widthM(double boreM) {
        return boreM < fullBoreM ? widthM * (boreM / fullBoreM) : widthM;
    }

    KerfSpread withDepth(double relative) {
        return new KerfSpread(relative, doseRelative, slopeRelative, correlation, widthM, fullBoreM);
    }

    KerfSpread withDose(double relative) {
        return new KerfSpread(depthRelative, relative, slopeRelative, 0, widthM, fullBoreM);
    }

    KerfSpread withSlope(double relative) {
        return new KerfSpread(depthRelative, doseRelative, relative, 0, widthM, fullBoreM);
    }

    KerfSpread withCorrelation(double newCorrelation) {
        return new KerfSpread(depthRelative, doseRelative, slopeRelative, newCorrelation, widthM, fullBoreM);
    }

    KerfSpread withWidth(double deviationM) {
        return new KerfSpread(depthRelative, doseRelative, slopeRelative, correlation, deviationM);
    }

    /** Standard uncertainty of a result computed from a shape, without the scatter of widths. */
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

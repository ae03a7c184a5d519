package dev.waterjet.kerf;

import dev.waterjet.evidence.Evidence;
import dev.waterjet.evidence.EvidenceGrade;
import dev.waterjet.evidence.Source;

/** Numbers of the kerf model that is not fitted to the user's own cuts, and what is known about them. */
final class AssumedKerf {

    /** Spread of the depth, 0.27 bores within 20 per cent, as one of the dose at the exponent of machinability. */
    static final double DOSE_RATIO = 0.27 / Math.sqrt(DoseExcess.REFERENCE_EXPONENT);

    /** Tangent of the half-angle, fitted to grooves. */
    static final double SLOPE = Math.tan(Math.toRadians(1.38));

    private static final double DOSE_UNCERTAINTY = 0.2;
    /** For a new set-up 0.95 to 1.81 degrees at 95 per cent. */
    private static final double ANGLE_UNCERTAINTY = (1.81 - 0.95) / (2 * 1.96) / 1.38;

    private static final double WIDTH_SCATTER_M = 0.03e-3;

    static final KerfSpread SPREAD =
            new KerfSpread(0, DOSE_UNCERTAINTY, ANGLE_UNCERTAINTY, 0, WIDTH_SCATTER_M, KerfRange.MIN_BORE_M);

    static final Evidence EVIDENCE = Evidence.of(
                    EvidenceGrade.DERIVED,
                    Source.of("Gaussian flux of abrasive particles across the jet: Balz et al., Exp. Fluids" + " 2013"))
            .withNote("The form is derived from the profile of the jet. Half-angle 1.38°, for a new set-up 0.95°"
                    + " to 1.81° (95 %): a mixed-effects evaluation of entry widths over stand-off in 432"
                    + " grooves (titanium, a nickel alloy, stainless steel; two tubes; a public data"
                    + " repository, AWJM-Prediction by Dakshil2003, evaluated here, its rows not"
                    + " reproduced). Spread of the dose 0.2518 bores within 20 % and a scatter of 0.03 mm,"
                    + " below an exit bore of 0.5 mm less in proportion, are assumed: fit them to measured"
                    + " widths.")
            .withRanges(KerfRange.ofAssumedNumbers());

    private AssumedKerf() {}
}

package dev.waterjet.motion;

import dev.waterjet.measure.Kind;
import dev.waterjet.quality.CutQuality;
import dev.waterjet.quality.Iso9013;

/**
 * Deviation allowed at corners and on arcs where the drawing states none: the perpendicularity or angularity tolerance of
 * ISO 9013, range 1 for the finest cut quality to range 5 for the coarsest.
 *
 * <p>The ranges are published. Their use for this purpose is a choice of this project, and their use for waterjet cuts
 * needs agreement, see {@link Iso9013#byAgreement}. The standard leaves out a strip at both edges of the cut surface; here
 * the tolerance holds over the whole height.
 */
final class QualityTolerance {

    private QualityTolerance() {}

    /**
     * Tolerance of a cut quality.
     *
     * @param quality the quality
     * @param thicknessM thickness of the workpiece
     * @return the deviation allowed: 0.05 mm + 0.003 h, 0.15 mm + 0.007 h, 0.4 mm + 0.01 h, 0.8 mm + 0.02 h or
     *     1.2 mm + 0.035 h
     */
    @SuppressWarnings("EnumOrdinal") // both scales are ordered
    static double ofQuality(CutQuality quality, double thicknessM) {
        // qualities are listed from the coarsest to the finest, ranges from the finest to the coarsest
        int range = Iso9013.perpendicularityRanges() - quality.ordinal();
        return Kind.LENGTH.si(Iso9013.forThickness(Kind.LENGTH.of(thicknessM)).perpendicularityLimit(range));
    }
}

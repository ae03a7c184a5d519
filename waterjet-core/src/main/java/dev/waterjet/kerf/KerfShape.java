package dev.waterjet.kerf;

import java.io.Serializable;

/**
 * All numbers that a wall hangs on, in SI.
 *
 * @param thicknessM thickness of the workpiece
 * @param separationDepthM depth that the jet just separates at the feed, the thickness or more
 * @param boreM exit bore of the focusing tube
 * @param standOffM distance from tube to entry face
 * @param doseRatio spread of the dose over the exit bore
 * @param spreadSlope tangent of the jet's half-angle
 */
public record KerfShape(
        double thicknessM,
        double separationDepthM,
        double boreM,
        double standOffM,
        double doseRatio,
        double spreadSlope)
        implements Serializable {

    public double halfWidth(double depthM) {
        return KerfKernel.halfWidth(depthM, separationDepthM, doseRatio * boreM, jetRadius(depthM));
    }

    double slope(double depthM) {
        return KerfKernel.slope(depthM, separationDepthM, doseRatio * boreM, jetRadius(depthM), spreadSlope);
    }

    double jetRadius(double depthM) {
        return KerfKernel.jetRadius(depthM, boreM, standOffM, spreadSlope);
    }

    double entryWidth() {
        return 2 * halfWidth(0);
    }

    double exitWidth() {
        return 2 * halfWidth(thicknessM);
    }

    double largestWidth() {
        return 2 * halfWidth(KerfKernel.widestDepth(this, 0, thicknessM));
    }

    double smallestWidth() {
        return 2 * halfWidth(KerfKernel.narrowestDepth(this, 0, thicknessM));
    }

    /** Greatest less smallest half-width, this far from both faces and farther. */
    double deviation(double edgeM) {
        double last = thicknessM - edgeM;
        return halfWidth(KerfKernel.widestDepth(this, edgeM, last))
                - halfWidth(KerfKernel.narrowestDepth(this, edgeM, last));
    }

    double taperPerSide() {
        return Math.atan((entryWidth() - exitWidth()) / (2 * thicknessM));
    }

    double zeroTaperDepth() {
        return KerfKernel.zeroTaperDepth(thicknessM, doseRatio * boreM, jetRadius(0), jetRadius(thicknessM));
    }

    KerfShape withSeparationDepth(double depthM) {
        return new KerfShape(thicknessM, depthM, boreM, standOffM, doseRatio, spreadSlope);
    }

    KerfShape withBore(double newBoreM) {
        return new KerfShape(thicknessM, separationDepthM, newBoreM, standOffM, doseRatio, spreadSlope);
    }

    public KerfShape withDoseRatio(double ratio) {
        return new KerfShape(thicknessM, separationDepthM, boreM, standOffM, ratio, spreadSlope);
    }

    public KerfShape withSpreadSlope(double slope) {
        return new KerfShape(thicknessM, separationDepthM, boreM, standOffM, doseRatio, slope);
    }
}

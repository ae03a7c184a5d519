package dev.waterjet.kerf;

/**
 * Numbers that determine a wall, in SI.
 *
 * @param thicknessM thickness of the workpiece
 * @param separationDepthM depth that the jet just separates at the feed rate, at least the thickness
 * @param excess excess of the dose over depth and separation depth
 * @param boreM exit bore of the focusing tube
 * @param standOffM stand-off distance
 * @param doseRatio spread of the dose over the exit bore
 * @param spreadSlope tangent of the jet's half-angle
 */
record KerfShape(
        double thicknessM,
        double separationDepthM,
        DoseExcess excess,
        double boreM,
        double standOffM,
        double doseRatio,
        double spreadSlope) {

    double halfWidth(double depthM) {
        return KerfKernel.halfWidth(excess.at(depthM, separationDepthM), doseRatio * boreM, jetRadius(depthM));
    }

    double slope(double depthM) {
        return KerfKernel.slope(
                excess.at(depthM, separationDepthM),
                excess.slope(depthM, separationDepthM),
                doseRatio * boreM,
                jetRadius(depthM),
                spreadSlope);
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

    double maximumWidth() {
        return 2 * halfWidth(KerfKernel.widestDepth(this, 0, thicknessM));
    }

    double minimumWidth() {
        return 2 * halfWidth(KerfKernel.narrowestDepth(this, 0, thicknessM));
    }

    /** Maximum less minimum half-width, leaving out a height at either side. */
    double deviation(double edgeM) {
        double last = thicknessM - edgeM;
        return halfWidth(KerfKernel.widestDepth(this, edgeM, last))
                - halfWidth(KerfKernel.narrowestDepth(this, edgeM, last));
    }

    double taperPerSide() {
        return Math.atan((entryWidth() - exitWidth()) / (2 * thicknessM));
    }

    double zeroTaperDepth() {
        return excess.separationDepth(
                thicknessM, KerfKernel.zeroTaperExcess(doseRatio * boreM, jetRadius(0), jetRadius(thicknessM)));
    }

    KerfShape withSeparationDepth(double depthM) {
        return new KerfShape(thicknessM, depthM, excess, boreM, standOffM, doseRatio, spreadSlope);
    }

    KerfShape withBore(double newBoreM) {
        return new KerfShape(thicknessM, separationDepthM, excess, newBoreM, standOffM, doseRatio, spreadSlope);
    }

    KerfShape withDoseRatio(double ratio) {
        return new KerfShape(thicknessM, separationDepthM, excess, boreM, standOffM, ratio, spreadSlope);
    }

    KerfShape withSpreadSlope(double slope) {
        return new KerfShape(thicknessM, separationDepthM, excess, boreM, standOffM, doseRatio, slope);
    }
}

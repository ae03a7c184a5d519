package dev.waterjet.kerf;

import dev.waterjet.reference.VirtualCutRow;

/** Settings of the rows of the virtual cut. */
public final class CutFrontSetting {

    private static final double SPREAD_SLOPE = Math.tan(Math.toRadians(1));

    private CutFrontSetting() {}

    /** The cut front of a row: a power law. */
    public static CutFront front(VirtualCutRow row) {
        return front(row, row.parameter("h"));
    }

    private static CutFront front(VirtualCutRow row, double thicknessM) {
        return CutFront.powerLaw(LagModel.standard(), thicknessM, row.parameter("k"), row.parameter("A"));
    }

    /** The kerf profile of a row: spread of the depth 0.27 d, half-angle 1 degree. */
    public static KerfProfile profile(VirtualCutRow row) {
        return profile(row, row.parameter("h"));
    }

    /** The kerf profile of a row in a workpiece that is as thick as a depth. */
    public static KerfProfile profile(VirtualCutRow row, double thicknessM) {
        double boreM = row.parameter("d");
        return KerfProfile.ofSi(
                front(row, thicknessM),
                KerfProfile.doseSpreadSi(0.27 * boreM, row.parameter("k")),
                KerfProfile.entryRadiusSi(boreM, row.parameter("S"), SPREAD_SLOPE),
                SPREAD_SLOPE);
    }
}

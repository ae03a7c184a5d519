package dev.waterjet.feed;

/** Takes the points of a sweep, one by one, as SI numbers. */
@FunctionalInterface
public interface SweepRow {

    /**
     * One point.
     *
     * @param pressurePa gauge pressure at the orifice in Pa
     * @param orificeM bore of the orifice in m
     * @param tubeM bore of the focusing tube in m
     * @param abrasiveKgPerS mass flow of abrasive in kg/s
     * @param thicknessM thickness in m
     * @param index quality index
     * @param feedMPerS feed in m/s
     */
    void take(
            double pressurePa,
            double orificeM,
            double tubeM,
            double abrasiveKgPerS,
            double thicknessM,
            double index,
            double feedMPerS);
}

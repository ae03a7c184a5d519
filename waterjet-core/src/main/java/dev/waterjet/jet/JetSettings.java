package dev.waterjet.jet;

/**
 * Settings of an abrasive jet on SI numbers, with the flow and the speeds that follow from them.
 *
 * <p>Models of a cut read a jet through this interface. {@link AbrasiveJet} implements it; a sweep over thousands of
 * settings uses one mutable implementation and creates no object per point. An implementation gives, for equal
 * settings, the bits that {@link AbrasiveJet} gives.
 */
public interface JetSettings {

    /** {@return the gauge pressure at the orifice, in Pa, above 0} */
    double pressureSi();

    /** {@return the bore of the orifice, in m, above 0} */
    double orificeBoreSi();

    /** {@return the bore of the focusing tube when new, in m, above the bore of the orifice} */
    double tubeBoreSi();

    /**
     * {@return the bore of the focusing tube at its exit, in m, at least the bore when new: the diameter of the jet there}
     */
    double tubeExitBoreSi();

    /** {@return the stand-off distance from the focusing tube to the workpiece, in m, 0 or more} */
    double standOffSi();

    /** {@return the abrasive} */
    Abrasive abrasive();

    /** {@return the abrasive flow rate by mass, in kg/s, above 0} */
    double abrasiveFlowSi();

    /** {@return the water flow rate by volume at ambient density, in m3/s} */
    double waterVolumeFlowSi();

    /** {@return the water flow rate by mass, in kg/s} */
    double waterMassFlowSi();

    /** {@return the speed of the water jet before it mixes with abrasive, in m/s} */
    double waterSpeedSi();

    /** {@return the speed of the abrasive particles at the exit of the focusing tube, in m/s} */
    double particleSpeedSi();

    /** {@return the loading ratio: mass flow of abrasive over mass flow of water} */
    default double loadingRatioSi() {
        return abrasiveFlowSi() / waterMassFlowSi();
    }
}

package dev.waterjet.hydraulics;

import dev.waterjet.evidence.Estimate;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.MassFlow;
import dev.waterjet.measure.VolumeFlow;
import java.util.Map;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Force;
import javax.measure.quantity.Power;

/**
 * Flow, power and force of a water jet with the standard uncertainty of the discharge coefficient of its orifice, to which all of them
 * are proportional: 3 % for a usual sapphire. That of pressure and bore is not in them.
 *
 * @param volumeFlow volume flow at ambient density
 * @param massFlow mass flow
 * @param ratedHydraulicPower pressure times volume flow at ambient density
 * @param kineticPower kinetic power of the jet
 * @param reactionForce reaction force on the head
 */
public record JetEstimates(
        Estimate<VolumeFlow> volumeFlow,
        Estimate<MassFlow> massFlow,
        Estimate<Power> ratedHydraulicPower,
        Estimate<Power> kineticPower,
        Estimate<Force> reactionForce)
        implements Described {

    /**
     * Checks the components.
     *
     * @param volumeFlow volume flow at ambient density
     * @param massFlow mass flow
     * @param ratedHydraulicPower pressure times volume flow at ambient density
     * @param kineticPower kinetic power of the jet
     * @param reactionForce reaction force on the head
     */
    public JetEstimates {
        Objects.requireNonNull(volumeFlow, "volumeFlow");
        Objects.requireNonNull(massFlow, "massFlow");
        Objects.requireNonNull(ratedHydraulicPower, "ratedHydraulicPower");
        Objects.requireNonNull(kineticPower, "kineticPower");
        Objects.requireNonNull(reactionForce, "reactionForce");
    }

    static JetEstimates of(WaterJet jet) {
        Estimate<Dimensionless> coefficient = jet.orifice().dischargeCoefficient();
        double relative = coefficient.standardUncertaintySi() / coefficient.si();
        return new JetEstimates(
                estimate(Kind.VOLUME_FLOW, jet.volumeFlow(), relative),
                estimate(Kind.MASS_FLOW, jet.massFlow(), relative),
                estimate(Kind.POWER, jet.ratedHydraulicPower(), relative),
                estimate(Kind.POWER, jet.kineticPower(), relative),
                estimate(Kind.FORCE, jet.reactionForce(), relative));
    }

    private static <Q extends Quantity<Q>> Estimate<Q> estimate(Kind<Q> kind, Quantity<Q> value, double relative) {
        return Estimate.of(kind, kind.si(value), relative * kind.si(value));
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("jet estimates")
                .put("volume_flow", volumeFlow)
                .put("mass_flow", massFlow)
                .put("rated_hydraulic_power", ratedHydraulicPower)
                .put("kinetic_power", kineticPower)
                .put("reaction_force", reactionForce)
                .map();
    }
}

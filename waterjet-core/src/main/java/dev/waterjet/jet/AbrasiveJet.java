package dev.waterjet.jet;

import dev.waterjet.evidence.Caution;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.hydraulics.WaterJet;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.MassFlow;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Power;
import javax.measure.quantity.Pressure;
import javax.measure.quantity.Speed;

/** The jet that cuts: water and abrasive behind the focusing tube. */
public final class AbrasiveJet implements JetSettings, Described, Serializable {

    private static final long serialVersionUID = 1L;

    /** Loading above which measured cutting no longer gains, as efficiency falls (from memory: optima at 0.10 to 0.25). */
    private static final double USUAL_LOADING = 0.25;

    private final CuttingHead head;
    private final WaterJet water;
    private final Abrasive abrasive;
    private final double abrasiveFlowKgPerS;
    private final List<Caution> cautions;

    private AbrasiveJet(CuttingHead head, WaterJet water, Abrasive abrasive, double abrasiveFlowKgPerS) {
        this.head = head;
        this.water = water;
        this.abrasive = Objects.requireNonNull(abrasive, "abrasive");
        this.abrasiveFlowKgPerS = Require.positive("abrasive flow", abrasiveFlowKgPerS, Units.GRAM_PER_MINUTE);
        Require.atMost(
                "largest grain of the abrasive",
                abrasive.mesh().maximumGrainSizeSi(),
                head.tube().boreSi(),
                Units.MILLIMETRE,
                "the bore of the focusing tube: it must clog");
        this.cautions = rulesBroken();
    }

    private List<Caution> rulesBroken() {
        List<Caution> broken = new ArrayList<>(head.cautions());
        double grainShare = abrasive.mesh().maximumGrainSizeSi() / head.tube().boreSi();
        if (grainShare > 1 / 3.0) {
            broken.add(Caution.warning(
                    "grain-to-bore",
                    "the largest grains are " + QuantityText.round(grainShare, 2)
                            + " of the focusing tube's bore; above a third the tube may clog"));
        }
        if (loadingRatioSi() > USUAL_LOADING) {
            broken.add(Caution.notice(
                    "loading",
                    "loading ratio is " + QuantityText.round(loadingRatioSi(), 2)
                            + "; measured optima lie at 0.10 to 0.25, more abrasive may cut less"));
        }
        return List.copyOf(broken);
    }

    static AbrasiveJet of(CuttingHead head, WaterJet water, Abrasive abrasive, Quantity<MassFlow> abrasiveFlow) {
        return new AbrasiveJet(head, water, abrasive, Kind.MASS_FLOW.si(abrasiveFlow));
    }

    /**
     * This jet at another pressure.
     *
     * @param pressure gauge pressure at the orifice
     * @return the jet at that pressure
     */
    public AbrasiveJet withPressure(Quantity<Pressure> pressure) {
        return new AbrasiveJet(head, water.withPressure(pressure), abrasive, abrasiveFlowKgPerS);
    }

    /**
     * This jet with another flow of abrasive.
     *
     * @param abrasiveFlow mass flow of abrasive, above zero
     * @return the jet with that flow
     */
    public AbrasiveJet withAbrasiveFlow(Quantity<MassFlow> abrasiveFlow) {
        return new AbrasiveJet(head, water, abrasive, Kind.MASS_FLOW.si(abrasiveFlow));
    }

    /**
     * This jet with another water jet from the same orifice, as by another law of speed.
     *
     * @param water the water jet
     * @return the jet with that water
     */
    public AbrasiveJet withWater(WaterJet water) {
        return new AbrasiveJet(head.withOrifice(water.orifice()), water, abrasive, abrasiveFlowKgPerS);
    }

    /**
     * This jet from another head, or from this one with another orifice or tube.
     *
     * @param head the head
     * @return the jet from that head
     */
    public AbrasiveJet withHead(CuttingHead head) {
        return new AbrasiveJet(head, water.withOrifice(head.orifice()), abrasive, abrasiveFlowKgPerS);
    }

    /**
     * The head that makes the jet.
     *
     * @return the head
     */
    public CuttingHead head() {
        return head;
    }

    /**
     * The water of the jet, as it leaves the orifice.
     *
     * @return the water jet
     */
    public WaterJet water() {
        return water;
    }

    @Override
    public Abrasive abrasive() {
        return abrasive;
    }

    @Override
    public double pressureSi() {
        return water.pressureSi();
    }

    @Override
    public double orificeBoreSi() {
        return head.orifice().boreSi();
    }

    @Override
    public double tubeBoreSi() {
        return head.tube().boreSi();
    }

    @Override
    public double tubeExitBoreSi() {
        return head.tube().exitBoreSi();
    }

    @Override
    public double standOffSi() {
        return head.standOffSi();
    }

    @Override
    public double waterVolumeFlowSi() {
        return water.volumeFlowSi();
    }

    @Override
    public double waterMassFlowSi() {
        return water.massFlowSi();
    }

    @Override
    public double waterSpeedSi() {
        return water.speedSi();
    }

    /**
     * Mass flow of abrasive.
     *
     * @return the mass flow, in kg/s
     */
    public Quantity<MassFlow> abrasiveFlow() {
        return Kind.MASS_FLOW.of(abrasiveFlowKgPerS);
    }

    @Override
    public double abrasiveFlowSi() {
        return abrasiveFlowKgPerS;
    }

    /**
     * Loading ratio: mass flow of abrasive over mass flow of water.
     *
     * @return the ratio
     */
    public Quantity<Dimensionless> loadingRatio() {
        return Kind.RATIO.of(loadingRatioSi());
    }

    /**
     * Speed of the abrasive by the balance of momentum, {@code eta v / (1 + R)}.
     *
     * @return the speed, in m/s
     */
    public Estimate<Speed> particleSpeed() {
        return Estimate.withinFactor(
                Kind.SPEED, particleSpeedSi(), head.mixing().relativeUncertainty(), cautions);
    }

    @Override
    public double particleSpeedSi() {
        return particleSpeedAtSi(water.pressureSi(), head.orifice().boreSi(), abrasiveFlowKgPerS);
    }

    /**
     * Speed that the abrasive would have at other settings of this jet, for loops that make no object per point.
     *
     * @param pressurePa gauge pressure at the orifice in Pa; not checked
     * @param orificeM bore of the orifice in m; not checked
     * @param abrasiveKgPerS mass flow of abrasive in kg/s; not checked
     * @return the speed in m/s
     */
    public double particleSpeedAtSi(double pressurePa, double orificeM, double abrasiveKgPerS) {
        double loadingRatio = abrasiveKgPerS / water.massFlowAtSi(pressurePa, orificeM);
        return MixingKernel.particleSpeed(head.mixing().atSi(loadingRatio), water.speedAtSi(pressurePa), loadingRatio);
    }

    /**
     * Power of the abrasive, {@code m_a v_a^2 / 2}: the power that cuts.
     *
     * @return the power, in W
     */
    public Estimate<Power> abrasivePower() {
        // the power goes with the square of the efficiency
        return Estimate.withinFactor(
                Kind.POWER,
                MixingKernel.abrasivePower(abrasiveFlowKgPerS, particleSpeedSi()),
                2 * head.mixing().relativeUncertainty(),
                cautions);
    }

    /**
     * Rules of the trade that this jet breaks, those of its head among them.
     *
     * @return the cautions; empty if it breaks none
     */
    public List<Caution> cautions() {
        return cautions;
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("abrasive jet")
                .put("head", head)
                .put("water", water)
                .put("abrasive", abrasive)
                .put("abrasive_flow", Kind.MASS_FLOW, abrasiveFlowKgPerS)
                .put("loading_ratio", loadingRatioSi())
                .put("particle_speed", particleSpeed())
                .put("abrasive_power", abrasivePower())
                .put("cautions", cautions)
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof AbrasiveJet that
                && head.equals(that.head)
                && water.equals(that.water)
                && abrasive.equals(that.abrasive)
                && abrasiveFlowKgPerS == that.abrasiveFlowKgPerS;
    }

    @Override
    public int hashCode() {
        return Objects.hash(head, water, abrasive, abrasiveFlowKgPerS);
    }

    @Override
    public String toString() {
        return water + ", " + head.tube() + ", "
                + QuantityText.print(Kind.MASS_FLOW, abrasiveFlow(), Units.GRAM_PER_MINUTE, 4) + " of " + abrasive;
    }
}

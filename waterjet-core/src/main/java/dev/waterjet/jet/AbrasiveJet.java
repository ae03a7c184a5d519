package dev.waterjet.jet;

import dev.waterjet.evidence.Caution;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.hydraulics.WaterJet;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.MassFlow;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.InvalidObjectException;
import java.io.ObjectInputStream;
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

/**
 * Abrasive waterjet: water and abrasive at the exit of the focusing tube.
 *
 * <pre>{@code
 * CuttingHead head = CuttingHead.of(
 *         Orifice.sapphire(millimetres(0.33)), FocusingTube.of(millimetres(1.02), millimetres(102)));
 * AbrasiveJet jet = head.jet(megapascals(380), Abrasive.garnet(Mesh.of(80)), gramsPerMinute(450));
 * Estimate<Speed> speed = jet.particleSpeed();
 * }</pre>
 */
public final class AbrasiveJet implements JetSettings, Described, Serializable {

    private static final long serialVersionUID = 1L;

    /** Loading ratio above which measured cutting does not improve (from memory: optima at 0.10 to 0.25). */
    private static final double OPTIMUM_LOADING = 0.25;

    private static final double MAX_GRAIN_OVER_BORE = 1 / 3.0;

    /** Checked content, and the serial form. */
    private record Values(CuttingHead head, WaterJet water, Abrasive abrasive, double abrasiveFlowKgPerS)
            implements Serializable {

        private static final long serialVersionUID = 1L;

        Values {
            Objects.requireNonNull(head, "head");
            Objects.requireNonNull(water, "water");
            Objects.requireNonNull(abrasive, "abrasive");
            abrasiveFlowKgPerS = Require.above(
                    "abrasive flow rate",
                    abrasiveFlowKgPerS,
                    0,
                    Units.GRAM_PER_MINUTE,
                    "a jet without abrasive is a WaterJet; the models of a cut need abrasive");
            Require.atMost(
                    "maximum grain size of the abrasive",
                    abrasive.mesh().maximumGrainSizeSi(),
                    head.tube().boreSi(),
                    Units.MILLIMETRE,
                    "the bore of the focusing tube, which would clog");
        }

        private Object readResolve() throws InvalidObjectException {
            if (!water.orifice().equals(head.orifice())) {
                throw new InvalidObjectException("the water jet is not that of the head");
            }
            return new AbrasiveJet(this);
        }
    }

    private final transient Values values;
    private final transient List<Caution> cautions;

    private AbrasiveJet(Values values) {
        this.values = values;
        this.cautions = ownCautions();
    }

    private List<Caution> ownCautions() {
        List<Caution> all = new ArrayList<>(values.head.cautions());
        all.addAll(values.water.cautions());
        double grainOverBore = values.abrasive.mesh().maximumGrainSizeSi() / tubeBoreSi();
        if (grainOverBore > MAX_GRAIN_OVER_BORE) {
            all.add(Caution.warning(Message.of(
                            "grain-to-bore",
                            "the maximum grain size is {ratio} of the focusing tube bore; above a third the tube can"
                                    + " clog")
                    .with("ratio", grainOverBore)));
        }
        if (loadingRatioSi() > OPTIMUM_LOADING) {
            all.add(Caution.notice(Message.of(
                            "loading",
                            "the loading ratio is {ratio}; measured optima are 0.10 to 0.25, and more abrasive can cut"
                                    + " less")
                    .with("ratio", loadingRatioSi())));
        }
        return List.copyOf(all);
    }

    static AbrasiveJet of(CuttingHead head, WaterJet water, Abrasive abrasive, Quantity<MassFlow> abrasiveFlow) {
        return new AbrasiveJet(new Values(head, water, abrasive, Kind.MASS_FLOW.si(abrasiveFlow)));
    }

    /**
     * Returns this jet at another pressure.
     *
     * @param pressure gauge pressure at the orifice, above 0 to 1000 MPa
     * @return the jet at that pressure
     */
    public AbrasiveJet withPressure(Quantity<Pressure> pressure) {
        return new AbrasiveJet(new Values(
                values.head, values.water.withPressure(pressure), values.abrasive, values.abrasiveFlowKgPerS));
    }

    /**
     * Returns this jet with another abrasive flow rate.
     *
     * @param abrasiveFlow abrasive flow rate by mass, above 0
     * @return the jet with that flow rate
     */
    public AbrasiveJet withAbrasiveFlow(Quantity<MassFlow> abrasiveFlow) {
        Objects.requireNonNull(abrasiveFlow, "abrasiveFlow");
        return new AbrasiveJet(new Values(values.head, values.water, values.abrasive, Kind.MASS_FLOW.si(abrasiveFlow)));
    }

    /**
     * Returns this jet with another water jet, such as one with another jet speed model, temperature or orifice.
     *
     * @param water the water jet; the head gets its orifice
     * @return the jet with that water jet
     */
    public AbrasiveJet withWater(WaterJet water) {
        Objects.requireNonNull(water, "water");
        return new AbrasiveJet(new Values(
                values.head.withOrifice(water.orifice()), water, values.abrasive, values.abrasiveFlowKgPerS));
    }

    /**
     * Returns this jet from another head.
     *
     * @param head the head; the water jet gets its orifice
     * @return the jet from that head
     */
    public AbrasiveJet withHead(CuttingHead head) {
        Objects.requireNonNull(head, "head");
        return new AbrasiveJet(
                new Values(head, values.water.withOrifice(head.orifice()), values.abrasive, values.abrasiveFlowKgPerS));
    }

    /** {@return the cutting head} */
    public CuttingHead head() {
        return values.head;
    }

    /** {@return the water jet at the exit of the orifice} */
    public WaterJet water() {
        return values.water;
    }

    @Override
    public Abrasive abrasive() {
        return values.abrasive;
    }

    @Override
    public double pressureSi() {
        return values.water.pressureSi();
    }

    @Override
    public double orificeBoreSi() {
        return values.head.orifice().boreSi();
    }

    @Override
    public double tubeBoreSi() {
        return values.head.tube().boreSi();
    }

    @Override
    public double tubeExitBoreSi() {
        return values.head.tube().exitBoreSi();
    }

    @Override
    public double standOffSi() {
        return values.head.standOffSi();
    }

    @Override
    public double waterVolumeFlowSi() {
        return values.water.volumeFlowSi();
    }

    @Override
    public double waterMassFlowSi() {
        return values.water.massFlowSi();
    }

    @Override
    public double waterSpeedSi() {
        return values.water.speedSi();
    }

    /** {@return the abrasive flow rate by mass} */
    public Quantity<MassFlow> abrasiveFlow() {
        return Kind.MASS_FLOW.of(values.abrasiveFlowKgPerS);
    }

    @Override
    public double abrasiveFlowSi() {
        return values.abrasiveFlowKgPerS;
    }

    /** {@return the loading ratio: abrasive flow rate over water flow rate by mass} */
    public Quantity<Dimensionless> loadingRatio() {
        return Kind.RATIO.of(loadingRatioSi());
    }

    /** {@return the speed of the abrasive particles by the balance of momentum, &eta; <i>v</i>/(1 + <i>R</i>)} */
    public Estimate<Speed> particleSpeed() {
        return Estimate.withinFactor(
                Kind.SPEED, particleSpeedSi(), values.head.mixing().relativeUncertainty(), cautions);
    }

    @Override
    public double particleSpeedSi() {
        return particleSpeedAtSi(pressureSi(), orificeBoreSi(), values.abrasiveFlowKgPerS);
    }

    /**
     * Returns the particle speed of this jet at other settings, for loops without an object per point.
     *
     * @param pressurePa gauge pressure at the orifice in Pa; not checked
     * @param orificeM bore of the orifice in m; not checked
     * @param abrasiveKgPerS abrasive flow rate in kg/s; not checked
     * @return the particle speed, in m/s
     */
    public double particleSpeedAtSi(double pressurePa, double orificeM, double abrasiveKgPerS) {
        double loadingRatio = abrasiveKgPerS / values.water.massFlowAtSi(pressurePa, orificeM);
        double efficiency = values.head.mixing().atSi(loadingRatio);
        return efficiency * values.water.speedAtSi(pressurePa) / (1 + loadingRatio);
    }

    /**
     * Returns the kinetic power of the abrasive particles, <i>m</i><sub>a</sub> <i>v</i><sub>a</sub><sup>2</sup>/2: the power
     * that cuts.
     *
     * @return the power, with twice the relative uncertainty of the mixing efficiency
     */
    public Estimate<Power> abrasivePower() {
        double speed = particleSpeedSi();
        return Estimate.withinFactor(
                Kind.POWER,
                values.abrasiveFlowKgPerS * speed * speed / 2,
                2 * values.head.mixing().relativeUncertainty(),
                cautions);
    }

    /** {@return the cautions of this jet and of its head; empty if there are none} */
    public List<Caution> cautions() {
        return cautions;
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("abrasive jet")
                .put("head", values.head)
                .put("water", values.water)
                .put("abrasive", values.abrasive)
                .put("abrasive_flow", Kind.MASS_FLOW, values.abrasiveFlowKgPerS)
                .put("loading_ratio", loadingRatioSi())
                .put("particle_speed", particleSpeed())
                .put("abrasive_power", abrasivePower())
                .put("cautions", cautions)
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof AbrasiveJet that && values.equals(that.values);
    }

    @Override
    public int hashCode() {
        return values.hashCode();
    }

    @Override
    public String toString() {
        return values.water + ", " + values.head.tube() + ", "
                + QuantityText.forPeople(Kind.MASS_FLOW, abrasiveFlow()) + " "
                + values.abrasive;
    }

    private Object writeReplace() {
        return values;
    }

    private void readObject(ObjectInputStream in) throws InvalidObjectException {
        throw new InvalidObjectException("read through its values");
    }
}

package dev.waterjet.jet;

import dev.waterjet.evidence.Caution;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.evidence.EvidenceGrade;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Experimental;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import dev.waterjet.measure.VolumeFlow;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Force;
import javax.measure.quantity.Length;
import javax.measure.quantity.Speed;

/**
 * Mixing in the focusing tube by a one-dimensional model of momentum: what length, bore, wear and grain size do to the speed of
 * the particles.
 *
 * <p>Water fills the tube as a mist and drags the particles; the wall slows the water. The coefficients are those of a
 * {@link MixingModel}: by default a contact drag of 0.26 within a factor of 2.5, so that a usual head has the standard
 * {@link MixingEfficiency} (derived from memory), and a wall coefficient of 0.001 within a factor of 2 (assumed); measured
 * speeds fit them. The model predicts ratios between tubes better than their level: particles break in mixing, and their speeds
 * spread, which is not in it. Feed models use the {@link MixingEfficiency} of the head and not this;
 * {@link MixingModel#efficiency} makes one.
 *
 * @param efficiency speed of the particles at the exit over that of an ideal exchange of momentum
 * @param particleSpeed speed of the particles at the exit
 * @param waterSpeed speed of the water at the exit, for the default or given coefficients
 * @param thrust momentum flow of water and particles at the exit
 * @param entrainedAir air that the jet draws into the tube, at ambient pressure: half of the room that water and particles leave
 *     at the exit, within a factor of 2 (assumed); its mass is about 1 % of that of the water and left out. 0 if they leave none
 * @param cautions cautions that apply, empty if there are none
 */
@Experimental
public record TubeMixing(
        Estimate<Dimensionless> efficiency,
        Estimate<Speed> particleSpeed,
        Quantity<Speed> waterSpeed,
        Quantity<Force> thrust,
        Estimate<VolumeFlow> entrainedAir,
        List<Caution> cautions)
        implements Described {

    private static final double AIR_SHARE = 0.5;
    private static final double AIR_LOG = Math.log(2);

    private static final Caution UNCALIBRATED = Caution.warning(Message.of(
            "mixing-by-model",
            "mixing in the tube is computed by a one-dimensional model whose level rests on two assumed coefficients;"
                    + " compare tubes by it, and measure speeds"));

    private static final Caution FLOODED = Caution.warning(Message.of(
            "tube-flooded",
            "water and particles fill the focusing tube to its exit; the jet draws no air, and the model of a mist does"
                    + " not hold"));

    /**
     * Checks the components.
     *
     * @param efficiency speed of the particles at the exit over that of an ideal exchange of momentum
     * @param particleSpeed speed of the particles at the exit
     * @param waterSpeed speed of the water at the exit
     * @param thrust momentum flow of water and particles at the exit
     * @param entrainedAir air that the jet draws into the tube
     * @param cautions cautions that apply
     */
    public TubeMixing {
        Objects.requireNonNull(efficiency, "efficiency");
        Objects.requireNonNull(particleSpeed, "particleSpeed");
        Objects.requireNonNull(waterSpeed, "waterSpeed");
        Objects.requireNonNull(thrust, "thrust");
        Objects.requireNonNull(entrainedAir, "entrainedAir");
        cautions = List.copyOf(Objects.requireNonNull(cautions, "cautions"));
    }

    /**
     * Returns the mixing of a jet with the default coefficients.
     *
     * @param jet jet with its head, abrasive and flow rates; a worn tube widens evenly to its exit bore
     * @return the mixing
     */
    public static TubeMixing of(AbrasiveJet jet) {
        return of(jet, MixingModel.standard());
    }

    static TubeMixing of(AbrasiveJet jet, MixingModel model) {
        Objects.requireNonNull(jet, "jet");
        double drag = model.contactDragAt(jet.loadingRatioSi());
        double wall = wallCoefficient(jet, model);
        TubeMixingKernel kernel = kernel(jet, drag, wall);
        double byDrag = change(
                kernel(jet, drag * Math.exp(-model.dragDeviation()), wall),
                kernel(jet, drag * Math.exp(model.dragDeviation()), wall));
        double byWall = change(
                kernel(jet, drag, wall * Math.exp(-model.wallDeviation())),
                kernel(jet, drag, Math.min(wall * Math.exp(model.wallDeviation()), maximumWall(jet))));
        double variance = byDrag * byDrag + byWall * byWall + 2 * model.correlation() * byDrag * byWall;
        double uncertainty = Math.sqrt(Math.max(0, variance));
        double speed = jet.waterSpeedSi();
        double airM3PerS = roomAtExit(jet, kernel.water() * speed);
        List<Caution> cautions = new ArrayList<>();
        if (model.evidence().grade() != EvidenceGrade.FITTED) {
            cautions.add(UNCALIBRATED);
        }
        if (airM3PerS == 0) {
            cautions.add(FLOODED);
        }
        return new TubeMixing(
                Estimate.of(Kind.RATIO, kernel.efficiency(), uncertainty).with(cautions),
                Estimate.of(Kind.SPEED, kernel.particles() * speed, uncertainty / (1 + jet.loadingRatioSi()) * speed)
                        .with(cautions),
                Kind.SPEED.of(kernel.water() * speed),
                Kind.FORCE.of(
                        (jet.waterMassFlowSi() * kernel.water() + jet.abrasiveFlowSi() * kernel.particles()) * speed),
                airM3PerS == 0
                        ? Estimate.of(Kind.VOLUME_FLOW, 0, 0)
                        : Estimate.withinFactor(Kind.VOLUME_FLOW, AIR_SHARE * airM3PerS, AIR_LOG, cautions),
                cautions);
    }

    private static double wallCoefficient(AbrasiveJet jet, MixingModel model) {
        return Require.atMost(
                "wall coefficient",
                model.wallCoefficient(),
                maximumWall(jet),
                Units.ONE,
                "in a tube of this length and bore it would stop the water");
    }

    private static double maximumWall(AbrasiveJet jet) {
        FocusingTube tube = jet.head().tube();
        return TubeMixingKernel.MAX_FRICTION * tube.boreSi() / tube.lengthSi();
    }

    static double particleSpeedSi(AbrasiveJet jet, MixingModel model) {
        return kernel(jet, model.contactDragAt(jet.loadingRatioSi()), wallCoefficient(jet, model))
                        .particles()
                * jet.waterSpeedSi();
    }

    /** Volume flow that water and particles leave at the exit of the tube, if air moves as fast as the water; 0 if none. */
    private static double roomAtExit(AbrasiveJet jet, double waterMPerS) {
        double exitM = jet.tubeExitBoreSi();
        double particlesM3PerS =
                jet.abrasiveFlowSi() / Kind.DENSITY.si(jet.abrasive().density());
        return Math.max(0, Math.PI / 4 * exitM * exitM * waterMPerS - jet.waterVolumeFlowSi() - particlesM3PerS);
    }

    /**
     * Returns the depth of water in a catcher at which this jet has slowed down to a speed, as {@link PlainJet#catcherDepth}; particles
     * follow the water within some mm.
     *
     * @param remaining speed on the axis, above 0; 2 m/s is usual (assumed)
     * @return the depth, within a factor of 1.5, with the caution {@code dwelling-jet}
     */
    public Estimate<Length> catcherDepth(Quantity<Speed> remaining) {
        return StoppedJet.depth(Kind.FORCE.si(thrust), remaining);
    }

    private static double change(TubeMixingKernel lower, TubeMixingKernel upper) {
        return (upper.efficiency() - lower.efficiency()) / 2;
    }

    private static TubeMixingKernel kernel(AbrasiveJet jet, double contactDrag, double wallCoefficient) {
        FocusingTube tube = jet.head().tube();
        double densityKgPerM3 = jet.waterMassFlowSi() / jet.waterVolumeFlowSi();
        double psi = jet.waterSpeedSi() / Math.sqrt(2 * jet.pressureSi() / densityKgPerM3);
        double drag = TubeMixingKernel.dragPerM(
                contactDrag,
                jet.head().orifice().dischargeCoefficient().si() / psi,
                densityKgPerM3 / Kind.DENSITY.si(jet.abrasive().density()),
                jet.orificeBoreSi() / tube.boreSi(),
                jet.abrasive().mesh().meanGrainSizeSi());
        return new TubeMixingKernel(
                drag,
                jet.abrasiveFlowSi() / jet.waterMassFlowSi(),
                wallCoefficient / tube.boreSi(),
                tube.lengthSi(),
                tube.exitBoreSi() / tube.boreSi());
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("tube mixing")
                .put("efficiency", efficiency)
                .put("particle_speed", particleSpeed)
                .put("water_speed", Kind.SPEED, Kind.SPEED.si(waterSpeed))
                .put("thrust", Kind.FORCE, Kind.FORCE.si(thrust))
                .put("entrained_air", entrainedAir)
                .put("cautions", cautions)
                .map();
    }

    @Override
    public String toString() {
        return "mixing efficiency " + QuantityText.round(efficiency.si(), 3) + ", particles "
                + QuantityText.forPeople(Kind.SPEED, particleSpeed.value());
    }
}

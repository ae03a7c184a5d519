package dev.waterjet.jet;

import dev.waterjet.evidence.Caution;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
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
 * <p>Water fills the tube as a mist and drags the particles; the wall slows the water. One product is to be fitted: drag
 * coefficient times the share of the water that a particle meets. Its default is 0.26 within a factor of 2.5, so that a usual
 * head has the standard {@link MixingEfficiency} (derived from memory); the wall coefficient is 0.001 within a factor of 2
 * (assumed). The model predicts ratios between tubes better than their level: particles break in mixing, and their speeds
 * spread, which is not in it. Feed models use the {@link MixingEfficiency} of the head and not this.
 *
 * @param efficiency speed of the particles at the exit over that of an ideal exchange of momentum
 * @param particleSpeed speed of the particles at the exit
 * @param waterSpeed speed of the water at the exit, for the default or given coefficients
 * @param thrust momentum flow of water and particles at the exit
 * @param cautions cautions that apply, one or more
 */
public record TubeMixing(
        Estimate<Dimensionless> efficiency,
        Estimate<Speed> particleSpeed,
        Quantity<Speed> waterSpeed,
        Quantity<Force> thrust,
        List<Caution> cautions)
        implements Described {

    private static final double CONTACT_DRAG = 0.26;
    private static final double CONTACT_DRAG_LOG = 0.9;
    private static final double WALL = 0.001;
    private static final double WALL_LOG = Math.log(2);

    private static final Caution UNCALIBRATED = Caution.warning(Message.of(
            "mixing-by-model",
            "mixing in the tube is computed by a one-dimensional model whose level rests on two assumed coefficients;"
                    + " compare tubes by it, and measure speeds"));

    /**
     * Checks the components.
     *
     * @param efficiency speed of the particles at the exit over that of an ideal exchange of momentum
     * @param particleSpeed speed of the particles at the exit
     * @param waterSpeed speed of the water at the exit
     * @param thrust momentum flow of water and particles at the exit
     * @param cautions cautions that apply
     */
    public TubeMixing {
        Objects.requireNonNull(efficiency, "efficiency");
        Objects.requireNonNull(particleSpeed, "particleSpeed");
        Objects.requireNonNull(waterSpeed, "waterSpeed");
        Objects.requireNonNull(thrust, "thrust");
        cautions = List.copyOf(Objects.requireNonNull(cautions, "cautions"));
    }

    /**
     * Returns the mixing of a jet with the default coefficients.
     *
     * @param jet jet with its head, abrasive and flow rates; a worn tube widens evenly to its exit bore
     * @return the mixing
     */
    public static TubeMixing of(AbrasiveJet jet) {
        return of(jet, CONTACT_DRAG, WALL);
    }

    /**
     * Returns the mixing of a jet.
     *
     * @param jet jet with its head, abrasive and flow rates; a worn tube widens evenly to its exit bore
     * @param contactDrag drag coefficient times the share of the water that a particle meets, 0.001 to 10
     * @param wallCoefficient friction coefficient of the wall, 0 to 0.1
     * @return the mixing
     */
    public static TubeMixing of(AbrasiveJet jet, double contactDrag, double wallCoefficient) {
        Objects.requireNonNull(jet, "jet");
        Require.between("contact drag", contactDrag, 0.001, 10, Units.ONE, "");
        Require.between("wall coefficient", wallCoefficient, 0, 0.1, Units.ONE, "");
        TubeMixingKernel kernel = kernel(jet, contactDrag, wallCoefficient);
        double byDrag = spread(
                kernel(jet, contactDrag * Math.exp(CONTACT_DRAG_LOG), wallCoefficient),
                kernel(jet, contactDrag * Math.exp(-CONTACT_DRAG_LOG), wallCoefficient));
        double byWall = spread(
                kernel(jet, contactDrag, wallCoefficient * Math.exp(WALL_LOG)),
                kernel(jet, contactDrag, wallCoefficient * Math.exp(-WALL_LOG)));
        double uncertainty = Math.hypot(byDrag, byWall);
        double speed = jet.waterSpeedSi();
        double loading = jet.abrasiveFlowSi() / jet.waterMassFlowSi();
        List<Caution> cautions = List.of(UNCALIBRATED);
        return new TubeMixing(
                Estimate.of(Kind.RATIO, kernel.efficiency(), uncertainty).with(cautions),
                Estimate.of(Kind.SPEED, kernel.particles() * speed, uncertainty / (1 + loading) * speed)
                        .with(cautions),
                Kind.SPEED.of(kernel.water() * speed),
                Kind.FORCE.of(
                        (jet.waterMassFlowSi() * kernel.water() + jet.abrasiveFlowSi() * kernel.particles()) * speed),
                cautions);
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

    private static double spread(TubeMixingKernel upper, TubeMixingKernel lower) {
        return Math.abs(upper.efficiency() - lower.efficiency()) / 2;
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
                .put("cautions", cautions)
                .map();
    }

    @Override
    public String toString() {
        return "mixing efficiency " + QuantityText.round(efficiency.si(), 3) + ", particles "
                + QuantityText.forPeople(Kind.SPEED, particleSpeed.value());
    }
}

package dev.waterjet.surface;

import dev.waterjet.evidence.Caution;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.evidence.EvidenceGrade;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.kerf.Kerf;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.ToDoubleFunction;
import javax.measure.Quantity;
import javax.measure.quantity.Length;

/** Predicted roughness of one face, at any depth: Ra, Rz and Pz apart. */
public final class SurfaceRoughness implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    private final RoughnessNumbers numbers;
    private final RoughnessNumbers relative;
    private final double grainM;
    private final double boreM;
    private final double thicknessM;
    private final double separationDepthM;
    private final double depthRelative;
    private final List<Caution> cautions;

    private SurfaceRoughness(RoughnessModel model, AbrasiveJet jet, Kerf kerf, List<Caution> cautions) {
        this.numbers = model.numbers();
        this.relative = model.relative();
        this.grainM = jet.abrasive().mesh().meanGrainSizeSi();
        this.boreM = jet.head().tube().exitBoreSi();
        this.thicknessM = Kind.LENGTH.si(kerf.thickness());
        this.separationDepthM = kerf.separationDepth().si();
        this.depthRelative = kerf.separationDepth().relativeUncertainty();
        this.cautions = cautions;
    }

    static SurfaceRoughness of(RoughnessModel model, AbrasiveJet jet, Kerf kerf) {
        List<Caution> cautions = new ArrayList<>(kerf.separationDepth().cautions());
        cautions.removeIf(caution -> caution.code().equals("kerf-not-fitted"));
        if (model.evidence().grade() != EvidenceGrade.FITTED) {
            cautions.add(Caution.notice(
                    "roughness-not-fitted",
                    "roughness rests on assumed numbers; fit the roughness model to faces of your own"));
        }
        return new SurfaceRoughness(model, jet, kerf, List.copyOf(cautions));
    }

    /**
     * Arithmetic mean deviation of the roughness profile.
     *
     * @param depth depth below the entry face, from zero to the thickness
     * @return Ra
     */
    public Estimate<Length> raAt(Quantity<Length> depth) {
        return at(depth, moved -> 1);
    }

    /**
     * Greatest height of the roughness profile, mean of the sampling lengths. ISO 9013 calls the mean of five Rz5.
     *
     * @param depth depth below the entry face, from zero to the thickness
     * @return Rz
     */
    public Estimate<Length> rzAt(Quantity<Length> depth) {
        return at(depth, RoughnessNumbers::rzOverRa);
    }

    /**
     * Total height of the primary profile, waviness and all.
     *
     * @param depth depth below the entry face, from zero to the thickness
     * @return Pz
     */
    public Estimate<Length> pzAt(Quantity<Length> depth) {
        return at(depth, moved -> moved.paOverRa() * moved.pzOverPa());
    }

    private Estimate<Length> at(Quantity<Length> depth, ToDoubleFunction<RoughnessNumbers> overRa) {
        double depthM = Require.between(
                "depth", Kind.LENGTH.si(depth), 0, thicknessM, Units.MILLIMETRE, "the thickness of the workpiece");
        double ratio = depthM / separationDepthM;
        double value = ra(ratio, numbers) * overRa.applyAsDouble(numbers);
        double byNumbers = numbers.spread(relative, moved -> ra(ratio, moved) * overRa.applyAsDouble(moved));
        double factor = Math.exp(depthRelative);
        double byDepth = Math.log(ra(ratio * factor, numbers) / ra(ratio / factor, numbers)) / 2;
        return Estimate.withinFactor(Kind.LENGTH, value, Math.hypot(byNumbers, byDepth), cautions);
    }

    private double ra(double depthRatio, RoughnessNumbers with) {
        return RoughnessKernel.ra(depthRatio, grainM, boreM, with);
    }

    /**
     * Ra at a depth as a number, for drawing and for loops.
     *
     * @param depthM depth in m, from zero to the thickness
     * @return Ra in m
     */
    public double raSi(double depthM) {
        Require.between("depth", depthM, 0, thicknessM, Units.MILLIMETRE, "the thickness of the workpiece");
        return ra(depthM / separationDepthM, numbers);
    }

    /**
     * Ra at the exit face, where it is greatest.
     *
     * @return Ra
     */
    public Estimate<Length> raAtExit() {
        return raAt(Kind.LENGTH.of(thicknessM));
    }

    /**
     * Depth at which grooves begin: 0.52 of the separation depth, or the thickness where that is less.
     *
     * @return the depth of the smooth zone
     */
    public Estimate<Length> smoothZone() {
        double zone = RoughnessKernel.CRITICAL_DEPTH_RATIO * separationDepthM;
        return zone < thicknessM
                ? Estimate.withinFactor(Kind.LENGTH, zone, depthRelative, cautions)
                : Estimate.of(Kind.LENGTH, thicknessM, 0).with(cautions);
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("face roughness")
                .put("thickness", Kind.LENGTH, thicknessM)
                .put("separation_depth", Kind.LENGTH, separationDepthM)
                .put("smooth_zone", Kind.LENGTH, smoothZone().si())
                .put("ra_at_entry", Kind.LENGTH, raSi(0))
                .put("ra_at_exit", raAtExit())
                .map();
    }

    @Override
    public String toString() {
        return "roughness Ra " + raSi(0) + " m at the entry to " + raSi(thicknessM) + " m at the exit";
    }
}

package dev.waterjet.surface;

import dev.waterjet.evidence.Caution;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.evidence.EvidenceGrade;
import dev.waterjet.kerf.Kerf;
import dev.waterjet.kerf.LagModel;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.Serializable;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.function.ToDoubleFunction;
import javax.measure.Quantity;
import javax.measure.quantity.Length;

/**
 * Predicted roughness of a cut surface, at any depth: Ra, Rz and Pz.
 *
 * @param model roughness model
 * @param kerf kerf to which the surface belongs
 */
public record SurfaceRoughness(RoughnessModel model, Kerf kerf) implements Described, Serializable {

    /**
     * Checks the components.
     *
     * @param model roughness model
     * @param kerf kerf to which the surface belongs
     */
    public SurfaceRoughness {
        Objects.requireNonNull(model, "model");
        Objects.requireNonNull(kerf, "kerf");
    }

    /**
     * Returns the arithmetic mean deviation of the roughness profile.
     *
     * @param depth depth below the top side, from 0 to the thickness
     * @return Ra
     */
    public Estimate<Length> raAt(Quantity<Length> depth) {
        Objects.requireNonNull(depth, "depth");
        return at(depth, numbers -> 1);
    }

    /**
     * Returns the maximum height of the roughness profile, mean of the sampling lengths. ISO 9013 calls the mean of five Rz5.
     *
     * @param depth depth below the top side, from 0 to the thickness
     * @return Rz
     */
    public Estimate<Length> rzAt(Quantity<Length> depth) {
        Objects.requireNonNull(depth, "depth");
        return at(depth, RoughnessNumbers::rzOverRa);
    }

    /**
     * Returns the total height of the primary profile, which contains the waviness.
     *
     * @param depth depth below the top side, from 0 to the thickness
     * @return Pz
     */
    public Estimate<Length> pzAt(Quantity<Length> depth) {
        Objects.requireNonNull(depth, "depth");
        return at(depth, numbers -> numbers.paOverRa() * numbers.pzOverPa());
    }

    private Estimate<Length> at(Quantity<Length> depth, ToDoubleFunction<RoughnessNumbers> overRa) {
        double ratio = inside(Kind.LENGTH.si(depth)) / separationDepthM();
        RoughnessNumbers numbers = model.numbers();
        double value = ra(ratio, numbers) * overRa.applyAsDouble(numbers);
        double byNumbers = numbers.spread(model.relative(), moved -> ra(ratio, moved) * overRa.applyAsDouble(moved));
        double factor = Math.exp(kerf.separationDepth().relativeUncertainty());
        double byDepth = Math.log(ra(ratio * factor, numbers) / ra(ratio / factor, numbers)) / 2;
        return Estimate.withinFactor(Kind.LENGTH, value, Math.hypot(byNumbers, byDepth), cautions());
    }

    private double inside(double depthM) {
        return Require.between("depth", depthM, 0, thicknessM(), Units.MILLIMETRE, "the thickness of the workpiece");
    }

    private double thicknessM() {
        return kerf.workpiece().thicknessSi();
    }

    private double separationDepthM() {
        return kerf.separationDepth().si();
    }

    private double ra(double depthRatio, RoughnessNumbers numbers) {
        return RoughnessModel.ra(kerf.jet(), depthRatio, numbers);
    }

    /**
     * Returns Ra at a depth, on SI numbers, for drawing and loops.
     *
     * @param depthM depth in m, from 0 to the thickness
     * @return Ra in m
     */
    public double raSi(double depthM) {
        return model.raSi(kerf.jet(), separationDepthM(), inside(depthM));
    }

    /** {@return Ra at the exit, where it is at its maximum} */
    public Estimate<Length> raAtExit() {
        return raAt(kerf.thickness());
    }

    /** {@return the depth of the smooth zone: 0.52 of the separation depth, or the thickness where that is less} */
    public Estimate<Length> smoothZone() {
        double zone = LagModel.CRITICAL_DEPTH_RATIO * separationDepthM();
        return zone < thicknessM()
                ? Estimate.withinFactor(
                        Kind.LENGTH, zone, kerf.separationDepth().relativeUncertainty(), cautions())
                : Estimate.of(Kind.LENGTH, thicknessM(), 0).with(cautions());
    }

    /** {@return the cautions that apply to every number of this surface} */
    public List<Caution> cautions() {
        Set<Caution> all = new LinkedHashSet<>(kerf.separationDepth().cautions());
        if (model.evidence().grade() != EvidenceGrade.FITTED) {
            all.add(Caution.notice(Message.of(
                    "roughness-not-fitted",
                    "roughness rests on assumed numbers; fit the roughness model to your own cut surfaces")));
        }
        if (LagModel.CRITICAL_DEPTH_RATIO * separationDepthM() >= thicknessM()) {
            all.add(Caution.notice(Message.of(
                            "striations-left-out",
                            "at quality index {index} the model predicts no striation zone; coarse and medium cuts can"
                                    + " have striations near the exit all the same, measure Ra there")
                    .with("index", kerf.index())));
        }
        return List.copyOf(all);
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("surface roughness")
                .put("model", model)
                .put("kerf", kerf)
                .put("smooth_zone", Kind.LENGTH, smoothZone().si())
                .put("ra_at_entry", Kind.LENGTH, raSi(0))
                .put("ra_at_exit", raAtExit())
                .map();
    }

    @Override
    public String toString() {
        return "Ra " + QuantityText.forPeople(Kind.LENGTH, raSi(0)) + " at entry, "
                + QuantityText.forPeople(Kind.LENGTH, raSi(thicknessM())) + " at exit";
    }
}

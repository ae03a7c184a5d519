package dev.waterjet.feed;

import dev.waterjet.evidence.Evidence;
import dev.waterjet.evidence.EvidenceGrade;
import dev.waterjet.evidence.Source;
import dev.waterjet.jet.JetSettings;
import dev.waterjet.jet.MixingEfficiency;
import dev.waterjet.material.Material;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.util.Objects;

/**
 * A model that knows no best flow of abrasive, made to know one: its depth is multiplied by the square of
 * {@code eta(R) / eta(R_0)}, with eta a {@linkplain MixingEfficiency#decreasing mixing efficiency} that falls with the loading
 * ratio R, and R_0 the loading at which the model is taken to be right.
 *
 * <p>Derived: depth goes with the power of the abrasive, and that with the square of the efficiency. Models that compute
 * with the speed of the abrasive, as the erosion and the specific-energy model do, need no such help: give their head the
 * falling efficiency.
 */
public final class LoadedFeed implements ForwardingFeed {

    private static final long serialVersionUID = 1L;

    /** Keeps a jet choked with abrasive from dividing by zero. */
    private static final double LEAST_FACTOR = 1e-60;

    private final FeedModel model;
    private final MixingEfficiency mixing;
    private final double rightAt;

    private LoadedFeed(FeedModel model, MixingEfficiency mixing, double rightAt) {
        this.model = Objects.requireNonNull(model, "model");
        this.mixing = Objects.requireNonNull(mixing, "mixing");
        this.rightAt = Require.positive("loading at which the model is right", rightAt, Units.ONE);
    }

    /**
     * A model corrected for loading.
     *
     * @param model the model
     * @param mixing how the efficiency falls with loading
     * @param rightAt loading ratio at which the model is taken to be right, such as 0.15
     * @return the corrected model
     */
    public static LoadedFeed of(FeedModel model, MixingEfficiency mixing, double rightAt) {
        return new LoadedFeed(model, mixing, rightAt);
    }

    /**
     * The scale of {@link MixingEfficiency#decreasing} with which a corrected model cuts deepest at a given loading:
     * {@code s = 2 R/e}. Derived: with a depth that goes with the flow of abrasive to the power e the corrected depth goes
     * with {@code R^e exp(-2 R/s)}. For the machinability model e is 0.343.
     *
     * @param bestLoading loading ratio at which the jet cuts deepest, above zero; measured optima lie at 0.10 to 0.25
     * @param flowExponent exponent e of the flow of abrasive in the depth of the model, above zero
     * @return the scale
     */
    public static double scaleForOptimumLoading(double bestLoading, double flowExponent) {
        Require.positive("best loading ratio", bestLoading, Units.ONE);
        Require.positive("exponent of the flow of abrasive", flowExponent, Units.ONE);
        return 2 * bestLoading / flowExponent;
    }

    private double factor(double loadingRatio) {
        double ratio = mixing.atSi(loadingRatio) / mixing.atSi(rightAt);
        return Math.max(LEAST_FACTOR, ratio * ratio);
    }

    @Override
    public FeedModel model() {
        return model;
    }

    @Override
    public String name() {
        return model.name() + ", loaded";
    }

    @Override
    public Evidence evidence() {
        return Evidence.of(
                        EvidenceGrade.DERIVED,
                        Source.of(model.evidence().source().citation()))
                .withNote("Depth times the square of the falling mixing efficiency (derived); "
                        + mixing.evidence().grade().label() + ": "
                        + mixing.evidence().source().citation());
    }

    @Override
    public double separationFeedSi(JetSettings jet, Material material, double depthM) {
        return model.separationFeedSi(jet, material, depthM / factor(jet.loadingRatioSi()));
    }

    @Override
    public double separationDepthSi(JetSettings jet, Material material, double feedMPerS) {
        return model.separationDepthSi(jet, material, feedMPerS) * factor(jet.loadingRatioSi());
    }

    @Override
    public double feedSi(JetSettings jet, Material material, double thicknessM, double index) {
        return model.feedSi(jet, material, thicknessM / factor(jet.loadingRatioSi()), index);
    }

    @Override
    public double indexSi(JetSettings jet, Material material, double thicknessM, double feedMPerS) {
        return model.indexSi(jet, material, thicknessM / factor(jet.loadingRatioSi()), feedMPerS);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof LoadedFeed that
                && model.equals(that.model)
                && mixing.equals(that.mixing)
                && rightAt == that.rightAt;
    }

    @Override
    public int hashCode() {
        return Objects.hash(model, mixing, rightAt);
    }

    @Override
    public String toString() {
        return name();
    }
}

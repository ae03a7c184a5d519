package dev.waterjet.surface;

import dev.waterjet.evidence.Caution;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.feed.CutConditions;
import dev.waterjet.kerf.KerfModel;
import dev.waterjet.kerf.LagGeometry;
import dev.waterjet.kerf.LagModel;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.quality.EdgeRequirement;
import dev.waterjet.quality.Iso9013;
import dev.waterjet.quality.QualityIndexTable;
import java.io.InvalidObjectException;
import java.io.ObjectInputStream;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Angle;
import javax.measure.quantity.Length;
import javax.measure.quantity.Speed;

/**
 * Model of a cut surface: kerf, roughness and quality indices together. It predicts the surface at a feed rate, and the
 * fastest feed rate for required limits.
 *
 * <pre>{@code
 * CutSurface surface = SurfaceModel.standard().surface(cut, millimetresPerMinute(120));
 * Estimate<Length> ra = surface.roughness().raAtExit();
 * FastestFeed fastest = SurfaceModel.standard().fastestFeed(cut, EdgeRequirement.of(CutQuality.FINE).withRoughness(micrometres(6)));
 * }</pre>
 */
public final class SurfaceModel implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    /** Relative uncertainty of a feed rate from which on its requirement does not decide it: a factor of e. */
    private static final double DECISIVE = 1;

    private static final SurfaceModel STANDARD =
            new SurfaceModel(new Values(KerfModel.standard(), RoughnessModel.standard(), QualityIndexTable.standard()));

    /** Checked content, and the serial form. */
    private record Values(KerfModel kerfModel, RoughnessModel roughnessModel, QualityIndexTable indices)
            implements Serializable {

        Values {
            Objects.requireNonNull(kerfModel, "kerfModel");
            Objects.requireNonNull(roughnessModel, "roughnessModel");
            Objects.requireNonNull(indices, "indices");
        }

        private Object readResolve() {
            return new SurfaceModel(this);
        }
    }

    private final transient Values values;

    private SurfaceModel(Values values) {
        this.values = values;
    }

    /** {@return the model of the standard kerf, roughness and quality indices} */
    public static SurfaceModel standard() {
        return STANDARD;
    }

    /**
     * Returns this model with another kerf model.
     *
     * @param kerfModel kerf model
     * @return the model with that kerf model
     */
    public SurfaceModel withKerf(KerfModel kerfModel) {
        return new SurfaceModel(new Values(kerfModel, values.roughnessModel, values.indices));
    }

    /**
     * Returns this model with another roughness model.
     *
     * @param roughnessModel roughness model
     * @return the model with that roughness model
     */
    public SurfaceModel withRoughness(RoughnessModel roughnessModel) {
        return new SurfaceModel(new Values(values.kerfModel, roughnessModel, values.indices));
    }

    /**
     * Returns this model with another table of quality indices.
     *
     * @param indices quality index that each cut quality requires
     * @return the model with that table
     */
    public SurfaceModel withIndices(QualityIndexTable indices) {
        return new SurfaceModel(new Values(values.kerfModel, values.roughnessModel, indices));
    }

    /** {@return the kerf model} */
    public KerfModel kerfModel() {
        return values.kerfModel;
    }

    /** {@return the roughness model} */
    public RoughnessModel roughnessModel() {
        return values.roughnessModel;
    }

    /** {@return the quality index that each cut quality requires} */
    public QualityIndexTable indices() {
        return values.indices;
    }

    /**
     * Returns the cut surface at a feed rate.
     *
     * @param cut conditions of the cut
     * @param feed feed rate, at most the one that just separates the workpiece
     * @return the surface
     * @throws dev.waterjet.measure.DomainException if the jet does not separate the workpiece at that feed rate
     */
    public CutSurface surface(CutConditions cut, Quantity<Speed> feed) {
        return new CutSurface(values.roughnessModel.roughness(values.kerfModel.kerf(cut, feed)), values.indices);
    }

    /**
     * Returns the fastest feed rate that meets a requirement, by the best values of all models. The lag tolerance counts where
     * the radius of the smallest arc is stated.
     *
     * @param cut conditions of the cut
     * @param requirement cut quality and limits
     * @return the feed rate, and the feed rates that each limit allows
     */
    public FastestFeed fastestFeed(CutConditions cut, EdgeRequirement requirement) {
        Objects.requireNonNull(cut, "cut");
        Objects.requireNonNull(requirement, "requirement");
        List<FastestFeed.Range> ranges = new ArrayList<>();
        double index = values.indices.index(requirement.quality());
        ranges.add(upTo(FastestFeed.Requirement.QUALITY, Optional.of(cut.feed(index))));
        requirement.perpendicularityRange().ifPresent(range -> ranges.add(byWalls(cut, range)));
        requirement.profileHeightRange().ifPresent(range -> ranges.add(byProfile(cut, range)));
        requirement.taper().ifPresent(limit -> ranges.add(byTaper(cut, limit)));
        requirement.roughness().ifPresent(limit -> ranges.add(byRoughness(cut, limit)));
        requirement
                .arcRadius()
                .ifPresent(radius -> ranges.add(byLag(cut, radius, requirement.lagToleranceSi(cut.thicknessSi()))));
        requirement
                .maximumFeed()
                .ifPresent(limit -> ranges.add(upTo(
                        FastestFeed.Requirement.MAXIMUM_FEED,
                        Optional.of(Estimate.of(Kind.SPEED, Kind.SPEED.si(limit), 0)))));
        return new FastestFeed(ranges);
    }

    private static FastestFeed.Range upTo(FastestFeed.Requirement requirement, Optional<Estimate<Speed>> maximum) {
        return new FastestFeed.Range(requirement, Optional.empty(), maximum);
    }

    private FastestFeed.Range byRoughness(CutConditions cut, Quantity<Length> limit) {
        FastestFeed.Requirement requirement = FastestFeed.Requirement.ROUGHNESS;
        return upTo(
                requirement,
                values.roughnessModel
                        .separationDepthForRa(cut, cut.workpiece().thickness(), limit)
                        .map(from -> feed(cut, from, requirement)));
    }

    private FastestFeed.Range byTaper(CutConditions cut, Quantity<Angle> limit) {
        FastestFeed.Requirement requirement = FastestFeed.Requirement.TAPER;
        Quantity<Angle> other = Kind.ANGLE.of(-Kind.ANGLE.si(limit));
        return new FastestFeed.Range(
                requirement,
                values.kerfModel.separationDepthForTaper(cut, other).map(depth -> feed(cut, depth, requirement)),
                values.kerfModel.separationDepthForTaper(cut, limit).map(depth -> feed(cut, depth, requirement)));
    }

    private FastestFeed.Range byWalls(CutConditions cut, int range) {
        FastestFeed.Requirement requirement = FastestFeed.Requirement.PERPENDICULARITY_RANGE;
        Iso9013 standard = Iso9013.forThickness(cut.workpiece().thickness());
        Quantity<Length> edge = standard.edgeHeight();
        Quantity<Length> limit = standard.perpendicularityLimit(range);
        return new FastestFeed.Range(
                requirement,
                values.kerfModel
                        .maximumSeparationDepthForDeviation(cut, edge, limit)
                        .map(depth -> feed(cut, depth, requirement)),
                values.kerfModel
                        .separationDepthForDeviation(cut, edge, limit)
                        .map(depth -> feed(cut, depth, requirement)));
    }

    private FastestFeed.Range byProfile(CutConditions cut, int range) {
        FastestFeed.Requirement requirement = FastestFeed.Requirement.PROFILE_HEIGHT_RANGE;
        Iso9013 standard = Iso9013.forThickness(cut.workpiece().thickness());
        Quantity<Length> depth = Kind.LENGTH.of(cut.thicknessSi() - Kind.LENGTH.si(standard.edgeHeight()));
        return upTo(
                requirement,
                values.roughnessModel
                        .separationDepthForRz(cut, depth, standard.profileHeightLimit(range))
                        .map(from -> feed(cut, from, requirement)));
    }

    private FastestFeed.Range byLag(CutConditions cut, Quantity<Length> radius, double toleranceM) {
        FastestFeed.Requirement requirement = FastestFeed.Requirement.LAG_ON_ARC;
        LagModel lag = values.kerfModel.lagModel();
        double allowedM = LagGeometry.TANGENT.arcLagSi(toleranceM, Kind.LENGTH.si(radius));
        // the lag goes with 1/H, so one depth gives the factor
        double depth = lag.lagSi(1, cut.thicknessSi()) / allowedM;
        Estimate<Length> from = Estimate.withinFactor(
                Kind.LENGTH, Math.max(cut.thicknessSi(), depth), lag.relativeUncertainty(), List.of());
        return upTo(requirement, Optional.of(feed(cut, from, requirement)));
    }

    private static Estimate<Speed> feed(
            CutConditions cut, Estimate<Length> depth, FastestFeed.Requirement requirement) {
        double step = 1.001;
        double feed = cut.separationFeedSi(depth.si());
        double slope = Math.log(feed / cut.separationFeedSi(depth.si() * step)) / Math.log(step);
        double relative = Math.hypot(cut.relativeUncertainty(), slope * depth.relativeUncertainty());
        Estimate<Speed> known = Estimate.withinFactor(Kind.SPEED, feed, relative, cut.cautions())
                .with(cut.feedCautions(depth.si(), feed));
        return relative < DECISIVE ? known : known.with(List.of(notDecisive(requirement)));
    }

    private static Caution notDecisive(FastestFeed.Requirement requirement) {
        return Caution.warning(Message.of(
                        "requirement-not-decisive",
                        "the {requirement} hardly depends on the feed rate here; measure a cut")
                .with("requirement", requirement.label()));
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("surface model")
                .put("kerf_model", values.kerfModel)
                .put("roughness_model", values.roughnessModel)
                .put("indices", values.indices.toString())
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof SurfaceModel that && values.equals(that.values);
    }

    @Override
    public int hashCode() {
        return values.hashCode();
    }

    @Override
    public String toString() {
        return "surface model of " + values.kerfModel + " and " + values.roughnessModel;
    }

    private Object writeReplace() {
        return values;
    }

    private void readObject(ObjectInputStream in) throws InvalidObjectException {
        throw new InvalidObjectException("read through its values");
    }
}

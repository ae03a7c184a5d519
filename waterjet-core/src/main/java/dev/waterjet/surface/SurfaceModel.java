package dev.waterjet.surface;

import dev.waterjet.evidence.Estimate;
import dev.waterjet.feed.FeedModel;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.kerf.KerfModel;
import dev.waterjet.kerf.LagModel;
import dev.waterjet.material.Material;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import dev.waterjet.quality.Iso9013;
import dev.waterjet.quality.QualityIndexTable;
import java.io.Serializable;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Speed;

/** Predicts faces, and finds the fastest feed for a face: kerf, roughness and index table in one place. */
public final class SurfaceModel implements Serializable {

    private static final long serialVersionUID = 1L;

    private static final SurfaceModel STANDARD =
            new SurfaceModel(KerfModel.standard(), RoughnessModel.standard(), QualityIndexTable.standard());

    private final KerfModel kerfModel;
    private final RoughnessModel roughnessModel;
    private final QualityIndexTable table;

    private SurfaceModel(KerfModel kerfModel, RoughnessModel roughnessModel, QualityIndexTable table) {
        this.kerfModel = Objects.requireNonNull(kerfModel, "kerfModel");
        this.roughnessModel = Objects.requireNonNull(roughnessModel, "roughnessModel");
        this.table = Objects.requireNonNull(table, "table");
    }

    /**
     * The standard kerf, roughness and index table.
     *
     * @return the model to start from
     */
    public static SurfaceModel standard() {
        return STANDARD;
    }

    /**
     * This model with another kerf.
     *
     * @param kerfModel the kerf
     * @return the model with that kerf
     */
    public SurfaceModel withKerf(KerfModel kerfModel) {
        return new SurfaceModel(kerfModel, roughnessModel, table);
    }

    /**
     * This model with another roughness.
     *
     * @param roughnessModel the roughness
     * @return the model with that roughness
     */
    public SurfaceModel withRoughness(RoughnessModel roughnessModel) {
        return new SurfaceModel(kerfModel, roughnessModel, table);
    }

    /**
     * This model with another table of indices.
     *
     * @param table what index a grade wants
     * @return the model with that table
     */
    public SurfaceModel withIndices(QualityIndexTable table) {
        return new SurfaceModel(kerfModel, roughnessModel, table);
    }

    /**
     * The face at a feed.
     *
     * @param jet the jet
     * @param piece the workpiece
     * @param feeds what is known of feed and depth
     * @param feed the feed, no faster than the one that just separates the workpiece
     * @return the face
     * @throws dev.waterjet.measure.DomainException if the jet does not separate the workpiece at that feed
     */
    public CutSurface surface(AbrasiveJet jet, Workpiece piece, FeedModel feeds, Quantity<Speed> feed) {
        return CutSurface.of(jet, kerfModel.kerf(jet, piece, feeds, feed), roughnessModel, table);
    }

    /**
     * The fastest feed that meets a demand, by the best values of all models.
     *
     * @param jet the jet
     * @param piece the workpiece
     * @param feeds what is known of feed and depth
     * @param demand what is asked of the face
     * @return the feed, and what governs it
     */
    public FastestFeed fastestFeed(AbrasiveJet jet, Workpiece piece, FeedModel feeds, FaceDemand demand) {
        Map<FaceDemand.Item, Optional<Estimate<Speed>>> found = new EnumMap<>(FaceDemand.Item.class);
        found.put(FaceDemand.Item.SEPARATION, Optional.of(feeds.feed(jet, piece, 1)));
        demand.quality()
                .ifPresent(grade ->
                        found.put(FaceDemand.Item.GRADE, Optional.of(feeds.feed(jet, piece, table.index(grade)))));
        demand.limits()
                .forEach((item, limit) -> found.put(
                        item, depth(jet, piece, item, limit).map(depth -> feed(jet, piece.material(), feeds, depth))));
        return FastestFeed.of(found);
    }

    /** Least separation depth that meets one demand. */
    private Optional<Estimate<Length>> depth(AbrasiveJet jet, Workpiece piece, FaceDemand.Item item, double limit) {
        double thickness = piece.thicknessSi();
        return switch (item) {
            case SEPARATION, GRADE -> throw new IllegalStateException(item + " has no limit of its own");
            case PERPENDICULARITY_RANGE -> {
                Iso9013 standard = Iso9013.forThickness(piece.thickness());
                yield kerfModel.separationDepthForDeviationSi(
                        jet,
                        piece,
                        Kind.LENGTH.si(standard.edgeHeight()),
                        Kind.LENGTH.si(standard.perpendicularityLimit((int) limit)));
            }
            case PROFILE_HEIGHT_RANGE -> {
                Iso9013 standard = Iso9013.forThickness(piece.thickness());
                double ra = roughnessModel.raOfRz(Kind.LENGTH.si(standard.profileHeightLimit((int) limit)));
                double edge = Kind.LENGTH.si(standard.edgeHeight());
                yield roughnessModel.separationDepthForRaSi(jet, piece, thickness - edge, ra);
            }
            case TAPER -> kerfModel.separationDepthForTaper(jet, piece, Kind.ANGLE.of(limit));
            case ROUGHNESS -> roughnessModel.separationDepthForRaSi(jet, piece, thickness, limit);
            case ARC -> {
                LagModel lag = kerfModel.lagModel();
                double depth = lag.coefficient() * thickness * thickness / limit;
                yield Optional.of(Estimate.withinFactor(
                        Kind.LENGTH, Math.max(thickness, depth), lag.relativeUncertainty(), List.of()));
            }
        };
    }

    private static Estimate<Speed> feed(AbrasiveJet jet, Material material, FeedModel feeds, Estimate<Length> depth) {
        double step = 1.001;
        double feed = feeds.separationFeedSi(jet, material, depth.si());
        double slope = Math.log(feed / feeds.separationFeedSi(jet, material, depth.si() * step)) / Math.log(step);
        return Estimate.withinFactor(
                        Kind.SPEED,
                        feed,
                        Math.hypot(feeds.relativeUncertainty(material), slope * depth.relativeUncertainty()),
                        jet.cautions())
                .with(material.cautions())
                .with(feeds.cautions(jet, material, depth.si(), feed));
    }

    @Override
    public String toString() {
        return "face model of " + kerfModel + " and " + roughnessModel;
    }
}

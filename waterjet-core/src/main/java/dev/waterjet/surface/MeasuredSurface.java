package dev.waterjet.surface;

import dev.waterjet.evidence.Estimate;
import dev.waterjet.kerf.LagModel;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import dev.waterjet.quality.QualityIndexTable;
import dev.waterjet.quality.QualityProbabilities;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Length;

/**
 * The quality index of a face that was cut already, read off it: from the depth of its smooth zone, 0.52 q h, or from the lag
 * at its exit, k h/q.
 */
public final class MeasuredSurface implements Serializable {

    private static final long serialVersionUID = 1L;

    /** Scatter of the end of the smooth zone between materials; assumed. */
    private static final double SMOOTH_ZONE_UNCERTAINTY = 0.15;

    private final double thicknessM;
    private final List<Estimate<Dimensionless>> indices;

    private MeasuredSurface(double thicknessM, List<Estimate<Dimensionless>> indices) {
        this.thicknessM = Require.positive("thickness", thicknessM, Units.MILLIMETRE);
        this.indices = indices;
    }

    /**
     * A face, as yet unread.
     *
     * @param thickness thickness of the workpiece, above zero
     * @return the face
     */
    public static MeasuredSurface ofThickness(Quantity<Length> thickness) {
        return new MeasuredSurface(Kind.LENGTH.si(thickness), List.of());
    }

    /**
     * This face with the depth of its smooth zone.
     *
     * @param zone depth at which grooves begin, above zero and below the thickness: a zone that reaches through tells
     *     only that the index is above 1.9
     * @return the face with that reading
     */
    public MeasuredSurface withSmoothZone(Quantity<Length> zone) {
        double zoneM = Require.positive("depth of the smooth zone", Kind.LENGTH.si(zone), Units.MILLIMETRE);
        Require.atMost(
                "depth of the smooth zone",
                zoneM,
                Math.nextDown(thicknessM),
                Units.MILLIMETRE,
                "a zone that reaches through tells no index, read the lag instead");
        return with(zoneM / (RoughnessKernel.CRITICAL_DEPTH_RATIO * thicknessM), SMOOTH_ZONE_UNCERTAINTY);
    }

    /**
     * This face with the lag at its exit.
     *
     * @param lag how far the lag line at the exit is behind the entry, above zero
     * @param model the lag model
     * @return the face with that reading
     */
    public MeasuredSurface withExitLag(Quantity<Length> lag, LagModel model) {
        double lagM = Require.positive("lag at the exit", Kind.LENGTH.si(lag), Units.MILLIMETRE);
        return with(model.coefficient() * thicknessM / lagM, model.relativeUncertainty());
    }

    private MeasuredSurface with(double index, double relative) {
        List<Estimate<Dimensionless>> more = new ArrayList<>(indices);
        more.add(Estimate.withinFactor(Kind.RATIO, index, relative, List.of()));
        return new MeasuredSurface(thicknessM, List.copyOf(more));
    }

    /**
     * The index by all readings, each weighted by the inverse square of its relative uncertainty.
     *
     * @return the index
     * @throws IllegalStateException if the face was not read
     */
    public Estimate<Dimensionless> index() {
        if (indices.isEmpty()) {
            throw new IllegalStateException("the face has no reading: tell its smooth zone or its lag");
        }
        double weights = 0;
        double sum = 0;
        for (Estimate<Dimensionless> index : indices) {
            double weight = 1 / Math.max(1e-12, index.relativeUncertainty() * index.relativeUncertainty());
            weights += weight;
            sum += weight * Math.log(index.si());
        }
        return Estimate.withinFactor(Kind.RATIO, Math.exp(sum / weights), 1 / Math.sqrt(weights), List.of());
    }

    /**
     * Grade of the face, with the probability of each.
     *
     * @param table what index a grade wants
     * @return the odds
     */
    public QualityProbabilities probabilities(QualityIndexTable table) {
        return QualityProbabilities.of(index(), table);
    }

    @Override
    public String toString() {
        return "face of " + thicknessM + " m with " + indices.size() + " readings";
    }
}

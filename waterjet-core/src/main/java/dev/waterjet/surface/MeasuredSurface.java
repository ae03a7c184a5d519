package dev.waterjet.surface;

import dev.waterjet.evidence.Estimate;
import dev.waterjet.kerf.LagModel;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.NoSolutionException;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import dev.waterjet.quality.QualityIndexTable;
import dev.waterjet.quality.QualityProbabilities;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Length;

/**
 * Cut surface whose quality index is read off: from the depth of its smooth zone, 0.52 q h, or from the lag at its exit,
 * k h/q.
 *
 * <pre>{@code
 * Estimate<Dimensionless> index = MeasuredSurface.ofThickness(millimetres(30))
 *         .withSmoothZone(millimetres(23))
 *         .withExitLag(millimetres(5.2), LagModel.standard())
 *         .index();
 * }</pre>
 *
 * @param thickness thickness of the workpiece, above 0
 * @param readings quality index by each reading
 */
public record MeasuredSurface(Quantity<Length> thickness, List<Estimate<Dimensionless>> readings)
        implements Described, Serializable {

    /** Scatter of the end of the smooth zone between materials; assumed. */
    private static final double SMOOTH_ZONE_UNCERTAINTY = 0.15;

    /**
     * Checks the components.
     *
     * @throws dev.waterjet.measure.DomainException if the thickness or a reading is not above 0
     * @param thickness thickness of the workpiece, above 0
     * @param readings quality index by each reading
     */
    public MeasuredSurface {
        Objects.requireNonNull(readings, "readings");
        Objects.requireNonNull(thickness, "thickness");
        thickness = Kind.LENGTH.of(Require.positive("thickness", Kind.LENGTH.si(thickness), Units.MILLIMETRE));
        readings = List.copyOf(readings);
        readings.forEach(reading -> Require.positive("quality index", reading.si(), Units.ONE));
    }

    /**
     * Returns a cut surface without readings.
     *
     * @param thickness thickness of the workpiece, above 0
     * @return the surface
     */
    public static MeasuredSurface ofThickness(Quantity<Length> thickness) {
        Objects.requireNonNull(thickness, "thickness");
        return new MeasuredSurface(thickness, List.of());
    }

    /**
     * Returns this surface with the depth of its smooth zone.
     *
     * @param zone depth at which striations begin, above 0 and below the thickness: a smooth zone that reaches through shows
     *     only that the index is above 1.9
     * @return the surface with that reading
     */
    public MeasuredSurface withSmoothZone(Quantity<Length> zone) {
        Objects.requireNonNull(zone, "zone");
        double zoneM = Require.positive("depth of the smooth zone", Kind.LENGTH.si(zone), Units.MILLIMETRE);
        Require.atMost(
                "depth of the smooth zone",
                zoneM,
                Math.nextDown(thicknessM()),
                Units.MILLIMETRE,
                "a zone that reaches through gives no index, read the lag instead");
        return with(zoneM / (LagModel.CRITICAL_DEPTH_RATIO * thicknessM()), SMOOTH_ZONE_UNCERTAINTY);
    }

    /**
     * Returns this surface with the lag at its exit.
     *
     * @param lag distance of the drag line at the exit behind its entry, above 0
     * @param model lag model
     * @return the surface with that reading
     */
    public MeasuredSurface withExitLag(Quantity<Length> lag, LagModel model) {
        Objects.requireNonNull(lag, "lag");
        Objects.requireNonNull(model, "model");
        double lagM = Require.positive("lag at the exit", Kind.LENGTH.si(lag), Units.MILLIMETRE);
        return with(model.coefficient() * thicknessM() / lagM, model.relativeUncertainty());
    }

    private double thicknessM() {
        return Kind.LENGTH.si(thickness);
    }

    private MeasuredSurface with(double index, double relative) {
        List<Estimate<Dimensionless>> more = new ArrayList<>(readings);
        more.add(Estimate.withinFactor(Kind.RATIO, index, relative, List.of()));
        return new MeasuredSurface(thickness, more);
    }

    /**
     * Returns the quality index by all readings, each weighted by the inverse square of its relative uncertainty.
     *
     * @return the index
     * @throws NoSolutionException if there is no reading; code {@code no-reading}
     */
    public Estimate<Dimensionless> index() {
        if (readings.isEmpty()) {
            throw new NoSolutionException(
                    Message.of("no-reading", "the cut surface has no reading; add its smooth zone or its exit lag"));
        }
        double weights = 0;
        double sum = 0;
        for (Estimate<Dimensionless> reading : readings) {
            double weight = 1 / Math.max(1e-12, reading.relativeUncertainty() * reading.relativeUncertainty());
            weights += weight;
            sum += weight * Math.log(reading.si());
        }
        return Estimate.withinFactor(Kind.RATIO, Math.exp(sum / weights), 1 / Math.sqrt(weights), List.of());
    }

    /**
     * Returns the probability of each cut quality.
     *
     * @param indices quality index that each cut quality requires
     * @return the probabilities
     * @throws NoSolutionException if there is no reading; code {@code no-reading}
     */
    public QualityProbabilities probabilities(QualityIndexTable indices) {
        Objects.requireNonNull(indices, "indices");
        return new QualityProbabilities(index(), indices);
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("measured surface")
                .put("thickness", Kind.LENGTH, thicknessM())
                .put("readings", readings)
                .map();
    }

    @Override
    public String toString() {
        return "cut surface of " + QuantityText.forPeople(Kind.LENGTH, thickness) + ", " + readings.size()
                + (readings.size() == 1 ? " reading" : " readings");
    }
}

package dev.waterjet.simulate;

import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.Units;
import dev.waterjet.part.Finding;
import dev.waterjet.quality.EdgeRequirement;
import dev.waterjet.quality.Iso9013;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Length;

/** Findings of a predicted cut about limits of taper, roughness and perpendicularity that edges state. */
final class SurfaceFindings {

    private final DeviationMap map;
    private final Iso9013 standard;
    private final double thicknessM;
    private final double[] depthM;

    private SurfaceFindings(DeviationMap map, Quantity<Length> thickness) {
        this.map = map;
        this.standard = Iso9013.forThickness(thickness);
        this.thicknessM = Kind.LENGTH.si(thickness);
        this.depthM = map.depths().toSi();
    }

    /** One finding for each kind of limit that an edge states, at the place that comes nearest to its limit or exceeds it most. */
    static List<Finding> of(DeviationMap map, Quantity<Length> thickness) {
        SurfaceFindings all = new SurfaceFindings(map, thickness);
        List<Finding> found = new ArrayList<>();
        all.worst(all::taper, edge -> edge.taper().map(Kind.ANGLE::si))
                .ifPresent(worst -> found.add(worst.finding(Message.of(
                                "predicted-taper",
                                "edge {edge} is predicted with a taper of {value}; the limit is {limit}")
                        .with("edge", worst.edge())
                        .with("value", Kind.ANGLE, worst.value, Units.DEGREE)
                        .with("limit", Kind.ANGLE, worst.limit, Units.DEGREE))));
        all.worst(all::roughness, edge -> edge.roughness().map(Kind.LENGTH::si))
                .ifPresent(worst -> found.add(worst.finding(Message.of(
                                "predicted-roughness",
                                "edge {edge} is predicted with Ra = {value} at the bottom; the limit is {limit}")
                        .with("edge", worst.edge())
                        .with("value", Kind.LENGTH, worst.value, Units.MICROMETRE)
                        .with("limit", Kind.LENGTH, worst.limit, Units.MICROMETRE))));
        all.worst(all::perpendicularity, all::perpendicularityLimit)
                .ifPresent(worst -> found.add(worst.finding(Message.of(
                                "predicted-perpendicularity",
                                "the wall of edge {edge} is predicted within {value}; the limit is {limit}")
                        .with("edge", worst.edge())
                        .with("value", Kind.LENGTH, worst.value, Units.MILLIMETRE)
                        .with("limit", Kind.LENGTH, worst.limit, Units.MILLIMETRE))));
        return found;
    }

    /** Value at a point; not a number where the part is not separated. */
    private interface Value {
        double at(int point);
    }

    /** Limit of an edge. */
    private interface Limit {
        Optional<Double> of(EdgeRequirement requirement);
    }

    /** The place with the largest ratio of a value to its limit. */
    private record Worst(DeviationMap map, int point, double value, double limit) {

        long edge() {
            return map.edge(point) + 1L;
        }

        Finding finding(Message message) {
            return Math.abs(value) <= limit
                    ? Finding.satisfied(message, map.point(point))
                    : Finding.violated(
                            message, map.point(point), Message.of("reduce-feed", "reduce the feed rate there"));
        }
    }

    private Optional<Worst> worst(Value values, Limit limits) {
        double[] limit = new double[map.contour().size()];
        for (int edge = 0; edge < limit.length; edge++) {
            limit[edge] = limits.of(map.contour().requirement(edge)).orElse(Double.NaN);
        }
        Worst worst = null;
        for (int i = 0; i < map.size(); i++) {
            double allowed = limit[map.edge(i)];
            double value = allowed > 0 ? values.at(i) : Double.NaN;
            if (!Double.isNaN(value)
                    && (worst == null || Math.abs(value) / allowed > Math.abs(worst.value) / worst.limit)) {
                worst = new Worst(map, i, value, allowed);
            }
        }
        return Optional.ofNullable(worst);
    }

    private double taper(int point) {
        return map.taperSi(point);
    }

    private double roughness(int point) {
        int last = depthM.length - 1;
        return map.isSeparated(point, last) ? map.roughnessSi(point, last) : Double.NaN;
    }

    private Optional<Double> perpendicularityLimit(EdgeRequirement requirement) {
        return requirement.perpendicularityRange().isPresent()
                ? Optional.of(Kind.LENGTH.si(standard.perpendicularityLimit(
                        requirement.perpendicularityRange().getAsInt())))
                : Optional.empty();
    }

    /** Distance of two planes between which the wall lies, without the strips at both edges that the standard leaves out. */
    private double perpendicularity(int point) {
        double strip = Kind.LENGTH.si(standard.edgeHeight());
        double least = Double.POSITIVE_INFINITY;
        double most = Double.NEGATIVE_INFINITY;
        for (int depth = 0; depth < depthM.length; depth++) {
            double z = depthM[depth];
            if (z >= strip && z <= thicknessM - strip) {
                if (!map.isSeparated(point, depth)) {
                    return Double.NaN;
                }
                double deviation = map.deviationSi(point, depth);
                least = Math.min(least, deviation);
                most = Math.max(most, deviation);
            }
        }
        return most >= least ? most - least : Double.NaN;
    }
}

package dev.waterjet.simulate;

import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.Units;
import dev.waterjet.part.Finding;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Findings of a predicted cut. */
final class CutFindings {

    private CutFindings() {}

    static List<Finding> of(DeviationMap map, List<CutPlace> places) {
        List<Finding> findings = new ArrayList<>();
        findings.add(separation(map));
        places.forEach(place -> findings.add(deviation(place)));
        return findings;
    }

    /** Whether something is cut at every point and depth; if not, where the length that is not is longest. */
    private static Finding separation(DeviationMap map) {
        int missing = 0;
        int first = -1;
        int firstDepth = 0;
        for (int depth = map.depths().size() - 1; depth >= 0; depth--) {
            for (int i = 0; i < map.size(); i++) {
                if (!map.isSeparated(i, depth)) {
                    missing++;
                    firstDepth = first < 0 ? depth : firstDepth;
                    first = first < 0 ? i : first;
                }
            }
        }
        if (first < 0) {
            return Finding.satisfied(
                    Message.of("predicted-separation", "the part is predicted to be separated everywhere"),
                    map.point(0));
        }
        return Finding.violated(
                Message.of(
                                "predicted-separation",
                                "the part is predicted not to be separated at {count} of {points} points, first at edge"
                                        + " {edge} at the depth {depth}")
                        .with("count", missing)
                        .with("points", (long) map.size() * map.depths().size())
                        .with("edge", map.edge(first) + 1L)
                        .with("depth", Kind.LENGTH, map.depths().si(firstDepth), Units.MILLIMETRE),
                map.point(first),
                Message.of("reduce-feed", "reduce the feed rate there"),
                Message.of("overlap-start", "continue the cut behind its start by the exit lag"));
    }

    private static Finding deviation(CutPlace place) {
        double si = place.added().si();
        Message message = (si < 0
                        ? Message.of(
                                "predicted-gouge",
                                "at the {level} the part is predicted to be gouged by {value} more than by a straight"
                                        + " cut; the tolerance is {limit}")
                        : Message.of(
                                "predicted-excess",
                                "at the {level} {value} more material is predicted to be left than by a straight cut;"
                                        + " the tolerance is {limit}"))
                .with("level", place.level().name().toLowerCase(Locale.ROOT))
                .with("value", Kind.LENGTH, Math.abs(si), Units.MILLIMETRE)
                .with("limit", Kind.LENGTH, Kind.LENGTH.si(place.tolerance()), Units.MILLIMETRE);
        return place.isWithinTolerance()
                ? Finding.satisfied(message, place.place())
                : Finding.violated(
                        message,
                        place.place(),
                        Message.of("reduce-feed", "reduce the feed rate there"),
                        Message.of("lead-tilt", "tilt the head along its path, if the machine can"));
    }
}

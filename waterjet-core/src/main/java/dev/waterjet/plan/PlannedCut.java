package dev.waterjet.plan;

import dev.waterjet.kerf.Kerf;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import dev.waterjet.motion.FeedPlan;
import dev.waterjet.part.Contour;
import dev.waterjet.part.Side;
import dev.waterjet.pierce.Pierce;
import dev.waterjet.program.CutFeeds;
import dev.waterjet.quality.CutQuality;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Time;

/**
 * Cut of a plan: one contour, from its pierce to where the jet is switched off. A contour with tabs has several stretches,
 * each with a pierce of its own.
 *
 * @param name name of the contour, or empty
 * @param source index of the contour in the part, or of the cut in the program, from 0
 * @param quality cut quality of its first edge
 * @param partSide side of the path on which the part lies
 * @param kerf kerf at the feed rate of straight edges of that quality
 * @param offset distance of the planned path from the edge of the part, also where the machine applies it; empty for a program
 *     of the jet axis
 * @param feeds plan of each stretch, one or more
 * @param pierce pierce of each stretch
 * @param programFeeds feeds of the words of a program, by the distance along its blocks; empty in the plan of a part
 */
public record PlannedCut(
        String name,
        int source,
        CutQuality quality,
        Side partSide,
        Kerf kerf,
        Optional<Quantity<Length>> offset,
        List<FeedPlan> feeds,
        Pierce pierce,
        Optional<CutFeeds> programFeeds)
        implements Described {

    /**
     * Checks the components.
     *
     * @param name name of the contour, or empty
     * @param source index of the contour in the part, or of the cut in the program
     * @param quality cut quality of its first edge
     * @param partSide side of the path on which the part lies
     * @param kerf kerf at the feed rate of straight edges of that quality
     * @param offset distance of the planned path from the edge of the part
     * @param feeds plan of each stretch
     * @param pierce pierce of each stretch
     * @param programFeeds feeds of the words of a program
     */
    public PlannedCut {
        Objects.requireNonNull(feeds, "feeds");
        Objects.requireNonNull(name, "name");
        Require.atLeast("index of a contour", source, 0, Units.ONE, "");
        Objects.requireNonNull(quality, "quality");
        Objects.requireNonNull(partSide, "partSide");
        Objects.requireNonNull(kerf, "kerf");
        Objects.requireNonNull(offset, "offset");
        feeds = List.copyOf(feeds);
        Require.atLeast("number of stretches", feeds.size(), 1, Units.ONE, "");
        Objects.requireNonNull(pierce, "pierce");
        Objects.requireNonNull(programFeeds, "programFeeds");
    }

    /** {@return the cut qualities of its edges, each once, in the order in which they are cut first} */
    public List<CutQuality> qualities() {
        Set<CutQuality> all = new LinkedHashSet<>();
        for (FeedPlan plan : feeds) {
            Contour path = plan.source();
            for (int i = 0; i < path.size(); i++) {
                if (!path.requirement(i).isLead()) {
                    all.add(path.requirement(i).quality());
                }
            }
        }
        return all.isEmpty() ? List.of(quality) : List.copyOf(all);
    }

    /** {@return the time along its path, without pierces} */
    public Quantity<Time> time() {
        double sum = 0;
        for (FeedPlan plan : feeds) {
            sum += Kind.TIME.si(plan.time());
        }
        return Kind.TIME.of(sum);
    }

    /** {@return the length of its path with the jet on} */
    public Quantity<Length> length() {
        double sum = 0;
        for (FeedPlan plan : feeds) {
            sum += plan.source().lengthSi();
        }
        return Kind.LENGTH.of(sum);
    }

    @Override
    public Map<String, Object> describe() {
        Description description = Description.of("planned cut")
                .put("name", name)
                .put("source", source)
                .put("quality", quality)
                .put("qualities", qualities().stream().map(CutQuality::label).toList())
                .put("part_side", partSide)
                .put("kerf", kerf);
        offset.ifPresent(distance -> description.put("offset", Kind.LENGTH, Kind.LENGTH.si(distance)));
        return description
                .put("length", Kind.LENGTH, Kind.LENGTH.si(length()))
                .put("time", Kind.TIME, Kind.TIME.si(time()))
                .put("pierce", pierce)
                .put("feeds", feeds)
                .map();
    }

    @Override
    public String toString() {
        String labels =
                String.join(", ", qualities().stream().map(CutQuality::label).toList());
        return (name.isEmpty() ? "cut " + source : name) + ", " + labels + ", " + feeds.get(0);
    }
}

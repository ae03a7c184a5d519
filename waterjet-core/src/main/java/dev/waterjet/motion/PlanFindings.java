package dev.waterjet.motion;

import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.Units;
import dev.waterjet.part.Contour;
import dev.waterjet.part.EdgeCursor;
import dev.waterjet.part.Finding;
import dev.waterjet.part.Point;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Findings of a plan: tolerances that no feed keeps, and feeds below the minimum of the machine. */
final class PlanFindings {

    private final Contour path;
    private final PathPlaces places;
    private final double minimumMPerS;
    private final double[] ends;
    private final EdgeCursor edge = new EdgeCursor();
    private final List<Finding> found = new ArrayList<>();

    PlanFindings(Contour path, PathPlaces places, double minimumMPerS) {
        this.path = path;
        this.places = places;
        this.minimumMPerS = minimumMPerS;
        this.ends = ends(path);
    }

    List<Finding> list() {
        for (int i = 0; i < places.count(); i++) {
            boolean hasError = places.errorM(i) != PathPlaces.NO_ERROR;
            if (hasError && places.errorM(i) > places.toleranceM(i)) {
                found.add(error(i));
            }
            if (places.feedMPerS(i) < minimumMPerS) {
                found.add(tooSlow(i));
            }
        }
        return List.copyOf(found);
    }

    private Finding error(int i) {
        Message message = Message.of(
                        "bottom-edge-error",
                        "the bottom edge is predicted to deviate by {value} here, the tolerance is {limit}: {cause},"
                                + " feed rate {feed} over {zone} on both sides")
                .with("value", Kind.LENGTH, places.errorM(i), Units.MILLIMETRE)
                .with("limit", Kind.LENGTH, places.toleranceM(i), Units.MILLIMETRE)
                .with("cause", FeedLimit.ofCode(places.code(i)).label())
                .with("feed", Kind.SPEED, places.feedMPerS(i), Units.MILLIMETRE_PER_MINUTE)
                .with("zone", Kind.LENGTH, places.reachM(i), Units.MILLIMETRE);
        return Finding.violated(
                message,
                place(i),
                Message.of("allow-more", "allow a larger error here"),
                Message.of("lean-the-head", "lean a tilting head by the lead angle"),
                Message.of("add-relief", "relieve the corner in the drawing"));
    }

    private Finding tooSlow(int i) {
        return Finding.violated(
                Message.of(
                                "below-minimum-feed",
                                "the cut requires a feed rate of {value} here; the minimum of the machine is {limit}")
                        .with("value", Kind.SPEED, places.feedMPerS(i), Units.MILLIMETRE_PER_MINUTE)
                        .with("limit", Kind.SPEED, minimumMPerS, Units.MILLIMETRE_PER_MINUTE),
                place(i),
                Message.of("choose-another-head", "choose a head of less power, or a lower pressure"));
    }

    /** Middle of a place; a point stands for itself. */
    private Point place(int i) {
        double at = (places.startM(i) + places.endM(i)) / 2;
        int found = Arrays.binarySearch(ends, at);
        int index = Math.min(found >= 0 ? found : -found - 1, path.size() - 1);
        path.load(index, edge);
        double before = index == 0 ? 0 : ends[index - 1];
        double share = Math.min(1, Math.max(0, (at - before) / (ends[index] - before)));
        return Point.ofSi(edge.xAt(share), edge.yAt(share));
    }

    /** Distance of the end of each edge along the path: there can be as many places as edges. */
    private static double[] ends(Contour path) {
        EdgeCursor edge = new EdgeCursor();
        double[] ends = new double[path.size()];
        double at = 0;
        for (int i = 0; i < ends.length; i++) {
            path.load(i, edge);
            at += edge.length();
            ends[i] = at;
        }
        return ends;
    }
}

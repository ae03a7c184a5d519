package dev.waterjet.plan;

import dev.waterjet.measure.DomainException;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.measure.Units;
import dev.waterjet.part.Contour;
import dev.waterjet.part.EdgeCursor;
import dev.waterjet.part.Finding;
import dev.waterjet.part.GeometryException;
import dev.waterjet.part.Point;
import dev.waterjet.toolpath.HoldingTabs;
import dev.waterjet.toolpath.Lead;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleFunction;
import javax.measure.quantity.Length;
import org.jspecify.annotations.Nullable;

/**
 * Places of holding tabs that the caller wants: each is on the contour nearest to it.
 *
 * @param places the places
 * @param widthM width of each tab in m; null for the width that bears the reaction of the jet
 */
record TabPlaces(List<Point> places, @Nullable Double widthM) {

    static final TabPlaces NONE = new TabPlaces(List.of(), null);

    /** A tab that moves along the contour by more than this is a finding. */
    private static final double MOVED_M = 5e-4;

    /** Entries tried where the one suggested lies at a tab. */
    private static final int ENTRIES = 64;

    /** Room between a tab and the ends of the cut. */
    private static final double CLEAR_M = 1e-6;

    /** Places whose nearest contour is one among others. */
    List<Point> on(Contour contour, List<Contour> others) {
        return places.stream()
                .filter(place -> {
                    double distance = Kind.LENGTH.si(contour.clearance(place));
                    return others.stream()
                            .allMatch(other ->
                                    other.equals(contour) || distance <= Kind.LENGTH.si(other.clearance(place)));
                })
                .toList();
    }

    /** Width of each of some tabs; by their sizing where none is stated. */
    double widthM(Optional<HoldingTabs> sizing, int count) {
        if (widthM != null) {
            return widthM;
        }
        return sizing.map(tabs -> Kind.LENGTH.si(tabs.width(count)))
                .orElseThrow(() -> new DomainException(
                        Message.of(
                                "tab-width-missing",
                                "tabs are placed, but their width is not known: state it, or the shear strength of the plate"),
                        "width of a tab"));
    }

    /**
     * The lead that is suggested, or where it would enter at a tab the nearest other one that is as good.
     *
     * @param suggested lead of the placer
     * @param contour contour that it enters
     * @param on places of the tabs on that contour
     * @param leastM least distance between entry and the middle of a tab along the contour, in m
     * @param leadAt lead at a distance along the contour
     */
    static Lead besideTabs(
            Lead suggested, Contour contour, List<Point> on, double leastM, DoubleFunction<Lead> leadAt) {
        double total = contour.lengthSi();
        double[] tabs =
                on.stream().mapToDouble(place -> nearest(contour, place)).toArray();
        double entry = nearest(contour, suggested.entry());
        if (room(entry, tabs, total) >= leastM) {
            return suggested;
        }
        Optional<Lead> clear = Optional.empty();
        for (int k = 1; k < ENTRIES; k++) {
            // to both sides in turn
            double step = (k % 2 == 0 ? -1 : 1) * ((k + 1) / 2) * total / ENTRIES;
            double at = (entry + step + total) % total;
            Optional<Lead> lead = room(at, tabs, total) < leastM ? Optional.empty() : clearLead(leadAt, at);
            if (lead.filter(found -> found.isSatisfied() || !suggested.isSatisfied())
                    .isPresent()) {
                return lead.get();
            }
            clear = clear.or(() -> lead);
        }
        return clear.orElse(suggested);
    }

    private static Optional<Lead> clearLead(DoubleFunction<Lead> leadAt, double at) {
        try {
            return Optional.of(leadAt.apply(at)).filter(Lead::isClear);
        } catch (GeometryException unreachable) {
            return Optional.empty();
        }
    }

    /** Distance along a closed contour to the nearest tab. */
    private static double room(double at, double[] tabs, double total) {
        double least = total;
        for (double tab : tabs) {
            double apart = Math.abs(at - tab);
            least = Math.min(least, Math.min(apart, total - apart));
        }
        return least;
    }

    /**
     * Distances of tabs along a loop from its start, in rising order. One that would lie over the start, where leads enter and
     * leave, is beside it.
     *
     * @param loop the loop
     * @param on places of the tabs
     * @param gapM length of the loop that each leaves out, in m
     * @param findings receives a finding for each tab that lies beside its place
     */
    static QuantityArray<Length> along(Contour loop, List<Point> on, double gapM, List<Finding> findings) {
        double total = loop.lengthSi();
        double least = gapM / 2 + CLEAR_M;
        double[] places = new double[on.size()];
        for (int k = 0; k < places.length; k++) {
            double wanted = nearest(loop, on.get(k));
            places[k] = Math.max(least, Math.min(total - least, wanted));
            double moved = Math.abs(places[k] - wanted);
            if (moved > MOVED_M) {
                findings.add(Finding.violated(
                        Message.of("tab-beside-lead", "the tab lies {moved} from its place, beside the lead")
                                .with("moved", Kind.LENGTH, moved, Units.MILLIMETRE),
                        on.get(k),
                        Message.of("move-tab", "place the tab elsewhere")));
            }
        }
        Arrays.sort(places);
        return QuantityArray.ofSi(Kind.LENGTH, places);
    }

    private static double nearest(Contour loop, Point place) {
        EdgeCursor edge = new EdgeCursor();
        double least = Double.POSITIVE_INFINITY;
        double best = 0;
        double along = 0;
        for (int i = 0; i < loop.size(); i++) {
            loop.load(i, edge);
            double distance = edge.distance(place.xSi(), place.ySi());
            if (distance < least) {
                least = distance;
                best = along + edge.shareAt(place.xSi(), place.ySi()) * edge.length();
            }
            along += edge.length();
        }
        return best;
    }
}

package dev.waterjet.toolpath;

import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import dev.waterjet.part.BoxTree;
import dev.waterjet.part.Contour;
import dev.waterjet.part.EdgeCursor;
import dev.waterjet.part.EdgeTree;
import dev.waterjet.part.GeometryException;
import dev.waterjet.part.Part;
import dev.waterjet.part.Point;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import org.jspecify.annotations.Nullable;

/**
 * Placer of leads on the contours of a part: not on a corner, not before a thin web, the pierced hole and the kerf of the whole
 * lead clear of the part.
 *
 * <pre>{@code
 * LeadPlacer placer = LeadPlacer.of(part, CuttingRules.of(millimetres(1.1), millimetres(12)));
 * Lead lead = placer.suggest(0);
 * lead.findings().forEach(System.out::println);
 * }</pre>
 *
 * <p>Where leads of the requested size do not fit, the jet pierces half-way to the opposite side, in a round hole at its
 * centre, and enters on half circles; else leads are made smaller, length and radius each on its own. What was relaxed is a
 * finding.
 *
 * <p>Piercing throws water and abrasive back: the guards that the manual of the machine requires stay on.
 */
public final class LeadPlacer {

    private static final int PLACES_ON_AN_EDGE = 5;

    /** Places tried on one contour. A curve of many short edges has more, but neighbours among them differ little. */
    private static final int MAX_PLACES = 200;

    private static final double[] SIZES = {1, 0.5, 0.25, 0.125};

    /** Forms of leads of the full radius, and those that go to the middle, in the order in which they are tried. */
    private static final int FULL_FORMS = 1;

    private static final int MIDDLE_FORMS = 3;
    private static final int FORMS = MIDDLE_FORMS + SIZES.length * SIZES.length + SIZES.length;

    private static final double SHORTEST_M = 1e-5;

    /** Share of the distance to the middle by which a spiral passes it. */
    private static final double SPIRAL_SHARE = 1.0 / 3;

    private final Part part;
    private final CuttingRules rules;
    private final List<Contour> contours;
    private final List<EdgeTree> trees = new ArrayList<>();
    private final List<Corners> corners = new ArrayList<>();
    private final BoxTree boxes;
    private final double widthM;

    private LeadPlacer(Part part, CuttingRules rules, List<Contour> neighbours) {
        this.part = part;
        this.rules = rules;
        this.contours = part.contours();
        contours.forEach(contour -> trees.add(EdgeTree.of(contour)));
        neighbours.forEach(contour -> trees.add(EdgeTree.of(contour)));
        this.boxes = BoxTree.ofSi(
                BoxTree.boxesSi(trees.stream().map(EdgeTree::contour).toList()));
        contours.forEach(contour -> corners.add(Corners.of(contour)));
        this.widthM = Kind.LENGTH.si(
                part.outline().box().minimum().distance(part.outline().box().maximum()));
    }

    /**
     * Returns a placer for a part that lies alone.
     *
     * @param part the part
     * @param rules clearances that a cut requires
     * @return the placer
     */
    public static LeadPlacer of(Part part, CuttingRules rules) {
        Objects.requireNonNull(part, "part");
        Objects.requireNonNull(rules, "rules");
        return new LeadPlacer(part, rules, List.of());
    }

    /**
     * Returns a placer that keeps clear of other contours too.
     *
     * @param neighbours contours of neighbours and the edge of the sheet
     * @return the placer
     */
    public LeadPlacer withNeighbours(List<Contour> neighbours) {
        Objects.requireNonNull(neighbours, "neighbours");
        return new LeadPlacer(part, rules, neighbours);
    }

    /**
     * Returns the best lead at a place, with the findings of every check.
     *
     * @param contour index in {@link Part#contours()}
     * @param distance distance of the entry along that contour from its start, 0 or more
     * @return the lead, satisfied or not
     * @throws GeometryException with code {@code jet-does-not-fit} if the jet cannot cut the contour at all, {@code
     *     entry-out-of-reach} if it does not reach this place of it
     */
    public Lead at(int contour, Quantity<Length> distance) {
        double si = Require.notNegative("distance along the contour", Kind.LENGTH.si(distance), Units.MILLIMETRE);
        LeadDrawing drawing = new LeadDrawing(part, index(contour), rules);
        Lead lead = best(contour, List.of(si), drawing);
        if (lead == null) {
            throw outOfReach(contour, si);
        }
        return lead;
    }

    /**
     * Returns the best lead of a contour: the first that satisfies every check, longest straight edges first, then arcs; else
     * the one with the smallest conflict, with findings.
     *
     * @param contour index in {@link Part#contours()}
     * @return the lead
     * @throws GeometryException with code {@code jet-does-not-fit} if the jet cannot cut the contour at all, {@code
     *     entry-out-of-reach} if it passes corners of it only
     */
    public Lead suggest(int contour) {
        LeadDrawing drawing = new LeadDrawing(part, index(contour), rules);
        Lead lead = best(contour, candidates(contours.get(contour)), drawing);
        if (lead == null) {
            lead = best(contour, drawing.reachedPlaces(), drawing);
        }
        if (lead == null) {
            throw outOfReach(contour, 0);
        }
        return lead;
    }

    private GeometryException outOfReach(int contour, double atM) {
        LeadFrame entry = LeadFrame.of(contours.get(contour), atM, 1, 0);
        return new GeometryException(
                contours.get(contour),
                entry.place().edge(),
                entry.entryX(),
                entry.entryY(),
                Message.of("entry-out-of-reach", "the jet does not reach the contour here; enter elsewhere"));
    }

    private int index(int contour) {
        return Require.index("contour", contour, contours.size());
    }

    /** The best lead at one of some places; where the jet reaches none of them, null. */
    private @Nullable Lead best(int index, List<Double> places, LeadDrawing drawing) {
        Contour contour = contours.get(index);
        int scrap = part.partSide(index).opposite().sign();
        LeadChecks checks = new LeadChecks(trees, boxes);
        List<LeadFrame> frames = places.stream()
                .map(place -> LeadFrame.of(contour, place, scrap, rules.offsetSi()))
                .toList();
        LeadTrial best = null;
        for (int form = 0; form < FORMS; form++) {
            for (LeadFrame frame : frames) {
                LeadTrial trial = trial(index, frame, shape(form, frame, checks), checks);
                if ((best == null || isBetter(trial, best)) && drawing.reaches(frame)) {
                    best = trial;
                }
                if (best != null && best.isClear() && best.isInGoodPlace()) {
                    return drawing.draw(best);
                }
            }
        }
        return best == null ? null : drawing.draw(best);
    }

    private static boolean isBetter(LeadTrial trial, LeadTrial best) {
        return trial.isClear() != best.isClear() ? trial.isClear() : trial.merit() > best.merit() + 1e-9;
    }

    /**
     * Shape of a lead by the order in which shapes are tried: quarter circles of the full radius, half circles to the middle,
     * smaller quarter circles with shorter straight parts, straight entries.
     */
    private LeadShape shape(int form, LeadFrame frame, LeadChecks checks) {
        double radius = rules.leadRadiusSi();
        double length = rules.leadLengthSi();
        if (form < FULL_FORMS && radius > 0) {
            return new LeadShape(LeadShape.Kind.QUARTER, radius, length);
        }
        if (form < MIDDLE_FORMS && radius > 0) {
            double chord = Math.min(toMiddle(frame, checks), 2 * radius);
            double pass = SPIRAL_SHARE * chord;
            return form == FULL_FORMS
                    ? new LeadShape(LeadShape.Kind.SPIRAL, (chord + pass) / 2, pass / 2)
                    : new LeadShape(LeadShape.Kind.HALF, chord / 2, 0);
        }
        int size = Math.max(0, form - MIDDLE_FORMS);
        if (size < SIZES.length * SIZES.length && radius > 0) {
            double straight = size % SIZES.length == SIZES.length - 1 ? 0 : SIZES[size % SIZES.length] * length;
            return new LeadShape(LeadShape.Kind.QUARTER, SIZES[size / SIZES.length] * radius, straight);
        }
        double straight = Math.max(length, radius) * SIZES[size % SIZES.length];
        return new LeadShape(LeadShape.Kind.STRAIGHT, 0, Math.max(straight, SHORTEST_M));
    }

    /** Distance from the jet axis to half-way between the entry and what lies opposite, across the scrap. */
    private double toMiddle(LeadFrame frame, LeadChecks checks) {
        double far = 4 * (rules.leadRadiusSi() + rules.leadLengthSi() + rules.kerfSi());
        double free = checks.ray(trees.size(), frame.entryX(), frame.entryY(), frame.outX(), frame.outY(), far);
        return Math.max(SHORTEST_M, free / 2 - rules.offsetSi());
    }

    private LeadTrial trial(int index, LeadFrame frame, LeadShape shape, LeadChecks checks) {
        double far = rules.pierceClearanceSi() + rules.kerfSi() + rules.marginSi() + rules.minimumWebSi();
        double x = frame.x(shape.pierceX(), shape.pierceY());
        double y = frame.y(shape.pierceX(), shape.pierceY());
        boolean isHole = index < part.holes().size();
        boolean isInScrap = contours.get(index).isAround(Point.ofSi(x, y)) == isHole;
        double pierce = checks.clearance(x, y, far);
        double near = Math.min(
                checks.clearance(shape.wayIn(0), shape.pierceX(), shape.pierceY(), frame, far),
                checks.clearance(shape.wayOut(0), 0, 0, frame, far));
        double away = Math.min(
                checks.clearance(shape.farIn(rules.marginSi()), shape.pierceX(), shape.pierceY(), frame, far),
                checks.clearance(shape.farOut(), shape.farOutX(), shape.farOutY(), frame, far));
        return new LeadTrial(
                frame,
                shape,
                corners.get(index).distance(frame.atM()),
                checks.ray(contours.size(), frame.entryX(), frame.entryY(), -frame.outX(), -frame.outY(), widthM),
                isInScrap ? pierce : -pierce,
                isInScrap ? near : -near,
                away,
                rules);
    }

    /** Places on a contour, in the order in which they are tried. */
    private static List<Double> candidates(Contour contour) {
        double total = contour.lengthSi();
        boolean isLong = contour.size() * PLACES_ON_AN_EDGE > MAX_PLACES;
        Map<Long, Candidate> best = new HashMap<>();
        EdgeCursor edge = new EdgeCursor();
        double atM = 0;
        for (int i = 0; i < contour.size(); i++) {
            contour.load(i, edge);
            double length = edge.length();
            for (int k = 0; k < PLACES_ON_AN_EDGE; k++) {
                double share = (k + 0.5) / PLACES_ON_AN_EDGE;
                double rank = (edge.isArc() ? 0 : 1e6) + length - Math.abs(share - 0.5) * 1e-6;
                Candidate candidate = new Candidate(atM + share * length, rank);
                long stretch = isLong ? (long) (candidate.placeM() / total * MAX_PLACES) : best.size();
                best.merge(stretch, candidate, (one, other) -> one.rank() >= other.rank() ? one : other);
            }
            atM += length;
        }
        return best.values().stream()
                .sorted(Comparator.comparingDouble(Candidate::rank).reversed().thenComparingDouble(Candidate::placeM))
                .map(Candidate::placeM)
                .toList();
    }

    private record Candidate(double placeM, double rank) {}
}

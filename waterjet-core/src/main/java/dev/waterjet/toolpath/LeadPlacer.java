package dev.waterjet.toolpath;

import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import dev.waterjet.part.Box;
import dev.waterjet.part.Contour;
import dev.waterjet.part.ContourBuilder;
import dev.waterjet.part.ContourGeometry;
import dev.waterjet.part.Corners;
import dev.waterjet.part.EdgeCursor;
import dev.waterjet.part.EdgeTree;
import dev.waterjet.part.Finding;
import dev.waterjet.part.Part;
import dev.waterjet.part.Point;
import dev.waterjet.part.Side;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Length;

/**
 * Places leads on the contours of a part, and checks places: not on a corner, not before a thin web, the pierced hole
 * clear of every cut, the leads crossing nothing. Piercing throws water and abrasive back: the guards that the manual of
 * the machine asks for stay on.
 */
public final class LeadPlacer {

    private static final int PLACES_ON_AN_EDGE = 5;
    private static final int SIZES = 5;

    /** Places tried on one contour. A curve of many short edges has more, but neighbours among them tell the same. */
    private static final int MOST_PLACES = 200;

    private final Part part;
    private final CuttingRules rules;
    private final List<EdgeTree> trees = new ArrayList<>();
    private final List<Corners> corners = new ArrayList<>();
    private final double widthM;

    private LeadPlacer(Part part, CuttingRules rules, List<Contour> around) {
        this.part = part;
        this.rules = rules;
        part.contours().forEach(contour -> trees.add(EdgeTree.of(contour)));
        around.forEach(contour -> trees.add(EdgeTree.of(contour)));
        part.contours().forEach(contour -> corners.add(Corners.of(contour)));
        Box box = part.outline().box();
        this.widthM = Kind.LENGTH.si(box.minimum().distance(box.maximum()));
    }

    /**
     * A placer for a part that lies alone.
     *
     * @param part the part
     * @param rules what a cut wants
     * @return the placer
     */
    public static LeadPlacer of(Part part, CuttingRules rules) {
        return new LeadPlacer(part, rules, List.of());
    }

    /**
     * A placer that keeps clear of other contours too.
     *
     * @param contours neighbours and the edge of the sheet
     * @return the placer
     */
    public LeadPlacer withNeighbours(List<Contour> contours) {
        return new LeadPlacer(part, rules, contours);
    }

    /**
     * The lead at a place, with the findings of every check.
     *
     * @param contour index in {@link Part#contours()}
     * @param distance distance of the entry along that contour from its start, 0 or more
     * @return the lead, good or not
     */
    public Lead at(int contour, Quantity<Length> distance) {
        double si = Require.notNegative("distance along the contour", Kind.LENGTH.si(distance), Units.MILLIMETRE);
        return lead(trial(contour, si, rules));
    }

    /**
     * A lead that meets every check: the longest straight edges are tried first, then arcs, and where no lead of the usual
     * size fits, smaller ones down to a sixteenth.
     *
     * @param contour index in {@link Part#contours()}
     * @return the lead; empty if no place meets every check
     */
    public Optional<Lead> suggest(int contour) {
        List<Double> places = candidates(part.contours().get(contour));
        CuttingRules scaled = rules;
        for (int size = 0; size < SIZES; size++) {
            for (double place : places) {
                Trial trial = trial(contour, place, scaled);
                if (trial.isGood()) {
                    return Optional.of(lead(trial));
                }
            }
            scaled = scaled.withLeadScaled(0.5);
        }
        return Optional.empty();
    }

    private static List<Double> candidates(Contour contour) {
        double total = ContourGeometry.length(contour);
        boolean isLong = contour.size() * PLACES_ON_AN_EDGE > MOST_PLACES;
        Map<Long, Candidate> best = new HashMap<>();
        EdgeCursor shape = new EdgeCursor();
        double atM = 0;
        for (int i = 0; i < contour.size(); i++) {
            contour.load(i, shape);
            double length = shape.length();
            for (int k = 0; k < PLACES_ON_AN_EDGE; k++) {
                double share = (k + 0.5) / PLACES_ON_AN_EDGE;
                double rank = (shape.isArc() ? 0 : 1e6) + length - Math.abs(share - 0.5) * 1e-6;
                Candidate candidate = new Candidate(atM + share * length, rank);
                long stretch = isLong ? (long) (candidate.placeM() / total * MOST_PLACES) : best.size();
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

    /** A lead before its path is drawn: where it starts and enters, the leads alone, and what the checks say of them. */
    private record Trial(
            int contour, double distanceM, Point pierce, Point entry, Contour leads, List<Finding> findings) {

        boolean isGood() {
            return findings.stream().allMatch(Finding::isSatisfied);
        }
    }

    private Trial trial(int index, double distanceM, CuttingRules size) {
        Contour contour = part.contours().get(index);
        EdgeCursor edge = new EdgeCursor();
        double[] offset = new double[1];
        int entryEdge = ContourGeometry.locate(contour, distanceM, edge, offset);
        double share = offset[0] / edge.length();
        int scrap = part.partSide(index).opposite().sign;
        double x = edge.xAt(share);
        double y = edge.yAt(share);
        double alongX = edge.directionXAt(share);
        double alongY = edge.directionYAt(share);
        // towards the scrap, at right angles to the path
        double outX = -alongY * scrap;
        double outY = alongX * scrap;
        double r = size.leadRadiusSi();
        double l = size.leadLengthSi();
        double cx = x + r * outX;
        double cy = y + r * outY;
        Point pierce = Point.ofSi(cx - r * alongX + l * outX, cy - r * alongY + l * outY);
        Point entry = Point.ofSi(x, y);
        Side turn = scrap > 0 ? Side.LEFT : Side.RIGHT;
        Contour leads = Contour.from(pierce)
                .requirement(contour.requirement(entryEdge).asLead())
                .lineToSi(cx - r * alongX, cy - r * alongY)
                .arcToSi(x, y, cx, cy, turn)
                .arcToSi(cx + r * alongX, cy + r * alongY, cx, cy, turn)
                .open();
        return new Trial(
                index, distanceM, pierce, entry, leads, check(index, distanceM, leads, pierce, entry, outX, outY));
    }

    /** The whole path of a trial: into the contour, round it, and out. */
    private Lead lead(Trial trial) {
        Contour turned = ContourGeometry.startingAt(part.contours().get(trial.contour()), trial.distanceM());
        ContourBuilder builder = Contour.from(trial.pierce());
        EdgeCursor edge = new EdgeCursor();
        append(builder, trial.leads(), 0, edge);
        append(builder, trial.leads(), 1, edge);
        for (int i = 0; i < turned.size(); i++) {
            turned.load(i, edge);
            builder.requirement(turned.requirement(i));
            boolean isLast = i == turned.size() - 1;
            double toX = isLast ? trial.entry().xSi() : edge.x1;
            double toY = isLast ? trial.entry().ySi() : edge.y1;
            ContourGeometry.append(builder, edge, toX, toY);
        }
        append(builder, trial.leads(), 2, edge);
        return new Lead(trial.pierce(), trial.entry(), builder.open(), trial.findings());
    }

    private static void append(ContourBuilder builder, Contour from, int index, EdgeCursor edge) {
        from.load(index, edge);
        builder.requirement(from.requirement(index));
        ContourGeometry.append(builder, edge, edge.x1, edge.y1);
    }

    private List<Finding> check(
            int index, double distanceM, Contour leads, Point pierce, Point entry, double outX, double outY) {
        LeadChecks checks = new LeadChecks(trees, entry);
        Contour contour = part.contours().get(index);
        boolean isHole = index < part.holes().size();
        boolean isInScrap = contour.isAround(pierce) == isHole;
        return List.of(
                Finding.atLeast(
                        "lead-corner",
                        "distance of the entry from the nearest corner",
                        corners.get(index).distance(distanceM),
                        rules.cornerClearanceSi(),
                        "enter in the middle of a longer edge",
                        entry),
                Finding.atLeast(
                        "lead-web",
                        "material of the part behind the entry",
                        checks.webBehind(part.contours().size(), widthM, -outX, -outY),
                        rules.minimumWebSi(),
                        "enter where the part is wider",
                        entry),
                Finding.atLeast(
                        "pierce-room",
                        "distance of the pierced hole from the nearest cut",
                        checks.clearance(pierce),
                        rules.pierceClearanceSi(),
                        "lengthen the lead or pierce elsewhere",
                        pierce),
                Finding.of(
                        "lead-free",
                        isInScrap && !checks.isCrossing(leads),
                        "leads lie in scrap and cross no cut",
                        "shorten the leads or enter elsewhere",
                        entry));
    }
}

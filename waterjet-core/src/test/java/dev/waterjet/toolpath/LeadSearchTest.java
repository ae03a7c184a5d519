package dev.waterjet.toolpath;

import static dev.waterjet.measure.Measures.degrees;
import static dev.waterjet.measure.Measures.millimetres;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.measure.Kind;
import dev.waterjet.part.Contour;
import dev.waterjet.part.EdgeCursor;
import dev.waterjet.part.Finding;
import dev.waterjet.part.GeometryException;
import dev.waterjet.part.Part;
import dev.waterjet.part.Point;
import dev.waterjet.quality.EdgeRequirement;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** The lead that is chosen, against every lead that could be: place by place, form by form, with distances found anew. */
class LeadSearchTest {

    private static final double KERF = 1.1e-3;
    private static final double RADIUS = 3.5e-3;
    private static final double LENGTH = 3e-3;
    private static final double CLEAR = 1.25 * KERF;
    private static final CuttingRules RULES = CuttingRules.of(millimetres(1.1), millimetres(10));

    private static double number(Lead lead, String code, String key) {
        return ((Number) Objects.requireNonNull(
                        finding(lead, code).message().parameters().get(key)))
                .doubleValue();
    }

    private static Finding finding(Lead lead, String code) {
        return lead.findings().stream()
                .filter(found -> found.code().equals(code))
                .findFirst()
                .orElseThrow();
    }

    /** A plate with two holes near one another; of lines alone. */
    private static Optional<Part> part(int seed) {
        Random random = new Random(seed);
        Optional<Contour> one = Plane.ring(random, 3 + random.nextInt(5), 0.004 + 0.012 * random.nextDouble(), 0);
        Optional<Contour> other = Plane.ring(random, 3 + random.nextInt(5), 0.008, 0);
        Contour plate =
                Contour.rectangle(Point.millimetres(-40, -30), Point.millimetres(31, 33), EdgeRequirement.defaults());
        if (one.isEmpty() || other.isEmpty()) {
            return Optional.empty();
        }
        Contour second = other.get().translatedBy(Point.millimetres(-24, 2));
        return Plane.samples(second, 20).stream().anyMatch(at -> Plane.distance(one.get(), at[0], at[1]) < 1e-4)
                ? Optional.empty()
                : Optional.of(Part.of(plate, one.get(), second));
    }

    private static double distance(Part part, double x, double y) {
        return part.contours().stream()
                .mapToDouble(contour -> Plane.distance(contour, x, y))
                .min()
                .orElseThrow();
    }

    /** Least distance of the leads from the part, and of what lies beyond a turn of 60 degrees from the entry. */
    private static double[] distances(Part part, Lead lead) {
        double near = Double.POSITIVE_INFINITY;
        double far = Double.POSITIVE_INFINITY;
        EdgeCursor edge = new EdgeCursor();
        ToolPath path = lead.toolPath();
        for (int i = 0; i < path.size(); i++) {
            boolean isIn = path.purpose(i) == ToolPath.Purpose.LEAD_IN;
            if (!isIn && path.purpose(i) != ToolPath.Purpose.LEAD_OUT) {
                continue;
            }
            path.contour().load(i, edge);
            boolean isAtEntry = !isIn || path.purpose(i + 1) == ToolPath.Purpose.CUT;
            double beside =
                    !isAtEntry ? 0 : edge.isArc() ? Math.PI / 3 / Math.abs(edge.sweep()) : 0.1 * KERF / edge.length();
            for (int k = 0; k <= 400; k++) {
                double share = k / 400.0;
                double[] at = Plane.at(edge, share);
                double away = distance(part, at[0], at[1]);
                near = Math.min(near, away);
                double fromEntry = isIn ? 1 - share : share;
                far = fromEntry >= beside ? Math.min(far, away) : far;
            }
        }
        return new double[] {near, far};
    }

    private static Optional<Lead> at(LeadPlacer placer, int contour, double placeM) {
        try {
            return Optional.of(placer.at(contour, Kind.LENGTH.of(placeM)));
        } catch (GeometryException refused) {
            assertThat(List.of("entry-out-of-reach", "jet-does-not-fit")).contains(refused.code());
            return Optional.empty();
        }
    }

    @Test
    void findingsStateTheDistancesOfTheLeadThatIsDrawn() {
        int checked = 0;
        for (int seed = 0; seed < 30; seed++) {
            Optional<Part> part = part(seed);
            Random random = new Random(seed);
            for (int k = 0; k < 4 && part.isPresent(); k++) {
                int index = random.nextInt(3);
                Contour contour = part.get().contours().get(index);
                double place = contour.lengthSi() * random.nextDouble();
                Optional<Lead> lead = at(LeadPlacer.of(part.get(), RULES), index, place);
                if (lead.isPresent()) {
                    assertDistances(part.get(), index, lead.get(), place);
                    checked++;
                }
            }
        }
        assertThat(checked).isGreaterThan(40);
    }

    private static void assertDistances(Part part, int index, Lead lead, double place) {
        double x = lead.pierce().xSi();
        double y = lead.pierce().ySi();
        double farthest = CLEAR + 1.1 * KERF + 2.5e-3;
        Contour contour = part.contours().get(index);
        double sign = Plane.isInside(Plane.chords(contour), x, y) == index < 2 ? 1 : -1;
        double[] least = distances(part, lead);
        double room = Math.min(sign * least[0] - KERF / 2, Math.min(farthest, least[1]) - 0.6 * KERF);

        assertThat(number(lead, "pierce-clearance", "value_m"))
                .isCloseTo(sign * Math.min(farthest, distance(part, x, y)), within(3e-9));
        assertThat(number(lead, "pierce-clearance", "limit_m")).isCloseTo(CLEAR, within(1e-12));
        assertThat(number(lead, "lead-clearance", "value_m")).isCloseTo(0.6 * KERF + room, within(3e-6));
        assertThat(number(lead, "lead-clearance", "limit_m")).isCloseTo(0.6 * KERF, within(1e-12));
        assertThat(number(lead, "lead-corner", "value_m")).isCloseTo(fromCorner(contour, place), within(1e-9));
        assertThat(number(lead, "lead-corner", "limit_m")).isCloseTo(2 * KERF, within(1e-12));
        assertThat(number(lead, "lead-web", "value_m")).isCloseTo(web(part, lead), within(1e-9));
        assertThat(number(lead, "lead-web", "limit_m")).isCloseTo(2.5e-3, within(1e-12));
        assertThat(lead.isClear())
                .isEqualTo(finding(lead, "pierce-clearance").isSatisfied()
                        && finding(lead, "lead-clearance").isSatisfied());
        boolean isFull = form(lead) <= 2 && number(lead, "lead-size", "radius_m") >= RADIUS;
        assertThat(finding(lead, "lead-size").isSatisfied()).isEqualTo(isFull);
        for (String code : List.of("lead-corner", "lead-web", "lead-clearance", "lead-size")) {
            assertThat(finding(lead, code).place()).isEqualTo(lead.entry());
        }
        assertThat(finding(lead, "pierce-clearance").place()).isEqualTo(lead.pierce());
    }

    /** Least distance along a polygon from a place to a corner. */
    private static double fromCorner(Contour contour, double place) {
        double total = contour.lengthSi();
        double corner = 0;
        double least = total;
        EdgeCursor edge = new EdgeCursor();
        for (int i = 0; i < contour.size(); i++) {
            double apart = Math.abs(corner - place);
            least = Math.min(least, Math.min(apart, total - apart));
            contour.load(i, edge);
            corner += Math.hypot(edge.endX() - edge.startX(), edge.endY() - edge.startY());
        }
        return least;
    }

    /** Way from the entry through the part to the first edge opposite. */
    private static double web(Part part, Lead lead) {
        ToolPath path = lead.toolPath();
        int first = 0;
        while (path.purpose(first) == ToolPath.Purpose.LEAD_IN) {
            first++;
        }
        double x = lead.entry().xSi();
        double y = lead.entry().ySi();
        double dx = x - path.contour().xSi(first);
        double dy = y - path.contour().ySi(first);
        double size = Math.hypot(dx, dy);
        assertThat(size).isCloseTo(KERF / 2, within(1e-5));
        double least = Math.hypot(71e-3, 63e-3);
        EdgeCursor edge = new EdgeCursor();
        for (Contour contour : part.contours()) {
            for (int i = 0; i < contour.size(); i++) {
                contour.load(i, edge);
                double ex = edge.endX() - edge.startX();
                double ey = edge.endY() - edge.startY();
                double cross = dx * ey - dy * ex;
                double way = ((edge.startX() - x) * ey - (edge.startY() - y) * ex) / cross * size;
                double share = ((edge.startX() - x) * dy - (edge.startY() - y) * dx) / cross;
                least = way > 1e-7 && share >= 0 && share <= 1 ? Math.min(least, way) : least;
            }
        }
        return least;
    }

    /** Forms in the order in which they are tried: full, spiral, half circle, smaller quarters, straight ones. */
    private static int form(Lead lead) {
        EdgeCursor edge = new EdgeCursor();
        List<Double> arcs = new ArrayList<>();
        for (int i = 0; lead.toolPath().purpose(i) == ToolPath.Purpose.LEAD_IN; i++) {
            lead.toolPath().contour().load(i, edge);
            if (edge.isArc()) {
                arcs.add(Math.abs(edge.sweep()));
            }
        }
        double length = number(lead, "lead-size", "length_m");
        if (arcs.isEmpty()) {
            return 19 + (int) Math.round(Math.log(RADIUS / length) / Math.log(2));
        }
        if (arcs.get(0) > 2) {
            return arcs.size() == 2 ? 1 : 2;
        }
        double radius = number(lead, "lead-size", "radius_m");
        int smaller = (int) Math.round(Math.log(RADIUS / radius) / Math.log(2));
        int shorter = length == 0 ? 3 : (int) Math.round(Math.log(LENGTH / length) / Math.log(2));
        return smaller == 0 && shorter == 0 ? 0 : 3 + 4 * smaller + shorter;
    }

    /** A lead at one of five places of an edge. */
    private record Option(Lead lead, double edgeM, double share, double placeM) {

        boolean isGood() {
            return lead.isClear()
                    && finding(lead, "lead-corner").isSatisfied()
                    && finding(lead, "lead-web").isSatisfied();
        }

        /** The larger, the smaller the conflict; a good place counts for half a margin. */
        double merit() {
            double pierce = Math.min(0, number(lead, "pierce-clearance", "value_m") - CLEAR);
            double room = Math.min(0, number(lead, "lead-clearance", "value_m") - 0.6 * KERF);
            boolean isInGoodPlace = finding(lead, "lead-corner").isSatisfied()
                    && finding(lead, "lead-web").isSatisfied();
            return pierce + 2 * room + (isInGoodPlace ? 0.05 * KERF : 0);
        }
    }

    private static List<Option> options(LeadPlacer placer, Contour contour, int index) {
        List<Option> options = new ArrayList<>();
        EdgeCursor edge = new EdgeCursor();
        double start = 0;
        for (int i = 0; i < contour.size(); i++) {
            contour.load(i, edge);
            for (int k = 0; k < 5; k++) {
                double share = 0.1 + 0.2 * k;
                double place = start + share * edge.length();
                double length = edge.length();
                at(placer, index, place).ifPresent(lead -> options.add(new Option(lead, length, share, place)));
            }
            start += edge.length();
        }
        return options;
    }

    @Test
    void theLeadIsTheFirstGoodFormAtTheLongestEdgeElseTheSmallestConflict() {
        int good = 0;
        int conflicts = 0;
        for (int seed = 100; seed < 125; seed++) {
            Optional<Part> part = part(seed);
            for (int index = 0; index < 2 && part.isPresent(); index++) {
                LeadPlacer placer = LeadPlacer.of(part.get(), RULES);
                List<Option> options = options(placer, part.get().contours().get(index), index);
                Optional<Option> best = options.stream()
                        .filter(Option::isGood)
                        .min(Comparator.comparingInt((Option option) -> form(option.lead))
                                .thenComparing(option -> -option.edgeM)
                                .thenComparing(option -> Math.round(1e6 * Math.abs(option.share - 0.5)))
                                .thenComparing(option -> option.placeM));
                if (best.isPresent()) {
                    assertIsAt(placer.suggest(index), best.get().lead);
                    good++;
                } else if (!options.isEmpty()) {
                    Option chosen = new Option(placer.suggest(index), 0, 0, 0);
                    boolean isClear = options.stream().anyMatch(option -> option.lead.isClear());
                    assertThat(chosen.lead.isClear()).isEqualTo(isClear);
                    assertThat(options)
                            .filteredOn(option -> option.lead.isClear() == isClear)
                            .allMatch(option -> option.merit() <= chosen.merit() + 2e-8);
                    conflicts++;
                }
            }
        }
        assertThat(good).isGreaterThan(12);
        assertThat(conflicts).isGreaterThan(2);
    }

    private static void assertIsAt(Lead lead, Lead expected) {
        assertThat(Kind.LENGTH.si(lead.entry().distance(expected.entry()))).isLessThan(1e-9);
        assertThat(Kind.LENGTH.si(lead.pierce().distance(expected.pierce()))).isLessThan(1e-9);
        assertThat(form(lead)).isEqualTo(form(expected));
    }

    /** A part turned or mirrored has the same leads, turned or mirrored; so has one behind a neighbour out of reach. */
    @Test
    void leadsTurnAndMirrorWithThePart() {
        for (int seed = 200; seed < 215; seed++) {
            Optional<Part> part = part(seed);
            for (int index = 0; index < 3 && part.isPresent(); index++) {
                List<Contour> all = part.get().contours();
                Part turned = Part.of(
                        all.get(2).rotatedBy(degrees(37)),
                        all.get(0).rotatedBy(degrees(37)),
                        all.get(1).rotatedBy(degrees(37)));
                Part mirrored =
                        Part.of(Plane.mirrored(all.get(2)), Plane.mirrored(all.get(0)), Plane.mirrored(all.get(1)));
                Lead lead;
                try {
                    lead = LeadPlacer.of(part.get(), RULES).suggest(index);
                } catch (GeometryException refused) {
                    continue;
                }
                double cos = Math.cos(Math.toRadians(37));
                double sin = Math.sin(Math.toRadians(37));
                double x = lead.pierce().xSi();
                double y = lead.pierce().ySi();
                Point one = LeadPlacer.of(turned, RULES).suggest(index).pierce();
                Point other = LeadPlacer.of(mirrored, RULES).suggest(index).pierce();

                assertThat(Math.hypot(one.xSi() - x * cos + y * sin, one.ySi() - x * sin - y * cos))
                        .isLessThan(1e-8);
                assertThat(Math.hypot(other.xSi() + x, other.ySi() - y)).isLessThan(1e-8);
            }
        }
    }
}

package dev.waterjet.toolpath;

import static dev.waterjet.measure.Measures.millimetres;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.measure.DomainException;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.part.Contour;
import dev.waterjet.part.EdgeCursor;
import dev.waterjet.part.GeometryException;
import dev.waterjet.part.Part;
import dev.waterjet.part.Point;
import dev.waterjet.part.Side;
import dev.waterjet.quality.EdgeRequirement;
import dev.waterjet.toolpath.ToolPath.Purpose;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Tabs and overcuts of paths, place by place: what is a tab there, and which place of the part is cut. */
class ToolPathEditorTest {

    private static QuantityArray<javax.measure.quantity.Length> places(double... metres) {
        return QuantityArray.ofSi(Kind.LENGTH, metres);
    }

    private static ToolPath path(int seed) {
        Random random = new Random(seed);
        Optional<Contour> ring = Optional.empty();
        while (ring.isEmpty()) {
            ring = Plane.ring(random, 4 + random.nextInt(4), 0.03, 0.4);
        }
        return KerfOffset.of(millimetres(0.4))
                .withNarrowPlaces(KerfOffset.NarrowPlaces.BRIDGE)
                .apply(ring.get(), ring.get().enclosedSide())
                .path();
    }

    /** A place of a path: x, y, share of the source edge, at a distance along the cut; leads do not count. */
    private static double[] at(ToolPath path, double distance) {
        EdgeCursor edge = new EdgeCursor();
        double before = 0;
        double[] last = {};
        for (int i = 0; i < path.size(); i++) {
            if (path.purpose(i) == Purpose.CUT || path.purpose(i) == Purpose.TAB) {
                path.contour().load(i, edge);
                double share = Math.min(1, (distance - before) / edge.length());
                double[] at = Plane.at(edge, share);
                double source = path.sourceStart(i) + share * (path.sourceEnd(i) - path.sourceStart(i));
                last = new double[] {
                    at[0], at[1], path.sourceEdge(i).orElseThrow() + source, path.purpose(i) == Purpose.TAB ? 1 : 0
                };
                before += edge.length();
                if (distance < before) {
                    return last;
                }
            }
        }
        return last;
    }

    private static double cut(ToolPath path) {
        return Kind.LENGTH.si(path.length(Purpose.CUT)) + Kind.LENGTH.si(path.length(Purpose.TAB));
    }

    private static double[] tabs(Random random, double total, double gap) {
        int count = 1 + random.nextInt(5);
        double[] tabs = new double[count];
        double pitch = total / count;
        for (int k = 0; k < count; k++) {
            tabs[k] = pitch * (k + 0.5) + (pitch - gap) / 2.001 * (2 * random.nextDouble() - 1);
        }
        return tabs;
    }

    @Test
    void aTabIsWhatLiesWithinHalfItsWidthAndHalfAKerf() {
        for (int seed = 0; seed < 25; seed++) {
            ToolPath plain = path(seed);
            Random random = new Random(seed);
            double total = cut(plain);
            double gap = 0.002 + 0.003 * random.nextDouble();
            double[] tabs = tabs(random, total, gap);
            ToolPath path = plain.withTabs(places(tabs), Kind.LENGTH.of(gap - 0.0008), millimetres(0.8));

            assertThat(path.contour().isClosed()).isEqualTo(plain.contour().isClosed());
            assertThat(Kind.LENGTH.si(path.length(Purpose.TAB))).isCloseTo(tabs.length * gap, within(1e-9));
            assertThat(cut(path)).isCloseTo(total, within(1e-9));
            assertThat(path.partSide()).isEqualTo(plain.partSide());
            for (int k = 0; k < 300; k++) {
                double distance = total * (k + 0.5) / 300;
                double nearest = total;
                for (double tab : tabs) {
                    nearest = Math.min(nearest, Math.abs(distance - tab));
                }
                double[] expected = at(plain, distance);
                double[] found = at(path, distance);
                if (Math.abs(nearest - gap / 2) > 1e-7) {
                    assertThat(found[3]).isEqualTo(nearest < gap / 2 ? 1 : 0);
                }
                assertThat(Math.hypot(found[0] - expected[0], found[1] - expected[1]))
                        .isLessThan(1e-7);
                assertThat(found[2]).isCloseTo(expected[2], within(1e-4));
            }
            assertCuts(path);
        }
    }

    /** Cuts are the stretches between tabs, in order, with the requirements of the path. */
    private static void assertCuts(ToolPath path) {
        List<Double> expected = new ArrayList<>();
        EdgeCursor edge = new EdgeCursor();
        double open = 0;
        for (int i = 0; i < path.size(); i++) {
            path.contour().load(i, edge);
            if (path.purpose(i) == Purpose.TAB) {
                if (open > 0) {
                    expected.add(open);
                }
                open = 0;
            } else {
                open += edge.length();
            }
        }
        if (open > 0) {
            expected.add(open);
        }
        List<Contour> cuts = path.cuts();
        assertThat(cuts).hasSameSizeAs(expected).noneMatch(Contour::isClosed);
        for (int k = 0; k < cuts.size(); k++) {
            assertThat(cuts.get(k).lengthSi()).isCloseTo(expected.get(k), within(1e-12));
            assertThat(cuts.get(k).name()).isEqualTo(path.contour().name());
        }
    }

    @Test
    void leadsStayAndTabsAreCountedFromTheEntry() {
        Contour plate = Contour.rectangle(
                        Point.millimetres(0, 0), Point.millimetres(60, 40), EdgeRequirement.defaults())
                .named("plate");
        CuttingRules rules = CuttingRules.of(millimetres(0.8), millimetres(10));
        ToolPath plain = LeadPlacer.of(Part.of(plate), rules).suggest(0).toolPath();
        ToolPath path = plain.withTabs(places(0.05, 0.11), millimetres(2), millimetres(0.8));

        for (Purpose lead : List.of(Purpose.LEAD_IN, Purpose.LEAD_OUT)) {
            assertThat(Kind.LENGTH.si(path.length(lead))).isCloseTo(Kind.LENGTH.si(plain.length(lead)), within(1e-12));
        }
        assertThat(path.pierce()).isEqualTo(plain.pierce());
        assertThat(path.contour().end()).isEqualTo(plain.contour().end());
        assertThat(path.sourceEdge(0)).isEmpty();
        assertThat(path.cuts()).hasSize(3).allMatch(cut -> cut.name().equals("plate"));
        assertThat(path.cuts().get(0).requirement(0).isLead()).isTrue();
        double in = Kind.LENGTH.si(path.length(Purpose.LEAD_IN));
        double out = Kind.LENGTH.si(path.length(Purpose.LEAD_OUT));
        assertThat(path.cuts())
                .extracting(cut -> Math.round(1e9 * cut.lengthSi()))
                .containsExactly(
                        Math.round(1e9 * (in + 0.05 - 0.0014)),
                        Math.round(1e9 * (0.06 - 0.0028)),
                        Math.round(1e9 * (cut(plain) - 0.11 - 0.0014 + out)));
        assertThat(plain.cuts())
                .singleElement()
                .satisfies(cut ->
                        assertThat(cut.lengthSi()).isCloseTo(plain.contour().lengthSi(), within(1e-12)));
        assertThat(path.describe()).containsKeys("length_tab_m", "length_lead_in_m", "length_lead_out_m");
    }

    private static void assertRefused(ToolPath path, double width, double... tabs) {
        assertThatExceptionOfType(DomainException.class)
                .isThrownBy(() -> path.withTabs(places(tabs), Kind.LENGTH.of(width), millimetres(1)))
                .satisfies(e -> assertThat(e.quantity()).isEqualTo("distance of a tab along the cut"));
    }

    @Test
    void tabsMayTouchButNotOverlapEachOtherOrTheEnds() {
        Contour line = Contour.from(Point.millimetres(0, 0))
                .lineTo(Point.millimetres(20, 0))
                .open();
        ToolPath path = KerfOffset.of(millimetres(0.5)).apply(line, Side.LEFT).path();

        assertThat(path.withTabs(places(0.0015), millimetres(2), millimetres(1)).cuts())
                .hasSize(1);
        assertThat(path.withTabs(places(0.0185), millimetres(2), millimetres(1)).cuts())
                .hasSize(1);
        assertThat(path.withTabs(places(0.005, 0.00801), millimetres(2), millimetres(1))
                        .cuts())
                .hasSize(3);
        assertRefused(path, 0.002, 0.00149);
        assertRefused(path, 0.002, 0.01851);
        assertRefused(path, 0.002, 0.005, 0.00799);
        assertRefused(path, 0.002, 0.01, 0.005);
        for (double width : new double[] {0, -0.001}) {
            assertThatExceptionOfType(DomainException.class)
                    .isThrownBy(() -> path.withTabs(places(0.01), Kind.LENGTH.of(width), millimetres(1)))
                    .satisfies(e -> assertThat(e.quantity()).isEqualTo("width of a tab"));
        }
        assertThatExceptionOfType(DomainException.class)
                .isThrownBy(() -> path.withTabs(places(0.01), millimetres(1), millimetres(0)))
                .satisfies(e -> assertThat(e.quantity()).isEqualTo("kerf width"));
    }

    @Test
    void anOvercutRepeatsThePathFromItsStart() {
        for (int seed = 0; seed < 15; seed++) {
            ToolPath closed = path(seed);
            double total = closed.contour().lengthSi();
            for (double share : new double[] {0.01, 0.3, 0.77, 1}) {
                ToolPath path = closed.withOvercut(Kind.LENGTH.of(share * total));
                double[] end = at(closed, share * total * (1 - 1e-12));

                assertThat(path.contour().isClosed()).isFalse();
                assertThat(Kind.LENGTH.si(path.length(Purpose.OVERCUT))).isCloseTo(share * total, within(2e-8));
                assertThat(Kind.LENGTH.si(path.length(Purpose.CUT))).isCloseTo(total, within(1e-12));
                assertThat(Math.hypot(
                                path.contour().end().xSi() - end[0],
                                path.contour().end().ySi() - end[1]))
                        .isLessThan(2e-8);
                for (int i = closed.size(); i < path.size(); i++) {
                    int first = i - closed.size();
                    assertThat(path.purpose(i)).isEqualTo(Purpose.OVERCUT);
                    assertThat(path.sourceEdge(i)).isEqualTo(closed.sourceEdge(first));
                    assertThat(path.sourceStart(i)).isEqualTo(closed.sourceStart(first));
                    if (i + 1 < path.size()) {
                        assertThat(path.sourceEnd(i)).isEqualTo(closed.sourceEnd(first));
                    }
                }
            }
            assertThatExceptionOfType(DomainException.class)
                    .isThrownBy(() -> closed.withOvercut(Kind.LENGTH.of(1.001 * total)))
                    .satisfies(e -> assertThat(e.quantity()).isEqualTo("length of the overcut"));
            assertThatExceptionOfType(DomainException.class)
                    .isThrownBy(() -> closed.withOvercut(Kind.LENGTH.of(0)))
                    .satisfies(e -> assertThat(e.quantity()).isEqualTo("length of the overcut"));
            assertThatExceptionOfType(GeometryException.class)
                    .isThrownBy(() -> closed.withOvercut(millimetres(1)).withOvercut(millimetres(1)));
        }
    }

    /** Two paths of one contour that cut different edges of the part are not equal. */
    @Test
    void purposesAndSourcesBelongToThePath() {
        Stretches one = stretches(Purpose.CUT, 3, 0.25, 0.75);

        assertThat(one).isEqualTo(stretches(Purpose.CUT, 3, 0.25, 0.75));
        assertThat(one.hashCode())
                .isEqualTo(stretches(Purpose.CUT, 3, 0.25, 0.75).hashCode());
        assertThat(one)
                .isNotEqualTo(stretches(Purpose.TAB, 3, 0.25, 0.75))
                .isNotEqualTo(stretches(Purpose.CUT, 4, 0.25, 0.75))
                .isNotEqualTo(stretches(Purpose.CUT, 3, 0.2, 0.75))
                .isNotEqualTo(stretches(Purpose.CUT, 3, 0.25, 0.7))
                .isNotEqualTo(new Stretches());
        assertThat(one.hashCode())
                .isNotEqualTo(stretches(Purpose.TAB, 3, 0.25, 0.75).hashCode())
                .isNotEqualTo(stretches(Purpose.CUT, 4, 0.25, 0.75).hashCode());
        assertThat(one.has(Purpose.CUT)).isTrue();
        assertThat(one.has(Purpose.TAB)).isFalse();
        one.addPart(one, 16, 0.5, 1);
        assertThat(one.size()).isEqualTo(41);
        assertThat(one.start(40)).isEqualTo(0.5);
        assertThat(one.end(40)).isEqualTo(0.75);
    }

    /** Forty stretches, the 17th of which is given. */
    private static Stretches stretches(Purpose purpose, int source, double start, double end) {
        Stretches stretches = new Stretches();
        for (int i = 0; i < 40; i++) {
            if (i == 16) {
                stretches.add(purpose, source, start, end);
            } else {
                stretches.add(Purpose.CUT, i, 0, 1);
            }
        }
        return stretches;
    }
}

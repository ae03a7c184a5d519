package dev.waterjet.toolpath;

import static dev.waterjet.Refusals.assertRefused;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.millimetres;
import static dev.waterjet.measure.Measures.newtons;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.measure.Kind;
import dev.waterjet.part.Contour;
import dev.waterjet.part.EdgeCursor;
import dev.waterjet.part.Finding;
import dev.waterjet.part.Point;
import dev.waterjet.quality.EdgeRequirement;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Suggested places of tabs against a dense search of each one's window, and distances from corners one by one. */
class TabPlacesSearchTest {

    private static final double KERF = 0.8e-3;
    private static final CuttingRules RULES = CuttingRules.of(millimetres(0.8), millimetres(10));

    private static List<Double> corners(Contour polygon) {
        List<Double> corners = new ArrayList<>();
        EdgeCursor edge = new EdgeCursor();
        double at = 0;
        for (int i = 0; i < polygon.size(); i++) {
            corners.add(at);
            polygon.load(i, edge);
            at += Math.hypot(edge.endX() - edge.startX(), edge.endY() - edge.startY());
        }
        return corners;
    }

    private static double fromCorner(List<Double> corners, double total, double place) {
        return corners.stream()
                .mapToDouble(corner -> Math.min(Math.abs(corner - place), total - Math.abs(corner - place)))
                .min()
                .orElseThrow();
    }

    /** A polygon whose corners are no samples of a curve: edges of 3 mm or more, turns of 20 degrees or more. */
    private static Contour ring(Random random) {
        EdgeCursor edge = new EdgeCursor();
        EdgeCursor next = new EdgeCursor();
        while (true) {
            Optional<Contour> ring = Plane.ring(random, 3 + random.nextInt(7), 0.02, 0);
            boolean isSharp = ring.isPresent();
            for (int i = 0; isSharp && i < ring.get().size(); i++) {
                ring.get().load(i, edge);
                ring.get().load((i + 1) % ring.get().size(), next);
                isSharp = Math.abs(next.turnFrom(edge)) > 0.35 && edge.length() > 3e-3;
            }
            if (isSharp) {
                return ring.get();
            }
        }
    }

    @Test
    void cornersAreAsFarAsTheNearestOne() {
        for (int seed = 0; seed < 30; seed++) {
            Random random = new Random(seed);
            Contour ring = ring(random);
            Corners corners = Corners.of(ring);
            List<Double> expected = corners(ring);
            for (int k = 0; k < 60; k++) {
                double place = ring.lengthSi() * random.nextDouble();
                assertThat(corners.distance(place))
                        .isCloseTo(fromCorner(expected, ring.lengthSi(), place), within(1e-12));
            }
            for (double corner : expected) {
                assertThat(corners.distance(corner)).isCloseTo(0, within(1e-15));
            }
        }
    }

    /** The nearest place to the middle of its window that is two widths from corners, else the farthest from them. */
    @Test
    void aTabLiesNearestToTheMiddleOfItsWindowWhereCornersAreFar() {
        int moved = 0;
        for (int seed = 0; seed < 60; seed++) {
            Random random = new Random(seed);
            Contour ring = ring(random);
            double total = ring.lengthSi();
            int count = 2 + random.nextInt(14);
            HoldingTabs tabs =
                    HoldingTabs.of(newtons(50 + 2500 * random.nextDouble()), megapascals(120), millimetres(8), RULES);
            double width = Kind.LENGTH.si(tabs.width(count));
            double pitch = total / count;
            if (pitch < width + KERF) {
                assertRefused(() -> tabs.suggest(ring, count), "tabs-do-not-fit");
                continue;
            }
            double[] places = tabs.suggest(ring, count).toSi();
            List<Double> corners = corners(ring);
            double half = (pitch - width - KERF) / 2;
            for (int k = 0; k < count; k++) {
                double middle = pitch * (k + 0.5);
                double found = fromCorner(corners, total, places[k]);
                double away = Math.abs(places[k] - middle);
                double[] best = search(corners, total, middle, half, 2 * width);
                assertThat(away).isLessThanOrEqualTo(half + 1e-12);
                // steps of 1/64 of half the window
                assertThat(found).isGreaterThanOrEqualTo(Math.min(best[0], 2 * width) - half / 64 - 1e-9);
                if (found >= 2 * width - 1e-9) {
                    assertThat(away).isLessThanOrEqualTo(best[1] + half / 64 + 1e-9);
                }
                moved += away > 0 ? 1 : 0;
            }
        }
        assertThat(moved).isGreaterThan(15);
    }

    /** Largest distance from corners in a window, and the nearest way from its middle to one that is enough. */
    private static double[] search(List<Double> corners, double total, double middle, double half, double enough) {
        double farthest = 0;
        double nearest = Double.POSITIVE_INFINITY;
        for (int k = -700; k <= 700; k++) {
            double away = half * k / 700;
            double clear = fromCorner(corners, total, middle + away);
            farthest = Math.max(farthest, clear);
            nearest = clear >= enough ? Math.min(nearest, Math.abs(away)) : nearest;
        }
        return new double[] {farthest, nearest};
    }

    /** Shear F S/(n b h), bending across the kerf 3 F S w/(n h b^2), each at its strength: the larger width of both. */
    @Test
    void theWidthBearsShearAndBendingAtTheirStrength() {
        for (double kerf : new double[] {0.05, 0.3, 0.8, 1.5}) {
            for (int count : new int[] {1, 2, 5}) {
                for (double safety : new double[] {1, 3, 4.5}) {
                    double force = 5000;
                    double strength = 150e6;
                    double plate = 0.01;
                    HoldingTabs tabs = HoldingTabs.of(
                                    newtons(force),
                                    megapascals(150),
                                    millimetres(10),
                                    CuttingRules.of(millimetres(kerf), millimetres(10)))
                            .withSafety(safety);
                    double b = Kind.LENGTH.si(tabs.width(count));
                    double shear = force * safety / (count * b * plate) / strength;
                    double bending =
                            3 * force * safety * kerf * 1e-3 / (count * plate * b * b) / (Math.sqrt(3) * strength);

                    assertThat(Math.max(shear, bending)).isCloseTo(1, within(1e-9));
                }
            }
        }
    }

    @Test
    void enoughTabsOfTheWidthHold() {
        Contour disc = Contour.circle(Point.millimetres(3, 4), millimetres(20), EdgeRequirement.defaults());
        HoldingTabs tabs = HoldingTabs.of(newtons(300), megapascals(150), millimetres(10), RULES);
        double width = Kind.LENGTH.si(tabs.width(3));
        Finding enough = tabs.check(disc, 3, Kind.LENGTH.of(1.0001 * width));
        Finding less = tabs.check(disc, 3, Kind.LENGTH.of(0.9999 * width));

        assertThat(enough.isSatisfied()).isTrue();
        assertThat(enough.code()).isEqualTo("tab-width");
        assertThat(enough.place()).isEqualTo(disc.start());
        assertThat(less.isSatisfied()).isFalse();
        assertThat(less.message().parameters()).containsEntry("count", 3L);
        assertThat(tabs.check(disc, 1, millimetres(50)).isSatisfied()).isFalse();
        assertRefused(() -> tabs.width(0), "must-be-at-least", "number of tabs", 1);
        assertRefused(() -> tabs.suggest(disc, 1), "must-be-at-least", "number of tabs", 2);
        assertThat(tabs.withSafety(1)).isNotEqualTo(tabs);
        // without corners every tab lies in the middle of its window
        assertThat(tabs.suggest(disc, 4).toSi())
                .containsExactly(
                        new double[] {
                            Math.PI * 0.02 * 0.25, Math.PI * 0.02 * 0.75, Math.PI * 0.02 * 1.25, Math.PI * 0.02 * 1.75
                        },
                        within(1e-12));
    }
}

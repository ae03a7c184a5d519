package dev.waterjet.toolpath;

import static dev.waterjet.Refusals.assertRefused;
import static dev.waterjet.measure.Measures.millimetres;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.measure.Kind;
import dev.waterjet.part.Contour;
import dev.waterjet.part.ContourBuilder;
import dev.waterjet.part.Finding;
import dev.waterjet.part.Point;
import dev.waterjet.part.Side;
import dev.waterjet.quality.CutQuality;
import dev.waterjet.quality.EdgeRequirement;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Orders of cutting against every other order, or every other one that a reversal or a move makes of them. */
class OrderSearchTest {

    private static final EdgeRequirement MEDIUM = EdgeRequirement.of(CutQuality.MEDIUM);

    private static Contour square(double x, double y, double half) {
        return Contour.rectangle(Point.millimetres(x - half, y - half), Point.millimetres(x + half, y + half), MEDIUM);
    }

    /** A line from place to place: the head goes on from its other end. */
    private static Contour line(double x0, double y0, double x1, double y1) {
        return Contour.from(Point.millimetres(x0, y0))
                .lineTo(Point.millimetres(x1, y1))
                .open();
    }

    /** Lines at random, and squares around some of the places of a grid, some with another inside. */
    private static List<Contour> paths(Random random, int count) {
        List<Contour> paths = new ArrayList<>();
        for (int i = 0; paths.size() < count; i++) {
            double x = 40 * (i % 4) + 10 * random.nextDouble();
            double y = 40 * (i / 4) + 10 * random.nextDouble();
            paths.add(line(x, y, x + 12 * random.nextDouble() - 6, y + 12 * random.nextDouble() - 6));
            if (random.nextBoolean() && paths.size() < count) {
                paths.add(square(x, y, 9));
            }
            if (random.nextInt(3) == 0 && paths.size() < count) {
                paths.add(square(x, y, 11));
            }
        }
        Collections.shuffle(paths, random);
        return paths;
    }

    private static double length(List<Contour> paths, List<Integer> order, Point start) {
        double x = start.xSi();
        double y = start.ySi();
        double sum = 0;
        for (int path : order) {
            Contour contour = paths.get(path);
            sum += Math.hypot(contour.xSi(0) - x, contour.ySi(0) - y);
            x = contour.xSi(contour.size());
            y = contour.ySi(contour.size());
        }
        return sum;
    }

    private static boolean isAllowed(List<Contour> paths, List<Integer> order) {
        return CuttingOrder.check(paths, order).stream().allMatch(Finding::isSatisfied);
    }

    private static void permutations(List<Integer> head, List<Integer> left, List<List<Integer>> into) {
        if (left.isEmpty()) {
            into.add(List.copyOf(head));
        }
        for (Integer next : left) {
            List<Integer> rest = new ArrayList<>(left);
            rest.remove(next);
            List<Integer> more = new ArrayList<>(head);
            more.add(next);
            permutations(more, rest, into);
        }
    }

    @Test
    void ofFewPathsTheOrderIsTheShortestOrNearlySo() {
        int shortest = 0;
        double worst = 1;
        for (int seed = 0; seed < 25; seed++) {
            Random random = new Random(seed);
            List<Contour> paths = paths(random, 5);
            Point start = Point.millimetres(150 * random.nextDouble(), 100 * random.nextDouble());
            List<List<Integer>> all = new ArrayList<>();
            permutations(List.of(), List.of(0, 1, 2, 3, 4), all);
            double least = all.stream()
                    .filter(order -> isAllowed(paths, order))
                    .mapToDouble(order -> length(paths, order, start))
                    .min()
                    .orElseThrow();
            double found = length(paths, CuttingOrder.suggest(paths, start), start);

            assertThat(found).isGreaterThanOrEqualTo(least - 1e-12);
            worst = Math.max(worst, found / least);
            shortest += found < least + 1e-9 ? 1 : 0;
        }
        assertThat(shortest).isGreaterThanOrEqualTo(15);
        assertThat(worst).isLessThan(1.3);
    }

    /** Every order that the reversal of a stretch, or a move of up to three paths elsewhere, makes of one. */
    private static List<List<Integer>> exchanges(List<Integer> order) {
        List<List<Integer>> others = new ArrayList<>();
        for (int i = 0; i < order.size(); i++) {
            for (int j = i + 1; j < order.size(); j++) {
                List<Integer> reversed = new ArrayList<>(order);
                Collections.reverse(reversed.subList(i, j + 1));
                others.add(reversed);
                if (j - i <= 3) {
                    List<Integer> moved = order.subList(i, j);
                    List<Integer> rest = new ArrayList<>(order);
                    rest.subList(i, j).clear();
                    for (int k = 0; k <= rest.size(); k++) {
                        List<Integer> other = new ArrayList<>(rest);
                        other.addAll(k, moved);
                        others.add(other);
                    }
                }
            }
        }
        return others;
    }

    @Test
    void noReversalOrMoveOfAStretchMakesAnOrderShorter() {
        for (int seed = 0; seed < 25; seed++) {
            Random random = new Random(100 + seed);
            List<Contour> paths = paths(random, 6 + random.nextInt(9));
            Point start = Point.millimetres(150 * random.nextDouble(), 100 * random.nextDouble());
            List<Integer> order = CuttingOrder.suggest(paths, start);
            double found = length(paths, order, start);

            assertThat(isAllowed(paths, order)).isTrue();
            assertThat(Kind.LENGTH.si(CuttingOrder.traverse(paths, order, start)))
                    .isCloseTo(found, within(1e-12));
            for (List<Integer> other : exchanges(order)) {
                if (length(paths, other, start) < found - 2e-9) {
                    assertThat(isAllowed(paths, other))
                            .as("seed %s, %s", seed, other)
                            .isFalse();
                }
            }
        }
    }

    /** From the start to the nearest path that is free, and so on: the search starts from there and only shortens. */
    @Test
    void anOrderIsNeverLongerThanThatOfTheNearestNext() {
        for (int seed = 0; seed < 40; seed++) {
            Random random = new Random(200 + seed);
            List<Contour> paths = paths(random, 20);
            Point start = Point.millimetres(150 * random.nextDouble(), 100 * random.nextDouble());
            List<Integer> nearest = new ArrayList<>();
            while (nearest.size() < paths.size()) {
                nearest.add(nearest(paths, nearest, start));
            }

            assertThat(length(paths, CuttingOrder.suggest(paths, start), start))
                    .isLessThanOrEqualTo(length(paths, nearest, start) + 1e-12);
        }
    }

    private static int nearest(List<Contour> paths, List<Integer> done, Point start) {
        int best = -1;
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i < paths.size(); i++) {
            List<Integer> more = new ArrayList<>(done);
            more.add(i);
            boolean isFree = !done.contains(i)
                    && CuttingOrder.check(paths, more).stream()
                            .noneMatch(found -> found.code().equals("inner-path-late"))
                    && isInnermost(paths, i, done);
            if (isFree && length(paths, more, start) < least) {
                least = length(paths, more, start);
                best = i;
            }
        }
        return best;
    }

    private static boolean isInnermost(List<Contour> paths, int outer, List<Integer> done) {
        for (int inner = 0; inner < paths.size(); inner++) {
            Contour around = paths.get(outer);
            if (inner != outer
                    && !done.contains(inner)
                    && around.isClosed()
                    && Plane.isInside(
                            Plane.chords(around),
                            paths.get(inner).xSi(0),
                            paths.get(inner).ySi(0))) {
                return false;
            }
        }
        return true;
    }

    /** Of two loops in one box the larger is around the other, in whichever order they are given, though they touch. */
    @Test
    void ofLoopsInOneBoxTheLargerIsCutLast() {
        Contour square = square(0, 0, 10);
        Contour disc = Contour.circle(Point.millimetres(0, 0), millimetres(10), MEDIUM);
        Contour diamond = Contour.from(Point.millimetres(0, -10))
                .lineTo(Point.millimetres(10, 0))
                .lineTo(Point.millimetres(0, 10))
                .lineTo(Point.millimetres(-10, 0))
                .close();

        assertThat(CuttingOrder.suggest(List.of(square, diamond))).containsExactly(1, 0);
        assertThat(CuttingOrder.suggest(List.of(diamond, square))).containsExactly(0, 1);
        assertThat(CuttingOrder.suggest(List.of(square, disc))).containsExactly(1, 0);
        assertThat(CuttingOrder.suggest(List.of(disc, square))).containsExactly(0, 1);
        // of the same loop twice one is around the other, not both
        assertThat(CuttingOrder.check(List.of(square, square), List.of(1, 0))).allMatch(Finding::isSatisfied);
        assertThat(CuttingOrder.check(List.of(square, square), List.of(0, 1)))
                .singleElement()
                .satisfies(found -> assertThat(found.code()).isEqualTo("inner-path-late"));
    }

    /** A loop between leads is around what lies in it; leads alone, an open cut and a gap are around nothing. */
    @Test
    void aPathWithLeadsIsAroundWhatItsClosedStretchEncloses() {
        Contour inner = square(0, 0, 2);
        List<Integer> outerFirst = List.of(0, 1);

        assertThat(CuttingOrder.check(List.of(led(0), inner), outerFirst))
                .singleElement()
                .satisfies(found -> assertThat(found.code()).isEqualTo("inner-path-late"));
        assertThat(CuttingOrder.check(List.of(led(0.009), inner), outerFirst)).noneMatch(Finding::isSatisfied);
        assertThat(CuttingOrder.check(List.of(led(0.011), inner), outerFirst)).allMatch(Finding::isSatisfied);
        // a path from (12, 0) back to there that is all lead encloses nothing that is cut
        Contour lead = Contour.from(Point.millimetres(-9, -9))
                .requirement(MEDIUM.asLead())
                .lineTo(Point.millimetres(9, -9))
                .lineTo(Point.millimetres(0, 9))
                .lineTo(Point.millimetres(-9, -9.001))
                .open();
        assertThat(CuttingOrder.check(List.of(lead, inner), outerFirst)).allMatch(Finding::isSatisfied);
        Contour there = line(-12, 0, 12, 0);
        assertThat(CuttingOrder.check(List.of(there, inner), outerFirst)).allMatch(Finding::isSatisfied);
    }

    /** A square of 20 mm that starts and ends at (10, 0), a gap apart, entered and left by leads; a full circle too. */
    private static Contour led(double gapMm) {
        ContourBuilder builder = Contour.from(Point.millimetres(14, 1))
                .requirement(MEDIUM.asLead())
                .lineTo(Point.millimetres(10, 0))
                .requirement(MEDIUM)
                .lineTo(Point.millimetres(10, 10))
                .lineTo(Point.millimetres(-10, 10))
                .lineTo(Point.millimetres(-10, -10))
                .lineTo(Point.millimetres(10, -10))
                .lineTo(Point.millimetres(10, -gapMm));
        return builder.requirement(MEDIUM.asLead())
                .lineTo(Point.millimetres(14, -3))
                .open();
    }

    @Test
    void aCircleBetweenLeadsIsAroundItsInside() {
        Contour circle = Contour.from(Point.millimetres(6, 0))
                .requirement(MEDIUM.asLead())
                .lineTo(Point.millimetres(10, 0))
                .requirement(MEDIUM)
                .arcTo(Point.millimetres(10, 0), Point.millimetres(0, 0), Side.LEFT)
                .requirement(MEDIUM.asLead())
                .lineTo(Point.millimetres(6, 1))
                .open();

        assertThat(CuttingOrder.suggest(List.of(circle, square(-50, 0, 1), square(-4, 0, 2))))
                .satisfies(order -> assertThat(order.indexOf(2)).isLessThan(order.indexOf(0)));
    }

    @Test
    void namesLabelTheFindingsAndIndicesMustExist() {
        List<Contour> paths =
                List.of(square(0, 0, 10).named("plate"), square(0, 0, 2).named("hole"));
        Finding late = CuttingOrder.check(paths, List.of(0, 1)).get(0);

        assertThat(late.message().parameters())
                .containsEntry("path", paths.get(1).label())
                .containsEntry("outer", paths.get(0).label());
        assertThat(late.place()).isEqualTo(paths.get(1).start());
        assertThat(CuttingOrder.check(List.of(), List.of())).singleElement().matches(Finding::isSatisfied);
        assertThat(CuttingOrder.suggest(List.of())).isEmpty();
        Finding good = CuttingOrder.check(paths, List.of(1, 0)).get(0);
        assertThat(good.code()).isEqualTo("inside-first");
        assertThat(good.place()).isEqualTo(paths.get(0).start());
        for (int index : new int[] {-1, 2}) {
            assertThat(assertRefused(() -> CuttingOrder.check(paths, List.of(index)), "no-such-index"))
                    .isNotNull();
            assertThat(assertRefused(
                            () -> CuttingOrder.traverse(paths, List.of(index), Point.ofSi(0, 0)), "no-such-index"))
                    .isNotNull();
        }
    }
}

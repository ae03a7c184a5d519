package dev.waterjet.toolpath;

import static dev.waterjet.measure.Measures.millimetres;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.measure.DomainException;
import dev.waterjet.measure.Kind;
import dev.waterjet.part.Contour;
import dev.waterjet.part.Finding;
import dev.waterjet.part.Part;
import dev.waterjet.part.Point;
import dev.waterjet.quality.EdgeRequirement;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

class CuttingOrderTest {

    private static final Point ORIGIN = Point.ofSi(0, 0);

    private static Contour rectangle(double x0, double y0, double x1, double y1) {
        return Contour.rectangle(Point.millimetres(x0, y0), Point.millimetres(x1, y1), EdgeRequirement.defaults());
    }

    private static Contour circle(double x, double y, double r) {
        return Contour.circle(Point.millimetres(x, y), millimetres(r), EdgeRequirement.defaults());
    }

    private static List<Contour> nested() {
        return List.of(
                rectangle(0, 0, 100, 100), rectangle(10, 10, 60, 60), circle(30, 30, 5), rectangle(200, 0, 250, 50));
    }

    @Test
    void insideIsCutBeforeOutside() {
        List<Integer> order = CuttingOrder.suggest(nested());

        assertThat(order.indexOf(2)).isLessThan(order.indexOf(1));
        assertThat(order.indexOf(1)).isLessThan(order.indexOf(0));
        assertThat(order).containsExactlyInAnyOrder(0, 1, 2, 3);
        assertThat(CuttingOrder.check(nested(), order)).singleElement().matches(Finding::isSatisfied);
    }

    @Test
    void aLateInnerPathIsAFinding() {
        List<Finding> findings = CuttingOrder.check(nested(), List.of(0, 1, 2, 3));

        assertThat(findings).hasSize(3).allMatch(found -> found.code().equals("inner-path-late"));
        assertThat(findings)
                .anySatisfy(found ->
                        assertThat(found.remedies().get(0).parameters()).containsEntry("path", "2"));
    }

    @Test
    void anIncompleteOrderIsAFinding() {
        List<Finding> findings = CuttingOrder.check(nested(), List.of(2, 2, 1, 0));

        assertThat(findings).extracting(Finding::code).containsExactly("path-repeated", "path-left-out");
        assertThat(CuttingOrder.check(nested(), List.of(2, 1, 0)))
                .singleElement()
                .satisfies(found -> assertThat(found.message().parameters()).containsEntry("path", "3"));
        assertThatExceptionOfType(DomainException.class)
                .isThrownBy(() -> CuttingOrder.check(nested(), List.of(0, 1, 2, 4)));
    }

    @Test
    void pathsWithLeadsAreOrderedByTheirPierces() {
        CuttingRules rules = CuttingRules.of(millimetres(1.1), millimetres(12));
        Part part = Part.of(rectangle(0, 0, 100, 100), circle(50, 50, 15));
        LeadPlacer placer = LeadPlacer.of(part, rules);
        Lead hole = placer.suggest(0);
        Lead outline = placer.suggest(1);

        for (List<Contour> paths : List.of(
                List.of(outline.path(), hole.path()),
                List.of(outline.toolPath().contour(), hole.toolPath().contour()))) {
            List<Integer> order = CuttingOrder.suggest(paths);
            assertThat(order).containsExactly(1, 0);
            double expected = Kind.LENGTH.si(ORIGIN.distance(hole.pierce()))
                    + Kind.LENGTH.si(paths.get(1).end().distance(outline.pierce()));
            assertThat(Kind.LENGTH.si(CuttingOrder.traverse(paths, order, ORIGIN)))
                    .isCloseTo(expected, within(1e-12));
        }
    }

    /** On a square grid the shortest way from the corner visits neighbours only: one pitch a hole. */
    @Test
    void holesOfAGridAreVisitedNeighbourByNeighbour() {
        List<Contour> holes = new ArrayList<>();
        for (int i = 0; i < 8; i++) {
            for (int j = 0; j < 8; j++) {
                holes.add(circle(10 * (i + 1) - 2, 10 * (j + 1), 2));
            }
        }
        Collections.shuffle(holes, new Random(4));

        double travel = Kind.LENGTH.si(CuttingOrder.traverse(holes, CuttingOrder.suggest(holes), ORIGIN));

        double shortest = 0.01 * Math.sqrt(2) + 63 * 0.01;
        assertThat(travel).isBetween(shortest - 1e-9, 1.06 * shortest);
    }

    @Property(tries = 60, seed = "20261127")
    void ordersAreCompleteAndNoExchangeOfTwoNeighboursIsShorter(
            @ForAll long seed, @ForAll @IntRange(min = 1, max = 40) int count) {
        Random random = new Random(seed);
        List<Contour> paths = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            double x = 40 * (i % 7);
            double y = 40 * (i / 7);
            paths.add(circle(x + 20 + 8 * random.nextDouble(), y + 20 + 8 * random.nextDouble(), 2));
            if (random.nextInt(3) == 0) {
                paths.add(rectangle(x + 5, y + 5, x + 38, y + 38));
            }
        }
        List<Integer> order = CuttingOrder.suggest(paths);

        assertThat(CuttingOrder.check(paths, order)).allMatch(Finding::isSatisfied);
        double travel = Kind.LENGTH.si(CuttingOrder.traverse(paths, order, ORIGIN));
        for (int i = 0; i + 1 < order.size(); i++) {
            List<Integer> other = new ArrayList<>(order);
            Collections.swap(other, i, i + 1);
            if (CuttingOrder.check(paths, other).stream().allMatch(Finding::isSatisfied)) {
                assertThat(Kind.LENGTH.si(CuttingOrder.traverse(paths, other, ORIGIN)))
                        .isGreaterThanOrEqualTo(travel - 1e-8);
            }
        }
    }
}

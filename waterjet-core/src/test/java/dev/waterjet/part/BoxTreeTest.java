package dev.waterjet.part;

import static dev.waterjet.measure.Measures.millimetres;
import static org.assertj.core.api.Assertions.assertThat;

import dev.waterjet.quality.EdgeRequirement;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class BoxTreeTest {

    /** Boxes of random places and extents, some of no extent, on both sides of the axes. */
    private static double[] random(Random random, int n) {
        double[] boxes = new double[4 * n];
        for (int i = 0; i < n; i++) {
            boxes[4 * i] = 2 * random.nextDouble() - 1;
            boxes[4 * i + 1] = 3 * random.nextDouble() - 1.5;
            boxes[4 * i + 2] = boxes[4 * i] + (i % 3 == 0 ? 0 : 0.1 * random.nextDouble());
            boxes[4 * i + 3] = boxes[4 * i + 1] + (i % 5 == 0 ? 0 : 0.2 * random.nextDouble());
        }
        return boxes;
    }

    private static List<Integer> found(BoxTree.Walk walk, double x0, double y0, double x1, double y1) {
        List<Integer> found = new ArrayList<>();
        walk.start(x0, y0, x1, y1);
        for (int i = walk.next(); i >= 0; i = walk.next()) {
            found.add(i);
        }
        return found;
    }

    private static List<Integer> meeting(double[] boxes, double x0, double y0, double x1, double y1) {
        return IntStream.range(0, boxes.length / 4)
                .filter(i -> boxes[4 * i] <= x1
                        && boxes[4 * i + 1] <= y1
                        && boxes[4 * i + 2] >= x0
                        && boxes[4 * i + 3] >= y0)
                .boxed()
                .toList();
    }

    /** Numbers about the powers of the sixteen that a box of the tree holds. */
    @ParameterizedTest
    @ValueSource(ints = {0, 1, 2, 15, 16, 17, 31, 32, 33, 255, 256, 257, 300, 4095, 4097})
    void aWalkMeetsTheBoxesThatALoopOverAllMeetsEachOnce(int n) {
        Random random = new Random(n);
        double[] boxes = random(random, n);
        BoxTree.Walk walk = BoxTree.ofSi(boxes).walk();

        assertThat(found(walk, -9, -9, 9, 9)).containsExactlyInAnyOrderElementsOf(meeting(boxes, -9, -9, 9, 9));
        for (int round = 0; round < 8; round++) {
            double x = 2 * random.nextDouble() - 1;
            double y = 3 * random.nextDouble() - 1.5;
            double size = random.nextDouble() * (round % 4 == 0 ? 1 : 0.1);
            assertThat(found(walk, x, y, x + size, y + size / 2))
                    .containsExactlyInAnyOrderElementsOf(meeting(boxes, x, y, x + size, y + size / 2));
        }
    }

    @Test
    void boxesThatTouchTheBorderOrACornerMeetIt() {
        double[] boxes = {0, 0, 1, 1, 1, 1, 2, 2, 2, 0, 3, 1, -1, -1, -0.5, 2};
        BoxTree.Walk walk = BoxTree.ofSi(boxes).walk();

        assertThat(found(walk, 1, 1, 1, 1)).containsExactlyInAnyOrder(0, 1);
        assertThat(found(walk, 2, 1, 5, 5)).containsExactlyInAnyOrder(1, 2);
        assertThat(found(walk, -0.5, 2, 0, 3)).containsExactly(3);
        assertThat(found(walk, -0.49, -2, -0.01, 9)).isEmpty();
        assertThat(found(walk, 0, 2.01, 3, 3)).isEmpty();
        assertThat(found(walk, 0, -3, 3, -0.01)).isEmpty();
    }

    @Test
    void aWalkThatIsNarrowedMeetsNoBoxBeyond() {
        Random random = new Random(4);
        double[] boxes = random(random, 2000);
        BoxTree.Walk walk = BoxTree.ofSi(boxes).walk();
        for (int round = 0; round < 50; round++) {
            double x = random.nextDouble() - 0.5;
            walk.start(-2, -2, 2, 2);
            int first = walk.next();
            walk.narrow(x, -0.1, x + 0.3, 0.4);
            List<Integer> found = new ArrayList<>();
            for (int i = walk.next(); i >= 0; i = walk.next()) {
                found.add(i);
            }
            List<Integer> expected = new ArrayList<>(meeting(boxes, x, -0.1, x + 0.3, 0.4));
            expected.remove(Integer.valueOf(first));
            assertThat(found).containsExactlyInAnyOrderElementsOf(expected);
        }
    }

    @Test
    void walksOfOneTreeDoNotDisturbEachOther() {
        double[] boxes = random(new Random(8), 500);
        BoxTree tree = BoxTree.ofSi(boxes);
        BoxTree.Walk one = tree.walk();
        one.start(-2, -2, 2, 2);
        int count = 0;
        for (int i = one.next(); i >= 0; i = one.next()) {
            count++;
            assertThat(found(tree.walk(), boxes[4 * i], boxes[4 * i + 1], boxes[4 * i + 2], boxes[4 * i + 3]))
                    .contains(i);
        }
        assertThat(count).isEqualTo(500);
    }

    /**
     * Boxes met one after another lie near each other: 4096 points of a square grid in sixteen columns and rows of leaves.
     * The half perimeter of sixteen neighbours is 2 * 3 steps where they form a square; packed by x alone it would be 15.
     */
    @Test
    void sixteenNeighboursFormASquare() {
        int side = 64;
        int n = side * side;
        double[] boxes = new double[4 * n];
        List<Integer> shuffled = new ArrayList<>(IntStream.range(0, n).boxed().toList());
        Collections.shuffle(shuffled, new Random(2));
        for (int i = 0; i < n; i++) {
            int at = shuffled.get(i);
            for (int k = 0; k < 4; k++) {
                boxes[4 * i + k] = k % 2 == 0 ? at % side - 31.5 : at / side - 20;
            }
        }
        List<Integer> order = found(BoxTree.ofSi(boxes).walk(), -99, -99, 99, 99);

        for (int first = 0; first < n; first += 16) {
            double minimumX = 99;
            double minimumY = 99;
            double maximumX = -99;
            double maximumY = -99;
            for (int i : order.subList(first, first + 16)) {
                minimumX = Math.min(minimumX, boxes[4 * i]);
                minimumY = Math.min(minimumY, boxes[4 * i + 1]);
                maximumX = Math.max(maximumX, boxes[4 * i]);
                maximumY = Math.max(maximumY, boxes[4 * i + 1]);
            }
            assertThat(maximumX - minimumX).isEqualTo(3);
            assertThat(maximumY - minimumY).isEqualTo(3);
        }
    }

    @Test
    void boxesOfContoursAreTheirs() {
        Contour triangle = Contour.fromSi(1, 2).lineToSi(4, 3).lineToSi(2, 8).close();
        Contour circle = Contour.circle(Point.ofSi(5, 6), millimetres(2000), EdgeRequirement.defaults());

        assertThat(BoxTree.boxesSi(List.of(triangle, circle))).containsExactly(1, 2, 4, 8, 3, 4, 7, 8);
        assertThat(BoxTree.boxesSi(List.of())).isEmpty();
    }
}

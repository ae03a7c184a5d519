package dev.waterjet.motion;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** The buffer of nodes against a list of records. */
class GridNodesTest {

    private record Node(double place, double cap, int why, double reference, int stretch, boolean isSteady) {}

    private static Node node(GridNodes nodes, int i) {
        assertThat(nodes.solution[i]).isNaN();
        return new Node(
                nodes.placeM[i],
                nodes.capSquare[i],
                nodes.capWhy[i],
                nodes.reference[i],
                nodes.stretch[i],
                nodes.isSteady[i]);
    }

    private static List<Node> all(GridNodes nodes) {
        List<Node> all = new ArrayList<>();
        for (int i = 0; i < nodes.count; i++) {
            all.add(node(nodes, i));
        }
        return all;
    }

    @Test
    void nodesAreAddedCappedHalvedAndDropped() {
        Random random = new Random(9);
        GridNodes nodes = new GridNodes(3);
        List<Node> expected = new ArrayList<>();
        double place = 0;
        for (int round = 0; round < 200; round++) {
            place += 1 + random.nextInt(3);
            double reference = random.nextDouble();
            nodes.add(place, reference, round);
            assertThat(nodes.capSquare[nodes.count - 1]).isInfinite();
            assertThat(nodes.isSteady[nodes.count - 1]).isFalse();
            double cap = random.nextDouble();
            nodes.cap(nodes.count - 1, cap, (byte) 3);
            nodes.cap(nodes.count - 1, cap * 1.1, (byte) 4);
            nodes.cap(nodes.count - 1, cap, (byte) 5);
            nodes.isSteady[nodes.count - 1] = random.nextBoolean();
            expected.add(new Node(place, cap, 3, reference, round, nodes.isSteady[nodes.count - 1]));
            if (round % 7 == 3) {
                int at = random.nextInt(expected.size() - 1);
                nodes.halve(at, 0.25, (byte) 9);
                double middle = (expected.get(at).place() + expected.get(at + 1).place()) / 2;
                expected.add(
                        at + 1, new Node(middle, 0.25, 9, 0.25, expected.get(at).stretch(), false));
            }
            if (round % 11 == 8) {
                int dropped = random.nextInt(expected.size() - 2);
                nodes.drop(dropped);
                expected = new ArrayList<>(expected.subList(dropped, expected.size()));
            }
            assertThat(all(nodes)).isEqualTo(expected);
        }
    }

    @Test
    void aLowerCapReplacesAHigherOne() {
        GridNodes nodes = new GridNodes(2);
        nodes.add(0, 1, 0);
        nodes.cap(0, 5, (byte) 1);
        nodes.cap(0, 4, (byte) 2);

        assertThat(nodes.capSquare[0]).isEqualTo(4);
        assertThat(nodes.capWhy[0]).isEqualTo((byte) 2);
    }

    @Test
    void solutionsMoveWithTheirNodes() {
        GridNodes nodes = new GridNodes(2);
        for (int i = 0; i < 5; i++) {
            nodes.add(i, 1, i);
            nodes.solution[i] = 10 + i;
        }
        nodes.halve(1, 1, (byte) 0);
        assertThat(nodes.solution[1]).isEqualTo(11);
        assertThat(nodes.solution[2]).isNaN();
        assertThat(nodes.solution[3]).isEqualTo(12);
        nodes.drop(4);
        assertThat(nodes.count).isEqualTo(2);
        assertThat(nodes.solution[0]).isEqualTo(13);
        assertThat(nodes.solution[1]).isEqualTo(14);
    }
}

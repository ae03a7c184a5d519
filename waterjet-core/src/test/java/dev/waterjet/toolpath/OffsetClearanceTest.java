package dev.waterjet.toolpath;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.measure.Kind;
import dev.waterjet.part.Contour;
import dev.waterjet.part.ContourBuilder;
import dev.waterjet.part.ContourPlace;
import dev.waterjet.part.EdgeCursor;
import dev.waterjet.part.EdgeTree;
import dev.waterjet.part.Point;
import dev.waterjet.part.Side;
import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The room of the jet beside a contour against distances from all of it. */
class OffsetClearanceTest {

    private static final double OFFSET_M = 0.6e-3;

    /** A chain of lines and half circles from the origin, open. */
    private static Contour chain(long seed) {
        Random random = new Random(seed);
        double x = 0;
        double y = 0;
        ContourBuilder builder = Contour.fromSi(0, 0);
        for (int i = 0; i < 5; i++) {
            double toX = x + (random.nextDouble() - 0.4) * 4e-3;
            double toY = y + (random.nextDouble() - 0.4) * 4e-3;
            if (random.nextInt(3) == 0) {
                Side side = random.nextBoolean() ? Side.LEFT : Side.RIGHT;
                builder.arcToSi(toX, toY, (x + toX) / 2, (y + toY) / 2, side);
            } else {
                builder.lineToSi(toX, toY);
            }
            x = toX;
            y = toY;
        }
        return builder.open();
    }

    private static double[] offsets(Contour contour) {
        double[] offset = new double[contour.size()];
        Arrays.fill(offset, OFFSET_M);
        return offset;
    }

    /** With one offset the jet has room exactly where the contour is no nearer, about the free ends too. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void theJetHasRoomWhereAnOpenContourIsNoNearer(long seed) {
        Contour contour = chain(seed);
        Random random = new Random(seed);
        for (int sign : new int[] {1, -1}) {
            OffsetClearance clearance = new OffsetClearance(EdgeTree.of(contour), sign, offsets(contour), false);
            int end = 0;
            for (int i = 0; i < 4000; i++) {
                Point near = i % 2 == 0 ? contour.start() : contour.end();
                double spread = i % 3 == 0 ? 12e-3 : 3 * OFFSET_M;
                double x = near.xSi() + (random.nextDouble() - 0.5) * spread;
                double y = near.ySi() + (random.nextDouble() - 0.5) * spread;
                double distance = Kind.LENGTH.si(contour.clearance(Point.ofSi(x, y)));
                if (Math.abs(distance - OFFSET_M) > 1e-6) {
                    assertThat(clearance.isClear(x, y)).isEqualTo(distance > OFFSET_M);
                    end += distance > OFFSET_M ? 0 : 1;
                }
            }
            assertThat(end).isGreaterThan(100);
        }
    }

    /** The middle of a stretch halves its length, over joints and over the start of a closed contour. */
    @ParameterizedTest
    @CsvSource({"0.2, 0.7", "0.5, 1.5", "0.9, 3.2", "1, 3", "2.25, 5.5", "3.9, 4.05", "3.2, 6.9", "1.1, 1.2", "0, 4"})
    void theMiddleOfAStretchHalvesItsLength(double from, double to) {
        Contour contour = Contour.fromSi(0, 0)
                .lineToSi(7e-3, 0)
                .arcToSi(7e-3, 4e-3, 7e-3, 2e-3, Side.LEFT)
                .lineToSi(1e-3, 5e-3)
                .lineToSi(0, 0)
                .close();
        double at = along(contour, from);
        double length = along(contour, to) - at;
        OffsetFit fit = new OffsetFit(EdgeTree.of(contour), 1, offsets(contour), 1e-4);
        double[] middle = fit.middle(new OffsetFit.Stretch(from, to, length, 0, false));

        ContourPlace place = contour.placeAtSi(at + length / 2);
        EdgeCursor edge = new EdgeCursor();
        contour.load(place.edge(), edge);
        assertThat(middle[0]).isCloseTo(edge.xAt(place.share()), within(1e-12));
        assertThat(middle[1]).isCloseTo(edge.yAt(place.share()), within(1e-12));
    }

    /** Distance along a contour, in turns beyond its start, of an edge plus share. */
    private static double along(Contour contour, double edgeAndShare) {
        int n = contour.size();
        double sum = 0;
        for (int i = 0; i < Math.floor(edgeAndShare); i++) {
            sum += Kind.LENGTH.si(contour.edge(i % n).length());
        }
        double share = edgeAndShare - Math.floor(edgeAndShare);
        return sum
                + share
                        * Kind.LENGTH.si(
                                contour.edge((int) Math.floor(edgeAndShare) % n).length());
    }
}

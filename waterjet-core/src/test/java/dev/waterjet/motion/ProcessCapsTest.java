package dev.waterjet.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The maximum feed along a path against the slowest of all places within reach, asked one place after the other. */
class ProcessCapsTest {

    private static final double LENGTH = 10;
    private static final FeedLimit[] OF_EDGES = {FeedLimit.QUALITY, FeedLimit.REQUESTED, FeedLimit.LEAD};
    private static final FeedLimit[] OF_SLOWDOWNS = {
        FeedLimit.LAG_AT_INSIDE_CORNER, FeedLimit.LAG_ON_ARC, FeedLimit.SEPARATION
    };

    private static PathPlaces places(Random random, int edges, double reach) {
        PathPlaces places = new PathPlaces();
        double at = 0;
        for (int i = 0; i < edges; i++) {
            double end = i == edges - 1 ? LENGTH : at + (LENGTH - at) * random.nextDouble() / 4;
            // few feeds, so that some are equal
            double feed = 5 + random.nextInt(4);
            if (random.nextInt(3) == 0) {
                Slowdown slowdown = new Slowdown(1 + random.nextInt(6), 0, 1, 2, SlowdownReason.TOLERANCE);
                places.slowdown(at, random.nextBoolean() ? at : end, slowdown, own(random, reach), OF_SLOWDOWNS[i % 3]);
            }
            places.edge(at, end, feed, own(random, reach), OF_EDGES[random.nextInt(3)]);
            at = end;
        }
        return places;
    }

    private static double own(Random random, double reach) {
        return 1e-6 + reach * random.nextDouble() * random.nextDouble();
    }

    /** Slowest feed within reach of a distance. */
    private static double slowest(PathPlaces places, double at) {
        double slowest = Double.POSITIVE_INFINITY;
        for (int i = 0; i < places.count(); i++) {
            if (at >= places.startM(i) - places.reachM(i) && at <= places.endM(i) + places.reachM(i)) {
                slowest = Math.min(slowest, places.feedMPerS(i));
            }
        }
        return slowest;
    }

    /** Whether a code is that of a slowest place, or of the run-in beside an edge of that feed. */
    private static boolean isCause(PathPlaces places, double at, double feed, byte code) {
        for (int i = 0; i < places.count(); i++) {
            boolean isWithin = at >= places.startM(i) && at <= places.endM(i);
            boolean isNear = at >= places.startM(i) - places.reachM(i) && at <= places.endM(i) + places.reachM(i);
            boolean isEdge = places.errorM(i) == PathPlaces.NO_ERROR;
            byte own = isWithin || !isEdge ? places.code(i) : (byte) FeedLimit.FRONT_RECOVERY.processCode();
            if (places.feedMPerS(i) == feed && isNear && own == code) {
                return true;
            }
        }
        return false;
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void theCapIsTheSlowestPlaceWithinReach(long seed) {
        Random random = new Random(seed);
        PathPlaces places = places(random, seed < 3 ? 4 : 60, seed % 2 == 0 ? 0.3 : 6);
        double minimum = seed % 4 == 0 ? 2.5 : 0.1;
        FeedCaps caps = ProcessCaps.of(places, LENGTH, minimum);
        double from = 0;
        for (int i = 0; i < caps.count(); i++) {
            double until = caps.untilM(i);
            assertThat(until).isGreaterThan(from);
            // a place has two distances that differ by rounding, from the start and from the end
            double[] shares = until - from < 1e-12 ? new double[0] : new double[] {1e-9, 0.2, 0.7, 1 - 1e-9};
            for (double share : shares) {
                double at = from + share * (until - from);
                double slowest = slowest(places, at);
                assertThat(caps.feedMPerS(i)).as("at %s", at).isEqualTo(Math.max(slowest, minimum));
                if (slowest < minimum) {
                    assertThat(caps.code(i)).isEqualTo((byte) FeedLimit.MINIMUM_FEED.processCode());
                } else {
                    assertThat(isCause(places, at, slowest, caps.code(i)))
                            .as("at %s", at)
                            .isTrue();
                }
            }
            from = until;
        }
        assertThat(from).isEqualTo(LENGTH);
    }

    @Test
    void insideItsOwnEdgeAFeedIsNoRecovery() {
        PathPlaces places = new PathPlaces();
        places.edge(0, 4, 3, 1, FeedLimit.QUALITY);
        places.edge(4, 6, 2, 1, FeedLimit.QUALITY);
        places.edge(6, 8, 2, 1, FeedLimit.REQUESTED);
        places.edge(8, 10, 3, 1, FeedLimit.LEAD);
        FeedCaps caps = ProcessCaps.of(places, LENGTH, 2);

        assertThat(codes(caps))
                .containsExactly(
                        FeedLimit.QUALITY,
                        FeedLimit.FRONT_RECOVERY,
                        FeedLimit.QUALITY,
                        FeedLimit.REQUESTED,
                        FeedLimit.FRONT_RECOVERY,
                        FeedLimit.LEAD);
        assertThat(caps.untilM(0)).isCloseTo(3, within(1e-12));
        assertThat(caps.untilM(1)).isCloseTo(4, within(1e-12));
        assertThat(caps.untilM(2)).isCloseTo(6, within(1e-12));
        assertThat(caps.untilM(3)).isCloseTo(8, within(1e-12));
        assertThat(caps.untilM(4)).isCloseTo(9, within(1e-12));
    }

    private static FeedLimit[] codes(FeedCaps caps) {
        FeedLimit[] codes = new FeedLimit[caps.count()];
        for (int i = 0; i < codes.length; i++) {
            codes[i] = FeedLimit.ofCode(caps.code(i));
        }
        return codes;
    }

    @Test
    void aPlaceKeepsWhatItWasGiven() {
        PathPlaces places = new PathPlaces();
        for (int i = 0; i < 40; i++) {
            if (i % 2 == 0) {
                places.edge(i, i + 1, 3 + i, 0.5 + i, FeedLimit.LEAD);
            } else {
                places.slowdown(
                        i,
                        i + 0.5,
                        new Slowdown(2 + i, 9, 0.1 * i, 0.2 * i, SlowdownReason.LEAST_ERROR),
                        0.25 + i,
                        FeedLimit.SEPARATION);
            }
        }
        assertThat(places.count()).isEqualTo(40);
        for (int i = 0; i < 40; i++) {
            boolean isEdge = i % 2 == 0;
            assertThat(places.startM(i)).isEqualTo(i);
            assertThat(places.endM(i)).isEqualTo(isEdge ? i + 1 : i + 0.5);
            assertThat(places.feedMPerS(i)).isEqualTo(isEdge ? 3 + i : 2 + i);
            assertThat(places.reachM(i)).isEqualTo(isEdge ? 0.5 + i : 0.25 + i);
            assertThat(places.errorM(i)).isEqualTo(isEdge ? PathPlaces.NO_ERROR : 0.1 * i);
            assertThat(places.toleranceM(i)).isEqualTo(isEdge ? 0 : 0.2 * i);
            assertThat(FeedLimit.ofCode(places.code(i))).isEqualTo(isEdge ? FeedLimit.LEAD : FeedLimit.SEPARATION);
        }
    }
}

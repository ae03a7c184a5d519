package dev.waterjet.simulate;

import static dev.waterjet.measure.Measures.seconds;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.kerf.HeadTilt;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.part.Contour;
import dev.waterjet.part.EdgeCursor;
import dev.waterjet.part.Side;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Nodes along the path of the nozzle against path, feeds and times as they were given. */
class HeadPathTest {

    /** A line of 40 mm, a quarter of a circle of 10 mm, a line of 20 mm back to the left by a sharp corner. */
    private static final Contour PATH = Contour.fromSi(0, 0)
            .lineToSi(40e-3, 0)
            .arcToSi(50e-3, 10e-3, 40e-3, 10e-3, Side.LEFT)
            .lineToSi(30e-3, 10e-3)
            .open();

    private static final double[] PLACES = {0, 13e-3, 45e-3, 60e-3};
    private static final double[] FEEDS = {2e-3, 5e-3, 1e-3, 4e-3};

    private static FeedProfile profile() {
        return FeedProfile.asWritten(
                PATH, QuantityArray.ofSi(Kind.LENGTH, PLACES), QuantityArray.ofSi(Kind.SPEED, FEEDS));
    }

    private static double timeAt(double distance) {
        double sum = 0;
        for (int i = 0; i < PLACES.length && distance > PLACES[i]; i++) {
            double end = i + 1 < PLACES.length ? PLACES[i + 1] : PATH.lengthSi();
            sum += (Math.min(distance, end) - PLACES[i]) / FEEDS[i];
        }
        return sum;
    }

    /** Place and direction at a distance; of the corner the one before. */
    private static double[] placeAt(double distance) {
        EdgeCursor edge = new EdgeCursor();
        double start = 0;
        for (int i = 0; i < PATH.size(); i++) {
            PATH.load(i, edge);
            if (distance <= start + edge.length() + 1e-12 || i == PATH.size() - 1) {
                double share = (distance - start) / edge.length();
                return new double[] {
                    edge.xAt(share), edge.yAt(share), edge.directionXAt(share), edge.directionYAt(share)
                };
            }
            start += edge.length();
        }
        throw new IllegalStateException();
    }

    @Test
    void nodesLieOnThePathAtTheTimesOfTheFeeds() {
        HeadPath head = HeadPath.of(profile());

        assertThat(head.distance[0]).isZero();
        assertThat(head.time[0]).isZero();
        assertThat(head.distance[head.count - 1]).isCloseTo(PATH.lengthSi(), within(1e-15));
        for (int i = 0; i < head.count; i++) {
            double[] place = placeAt(head.distance[i]);
            assertThat(Math.hypot(head.x[i] - place[0], head.y[i] - place[1])).isLessThan(1e-12);
            assertThat(head.time[i]).isCloseTo(timeAt(head.distance[i]), within(1e-9));
            assertThat(Math.hypot(head.directionX[i], head.directionY[i])).isCloseTo(1, within(1e-12));
            if (i > 0 && head.time[i] > head.time[i - 1]) {
                double feed = (head.distance[i] - head.distance[i - 1]) / (head.time[i] - head.time[i - 1]);
                assertThat(head.feed[i - 1]).isCloseTo(feed, within(1e-9));
                assertThat(Math.hypot(head.directionX[i] - place[2], head.directionY[i] - place[3]))
                        .isLessThan(1e-9);
            }
        }
        for (double place : PLACES) {
            assertThat(java.util.Arrays.stream(head.distance, 0, head.count)
                            .anyMatch(at -> Math.abs(at - place) < 1e-12))
                    .isTrue();
        }
    }

    /** A corner gives two nodes at one time and place, with both directions; a smooth joint two alike. */
    @Test
    void aCornerHasBothDirectionsAtOneTime() {
        HeadPath head = HeadPath.of(profile());
        double corner = PATH.lengthSi() - 20e-3;
        int found = 0;
        for (int i = 1; i < head.count; i++) {
            if (head.time[i] == head.time[i - 1] && Math.abs(head.distance[i] - corner) < 1e-12) {
                found++;
                assertThat(head.distance[i]).isEqualTo(head.distance[i - 1]);
                assertThat(head.directionY[i - 1]).isCloseTo(1, within(1e-9));
                assertThat(head.directionX[i]).isCloseTo(-1, within(1e-9));
            }
        }
        assertThat(found).isEqualTo(1);
    }

    /** Lines in steps of 0.15 mm, arcs within half a micrometre; steps begin with 0.02 mm at corners and changes of the feed. */
    @Test
    void nodesAreCloseWhereTheLagChangesAndNotCloserElsewhere() {
        HeadPath head = HeadPath.of(profile());
        double corner = PATH.lengthSi() - 20e-3;
        double[] abrupt = {0, 13e-3, 45e-3, 60e-3, corner, PATH.lengthSi()};
        for (int i = 1; i < head.count; i++) {
            double step = head.distance[i] - head.distance[i - 1];
            double nearest = Double.POSITIVE_INFINITY;
            for (double place : abrupt) {
                nearest = Math.min(nearest, Math.abs(place - (head.distance[i] + head.distance[i - 1]) / 2));
            }
            boolean isArc = head.distance[i] > 40e-3 + 1e-9 && head.distance[i] < corner + 1e-9;
            double most = isArc ? Math.sqrt(8 * 10e-3 * 5e-7) : 0.15e-3;

            assertThat(step).isLessThan(1.5 * most + 1e-12);
            assertThat(step).isLessThan(0.031e-3 + 0.2 * nearest);
            if (nearest > 2.5e-3 && Math.abs(head.distance[i] - 40e-3) > 1e-3) {
                assertThat(step).isGreaterThan(0.99 * most);
            } else if (step > 0) {
                assertThat(step).isGreaterThan(Math.min(0.0099e-3, nearest));
            }
        }
        // some 0.15 mm on 60 mm of lines, 0.2 mm on 16 mm of arc, and 6 places with finer steps on both sides
        assertThat(head.count).isBetween(480, 900);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.05, 0.4, 3, 40})
    void chordsOfArcsDeviateByLessThanTwoMicrometres(double radiusMm) {
        double r = radiusMm * 1e-3;
        Contour arc = Contour.fromSi(r, 0).arcToSi(0, r, 0, 0, Side.LEFT).open();
        HeadPath head = HeadPath.of(FeedProfile.constant(arc, Kind.SPEED.of(1e-3)));
        for (int i = 1; i < head.count; i++) {
            double mx = (head.x[i] + head.x[i - 1]) / 2;
            double my = (head.y[i] + head.y[i - 1]) / 2;
            assertThat(r - Math.hypot(mx, my)).isLessThan(1.2e-6).isLessThan(0.012 * r);
        }
        assertThat(head.distance[head.count - 1]).isCloseTo(Math.PI / 2 * r, within(1e-12));
    }

    @Test
    void dwellsAreTwoNodesAtOnePlace() {
        HeadPath head = HeadPath.of(profile().withStartDwell(seconds(7)).withEndDwell(seconds(5)));
        int last = head.count - 1;

        assertThat(head.time[1] - head.time[0]).isEqualTo(7);
        assertThat(head.distance[1]).isZero();
        assertThat(head.feed[0]).isZero();
        assertThat(head.time[last] - head.time[last - 1]).isCloseTo(5, within(1e-12));
        assertThat(head.distance[last]).isEqualTo(head.distance[last - 1]);
        assertThat(head.x[last]).isCloseTo(30e-3, within(1e-12));
        assertThat(head.y[last]).isCloseTo(10e-3, within(1e-12));
        assertThat(head.time[last]).isCloseTo(12 + timeAt(PATH.lengthSi()), within(1e-9));
        assertThat(head.motion().waySi(6.9)).isZero();
        assertThat(head.motion().endSi()).isCloseTo(head.time[last], within(1e-12));
        FootSegments segments = head.segments();
        assertThat(segments.length[0]).isZero();
        assertThat(segments.pace[0]).isEqualTo(7);
        assertThat(segments.length[segments.count - 1]).isZero();
        assertThat(segments.pace[segments.count - 1]).isCloseTo(5, within(1e-12));
    }

    @Test
    void theMotionIsThatOfTheNodes() {
        HeadPath rest = HeadPath.of(profile());
        HeadPath running = HeadPath.of(profile().afterSteadyFeed());
        for (int i = 0; i < rest.count; i++) {
            assertThat(rest.motion().waySi(rest.time[i])).isCloseTo(rest.distance[i], within(1e-12));
        }
        assertThat(rest.motion().waySi(-3)).isZero();
        assertThat(running.motion().waySi(-3)).isCloseTo(-6e-3, within(1e-15));
    }

    @Test
    void segmentsTakeTheTimeAndLengthOfThePath() {
        FootSegments segments = HeadPath.of(profile()).segments();
        double time = 0;
        double length = 0;
        for (int k = 0; k < segments.count; k++) {
            time += segments.pace[k] * segments.length[k];
            length += segments.length[k];
        }
        assertThat(time).isCloseTo(timeAt(PATH.lengthSi()), within(1e-9));
        // chords of the arc are shorter by a part of 24 times the square of the turn of each
        assertThat(length).isCloseTo(PATH.lengthSi(), within(2e-6)).isLessThan(PATH.lengthSi());
    }

    /** A head that leans to the left by 0.05 and ahead by 0.2 of the depth leans so in the direction of each node. */
    @Test
    void aConstantTiltTurnsWithThePath() {
        HeadPath head = HeadPath.of(profile(), 0.05, -0.2);
        for (int i = 0; i < head.count; i++) {
            double ahead = head.tiltX[i] * head.directionX[i] + head.tiltY[i] * head.directionY[i];
            double left = head.directionX[i] * head.tiltY[i] - head.directionY[i] * head.tiltX[i];
            assertThat(ahead).isCloseTo(-0.2, within(1e-12));
            assertThat(left).isCloseTo(0.05, within(1e-12));
        }
        assertThat(head.isTilted()).isTrue();
        assertThat(head.largestTilt()).isCloseTo(Math.hypot(0.05, 0.2), within(1e-12));
        assertThat(HeadPath.of(profile(), 0, 0).isTilted()).isFalse();
        assertThat(HeadPath.of(profile(), 0, 0).largestTilt()).isZero();
        assertThat(HeadPath.of(profile(), 0.1, 0).largestTilt()).isCloseTo(0.1, within(1e-12));
        assertThat(HeadPath.of(profile(), 0, 0.1).largestTilt()).isCloseTo(0.1, within(1e-12));
    }

    @Test
    void aTiltOfTheProfileComesBeforeAConstantOne() {
        FeedProfile tilted = profile()
                .withTilts(
                        QuantityArray.ofSi(Kind.LENGTH, 10e-3, 50e-3),
                        List.of(HeadTilt.ofSi(0, 0.1), HeadTilt.ofSi(0.2, 0.1)));
        HeadPath head = HeadPath.of(tilted, 0.5, 0.5);
        for (int i = 0; i < head.count; i++) {
            double share = Math.max(0, Math.min(1, (head.distance[i] - 10e-3) / 40e-3));
            assertThat(head.tiltX[i]).isCloseTo(0.2 * share, within(1e-12));
            assertThat(head.tiltY[i]).isCloseTo(0.1, within(1e-12));
        }
    }

    /** Only nodes in the disc, with a break where others are missing before. */
    @Test
    void thePathNearAPlaceHasItsNodesAndMotion() {
        HeadPath head = HeadPath.of(profile(), 0.05, 0.1);
        double radius = 22e-3;
        HeadPath near = head.near(45e-3, 5e-3, radius);
        int k = 0;
        int breaks = 0;
        boolean isBefore = false;
        for (int i = 0; i < head.count; i++) {
            boolean isNear = Math.hypot(head.x[i] - 45e-3, head.y[i] - 5e-3) <= radius;
            if (isNear) {
                assertThat(near.distance[k]).isEqualTo(head.distance[i]);
                assertThat(near.time[k]).isEqualTo(head.time[i]);
                assertThat(near.x[k]).isEqualTo(head.x[i]);
                assertThat(near.y[k]).isEqualTo(head.y[i]);
                assertThat(near.directionX[k]).isEqualTo(head.directionX[i]);
                assertThat(near.directionY[k]).isEqualTo(head.directionY[i]);
                assertThat(near.feed[k]).isEqualTo(head.feed[i]);
                assertThat(near.tiltX[k]).isEqualTo(head.tiltX[i]);
                assertThat(near.tiltY[k]).isEqualTo(head.tiltY[i]);
                assertThat(near.isBreak[k]).isEqualTo(!isBefore);
                breaks += isBefore ? 0 : 1;
                k++;
            }
            isBefore = isNear;
        }
        assertThat(k).isGreaterThan(256);
        assertThat(near.count).isEqualTo(k);
        assertThat(breaks).isEqualTo(1);
        assertThat(near.motion()).isSameAs(head.motion());
        assertThat(HeadPath.of(profile()).near(0, 0, 1e-3).isTilted()).isFalse();
        assertThat(head.near(40e-3, 5e-3, 4e-3).count).isZero();
    }

    @Test
    void pathsAbove100MetresHaveWiderSteps() {
        assertThat(HeadPath.coarsening(0.1)).isEqualTo(1);
        assertThat(HeadPath.coarsening(100)).isEqualTo(1);
        assertThat(HeadPath.coarsening(300)).isEqualTo(3);
    }

    /** On a large arc, whose chords hardly deviate, steps are four times as long as on a line. */
    @Test
    void largeArcsHaveStepsOfFourTimesALine() {
        Contour arc = Contour.fromSi(1, 0)
                .arcToSi(Math.cos(0.1), Math.sin(0.1), 0, 0, Side.LEFT)
                .open();
        HeadPath head = HeadPath.of(FeedProfile.constant(arc, Kind.SPEED.of(1e-3)));
        double most = 0;
        for (int i = 1; i < head.count; i++) {
            most = Math.max(most, head.distance[i] - head.distance[i - 1]);
        }
        assertThat(most).isBetween(0.599e-3, 0.901e-3);
    }
}

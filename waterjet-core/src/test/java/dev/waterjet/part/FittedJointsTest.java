package dev.waterjet.part;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.measure.Kind;
import dev.waterjet.quality.CutQuality;
import dev.waterjet.quality.EdgeRequirement;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Chains of lines and arcs in chords: the pieces are those lines and arcs again, and meet where these met. */
class FittedJointsTest {

    /** Samples of a chain; joints hold the index of the sample at which each stretch ends. */
    private static final class Chain {
        final List<double[]> points = new ArrayList<>();
        final List<Integer> joints = new ArrayList<>();
        private double x;
        private double y;
        private double heading;

        Chain(double heading) {
            this.heading = heading;
            points.add(new double[] {0, 0});
        }

        Chain line(double length, int samples) {
            return stretch(length, 0, samples);
        }

        Chain arc(double radius, double sweep, int samples) {
            return stretch(radius * Math.abs(sweep), Math.signum(sweep) / radius, samples);
        }

        Chain corner(double turn) {
            heading += turn;
            return this;
        }

        private Chain stretch(double length, double curvature, int samples) {
            double step = length / samples;
            for (int i = 0; i < samples; i++) {
                double turn = step * curvature;
                double chord = turn == 0 ? step : 2 / curvature * Math.sin(turn / 2);
                x += chord * Math.cos(heading + turn / 2);
                y += chord * Math.sin(heading + turn / 2);
                heading += turn;
                points.add(new double[] {x, y});
            }
            joints.add(points.size() - 1);
            return this;
        }

        Contour open() {
            return drawn(points).open();
        }

        /** The closed chain from one of its samples on. */
        Contour closed(int start) {
            List<double[]> round = new ArrayList<>(points.subList(start, points.size() - 1));
            round.addAll(points.subList(0, start));
            return drawn(round).close();
        }

        private static ContourBuilder drawn(List<double[]> points) {
            ContourBuilder builder = Contour.fromSi(points.get(0)[0], points.get(0)[1]);
            points.subList(1, points.size()).forEach(p -> builder.lineToSi(p[0], p[1]));
            return builder;
        }
    }

    private static ConditionedContour fitted(Contour contour) {
        return ContourConditioner.defaults().condition(contour);
    }

    /** Pieces replace all edges in turn, begin with the one that holds the first edge, and end on vertices. */
    static void assertCovers(ConditionedContour fitted) {
        Contour source = fitted.source();
        Contour pieces = fitted.contour();
        int n = source.size();
        int covered = 0;
        for (int k = 0; k < pieces.size(); k++) {
            int first = fitted.firstSourceEdge(k);
            int last = fitted.lastSourceEdge(k);
            int after = fitted.firstSourceEdge((k + 1) % pieces.size());
            assertThat(after).isEqualTo((last + 1) % n);
            covered += Math.floorMod(last - first, n) + 1;
            assertThat(pieces.xSi(k)).isEqualTo(source.xSi(first));
            assertThat(pieces.ySi(k)).isEqualTo(source.ySi(first));
            assertThat(pieces.requirement(k)).isEqualTo(source.requirement(first));
        }
        assertThat(covered).isEqualTo(n);
        assertThat(fitted.lastSourceEdge(0)).isGreaterThanOrEqualTo(0);
        boolean holdsFirst = fitted.firstSourceEdge(0) == 0 || fitted.lastSourceEdge(0) < fitted.firstSourceEdge(0);
        assertThat(holdsFirst).isTrue();
        assertThat(pieces.isClosed()).isEqualTo(source.isClosed());
        assertThat(pieces.end()).isEqualTo(source.isClosed() ? pieces.start() : source.end());
    }

    @ParameterizedTest
    @CsvSource({"0.01, 40, 7", "0.003, 60, 1", "0.05, 90, 12", "0.004, 25, 3", "0.02, 400, 90"})
    void aSlotIsTwoLinesAndTwoArcsAlsoIfItStartsWithinALineOrHalfWayRound(double radius, int ofArc, int ofLine) {
        Chain chain = new Chain(0.3)
                .line(0.03, ofLine)
                .arc(radius, Math.PI, ofArc)
                .line(0.03, ofLine)
                .arc(radius, Math.PI, ofArc);
        int n = chain.points.size() - 1;
        for (int start = 0; start < n; start++) {
            int within = start % (n / 2) - ofLine;
            boolean isTried = (within <= 0 && start % Math.max(1, ofLine / 5) == 0) || within == ofArc / 2;
            for (boolean isReversed : isTried ? new boolean[] {false, true} : new boolean[0]) {
                Contour contour = chain.closed(start);
                ConditionedContour fitted = fitted(isReversed ? contour.reversed() : contour);
                assertCovers(fitted);
                assertThat(fitted.contour().size()).as("from %s", start).isEqualTo(4);
                int arcs = 0;
                for (int k = 0; k < 4; k++) {
                    Edge piece = fitted.contour().edge(k);
                    int end = isReversed ? n - 1 - fitted.lastSourceEdge(k) : fitted.lastSourceEdge(k) + 1;
                    int at = (end + start) % n;
                    // the joint lies on the sample at which line and arc touch
                    assertThat(chain.joints.stream().map(joint -> joint % n)).contains(at);
                    if (piece.isArc()) {
                        arcs++;
                        assertThat(Kind.LENGTH.si(piece.radius().orElseThrow())).isCloseTo(radius, within(1e-8));
                        assertThat(Kind.ANGLE.si(piece.sweep()))
                                .isCloseTo(isReversed ? -Math.PI : Math.PI, within(10e-6 / radius));
                        assertThat(fitted.isCorner(k)).isFalse();
                        assertThat(fitted.isSmooth(k)).isTrue();
                    }
                }
                assertThat(arcs).isEqualTo(2);
                assertThat(Kind.AREA.si(fitted.contour().signedArea()))
                        .isCloseTo(
                                (isReversed ? -1 : 1) * (0.06 * radius + Math.PI * radius * radius),
                                within(20e-6 * radius));
            }
        }
    }

    /** Near the joint of an arc the start is one more joint at most, and the others lie within the vagueness of the tangent. */
    @ParameterizedTest
    @CsvSource({"0.01, 40, 7", "0.003, 60, 1", "0.02, 400, 90"})
    void aSlotThatStartsWithinAnArcHasOnePieceMoreAtMost(double radius, int ofArc, int ofLine) {
        Chain chain = new Chain(0.3)
                .line(0.03, ofLine)
                .arc(radius, Math.PI, ofArc)
                .line(0.03, ofLine)
                .arc(radius, Math.PI, ofArc);
        int n = chain.points.size() - 1;
        double vague = Math.sqrt(2 * 5e-6 * radius) + Math.PI * radius / ofArc;
        for (int start = ofLine + 1; start < ofLine + ofArc; start += 1 + ofArc / 25) {
            ConditionedContour fitted = fitted(chain.closed(start));
            assertCovers(fitted);
            assertThat(fitted.contour().size()).isBetween(4, 5);
            for (int joint : chain.joints) {
                double least = 9;
                for (int k = 0; k < fitted.contour().size(); k++) {
                    double[] at = chain.points.get((fitted.firstSourceEdge(k) + start) % n);
                    double[] touch = chain.points.get(joint);
                    least = Math.min(least, Math.hypot(at[0] - touch[0], at[1] - touch[1]));
                }
                assertThat(least).isLessThan(vague);
            }
        }
    }

    /** Without a corner nothing marks the start; a full circle in chords is one arc, from any of them and in both directions. */
    @ParameterizedTest
    @ValueSource(ints = {0, 1, 17, 50, 99})
    void aCircleIsOneArcWhereverItStarts(int start) {
        Chain chain = new Chain(1).arc(0.015, 2 * Math.PI, 100);
        ConditionedContour left = fitted(chain.closed(start));
        ConditionedContour right = fitted(chain.closed(start).reversed());

        assertCovers(left);
        assertCovers(right);
        assertThat(Kind.ANGLE.si(left.contour().edge(0).sweep())).isCloseTo(2 * Math.PI, within(1e-12));
        assertThat(Kind.ANGLE.si(right.contour().edge(0).sweep())).isCloseTo(-2 * Math.PI, within(1e-12));
        assertThat(left.contour().size()).isEqualTo(1);
        assertThat(right.contour().size()).isEqualTo(1);
    }

    @Test
    void aContourWithCornersIsCutThereWhereverItStarts() {
        // a quarter disc with one long side in five chords: corners of 90 degrees at its middle and both ends of the
        // arc
        Chain chain = new Chain(0)
                .line(0.02, 5)
                .corner(Math.PI / 2)
                .arc(0.02, Math.PI / 2, 60)
                .corner(Math.PI / 2)
                .line(0.02, 4)
                .corner(Math.PI / 2);
        int n = chain.points.size() - 1;
        for (int start = 0; start < n; start++) {
            for (boolean isReversed : new boolean[] {false, true}) {
                Contour contour = chain.closed(start);
                ConditionedContour fitted = fitted(isReversed ? contour.reversed() : contour);
                assertCovers(fitted);
                assertThat(fitted.contour().size()).isEqualTo(3);
                for (int k = 0; k < 3; k++) {
                    assertThat(fitted.isCorner(k)).isTrue();
                    assertThat(fitted.isSmooth(k)).isFalse();
                    Edge piece = fitted.contour().edge(k);
                    int edges = Math.floorMod(fitted.lastSourceEdge(k) - fitted.firstSourceEdge(k), n) + 1;
                    assertThat(edges).isEqualTo(piece.isArc() ? 60 : edges == 5 ? 5 : 4);
                    assertThat(Kind.LENGTH.si(piece.length()))
                            .isCloseTo(piece.isArc() ? 0.01 * Math.PI : 0.02, within(1e-9));
                }
                assertThat(fitted.isCorner(3)).isTrue();
            }
        }
    }

    @ParameterizedTest
    @CsvSource({"0.005, 0.02, 30, 8", "0.02, 0.005, 50, 3", "0.01, 0.01, 80, 1", "0.004, 0.05, 45, 20"})
    void anOpenChainHasItsJointsWhereLinesAndArcsTouch(double one, double other, int ofArc, int ofLine) {
        for (int turn = -1; turn <= 1; turn += 2) {
            Chain chain = new Chain(2)
                    .line(0.02, ofLine)
                    .arc(one, turn * 1.3, ofArc)
                    .line(0.015, ofLine)
                    .arc(other, -turn * 2.0, 2 * ofArc)
                    .line(0.03, ofLine);
            for (Contour contour : new Contour[] {chain.open(), chain.open().reversed()}) {
                ConditionedContour fitted = fitted(contour);
                assertCovers(fitted);
                assertThat(fitted.contour().size()).isEqualTo(5);
                List<Integer> ends = new ArrayList<>();
                for (int k = 0; k < 5; k++) {
                    ends.add(fitted.lastSourceEdge(k) + 1);
                    assertThat(fitted.contour().isArc(k)).isEqualTo(k % 2 == 1);
                }
                int n = contour.size();
                List<Integer> expected = contour.start().equals(Point.ofSi(0, 0))
                        ? chain.joints
                        : Arrays.asList(
                                n - chain.joints.get(3),
                                n - chain.joints.get(2),
                                n - chain.joints.get(1),
                                n - chain.joints.get(0),
                                n);
                assertThat(ends).isEqualTo(expected);
                assertThat(Kind.LENGTH.si(fitted.maximumDeviation())).isLessThan(21e-6);
            }
        }
    }

    /** Coordinates rounded or scattered: a joint is as sharp as the circle leaves its tangent, by e over sqrt(2 e R). */
    @ParameterizedTest
    @ValueSource(doubles = {0.1, 0.5, 1, 2})
    void scatteredSamplesMoveTheJointsByNoMoreThanTheTangentIsVague(double scatterUm) {
        Random random = new Random(7);
        for (int round = 0; round < 20; round++) {
            double radius = 0.004 + 0.02 * random.nextDouble();
            Chain chain = new Chain(6 * random.nextDouble())
                    .line(0.02, 40)
                    .arc(radius, 1.8, 60)
                    .line(0.02, 40);
            chain.points.forEach(p -> {
                p[0] += 1e-6 * scatterUm * (random.nextDouble() - 0.5);
                p[1] += 1e-6 * scatterUm * (random.nextDouble() - 0.5);
            });
            ConditionedContour fitted = fitted(chain.open());
            assertCovers(fitted);
            assertThat(fitted.contour().size()).isEqualTo(3);
            double vague = Math.sqrt(2 * (2e-6 * scatterUm) * radius) + radius * 1.8 / 60;
            for (int k = 0; k < 2; k++) {
                double[] joint = chain.points.get(chain.joints.get(k));
                assertThat(Math.hypot(
                                fitted.contour().xSi(k + 1) - joint[0],
                                fitted.contour().ySi(k + 1) - joint[1]))
                        .isLessThan(vague);
            }
            assertThat(Kind.LENGTH.si(fitted.contour().edge(1).radius().orElseThrow()))
                    .isCloseTo(radius, within(radius * 0.003 * scatterUm + 1e-9));
        }
    }

    @Test
    void whereTheRequirementChangesAPieceEnds() {
        EdgeRequirement fine = EdgeRequirement.of(CutQuality.FINE);
        for (boolean isClosed : new boolean[] {false, true}) {
            Chain chain = new Chain(0)
                    .line(0.03, 10)
                    .arc(0.01, Math.PI, 40)
                    .line(0.03, 10)
                    .arc(0.01, Math.PI, 40);
            ContourBuilder builder = Contour.fromSi(0, 0);
            for (int i = 1; i < chain.points.size(); i++) {
                // changes within the first line, within the first arc, and one chord before the second arc ends
                boolean isFine = (i > 4 && i <= 30) || i == 100;
                builder.requirement(isFine ? fine : EdgeRequirement.defaults());
                double[] p = i == 100 ? chain.points.get(0) : chain.points.get(i);
                builder.lineToSi(p[0], p[1]);
            }
            ConditionedContour fitted = fitted(isClosed ? builder.close() : builder.open());
            assertCovers(fitted);
            List<Integer> first = new ArrayList<>();
            for (int k = 0; k < fitted.contour().size(); k++) {
                first.add(fitted.firstSourceEdge(k));
            }
            assertThat(first).containsExactly(0, 4, 10, 30, 50, 60, 99);
            assertThat(fitted.contour().requirements()).contains(fine);
        }
    }
}

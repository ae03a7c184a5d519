package dev.waterjet.simulate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.kerf.CutFront;
import dev.waterjet.kerf.KerfProfile;
import dev.waterjet.kerf.LagModel;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

/** Doses and walls against what must hold for every path. */
class DosePropertiesTest {

    private static final double H = 0.02;
    private static final KerfProfile PROFILE = profile(1.15);
    private static final double FEED = PROFILE.front().separationFeedSi(3 * H);

    static KerfProfile profile(double exponent) {
        CutFront front = CutFront.powerLaw(LagModel.standard(), H, exponent, 0.03 * Math.pow(1e-3, 1 / exponent));
        return KerfProfile.ofSi(front, 0.25e-3, 0.54e-3, Math.tan(Math.toRadians(1.38)));
    }

    private static DoseField field(FootSegments segments, double depth) {
        DoseField field = new DoseField(PROFILE, segments);
        field.at(depth);
        return field;
    }

    private static double wall(FootSegments segments, double depth, double... line) {
        WallSearch search = new WallSearch(field(segments, depth), 1e-16);
        assertThat(search.find(line[0], line[1], line[2], line[3], -3e-3, 0)).isTrue();
        return -search.wallM;
    }

    @Property(tries = 200, seed = "101")
    void aUniformStraightPathLeavesTheStraightWallInAnyDirectionAndSplitting(
            @ForAll @DoubleRange(min = 0.02, max = 1) double depthShare,
            @ForAll @DoubleRange(min = -3, max = 3) double direction,
            @ForAll @IntRange(min = 1, max = 60) int pieces,
            @ForAll long seed) {
        Random random = new Random(seed);
        double c = Math.cos(direction);
        double s = Math.sin(direction);
        FootSegments segments = new FootSegments(4);
        double at = -0.02;
        for (int i = 0; i < pieces; i++) {
            double to = i == pieces - 1 ? 0.02 : Math.min(0.02, at + 0.08 * random.nextDouble() / pieces);
            if (to > at) {
                segments.add(at * c, at * s, to * c, to * s, (to - at) / FEED, i);
            }
            at = to;
        }
        double depth = depthShare * H;

        assertThat(wall(segments, depth, 0, 0, s, -c)).isCloseTo(PROFILE.halfWidthSi(depth, FEED), within(1e-12));
    }

    @Test
    void theDoseOverThePlaneIsThatOfTheTimeWithTheJetOn() {
        FootSegments segments = new FootSegments(4);
        segments.add(0, 0, 2e-3, 0, 3, 0);
        segments.add(2e-3, 0, 2.5e-3, 1e-3, 4, 1);
        segments.add(2.5e-3, 1e-3, 2.5e-3, 1e-3, 2, 2);
        DoseField field = field(segments, H);
        double cell = 0.05e-3;
        double sum = 0;
        for (double x = -2.5e-3; x < 5e-3; x += cell) {
            for (double y = -2.5e-3; y < 4e-3; y += cell) {
                field.evaluate(x, y);
                sum += field.dose * cell * cell;
            }
        }

        double expected = Math.sqrt(2 * Math.PI) * PROFILE.spreadSi() * 9;
        // what lies beyond the reach of six spreads is left out
        assertThat(sum).isCloseTo(expected, within(3e-8 * expected));
    }

    @Property(tries = 100, seed = "102")
    void aRotatedOrMirroredPathLeavesTheSameDose(
            @ForAll @DoubleRange(min = -3, max = 3) double angle, @ForAll boolean isMirrored, @ForAll long seed) {
        Random random = new Random(seed);
        double sign = isMirrored ? -1 : 1;
        double c = Math.cos(angle);
        double s = Math.sin(angle);
        FootSegments plain = new FootSegments(8);
        FootSegments moved = new FootSegments(8);
        double x = 0;
        double y = 0;
        for (int i = 0; i < 6; i++) {
            double toX = x + 1e-3 * random.nextDouble();
            double toY = y + 1e-3 * (random.nextDouble() - 0.5);
            double time = random.nextDouble();
            plain.add(x, y, toX, toY, time, i);
            moved.add(
                    c * x - s * sign * y,
                    s * x + c * sign * y,
                    c * toX - s * sign * toY,
                    s * toX + c * sign * toY,
                    time,
                    i);
            x = toX;
            y = toY;
        }
        double atX = 2e-3 * random.nextDouble();
        double atY = 0.5e-3 * (random.nextDouble() - 0.5);
        DoseField before = field(plain, H);
        DoseField after = field(moved, H);
        before.evaluate(atX, atY);
        after.evaluate(c * atX - s * sign * atY, s * atX + c * sign * atY);

        assertThat(after.dose).isCloseTo(before.dose, within(2e-7 * before.dose + 1e-6));
        assertThat(after.distanceM).isCloseTo(before.distanceM, within(1e-15));
    }

    @Property(tries = 50, seed = "103")
    void aNozzleThatStandsNeverCutsBeyondItsJet(
            @ForAll @DoubleRange(min = 0.1, max = 1000) double dwell,
            @ForAll @DoubleRange(min = 1.1, max = 50) double longer,
            @ForAll @DoubleRange(min = 0.05, max = 1) double depthShare) {
        double depth = depthShare * H;
        double width = widthOfDwell(dwell, depth);
        double wider = widthOfDwell(dwell * longer, depth);

        assertThat(width).isLessThanOrEqualTo(wider);
        assertThat(wider).isLessThanOrEqualTo(PROFILE.jetRadiusSi(depth));
    }

    private static double widthOfDwell(double dwell, double depth) {
        FootSegments segments = new FootSegments(2);
        segments.add(0, 0, 0, 0, dwell, 0);
        segments.add(0, 0, 0.02, 0, 0.02 / FEED, 1);
        return wall(segments, depth, 0, 0, 0, -1);
    }

    @Property(tries = 30, seed = "104")
    void theDoseOfManyChordsIsThatOfTheCircle(
            @ForAll @DoubleRange(min = 0.3, max = 5) double radiusMm,
            @ForAll @DoubleRange(min = -0.6, max = 0.6) double offMm) {
        double radius = radiusMm * 1e-3;
        double at = Math.max(0, radius + offMm * 1e-3);
        double error = Math.abs(chords(radius, at, 200) - DoseKernel.circle(radius, FEED, at, 0.25e-3));
        double finer = Math.abs(chords(radius, at, 400) - DoseKernel.circle(radius, FEED, at, 0.25e-3));

        assertThat(finer).isLessThan(error / 3.5 + 1e-5);
    }

    private static double chords(double radius, double at, int n) {
        FootSegments segments = new FootSegments(n);
        double time = 2 * Math.PI * radius / FEED / n;
        for (int i = 0; i < n; i++) {
            double a = 2 * Math.PI * (i + 0.5) / n;
            double b = 2 * Math.PI * (i + 1.5) / n;
            segments.add(
                    radius * Math.cos(a), radius * Math.sin(a), radius * Math.cos(b), radius * Math.sin(b), time, i);
        }
        DoseField field = field(segments, H);
        field.evaluate(at, 0);
        return field.dose;
    }

    /** Abramowitz, Stegun (1964), table 9.8: exp(-x) I0(x), read from memory; the last figure printed is the tolerance. */
    @Test
    void theBesselFunctionIsThatOfTheTable() {
        assertThat(DoseKernel.scaledBesselI0(1)).isCloseTo(0.4657596, within(1e-7));
        assertThat(DoseKernel.scaledBesselI0(2)).isCloseTo(0.3085083, within(1e-7));
        assertThat(DoseKernel.scaledBesselI0(5)).isCloseTo(0.1835408, within(1e-7));
        assertThat(DoseKernel.scaledBesselI0(39.999_999))
                .isCloseTo(DoseKernel.scaledBesselI0(40.000_001), within(3e-9));
    }
}

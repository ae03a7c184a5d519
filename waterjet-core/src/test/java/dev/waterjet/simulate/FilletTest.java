package dev.waterjet.simulate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.measure.Kind;
import dev.waterjet.part.Contour;
import dev.waterjet.part.ContourBuilder;
import dev.waterjet.part.EdgeCursor;
import dev.waterjet.part.Point;
import dev.waterjet.part.Side;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The circle of the jet in a re-entrant corner touches both edges, lines and arcs, at any angle. */
class FilletTest {

    private static final double RADIUS_M = 0.4e-3;

    /** Two edges of 20 mm that meet at the origin: the contour turns left there, so that a path on the left is re-entrant. */
    private static Contour corner(Random random) {
        double from = 2 * Math.PI * random.nextDouble();
        double to = from + Math.PI - (0.2 + 2.6 * random.nextDouble());
        Point start = Point.ofSi(-0.02 * Math.cos(from), -0.02 * Math.sin(from));
        Point end = Point.ofSi(0.02 * Math.cos(to), 0.02 * Math.sin(to));
        ContourBuilder builder = Contour.from(start);
        draw(builder, start, Point.ofSi(0, 0), random);
        draw(builder, Point.ofSi(0, 0), end, random);
        return builder.open();
    }

    private static void draw(ContourBuilder builder, Point from, Point to, Random random) {
        double bulge = random.nextBoolean() ? 0.1 * (random.nextDouble() - 0.5) : 0;
        if (Math.abs(bulge) > 1e-3) {
            double dx = to.xSi() - from.xSi();
            double dy = to.ySi() - from.ySi();
            builder.arcThrough(Point.ofSi(from.xSi() + dx / 2 - bulge * dy, from.ySi() + dy / 2 + bulge * dx), to);
        } else {
            builder.lineTo(to);
        }
    }

    @Test
    void theCircleTouchesBothEdges() {
        int met = 0;
        for (int seed = 0; seed < 500; seed++) {
            Contour contour = corner(new Random(seed));
            EdgeCursor first = new EdgeCursor();
            EdgeCursor second = new EdgeCursor();
            contour.load(0, first);
            contour.load(1, second);
            double turn = second.turnFrom(first);
            if (turn < 0.05 || turn > 3) {
                continue;
            }
            Fillet fillet = Fillet.of(contour, 0, 1, 1, RADIUS_M);
            double shareFirst = 1 - fillet.before() / first.length();
            double shareSecond = fillet.after() / second.length();
            met++;

            assertThat(first.distance(fillet.centreX(), fillet.centreY())).isCloseTo(RADIUS_M, within(1e-10));
            assertThat(second.distance(fillet.centreX(), fillet.centreY())).isCloseTo(RADIUS_M, within(1e-10));
            assertThat(Math.hypot(
                            first.xAt(shareFirst) + RADIUS_M * fillet.normalX() - fillet.centreX(),
                            first.yAt(shareFirst) + RADIUS_M * fillet.normalY() - fillet.centreY()))
                    .isLessThan(1e-10);
            double angle = Math.atan2(fillet.normalY(), fillet.normalX()) + fillet.turn();
            assertThat(Math.hypot(
                            second.xAt(shareSecond) + RADIUS_M * Math.cos(angle) - fillet.centreX(),
                            second.yAt(shareSecond) + RADIUS_M * Math.sin(angle) - fillet.centreY()))
                    .isLessThan(1e-10);
        }
        assertThat(met).isGreaterThan(300);
    }

    /** Points of a map lie on the part, or on the fillet in front of the corner that no jet reaches. */
    @Test
    void noPointLiesFartherFromThePartThanTheFillet() {
        for (int seed = 0; seed < 100; seed++) {
            Contour contour = corner(new Random(seed));
            double[] offset = {RADIUS_M, RADIUS_M};
            ContourPoints points = new ContourPoints(contour, 1, ContourPoints.Spacing.even(1e-4), offset);
            for (int i = 0; i < points.count; i++) {
                Point nozzle = Point.ofSi(
                        points.x[i] + RADIUS_M * points.normalX[i], points.y[i] + RADIUS_M * points.normalY[i]);

                assertThat(Kind.LENGTH.si(contour.clearance(nozzle)))
                        .as("seed %d point %d", seed, i)
                        .isGreaterThan(RADIUS_M - 1e-9);
            }
        }
    }

    /** Edges too short for a circle that touches them: it touches their tangents, as beside longer edges. */
    @ParameterizedTest
    @CsvSource({"0.1, 0.1, 1.2, 1", "0.3, 0.05, 2.4, 1", "0.05, 0.2, 0.4, -1", "0.02, 0.02, 3, -1"})
    void beyondShortEdgesTheCircleTouchesTheirTangents(double firstMm, double secondMm, double turn, int sign) {
        for (double direction = -3; direction < 3; direction += 0.7) {
            double after = direction + sign * turn;
            Contour contour = Contour.fromSi(
                            0.1 - firstMm * 1e-3 * Math.cos(direction), -0.2 - firstMm * 1e-3 * Math.sin(direction))
                    .lineToSi(0.1, -0.2)
                    .lineToSi(0.1 + secondMm * 1e-3 * Math.cos(after), -0.2 + secondMm * 1e-3 * Math.sin(after))
                    .open();
            Fillet fillet = Fillet.of(contour, 0, 1, sign, RADIUS_M);
            double x = fillet.centreX() - 0.1;
            double y = fillet.centreY() + 0.2;
            double setBack = RADIUS_M * Math.tan(turn / 2);

            // signed distances from both lines, to the side of the path
            assertThat(sign * (Math.cos(direction) * y - Math.sin(direction) * x))
                    .isCloseTo(RADIUS_M, within(1e-12));
            assertThat(sign * (Math.cos(after) * y - Math.sin(after) * x)).isCloseTo(RADIUS_M, within(1e-12));
            assertThat(fillet.before()).isCloseTo(setBack, within(1e-12));
            assertThat(fillet.after()).isCloseTo(setBack, within(1e-12));
            assertThat(fillet.normalX()).isCloseTo(-sign * Math.sin(direction), within(1e-9));
            assertThat(fillet.normalY()).isCloseTo(sign * Math.cos(direction), within(1e-9));
            assertThat(fillet.turn()).isCloseTo(sign * turn, within(1e-9));
        }
    }

    /** A jet at least as wide as the arc that turns around it does not fit in: the tangents at the corner decide. */
    @ParameterizedTest
    @ValueSource(doubles = {0.1, 0.39, 0.4})
    void anArcNarrowerThanTheJetVanishes(double radiusMm) {
        double r = radiusMm * 1e-3;
        // a left arc that ends at the origin in the direction of x, and a line that turns left by a right angle
        Contour contour = Contour.fromSi(-r, r)
                .arcToSi(0, 0, 0, r, Side.LEFT)
                .lineToSi(0, 20e-3)
                .open();
        Fillet fillet = Fillet.of(contour, 0, 1, 1, RADIUS_M);

        assertThat(fillet.centreX()).isCloseTo(-RADIUS_M, within(1e-12));
        assertThat(fillet.centreY()).isCloseTo(RADIUS_M, within(1e-12));
        assertThat(fillet.before()).isCloseTo(RADIUS_M, within(1e-12));
    }
}

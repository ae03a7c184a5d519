package dev.waterjet.part;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import org.junit.jupiter.api.Test;

/** The longest line and arc from a vertex against trying every end. */
class PieceScanTest {

    private static final double TOLERANCE = 5e-6;
    private static final double FLATTENING = 20e-6;

    private final EdgeCursor piece = new EdgeCursor();

    /**
     * A path along a circle of a signed radius, with vertices off it and steps back, of chords and small arcs.
     *
     * @param scatter largest distance of a vertex
     * @param back largest step back
     */
    private static EdgeArrays path(Random random, double radius, double scatter, double back, boolean hasArcs) {
        double heading = 6 * random.nextDouble();
        double along = 0;
        ContourBuilder builder = Contour.fromSi(0, 0);
        double step = 4e-6 * Math.exp(4 * random.nextDouble());
        for (int i = 0; i < 40; i++) {
            double before = along;
            along += i % 3 == 2 && back > 0 ? -back * (0.1 + random.nextDouble()) : step * (0.1 + random.nextDouble());
            double[] to = beside(heading, radius, along, scatter * (2 * random.nextDouble() - 1));
            if (hasArcs && along > before && random.nextInt(3) == 0) {
                double off = scatter * (2 * random.nextDouble() - 1);
                double[] middle = beside(heading, radius, (along + before) / 2, off);
                builder.arcThrough(Point.ofSi(middle[0], middle[1]), Point.ofSi(to[0], to[1]));
            } else {
                builder.lineToSi(to[0], to[1]);
            }
        }
        return builder.open().edges;
    }

    private static double[] beside(double heading, double radius, double along, double off) {
        double angle = along / radius;
        double x = (radius - off) * Math.sin(angle);
        double y = 2 * radius * Math.pow(Math.sin(angle / 2), 2) + off * Math.cos(angle);
        return new double[] {
            x * Math.cos(heading) - y * Math.sin(heading), x * Math.sin(heading) + y * Math.cos(heading)
        };
    }

    /** Whether the edges up to a vertex lie within a distance of the piece of the cursor, and do not run back by more. */
    private boolean isWithin(EdgeArrays path, int end, double distance, double back) {
        PieceCheck check = new PieceCheck(path, distance);
        if (piece.isArc()) {
            check.arc(0, end, piece.centreX(), piece.centreY(), piece.sweep());
        } else {
            check.line(0, end);
        }
        if (!check.isWithin(0, end - 1)) {
            return false;
        }
        double farthest = 0;
        for (int i = 1; i <= end; i++) {
            double at = piece.shareAt(path.x()[i], path.y()[i]) * piece.length();
            if (at < farthest - back) {
                return false;
            }
            farthest = Math.max(farthest, at);
        }
        return true;
    }

    private void line(EdgeArrays path, int end) {
        piece.line(path.x()[0], path.y()[0], path.x()[end], path.y()[end]);
    }

    @Test
    void noLineThatLeavesSomeRoomIsLonger() {
        Random random = new Random(31);
        int longer = 0;
        for (int round = 0; round < 800; round++) {
            double scatter = TOLERANCE * 1.5 * random.nextDouble();
            double back = round % 2 == 0 ? 0 : (round % 5 == 0 ? 4 : 1.2) * TOLERANCE;
            double radius = (random.nextBoolean() ? 1 : -1) * (round % 3 == 0 ? 9 : 0.01 + random.nextDouble());
            EdgeArrays path = path(random, radius, scatter, back, round % 4 == 3);
            PieceScan scan = new PieceScan(path, TOLERANCE, FLATTENING);
            scan.scan(0, path.size());
            if (scan.hasLine()) {
                scan.takeLine();
            }
            // small arcs may leave a piece by five quarters of the tolerance, but are laid within it
            double room = path.hasArcs() ? 0.75 * TOLERANCE : 0.9 * TOLERANCE;
            int least = 0;
            for (int end = 1; end <= path.size(); end++) {
                line(path, end);
                boolean isShort = piece.length() < 10 * TOLERANCE;
                least = !isShort && isWithin(path, end, room, 0.8 * TOLERANCE) ? end : least;
            }
            if (scan.sweep == 0) {
                assertThat(Math.max(0, scan.end)).isGreaterThanOrEqualTo(least);
                line(path, Math.max(1, scan.end));
                assertThat(scan.end <= 1 || isWithin(path, scan.end, 1.0001 * TOLERANCE, 2.1 * TOLERANCE))
                        .isTrue();
                longer += least > 5 ? 1 : 0;
            }
        }
        assertThat(longer).isGreaterThan(100);
    }

    /** Whether some arc to a vertex lies within a distance: about that of the path, with any sagitta near its own. */
    private boolean hasArc(EdgeArrays path, int end, double radius, double distance) {
        double chordX = path.x()[end] - path.x()[0];
        double chordY = path.y()[end] - path.y()[0];
        double chord = Math.hypot(chordX, chordY);
        double own = chord * chord / (8 * radius);
        for (int k = -20; k <= 20; k++) {
            double sagitta = own + k * 0.1 * TOLERANCE;
            double half = 2 * Math.atan(2 * sagitta / chord);
            if (Math.abs(half) > 1e-7) {
                double towards = 1 / (2 * Math.tan(half));
                piece.arc(
                        path.x()[0],
                        path.y()[0],
                        path.x()[end],
                        path.y()[end],
                        path.x()[0] + chordX / 2 - towards * chordY,
                        path.y()[0] + chordY / 2 + towards * chordX,
                        2 * half);
                if (isWithin(path, end, distance, distance)) {
                    return true;
                }
            }
        }
        return false;
    }

    @Test
    void noArcThatLeavesSomeRoomIsLonger() {
        Random random = new Random(32);
        int longer = 0;
        for (int round = 0; round < 250; round++) {
            double scatter = TOLERANCE * 1.5 * random.nextDouble();
            double back = round % 2 == 0 ? 0 : (round % 5 == 0 ? 4 : 1.2) * TOLERANCE;
            double radius = (random.nextBoolean() ? 1 : -1) * (1e-3 + 3e-3 * random.nextDouble());
            EdgeArrays path = path(random, radius, scatter, back, round % 4 == 3);
            PieceScan scan = new PieceScan(path, TOLERANCE, FLATTENING);
            scan.scan(0, path.size());
            if (scan.sweep == 0) {
                continue;
            }
            int found = scan.end;
            piece.arc(
                    path.x()[0], path.y()[0], path.x()[found], path.y()[found], scan.centreX, scan.centreY, scan.sweep);
            assertThat(isWithin(path, found, 1.01 * TOLERANCE, 2.1 * TOLERANCE)).isTrue();
            int least = 0;
            for (int end = path.size(); end > found && least == 0; end--) {
                least = hasArc(path, end, radius, 0.8 * TOLERANCE) ? end : 0;
            }
            assertThat(found).isGreaterThanOrEqualTo(least);
            longer += found > 12 ? 1 : 0;
        }
        assertThat(longer).isGreaterThan(60);
    }
}

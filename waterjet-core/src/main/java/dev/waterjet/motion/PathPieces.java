package dev.waterjet.motion;

import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.util.Arrays;

/**
 * Lines and arcs of a path in flat arrays, in SI: what the dynamics need, which is length, direction at the start and
 * curvature (positive to the left), but no places.
 */
final class PathPieces {

    private int count;
    private double[] startM;
    private double[] directionX;
    private double[] directionY;
    private double[] curvature;

    PathPieces(int capacity) {
        int room = Math.max(1, capacity);
        startM = new double[room + 1];
        directionX = new double[room];
        directionY = new double[room];
        curvature = new double[room];
    }

    /** Adds a straight piece by its components. */
    PathPieces line(double dx, double dy) {
        double length = Math.sqrt(dx * dx + dy * dy);
        return add(length, dx / length, dy / length, 0);
    }

    /**
     * Adds an arc.
     *
     * @param tx x component of the direction at its start, of unit length
     * @param ty y component of it
     * @param radiusM radius
     * @param sweepRad signed angle, counter-clockwise positive
     */
    PathPieces arc(double tx, double ty, double radiusM, double sweepRad) {
        return add(radiusM * Math.abs(sweepRad), tx, ty, Math.signum(sweepRad) / radiusM);
    }

    private PathPieces add(double lengthM, double tx, double ty, double k) {
        Require.positive("length of a piece of the path", lengthM, Units.MILLIMETRE);
        if (count == curvature.length) {
            int room = 2 * count;
            startM = Arrays.copyOf(startM, room + 1);
            directionX = Arrays.copyOf(directionX, room);
            directionY = Arrays.copyOf(directionY, room);
            curvature = Arrays.copyOf(curvature, room);
        }
        directionX[count] = tx;
        directionY[count] = ty;
        curvature[count] = k;
        startM[count + 1] = startM[count] + lengthM;
        count++;
        return this;
    }

    int count() {
        return count;
    }

    double lengthM() {
        return startM[count];
    }

    /** Distance of a piece's start from the start of the path; of the end of the path for the index {@link #count()}. */
    double startM(int piece) {
        return startM[piece];
    }

    double lengthM(int piece) {
        return startM[piece + 1] - startM[piece];
    }

    /** Signed curvature in 1/m, zero for a line. */
    double curvature(int piece) {
        return curvature[piece];
    }

    double directionX(int piece) {
        return directionX[piece];
    }

    double directionY(int piece) {
        return directionY[piece];
    }

    /** Angle between the x axis and the direction at a place of a piece, which may lie beyond its ends. */
    double headingAt(int piece, double atM) {
        return Math.atan2(directionY[piece], directionX[piece]) + curvature[piece] * (atM - startM[piece]);
    }

    double endDirectionX(int piece) {
        double turn = curvature[piece] * lengthM(piece);
        return turn == 0 ? directionX[piece] : directionX[piece] * Math.cos(turn) - directionY[piece] * Math.sin(turn);
    }

    double endDirectionY(int piece) {
        double turn = curvature[piece] * lengthM(piece);
        return turn == 0 ? directionY[piece] : directionY[piece] * Math.cos(turn) + directionX[piece] * Math.sin(turn);
    }
}

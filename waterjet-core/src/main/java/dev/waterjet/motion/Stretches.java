package dev.waterjet.motion;

import dev.waterjet.measure.DomainException;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.util.Arrays;

/**
 * Path cut where a cap of the feed, the geometry or a point limit changes, in flat arrays: stretches of one line or arc
 * with one cap each, and the nodes between them with the limits of corners, joints and ends. Squares of feeds throughout.
 *
 * <p>Collinear lines, and arcs of one circle, that follow one another under one cap are one stretch, so that splitting a
 * piece changes nothing. Arcs are cut where one axis stands still, if the axes have limits.
 */
final class Stretches {

    /** Places closer than this are one place: rounding of distances along the path, in m. */
    private static final double SAME_PLACE_M = 1e-11;

    private static final double QUARTER_TURN = Math.PI / 2;

    final PathPieces pieces;
    final DynamicLimits limits;

    private int count;
    private double[] startM;
    private int[] piece;
    private double[] capSquare;
    private byte[] capWhy;
    private double[] nodeSquare;
    private byte[] nodeWhy;

    Stretches(PathPieces pieces, FeedCaps caps, DynamicLimits limits) {
        this.pieces = pieces;
        this.limits = limits;
        Require.atLeast("number of pieces of the path", pieces.count(), 1, Units.ONE, "");
        int room = pieces.count() + caps.count();
        startM = new double[room + 1];
        piece = new int[room];
        capSquare = new double[room];
        capWhy = new byte[room];
        nodeSquare = new double[room + 1];
        nodeWhy = new byte[room + 1];
        double covered = caps.count() == 0 ? 0 : caps.untilM(caps.count() - 1);
        if (covered < pieces.lengthM() - SAME_PLACE_M) {
            throw new DomainException(
                    "end of the last cap of the feed",
                    covered,
                    "at least",
                    pieces.lengthM(),
                    Units.MILLIMETRE,
                    "the caps cover the path");
        }
        new Builder(caps).build();
    }

    int count() {
        return count;
    }

    double startM(int stretch) {
        return startM[stretch];
    }

    double lengthM(int stretch) {
        return startM[stretch + 1] - startM[stretch];
    }

    double curvature(int stretch) {
        return pieces.curvature(piece[stretch]);
    }

    double directionX(int stretch) {
        return pieces.directionX(piece[stretch]);
    }

    double directionY(int stretch) {
        return pieces.directionY(piece[stretch]);
    }

    double headingAt(int stretch, double atM) {
        return pieces.headingAt(piece[stretch], atM);
    }

    /** Whether the limits along a stretch change with its direction. */
    boolean isTurning(int stretch) {
        return limits.hasAxisLimits() && curvature(stretch) != 0;
    }

    /** Acceleration along the path that the limits allow at a place, centripetal acceleration left aside. */
    double tangentialAcceleration(int stretch, double atM) {
        if (!isTurning(stretch)) {
            return limits.tangentialAcceleration(directionX(stretch), directionY(stretch));
        }
        double heading = headingAt(stretch, atM);
        return limits.tangentialAcceleration(Math.cos(heading), Math.sin(heading));
    }

    /** Jerk along the path that the limits allow at a place. */
    double tangentialJerk(int stretch, double atM) {
        if (!isTurning(stretch)) {
            return limits.tangentialJerk(directionX(stretch), directionY(stretch));
        }
        double heading = headingAt(stretch, atM);
        return limits.tangentialJerk(Math.cos(heading), Math.sin(heading));
    }

    /** Square of the cap of a stretch: process, speed of the axes on a line, centripetal acceleration on an arc. */
    double capSquare(int stretch) {
        return capSquare[stretch];
    }

    byte capWhy(int stretch) {
        return capWhy[stretch];
    }

    /** Square of the feed that a node itself allows, infinite if it does not limit. */
    double pointSquare(int node) {
        return nodeSquare[node];
    }

    byte pointWhy(int node) {
        return nodeWhy[node];
    }

    /** Square of the feed that a node and the stretches beside it allow. */
    double squareAt(int node) {
        double square = nodeSquare[node];
        if (node > 0) {
            square = Math.min(square, capSquare[node - 1]);
        }
        return node < count ? Math.min(square, capSquare[node]) : square;
    }

    /** Fills the arrays. */
    private final class Builder {

        private final FeedCaps caps;
        private final TurnLimits turns;
        private final boolean isCutAtQuarters;
        private int cap;

        Builder(FeedCaps caps) {
            this.caps = caps;
            this.turns = new TurnLimits(pieces, limits);
            this.isCutAtQuarters = limits.hasAxisLimits();
        }

        void build() {
            int n = pieces.count();
            point(0, GoverningLimit.REST.code());
            for (int i = 0; i < n; i++) {
                boolean isBreak = true;
                if (i > 0) {
                    passCaps(pieces.startM(i));
                    turns.at(i, Math.min(Math.sqrt(capSquare[count - 1]), caps.feedMPerS(cap)));
                    isBreak = !turns.isSmooth();
                    limitPoint(turns.speed(), turns.limit().code());
                }
                cutPiece(i, isBreak);
            }
            passCaps(pieces.lengthM());
            point(0, GoverningLimit.REST.code());
        }

        private void cutPiece(int i, boolean isBreak) {
            double end = pieces.startM(i + 1);
            double at = pieces.startM(i);
            boolean isQuartered = isCutAtQuarters && pieces.curvature(i) != 0;
            boolean isNew = isBreak;
            while (at < end) {
                passCaps(at);
                double quarter = isQuartered ? quarterAfter(i, at) : Double.POSITIVE_INFINITY;
                double next = Math.min(Math.min(end, caps.untilM(cap)), quarter);
                next = end - next < SAME_PLACE_M ? end : next;
                add(i, at, next, isNew);
                isNew = next == quarter;
                at = next;
            }
        }

        /** Moves on to the cap that holds behind a place; stretches without length on the way cap the place. */
        private void passCaps(double atM) {
            while (caps.untilM(cap) <= atM + SAME_PLACE_M && cap < caps.count() - 1) {
                cap++;
                if (caps.untilM(cap) == caps.untilM(cap - 1)) {
                    limitPoint(caps.feedMPerS(cap), caps.code(cap));
                }
            }
        }

        private double quarterAfter(int i, double atM) {
            double k = pieces.curvature(i);
            double quarters = pieces.headingAt(i, atM) / QUARTER_TURN;
            double angle = SAME_PLACE_M * Math.abs(k);
            double next = k > 0 ? Math.floor(quarters + angle) + 1 : Math.ceil(quarters - angle) - 1;
            double quarterM = atM + (next - quarters) * QUARTER_TURN / k;
            // on an arc far smaller than the path is long, a quarter is no step forward
            return quarterM > atM + SAME_PLACE_M ? quarterM : Double.POSITIVE_INFINITY;
        }

        private void add(int i, double fromM, double toM, boolean isNew) {
            capStretch(i);
            int last = count - 1;
            boolean isSame = !isNew
                    && last >= 0
                    && capWhy[last] == capWhy[count]
                    && capSquare[last] == capSquare[count]
                    && nodeSquare[count] == Double.POSITIVE_INFINITY;
            if (isSame) {
                startM[count] = toM;
                return;
            }
            piece[count] = i;
            startM[count] = fromM;
            startM[count + 1] = toM;
            count++;
            makeRoom();
            nodeSquare[count] = Double.POSITIVE_INFINITY;
        }

        /** Caps the next stretch by the process and by what the machine allows on the whole piece. */
        private void capStretch(int i) {
            double k = Math.abs(pieces.curvature(i));
            double square = caps.feedMPerS(cap) * caps.feedMPerS(cap);
            byte why = caps.code(cap);
            if (k == 0) {
                double speed = limits.axisSpeed(pieces.directionX(i), pieces.directionY(i));
                if (speed * speed < square) {
                    square = speed * speed;
                    why = limits.axisSpeedLimit(pieces.directionX(i), pieces.directionY(i))
                            .code();
                }
            } else {
                double across = limits.path().centripetalMPerS2() / k;
                double steady = TurnKernel.steadyArcSpeed(limits.path().vectorJerkMPerS3(), k);
                if (across < square) {
                    square = across;
                    why = GoverningLimit.CENTRIPETAL.code();
                }
                if (steady * steady < square) {
                    square = steady * steady;
                    why = GoverningLimit.ARC_JERK.code();
                }
            }
            capSquare[count] = square;
            capWhy[count] = why;
        }

        private void point(double speed, byte why) {
            nodeSquare[count] = speed * speed;
            nodeWhy[count] = why;
        }

        private void limitPoint(double speed, byte why) {
            if (speed * speed < nodeSquare[count]) {
                point(speed, why);
            }
        }

        private void makeRoom() {
            if (count == piece.length) {
                int room = 2 * count;
                startM = Arrays.copyOf(startM, room + 1);
                piece = Arrays.copyOf(piece, room);
                capSquare = Arrays.copyOf(capSquare, room);
                capWhy = Arrays.copyOf(capWhy, room);
                nodeSquare = Arrays.copyOf(nodeSquare, room + 1);
                nodeWhy = Arrays.copyOf(nodeWhy, room + 1);
            }
        }
    }
}

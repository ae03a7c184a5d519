package dev.waterjet.motion;

import dev.waterjet.kerf.LagFunction;
import dev.waterjet.kerf.LagGeometry;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.Units;
import dev.waterjet.part.Contour;
import dev.waterjet.part.EdgeCursor;
import dev.waterjet.part.GeometryException;
import dev.waterjet.part.Side;

/** First walk over a contour: what front and machine allow on each edge and at each node. */
final class SegmentLimits {

    private static final double CORNER_COSINE = Math.cos(Math.toRadians(10));
    private static final byte LAG_ON_ARC = FeedLimit.LAG_ON_ARC.code();
    private static final byte INSIDE = FeedLimit.LAG_AT_INSIDE_CORNER.code();
    private static final byte OUTSIDE = FeedLimit.LAG_AT_OUTSIDE_CORNER.code();
    private static final byte SPEED = FeedLimit.MACHINE_SPEED.code();
    private static final byte ACROSS = FeedLimit.CENTRIPETAL.code();

    private final Contour contour;
    private final MachineLimits machine;
    private final LagFunction law;
    private final EdgeLimits finishes;
    private final int partSign;
    private final double acrossMPerS2;
    private final double deviationM;
    /** Whether both axes are alike. */
    private final boolean isSquare;

    private final Segments spans;
    private final EdgeCursor arc = new EdgeCursor();
    private boolean hasSlowPlaces;

    // the present edge: directions at its ends, of length 1
    private boolean isLine;
    private double lengthM;
    private double startX;
    private double startY;
    private double endX;
    private double endY;

    // the edge before
    private boolean wasLine;
    private double lengthBeforeM;
    private double beforeX;
    private double beforeY;

    SegmentLimits(Contour contour, Side part, MachineLimits machine, EdgeLimits finishes, LagFunction law) {
        this.contour = contour;
        this.machine = machine;
        this.law = law;
        this.finishes = finishes;
        this.partSign = part.sign();
        this.acrossMPerS2 = machine.acrossSi();
        this.deviationM = machine.deviationSi();
        this.isSquare =
                machine.speedXSi() == machine.speedYSi() && machine.accelerationXSi() == machine.accelerationYSi();
        this.spans = new Segments(contour.size());
    }

    boolean hasSlowPlaces() {
        return hasSlowPlaces;
    }

    Segments walk() {
        int n = contour.size();
        spans.node(0, Double.POSITIVE_INFINITY, ACROSS, 0);
        for (int i = 0; i < n; i++) {
            isLine = !contour.isArc(i);
            if (isLine) {
                line(i);
            } else {
                arc(i);
            }
            spans.lengthM[i] = lengthM;
            if (i > 0) {
                hasSlowPlaces |= spans.frontMPerS[i] != spans.frontMPerS[i - 1];
                node(i);
            }
            wasLine = isLine;
            lengthBeforeM = lengthM;
            beforeX = endX;
            beforeY = endY;
        }
        spans.node(n, Double.POSITIVE_INFINITY, ACROSS, 0);
        return spans;
    }

    private void line(int i) {
        double dx = contour.xSi(i + 1) - contour.xSi(i);
        double dy = contour.ySi(i + 1) - contour.ySi(i);
        lengthM = Math.sqrt(dx * dx + dy * dy);
        double perLength = 1 / lengthM;
        startX = dx * perLength;
        startY = dy * perLength;
        endX = startX;
        endY = startY;
        // each axis takes its share of speed and acceleration: the weaker of the two decides
        double shareX = Math.abs(dx) * perLength;
        double shareY = Math.abs(dy) * perLength;
        if (isSquare) {
            double perAxis = 1 / Math.max(shareX, shareY);
            spans.machineMPerS[i] = machine.speedXSi() * perAxis;
            spans.accelerationMPerS2[i] = machine.accelerationXSi() * perAxis;
        } else {
            spans.machineMPerS[i] = Math.min(machine.speedXSi() / shareX, machine.speedYSi() / shareY);
            spans.accelerationMPerS2[i] =
                    Math.min(machine.accelerationXSi() / shareX, machine.accelerationYSi() / shareY);
        }
        spans.machineLimit[i] = SPEED;
        int finish = contour.requirementIndex(i);
        spans.frontMPerS[i] = finishes.feedMPerS[finish];
        spans.frontLimit[i] = finishes.why[finish];
    }

    private void arc(int i) {
        contour.load(i, arc);
        lengthM = arc.length();
        startX = arc.startDirectionX();
        startY = arc.startDirectionY();
        endX = arc.endDirectionX();
        endY = arc.endDirectionY();
        double speed = Math.min(machine.speedXSi(), machine.speedYSi());
        double across = Math.sqrt(acrossMPerS2 * arc.radius());
        spans.machineMPerS[i] = Math.min(speed, across);
        spans.machineLimit[i] = across < speed ? ACROSS : SPEED;
        int finish = contour.requirementIndex(i);
        double front = finishes.feedMPerS[finish];
        byte limit = finishes.why[finish];
        double tolerance = finishes.toleranceM[finish];
        double lagAllowed = LagGeometry.TANGENT.arcLagSi(tolerance, arc.radius());
        if (!finishes.isLead[finish] && lagAllowed < finishes.lagM[finish]) {
            front = Math.min(front, slowFeed(i, lagAllowed, tolerance));
            limit = LAG_ON_ARC;
        }
        spans.frontMPerS[i] = front;
        spans.frontLimit[i] = limit;
        // what the fastest run on the arc leaves along the path
        double fastest = Math.min(spans.machineMPerS[i], front);
        double spent = fastest * fastest / arc.radius();
        double weaker = Math.min(machine.accelerationXSi(), machine.accelerationYSi());
        spans.accelerationMPerS2[i] = Math.sqrt((weaker - spent) * (weaker + spent));
    }

    /** What the turn from the edge before into the present one allows. */
    private void node(int i) {
        double sine = beforeX * startY - beforeY * startX;
        double cosine = beforeX * startX + beforeY * startY;
        spans.node(i, Double.POSITIVE_INFINITY, ACROSS, Double.POSITIVE_INFINITY);
        if (Math.abs(sine) < 1e-9 && cosine > 0) {
            return;
        }
        int before = contour.requirementIndex(i - 1);
        int after = contour.requirementIndex(i);
        boolean isSampled = wasLine && isLine && cosine > CORNER_COSINE;
        boolean isEven = isSampled && before == after;
        double shorter = Math.min(lengthBeforeM, lengthM);
        if (!isEven || !finishes.isSurelyRounded(after, sine, shorter)) {
            spans.nodeMachineMPerS[i] = roundingFeed(sine, cosine, shorter);
        }
        boolean isLead = finishes.isLead[before] || finishes.isLead[after];
        if (isLead || (isEven && finishes.isSurelyTracked(after, sine, shorter))) {
            return;
        }
        boolean isOutside = !isSampled && sine * partSign > 0;
        double[] tolerance = isOutside ? finishes.outsideToleranceM : finishes.toleranceM;
        double error = Math.min(tolerance[before], tolerance[after]);
        double lagAllowed = isSampled
                ? LagGeometry.TANGENT.arcLagSi(error, sampledRadius(sine, cosine))
                : cornerLag(sine, cosine, error);
        if (lagAllowed < Math.max(finishes.lagM[before], finishes.lagM[after])) {
            spans.nodeFrontMPerS[i] = slowFeed(i, lagAllowed, error);
            spans.nodeLimit[i] = isSampled ? LAG_ON_ARC : isOutside ? OUTSIDE : INSIDE;
            hasSlowPlaces = true;
        }
    }

    /** Feed at which the acceleration across the path rounds a turn within the deviation and half of either edge. */
    private double roundingFeed(double sine, double cosine, double shorterM) {
        double cosineOfHalf = Math.sqrt(Math.max(0, (1 + cosine) / 2));
        double sineOfHalf = cosineOfHalf > 1e-6 ? Math.min(1, Math.abs(sine) / (2 * cosineOfHalf)) : 1;
        // e sin(T/2)/(1 - sin(T/2)) with sin(T/2) = cos(turn/2), free of cancellation
        double rounding = deviationM * cosineOfHalf * (1 + cosineOfHalf) / (sineOfHalf * sineOfHalf);
        double room = shorterM / 2 * cosineOfHalf / sineOfHalf;
        return Math.sqrt(acrossMPerS2 * Math.min(rounding, room));
    }

    /** Lag whose error at a corner is L sin(turn) in the tangent geometry, the whole lag from a right angle on. */
    private static double cornerLag(double sineOfTurn, double cosineOfTurn, double errorM) {
        return cosineOfTurn <= 0 ? errorM : errorM / Math.abs(sineOfTurn);
    }

    /** Radius of the curve whose samples two lines are: (l1 + l2)/(4 sin(turn/2)), sin(turn) = 2 sin cos of the half. */
    private double sampledRadius(double sine, double cosine) {
        return (lengthBeforeM + lengthM) * Math.sqrt((1 + cosine) / 2) / (2 * Math.abs(sine));
    }

    private double slowFeed(int edge, double lagAllowed, double error) {
        double slow = law.feedSi(lagAllowed);
        if (slow < machine.minimumFeedSi()) {
            throw new GeometryException(
                    edge,
                    contour.xSi(edge),
                    contour.ySi(edge),
                    Message.of(
                                    "lag-out-of-tolerance",
                                    "no feed keeps the exit lag error within {error} here: the lag may be {limit}, and at the "
                                            + "least feed of the machine it is {lag}")
                            .with("error", Kind.LENGTH, error, Units.MILLIMETRE)
                            .with("limit", Kind.LENGTH, lagAllowed, Units.MILLIMETRE)
                            .with("lag", Kind.LENGTH, law.lagSi(machine.minimumFeedSi()), Units.MILLIMETRE));
        }
        return slow;
    }
}

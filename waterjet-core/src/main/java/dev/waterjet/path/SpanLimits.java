package dev.waterjet.path;

/** First walk over a contour: what front and machine allow on each edge and at each node. */
final class SpanLimits {

    private static final double CORNER_COSINE = Math.cos(ContourKernel.CORNER_RAD);
    private static final byte LAG_ON_ARC = FeedLimit.LAG_ON_ARC.code();
    private static final byte INSIDE = FeedLimit.LAG_AT_INSIDE_CORNER.code();
    private static final byte OUTSIDE = FeedLimit.LAG_AT_OUTSIDE_CORNER.code();
    private static final byte SPEED = FeedLimit.MACHINE_SPEED.code();
    private static final byte ACROSS = FeedLimit.CENTRIPETAL.code();

    private final Contour contour;
    private final MachineLimits machine;
    private final LagLaw law;
    private final int partSign;
    private final EdgeShape arc = new EdgeShape();
    private final double acrossMPerS2;
    private final double deviationM;
    /** Whether both axes are alike. */
    private final boolean isSquare;

    /** By finish: feed, why, lag at that feed, tolerance, whether a lead. */
    private final double[] feed;

    private final byte[] why;
    private final double[] lag;
    private final double[] tolerance;
    private final double[] outsideTolerance;
    private final boolean[] isLead;
    /** Diameter of a curve from which on the lag at the feed of the finish is within its tolerance. */
    private final double[] diameter;

    private final Spans spans;
    private boolean hasSlowPlaces;

    // the present edge
    private double lengthM;
    private double startX;
    private double startY;
    private double endX;
    private double endY;
    private double frontMPerS;
    private byte frontLimit;
    private double machineMPerS;
    private byte machineLimit;
    private double accelerationMPerS2;

    SpanLimits(Contour contour, Side part, MachineLimits machine, GradeFeeds feeds, LagLaw law) {
        this.contour = contour;
        this.machine = machine;
        this.law = law;
        this.partSign = part.sign;
        this.acrossMPerS2 = machine.acrossSi();
        this.deviationM = machine.deviationSi();
        this.isSquare =
                machine.speedXSi() == machine.speedYSi() && machine.accelerationXSi() == machine.accelerationYSi();
        int n = contour.finishes.size();
        this.feed = new double[n];
        this.why = new byte[n];
        this.lag = new double[n];
        this.tolerance = new double[n];
        this.outsideTolerance = new double[n];
        this.isLead = new boolean[n];
        this.diameter = new double[n];
        for (int i = 0; i < n; i++) {
            Finish finish = contour.finishes.get(i);
            double ofGrade = feeds.feedSi(finish.grade());
            feed[i] = Math.min(ofGrade, finish.greatestFeedSi());
            why[i] = (finish.isLead() ? FeedLimit.LEAD : ofGrade <= feed[i] ? FeedLimit.GRADE : FeedLimit.ASKED).code();
            lag[i] = law.lagSi(feed[i]);
            tolerance[i] = finish.toleranceSi();
            outsideTolerance[i] = finish.outsideToleranceSi();
            isLead[i] = finish.isLead();
            diameter[i] = lag[i] * lag[i] / tolerance[i] - tolerance[i];
        }
        this.spans = new Spans(contour.size());
    }

    double[] lagByFinish() {
        return lag;
    }

    boolean hasSlowPlaces() {
        return hasSlowPlaces;
    }

    Spans walk() {
        int n = contour.size();
        boolean wasLine = false;
        double lengthBefore = 0;
        double directionX = 0;
        double directionY = 0;
        for (int i = 0; i < n; i++) {
            int finish = contour.finishIndex[i];
            boolean isLine = contour.sweepRad.length == 0 || contour.sweepRad[i] == 0;
            if (isLine) {
                line(i, finish);
            } else {
                arc(i, finish);
            }
            if (i == 0) {
                spans.node(Double.POSITIVE_INFINITY, ACROSS, 0);
            } else {
                hasSlowPlaces |= frontMPerS != spans.frontMPerS[i - 1];
                node(i, directionX, directionY, lengthBefore, wasLine && isLine);
            }
            spans.add(i, lengthM, frontMPerS, frontLimit, machineMPerS, machineLimit, accelerationMPerS2);
            wasLine = isLine;
            lengthBefore = lengthM;
            directionX = endX;
            directionY = endY;
        }
        spans.node(Double.POSITIVE_INFINITY, ACROSS, 0);
        return spans;
    }

    private void line(int i, int finish) {
        double dx = contour.xM[i + 1] - contour.xM[i];
        double dy = contour.yM[i + 1] - contour.yM[i];
        lengthM = Math.sqrt(dx * dx + dy * dy);
        double perLength = 1 / lengthM;
        startX = dx * perLength;
        startY = dy * perLength;
        endX = startX;
        endY = startY;
        double alongX = Math.abs(startX);
        double alongY = Math.abs(startY);
        // each axis takes its share of speed and acceleration: the weaker of the two decides
        machineLimit = SPEED;
        if (isSquare) {
            double perAxis = 1 / Math.max(alongX, alongY);
            machineMPerS = machine.speedXSi() * perAxis;
            accelerationMPerS2 = machine.accelerationXSi() * perAxis;
        } else {
            machineMPerS = Math.min(machine.speedXSi() / alongX, machine.speedYSi() / alongY);
            accelerationMPerS2 = Math.min(machine.accelerationXSi() / alongX, machine.accelerationYSi() / alongY);
        }
        frontMPerS = feed[finish];
        frontLimit = why[finish];
    }

    private void arc(int i, int finish) {
        contour.load(i, arc);
        lengthM = arc.length();
        startX = arc.startDirectionX();
        startY = arc.startDirectionY();
        endX = arc.endDirectionX();
        endY = arc.endDirectionY();
        machineMPerS = Math.min(machine.speedXSi(), machine.speedYSi());
        machineLimit = SPEED;
        double across = Math.sqrt(acrossMPerS2 * arc.radius);
        if (across < machineMPerS) {
            machineMPerS = across;
            machineLimit = ACROSS;
        }
        frontMPerS = feed[finish];
        frontLimit = why[finish];
        double lagAllowed = LagKernel.arcLag(arc.radius, tolerance[finish]);
        if (!isLead[finish] && lagAllowed < lag[finish]) {
            frontMPerS = Math.min(frontMPerS, slowFeed(i, lagAllowed, tolerance[finish]));
            frontLimit = LAG_ON_ARC;
        }
        // what the fastest run on the arc leaves along the path
        double fastest = Math.min(machineMPerS, frontMPerS);
        double spent = fastest * fastest / arc.radius;
        double weaker = Math.min(machine.accelerationXSi(), machine.accelerationYSi());
        accelerationMPerS2 = Math.sqrt((weaker - spent) * (weaker + spent));
    }

    private void node(int i, double fromX, double fromY, double lengthBefore, boolean isBetweenLines) {
        double sine = fromX * startY - fromY * startX;
        double cosine = fromX * startX + fromY * startY;
        if (Math.abs(sine) < 1e-9 && cosine > 0) {
            spans.node(Double.POSITIVE_INFINITY, ACROSS, Double.POSITIVE_INFINITY);
            return;
        }
        if (isBetweenLines && cosine > CORNER_COSINE && isHarmless(i, sine, cosine, lengthBefore)) {
            spans.node(Double.POSITIVE_INFINITY, ACROSS, Double.POSITIVE_INFINITY);
            return;
        }
        double cosineOfHalf = Math.sqrt(Math.max(0, (1 + cosine) / 2));
        double sineOfHalf = cosineOfHalf > 1e-6 ? Math.min(1, Math.abs(sine) / (2 * cosineOfHalf)) : 1;
        // e sin(T/2)/(1 - sin(T/2)) with sin(T/2) = cos(turn/2), free of cancellation; within half of either edge
        double rounding = deviationM * cosineOfHalf * (1 + cosineOfHalf) / (sineOfHalf * sineOfHalf);
        double room = Math.min(lengthBefore, lengthM) / 2 * cosineOfHalf / sineOfHalf;
        double across = Math.sqrt(acrossMPerS2 * Math.min(rounding, room));

        double front = Double.POSITIVE_INFINITY;
        byte limit = ACROSS;
        int before = contour.finishIndex[i - 1];
        int after = contour.finishIndex[i];
        if (!isLead[before] && !isLead[after]) {
            double longest = Math.max(lag[before], lag[after]);
            boolean isSampled = isBetweenLines && cosine > CORNER_COSINE;
            boolean isOutside = !isSampled && sine * partSign > 0;
            double[] within = isOutside ? outsideTolerance : tolerance;
            double error = Math.min(within[before], within[after]);
            double allowed = isSampled
                    ? LagKernel.arcLag((lengthBefore + lengthM) / (4 * sineOfHalf), error)
                    : LagKernel.cornerLag(sine, cosine, error);
            if (allowed < longest) {
                front = slowFeed(i, allowed, error);
                limit = isSampled ? LAG_ON_ARC : isOutside ? OUTSIDE : INSIDE;
                hasSlowPlaces = true;
            }
        }
        spans.node(front, limit, across);
    }

    /**
     * Whether a slight turn between samples of a curve holds nothing up, told without a root: the conditions of
     * {@link #node} squared, with cos(turn/2)^2 for cos(turn/2) where that is the safe side.
     */
    private boolean isHarmless(int i, double sine, double cosine, double lengthBefore) {
        int before = contour.finishIndex[i - 1];
        int after = contour.finishIndex[i];
        double feed = Math.min(spans.frontMPerS[i - 1], frontMPerS);
        double feed2 = feed * feed;
        double cosineOfHalf2 = (1 + cosine) / 2;
        double sineOfHalf2 = sine * sine / (4 * cosineOfHalf2);
        double across = acrossMPerS2 * deviationM * cosineOfHalf2 * (1 + cosineOfHalf2);
        double room = acrossMPerS2 * Math.min(lengthBefore, lengthM) / 2;
        if (across < feed2 * sineOfHalf2 || room * room * cosineOfHalf2 < feed2 * feed2 * sineOfHalf2) {
            return false;
        }
        if (isLead[before] || isLead[after]) {
            return true;
        }
        // L^2 <= e (2 R + e) with R = (l1 + l2)/(4 sin(turn/2))
        double wanted = before == after ? diameter[before] : Math.max(diameter[before], diameter[after]);
        double lengths = (lengthBefore + lengthM) / 2;
        boolean isSame = before == after || (tolerance[before] == tolerance[after] && lag[before] == lag[after]);
        return isSame && (wanted <= 0 || lengths * lengths >= wanted * wanted * sineOfHalf2);
    }

    private double slowFeed(int edge, double lagAllowed, double error) {
        double slow = law.feedSi(lagAllowed);
        if (slow < machine.leastFeedSi()) {
            throw new PathException(
                    edge,
                    contour.xM[edge],
                    contour.yM[edge],
                    "no feed keeps the trailing jet within " + ContourBuilder.told(error)
                            + " here: the lag may be " + ContourBuilder.told(lagAllowed)
                            + ", and at the least feed of the machine it is "
                            + ContourBuilder.told(law.lagSi(machine.leastFeedSi())));
        }
        return slow;
    }
}

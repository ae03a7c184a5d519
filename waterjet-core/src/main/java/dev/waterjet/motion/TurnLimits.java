package dev.waterjet.motion;

/** Speed limits at the places where one piece of a path meets the next: corners and jumps of the curvature. */
final class TurnLimits {

    /** Sine of a turn below which two directions count as one; the noise of coordinates in double precision. */
    private static final double SAME_DIRECTION = 1e-9;

    private final PathPieces pieces;
    private final DynamicLimits limits;
    private double speed;
    private GoverningLimit limit = GoverningLimit.CORNER;
    private boolean isSmooth;

    TurnLimits(PathPieces pieces, DynamicLimits limits) {
        this.pieces = pieces;
        this.limits = limits;
    }

    /** Speed that the last place asked allows, infinite if it does not limit. */
    double speed() {
        return speed;
    }

    GoverningLimit limit() {
        return limit;
    }

    /** Whether direction and curvature go on without a break at the last place asked. */
    boolean isSmooth() {
        return isSmooth;
    }

    /**
     * Evaluates the place where a piece starts.
     *
     * @param piece index of the piece, from 1
     * @param fastest speed that the neighbours allow; a corner that allows more needs no stop
     */
    void at(int piece, double fastest) {
        int before = piece - 1;
        double fromX = pieces.endDirectionX(before);
        double fromY = pieces.endDirectionY(before);
        double toX = pieces.directionX(piece);
        double toY = pieces.directionY(piece);
        double sine = fromX * toY - fromY * toX;
        boolean isTangent = Math.abs(sine) < SAME_DIRECTION && fromX * toX + fromY * toY > 0;
        double shorter = Math.min(pieces.lengthM(before), pieces.lengthM(piece));
        double change = Math.abs(pieces.curvature(piece) - pieces.curvature(before));
        speed = Double.POSITIVE_INFINITY;
        isSmooth = isTangent && change == 0;
        if (change > 0) {
            double jerk = limits.normalJerk(toY, toX);
            speed = TurnKernel.curvatureJumpSpeed(jerk, limits.corner().deviationM(), change, shorter);
            limit = GoverningLimit.CURVATURE_JUMP;
        }
        if (!isTangent) {
            double byRule = cornerSpeed(toX - fromX, toY - fromY, shorter / 2, fastest);
            if (byRule < speed) {
                speed = byRule;
                limit = GoverningLimit.CORNER;
            }
        }
    }

    /** Speed by the machine's rule for a change of direction; its length is 2 sin(w/2), it points along the bisector. */
    private double cornerSpeed(double changeX, double changeY, double roomM, double fastest) {
        double change = Math.sqrt(changeX * changeX + changeY * changeY);
        double sine = Math.min(1, change / 2);
        double cosine = Math.sqrt((1 - sine) * (1 + sine));
        double nx = changeX / change;
        double ny = changeY / change;
        CornerRule rule = limits.corner();
        double acceleration = limits.normalAcceleration(nx, ny);
        return switch (rule.kind()) {
            case STOP -> {
                double weakest = Math.min(acceleration, limits.path().accelerationMPerS2());
                double rounded = TurnKernel.arcCornerSpeed(weakest, rule.deviationM(), roomM, sine, cosine);
                yield rounded >= fastest ? Double.POSITIVE_INFINITY : 0;
            }
            case ARC -> TurnKernel.arcCornerSpeed(acceleration, rule.deviationM(), roomM, sine, cosine);
            case PULSE ->
                TurnKernel.pulseCornerSpeed(acceleration, limits.normalJerk(nx, ny), rule.deviationM(), roomM, sine);
            case JUMP -> TurnKernel.jumpCornerSpeed(rule.jumpXMPerS(), rule.jumpYMPerS(), changeX, changeY);
        };
    }
}

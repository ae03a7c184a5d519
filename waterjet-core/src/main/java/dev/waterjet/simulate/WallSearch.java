package dev.waterjet.simulate;

/**
 * Search for the first cut place on a line across the contour. It walks in steps that cannot pass a wall: while the path is
 * farther away than the jet is wide, nothing is cut.
 */
final class WallSearch {

    private static final int MAX_ROOT_STEPS = 60;

    private final DoseField field;
    private final double accuracyM;

    /** Distance at which the wall was found; only after a successful search. */
    double wallM;

    WallSearch(DoseField field, double accuracyM) {
        this.field = field;
        this.accuracyM = accuracyM;
    }

    /**
     * Looks for the first cut place at x + r nx, y + r ny, for r from one limit to another.
     *
     * @return whether there is one; {@link #wallM} and the field hold it
     */
    boolean find(double x, double y, double nx, double ny, double from, double to) {
        double reach = field.cutReachM();
        double step = Math.min(field.spreadM() / 2, field.jetRadiusM() / 4);
        // along a steady cut the wall is where it was at the point before
        double guess = wallM;
        double before = from;
        double value = field.depthInCut(x + from * nx, y + from * ny);
        if (value > 0) {
            wallM = from;
            return true;
        }
        while (before < to) {
            double next = Math.min(to, before + Math.max(step, field.distanceM - reach));
            if (guess > before && guess < next) {
                next = guess;
            }
            double atNext = field.depthInCut(x + next * nx, y + next * ny);
            if (Math.abs(atNext) < accuracyM / 4) {
                wallM = next;
                return true;
            }
            if (atNext > 0) {
                wallM = root(x, y, nx, ny, before, value, next, atNext);
                return true;
            }
            before = next;
            value = atNext;
        }
        return false;
    }

    /** False position that halves the weight of an end kept twice (Illinois), with bisection where it does not shrink. */
    private double root(double x, double y, double nx, double ny, double from, double atFrom, double to, double atTo) {
        double low = from;
        double high = to;
        double under = atFrom;
        double over = atTo;
        int kept = 0;
        for (int i = 0; i < MAX_ROOT_STEPS && high - low > accuracyM; i++) {
            double middle = low + (high - low) * (under / (under - over));
            if (i % 8 == 7 || !(middle > low && middle < high)) {
                middle = (low + high) / 2;
            }
            double value = field.depthInCut(x + middle * nx, y + middle * ny);
            if (Math.abs(value) < accuracyM / 4) {
                return middle;
            }
            if (value < 0) {
                low = middle;
                under = value;
                over = kept == 1 ? over / 2 : over;
                kept = 1;
            } else {
                high = middle;
                over = value;
                under = kept == -1 ? under / 2 : under;
                kept = -1;
            }
        }
        double middle = (low + high) / 2;
        field.depthInCut(x + middle * nx, y + middle * ny);
        return middle;
    }
}

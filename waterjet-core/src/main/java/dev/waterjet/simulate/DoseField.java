package dev.waterjet.simulate;

import dev.waterjet.kerf.KerfProfile;

/**
 * Dose of abrasive particles around the path on which the jet acts at one depth, and the reach of the cut; in m, s.
 *
 * <p>A segment run at the pace w from 0 to l gives a point at a along and b beside it the dose {@code D = w/2
 * exp(-b^2/(2 s^2)) (erf((l - a)/(sqrt2 s)) + erf(a/(sqrt2 s)))}, with s the spread of the dose: 1/u on the axis of a long
 * pass at the feed u. A dwell for the time T gives {@code T exp(-r^2/(2 s^2))/(sqrt(2 pi) s)}. Doses add.
 *
 * <p>With the distance rho from the path and {@code E = ln(D u_sep(z))}, the straight pass that would leave this dose here
 * reaches {@code y_D^2 = rho^2 + 2 s^2 E}. The point is cut if rho is below the smooth minimum of y_D and the radius of the
 * jet. Beside a long straight pass that is the wall of {@link KerfProfile}.
 */
final class DoseField {

    private static final double CELLS_PER_REACH = 1.5;

    /** Farther away a segment adds less than 1.5e-8 of the dose on its axis. */
    private static final double REACH_IN_SPREADS = 6;

    private final KerfProfile profile;
    private final FootSegments segments;
    private final SegmentGrid grid;
    private final double spreadM;
    private final double perTwoVariances;
    private final double dwellFactor;

    private double reachM;
    private double jetRadiusM;
    private double separationMPerS;
    private double cutReachM;

    /** Dose at the last point. */
    double dose;
    /** Distance of the last point from the path; the reach if the path is farther away. */
    double distanceM;
    /** Segment nearest to the last point; -1 if none is within reach. */
    int nearest;

    DoseField(KerfProfile profile, FootSegments segments) {
        this.profile = profile;
        this.segments = segments;
        this.grid = new SegmentGrid(segments);
        this.spreadM = profile.spreadSi();
        this.perTwoVariances = 1 / (2 * spreadM * spreadM);
        this.dwellFactor = 1 / (Math.sqrt(2 * Math.PI) * spreadM);
    }

    /** Turns to the segments as they are now, at a depth. */
    void at(double depthM) {
        jetRadiusM = profile.jetRadiusSi(depthM);
        separationMPerS = depthM > 0 ? profile.front().separationFeedSi(depthM) : Double.POSITIVE_INFINITY;
        reachM = Math.max(REACH_IN_SPREADS * spreadM, 1.01 * jetRadiusM);
        grid.build(reachM / CELLS_PER_REACH, reachM);
        cutReachM = separationMPerS == Double.POSITIVE_INFINITY ? jetRadiusM : Math.min(jetRadiusM, doseReachM());
    }

    /**
     * Distance from the path beyond which no place has the dose that separates the depth: all that acts within reach of a
     * place, in the time T, leaves at most {@code T exp(-r^2/(2 s^2))/(sqrt(2 pi) s)} if it is no nearer than r.
     */
    private double doseReachM() {
        double excess = Math.log(grid.longestTime(2 * reachM) * dwellFactor * separationMPerS);
        return excess > 0 ? Math.sqrt(excess / perTwoVariances) : 0;
    }

    SegmentGrid grid() {
        return grid;
    }

    double spreadM() {
        return spreadM;
    }

    double jetRadiusM() {
        return jetRadiusM;
    }

    /** Distance from the path beyond which nothing is cut; 0 if nothing is cut at this depth. */
    double cutReachM() {
        return cutReachM;
    }

    /** Computes dose and distance at a point. */
    void evaluate(double x, double y) {
        measure(x, y);
        dose = 0;
        for (int i = grid.first; i < grid.last; i++) {
            dose += dose(grid.item(i), x, y);
        }
    }

    /** Finds the distance from the path. */
    private void measure(double x, double y) {
        nearest = -1;
        double least = reachM * reachM;
        if (grid.locate(x, y)) {
            for (int i = grid.first; i < grid.last; i++) {
                int k = grid.item(i);
                double dx = x - segments.x[k];
                double dy = y - segments.y[k];
                double along = dx * segments.ux[k] + dy * segments.uy[k];
                double beside = dx * segments.uy[k] - dy * segments.ux[k];
                double beyond = along < 0 ? along : Math.max(0, along - segments.length[k]);
                double squared = beyond * beyond + beside * beside;
                if (squared < least) {
                    least = squared;
                    nearest = k;
                }
            }
        }
        distanceM = Math.sqrt(least);
    }

    private double dose(int k, double x, double y) {
        double dx = x - segments.x[k];
        double dy = y - segments.y[k];
        double length = segments.length[k];
        double along = dx * segments.ux[k] + dy * segments.uy[k];
        double beyond = along < 0 ? along : Math.max(0, along - length);
        double beside = dx * segments.uy[k] - dy * segments.ux[k];
        double across = beside * beside;
        if (across + beyond * beyond > reachM * reachM) {
            return 0;
        }
        double fading = segments.pace[k] * Math.exp(-across * perTwoVariances);
        return length > 0
                ? fading / 2 * (profile.doseShareSi(length - along) + profile.doseShareSi(along))
                : fading * dwellFactor * Math.exp(-along * along * perTwoVariances);
    }

    /**
     * Returns the depth of a point inside the cut: reach of the cut minus distance from the path; above 0 where it is cut.
     */
    double depthInCut(double x, double y) {
        measure(x, y);
        if (separationMPerS == Double.POSITIVE_INFINITY) {
            return jetRadiusM - distanceM;
        }
        if (distanceM >= cutReachM) {
            return cutReachM - distanceM - spreadM / 4;
        }
        dose = 0;
        for (int i = grid.first; i < grid.last; i++) {
            dose += dose(grid.item(i), x, y);
        }
        double squared = distanceM * distanceM + Math.log(dose * separationMPerS) / perTwoVariances;
        if (squared > 0) {
            return KerfProfile.smoothMinimumSi(Math.sqrt(squared), jetRadiusM) - distanceM;
        }
        return squared > -1 ? squared / spreadM - distanceM : -1 - distanceM;
    }
}

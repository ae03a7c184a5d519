package dev.waterjet.simulate;

import dev.waterjet.kerf.KerfProfile;
import dev.waterjet.kerf.LagGeometry;
import org.apache.commons.math3.analysis.UnivariateFunction;
import org.apache.commons.math3.analysis.solvers.BracketingNthOrderBrentSolver;

/**
 * Walls of the kerf around a long arc of the tool path, run at a constant feed: the front runs on a circle of its own, and
 * the dose of a full turn is known in closed form. In m, m/s.
 */
final class SteadyArc {

    private static final int MAX_EVALUATIONS = 300;
    private static final int SCAN_STEPS = 400;

    private final KerfProfile profile;
    private final double depthM;
    private final double radiusM;
    private final double frontRadiusM;
    private final double frontMPerS;

    /**
     * An arc.
     *
     * @param radiusM radius of the tool path
     * @param feedMPerS feed of the nozzle
     * @param depthM depth, above 0
     */
    SteadyArc(KerfProfile profile, LagGeometry geometry, double radiusM, double feedMPerS, double depthM) {
        this.profile = profile;
        this.depthM = depthM;
        this.radiusM = radiusM;
        double error = geometry.arcErrorSi(profile.front().lagSi(feedMPerS, depthM), radiusM);
        this.frontRadiusM = geometry == LagGeometry.TRACTRIX ? radiusM - error : radiusM + error;
        this.frontMPerS = feedMPerS * frontRadiusM / radiusM;
    }

    /** Distance of the outer wall from the circle of the nozzle, outwards. */
    double outerWall() {
        return frontRadiusM - radiusM + reach(1, 4 * profile.jetRadiusSi(depthM));
    }

    /** Distance of the inner wall from the circle of the nozzle, inwards; the radius of the nozzle if nothing is left. */
    double innerWall() {
        return radiusM - frontRadiusM + reach(-1, frontRadiusM);
    }

    /** Distance from the circle of the front at which the cut ends. */
    private double reach(int sign, double endM) {
        UnivariateFunction within = at -> depthInCut(sign, at);
        double step = endM / SCAN_STEPS;
        if (within.value(0) <= 0) {
            return 0;
        }
        for (int i = 1; i <= SCAN_STEPS; i++) {
            if (within.value(i * step) <= 0) {
                return new BracketingNthOrderBrentSolver(1e-15, 1e-18, 5)
                        .solve(MAX_EVALUATIONS, within, (i - 1) * step, i * step);
            }
        }
        return endM;
    }

    private double depthInCut(int sign, double distanceM) {
        double spread = profile.spreadSi();
        double dose = DoseKernel.circle(frontRadiusM, frontMPerS, frontRadiusM + sign * distanceM, spread);
        double excess = Math.log(dose * profile.front().separationFeedSi(depthM));
        double squared = distanceM * distanceM + 2 * spread * spread * excess;
        return squared > 0
                ? KerfProfile.smoothMinimumSi(Math.sqrt(squared), profile.jetRadiusSi(depthM)) - distanceM
                : -distanceM - spread;
    }
}

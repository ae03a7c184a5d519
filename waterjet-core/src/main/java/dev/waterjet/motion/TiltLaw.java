package dev.waterjet.motion;

import dev.waterjet.kerf.CutFront;
import dev.waterjet.kerf.HeadTilt;
import dev.waterjet.kerf.KerfProfile;

/**
 * Tilt that a head takes at a feed, as displacement of the jet over depth, and the lag that it leaves. Planner and tilt along
 * a path follow from it alike; in m, s, rad.
 *
 * <p>Side tilt: {@code tan(beta) = (y(0) - y(h))/h}, which brings the wall of the part from the entry to the exit upright.
 * Lead: {@code tan(lambda) = a L/h}. Both are scaled down together where they exceed the limits of the head: its
 * inclination, and on an arc of the radius R its angular speed, {@code u m/R}, and acceleration, {@code u^2 m/R^2}.
 *
 * <p>At a corner the direction swings by {@code 2 m sin(phi/2)} in no less than the time T of the blend; the exit of the jet
 * sweeps the length {@code S = 2 h m sin(phi/2)}, half of it on either side of its path. If the dose of the sweep,
 * {@code T/S erf(S/(2 sqrt2 sigma))}, does not separate the bottom, it leaves no mark and the lag is that of the
 * straight path; otherwise it is at least S/2. Derived; that a leaning jet has the front of an upright one is assumed.
 */
final class TiltLaw implements RemainingLag {

    /** Share of the angular speed and acceleration that arcs use: the rest is for what else changes. */
    private static final double SHARE_ON_ARCS = 0.9;

    private final TiltingHead head;
    private final KerfProfile profile;
    private final CutFront front;
    private final double thicknessM;
    private final double separationMPerS;
    private final double blendS;

    /**
     * A law.
     *
     * @param fastestMPerS feed at which the head tilts most: the greatest one of straight edges
     */
    TiltLaw(TiltingHead head, KerfProfile profile, double fastestMPerS) {
        this.head = head;
        this.profile = profile;
        this.front = profile.front();
        this.thicknessM = front.thicknessSi();
        this.separationMPerS = front.separationFeedSi(thicknessM);
        this.blendS = TiltBlend.longestS(head, largest(fastestMPerS));
    }

    /** Largest displacement over depth: side tilts lie between that of the fastest cut and the slope of the jet's edge. */
    private double largest(double fastestMPerS) {
        double slope = (profile.jetRadiusSi(thicknessM) - profile.jetRadiusSi(0)) / thicknessM;
        double side = head.compensatesTaper() ? Math.max(Math.abs(side(fastestMPerS)), slope) : 0;
        return Math.min(head.maximumSlope(), Math.hypot(side, lead(front.exitLagSi(fastestMPerS))));
    }

    TiltingHead head() {
        return head;
    }

    CutFront front() {
        return front;
    }

    /** Tangent of the side tilt towards the part at a feed, without limits. */
    double side(double feedMPerS) {
        return head.compensatesTaper()
                ? (profile.jetRadiusSi(0) - profile.halfWidthSi(thicknessM, feedMPerS)) / thicknessM
                : 0;
    }

    /** Tangent of the lead at a lag of the exit, without limits. */
    double lead(double exitLagM) {
        return head.lead() * exitLagM / thicknessM;
    }

    /** Share of a displacement that the head can follow, where the path turns by a curvature at a feed. */
    double share(double slope, double feedMPerS, double curvature) {
        double rate = feedMPerS * Math.abs(curvature);
        double most = Math.min(head.maximumSlope(), SHARE_ON_ARCS * head.speedSi() / rate);
        return Math.min(1, Math.min(most, SHARE_ON_ARCS * head.accelerationSi() / (rate * rate)) / slope);
    }

    @Override
    public double onArc(double feedMPerS, double radiusM) {
        double lag = front.exitLagSi(feedMPerS);
        double slope = Math.hypot(side(feedMPerS), lead(lag));
        return HeadTilt.residualLagSi(lag, head.lead() * share(slope, feedMPerS, 1 / radiusM));
    }

    @Override
    public double atCorner(double feedMPerS, double straightMPerS, double turnRad) {
        double lag = front.exitLagSi(feedMPerS);
        double wanted = Math.hypot(side(straightMPerS), lead(lag));
        double share = share(wanted, feedMPerS, 0);
        double remaining = HeadTilt.residualLagSi(lag, head.lead() * share);
        double sweep = 2 * thicknessM * wanted * share * Math.sin(Math.min(turnRad, Math.PI) / 2);
        if (!(sweep > 0) || blendS / sweep * profile.doseShareSi(sweep / 2) * separationMPerS <= 1) {
            return remaining;
        }
        return Math.max(remaining, sweep / 2);
    }
}

package dev.waterjet.motion;

import java.util.HashMap;
import java.util.Map;

/**
 * Slowdowns of one plan, each computed once: turns are rounded up to a 64th of a degree, radii down by less than three
 * parts in a thousand, and turns of short arcs up by less than one part in twenty. So a path with a million places asks the policy
 * a few thousand times at most, and the answer does not depend on the order of the places.
 *
 * <p>Not safe for use by several threads.
 */
final class SlowdownTable {

    private static final int TURNS_PER_DEGREE = 64;
    private static final int RADII_PER_OCTAVE = 256;
    private static final int TURNS_PER_OCTAVE = 16;
    /** From this length on, in spreads, a longer arc adds nothing to the dose in its middle. */
    private static final int LONGEST_IN_SPREADS = 12;
    /** A number of steps this little above a whole one is rounding. */
    private static final double ROUNDING = 1e-9;

    private final SlowdownPolicy policy;
    private final double longestM;
    private final Slowdown[] inside = new Slowdown[90 * TURNS_PER_DEGREE + 1];
    private final Slowdown[] outside = new Slowdown[inside.length];
    private final Map<ArcKey, Slowdown> arcs = new HashMap<>();

    SlowdownTable(SlowdownPolicy policy, double spreadM) {
        this.policy = policy;
        this.longestM = LONGEST_IN_SPREADS * spreadM;
    }

    /** Slowdown at a corner; above a right angle nothing changes with the turn. */
    Slowdown corner(double turnRad, boolean isInside) {
        int steps = (int) Math.ceil(Math.toDegrees(turnRad) * TURNS_PER_DEGREE - ROUNDING);
        int key = Math.max(1, Math.min(inside.length - 1, steps));
        Slowdown[] known = isInside ? inside : outside;
        Slowdown slowdown = known[key];
        if (slowdown == null) {
            slowdown = policy.corner(Math.toRadians((double) key / TURNS_PER_DEGREE), isInside);
            known[key] = slowdown;
        }
        return slowdown;
    }

    /** Slowdown before an end that nothing overlaps. */
    Slowdown end() {
        return policy.end();
    }

    /** Slowdown on an arc. */
    Slowdown arc(double radiusM, double lengthM, boolean isInside) {
        long radius = (long) Math.floor(Math.log(radiusM) / Math.log(2) * RADII_PER_OCTAVE + ROUNDING);
        boolean isLong = lengthM > longestM && lengthM > radiusM * Math.PI / 2;
        long turn = isLong
                ? Long.MAX_VALUE
                : (long) Math.ceil(Math.log(lengthM / radiusM) / Math.log(2) * TURNS_PER_OCTAVE);
        return arcs.computeIfAbsent(new ArcKey(radius, turn, isInside), key -> {
            double rounded = Math.pow(2, (double) radius / RADII_PER_OCTAVE);
            double length = rounded * Math.pow(2, (double) turn / TURNS_PER_OCTAVE);
            return policy.arc(rounded, isLong ? Math.max(longestM, rounded * Math.PI) : length, isInside);
        });
    }

    /** Steps of an arc; of all long ones that turn by a right angle or more the length is alike. */
    private record ArcKey(long radius, long turn, boolean isInside) {}
}

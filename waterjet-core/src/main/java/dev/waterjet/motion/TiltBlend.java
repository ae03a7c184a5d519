package dev.waterjet.motion;

import java.util.Arrays;

/**
 * Tilt within the limits of a head, from the one that a path wants: the mean over a time T1 and then over a time T2, centred
 * at the present. A jump then takes the time T1 + T2, half of it before and half of it after. In s, rad/s, rad/s2.
 *
 * <p>With displacements up to M the rate is at most {@code 2 M/T1} and its change {@code 4 M/(T1 T2)}, which gives times that
 * keep the limits on any path; a single jump D takes {@code T1 = max(D/omega, sqrt(D/alpha)), T2 = D/(alpha T1)}. The blend has the
 * shortest times between these for which the limits hold at every change of the wanted tilt: between changes the rates are
 * linear. Means keep every bound on the size, turn with the path, and are the same backwards.
 */
final class TiltBlend {

    private static final double STEP = 1.25;
    private static final double SHORTEST = 1.0 / 16;
    private static final double ROUNDING = 1e-12;

    private final WantedTilt wanted;
    /** Halves of both times. */
    private double half1;

    private double half2;

    TiltBlend(TiltingHead head, WantedTilt wanted) {
        this.wanted = wanted;
        double most = wanted.largest();
        if (most > 0) {
            choose(head, most, wanted.largestJump());
        }
    }

    /** Time of a blend that keeps the limits on any path with displacements up to a largest one. */
    static double longestS(TiltingHead head, double largest) {
        if (!(largest > 0) || !head.isTilting()) {
            return 0;
        }
        double first = longestFirst(head, largest);
        return first + 4 * largest / (head.accelerationSi() * first);
    }

    private static double longestFirst(TiltingHead head, double largest) {
        return Math.max(2 * largest / head.speedSi(), 2 * Math.sqrt(largest / head.accelerationSi()));
    }

    private void choose(TiltingHead head, double most, double jump) {
        double speed = head.speedSi();
        double acceleration = head.accelerationSi();
        double longest = longestFirst(head, most);
        double first = Math.max(Math.max(jump / speed, Math.sqrt(jump / acceleration)), SHORTEST * longest);
        while (first < longest && rate(first) > speed * (1 + ROUNDING)) {
            first *= STEP;
        }
        first = Math.min(first, longest);
        half1 = first / 2;
        double longestSecond = 4 * most / (acceleration * first);
        double second = Math.max(jump / (acceleration * first), SHORTEST * longestSecond);
        while (second < longestSecond && acceleration(first, second) > acceleration * (1 + ROUNDING)) {
            second *= STEP;
        }
        half2 = Math.min(second, longestSecond) / 2;
    }

    /** Time in which a jump is blended. */
    double timeS() {
        return 2 * (half1 + half2);
    }

    /** Largest rate of the mean over a time. */
    private double rate(double first) {
        double most = 0;
        for (int i = 0; i <= wanted.pieces(); i++) {
            double at = wanted.timeS(i);
            for (int side = 0; side < 2; side++) {
                double x = wanted.xAt(i, side == 0);
                double y = wanted.yAt(i, side == 0);
                most = Math.max(most, Math.hypot(wanted.x(at + first) - x, wanted.y(at + first) - y));
                most = Math.max(most, Math.hypot(x - wanted.x(at - first), y - wanted.y(at - first)));
            }
        }
        return most / first;
    }

    /** Largest change of the rate of both means. */
    private double acceleration(double first, double second) {
        double[] offset = {first + second, second, first, 0};
        double[] sign = {1, -1, -1, 1};
        double most = 0;
        for (int i = 0; i <= wanted.pieces(); i++) {
            for (int known = 0; known < 4; known++) {
                double restX = 0;
                double restY = 0;
                for (int k = 0; k < 4; k++) {
                    if (k != known) {
                        double at = wanted.timeS(i) + offset[k] - offset[known];
                        restX += sign[k] * wanted.x(at);
                        restY += sign[k] * wanted.y(at);
                    }
                }
                for (int side = 0; side < 2; side++) {
                    double x = restX + sign[known] * wanted.xAt(i, side == 0);
                    double y = restY + sign[known] * wanted.yAt(i, side == 0);
                    most = Math.max(most, Math.hypot(x, y));
                }
            }
        }
        return most / (first * second);
    }

    private double rateX(double atS) {
        return (wanted.integralX(atS + half1 + half2)
                        - wanted.integralX(atS + half1 - half2)
                        - wanted.integralX(atS - half1 + half2)
                        + wanted.integralX(atS - half1 - half2))
                / (4 * half1 * half2);
    }

    private double rateY(double atS) {
        return (wanted.integralY(atS + half1 + half2)
                        - wanted.integralY(atS + half1 - half2)
                        - wanted.integralY(atS - half1 + half2)
                        + wanted.integralY(atS - half1 - half2))
                / (4 * half1 * half2);
    }

    /**
     * The blended tilt at every time at which its law changes: between them it is a cubic of the time. Rows of times,
     * displacements in x and y, and their rates.
     */
    double[][] nodes() {
        double[] times = times();
        double[][] nodes = new double[5][times.length];
        int first = 0;
        double x = wanted.xAt(0, false);
        double y = wanted.yAt(0, false);
        double beforeX = 0;
        double beforeY = 0;
        for (int i = 0; i < times.length; i++) {
            double nowX = rateX(times[i]);
            double nowY = rateY(times[i]);
            if (i > 0) {
                double step = times[i] - times[i - 1];
                double middle = times[i - 1] + step / 2;
                x += step / 6 * (beforeX + 4 * rateX(middle) + nowX);
                y += step / 6 * (beforeY + 4 * rateY(middle) + nowY);
            }
            nodes[0][i] = times[i];
            nodes[1][i] = x;
            nodes[2][i] = y;
            nodes[3][i] = nowX;
            nodes[4][i] = nowY;
            beforeX = nowX;
            beforeY = nowY;
            first = times[i] <= 0 ? i : first;
        }
        for (int row = 0; row < nodes.length; row++) {
            nodes[row] = Arrays.copyOfRange(nodes[row], first, times.length);
        }
        return nodes;
    }

    /** All times at which the law changes, ascending, from before the start to the end. */
    private double[] times() {
        int n = wanted.pieces() + 1;
        double end = wanted.endS();
        double[] times = new double[5 * n + 1];
        int count = 0;
        times[count++] = -(half1 + half2);
        double[] shifts = {0, half1 + half2, half1 - half2, half2 - half1, -half1 - half2};
        for (int i = 0; i < n; i++) {
            for (double shift : shifts) {
                double at = wanted.timeS(i) + shift;
                if (at > times[0] && at <= end) {
                    times[count++] = at;
                }
            }
        }
        Arrays.sort(times, 0, count);
        double shortest = ROUNDING * Math.max(end, half1);
        int kept = 1;
        for (int i = 1; i < count; i++) {
            if (times[i] - times[kept - 1] > shortest || times[i] == end) {
                kept += times[i] - times[kept - 1] > 0 ? 1 : 0;
                times[kept - 1] = times[i];
            }
        }
        return Arrays.copyOf(times, kept);
    }
}

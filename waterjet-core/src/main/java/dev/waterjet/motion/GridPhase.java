package dev.waterjet.motion;

import org.apache.commons.math3.analysis.solvers.BrentSolver;

/**
 * Part of a path on which the motion without limits of jerk has constant acceleration, or near rest the ramp of constant
 * jerk, and the grid steps that it takes. Set again for each part, so that a grid allocates little.
 *
 * <p>A step lasts a share of the jerk time near events, which are the places where the acceleration jumps. From two jerk
 * times off, each step is half as long again as the one before.
 */
final class GridPhase {

    /** Rate at which steps grow: one and a half times from step to step. */
    private static final double RATE = Math.log(1.5);

    /** Jerk times beside an event in which steps do not grow. */
    private static final double EVEN_JERK_TIMES = 2;

    private static final int MAX_EVALUATIONS = 200;
    private static final double TIME_TOLERANCE = 1e-10;

    int stretch;
    double startM;
    double lengthM;
    double startSpeed;
    double endSpeed;
    /** Time for the part at the reference motion. */
    double timeS;
    /** Time of one step near an event. */
    double stepS;
    /** Steps of {@link #stepS} in a jerk time. */
    double stepsPerJerkTime;
    /** Whether steps grow off the events. */
    boolean isGrowing;
    /** Time from the last event to the start of the part, and from its end to the next. */
    double sinceS;

    double untilS;
    /** Steps even in length that follow an arc with limits of the axes; they come on top of those of the time. */
    double angleSteps;
    /** Jerk of the ramp from rest (above 0) or to rest (below 0) at {@link #restM}; 0 for constant acceleration. */
    double rampJerk;

    double restM;

    boolean isAtConstantSpeed() {
        return rampJerk == 0 && Math.abs(endSpeed - startSpeed) <= 1e-9 * startSpeed;
    }

    double endM() {
        return startM + lengthM;
    }

    /** Number of steps. */
    double steps() {
        return timeSteps(timeS) + angleSteps;
    }

    /** Number of steps if they were even in time. */
    double evenSteps() {
        return timeS / stepS + angleSteps;
    }

    /** Steps of the time from the start of the part. */
    private double timeSteps(double afterS) {
        if (!isGrowing) {
            return afterS / stepS;
        }
        double middle = middleS();
        double steps = stepsIn(sinceS + Math.min(afterS, middle)) - stepsIn(sinceS);
        return afterS <= middle ? steps : steps + stepsIn(untilS + timeS - middle) - stepsIn(untilS + timeS - afterS);
    }

    /** Time within the part at which it is as far from the last event as from the next. */
    private double middleS() {
        return Math.max(0, Math.min(timeS, (untilS + timeS - sinceS) / 2));
    }

    private double stepsIn(double timeFromEventS) {
        double even = EVEN_JERK_TIMES * stepsPerJerkTime;
        double steps = timeFromEventS / stepS;
        return steps <= even ? steps : even + Math.log1p(RATE * (steps - even)) / RATE;
    }

    private double timeOf(double number) {
        double even = EVEN_JERK_TIMES * stepsPerJerkTime;
        return stepS * (number <= even ? number : even + Math.expm1(RATE * (number - even)) / RATE);
    }

    /** Place after a number of steps. */
    double placeAfter(double number) {
        if (angleSteps > 0) {
            return placeAfterBoth(number);
        }
        if (!isGrowing) {
            return placeAt(number * stepS);
        }
        return number <= timeSteps(middleS())
                ? placeAt(timeOf(stepsIn(sinceS) + number) - sinceS)
                : placeAt(timeS - (timeOf(stepsIn(untilS) + timeSteps(timeS) - number) - untilS));
    }

    /** Place at which the steps of the time and those of the angle add up to a number. */
    private double placeAfterBoth(double number) {
        if (number <= bothSteps(0)) {
            return startM;
        }
        if (number >= bothSteps(timeS)) {
            return endM();
        }
        double after = new BrentSolver(TIME_TOLERANCE * timeS)
                .solve(MAX_EVALUATIONS, afterS -> bothSteps(afterS) - number, 0, timeS);
        return placeAt(after);
    }

    private double bothSteps(double afterS) {
        return timeSteps(afterS) + angleSteps * (placeAt(afterS) - startM) / lengthM;
    }

    private double placeAt(double afterS) {
        if (rampJerk > 0) {
            double t = rampTime(startM) + afterS;
            return restM + rampJerk * t * t * t / 6;
        }
        if (rampJerk < 0) {
            double t = rampTime(endM()) + timeS - afterS;
            return restM + rampJerk * t * t * t / 6;
        }
        double speed = startSpeed + (endSpeed - startSpeed) * afterS / timeS;
        return startM + (startSpeed + speed) / 2 * afterS;
    }

    private double rampTime(double atM) {
        return Math.cbrt(6 * (atM - restM) / rampJerk);
    }

    /** Takes the ramp of constant jerk from rest at a place, if that is the slower one. */
    void rampFrom(double atRestM, double jerk) {
        ramp(atRestM, jerk, startM - atRestM, endM() - atRestM);
    }

    /** Takes the ramp of constant jerk to rest at a place, if that is the slower one. */
    void rampTo(double atRestM, double jerk) {
        ramp(atRestM, -jerk, atRestM - endM(), atRestM - startM);
    }

    private void ramp(double atRestM, double signedJerk, double nearM, double farM) {
        double jerk = Math.abs(signedJerk);
        double time = Math.cbrt(6 / jerk) * (Math.cbrt(farM) - Math.cbrt(nearM));
        if (time > timeS) {
            timeS = time;
            rampJerk = signedJerk;
            restM = atRestM;
            startSpeed = rampSpeed(jerk, signedJerk > 0 ? nearM : farM);
            endSpeed = rampSpeed(jerk, signedJerk > 0 ? farM : nearM);
        }
    }

    /** Speed on the ramp of constant jerk at a distance from rest. */
    static double rampSpeed(double jerk, double fromRestM) {
        return Math.cbrt(4.5 * jerk * fromRestM * fromRestM);
    }
}

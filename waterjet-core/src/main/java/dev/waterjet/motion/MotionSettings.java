package dev.waterjet.motion;

import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;

/**
 * Settings of the computation of a motion.
 *
 * @param stepsPerJerkTime grid steps to the jerk time, 4 to 64: 8 give times within 0.06 % of the optimum, 16 within 0.02 %
 * @param windowNodes nodes of a window of the optimization with jerk, at least 200; memory is in proportion to it
 * @param arcStepRad angle of an interval on arcs with limits of the axes in motion without jerk, up to 0.1 rad
 */
record MotionSettings(double stepsPerJerkTime, int windowNodes, double arcStepRad) {

    MotionSettings {
        Require.between("number of grid steps to the jerk time", stepsPerJerkTime, 4, 64, Units.ONE, "");
        Require.atLeast("number of nodes of a window", windowNodes, 200, Units.ONE, "it must hold a braking distance");
        Require.above("angle of an interval on an arc", arcStepRad, 0, Units.ONE, "in radians");
        Require.atMost("angle of an interval on an arc", arcStepRad, 0.1, Units.ONE, "in radians");
    }

    static MotionSettings defaults() {
        return new MotionSettings(8, 4000, Math.PI / 1000);
    }

    MotionSettings withStepsPerJerkTime(double steps) {
        return new MotionSettings(steps, windowNodes, arcStepRad);
    }

    MotionSettings withWindowNodes(int nodes) {
        return new MotionSettings(stepsPerJerkTime, nodes, arcStepRad);
    }

    MotionSettings withArcStep(double angleRad) {
        return new MotionSettings(stepsPerJerkTime, windowNodes, angleRad);
    }
}

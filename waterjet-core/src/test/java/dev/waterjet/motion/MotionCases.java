package dev.waterjet.motion;

import dev.waterjet.kerf.CutFrontSetting;
import dev.waterjet.kerf.KerfProfile;
import dev.waterjet.reference.CaseAnswer;
import dev.waterjet.reference.CaseRow;
import dev.waterjet.reference.VirtualCutRow;
import java.util.Map;
import java.util.Optional;

/** Cases of this package: motion along paths, speeds at corners and arcs, slowdown. */
public final class MotionCases {

    private MotionCases() {}

    /** Answers rows about the motion along a path. */
    public static Optional<CaseAnswer> path(CaseRow row) {
        String path = row.get("path");
        String limits = row.get("limits");
        double computed;
        switch (row.get("group")) {
            case "acc", "axis", "jerk", "axis-jerk" -> {
                CaseText text = CaseText.path(path);
                computed = MotionSolver.solve(
                                text.pieces, text.caps, CaseText.limits(limits), MotionSettings.defaults())
                        .timeS();
            }
            case "speed" -> computed = speed(path, CaseText.values(limits));
            default -> {
                return Optional.empty();
            }
        }
        return Optional.of(CaseAnswer.within(
                computed, Double.parseDouble(row.get("expected")), Double.parseDouble(row.get("tolerance_rel"))));
    }

    private static double speed(String path, Map<String, String> limits) {
        double none = Double.POSITIVE_INFINITY;
        double jerk = CaseText.si(limits, "j_norm", none);
        double deviation = CaseText.si(limits, "deviation", none);
        if (path.startsWith("corner")) {
            double turn = Math.toRadians(VirtualCutRow.length(path, "turn"));
            double acceleration = CaseText.si(limits, "a_across", CaseText.si(limits, "a_path", none));
            return TurnKernel.pulseCornerSpeed(acceleration, jerk, deviation, none, Math.sin(turn / 2));
        }
        double curvature = 1 / VirtualCutRow.length(path, "R");
        return path.startsWith("line")
                ? TurnKernel.curvatureJumpSpeed(jerk, deviation, curvature, none)
                : TurnKernel.steadyArcSpeed(jerk, curvature);
    }

    /** Answers rows about slowdown at corners. */
    public static Optional<CaseAnswer> slowdown(CaseRow row) {
        VirtualCutRow cut = VirtualCutRow.of(row.columns());
        return compute(cut).map(si -> CaseAnswer.within(si, cut.value(), cut.relativeTolerance()));
    }

    /** Value of a row; empty if it is about something else. */
    static Optional<Double> compute(VirtualCutRow row) {
        String argument = row.argument();
        return switch (row.quantity()) {
            case "effective feed of a slow zone" -> {
                String[] sides = argument.split(" within ", -1);
                yield Optional.of(errors(row, row.feed(sides[sides.length - 1]))
                        .effectiveFeed(row.feed(argument), VirtualCutRow.length(argument, "+-")));
            }
            case "reach ahead of the end" -> {
                double slow = row.feed(argument);
                double lag = CutFrontSetting.front(row).exitLagSi(slow);
                boolean isInLags = argument.matches(".*length\\s*[0-9.]*\\s*L.*");
                double length = isInLags ? lags(argument) * lag : VirtualCutRow.length(argument, "length");
                yield Optional.of(errors(row, row.parameter("u1")).reach(slow, length));
            }
            case "predicted notch" ->
                Optional.of(errors(row, row.feed(argument.substring(argument.indexOf("within"))))
                        .notch(row.feed(argument), Math.toRadians(VirtualCutRow.length(argument, "turn"))));
            case "trailer factor" ->
                Optional.of(TractrixCorner.factor(Math.toRadians(VirtualCutRow.numbers(argument)[0])));
            case "corner feed by the rule" -> Optional.of(corner(row).feedMPerS());
            default -> Optional.empty();
        };
    }

    private static double lags(String argument) {
        double[] numbers = VirtualCutRow.numbers(argument.replaceAll(".*length\\s*([0-9.]*)\\s*L.*", "$1"));
        return numbers.length == 0 ? 1 : numbers[0];
    }

    /** Errors at the depth of the row. */
    private static SlowdownErrors errors(VirtualCutRow row, double straight) {
        KerfProfile profile = CutFrontSetting.profile(row, row.depth());
        return new SlowdownErrors(profile, straight, RemainingLag.upright(profile.front()));
    }

    /** Slowdown at the corner of a row. */
    static Slowdown corner(VirtualCutRow row) {
        String argument = row.argument();
        if (argument.contains("depths") && !argument.contains("depths linspace(0.02,1,9)h")) {
            throw new IllegalArgumentException("the policy looks at nine depths from 0.02 h to h");
        }
        KerfProfile profile = CutFrontSetting.profile(row);
        double tolerance = VirtualCutRow.length(argument, "tolerance");
        SlowdownPolicy policy = new SlowdownPolicy(
                profile, row.parameter("u1"), tolerance, SlowdownSettings.upright(SlowdownRules.cautious()));
        return policy.corner(Math.toRadians(VirtualCutRow.length(argument, "turn")), argument.contains("inside"));
    }
}

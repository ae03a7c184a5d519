package dev.waterjet.kerf;

import dev.waterjet.reference.CaseAnswer;
import dev.waterjet.reference.CaseRow;
import dev.waterjet.reference.VirtualCutRow;
import java.util.Arrays;
import java.util.Optional;

/** Cases of this package: cut front and straight walls. */
@SuppressWarnings("StringSplitter")
public final class KerfCases {

    private KerfCases() {}

    /** Answers rows about the cut front and straight walls. */
    public static Optional<CaseAnswer> answer(CaseRow row) {
        VirtualCutRow cut = VirtualCutRow.of(row.columns());
        return compute(cut).map(si -> CaseAnswer.within(si, cut.value(), cut.relativeTolerance()));
    }

    /** Value of a row; empty if it is about something else. */
    static Optional<Double> compute(VirtualCutRow row) {
        String quantity = row.quantity();
        if (quantity.startsWith("lag after")) {
            return Optional.of(lagAfterStep(row));
        }
        if (quantity.startsWith("lag, feeds by pieces")) {
            return Optional.of(lagAtLastTime(CutFrontSetting.front(row), row));
        }
        return steady(row);
    }

    private static double lagAfterStep(VirtualCutRow row) {
        String quantity = row.quantity();
        boolean isStop = quantity.startsWith("lag after stop from ");
        double before = row.feed(quantity);
        double after = isStop ? 0 : row.feed(quantity.substring(quantity.indexOf(" to ")));
        return CutFrontSetting.front(row).lagAfterStepSi(before, after, row.depth(), row.argument("t"));
    }

    private static Optional<Double> steady(VirtualCutRow row) {
        CutFront front = CutFrontSetting.front(row);
        KerfProfile profile = CutFrontSetting.profile(row);
        return switch (row.quantity()) {
            case "H" -> Optional.of(front.separationDepthSi(row.feed(row.argument())));
            case "L_ss" -> Optional.of(front.lagSi(row.feed(row.argument()), row.depth()));
            case "travel time" -> Optional.of(front.travelTimeSi(row.feed(row.argument()), row.depth()));
            case "sigma" -> Optional.of(profile.spreadSi());
            case "corner feed for a lag" -> Optional.of(front.feedForLagSi(row.argument("L_a"), row.depth()));
            case "run-in length" -> Optional.of(runIn(front, row));
            case "straight half width" -> Optional.of(profile.halfWidthSi(row.depth(), row.feed(row.argument())));
            default -> Optional.empty();
        };
    }

    private static double runIn(CutFront front, VirtualCutRow row) {
        double feed = front.feedForLagSi(row.argument("L_a"), row.depth());
        return feed * front.travelTimeSi(feed, row.depth());
    }

    private static double lagAtLastTime(CutFront front, VirtualCutRow row) {
        String[] lists = row.argument().split("feeds=");
        double[] times = VirtualCutRow.numbers(lists[0]);
        double[] feeds = Arrays.copyOf(VirtualCutRow.numbers(lists[1]), times.length - 1);
        NozzleMotion motion = NozzleMotion.fromRestSi(times, feeds);
        return front.lagAtSi(motion, row.depth(), motion.endSi());
    }
}

package dev.waterjet.toolpath;

import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.Units;
import dev.waterjet.part.Finding;
import dev.waterjet.part.Point;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/**
 * A lead before its path is drawn, and the measures of its checks, in metres.
 *
 * @param frame place of the entry
 * @param shape shape of the lead
 * @param cornerM distance of the entry from the nearest corner along the contour
 * @param webM material of the part behind the entry
 * @param pierceM distance of the pierce point from the nearest edge; below zero if it lies in the part
 * @param nearM minimum distance of the leads from the part beside the entry
 * @param farM minimum distance of the rest of the leads
 */
record LeadTrial(
        LeadFrame frame,
        LeadShape shape,
        double cornerM,
        double webM,
        double pierceM,
        double nearM,
        double farM,
        CuttingRules rules) {

    /** Codes of the checks that keep the part whole. */
    private static final Set<String> CLEARANCES = Set.of("pierce-clearance", "lead-clearance");

    /** Rounding of distances. */
    private static final double ROUNDING_M = 2e-9;

    boolean isClear() {
        return pierceM >= rules.pierceClearanceSi() - ROUNDING_M && leadRoom() >= -ROUNDING_M;
    }

    boolean isInGoodPlace() {
        return cornerM >= rules.cornerClearanceSi() && webM >= rules.minimumWebSi();
    }

    /** Excess of the distance of the leads from the part over the required one; negative if they are nearer. */
    private double leadRoom() {
        return Math.min(nearM - rules.offsetSi(), farM - rules.offsetSi() - rules.marginSi());
    }

    /** The larger, the better a trial that is not clear. */
    double merit() {
        double pierce = Math.min(0, pierceM - rules.pierceClearanceSi());
        double place = isInGoodPlace() ? rules.marginSi() / 2 : 0;
        return pierce + 2 * Math.min(0, leadRoom()) + place;
    }

    /** Findings of all checks; a contour without corners has none about them. */
    List<Finding> findings() {
        Point entry = Point.ofSi(frame.entryX(), frame.entryY());
        Point pierce = Point.ofSi(frame.x(shape.pierceX(), shape.pierceY()), frame.y(shape.pierceX(), shape.pierceY()));
        double required = rules.offsetSi() + rules.marginSi();
        List<Finding> findings = new ArrayList<>();
        if (cornerM < Double.POSITIVE_INFINITY) {
            findings.add(Finding.atLeast(
                    Message.of("lead-corner", "the entry lies {value} from the nearest corner; required are {limit}"),
                    cornerM,
                    rules.cornerClearanceSi(),
                    entry,
                    Message.of("enter-on-longer-edge", "enter in the middle of a longer edge")));
        }
        findings.addAll(List.of(
                Finding.atLeast(
                        Message.of("lead-web", "{value} of the part lie behind the entry; required are {limit}"),
                        webM,
                        rules.minimumWebSi(),
                        entry,
                        Message.of("enter-at-wider-web", "enter where the part is wider")),
                Finding.atLeast(
                        Message.of(
                                "pierce-clearance",
                                "the pierce point lies {value} from the part, below 0 inside it; required are {limit}"),
                        snapped(pierceM, rules.pierceClearanceSi()),
                        rules.pierceClearanceSi(),
                        pierce,
                        Message.of("pierce-elsewhere", "pierce elsewhere or take a smaller jet")),
                Finding.atLeast(
                        Message.of(
                                "lead-clearance",
                                "away from the entry the leads come within {value} of the part; half the kerf and a"
                                        + " margin are {limit}"),
                        snapped(required + leadRoom(), required),
                        required,
                        entry,
                        Message.of("shorten-lead", "shorten the leads or enter elsewhere")),
                size(entry)));
        return List.copyOf(findings);
    }

    /** A value that equals its limit but for rounding. */
    private static double snapped(double value, double limit) {
        return Math.abs(value - limit) <= ROUNDING_M ? limit : value;
    }

    private Finding size(Point entry) {
        double length = shape.kind() == LeadShape.Kind.QUARTER || shape.kind() == LeadShape.Kind.STRAIGHT
                ? shape.lengthM()
                : rules.leadLengthSi();
        Message message = Message.of(
                        "lead-size",
                        "the lead has a radius of {radius} and a straight part of {length}; requested are"
                                + " {radius_limit} and {length_limit}")
                .with("radius", Kind.LENGTH, shape.radiusM(), Units.MILLIMETRE)
                .with("length", Kind.LENGTH, length, Units.MILLIMETRE)
                .with("radius_limit", Kind.LENGTH, rules.leadRadiusSi(), Units.MILLIMETRE)
                .with("length_limit", Kind.LENGTH, rules.leadLengthSi(), Units.MILLIMETRE);
        boolean isFull = shape.radiusM() >= rules.leadRadiusSi() && length >= rules.leadLengthSi();
        return isFull
                ? Finding.satisfied(message, entry)
                : Finding.violated(
                        message, entry, Message.of("accept-small-lead", "accept a larger mark at the entry"));
    }

    /** Whether a finding of this code is about a clearance. */
    static boolean isClearance(String code) {
        return CLEARANCES.contains(code);
    }
}

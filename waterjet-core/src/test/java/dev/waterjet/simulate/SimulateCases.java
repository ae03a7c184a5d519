package dev.waterjet.simulate;

import dev.waterjet.kerf.CutFrontSetting;
import dev.waterjet.kerf.HeadTilt;
import dev.waterjet.kerf.KerfProfile;
import dev.waterjet.kerf.LagGeometry;
import dev.waterjet.measure.Kind;
import dev.waterjet.reference.CaseAnswer;
import dev.waterjet.reference.CaseRow;
import dev.waterjet.reference.VirtualCutRow;
import java.util.Optional;

/** Cases of this package: doses, walls, tilt of the head. */
public final class SimulateCases {

    /** Half length of straight runs: much longer than the dose reaches. */
    private static final double FAR_M = 20e-3;

    private static final double ACCURACY_M = 1e-16;

    private SimulateCases() {}

    /** Answers rows about doses, walls and tilt. */
    public static Optional<CaseAnswer> answer(CaseRow row) {
        VirtualCutRow cut = VirtualCutRow.of(row.columns());
        return compute(cut).map(value -> CaseAnswer.within(value, cut.value(), cut.relativeTolerance()));
    }

    /** Value of a row; empty if it is about something else. */
    static Optional<Double> compute(VirtualCutRow row) {
        String quantity = row.quantity();
        if (quantity.startsWith("dose of")) {
            return Optional.of(dose(row));
        }
        if (quantity.startsWith("tilt")) {
            return Optional.of(tilt(row));
        }
        if (quantity.startsWith("residual lag with lead")) {
            return Optional.of(residual(row));
        }
        if (quantity.startsWith("half width beside a start dwelt")) {
            return Optional.of(besideStart(row));
        }
        if (quantity.startsWith("half width in a slow zone")) {
            return Optional.of(inSlowZone(row));
        }
        if (quantity.startsWith("wall on the")) {
            return Optional.of(onBisector(row));
        }
        return quantity.matches("wall (beyond|within) the nozzle circle.*")
                ? Optional.of(onArc(row))
                : Optional.empty();
    }

    private static double dose(VirtualCutRow row) {
        KerfProfile profile = CutFrontSetting.profile(row);
        String quantity = row.quantity();
        if (quantity.contains("circle")) {
            double radius = VirtualCutRow.length(quantity, "circle of");
            double at = VirtualCutRow.length(row.argument(), "radius");
            return DoseKernel.circle(radius, row.feed(quantity), at, profile.spreadSi());
        }
        double[] ends = VirtualCutRow.points(quantity);
        double[] at = VirtualCutRow.points(row.argument());
        FootSegments segments = new FootSegments(1);
        if (quantity.contains("dwell")) {
            segments.add(ends[0], ends[1], ends[0], ends[1], VirtualCutRow.length(quantity, "dwell of"), 0);
        } else {
            double length = Math.hypot(ends[2] - ends[0], ends[3] - ends[1]);
            segments.add(ends[0], ends[1], ends[2], ends[3], length / row.feed(quantity), 0);
        }
        DoseField field = new DoseField(profile, segments);
        field.at(row.parameter("h"));
        field.evaluate(at[0], at[1]);
        return field.dose;
    }

    private static double tilt(VirtualCutRow row) {
        double[] m = VirtualCutRow.points(row.argument());
        HeadTilt tilt = HeadTilt.ofSi(m[0], m[1]);
        return Math.toDegrees(Kind.ANGLE.si(
                switch (row.quantity()) {
                    case "tilt incl", "tilt theta" -> tilt.inclination();
                    case "tilt azim" -> tilt.azimuth().orElseThrow();
                    case "tilt A" -> tilt.gimbalA();
                    case "tilt B" -> tilt.gimbalB();
                    case "tilt C" -> tilt.forkC().orElseThrow();
                    default -> throw new IllegalArgumentException(row.quantity());
                }));
    }

    private static double residual(VirtualCutRow row) {
        double lead = VirtualCutRow.length(row.quantity(), "lead");
        // the text rounds the lead that leaves the smallest residual
        double exact = lead == 0.8284 ? HeadTilt.MINIMAX_LEAD : lead;
        return HeadTilt.residualLagSi(CutFrontSetting.front(row).exitLagSi(row.feed(row.argument())), exact);
    }

    private static double besideStart(VirtualCutRow row) {
        KerfProfile profile = CutFrontSetting.profile(row);
        double feed = row.feed(row.quantity());
        double dwell = VirtualCutRow.length(row.quantity(), "dwelt");
        FootSegments segments = new FootSegments(2);
        segments.add(0, 0, 0, 0, dwell, 0);
        segments.add(0, 0, FAR_M, 0, FAR_M / feed, 0);
        return -wall(profile, segments, row.depth(), new double[] {0, 0, 0, -1});
    }

    private static double inSlowZone(VirtualCutRow row) {
        KerfProfile profile = CutFrontSetting.profile(row);
        double half = VirtualCutRow.length(row.quantity(), "+-");
        double slow = row.feed(row.quantity());
        double straight = row.parameter("u1");
        FootSegments segments = new FootSegments(3);
        segments.add(-FAR_M, 0, -half, 0, (FAR_M - half) / straight, 0);
        segments.add(-half, 0, half, 0, 2 * half / slow, 0);
        segments.add(half, 0, FAR_M, 0, (FAR_M - half) / straight, 0);
        double x = VirtualCutRow.length(row.argument(), "x=");
        return -wall(profile, segments, row.depth(), new double[] {x, 0, 0, -1});
    }

    private static double onBisector(VirtualCutRow row) {
        KerfProfile profile = CutFrontSetting.profile(row);
        double turn = Math.toRadians(VirtualCutRow.length(row.argument(), "turn"));
        double time = FAR_M / row.feed(row.quantity());
        FootSegments segments = new FootSegments(2);
        segments.add(-FAR_M, 0, 0, 0, time, 0);
        segments.add(0, 0, FAR_M * Math.cos(turn), FAR_M * Math.sin(turn), time, 0);
        double sign = row.quantity().contains("inner") ? -1 : 1;
        double angle = (turn + Math.PI) / 2;
        return -wall(
                profile, segments, row.depth(), new double[] {0, 0, sign * Math.cos(angle), sign * Math.sin(angle)});
    }

    /** First cut place on a line from far away: x, y of its end, and its direction there. */
    private static double wall(KerfProfile profile, FootSegments segments, double depthM, double[] line) {
        DoseField field = new DoseField(profile, segments);
        field.at(depthM);
        WallSearch search = new WallSearch(field, ACCURACY_M);
        if (!search.find(line[0], line[1], line[2], line[3], -4 * profile.jetRadiusSi(depthM), 0)) {
            throw new IllegalStateException("nothing is cut");
        }
        return search.wallM;
    }

    private static double onArc(VirtualCutRow row) {
        String quantity = row.quantity();
        LagGeometry geometry = quantity.contains("tangent")
                ? LagGeometry.TANGENT
                : quantity.contains("follow") ? LagGeometry.FOLLOWING : LagGeometry.TRACTRIX;
        SteadyArc arc = new SteadyArc(
                CutFrontSetting.profile(row),
                geometry,
                VirtualCutRow.length(quantity, "R"),
                row.feed(quantity),
                row.depth());
        return quantity.contains("outer") ? arc.outerWall() : arc.innerWall();
    }
}

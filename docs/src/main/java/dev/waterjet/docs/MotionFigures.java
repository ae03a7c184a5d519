package dev.waterjet.docs;

import static dev.waterjet.measure.Measures.gramsPerMinute;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.metresPerSecond;
import static dev.waterjet.measure.Measures.metresPerSquareSecond;
import static dev.waterjet.measure.Measures.millimetres;

import dev.waterjet.examples.chart.Chart;
import dev.waterjet.feed.CutConditions;
import dev.waterjet.feed.MachinabilityFeed;
import dev.waterjet.hydraulics.Orifice;
import dev.waterjet.jet.Abrasive;
import dev.waterjet.jet.CuttingHead;
import dev.waterjet.jet.FocusingTube;
import dev.waterjet.jet.Mesh;
import dev.waterjet.kerf.CutFront;
import dev.waterjet.kerf.LagModel;
import dev.waterjet.kerf.NozzleMotion;
import dev.waterjet.material.Materials;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import dev.waterjet.motion.FeedPlan;
import dev.waterjet.motion.FeedPlanner;
import dev.waterjet.motion.MachineLimits;
import dev.waterjet.motion.SlowZone;
import dev.waterjet.part.Contour;
import dev.waterjet.part.Point;
import dev.waterjet.part.Side;
import dev.waterjet.quality.CutQuality;
import dev.waterjet.quality.EdgeRequirement;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Figures about the cut front and the feed rate along a path. */
final class MotionFigures {

    private static final MachineLimits MACHINE = MachineLimits.of(metresPerSecond(0.3), metresPerSquareSecond(0.5));

    private MotionFigures() {}

    static List<Figure> all() {
        return List.of(
                new Figure("motion-front", MotionFigures::front),
                new Figure("motion-feed-lag", MotionFigures::feedAndLag),
                new Figure("motion-sampling", MotionFigures::sampling),
                new Figure("motion-corner-time", MotionFigures::cornerTime),
                new Figure("motion-corner-feed", MotionFigures::cornerFeed));
    }

    private static CutConditions steel(double thicknessMm) {
        return CutConditions.of(
                CuttingHead.of(
                                Orifice.sapphire(millimetres(0.33)),
                                FocusingTube.of(millimetres(1.02), millimetres(102)))
                        .jet(megapascals(380), Abrasive.garnet(Mesh.of(80)), gramsPerMinute(450)),
                Workpiece.of(Materials.standard().get("mild-steel-a36"), millimetres(thicknessMm)),
                MachinabilityFeed.published());
    }

    private static CutFront front(CutConditions cut) {
        return CutFront.of(LagModel.standard(), cut);
    }

    private static Contour corner(EdgeRequirement requirement) {
        return Contour.from(Point.millimetres(0, 0))
                .requirement(requirement)
                .lineTo(Point.millimetres(40, 0))
                .lineTo(Point.millimetres(40, 40))
                .open();
    }

    /** The front behind a head that slows to a fifth at the place zero. */
    private static String front() {
        CutConditions cut = steel(25);
        CutFront front = front(cut);
        double fast = cut.feed(CutQuality.MEDIUM).si();
        double slow = fast / 5;
        double tau = front.travelTimeSi(slow, cut.thicknessSi());
        NozzleMotion motion = NozzleMotion.fromSteadyFeedSi(fast, new double[] {0, 3 * tau}, new double[] {slow});
        Chart chart = Chart.of(
                        "The cut front after the head has slowed",
                        "Side view of the front in 25 mm steel behind a head that slows to a fifth of its feed rate."
                                + " At first the front is a long parabola. Then its upper part is short and steep, its"
                                + " lower part long as before, with a kink that runs down. Once the kink is at the bottom,"
                                + " the whole front is short.")
                .x("distance behind the head [mm]")
                .y("height above the bottom side [mm]")
                .xFrom(-2.6, 0.2);
        for (double share : new double[] {0, 0.35, 1}) {
            double time = share * tau + 1e-9;
            double[] x = new double[81];
            double[] y = new double[81];
            for (int i = 0; i <= 80; i++) {
                double depth = cut.thicknessSi() * Math.max(1e-3, i / 80.0);
                x[i] = -1e3 * front.lagAtSi(motion, depth, time);
                y[i] = 1e3 * (cut.thicknessSi() - depth);
            }
            chart.line(
                    share == 0
                            ? "before slowing"
                            : String.format(java.util.Locale.ROOT, "%.1f s after slowing", share * tau),
                    x,
                    y);
        }
        return chart.svg(720, 440);
    }

    /** Feed rate and lag at the bottom over distance around a corner, each over its value on straight edges. */
    private static String feedAndLag() {
        CutConditions cut = steel(25);
        CutFront front = front(cut);
        FeedPlan plan = FeedPlanner.of(MACHINE, cut).plan(corner(EdgeRequirement.defaults()), Side.RIGHT);
        int n = 1400;
        double from = 0.036;
        double to = 0.044;
        double[] times = new double[n + 1];
        double[] feeds = new double[n];
        double[] place = new double[n + 1];
        for (int i = 0; i <= n; i++) {
            place[i] = from + (to - from) * i / n;
            times[i] = plan.timeAtSi(place[i]);
        }
        for (int i = 0; i < n; i++) {
            feeds[i] = (place[i + 1] - place[i]) / (times[i + 1] - times[i]);
        }
        double straight = cut.feed(CutQuality.MEDIUM).si();
        NozzleMotion motion = NozzleMotion.fromSteadyFeedSi(straight, times, feeds);
        double[] x = new double[n];
        double[] feed = new double[n];
        double[] lag = new double[n];
        for (int i = 0; i < n; i++) {
            x[i] = 1e3 * (place[i] - 0.04);
            feed[i] = feeds[i] / straight;
            lag[i] = front.lagAtSi(motion, cut.thicknessSi(), times[i]) / front.exitLagSi(straight);
        }
        return Chart.of(
                        "Feed rate and lag around an inside corner",
                        "In 25 mm steel the feed rate drops before the corner to 0.36 of the straight one, holds over"
                                + " one new lag length on both sides, and rises. The lag at the bottom falls in a straight"
                                + " line while the slow front comes down and reaches its new value at the corner.")
                .x("distance from the corner [mm]")
                .y("share of the straight value")
                .yFrom(0, 1.08)
                .line("feed rate", x, feed)
                .line("lag at the bottom", x, lag)
                .svg(720, 420);
    }

    /** Time of one circle over the length of the chords of which it is drawn. */
    private static String sampling() {
        FeedPlanner planner = FeedPlanner.of(MACHINE, steel(25));
        double[] chordsMm = {0.02, 0.05, 0.1, 0.2, 0.5, 1, 1.6};
        // other lengths for each kind, so that no mark hides another
        double[] roundedMm = Arrays.stream(chordsMm).map(length -> length / 1.2).toArray();
        double[] unevenMm = Arrays.stream(chordsMm).map(length -> length / 1.44).toArray();
        double ofArc = Kind.TIME.si(planner.plan(
                        Contour.circle(Point.millimetres(0, 0), millimetres(20), EdgeRequirement.defaults()), Side.LEFT)
                .time());
        double[] arc = new double[chordsMm.length];
        Arrays.fill(arc, ofArc);
        return Chart.of(
                        "One circle, drawn in chords",
                        "Time of a circle of 40 mm in 25 mm steel over the length of its chords: the arc, exact chords,"
                                + " chords rounded to a micrometre and chords of unequal length take the same time.")
                .x("length of the chords [mm]")
                .logX()
                .y("time [s]")
                .yFrom(0, ofArc * 1.25)
                .line("true arc", chordsMm, arc)
                .points("chords", chordsMm, times(planner, chordsMm, 0, 0))
                .points("rounded to 1 \u00b5m", roundedMm, times(planner, roundedMm, 1e-6, 0))
                .points("of unequal length", unevenMm, times(planner, unevenMm, 1e-6, 0.45))
                .svg(720, 380);
    }

    private static double[] times(FeedPlanner planner, double[] chordsMm, double roundedM, double shift) {
        return Arrays.stream(chordsMm)
                .map(length -> 2 * Math.rint(Math.PI * 20 / length))
                .map(count -> Kind.TIME.si(planner.plan(circle((int) count, roundedM, shift), Side.LEFT)
                        .time()))
                .toArray();
    }

    private static Contour circle(int chords, double roundedM, double shift) {
        double[] x = new double[chords + 1];
        double[] y = new double[chords + 1];
        for (int i = 0; i <= chords; i++) {
            double angle = 2 * Math.PI * (i % chords + (i % 2) * shift) / chords;
            x[i] = 0.02 * Math.cos(angle);
            y[i] = 0.02 * Math.sin(angle);
            if (roundedM > 0) {
                x[i] = Math.rint(x[i] / roundedM) * roundedM;
                y[i] = Math.rint(y[i] / roundedM) * roundedM;
            }
        }
        x[chords] = x[0];
        y[chords] = y[0];
        return Contour.polylineSi(x, y, EdgeRequirement.defaults());
    }

    /** Time that one inside corner costs over the error that is allowed there. */
    private static String cornerTime() {
        Chart chart = Chart.of(
                        "What an inside corner costs",
                        "Seconds that a right-angled inside corner adds, over the error of the bottom edge that is"
                                + " allowed, for three plates of steel. The curves fall with the error; below a least"
                                + " error that slowing can reach they are flat.")
                .x("allowed error of the bottom edge [mm]")
                .logX()
                .y("time lost at the corner [s]")
                .logY();
        for (double thickness : new double[] {10, 25, 50}) {
            CutConditions cut = steel(thickness);
            FeedPlanner planner = FeedPlanner.of(MACHINE, cut).withSeparationAtCorners(false);
            List<Double> x = new ArrayList<>();
            List<Double> y = new ArrayList<>();
            for (double error = 0.05; error < 4; error *= 1.12) {
                FeedPlan plan = planner.plan(
                        corner(EdgeRequirement.defaults().withLagTolerance(millimetres(error))), Side.RIGHT);
                double lost = Kind.TIME.si(plan.time())
                        - 0.08 / cut.feed(CutQuality.MEDIUM).si();
                if (lost > 0.12) {
                    x.add(error);
                    y.add(lost);
                }
            }
            chart.line(
                    Math.round(thickness) + " mm",
                    x.stream().mapToDouble(Double::doubleValue).toArray(),
                    y.stream().mapToDouble(Double::doubleValue).toArray());
        }
        return chart.svg(720, 420);
    }

    /** Feed rate at an outside corner over that of straight edges. */
    private static String cornerFeed() {
        Chart chart = Chart.of(
                        "Feed rate at an outside corner",
                        "Share of the straight feed rate at a right-angled outside corner of steel over thickness, for"
                                + " fine, medium and very coarse cut quality. Thin plates need no slowdown; it grows with"
                                + " thickness, and is largest for the very coarse cut, which has the longest lag.")
                .x("thickness [mm]")
                .y("share of the straight feed rate")
                .yFrom(0, 1.05);
        double[] thicknesses = new double[40];
        for (int i = 0; i < thicknesses.length; i++) {
            thicknesses[i] = 2 + 2.0 * i;
        }
        for (CutQuality quality : List.of(CutQuality.FINE, CutQuality.MEDIUM, CutQuality.VERY_COARSE)) {
            double[] share = new double[thicknesses.length];
            for (int i = 0; i < share.length; i++) {
                FeedPlan plan = FeedPlanner.of(
                                MachineLimits.of(metresPerSecond(1), metresPerSquareSecond(50)), steel(thicknesses[i]))
                        .plan(corner(EdgeRequirement.of(quality)), Side.LEFT);
                share[i] = plan.slowZones(0.999).stream()
                        .filter(zone -> zone.limit().isOfFront() && zone.place().equals(Point.millimetres(40, 0)))
                        .mapToDouble(MotionFigures::share)
                        .min()
                        .orElse(1);
            }
            chart.line(quality.label(), thicknesses, share);
        }
        return chart.svg(720, 420);
    }

    private static double share(SlowZone zone) {
        return Kind.SPEED.si(zone.minimumFeed()) / Kind.SPEED.si(zone.nominalFeed());
    }
}

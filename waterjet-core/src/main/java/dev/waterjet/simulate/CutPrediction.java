package dev.waterjet.simulate;

import dev.waterjet.evidence.Estimate;
import dev.waterjet.kerf.KerfProfile;
import dev.waterjet.kerf.LagGeometry;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import dev.waterjet.part.Contour;
import dev.waterjet.part.Side;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Steps of one prediction: offsets of the edges, the map, and the worst places with their uncertainty; in m, s. */
final class CutPrediction {

    private static final double MIN_SEARCH_M = 5e-3;
    private static final double RADII_SEARCHED = 4;
    /** Points for the offset of an edge. */
    private static final double OFFSET_SPACING_M = 1e-3;

    /** Path around a place that its uncertainty is computed with, beside three lags. */
    private static final double WINDOW_M = 12e-3;

    private static final double LAGS_IN_WINDOW = 3;

    private static final double MAX_DOSES = 2e8;
    private static final double RUNS_AT_A_TIME = 5;
    private static final double MAX_CELLS = 3e8;
    private static final double MAX_SEGMENTS = 3e9;

    private final CutSimulator simulator;
    private final KerfProfile kerf;
    private final HeadPath head;
    private final Contour contour;
    private final int outwards;
    private final double[] across;
    private final double[] offset;
    private final double[] straight;
    private double[] room = {};

    CutPrediction(CutSimulator simulator, KerfProfile kerf, HeadPath head, Contour contour, Side part) {
        this.simulator = simulator;
        this.kerf = kerf;
        this.head = head;
        this.contour = contour;
        this.outwards = -part.sign();
        this.across = new double[contour.size()];
        this.offset = new double[contour.size()];
        this.straight = new double[contour.size()];
        measureOffsets();
    }

    /** Finds how far the path is from each edge, and the greatest feed along it. */
    private void measureOffsets() {
        FootSegments segments = head.segments();
        SegmentGrid grid = new SegmentGrid(segments);
        double reach = Math.max(MIN_SEARCH_M, RADII_SEARCHED * kerf.jetRadiusSi(0));
        grid.build(reach, reach);
        ContourPoints probes = new ContourPoints(
                contour,
                outwards,
                ContourPoints.Spacing.probes(OFFSET_SPACING_M * HeadPath.coarsening(contour.lengthSi())),
                new double[contour.size()]);
        double fastest = 0;
        for (int i = 0; i < head.count; i++) {
            fastest = Math.max(fastest, head.feed[i]);
        }
        double[] found = new double[probes.count];
        double[] tilted = new double[probes.count];
        int[] nearest = new int[probes.count];
        int end = 0;
        for (int edge = 0; edge < contour.size(); edge++) {
            int n = 0;
            int start = end;
            for (; end < probes.count && probes.edge[end] == edge; end++) {
                int k = nearest(segments, grid, probes, end);
                nearest[end] = k;
                if (k >= 0) {
                    tilted[n] = across(segments, k, probes, end);
                    found[n++] = signedDistance(segments, k, probes, end);
                }
            }
            Arrays.sort(found, 0, n);
            Arrays.sort(tilted, 0, n);
            offset[edge] = n > 0 ? found[n / 2] : 0;
            across[edge] = n > 0 ? tilted[n / 2] : 0;
            double greatest = greatestFeed(segments, probes, Arrays.copyOfRange(nearest, start, end), start);
            straight[edge] = greatest > 0 ? greatest : fastest;
        }
    }

    /**
     * Greatest feed of segments that are nearest to points of an edge; 0 if there is none. Points in front of a corner of the path
     * are as near to the segment behind it, which is another edge's: they count if no other point does.
     */
    private static double greatestFeed(FootSegments segments, ContourPoints probes, int[] nearest, int start) {
        double greatest = 0;
        double beside = 0;
        for (int i = 0; i < nearest.length; i++) {
            int k = nearest[i];
            if (k >= 0 && segments.length[k] > 0) {
                double feed = 1 / segments.pace[k];
                double along = along(segments, k, probes, start + i);
                greatest = Math.max(greatest, feed);
                beside = along >= 0 && along <= segments.length[k] ? Math.max(beside, feed) : beside;
            }
        }
        return beside > 0 ? beside : greatest;
    }

    private static double along(FootSegments segments, int k, ContourPoints probes, int i) {
        return (probes.x[i] - segments.x[k]) * segments.ux[k] + (probes.y[i] - segments.y[k]) * segments.uy[k];
    }

    /** Displacement of the jet over depth away from the part, where the nozzle is nearest to a point. */
    private double across(FootSegments segments, int k, ContourPoints probes, int i) {
        if (!head.isTilted()) {
            return 0;
        }
        double along = Math.max(0, Math.min(segments.length[k], along(segments, k, probes, i)));
        double way = head.distance[segments.node[k]] + along;
        int found = Arrays.binarySearch(head.distance, 0, head.count, way);
        int node = Math.min(head.count - 1, found >= 0 ? found : -found - 1);
        return head.tiltX[node] * probes.normalX[i] + head.tiltY[node] * probes.normalY[i];
    }

    private static double squaredDistance(FootSegments segments, int k, double x, double y) {
        double dx = x - segments.x[k];
        double dy = y - segments.y[k];
        double along = dx * segments.ux[k] + dy * segments.uy[k];
        double beside = dx * segments.uy[k] - dy * segments.ux[k];
        double beyond = along < 0 ? along : Math.max(0, along - segments.length[k]);
        return beyond * beyond + beside * beside;
    }

    private static int nearest(FootSegments segments, SegmentGrid grid, ContourPoints probes, int i) {
        int best = -1;
        double least = Double.POSITIVE_INFINITY;
        if (grid.locate(probes.x[i], probes.y[i])) {
            for (int at = grid.first; at < grid.last; at++) {
                double squared = squaredDistance(segments, grid.item(at), probes.x[i], probes.y[i]);
                if (squared < least) {
                    least = squared;
                    best = grid.item(at);
                }
            }
        }
        return best;
    }

    private static double signedDistance(FootSegments segments, int k, ContourPoints probes, int i) {
        double at = Math.max(0, Math.min(segments.length[k], along(segments, k, probes, i)));
        double towards = (segments.x[k] + at * segments.ux[k] - probes.x[i]) * probes.normalX[i]
                + (segments.y[k] + at * segments.uy[k] - probes.y[i]) * probes.normalY[i];
        return Math.copySign(Math.sqrt(squaredDistance(segments, k, probes.x[i], probes.y[i])), towards);
    }

    DeviationMap map(ContourPoints.Spacing spacing, double[] depths) {
        ContourPoints points = new ContourPoints(contour, outwards, spacing, offset);
        double deepest = depths[depths.length - 1];
        double reach = 0;
        for (double feed : straight) {
            reach = Math.max(reach, CutRun.reachInwards(kerf, feed, deepest));
        }
        reach += deepest * head.largestTilt();
        double doses = (double) points.count * depths.length * (reach / kerf.spreadSi());
        requireFeasible(
                "number of doses of the prediction",
                doses * repeated(),
                MAX_DOSES,
                "points, times depths, times the lag over the spread of the dose");
        PartRoom behind = new PartRoom(points, reach);
        room = new double[points.count];
        Arrays.setAll(room, behind::behind);
        CutRun run = new CutRun(kerf, simulator.geometry(), head, points, straight, across);
        // the longest path of the front comes first: its cells tell what the others take
        run.at(deepest);
        requireFeasible(
                "number of cells of the prediction",
                (double) run.grid().entries() * depths.length,
                MAX_CELLS,
                "cells along the path, times depths");
        requireFeasible(
                "number of segments of the prediction",
                doses * run.grid().perCell(),
                MAX_SEGMENTS,
                "doses, times segments of the path within the reach of the jet");
        DeviationMap map = new DeviationMap(points, depths, simulator.surface(), uncertainty(points, depths));
        for (int i = 0; i < depths.length; i++) {
            map.fill(i, run, room);
        }
        return map;
    }

    /** Factor by which uncertainties take longer, as far as it counts: the other runs take no more memory. */
    private double repeated() {
        return simulator.hasUncertainty()
                ? Math.max(1, (1 + simulator.variations().size()) / RUNS_AT_A_TIME)
                : 1;
    }

    private MapUncertainty uncertainty(ContourPoints points, double[] depths) {
        return simulator.hasUncertainty()
                ? MapUncertainty.of(
                        points,
                        depths,
                        room,
                        profile -> new CutRun(profile, simulator.geometry(), head, points, straight, across),
                        simulator.variations(),
                        simulator.correlation())
                : MapUncertainty.NONE;
    }

    /** Refuses a prediction that would take minutes. */
    private static void requireFeasible(String name, double value, double limit, String meaning) {
        Require.atMost(name, value, limit, Units.ONE, meaning + "; predict it in parts or with fewer points");
    }

    /** The largest gouge and the largest excess at each level. */
    List<CutPlace> places(DeviationMap map) {
        int last = map.depths().size() - 1;
        int middle = middle(map);
        List<KerfProfile> variations = simulator.variations();
        List<CutPlace> places = new ArrayList<>();
        for (CutPlace.Level level : CutPlace.Level.values()) {
            int depth = switch (level) {
                case TOP -> 0;
                case MIDDLE -> middle;
                case BOTTOM -> last;
            };
            for (int sign : new int[] {-1, 1}) {
                int worst = worst(map, depth, sign);
                if (worst >= 0) {
                    places.add(place(map, level, depth, worst, variations));
                }
            }
        }
        return places;
    }

    private int middle(DeviationMap map) {
        double half = simulator.conditions().thicknessSi() / 2;
        int middle = 0;
        for (int i = 1; i < map.depths().size(); i++) {
            if (Math.abs(map.depths().si(i) - half) < Math.abs(map.depths().si(middle) - half)) {
                middle = i;
            }
        }
        return middle;
    }

    private static int worst(DeviationMap map, int depth, int sign) {
        int worst = -1;
        double most = 0;
        for (int i = 0; i < map.size(); i++) {
            double added = sign * map.addedSi(i, depth);
            if (map.isSeparated(i, depth) && added > most) {
                most = added;
                worst = i;
            }
        }
        return worst;
    }

    private CutPlace place(DeviationMap map, CutPlace.Level level, int depth, int i, List<KerfProfile> variations) {
        double z = map.depths().si(depth);
        Estimate<javax.measure.quantity.Length> added =
                Estimate.of(Kind.LENGTH, map.addedSi(i, depth), uncertainty(map.points(), i, z, variations));
        return new CutPlace(
                level,
                Kind.LENGTH.of(z),
                map.edge(i),
                Kind.LENGTH.of(map.distanceSi(i)),
                map.point(i),
                added,
                Kind.LENGTH.of(simulator.toleranceM(contour, map.edge(i))));
    }

    /** Half of each change between a number moved up and down; JCGM 100, 5.1.3 note 2, and equation 13. */
    private double uncertainty(ContourPoints points, int i, double z, List<KerfProfile> variations) {
        double farthest = kerf.front().lagSi(straight[points.edge[i]], z);
        HeadPath near = simulator.geometry() == LagGeometry.TRACTRIX
                ? head
                : head.near(points.x[i], points.y[i], WINDOW_M + LAGS_IN_WINDOW * farthest);
        double[] change = new double[variations.size() / 2];
        for (int k = 0; k < change.length; k++) {
            double up = added(points, near, i, z, variations.get(2 * k));
            double down = added(points, near, i, z, variations.get(2 * k + 1));
            change[k] = up < Double.POSITIVE_INFINITY && down < Double.POSITIVE_INFINITY ? (up - down) / 2 : 0;
        }
        double variance = 2 * simulator.correlation() * change[2] * change[3];
        for (double one : change) {
            variance += one * one;
        }
        return Math.sqrt(Math.max(0, variance));
    }

    private double added(ContourPoints points, HeadPath near, int i, double z, KerfProfile profile) {
        CutRun run = new CutRun(profile, simulator.geometry(), near, points, straight, across);
        run.at(z);
        return run.find(i, room[i]) ? run.deviationM - run.straight(i) : Double.POSITIVE_INFINITY;
    }
}

package dev.waterjet.simulate;

import dev.waterjet.evidence.Caution;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.measure.Require;
import dev.waterjet.part.Contour;
import dev.waterjet.part.Point;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import javax.measure.quantity.Length;

/**
 * Deviation of a predicted cut from the part contour, for points along the contour and depths below the top side. Numbers of
 * single points are returned by index and cost no objects.
 *
 * <p>A deviation is counted across the contour: above 0 where material is left on the part, below 0 where the part is gouged.
 * Immutable.
 */
public final class DeviationMap {

    private static final double SAME_POINT_M = 1e-9;

    private final ContourPoints points;
    private final double[] depthM;
    private final double[] deviation;
    /** Deviation of a straight cut, of depths times edges. */
    private final double[] straight;

    private final double[] feed;
    private final double[] lag;
    private final double[] halfWidth;

    private final MapSurface surface;
    private final MapUncertainty uncertainty;

    /** An empty map, whose rows are filled one by one. */
    DeviationMap(ContourPoints points, double[] depthM, MapSurface surface, MapUncertainty uncertainty) {
        int cells = points.count * depthM.length;
        this.points = points;
        this.depthM = depthM;
        this.surface = surface;
        this.uncertainty = uncertainty;
        this.deviation = new double[cells];
        this.straight = new double[points.contour.size() * depthM.length];
        this.feed = new double[cells];
        this.lag = new double[cells];
        this.halfWidth = new double[cells];
    }

    /** Fills the row of a depth. */
    void fill(int depth, CutRun run, double[] room) {
        run.at(depthM[depth]);
        int row = depth * points.count;
        for (int i = 0; i < points.count; i++) {
            boolean isFound = run.find(i, room[i]);
            deviation[row + i] = isFound ? run.deviationM : Double.POSITIVE_INFINITY;
            feed[row + i] = isFound ? run.feedMPerS : 0;
            lag[row + i] = isFound ? run.lagM : 0;
            halfWidth[row + i] = isFound ? run.halfWidthM : 0;
        }
        for (int edge = 0; edge < points.contour.size(); edge++) {
            straight[depth * points.contour.size() + edge] = run.straightOfEdge(edge);
        }
    }

    ContourPoints points() {
        return points;
    }

    /** {@return the part contour} */
    public Contour contour() {
        return points.contour;
    }

    /** {@return the number of points} */
    public int size() {
        return points.count;
    }

    /** {@return the depths below the top side, ascending} */
    public QuantityArray<Length> depths() {
        return QuantityArray.ofSi(Kind.LENGTH, depthM);
    }

    /**
     * Returns a point. In a re-entrant corner that no jet can reach it lies on the fillet that the jet leaves.
     *
     * @param point index from 0
     * @return the point
     */
    public Point point(int point) {
        Require.index("point", point, size());
        return Point.ofSi(points.x[point], points.y[point]);
    }

    /**
     * Returns the direction across the contour at a point.
     *
     * @param point index from 0
     * @return x of the unit normal from the part towards the tool path
     */
    public double normalX(int point) {
        return points.normalX[Require.index("point", point, size())];
    }

    /**
     * Returns the direction across the contour at a point.
     *
     * @param point index from 0
     * @return y of the unit normal from the part towards the tool path
     */
    public double normalY(int point) {
        return points.normalY[Require.index("point", point, size())];
    }

    /**
     * Returns the edge that a point belongs to.
     *
     * @param point index from 0
     * @return index of the edge of the contour
     */
    public int edge(int point) {
        return points.edge[Require.index("point", point, size())];
    }

    /**
     * Returns the distance of a point from the start of the contour, along it.
     *
     * @param point index from 0
     * @return distance in m; on the fillet of a corner that of the corner
     */
    public double distanceSi(int point) {
        return points.distance[Require.index("point", point, size())];
    }

    private int cell(int point, int depth) {
        return Require.index("depth", depth, depthM.length) * size() + Require.index("point", point, size());
    }

    /**
     * Returns whether the cut separates the part from the scrap at a point.
     *
     * @param point index of the point from 0
     * @param depth index of the depth from 0
     * @return false if nothing is cut there
     */
    public boolean isSeparated(int point, int depth) {
        return deviation[cell(point, depth)] < Double.POSITIVE_INFINITY;
    }

    /**
     * Returns the deviation from the contour.
     *
     * @param point index of the point from 0
     * @param depth index of the depth from 0
     * @return deviation in m, above 0 where material is left; infinite where the part is not separated
     */
    public double deviationSi(int point, int depth) {
        return deviation[cell(point, depth)];
    }

    /**
     * Returns the deviation less that of a long straight cut along the same edge at the same depth: what corners, arcs, ends
     * and changes of the feed add to the taper.
     *
     * @param point index of the point from 0
     * @param depth index of the depth from 0
     * @return difference in m, above 0 where material is left; infinite where the part is not separated
     */
    public double addedSi(int point, int depth) {
        return deviation[cell(point, depth)] - straight[depth * points.contour.size() + points.edge[point]];
    }

    /** {@return whether the simulator propagated uncertainties to all points} */
    public boolean hasUncertainty() {
        return uncertainty.isKnown();
    }

    /**
     * Returns the standard uncertainty of a deviation, from those of kerf, lag and feed model. That of the geometric model of the
     * lag is not contained.
     *
     * @param point index of the point from 0
     * @param depth index of the depth from 0
     * @return standard uncertainty in m; infinite where the part is not separated, or is not with a parameter of a model moved by its
     *     standard uncertainty
     * @throws dev.waterjet.measure.DomainException if the simulator did not propagate uncertainties
     */
    public double uncertaintySi(int point, int depth) {
        int cell = cell(point, depth);
        double known = uncertainty.ofDeviation(cell);
        return deviation[cell] < Double.POSITIVE_INFINITY ? known : Double.POSITIVE_INFINITY;
    }

    /**
     * Returns the standard uncertainty of the deviation less that of a long straight cut.
     *
     * @param point index of the point from 0
     * @param depth index of the depth from 0
     * @return standard uncertainty in m; infinite as that of the deviation
     * @throws dev.waterjet.measure.DomainException if the simulator did not propagate uncertainties
     */
    public double addedUncertaintySi(int point, int depth) {
        int cell = cell(point, depth);
        double known = uncertainty.ofAdded(cell);
        return deviation[cell] < Double.POSITIVE_INFINITY ? known : Double.POSITIVE_INFINITY;
    }

    /** Caution where only the best values of the models separate the part. */
    Optional<Caution> separationMargin() {
        long count = 0;
        for (int cell = 0; cell < deviation.length; cell++) {
            if (deviation[cell] < Double.POSITIVE_INFINITY && Double.isInfinite(uncertainty.ofDeviation(cell))) {
                count++;
            }
        }
        return count == 0
                ? Optional.empty()
                : Optional.of(Caution.warning(Message.of(
                                "separation-uncertain",
                                "{count} of {points} points are separated by the best values of the models, but not"
                                        + " with one of their parameters moved by its standard uncertainty")
                        .with("count", count)
                        .with("points", deviation.length)));
    }

    /**
     * Returns the arithmetic mean deviation Ra of the roughness profile.
     *
     * @param point index of the point from 0
     * @param depth index of the depth from 0
     * @return Ra in m, at the feed of the nozzle while the front cuts there; of a dwell that of the entry; 0 where the part is not
     *     separated
     */
    public double roughnessSi(int point, int depth) {
        int cell = cell(point, depth);
        return deviation[cell] < Double.POSITIVE_INFINITY ? surface.raSi(feed[cell], depthM[depth]) : 0;
    }

    /**
     * Returns the taper of the part's side between the first and the last depth.
     *
     * @param point index of the point from 0
     * @return taper per side in rad, above 0 where the kerf is wider at the top; not a number where either depth is not separated
     */
    public double taperSi(int point) {
        int last = depthM.length - 1;
        double change = deviationSi(point, last) - deviationSi(point, 0);
        return Math.abs(change) < Double.POSITIVE_INFINITY
                ? Math.atan(change / (depthM[last] - depthM[0]))
                : Double.NaN;
    }

    /**
     * Returns the feed of the nozzle while the front cuts at a point.
     *
     * @param point index of the point from 0
     * @param depth index of the depth from 0
     * @return feed in m/s; 0 during a dwell, and where the part is not separated
     */
    public double feedSi(int point, int depth) {
        return feed[cell(point, depth)];
    }

    /**
     * Returns the lag of the front while it cuts at a point.
     *
     * @param point index of the point from 0
     * @param depth index of the depth from 0
     * @return lag in m; 0 where the part is not separated
     */
    public double lagSi(int point, int depth) {
        return lag[cell(point, depth)];
    }

    /**
     * Returns the distance from the path of the front to the wall at a point. A long straight kerf is twice as wide.
     *
     * @param point index of the point from 0
     * @param depth index of the depth from 0
     * @return half-width in m; 0 where the part is not separated
     */
    public double halfWidthSi(int point, int depth) {
        return halfWidth[cell(point, depth)];
    }

    /**
     * Returns the predicted edge of the part at a depth as an open polyline.
     *
     * @param depth index of the depth from 0
     * @return the polyline through all separated points; empty if there are fewer than two
     */
    public Optional<Contour> outline(int depth) {
        List<Point> found = new ArrayList<>();
        for (int i = 0; i < size(); i++) {
            double by = deviationSi(i, depth);
            if (by < Double.POSITIVE_INFINITY) {
                Point point = Point.ofSi(points.x[i] + by * points.normalX[i], points.y[i] + by * points.normalY[i]);
                if (found.isEmpty() || Kind.LENGTH.si(point.distance(found.get(found.size() - 1))) > SAME_POINT_M) {
                    found.add(point);
                }
            }
        }
        if (found.size() < 2) {
            return Optional.empty();
        }
        return Optional.of(Contour.polylineSi(
                found.stream().mapToDouble(Point::xSi).toArray(),
                found.stream().mapToDouble(Point::ySi).toArray(),
                points.contour.requirement(0)));
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof DeviationMap that
                && contour().equals(that.contour())
                && Arrays.equals(depthM, that.depthM)
                && Arrays.equals(deviation, that.deviation)
                && Arrays.equals(straight, that.straight)
                && Arrays.equals(feed, that.feed)
                && Arrays.equals(lag, that.lag)
                && surface.equals(that.surface)
                && uncertainty.equals(that.uncertainty)
                && Arrays.equals(halfWidth, that.halfWidth);
    }

    @Override
    public int hashCode() {
        return Objects.hash(contour(), Arrays.hashCode(depthM), Arrays.hashCode(deviation));
    }

    @Override
    public String toString() {
        return "deviations at " + size() + " points and " + depthM.length + " depths";
    }
}

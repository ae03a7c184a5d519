package dev.waterjet.simulate;

import dev.waterjet.kerf.KerfProfile;
import dev.waterjet.measure.DomainException;
import dev.waterjet.measure.Message;
import java.util.Arrays;
import java.util.List;

/**
 * Standard uncertainty at each place of a map: half of the change between a parameter of a model moved up and down by its
 * standard uncertainty, for each parameter, summed with the correlation of two of them; JCGM 100, 5.1.3 note 2, and equation
 * 13.
 */
final class MapUncertainty {

    /** Pairs of the correlated parameters, dose spread and half-angle. */
    private static final int DOSE_SPREAD = 2;

    private static final int HALF_ANGLE = 3;

    static final MapUncertainty NONE = new MapUncertainty(0);

    private final double[] deviation;
    private final double[] added;

    private MapUncertainty(int cells) {
        deviation = new double[cells];
        added = new double[cells];
    }

    /** Makes a run with other parameters of the models. */
    interface Runs {
        CutRun with(KerfProfile profile);
    }

    /** Propagates pairs of profiles, each with one parameter moved up and down. */
    static MapUncertainty of(
            ContourPoints points,
            double[] depths,
            double[] room,
            Runs runs,
            List<KerfProfile> variations,
            double correlation) {
        MapUncertainty result = new MapUncertainty(points.count * depths.length);
        double[][] change = new double[2][points.count * depths.length];
        double[][] spread = new double[2][];
        for (int k = 0; k < variations.size() / 2; k++) {
            Arrays.fill(change[0], 0);
            Arrays.fill(change[1], 0);
            move(points, depths, room, runs.with(variations.get(2 * k)), 0.5, change);
            move(points, depths, room, runs.with(variations.get(2 * k + 1)), -0.5, change);
            result.add(change[0], result.deviation, k == HALF_ANGLE ? spread[0] : new double[0], correlation);
            result.add(change[1], result.added, k == HALF_ANGLE ? spread[1] : new double[0], correlation);
            if (k == DOSE_SPREAD) {
                spread[0] = change[0].clone();
                spread[1] = change[1].clone();
            }
        }
        root(result.deviation);
        root(result.added);
        return result;
    }

    private static void move(
            ContourPoints points, double[] depths, double[] room, CutRun run, double share, double[][] change) {
        for (int depth = 0; depth < depths.length; depth++) {
            run.at(depths[depth]);
            for (int i = 0; i < points.count; i++) {
                int cell = depth * points.count + i;
                if (run.find(i, room[i])) {
                    change[0][cell] += share * run.deviationM;
                    change[1][cell] += share * (run.deviationM - run.straight(i));
                } else {
                    change[0][cell] = Double.NaN;
                    change[1][cell] = Double.NaN;
                }
            }
        }
    }

    private void add(double[] change, double[] variance, double[] other, double correlation) {
        for (int i = 0; i < change.length; i++) {
            variance[i] += change[i] * change[i];
            if (other.length > 0) {
                variance[i] += 2 * correlation * change[i] * other[i];
            }
        }
    }

    private static void root(double[] variance) {
        for (int i = 0; i < variance.length; i++) {
            // rounding can leave less than nothing where both changes cancel
            variance[i] = Double.isNaN(variance[i]) ? Double.POSITIVE_INFINITY : Math.sqrt(Math.max(0, variance[i]));
        }
    }

    boolean isKnown() {
        return deviation.length > 0;
    }

    double ofDeviation(int cell) {
        return known(deviation)[cell];
    }

    double ofAdded(int cell) {
        return known(added)[cell];
    }

    private static double[] known(double[] values) {
        if (values.length == 0) {
            throw new DomainException(
                    Message.of(
                            "uncertainty-not-propagated",
                            "the prediction has no uncertainty at all points; add withUncertainty() to the simulator"),
                    "uncertainty");
        }
        return values;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof MapUncertainty that
                && Arrays.equals(deviation, that.deviation)
                && Arrays.equals(added, that.added);
    }

    @Override
    public int hashCode() {
        return Arrays.hashCode(deviation);
    }
}

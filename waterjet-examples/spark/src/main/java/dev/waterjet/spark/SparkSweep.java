package dev.waterjet.spark;

import dev.waterjet.feed.FeedSweep;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import org.apache.spark.api.java.JavaSparkContext;

/**
 * Deals the points of a {@link FeedSweep} out over the workers of a Spark cluster, part by part. The sweep is shipped by
 * Java serialisation; each worker computes its parts alone and sends back a summary, so that a billion points need no more
 * memory than a thousand.
 */
public final class SparkSweep {

    private final JavaSparkContext spark;
    private final long pointsPerPart;

    private SparkSweep(JavaSparkContext spark, long pointsPerPart) {
        if (pointsPerPart < 1) {
            throw new IllegalArgumentException("a part has at least one point, not " + pointsPerPart);
        }
        this.spark = spark;
        this.pointsPerPart = pointsPerPart;
    }

    /**
     * A way to run sweeps.
     *
     * @param spark the cluster, or a local one
     * @param pointsPerPart points that a worker computes in one go, 1 or more
     * @return the runner
     */
    public static SparkSweep of(JavaSparkContext spark, long pointsPerPart) {
        return new SparkSweep(spark, pointsPerPart);
    }

    /**
     * Result of one part of a sweep.
     *
     * @param from its first point
     * @param points how many points it has
     * @param slowest the slowest feed in m/s
     * @param fastest the fastest feed in m/s
     * @param fingerprint the bits of all its feeds, stirred in their order
     */
    public record Part(long from, long points, double slowest, double fastest, long fingerprint)
            implements Serializable {}

    /** A stretch of points. */
    private record Stretch(long from, long to) implements Serializable {}

    /**
     * Runs a sweep on the cluster.
     *
     * @param sweep the sweep
     * @return its parts, in the order of their points
     */
    public List<Part> run(FeedSweep sweep) {
        List<Stretch> stretches = stretches(sweep);
        return new ArrayList<>(spark.parallelize(stretches, stretches.size())
                .map(stretch -> part(sweep, stretch.from(), stretch.to()))
                .collect());
    }

    /**
     * Runs a sweep in this process, in the same parts.
     *
     * @param sweep the sweep
     * @return its parts, in the order of their points
     */
    public List<Part> runHere(FeedSweep sweep) {
        return stretches(sweep).stream()
                .map(stretch -> part(sweep, stretch.from(), stretch.to()))
                .toList();
    }

    private List<Stretch> stretches(FeedSweep sweep) {
        List<Stretch> stretches = new ArrayList<>();
        for (long from = 0; from < sweep.size(); from += pointsPerPart) {
            stretches.add(new Stretch(from, Math.min(sweep.size(), from + pointsPerPart)));
        }
        return stretches;
    }

    private static Part part(FeedSweep sweep, long from, long to) {
        Summary summary = new Summary();
        sweep.each(from, to, (p, o, t, m, h, q, feed) -> summary.take(feed));
        return new Part(from, to - from, summary.slowest, summary.fastest, summary.fingerprint);
    }

    /** Gathers feeds without keeping them. */
    private static final class Summary {

        private double slowest = Double.POSITIVE_INFINITY;
        private double fastest;
        private long fingerprint;

        void take(double feedMPerS) {
            slowest = Math.min(slowest, feedMPerS);
            fastest = Math.max(fastest, feedMPerS);
            fingerprint = fingerprint * 31 + Double.doubleToRawLongBits(feedMPerS);
        }
    }
}

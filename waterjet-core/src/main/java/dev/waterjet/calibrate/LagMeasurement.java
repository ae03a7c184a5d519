package dev.waterjet.calibrate;

import dev.waterjet.kerf.LagKernel;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.Serializable;
import javax.measure.Quantity;
import javax.measure.quantity.Length;

/** A lag line as read off a cut face: depths, and how far the line there is behind the entry. */
public final class LagMeasurement implements Serializable {

    private static final long serialVersionUID = 1L;

    private final double separationDepthM;
    private final QuantityArray<Length> depths;
    private final QuantityArray<Length> lags;

    private LagMeasurement(double separationDepthM, QuantityArray<Length> depths, QuantityArray<Length> lags) {
        this.separationDepthM = separationDepthM;
        this.depths = depths;
        this.lags = lags;
    }

    /**
     * A line of a cut, as yet without points.
     *
     * @param separationDepth depth that the jet just separated at the feed of the cut
     * @return the line
     */
    public static LagMeasurement of(Quantity<Length> separationDepth) {
        double depth = Require.positive("separation depth", Kind.LENGTH.si(separationDepth), Units.MILLIMETRE);
        return new LagMeasurement(depth, QuantityArray.ofSi(Kind.LENGTH), QuantityArray.ofSi(Kind.LENGTH));
    }

    /**
     * This line with the depths at which it was read.
     *
     * @param depths depths below the entry face, each above zero and at most the separation depth
     * @return the line with those depths
     */
    public LagMeasurement withDepths(QuantityArray<Length> depths) {
        depths.stream()
                .forEach(depth -> Require.between(
                        "depth on the lag line",
                        depth,
                        Double.MIN_VALUE,
                        separationDepthM,
                        Units.MILLIMETRE,
                        "between entry and separation depth"));
        return new LagMeasurement(separationDepthM, depths, lags);
    }

    /**
     * This line with the lags that were read.
     *
     * @param lags a lag for each depth, zero or more
     * @return the line with those lags
     */
    public LagMeasurement withLags(QuantityArray<Length> lags) {
        lags.stream().forEach(lag -> Require.notNegative("lag", lag, Units.MILLIMETRE));
        return new LagMeasurement(separationDepthM, depths, lags);
    }

    int size() {
        if (depths.size() != lags.size()) {
            throw new IllegalArgumentException(depths.size() + " depths on the lag line, but " + lags.size() + " lags");
        }
        return depths.size();
    }

    /** z^2/H, with which the lag grows. */
    double driver(int index) {
        return LagKernel.lag(1, depths.si(index), separationDepthM);
    }

    double lag(int index) {
        return lags.si(index);
    }
}

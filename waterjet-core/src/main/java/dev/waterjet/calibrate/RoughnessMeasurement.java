package dev.waterjet.calibrate;

import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import dev.waterjet.surface.RoughnessKernel;
import dev.waterjet.surface.RoughnessNumbers;
import java.io.Serializable;
import javax.measure.Quantity;
import javax.measure.quantity.Length;

/** Roughness as measured down a face: depths, and Ra at each. */
public final class RoughnessMeasurement implements Serializable {

    private static final long serialVersionUID = 1L;

    private final double grainM;
    private final double boreM;
    private final double separationDepthM;
    private final QuantityArray<Length> depths;
    private final QuantityArray<Length> ra;

    private RoughnessMeasurement(
            double grainM,
            double boreM,
            double separationDepthM,
            QuantityArray<Length> depths,
            QuantityArray<Length> ra) {
        this.grainM = grainM;
        this.boreM = boreM;
        this.separationDepthM = separationDepthM;
        this.depths = depths;
        this.ra = ra;
    }

    /**
     * A line of a face, as yet without points.
     *
     * @param jet the jet that cut it
     * @param separationDepth depth that the jet just separated at the feed of the cut
     * @return the line
     */
    public static RoughnessMeasurement of(AbrasiveJet jet, Quantity<Length> separationDepth) {
        return new RoughnessMeasurement(
                jet.abrasive().mesh().meanGrainSizeSi(),
                jet.head().tube().exitBoreSi(),
                Require.positive("separation depth", Kind.LENGTH.si(separationDepth), Units.MILLIMETRE),
                QuantityArray.ofSi(Kind.LENGTH),
                QuantityArray.ofSi(Kind.LENGTH));
    }

    /**
     * This line with the depths at which it was measured.
     *
     * @param depths depths below the entry face, each from zero to the separation depth
     * @return the line with those depths
     */
    public RoughnessMeasurement withDepths(QuantityArray<Length> depths) {
        depths.stream()
                .forEach(depth -> Require.between(
                        "depth on the face", depth, 0, separationDepthM, Units.MILLIMETRE, "the separation depth"));
        return new RoughnessMeasurement(grainM, boreM, separationDepthM, depths, ra);
    }

    /**
     * This line with what was measured.
     *
     * @param ra Ra for each depth, above zero
     * @return the line with that roughness
     */
    public RoughnessMeasurement withRa(QuantityArray<Length> ra) {
        ra.stream().forEach(value -> Require.positive("roughness Ra", value, Units.MICROMETRE));
        return new RoughnessMeasurement(grainM, boreM, separationDepthM, depths, ra);
    }

    int size() {
        if (depths.size() != ra.size()) {
            throw new IllegalArgumentException(
                    depths.size() + " depths on the face, but " + ra.size() + " roughnesses");
        }
        return depths.size();
    }

    double predicted(int index, RoughnessNumbers numbers) {
        return RoughnessKernel.ra(depths.si(index) / separationDepthM, grainM, boreM, numbers);
    }

    double ra(int index) {
        return ra.si(index);
    }
}

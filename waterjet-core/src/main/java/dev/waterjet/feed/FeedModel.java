package dev.waterjet.feed;

import dev.waterjet.evidence.Caution;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.evidence.Evident;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.material.Material;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.Serializable;
import java.util.List;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Speed;

/**
 * How fast a jet may be led through a material. One implementation per published model; all are immutable.
 *
 * <p>An implementation gives the two numbers of a cut that just separates, each the inverse of the other; the questions
 * of the trade follow from them. The quality index {@code q} is the depth that the jet could just separate over the
 * thickness that it is asked to cut: 1 just separates, a higher index leaves a better face.
 */
public interface FeedModel extends Evident, Serializable {

    /**
     * Name of the model, for tables and legends.
     *
     * @return a short name
     */
    String name();

    /**
     * Feed at which the jet just separates a depth, on SI numbers.
     *
     * @param jet the jet
     * @param material the material
     * @param depthM depth in m, above zero
     * @return feed in m/s, above zero; falls as the depth grows
     */
    double separationFeedSi(AbrasiveJet jet, Material material, double depthM);

    /**
     * Depth that the jet just separates at a feed, on SI numbers: the inverse of {@link #separationFeedSi}.
     *
     * @param jet the jet
     * @param material the material
     * @param feedMPerS feed in m/s, above zero
     * @return depth in m, above zero; falls as the feed grows
     */
    double separationDepthSi(AbrasiveJet jet, Material material, double feedMPerS);

    /**
     * Relative standard uncertainty of a feed in a material: that of the model and that of the material together.
     *
     * @param material the material
     * @return the ratio
     */
    double relativeUncertainty(Material material);

    /**
     * What the reader of a feed must know beyond what jet and material say of themselves.
     *
     * @param jet the jet
     * @param material the material
     * @param depthM depth separated, in m: thickness times index
     * @param feedMPerS the feed, in m/s
     * @return the cautions; empty if there are none
     */
    default List<Caution> cautions(AbrasiveJet jet, Material material, double depthM, double feedMPerS) {
        return List.of();
    }

    /**
     * Feed for a face grade, by the standard table of indices.
     *
     * @param jet the jet
     * @param piece the workpiece
     * @param grade grade of the face
     * @return the feed
     */
    default Estimate<Speed> feed(AbrasiveJet jet, Workpiece piece, FaceGrade grade) {
        return feed(jet, piece, IndexTable.standard().index(grade));
    }

    /**
     * Feed for a quality index.
     *
     * @param jet the jet
     * @param piece the workpiece
     * @param index quality index, 1 or more: 1 just separates
     * @return the feed
     */
    default Estimate<Speed> feed(AbrasiveJet jet, Workpiece piece, double index) {
        Require.atLeast("quality index", index, 1, Units.ONE, "below 1 the jet does not separate");
        Material material = piece.material();
        double depth = index * piece.thicknessSi();
        double feed = separationFeedSi(jet, material, depth);
        return Estimate.withinFactor(Kind.SPEED, feed, relativeUncertainty(material), jet.cautions())
                .with(material.cautions())
                .with(cautions(jet, material, depth, feed));
    }

    /**
     * Depth that the jet just separates at a feed.
     *
     * @param jet the jet
     * @param material the material
     * @param feed the feed, above zero
     * @return the depth
     */
    default Estimate<Length> depth(AbrasiveJet jet, Material material, Quantity<Speed> feed) {
        double feedSi = Require.positive("feed", Kind.SPEED.si(feed), Units.MILLIMETRE_PER_MINUTE);
        double depth = separationDepthSi(jet, material, feedSi);
        // the depth is off by as much as the feed that the model would give for it, in proportion to their slopes
        double slope = relativeSlope(jet, material, feedSi, depth);
        return Estimate.withinFactor(Kind.LENGTH, depth, relativeUncertainty(material) * slope, jet.cautions())
                .with(material.cautions())
                .with(cautions(jet, material, depth, feedSi));
    }

    private double relativeSlope(AbrasiveJet jet, Material material, double feedMPerS, double depthM) {
        double step = 1e-4;
        double faster = separationDepthSi(jet, material, feedMPerS * (1 + step));
        return Math.abs(faster - depthM) / (depthM * step);
    }

    /**
     * Quality index at which a feed cuts a workpiece.
     *
     * @param jet the jet
     * @param piece the workpiece
     * @param feed the feed, above zero
     * @return the index; below 1 the jet does not separate the workpiece
     */
    default double index(AbrasiveJet jet, Workpiece piece, Quantity<Speed> feed) {
        double feedSi = Require.positive("feed", Kind.SPEED.si(feed), Units.MILLIMETRE_PER_MINUTE);
        return separationDepthSi(jet, piece.material(), feedSi) / piece.thicknessSi();
    }

    /**
     * Feeds over a range of thicknesses.
     *
     * @param jet the jet
     * @param material the material
     * @param index quality index, 1 or more
     * @param thicknesses the thicknesses, each above zero
     * @return the curve
     */
    default SpeedCurve curve(AbrasiveJet jet, Material material, double index, QuantityArray<Length> thicknesses) {
        Require.atLeast("quality index", index, 1, Units.ONE, "below 1 the jet does not separate");
        return SpeedCurve.of(
                thicknesses,
                thicknesses.map(
                        Kind.SPEED,
                        thickness -> separationFeedSi(
                                jet, material, index * Require.positive("thickness", thickness, Units.MILLIMETRE))),
                relativeUncertainty(material));
    }
}

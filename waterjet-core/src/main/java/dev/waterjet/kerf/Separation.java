package dev.waterjet.kerf;

import dev.waterjet.evidence.Caution;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.feed.FeedModel;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.Serializable;
import java.util.List;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Speed;

/**
 * Depth that the jet just separates at the running feed, no less than the thickness of the workpiece.
 *
 * @param depthM the depth
 * @param relativeUncertainty its relative standard uncertainty
 * @param cautions what the reader must know of it
 */
public record Separation(double depthM, double relativeUncertainty, List<Caution> cautions) implements Serializable {

    /** A depth this little short of the thickness is rounding of a feed that just separates. */
    private static final double ROUNDING = 1e-9;

    public static Separation of(AbrasiveJet jet, Workpiece piece, FeedModel feeds, Quantity<Speed> feed) {
        return of(piece.thicknessSi(), feeds.depth(jet, piece.material(), feed));
    }

    public static Separation of(double thicknessM, Estimate<Length> depth) {
        Require.atLeast(
                "depth separated at this feed",
                depth.si() * (1 + ROUNDING),
                thicknessM,
                Units.MILLIMETRE,
                "the thickness: the jet does not cut through, lower the feed");
        return new Separation(Math.max(depth.si(), thicknessM), depth.relativeUncertainty(), depth.cautions());
    }
}

package dev.waterjet.kerf;

import dev.waterjet.evidence.Estimate;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.util.Objects;
import javax.measure.quantity.Length;

/** Check that a jet separates the workpiece. */
final class Separation {

    /** A depth this little short of the thickness is rounding of a feed rate that just separates. */
    private static final double ROUNDING = 1e-9;

    private Separation() {}

    /** The separation depth at the feed rate of a cut, at least the thickness. */
    static Estimate<Length> through(double thicknessM, Estimate<Length> separationDepth) {
        double depthM =
                Objects.requireNonNull(separationDepth, "separationDepth").si();
        if (depthM >= thicknessM) {
            return separationDepth;
        }
        Require.atLeast(
                "separation depth at this feed rate",
                depthM * (1 + ROUNDING),
                thicknessM,
                Units.MILLIMETRE,
                "the thickness: the jet does not cut through, reduce the feed rate");
        return Estimate.withinFactor(
                Kind.LENGTH, thicknessM, separationDepth.relativeUncertainty(), separationDepth.cautions());
    }
}

package dev.waterjet.jet;

import dev.waterjet.evidence.Caution;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.util.List;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Speed;

/** A jet that a catcher tank stops. */
final class StoppedJet {

    private static final double WATER_KG_PER_M3 = 998.2;
    private static final double DEPTH_LOG = Math.log(1.5);

    private static final Caution DWELLING = Caution.danger(Message.of(
            "dwelling-jet",
            "a jet that dwells on one place drills through the floor of a catcher tank, whatever the depth of water;"
                    + " catcher and its lining follow the machine's manual"));

    private StoppedJet() {}

    static Estimate<Length> depth(double thrustN, Quantity<Speed> remaining) {
        Objects.requireNonNull(remaining, "remaining");
        double speed = Require.positive("remaining speed", Kind.SPEED.si(remaining), Units.METRE_PER_SECOND);
        double depthM = DragKernel.submergedDistance(thrustN, WATER_KG_PER_M3, speed);
        return Estimate.withinFactor(Kind.LENGTH, depthM, DEPTH_LOG, List.of(DWELLING));
    }
}

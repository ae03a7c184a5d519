package dev.waterjet.vessel;

import dev.waterjet.evidence.Caution;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.Units;
import java.util.ArrayList;
import java.util.List;

/** Cautions of this package. */
final class VesselCautions {

    private static final Caution NO_ASSESSMENT = Caution.danger(Message.of(
            "no-assessment",
            "this is a calculation of an ideal smooth tube and no assessment of a part; vessels and tubing are"
                    + " designed, inspected and retired by their maker and licensed engineers under the"
                    + " pressure-vessel code in force"));

    private VesselCautions() {}

    static List<Caution> all() {
        return List.of(NO_ASSESSMENT);
    }

    static List<Caution> ofStress(double trescaPa) {
        return List.of(
                NO_ASSESSMENT,
                Caution.warning(Message.of(
                                "cyclic-stress",
                                "the stress at the bore, {stress} by Tresca, comes and goes with every pressure cycle;"
                                        + " bores with cross holes, scratches or threads have higher stress, and fatigue"
                                        + " is not calculated")
                        .with("stress", Kind.PRESSURE, trescaPa, Units.MEGAPASCAL)));
    }

    static List<Caution> ofEnergy() {
        return List.of(
                NO_ASSESSMENT,
                Caution.danger(Message.of(
                        "stored-energy",
                        "a burst releases this energy; what fragments and water do with it is not calculated, and no"
                                + " safe distance follows from it")));
    }

    static List<Caution> ofAutofrettage(double radiusRatio, double limitRatio, boolean reverse) {
        List<Caution> cautions = new ArrayList<>(all());
        if (radiusRatio > limitRatio) {
            cautions.add(Caution.warning(Message.of(
                            "bauschinger",
                            "the plastic radius is {ratio} times the radius of the bore, above {limit}; after such"
                                    + " strains steel yields in compression earlier, and the compression of the bore is"
                                    + " overestimated")
                    .with("ratio", radiusRatio)
                    .with("limit", limitRatio)));
        }
        if (reverse) {
            cautions.add(Caution.warning(Message.of(
                    "reverse-yield",
                    "the bore yields in compression when the pressure is released; residual stresses by this formula"
                            + " do not hold")));
        }
        return List.copyOf(cautions);
    }
}

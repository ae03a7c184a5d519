package dev.waterjet.examples.plan;

import dev.waterjet.feed.FeedModel;
import dev.waterjet.feed.MachinabilityFeed;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.kerf.KerfModel;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Measures;
import dev.waterjet.motion.MachineLimits;
import dev.waterjet.program.PartProgram;
import dev.waterjet.quality.CutQuality;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Speed;

/**
 * What is asked of a plan.
 *
 * @param title what the part is called
 * @param program the part program
 * @param jet the jet
 * @param piece what is cut
 * @param grade grade of faces of which the program says nothing
 * @param tolerance tolerance of edges of which the program says nothing
 * @param machine what the machine can follow
 * @param travel speed of moves with the jet off
 */
public record PlanRequest(
        String title,
        PartProgram program,
        AbrasiveJet jet,
        Workpiece piece,
        CutQuality grade,
        Quantity<Length> tolerance,
        MachineLimits machine,
        Quantity<Speed> travel) {

    /**
     * A request with the usual grade, tolerance and machine.
     *
     * @param title what the part is called
     * @param program the part program
     * @param jet the jet
     * @param piece what is cut
     * @return the request: medium faces within 0.1 mm, a machine of 10 m/min and 0.5 m/s2
     */
    public static PlanRequest of(String title, PartProgram program, AbrasiveJet jet, Workpiece piece) {
        Quantity<Speed> speed = Measures.millimetresPerMinute(10_000);
        return new PlanRequest(
                title,
                program,
                jet,
                piece,
                CutQuality.MEDIUM,
                Measures.millimetres(0.1),
                MachineLimits.of(speed, Measures.metresPerSquareSecond(0.5)),
                speed);
    }

    FeedModel feeds() {
        return MachinabilityFeed.published();
    }

    KerfModel kerfs() {
        return KerfModel.standard();
    }
}

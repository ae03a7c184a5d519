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
 * Input of a plan.
 *
 * @param title title of the part
 * @param program the part program
 * @param jet the jet
 * @param workpiece the workpiece
 * @param quality cut quality where the program specifies none
 * @param lagTolerance lag tolerance where the program specifies none
 * @param machine limits of the machine
 * @param rapidSpeed speed of rapid traverse
 */
public record PlanRequest(
        String title,
        PartProgram program,
        AbrasiveJet jet,
        Workpiece workpiece,
        CutQuality quality,
        Quantity<Length> lagTolerance,
        MachineLimits machine,
        Quantity<Speed> rapidSpeed) {

    /**
     * Returns a request with default cut quality, tolerance and machine.
     *
     * @param title title of the part
     * @param program the part program
     * @param jet the jet
     * @param workpiece the workpiece
     * @return the request: medium cut quality, 0.1 mm, a machine of 10 m/min and 0.5 m/s2
     */
    public static PlanRequest of(String title, PartProgram program, AbrasiveJet jet, Workpiece workpiece) {
        Quantity<Speed> speed = Measures.millimetresPerMinute(10_000);
        return new PlanRequest(
                title,
                program,
                jet,
                workpiece,
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

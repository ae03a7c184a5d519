package dev.waterjet.plan;

import dev.waterjet.measure.Kind;
import dev.waterjet.part.Point;
import dev.waterjet.part.Side;
import dev.waterjet.pierce.Pierce;
import dev.waterjet.program.ProgramMove;
import java.util.List;
import javax.measure.Quantity;
import javax.measure.quantity.Time;

/**
 * Moves of a program that pierce: a dwell, or for a moving pierce circles from the pierce point, ahead of it on the lead, that
 * take its time. Three circles as wide as the jet keep within the clearance that the selector requires (common practice, no
 * source).
 */
final class PierceMoves {

    private static final double COVERAGE = 0.95;
    private static final int CIRCLES = 3;

    private PierceMoves() {}

    /**
     * Moves from jet on until the jet is through.
     *
     * @param pierce the pierce
     * @param place pierce point
     * @param towards a point of the lead ahead
     * @param boreM bore of the focusing tube at its exit
     */
    static List<ProgramMove> of(Pierce pierce, Point place, Point towards, double boreM) {
        Quantity<Time> time = pierce.time().upper(COVERAGE);
        double away = Kind.LENGTH.si(place.distance(towards));
        if (!Planning.isMoving(pierce) || !(away > 0) || !(Kind.TIME.si(time) > 0)) {
            return List.of(new ProgramMove.JetOn(time));
        }
        double share = boreM / 2 / away;
        Point centre = Point.ofSi(
                place.xSi() + share * (towards.xSi() - place.xSi()),
                place.ySi() + share * (towards.ySi() - place.ySi()));
        double feed = CIRCLES * Math.PI * boreM / Kind.TIME.si(time);
        ProgramMove circle = new ProgramMove.Arc(place, centre, Side.LEFT, Kind.SPEED.of(feed));
        return List.of(new ProgramMove.JetOn(Kind.TIME.of(0)), circle, circle, circle);
    }
}

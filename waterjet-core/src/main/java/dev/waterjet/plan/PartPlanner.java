package dev.waterjet.plan;

import dev.waterjet.feed.CutConditions;
import dev.waterjet.feed.FeedModel;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import dev.waterjet.motion.FeedPlan;
import dev.waterjet.motion.FeedPlanner;
import dev.waterjet.part.Contour;
import dev.waterjet.part.Side;
import dev.waterjet.pierce.Pierce;
import dev.waterjet.pierce.PierceSelector;
import dev.waterjet.pierce.PierceSettings;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Acceleration;
import javax.measure.quantity.Speed;

/** Plans a part: the feed along its contours by a {@link FeedPlanner}, its pierces, the moves between its contours. */
public final class PartPlanner implements Serializable {

    private static final long serialVersionUID = 1L;

    private final FeedPlanner planner;
    private final FeedModel model;
    private final PierceSettings practice;
    private final double moveSpeedMPerS;
    private final double moveAccelerationMPerS2;

    private PartPlanner(
            FeedPlanner planner,
            FeedModel model,
            PierceSettings practice,
            double moveSpeedMPerS,
            double moveAccelerationMPerS2) {
        this.planner = Objects.requireNonNull(planner, "planner");
        this.model = Objects.requireNonNull(model, "model");
        this.practice = Objects.requireNonNull(practice, "practice");
        this.moveSpeedMPerS = Require.positive("speed of moves", moveSpeedMPerS, Units.MILLIMETRE_PER_MINUTE);
        this.moveAccelerationMPerS2 =
                Require.positive("acceleration of moves", moveAccelerationMPerS2, Units.METRE_PER_SQUARE_SECOND);
    }

    /**
     * A planner with the usual practice of piercing, and moves at 10 m/min and 1 m/s2 (assumed).
     *
     * @param planner the feed along a contour
     * @param model the feed model that it rests on
     * @return the planner
     */
    public static PartPlanner of(FeedPlanner planner, FeedModel model) {
        return new PartPlanner(planner, model, PierceSettings.defaults(), 10.0 / 60, 1);
    }

    /**
     * This planner with the shop's practice of piercing.
     *
     * @param practice the practice
     * @return the planner with that practice
     */
    public PartPlanner withPiercing(PierceSettings practice) {
        return new PartPlanner(planner, model, practice, moveSpeedMPerS, moveAccelerationMPerS2);
    }

    /**
     * This planner with other moves between contours.
     *
     * @param speed greatest speed, above zero
     * @param acceleration acceleration from and to rest, above zero
     * @return the planner with those moves
     */
    public PartPlanner withMoves(Quantity<Speed> speed, Quantity<Acceleration> acceleration) {
        return new PartPlanner(planner, model, practice, Kind.SPEED.si(speed), Kind.ACCELERATION.si(acceleration));
    }

    /**
     * Plans a part.
     *
     * @param jet the jet
     * @param piece the plate
     * @param contours paths of the jet in the order in which they are cut, one or more
     * @param sides for each the side on which the part lies
     * @return the plan
     * @throws dev.waterjet.measure.DomainException if there are no contours or not as many sides
     * @throws dev.waterjet.part.GeometryException if no feed keeps an edge within its tolerance, with its place
     */
    public PartPlan plan(AbrasiveJet jet, Workpiece piece, List<Contour> contours, List<Side> sides) {
        Require.atLeast("number of contours", contours.size(), 1, Units.ONE, "a part has an outline");
        Require.between(
                "number of sides", sides.size(), contours.size(), contours.size(), Units.ONE, "one for each contour");
        List<FeedPlan> cuts = new ArrayList<>();
        double moveM = 0;
        double moveS = 0;
        for (int i = 0; i < contours.size(); i++) {
            cuts.add(planner.plan(contours.get(i), sides.get(i)));
            if (i > 0) {
                double move = Kind.LENGTH.si(
                        contours.get(i - 1).end().distance(contours.get(i).start()));
                moveM += move;
                moveS += moveTime(move);
            }
        }
        Pierce pierce = PierceSelector.of(practice).select(CutConditions.of(jet, piece, model));
        return PartPlan.of(jet, piece, cuts, pierce, model.relativeUncertainty(piece.material()), moveM, moveS);
    }

    /** From rest to rest: s/v + v/a where the speed is reached, else 2 sqrt(s/a). */
    private double moveTime(double lengthM) {
        double reach = moveSpeedMPerS * moveSpeedMPerS / moveAccelerationMPerS2;
        return lengthM >= reach
                ? lengthM / moveSpeedMPerS + moveSpeedMPerS / moveAccelerationMPerS2
                : 2 * Math.sqrt(lengthM / moveAccelerationMPerS2);
    }
}

package dev.waterjet.plan;

import dev.waterjet.feed.CutConditions;
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
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Acceleration;
import javax.measure.quantity.Speed;

/**
 * Planner of a part: the feed rate along its contours by a {@link FeedPlanner}, its pierces, and rapid traverse.
 *
 * <pre>{@code
 * CutConditions conditions = CutConditions.of(jet, plate, MachinabilityFeed.published());
 * PartPlan plan = PartPlanner.of(FeedPlanner.of(machine, conditions), conditions).plan(contours, sides);
 * Estimate<Time> time = plan.cuttingTime();
 * }</pre>
 */
public final class PartPlanner {

    /** Rapid traverse of 10 m/min and 1 m/s2, assumed. */
    private static final double RAPID_SPEED_M_PER_S = 10.0 / 60;

    private static final double RAPID_ACCELERATION_M_PER_S2 = 1;

    private final FeedPlanner feedPlanner;
    private final CutConditions conditions;
    private final PierceSettings pierceSettings;
    private final double rapidMPerS;
    private final double rapidMPerS2;

    private PartPlanner(
            FeedPlanner feedPlanner,
            CutConditions conditions,
            PierceSettings pierceSettings,
            double rapidMPerS,
            double rapidMPerS2) {
        this.feedPlanner = Objects.requireNonNull(feedPlanner, "feedPlanner");
        this.conditions = Objects.requireNonNull(conditions, "conditions");
        this.pierceSettings = Objects.requireNonNull(pierceSettings, "pierceSettings");
        this.rapidMPerS = Require.positive("rapid traverse speed", rapidMPerS, Units.MILLIMETRE_PER_MINUTE);
        this.rapidMPerS2 =
                Require.positive("acceleration of rapid traverse", rapidMPerS2, Units.METRE_PER_SQUARE_SECOND);
    }

    /**
     * Returns a planner with default pierce settings, and rapid traverse at 10 m/min and 1 m/s2 (assumed).
     *
     * @param feedPlanner planner of the feed rate along a contour, for the same conditions
     * @param conditions jet, workpiece and feed model
     * @return the planner
     */
    public static PartPlanner of(FeedPlanner feedPlanner, CutConditions conditions) {
        return new PartPlanner(
                feedPlanner, conditions, PierceSettings.defaults(), RAPID_SPEED_M_PER_S, RAPID_ACCELERATION_M_PER_S2);
    }

    /**
     * Returns this planner with other pierce settings.
     *
     * @param settings the settings
     * @return the planner
     */
    public PartPlanner withPierceSettings(PierceSettings settings) {
        return new PartPlanner(feedPlanner, conditions, settings, rapidMPerS, rapidMPerS2);
    }

    /**
     * Returns this planner with another rapid traverse.
     *
     * @param speed maximum speed, above zero
     * @param acceleration acceleration from and to rest, above zero
     * @return the planner
     */
    public PartPlanner withRapidTraverse(Quantity<Speed> speed, Quantity<Acceleration> acceleration) {
        return new PartPlanner(
                feedPlanner, conditions, pierceSettings, Kind.SPEED.si(speed), Kind.ACCELERATION.si(acceleration));
    }

    /**
     * Returns the plan of a part.
     *
     * @param contours paths of the jet in cutting order, one or more
     * @param sides for each the side on which the part lies
     * @return the plan
     * @throws dev.waterjet.measure.DomainException if there are no contours or not as many sides
     * @throws dev.waterjet.part.GeometryException if no feed rate keeps an edge within its tolerance, with its place
     */
    public PartPlan plan(List<Contour> contours, List<Side> sides) {
        Require.atLeast("number of contours", contours.size(), 1, Units.ONE, "a part has an outline");
        Require.between(
                "number of sides", sides.size(), contours.size(), contours.size(), Units.ONE, "one for each contour");
        List<FeedPlan> cuts = new ArrayList<>();
        double rapidM = 0;
        double rapidS = 0;
        for (int i = 0; i < contours.size(); i++) {
            cuts.add(feedPlanner.plan(contours.get(i), sides.get(i)));
            if (i > 0) {
                double move = Kind.LENGTH.si(
                        contours.get(i - 1).end().distance(contours.get(i).start()));
                rapidM += move;
                rapidS += rapidTime(move);
            }
        }
        Pierce pierce = PierceSelector.of(pierceSettings).select(conditions);
        return new PartPlan(conditions, cuts, pierce, Kind.LENGTH.of(rapidM), Kind.TIME.of(rapidS));
    }

    /** From rest to rest: s/v + v/a where the speed is reached, else 2 sqrt(s/a). */
    private double rapidTime(double lengthM) {
        double reach = rapidMPerS * rapidMPerS / rapidMPerS2;
        return lengthM >= reach
                ? lengthM / rapidMPerS + rapidMPerS / rapidMPerS2
                : 2 * Math.sqrt(lengthM / rapidMPerS2);
    }
}

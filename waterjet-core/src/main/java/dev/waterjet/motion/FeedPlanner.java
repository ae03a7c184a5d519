package dev.waterjet.motion;

import dev.waterjet.evidence.Caution;
import dev.waterjet.feed.CutConditions;
import dev.waterjet.kerf.CutFront;
import dev.waterjet.kerf.KerfModel;
import dev.waterjet.kerf.KerfProfile;
import dev.waterjet.kerf.LagGeometry;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import dev.waterjet.part.ConditionedContour;
import dev.waterjet.part.Contour;
import dev.waterjet.part.ContourBuilder;
import dev.waterjet.part.ContourConditioner;
import dev.waterjet.part.EdgeCursor;
import dev.waterjet.part.Side;
import dev.waterjet.quality.EdgeRequirement;
import dev.waterjet.toolpath.ToolPath;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * Planner of the feed rate along a tool path: the fastest motion from rest to rest within the limits of the cut and of the
 * machine.
 *
 * <pre>{@code
 * FeedPlanner planner = FeedPlanner.of(machine, CutConditions.of(jet, plate, model));
 * FeedPlan plan = planner.plan(contour, Side.LEFT);
 * plan.time();
 * plan.findings();   // corners and arcs that no feed rate keeps within their tolerance
 * }</pre>
 *
 * <p>The path is conditioned first: lines and arcs replace the chords of which it is a sample, so that the time does not
 * depend on the sampling. Each edge has the feed rate of its cut quality. At corners, on arcs and before an end that nothing
 * overlaps, a slower feed rate keeps the predicted error of the bottom edge within the tolerance, or brings it within a tenth
 * of the least error that slowing can reach; before a corner and an end it also lets the jet cut through the bottom. The
 * slower feed rate holds over its own lag length on both sides: a front that recedes by its local slope needs no more to come
 * to the smaller lag. From these caps and the limits of the machine follows the motion. A tolerance that cannot be kept is a
 * finding, never an exception.
 *
 * <p>The plan is a calculation, not a command: what a machine may run is decided by its manual, its maker and trained people.
 * The jet cuts people as it cuts steel.
 */
public final class FeedPlanner {

    private final MachineLimits machine;
    private final QualityFeeds feeds;
    private final @Nullable CutConditions cut;
    private final KerfModel kerfModel;
    private final ContourConditioner conditioner;
    private final Choices choices;
    private final @Nullable KerfProfile profile;

    /**
     * Choices of a caller.
     *
     * @param rules choices behind slowdowns
     * @param reachFactor reach of slowdown zones in lags
     * @param head tilting head; null for one that stays upright
     */
    private record Choices(
            SlowdownRules rules,
            double reachFactor,
            @Nullable TiltingHead head) {

        static Choices defaults() {
            return new Choices(SlowdownRules.cautious(), 1, null);
        }
    }

    private FeedPlanner(
            MachineLimits machine,
            QualityFeeds feeds,
            @Nullable CutConditions cut,
            KerfModel kerfModel,
            ContourConditioner conditioner,
            Choices choices) {
        this.machine = Objects.requireNonNull(machine, "machine");
        this.feeds = Objects.requireNonNull(feeds, "feeds");
        this.cut = cut;
        this.kerfModel = Objects.requireNonNull(kerfModel, "kerfModel");
        this.conditioner = Objects.requireNonNull(conditioner, "conditioner");
        this.choices = choices;
        this.profile =
                cut == null ? null : KerfProfile.of(kerfModel, CutFront.of(kerfModel.lagModel(), cut), cut.jet());
    }

    /**
     * Returns a planner for a cut, with the standard kerf and lag models.
     *
     * @param machine limits of the machine
     * @param cut conditions of the cut
     * @return the planner
     */
    public static FeedPlanner of(MachineLimits machine, CutConditions cut) {
        Objects.requireNonNull(cut, "cut");
        return new FeedPlanner(
                machine,
                QualityFeeds.of(cut),
                cut,
                KerfModel.standard(),
                ContourConditioner.defaults(),
                Choices.defaults());
    }

    /**
     * Returns a planner for given feed rates and a jet without lag: corners and arcs are slowed by the machine alone.
     *
     * @param machine limits of the machine
     * @param feeds feed rate for each cut quality
     * @return the planner
     */
    public static FeedPlanner withoutLag(MachineLimits machine, QualityFeeds feeds) {
        return new FeedPlanner(
                machine, feeds, null, KerfModel.standard(), ContourConditioner.defaults(), Choices.defaults());
    }

    /**
     * Returns this planner with other feed rates on straight edges than those of the feed model.
     *
     * @param other feed rate for each cut quality
     * @return the planner
     */
    public FeedPlanner withFeeds(QualityFeeds other) {
        Objects.requireNonNull(other, "other");
        return new FeedPlanner(machine, other, cut, kerfModel, conditioner, choices);
    }

    /**
     * Returns this planner with another kerf model, and its lag model.
     *
     * @param model kerf model
     * @return the planner
     */
    public FeedPlanner withKerfModel(KerfModel model) {
        Objects.requireNonNull(model, "model");
        return new FeedPlanner(machine, feeds, cut, model, conditioner, choices);
    }

    /**
     * Returns this planner for another machine.
     *
     * @param other limits of that machine
     * @return the planner
     */
    public FeedPlanner withMachine(MachineLimits other) {
        Objects.requireNonNull(other, "other");
        return new FeedPlanner(other, feeds, cut, kerfModel, conditioner, choices);
    }

    /**
     * Returns this planner with another conditioner. Its tolerance should not exceed the corner deviation of the machine,
     * or joints of its pieces may slow the machine down.
     *
     * @param other the conditioner
     * @return the planner
     */
    public FeedPlanner withConditioner(ContourConditioner other) {
        Objects.requireNonNull(other, "other");
        return new FeedPlanner(machine, feeds, cut, kerfModel, other, choices);
    }

    /**
     * Returns this planner with one geometry of the lag at all corners and arcs. The default takes at each kind of place the
     * geometry that gouges the part most: tangent at inside corners and on arcs, tractrix at outside corners.
     *
     * @param geometry the geometry, for example as measured on a disc
     * @return the planner
     */
    public FeedPlanner withLagGeometry(LagGeometry geometry) {
        Objects.requireNonNull(geometry, "geometry");
        return with(new Choices(SlowdownRules.of(geometry), choices.reachFactor, choices.head));
    }

    /**
     * Returns this planner with or without the rule that the bottom is cut through before the path turns or ends.
     *
     * @param isRequired whether the rule holds; it does by default
     * @return the planner
     */
    public FeedPlanner withSeparationAtCorners(boolean isRequired) {
        return with(new Choices(choices.rules.withSeparation(isRequired), choices.reachFactor, choices.head));
    }

    /**
     * Returns this planner with another reach of slowdown zones. One lag length on both sides is the default: the lag at the
     * slow place is then the steady one, and the bottom has passed the place before the feed rate rises.
     *
     * @param lags reach before and after a slow place, in lag lengths at the feed rate of that place, 0 to 10
     * @return the planner
     */
    public FeedPlanner withReach(double lags) {
        double checked = Require.between("reach of a slowdown zone", lags, 0, 10, Units.ONE, "it is counted in lags");
        return with(new Choices(choices.rules, checked, choices.head));
    }

    /**
     * Returns this planner with a tilting head. Corners and arcs are then planned with the lag that the lead leaves, so that
     * they run faster; the plan has the tilt along the path. Without a lag, as in {@link #withoutLag}, the head stays upright.
     *
     * @param head the head
     * @return the planner
     */
    public FeedPlanner withTiltingHead(TiltingHead head) {
        Objects.requireNonNull(head, "head");
        return with(new Choices(choices.rules, choices.reachFactor, head));
    }

    private FeedPlanner with(Choices changed) {
        return new FeedPlanner(machine, feeds, cut, kerfModel, conditioner, changed);
    }

    /** {@return the limits of the machine} */
    public MachineLimits machine() {
        return machine;
    }

    /** {@return the feed rate on straight edges for each cut quality} */
    public QualityFeeds feeds() {
        return feeds;
    }

    /** {@return the conditioner of paths} */
    public ContourConditioner conditioner() {
        return conditioner;
    }

    /**
     * Plans the feed rate along a contour: the path of the jet axis from its start, as drawn or sampled.
     *
     * @param path the path; a closed one starts and ends over its pierced start
     * @param part the side of the path on which the part lies: it distinguishes inside corners from outside ones
     * @return the plan
     */
    public FeedPlan plan(Contour path, Side part) {
        Objects.requireNonNull(path, "path");
        Objects.requireNonNull(part, "part");
        return plan(conditioner.condition(opened(path)), path, part);
    }

    /**
     * Plans the feed rate along a path as it is drawn, without conditioning: each edge of the plan is an edge of the path. The
     * chords of a sampled curve then count as corners where their sagitta exceeds the flattening.
     *
     * @param path the path
     * @param part the side of the path on which the part lies
     * @return the plan
     */
    public FeedPlan planAsDrawn(Contour path, Side part) {
        Objects.requireNonNull(part, "part");
        Objects.requireNonNull(path, "path");
        return plan(opened(path), null, path, part, isFree(path));
    }

    /**
     * Plans the feed rate along a tool path. Where tabs interrupt it, each stretch has a plan of its own.
     *
     * @param path the tool path, made of a conditioned contour
     * @return one plan for each stretch with the jet on, in order
     */
    public List<FeedPlan> plan(ToolPath path) {
        Objects.requireNonNull(path, "path");
        List<Contour> cuts = path.cuts();
        List<FeedPlan> plans = new ArrayList<>(cuts.size());
        ToolPath.Purpose last = path.purpose(path.size() - 1);
        boolean endsInScrap = last == ToolPath.Purpose.LEAD_OUT || last == ToolPath.Purpose.OVERCUT;
        for (int i = 0; i < cuts.size(); i++) {
            Contour stretch = cuts.get(i);
            plans.add(plan(opened(stretch), null, stretch, path.partSide(), endsInScrap && i + 1 == cuts.size()));
        }
        return List.copyOf(plans);
    }

    private FeedPlan plan(ConditionedContour conditioned, Contour source, Side part) {
        return plan(conditioned.contour(), conditioned, source, part, isFree(source));
    }

    private static boolean isFree(Contour path) {
        return path.requirement(path.size() - 1).isLead();
    }

    /** The same edges as an open path, whose start is where the jet pierces and stays. */
    private static Contour opened(Contour path) {
        if (!path.isClosed()) {
            return path;
        }
        ContourBuilder builder = Contour.fromSi(path.xSi(0), path.ySi(0));
        EdgeCursor edge = new EdgeCursor();
        for (int i = 0; i < path.size(); i++) {
            path.load(i, edge);
            builder.requirement(path.requirement(i)).asCurve(path.isCurve(i)).edgeTo(edge);
        }
        return builder.open().named(path.name());
    }

    private FeedPlan plan(
            Contour path, @Nullable ConditionedContour conditioned, Contour source, Side part, boolean endsInScrap) {
        List<EdgeRequirement> requirements = path.requirements();
        EdgePolicy[] policies = new EdgePolicy[requirements.size()];
        TiltLaw law = tiltLaw(requirements);
        for (int i = 0; i < policies.length; i++) {
            policies[i] = new EdgePolicy(requirements.get(i), feeds, profile, new SlowdownSettings(choices.rules, law));
        }
        double flatteningM = Kind.LENGTH.si(conditioner.flattening());
        ProcessPlaces walk =
                new ProcessPlaces(path, source.isClosed(), part, policies, flatteningM, choices.reachFactor);
        PathPlaces places = walk.walk(endsInScrap);
        PathPieces pieces = walk.pieces();
        FeedCaps caps = ProcessCaps.of(places, pieces.lengthM(), machine.minimumFeedSi());
        MotionCurve motion = MotionSolver.solve(pieces, caps, machine.dynamics(), MotionSettings.defaults());
        PlanBlocks blocks = new PlanBlocks(pieces, caps, motion);
        TiltProfile tilt = law == null ? null : TiltProfile.of(path, motion, part, law, policies);
        return new FeedPlan(
                path,
                source,
                conditioned,
                blocks,
                places,
                motion,
                policies,
                machine.minimumFeedSi(),
                cautions(places, tilt),
                tilt);
    }

    /** Law of the tilt for the fastest straight feed of a path; null for a head that stays upright. */
    private @Nullable TiltLaw tiltLaw(List<EdgeRequirement> requirements) {
        if (profile == null || choices.head == null) {
            return null;
        }
        // a front that follows the path does not leave it at a bend: a lead would only move it off
        TiltingHead head = choices.rules.arc() == LagGeometry.FOLLOWING ? choices.head.withLead(0) : choices.head;
        if (!head.isTilting()) {
            return null;
        }
        double fastest = 0;
        for (EdgeRequirement requirement : requirements) {
            fastest = Math.max(fastest, EdgePolicy.straightFeed(requirement, feeds));
        }
        return new TiltLaw(head, profile, fastest);
    }

    /** Cautions of feed model, jet and workpiece, and of the front at the slowest feed. */
    private List<Caution> cautions(PathPlaces places, @Nullable TiltProfile tilt) {
        if (cut == null || profile == null) {
            return List.of();
        }
        double slowest = Double.POSITIVE_INFINITY;
        for (int i = 0; i < places.count(); i++) {
            slowest = Math.min(slowest, places.feedMPerS(i));
        }
        Set<Caution> cautions = new LinkedHashSet<>(cut.cautions());
        cautions.addAll(profile.front().cautions(slowest));
        if (tilt != null) {
            cautions.addAll(tilt.cautions());
        }
        return List.copyOf(cautions);
    }
}

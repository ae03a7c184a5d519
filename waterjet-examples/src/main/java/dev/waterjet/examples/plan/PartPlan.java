package dev.waterjet.examples.plan;

import dev.waterjet.evidence.Estimate;
import dev.waterjet.feed.CutConditions;
import dev.waterjet.feed.FeedModel;
import dev.waterjet.kerf.Kerf;
import dev.waterjet.measure.Kind;
import dev.waterjet.motion.FeedPlanner;
import dev.waterjet.part.Contour;
import dev.waterjet.part.Side;
import dev.waterjet.program.PartProgram;
import dev.waterjet.program.ProgramCut;
import dev.waterjet.quality.CutQuality;
import dev.waterjet.quality.EdgeRequirement;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Energy;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Speed;
import javax.measure.quantity.Time;
import javax.measure.quantity.Volume;

/** Plan of a part: feed rates, times, consumption, kerf, and features that the jet cannot cut. */
public final class PartPlan {

    private final PlanRequest request;
    private final Map<CutQuality, Estimate<Speed>> feeds = new EnumMap<>(CutQuality.class);
    private final Map<CutQuality, Kerf> kerfs = new EnumMap<>(CutQuality.class);
    private final List<CutPlan> cuts;
    private final Features features;

    private PartPlan(PlanRequest request, Progress progress) {
        this.request = request;
        FeedModel model = request.feeds();
        CutConditions conditions = CutConditions.of(request.jet(), request.workpiece(), model);
        for (CutQuality quality : CutQuality.values()) {
            Estimate<Speed> feed = model.feed(request.jet(), request.workpiece(), quality);
            feeds.put(quality, feed);
            kerfs.put(quality, request.kerfs().kerf(conditions, feed.value()));
        }
        PartProgram program = request.program();
        List<Side> parts = PartSides.of(program.cuts());
        this.features = Features.of(program.cuts(), parts, cut -> kerf(quality(cut)));
        FeedPlanner planner = FeedPlanner.of(request.machine(), conditions).withKerfModel(request.kerfs());
        List<CutPlan> planned = new ArrayList<>();
        for (int i = 0; i < program.cuts().size(); i++) {
            ProgramCut cut = program.cuts().get(i);
            CutQuality quality = quality(cut);
            EdgeRequirement requirement =
                    EdgeRequirement.of(quality).withLagTolerance(cut.tolerance().orElse(request.lagTolerance()));
            Contour path = cut.path(requirement);
            planned.add(CutPlan.of(cut, quality, kerf(quality), planner.planAsDrawn(path, parts.get(i))));
            progress.at(cut.firstBlock() + cut.size(), program.size());
        }
        this.cuts = List.copyOf(planned);
    }

    /**
     * Returns the plan of a part.
     *
     * @param request the request
     * @param progress receives progress
     * @return the plan
     * @throws dev.waterjet.measure.WaterjetException if the jet cannot cut the part
     */
    public static PartPlan of(PlanRequest request, Progress progress) {
        return new PartPlan(request, progress);
    }

    private CutQuality quality(ProgramCut cut) {
        return cut.quality().orElse(request.quality());
    }

    private Kerf kerf(CutQuality quality) {
        return Optional.ofNullable(kerfs.get(quality)).orElseThrow();
    }

    /** The request. */
    public PlanRequest request() {
        return request;
    }

    /** The cuts, in the order of the program. */
    public List<CutPlan> cuts() {
        return cuts;
    }

    /** Radii and slots of the part. */
    public Features features() {
        return features;
    }

    /** Feed rate on a straight edge of the requested cut quality. */
    public Estimate<Speed> feed() {
        return Optional.ofNullable(feeds.get(request.quality())).orElseThrow();
    }

    /** Kerf at that feed rate. */
    public Kerf kerf() {
        return kerf(request.quality());
    }

    /** The program with its feed rates. */
    public String programWithFeeds() {
        double[] all = new double[request.program().size()];
        for (CutPlan cut : cuts) {
            for (int i = 0; i < cut.cut().size(); i++) {
                all[cut.cut().firstBlock() + i] = cut.feedSi(i);
            }
        }
        return request.program().withFeedsSi(all);
    }

    /** Cutting time without piercing, with the relative uncertainty of the feed rate. */
    public Estimate<Time> cuttingTime() {
        return estimate(Kind.TIME, cuts.stream().mapToDouble(CutPlan::timeSi).sum());
    }

    /** Time of rapid traverse. */
    public double rapidTimeSi() {
        return Kind.LENGTH.si(request.program().rapidLength()) / Kind.SPEED.si(request.rapidSpeed());
    }

    /** Water consumption of cutting. */
    public Estimate<Volume> water() {
        return estimate(Kind.VOLUME, cuttingTime().si() * request.jet().water().volumeFlowSi());
    }

    /** Abrasive consumption of cutting. */
    public Estimate<Mass> abrasive() {
        return estimate(Kind.MASS, cuttingTime().si() * request.jet().abrasiveFlowSi());
    }

    /** Energy of the water at the orifice while cutting; the motor of the pump draws more. */
    public Estimate<Energy> energy() {
        return estimate(
                Kind.ENERGY,
                cuttingTime().si() * Kind.POWER.si(request.jet().water().ratedHydraulicPower()));
    }

    private <Q extends Quantity<Q>> Estimate<Q> estimate(Kind<Q> kind, double si) {
        return Estimate.withinFactor(kind, si, feed().relativeUncertainty(), List.of());
    }
}

package dev.waterjet.examples.plan;

import dev.waterjet.evidence.Estimate;
import dev.waterjet.feed.FeedModel;
import dev.waterjet.kerf.Kerf;
import dev.waterjet.kerf.LagFunction;
import dev.waterjet.measure.Kind;
import dev.waterjet.motion.FeedPlanner;
import dev.waterjet.motion.QualityFeeds;
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

/** The plan of a part: feeds, times, consumption, kerf, and whether the jet can enter every feature. */
public final class PartPlan {

    private final PlanRequest request;
    private final Map<CutQuality, Estimate<Speed>> feeds = new EnumMap<>(CutQuality.class);
    private final Map<CutQuality, Kerf> kerfs = new EnumMap<>(CutQuality.class);
    private final List<CutPlan> cuts;
    private final Features features;

    private PartPlan(PlanRequest request, Progress progress) {
        this.request = request;
        FeedModel model = request.feeds();
        for (CutQuality grade : CutQuality.values()) {
            Estimate<Speed> feed = model.feed(request.jet(), request.piece(), grade);
            feeds.put(grade, feed);
            kerfs.put(grade, request.kerfs().kerf(request.jet(), request.piece(), model, feed.value()));
        }
        PartProgram program = request.program();
        List<Side> parts = PartSides.of(program.cuts());
        this.features = Features.of(program.cuts(), parts, cut -> kerf(grade(cut)));
        FeedPlanner planner = FeedPlanner.of(
                request.machine(),
                QualityFeeds.of(model, request.jet(), request.piece()),
                LagFunction.of(request.kerfs().lagModel(), model, request.jet(), request.piece()));
        List<CutPlan> planned = new ArrayList<>();
        for (int i = 0; i < program.cuts().size(); i++) {
            ProgramCut cut = program.cuts().get(i);
            CutQuality grade = grade(cut);
            EdgeRequirement finish = EdgeRequirement.of(grade).withTolerance(cut.tolerance().orElse(request.tolerance()));
            Contour path = cut.path(finish);
            planned.add(CutPlan.of(cut, grade, kerf(grade), planner.plan(path, parts.get(i))));
            progress.at(cut.firstBlock() + cut.size(), program.size());
        }
        this.cuts = List.copyOf(planned);
    }

    /**
     * Plans a part.
     *
     * @param request what is asked
     * @param progress hears how far it has come
     * @return the plan
     * @throws dev.waterjet.measure.WaterjetException if the jet cannot do what is asked
     */
    public static PartPlan of(PlanRequest request, Progress progress) {
        return new PartPlan(request, progress);
    }

    private CutQuality grade(ProgramCut cut) {
        return cut.quality().orElse(request.grade());
    }

    private Kerf kerf(CutQuality grade) {
        return Optional.ofNullable(kerfs.get(grade)).orElseThrow();
    }

    /** What was asked. */
    public PlanRequest request() {
        return request;
    }

    /** The cuts, in the order of the program. */
    public List<CutPlan> cuts() {
        return cuts;
    }

    /** Radii and slots of the part against the jet. */
    public Features features() {
        return features;
    }

    /** Feed on a straight cut of the grade that was asked for. */
    public Estimate<Speed> feed() {
        return Optional.ofNullable(feeds.get(request.grade())).orElseThrow();
    }

    /** Kerf at that feed. */
    public Kerf kerf() {
        return kerf(request.grade());
    }

    /** The program with its feeds. */
    public String programWithFeeds() {
        double[] all = new double[request.program().size()];
        for (CutPlan cut : cuts) {
            for (int i = 0; i < cut.cut().size(); i++) {
                all[cut.cut().firstBlock() + i] = cut.feedSi(i);
            }
        }
        return request.program().withFeedsSi(all);
    }

    /** Time for which the jet cuts, without piercing. It is as uncertain as the feed. */
    public Estimate<Time> cuttingTime() {
        return estimate(Kind.TIME, cuts.stream().mapToDouble(CutPlan::timeSi).sum());
    }

    /** Time of the moves with the jet off, at the speed of the machine. */
    public double travelTimeSi() {
        return Kind.LENGTH.si(request.program().rapidLength()) / Kind.SPEED.si(request.travel());
    }

    /** Water that goes through the orifice while the jet cuts. */
    public Estimate<Volume> water() {
        return estimate(Kind.VOLUME, cuttingTime().si() * request.jet().water().volumeFlowSi());
    }

    /** Abrasive that is used while the jet cuts. */
    public Estimate<Mass> abrasive() {
        return estimate(Kind.MASS, cuttingTime().si() * request.jet().abrasiveFlowSi());
    }

    /** Energy that the water carries to the orifice while the jet cuts; the pump's motor draws more. */
    public Estimate<Energy> energy() {
        return estimate(
                Kind.ENERGY,
                cuttingTime().si() * Kind.POWER.si(request.jet().water().ratedHydraulicPower()));
    }

    private <Q extends Quantity<Q>> Estimate<Q> estimate(Kind<Q> kind, double si) {
        return Estimate.withinFactor(kind, si, feed().relativeUncertainty(), List.of());
    }
}

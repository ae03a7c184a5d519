package dev.waterjet.plan;

import dev.waterjet.kerf.Kerf;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.motion.FeedPlan;
import dev.waterjet.part.Contour;
import dev.waterjet.part.ContourBuilder;
import dev.waterjet.part.EdgeCursor;
import dev.waterjet.part.Finding;
import dev.waterjet.part.GeometryException;
import dev.waterjet.part.Part;
import dev.waterjet.part.Point;
import dev.waterjet.quality.CutQuality;
import dev.waterjet.toolpath.CuttingOrder;
import dev.waterjet.toolpath.CuttingRules;
import dev.waterjet.toolpath.HoldingTabs;
import dev.waterjet.toolpath.Lead;
import dev.waterjet.toolpath.LeadPlacer;
import dev.waterjet.toolpath.ToolPath;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleConsumer;
import javax.measure.Quantity;
import javax.measure.quantity.Length;

/** Plans a part: offset, leads, tabs, order and feed of each contour. */
final class PartPlanning extends Planning {

    private static final int TABS = 3;

    private final DoubleConsumer progress;

    PartPlanning(Setup setup, Workpiece workpiece, DoubleConsumer progress) {
        super(setup, workpiece);
        this.progress = progress;
    }

    /** Tool path of one contour of the part. */
    private record Path(int contour, ToolPath toolPath) {}

    PartPlan plan(Part part) {
        Part conditioned = conditioned(part);
        boolean isTipping = checkSlats(part);
        List<Path> paths = new ArrayList<>();
        int last = conditioned.contours().size() - 1;
        for (int i = 0; i <= last; i++) {
            Optional<ToolPath> path = toolPath(conditioned, i);
            if (path.isPresent()) {
                boolean isHeld = i == last && isTipping && setup.shearStrength().isPresent();
                paths.add(new Path(i, isHeld ? withTabs(path.get(), rules(kerf(conditioned, i))) : path.get()));
            }
        }
        List<Contour> axes =
                paths.stream().map(path -> path.toolPath().contour()).toList();
        List<Integer> order = CuttingOrder.suggest(axes, Point.ofSi(0, 0));
        for (int k = 0; k < order.size(); k++) {
            add(conditioned, paths.get(order.get(k)), k);
            progress.accept((k + 1.0) / order.size());
        }
        return result();
    }

    private Part conditioned(Part part) {
        List<Contour> all = part.contours().stream()
                .map(contour -> feedPlanner.conditioner().condition(contour).contour())
                .toList();
        return Part.of(all.get(all.size() - 1), all.subList(0, all.size() - 1));
    }

    private boolean checkSlats(Part part) {
        Optional<Finding> finding = setup.slats().map(slats -> slats.check(part));
        finding.ifPresent(findings::add);
        return finding.isPresent() && !finding.get().isSatisfied();
    }

    private Kerf kerf(Part part, int contour) {
        return kerf(part.contours().get(contour).requirement(0).quality());
    }

    private CuttingRules rules(Kerf kerf) {
        return CuttingRules.of(Kind.LENGTH.of(2 * kerf.offset().si()), workpiece.thickness());
    }

    /** Tool path with leads; empty for a hole that the jet cannot cut. */
    private Optional<ToolPath> toolPath(Part part, int contour) {
        try {
            Lead lead = LeadPlacer.of(part, rules(kerf(part, contour))).suggest(contour);
            findings.addAll(lead.findings());
            return Optional.of(lead.toolPath());
        } catch (GeometryException tooNarrow) {
            if (contour == part.holes().size()) {
                throw tooNarrow;
            }
            findings.add(Finding.violated(
                    tooNarrow.message().with("contour", part.label(contour)),
                    Point.ofSi(tooNarrow.xSi(), tooNarrow.ySi())));
            return Optional.empty();
        }
    }

    private ToolPath withTabs(ToolPath path, CuttingRules rules) {
        Quantity<Length> thickness = workpiece.thickness();
        HoldingTabs tabs = HoldingTabs.of(
                conditions.jet().water().reactionForce(), setup.shearStrength().orElseThrow(), thickness, rules);
        QuantityArray<Length> places = tabs.suggest(cutLoop(path), TABS);
        findings.add(tabs.check(path.contour(), TABS, tabs.width(TABS)));
        return path.withTabs(places, tabs.width(TABS), rules.kerfWidth());
    }

    /** The stretch along the part as a closed contour, from the entry. */
    private static Contour cutLoop(ToolPath path) {
        EdgeCursor edge = new EdgeCursor();
        ContourBuilder builder = null;
        for (int i = 0; i < path.size(); i++) {
            if (path.purpose(i) == ToolPath.Purpose.CUT) {
                path.contour().load(i, edge);
                builder = builder == null ? Contour.fromSi(edge.startX(), edge.startY()) : builder;
                builder.edgeTo(edge);
            }
        }
        if (builder == null) {
            throw new AssertionError("a tool path cuts");
        }
        return builder.closeWithin(Kind.LENGTH.of(1e-6));
    }

    private void add(Part part, Path path, int index) {
        Contour contour = part.contours().get(path.contour());
        CutQuality quality = contour.requirement(0).quality();
        Kerf kerf = kerf(quality);
        ToolPath toolPath = path.toolPath();
        List<FeedPlan> plans = feedPlanner.plan(toolPath);
        cuts.add(new PlannedCut(
                contour.name(),
                path.contour(),
                quality,
                toolPath.partSide(),
                kerf,
                Optional.of(kerf.offset().value()),
                plans,
                pierce,
                Optional.empty()));
        int edge = 0;
        for (FeedPlan plan : plans) {
            while (toolPath.purpose(edge) == ToolPath.Purpose.TAB) {
                edge++;
            }
            findings.addAll(plan.findings());
            moves.pierce(index, plan.contour().start(), pierce.time().si(), plan);
            moves.addStretch(index, plan, toolPath, edge);
            edge += plan.contour().size();
        }
    }
}

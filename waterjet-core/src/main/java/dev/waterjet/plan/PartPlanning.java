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
import dev.waterjet.pierce.Pierce;
import dev.waterjet.pierce.PierceSelector;
import dev.waterjet.quality.CutQuality;
import dev.waterjet.toolpath.CuttingOrder;
import dev.waterjet.toolpath.CuttingRules;
import dev.waterjet.toolpath.HoldingTabs;
import dev.waterjet.toolpath.Lead;
import dev.waterjet.toolpath.LeadPlacer;
import dev.waterjet.toolpath.ToolPath;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.DoubleConsumer;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import org.jspecify.annotations.Nullable;

/** Plans a part: offset, leads, tabs, order and feed of each contour. */
final class PartPlanning extends Planning {

    private static final int TABS = 3;

    /** Kerf widths that are cut between a lead and a tab. */
    private static final int FREE_KERFS = 4;

    private final DoubleConsumer progress;
    private final TabPlaces tabs;

    /** Placers for the part whose paths are drawn. */
    private final Map<CuttingRules, LeadPlacer> placers = new HashMap<>();

    PartPlanning(
            Setup setup, Workpiece workpiece, @Nullable Double kerfWidthM, TabPlaces tabs, DoubleConsumer progress) {
        super(setup, workpiece, kerfWidthM);
        this.tabs = tabs;
        this.progress = progress;
    }

    /**
     * Tool path of one contour of a part.
     *
     * @param contour index of the contour
     * @param lead its lead
     * @param toolPath path of the jet axis, with tabs if the contour has some
     * @param pierce pierce of each of its stretches
     */
    record Path(int contour, Lead lead, ToolPath toolPath, Pierce pierce) {}

    PartPlan plan(Part part) {
        Part conditioned = conditioned(part);
        List<Path> paths = paths(part, conditioned, List.of(), Point.ofSi(0, 0));
        for (int k = 0; k < paths.size(); k++) {
            add(conditioned, paths.get(k), k);
            progress.accept((k + 1.0) / paths.size());
        }
        return result();
    }

    /**
     * Paths of a part in their order.
     *
     * @param part the part as drawn
     * @param conditioned the same, conditioned
     * @param neighbours contours of other parts, of which pierces and leads keep clear
     * @param from where the head comes from
     */
    List<Path> paths(Part part, Part conditioned, List<Contour> neighbours, Point from) {
        placers.clear();
        List<Path> paths = new ArrayList<>();
        int last = conditioned.contours().size() - 1;
        List<Contour> all = new ArrayList<>(conditioned.contours());
        all.addAll(neighbours);
        boolean isPlaced = !tabs.on(conditioned.outline(), all).isEmpty();
        boolean isTipping = checkSlats(part, isPlaced);
        for (int i = 0; i <= last; i++) {
            List<Point> placed = tabs.on(conditioned.contours().get(i), all);
            Optional<Lead> lead = lead(conditioned, i, neighbours, placed);
            if (lead.isPresent()) {
                boolean isHeld = !placed.isEmpty()
                        || (i == last && isTipping && setup.shearStrength().isPresent());
                ToolPath path = lead.get().toolPath();
                paths.add(
                        isHeld
                                ? new Path(i, lead.get(), withTabs(path, rules(kerf(conditioned, i)), placed), still)
                                : new Path(i, lead.get(), path, pierce(conditioned, lead.get())));
            }
        }
        List<Contour> axes =
                paths.stream().map(path -> path.toolPath().contour()).toList();
        return CuttingOrder.suggest(axes, from).stream().map(paths::get).toList();
    }

    Part conditioned(Part part) {
        List<Contour> all = part.contours().stream()
                .map(contour -> feedPlanner.conditioner().condition(contour).contour())
                .toList();
        return Part.of(all.get(all.size() - 1), all.subList(0, all.size() - 1));
    }

    /** Whether the part can tip. A part that tabs hold does not. */
    private boolean checkSlats(Part part, boolean hasTabs) {
        Optional<Finding> finding = setup.slats().map(slats -> slats.check(part));
        boolean isTipping = finding.isPresent() && !finding.get().isSatisfied();
        boolean isHeld = isTipping && (hasTabs || setup.shearStrength().isPresent());
        finding.map(found -> isHeld ? new Finding(true, found.message(), List.of(), found.place()) : found)
                .ifPresent(findings::add);
        return isTipping;
    }

    Kerf kerf(Part part, int contour) {
        return kerf(part.contours().get(contour).requirement(0).quality());
    }

    private CuttingRules rules(Kerf kerf) {
        return CuttingRules.of(Kind.LENGTH.of(2 * offsetM(kerf)), workpiece.thickness());
    }

    /** Path with leads; empty for a hole that the jet cannot cut. */
    private Optional<Lead> lead(Part part, int contour, List<Contour> neighbours, List<Point> placed) {
        try {
            LeadPlacer placer = placer(part, contour, neighbours);
            Lead lead = placer.suggest(contour);
            if (!placed.isEmpty()) {
                CuttingRules rules = rules(kerf(part, contour));
                double kerfM = Kind.LENGTH.si(rules.kerfWidth());
                double widthM = tabs.widthM(sizing(rules), placed.size());
                lead = TabPlaces.besideTabs(
                        lead,
                        part.contours().get(contour),
                        placed,
                        (widthM + kerfM) / 2 + FREE_KERFS * kerfM,
                        at -> placer.at(contour, Kind.LENGTH.of(at)));
            }
            findings.addAll(lead.findings());
            return Optional.of(lead);
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

    /** Pierce of a contour by the scrap around its pierce point; behind a tab the head stays where it is. */
    private Pierce pierce(Part part, Lead lead) {
        return isMoving(pierce)
                ? PierceSelector.of(setup.pierceSettings()).select(conditions, part, lead.pierce())
                : pierce;
    }

    /** Placer of the leads of a contour; contours of one part and kerf share it. */
    private LeadPlacer placer(Part part, int contour, List<Contour> neighbours) {
        return placers.computeIfAbsent(
                rules(kerf(part, contour)),
                rules -> neighbours.isEmpty()
                        ? LeadPlacer.of(part, rules)
                        : LeadPlacer.of(part, rules).withNeighbours(neighbours));
    }

    private Optional<HoldingTabs> sizing(CuttingRules rules) {
        return setup.shearStrength()
                .map(strength -> HoldingTabs.of(
                        conditions.jet().water().reactionForce(), strength, workpiece.thickness(), rules));
    }

    /** A path with the tabs that are placed on it, or with tabs evenly along it. */
    private ToolPath withTabs(ToolPath path, CuttingRules rules, List<Point> placed) {
        Optional<HoldingTabs> sizing = sizing(rules);
        int count = placed.isEmpty() ? TABS : placed.size();
        Quantity<Length> width = Kind.LENGTH.of(tabs.widthM(sizing, count));
        double gapM = Kind.LENGTH.si(width) + Kind.LENGTH.si(rules.kerfWidth());
        QuantityArray<Length> places = placed.isEmpty()
                ? sizing.orElseThrow().suggest(cutLoop(path), count)
                : TabPlaces.along(cutLoop(path), placed, gapM, findings);
        sizing.map(tabs -> tabs.check(path.contour(), count, width)).ifPresent(findings::add);
        return path.withTabs(places, width, rules.kerfWidth());
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
                Optional.of(Kind.LENGTH.of(offsetM(kerf))),
                plans,
                path.pierce(),
                Optional.empty()));
        int edge = 0;
        for (FeedPlan plan : plans) {
            while (toolPath.purpose(edge) == ToolPath.Purpose.TAB) {
                edge++;
            }
            findings.addAll(plan.findings());
            moves.pierce(index, plan.contour().start(), path.pierce().time().si(), plan);
            moves.addStretch(index, plan, toolPath, edge);
            edge += plan.contour().size();
        }
    }
}

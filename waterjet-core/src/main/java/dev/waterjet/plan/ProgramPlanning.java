package dev.waterjet.plan;

import dev.waterjet.kerf.Kerf;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.Units;
import dev.waterjet.motion.FeedPlan;
import dev.waterjet.part.Contour;
import dev.waterjet.part.EdgeCursor;
import dev.waterjet.part.Finding;
import dev.waterjet.part.Point;
import dev.waterjet.part.Side;
import dev.waterjet.pierce.Pierce;
import dev.waterjet.program.CutFeeds;
import dev.waterjet.program.OffsetFeed;
import dev.waterjet.program.PartProgram;
import dev.waterjet.program.ProgramCut;
import dev.waterjet.quality.CutQuality;
import dev.waterjet.quality.EdgeRequirement;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleConsumer;
import org.jspecify.annotations.Nullable;

/** Plans the cuts of a program as they are written, along the path on which the machine moves the jet axis. */
final class ProgramPlanning extends Planning {

    private final DoubleConsumer progress;

    ProgramPlanning(Setup setup, Workpiece workpiece, @Nullable Double kerfWidthM, DoubleConsumer progress) {
        super(setup, workpiece, kerfWidthM);
        this.progress = progress;
    }

    PartPlan plan(PartProgram program) {
        List<ProgramCut> all = program.cuts();
        List<Side> sides = ProgramSides.of(all);
        ProgramFeatures features = new ProgramFeatures(findings);
        for (int i = 0; i < all.size(); i++) {
            ProgramCut cut = all.get(i);
            features.check(
                    cut, sides.get(i), minimumInnerRadius(kerf(requirement(cut).quality())));
            add(i, cut, sides.get(i), program.codes().offsetFeed());
            progress.accept((i + 1.0) / all.size());
        }
        return result();
    }

    private void add(int index, ProgramCut cut, Side side, OffsetFeed convention) {
        CutQuality quality = requirement(cut).quality();
        Kerf kerf = kerf(quality);
        double offsetM = offsetM(kerf);
        Optional<JetPath> jet = JetPathDrawing.of(cut, setup.requirement(), offsetM, feedPlanner.conditioner());
        FeedPlan plan = jet.isPresent()
                ? feedPlanner.planAsDrawn(jet.get().axis().named(cut.name()), side)
                : feedPlanner.plan(cut.path(setup.requirement()), side);
        if (cut.jetSide().isPresent()) {
            if (jet.isEmpty()) {
                findings.add(notDrawn(cut, offsetM));
            }
            addShortChanges(cut, offsetM);
        }
        findings.addAll(plan.findings());
        CutFeeds feeds = jet.isPresent()
                ? jet.get().feeds(plan, setup.feedChange(), convention)
                : PlanProgram.feeds(List.of(plan), setup.feedChange());
        MovingPierce moving = MovingPierce.of(cut);
        Pierce through = moving.isThere() ? pierce : still;
        cuts.add(new PlannedCut(
                cut.name(),
                index,
                quality,
                side,
                kerf,
                jet.map(path -> Kind.LENGTH.of(offsetM)),
                List.of(plan),
                through,
                Optional.of(moving.slowed(feeds, through))));
        moves.pierce(index, plan.source().start(), through.time().si(), plan);
        moves.addProgrammed(
                index,
                plan,
                cut,
                block -> jet.isPresent()
                        ? jet.get().block(block.edge(), (block.from() + block.to()) / 2)
                        : block.edge());
    }

    /** Moves on which the offset starts or ends that are shorter than it (common practice, no source). */
    private void addShortChanges(ProgramCut cut, double offsetM) {
        EdgeCursor edge = new EdgeCursor();
        Contour path = cut.path(setup.requirement());
        for (int i = 0; i < path.size(); i++) {
            path.load(i, edge);
            boolean isChange = cut.offset(i) == ProgramCut.Offset.STARTS || cut.offset(i) == ProgramCut.Offset.ENDS;
            if (isChange && edge.length() < offsetM) {
                findings.add(Finding.violated(
                        Message.of(
                                        "short-offset-change",
                                        "line {line}: the kerf offset of {offset} starts or ends on a move of {length};"
                                                + " a control may stop there, or move the jet to the wrong side")
                                .with("line", cut.line(i))
                                .with("offset", Kind.LENGTH, offsetM, Units.MILLIMETRE)
                                .with("length", Kind.LENGTH, edge.length(), Units.MILLIMETRE),
                        Point.ofSi(edge.startX(), edge.startY()),
                        Message.of("lengthen-lead", "make the lead longer than the offset")));
            }
        }
    }

    private static Finding notDrawn(ProgramCut cut, double offsetM) {
        return Finding.violated(
                Message.of(
                                "offset-not-followed",
                                "line {line}: the jet does not fit beside this path with an offset of {offset}; its"
                                        + " feed rates are those of the path as written")
                        .with("line", cut.line())
                        .with("offset", Kind.LENGTH, offsetM, Units.MILLIMETRE),
                cut.start(),
                Message.of("take-smaller-jet", "take a smaller jet"));
    }

    /** Requirement on the first edge of the contour. */
    private EdgeRequirement requirement(ProgramCut cut) {
        return cut.requirement(cut.leadIn(), setup.requirement());
    }
}

package dev.waterjet.plan;

import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import dev.waterjet.motion.FeedPlan;
import dev.waterjet.part.Contour;
import dev.waterjet.part.Side;
import dev.waterjet.program.PartProgram;
import dev.waterjet.program.ProgramCut;
import dev.waterjet.quality.CutQuality;
import dev.waterjet.quality.EdgeRequirement;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleConsumer;
import javax.measure.Quantity;
import javax.measure.quantity.Length;

/** Plans the cuts of a program as they are written. */
final class ProgramPlanning extends Planning {

    private final DoubleConsumer progress;

    ProgramPlanning(Setup setup, Workpiece workpiece, DoubleConsumer progress) {
        super(setup, workpiece);
        this.progress = progress;
    }

    PartPlan plan(PartProgram program) {
        List<ProgramCut> all = program.cuts();
        List<Side> sides = ProgramSides.of(all);
        ProgramFeatures features = new ProgramFeatures(findings);
        for (int i = 0; i < all.size(); i++) {
            ProgramCut cut = all.get(i);
            EdgeRequirement requirement = requirement(cut);
            Contour path = cut.path(requirement).named(cut.name());
            FeedPlan plan = feedPlanner.plan(path, sides.get(i));
            CutQuality quality = requirement.quality();
            features.check(cut, sides.get(i), kerf(quality));
            findings.addAll(plan.findings());
            cuts.add(new PlannedCut(
                    cut.name(), i, quality, sides.get(i), kerf(quality), Optional.empty(), List.of(plan), pierce));
            moves.pierce(i, path.start(), pierce.time().si(), plan);
            moves.addDrawn(i, plan, cut.leadIn(), cut.leadOut());
            progress.accept((i + 1.0) / all.size());
        }
        return result();
    }

    private EdgeRequirement requirement(ProgramCut cut) {
        EdgeRequirement requirement = setup.requirement();
        if (cut.quality().isPresent()) {
            requirement = requirement.withQuality(cut.quality().get());
        }
        Optional<Quantity<Length>> tolerance = cut.tolerance();
        return tolerance.isPresent()
                ? requirement.withLagTolerance(Kind.LENGTH.of(Kind.LENGTH.si(tolerance.get())))
                : requirement;
    }
}

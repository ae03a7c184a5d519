package dev.waterjet.plan;

import dev.waterjet.feed.CutConditions;
import dev.waterjet.kerf.Kerf;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import dev.waterjet.motion.FeedPlanner;
import dev.waterjet.part.Finding;
import dev.waterjet.pierce.Pierce;
import dev.waterjet.pierce.PierceMethod;
import dev.waterjet.pierce.PierceSelector;
import dev.waterjet.quality.CutQuality;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import org.jspecify.annotations.Nullable;

/** Common base of planning a part and planning a program. */
class Planning {

    final Setup setup;
    final Workpiece workpiece;
    final CutConditions conditions;
    final FeedPlanner feedPlanner;
    final Pierce pierce;

    /** Pierce of a head that stays where it is. */
    final Pierce still;

    final List<PlannedCut> cuts = new ArrayList<>();
    final List<Finding> findings = new ArrayList<>();
    final MoveList moves;
    private final @Nullable Double kerfWidthM;
    private final Map<CutQuality, Kerf> kerfs = new EnumMap<>(CutQuality.class);

    Planning(Setup setup, Workpiece workpiece, @Nullable Double kerfWidthM) {
        this.kerfWidthM = kerfWidthM;
        this.setup = setup;
        this.workpiece = workpiece;
        this.conditions = setup.conditions(workpiece);
        FeedPlanner upright = FeedPlanner.of(setup.machine(), conditions).withKerfModel(setup.kerfModel());
        this.feedPlanner = setup.tiltingHead().map(upright::withTiltingHead).orElse(upright);
        PierceSelector selector = PierceSelector.of(setup.pierceSettings());
        this.pierce = selector.select(conditions);
        this.still = isMoving(pierce) ? selector.select(conditions, Kind.LENGTH.of(0)) : pierce;
        this.moves = new MoveList(setup, Kind.LENGTH.of(conditions.jet().standOffSi()));
    }

    /** Kerf of a quality at the feed of straight edges. */
    Kerf kerf(CutQuality quality) {
        return kerfs.computeIfAbsent(
                quality,
                key -> setup.kerfModel().kerf(conditions, conditions.feed(key).value()));
    }

    /** Whether the head moves while the jet pierces. */
    static boolean isMoving(Pierce pierce) {
        return pierce.method() == PierceMethod.MOVING || pierce.method() == PierceMethod.CIRCULAR;
    }

    /** Kerf offset of a path. */
    double offsetM(Kerf kerf) {
        return kerfWidthM == null ? kerf.offset().si() : kerfWidthM / 2;
    }

    /** Smallest radius of an inner edge that the jet cuts. */
    Quantity<Length> minimumInnerRadius(Kerf kerf) {
        return kerfWidthM == null ? kerf.minimumInnerRadius().value() : Kind.LENGTH.of(kerfWidthM / 2);
    }

    PartPlan result() {
        return new PartPlan(
                setup, conditions, Optional.ofNullable(kerfWidthM).map(Kind.LENGTH::of), cuts, moves.moves(), findings);
    }
}

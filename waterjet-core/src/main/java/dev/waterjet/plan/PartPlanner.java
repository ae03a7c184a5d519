package dev.waterjet.plan;

import dev.waterjet.material.Workpiece;
import dev.waterjet.part.Part;
import dev.waterjet.program.PartProgram;
import java.util.Objects;
import java.util.function.DoubleConsumer;

/**
 * Planner of parts: tool path, leads, order, pierces, feed rate along every edge, moves, findings, time and cost.
 *
 * <pre>{@code
 * PartPlanner planner = PartPlanner.of(setup);
 * PartPlan plan = planner.plan(part, Workpiece.of(Materials.standard().get("mild-steel-a36"), millimetres(10)));
 * plan.moves();
 * plan.violations();
 * }</pre>
 *
 * <p>Immutable; it can be used by several threads.
 */
public final class PartPlanner {

    private final Setup setup;
    private final DoubleConsumer progress;

    private PartPlanner(Setup setup, DoubleConsumer progress) {
        this.setup = Objects.requireNonNull(setup, "setup");
        this.progress = Objects.requireNonNull(progress, "progress");
    }

    /**
     * Returns a planner.
     *
     * @param setup machine and shop
     * @return the planner
     */
    public static PartPlanner of(Setup setup) {
        return new PartPlanner(setup, share -> {});
    }

    /**
     * Returns this planner with a listener.
     *
     * @param listener receives the share of the work done, 0 to 1, from the planning thread
     * @return the planner
     */
    public PartPlanner withProgress(DoubleConsumer listener) {
        return new PartPlanner(setup, listener);
    }

    /** {@return the setup} */
    public Setup setup() {
        return setup;
    }

    /**
     * Plans a part: the path of the jet axis is the offset of its conditioned contours by half the kerf, with leads, holes
     * first, in an order of short rapid traverse. A part that can tip between the slats is held by tabs if the setup has the
     * shear strength of the plate.
     *
     * @param part the part
     * @param workpiece the workpiece
     * @return the plan; a contour that the jet cannot cut is left out, with a finding
     * @throws dev.waterjet.part.GeometryException with code {@code jet-does-not-fit} if the jet cannot cut the outline
     * @throws dev.waterjet.measure.DomainException if the jet does not cut the workpiece
     */
    public PartPlan plan(Part part, Workpiece workpiece) {
        Objects.requireNonNull(part, "part");
        return new PartPlanning(setup, workpiece, progress).plan(part);
    }

    /**
     * Plans the cuts of a program as they are written. Moves follow its blocks; a block is split where the feed rate changes.
     * Where the machine applies a kerf offset by G41 or G42, feed rates and moves are those of the path of the jet axis beside the
     * blocks, with the offset of the plan's kerf: around outer corners on an arc, at inner ones up to where the offset lines meet.
     * Feed words follow from {@link dev.waterjet.program.ProgramCodes#offsetFeed}.
     *
     * @param program the program
     * @param workpiece the workpiece
     * @return the plan; its cuts are those of the program
     * @throws dev.waterjet.measure.DomainException if the program has no cut, or the jet does not cut the workpiece
     */
    public PartPlan plan(PartProgram program, Workpiece workpiece) {
        return new ProgramPlanning(setup, workpiece, progress).plan(program);
    }
}

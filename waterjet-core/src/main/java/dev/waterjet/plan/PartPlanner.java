package dev.waterjet.plan;

import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import dev.waterjet.part.Part;
import dev.waterjet.part.Point;
import dev.waterjet.program.PartProgram;
import dev.waterjet.program.ProgramWriter;
import java.util.List;
import java.util.Objects;
import java.util.function.DoubleConsumer;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import org.jspecify.annotations.Nullable;

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
    private final @Nullable Double kerfWidthM;
    private final TabPlaces tabs;

    private PartPlanner(Setup setup, DoubleConsumer progress, @Nullable Double kerfWidthM, TabPlaces tabs) {
        this.setup = Objects.requireNonNull(setup, "setup");
        this.progress = Objects.requireNonNull(progress, "progress");
        this.kerfWidthM = kerfWidthM;
        this.tabs = tabs;
    }

    /**
     * Returns a planner.
     *
     * @param setup machine and shop
     * @return the planner
     */
    public static PartPlanner of(Setup setup) {
        return new PartPlanner(setup, share -> {}, null, TabPlaces.NONE);
    }

    /**
     * Returns this planner with a listener.
     *
     * @param listener receives the share of the work done, 0 to 1, from the planning thread
     * @return the planner
     */
    public PartPlanner withProgress(DoubleConsumer listener) {
        return new PartPlanner(setup, listener, kerfWidthM, tabs);
    }

    /**
     * Returns this planner with a kerf width of the caller: half of it is the offset of every path, and leads keep clear by it. The
     * default is the width of the kerf model for each cut quality.
     *
     * @param width width of the kerf, above 0
     * @return the planner
     */
    public PartPlanner withKerfWidth(Quantity<Length> width) {
        Objects.requireNonNull(width, "width");
        double checked = Require.positive("kerf width", Kind.LENGTH.si(width), Units.MILLIMETRE);
        return new PartPlanner(setup, progress, checked, tabs);
    }

    /**
     * Returns this planner with holding tabs where the caller wants them, each on the contour nearest to its place. Leads enter
     * away from them; where a contour has no other entry, a tab is beside the lead, with a finding. They replace those that a
     * part gets because it can tip.
     *
     * @param places places of the tabs, on or beside the contours of the parts; none for tabs of the planner's own
     * @return the planner
     */
    public PartPlanner withTabs(List<Point> places) {
        Objects.requireNonNull(places, "places");
        return new PartPlanner(setup, progress, kerfWidthM, new TabPlaces(List.copyOf(places), tabs.widthM()));
    }

    /**
     * Returns this planner with a width of its holding tabs. The default is the width that bears the reaction of the jet, which
     * requires the shear strength of the plate in the setup.
     *
     * @param width width of the bridge that stays at each tab, above 0
     * @return the planner
     */
    public PartPlanner withTabWidth(Quantity<Length> width) {
        Objects.requireNonNull(width, "width");
        double checked = Require.positive("width of a tab", Kind.LENGTH.si(width), Units.MILLIMETRE);
        return new PartPlanner(setup, progress, kerfWidthM, new TabPlaces(tabs.places(), checked));
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
     * @throws dev.waterjet.measure.DomainException if the jet does not cut the workpiece, or with code
     *     {@code tab-width-missing} if tabs are placed and neither their width nor the shear strength is known
     */
    public PartPlan plan(Part part, Workpiece workpiece) {
        Objects.requireNonNull(part, "part");
        return new PartPlanning(setup, workpiece, kerfWidthM, tabs, progress).plan(part);
    }

    /**
     * Writes parts as a program along their edges, for a machine that applies the kerf offset: with the leads, tabs, pierces and
     * order of {@link #plan(Part, Workpiece)}, part after part; a part in an opening of another comes before that one. The offset
     * starts on a straight lead. Read it and plan it to write its feed rates; until then each edge has the feed rate of straight
     * edges of its cut quality. Notes within a cut state the quality of edges that differ from those before.
     *
     * @param title comment of its first line; empty for none
     * @param parts the parts, 1 or more, in one frame
     * @param workpiece the workpiece
     * @param writer codes and units of the program
     * @return the program, and the findings of leads, tabs and slats; a contour that the jet cannot cut is left out, with a finding
     * @throws dev.waterjet.part.GeometryException with code {@code jet-does-not-fit} if the jet cannot cut an outline
     * @throws dev.waterjet.measure.DomainException if there is no part, or the jet does not cut the workpiece
     */
    public EdgeProgram program(String title, List<Part> parts, Workpiece workpiece, ProgramWriter writer) {
        Objects.requireNonNull(writer, "writer");
        Require.atLeast("number of parts", parts.size(), 1, Units.ONE, "");
        PartPlanning planning = new PartPlanning(setup, workpiece, kerfWidthM, tabs, progress);
        return new EdgeProgram(writer.write(title, new EdgeMoves(planning).of(parts)), planning.findings);
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
        return new ProgramPlanning(setup, workpiece, kerfWidthM, progress).plan(program);
    }
}

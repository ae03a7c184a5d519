package dev.waterjet.sheet;

import dev.waterjet.measure.Kind;
import dev.waterjet.part.Box;
import dev.waterjet.part.Contour;
import dev.waterjet.part.ContourBuilder;
import dev.waterjet.part.EdgeTree;
import dev.waterjet.part.Finding;
import dev.waterjet.part.GeometryException;
import dev.waterjet.part.Part;
import dev.waterjet.part.PartKernel;
import dev.waterjet.toolpath.CuttingRules;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;

/** Parts on a sheet: whether the jet keeps material on both sides, between neighbours and towards the edge. */
public final class SheetLayout implements Serializable {

    private static final long serialVersionUID = 1L;

    private final Contour sheet;
    private final List<Part> parts;

    private SheetLayout(Contour sheet, List<Part> parts) {
        this.sheet = sheet.requireClosed().requireSimple();
        this.parts = List.copyOf(parts);
    }

    /**
     * Parts on a sheet.
     *
     * @param sheet outline of the sheet
     * @param parts the parts, where they lie
     * @return the layout
     * @throws GeometryException if the outline of the sheet is open or crosses itself
     */
    public static SheetLayout of(Contour sheet, List<Part> parts) {
        return new SheetLayout(sheet, parts);
    }

    /**
     * Checks every part against the edge of the sheet and its neighbours. Towards the edge one kerf and the least web are
     * wanted, between two parts two kerfs and the web: each part is cut on its own, and a jet with material on one side
     * only is pushed aside.
     *
     * @param rules what a cut wants
     * @return a finding {@code edge-room} for each part, and {@code neighbour-room} for each pair that is too close
     */
    public List<Finding> check(CuttingRules rules) {
        List<Finding> findings = new ArrayList<>();
        double toEdge = rules.kerfSi() + rules.minimumWebSi();
        double between = 2 * rules.kerfSi() + rules.minimumWebSi();
        List<Box> boxes = parts.stream().map(part -> part.outline().box()).toList();
        EdgeTree sheetTree = EdgeTree.of(sheet);
        List<EdgeTree> trees =
                parts.stream().map(part -> EdgeTree.of(part.outline())).toList();
        for (int i = 0; i < parts.size(); i++) {
            Contour outline = parts.get(i).outline();
            double room = sheet.isAround(outline.start()) ? trees.get(i).clearance(sheetTree) : 0;
            findings.add(Finding.atLeast(
                    "edge-room",
                    "room from part " + i + " to the edge of the sheet",
                    room,
                    toEdge,
                    "move the part inwards by " + ContourBuilder.told(toEdge - room),
                    outline.start()));
            for (int j = 0; j < i; j++) {
                if (PartKernel.boxesApart(boxes.get(i), boxes.get(j)) >= between) {
                    continue;
                }
                Contour other = parts.get(j).outline();
                boolean isInside = outline.isAround(other.start()) || other.isAround(outline.start());
                double apart = isInside ? 0 : trees.get(i).clearance(trees.get(j));
                if (apart < between) {
                    findings.add(Finding.atLeast(
                            "neighbour-room",
                            "room between parts " + j + " and " + i,
                            apart,
                            between,
                            "move them apart by " + ContourBuilder.told(between - apart),
                            outline.start()));
                }
            }
        }
        return List.copyOf(findings);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof SheetLayout that && sheet.equals(that.sheet) && parts.equals(that.parts);
    }

    @Override
    public int hashCode() {
        return 31 * sheet.hashCode() + parts.hashCode();
    }

    @Override
    public String toString() {
        return parts.size() + " parts on a sheet of "
                + ContourBuilder.told(Kind.LENGTH.si(sheet.box().width())) + " by "
                + ContourBuilder.told(Kind.LENGTH.si(sheet.box().height()));
    }
}

package dev.waterjet.sheet;

import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Units;
import dev.waterjet.part.Box;
import dev.waterjet.part.BoxTree;
import dev.waterjet.part.Contour;
import dev.waterjet.part.EdgeCursor;
import dev.waterjet.part.EdgeTree;
import dev.waterjet.part.Finding;
import dev.waterjet.part.Part;
import dev.waterjet.part.Point;
import dev.waterjet.toolpath.CuttingRules;
import java.io.InvalidObjectException;
import java.io.ObjectInputStream;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/** Parts on a sheet: whether the jet keeps material on both sides, between neighbours and towards the edge. */
public final class SheetLayout implements Serializable {

    private static final long serialVersionUID = 1L;

    /** Places of an arc at which its distance outside the sheet is measured. */
    private static final int PROBES = 8;

    /** Checked content, and the serial form. */
    private record Values(Contour sheet, List<Part> parts) implements Serializable {

        Values {
            Objects.requireNonNull(sheet, "sheet").requireClosed().requireSimple();
            parts = List.copyOf(parts);
        }

        private Object readResolve() {
            return new SheetLayout(this);
        }
    }

    private final transient Values values;

    private SheetLayout(Values values) {
        this.values = values;
    }

    /**
     * Returns the layout of parts on a sheet.
     *
     * @param sheet outline of the sheet
     * @param parts the parts, where they lie
     * @return the layout
     * @throws dev.waterjet.part.GeometryException if the outline of the sheet is open or crosses itself
     */
    public static SheetLayout of(Contour sheet, List<Part> parts) {
        Objects.requireNonNull(parts, "parts");
        return new SheetLayout(new Values(sheet, parts));
    }

    /**
     * Checks every part against the edge of the sheet and its neighbours. Towards the edge one kerf and the minimum web are
     * required, between two parts two kerfs and the web: each part is cut on its own, and a jet with material on one side only is
     * pushed aside.
     *
     * @param rules clearances that a cut requires
     * @return a finding {@code edge-clearance} or {@code over-edge} for each part, and {@code neighbour-clearance} for each pair
     *     that is too close
     */
    public List<Finding> check(CuttingRules rules) {
        Objects.requireNonNull(rules, "rules");
        double kerf = Kind.LENGTH.si(rules.kerfWidth());
        double web = Kind.LENGTH.si(rules.minimumWeb());
        EdgeTree sheetTree = EdgeTree.of(values.sheet);
        List<EdgeTree> trees =
                values.parts.stream().map(part -> EdgeTree.of(part.outline())).toList();
        List<Box> boxes =
                values.parts.stream().map(part -> part.outline().box()).toList();
        List<Finding> findings = new ArrayList<>();
        for (int i = 0; i < trees.size(); i++) {
            findings.add(towardsEdge(i, trees.get(i), sheetTree, kerf + web));
            for (int j = 0; j < i; j++) {
                if (Kind.LENGTH.si(boxes.get(i).distance(boxes.get(j))) < 2 * kerf + web) {
                    addNeighbour(j, i, trees.get(j), trees.get(i), 2 * kerf + web, findings);
                }
            }
        }
        return List.copyOf(findings);
    }

    private Finding towardsEdge(int part, EdgeTree outline, EdgeTree sheet, double required) {
        double over = overEdge(outline.contour(), sheet);
        Point place = outline.contour().start();
        Message inwards = Message.of("move-inwards", "move the part inwards by {length}");
        if (over > 0) {
            return Finding.violated(
                    Message.of(
                                    "over-edge",
                                    "part {part} lies {over} over the edge of the sheet; required inside are {limit}")
                            .with("part", part)
                            .with("over", Kind.LENGTH, over, Units.MILLIMETRE)
                            .with("limit", Kind.LENGTH, required, Units.MILLIMETRE),
                    place,
                    inwards.with("length", Kind.LENGTH, required + over, Units.MILLIMETRE));
        }
        double clearance = outline.clearance(sheet);
        return Finding.atLeast(
                Message.of(
                                "edge-clearance",
                                "part {part} lies {value} from the edge of the sheet; required are {limit}")
                        .with("part", part),
                clearance,
                required,
                place,
                inwards.with("length", Kind.LENGTH, Math.max(0, required - clearance), Units.MILLIMETRE));
    }

    /** Largest distance of a part outside the sheet; zero if it lies inside. Vertices and eight places of each arc count. */
    private double overEdge(Contour outline, EdgeTree sheet) {
        EdgeCursor edge = new EdgeCursor();
        EdgeCursor scratch = new EdgeCursor();
        BoxTree.Walk walk = sheet.walk();
        double most = 0;
        for (int i = 0; i < outline.size(); i++) {
            outline.load(i, edge);
            int probes = edge.isArc() ? PROBES : 1;
            for (int k = 0; k < probes; k++) {
                double x = edge.xAt((double) k / probes);
                double y = edge.yAt((double) k / probes);
                if (!values.sheet.isAround(Point.ofSi(x, y))) {
                    values.sheet.load(0, scratch);
                    most = Math.max(most, sheet.distance(x, y, scratch.distance(x, y), walk, scratch));
                }
            }
        }
        return most;
    }

    private static void addNeighbour(
            int one, int other, EdgeTree a, EdgeTree b, double required, List<Finding> findings) {
        boolean isInside = a.contour().isAround(b.contour().start())
                || b.contour().isAround(a.contour().start());
        double apart = isInside ? 0 : a.clearance(b);
        if (apart < required) {
            findings.add(Finding.atLeast(
                    Message.of("neighbour-clearance", "parts {one} and {other} lie {value} apart; required are {limit}")
                            .with("one", one)
                            .with("other", other),
                    apart,
                    required,
                    b.contour().start(),
                    Message.of("move-apart", "move them apart by {length}")
                            .with("length", Kind.LENGTH, required - apart, Units.MILLIMETRE)));
        }
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof SheetLayout that && values.equals(that.values);
    }

    @Override
    public int hashCode() {
        return values.hashCode();
    }

    @Override
    public String toString() {
        Box box = values.sheet.box();
        return values.parts.size() + " parts on a sheet of "
                + QuantityText.forPeople(Kind.LENGTH, box.width()) + " by "
                + QuantityText.forPeople(Kind.LENGTH, box.height());
    }

    private Object writeReplace() {
        return values;
    }

    private void readObject(ObjectInputStream in) throws InvalidObjectException {
        throw new InvalidObjectException("read through its values");
    }
}

package dev.waterjet.toolpath;

import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.Units;
import dev.waterjet.part.Contour;
import dev.waterjet.part.ContourBuilder;
import dev.waterjet.part.EdgeCursor;
import dev.waterjet.part.EdgeTree;
import dev.waterjet.part.Finding;
import dev.waterjet.part.GeometryException;
import dev.waterjet.part.Point;
import dev.waterjet.part.Side;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Builds the offset of one contour: draw every element that can be part of it, cut them where they meet, keep what keeps the
 * offset from every edge, join that, and look for what it does not reach.
 */
final class OffsetBuilder {

    /** Chains shorter than this are rounding. */
    private static final double SHORT_M = 1e-7;

    /** Loops shorter than this are about as long as the steps of a program: the pierce alone makes such a hole. */
    private static final double SHORT_LOOP_M = 6e-5;

    /** Ends that are nearer are one point. */
    private static final double POINT_M = 1e-9;

    /** A corner between edges that are nearly tangent: left out, it moves the path by less than 0.1 um. */
    private static final double SHORT_CORNER_M = 5e-6;

    private static final double SHORT_CORNER_RAD = 0.05;

    private final Contour contour;
    private final Side jetSide;
    private final double[] offset;
    private final double tolerance;
    private final boolean isExtended;
    private final EdgeTree tree;
    private final OffsetElements elements;
    private final OffsetSlices slices;
    private final OffsetFit fit;

    OffsetBuilder(Contour contour, Side jetSide, double[] offset, KerfOffset.CornerStyle corners, double tolerance) {
        this.contour = contour;
        this.jetSide = jetSide;
        this.offset = offset;
        this.tolerance = tolerance;
        this.isExtended = corners == KerfOffset.CornerStyle.EXTENDED;
        this.tree = EdgeTree.of(contour);
        this.elements = new OffsetDrawing(contour, jetSide.sign(), offset, isExtended).draw();
        this.slices = OffsetSlices.of(elements);
        this.fit = new OffsetFit(tree, jetSide.sign(), offset, tolerance);
    }

    OffsetResult build(KerfOffset.NarrowPlaces narrow) {
        List<int[]> chains = chains();
        if (chains.isEmpty()) {
            throw nowhere();
        }
        if (narrow != KerfOffset.NarrowPlaces.SPLIT && chains.size() > 1) {
            chains = List.of(chains.get(0));
        }
        List<Finding> findings = new ArrayList<>();
        double unreached = 0;
        for (OffsetFit.Stretch stretch : fit.stretches(elements, slices, chains)) {
            if (stretch.isCorner()) {
                findings.add(corner(stretch));
                continue;
            }
            Finding finding = narrow(stretch);
            if (narrow == KerfOffset.NarrowPlaces.REFUSE) {
                throw refusal(stretch, finding);
            }
            findings.add(finding);
            unreached += stretch.lengthM();
        }
        List<ToolPath> paths = chains.stream().map(this::path).toList();
        return new OffsetResult(paths, Kind.LENGTH.of(unreached), findings);
    }

    /** Chains of slices that keep the offset, the longest first. */
    private List<int[]> chains() {
        OffsetClearance clearance = new OffsetClearance(tree, jetSide.sign(), offset, isExtended);
        boolean[] isKept = new boolean[slices.size];
        double[] middle = new double[2];
        for (int i = 0; i < slices.size; i++) {
            slices.middle(i, middle);
            isKept[i] = clearance.isClear(middle[0], middle[1]);
        }
        List<int[]> chains = new ArrayList<>(OffsetLoops.of(slices, isKept, contour.isClosed()));
        double shortest = contour.isClosed() ? SHORT_LOOP_M : SHORT_M;
        chains.removeIf(chain -> length(chain) < shortest);
        chains.sort(Comparator.comparingDouble((int[] chain) -> length(chain)).reversed());
        return chains;
    }

    private double length(int[] chain) {
        EdgeCursor edge = new EdgeCursor();
        double sum = 0;
        for (int slice : chain) {
            elements.load(slices.element[slice], edge);
            sum += edge.length() * (slices.to[slice] - slices.from[slice]);
        }
        return sum;
    }

    private GeometryException nowhere() {
        double[] circle =
                contour.isClosed() ? LargestCircle.in(tree) : new double[] {contour.xSi(0), contour.ySi(0), 0};
        return new GeometryException(contour, 0, circle[0], circle[1], message(0, 2 * circle[2], 2 * offset[0]));
    }

    private GeometryException refusal(OffsetFit.Stretch stretch, Finding finding) {
        Point place = finding.place() == null ? contour.start() : finding.place();
        return new GeometryException(contour, edge(stretch), place.xSi(), place.ySi(), finding.message());
    }

    private int edge(OffsetFit.Stretch stretch) {
        return (int) Math.floor(stretch.from()) % contour.size();
    }

    private Finding narrow(OffsetFit.Stretch stretch) {
        double[] mouth = fit.mouth(stretch);
        int edge = edge(stretch);
        return Finding.violated(
                message(edge, mouth[2], 2 * offset[edge]),
                Point.ofSi(mouth[0], mouth[1]),
                Message.of("take-smaller-jet", "take a smaller jet"));
    }

    private static Message message(int edge, double widthM, double jetM) {
        return Message.of("jet-does-not-fit", "the passage at edge {edge} is {width} wide; the jet cuts {jet}")
                .with("edge", edge)
                .with("width", Kind.LENGTH, widthM, Units.MILLIMETRE)
                .with("jet", Kind.LENGTH, jetM, Units.MILLIMETRE);
    }

    private Finding corner(OffsetFit.Stretch stretch) {
        int edge = edge(stretch);
        double[] at = fit.middle(stretch);
        Message message = Message.of(
                        "inner-corner",
                        "the inner corner at edge {edge} comes out with a radius of {radius}; {depth} of material"
                                + " stay, the tolerance is {limit}")
                .with("edge", edge)
                .with("radius", Kind.LENGTH, offset[edge], Units.MILLIMETRE)
                .with("depth", Kind.LENGTH, stretch.depthM(), Units.MILLIMETRE)
                .with("limit", Kind.LENGTH, tolerance, Units.MILLIMETRE);
        Point place = Point.ofSi(at[0], at[1]);
        return stretch.depthM() <= tolerance
                ? Finding.satisfied(message, place)
                : Finding.violated(message, place, Message.of("take-smaller-jet", "take a smaller jet"));
    }

    /** Slices of a chain that are one line or arc, and the point to which it is drawn. */
    private record Run(int from, int to, double toX, double toY) {}

    private ToolPath path(int[] chain) {
        int first = chain[0];
        double x = slices.x0[first];
        double y = slices.y0[first];
        ContourBuilder builder = Contour.fromSi(x, y);
        Stretches stretches = new Stretches();
        EdgeCursor edge = new EdgeCursor();
        for (Run run : runs(chain)) {
            int element = slices.element[run.from];
            elements.load(element, edge);
            int source = elements.source[element];
            if (edge.isArc()) {
                edge.arc(x, y, run.toX, run.toY, edge.centreX(), edge.centreY(), sweep(edge, run.from, run.to));
            } else {
                edge.line(x, y, run.toX, run.toY);
            }
            builder.requirement(contour.requirement(source)).edgeTo(edge);
            stretches.add(
                    ToolPath.Purpose.CUT,
                    source,
                    elements.shareOf(element, slices.from[run.from]),
                    elements.shareOf(element, slices.to[run.to]));
            x = run.toX;
            y = run.toY;
        }
        Contour path = contour.isClosed() ? builder.close() : builder.open();
        return new ToolPath(path.named(contour.name()), jetSide.opposite(), stretches);
    }

    /** The lines and arcs of a chain without those that are rounding; of a loop the last one ends where the first starts. */
    private List<Run> runs(int[] chain) {
        List<Run> runs = new ArrayList<>();
        EdgeCursor edge = new EdgeCursor();
        double x = slices.x0[chain[0]];
        double y = slices.y0[chain[0]];
        for (int k = 0; k < chain.length; k++) {
            int from = chain[k];
            int element = slices.element[from];
            // slices of one element that follow one another are one line or arc
            while (k + 1 < chain.length && slices.element[chain[k + 1]] == element && slices.from[chain[k + 1]] > 0) {
                k++;
            }
            int to = chain[k];
            elements.load(element, edge);
            if (!isNegligible(Math.hypot(slices.x1[to] - x, slices.y1[to] - y), sweep(edge, from, to))) {
                x = slices.x1[to];
                y = slices.y1[to];
                runs.add(new Run(from, to, x, y));
            }
        }
        if (contour.isClosed() && !runs.isEmpty()) {
            double startX = slices.x0[chain[0]];
            double startY = slices.y0[chain[0]];
            int last = runs.size() - 1;
            while (last > 0
                    && Math.hypot(runs.get(last - 1).toX - startX, runs.get(last - 1).toY - startY) <= POINT_M) {
                runs.remove(last--);
            }
            runs.set(last, new Run(runs.get(last).from, runs.get(last).to, startX, startY));
        }
        return runs;
    }

    private double sweep(EdgeCursor edge, int from, int to) {
        return edge.sweep() * (slices.to[to] - slices.from[from]);
    }

    private static boolean isNegligible(double chord, double sweep) {
        double turn = Math.abs(sweep);
        return (turn < Math.PI && chord <= POINT_M) || (turn > 0 && turn < SHORT_CORNER_RAD && chord <= SHORT_CORNER_M);
    }
}

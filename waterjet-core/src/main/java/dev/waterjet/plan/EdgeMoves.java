package dev.waterjet.plan;

import dev.waterjet.measure.Kind;
import dev.waterjet.part.Box;
import dev.waterjet.part.Contour;
import dev.waterjet.part.EdgeCursor;
import dev.waterjet.part.Part;
import dev.waterjet.part.Point;
import dev.waterjet.part.Side;
import dev.waterjet.pierce.Pierce;
import dev.waterjet.program.ProgramMove;
import dev.waterjet.quality.CutQuality;
import dev.waterjet.toolpath.ToolPath;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;
import javax.measure.Quantity;
import javax.measure.quantity.Speed;

/** Moves of a program along the edges of parts: pierces, leads, tabs and order are those of the plan of the parts. */
final class EdgeMoves {

    /** A shorter stretch of an edge is left out. */
    private static final double SHORT_M = 1e-7;

    private final PartPlanning planning;
    private final List<ProgramMove> moves = new ArrayList<>();
    private Point at = Point.ofSi(0, 0);
    private CutQuality quality = CutQuality.MEDIUM;
    /** Cut quality that the last note states. */
    private CutQuality noted = CutQuality.MEDIUM;

    EdgeMoves(PartPlanning planning) {
        this.planning = planning;
    }

    /** Moves of parts, one after the other; parts that lie in the openings of another come before it. */
    List<ProgramMove> of(List<Part> parts) {
        List<Part> conditioned = parts.stream().map(planning::conditioned).toList();
        for (int i : fromInside(conditioned)) {
            List<Contour> neighbours = new ArrayList<>();
            for (int k = 0; k < parts.size(); k++) {
                if (k != i) {
                    neighbours.addAll(conditioned.get(k).contours());
                }
            }
            Part part = conditioned.get(i);
            for (PartPlanning.Path path : planning.paths(parts.get(i), part, neighbours, at)) {
                cut(part, path);
            }
        }
        return moves;
    }

    /** Parts in the order given, save that each follows those within its outline: its cuts would set them free. */
    private static Set<Integer> fromInside(List<Part> parts) {
        List<Box> boxes = parts.stream().map(part -> part.outline().box()).toList();
        Set<Integer> order = new LinkedHashSet<>();
        for (int i = 0; i < parts.size(); i++) {
            int outer = i;
            IntStream.range(0, parts.size())
                    .filter(k -> k != outer
                            && boxes.get(outer).isAround(boxes.get(k))
                            && parts.get(outer)
                                    .outline()
                                    .isAround(parts.get(k).outline().start()))
                    .boxed()
                    .sorted(Comparator.comparingDouble(
                            k -> Kind.LENGTH.si(boxes.get(k).width())))
                    .forEach(order::add);
            order.add(outer);
        }
        return order;
    }

    private void cut(Part part, PartPlanning.Path path) {
        Contour contour = part.contours().get(path.contour());
        double[] gaps = gaps(contour, path.toolPath());
        String name = contour.name().replaceAll("[,():;]", " ").strip();
        Contour edges = path.lead().path();
        quality = firstQuality(edges);
        EdgeCursor edge = new EdgeCursor();
        edges.load(0, edge);
        Point ahead = Point.ofSi(edge.endX(), edge.endY());
        String head = name.isEmpty() ? "" : "name " + name + ", ";
        String tail = gaps.length > 0 ? ", open" : "";
        pierce(edges.start(), head, tail, path.pierce(), ahead);
        moves.add(new ProgramMove.OffsetOn(path.toolPath().partSide().opposite()));
        double done = 0;
        int gap = 0;
        for (int i = 0; i < edges.size(); i++) {
            edges.load(i, edge);
            if (edges.requirement(i).isLead()) {
                move(edge, 1);
                continue;
            }
            quality = edges.requirement(i).quality();
            double length = edge.length();
            for (; gap < gaps.length && gaps[gap] < done + length; gap++) {
                double share = (gaps[gap] - done) / length;
                if (gap % 2 == 0) {
                    move(edge, share);
                    moves.add(new ProgramMove.JetOff());
                } else {
                    pierce(Point.ofSi(edge.xAt(share), edge.yAt(share)), head, tail, path.pierce(), ahead);
                }
            }
            done += length;
            if (gap % 2 == 0) {
                move(edge, 1);
            }
        }
        moves.add(new ProgramMove.JetOff());
        moves.add(new ProgramMove.OffsetOff());
    }

    /** Cut quality of the first edge that is no lead. */
    private static CutQuality firstQuality(Contour edges) {
        int i = 0;
        while (i + 1 < edges.size() && edges.requirement(i).isLead()) {
            i++;
        }
        return edges.requirement(i).quality();
    }

    private void pierce(Point place, String head, String tail, Pierce pierce, Point ahead) {
        moves.add(new ProgramMove.Rapid(place));
        moves.add(new ProgramMove.Comment("waterjet: " + head + "quality " + quality.label() + tail));
        noted = quality;
        moves.addAll(
                PierceMoves.of(pierce, place, ahead, planning.conditions.jet().tubeExitBoreSi()));
        at = place;
    }

    /** A move along an edge from where the head is to a share of its length. */
    private void move(EdgeCursor edge, double share) {
        Point end = share == 1 ? Point.ofSi(edge.endX(), edge.endY()) : Point.ofSi(edge.xAt(share), edge.yAt(share));
        boolean isWhole = edge.isArc() && Math.abs(edge.sweep()) > Math.PI;
        if (!isWhole && Kind.LENGTH.si(at.distance(end)) < SHORT_M) {
            return;
        }
        if (quality != noted) {
            moves.add(new ProgramMove.Comment("waterjet: quality " + quality.label()));
            noted = quality;
        }
        Quantity<Speed> feed = planning.conditions.feed(quality).value();
        moves.add(
                edge.isArc()
                        ? new ProgramMove.Arc(
                                end,
                                Point.ofSi(edge.centreX(), edge.centreY()),
                                edge.sweep() > 0 ? Side.LEFT : Side.RIGHT,
                                feed)
                        : new ProgramMove.Line(end, feed));
        at = end;
    }

    /** Distances along the contour from its entry at which the jet is shut and switched on again, in turn. */
    private static double[] gaps(Contour contour, ToolPath path) {
        double[] starts = new double[contour.size() + 1];
        EdgeCursor edge = new EdgeCursor();
        for (int i = 0; i < contour.size(); i++) {
            contour.load(i, edge);
            starts[i + 1] = starts[i] + edge.length();
        }
        List<Double> gaps = new ArrayList<>();
        double entry = Double.NaN;
        for (int i = 0; i < path.size(); i++) {
            boolean isTab = path.purpose(i) == ToolPath.Purpose.TAB;
            if (Double.isNaN(entry) && path.sourceEdge(i).isPresent()) {
                entry = place(starts, path.sourceEdge(i).getAsInt(), path.sourceStart(i));
            }
            if (isTab) {
                int source = path.sourceEdge(i).orElseThrow();
                if (path.purpose(i - 1) != ToolPath.Purpose.TAB) {
                    gaps.add(place(starts, source, path.sourceStart(i)) - entry);
                }
                if (path.purpose(i + 1) != ToolPath.Purpose.TAB) {
                    gaps.add(place(starts, source, path.sourceEnd(i)) - entry);
                }
            }
        }
        double around = starts[contour.size()];
        double[] places =
                gaps.stream().mapToDouble(gap -> gap < 0 ? gap + around : gap).toArray();
        Arrays.sort(places);
        return places;
    }

    private static double place(double[] starts, int edge, double share) {
        return starts[edge] + share * (starts[edge + 1] - starts[edge]);
    }
}

package dev.waterjet.toolpath;

import dev.waterjet.measure.Kind;
import dev.waterjet.part.Contour;
import dev.waterjet.part.ContourBuilder;
import dev.waterjet.part.EdgeCursor;
import dev.waterjet.part.Finding;
import dev.waterjet.part.Part;
import dev.waterjet.part.Point;
import dev.waterjet.part.Side;
import dev.waterjet.quality.EdgeRequirement;
import java.util.ArrayList;
import java.util.List;

/** Draws the whole path of a lead: into the contour, round it, and out, for the jet axis and for the edges of the part. */
final class LeadDrawing {

    /** Distance from the path of the jet within which a place lies on it: short corners are left out of the path. */
    private static final double REACH_M = 1e-5;

    private final Contour contour;
    private final OffsetResult offset;
    private final Side partSide;
    private final CuttingRules rules;
    private final EdgeRequirement leadRequirement;
    private final EdgeCursor edge = new EdgeCursor();

    LeadDrawing(Part part, int index, CuttingRules rules) {
        this.contour = part.contours().get(index);
        this.partSide = part.partSide(index);
        this.rules = rules;
        this.leadRequirement = EdgeRequirement.of(rules.leadQuality()).asLead();
        this.offset = KerfOffset.of(Kind.LENGTH.of(rules.offsetSi()))
                .withNarrowPlaces(KerfOffset.NarrowPlaces.BRIDGE)
                .apply(contour, partSide.opposite());
    }

    /** Whether the jet passes a place when it cuts the contour: not where a corner or a neck is too narrow for it. */
    boolean reaches(LeadFrame frame) {
        offset.path().contour().load(pieceAt(offset.path(), frame), edge);
        return edge.distance(frame.x(0, 0), frame.y(0, 0)) <= REACH_M;
    }

    /** Places on the contour that the jet passes: the middle of each piece of its path along an edge. */
    List<Double> reachedPlaces() {
        double[] start = new double[contour.size() + 1];
        for (int i = 0; i < contour.size(); i++) {
            contour.load(i, edge);
            start[i + 1] = start[i] + edge.length();
        }
        Stretches stretches = offset.path().stretches();
        List<Double> places = new ArrayList<>();
        for (int i = 0; i < stretches.size(); i++) {
            int source = stretches.source(i);
            if (stretches.end(i) > stretches.start(i)) {
                double share = (stretches.start(i) + stretches.end(i)) / 2;
                places.add(start[source] + share * (start[source + 1] - start[source]));
            }
        }
        return places;
    }

    Lead draw(LeadTrial trial) {
        LeadFrame frame = trial.frame();
        LeadShape shape = trial.shape();
        Point pierce = Point.ofSi(frame.x(shape.pierceX(), shape.pierceY()), frame.y(shape.pierceX(), shape.pierceY()));
        List<Finding> findings = new ArrayList<>(trial.findings());
        findings.addAll(offset.findings());
        return new Lead(
                pierce,
                Point.ofSi(frame.entryX(), frame.entryY()),
                toolPath(offset.path(), frame, shape, pierce),
                programmed(frame, shape, pierce),
                findings);
    }

    private ToolPath toolPath(ToolPath round, LeadFrame frame, LeadShape shape, Point pierce) {
        ContourBuilder builder = Contour.from(pierce);
        Stretches stretches = new Stretches();
        draw(builder, shape.wayIn(0), shape.pierceX(), shape.pierceY(), frame, stretches, ToolPath.Purpose.LEAD_IN);
        double x = frame.x(0, 0);
        double y = frame.y(0, 0);
        int first = pieceAt(round, frame);
        Contour path = round.contour();
        path.load(first, edge);
        double share = edge.shareAt(x, y);
        double length = edge.length();
        boolean isAtStart = share * length <= OffsetDrawing.SHORT_M;
        int n = round.size();
        double atX = x;
        double atY = y;
        for (int step = 0; step <= n; step++) {
            int i = (first + step) % n;
            double from = step == 0 ? share : 0;
            double to = step == n ? share : 1;
            path.load(i, edge);
            if ((to - from) * edge.length() <= OffsetDrawing.SHORT_M) {
                continue;
            }
            boolean isLast = step == n || (step == n - 1 && isAtStart);
            double toX = isLast ? x : edge.endX();
            double toY = isLast ? y : edge.endY();
            double sweep = edge.sweep() * (to - from);
            if (edge.isArc()) {
                edge.arc(atX, atY, toX, toY, edge.centreX(), edge.centreY(), sweep);
            } else {
                edge.line(atX, atY, toX, toY);
            }
            builder.requirement(path.requirement(i)).edgeTo(edge);
            stretches.addPart(round.stretches(), i, from, to);
            atX = toX;
            atY = toY;
        }
        draw(builder, shape.wayOut(0), 0, 0, frame, stretches, ToolPath.Purpose.LEAD_OUT);
        return new ToolPath(builder.open().named(contour.name()), partSide, stretches);
    }

    /** The piece of the offset path that belongs to the entry, or the one nearest to it. */
    private int pieceAt(ToolPath round, LeadFrame frame) {
        double x = frame.x(0, 0);
        double y = frame.y(0, 0);
        int nearest = 0;
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i < round.size(); i++) {
            round.contour().load(i, edge);
            boolean isHere = round.stretches().source(i) == frame.place().edge()
                    && round.stretches().start(i) <= frame.place().share()
                    && frame.place().share() <= round.stretches().end(i);
            double distance = edge.distance(x, y) - (isHere ? OffsetDrawing.SHORT_M : 0);
            if (distance < least) {
                least = distance;
                nearest = i;
            }
        }
        return nearest;
    }

    /** The path along the edges of the part, for a machine that offsets the jet. */
    private Contour programmed(LeadFrame frame, LeadShape shape, Point pierce) {
        ContourBuilder builder = Contour.from(pierce);
        Stretches stretches = new Stretches();
        double wider = rules.offsetSi();
        draw(builder, shape.wayIn(wider), shape.pierceX(), shape.pierceY(), frame, stretches, ToolPath.Purpose.LEAD_IN);
        Contour turned = contour.startingAt(Kind.LENGTH.of(frame.atM()));
        for (int i = 0; i < turned.size(); i++) {
            turned.load(i, edge);
            builder.requirement(turned.requirement(i))
                    .asCurve(turned.isCurve(i))
                    .edgeTo(edge);
        }
        builder.asCurve(false);
        draw(builder, shape.wayOut(wider), 0, -wider, frame, stretches, ToolPath.Purpose.LEAD_OUT);
        return builder.open().named(contour.name());
    }

    private void draw(
            ContourBuilder builder,
            List<LeadShape.Piece> pieces,
            double fromX,
            double fromY,
            LeadFrame frame,
            Stretches stretches,
            ToolPath.Purpose purpose) {
        double x = fromX;
        double y = fromY;
        builder.requirement(leadRequirement);
        for (LeadShape.Piece piece : pieces) {
            LeadShape.load(piece, x, y, frame, edge);
            builder.edgeTo(edge);
            stretches.add(purpose, ToolPath.NO_EDGE, 0, 1);
            x = piece.x();
            y = piece.y();
        }
    }
}

package dev.waterjet.plan;

import dev.waterjet.part.Contour;
import dev.waterjet.part.ContourBuilder;
import dev.waterjet.part.ContourConditioner;
import dev.waterjet.part.EdgeCursor;
import dev.waterjet.part.GeometryException;
import dev.waterjet.part.Side;
import dev.waterjet.program.ProgramCut;
import dev.waterjet.program.ProgramCut.Offset;
import dev.waterjet.quality.EdgeRequirement;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Draws the path of the jet axis where a control applies a kerf offset: in the block in which the offset starts it goes to the
 * normal at the start of the next block, in the one in which it ends back to the programmed place; between them it keeps the
 * offset, with arcs around outer corners and up to where the offset lines meet at inner ones (common practice, no source).
 * Chords of curves are replaced by the arcs of which they are samples first.
 */
final class JetPathDrawing {

    /** Places that are nearer are one: programs round them. */
    private static final double POINT_M = 5e-6;

    private final ProgramCut cut;
    private final Contour path;
    private final Side side;
    private final double offsetM;
    private final ContourConditioner conditioner;
    private final double[] ends;
    private final List<JetPiece> pieces = new ArrayList<>();
    private final EdgeCursor edge = new EdgeCursor();

    private JetPathDrawing(
            ProgramCut cut, Side side, EdgeRequirement requirement, double offsetM, ContourConditioner conditioner) {
        this.cut = cut;
        this.path = cut.path(requirement);
        this.side = side;
        this.offsetM = offsetM;
        this.conditioner = conditioner;
        this.ends = new double[path.size()];
        double at = 0;
        for (int i = 0; i < ends.length; i++) {
            path.load(i, edge);
            at += edge.length();
            ends[i] = at;
        }
    }

    /**
     * The path of a cut with a kerf offset.
     *
     * @return the path; empty if the cut has no offset by the machine, or if the offset cannot be drawn: it does not fit
     */
    static Optional<JetPath> of(
            ProgramCut cut, EdgeRequirement requirement, double offsetM, ContourConditioner conditioner) {
        if (cut.jetSide().isEmpty()) {
            return Optional.empty();
        }
        try {
            return new JetPathDrawing(cut, cut.jetSide().get(), requirement, offsetM, conditioner).draw();
        } catch (GeometryException notDrawn) {
            return Optional.empty();
        }
    }

    private Optional<JetPath> draw() {
        for (int i = 0; i < path.size(); ) {
            Offset offset = cut.offset(i);
            path.load(i, edge);
            if (offset == Offset.ACTIVE || (offset == Offset.STARTS && edge.isArc())) {
                int end = i + 1;
                while (end < path.size() && cut.offset(end) == Offset.ACTIVE) {
                    end++;
                }
                if (!beside(i, end)) {
                    return Optional.empty();
                }
                i = end;
                continue;
            }
            if (offset == Offset.STARTS) {
                start(i);
            } else if (offset == Offset.ENDS) {
                line(i, edge.endX(), edge.endY());
            } else {
                asWritten(i);
            }
            i++;
        }
        return Optional.of(JetPath.of(pieces, ends));
    }

    private double startM(int block) {
        return block == 0 ? 0 : ends[block - 1];
    }

    private void asWritten(int block) {
        EdgeCursor copy = new EdgeCursor();
        path.load(block, copy);
        pieces.add(new JetPiece(copy, path.requirement(block), copy.radius(), startM(block), ends[block]));
    }

    /** To the normal at the start of the next block, or at the end of this one if the offset ends behind it. */
    private void start(int block) {
        double directionX = edge.endDirectionX();
        double directionY = edge.endDirectionY();
        double endX = edge.endX();
        double endY = edge.endY();
        if (block + 1 < path.size() && cut.offset(block + 1) == Offset.ACTIVE) {
            path.load(block + 1, edge);
            directionX = edge.startDirectionX();
            directionY = edge.startDirectionY();
        }
        line(block, endX - side.sign() * directionY * offsetM, endY + side.sign() * directionX * offsetM);
    }

    /** A line from where the jet is. */
    private void line(int block, double toX, double toY) {
        EdgeCursor from = new EdgeCursor();
        if (pieces.isEmpty()) {
            path.load(block, from);
            from.line(from.startX(), from.startY(), toX, toY);
        } else {
            EdgeCursor last = pieces.get(pieces.size() - 1).edge;
            from.line(last.endX(), last.endY(), toX, toY);
        }
        if (Math.hypot(toX - from.startX(), toY - from.startY()) > POINT_M) {
            pieces.add(new JetPiece(from, path.requirement(block), 0, startM(block), ends[block]));
        }
    }

    /** Blocks along which the offset is kept; false if it does not fit. */
    private boolean beside(int from, int to) {
        ContourBuilder builder = Contour.fromSi(path.xSi(from), path.ySi(from));
        for (int i = from; i < to; i++) {
            path.load(i, edge);
            builder.requirement(path.requirement(i)).edgeTo(edge);
        }
        OffsetRun run = new OffsetRun(conditioner.condition(builder.open()), side, offsetM, startM(from));
        List<JetPiece> found = run.pieces();
        if (found.isEmpty()) {
            return false;
        }
        JetPiece first = found.get(0);
        if (pieces.isEmpty() && cut.offset(from) == Offset.ACTIVE) {
            // the offset was on before the jet
            pieces.addAll(found);
            return true;
        }
        double x = first.edge.startX();
        double y = first.edge.startY();
        double atX = pieces.isEmpty()
                ? path.xSi(0)
                : pieces.get(pieces.size() - 1).edge.endX();
        double atY = pieces.isEmpty()
                ? path.ySi(0)
                : pieces.get(pieces.size() - 1).edge.endY();
        if (Math.hypot(x - atX, y - atY) <= POINT_M) {
            first.joinTo(atX, atY);
        } else {
            EdgeCursor across = new EdgeCursor();
            across.line(atX, atY, x, y);
            pieces.add(new JetPiece(across, first.requirement, 0, startM(from), startM(from)));
        }
        pieces.addAll(found);
        return true;
    }
}

package dev.waterjet.toolpath;

import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import dev.waterjet.part.Contour;
import dev.waterjet.part.ContourBuilder;
import dev.waterjet.part.EdgeCursor;
import dev.waterjet.part.Finding;
import dev.waterjet.part.Point;
import dev.waterjet.part.Side;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalInt;
import javax.measure.Quantity;
import javax.measure.quantity.Length;

/**
 * Path of the jet axis along one contour of a part, from the pierce point to where the jet is shut: lines and arcs, each with
 * its purpose and the edge of the part that it cuts.
 */
public final class ToolPath implements Described {

    /** Purpose of a stretch of the path. */
    public enum Purpose {
        /** Way from the pierce point to the contour, in scrap. */
        LEAD_IN,
        /** Cut along the part. */
        CUT,
        /** Bridge that holds the part: the jet is shut and moves across. */
        TAB,
        /** Second cut over the start of a closed contour, so that the lagging jet cuts through at the bottom. */
        OVERCUT,
        /** Way from the contour into scrap. */
        LEAD_OUT
    }

    /** Source of what belongs to no edge of the part. */
    static final int NO_EDGE = -1;

    private final Contour contour;
    private final Side partSide;
    private final Stretches stretches;

    ToolPath(Contour contour, Side partSide, Stretches stretches) {
        if (stretches.size() != contour.size()) {
            throw new AssertionError(contour.size() + " lines and arcs have " + stretches.size() + " purposes");
        }
        this.contour = contour;
        this.partSide = partSide;
        this.stretches = stretches;
    }

    /** {@return the path of the jet axis: closed if it has neither leads nor overcut, else open} */
    public Contour contour() {
        return contour;
    }

    /** {@return the side of the path on which the part lies} */
    public Side partSide() {
        return partSide;
    }

    /** {@return the number of lines and arcs, 1 or more} */
    public int size() {
        return contour.size();
    }

    /**
     * Returns the purpose of a line or arc.
     *
     * @param edge index from 0
     * @return its purpose
     */
    public Purpose purpose(int edge) {
        return stretches.purpose(index(edge));
    }

    /**
     * Returns the edge of the part contour that a line or arc cuts. What goes around a vertex belongs to the edge before it.
     *
     * @param edge index from 0
     * @return index of the edge of the part contour from 0; empty for leads
     */
    public OptionalInt sourceEdge(int edge) {
        int source = stretches.source(index(edge));
        return source == NO_EDGE ? OptionalInt.empty() : OptionalInt.of(source);
    }

    /**
     * Returns where a line or arc starts along the edge of the part contour that it cuts.
     *
     * @param edge index from 0
     * @return share of the length of that edge, 0 to 1; above {@link #sourceEnd} on the way back over an overcut start
     */
    public double sourceStart(int edge) {
        return stretches.start(index(edge));
    }

    /**
     * Returns where a line or arc ends along the edge of the part contour that it cuts.
     *
     * @param edge index from 0
     * @return share of the length of that edge, 0 to 1
     */
    public double sourceEnd(int edge) {
        return stretches.end(index(edge));
    }

    private int index(int edge) {
        return Require.index("edge", edge, size());
    }

    /** {@return the point at which the jet pierces} */
    public Point pierce() {
        return contour.start();
    }

    /**
     * Returns the stretches that are cut without shutting the jet: the whole path, or what tabs leave of it.
     *
     * @return the paths in order, each open unless it is the whole of a closed one; each needs a pierce at its start
     */
    public List<Contour> cuts() {
        List<Contour> cuts = new ArrayList<>();
        if (contour.isClosed() && !stretches.has(Purpose.TAB)) {
            return List.of(contour);
        }
        EdgeCursor edge = new EdgeCursor();
        ContourBuilder builder = null;
        for (int i = 0; i < size(); i++) {
            boolean isCut = purpose(i) != Purpose.TAB;
            contour.load(i, edge);
            if (isCut) {
                builder = builder == null ? Contour.fromSi(edge.startX(), edge.startY()) : builder;
                builder.requirement(contour.requirement(i)).edgeTo(edge);
            }
            if (builder != null && (!isCut || i + 1 == size())) {
                cuts.add(builder.open().named(contour.name()));
                builder = null;
            }
        }
        return List.copyOf(cuts);
    }

    /**
     * Returns the length with a purpose.
     *
     * @param purpose the purpose
     * @return the length, in m
     */
    public Quantity<Length> length(Purpose purpose) {
        Objects.requireNonNull(purpose, "purpose");
        EdgeCursor edge = new EdgeCursor();
        double sum = 0;
        for (int i = 0; i < size(); i++) {
            if (purpose(i) == purpose) {
                contour.load(i, edge);
                sum += edge.length();
            }
        }
        return Kind.LENGTH.of(sum);
    }

    /**
     * Returns this closed path with an overcut: it goes on over its start.
     *
     * @param length length of the overcut, above 0 and below that of the path
     * @return the open path
     * @throws dev.waterjet.part.GeometryException if the path is open
     */
    public ToolPath withOvercut(Quantity<Length> length) {
        Objects.requireNonNull(length, "length");
        return ToolPathEditor.withOvercut(this, Kind.LENGTH.si(length));
    }

    /**
     * Returns this path with tabs. The jet is shut before each tab and pierces again behind it, on the path.
     *
     * @param tabs distances of the middles of the tabs along the cut stretch of the path, in rising order, in m
     * @param width width of the bridge that stays
     * @param kerfWidth width of the kerf, which rounds off the bridge on both sides
     * @return the path with tabs
     * @throws dev.waterjet.measure.DomainException if tabs overlap each other or the ends of the cut
     */
    public ToolPath withTabs(QuantityArray<Length> tabs, Quantity<Length> width, Quantity<Length> kerfWidth) {
        double gap = Require.positive("width of a tab", Kind.LENGTH.si(width), Units.MILLIMETRE)
                + Require.positive("kerf width", Kind.LENGTH.si(kerfWidth), Units.MILLIMETRE);
        return ToolPathEditor.withTabs(this, tabs.toSi(), gap);
    }

    /**
     * Checks that a closed contour is cut through where it starts: the jet lags at the bottom, so that the last lag length is
     * cut only if the path goes on by as much.
     *
     * @param exitLag lag of the jet at the bottom of the plate when the contour closes
     * @return the finding, with the code {@code closing-lag}
     */
    public Finding checkClosing(Quantity<Length> exitLag) {
        Objects.requireNonNull(exitLag, "exitLag");
        double beyond = Kind.LENGTH.si(length(Purpose.OVERCUT)) + Kind.LENGTH.si(length(Purpose.LEAD_OUT));
        double lag = Require.notNegative("exit lag", Kind.LENGTH.si(exitLag), Units.MILLIMETRE);
        return Finding.atLeast(
                Message.of("closing-lag", "the cut goes on by {value} behind its start; the exit lag there is {limit}"),
                beyond,
                lag,
                contour.end(),
                Message.of("add-overcut", "add an overcut or a lead-out of {length}")
                        .with("length", Kind.LENGTH, lag, Units.MILLIMETRE));
    }

    Stretches stretches() {
        return stretches;
    }

    @Override
    public Map<String, Object> describe() {
        Description description =
                Description.of("tool path").put("contour", contour).put("part_side", partSide);
        for (Purpose purpose : Purpose.values()) {
            double length = Kind.LENGTH.si(length(purpose));
            if (length > 0) {
                description.put("length_" + purpose.name().toLowerCase(Locale.ROOT), Kind.LENGTH, length);
            }
        }
        return description.map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof ToolPath that
                && contour.equals(that.contour)
                && partSide == that.partSide
                && stretches.equals(that.stretches);
    }

    @Override
    public int hashCode() {
        return 31 * contour.hashCode() + stretches.hashCode();
    }

    @Override
    public String toString() {
        return "tool path, " + contour;
    }
}

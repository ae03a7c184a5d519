package dev.waterjet.examples.plan;

import dev.waterjet.measure.Kind;
import dev.waterjet.part.Contour;
import dev.waterjet.part.Edge;
import dev.waterjet.part.Side;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.TopologyException;
import org.locationtech.jts.operation.buffer.BufferOp;
import org.locationtech.jts.operation.buffer.BufferParameters;
import org.locationtech.jts.simplify.DouglasPeuckerSimplifier;

/**
 * Minimum slot width along a loop, by JTS: a disc that rolls through the free side of the loop must reach all of it except
 * the corners.
 */
final class SlotWidth {

    /** Arcs become chords that lie within this distance of them. */
    private static final double CHORD_ERROR_M = 2e-6;

    /** Slots wider than this many kerfs are not narrow. */
    private static final double WIDE = 12;

    /** Loops of more edges are only checked against the minimum. */
    private static final int MANY = 2000;

    private static final double STEP = 1.15;
    private static final int BISECTIONS = 11;
    private static final int QUADRANT_SEGMENTS = 16;

    private final Geometry free;

    private SlotWidth(Geometry free) {
        this.free = free;
    }

    /**
     * Returns the minimum slot width, in m.
     *
     * @param loop the loop
     * @param isHole whether the jet runs inside of it
     * @param slotM minimum slot width that the jet can cut, in m
     * @return the width; empty if nothing is narrower than twelve kerfs
     */
    static OptionalDouble narrowest(Contour loop, boolean isHole, double slotM) {
        try {
            return search(loop, isHole, slotM);
        } catch (TopologyException crossing) {
            // a spike or a crossing has no width; the checks of the plan name it
            return OptionalDouble.empty();
        }
    }

    private static OptionalDouble search(Contour loop, boolean isHole, double slotM) {
        Geometry enclosed = polygon(loop);
        if (loop.size() > MANY) {
            enclosed = DouglasPeuckerSimplifier.simplify(enclosed, slotM / 50);
        }
        SlotWidth slots = new SlotWidth(
                isHole
                        ? enclosed
                        : enclosed.getEnvelope().buffer(2 * WIDE * slotM).difference(enclosed));
        boolean isOpen = slots.isOpenFor(slotM);
        if (isOpen && loop.size() > MANY) {
            return OptionalDouble.empty();
        }
        // in steps: a disc much wider than a short slot would treat it as a corner
        double low = isOpen ? slotM : 0;
        double high = isOpen ? slotM * STEP : slotM;
        while (isOpen && slots.isOpenFor(high)) {
            low = high;
            high *= STEP;
            if (high > slotM * WIDE) {
                return OptionalDouble.empty();
            }
        }
        for (int i = 0; i < BISECTIONS; i++) {
            double middle = (low + high) / 2;
            if (slots.isOpenFor(middle)) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return OptionalDouble.of((low + high) / 2);
    }

    /** Whether a disc of this diameter reaches everything except the corners. */
    private boolean isOpenFor(double diameterM) {
        double radius = diameterM / 2;
        Geometry reached = grown(grown(free, -radius), radius * (1 + 1e-3));
        Geometry missed = free.difference(reached);
        for (int i = 0; i < missed.getNumGeometries(); i++) {
            Geometry one = missed.getGeometryN(i);
            // a disc leaves less than this in any corner of 16 degrees or more; a slot that it misses is longer
            if (one.getArea() > 6 * radius * radius) {
                return false;
            }
        }
        return !reached.isEmpty();
    }

    private static Geometry grown(Geometry geometry, double byM) {
        BufferParameters fine = new BufferParameters(QUADRANT_SEGMENTS);
        fine.setSimplifyFactor(1e-4);
        return BufferOp.bufferOp(geometry, byM, fine);
    }

    private static Polygon polygon(Contour loop) {
        List<Coordinate> ring = new ArrayList<>();
        for (int i = 0; i < loop.size(); i++) {
            flatten(loop.edge(i), ring);
        }
        ring.add(new Coordinate(ring.get(0)));
        return new GeometryFactory().createPolygon(ring.toArray(Coordinate[]::new));
    }

    /** Adds the start of an edge, and the inner points of an arc. */
    static void flatten(Edge edge, List<Coordinate> into) {
        into.add(new Coordinate(edge.start().xSi(), edge.start().ySi()));
        if (!edge.isArc()) {
            return;
        }
        double x = edge.centre().orElseThrow().xSi();
        double y = edge.centre().orElseThrow().ySi();
        double radius = Math.hypot(edge.start().xSi() - x, edge.start().ySi() - y);
        double from = Math.atan2(edge.start().ySi() - y, edge.start().xSi() - x);
        double sweep = Math.abs(Kind.ANGLE.si(edge.sweep())) * (edge.turn().orElseThrow() == Side.LEFT ? 1 : -1);
        double step = 2 * Math.acos(Math.max(0.9, 1 - CHORD_ERROR_M / radius));
        int pieces = (int) Math.max(4, Math.ceil(Math.abs(sweep) / step));
        for (int i = 1; i < pieces; i++) {
            double angle = from + sweep * i / pieces;
            into.add(new Coordinate(x + radius * Math.cos(angle), y + radius * Math.sin(angle)));
        }
    }
}

package dev.waterjet.examples.dxf;

import dev.waterjet.examples.drawing.AffineMap;
import dev.waterjet.examples.drawing.StrokePen;
import dev.waterjet.measure.Message;
import java.util.ArrayList;
import java.util.List;

/** Entities as strokes: each is mapped to metres before it is drawn. */
final class DxfShapes {

    private static final double FULL = 2 * Math.PI;

    /** Rounding of a full turn that a file states, in rad: 6.28319 instead of 6.283185307. */
    private static final double TURN_ROUNDING = 1e-5;

    /** Bulges below this are straight: the sagitta of a chord of 1 km would be a nanometre. */
    private static final double STRAIGHT = 1e-12;

    /** Difference of height, relative to the length, up to which a line lies in the plane. */
    private static final double FLAT = 1e-6;

    /** Vertex of a polyline with the bulge of the segment that it starts. */
    private record Vertex(double x, double y, double bulge) {}

    private final StrokePen pen;
    private int fitted;

    DxfShapes(StrokePen pen) {
        this.pen = pen;
    }

    void draw(Entity entity, AffineMap map) {
        switch (entity.type()) {
            case "LINE" -> line(entity, map);
            case "CIRCLE" -> circular(entity, map.with(Placement.extrusion(entity)), 0, FULL);
            case "ARC" -> {
                double from = Math.toRadians(entity.required(50));
                double sweep = sweep(from, Math.toRadians(entity.required(51)));
                circular(entity, map.with(Placement.extrusion(entity)), from, sweep);
            }
            case "ELLIPSE" -> ellipse(entity, map);
            case "SPLINE" -> spline(entity, map);
            case "LWPOLYLINE" -> lightPolyline(entity, map.with(Placement.extrusion(entity)));
            default -> polyline(entity, map);
        }
    }

    /** Number of splines that were drawn through their fit points, since they have no control points. */
    int fitted() {
        return fitted;
    }

    private void spline(Entity entity, AffineMap map) {
        if (entity.numbers(10).length > 0) {
            BSpline.of(entity, map).draw(pen);
        } else {
            FitSpline.of(entity, map).draw(pen);
            fitted++;
        }
    }

    /** Angle from one direction on to another, above 0 to a full turn: a turn that is stated with six digits is full. */
    private static double sweep(double from, double to) {
        double stated = to - from;
        if (Math.abs(Math.abs(stated) - FULL) < TURN_ROUNDING) {
            return FULL;
        }
        double turn = stated - FULL * Math.floor(stated / FULL);
        return turn < 1e-12 ? FULL : turn;
    }

    private void line(Entity entity, AffineMap map) {
        double x0 = entity.required(10);
        double y0 = entity.required(20);
        double x1 = entity.required(11);
        double y1 = entity.required(21);
        double rise = Math.abs(entity.number(31, 0) - entity.number(30, 0));
        if (rise > FLAT * Math.max(1e-3, Math.hypot(x1 - x0, y1 - y0))) {
            throw entity.fault(Message.of("not-in-plane", "{type} does not lie in the plane of the sheet")
                    .with("type", entity.type()));
        }
        pen.moveTo(map.x(x0, y0), map.y(x0, y0));
        pen.lineTo(map.x(x1, y1), map.y(x1, y1));
        pen.end();
    }

    private void circular(Entity entity, AffineMap map, double from, double sweep) {
        double radius = entity.required(40);
        if (!(radius > 0)) {
            throw entity.fault(
                    Message.of("radius", "the radius of {type} is not above 0").with("type", entity.type()));
        }
        AffineMap unit = map.with(new AffineMap(radius, 0, 0, radius, entity.required(10), entity.required(20)));
        conic(unit, from, sweep);
    }

    private void ellipse(Entity entity, AffineMap map) {
        double majorX = entity.required(11);
        double majorY = entity.required(21);
        double ratio = entity.required(40);
        if (!(Math.hypot(majorX, majorY) > 0) || !(Math.abs(ratio) > 0)) {
            throw entity.fault(
                    Message.of("radius", "the radius of {type} is not above 0").with("type", entity.type()));
        }
        // centre and major axis are in the drawing; the normal decides the side of the minor axis
        double side = Placement.extrusion(entity).isMirror() ? -ratio : ratio;
        AffineMap unit = map.with(
                new AffineMap(majorX, majorY, -side * majorY, side * majorX, entity.required(10), entity.required(20)));
        double from = entity.number(41, 0);
        conic(unit, from, sweep(from, entity.number(42, FULL)));
    }

    /** Arc of the image of the unit circle; a full turn is closed. */
    private void conic(AffineMap unit, double from, double sweep) {
        double startX = unit.x(Math.cos(from), Math.sin(from));
        double startY = unit.y(Math.cos(from), Math.sin(from));
        pen.moveTo(startX, startY);
        if (sweep >= FULL - 1e-9) {
            double half = from + Math.PI;
            pen.ellipseTo(
                    unit,
                    from,
                    Math.PI,
                    unit.x(Math.cos(half), Math.sin(half)),
                    unit.y(Math.cos(half), Math.sin(half)));
            pen.ellipseTo(unit, half, Math.PI, startX, startY);
            pen.close();
        } else {
            double to = from + sweep;
            pen.ellipseTo(unit, from, sweep, unit.x(Math.cos(to), Math.sin(to)), unit.y(Math.cos(to), Math.sin(to)));
            pen.end();
        }
    }

    private void lightPolyline(Entity entity, AffineMap map) {
        List<Vertex> vertices = new ArrayList<>();
        for (Group group : entity.groups()) {
            int last = vertices.size() - 1;
            if (group.code() == 10) {
                vertices.add(new Vertex(group.number(), 0, 0));
            } else if (group.code() == 20 && last >= 0) {
                vertices.set(last, new Vertex(vertices.get(last).x(), group.number(), 0));
            } else if (group.code() == 42 && last >= 0) {
                Vertex at = vertices.get(last);
                vertices.set(last, new Vertex(at.x(), at.y(), group.number()));
            }
        }
        trace(vertices, entity.hasFlag(70, 1), map);
    }

    private void polyline(Entity entity, AffineMap map) {
        if (entity.hasFlag(70, 16 | 64)) {
            throw entity.fault(Message.of("entity-not-cut", "{type} is a mesh, which has no contour to cut")
                    .with("type", entity.type()));
        }
        boolean isSpatial = entity.hasFlag(70, 8);
        List<Vertex> vertices = new ArrayList<>();
        double height = Double.NaN;
        for (Entity vertex : entity.vertices()) {
            // points of the frame of a fitted curve are not on it
            if (vertex.hasFlag(70, 16)) {
                continue;
            }
            double z = vertex.number(30, 0);
            if (isSpatial && Math.abs(z - (Double.isNaN(height) ? z : height)) > FLAT) {
                throw entity.fault(Message.of("not-in-plane", "{type} does not lie in the plane of the sheet")
                        .with("type", entity.type()));
            }
            height = z;
            vertices.add(new Vertex(vertex.required(10), vertex.required(20), isSpatial ? 0 : vertex.number(42, 0)));
        }
        trace(vertices, entity.hasFlag(70, 1), isSpatial ? map : map.with(Placement.extrusion(entity)));
    }

    private void trace(List<Vertex> vertices, boolean isClosed, AffineMap map) {
        int n = vertices.size();
        if (n < 2) {
            return;
        }
        Vertex first = vertices.get(0);
        pen.moveTo(map.x(first.x(), first.y()), map.y(first.x(), first.y()));
        for (int i = 0; i < (isClosed ? n : n - 1); i++) {
            segment(vertices.get(i), vertices.get((i + 1) % n), map);
        }
        if (isClosed) {
            pen.close();
        } else {
            pen.end();
        }
    }

    /**
     * Segment with a bulge b = tan(angle/4), positive to the left: the centre lies on the perpendicular through the middle of
     * the chord, {@code (1 - b^2)/(4 b)} of its length to the left.
     */
    private void segment(Vertex from, Vertex to, AffineMap map) {
        double dx = to.x() - from.x();
        double dy = to.y() - from.y();
        double toX = map.x(to.x(), to.y());
        double toY = map.y(to.x(), to.y());
        double bulge = from.bulge();
        if (Math.abs(bulge) < STRAIGHT || (dx == 0 && dy == 0)) {
            pen.lineTo(toX, toY);
            return;
        }
        double off = (1 - bulge * bulge) / (4 * bulge);
        double centreX = (from.x() + to.x()) / 2 - off * dy;
        double centreY = (from.y() + to.y()) / 2 + off * dx;
        double radius = Math.hypot(from.x() - centreX, from.y() - centreY);
        double start = Math.atan2(from.y() - centreY, from.x() - centreX);
        AffineMap unit = map.with(new AffineMap(radius, 0, 0, radius, centreX, centreY));
        pen.ellipseTo(unit, start, 4 * Math.atan(bulge), toX, toY);
    }
}

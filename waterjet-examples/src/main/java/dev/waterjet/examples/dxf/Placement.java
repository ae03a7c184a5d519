package dev.waterjet.examples.dxf;

import dev.waterjet.examples.drawing.AffineMap;
import dev.waterjet.measure.Message;

/**
 * Place at which the entities of a block are drawn.
 *
 * @param map map to metres
 * @param layer layer of the insert, for entities on layer 0; empty outside blocks
 * @param colour colour of the insert, for entities that take that of their block
 * @param block name of the block; empty outside blocks
 * @param isOff whether the layer of the insert is off, which hides what takes its layer
 * @param depth number of blocks around
 */
record Placement(AffineMap map, String layer, String colour, String block, boolean isOff, int depth) {

    /** Farthest from upright that a normal may lean and the entity still counts as flat. */
    private static final double FLAT = 1e-6;

    Placement with(AffineMap other) {
        return new Placement(other, layer, colour, block, isOff, depth);
    }

    /**
     * Map of an entity in the coordinate system of its extrusion (arbitrary axis algorithm of the DXF reference): with the
     * normal (0, 0, -1) x is mirrored; other normals than up and down do not lie in the plane of the sheet.
     */
    static AffineMap extrusion(Entity entity) {
        double nx = entity.number(210, 0);
        double ny = entity.number(220, 0);
        double nz = entity.number(230, 1);
        double size = Math.sqrt(nx * nx + ny * ny + nz * nz);
        if (!(size > 0) || Math.hypot(nx, ny) > FLAT * size) {
            throw entity.fault(Message.of("not-in-plane", "{type} does not lie in the plane of the sheet")
                    .with("type", entity.type()));
        }
        return nz > 0 ? AffineMap.IDENTITY : AffineMap.scale(-1, 1);
    }
}

package dev.waterjet.motion;

import dev.waterjet.kerf.LagGeometry;

/**
 * Choices behind a slowdown.
 *
 * @param insideCorner geometry of the front at a corner where the part is re-entrant
 * @param outsideCorner geometry at any other corner
 * @param arc geometry on an arc
 * @param isSeparating whether the bottom has to be cut through before the nozzle turns: needed in the tangent geometry,
 *     where the front jumps over the corner
 */
record SlowdownRules(LagGeometry insideCorner, LagGeometry outsideCorner, LagGeometry arc, boolean isSeparating) {

    /** At each kind of place the geometry that gouges the part most. */
    static SlowdownRules cautious() {
        return new SlowdownRules(LagGeometry.TANGENT, LagGeometry.TRACTRIX, LagGeometry.TANGENT, true);
    }

    /** One geometry everywhere, as measured on a disc. */
    static SlowdownRules of(LagGeometry geometry) {
        return new SlowdownRules(geometry, geometry, geometry, geometry == LagGeometry.TANGENT);
    }

    /** These rules with or without the demand that the bottom is cut through before a turn. */
    SlowdownRules withSeparation(boolean isDemanded) {
        return new SlowdownRules(insideCorner, outsideCorner, arc, isDemanded);
    }
}

package dev.waterjet.part;

import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.Serializable;

/**
 * Place on a contour.
 *
 * @param edge index of the edge from 0
 * @param share share of the edge's length before the place, 0 to 1
 */
public record ContourPlace(int edge, double share) implements Serializable {

    /**
     * Checks the components.
     *
     * @param edge index of the edge from 0
     * @param share share of the edge's length before the place, 0 to 1
     */
    public ContourPlace {
        Require.atLeast("index of an edge", edge, 0, Units.ONE, "");
        share = Require.between("share of an edge", share, 0, 1, Units.ONE, "");
    }
}

package dev.waterjet.part;

import java.io.Serializable;

/**
 * Place on a contour.
 *
 * @param edge index of the edge from 0
 * @param share share of the edge's length before the place, 0 to 1
 */
public record ContourPlace(int edge, double share) implements Serializable {}

package dev.waterjet.examples.drawing;

import dev.waterjet.part.Point;

/**
 * Place of a holding tab that a drawing marks.
 *
 * @param contour index of the contour in {@link Drawing#strokes()}
 * @param distanceM distance along that contour from its start, in m
 * @param place place on the contour
 * @param origin entity that marks it
 */
public record TabMark(int contour, double distanceM, Point place, Origin origin) {}

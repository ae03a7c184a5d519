package dev.waterjet.examples.drawing;

import dev.waterjet.part.Contour;

/**
 * One unbroken line of a drawing, in metres with y upwards.
 *
 * @param path lines and arcs, closed or open
 * @param origin entity of the drawing
 */
public record Stroke(Contour path, Origin origin) {

    Stroke with(Contour other) {
        return new Stroke(other, origin);
    }
}

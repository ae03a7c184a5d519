package dev.waterjet.benchmarks;

import dev.waterjet.measure.Kind;
import dev.waterjet.part.Contour;
import dev.waterjet.part.ContourBuilder;
import dev.waterjet.part.Part;
import dev.waterjet.part.Point;
import dev.waterjet.quality.CutQuality;
import dev.waterjet.quality.EdgeRequirement;
import java.util.ArrayList;
import java.util.List;

/** Random outlines and parts: circles, and rings of lines and flat arcs. */
final class RandomContours {

    private RandomContours() {}

    /** A part with up to three holes; it is refused where they meet or lie outside. */
    static Part part(Draws draws) {
        double sizeM = draws.between(3e-3, 0.4);
        Contour outline = ring(draws, 0, 0, sizeM);
        List<Contour> holes = new ArrayList<>();
        int count = draws.below(4);
        for (int i = 0; i < count; i++) {
            double angle = 2 * Math.PI * (i + 0.3 * draws.share()) / count;
            double fromM = count == 1 ? 0 : 0.17 * sizeM;
            holes.add(ring(draws, fromM * Math.cos(angle), fromM * Math.sin(angle), 0.1 * sizeM)
                    .named("hole " + i));
        }
        return Part.of(outline, holes);
    }

    static Contour ring(Draws draws, double xM, double yM, double sizeM) {
        EdgeRequirement requirement = EdgeRequirement.of(draws.pick(CutQuality.values()));
        if (draws.below(4) == 0) {
            return Contour.circle(Point.ofSi(xM, yM), Kind.LENGTH.of(0.35 * sizeM), requirement);
        }
        int corners = 3 + draws.below(9);
        double[] x = new double[corners + 1];
        double[] y = new double[corners + 1];
        for (int i = 0; i < corners; i++) {
            double angle = 2 * Math.PI * (i + 0.7 * draws.share()) / corners;
            double radiusM = sizeM * draws.evenly(0.35, 1);
            x[i] = xM + radiusM * Math.cos(angle);
            y[i] = yM + radiusM * Math.sin(angle);
        }
        x[corners] = x[0];
        y[corners] = y[0];
        ContourBuilder builder = Contour.fromSi(x[0], y[0]).requirement(requirement);
        for (int i = 1; i <= corners; i++) {
            double dx = x[i] - x[i - 1];
            double dy = y[i] - y[i - 1];
            double bulge = draws.below(3) == 0 ? draws.evenly(-0.08, 0.08) : 0;
            if (Math.abs(bulge) > 1e-3) {
                builder.arcThrough(
                        Point.ofSi(x[i] - dx / 2 - bulge * dy, y[i] - dy / 2 + bulge * dx), Point.ofSi(x[i], y[i]));
            } else {
                builder.lineToSi(x[i], y[i]);
            }
        }
        Contour ring = builder.close();
        return draws.chance() ? ring : ring.reversed();
    }
}

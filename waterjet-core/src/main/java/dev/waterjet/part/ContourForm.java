package dev.waterjet.part;

import dev.waterjet.quality.EdgeRequirement;
import java.io.Serializable;
import java.util.List;
import java.util.Objects;

/** Serial form of a contour: copies of its arrays, checked again when read. */
@SuppressWarnings("ArrayRecordComponent")
record ContourForm(
        double[] x,
        double[] y,
        double[] sweep,
        double[] centreX,
        double[] centreY,
        short[] key,
        boolean[] isCurve,
        boolean isClosed,
        List<EdgeRequirement> requirements,
        String name)
        implements Serializable {

    ContourForm {
        x = x.clone();
        y = y.clone();
        sweep = sweep.clone();
        centreX = centreX.clone();
        centreY = centreY.clone();
        key = key.clone();
        isCurve = isCurve.clone();
        requirements = List.copyOf(requirements);
        Objects.requireNonNull(name, "name");
        ContourCheck.require(
                new EdgeArrays(x, y, sweep, centreX, centreY, key, isCurve, isClosed), requirements.size());
    }

    static ContourForm of(Contour contour) {
        EdgeArrays edges = contour.edges;
        return new ContourForm(
                edges.x(),
                edges.y(),
                edges.sweep(),
                edges.centreX(),
                edges.centreY(),
                edges.key(),
                edges.isCurve(),
                edges.isClosed(),
                contour.requirements,
                contour.name());
    }

    private Object readResolve() {
        EdgeArrays edges = new EdgeArrays(x, y, sweep, centreX, centreY, key, isCurve, isClosed);
        return new Contour(edges, requirements, name);
    }
}

package dev.waterjet.part;

import dev.waterjet.quality.EdgeRequirement;
import java.io.Serializable;
import java.util.List;

/** Serial form of a contour: its arrays, checked again when read. */
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
        EdgeArrays edges = new EdgeArrays(
                x.clone(),
                y.clone(),
                sweep.clone(),
                centreX.clone(),
                centreY.clone(),
                key.clone(),
                isCurve.clone(),
                isClosed);
        ContourCheck.require(edges, requirements.size());
        return new Contour(edges, requirements, name);
    }
}

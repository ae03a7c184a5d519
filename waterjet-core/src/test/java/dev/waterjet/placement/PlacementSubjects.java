package dev.waterjet.placement;

import dev.waterjet.measure.Kind;
import dev.waterjet.part.Point;
import dev.waterjet.reference.Computed;
import dev.waterjet.reference.Inputs;
import dev.waterjet.reference.Subjects;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** Subjects of the reference suite in this package: probed holes, x and y in turn in mm. */
public final class PlacementSubjects implements Subjects {

    @Override
    public Map<String, Subject> subjects() {
        return Map.of(
                "located-rotation",
                in -> Computed.of(Kind.ANGLE, location(in).move().rotation()),
                "located-shift-x",
                in -> Computed.of(Kind.LENGTH, location(in).move().shift().x()),
                "located-shift-y",
                in -> Computed.of(Kind.LENGTH, location(in).move().shift().y()),
                "located-rotation-deviation",
                in -> Computed.of(Kind.ANGLE, location(in).rotationUncertainty()),
                "located-point-deviation",
                in -> Computed.of(
                        Kind.LENGTH, location(in).uncertaintyAt(points(in, "at").get(0))));
    }

    private static Location location(Inputs in) {
        List<Point> known = points(in, "known");
        List<Point> seen = points(in, "probed");
        double[] deviationsMm = Inputs.numbers(in.text("deviations"));
        List<ProbedPoint> probed = new ArrayList<>();
        for (int i = 0; i < known.size(); i++) {
            probed.add(ProbedPoint.hole(known.get(i), seen.get(i))
                    .withUncertainty(Kind.LENGTH.of(1e-3 * deviationsMm[i])));
        }
        return PartLocator.locate(probed);
    }

    private static List<Point> points(Inputs in, String name) {
        double[] mm = Inputs.numbers(in.text(name));
        List<Point> points = new ArrayList<>();
        for (int i = 0; i < mm.length; i += 2) {
            points.add(Point.millimetres(mm[i], mm[i + 1]));
        }
        return points;
    }
}

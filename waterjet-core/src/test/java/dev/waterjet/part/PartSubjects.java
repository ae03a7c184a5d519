package dev.waterjet.part;

import dev.waterjet.measure.Kind;
import dev.waterjet.reference.Computed;
import dev.waterjet.reference.Inputs;
import dev.waterjet.reference.ReferencePaths;
import dev.waterjet.reference.Subjects;
import java.util.Arrays;
import java.util.List;
import java.util.Map;

/** Subjects of the reference suite in this package; paths as {@link ReferencePaths}, holes parted by a bar. */
public final class PartSubjects implements Subjects {

    @Override
    public Map<String, Subject> subjects() {
        return Map.of(
                "contour-area", in -> Computed.of(Kind.AREA, contour(in, "path").signedArea()),
                "contour-length",
                        in -> Computed.of(Kind.LENGTH, contour(in, "path").length()),
                "part-area", in -> Computed.of(Kind.AREA, part(in).area()),
                "part-centroid-x",
                        in -> Computed.of(Kind.LENGTH, part(in).centroid().x()),
                "part-centroid-y",
                        in -> Computed.of(Kind.LENGTH, part(in).centroid().y()),
                "part-web", in -> Computed.of(Kind.LENGTH, part(in).minimumWebWidth()),
                "contour-clearance",
                        in -> Computed.of(Kind.LENGTH, contour(in, "path").clearance(contour(in, "other"))));
    }

    private static Contour contour(Inputs in, String name) {
        return ReferencePaths.parse(in.text(name));
    }

    private static Part part(Inputs in) {
        List<Contour> holes = in.has("holes")
                ? Arrays.stream(in.text("holes").split("\\s*\\|\\s*", -1))
                        .map(ReferencePaths::parse)
                        .toList()
                : List.of();
        return Part.of(contour(in, "path"), holes);
    }
}

package dev.waterjet.head;

import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.part.Contour;
import dev.waterjet.part.ContourConditioner;
import dev.waterjet.part.EdgeCursor;
import dev.waterjet.part.Finding;
import dev.waterjet.part.GeometryException;
import dev.waterjet.part.Side;
import dev.waterjet.toolpath.KerfOffset;
import java.util.OptionalDouble;

/** Features of a contour that limit the size of a jet, in metres. */
final class FeatureReader {

    /** Half the width from which on a slot admits any jet in use (common practice, no source). */
    private static final double WIDE_M = 1.2e-3;

    private static final String TOO_NARROW = "jet-does-not-fit";

    private final Contour contour;
    private final Side part;

    FeatureReader(Contour contour, Side part) {
        this.contour = ContourConditioner.defaults().condition(contour).contour();
        this.part = part;
    }

    /** Smallest radius of an arc that is hollow seen from the part. Sharp corners limit no jet: it leaves material in them. */
    OptionalDouble innerRadius() {
        EdgeCursor edge = new EdgeCursor();
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i < contour.size(); i++) {
            contour.load(i, edge);
            if (edge.isArc() && edge.sweep() * part.sign() < 0) {
                least = Math.min(least, edge.radius());
            }
        }
        return least < Double.POSITIVE_INFINITY ? OptionalDouble.of(least) : OptionalDouble.empty();
    }

    /** Width of the narrowest passage for the jet; empty if a wide jet passes everywhere. */
    OptionalDouble slotWidth() {
        try {
            return KerfOffset.of(Kind.LENGTH.of(WIDE_M))
                    .withNarrowPlaces(KerfOffset.NarrowPlaces.SPLIT)
                    .apply(contour, part.opposite())
                    .findings()
                    .stream()
                    .filter(finding -> finding.code().equals(TOO_NARROW))
                    .map(Finding::message)
                    .mapToDouble(FeatureReader::width)
                    .filter(width -> width > 0)
                    .min();
        } catch (GeometryException refused) {
            boolean isNarrow = refused.code().equals(TOO_NARROW) && width(refused.message()) > 0;
            return isNarrow ? OptionalDouble.of(width(refused.message())) : OptionalDouble.empty();
        }
    }

    private static double width(Message message) {
        return message.parameters().get("width_m") instanceof Double width ? width : 0;
    }
}

package dev.waterjet.toolpath;

import dev.waterjet.part.Contour;
import dev.waterjet.part.ContourPlace;
import dev.waterjet.part.EdgeCursor;

/**
 * Place at which a lead meets the path of the jet: its origin lies on the jet axis, x goes along the path, y into the scrap.
 *
 * @param place place on the part contour
 * @param atM distance of the place along the contour
 * @param entryX x of the place on the part contour
 * @param entryY y of the place on the part contour
 * @param alongX x of the unit vector along the path
 * @param alongY y of the unit vector along the path
 * @param scrap 1 where the scrap lies on the left, -1 on the right
 * @param offsetM distance of the jet axis from the part
 */
record LeadFrame(
        ContourPlace place,
        double atM,
        double entryX,
        double entryY,
        double alongX,
        double alongY,
        int scrap,
        double offsetM) {

    static LeadFrame of(Contour contour, double atM, int scrap, double offsetM) {
        ContourPlace place = contour.placeAtSi(atM);
        EdgeCursor edge = new EdgeCursor();
        contour.load(place.edge(), edge);
        double share = place.share();
        return new LeadFrame(
                place,
                atM,
                edge.xAt(share),
                edge.yAt(share),
                edge.directionXAt(share),
                edge.directionYAt(share),
                scrap,
                offsetM);
    }

    /** Unit vector into the scrap: x. */
    double outX() {
        return -alongY * scrap;
    }

    double outY() {
        return alongX * scrap;
    }

    /** Place on the sheet of a point of the frame: x. */
    double x(double along, double out) {
        return entryX + along * alongX + (offsetM + out) * outX();
    }

    double y(double along, double out) {
        return entryY + along * alongY + (offsetM + out) * outY();
    }
}

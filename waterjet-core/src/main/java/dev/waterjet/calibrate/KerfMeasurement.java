package dev.waterjet.calibrate;

import dev.waterjet.feed.FeedModel;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.kerf.KerfModel;
import dev.waterjet.kerf.KerfShape;
import dev.waterjet.kerf.Separation;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Speed;

/** A test cut whose widths were measured; the food of {@link KerfFit}. */
public final class KerfMeasurement implements Serializable {

    private static final long serialVersionUID = 1L;

    record Width(KerfShape cut, double depthM, double widthM) implements Serializable {}

    /** Its dose and spread are any numbers; the fit replaces them. */
    private final KerfShape cut;

    private final List<Width> widths;

    private KerfMeasurement(KerfShape cut, List<Width> widths) {
        this.cut = cut;
        this.widths = widths;
    }

    /**
     * A cut of which the separation depth at the running feed is known, as from a wedge.
     *
     * @param jet the jet
     * @param piece the workpiece
     * @param separationDepth depth that the jet just separates, no less than the thickness
     * @return the cut, as yet without widths
     */
    public static KerfMeasurement of(AbrasiveJet jet, Workpiece piece, Quantity<Length> separationDepth) {
        double depth = Require.atLeast(
                "separation depth",
                Kind.LENGTH.si(separationDepth),
                piece.thicknessSi(),
                Units.MILLIMETRE,
                "the thickness of the workpiece that it cut");
        return new KerfMeasurement(KerfModel.standard().shape(jet, piece, depth), List.of());
    }

    /**
     * A cut at a feed, its separation depth left to a feed model.
     *
     * @param jet the jet
     * @param piece the workpiece
     * @param feeds what is known of feed and depth
     * @param feed the feed, no faster than the one that just separates the workpiece
     * @return the cut, as yet without widths
     */
    public static KerfMeasurement atFeed(AbrasiveJet jet, Workpiece piece, FeedModel feeds, Quantity<Speed> feed) {
        double depth = Separation.of(jet, piece, feeds, feed).depthM();
        return new KerfMeasurement(KerfModel.standard().shape(jet, piece, depth), List.of());
    }

    /**
     * This cut with its width at the entry face.
     *
     * @param width the width, above zero
     * @return the cut with that width
     */
    public KerfMeasurement withEntryWidth(Quantity<Length> width) {
        return with(0, width);
    }

    /**
     * This cut with its width at the exit face.
     *
     * @param width the width, above zero
     * @return the cut with that width
     */
    public KerfMeasurement withExitWidth(Quantity<Length> width) {
        return with(cut.thicknessM(), width);
    }

    private KerfMeasurement with(double depthM, Quantity<Length> width) {
        List<Width> more = new ArrayList<>(widths);
        more.add(new Width(cut, depthM, Require.positive("measured width", Kind.LENGTH.si(width), Units.MILLIMETRE)));
        return new KerfMeasurement(cut, List.copyOf(more));
    }

    List<Width> widths() {
        return widths;
    }
}

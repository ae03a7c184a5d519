package dev.waterjet.simulate;

import static dev.waterjet.measure.Measures.degrees;
import static dev.waterjet.measure.Measures.gramsPerMinute;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.micrometres;
import static dev.waterjet.measure.Measures.millimetres;

import dev.waterjet.feed.CutConditions;
import dev.waterjet.feed.MachinabilityFeed;
import dev.waterjet.hydraulics.Orifice;
import dev.waterjet.jet.Abrasive;
import dev.waterjet.jet.CuttingHead;
import dev.waterjet.jet.FocusingTube;
import dev.waterjet.jet.Mesh;
import dev.waterjet.kerf.CutFront;
import dev.waterjet.kerf.KerfModel;
import dev.waterjet.kerf.KerfProfile;
import dev.waterjet.kerf.LagModel;
import dev.waterjet.material.Materials;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.part.Contour;
import dev.waterjet.part.Side;
import dev.waterjet.quality.CutQuality;
import dev.waterjet.quality.EdgeRequirement;

/** Predicted cuts of a re-entrant corner whose edges state different limits, for the tests of maps and findings. */
final class CornerPredictions {

    static final double H = 12e-3;
    static final CutConditions CUT = CutConditions.of(
            CuttingHead.of(Orifice.sapphire(millimetres(0.33)), FocusingTube.of(millimetres(1.02), millimetres(80)))
                    .jet(megapascals(380), Abrasive.garnet(Mesh.of(80)), gramsPerMinute(450)),
            Workpiece.of(Materials.standard().get("mild-steel"), Kind.LENGTH.of(H)),
            MachinabilityFeed.published());
    static final KerfModel KERF = KerfModel.standard().withCorrelation(-0.6);
    static final CutSimulator SIMULATOR =
            CutSimulator.of(CUT, KERF, LagModel.standard()).withDepths(6).withPoints(70);
    static final KerfProfile PROFILE = KerfProfile.of(KERF, CutFront.of(LagModel.standard(), CUT), CUT.jet());
    static final double OFFSET = PROFILE.halfWidthSi(0.0003, CUT.feedSi(2));

    static final EdgeRequirement FIRST = EdgeRequirement.of(CutQuality.FINE)
            .withTaper(degrees(1.2))
            .withRoughness(micrometres(6))
            .withPerpendicularityRange(1);
    static final EdgeRequirement SECOND = EdgeRequirement.of(CutQuality.COARSE)
            .withTaper(degrees(0.4))
            .withRoughness(micrometres(30))
            .withPerpendicularityRange(3);

    /** Two edges with a re-entrant corner; a path beside them that stops short of the end, so that the end is not cut. */
    static Contour part() {
        return Contour.fromSi(0, 0)
                .requirement(FIRST)
                .lineToSi(20e-3, 0)
                .requirement(SECOND)
                .lineToSi(20e-3, 15e-3)
                .open();
    }

    static FeedProfile profile(double share, double lengthM) {
        Contour path = Contour.fromSi(-5e-3, OFFSET)
                .lineToSi(20e-3 - OFFSET, OFFSET)
                .lineToSi(20e-3 - OFFSET, lengthM)
                .open();
        return FeedProfile.perEdge(path, QuantityArray.ofSi(Kind.SPEED, CUT.feedSi(3), share * CUT.feedSi(1)))
                .afterSteadyFeed();
    }

    /** The path ends before the part, and the second leg is so fast that not all moved models separate it. */
    static PredictedCut ending() {
        return SIMULATOR.withUncertainty().predict(profile(0.93, 9e-3), part(), Side.RIGHT);
    }

    static PredictedCut whole() {
        return SIMULATOR.predict(profile(0.6, 25e-3), part(), Side.RIGHT);
    }

    private CornerPredictions() {}
}

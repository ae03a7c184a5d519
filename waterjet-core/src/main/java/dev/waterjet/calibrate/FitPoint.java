package dev.waterjet.calibrate;

import dev.waterjet.evidence.Evidence;
import dev.waterjet.evidence.EvidenceGrade;
import dev.waterjet.evidence.Source;
import dev.waterjet.feed.FeedModel;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.material.Material;

/** Setting at which a fit is asked for a feed rate. */
record FitPoint(AbrasiveJet jet, double thicknessM, double index) {

    private static final Evidence UNDER_WAY = Evidence.of(EvidenceGrade.ASSUMED, Source.of("a fit under way"));

    private static final double STEP = 1e-4;

    static FitPoint of(TestCut cut) {
        return new FitPoint(cut.jet(), cut.thicknessSi(), cut.index());
    }

    double logFeed(Family family, double[] parameters) {
        FeedModel model = family.model(parameters, 0, UNDER_WAY);
        Material material = family.material(parameters, 0, UNDER_WAY);
        return Math.log(model.feedSi(jet, material, thicknessM, index));
    }

    double slope(Family family, double[] parameters) {
        FitPoint thin = new FitPoint(jet, thicknessM * (1 - STEP), index);
        FitPoint thick = new FitPoint(jet, thicknessM * (1 + STEP), index);
        return (thin.logFeed(family, parameters) - thick.logFeed(family, parameters))
                / Math.log((1 + STEP) / (1 - STEP));
    }
}

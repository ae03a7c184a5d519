package dev.waterjet.plan;

import static dev.waterjet.plan.PartPlannerTest.SETUP;
import static org.assertj.core.api.Assertions.assertThat;

import dev.waterjet.feed.CutConditions;
import dev.waterjet.kerf.CutFront;
import dev.waterjet.kerf.KerfModel;
import dev.waterjet.kerf.KerfProfile;
import dev.waterjet.kerf.LagModel;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Measures;
import dev.waterjet.motion.FeedPlanner;
import dev.waterjet.motion.MachineLimits;
import dev.waterjet.part.Contour;
import dev.waterjet.part.Part;
import dev.waterjet.part.Point;
import dev.waterjet.part.Side;
import dev.waterjet.quality.EdgeRequirement;
import dev.waterjet.simulate.CutSimulator;
import dev.waterjet.simulate.FeedProfile;
import dev.waterjet.simulate.PredictedCut;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Marks that leads leave on a part, judged by the predicted cut. */
class LeadMarksTest {

    private static final EdgeRequirement MEDIUM = EdgeRequirement.defaults();

    /** Largest gouge within a distance of a place. */
    private static double gouge(PredictedCut cut, Point place, double within) {
        int bottom = cut.map().depths().size() - 1;
        double gouge = 0;
        for (int i = 0; i < cut.map().size(); i++) {
            if (Kind.LENGTH.si(cut.map().point(i).distance(place)) < within) {
                gouge = Math.max(gouge, -cut.map().addedSi(i, bottom));
            }
        }
        return gouge;
    }

    /** On the arc of a lead-out the front swings wide, into the part: by 5.6 mm in 100 mm steel at the feed of a straight cut. */
    @ParameterizedTest
    @CsvSource({"10, mild-steel", "25, mild-steel", "50, mild-steel", "100, mild-steel", "40, titanium"})
    void theArcOfALeadKeepsTheToleranceOfTheEdgeThatItJoins(double thicknessMm, String material) {
        Contour square = Contour.rectangle(Point.millimetres(0, 0), Point.millimetres(80, 80), MEDIUM);
        Workpiece plate = Jobs.plate(material, thicknessMm);

        PartPlan plan = PartPlanner.of(SETUP).plan(Part.of(square), plate);

        CutSimulator simulator = CutSimulator.of(plan.conditions(), KerfModel.standard(), LagModel.standard())
                .withDepths(2);
        FeedProfile profile = FeedProfile.of(plan.cuts().get(0).feeds().get(0));
        PredictedCut cut = simulator.predict(profile, square, Side.LEFT);
        // the path of a rectangle starts in the middle of an edge
        Point start = profile.path().start();
        double tolerance = MEDIUM.lagToleranceSi(thicknessMm * 1e-3);
        assertThat(gouge(cut, start, 0.035)).isLessThan(1.05 * tolerance + 0.04e-3);
    }

    /** Behind the corner the front lags along the lead-out, into the part. */
    @ParameterizedTest
    @CsvSource({"10, 90", "25, 90", "25, 45", "50, 120"})
    void aStraightLeadOutTurnsOffAsSlowlyAsAReentrantCorner(double thicknessMm, double turnDeg) {
        Workpiece plate = Jobs.plate("mild-steel", thicknessMm);
        CutConditions cut = SETUP.conditions(plate);
        double feed = cut.feedSi(3);
        KerfProfile kerf = KerfProfile.of(KerfModel.standard(), CutFront.of(LagModel.standard(), cut), cut.jet());
        double offset = kerf.halfWidthSi(0.02e-3 * thicknessMm, feed);
        double turn = Math.toRadians(-turnDeg);
        Contour path = Contour.fromSi(-0.06, 0)
                .requirement(MEDIUM)
                .lineToSi(0, 0)
                .requirement(MEDIUM.asLead())
                .lineToSi(0.02 * Math.cos(turn), 0.02 * Math.sin(turn))
                .open();
        Contour part = Contour.fromSi(-0.06, offset).lineToSi(0, offset).open();
        FeedPlanner planner = FeedPlanner.of(
                MachineLimits.of(Measures.metresPerSecond(0.2), Measures.metresPerSquareSecond(0.5)), cut);

        PredictedCut predicted = CutSimulator.of(cut, KerfModel.standard(), LagModel.standard())
                .withDepths(2)
                .predict(FeedProfile.of(planner.plan(path, Side.LEFT)), part, Side.LEFT);

        double gouge = gouge(predicted, Point.millimetres(0, 0), 0.01);
        assertThat(gouge).isLessThan(1.05 * MEDIUM.lagToleranceSi(thicknessMm * 1e-3) + 0.04e-3);
        assertThat(planner.plan(path, Side.LEFT).feedAtSi(0.06)).isLessThan(0.9 * feed);
    }
}

package dev.waterjet.simulate;

import static dev.waterjet.measure.Measures.gramsPerMinute;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.metresPerSecond;
import static dev.waterjet.measure.Measures.metresPerSquareSecond;
import static dev.waterjet.measure.Measures.millimetres;
import static org.assertj.core.api.Assertions.assertThat;

import dev.waterjet.feed.CutConditions;
import dev.waterjet.feed.MachinabilityFeed;
import dev.waterjet.hydraulics.Orifice;
import dev.waterjet.jet.Abrasive;
import dev.waterjet.jet.CuttingHead;
import dev.waterjet.jet.FocusingTube;
import dev.waterjet.jet.Mesh;
import dev.waterjet.kerf.KerfModel;
import dev.waterjet.kerf.LagModel;
import dev.waterjet.material.Materials;
import dev.waterjet.material.Workpiece;
import dev.waterjet.motion.FeedPlanner;
import dev.waterjet.motion.MachineLimits;
import dev.waterjet.part.Contour;
import dev.waterjet.part.Side;
import dev.waterjet.quality.CutQuality;
import dev.waterjet.quality.EdgeRequirement;
import dev.waterjet.toolpath.KerfOffset;
import dev.waterjet.toolpath.ToolPath;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Tips of any angle with extended corners: where the extension is cut off, the path turns twice within some hundredths of a
 * millimetre, each time by less than a corner of the drawing. The planned feed rate separates the part there too.
 */
class BendSeparationTest {

    private static final CutConditions CUT = CutConditions.of(
            CuttingHead.of(Orifice.sapphire(millimetres(0.22)), FocusingTube.of(millimetres(0.64), millimetres(64)))
                    .jet(megapascals(384), Abrasive.garnet(Mesh.of(80)), gramsPerMinute(283)),
            Workpiece.of(Materials.standard().get("copper"), millimetres(15)),
            MachinabilityFeed.published());

    private static Contour triangle(double tipDegrees) {
        double half = Math.toRadians(tipDegrees / 2);
        double x = 0.02 * Math.sin(half);
        double y = -0.02 * Math.cos(half);
        return Contour.fromSi(0, y)
                .requirement(EdgeRequirement.of(CutQuality.MEDIUM))
                .lineToSi(x, y)
                .lineToSi(0, 0)
                .lineToSi(-x, y)
                .lineToSi(0, y)
                .close();
    }

    @ParameterizedTest
    @ValueSource(doubles = {120, 95, 89, 86, 83, 80, 77, 74, 70, 60, 30, 20})
    void theTipIsSeparated(double tipDegrees) {
        Contour part = triangle(tipDegrees);
        ToolPath path = KerfOffset.of(KerfModel.standard()
                        .kerf(CUT, CUT.feed(CutQuality.MEDIUM).value())
                        .offset()
                        .value())
                .withCorners(KerfOffset.CornerStyle.EXTENDED)
                .apply(part, Side.RIGHT)
                .path()
                .withOvercut(millimetres(4));
        FeedPlanner planner = FeedPlanner.of(MachineLimits.of(metresPerSecond(0.3), metresPerSquareSecond(1)), CUT);

        assertThat(CutSimulator.of(CUT, KerfModel.standard(), LagModel.standard())
                        .predict(FeedProfile.of(planner.plan(path.contour(), Side.LEFT)), part, Side.LEFT)
                        .isSeparated())
                .isTrue();
    }
}

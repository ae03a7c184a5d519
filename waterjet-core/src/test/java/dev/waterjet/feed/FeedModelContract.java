package dev.waterjet.feed;

import static dev.waterjet.Refusals.assertRefused;
import static dev.waterjet.measure.Measures.gramsPerMinute;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.millimetres;
import static dev.waterjet.measure.Measures.millimetresPerMinute;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.evidence.Estimate;
import dev.waterjet.hydraulics.Orifice;
import dev.waterjet.jet.Abrasive;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.jet.CuttingHead;
import dev.waterjet.jet.FocusingTube;
import dev.waterjet.jet.Mesh;
import dev.waterjet.material.Material;
import dev.waterjet.material.Materials;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.quality.CutQuality;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.ObjectInputStream;
import java.io.ObjectOutputStream;
import java.util.function.DoubleBinaryOperator;
import java.util.stream.IntStream;
import javax.measure.quantity.Length;
import javax.measure.quantity.Speed;
import org.junit.jupiter.api.Test;

/** Laws that every feed model keeps, whatever its formula. */
public abstract class FeedModelContract {

    private static final double[] THICKNESSES_MM = {3, 6, 10, 25, 60, 120};

    /** The model under test. */
    abstract FeedModel model();

    /** Materials on which the model can answer. */
    Iterable<Material> materials() {
        return Materials.standard().all();
    }

    public static AbrasiveJet jet(double megapascals, double orificeMm, double tubeMm, double gramsPerMinute) {
        return CuttingHead.of(
                        Orifice.sapphire(millimetres(orificeMm)),
                        FocusingTube.of(millimetres(tubeMm), millimetres(80 * tubeMm)))
                .jet(megapascals(megapascals), Abrasive.garnet(Mesh.of(80)), gramsPerMinute(gramsPerMinute));
    }

    private static AbrasiveJet usualJet() {
        return jet(380, 0.3, 0.9, 400);
    }

    private Material anyMaterial() {
        return materials().iterator().next();
    }

    @Test
    void feedsArePositiveAndFallWithThicknessAndGrade() {
        for (Material material : materials()) {
            double before = Double.POSITIVE_INFINITY;
            for (double thickness : THICKNESSES_MM) {
                Workpiece piece = Workpiece.of(material, millimetres(thickness));
                double slowestSoFar = Double.POSITIVE_INFINITY;
                for (CutQuality grade : CutQuality.values()) {
                    Estimate<Speed> feed = model().feed(usualJet(), piece, grade);
                    assertThat(feed.si())
                            .as("%s, %s", piece, grade)
                            .isPositive()
                            .isLessThan(isHeld(feed) ? Math.nextUp(slowestSoFar) : slowestSoFar);
                    slowestSoFar = feed.si();
                }
                Estimate<Speed> separation = model().feed(usualJet(), piece, CutQuality.VERY_COARSE);
                assertThat(separation.si()).isLessThan(isHeld(separation) ? Math.nextUp(before) : before);
                before = separation.si();
            }
        }
    }

    @Test
    void functionOfThicknessAndIndexGivesTheSameDigits() {
        for (Material material : materials()) {
            DoubleBinaryOperator feeds = model().feedsSi(usualJet(), material);
            for (double thickness : THICKNESSES_MM) {
                for (double index : new double[] {1, 1.7, 5}) {
                    assertThat(feeds.applyAsDouble(thickness / 1000, index))
                            .isEqualTo(model().feedSi(usualJet(), material, thickness / 1000, index));
                }
            }
        }
    }

    /** Whether a feed is held at the stated limit. */
    private static boolean isHeld(Estimate<Speed> feed) {
        return feed.cautions().stream().anyMatch(caution -> caution.code().equals("feed-limit"));
    }

    @Test
    void thinSheetIsHeldAtTheStatedLimit() {
        Workpiece foil = Workpiece.of(anyMaterial(), millimetres(0.001));
        FeedModel limited = model().capped(millimetresPerMinute(3000));

        assertThat(model().feed(usualJet(), foil, 1).si()).isEqualTo(FeedModel.DEFAULT_MAXIMUM_FEED_M_PER_S);
        assertThat(isHeld(model().feed(usualJet(), foil, 1))).isTrue();
        assertThat(limited.feed(usualJet(), foil, 1).si()).isCloseTo(0.05, within(1e-15));
        assertThat(isHeld(limited.feed(usualJet(), foil, 1))).isTrue();
        assertThat(limited.feed(usualJet(), foil.withThickness(millimetres(60)), 3))
                .isEqualTo(model().feed(usualJet(), foil.withThickness(millimetres(60)), 3));
    }

    @Test
    void sweptSettingsGiveTheBitsOfThatJet() {
        AbrasiveJet other = Jets.at(usualJet(), 310e6, 0.25e-3, 0.76e-3, 0.25 / 60);
        Settings swept = new Settings(usualJet());
        swept.pressure(310e6).orifice(0.25e-3).tube(0.76e-3).abrasiveFlow(0.25 / 60);

        assertThat(model().feedSi(swept, anyMaterial(), 0.012, 2.5))
                .isEqualTo(model().feedSi(other, anyMaterial(), 0.012, 2.5));
        assertThat(model().indexSi(swept, anyMaterial(), 0.012, 1e-3))
                .isEqualTo(model().indexSi(other, anyMaterial(), 0.012, 1e-3));
    }

    @Test
    void depthIsTheInverseOfFeed() {
        for (Material material : materials()) {
            for (double thickness : THICKNESSES_MM) {
                Workpiece piece = Workpiece.of(material, millimetres(thickness));
                Estimate<Speed> feed = model().feed(usualJet(), piece, 1);
                if (isHeld(feed)) {
                    continue;
                }
                assertThat(model().depth(usualJet(), material, feed.value()).si())
                        .isCloseTo(piece.thicknessSi(), within(1e-9 * piece.thicknessSi()));
                assertThat(model().index(usualJet(), piece, feed.value())).isCloseTo(1, within(1e-9));
            }
        }
    }

    @Test
    void morePressureCutsFaster() {
        Workpiece piece = Workpiece.of(anyMaterial(), millimetres(10));

        assertThat(model().feed(jet(400, 0.3, 0.9, 400), piece, 2).si())
                .isGreaterThan(model().feed(jet(300, 0.3, 0.9, 400), piece, 2).si());
    }

    /** Common practice, no source: a larger orifice cuts faster, all else equal. */
    @Test
    void aLargerOrificeCutsFaster() {
        Workpiece piece = Workpiece.of(anyMaterial(), millimetres(10));

        assertThat(model().feed(jet(380, 0.35, 0.9, 400), piece, 2).si())
                .isGreaterThan(model().feed(jet(380, 0.30, 0.9, 400), piece, 2).si());
    }

    @Test
    void curvesAreTheSameFeedsInBulk() {
        QuantityArray<Length> thicknesses = QuantityArray.evenly(Kind.LENGTH, millimetres(3), millimetres(100), 50);
        FeedCurve curve = model().curve(usualJet(), anyMaterial(), 3, thicknesses);

        for (int i = 0; i < thicknesses.size(); i++) {
            double alone = model().feed(usualJet(), Workpiece.of(anyMaterial(), thicknesses.get(i)), 3)
                    .si();
            assertThat(curve.feeds().si(i)).isCloseTo(alone, within(4e-15 * alone));
        }
    }

    @Test
    void manyThreadsGetTheSameBits() {
        Workpiece piece = Workpiece.of(anyMaterial(), millimetres(12));
        FeedModel shared = model();
        AbrasiveJet jet = usualJet();
        double alone = shared.feed(jet, piece, 3).si();

        assertThat(IntStream.range(0, 2000)
                        .parallel()
                        .mapToDouble(i -> shared.feed(jet, piece, 3).si()))
                .containsOnly(alone);
    }

    @Test
    void aSerialisedCopyComputesTheSameBits() throws Exception {
        Workpiece piece = Workpiece.of(anyMaterial(), millimetres(12));
        FeedModel copy = (FeedModel) copy(model());

        assertThat(copy.feed((AbrasiveJet) copy(usualJet()), (Workpiece) copy(piece), 3))
                .isEqualTo(model().feed(usualJet(), piece, 3));
    }

    private static Object copy(Object original) throws Exception {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ObjectOutputStream out = new ObjectOutputStream(bytes)) {
            out.writeObject(original);
        }
        try (ObjectInputStream in = new ObjectInputStream(new ByteArrayInputStream(bytes.toByteArray()))) {
            return in.readObject();
        }
    }

    @Test
    void impossibleQuestionsAreRefusedByName() {
        Workpiece piece = Workpiece.of(anyMaterial(), millimetres(10));

        assertRefused(() -> model().feed(usualJet(), piece, 0.5), "must-be-at-least", "quality index", 1);
        assertRefused(
                () -> model().depth(usualJet(), anyMaterial(), millimetresPerMinute(-3)),
                "must-be-above",
                "feed rate",
                0);
        assertRefused(() -> model().feed(usualJet(), piece, Double.NaN), "must-be-at-least", "quality index", 1);
    }

    @Test
    void theModelHasANameAndEvidence() {
        assertThat(model().name()).isNotBlank();
        assertThat(model().evidence().source().citation()).isNotBlank();
    }
}

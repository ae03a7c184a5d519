package dev.waterjet.surface;

import dev.waterjet.calibrate.RoughnessFit;
import dev.waterjet.calibrate.RoughnessMeasurement;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.feed.FeedModel;
import dev.waterjet.feed.MachinabilityFeed;
import dev.waterjet.hydraulics.Orifice;
import dev.waterjet.jet.Abrasive;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.jet.CuttingHead;
import dev.waterjet.jet.FocusingTube;
import dev.waterjet.jet.Mesh;
import dev.waterjet.kerf.ArcTolerance;
import dev.waterjet.kerf.LagModel;
import dev.waterjet.material.Materials;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.DomainException;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.measure.TextException;
import dev.waterjet.measure.Units;
import dev.waterjet.quality.CutOff;
import dev.waterjet.quality.CutQuality;
import dev.waterjet.quality.FaceMeasure;
import dev.waterjet.quality.QualityIndexTable;
import dev.waterjet.quality.QualityProbabilities;
import dev.waterjet.quality.QualityScale;
import java.util.List;
import java.util.Map;
import javax.measure.quantity.Length;
import org.junit.jupiter.api.Test;
import static dev.waterjet.measure.Measures.degrees;
import static dev.waterjet.measure.Measures.gramsPerMinute;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.micrometres;
import static dev.waterjet.measure.Measures.millimetres;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

class SurfaceModelTest {

    private static final FeedModel FEEDS = MachinabilityFeed.published();
    private static final SurfaceModel MODEL = SurfaceModel.standard();
    private static final AbrasiveJet JET = CuttingHead.of(
                    Orifice.sapphire(millimetres(0.33)), FocusingTube.of(millimetres(1), millimetres(80)))
            .jet(megapascals(380), Abrasive.garnet(Mesh.of(80)), gramsPerMinute(400));
    private static final Workpiece PLATE = Workpiece.of(Materials.standard().get("mild-steel"), millimetres(12));

    private static CutSurface face(double index) {
        return MODEL.surface(JET, PLATE, FEEDS, FEEDS.feed(JET, PLATE, index).value());
    }

    @Test
    void theFastestFeedJustMeetsEachDemand() {
        CutSurface byTaper = fastest(FaceDemand.none().withTaper(degrees(0.4)), FaceDemand.Item.TAPER);
        assertThat(byTaper.kerf().taperPerSide().to(Units.DEGREE)).isCloseTo(0.4, within(1e-6));

        CutSurface byRange =
                fastest(FaceDemand.none().withPerpendicularityRange(1), FaceDemand.Item.PERPENDICULARITY_RANGE);
        assertThat(byRange.perpendicularity().to(Units.MILLIMETRE)).isCloseTo(0.086, within(1e-6));

        CutSurface byHeight = fastest(FaceDemand.none().withProfileHeightRange(2), FaceDemand.Item.PROFILE_HEIGHT_RANGE);
        assertThat(byHeight.profileHeight().to(Units.MICROMETRE)).isCloseTo(49.6, within(1e-4));

        CutSurface byRoughness = fastest(FaceDemand.none().withRoughness(micrometres(6)), FaceDemand.Item.ROUGHNESS);
        assertThat(byRoughness.roughness().raAtExit().to(Units.MICROMETRE)).isCloseTo(6, within(1e-6));

        CutSurface byArc = fastest(
                FaceDemand.none().withArc(ArcTolerance.onRadius(millimetres(5)).within(millimetres(0.05))),
                FaceDemand.Item.ARC);
        assertThat(byArc.kerf().lag().errorOnArc(millimetres(5)).to(Units.MILLIMETRE))
                .isCloseTo(0.05, within(1e-8));

        CutSurface byGrade = fastest(FaceDemand.none().withQuality(CutQuality.FINE), FaceDemand.Item.GRADE);
        assertThat(byGrade.kerf().index()).isCloseTo(4, within(1e-9));
        assertThat(byGrade.quality().quality()).contains(CutQuality.FINE);
    }

    private static CutSurface fastest(FaceDemand demand, FaceDemand.Item governing) {
        FastestFeed fastest = MODEL.fastestFeed(JET, PLATE, FEEDS, demand);
        assertThat(fastest.governing()).isEqualTo(governing);
        return MODEL.surface(JET, PLATE, FEEDS, fastest.feed().orElseThrow().value());
    }

    @Test
    void theSlowestDemandGoverns() {
        FaceDemand coarse = FaceDemand.none().withQuality(CutQuality.COARSE).withTaper(degrees(3));
        FaceDemand square = coarse.withTaper(degrees(0.1));

        assertThat(MODEL.fastestFeed(JET, PLATE, FEEDS, coarse).governing()).isEqualTo(FaceDemand.Item.GRADE);
        FastestFeed fastest = MODEL.fastestFeed(JET, PLATE, FEEDS, square);
        assertThat(fastest.governing()).isEqualTo(FaceDemand.Item.TAPER);
        assertThat(fastest.limits())
                .containsOnlyKeys(FaceDemand.Item.SEPARATION, FaceDemand.Item.GRADE, FaceDemand.Item.TAPER);
        assertThat(fastest.feed().orElseThrow().si())
                .isLessThan(FEEDS.feed(JET, PLATE, 2).si());
        assertThat(MODEL.fastestFeed(JET, PLATE, FEEDS, FaceDemand.none()).governing())
                .isEqualTo(FaceDemand.Item.SEPARATION);
    }

    @Test
    void aFaceFinerThanTheGrainsIsOutOfReach() {
        FastestFeed fastest =
                MODEL.fastestFeed(JET, PLATE, FEEDS, FaceDemand.none().withRoughness(micrometres(1)));

        assertThat(fastest.feed()).isEmpty();
        assertThat(fastest.governing()).isEqualTo(FaceDemand.Item.ROUGHNESS);
        assertThat(fastest.limits()).doesNotContainKey(FaceDemand.Item.ROUGHNESS);
    }

    /**
     * JMMP 9 (2025) 80: roughness hardly depends on feed near the entry, strongly near the exit. Hashish 1991: grain size
     * dominates the finish.
     */
    @Test
    void roughnessFollowsGrainAtTheEntryAndFeedAtTheExit() {
        SurfaceRoughness slow = face(4).roughness();
        SurfaceRoughness fast = face(1.1).roughness();

        assertThat(fast.raSi(0.5e-3) / slow.raSi(0.5e-3)).isBetween(1.0, 1.1);
        assertThat(fast.raSi(12e-3) / slow.raSi(12e-3)).isGreaterThan(5);
        AbrasiveJet fine = CuttingHead.of(JET.head().orifice(), JET.head().tube())
                .jet(megapascals(380), Abrasive.garnet(Mesh.of(120)), gramsPerMinute(400));
        SurfaceRoughness finer = MODEL.surface(
                        fine, PLATE, FEEDS, FEEDS.feed(fine, PLATE, 4).value())
                .roughness();
        assertThat(finer.raSi(0) / slow.raSi(0)).isCloseTo(125.0 / 180, within(1e-9));
    }

    /** Alsoufi et al. 2017, Carrara marble of 40 mm: Ra 4 um at the entry, up to 93.7 at the exit. Assumed: 80 mesh, index 1. */
    @Test
    void marbleLiesInTheInterval() {
        Workpiece marble = Workpiece.of(Materials.standard().get("marble-white"), millimetres(40));
        SurfaceRoughness face = MODEL.surface(
                        JET, marble, FEEDS, FEEDS.feed(JET, marble, 1).value())
                .roughness();

        holds(face.raAt(millimetres(0)), 4);
        holds(face.raAtExit(), 93.7);
        assertThat(CutOff.forRa(face.raAtExit().value())).isEqualTo(CutOff.MM_8);
    }

    private static void holds(Estimate<Length> ra, double publishedUm) {
        assertThat(publishedUm * 1e-6).isBetween(Kind.LENGTH.si(ra.lower(0.95)), Kind.LENGTH.si(ra.upper(0.95)));
        assertThat(ra.relativeUncertainty()).isLessThan(0.9);
    }

    /** JMMP 9 (2025) 80: Pz over Pa 10 to 12; a height is never below the mean deviation of its own profile. */
    @Test
    void heightsOfProfilesAreKeptApart() {
        SurfaceRoughness face = face(2).roughness();
        for (double depth : new double[] {0, 6, 12}) {
            double ra = face.raAt(millimetres(depth)).si();
            double rz = face.rzAt(millimetres(depth)).si();
            double pz = face.pzAt(millimetres(depth)).si();
            assertThat(rz).isGreaterThan(4 * ra).isLessThan(pz);
        }
    }

    @Test
    void measuredFacesGiveTheNumbersBack() {
        RoughnessMeasurement line = RoughnessMeasurement.of(JET, millimetres(20))
                .withDepths(QuantityArray.of(Kind.LENGTH, new double[] {1, 4, 8, 12, 16, 20}, Units.MILLIMETRE))
                .withRa(QuantityArray.of(Kind.LENGTH, new double[] {3.1, 3.5, 4.2, 12, 30, 45}, Units.MICROMETRE));
        RoughnessFit fit = RoughnessFit.of(List.of(line));

        assertThat(fit.model().textureRatio() * 180).isCloseTo(2.9, within(0.3));
        assertThat(fit.model().striationGrowth()).isCloseTo(0.083, within(0.01));
        assertThat(fit.fit().residualDeviation()).isLessThan(0.15);
    }

    @Test
    void gradesHaveProbabilities() {
        QualityProbabilities odds = face(3).quality();
        Map<CutQuality, Double> each = odds.probabilities();

        assertThat(odds.quality()).contains(CutQuality.MEDIUM);
        assertThat(odds.atLeast(CutQuality.MEDIUM)).isCloseTo(0.5, within(1e-6));
        assertThat(each.values().stream().mapToDouble(Double::doubleValue).sum() + odds.none())
                .isCloseTo(1, within(1e-12));
        assertThat(each.get(CutQuality.COARSE)).isGreaterThan(each.get(CutQuality.VERY_COARSE));
        assertThat(face(1).quality().none()).isCloseTo(0.5, within(1e-6));
    }

    @Test
    void aFaceIsReadFromItsSmoothZoneAndItsLag() {
        MeasuredSurface face = MeasuredSurface.ofThickness(millimetres(30)).withSmoothZone(millimetres(23.4));
        assertThat(face.index().si()).isCloseTo(1.5, within(1e-12));
        assertThat(face.probabilities(QualityIndexTable.standard()).quality()).contains(CutQuality.VERY_COARSE);

        MeasuredSurface both = face.withExitLag(millimetres(0.2576 * 30 / 1.5), LagModel.standard());
        assertThat(both.index().si()).isCloseTo(1.5, within(1e-3));
        assertThat(both.index().relativeUncertainty()).isLessThan(face.index().relativeUncertainty());
        assertThatThrownBy(() -> face.withSmoothZone(millimetres(30)))
                .isInstanceOf(DomainException.class)
                .hasMessageContaining("read the lag instead");
    }

    private static final String SCALE = """
            # rule of the Hollow Ridge workshop, invented
            level,measure,above_thickness,to_thickness,constant,per_thickness
            ridge-a,perpendicularity,0 mm,50 mm,0.04 mm,0.002
            ridge-b,perpendicularity,0 mm,50 mm,0.10 mm,0.005
            ridge-a,roughness-ra,0 mm,50 mm,4 um,0
            """;

    @Test
    void aScaleOfTheUserGradesByItsOwnLimits() {
        var scale = QualityScale.parse(SCALE).forThickness(millimetres(10));

        assertThat(scale.level(FaceMeasure.PERPENDICULARITY, micrometres(59.9))).contains("ridge-a");
        assertThat(scale.level(FaceMeasure.PERPENDICULARITY, micrometres(60.1))).contains("ridge-b");
        assertThat(scale.level(FaceMeasure.PERPENDICULARITY, micrometres(151))).isEmpty();
        assertThat(scale.level(FaceMeasure.PROFILE_HEIGHT, micrometres(1))).isEmpty();
        assertThat(QualityScale.parse(SCALE)
                        .forThickness(millimetres(51))
                        .level(FaceMeasure.PERPENDICULARITY, micrometres(1)))
                .isEmpty();
        Map<String, Double> odds =
                scale.probabilities(FaceMeasure.PERPENDICULARITY, Estimate.of(Kind.LENGTH, 60e-6, 10e-6));
        assertThat(odds.keySet()).containsExactly("ridge-a", "ridge-b");
        assertThat(odds.get("ridge-a")).isCloseTo(0.5, within(1e-6));
    }

    @Test
    void aFaultInAScaleIsFoundByLineAndColumn() {
        assertThatThrownBy(() -> QualityScale.parse(SCALE + "ridge-c,gloss,0 mm,50 mm,1 mm,0\n"))
                .isInstanceOf(TextException.class)
                .hasMessageContaining("line 6")
                .hasMessageContaining("gloss");
        assertThatThrownBy(() -> QualityScale.parse(SCALE + "ridge-c,perpendicularity,0 mm,50 mm,1 MPa,0\n"))
                .isInstanceOf(TextException.class)
                .hasMessageContaining("line 6");
        assertThatThrownBy(() -> QualityScale.parse("level\n"))
                .isInstanceOf(TextException.class)
                .hasMessageContaining("starts with the columns");
    }
}

package dev.waterjet.surface;

import dev.waterjet.ValueContract;
import dev.waterjet.calibrate.RoughnessFit;
import dev.waterjet.calibrate.RoughnessMeasurement;
import dev.waterjet.evidence.Caution;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.evidence.Evidence;
import dev.waterjet.evidence.EvidenceGrade;
import dev.waterjet.evidence.Source;
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
import dev.waterjet.measure.Measures;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.measure.TextException;
import dev.waterjet.measure.Units;
import dev.waterjet.quality.CutQuality;
import dev.waterjet.quality.FaceMeasure;
import dev.waterjet.quality.Iso9013;
import dev.waterjet.quality.QualityIndexTable;
import dev.waterjet.quality.QualityProbabilities;
import dev.waterjet.quality.QualityScale;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import static dev.waterjet.measure.Measures.degrees;
import static dev.waterjet.measure.Measures.gramsPerMinute;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.micrometres;
import static dev.waterjet.measure.Measures.millimetres;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

/** What the values of this package hold, and the uncertainties that follow from it by hand. */
class SurfaceValuesTest {

    private static final FeedModel FEEDS = MachinabilityFeed.published();
    private static final SurfaceModel MODEL = SurfaceModel.standard();
    private static final AbrasiveJet JET = CuttingHead.of(
                    Orifice.sapphire(millimetres(0.33)), FocusingTube.of(millimetres(1), millimetres(80)))
            .jet(megapascals(380), Abrasive.garnet(Mesh.of(80)), gramsPerMinute(400));
    private static final Workpiece PLATE = Workpiece.of(Materials.standard().get("mild-steel"), millimetres(12));

    private static CutSurface face(double index) {
        return MODEL.surface(JET, PLATE, FEEDS, FEEDS.feed(JET, PLATE, index).value());
    }

    private static List<String> codes(List<Caution> cautions) {
        return cautions.stream().map(Caution::code).toList();
    }

    /** 80 mesh is 180 um: Ra 0.02 * 180 = 3.6 um at the entry, Rz 6 Ra, Pz 11 * 1.5 Ra; each factor adds its own doubt. */
    @Test
    void atTheEntryOnlyTheGrainsCount() {
        SurfaceRoughness face = face(2).roughness();

        assertThat(face.raAt(millimetres(0)).to(Units.MICROMETRE)).isCloseTo(3.6, within(1e-9));
        assertThat(face.rzAt(millimetres(0)).to(Units.MICROMETRE)).isCloseTo(21.6, within(1e-9));
        assertThat(face.pzAt(millimetres(0)).to(Units.MICROMETRE)).isCloseTo(59.4, within(1e-9));
        double grain = Math.log(1.5);
        assertThat(face.raAt(millimetres(0)).relativeUncertainty()).isCloseTo(grain, within(1e-9));
        assertThat(face.rzAt(millimetres(0)).relativeUncertainty()).isCloseTo(Math.hypot(grain, 0.25), within(1e-9));
        assertThat(face.pzAt(millimetres(0)).relativeUncertainty())
                .isCloseTo(Math.sqrt(grain * grain + 0.09 + 0.0025), within(1e-9));
    }

    /** Ra in um of 180 um grains and a tube of 1 mm, by the formula of the model. */
    private static double raUm(double k, double a, double b, double ratio) {
        double beyond = ratio - 0.52;
        double groove = (beyond + Math.hypot(beyond, 0.05)) / 2 - (-0.52 + Math.hypot(0.52, 0.05)) / 2;
        return k * 180 * (1 + a * ratio) + b * 1000 * groove;
    }

    private static double change(double above, double below) {
        return Math.log(above / below) / 2;
    }

    @ParameterizedTest
    @CsvSource({"1.1, 12", "1.1, 4", "3, 12", "3, 6"})
    void downTheFaceEveryNumberAddsToTheDoubt(double index, double depthMm) {
        CutSurface face = face(index);
        double x = depthMm / (12 * index);
        double byDepth = Math.exp(face.kerf().separationDepth().relativeUncertainty());
        Estimate<?> ra = face.roughness().raAt(millimetres(depthMm));

        assertThat(ra.si() * 1e6).isCloseTo(raUm(0.02, 1, 0.1, x), within(1e-6));
        assertThat(face.roughness().raSi(depthMm / 1000)).isCloseTo(ra.si(), within(1e-15));
        double[] changes = {
            change(raUm(0.03, 1, 0.1, x), raUm(0.02 / 1.5, 1, 0.1, x)),
            change(raUm(0.02, 2, 0.1, x), raUm(0.02, 0.5, 0.1, x)),
            change(raUm(0.02, 1, 0.2, x), raUm(0.02, 1, 0.05, x)),
            change(raUm(0.02, 1, 0.1, x * byDepth), raUm(0.02, 1, 0.1, x / byDepth)),
        };
        assertThat(ra.relativeUncertainty())
                .isCloseTo(Math.sqrt(Arrays.stream(changes).map(c -> c * c).sum()), within(1e-9));
    }

    @Test
    void theSmoothZoneEndsAtAboutHalfOfTheSeparationDepth() {
        CutSurface fast = face(1.5);
        assertThat(fast.roughness().smoothZone().to(Units.MILLIMETRE)).isCloseTo(0.52 * 18, within(1e-6));
        assertThat(fast.roughness().smoothZone().relativeUncertainty())
                .isCloseTo(fast.kerf().separationDepth().relativeUncertainty(), within(1e-12));
        // from 1/0.52 = 1.92 on, the whole face is smooth
        assertThat(face(1.93).roughness().smoothZone().to(Units.MILLIMETRE)).isCloseTo(12, within(1e-12));
        assertThat(face(1.93).roughness().smoothZone().standardUncertaintySi()).isZero();
        assertThat(face(1.92).roughness().smoothZone().to(Units.MILLIMETRE)).isLessThan(12);
    }

    @Test
    void depthsLieOnTheFace() {
        SurfaceRoughness face = face(2).roughness();

        assertThatThrownBy(() -> face.raAt(millimetres(12.1)))
                .isInstanceOf(DomainException.class)
                .hasMessageContaining("depth is 12.1 mm")
                .hasMessageContaining("the thickness of the workpiece");
        assertThatThrownBy(() -> face.raSi(-1e-6)).isInstanceOf(DomainException.class);
    }

    @Test
    void cautionsSayWhatIsAssumedAndNothingElse() {
        RoughnessModel fitted = RoughnessModel.standard()
                .fitted(0.02, 0.1, 0.1, 0.1, Evidence.of(EvidenceGrade.FITTED, Source.of("faces of Hollow Ridge")));
        CutSurface own = MODEL.withRoughness(fitted)
                .surface(JET, PLATE, FEEDS, FEEDS.feed(JET, PLATE, 2).value());

        assertThat(codes(face(2).roughness().raAtExit().cautions()))
                .contains("roughness-not-fitted")
                .doesNotContain("kerf-not-fitted");
        assertThat(codes(own.roughness().raAtExit().cautions())).doesNotContain("roughness-not-fitted");
        assertThat(own.cautions()).doesNotHaveDuplicates().contains(Iso9013.byAgreement());
        assertThat(codes(face(2).cautions()))
                .doesNotHaveDuplicates()
                .contains(
                        "kerf-not-fitted",
                        "roughness-not-fitted",
                        Iso9013.byAgreement().code());
    }

    @Test
    void facesDescribeThemselves() {
        CutSurface face = face(2);

        assertThat(face.describe())
                .containsKeys("kerf", "roughness", "grade", "perpendicularity", "profile_height")
                .containsEntry("type", "cut face");
        assertThat(face.toString())
                .startsWith("face of a ")
                .contains(face.kerf().toString());
        assertThat(face.roughness().describe())
                .containsEntry("thickness_m", 0.012)
                .containsEntry("ra_at_entry_m", face.roughness().raSi(0))
                .containsKeys("separation_depth_m", "smooth_zone_m", "ra_at_exit");
        assertThat(face.roughness().toString()).contains("Ra 3.6").contains("at the entry to ");
        assertThat(face.quality().describe())
                .containsEntry("none", face.quality().none())
                .containsEntry("very_fine", face.quality().probabilities().get(CutQuality.VERY_FINE))
                .containsKeys("index", "very_coarse", "coarse", "medium", "fine");
        assertThat(face.quality().toString()).startsWith("coarse at index 2");
        assertThat(QualityProbabilities.of(Estimate.of(Kind.RATIO, 0.5, 0.1), QualityIndexTable.standard())
                        .toString())
                .startsWith("no grade at index 0.5");
        assertThat(MODEL.toString())
                .startsWith("face model of ")
                .contains(RoughnessModel.standard().toString());
        assertThat(RoughnessModel.standard()).hasToString("roughness model, Ra 0.02 grains at the entry");
    }

    @Test
    void aDemandTellsEachOfItsItems() {
        ValueContract.of(() -> FaceDemand.none().withTaper(degrees(1)))
                .differs("nothing", FaceDemand.none())
                .differs("another taper", FaceDemand.none().withTaper(degrees(2)))
                .differs("grade", FaceDemand.none().withTaper(degrees(1)).withQuality(CutQuality.FINE))
                .differs("roughness", FaceDemand.none().withTaper(degrees(1)).withRoughness(micrometres(5)))
                .differs("range", FaceDemand.none().withPerpendicularityRange(1))
                .differs("height", FaceDemand.none().withProfileHeightRange(1))
                .says("face demand", "TAPER")
                .check();
        assertThat(Arrays.stream(FaceDemand.Item.values()).map(FaceDemand.Item::words))
                .doesNotHaveDuplicates()
                .contains("separation", "face grade", "taper per side", "lag error on an arc");
        assertThat(FaceDemand.none().withTaper(degrees(3)).withTaper(degrees(1)))
                .isEqualTo(FaceDemand.none().withTaper(degrees(1)));
        assertThatThrownBy(() -> FaceDemand.none().withProfileHeightRange(5))
                .hasMessageContaining("range of profile height is 5");
        assertThatThrownBy(() -> FaceDemand.none().withPerpendicularityRange(0))
                .hasMessageContaining("range of perpendicularity is 0");
    }

    /** Zeng and Kim: feed goes as the depth to the power of -1.15, so a doubt of the depth counts 1.15 times in the feed. */
    @Test
    void theDoubtOfTheDepthGoesIntoTheFeed() {
        FaceDemand demand =
                FaceDemand.none().withArc(ArcTolerance.onRadius(millimetres(5)).within(millimetres(0.02)));
        Estimate<?> feed = MODEL.fastestFeed(JET, PLATE, FEEDS, demand).feed().orElseThrow();

        assertThat(feed.relativeUncertainty())
                .isCloseTo(
                        Math.hypot(
                                FEEDS.relativeUncertainty(PLATE.material()),
                                1.15 * LagModel.standard().relativeUncertainty()),
                        within(1e-6));
    }

    @Test
    void theFastestFeedSaysWhatGoverns() {
        FastestFeed square =
                MODEL.fastestFeed(JET, PLATE, FEEDS, FaceDemand.none().withTaper(degrees(0.1)));
        FastestFeed never =
                MODEL.fastestFeed(JET, PLATE, FEEDS, FaceDemand.none().withRoughness(micrometres(1)));

        assertThat(square.toString()).endsWith(", governed by taper per side");
        assertThat(never).hasToString("out of reach: roughness at the exit");
        assertThat(square.describe())
                .containsKeys("governing", "feed", "limit_by_separation", "limit_by_taper_per_side");
        assertThat(never.describe()).doesNotContainKey("feed");
    }

    @Test
    void aLenientRoughnessAsksOnlyThatTheJetCutsThrough() {
        RoughnessModel model = RoughnessModel.standard();

        assertThat(model.separationDepthForRaSi(JET, PLATE, 0.012, 1e-3)
                        .orElseThrow()
                        .si())
                .isCloseTo(0.012, within(1e-15));
        assertThat(model.separationDepthForRaSi(JET, PLATE, 0.012, 3.6e-6)).isEmpty();
        Estimate<?> depth =
                model.separationDepthForRaSi(JET, PLATE, 0.012, 10e-6).orElseThrow();
        assertThat(raUm(0.02, 1, 0.1, 0.012 / depth.si())).isCloseTo(10, within(1e-6));
        // k and b within factors of 1.5 and 2: the depth is known to some tenths
        assertThat(depth.relativeUncertainty()).isBetween(0.05, 0.5);
        assertThatThrownBy(() -> model.separationDepthForRaSi(JET, PLATE, 0.0121, 10e-6))
                .isInstanceOf(DomainException.class);
    }

    @Test
    void whatFacesDoNotDetermineIsRefused() {
        Evidence own = Evidence.of(EvidenceGrade.FITTED, Source.of("faces of Hollow Ridge"));

        assertThatThrownBy(() -> RoughnessModel.standard().fitted(0.02, 5, 0.1, 0.1, own))
                .isInstanceOf(DomainException.class)
                .hasMessageContaining("relative uncertainty of the entry texture");
        assertThatThrownBy(() -> RoughnessModel.standard().fitted(0.02, 0.1, 0.1, 5, own))
                .isInstanceOf(DomainException.class)
                .hasMessageContaining("relative uncertainty of the growth of the grooves");
        assertThat(RoughnessModel.standard().fitted(0.03, 0.1, 0.2, 0.3, own).relative())
                .isEqualTo(new RoughnessNumbers(0.1, Math.log(2), 0.3, 0.25, 0.3, 0.05));
    }

    @Test
    void aFitKeepsItsOwnErrors() {
        RoughnessMeasurement line = RoughnessMeasurement.of(JET, millimetres(20))
                .withDepths(QuantityArray.of(Kind.LENGTH, new double[] {1, 4, 8, 12, 16, 20}, Units.MILLIMETRE))
                .withRa(QuantityArray.of(Kind.LENGTH, new double[] {3.1, 3.5, 4.2, 12, 30, 45}, Units.MICROMETRE));
        RoughnessFit fit = RoughnessFit.of(List.of(line));
        String grain = "Ra at the entry over the mean grain";
        String groove = "growth of the grooves over the bore";

        assertThat(fit.model().relative().textureRatio())
                .isCloseTo(fit.fit().standardError(grain) / fit.model().textureRatio(), within(1e-12))
                .isBetween(0.001, 0.3);
        assertThat(fit.model().relative().grooveGrowth())
                .isCloseTo(fit.fit().standardError(groove) / fit.model().striationGrowth(), within(1e-12))
                .isBetween(0.001, 0.3);
        assertThat(fit.toString()).isEqualTo(fit.fit().toString()).isNotBlank();
        assertThat(fit.describe()).containsEntry("type", "roughness fit").containsKey("fit");
        assertThat(fit.model().evidence().grade()).isEqualTo(EvidenceGrade.FITTED);
    }

    @Test
    void measuredLinesAreChecked() {
        RoughnessMeasurement line = RoughnessMeasurement.of(JET, millimetres(20));

        assertThatThrownBy(() -> line.withDepths(QuantityArray.of(Kind.LENGTH, new double[] {21}, Units.MILLIMETRE)))
                .isInstanceOf(DomainException.class)
                .hasMessageContaining("depth on the face is 21 mm");
        assertThatThrownBy(() -> line.withRa(QuantityArray.of(Kind.LENGTH, new double[] {0}, Units.MICROMETRE)))
                .isInstanceOf(DomainException.class)
                .hasMessageContaining("roughness Ra is 0 um");
        assertThatThrownBy(() -> RoughnessFit.of(
                        List.of(line.withRa(QuantityArray.of(Kind.LENGTH, new double[] {5}, Units.MICROMETRE)))))
                .hasMessageContaining("0 depths on the face, but 1 roughnesses");
    }

    /** Two readings of one index, weighted by the inverse squares of their doubts, on logarithms. */
    @Test
    void readingsAreWeightedByTheirDoubt() {
        double lagDoubt = LagModel.standard().relativeUncertainty();
        double lagMm = LagModel.standard().coefficient() * 30 / 2.5;
        MeasuredSurface face = MeasuredSurface.ofThickness(millimetres(30))
                .withSmoothZone(millimetres(0.52 * 1.5 * 30))
                .withExitLag(millimetres(lagMm), LagModel.standard());
        double zone = 1 / (0.15 * 0.15);
        double lag = 1 / (lagDoubt * lagDoubt);

        assertThat(face.index().si())
                .isCloseTo(Math.exp((zone * Math.log(1.5) + lag * Math.log(2.5)) / (zone + lag)), within(1e-9));
        assertThat(face.index().relativeUncertainty()).isCloseTo(1 / Math.sqrt(zone + lag), within(1e-9));
        assertThat(face).hasToString("face of 0.03 m with 2 readings");
        assertThatThrownBy(() -> MeasuredSurface.ofThickness(millimetres(30)).index())
                .isInstanceOf(IllegalStateException.class)
                .hasMessageContaining("has no reading");
    }

    private static final String HEADING = "level,measure,above_thickness,to_thickness,constant,per_thickness\n";

    @Test
    void limitsOfAScaleHoldUpToTheirEnds() {
        QualityScale scale = QualityScale.parse(
                HEADING + "ridge-a,roughness-ra,5 mm,10 mm,4 um,0\nridge-b,roughness-ra,5 mm,10 mm,8 um,0.001\n");

        assertThat(scale.forThickness(millimetres(10)).level(FaceMeasure.ROUGHNESS_RA, micrometres(4)))
                .contains("ridge-a");
        assertThat(scale.forThickness(millimetres(5)).level(FaceMeasure.ROUGHNESS_RA, micrometres(1)))
                .isEmpty();
        assertThat(scale.forThickness(millimetres(10.001)).level(FaceMeasure.ROUGHNESS_RA, micrometres(1)))
                .isEmpty();
        Map<String, Double> odds = scale.forThickness(millimetres(10))
                .probabilities(FaceMeasure.ROUGHNESS_RA, Estimate.of(Kind.LENGTH, 8e-6, 4e-6));
        // normal table: below 4 um, one deviation under the middle; below 8 + 10 um, two and a half above
        assertThat(odds.get("ridge-a")).isCloseTo(0.158655, within(1e-6));
        assertThat(odds.get("ridge-b")).isCloseTo(0.993790 - 0.158655, within(2e-6));
        assertThat(scale).hasToString("scale of 2 limits");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '~',
            value = {
                "~~ | line 1, column 1: a scale of face levels starts with the columns",
                "~# a\n\nlevels\n~ | line 3, column 1: a scale of face levels starts with the columns",
            })
    void aScaleStartsWithItsColumns(String text, String message) {
        assertThatThrownBy(() -> QualityScale.parse(text))
                .isInstanceOf(TextException.class)
                .hasMessageStartingWith(message);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "a,roughness-ra,0 mm,9 mm,4 um | line 2, column 1: the row has 5 cells, not the 6",
                ",roughness-ra,0 mm,9 mm,4 um,0 | line 2, column 1: the level has no name",
                "a,roughness-ra,0 mm,9 mm,-4 um,0 | line 2, column 26: constant is -0.004 mm",
                "a,roughness-ra,0 mm,9 mm,4 um,NaN | line 2, column 31: per_thickness \"NaN\" is no number",
                "a,roughness-ra,0 mm,9 mm,4 um,-1 | line 2, column 31: per_thickness is -1",
                "a,roughness-ra,0 mm,9 mm,4 um,1e101 | line 2, column 31: per_thickness is larger than 1e100",
            })
    void rowsOfAScaleAreChecked(String row, String message) {
        String text = HEADING + (row.startsWith(",") ? "\"\"" + row : row);

        assertThatThrownBy(() -> QualityScale.parse(text))
                .isInstanceOf(TextException.class)
                .hasMessageContaining(message.substring(message.indexOf(": ") + 2))
                .hasMessageStartingWith("line 2, column ");
        assertThatThrownBy(() -> QualityScale.parse(HEADING)).hasMessageContaining("the scale has no level");
    }

    @Test
    void theStandardIsThatOfAThickness() {
        ValueContract.of(() -> Iso9013.forThickness(millimetres(10)))
                .differs("thickness", Iso9013.forThickness(millimetres(11)))
                .says("ISO 9013 at 10")
                .check();
        assertThat(Iso9013.forThickness(Measures.metres(0.01)))
                .hasSameHashCodeAs(Iso9013.forThickness(millimetres(10)));
    }

    /** Normal spread about the limit of range 2, 40 + 0.8 a = 48 um (ISO 9013) at 10 mm. */
    @Test
    void oddsOfProfileHeightsAddUp() {
        Iso9013 standard = Iso9013.forThickness(millimetres(10));
        double limit = Kind.LENGTH.si(standard.profileHeightLimit(2));
        List<Double> odds = standard.profileHeightProbabilities(Estimate.of(Kind.LENGTH, limit, limit / 10));

        assertThat(odds).hasSize(Iso9013.profileHeightRanges() + 1);
        assertThat(odds.get(0) + odds.get(1)).isCloseTo(0.5, within(1e-9));
        assertThat(odds.stream().mapToDouble(Double::doubleValue).sum()).isCloseTo(1, within(1e-12));
    }
}

package dev.waterjet.kerf;

import static dev.waterjet.kerf.Kerfs.FEEDS;
import static dev.waterjet.kerf.Kerfs.JET;
import static dev.waterjet.kerf.Kerfs.MODEL;
import static dev.waterjet.kerf.Kerfs.OWN;
import static dev.waterjet.kerf.Kerfs.jet;
import static dev.waterjet.kerf.Kerfs.steel;
import static dev.waterjet.measure.Measures.degrees;
import static dev.waterjet.measure.Measures.millimetres;
import static dev.waterjet.measure.Measures.millimetresPerMinute;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.Refusals;
import dev.waterjet.ValueContract;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.evidence.EvidenceGrade;
import dev.waterjet.feed.CutConditions;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Units;
import java.util.function.ToDoubleFunction;
import javax.measure.Quantity;
import javax.measure.quantity.Angle;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class KerfModelTest {

    private static final KerfModel STRAIGHT = MODEL.withHalfAngle(degrees(0), 0, MODEL.evidence());

    @Test
    void atTheFeedRateOfZeroTaperTheWallsAreParallel() {
        for (double thickness : new double[] {1, 6, 25, 100}) {
            var feed = MODEL.feedOfZeroTaper(steel(thickness)).orElseThrow();
            Kerf kerf = MODEL.kerf(steel(thickness), feed.value());

            assertThat(kerf.taperPerSide().si()).isCloseTo(0, within(1e-9));
            assertThat(feed.relativeUncertainty()).isGreaterThan(0.15);
        }
        assertThat(STRAIGHT.feedOfZeroTaper(steel(10))).isEmpty();
    }

    /**
     * Appl. Sci. 11 (2021) 4925: lowest taper of 304L 0.825 degrees on curves, 0.916 on straights. Conditions assumed here,
     * since only the abstract is known: 380 MPa, orifice 0.33 mm, tube 1 mm, 400 g/min, stand-off 2 mm, plate 8 mm, index 3,
     * taper given per side.
     */
    @Test
    void taperOf304lLiesInTheInterval() {
        CutConditions cut = Kerfs.cut(JET, "stainless-304", 8);
        Kerf kerf = MODEL.kerf(cut, cut.feed(3).value());

        holds(kerf.taperPerSide(), degrees(0.825), degrees(0.916));
    }

    /**
     * Materials 14 (2021) 7746: 1.72 degrees in Ti-6Al-4V at 150 mm/min, 500 g/min, stand-off 1.5 mm. Assumed here: 300 MPa,
     * orifice 0.3 mm, tube 0.9 mm, plate 6 mm, cut as titanium, taper given per side.
     */
    @Test
    void taperOfTitaniumLiesInTheInterval() {
        CutConditions cut = Kerfs.cut(jet(0.3, 0.9, 1.5, 500, 300), "titanium", 6);
        Kerf kerf = MODEL.kerf(cut, millimetresPerMinute(150));

        holds(kerf.taperPerSide(), degrees(1.72));
    }

    /** Aluminium at its best speed: a bevel of about a quarter of the jet diameter, 0.2 mm (textbook). Assumed: index 2. */
    @Test
    void bevelOfAluminiumLiesInTheInterval() {
        CutConditions cut = Kerfs.cut(jet(0.25, 0.8, 2, 300, 380), "aluminium", 10);
        Kerf kerf = MODEL.kerf(cut, cut.feed(2).value());

        holds(kerf.taperPerSide(), degrees(Math.toDegrees(Math.atan(0.2 / 10))));
    }

    @SafeVarargs
    private static void holds(Estimate<Angle> taper, Quantity<Angle>... published) {
        for (Quantity<Angle> value : published) {
            assertThat(Kind.ANGLE.si(value))
                    .isBetween(Kind.ANGLE.si(taper.lower(0.95)), Kind.ANGLE.si(taper.upper(0.95)));
        }
        assertThat(taper.to(Units.DEGREE)).isBetween(0.3, 2.5);
        assertThat(taper.standardUncertaintySi()).isLessThan(Math.toRadians(0.85));
    }

    /** Numbers that are themselves moved: half of x exp(r) - x exp(-r) is x sinh(r); JCGM 100, equation 13, for the sum. */
    @Test
    void uncertaintiesAddAsTheGuideSays() {
        KerfShape shape = new KerfShape(0.010, 0.030, new DoseExcess.OfPower(1.15), 0.001, 0.002, 0.27, 0.02);
        KerfSpread spread = new KerfSpread(0.1, 0.2, 0.4, 0.5, 0);
        double depth = 0.030 * Math.sinh(0.1);
        double dose = 0.27 * Math.sinh(0.2);
        double slope = 0.02 * Math.sinh(0.4);

        assertThat(spread.of(shape, KerfShape::separationDepthM)).isCloseTo(depth, within(1e-15));
        assertThat(spread.of(shape, KerfShape::doseRatio)).isCloseTo(dose, within(1e-15));
        assertThat(spread.of(shape, KerfShape::spreadSlope)).isCloseTo(slope, within(1e-15));
        ToDoubleFunction<KerfShape> sum = at -> at.separationDepthM() + at.doseRatio() + 5 * at.spreadSlope();
        assertThat(spread.of(shape, sum))
                .isCloseTo(
                        Math.sqrt(depth * depth + dose * dose + 25 * slope * slope + 2 * 0.5 * dose * 5 * slope),
                        within(1e-12));
        assertThat(spread.of(shape, KerfShape::thicknessM)).isZero();
    }

    @ParameterizedTest
    @CsvSource({"5, 0, 0", "0, 5, 0", "0, 0, 5"})
    void aKerfOfNumbersThatAreNotKnownIsRefused(double depth, double dose, double slope) {
        assertThat(Refusals.of(() -> new KerfSpread(depth, dose, slope, 0, 0))).isEqualTo("must-be-at-most");
    }

    @Test
    void theMinimumDepthJustMeetsALimit() {
        CutConditions cut = steel(10);
        var taper = MODEL.separationDepthForTaper(cut, degrees(0.7)).orElseThrow();
        assertThat(MODEL.kerf(cut, taper).taperPerSide().to(Units.DEGREE)).isCloseTo(0.7, within(1e-8));
        var wall = MODEL.separationDepthForDeviation(cut, millimetres(0.6), millimetres(0.08))
                .orElseThrow();
        assertThat(MODEL.kerf(cut, wall).wallDeviation(millimetres(0.6)).to(Units.MILLIMETRE))
                .isCloseTo(0.08, within(1e-7));
        // a fifth of uncertainty in the spread of the dose, a half in the angle
        assertThat(taper.relativeUncertainty()).isBetween(0.1, 2.0);
        assertThat(wall.relativeUncertainty()).isBetween(0.1, 2.0);
    }

    @Test
    void aTaperBelowZeroIsReachedByASlowerCut() {
        CutConditions cut = steel(10);
        var depth = MODEL.separationDepthForTaper(cut, degrees(-0.3)).orElseThrow();

        assertThat(MODEL.kerf(cut, depth).taperPerSide().to(Units.DEGREE)).isCloseTo(-0.3, within(1e-8));
        assertThat(depth.si())
                .isGreaterThan(MODEL.separationDepthForTaper(cut, degrees(0.3))
                        .orElseThrow()
                        .si());
        // no kerf widens by more than the jet diverges
        assertThat(MODEL.separationDepthForTaper(cut, degrees(-1.39))).isEmpty();
    }

    @Test
    void aSlowerCutLeavesTheLimitOfTheDeviationAgain() {
        CutConditions cut = steel(10);
        var least = MODEL.separationDepthForDeviation(cut, millimetres(0.6), millimetres(0.08))
                .orElseThrow();
        var most = MODEL.maximumSeparationDepthForDeviation(cut, millimetres(0.6), millimetres(0.08))
                .orElseThrow();

        assertThat(most.si()).isGreaterThan(least.si());
        assertThat(MODEL.kerf(cut, most).wallDeviation(millimetres(0.6)).to(Units.MILLIMETRE))
                .isCloseTo(0.08, within(1e-7));
        // the jet diverges by 0.21 mm over the height between the edges
        assertThat(MODEL.maximumSeparationDepthForDeviation(cut, millimetres(0.6), millimetres(0.3)))
                .isEmpty();
    }

    @Test
    void limitsOutOfReachHaveNoDepth() {
        assertThat(MODEL.separationDepthForTaper(steel(10), degrees(80))
                        .orElseThrow()
                        .si())
                .isEqualTo(0.010);
        assertThat(STRAIGHT.separationDepthForTaper(steel(10), degrees(0))).isEmpty();
        assertThat(Refusals.of(() -> MODEL.separationDepthForDeviation(steel(10), millimetres(5), millimetres(0.1))))
                .isEqualTo("must-be-at-most");
    }

    /** ln(u_sep(h)/u) = y_J(h)^2 / (2 s^2 ((y_J(h)/y_J(0))^8 - 1)^(1/4)), in mm: bore 1, stand-off 2, plate 10. */
    private static double logFeed(double dose, double slope) {
        double entry = 0.5 + 2 * slope;
        double exit = 0.5 + 12 * slope;
        return exit * exit / (2 * dose * dose * Math.pow(Math.pow(exit / entry, 8) - 1, 0.25));
    }

    @Test
    void theFeedRateOfZeroTaperHasTheUncertaintyOfBothNumbers() {
        KerfModel model = MODEL.withDoseSpread(0.27, 0.02, OWN).withHalfAngle(degrees(2), 0.03, OWN);
        var feed = model.feedOfZeroTaper(steel(10)).orElseThrow();
        double slope = Math.tan(Math.toRadians(2));
        double byDose = (logFeed(0.27 * Math.exp(0.02), slope) - logFeed(0.27 / Math.exp(0.02), slope)) / 2;
        double bySlope = (logFeed(0.27, slope * Math.exp(0.03)) - logFeed(0.27, slope / Math.exp(0.03))) / 2;

        assertThat(Math.log(steel(10).feed(1).si() / feed.si())).isCloseTo(logFeed(0.27, slope), within(1e-6));
        assertThat(feed.relativeUncertainty())
                .isCloseTo(
                        Math.hypot(FEEDS.relativeUncertainty(steel(10).material()), Math.hypot(byDose, bySlope)),
                        within(1e-6));
    }

    @Test
    void halfWidthsAreThoseOfTheKerf() {
        Kerf kerf = Kerfs.kerf(10, 3);

        for (double depth : new double[] {0, 0.002, 0.010}) {
            assertThat(MODEL.halfWidthSi(steel(10), 0.030, depth)).isEqualTo(kerf.halfWidthSi(depth));
        }
        assertThat(MODEL.halfWidthSi(steel(10), 0.030, 0.030)).isZero();
    }

    @Test
    void aModelIsItsNumbersAndEvidence() {
        ValueContract.of(() -> MODEL.withDoseSpread(0.3, 0.1, OWN))
                .has("dose", KerfModel::doseRatio, 0.3)
                .has("correlation", model -> model.spread().correlation(), 0.0)
                .has("evidence", model -> model.evidence().grade(), EvidenceGrade.FITTED)
                .has("lag", KerfModel::lagModel, LagModel.standard())
                .change("angle", model -> model.withHalfAngle(degrees(2), 0.5, OWN), KerfModel::halfAngle, degrees(2))
                .differs("uncertainty of the dose", MODEL.withDoseSpread(0.3, 0.2, OWN))
                .differs("correlation", MODEL.withDoseSpread(0.3, 0.1, OWN).withCorrelation(0.5))
                .differs("scatter", MODEL.withDoseSpread(0.3, 0.1, OWN).withWidthScatter(millimetres(0.1)))
                .differs("evidence", MODEL.withDoseSpread(0.3, 0.1, MODEL.evidence()))
                .check();
        assertThat(Refusals.of(() -> MODEL.withDoseSpread(0, 0.1, OWN))).isEqualTo("must-be-above");
        assertThat(Refusals.of(() -> MODEL.withHalfAngle(degrees(46), 0.1, OWN)))
                .isEqualTo("must-be-at-most");
        assertThat(Refusals.of(() -> MODEL.withCorrelation(1.1))).isEqualTo("must-be-at-most");
        assertThat(Refusals.of(() -> MODEL.withWidthScatter(millimetres(-1)))).isEqualTo("must-be-at-least");
    }
}

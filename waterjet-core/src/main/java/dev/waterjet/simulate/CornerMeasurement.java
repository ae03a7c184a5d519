package dev.waterjet.simulate;

import dev.waterjet.calibrate.ArcMeasurement;
import dev.waterjet.calibrate.FittedModel;
import dev.waterjet.evidence.Evidence;
import dev.waterjet.evidence.EvidenceGrade;
import dev.waterjet.evidence.Source;
import dev.waterjet.feed.CutConditions;
import dev.waterjet.fit.Fit;
import dev.waterjet.fit.LeastSquares;
import dev.waterjet.kerf.CutFront;
import dev.waterjet.kerf.KerfModel;
import dev.waterjet.kerf.KerfProfile;
import dev.waterjet.kerf.LagGeometry;
import dev.waterjet.kerf.LagModel;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.NoSolutionException;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.Serializable;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Angle;
import javax.measure.quantity.Length;
import javax.measure.quantity.Speed;
import org.apache.commons.math3.analysis.interpolation.SplineInterpolator;
import org.apache.commons.math3.analysis.polynomials.PolynomialSplineFunction;

/**
 * Re-entrant corner of a test cut, cut upright and measured at the bottom side. A list of them gives the coefficient of a lag
 * model, and decides between the geometric models of the lag.
 *
 * <pre>{@code
 * CornerMeasurement corner = CornerMeasurement.of(cut, millimetresPerMinute(90), degrees(90))
 *         .withDeviation(millimetres(-0.16));
 * ArcMeasurement.Result result = CornerMeasurement.fit(
 *         List.of(
 *                 corner,
 *                 corner.withDeviation(millimetres(-0.13)),
 *                 corner.withDeviation(millimetres(-0.18))),
 *         KerfModel.standard());
 * }</pre>
 *
 * <p>Each corner is simulated for many coefficients, as {@link CutSimulator} does; nothing is fitted to a closed formula. Give
 * the kerf model that was fitted to widths of the same head.
 *
 * @param cut conditions of the cut
 * @param feed feed rate along both legs, at most the one that just separates the workpiece
 * @param cornerFeed feed rate within the zone at the corner, above 0; that of the legs where it is not slowed
 * @param zone length of that zone on each side of the corner, 0 or more
 * @param turn turn of the tool path at the corner, 5 to 175 degrees
 * @param deviation deviation of the bottom edge of the part with the largest size near the corner, less that of its straight
 *     bottom edge: below 0 where the part is gouged, above 0 where material is left
 */
public record CornerMeasurement(
        CutConditions cut,
        Quantity<Speed> feed,
        Quantity<Speed> cornerFeed,
        Quantity<Length> zone,
        Quantity<Angle> turn,
        Quantity<Length> deviation)
        implements Described, Serializable {

    private static final String COEFFICIENT = "lag coefficient";
    private static final int MIN_CORNERS = 3;
    private static final double MIN_TURN_RAD = Math.toRadians(5);
    private static final double MAX_DEVIATION_M = 1;

    /** Coefficients that are simulated: from a fifth to five times that of the standard model. */
    private static final int TRIED = 17;

    private static final double RANGE = 5;

    /**
     * Checks the components.
     *
     * @throws dev.waterjet.measure.DomainException if a quantity is out of its range
     * @param cut conditions of the cut
     * @param feed feed rate along both legs
     * @param cornerFeed feed rate within the zone at the corner, above 0
     * @param zone length of that zone on each side of the corner, 0 or more
     * @param turn turn of the tool path at the corner, 5 to 175 degrees
     * @param deviation largest deviation of the bottom edge near the corner, less that of its straight bottom edge
     */
    public CornerMeasurement {
        Objects.requireNonNull(cornerFeed, "cornerFeed");
        Objects.requireNonNull(cut, "cut");
        Objects.requireNonNull(deviation, "deviation");
        Objects.requireNonNull(feed, "feed");
        Objects.requireNonNull(turn, "turn");
        Objects.requireNonNull(zone, "zone");
        double feedSi = Require.positive("feed rate", Kind.SPEED.si(feed), Units.MILLIMETRE_PER_MINUTE);
        feed = Kind.SPEED.of(Require.atMost(
                "feed rate", feedSi, cut.feedSi(1), Units.MILLIMETRE_PER_MINUTE, "that separates the workpiece"));
        cornerFeed = Kind.SPEED.of(
                Require.positive("feed rate at the corner", Kind.SPEED.si(cornerFeed), Units.MILLIMETRE_PER_MINUTE));
        zone = Kind.LENGTH.of(Require.notNegative("length of the zone", Kind.LENGTH.si(zone), Units.MILLIMETRE));
        turn = Kind.ANGLE.of(Require.between(
                "turn of the corner", Kind.ANGLE.si(turn), MIN_TURN_RAD, Math.PI - MIN_TURN_RAD, Units.DEGREE, ""));
        deviation = Kind.LENGTH.of(Require.between(
                "deviation of the bottom edge",
                Kind.LENGTH.si(deviation),
                -MAX_DEVIATION_M,
                MAX_DEVIATION_M,
                Units.MILLIMETRE,
                ""));
    }

    /**
     * Returns a corner at one feed rate, without deviation.
     *
     * @param cut conditions of the cut
     * @param feed feed rate, at most the one that just separates the workpiece
     * @param turn turn of the tool path at the corner, 5 to 175 degrees
     * @return the corner
     */
    public static CornerMeasurement of(CutConditions cut, Quantity<Speed> feed, Quantity<Angle> turn) {
        return new CornerMeasurement(cut, feed, feed, Kind.LENGTH.of(0), turn, Kind.LENGTH.of(0));
    }

    /**
     * Returns this corner with another feed rate near it.
     *
     * @param cornerFeed feed rate within the zone, above 0
     * @param zone length of the zone on each side of the corner, 0 or more
     * @return the corner with that zone
     */
    public CornerMeasurement withZone(Quantity<Speed> cornerFeed, Quantity<Length> zone) {
        return new CornerMeasurement(cut, feed, cornerFeed, zone, turn, deviation);
    }

    /**
     * Returns this corner with its measured deviation.
     *
     * @param deviation largest deviation of the bottom edge near the corner, less that of its straight bottom edge
     * @return the corner with that deviation
     */
    public CornerMeasurement withDeviation(Quantity<Length> deviation) {
        return new CornerMeasurement(cut, feed, cornerFeed, zone, turn, deviation);
    }

    /**
     * Fits the coefficient of a lag model to corners by least squares of the deviations, in the geometric model that leaves the
     * smaller residuals. The relative uncertainty of the model is that of one more corner, {@code sqrt(n + 1)} times the standard
     * error of n corners.
     *
     * @param corners corners of one set-up, 3 or more
     * @param kerfModel kerf model of the head
     * @return geometric model and lag model; residuals are deviations in m
     * @throws NoSolutionException with code {@code too-few-corners}, or {@code corners-without-lag} if no lag from a fifth to five times
     *     that of the standard model explains the deviations
     */
    public static ArcMeasurement.Result fit(List<CornerMeasurement> corners, KerfModel kerfModel) {
        Objects.requireNonNull(corners, "corners");
        Objects.requireNonNull(kerfModel, "kerfModel");
        if (corners.size() < MIN_CORNERS) {
            throw new NoSolutionException(Message.of(
                            "too-few-corners",
                            "{corners} corners do not show how corners differ; measure at least {minimum}")
                    .with("corners", corners.size())
                    .with("minimum", MIN_CORNERS));
        }
        ArcMeasurement.Result best = null;
        for (LagGeometry geometry : List.of(LagGeometry.TANGENT, LagGeometry.TRACTRIX)) {
            ArcMeasurement.Result result = fit(corners, kerfModel, geometry);
            if (result != null && (best == null || misfit(result) < misfit(best))) {
                best = result;
            }
        }
        if (best == null) {
            throw new NoSolutionException(Message.of(
                            "corners-without-lag",
                            "no lag explains the deviations of {corners} corners; measure a faster cut, or take the"
                                    + " geometry that follows the path")
                    .with("corners", corners.size()));
        }
        return best;
    }

    private static double misfit(ArcMeasurement.Result result) {
        return result.lag().fit().residualDeviation();
    }

    private static ArcMeasurement.@org.jspecify.annotations.Nullable Result fit(
            List<CornerMeasurement> corners, KerfModel kerfModel, LagGeometry geometry) {
        List<PolynomialSplineFunction> predicted = corners.stream()
                .map(corner -> corner.deviations(kerfModel, geometry))
                .toList();
        Fit fit;
        try {
            fit = LeastSquares.of((i, numbers) -> at(predicted.get(i), Math.log(numbers[0])))
                    .withPositiveParameter(COEFFICIENT, LagModel.standard().coefficient())
                    .fit(corners.stream()
                            .mapToDouble(corner -> Kind.LENGTH.si(corner.deviation))
                            .toArray());
        } catch (NoSolutionException undetermined) {
            return null;
        }
        double relative = fit.standardError(COEFFICIENT) / fit.value(COEFFICIENT) * Math.sqrt(corners.size() + 1.0);
        double largest = Math.log(RANGE) - 1e-3;
        double beyond =
                Math.abs(Math.log(fit.value(COEFFICIENT) / LagModel.standard().coefficient()));
        if (!(relative < 1) || beyond > largest) {
            return null;
        }
        LagModel model = LagModel.of(
                fit.value(COEFFICIENT),
                relative,
                Evidence.of(
                        EvidenceGrade.FITTED, Source.of("corners of the user").at(corners.size() + " corners")));
        return new ArcMeasurement.Result(geometry, new FittedModel<>(model, fit));
    }

    private static double at(PolynomialSplineFunction function, double logarithm) {
        return function.isValidPoint(logarithm) ? function.value(logarithm) : Double.NaN;
    }

    /** Deviation over the logarithm of the coefficient: simulated, smooth between. */
    private PolynomialSplineFunction deviations(KerfModel kerfModel, LagGeometry geometry) {
        double standard = LagModel.standard().coefficient();
        double sign = Kind.LENGTH.si(deviation) > 0 ? 1 : -1;
        double[] logarithm = new double[TRIED];
        double[] deviations = new double[TRIED];
        for (int i = 0; i < TRIED; i++) {
            double factor = Math.pow(RANGE, 2.0 * i / (TRIED - 1) - 1);
            LagModel tried =
                    LagModel.of(standard * factor, 0, LagModel.standard().evidence());
            KerfProfile profile = KerfProfile.of(kerfModel, CutFront.of(tried, cut), cut.jet());
            double[] feeds = {Kind.SPEED.si(feed), Kind.SPEED.si(cornerFeed)};
            logarithm[i] = Math.log(standard * factor);
            deviations[i] = new CornerCut(profile, geometry, Kind.ANGLE.si(turn), feeds, Kind.LENGTH.si(zone))
                    .largest(cut.thicknessSi(), sign);
        }
        return new SplineInterpolator().interpolate(logarithm, deviations);
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("corner measurement")
                .put("cut", cut)
                .put("feed", Kind.SPEED, Kind.SPEED.si(feed))
                .put("corner_feed", Kind.SPEED, Kind.SPEED.si(cornerFeed))
                .put("zone", Kind.LENGTH, Kind.LENGTH.si(zone))
                .put("turn", Kind.ANGLE, Kind.ANGLE.si(turn))
                .put("deviation", Kind.LENGTH, Kind.LENGTH.si(deviation))
                .map();
    }

    @Override
    public String toString() {
        return "corner of " + QuantityText.forPeople(Kind.ANGLE, turn) + ", bottom edge off by "
                + QuantityText.forPeople(Kind.LENGTH, deviation);
    }
}

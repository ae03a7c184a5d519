package dev.waterjet.calibrate;

import dev.waterjet.evidence.Evidence;
import dev.waterjet.evidence.EvidenceGrade;
import dev.waterjet.evidence.Source;
import dev.waterjet.fit.Fit;
import dev.waterjet.fit.LeastSquares;
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
import javax.measure.quantity.Length;

/**
 * Disc or hole of a test cut, cut upright at one feed rate and measured at both sides of the plate. A list of them decides
 * between the geometric models of the lag and gives the coefficient of a lag model.
 *
 * <pre>{@code
 * ArcMeasurement disc = ArcMeasurement.of(millimetres(25), millimetres(75), millimetres(5.5))
 *         .withShift(millimetres(0.38));
 * ArcMeasurement.Result result = ArcMeasurement.fit(List.of(disc, second, third));
 * planner.withLagGeometry(result.geometry());
 * }</pre>
 *
 * <p>The shift is the radius of the bottom edge less that of the top edge, less the same difference where a straight edge
 * tapers: for a disc add the taper of one side in mm, for a hole subtract it. A lag L moves the front off a path of the radius R by
 * sqrt(R<sup>2</sup> + L<sup>2</sup>) - R outwards along the tangent, and by R - sqrt(R<sup>2</sup> - L<sup>2</sup>) inwards along a tractrix. That the
 * front runs a little faster on its larger circle is neglected. Derived.
 *
 * @param thickness thickness of the workpiece, above 0
 * @param separationDepth depth that the jet just separates at the feed rate of the cut, at least the thickness
 * @param radius radius of the tool path, above 0
 * @param shift radius of the bottom edge less that of the top edge, without the taper; above 0 where it lies outwards
 */
public record ArcMeasurement(
        Quantity<Length> thickness, Quantity<Length> separationDepth, Quantity<Length> radius, Quantity<Length> shift)
        implements Described, Serializable {

    private static final String COEFFICIENT = "lag coefficient";
    private static final int MIN_ARCS = 3;
    /** Standard errors by which the mean shift has to differ from zero. */
    private static final double CLEAR = 2;

    /**
     * Geometric model and lag model of measured arcs.
     *
     * @param geometry tangent where the bottom edges lie outwards, tractrix where they lie inwards
     * @param lag lag model with the fitted coefficient, and its fit; residuals are shifts in m
     */
    public record Result(LagGeometry geometry, FittedModel<LagModel> lag) implements Described {

        /**
         * Checks the components.
         *
         * @param geometry geometric model
         * @param lag lag model and its fit
         */
        public Result {
            Objects.requireNonNull(geometry, "geometry");
            Objects.requireNonNull(lag, "lag");
        }

        @Override
        public Map<String, Object> describe() {
            return Description.of("fit of arcs")
                    .put("geometry", geometry)
                    .put("lag", lag)
                    .map();
        }
    }

    /**
     * Checks the components.
     *
     * @throws dev.waterjet.measure.DomainException if a length is out of its range
     * @param thickness thickness of the workpiece, above 0
     * @param separationDepth depth that the jet just separates at the feed rate of the cut, at least the thickness
     * @param radius radius of the tool path, above 0
     * @param shift radius of the bottom edge less that of the top edge, without the taper
     */
    public ArcMeasurement {
        Objects.requireNonNull(radius, "radius");
        Objects.requireNonNull(separationDepth, "separationDepth");
        Objects.requireNonNull(shift, "shift");
        Objects.requireNonNull(thickness, "thickness");
        double thick = Require.positive("thickness", Kind.LENGTH.si(thickness), Units.MILLIMETRE);
        thickness = Kind.LENGTH.of(thick);
        separationDepth = Kind.LENGTH.of(
                Require.atLeast("separation depth", Kind.LENGTH.si(separationDepth), thick, Units.MILLIMETRE, ""));
        double path = Require.positive("radius of the tool path", Kind.LENGTH.si(radius), Units.MILLIMETRE);
        radius = Kind.LENGTH.of(path);
        shift = Kind.LENGTH.of(Require.between(
                "shift of the bottom edge", Kind.LENGTH.si(shift), -path, path, Units.MILLIMETRE, "the radius"));
    }

    /**
     * Returns an arc without shift.
     *
     * @param thickness thickness of the workpiece, above 0
     * @param separationDepth depth that the jet just separates at the feed rate of the cut, at least the thickness
     * @param radius radius of the tool path, above 0
     * @return the arc
     */
    public static ArcMeasurement of(
            Quantity<Length> thickness, Quantity<Length> separationDepth, Quantity<Length> radius) {
        Objects.requireNonNull(radius, "radius");
        Objects.requireNonNull(separationDepth, "separationDepth");
        Objects.requireNonNull(thickness, "thickness");
        return new ArcMeasurement(thickness, separationDepth, radius, Kind.LENGTH.of(0));
    }

    /**
     * Returns this arc with its measured shift.
     *
     * @param shift radius of the bottom edge less that of the top edge, without the taper; above 0 where it lies outwards
     * @return the arc with that shift
     */
    public ArcMeasurement withShift(Quantity<Length> shift) {
        Objects.requireNonNull(shift, "shift");
        return new ArcMeasurement(thickness, separationDepth, radius, shift);
    }

    /**
     * Fits the coefficient of a lag model to arcs, by least squares of the shifts. The sign of the shifts, weighted with the
     * shift that the standard model predicts, decides on the geometric model. The relative uncertainty of the model is that of one
     * more arc, {@code sqrt(n + 1)} times the standard error of n arcs.
     *
     * @param arcs arcs of one set-up, 3 or more
     * @return geometric model and lag model
     * @throws dev.waterjet.measure.NoSolutionException with code {@code too-few-arcs}, or {@code arcs-without-lag} if the shifts
     *     do not differ clearly from zero: the front then follows the path, or the arcs are too large to tell
     */
    public static Result fit(List<ArcMeasurement> arcs) {
        Objects.requireNonNull(arcs, "arcs");
        if (arcs.size() < MIN_ARCS) {
            throw new NoSolutionException(
                    Message.of("too-few-arcs", "{arcs} arcs do not show how arcs differ; measure at least {minimum}")
                            .with("arcs", arcs.size())
                            .with("minimum", MIN_ARCS));
        }
        LagGeometry geometry = geometry(arcs);
        double sign = sign(geometry);
        Fit fit = LeastSquares.of((i, numbers) -> sign
                        * geometry.arcErrorSi(
                                arcs.get(i).lag(numbers[0]), arcs.get(i).radiusSi()))
                .withPositiveParameter(COEFFICIENT, LagModel.standard().coefficient())
                .fit(arcs.stream().mapToDouble(arc -> Kind.LENGTH.si(arc.shift)).toArray());
        double relative = fit.standardError(COEFFICIENT) / fit.value(COEFFICIENT) * Math.sqrt(arcs.size() + 1.0);
        LagModel model = LagModel.of(
                fit.value(COEFFICIENT),
                relative,
                Evidence.of(
                        EvidenceGrade.FITTED,
                        Source.of("discs and holes of the user").at(arcs.size() + " arcs")));
        return new Result(geometry, new FittedModel<>(model, fit));
    }

    private static double sign(LagGeometry geometry) {
        return geometry == LagGeometry.TANGENT ? 1 : -1;
    }

    /** Slope of the shifts over those of the tangent and the standard model, through zero, with its standard error. */
    private static LagGeometry geometry(List<ArcMeasurement> arcs) {
        double coefficient = LagModel.standard().coefficient();
        double products = 0;
        double squares = 0;
        double shifts = 0;
        for (ArcMeasurement arc : arcs) {
            double expected = LagGeometry.TANGENT.arcErrorSi(arc.lag(coefficient), arc.radiusSi());
            double measured = Kind.LENGTH.si(arc.shift);
            products += expected * measured;
            squares += expected * expected;
            shifts += measured * measured;
        }
        double slope = products / squares;
        double variance = Math.max(0, shifts - slope * products) / (arcs.size() - 1.0) / squares;
        if (!(Math.abs(slope) > CLEAR * Math.sqrt(variance))) {
            throw new NoSolutionException(Message.of(
                            "arcs-without-lag",
                            "the shifts of {arcs} arcs do not differ clearly from zero; measure smaller arcs or a"
                                    + " faster cut, or take the geometry that follows the path")
                    .with("arcs", arcs.size()));
        }
        return slope > 0 ? LagGeometry.TANGENT : LagGeometry.TRACTRIX;
    }

    private double radiusSi() {
        return Kind.LENGTH.si(radius);
    }

    /** Lag at the exit with a coefficient. */
    private double lag(double coefficient) {
        double h = Kind.LENGTH.si(thickness);
        return coefficient * h * h / Kind.LENGTH.si(separationDepth);
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("arc measurement")
                .put("thickness", Kind.LENGTH, Kind.LENGTH.si(thickness))
                .put("separation_depth", Kind.LENGTH, Kind.LENGTH.si(separationDepth))
                .put("radius", Kind.LENGTH, radiusSi())
                .put("shift", Kind.LENGTH, Kind.LENGTH.si(shift))
                .map();
    }

    @Override
    public String toString() {
        return "arc of radius " + QuantityText.forPeople(Kind.LENGTH, radius) + ", bottom edge shifted by "
                + QuantityText.forPeople(Kind.LENGTH, shift);
    }
}

package dev.waterjet.calibrate;

import dev.waterjet.evidence.Evidence;
import dev.waterjet.evidence.EvidenceGrade;
import dev.waterjet.evidence.Source;
import dev.waterjet.fit.Fit;
import dev.waterjet.fit.LeastSquares;
import dev.waterjet.kerf.LagModel;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import javax.measure.Quantity;
import javax.measure.quantity.Length;

/**
 * Drag line of a test cut, read off its cut surface. A list of them gives the coefficient of a lag model.
 *
 * <pre>{@code
 * LagMeasurement line = LagMeasurement.of(millimetres(40))
 *         .withLags(QuantityArray.parse(Kind.LENGTH, "5, 10, 15, 20 mm"), QuantityArray.parse(Kind.LENGTH, "0.2, 0.8, 1.7, 3 mm"));
 * LagModel own = LagMeasurement.fit(List.of(line)).model();
 * }</pre>
 *
 * @param separationDepth depth that the jet just separates at the feed rate of the cut, above 0
 * @param depths depth below the top side at which each lag was read, from 0 to the separation depth
 * @param lags distance of the drag line there behind the entry, each 0 or more
 */
public record LagMeasurement(Quantity<Length> separationDepth, QuantityArray<Length> depths, QuantityArray<Length> lags)
        implements Described, Serializable {

    private static final String COEFFICIENT = "lag coefficient";

    /**
     * Checks the components.
     *
     * @throws dev.waterjet.measure.DomainException if a length is out of its range, or there are more depths than lags or the
     *     other way round
     * @param separationDepth depth that the jet just separates at the feed rate of the cut, above 0
     * @param depths depth below the top side at which each lag was read, from 0 to the separation depth
     * @param lags distance of the drag line there behind the entry, each 0 or more
     */
    public LagMeasurement {
        double depthM = Require.positive("separation depth", Kind.LENGTH.si(separationDepth), Units.MILLIMETRE);
        separationDepth = Kind.LENGTH.of(depthM);
        Readings.requireDepths(depths, depthM, "the separation depth");
        Readings.requirePairs(depths, lags, "lags");
        lags.stream().forEach(lag -> Require.notNegative("lag", lag, Units.MILLIMETRE));
    }

    /**
     * Returns a drag line without readings.
     *
     * @param separationDepth depth that the jet just separates at the feed rate of the cut, above 0
     * @return the drag line
     */
    public static LagMeasurement of(Quantity<Length> separationDepth) {
        return new LagMeasurement(separationDepth, Readings.NONE, Readings.NONE);
    }

    /**
     * Returns this drag line with more readings.
     *
     * @param depths depths below the top side, each from 0 to the separation depth
     * @param lags lag at each depth, 0 or more
     * @return the drag line with those readings
     */
    public LagMeasurement withLags(QuantityArray<Length> depths, QuantityArray<Length> lags) {
        return new LagMeasurement(
                separationDepth, Readings.append(this.depths, depths.toSi()), Readings.append(this.lags, lags.toSi()));
    }

    /**
     * Fits the coefficient of a lag model to drag lines by least squares.
     *
     * @param lines drag lines with at least two readings in all
     * @return the model and its fit; residuals are in m
     * @throws dev.waterjet.measure.NoSolutionException if there are too few readings
     */
    public static FittedModel<LagModel> fit(List<LagMeasurement> lines) {
        List<Reading> readings = new ArrayList<>();
        for (LagMeasurement line : lines) {
            for (int i = 0; i < line.lags.size(); i++) {
                readings.add(new Reading(line, i));
            }
        }
        LagModel start = LagModel.standard();
        Fit fit = LeastSquares.of((i, numbers) -> numbers[0] * readings.get(i).driver())
                .withPositiveParameter(COEFFICIENT, start.coefficient())
                .fit(readings.stream().mapToDouble(Reading::lag).toArray());
        LagModel model = LagModel.of(
                fit.value(COEFFICIENT),
                fit.standardError(COEFFICIENT) / fit.value(COEFFICIENT),
                Evidence.of(
                        EvidenceGrade.FITTED,
                        Source.of("drag lines of the user").at(fit.observations() + " points")));
        return new FittedModel<>(model, fit);
    }

    /** One reading of one line. */
    private record Reading(LagMeasurement line, int index) {

        private static final LagModel UNIT =
                LagModel.of(1, 0, LagModel.standard().evidence());

        /** z^2/H, with which the lag grows. */
        double driver() {
            return UNIT.lagSi(Kind.LENGTH.si(line.separationDepth), line.depths.si(index));
        }

        double lag() {
            return line.lags.si(index);
        }
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("lag measurement")
                .put("separation_depth", Kind.LENGTH, Kind.LENGTH.si(separationDepth))
                .put("depths", depths)
                .put("lags", lags)
                .map();
    }

    @Override
    public String toString() {
        return "drag line of " + lags.size() + " readings, separation depth "
                + QuantityText.forPeople(Kind.LENGTH, separationDepth);
    }
}

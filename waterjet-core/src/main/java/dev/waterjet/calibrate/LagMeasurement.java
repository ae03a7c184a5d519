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
import dev.waterjet.measure.Message;
import dev.waterjet.measure.NoSolutionException;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.Serializable;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.IntStream;
import javax.measure.Quantity;
import javax.measure.quantity.Length;

/**
 * Drag line of a test cut, read off its cut surface. A list of them gives the coefficient of a lag model.
 *
 * <pre>{@code
 * LagMeasurement line = LagMeasurement.of(millimetres(40))
 *         .withLags(
 *                 QuantityArray.of(Kind.LENGTH, new double[] {5, 10, 15, 20}, Units.MILLIMETRE),
 *                 QuantityArray.of(Kind.LENGTH, new double[] {0.2, 0.8, 1.7, 3}, Units.MILLIMETRE));
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
        Objects.requireNonNull(separationDepth, "separationDepth");
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
     * Fits the coefficient of a lag model to drag lines.
     *
     * <p>A line is one specimen: its readings are not independent. From two lines on each has its own coefficient by least
     * squares, and the logarithms of these are the observations: the relative uncertainty of the model is that of one more line,
     * {@code s sqrt(1 + 1/L)} of L lines, and does not depend on how finely a line was read. A single line does not show how lines differ;
     * the model then has at least the uncertainty that is assumed without a fit.
     *
     * @param lines drag lines with at least two readings in all
     * @return the model and its fit; residuals are logarithms of the coefficients of the lines, of a single line lags in m
     * @throws dev.waterjet.measure.NoSolutionException if there are too few readings, or a line without lag among several, code
     *     {@code line-without-lag}
     */
    public static FittedModel<LagModel> fit(List<LagMeasurement> lines) {
        List<LagMeasurement> read =
                lines.stream().filter(line -> line.lags.size() > 0).toList();
        return read.size() < 2 ? ofReadings(read) : ofLines(read);
    }

    private static FittedModel<LagModel> ofLines(List<LagMeasurement> lines) {
        double[] logs = new double[lines.size()];
        for (int l = 0; l < logs.length; l++) {
            List<Reading> readings = lines.get(l).readings();
            double slope = Lines.slope(
                    readings.stream().mapToDouble(Reading::driver).toArray(),
                    readings.stream().mapToDouble(Reading::lag).toArray());
            if (!(slope > 0)) {
                throw new NoSolutionException(
                        Message.of("line-without-lag", "drag line {line} has no lag: a coefficient of 0 has no scatter")
                                .with("line", l + 1));
            }
            logs[l] = Math.log(slope);
        }
        Fit fit = LeastSquares.of((i, numbers) -> Math.log(numbers[0]))
                .withPositiveParameter(COEFFICIENT, LagModel.standard().coefficient())
                .fit(logs);
        double relative = Math.hypot(fit.residualDeviation(), fit.standardError(COEFFICIENT) / fit.value(COEFFICIENT));
        return fitted(fit, relative, logs.length + " lines");
    }

    private static FittedModel<LagModel> fitted(Fit fit, double relative, String count) {
        LagModel model = LagModel.of(
                fit.value(COEFFICIENT),
                relative,
                Evidence.of(
                        EvidenceGrade.FITTED,
                        Source.of("drag lines of the user").at(count)));
        return new FittedModel<>(model, fit);
    }

    private List<Reading> readings() {
        return IntStream.range(0, lags.size())
                .mapToObj(i -> new Reading(this, i))
                .toList();
    }

    private static FittedModel<LagModel> ofReadings(List<LagMeasurement> lines) {
        List<Reading> readings =
                lines.stream().flatMap(line -> line.readings().stream()).toList();
        LagModel start = LagModel.standard();
        Fit fit = LeastSquares.of((i, numbers) -> numbers[0] * readings.get(i).driver())
                .withPositiveParameter(COEFFICIENT, start.coefficient())
                .fit(readings.stream().mapToDouble(Reading::lag).toArray());
        double own = fit.standardError(COEFFICIENT) / fit.value(COEFFICIENT);
        return fitted(fit, Math.hypot(own, start.relativeUncertainty()), fit.observations() + " points of one line");
    }

    /** One reading of one line. */
    private record Reading(LagMeasurement line, int index) {

        private static final LagModel UNIT =
                LagModel.of(1, 0, LagModel.standard().evidence());

        /** z<sup>2</sup>/H, with which the lag grows. */
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

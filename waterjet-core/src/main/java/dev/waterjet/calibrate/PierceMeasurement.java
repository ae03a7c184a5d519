package dev.waterjet.calibrate;

import dev.waterjet.fit.Fit;
import dev.waterjet.fit.LeastSquares;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.NoSolutionException;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import dev.waterjet.pierce.PierceModel;
import java.io.Serializable;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Time;
import org.apache.commons.math3.stat.regression.SimpleRegression;

/**
 * Timed pierce of known depth. A list of them gives the numbers of a pierce model.
 *
 * <pre>{@code
 * PierceModel own = PierceMeasurement.fit(List.of(
 *         PierceMeasurement.of(millimetres(6), seconds(2.4)),
 *         PierceMeasurement.of(millimetres(12), seconds(5.1)),
 *         PierceMeasurement.of(millimetres(25), seconds(13)))).model();
 * }</pre>
 *
 * @param depth pierced depth, above 0
 * @param time jet-on time until the jet was there, above 0
 * @param plate name of its plate, batch or day; empty if it has none. Pierces of one plate are more alike than others
 */
public record PierceMeasurement(Quantity<Length> depth, Quantity<Time> time, String plate)
        implements Described, Serializable {

    private static final String DEPTH = "depth after one second in m";
    private static final String EXPONENT = "exponent of the time";
    private static final int MIN_PIERCES = 3;

    /**
     * Checks the components.
     *
     * @throws dev.waterjet.measure.DomainException if a component is not above 0
     * @param depth pierced depth, above 0
     * @param time jet-on time until the jet was there, above 0
     * @param plate name of its plate
     */
    public PierceMeasurement {
        Objects.requireNonNull(plate, "plate");
        Objects.requireNonNull(depth, "depth");
        Objects.requireNonNull(time, "time");
        depth = Kind.LENGTH.of(Require.positive("pierced depth", Kind.LENGTH.si(depth), Units.MILLIMETRE));
        time = Kind.TIME.of(Require.positive("pierce time", Kind.TIME.si(time), Units.SECOND));
    }

    /**
     * Returns a timed pierce.
     *
     * @param depth pierced depth, above 0
     * @param time jet-on time until the jet was there, above 0
     * @return the measurement
     */
    public static PierceMeasurement of(Quantity<Length> depth, Quantity<Time> time) {
        Objects.requireNonNull(depth, "depth");
        Objects.requireNonNull(time, "time");
        return new PierceMeasurement(depth, time, "");
    }

    /**
     * Returns this pierce with its plate. With several plates the scatter of the fitted model is that of a pierce in another plate.
     *
     * @param name name of the plate, batch or day
     * @return the pierce
     */
    public PierceMeasurement withPlate(String name) {
        return new PierceMeasurement(depth, time, Objects.requireNonNull(name, "name"));
    }

    double logDepth() {
        return Math.log(Kind.LENGTH.si(depth));
    }

    double logTime() {
        return Math.log(Kind.TIME.si(time));
    }

    /**
     * Fits the damped pierce model to timed pierces, with the damping length of a tube of 1.02 mm where the pierces do not tell
     * one; as {@link #fit(List, Quantity)} with 7.5 mm.
     *
     * @param pierces at least two pierces
     * @return the model and its fit, on natural logarithms of the time in s
     * @throws NoSolutionException if there are fewer than two pierces or their times do not rise with depth; code {@code
     *     too-few-pierces} or {@code pierces-not-rising}
     */
    public static FittedModel<PierceModel> fit(List<PierceMeasurement> pierces) {
        return fit(pierces, Kind.LENGTH.of(PierceFit.TYPICAL_DAMPING_M));
    }

    /**
     * Fits the damped pierce model to timed pierces by least squares of the logarithm of the time. Rate and damping length are
     * both fitted if there are three pierces or more, their depths span a factor of two, and the times tell the damping; else the damping length is kept and the
     * rate is fitted. The uncertainty of a time is the scatter of the times about the model.
     *
     * @param pierces at least two pierces
     * @param typicalDamping damping length where the pierces do not tell one, above 0, such as {@code
     *     PierceModel.derived(cut, method).damping()}
     * @return the model and its fit, on natural logarithms of the time in s
     * @throws NoSolutionException if there are fewer than two pierces or their times do not rise with depth; code {@code
     *     too-few-pierces} or {@code pierces-not-rising}
     */
    public static FittedModel<PierceModel> fit(List<PierceMeasurement> pierces, Quantity<Length> typicalDamping) {
        Objects.requireNonNull(pierces, "pierces");
        Objects.requireNonNull(typicalDamping, "typicalDamping");
        double dampingM = Require.positive("typical damping length", Kind.LENGTH.si(typicalDamping), Units.MILLIMETRE);
        requireCount(pierces, MIN_PIERCES - 1);
        return new PierceFit(pierces).fit(dampingM);
    }

    private static void requireCount(List<PierceMeasurement> pierces, int minimum) {
        if (pierces.size() < minimum) {
            throw new NoSolutionException(Message.of(
                            "too-few-pierces",
                            "{pierces} timed pierces; a line and its scatter require at least {minimum}")
                    .with("pierces", pierces.size())
                    .with("minimum", minimum));
        }
    }

    /**
     * Fits the published power form to timed pierces: a straight line through the logarithms of time over depth, by least
     * squares. The uncertainty of a time is the scatter of the times about the line.
     *
     * @param pierces at least three pierces, of at least two depths
     * @return the model and its fit, on natural logarithms of the time in s
     * @throws NoSolutionException if there are fewer than three pierces or their times do not rise with depth; code {@code
     *     too-few-pierces} or {@code pierces-not-rising}
     */
    public static FittedModel<PierceModel> fitPowerForm(List<PierceMeasurement> pierces) {
        requireCount(pierces, MIN_PIERCES);
        SimpleRegression line = new SimpleRegression();
        pierces.forEach(pierce -> line.addData(pierce.logDepth(), pierce.logTime()));
        double slope = line.getSlope();
        if (!(slope > 0)) {
            throw PierceFit.notRising();
        }
        // ln t = (ln h - ln a)/b: the closed solution is where the search starts, and ends
        Fit fit = LeastSquares.of((i, numbers) -> (pierces.get(i).logDepth() - Math.log(numbers[0])) / numbers[1])
                .withPositiveParameter(DEPTH, Math.exp(-line.getIntercept() / slope))
                .withPositiveParameter(EXPONENT, 1 / slope)
                .fit(pierces.stream().mapToDouble(PierceMeasurement::logTime).toArray());
        PierceModel model = PierceModel.of(
                Kind.LENGTH.of(fit.value(DEPTH)),
                fit.value(EXPONENT),
                PierceFit.scatter(pierces, fit),
                PierceFit.evidence(fit));
        return new FittedModel<>(model, fit);
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("pierce measurement")
                .put("depth", Kind.LENGTH, Kind.LENGTH.si(depth))
                .put("time", Kind.TIME, Kind.TIME.si(time))
                .put("plate", plate)
                .map();
    }

    @Override
    public String toString() {
        return QuantityText.forPeople(Kind.LENGTH, depth) + " pierced in " + QuantityText.forPeople(Kind.TIME, time);
    }
}

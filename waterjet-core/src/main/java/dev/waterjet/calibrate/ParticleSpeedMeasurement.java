package dev.waterjet.calibrate;

import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.jet.MixingModel;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Experimental;
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
import javax.measure.quantity.Speed;

/**
 * Measured mean speed of the particles at the exit of the focusing tube. A list of them fits the coefficients of a
 * {@link MixingModel}.
 *
 * <pre>{@code
 * AbrasiveJet light = jet.withAbrasiveFlow(gramsPerMinute(200));
 * MixingModel fitted = ParticleSpeedMeasurement.fit(List.of(
 *         ParticleSpeedMeasurement.of(jet, metresPerSecond(420)),
 *         ParticleSpeedMeasurement.of(light, metresPerSecond(455))), 0.05).model();
 * }</pre>
 *
 * @param jet jet at which it was measured
 * @param speed mean speed of the particles, above 0
 */
@Experimental
public record ParticleSpeedMeasurement(AbrasiveJet jet, Quantity<Speed> speed) implements Described, Serializable {

    /**
     * Checks the components.
     *
     * @param jet jet at which it was measured
     * @param speed mean speed of the particles, above 0
     * @throws dev.waterjet.measure.DomainException if the speed is not above 0, or above that of an exchange of momentum
     *     without loss
     */
    public ParticleSpeedMeasurement {
        Objects.requireNonNull(jet, "jet");
        Objects.requireNonNull(speed, "speed");
        double metresPerSecond = Require.positive("particle speed", Kind.SPEED.si(speed), Units.METRE_PER_SECOND);
        double idealMPerS = jet.waterSpeedSi() / (1 + jet.loadingRatioSi());
        Require.atMost(
                "particle speed",
                metresPerSecond,
                idealMPerS,
                Units.METRE_PER_SECOND,
                "an exchange of momentum without loss gives that");
        speed = Kind.SPEED.of(metresPerSecond);
    }

    /**
     * Returns a measurement.
     *
     * @param jet jet at which it was measured
     * @param speed mean speed of the particles, above 0
     * @return the measurement
     */
    public static ParticleSpeedMeasurement of(AbrasiveJet jet, Quantity<Speed> speed) {
        Objects.requireNonNull(jet, "jet");
        Objects.requireNonNull(speed, "speed");
        return new ParticleSpeedMeasurement(jet, speed);
    }

    /**
     * Fits the coefficients of the mixing model by least squares of the logarithm of the speeds, together with the default
     * coefficients as prior observations: contact drag 0.26 within a factor of 2.5, wall coefficient 0.001 within a factor of 2.
     * So one speed moves the contact drag; the wall coefficient keeps its default until speeds at tubes of different length tell
     * it. If the loading ratios span a factor of three, four speeds or more also fit the crowding of the particles, unless they do not tell it.
     *
     * @param measurements one measurement or more
     * @param relativeDeviation relative standard deviation of a speed, 0.001 to 1: of the method and of the head together
     * @return the model, and its fit on natural logarithms of the speed in m/s; the last observations of the fit are the priors
     * @throws NoSolutionException if there is no measurement, code {@code too-few-speeds}, or the fit does not converge
     */
    public static FittedModel<MixingModel> fit(List<ParticleSpeedMeasurement> measurements, double relativeDeviation) {
        List<ParticleSpeedMeasurement> all = List.copyOf(Objects.requireNonNull(measurements, "measurements"));
        Require.between("relative deviation of a particle speed", relativeDeviation, 0.001, 1, Units.ONE, "");
        if (all.isEmpty()) {
            throw new NoSolutionException(
                    Message.of("too-few-speeds", "no measured particle speed; a fit requires at least one"));
        }
        return new MixingFit(all, relativeDeviation).fit();
    }

    double logSpeed() {
        return Math.log(Kind.SPEED.si(speed));
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("particle speed measurement")
                .put("jet", jet)
                .put("speed", Kind.SPEED, Kind.SPEED.si(speed))
                .map();
    }

    @Override
    public String toString() {
        return "particles of " + QuantityText.forPeople(Kind.SPEED, speed) + " from a " + jet;
    }
}

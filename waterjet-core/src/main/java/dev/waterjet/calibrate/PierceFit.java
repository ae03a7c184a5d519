package dev.waterjet.calibrate;

import dev.waterjet.evidence.Evidence;
import dev.waterjet.evidence.EvidenceGrade;
import dev.waterjet.evidence.Source;
import dev.waterjet.fit.Fit;
import dev.waterjet.fit.LeastSquares;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.NoSolutionException;
import dev.waterjet.measure.WaterjetException;
import dev.waterjet.pierce.PierceModel;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.apache.commons.math3.stat.regression.SimpleRegression;

/** Fit of {@code t = h/r + h^2/(2 l r)} to timed pierces, on the logarithm of the time. */
final class PierceFit {

    /** Damping length of the default model with a tube of 1.02 mm. */
    static final double TYPICAL_DAMPING_M = 7.5e-3;

    private static final String RATE = "rate in m/s";
    private static final String DAMPING = "damping length in m";
    private static final int MIN_FOR_BOTH = 3;
    private static final double DEPTH_FACTOR = 2;

    /** Relative standard error of the coefficient of h^2 from which the pierces tell nothing of the damping. */
    private static final double MAX_RELATIVE_ERROR = 1;

    private final List<PierceMeasurement> pierces;
    private final double[] depthsM;
    private final double[] logTimes;

    PierceFit(List<PierceMeasurement> pierces) {
        this.pierces = pierces;
        depthsM = pierces.stream()
                .mapToDouble(pierce -> Kind.LENGTH.si(pierce.depth()))
                .toArray();
        logTimes = pierces.stream().mapToDouble(PierceMeasurement::logTime).toArray();
    }

    static NoSolutionException notRising() {
        return new NoSolutionException(Message.of(
                "pierces-not-rising",
                "the times of the pierces do not rise with their depth; time pierces of several depths"));
    }

    static Evidence evidence(Fit fit) {
        return Evidence.of(
                EvidenceGrade.FITTED, Source.of("timed pierces of the user").at(fit.observations() + " pierces"));
    }

    /**
     * Scatter of the logarithm of the time of a pierce in another plate: that of the residuals, and no less than scatter within and spread
     * between plates together, by the restricted likelihood.
     */
    static double scatter(List<PierceMeasurement> pierces, Fit fit) {
        int[] places = AbilityRows.places(
                pierces.stream().map(PierceMeasurement::plate).toList());
        double plain = fit.residualDeviation();
        long plates = Arrays.stream(places).distinct().count();
        if (plates < 2 || plates == pierces.size()) {
            return plain;
        }
        double[] residuals = fit.residuals();
        double[][] ones = new double[residuals.length][1];
        Arrays.stream(ones).forEach(one -> one[0] = 1);
        VarianceFit found = VarianceFit.of(CutRows.exact(residuals, ones).withPlates(places), true);
        return Math.max(plain, Math.hypot(found.sigma(), found.tau()));
    }

    FittedModel<PierceModel> fit(double typicalDampingM) {
        SimpleRegression line = new SimpleRegression();
        double minM = Double.MAX_VALUE;
        double maxM = 0;
        for (int i = 0; i < depthsM.length; i++) {
            line.addData(Math.log(depthsM[i]), logTimes[i]);
            minM = Math.min(minM, depthsM[i]);
            maxM = Math.max(maxM, depthsM[i]);
        }
        if (maxM > minM && !(line.getSlope() > 0)) {
            throw notRising();
        }
        Fit fit = depthsM.length >= MIN_FOR_BOTH && maxM >= DEPTH_FACTOR * minM
                ? both(typicalDampingM).orElseGet(() -> rate(typicalDampingM))
                : rate(typicalDampingM);
        double dampingM = fit.names().contains(DAMPING) ? fit.value(DAMPING) : typicalDampingM;
        PierceModel model = PierceModel.damped(
                Kind.SPEED.of(fit.value(RATE)), Kind.LENGTH.of(dampingM), scatter(pierces, fit), evidence(fit));
        return new FittedModel<>(model, fit);
    }

    private static double logTime(double depthM, double rate, double dampingM) {
        return Math.log(depthM / rate) + Math.log1p(depthM / (2 * dampingM));
    }

    private double meanRate(double dampingM) {
        double sum = 0;
        for (int i = 0; i < depthsM.length; i++) {
            sum += logTime(depthsM[i], 1, dampingM) - logTimes[i];
        }
        return Math.exp(sum / depthsM.length);
    }

    private Fit rate(double dampingM) {
        return LeastSquares.of((i, numbers) -> logTime(depthsM[i], numbers[0], dampingM))
                .withPositiveParameter(RATE, meanRate(dampingM))
                .fit(logTimes);
    }

    /** Both numbers; empty if the pierces do not tell the damping. */
    private Optional<Fit> both(double startM) {
        try {
            Fit fit = LeastSquares.of((i, numbers) -> logTime(depthsM[i], numbers[0], numbers[1]))
                    .withPositiveParameter(RATE, meanRate(startM))
                    .withPositiveParameter(DAMPING, startM)
                    .fit(logTimes);
            return relativeErrorOfSquare(fit) < MAX_RELATIVE_ERROR ? Optional.of(fit) : Optional.empty();
        } catch (WaterjetException e) {
            // the damping runs away where the times are proportional to the depth or grow more slowly
            return Optional.empty();
        }
    }

    /** Of beta = 1/(2 l r): d ln beta = -d ln l - d ln r. */
    private static double relativeErrorOfSquare(Fit fit) {
        double ofRate = fit.standardError(RATE) / fit.value(RATE);
        double ofDamping = fit.standardError(DAMPING) / fit.value(DAMPING);
        double common = fit.covariance(RATE, DAMPING) / (fit.value(RATE) * fit.value(DAMPING));
        return Math.sqrt(Math.max(0, ofRate * ofRate + ofDamping * ofDamping + 2 * common));
    }
}

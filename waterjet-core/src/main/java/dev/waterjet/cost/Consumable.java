package dev.waterjet.cost;

import dev.waterjet.evidence.Estimate;
import dev.waterjet.evidence.Evidence;
import dev.waterjet.evidence.EvidenceGrade;
import dev.waterjet.evidence.HasEvidence;
import dev.waterjet.evidence.Source;
import dev.waterjet.hydraulics.Orifice;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Measures;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.InvalidObjectException;
import java.io.ObjectInputStream;
import java.io.Serializable;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Time;
import org.jspecify.annotations.Nullable;

/**
 * Consumable component of a cutting head, with its service life in jet-on hours.
 *
 * <p>The life is log-normal. A quoted range, such as 50 h to 100 h, is taken as the geometric mean divided and multiplied by the
 * geometric standard deviation. Use {@code replacementTime(0.1)} for the age at which 10 % of the components have failed.
 *
 * <p>Evidence: sapphire orifice 50 h to 100 h, published (second-hand, Machines 10 (2022) 756); diamond orifice 300 h to 1000 h
 * and focusing tube of fine-grained carbide with garnet 50 h to 150 h, from memory.
 */
public final class Consumable implements Described, HasEvidence, Serializable {

    private static final long serialVersionUID = 1L;

    /** A factor of 20 each way: beyond it a life is unknown. */
    private static final double MAX_LOG_DEVIATION = 3;

    /** Checked content, and the serial form; no age if a component is replaced when it fails. */
    private record Values(
            String name,
            double medianS,
            double logDeviation,
            @Nullable Double replacementAgeS,
            Evidence evidence) implements Serializable {

        private static final long serialVersionUID = 1L;

        Values {
            Objects.requireNonNull(name, "name");
            medianS = Require.positive("life of the " + name, medianS, Units.HOUR);
            logDeviation = Require.between(
                    "spread of the life of the " + name, logDeviation, 0, MAX_LOG_DEVIATION, Units.ONE, "");
            if (replacementAgeS != null) {
                replacementAgeS = Require.positive("replacement age of the " + name, replacementAgeS, Units.HOUR);
            }
            Objects.requireNonNull(evidence, "evidence");
        }

        private Object readResolve() {
            return new Consumable(this);
        }
    }

    private final transient Values values;

    private Consumable(Values values) {
        this.values = values;
    }

    /**
     * Returns a component whose life lies between two times with a probability of about two thirds.
     *
     * @param name name of the component, in lower case
     * @param shortest lower time, above 0
     * @param longest upper time, at least the lower one
     * @param evidence evidence for the life
     * @return the component
     */
    public static Consumable of(String name, Quantity<Time> shortest, Quantity<Time> longest, Evidence evidence) {
        Objects.requireNonNull(name, "name");
        Objects.requireNonNull(shortest, "shortest");
        Objects.requireNonNull(longest, "longest");
        double from = Require.positive("shorter life of the " + name, Kind.TIME.si(shortest), Units.HOUR);
        double to = Require.atLeast(
                "longer life of the " + name, Kind.TIME.si(longest), from, Units.HOUR, "the shorter life");
        return new Consumable(new Values(name, Math.sqrt(from * to), Math.log(to / from) / 2, null, evidence));
    }

    /**
     * Returns an orifice with the life that the literature states for its jewel. Ruby is taken as sapphire.
     *
     * @param jewel jewel of the orifice
     * @return the component
     */
    public static Consumable orifice(Orifice.Jewel jewel) {
        Objects.requireNonNull(jewel, "jewel");
        return jewel == Orifice.Jewel.DIAMOND
                ? of(
                        "diamond orifice",
                        Measures.hours(300),
                        Measures.hours(1000),
                        Evidence.of(EvidenceGrade.FROM_MEMORY, Source.of("abrasive-waterjet literature")))
                : of(
                        jewel == Orifice.Jewel.RUBY ? "ruby orifice" : "sapphire orifice",
                        Measures.hours(50),
                        Measures.hours(100),
                        Evidence.of(EvidenceGrade.PUBLISHED, Source.of("Machines 10 (2022) 756")));
    }

    /**
     * Returns a focusing tube of fine-grained tungsten carbide, used with garnet.
     *
     * @return the component
     */
    public static Consumable focusingTube() {
        return of(
                "focusing tube",
                Measures.hours(50),
                Measures.hours(150),
                Evidence.of(EvidenceGrade.FROM_MEMORY, Source.of("abrasive-waterjet literature")));
    }

    /**
     * Returns the name of the component.
     *
     * @return name, in lower case
     */
    public String name() {
        return values.name;
    }

    /**
     * Returns the service life.
     *
     * @return jet-on time
     */
    public Estimate<Time> life() {
        return Estimate.withinFactor(Kind.TIME, values.medianS, values.logDeviation, List.of());
    }

    /**
     * Returns this component with a planned replacement: it is replaced on failure or at this age, whichever comes first.
     *
     * @param age maximum age, above 0
     * @return the component with that replacement
     */
    public Consumable replacedAt(Quantity<Time> age) {
        double ageS = Kind.TIME.si(Objects.requireNonNull(age, "age"));
        return new Consumable(new Values(values.name, values.medianS, values.logDeviation, ageS, values.evidence));
    }

    /**
     * Returns the mean service life: of a component that is replaced on failure the mean of the log-normal distribution,
     * median times exp(s<sup>2</sup>/2), of one with a planned replacement the {@link #meanService} up to that age. The price
     * of the component over this time is the expected cost of its wear (renewal theory).
     *
     * @return mean jet-on time
     */
    public Quantity<Time> meanLife() {
        return Kind.TIME.of(meanLifeSi());
    }

    double meanLifeSi() {
        return values.replacementAgeS == null
                ? WearKernel.mean(values.medianS, values.logDeviation)
                : WearKernel.meanService(values.medianS, values.logDeviation, values.replacementAgeS);
    }

    /**
     * Returns the probability that a component has failed by an age.
     *
     * @param age jet-on time so far, 0 or more
     * @return probability, 0 to 1
     */
    public double failureProbability(Quantity<Time> age) {
        return WearKernel.failureProbability(values.medianS, values.logDeviation, age(age));
    }

    /**
     * Returns the age at which a given fraction of the components have failed.
     *
     * @param probability failure probability, above 0 and below 1: 0.1 for one component in ten
     * @return jet-on time at which to replace it
     */
    public Quantity<Time> replacementTime(double probability) {
        Require.above("failure probability", probability, 0, Units.ONE, "");
        Require.atMost("failure probability", probability, Math.nextDown(1.0), Units.ONE, "");
        return Kind.TIME.of(WearKernel.ageAtProbability(values.medianS, values.logDeviation, probability));
    }

    /**
     * Returns the mean service life of a component that is replaced on failure or at an age, whichever comes first. The cost
     * of wear per hour is the price of the component over this time.
     *
     * @param age maximum age, above 0
     * @return mean jet-on time
     */
    public Quantity<Time> meanService(Quantity<Time> age) {
        Objects.requireNonNull(age, "age");
        double ageS = Require.positive("maximum age", Kind.TIME.si(age), Units.HOUR);
        return Kind.TIME.of(WearKernel.meanService(values.medianS, values.logDeviation, ageS));
    }

    /**
     * Returns the remaining jet-on time until the failure probability reaches a limit.
     *
     * @param age jet-on time so far, 0 or more
     * @param probability failure probability at that time, above 0 and below 1
     * @return jet-on time from now; 0 if the replacement is due
     */
    public Quantity<Time> remainingLife(Quantity<Time> age, double probability) {
        return Kind.TIME.of(Math.max(0, Kind.TIME.si(replacementTime(probability)) - age(age)));
    }

    private double age(Quantity<Time> age) {
        Objects.requireNonNull(age, "age");
        return Require.notNegative("age of the " + values.name, Kind.TIME.si(age), Units.HOUR);
    }

    double medianSi() {
        return values.medianS;
    }

    double logDeviation() {
        return values.logDeviation;
    }

    @Override
    public Evidence evidence() {
        return values.evidence;
    }

    @Override
    public Map<String, Object> describe() {
        Description description = Description.of("consumable")
                .put("name", values.name)
                .put("life", life())
                .put("evidence", values.evidence);
        if (values.replacementAgeS != null) {
            description.put("replacement_age", Kind.TIME, values.replacementAgeS);
        }
        return description.map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Consumable that && values.equals(that.values);
    }

    @Override
    public int hashCode() {
        return values.hashCode();
    }

    @Override
    public String toString() {
        return values.name + ", life " + QuantityText.round(values.medianS / 3600, 3) + " h within a factor of "
                + QuantityText.round(Math.exp(values.logDeviation), 3)
                + (values.replacementAgeS == null
                        ? ""
                        : ", replaced at " + QuantityText.forPeople(Kind.TIME, values.replacementAgeS));
    }

    private Object writeReplace() {
        return values;
    }

    private void readObject(ObjectInputStream in) throws InvalidObjectException {
        throw new InvalidObjectException("read through its values");
    }
}

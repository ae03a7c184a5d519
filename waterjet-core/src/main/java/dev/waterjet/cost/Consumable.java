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
import java.io.Serializable;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Time;

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

    private final String name;
    private final double medianS;
    private final double logDeviation;
    private final Evidence evidence;

    private Consumable(String name, double medianS, double logDeviation, Evidence evidence) {
        this.name = Objects.requireNonNull(name, "name");
        this.medianS = Require.positive("life of the " + name, medianS, Units.HOUR);
        this.logDeviation = Require.notNegative("spread of the life of the " + name, logDeviation, Units.ONE);
        this.evidence = Objects.requireNonNull(evidence, "evidence");
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
        double from = Require.positive("shorter life of the " + name, Kind.TIME.si(shortest), Units.HOUR);
        double to = Require.atLeast(
                "longer life of the " + name, Kind.TIME.si(longest), from, Units.HOUR, "the shorter life");
        return new Consumable(name, Math.sqrt(from * to), Math.log(to / from) / 2, evidence);
    }

    /**
     * Returns an orifice with the life that the literature states for its jewel. Ruby is taken as sapphire.
     *
     * @param jewel jewel of the orifice
     * @return the component
     */
    public static Consumable orifice(Orifice.Jewel jewel) {
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
        return name;
    }

    /**
     * Returns the service life.
     *
     * @return jet-on time
     */
    public Estimate<Time> life() {
        return Estimate.withinFactor(Kind.TIME, medianS, logDeviation, List.of());
    }

    /**
     * Returns the probability that a component has failed by an age.
     *
     * @param age jet-on time so far, 0 or more
     * @return probability, 0 to 1
     */
    public double failureProbability(Quantity<Time> age) {
        return WearKernel.failureProbability(medianS, logDeviation, age(age));
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
        return Kind.TIME.of(WearKernel.ageAtProbability(medianS, logDeviation, probability));
    }

    /**
     * Returns the mean service life of a component that is replaced on failure or at an age, whichever comes first. The cost
     * of wear per hour is the price of the component over this time.
     *
     * @param age maximum age, above 0
     * @return mean jet-on time
     */
    public Quantity<Time> meanService(Quantity<Time> age) {
        double ageS = Require.positive("maximum age", Kind.TIME.si(age), Units.HOUR);
        return Kind.TIME.of(WearKernel.meanService(medianS, logDeviation, ageS));
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
        return Require.notNegative("age of the " + name, Kind.TIME.si(age), Units.HOUR);
    }

    double medianSi() {
        return medianS;
    }

    double logDeviation() {
        return logDeviation;
    }

    @Override
    public Evidence evidence() {
        return evidence;
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("wear part")
                .put("name", name)
                .put("life", life())
                .put("evidence", evidence)
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Consumable that
                && name.equals(that.name)
                && medianS == that.medianS
                && logDeviation == that.logDeviation;
    }

    @Override
    public int hashCode() {
        return Objects.hash(name, medianS, logDeviation);
    }

    @Override
    public String toString() {
        return name + ", life " + QuantityText.round(medianS / 3600, 3) + " h within a factor of "
                + QuantityText.round(Math.exp(logDeviation), 3);
    }
}

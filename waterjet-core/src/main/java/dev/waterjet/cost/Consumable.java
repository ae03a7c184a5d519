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
 * A part of the head that wears out: how long it serves with the jet on, and when to change it.
 *
 * <p>Lives are told as ranges; here a range is one standard deviation to each side of its geometric mean, log-normal. Sapphire
 * orifices last 50 to 100 h (Machines 10 (2022) 756); diamond several hundred hours, taken as 300, to 1000 h, and focusing
 * tubes of fine-grained carbide with garnet 50 to 150 h (both from memory).
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
     * A part that two times out of three serves between two times.
     *
     * @param name what it is, in words
     * @param shortest shorter time, above zero
     * @param longest longer time, no shorter than the other
     * @param evidence what speaks for it
     * @return the part
     */
    public static Consumable of(String name, Quantity<Time> shortest, Quantity<Time> longest, Evidence evidence) {
        double from = Require.positive("shorter life of the " + name, Kind.TIME.si(shortest), Units.HOUR);
        double to = Require.atLeast(
                "longer life of the " + name, Kind.TIME.si(longest), from, Units.HOUR, "the shorter life");
        return new Consumable(name, Math.sqrt(from * to), Math.log(to / from) / 2, evidence);
    }

    /**
     * An orifice with the life that the literature tells of its jewel. Ruby is taken as sapphire.
     *
     * @param jewel what it is made of
     * @return the part
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
     * A focusing tube of fine-grained tungsten carbide, run with garnet.
     *
     * @return the part
     */
    public static Consumable focusingTube() {
        return of(
                "focusing tube",
                Measures.hours(50),
                Measures.hours(150),
                Evidence.of(EvidenceGrade.FROM_MEMORY, Source.of("abrasive-waterjet literature")));
    }

    /**
     * What it is.
     *
     * @return words
     */
    public String name() {
        return name;
    }

    /**
     * How long it serves.
     *
     * @return time with the jet on
     */
    public Estimate<Time> life() {
        return Estimate.withinFactor(Kind.TIME, medianS, logDeviation, List.of());
    }

    /**
     * Chance that a part of an age has worn out.
     *
     * @param age time with the jet on so far, zero or more
     * @return chance from 0 to 1
     */
    public double failureProbability(Quantity<Time> age) {
        return WearKernel.failureProbability(medianS, logDeviation, age(age));
    }

    /**
     * When to change the part so that it rarely fails in a cut.
     *
     * @param chance chance that it fails before, above 0 and below 1: 0.1 for one part in ten
     * @return age at which to change it, time with the jet on
     */
    public Quantity<Time> replacementTime(double chance) {
        Require.above("chance of failing before the change", chance, 0, Units.ONE, "");
        Require.atMost("chance of failing before the change", chance, Math.nextDown(1.0), Units.ONE, "");
        return Kind.TIME.of(WearKernel.ageAtProbability(medianS, logDeviation, chance));
    }

    /**
     * Mean service of a part that is changed when it fails or reaches an age, whichever comes first. The price of a part
     * over this time is what its wear costs.
     *
     * @param age age at which it is changed at the latest, above zero
     * @return mean time with the jet on
     */
    public Quantity<Time> meanService(Quantity<Time> age) {
        double ageS = Require.positive("age of the change", Kind.TIME.si(age), Units.HOUR);
        return Kind.TIME.of(WearKernel.meanService(medianS, logDeviation, ageS));
    }

    /**
     * How long a part still serves before the chance to fail reaches a limit.
     *
     * @param age time with the jet on so far, zero or more
     * @param chance chance that it has failed by then, above 0 and below 1
     * @return time with the jet on from now; zero if the change is due
     */
    public Quantity<Time> remainingLife(Quantity<Time> age, double chance) {
        return Kind.TIME.of(Math.max(0, Kind.TIME.si(replacementTime(chance)) - age(age)));
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

package dev.waterjet.benchmarks;

import dev.waterjet.evidence.Estimate;
import dev.waterjet.hydraulics.Orifice;
import dev.waterjet.jet.Abrasive;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.jet.CuttingHead;
import dev.waterjet.jet.FocusingTube;
import dev.waterjet.jet.Mesh;
import dev.waterjet.material.Material;
import dev.waterjet.material.Materials;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import java.util.List;
import java.util.SplittableRandom;
import javax.measure.Quantity;

/** Random numbers of one input, the checks of its answers, and the setups that many models share. */
final class Draws {

    private static final List<Material> MATERIALS =
            List.copyOf(Materials.standard().all());

    private final SplittableRandom random;
    private long answers;

    Draws(long seed) {
        this.random = new SplittableRandom(seed);
    }

    /** {@return the number of checked answers} */
    long answers() {
        return answers;
    }

    boolean chance() {
        return random.nextBoolean();
    }

    int below(int bound) {
        return random.nextInt(bound);
    }

    double share() {
        return random.nextDouble();
    }

    /** Evenly on a logarithmic scale. */
    double between(double from, double to) {
        return from * Math.pow(to / from, random.nextDouble());
    }

    double evenly(double from, double to) {
        return from + (to - from) * random.nextDouble();
    }

    <Q extends Quantity<Q>> Quantity<Q> of(Kind<Q> kind, double from, double to) {
        return kind.of(between(from, to));
    }

    <T> T pick(List<T> all) {
        return all.get(random.nextInt(all.size()));
    }

    <T> T pick(T[] all) {
        return all[random.nextInt(all.length)];
    }

    double finite(double answer) {
        require(Double.isFinite(answer), "an answer is " + answer);
        answers++;
        return answer;
    }

    double notNegative(double answer) {
        require(answer >= 0, "an answer below 0 is " + answer);
        return finite(answer);
    }

    double positive(double answer) {
        require(answer > 0, "an answer not above 0 is " + answer);
        return finite(answer);
    }

    /** An estimate above 0 whose uncertainty is a number. */
    double positive(Estimate<?> estimate) {
        notNegative(estimate.standardUncertaintySi());
        return positive(estimate.si());
    }

    double share(double answer) {
        require(answer >= 0 && answer <= 1 + 1e-12, "a share is " + answer);
        return finite(answer);
    }

    /** A larger number, but for rounding. */
    void rises(String what, double before, double after) {
        require(after >= before - 1e-9 * Math.abs(before), what + " falls from " + before + " to " + after);
    }

    void require(boolean holds, String otherwise) {
        if (!holds) {
            throw new IllegalStateException(otherwise);
        }
    }

    Orifice orifice() {
        return Orifice.of(pick(Orifice.Jewel.values()), of(Kind.LENGTH, 1e-4, 6e-4));
    }

    CuttingHead head() {
        double boreM = between(1e-4, 6e-4);
        double tubeM = boreM * between(2, 5);
        return CuttingHead.of(
                Orifice.sapphire(Kind.LENGTH.of(boreM)),
                FocusingTube.of(Kind.LENGTH.of(tubeM), Kind.LENGTH.of(tubeM * between(40, 150))));
    }

    AbrasiveJet jet() {
        return head().jet(
                        of(Kind.PRESSURE, 50e6, 700e6),
                        Abrasive.garnet(Mesh.of(chance() ? 80 : 120)),
                        of(Kind.MASS_FLOW, 5e-4, 0.02));
    }

    Material material() {
        return pick(MATERIALS);
    }

    Workpiece plate() {
        return Workpiece.of(material(), of(Kind.LENGTH, 5e-4, 0.3));
    }

    double index() {
        return 1 + 4 * share();
    }
}

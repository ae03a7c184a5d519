package dev.waterjet.calibrate;

import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.Serializable;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Speed;

/** One cut whose outcome was measured. */
public final class TestCut implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    private static final double USUAL_DEVIATION = 0.05;

    /** What was measured. */
    public enum Test {
        /** The fastest feed at which a plate still came apart. */
        SEPARATION,
        /** The depth of a groove that did not go through, at a feed. */
        DEPTH,
        /** The feed that left a face of a certain index. */
        GRADED;

        /**
         * The test in words.
         *
         * @return a lower-case word
         */
        public String words() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    private final Test test;
    private final AbrasiveJet jet;
    private final double thicknessM;
    private final double index;
    private final double feedMPerS;
    private final double relativeDeviation;
    private final String label;

    private TestCut(
            Test test,
            AbrasiveJet jet,
            double thicknessM,
            double index,
            double feedMPerS,
            double relativeDeviation,
            String label) {
        this.test = Objects.requireNonNull(test, "test");
        this.jet = Objects.requireNonNull(jet, "jet");
        this.thicknessM = Require.positive(
                test == Test.DEPTH ? "depth of the groove" : "thickness", thicknessM, Units.MILLIMETRE);
        this.index = Require.atLeast("quality index", index, 1, Units.ONE, "below 1 the jet does not separate");
        this.feedMPerS = Require.positive("feed", feedMPerS, Units.MILLIMETRE_PER_MINUTE);
        this.relativeDeviation = Require.positive("relative deviation", relativeDeviation, Units.PERCENT);
        this.label = Objects.requireNonNull(label, "label");
    }

    /**
     * A plate that just came apart.
     *
     * @param jet the jet
     * @param thickness thickness of the plate
     * @param feed the fastest feed that still separated it
     * @return the cut, with a relative deviation of 5 percent
     */
    public static TestCut separated(AbrasiveJet jet, Quantity<Length> thickness, Quantity<Speed> feed) {
        return new TestCut(
                Test.SEPARATION, jet, Kind.LENGTH.si(thickness), 1, Kind.SPEED.si(feed), USUAL_DEVIATION, "");
    }

    /**
     * A groove that did not go through.
     *
     * @param jet the jet
     * @param depth depth of the groove
     * @param feed the feed
     * @return the cut, with a relative deviation of 5 percent
     */
    public static TestCut groove(AbrasiveJet jet, Quantity<Length> depth, Quantity<Speed> feed) {
        return new TestCut(Test.DEPTH, jet, Kind.LENGTH.si(depth), 1, Kind.SPEED.si(feed), USUAL_DEVIATION, "");
    }

    /**
     * A plate whose face was judged.
     *
     * @param jet the jet
     * @param thickness thickness of the plate
     * @param index quality index of the face, 1 or more
     * @param feed the feed that left it
     * @return the cut, with a relative deviation of 5 percent
     */
    public static TestCut graded(AbrasiveJet jet, Quantity<Length> thickness, double index, Quantity<Speed> feed) {
        return new TestCut(
                Test.GRADED, jet, Kind.LENGTH.si(thickness), index, Kind.SPEED.si(feed), USUAL_DEVIATION, "");
    }

    /**
     * This cut with a judgement of how well it was measured. In a fit only the ratios between cuts count.
     *
     * @param relativeDeviation relative standard deviation of the feed, or of the depth of a groove: 0.05 for 5 percent
     * @return the cut
     */
    public TestCut withRelativeDeviation(double relativeDeviation) {
        return new TestCut(test, jet, thicknessM, index, feedMPerS, relativeDeviation, label);
    }

    /**
     * This cut with a label, to find it again.
     *
     * @param label any text
     * @return the cut
     */
    public TestCut withLabel(String label) {
        return new TestCut(test, jet, thicknessM, index, feedMPerS, relativeDeviation, label);
    }

    /**
     * What was measured.
     *
     * @return the test
     */
    public Test test() {
        return test;
    }

    /**
     * The jet.
     *
     * @return the jet
     */
    public AbrasiveJet jet() {
        return jet;
    }

    /**
     * Thickness of the plate, or depth of the groove.
     *
     * @return the length in m
     */
    public double thicknessSi() {
        return thicknessM;
    }

    /**
     * Quality index of the face.
     *
     * @return the index; 1 but for a graded cut
     */
    public double index() {
        return index;
    }

    /**
     * The feed.
     *
     * @return the feed in m/s
     */
    public double feedSi() {
        return feedMPerS;
    }

    /**
     * Relative standard deviation of what was measured.
     *
     * @return the ratio
     */
    public double relativeDeviation() {
        return relativeDeviation;
    }

    /**
     * The label.
     *
     * @return the text; empty if the cut has none
     */
    public String label() {
        return label;
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("test cut")
                .put("test", test)
                .put("jet", jet)
                .put("thickness", Kind.LENGTH, thicknessM)
                .put("index", index)
                .put("feed", Kind.SPEED, feedMPerS)
                .put("relative_deviation", relativeDeviation)
                .put("label", label)
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof TestCut that
                && test == that.test
                && jet.equals(that.jet)
                && thicknessM == that.thicknessM
                && index == that.index
                && feedMPerS == that.feedMPerS
                && relativeDeviation == that.relativeDeviation
                && label.equals(that.label);
    }

    @Override
    public int hashCode() {
        return Objects.hash(test, jet, thicknessM, index, feedMPerS, relativeDeviation, label);
    }

    @Override
    public String toString() {
        return test.words() + " of "
                + QuantityText.print(Kind.LENGTH, Kind.LENGTH.of(thicknessM), Units.MILLIMETRE, 4) + " at "
                + QuantityText.print(Kind.SPEED, Kind.SPEED.of(feedMPerS), Units.MILLIMETRE_PER_MINUTE, 4);
    }
}

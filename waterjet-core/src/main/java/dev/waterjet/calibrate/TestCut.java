package dev.waterjet.calibrate;

import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.InvalidObjectException;
import java.io.ObjectInputStream;
import java.io.Serializable;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Speed;

/**
 * Test cut with its measured outcome.
 *
 * <pre>{@code
 * List<TestCut> cuts = TestCut.parse("""
 *         test,thickness_mm,feed_mm_per_min,pressure_MPa,orifice_mm,tube_mm,abrasive_flow_g_per_min
 *         separation,12,602,360,0.30,0.90,400
 *         """);
 * }</pre>
 */
public final class TestCut implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    private static final double DEFAULT_DEVIATION = 0.05;

    /** Quantity that was measured. */
    public enum Test {
        /** The maximum feed rate at which a plate was still separated. */
        SEPARATION,
        /** The depth of a groove that did not go through, at a feed rate. */
        DEPTH,
        /** The feed rate that left a cut surface of a quality index. */
        GRADED;

        /** {@return the name in a file of test cuts, in lower case} */
        public String text() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    /** Measured numbers; the relative deviation is that of the feed rate, or of the depth of a groove. */
    private record Numbers(double thicknessM, double index, double feedMPerS, double relativeDeviation)
            implements Serializable {

        Numbers {
            thicknessM = Require.positive("thickness", thicknessM, Units.MILLIMETRE);
            index = Require.atLeast("quality index", index, 1, Units.ONE, "below 1 the jet does not separate");
            feedMPerS = Require.positive("feed rate", feedMPerS, Units.MILLIMETRE_PER_MINUTE);
            relativeDeviation = Require.positive("relative deviation", relativeDeviation, Units.PERCENT);
        }
    }

    /** Checked content, and the serial form. */
    private record Values(Test test, AbrasiveJet jet, Numbers numbers, String label) implements Serializable {

        Values {
            Objects.requireNonNull(test, "test");
            Objects.requireNonNull(jet, "jet");
            Objects.requireNonNull(numbers, "numbers");
            Objects.requireNonNull(label, "label");
            if (test != Test.GRADED) {
                Require.atMost("quality index", numbers.index, 1, Units.ONE, "of a " + test.text() + " test");
            }
        }

        private Object readResolve() {
            return new TestCut(this);
        }
    }

    private final transient Values values;

    private TestCut(Values values) {
        this.values = values;
    }

    private static TestCut of(
            Test test, AbrasiveJet jet, Quantity<Length> thickness, double index, Quantity<Speed> feed) {
        Numbers numbers = new Numbers(Kind.LENGTH.si(thickness), index, Kind.SPEED.si(feed), DEFAULT_DEVIATION);
        return new TestCut(new Values(test, jet, numbers, ""));
    }

    /**
     * Returns a plate that was just separated.
     *
     * @param jet the jet
     * @param thickness thickness of the plate, above 0
     * @param feed maximum feed rate that still separated it, above 0
     * @return the cut, with a relative deviation of 5 %
     */
    public static TestCut separated(AbrasiveJet jet, Quantity<Length> thickness, Quantity<Speed> feed) {
        return of(Test.SEPARATION, jet, thickness, 1, feed);
    }

    /**
     * Returns a groove that did not go through.
     *
     * @param jet the jet
     * @param depth depth of the groove, above 0
     * @param feed feed rate, above 0
     * @return the cut, with a relative deviation of 5 %
     */
    public static TestCut groove(AbrasiveJet jet, Quantity<Length> depth, Quantity<Speed> feed) {
        Require.positive("depth of the groove", Kind.LENGTH.si(depth), Units.MILLIMETRE);
        return of(Test.DEPTH, jet, depth, 1, feed);
    }

    /**
     * Returns a plate whose cut surface was judged.
     *
     * @param jet the jet
     * @param thickness thickness of the plate, above 0
     * @param index quality index of the cut surface, 1 or more
     * @param feed feed rate that left it, above 0
     * @return the cut, with a relative deviation of 5 %
     */
    public static TestCut graded(AbrasiveJet jet, Quantity<Length> thickness, double index, Quantity<Speed> feed) {
        return of(Test.GRADED, jet, thickness, index, feed);
    }

    /**
     * Reads test cuts from comma-separated text (RFC 4180) with units in the header.
     *
     * <p>Columns, in any order: {@code test} (separation, depth or graded), {@code thickness} of the plate or depth of the
     * groove, {@code feed}, {@code pressure} (gauge, at the orifice), {@code orifice}, {@code tube} and {@code
     * abrasive_flow}; optional {@code index} (of a graded cut; else 1 or empty), {@code tube_length} (default: 80 bores),
     * {@code mesh} of the garnet (default: 80), {@code discharge_coefficient}, {@code relative_deviation} (default: 0.05) and
     * {@code label}. A column with a unit has it after its name, {@code thickness_mm} and {@code feed_mm_per_min}, or in
     * brackets, {@code feed [mm/min]}; any unit of its kind is accepted. Lines that start with {@code #} are comments.
     *
     * @param csv the text
     * @return the cuts, in the order of the rows
     * @throws dev.waterjet.measure.TextException if a column is missing or unknown, or a cell cannot be read, with line and
     *     column
     */
    public static List<TestCut> parse(String csv) {
        return TestCutReader.read(csv);
    }

    /**
     * Writes test cuts in SI and full precision, so that {@link #parse} reads them back. The mesh is not written, as no
     * model uses it: the cuts are read back with 80 mesh garnet.
     *
     * @param cuts the cuts
     * @return the text, with a header and a line end after each row
     */
    public static String print(List<TestCut> cuts) {
        return TestCutWriter.write(cuts);
    }

    private TestCut with(Numbers numbers, String label) {
        return new TestCut(new Values(values.test, values.jet, numbers, label));
    }

    /**
     * Returns this cut with another precision of the measurement. In a fit only the ratios between cuts count.
     *
     * @param relativeDeviation relative standard deviation of the feed rate, or of the depth of a groove: 0.05 for 5 %
     * @return the cut
     */
    public TestCut withRelativeDeviation(double relativeDeviation) {
        Numbers numbers = values.numbers;
        return with(new Numbers(numbers.thicknessM, numbers.index, numbers.feedMPerS, relativeDeviation), values.label);
    }

    /**
     * Returns this cut with a label.
     *
     * @param label any text
     * @return the cut
     */
    public TestCut withLabel(String label) {
        return with(values.numbers, label);
    }

    /** {@return the quantity that was measured} */
    public Test test() {
        return values.test;
    }

    /** {@return the jet} */
    public AbrasiveJet jet() {
        return values.jet;
    }

    /** {@return the thickness of the plate, or the depth of the groove} */
    public Quantity<Length> thickness() {
        return Kind.LENGTH.of(thicknessSi());
    }

    /** {@return the quality index of the cut surface; 1 unless the cut was graded} */
    public double index() {
        return values.numbers.index;
    }

    /** {@return the feed rate} */
    public Quantity<Speed> feed() {
        return Kind.SPEED.of(feedSi());
    }

    /** {@return the relative standard deviation of the measured quantity} */
    public double relativeDeviation() {
        return values.numbers.relativeDeviation;
    }

    /** {@return the label; empty if the cut has none} */
    public String label() {
        return values.label;
    }

    double thicknessSi() {
        return values.numbers.thicknessM;
    }

    double feedSi() {
        return values.numbers.feedMPerS;
    }

    /** Depth that the jet separated at the feed rate, or would just have separated. */
    double separationDepthSi() {
        return values.numbers.index * values.numbers.thicknessM;
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("test cut")
                .put("test", test())
                .put("jet", jet())
                .put("thickness", Kind.LENGTH, thicknessSi())
                .put("index", index())
                .put("feed", Kind.SPEED, feedSi())
                .put("relative_deviation", relativeDeviation())
                .put("label", label())
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof TestCut that && values.equals(that.values);
    }

    @Override
    public int hashCode() {
        return values.hashCode();
    }

    @Override
    public String toString() {
        return test().text() + " of " + QuantityText.forPeople(Kind.LENGTH, thicknessSi()) + " at "
                + QuantityText.forPeople(Kind.SPEED, feedSi());
    }

    private Object writeReplace() {
        return values;
    }

    private void readObject(ObjectInputStream in) throws InvalidObjectException {
        throw new InvalidObjectException("read through its values");
    }
}

package dev.waterjet.calibrate;

import dev.waterjet.calibrate.CutNumbers.Attribute;
import dev.waterjet.calibrate.CutNumbers.Deviations;
import dev.waterjet.calibrate.CutNumbers.Ends;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.measure.Described;
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
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Speed;

/**
 * Test cut with its outcome: a measured value, two ends between which it lies, or whether the plate was separated.
 *
 * <pre>{@code
 * List<TestCut> cuts = TestCut.parse("""
 *         test,thickness_mm,feed_mm_per_min,failed_feed_mm_per_min,pressure_MPa,orifice_mm,tube_mm,abrasive_flow_g_per_min,plate
 *         interval,12,540,600,360,0.30,0.90,400,P1
 *         """);
 * }</pre>
 */
public final class TestCut implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    /** Relative deviation of a feed rate that was judged by eye: assumed, no source. */
    private static final double JUDGEMENT = 0.10;

    static final String PLATE = "plate";

    /** Kind of test. */
    public enum Test {
        /** The feed rate at which a plate was just separated. */
        SEPARATION,
        /** A feed rate at which a plate was separated, and a faster one at which it was not, on one line. */
        INTERVAL,
        /** A feed rate, and whether it separated the plate. */
        TRIAL,
        /** The depth of a groove that did not go through, at a feed rate. */
        DEPTH,
        /** The feed rate that left a cut surface of a quality index. */
        GRADED;

        /** {@return the name in a file of test cuts, in lower case} */
        public String text() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    private final transient CutValues values;

    TestCut(CutValues values) {
        this.values = values;
    }

    private static TestCut of(Test test, AbrasiveJet jet, Ends thickness, Ends index, Ends feed) {
        double relative = test == Test.GRADED && index.isExact() ? JUDGEMENT : 0;
        CutNumbers numbers = new CutNumbers(thickness, index, feed, new Deviations(relative, 0));
        return new TestCut(new CutValues(test, jet, numbers, test != Test.DEPTH, "", List.of()));
    }

    private static Ends same(double value) {
        return new Ends(value, value);
    }

    /**
     * Returns a plate that was just separated, at a feed rate that was measured and not only bounded.
     *
     * @param jet the jet
     * @param thickness thickness of the plate, above 0
     * @param feed feed rate that just separated it, above 0
     * @return the cut
     */
    public static TestCut separated(AbrasiveJet jet, Quantity<Length> thickness, Quantity<Speed> feed) {
        Objects.requireNonNull(feed, "feed");
        Objects.requireNonNull(thickness, "thickness");
        return of(Test.SEPARATION, jet, same(Kind.LENGTH.si(thickness)), same(1), same(Kind.SPEED.si(feed)));
    }

    /**
     * Returns a plate that was separated at one feed rate and not at a faster one, on one line or within a few centimetres, as
     * in a series of rising feed rates. Cuts in separate plates are two trials instead.
     *
     * @param jet the jet
     * @param thickness thickness of the plate, above 0
     * @param feed feed rate that separated it, above 0
     * @param failedFeed feed rate that did not, above {@code feed}
     * @return the cut
     */
    public static TestCut between(
            AbrasiveJet jet, Quantity<Length> thickness, Quantity<Speed> feed, Quantity<Speed> failedFeed) {
        Objects.requireNonNull(failedFeed, "failedFeed");
        Objects.requireNonNull(feed, "feed");
        Objects.requireNonNull(thickness, "thickness");
        Ends feeds = Ends.of(
                "failed feed rate", Kind.SPEED.si(feed), Kind.SPEED.si(failedFeed), Units.MILLIMETRE_PER_MINUTE);
        return of(Test.INTERVAL, jet, same(Kind.LENGTH.si(thickness)), same(1), feeds);
    }

    /**
     * Returns a plate of which is known whether a feed rate separated it.
     *
     * @param jet the jet
     * @param thickness thickness of the plate, above 0
     * @param feed the feed rate, above 0
     * @param isSeparated whether the plate was separated
     * @return the cut
     */
    public static TestCut trial(
            AbrasiveJet jet, Quantity<Length> thickness, Quantity<Speed> feed, boolean isSeparated) {
        Objects.requireNonNull(feed, "feed");
        Objects.requireNonNull(thickness, "thickness");
        CutValues values =
                of(Test.TRIAL, jet, same(Kind.LENGTH.si(thickness)), same(1), same(Kind.SPEED.si(feed))).values;
        return new TestCut(new CutValues(Test.TRIAL, jet, values.numbers(), isSeparated, "", List.of()));
    }

    /**
     * Returns a groove that did not go through.
     *
     * @param jet the jet
     * @param depth depth of the groove, above 0
     * @param feed feed rate, above 0
     * @return the cut
     */
    public static TestCut groove(AbrasiveJet jet, Quantity<Length> depth, Quantity<Speed> feed) {
        Objects.requireNonNull(depth, "depth");
        Objects.requireNonNull(feed, "feed");
        Require.positive("depth of the groove", Kind.LENGTH.si(depth), Units.MILLIMETRE);
        return of(Test.DEPTH, jet, same(Kind.LENGTH.si(depth)), same(1), same(Kind.SPEED.si(feed)));
    }

    /**
     * Returns a wedge that was separated up to one thickness and closed at a greater one.
     *
     * @param jet the jet
     * @param open thickness that was still separated, above 0
     * @param closed thickness that was not, above {@code open}
     * @param feed feed rate, above 0
     * @return the cut
     */
    public static TestCut grooveBetween(
            AbrasiveJet jet, Quantity<Length> open, Quantity<Length> closed, Quantity<Speed> feed) {
        Objects.requireNonNull(closed, "closed");
        Objects.requireNonNull(feed, "feed");
        Objects.requireNonNull(open, "open");
        Ends depth = Ends.of("depth", Kind.LENGTH.si(open), Kind.LENGTH.si(closed), Units.MILLIMETRE);
        return of(Test.DEPTH, jet, depth, same(1), same(Kind.SPEED.si(feed)));
    }

    /**
     * {@return a plate whose cut surface was judged, with a relative deviation of 10 % (assumed)}
     *
     * @param jet the jet
     * @param thickness thickness of the plate, above 0
     * @param index quality index of the cut surface, 1 or more
     * @param feed feed rate that left it, above 0
     */
    public static TestCut graded(AbrasiveJet jet, Quantity<Length> thickness, double index, Quantity<Speed> feed) {
        Objects.requireNonNull(feed, "feed");
        Objects.requireNonNull(thickness, "thickness");
        return of(Test.GRADED, jet, same(Kind.LENGTH.si(thickness)), same(index), same(Kind.SPEED.si(feed)));
    }

    /**
     * {@return a plate whose cut surface was judged to lie between two quality indices}
     *
     * @param jet the jet
     * @param thickness thickness of the plate, above 0
     * @param lowerIndex the lower index, 1 or more
     * @param upperIndex the upper index, above the lower
     * @param feed feed rate that left it, above 0
     */
    public static TestCut gradedBetween(
            AbrasiveJet jet, Quantity<Length> thickness, double lowerIndex, double upperIndex, Quantity<Speed> feed) {
        Objects.requireNonNull(feed, "feed");
        Objects.requireNonNull(thickness, "thickness");
        Ends index = Ends.of("quality index", lowerIndex, upperIndex, Units.ONE);
        return of(Test.GRADED, jet, same(Kind.LENGTH.si(thickness)), index, same(Kind.SPEED.si(feed)));
    }

    /**
     * Reads test cuts from comma-separated text (RFC 4180) with units in the header.
     *
     * <p>Columns, in any order: {@code test}, {@code thickness} of the plate or depth of the groove, {@code feed}, {@code
     * pressure} (gauge, at the orifice), {@code orifice}, {@code tube} and {@code abrasive_flow}. A test is {@code
     * separation}; {@code interval}, with {@code failed_feed} (or {@code feed_upper}); {@code trial}, with {@code separated},
     * yes or no; {@code depth}, where {@code thickness_upper} is the closed end of a wedge; or {@code graded}, with {@code
     * index} and, if judged between two, {@code index_upper}. A separation with a failed feed rate is read as an interval, and one
     * with {@code separated} as a trial.
     *
     * <p>Optional: {@code tube_length} (default: 80 bores), {@code stand_off}, {@code mesh} of the garnet (default: 80), {@code
     * discharge_coefficient}, {@code relative_deviation} of the measurement (default: 0, and 0.10 of a graded cut; added to the
     * scatter of the cuts), {@code reading_deviation} of a depth and {@code label}. A column with a unit has it after its name,
     * {@code thickness_mm} and {@code feed_mm_per_min}, or in brackets, {@code feed [mm/min]}; any unit of its kind is accepted.
     * Other columns, such as {@code plate}, {@code lot} or {@code source}, become {@linkplain #attributes() attributes}. Lines
     * that start with {@code #} are comments.
     *
     * @param csv the text
     * @return the cuts, in the order of the rows
     * @throws dev.waterjet.measure.TextException if a column is missing or repeated, or a cell cannot be read, with line and
     *     column
     */
    public static List<TestCut> parse(String csv) {
        return TestCutReader.read(csv);
    }

    /**
     * Writes test cuts in SI and full precision with all attributes, so that {@link #parse} reads them back.
     *
     * @param cuts the cuts
     * @return the text, with a header and a line end after each row
     */
    public static String print(List<TestCut> cuts) {
        Objects.requireNonNull(cuts, "cuts");
        return TestCutWriter.write(cuts);
    }

    private TestCut with(CutNumbers numbers, String label, List<Attribute> attributes) {
        return new TestCut(
                new CutValues(values.test(), values.jet(), numbers, values.isSeparated(), label, attributes));
    }

    private TestCut with(Deviations deviations) {
        CutNumbers old = values.numbers();
        CutNumbers numbers = new CutNumbers(old.thicknessM(), old.index(), old.feedMPerS(), deviations);
        return with(numbers, values.label(), values.attributes());
    }

    /**
     * Returns this cut with a known deviation of its measurement. It is added to the scatter of the cuts, which the fit finds.
     *
     * @param relativeDeviation relative standard deviation of the feed rate, or of the depth: 0.05 for 5 %
     * @return the cut
     */
    public TestCut withRelativeDeviation(double relativeDeviation) {
        return with(
                new Deviations(relativeDeviation, values.numbers().deviations().readingM()));
    }

    /**
     * {@return this cut with a deviation of the reading of its depth}
     *
     * @param deviation standard deviation, 0 or more; of no effect unless the test is a depth
     */
    public TestCut withReadingDeviation(Quantity<Length> deviation) {
        Objects.requireNonNull(deviation, "deviation");
        return with(new Deviations(values.numbers().deviations().relative(), Kind.LENGTH.si(deviation)));
    }

    /**
     * {@return this cut with a label}
     *
     * @param label any text
     */
    public TestCut withLabel(String label) {
        return with(values.numbers(), label, values.attributes());
    }

    /**
     * {@return this cut with the name of its plate, batch or day}
     *
     * @param plate any text
     */
    public TestCut withPlate(String plate) {
        Objects.requireNonNull(plate, "plate");
        return withAttribute(PLATE, plate);
    }

    /**
     * Returns this cut with an attribute: a column of the file that the fit does not use.
     *
     * @param name name of the column
     * @param text its text
     * @return the cut, with that text in place of an older one of the same name
     */
    public TestCut withAttribute(String name, String text) {
        return with(values.numbers(), values.label(), values.withAttribute(name, text));
    }

    /** {@return the kind of test} */
    public Test test() {
        return values.test();
    }

    /** {@return the jet} */
    public AbrasiveJet jet() {
        return values.jet();
    }

    /** {@return the thickness of the plate, or the depth of the groove; of a wedge the open end} */
    public Quantity<Length> thickness() {
        return Kind.LENGTH.of(thicknessSi());
    }

    /** {@return the quality index of the cut surface, or the lower of two; 1 unless the cut was graded} */
    public double index() {
        return values.numbers().index().lower();
    }

    /** {@return the feed rate; of an interval the one that separated the plate} */
    public Quantity<Speed> feed() {
        return Kind.SPEED.of(feedSi());
    }

    /** {@return the feed rate of an interval that did not separate the plate; else empty} */
    public Optional<Quantity<Speed>> failedFeed() {
        return values.test() == Test.INTERVAL ? Optional.of(Kind.SPEED.of(failedFeedSi())) : Optional.empty();
    }

    /** {@return whether the plate was separated at {@link #feed()}} */
    public boolean isSeparated() {
        return values.isSeparated();
    }

    /** {@return whether a value was measured; false for two ends and for a trial} */
    public boolean isMeasured() {
        return values.isMeasured();
    }

    /** {@return the relative standard deviation of the measurement, beyond the scatter of the cuts} */
    public double relativeDeviation() {
        return values.numbers().deviations().relative();
    }

    /** {@return the standard deviation of the reading of a depth} */
    public Quantity<Length> readingDeviation() {
        return Kind.LENGTH.of(readingDeviationSi());
    }

    /** {@return the label; empty if the cut has none} */
    public String label() {
        return values.label();
    }

    /** {@return the name of the plate; empty if the cut has none} */
    public String plate() {
        return attributes().getOrDefault(PLATE, "");
    }

    /** {@return the columns that the fit does not use by themselves, the plate among them, in their order; unmodifiable} */
    public Map<String, String> attributes() {
        return values.attributeMap();
    }

    double thicknessSi() {
        return values.numbers().thicknessM().lower();
    }

    double upperThicknessSi() {
        return values.numbers().thicknessM().upper();
    }

    double upperIndex() {
        return values.numbers().index().upper();
    }

    double feedSi() {
        return values.numbers().feedMPerS().lower();
    }

    double failedFeedSi() {
        return values.numbers().feedMPerS().upper();
    }

    double readingDeviationSi() {
        return values.numbers().deviations().readingM();
    }

    /** Depth that the jet separated at the feed rate, or would just have separated. */
    double separationDepthSi() {
        return values.numbers().index().lower() * values.numbers().thicknessM().lower();
    }

    @Override
    public Map<String, Object> describe() {
        return values.describe();
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

package dev.waterjet.quality;

import dev.waterjet.evidence.Caution;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.evidence.Evidence;
import dev.waterjet.evidence.EvidenceGrade;
import dev.waterjet.evidence.HasEvidence;
import dev.waterjet.evidence.Source;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.DomainException;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Measures;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.InvalidObjectException;
import java.io.ObjectInputStream;
import java.io.Serializable;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalInt;
import javax.measure.Quantity;
import javax.measure.quantity.Length;

/**
 * Ranges of ISO 9013:2017 for cut surfaces of one thickness. Range 1 is the finest; a value on a limit belongs to the finer
 * range.
 *
 * <p>With a the thickness in mm, the limits of the perpendicularity or angularity tolerance u in mm are 0.05 + 0.003 a,
 * 0.15 + 0.007 a, 0.4 + 0.01 a, 0.8 + 0.02 a, 1.2 + 0.035 a; those of the mean profile height Rz5 in µm 10 + 0.6 a,
 * 40 + 0.8 a, 70 + 1.2 a, 110 + 1.8 a. Values are compared as decimals, not as binary fractions.
 *
 * <p>The standard is written for thermal cutting: it holds for waterjet cuts only where both parties agree on it.
 *
 * <p>Worked number: 10 mm, u = 0.08 mm is in range 1, u = 0.09 mm in range 2.
 */
public final class Iso9013 implements Described, HasEvidence, Serializable {

    private static final long serialVersionUID = 1L;

    private static final Evidence EVIDENCE = Evidence.of(
                    EvidenceGrade.PUBLISHED,
                    Source.of("ISO 9013:2017, Thermal cutting, classification of thermal cuts"))
            .withNote("For waterjet cuts by agreement only. Heights left out at the edges are from memory.");

    private static final Caution BY_AGREEMENT = Caution.notice(Message.of(
            "standard-by-agreement",
            "ISO 9013 is written for thermal cutting; it applies to waterjet cuts only by agreement"));

    /** Greatest thickness of the table of edge heights. */
    private static final double EDGE_TABLE_ENDS_M = 0.3;

    /** Up to this thickness in mm the height left out is a tenth of it. */
    private static final BigDecimal THIN_MM = new BigDecimal("3");

    private static final BigDecimal TENTH = new BigDecimal("0.1");

    /** Height left out at each edge, up to a thickness. From memory. */
    private static final List<EdgeHeight> EDGE_HEIGHTS = List.of(
            EdgeHeight.of("6", "0.3"),
            EdgeHeight.of("10", "0.6"),
            EdgeHeight.of("20", "1"),
            EdgeHeight.of("40", "1.5"),
            EdgeHeight.of("100", "2"),
            EdgeHeight.of("150", "3"),
            EdgeHeight.of("200", "5"),
            EdgeHeight.of("250", "8"),
            EdgeHeight.of("300", "10"));

    private record EdgeHeight(BigDecimal upToMm, BigDecimal heightMm) {

        static EdgeHeight of(String upToMm, String heightMm) {
            return new EdgeHeight(new BigDecimal(upToMm), new BigDecimal(heightMm));
        }
    }

    /** Limit of a range in mm: a constant, and a share of the thickness. */
    private record Line(BigDecimal constantMm, BigDecimal perThickness) {

        static Line of(String constantMm, String perThickness) {
            return new Line(new BigDecimal(constantMm), new BigDecimal(perThickness));
        }

        BigDecimal at(BigDecimal thicknessMm) {
            return constantMm.add(perThickness.multiply(thicknessMm));
        }
    }

    /** Measures that the standard divides into ranges. */
    @SuppressWarnings("ImmutableEnumChecker")
    private enum Measure {
        PERPENDICULARITY(
                "perpendicularity",
                Line.of("0.05", "0.003"),
                Line.of("0.15", "0.007"),
                Line.of("0.4", "0.01"),
                Line.of("0.8", "0.02"),
                Line.of("1.2", "0.035")),
        PROFILE_HEIGHT(
                "profile height",
                Line.of("0.010", "0.0006"),
                Line.of("0.040", "0.0008"),
                Line.of("0.070", "0.0012"),
                Line.of("0.110", "0.0018"));

        private final String label;
        private final List<Line> limits;

        Measure(String label, Line... limits) {
            this.label = label;
            this.limits = List.of(limits);
        }
    }

    /** Checked content, and the serial form. */
    private record Values(BigDecimal thicknessMm) implements Serializable {

        Values {
            Require.positive("thickness", thicknessMm.doubleValue() / 1000, Units.MILLIMETRE);
            thicknessMm = thicknessMm.stripTrailingZeros();
        }

        private Object readResolve() {
            return new Iso9013(this);
        }
    }

    private final transient Values values;

    private Iso9013(Values values) {
        this.values = values;
    }

    /**
     * Returns the ranges for a thickness.
     *
     * @param thickness thickness of the workpiece, above 0
     * @return the ranges
     */
    public static Iso9013 forThickness(Quantity<Length> thickness) {
        Objects.requireNonNull(thickness, "thickness");
        Require.positive("thickness", Kind.LENGTH.si(thickness), Units.MILLIMETRE);
        return new Iso9013(new Values(DecimalLength.millimetres(thickness)));
    }

    /** {@return the number of ranges for perpendicularity, 5} */
    public static int perpendicularityRanges() {
        return Measure.PERPENDICULARITY.limits.size();
    }

    /** {@return the number of ranges for the mean profile height, 4} */
    public static int profileHeightRanges() {
        return Measure.PROFILE_HEIGHT.limits.size();
    }

    /**
     * Returns the maximum perpendicularity tolerance u of a range.
     *
     * @param range 1, the finest, to 5
     * @return the limit, in mm
     */
    public Quantity<Length> perpendicularityLimit(int range) {
        return Measures.millimetres(limit(Measure.PERPENDICULARITY, range).doubleValue());
    }

    /**
     * Returns the maximum mean profile height Rz5 of a range.
     *
     * @param range 1, the finest, to 4
     * @return the limit, in µm
     */
    public Quantity<Length> profileHeightLimit(int range) {
        return Measures.micrometres(
                limit(Measure.PROFILE_HEIGHT, range).movePointRight(3).doubleValue());
    }

    private BigDecimal limit(Measure measure, int range) {
        List<Line> limits = measure.limits;
        Require.between("range of " + measure.label, range, 1, limits.size(), Units.ONE, "the ranges of the standard");
        return limits.get(range - 1).at(values.thicknessMm);
    }

    /**
     * Returns the range of a perpendicularity tolerance.
     *
     * @param perpendicularity the tolerance u, 0 or more
     * @return the finest range that contains it; empty beyond range 5
     */
    public OptionalInt perpendicularityRange(Quantity<Length> perpendicularity) {
        Objects.requireNonNull(perpendicularity, "perpendicularity");
        return range(Measure.PERPENDICULARITY, perpendicularity);
    }

    /**
     * Returns the range of a mean profile height.
     *
     * @param profileHeight the height Rz5, 0 or more
     * @return the finest range that contains it; empty beyond range 4
     */
    public OptionalInt profileHeightRange(Quantity<Length> profileHeight) {
        Objects.requireNonNull(profileHeight, "profileHeight");
        return range(Measure.PROFILE_HEIGHT, profileHeight);
    }

    private OptionalInt range(Measure measure, Quantity<Length> value) {
        Require.notNegative(measure.label, Kind.LENGTH.si(value), Units.MILLIMETRE);
        BigDecimal valueMm = DecimalLength.millimetres(value);
        for (int i = 0; i < measure.limits.size(); i++) {
            if (valueMm.compareTo(measure.limits.get(i).at(values.thicknessMm)) <= 0) {
                return OptionalInt.of(i + 1);
            }
        }
        return OptionalInt.empty();
    }

    /**
     * Returns the probability of each range of perpendicularity for an estimated u.
     *
     * @param perpendicularity the estimate
     * @return a probability for each of the ranges 1 to 5, and last that it is beyond range 5; together 1
     */
    public List<Double> perpendicularityProbabilities(Estimate<Length> perpendicularity) {
        Objects.requireNonNull(perpendicularity, "perpendicularity");
        return probabilities(Measure.PERPENDICULARITY, perpendicularity);
    }

    /**
     * Returns the probability of each range of the mean profile height for an estimated Rz5.
     *
     * @param profileHeight the estimate
     * @return a probability for each of the ranges 1 to 4, and last that it is beyond range 4; together 1
     */
    public List<Double> profileHeightProbabilities(Estimate<Length> profileHeight) {
        Objects.requireNonNull(profileHeight, "profileHeight");
        return probabilities(Measure.PROFILE_HEIGHT, profileHeight);
    }

    private List<Double> probabilities(Measure measure, Estimate<Length> value) {
        List<Double> probabilities = new ArrayList<>();
        double finer = 0;
        for (Line limit : measure.limits) {
            double within = value.probabilityAtMost(
                    Measures.millimetres(limit.at(values.thicknessMm).doubleValue()));
            probabilities.add(within - finer);
            finer = within;
        }
        probabilities.add(1 - finer);
        return probabilities;
    }

    /**
     * Returns the height left out at each edge when u is measured (from memory).
     *
     * @return the height, in mm
     * @throws DomainException if the thickness is above 300 mm, where the table ends
     */
    public Quantity<Length> edgeHeight() {
        BigDecimal thicknessMm = values.thicknessMm;
        if (thicknessMm.compareTo(THIN_MM) <= 0) {
            return Measures.millimetres(thicknessMm.multiply(TENTH).doubleValue());
        }
        for (EdgeHeight step : EDGE_HEIGHTS) {
            if (thicknessMm.compareTo(step.upToMm) <= 0) {
                return Measures.millimetres(step.heightMm.doubleValue());
            }
        }
        throw new DomainException(
                "thickness",
                thicknessMm.doubleValue() / 1000,
                "at most",
                EDGE_TABLE_ENDS_M,
                Units.MILLIMETRE,
                "the table of heights left out at the edges ends there");
    }

    /** {@return the caution that the standard applies to waterjet cuts by agreement only; it belongs beside every range} */
    public static Caution byAgreement() {
        return BY_AGREEMENT;
    }

    @Override
    public Evidence evidence() {
        return EVIDENCE;
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("ranges of ISO 9013")
                .put(
                        "thickness",
                        Kind.LENGTH,
                        values.thicknessMm.movePointLeft(3).doubleValue())
                .put("evidence", EVIDENCE)
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Iso9013 that && values.equals(that.values);
    }

    @Override
    public int hashCode() {
        return values.hashCode();
    }

    @Override
    public String toString() {
        return "ISO 9013 at " + values.thicknessMm.toPlainString() + " mm";
    }

    private Object writeReplace() {
        return values;
    }

    private void readObject(ObjectInputStream in) throws InvalidObjectException {
        throw new InvalidObjectException("read through its values");
    }
}

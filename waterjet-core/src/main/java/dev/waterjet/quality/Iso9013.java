package dev.waterjet.quality;

import dev.waterjet.evidence.Caution;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.evidence.Evidence;
import dev.waterjet.evidence.EvidenceGrade;
import dev.waterjet.evidence.HasEvidence;
import dev.waterjet.evidence.Source;
import dev.waterjet.measure.DomainException;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Measures;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.Serializable;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import javax.measure.Quantity;
import javax.measure.quantity.Length;

/**
 * Ranges of ISO 9013:2017 for cut faces of one thickness. Range 1 is the finest; a value on a limit belongs to the finer
 * range.
 *
 * <p>With a the thickness in mm, the limits of the perpendicularity or angularity tolerance u in mm are 0.05 + 0.003 a,
 * 0.15 + 0.007 a, 0.4 + 0.01 a, 0.8 + 0.02 a, 1.2 + 0.035 a; those of the mean height of the profile Rz5 in um 10 + 0.6 a,
 * 40 + 0.8 a, 70 + 1.2 a, 110 + 1.8 a. Comparisons are made on the decimals, not on binary fractions.
 *
 * <p>The standard is written for thermal cutting: it holds for waterjet cuts only where both parties agree on it.
 *
 * <p>Worked number: 10 mm, u = 0.08 mm lies in range 1, u = 0.09 mm in range 2.
 */
public final class Iso9013 implements HasEvidence, Serializable {

    private static final long serialVersionUID = 1L;

    private static final Evidence EVIDENCE = Evidence.of(
                    EvidenceGrade.PUBLISHED,
                    Source.of("ISO 9013:2017, Thermal cutting, classification of thermal cuts"))
            .withNote("For waterjet cuts by agreement only. Heights left out at the edges are from memory.");

    private static final Caution BY_AGREEMENT = Caution.notice(
            "standard-by-agreement",
            "ISO 9013 is written for thermal cutting; it applies to waterjet cuts only by agreement");

    /** Limits of u: constant in mm, and mm per mm of thickness. */
    private static final List<BigDecimal[]> PERPENDICULARITY = List.of(
            line("0.05", "0.003"),
            line("0.15", "0.007"),
            line("0.4", "0.01"),
            line("0.8", "0.02"),
            line("1.2", "0.035"));

    /** Limits of Rz5: constant in mm, and mm per mm of thickness. */
    private static final List<BigDecimal[]> PROFILE_HEIGHT =
            List.of(line("0.010", "0.0006"), line("0.040", "0.0008"), line("0.070", "0.0012"), line("0.110", "0.0018"));

    /** Height left out at each edge: up to this thickness, in mm, and this height, in mm. From memory. */
    private static final List<BigDecimal[]> EDGE_HEIGHTS = List.of(
            line("6", "0.3"),
            line("10", "0.6"),
            line("20", "1"),
            line("40", "1.5"),
            line("100", "2"),
            line("150", "3"),
            line("200", "5"),
            line("250", "8"),
            line("300", "10"));

    /** Up to this thickness, in mm, the height left out is a tenth of it. */
    private static final BigDecimal THIN = new BigDecimal("3");

    private static final BigDecimal TENTH = new BigDecimal("0.1");

    private final BigDecimal thicknessMm;

    private Iso9013(BigDecimal thicknessMm) {
        this.thicknessMm = thicknessMm;
    }

    private static BigDecimal[] line(String constant, String slope) {
        return new BigDecimal[] {new BigDecimal(constant), new BigDecimal(slope)};
    }

    /**
     * The ranges for a thickness.
     *
     * @param thickness thickness of the workpiece, above zero
     * @return the ranges
     */
    public static Iso9013 forThickness(Quantity<Length> thickness) {
        Require.positive("thickness", Kind.LENGTH.si(thickness), Units.MILLIMETRE);
        return new Iso9013(DecimalLength.millimetres(thickness));
    }

    /**
     * How many ranges there are for perpendicularity.
     *
     * @return 5
     */
    public static int perpendicularityRanges() {
        return PERPENDICULARITY.size();
    }

    /**
     * How many ranges there are for the height of the profile.
     *
     * @return 4
     */
    public static int profileHeightRanges() {
        return PROFILE_HEIGHT.size();
    }

    /**
     * Greatest perpendicularity tolerance u of a range.
     *
     * @param range 1, the finest, to 5
     * @return the limit, in mm
     */
    public Quantity<Length> perpendicularityLimit(int range) {
        return Measures.millimetres(
                limit(PERPENDICULARITY, "range of perpendicularity", range).doubleValue());
    }

    /**
     * Greatest mean height of the profile Rz5 of a range.
     *
     * @param range 1, the finest, to 4
     * @return the limit, in um
     */
    public Quantity<Length> profileHeightLimit(int range) {
        return Measures.micrometres(limit(PROFILE_HEIGHT, "range of profile height", range)
                .movePointRight(3)
                .doubleValue());
    }

    private BigDecimal limit(List<BigDecimal[]> lines, String name, int range) {
        Require.between(name, range, 1, lines.size(), Units.ONE, "the ranges of the standard");
        return at(lines.get(range - 1));
    }

    private BigDecimal at(BigDecimal[] line) {
        return line[0].add(line[1].multiply(thicknessMm));
    }

    /**
     * Range of a perpendicularity tolerance.
     *
     * @param perpendicularity the tolerance u, zero or more
     * @return the finest range that holds it; nothing if it is beyond range 5
     */
    public OptionalInt perpendicularityRange(Quantity<Length> perpendicularity) {
        return range(PERPENDICULARITY, "perpendicularity", perpendicularity);
    }

    /**
     * Range of a mean height of the profile.
     *
     * @param profileHeight the height Rz5, zero or more
     * @return the finest range that holds it; nothing if it is beyond range 4
     */
    public OptionalInt profileHeightRange(Quantity<Length> profileHeight) {
        return range(PROFILE_HEIGHT, "profile height", profileHeight);
    }

    private OptionalInt range(List<BigDecimal[]> lines, String name, Quantity<Length> value) {
        Require.notNegative(name, Kind.LENGTH.si(value), Units.MILLIMETRE);
        BigDecimal valueMm = DecimalLength.millimetres(value);
        for (int i = 0; i < lines.size(); i++) {
            if (valueMm.compareTo(at(lines.get(i))) <= 0) {
                return OptionalInt.of(i + 1);
            }
        }
        return OptionalInt.empty();
    }

    /**
     * Probability of each range of perpendicularity for an estimated u.
     *
     * @param perpendicularity the estimate
     * @return a probability for ranges 1 to 5, and last that it is beyond range 5; together 1
     */
    public List<Double> perpendicularityProbabilities(Estimate<Length> perpendicularity) {
        return probabilities(PERPENDICULARITY, perpendicularity);
    }

    /**
     * Probability of each range of profile height for an estimated Rz5.
     *
     * @param profileHeight the estimate
     * @return a probability for ranges 1 to 4, and last that it is beyond range 4; together 1
     */
    public List<Double> profileHeightProbabilities(Estimate<Length> profileHeight) {
        return probabilities(PROFILE_HEIGHT, profileHeight);
    }

    private List<Double> probabilities(List<BigDecimal[]> lines, Estimate<Length> value) {
        List<Double> odds = new ArrayList<>();
        double finer = 0;
        for (BigDecimal[] line : lines) {
            double held = value.probabilityAtMost(Measures.millimetres(at(line).doubleValue()));
            odds.add(held - finer);
            finer = held;
        }
        odds.add(1 - finer);
        return odds;
    }

    /**
     * Height left out at each edge when u is measured (from memory).
     *
     * @return the height, in mm
     * @throws DomainException if the thickness is above 300 mm, where the table ends
     */
    public Quantity<Length> edgeHeight() {
        if (thicknessMm.compareTo(THIN) <= 0) {
            return Measures.millimetres(thicknessMm.multiply(TENTH).doubleValue());
        }
        for (BigDecimal[] step : EDGE_HEIGHTS) {
            if (thicknessMm.compareTo(step[0]) <= 0) {
                return Measures.millimetres(step[1].doubleValue());
            }
        }
        throw new DomainException(
                "thickness",
                thicknessMm.doubleValue() / 1000,
                "at most",
                0.3,
                Units.MILLIMETRE,
                "the table of heights left out at the edges ends there");
    }

    /**
     * That the standard applies to waterjet cuts by agreement only; to be shown beside every range.
     *
     * @return the caution
     */
    public static Caution byAgreement() {
        return BY_AGREEMENT;
    }

    @Override
    public Evidence evidence() {
        return EVIDENCE;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Iso9013 that && thicknessMm.compareTo(that.thicknessMm) == 0;
    }

    @Override
    public int hashCode() {
        return thicknessMm.stripTrailingZeros().hashCode();
    }

    @Override
    public String toString() {
        return "ISO 9013 at " + thicknessMm.toPlainString() + " mm";
    }
}

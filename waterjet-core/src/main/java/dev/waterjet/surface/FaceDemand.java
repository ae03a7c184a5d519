package dev.waterjet.surface;

import dev.waterjet.kerf.LagGeometry;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import dev.waterjet.quality.CutQuality;
import dev.waterjet.quality.Iso9013;
import java.io.Serializable;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Angle;
import javax.measure.quantity.Length;

/**
 * What a drawing asks of a face. Each {@code with...} adds a demand or replaces one of its kind.
 *
 * <pre>{@code
 * FaceDemand.none().withGrade(FaceGrade.MEDIUM).withTaper(degrees(0.5)).withRoughness(micrometres(6))
 * }</pre>
 */
public final class FaceDemand implements Serializable {

    private static final long serialVersionUID = 1L;

    private static final FaceDemand NONE = new FaceDemand(List.of(), Map.of());

    /** The grade asked, if any. */
    private final List<CutQuality> grades;

    /** Every other demand in SI, an arc by the lag that it allows in m. */
    private final EnumMap<FastestFeed.Requirement, Double> limits;

    private FaceDemand(List<CutQuality> grades, Map<FastestFeed.Requirement, Double> limits) {
        this.grades = grades;
        this.limits = new EnumMap<>(FastestFeed.Requirement.class);
        this.limits.putAll(limits);
    }

    /**
     * Nothing asked but that the jet cuts through.
     *
     * @return the demand to start from
     */
    public static FaceDemand none() {
        return NONE;
    }

    private FaceDemand with(FastestFeed.Requirement item, double limit) {
        FaceDemand changed = new FaceDemand(grades, limits);
        changed.limits.put(item, limit);
        return changed;
    }

    /**
     * With a face grade.
     *
     * @param grade the grade
     * @return the demand with that grade
     */
    public FaceDemand withQuality(CutQuality grade) {
        return new FaceDemand(List.of(grade), limits);
    }

    /**
     * With a range of ISO 9013 for perpendicularity, which applies by agreement.
     *
     * @param range 1, the finest, to 5
     * @return the demand with that range
     */
    public FaceDemand withPerpendicularityRange(int range) {
        Require.between(
                "range of perpendicularity",
                range,
                1,
                Iso9013.perpendicularityRanges(),
                Units.ONE,
                "the ranges of the standard");
        return with(FastestFeed.Requirement.PERPENDICULARITY_RANGE, range);
    }

    /**
     * With a range of ISO 9013 for the height of the profile, which applies by agreement.
     *
     * @param range 1, the finest, to 4
     * @return the demand with that range
     */
    public FaceDemand withProfileHeightRange(int range) {
        Require.between(
                "range of profile height",
                range,
                1,
                Iso9013.profileHeightRanges(),
                Units.ONE,
                "the ranges of the standard");
        return with(FastestFeed.Requirement.PROFILE_HEIGHT_RANGE, range);
    }

    /**
     * With a greatest taper.
     *
     * @param perSide taper per side, half of the included angle, zero or more
     * @return the demand with that taper
     */
    public FaceDemand withTaper(Quantity<Angle> perSide) {
        return with(FastestFeed.Requirement.TAPER, Require.notNegative("taper per side", Kind.ANGLE.si(perSide), Units.DEGREE));
    }

    /**
     * With a greatest roughness at the exit.
     *
     * @param ra Ra, above zero
     * @return the demand with that roughness
     */
    public FaceDemand withRoughness(Quantity<Length> ra) {
        return with(FastestFeed.Requirement.ROUGHNESS, Require.positive("roughness Ra", Kind.LENGTH.si(ra), Units.MICROMETRE));
    }

    /**
     * With a greatest error on the smallest arc, in the tangent geometry.
     *
     * @param radius radius of the arc
     * @param error greatest error
     * @return the demand with that tolerance
     */
    public FaceDemand withArc(Quantity<Length> radius, Quantity<Length> error) {
        return with(
                FastestFeed.Requirement.LAG_ON_ARC,
                LagGeometry.TANGENT.allowedLag(radius, error).map(Kind.LENGTH::si).orElseThrow());
    }

    Optional<CutQuality> quality() {
        return grades.stream().findFirst();
    }

    Map<FastestFeed.Requirement, Double> limits() {
        return limits;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof FaceDemand that && grades.equals(that.grades) && limits.equals(that.limits);
    }

    @Override
    public int hashCode() {
        return Objects.hash(grades, limits);
    }

    @Override
    public String toString() {
        return "face demand " + grades + limits;
    }
}

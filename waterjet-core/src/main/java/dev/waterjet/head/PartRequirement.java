package dev.waterjet.head;

import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import dev.waterjet.quality.CutQuality;
import java.io.Serializable;
import java.util.Map;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Speed;

/**
 * What a part asks of a head: plate, grade of its faces, length of cut, pierces, and where the drawing says so its smallest
 * inner radius, its narrowest passage and how square its walls must be.
 */
public final class PartRequirement implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    /** A limit that is not there. */
    private static final double NONE = Double.MAX_VALUE;

    private final Workpiece piece;
    private final CutQuality grade;
    private final double lengthM;
    private final int pierces;
    private final double radiusM;
    private final double passageM;
    private final double toleranceM;
    private final double leastFeedMPerS;

    private PartRequirement(
            Workpiece piece,
            CutQuality grade,
            double lengthM,
            int pierces,
            double radiusM,
            double passageM,
            double toleranceM,
            double leastFeedMPerS) {
        this.piece = Objects.requireNonNull(piece, "piece");
        this.grade = Objects.requireNonNull(grade, "grade");
        this.lengthM = Require.positive("length of cut", lengthM, Units.MILLIMETRE);
        this.pierces = (int) Require.atLeast("number of pierces", pierces, 0, Units.ONE, "");
        this.radiusM = Require.positive("smallest inner radius", radiusM, Units.MILLIMETRE);
        this.passageM = Require.positive("narrowest passage", passageM, Units.MILLIMETRE);
        this.toleranceM = Require.positive("tolerance of the walls", toleranceM, Units.MILLIMETRE);
        this.leastFeedMPerS = Require.notNegative("least feed", leastFeedMPerS, Units.MILLIMETRE_PER_MINUTE);
    }

    /**
     * A part whose drawing limits nothing but its faces: one pierce, and any feed will do.
     *
     * @param piece the plate
     * @param grade grade of its faces
     * @param length length of cut, above zero
     * @return the demand
     */
    public static PartRequirement of(Workpiece piece, CutQuality grade, Quantity<Length> length) {
        return new PartRequirement(piece, grade, Kind.LENGTH.si(length), 1, NONE, NONE, NONE, 0);
    }

    /**
     * This demand with another number of pierces.
     *
     * @param count how many, zero or more
     * @return the demand with those pierces
     */
    public PartRequirement withPierces(int count) {
        return new PartRequirement(piece, grade, lengthM, count, radiusM, passageM, toleranceM, leastFeedMPerS);
    }

    /**
     * This demand with a smallest inner radius.
     *
     * @param radius radius of the tightest inside corner, above zero
     * @return the demand with that radius
     */
    public PartRequirement withSmallestRadius(Quantity<Length> radius) {
        return new PartRequirement(
                piece, grade, lengthM, pierces, Kind.LENGTH.si(radius), passageM, toleranceM, leastFeedMPerS);
    }

    /**
     * This demand with a narrowest passage, such as a slot, which no kerf may exceed.
     *
     * @param width its width, above zero
     * @return the demand with that passage
     */
    public PartRequirement withMinimumSlotWidth(Quantity<Length> width) {
        return new PartRequirement(
                piece, grade, lengthM, pierces, radiusM, Kind.LENGTH.si(width), toleranceM, leastFeedMPerS);
    }

    /**
     * This demand with a tolerance of the walls.
     *
     * @param tolerance how far a wall may be from straight and square over its whole height, above zero
     * @return the demand with that tolerance
     */
    public PartRequirement withTolerance(Quantity<Length> tolerance) {
        return new PartRequirement(
                piece, grade, lengthM, pierces, radiusM, passageM, Kind.LENGTH.si(tolerance), leastFeedMPerS);
    }

    /**
     * This demand with a least feed, below which a head is too weak to be worth its time.
     *
     * @param feed the feed, zero or more
     * @return the demand with that feed
     */
    public PartRequirement withMinimumFeed(Quantity<Speed> feed) {
        return new PartRequirement(piece, grade, lengthM, pierces, radiusM, passageM, toleranceM, Kind.SPEED.si(feed));
    }

    /**
     * The plate.
     *
     * @return the workpiece
     */
    public Workpiece workpiece() {
        return piece;
    }

    /**
     * Grade of the faces.
     *
     * @return the grade
     */
    public CutQuality quality() {
        return grade;
    }

    public double lengthSi() {
        return lengthM;
    }

    public int pierces() {
        return pierces;
    }

    public double radiusSi() {
        return radiusM;
    }

    public double passageSi() {
        return passageM;
    }

    public double toleranceSi() {
        return toleranceM;
    }

    public double minimumFeedSi() {
        return leastFeedMPerS;
    }

    @Override
    public Map<String, Object> describe() {
        Description description = Description.of("demand of a part")
                .put("piece", piece)
                .put("grade", grade)
                .put("length", Kind.LENGTH, lengthM)
                .put("pierces", pierces)
                .put("least_feed", Kind.SPEED, leastFeedMPerS);
        put(description, "smallest_radius", radiusM);
        put(description, "narrowest_passage", passageM);
        put(description, "tolerance", toleranceM);
        return description.map();
    }

    private static void put(Description description, String label, double limitM) {
        if (limitM < NONE) {
            description.put(label, Kind.LENGTH, limitM);
        }
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof PartRequirement that
                && piece.equals(that.piece)
                && grade == that.grade
                && lengthM == that.lengthM
                && pierces == that.pierces
                && radiusM == that.radiusM
                && passageM == that.passageM
                && toleranceM == that.toleranceM
                && leastFeedMPerS == that.leastFeedMPerS;
    }

    @Override
    public int hashCode() {
        return Objects.hash(piece, grade, lengthM, pierces, radiusM, passageM, toleranceM, leastFeedMPerS);
    }

    @Override
    public String toString() {
        return QuantityText.print(Kind.LENGTH, Kind.LENGTH.of(lengthM), Units.METRE, 3) + " of " + grade.label()
                + " cut in " + piece;
    }
}

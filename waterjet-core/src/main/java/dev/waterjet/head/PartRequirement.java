package dev.waterjet.head;

import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import dev.waterjet.part.Contour;
import dev.waterjet.part.Part;
import dev.waterjet.part.Side;
import dev.waterjet.quality.CutQuality;
import dev.waterjet.quality.EdgeRequirement;
import java.io.InvalidObjectException;
import java.io.ObjectInputStream;
import java.io.Serializable;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Speed;
import org.jspecify.annotations.Nullable;

/**
 * Requirements of a part on a cutting head: workpiece, cut quality, cut length, number of pierces, and where the drawing
 * limits them, minimum inner radius, minimum slot width and wall tolerance.
 *
 * <pre>{@code
 * PartRequirement requirement = PartRequirement.of(plate, CutQuality.MEDIUM, metres(1.5))
 *         .withPierces(4)
 *         .withMinimumInnerRadius(millimetres(0.6));
 * }</pre>
 */
public final class PartRequirement implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    /** Checked content, and the serial form. An absent limit is null. */
    private record Values(
            Workpiece workpiece,
            CutQuality quality,
            double lengthM,
            int pierces,
            double minimumFeedMPerS,
            Limits limits)
            implements Serializable {

        private static final long serialVersionUID = 1L;

        Values {
            Objects.requireNonNull(workpiece, "workpiece");
            Objects.requireNonNull(quality, "quality");
            Objects.requireNonNull(limits, "limits");
            lengthM = Require.positive("cut length", lengthM, Units.MILLIMETRE);
            pierces = (int) Require.atLeast("number of pierces", pierces, 0, Units.ONE, "");
            minimumFeedMPerS = Require.notNegative("minimum feed rate", minimumFeedMPerS, Units.MILLIMETRE_PER_MINUTE);
        }

        private PartRequirement with(Limits changed) {
            return new PartRequirement(new Values(workpiece, quality, lengthM, pierces, minimumFeedMPerS, changed));
        }

        private Object readResolve() {
            return new PartRequirement(this);
        }
    }

    /** Limits of the drawing, in m. */
    private record Limits(
            @Nullable Double radiusM,
            @Nullable Double slotM,
            @Nullable Double wallM) implements Serializable {

        private static final long serialVersionUID = 1L;

        Limits {
            radiusM = checked("minimum inner radius", radiusM);
            slotM = checked("minimum slot width", slotM);
            wallM = checked("wall tolerance", wallM);
        }

        private static @Nullable Double checked(String name, @Nullable Double lengthM) {
            return lengthM == null ? null : (Double) Require.positive(name, lengthM, Units.MILLIMETRE);
        }
    }

    private final transient Values values;

    private PartRequirement(Values values) {
        this.values = values;
    }

    /**
     * Returns a requirement with one pierce, any feed rate and no limits on its features.
     *
     * @param workpiece the workpiece
     * @param quality cut quality of its edges
     * @param length cut length, above zero
     * @return the requirement
     */
    public static PartRequirement of(Workpiece workpiece, CutQuality quality, Quantity<Length> length) {
        Objects.requireNonNull(length, "length");
        return new PartRequirement(
                new Values(workpiece, quality, Kind.LENGTH.si(length), 1, 0, new Limits(null, null, null)));
    }

    /**
     * Returns the requirement of a part, read from its geometry: the finest cut quality, the length of all contours, a pierce for
     * each, and the features that limit the size of the jet.
     *
     * @param part the part
     * @param workpiece the workpiece
     * @return the requirement
     */
    public static PartRequirement of(Part part, Workpiece workpiece) {
        double length = 0;
        CutQuality finest = CutQuality.VERY_COARSE;
        for (Contour contour : part.contours()) {
            length += contour.lengthSi();
            for (EdgeRequirement edge : contour.requirements()) {
                finest = edge.quality().compareTo(finest) > 0 ? edge.quality() : finest;
            }
        }
        PartRequirement requirement = of(workpiece, finest, Kind.LENGTH.of(length))
                .withPierces(part.contours().size());
        for (int i = 0; i < part.contours().size(); i++) {
            requirement = requirement.withFeaturesOf(part.contours().get(i), part.partSide(i));
        }
        return requirement;
    }

    /**
     * Returns this requirement with the features of a contour, where they are smaller than those before: the smallest radius of
     * arcs that are hollow seen from the part, and the narrowest passage up to 2.4 mm.
     *
     * @param contour contour of the part
     * @param side side of the contour on which the part lies
     * @return the requirement
     */
    public PartRequirement withFeaturesOf(Contour contour, Side side) {
        FeatureReader reader = new FeatureReader(contour, side);
        return values.with(new Limits(
                smaller(values.limits.radiusM, reader.innerRadius()),
                smaller(values.limits.slotM, reader.slotWidth()),
                values.limits.wallM));
    }

    private static @Nullable Double smaller(@Nullable Double before, OptionalDouble found) {
        return found.isEmpty() || (before != null && before < found.getAsDouble())
                ? before
                : Double.valueOf(found.getAsDouble());
    }

    /**
     * Returns this requirement with another number of pierces.
     *
     * @param count number of pierces, zero or more
     * @return the requirement
     */
    public PartRequirement withPierces(int count) {
        return new PartRequirement(new Values(
                values.workpiece, values.quality, values.lengthM, count, values.minimumFeedMPerS, values.limits));
    }

    /**
     * Returns this requirement with a minimum inner radius.
     *
     * @param radius radius of the tightest inside corner, above zero
     * @return the requirement
     */
    public PartRequirement withMinimumInnerRadius(Quantity<Length> radius) {
        Objects.requireNonNull(radius, "radius");
        return values.with(new Limits(Kind.LENGTH.si(radius), values.limits.slotM, values.limits.wallM));
    }

    /**
     * Returns this requirement with a minimum slot width, which no kerf may exceed.
     *
     * @param width width of the slot, above zero
     * @return the requirement
     */
    public PartRequirement withMinimumSlotWidth(Quantity<Length> width) {
        Objects.requireNonNull(width, "width");
        return values.with(new Limits(values.limits.radiusM, Kind.LENGTH.si(width), values.limits.wallM));
    }

    /**
     * Returns this requirement with a wall tolerance.
     *
     * @param tolerance maximum deviation of a wall from straight and square over its whole height, above zero
     * @return the requirement
     */
    public PartRequirement withWallTolerance(Quantity<Length> tolerance) {
        Objects.requireNonNull(tolerance, "tolerance");
        return values.with(new Limits(values.limits.radiusM, values.limits.slotM, Kind.LENGTH.si(tolerance)));
    }

    /**
     * Returns this requirement with a minimum feed rate, below which a head is rejected.
     *
     * @param feed the feed rate, zero or more
     * @return the requirement
     */
    public PartRequirement withMinimumFeed(Quantity<Speed> feed) {
        Objects.requireNonNull(feed, "feed");
        return new PartRequirement(new Values(
                values.workpiece, values.quality, values.lengthM, values.pierces, Kind.SPEED.si(feed), values.limits));
    }

    /** {@return the workpiece} */
    public Workpiece workpiece() {
        return values.workpiece;
    }

    /** {@return the cut quality} */
    public CutQuality quality() {
        return values.quality;
    }

    /** {@return the cut length} */
    public Quantity<Length> length() {
        return Kind.LENGTH.of(values.lengthM);
    }

    /** {@return the number of pierces} */
    public int pierces() {
        return values.pierces;
    }

    /** {@return the minimum feed rate; zero if any is accepted} */
    public Quantity<Speed> minimumFeed() {
        return Kind.SPEED.of(values.minimumFeedMPerS);
    }

    /** {@return the minimum inner radius, if the drawing limits it} */
    public Optional<Quantity<Length>> minimumInnerRadius() {
        return Optional.ofNullable(values.limits.radiusM).map(Kind.LENGTH::of);
    }

    /** {@return the minimum slot width, if the drawing limits it} */
    public Optional<Quantity<Length>> minimumSlotWidth() {
        return Optional.ofNullable(values.limits.slotM).map(Kind.LENGTH::of);
    }

    /** {@return the wall tolerance, if the drawing limits it} */
    public Optional<Quantity<Length>> wallTolerance() {
        return Optional.ofNullable(values.limits.wallM).map(Kind.LENGTH::of);
    }

    double lengthSi() {
        return values.lengthM;
    }

    double minimumFeedSi() {
        return values.minimumFeedMPerS;
    }

    OptionalDouble minimumInnerRadiusSi() {
        return optional(values.limits.radiusM);
    }

    OptionalDouble minimumSlotWidthSi() {
        return optional(values.limits.slotM);
    }

    OptionalDouble wallToleranceSi() {
        return optional(values.limits.wallM);
    }

    private static OptionalDouble optional(@Nullable Double si) {
        return si == null ? OptionalDouble.empty() : OptionalDouble.of(si);
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("part requirement")
                .put("workpiece", values.workpiece)
                .put("quality", values.quality)
                .put("length", Kind.LENGTH, values.lengthM)
                .put("pierces", values.pierces)
                .put("minimum_feed", Kind.SPEED, values.minimumFeedMPerS)
                .put("minimum_inner_radius", Kind.LENGTH, minimumInnerRadiusSi())
                .put("minimum_slot_width", Kind.LENGTH, minimumSlotWidthSi())
                .put("wall_tolerance", Kind.LENGTH, wallToleranceSi())
                .map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof PartRequirement that && values.equals(that.values);
    }

    @Override
    public int hashCode() {
        return values.hashCode();
    }

    @Override
    public String toString() {
        return QuantityText.print(Kind.LENGTH, length(), Units.METRE, 3) + " of cut quality " + values.quality.label()
                + " in " + values.workpiece;
    }

    private Object writeReplace() {
        return values;
    }

    private void readObject(ObjectInputStream in) throws InvalidObjectException {
        throw new InvalidObjectException("read through its values");
    }
}

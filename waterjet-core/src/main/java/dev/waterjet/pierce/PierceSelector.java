package dev.waterjet.pierce;

import dev.waterjet.evidence.Caution;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.feed.CutConditions;
import dev.waterjet.material.MaterialClass;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import dev.waterjet.part.Contour;
import dev.waterjet.part.Part;
import dev.waterjet.part.Point;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Pressure;
import javax.measure.quantity.Time;

/**
 * Selector of the pierce method, by the class of the material, its thickness and the settings of the shop.
 *
 * <pre>{@code
 * Pierce pierce = PierceSelector.of(PierceSettings.defaults()).select(cut);
 * }</pre>
 *
 * <ul>
 *   <li>Ductile and soft plates: stationary, or moving where the clearance around the pierce point allows it and it saves more
 *       than a second; on a circle in a thick plate.
 *   <li>Brittle and laminated plates: as the ductile ones if their strength bears the pressure in the blind hole; else the
 *       first millimetres at low pressure with the abrasive first, at the minimum pressure of the pump or at a higher one that
 *       the plate bears. The same rule holds with and without a known strength. A strength of the catalogue counts with the lower
 *       end of its 90 % interval.
 *   <li>Laminated plates whose layers separate even at the minimum pressure of the pump: through a drilled hole.
 * </ul>
 */
public final class PierceSelector {

    /** Minimum time that makes a moving pierce worth while, in s. Common practice. */
    private static final double WORTH_MOVING_S = 1;

    /** Clearance that a moving pierce requires, in exit bores of the focusing tube. Common practice. */
    private static final double MOVING_BORES = 4;

    /** Thickness from which a moving jet goes on a circle, so that the water has a way out. Common practice, no source. */
    private static final double CIRCULAR_FROM_M = 0.010;

    /** Interval of a strength of the catalogue whose lower end counts. Assumed. */
    private static final double STRENGTH_COVERAGE = 0.9;

    private final PierceSettings settings;
    private final Map<PierceMethod, PierceModel> models;

    private PierceSelector(PierceSettings settings, Map<PierceMethod, PierceModel> models) {
        this.settings = Objects.requireNonNull(settings, "settings");
        this.models = models;
    }

    /**
     * Returns a selector whose times are derived from the feed model of the cut.
     *
     * @param settings settings of the shop
     * @return the selector
     */
    public static PierceSelector of(PierceSettings settings) {
        return new PierceSelector(settings, Map.of());
    }

    /**
     * Returns this selector with a model timed by the shop, in place of the derived one.
     *
     * @param method method that was timed
     * @param model the model, for the jet and the material of the cuts to come
     * @return the selector with that model
     */
    public PierceSelector withModel(PierceMethod method, PierceModel model) {
        Objects.requireNonNull(method, "method");
        Map<PierceMethod, PierceModel> more = new EnumMap<>(PierceMethod.class);
        more.putAll(models);
        more.put(method, Objects.requireNonNull(model, "model"));
        return new PierceSelector(settings, more);
    }

    private PierceModel model(PierceMethod method, CutConditions cut) {
        PierceModel timed = models.get(method);
        return timed == null ? PierceModel.derived(cut, method) : timed;
    }

    private Estimate<Time> time(PierceMethod method, CutConditions cut) {
        return model(method, cut).time(cut.workpiece().thickness());
    }

    /**
     * Selects the method for a plate, with the clearance of the settings.
     *
     * @param cut conditions of the cut to come
     * @return method, pressure, time and reason
     */
    public Pierce select(CutConditions cut) {
        return select(cut, settings.pierceClearance());
    }

    /**
     * Selects the method for one contour of a part, by the scrap around its pierce point: the jet can move within twice the
     * distance to the nearest contour, and within the clearance of the settings. A small hole can thus be pierced stationary
     * where the outline is pierced by a moving jet.
     *
     * @param cut conditions of the cut to come
     * @param part the part
     * @param place pierce point, in scrap
     * @return method, pressure, time and reason
     */
    public Pierce select(CutConditions cut, Part part, Point place) {
        Objects.requireNonNull(place, "place");
        double nearest = Double.POSITIVE_INFINITY;
        for (Contour contour : part.contours()) {
            nearest = Math.min(nearest, Kind.LENGTH.si(contour.clearance(place)));
        }
        return select(cut, Kind.LENGTH.of(2 * nearest));
    }

    /**
     * Selects the method for one pierce point.
     *
     * @param cut conditions of the cut to come
     * @param clearance width of scrap around the point, 0 or more; no more than that of the settings counts
     * @return method, pressure, time and reason
     */
    public Pierce select(CutConditions cut, Quantity<Length> clearance) {
        Objects.requireNonNull(clearance, "clearance");
        Objects.requireNonNull(cut, "cut");
        double width = Require.notNegative("pierce clearance", Kind.LENGTH.si(clearance), Units.MILLIMETRE);
        MaterialClass materialClass = cut.material().materialClass();
        OptionalDouble strength = borne(cut);
        if (materialClass == MaterialClass.DUCTILE
                || materialClass == MaterialClass.SOFT
                || (strength.isPresent()
                        && PierceSettings.safePressure(strength.getAsDouble())
                                >= cut.jet().pressureSi())) {
            return atFullPressure(cut, width);
        }
        double minimumPa = pascals(settings.minimumPressure());
        OptionalDouble expected = strength(cut, Estimate::si);
        boolean isTooWeak = materialClass == MaterialClass.LAMINATED
                && expected.isPresent()
                && expected.getAsDouble() < pascals(PierceSettings.blindHolePressure(settings.minimumPressure()));
        if (isTooWeak) {
            return drilled(cut, expected.getAsDouble());
        }
        double safePa = strength.isPresent() ? PierceSettings.safePressure(strength.getAsDouble()) : 0;
        return atLowPressure(cut, Math.min(cut.jet().pressureSi(), Math.max(minimumPa, safePa)), strength);
    }

    /** Strength on which a higher pressure than the minimum may rest. */
    private OptionalDouble borne(CutConditions cut) {
        return strength(cut, known -> Kind.PRESSURE.si(known.lower(STRENGTH_COVERAGE)));
    }

    /** Strength that keeps the plate whole: that of the shop, else a number of that of the catalogue. */
    private OptionalDouble strength(CutConditions cut, ToDoubleFunction<Estimate<Pressure>> ofCatalogue) {
        return settings.strength()
                .map(known -> OptionalDouble.of(pascals(known)))
                .orElseGet(() -> cut.material()
                        .strength()
                        .map(known -> OptionalDouble.of(ofCatalogue.applyAsDouble(known)))
                        .orElseGet(OptionalDouble::empty));
    }

    private static double pascals(Quantity<Pressure> pressure) {
        return Kind.PRESSURE.si(pressure);
    }

    private Pierce atFullPressure(CutConditions cut, double widthM) {
        PierceMethod movingMethod = cut.thicknessSi() < CIRCULAR_FROM_M ? PierceMethod.MOVING : PierceMethod.CIRCULAR;
        Estimate<Time> stationary = time(PierceMethod.STATIONARY, cut);
        Estimate<Time> moving = time(movingMethod, cut);
        double saved = stationary.si() - moving.si();
        double clearanceM = MOVING_BORES * cut.jet().tubeExitBoreSi();
        boolean isWorth = saved > WORTH_MOVING_S;
        boolean isAllowed = Kind.LENGTH.si(settings.pierceClearance()) >= clearanceM;
        boolean isMoving = isWorth && isAllowed && widthM >= clearanceM;
        Estimate<Time> time = isMoving ? moving : stationary;
        PierceMethod method = isMoving ? movingMethod : PierceMethod.STATIONARY;
        return new Pierce(
                method,
                cut.jet().water().pressure(),
                time,
                Kind.TIME.of(0),
                (isWorth && isAllowed && !isMoving ? inNarrowScrap(widthM) : atFullPressure(isWorth, method))
                        .with("material_class", word(cut))
                        .with("saved", Kind.TIME, saved, Units.SECOND)
                        .with("clearance", Kind.LENGTH, clearanceM, Units.MILLIMETRE),
                time.cautions());
    }

    private static Message inNarrowScrap(double widthM) {
        return Message.of(
                        "pierce-in-narrow-scrap",
                        "a {material_class} plate bears the full pressure; a moving pierce would save {saved} but"
                                + " requires a clearance of {clearance}, and the scrap around this pierce point is {width}"
                                + " wide")
                .with("width", Kind.LENGTH, widthM, Units.MILLIMETRE);
    }

    private static Message atFullPressure(boolean isWorth, PierceMethod method) {
        if (method == PierceMethod.MOVING) {
            return Message.of(
                    "pierce-moving", "a {material_class} plate bears the full pressure; a moving pierce saves {saved}");
        }
        if (method == PierceMethod.CIRCULAR) {
            return Message.of(
                    "pierce-circular",
                    "a {material_class} plate bears the full pressure; a circle lets the water out of the deep hole and"
                            + " saves {saved}");
        }
        return isWorth
                ? Message.of(
                        "pierce-without-clearance",
                        "a {material_class} plate bears the full pressure; a moving pierce would save {saved} but"
                                + " requires a clearance of {clearance}")
                : Message.of(
                        "pierce-stationary",
                        "a {material_class} plate bears the full pressure; a moving pierce would save only {saved}");
    }

    private Pierce atLowPressure(CutConditions cut, double pressurePa, OptionalDouble strength) {
        double depthM = Math.min(Kind.LENGTH.si(settings.lowPressureDepth()), cut.thicknessSi());
        Quantity<Pressure> pressure = Kind.PRESSURE.of(pressurePa);
        CutConditions atLow = cut.withJet(cut.jet().withPressure(pressure));
        if (!(atLow.separationFeedSi(depthM) > 0) && !models.containsKey(PierceMethod.LOW_PRESSURE)) {
            return drilled(
                    cut,
                    Message.of("pierce-not-at-low-pressure", "the jet does not cut {material} at {low_pressure}")
                            .with("material", cut.material().name())
                            .with("low_pressure", Kind.PRESSURE, pressurePa, Units.MEGAPASCAL));
        }
        Estimate<Time> time = lowPressureTime(cut, atLow, depthM);
        List<Caution> cautions = new ArrayList<>(time.cautions());
        cautions.add(PierceCautions.of(cut, pressurePa, depthM, strength));
        return new Pierce(
                PierceMethod.LOW_PRESSURE,
                pressure,
                time,
                settings.rampTime(),
                reason(pressurePa, strength)
                        .with("material_class", word(cut))
                        .with("low_depth", Kind.LENGTH, depthM, Units.MILLIMETRE),
                cautions);
    }

    /** A model that the shop timed at low pressure holds for the whole depth; else the pressure is raised at a depth. */
    private Estimate<Time> lowPressureTime(CutConditions cut, CutConditions atLow, double depthM) {
        PierceModel low = model(PierceMethod.LOW_PRESSURE, atLow);
        if (models.containsKey(PierceMethod.LOW_PRESSURE) || depthM >= cut.thicknessSi()) {
            return low.time(cut.workpiece().thickness());
        }
        PierceModel full = model(PierceMethod.STATIONARY, cut);
        double deeper = full.timeSi(cut.thicknessSi()) - full.timeSi(depthM);
        double total = low.timeSi(depthM) + deeper;
        double uncertainty =
                (low.timeSi(depthM) * low.relativeUncertainty() + deeper * full.relativeUncertainty()) / total;
        List<Caution> cautions = Stream.of(low, full)
                .flatMap(model -> model.estimate(total).cautions().stream())
                .distinct()
                .toList();
        return Estimate.withinFactor(Kind.TIME, total, uncertainty, cautions);
    }

    private static Message reason(double pressurePa, OptionalDouble strength) {
        if (strength.isEmpty()) {
            return Message.of(
                    "pierce-strength-unknown",
                    "the first {low_depth} of a {material_class} plate of unknown strength at the minimum pressure of"
                            + " the pump");
        }
        boolean isWithin = PierceSettings.safePressure(strength.getAsDouble()) >= pressurePa;
        Message reason = isWithin
                ? Message.of(
                        "pierce-within-strength",
                        "the first {low_depth} at low pressure: about half of the pressure acts in the blind hole, and"
                                + " the {material_class} plate bears {strength}")
                : Message.of(
                        "pierce-above-strength",
                        "the first {low_depth} at the minimum pressure of the pump: no pressure of it leaves a margin"
                                + " to the {strength} of this {material_class} plate");
        return reason.with("strength", Kind.PRESSURE, strength.getAsDouble(), Units.MEGAPASCAL);
    }

    private Pierce drilled(CutConditions cut, double strengthPa) {
        return drilled(
                cut,
                Message.of(
                                "pierce-drilled",
                                "pre-drill: no pressure of this pump is safe; even its minimum pressure,"
                                        + " {minimum_pressure}, may delaminate a plate that bears {strength}")
                        .with("minimum_pressure", Kind.PRESSURE, pascals(settings.minimumPressure()), Units.MEGAPASCAL)
                        .with("strength", Kind.PRESSURE, strengthPa, Units.MEGAPASCAL));
    }

    private Pierce drilled(CutConditions cut, Message reason) {
        return new Pierce(
                PierceMethod.PRE_DRILLED,
                cut.jet().water().pressure(),
                Estimate.of(Kind.TIME, 0, 0),
                settings.drillTime(),
                reason,
                List.of());
    }

    private static String word(CutConditions cut) {
        return cut.material().materialClass().name().toLowerCase(Locale.ROOT);
    }
}

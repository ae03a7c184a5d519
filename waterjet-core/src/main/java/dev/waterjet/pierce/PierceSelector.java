package dev.waterjet.pierce;

import dev.waterjet.evidence.Caution;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.feed.CutConditions;
import dev.waterjet.material.MaterialClass;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.Units;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import javax.measure.Quantity;
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
 *   <li>Ductile and soft plates: stationary, or moving where the clearance allows it and it saves more than a second.
 *   <li>Brittle and laminated plates: as the ductile ones if their strength bears the pressure in the blind hole; else at low
 *       pressure with the abrasive first; and if even the minimum pressure of the pump is too high, through a drilled hole.
 * </ul>
 */
public final class PierceSelector {

    /** Minimum time that makes a moving pierce worth while, in s. Common practice. */
    private static final double WORTH_MOVING_S = 1;

    /** Clearance that a moving pierce requires, in exit bores of the focusing tube. Common practice. */
    private static final double MOVING_BORES = 4;

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
        Map<PierceMethod, PierceModel> more = new EnumMap<>(PierceMethod.class);
        more.putAll(models);
        more.put(method, Objects.requireNonNull(model, "model"));
        return new PierceSelector(settings, more);
    }

    private Estimate<Time> time(PierceMethod method, CutConditions cut) {
        PierceModel timed = models.get(method);
        PierceModel model = timed == null ? PierceModel.derived(cut, method) : timed;
        return model.time(cut.workpiece().thickness());
    }

    /**
     * Selects the method for a plate.
     *
     * @param cut conditions of the cut to come
     * @return method, pressure, time and reason
     */
    public Pierce select(CutConditions cut) {
        MaterialClass materialClass = cut.material().materialClass();
        Optional<Quantity<Pressure>> safe = settings.safePressure();
        if (materialClass == MaterialClass.DUCTILE
                || materialClass == MaterialClass.SOFT
                || (safe.isPresent() && pascals(safe.get()) >= cut.jet().pressureSi())) {
            return atFullPressure(cut);
        }
        return safe.isPresent() && pascals(safe.get()) < pascals(settings.minimumPressure())
                ? drilled(cut)
                : atLowPressure(cut);
    }

    private static double pascals(Quantity<Pressure> pressure) {
        return Kind.PRESSURE.si(pressure);
    }

    private Pierce atFullPressure(CutConditions cut) {
        Estimate<Time> stationary = time(PierceMethod.STATIONARY, cut);
        Estimate<Time> moving = time(PierceMethod.MOVING, cut);
        double saved = stationary.si() - moving.si();
        double clearanceM = MOVING_BORES * cut.jet().tubeExitBoreSi();
        boolean isWorth = saved > WORTH_MOVING_S;
        boolean isMoving = isWorth && Kind.LENGTH.si(settings.pierceClearance()) >= clearanceM;
        Estimate<Time> time = isMoving ? moving : stationary;
        return new Pierce(
                isMoving ? PierceMethod.MOVING : PierceMethod.STATIONARY,
                cut.jet().water().pressure(),
                time,
                Kind.TIME.of(0),
                atFullPressure(isWorth, isMoving)
                        .with("material_class", word(cut))
                        .with("saved", Kind.TIME, saved, Units.SECOND)
                        .with("clearance", Kind.LENGTH, clearanceM, Units.MILLIMETRE),
                time.cautions());
    }

    private static Message atFullPressure(boolean isWorth, boolean isMoving) {
        if (isMoving) {
            return Message.of(
                    "pierce-moving", "a {material_class} plate bears the full pressure; a moving pierce saves {saved}");
        }
        return isWorth
                ? Message.of(
                        "pierce-without-clearance",
                        "a {material_class} plate bears the full pressure; a moving pierce would save {saved} but requires"
                                + " a clearance of {clearance}")
                : Message.of(
                        "pierce-stationary",
                        "a {material_class} plate bears the full pressure; a moving pierce would save only {saved}");
    }

    private Pierce atLowPressure(CutConditions cut) {
        double pressurePa =
                Math.min(cut.jet().pressureSi(), pascals(settings.safePressure().orElse(settings.minimumPressure())));
        Quantity<Pressure> pressure = Kind.PRESSURE.of(pressurePa);
        Estimate<Time> time =
                time(PierceMethod.LOW_PRESSURE, cut.withJet(cut.jet().withPressure(pressure)));
        List<Caution> cautions = new ArrayList<>(time.cautions());
        if (settings.strength().isEmpty()) {
            cautions.add(Caution.warning(Message.of(
                    "strength-unknown",
                    "half of the pressure must be below the strength that keeps this plate whole, which is unknown; try"
                            + " on scrap or drill the hole")));
        }
        Message reason = settings.strength()
                .map(strength -> Message.of(
                                "pierce-within-strength",
                                "about half of the pressure acts in the blind hole, and the plate bears {strength}")
                        .with("strength", Kind.PRESSURE, pascals(strength), Units.MEGAPASCAL))
                .orElseGet(() -> Message.of(
                                "pierce-strength-unknown",
                                "a {material_class} plate of unknown strength gets the minimum pressure of the pump")
                        .with("material_class", word(cut)));
        return new Pierce(PierceMethod.LOW_PRESSURE, pressure, time, settings.rampTime(), reason, cautions);
    }

    private Pierce drilled(CutConditions cut) {
        Message reason = Message.of(
                        "pierce-drilled",
                        "even the minimum pressure of the pump, {minimum_pressure}, may crack or delaminate a plate that"
                                + " bears {strength}")
                .with("minimum_pressure", Kind.PRESSURE, pascals(settings.minimumPressure()), Units.MEGAPASCAL)
                .with(
                        "strength",
                        Kind.PRESSURE,
                        settings.strength().map(Kind.PRESSURE::si).orElse(0.0),
                        Units.MEGAPASCAL);
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

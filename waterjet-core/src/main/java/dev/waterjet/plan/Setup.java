package dev.waterjet.plan;

import dev.waterjet.cost.Prices;
import dev.waterjet.feed.CutConditions;
import dev.waterjet.feed.FeedModel;
import dev.waterjet.feed.MachinabilityFeed;
import dev.waterjet.hydraulics.PumpSetting;
import dev.waterjet.jet.Abrasive;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.jet.CuttingHead;
import dev.waterjet.jet.Mesh;
import dev.waterjet.kerf.KerfModel;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.MassFlow;
import dev.waterjet.measure.Measures;
import dev.waterjet.motion.MachineLimits;
import dev.waterjet.motion.TiltingHead;
import dev.waterjet.pierce.PierceSettings;
import dev.waterjet.quality.EdgeRequirement;
import dev.waterjet.sheet.Slats;
import java.io.InvalidObjectException;
import java.io.ObjectInputStream;
import java.io.Serializable;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Consumer;
import javax.measure.Quantity;
import javax.measure.quantity.Acceleration;
import javax.measure.quantity.Pressure;
import javax.measure.quantity.Speed;
import javax.measure.quantity.Time;

/**
 * Machine and shop: head, pump, abrasive, machine limits, models, delays, slats and prices. It is given once and serves every
 * part.
 *
 * <pre>{@code
 * Setup setup = Setup.of(head, PumpSetting.of(megapascals(380), litresPerMinute(3.5)), machine)
 *         .withAbrasive(Abrasive.garnet(Mesh.of(80)), gramsPerMinute(450))
 *         .withPrices(prices);
 * PartPlan plan = PartPlanner.of(setup).plan(part, workpiece);
 * }</pre>
 *
 * <p>Defaults: 80 mesh garnet at 450 g/min, the machinability model, the standard kerf model, default pierce settings, rapid
 * traverse at 10 m/min and 1 m/s2, no delays, a feed change of 3 % (all common practice or assumed, no source); no slats, no
 * prices and a head that stays upright.
 */
public final class Setup implements Described, Serializable {

    private static final long serialVersionUID = 1L;

    /** Change of the feed rate within a move that splits no edge: each has one feed rate. */
    public static final double ANY_FEED_CHANGE = 1e9;

    private final transient SetupValues values;

    Setup(SetupValues values) {
        this.values = values;
    }

    /**
     * Returns a setup with defaults for everything else.
     *
     * @param head cutting head
     * @param pump setting of the pump
     * @param machine limits of the machine
     * @return the setup
     */
    public static Setup of(CuttingHead head, PumpSetting pump, MachineLimits machine) {
        return new Setup(new SetupValues(
                head,
                pump,
                machine,
                Abrasive.garnet(Mesh.of(80)),
                Kind.MASS_FLOW.si(Measures.gramsPerMinute(450)),
                MachinabilityFeed.published(),
                KerfModel.standard(),
                PierceSettings.defaults(),
                EdgeRequirement.defaults(),
                Kind.SPEED.si(Measures.millimetresPerMinute(10_000)),
                1,
                0,
                0,
                0.03,
                null,
                null,
                null,
                null));
    }

    private Setup with(Consumer<SetupValues.Draft> change) {
        SetupValues.Draft draft = new SetupValues.Draft(values);
        change.accept(draft);
        return new Setup(draft.values());
    }

    /**
     * Returns this setup with another head.
     *
     * @param head cutting head
     * @return the setup
     */
    public Setup withHead(CuttingHead head) {
        return with(draft -> draft.head = head);
    }

    /**
     * Returns this setup with another abrasive.
     *
     * @param abrasive abrasive
     * @param flow abrasive flow rate, above 0
     * @return the setup
     */
    public Setup withAbrasive(Abrasive abrasive, Quantity<MassFlow> flow) {
        Objects.requireNonNull(flow, "flow");
        return with(draft -> {
            draft.abrasive = abrasive;
            draft.abrasiveFlow = Kind.MASS_FLOW.si(flow);
        });
    }

    /**
     * Returns this setup with another feed model, such as a calibration by own cuts.
     *
     * @param model feed model
     * @return the setup
     */
    public Setup withFeedModel(FeedModel model) {
        Objects.requireNonNull(model, "model");
        return with(draft -> draft.feedModel = model);
    }

    /**
     * Returns this setup with another kerf model, and its lag model.
     *
     * @param model kerf model
     * @return the setup
     */
    public Setup withKerfModel(KerfModel model) {
        Objects.requireNonNull(model, "model");
        return with(draft -> draft.kerfModel = model);
    }

    /**
     * Returns this setup with other pierce settings.
     *
     * @param settings pierce settings
     * @return the setup
     */
    public Setup withPierceSettings(PierceSettings settings) {
        Objects.requireNonNull(settings, "settings");
        return with(draft -> draft.pierceSettings = settings);
    }

    /**
     * Returns this setup with another requirement on the edges of a program that states none.
     *
     * @param requirement the requirement
     * @return the setup
     */
    public Setup withRequirement(EdgeRequirement requirement) {
        return with(draft -> draft.requirement = requirement);
    }

    /**
     * Returns this setup with another rapid traverse.
     *
     * @param speed maximum speed, above 0
     * @param acceleration acceleration from and to rest, above 0
     * @return the setup
     */
    public Setup withRapidTraverse(Quantity<Speed> speed, Quantity<Acceleration> acceleration) {
        Objects.requireNonNull(acceleration, "acceleration");
        Objects.requireNonNull(speed, "speed");
        return with(draft -> {
            draft.rapidSpeed = Kind.SPEED.si(speed);
            draft.rapidAcceleration = Kind.ACCELERATION.si(acceleration);
        });
    }

    /**
     * Returns this setup with delays in which the jet does not cut: head lift, valve, abrasive feed.
     *
     * @param perPierce delay per pierce, 0 or more
     * @param perMove delay per rapid traverse, 0 or more
     * @return the setup
     */
    public Setup withDelays(Quantity<Time> perPierce, Quantity<Time> perMove) {
        Objects.requireNonNull(perMove, "perMove");
        Objects.requireNonNull(perPierce, "perPierce");
        return with(draft -> {
            draft.pierceDelay = Kind.TIME.si(perPierce);
            draft.moveDelay = Kind.TIME.si(perMove);
        });
    }

    /**
     * Returns this setup with another change of the feed rate within a move. Moves are split where it changes by more.
     *
     * @param share relative change, 0 or more; with {@link #ANY_FEED_CHANGE} each edge is one move
     * @return the setup
     */
    public Setup withFeedChange(double share) {
        return with(draft -> draft.feedChange = share);
    }

    /**
     * Returns this setup with slats, on which parts are checked for tipping.
     *
     * @param slats the slats
     * @return the setup
     */
    public Setup withSlats(Slats slats) {
        Objects.requireNonNull(slats, "slats");
        return with(draft -> draft.slats = slats);
    }

    /**
     * Returns this setup with the shear strength of the plate: a part that can tip is then held by three tabs.
     *
     * @param strength shear strength, above 0
     * @return the setup
     */
    public Setup withShearStrength(Quantity<Pressure> strength) {
        Objects.requireNonNull(strength, "strength");
        return with(draft -> draft.shearStrength = Kind.PRESSURE.si(strength));
    }

    /**
     * Returns this setup with a tilting head: plans then have the side tilt and the lead angle along their paths, and run as
     * fast at corners as the lag that remains allows.
     *
     * @param head limits of the head, and what it compensates
     * @return the setup
     */
    public Setup withTiltingHead(TiltingHead head) {
        Objects.requireNonNull(head, "head");
        return with(draft -> draft.tiltingHead = head);
    }

    /**
     * Returns this setup with prices.
     *
     * @param prices the prices
     * @return the setup
     */
    public Setup withPrices(Prices prices) {
        Objects.requireNonNull(prices, "prices");
        return with(draft -> draft.prices = prices);
    }

    /** {@return the cutting head} */
    public CuttingHead head() {
        return values.head();
    }

    /** {@return the setting of the pump} */
    public PumpSetting pump() {
        return values.pump();
    }

    /** {@return the limits of the machine} */
    public MachineLimits machine() {
        return values.machine();
    }

    /** {@return the feed model} */
    public FeedModel feedModel() {
        return values.feedModel();
    }

    /** {@return the kerf model} */
    public KerfModel kerfModel() {
        return values.kerfModel();
    }

    /** {@return the pierce settings} */
    public PierceSettings pierceSettings() {
        return values.pierceSettings();
    }

    /** {@return the requirement on the edges of a program that states none} */
    public EdgeRequirement requirement() {
        return values.requirement();
    }

    /** {@return the relative change of the feed rate above which a move is split} */
    public double feedChange() {
        return values.feedChange();
    }

    /** {@return the slats, if they are given} */
    public Optional<Slats> slats() {
        return Optional.ofNullable(values.slats());
    }

    /** {@return the shear strength of the plate, if it is given} */
    public Optional<Quantity<Pressure>> shearStrength() {
        return Optional.ofNullable(values.shearStrength()).map(Kind.PRESSURE::of);
    }

    /** {@return the tilting head, if there is one} */
    public Optional<TiltingHead> tiltingHead() {
        return Optional.ofNullable(values.tiltingHead());
    }

    /** {@return the prices, if they are given} */
    public Optional<Prices> prices() {
        return Optional.ofNullable(values.prices());
    }

    /** {@return the jet of the head at the pressure of the pump} */
    public AbrasiveJet jet() {
        return values.head().jet(values.pump().pressure(), values.abrasive(), Kind.MASS_FLOW.of(values.abrasiveFlow()));
    }

    /**
     * Returns the conditions of a cut.
     *
     * @param workpiece workpiece
     * @return the conditions
     */
    public CutConditions conditions(Workpiece workpiece) {
        return CutConditions.of(jet(), workpiece, values.feedModel());
    }

    double pierceDelaySi() {
        return values.pierceDelay();
    }

    double moveDelaySi() {
        return values.moveDelay();
    }

    /** Time of rapid traverse from rest to rest: s/v + v/a where the speed is reached, else 2 sqrt(s/a). */
    double rapidTimeSi(double lengthM) {
        double reach = values.rapidSpeed() * values.rapidSpeed() / values.rapidAcceleration();
        return lengthM >= reach
                ? lengthM / values.rapidSpeed() + values.rapidSpeed() / values.rapidAcceleration()
                : 2 * Math.sqrt(lengthM / values.rapidAcceleration());
    }

    double rapidSpeedSi() {
        return values.rapidSpeed();
    }

    @Override
    public Map<String, Object> describe() {
        Description description = Description.of("setup")
                .put("head", values.head())
                .put("pump", values.pump())
                .put("machine", values.machine())
                .put("abrasive", values.abrasive())
                .put("abrasive_flow", Kind.MASS_FLOW, values.abrasiveFlow())
                .put("feed_model", values.feedModel().name())
                .put("kerf_model", values.kerfModel())
                .put("pierce_settings", values.pierceSettings())
                .put("requirement", values.requirement())
                .put("rapid_speed", Kind.SPEED, values.rapidSpeed())
                .put("rapid_acceleration", Kind.ACCELERATION, values.rapidAcceleration())
                .put("pierce_delay", Kind.TIME, values.pierceDelay())
                .put("move_delay", Kind.TIME, values.moveDelay())
                .put("feed_change", values.feedChange());
        shearStrength()
                .ifPresent(strength -> description.put("shear_strength", Kind.PRESSURE, Kind.PRESSURE.si(strength)));
        slats().ifPresent(slats -> description.put("slats", slats.toString()));
        tiltingHead().ifPresent(head -> description.put("tilting_head", head));
        prices().ifPresent(prices -> description.put("prices", prices));
        return description.map();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Setup that && values.equals(that.values);
    }

    @Override
    public int hashCode() {
        return values.hashCode();
    }

    @Override
    public String toString() {
        return "setup, " + values.head() + ", " + values.pump();
    }

    private Object writeReplace() {
        return values;
    }

    private void readObject(ObjectInputStream in) throws InvalidObjectException {
        throw new InvalidObjectException("read through its values");
    }
}

package dev.waterjet.hardening;

import static dev.waterjet.hardening.MonotonicityTest.Way.FALLS;
import static dev.waterjet.hardening.MonotonicityTest.Way.RISES;
import static dev.waterjet.hardening.Setting.Knob.ABRASIVE_FLOW;
import static dev.waterjet.hardening.Setting.Knob.ACCELERATION;
import static dev.waterjet.hardening.Setting.Knob.BORE;
import static dev.waterjet.hardening.Setting.Knob.FEED;
import static dev.waterjet.hardening.Setting.Knob.HOURS;
import static dev.waterjet.hardening.Setting.Knob.INDEX;
import static dev.waterjet.hardening.Setting.Knob.LENGTH;
import static dev.waterjet.hardening.Setting.Knob.MACHINABILITY;
import static dev.waterjet.hardening.Setting.Knob.ORIFICE;
import static dev.waterjet.hardening.Setting.Knob.PARTS;
import static dev.waterjet.hardening.Setting.Knob.PRESSURE;
import static dev.waterjet.hardening.Setting.Knob.SPEED;
import static dev.waterjet.hardening.Setting.Knob.TEMPERATURE;
import static dev.waterjet.hardening.Setting.Knob.THICKNESS;
import static dev.waterjet.hardening.Setting.Knob.TUBE;
import static dev.waterjet.hardening.Setting.Knob.VOLUME;
import static dev.waterjet.hardening.Setting.Knob.WATER_FLOW;
import static org.assertj.core.api.Assertions.assertThat;

import dev.waterjet.cost.Batch;
import dev.waterjet.cost.BatchCost;
import dev.waterjet.cost.Consumable;
import dev.waterjet.cost.Consumption;
import dev.waterjet.cost.CostItem;
import dev.waterjet.cost.PartWork;
import dev.waterjet.cost.Prices;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.feed.CutConditions;
import dev.waterjet.feed.DeclinationFeed;
import dev.waterjet.feed.ErosionFeed;
import dev.waterjet.feed.FeedModel;
import dev.waterjet.feed.MachinabilityFeed;
import dev.waterjet.feed.SpecificEnergyFeed;
import dev.waterjet.hydraulics.Attenuator;
import dev.waterjet.hydraulics.Compression;
import dev.waterjet.hydraulics.IsentropicJet;
import dev.waterjet.hydraulics.SupplyLine;
import dev.waterjet.hydraulics.WaterJet;
import dev.waterjet.jet.MixingEfficiency;
import dev.waterjet.jet.TubeWear;
import dev.waterjet.kerf.Kerf;
import dev.waterjet.kerf.KerfModel;
import dev.waterjet.material.Materials;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.WaterjetException;
import dev.waterjet.motion.FeedPlanner;
import dev.waterjet.motion.MachineLimits;
import dev.waterjet.motion.QualityFeeds;
import dev.waterjet.part.Contour;
import dev.waterjet.part.Point;
import dev.waterjet.part.Side;
import dev.waterjet.pierce.PierceSelector;
import dev.waterjet.pierce.PierceSettings;
import dev.waterjet.quality.EdgeRequirement;
import dev.waterjet.sheet.SheetFill;
import dev.waterjet.surface.SurfaceModel;
import dev.waterjet.water.Water;
import dev.waterjet.water.WaterState;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.function.ToDoubleFunction;
import javax.measure.Quantity;
import javax.measure.quantity.Time;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Directions in which results must change with their inputs: laws that hold for any model of a quantity, for any
 * numbers. Each is tried on pairs of cuts that differ in that one thing.
 */
class MonotonicityTest {

    private static final int PAIRS = 120;

    /** A refusal is no answer, but most settings must get one. */
    private static final int FEWEST_ANSWERED = 60;

    /** A law of what never changes would be none. */
    private static final int FEWEST_CHANGED = 10;

    /** Rounding, and the tolerance of the solvers. */
    private static final double ROUNDING = 1e-9;

    private static final FeedModel FEEDS = MachinabilityFeed.published();

    enum Way {
        RISES,
        FALLS
    }

    record Law(String name, Way way, Setting.Knob knob, ToDoubleFunction<Setting> answer) {
        @Override
        public String toString() {
            return name + " " + way + " with " + knob;
        }
    }

    static List<Law> laws() {
        List<Law> laws = new ArrayList<>();
        ofWater(laws);
        ofSupply(laws);
        ofJet(laws);
        ofFeed(laws);
        ofFace(laws);
        ofPath(laws);
        ofJob(laws);
        return laws;
    }

    private static void ofWater(List<Law> laws) {
        laws.add(new Law("density", RISES, PRESSURE, s -> water(s).densitySi()));
        laws.add(new Law("density", FALLS, TEMPERATURE, s -> water(s).densitySi()));
        laws.add(new Law("enthalpy", RISES, PRESSURE, s -> water(s).enthalpySi()));
        laws.add(new Law("enthalpy", RISES, TEMPERATURE, s -> water(s).enthalpySi()));
        laws.add(new Law("entropy", RISES, TEMPERATURE, s -> water(s).entropySi()));
        laws.add(new Law("speed of sound", RISES, PRESSURE, s -> water(s).soundSpeedSi()));
        laws.add(new Law("compressibility", FALLS, PRESSURE, s -> water(s).compressibilitySi()));
        laws.add(new Law("viscosity", FALLS, TEMPERATURE, s -> water(s).viscositySi()));
        laws.add(new Law(
                "work of compression",
                RISES,
                PRESSURE,
                s -> Kind.SPECIFIC_ENERGY.si(Compression.isentropic(
                                Water.stable().atSi(0.1e6, s.get(TEMPERATURE)), Kind.PRESSURE.of(s.get(PRESSURE)))
                        .work())));
        laws.add(new Law(
                "speed of the full expansion",
                RISES,
                PRESSURE,
                s -> IsentropicJet.of(Kind.PRESSURE.of(s.get(PRESSURE)), Kind.TEMPERATURE.of(293.15))
                        .speedSi()));
    }

    private static void ofSupply(List<Law> laws) {
        laws.add(new Law("loss of the line", RISES, WATER_FLOW, MonotonicityTest::lineLoss));
        laws.add(new Law("loss of the line", RISES, LENGTH, MonotonicityTest::lineLoss));
        laws.add(new Law("loss of the line", FALLS, BORE, MonotonicityTest::lineLoss));
        laws.add(new Law(
                "surge",
                RISES,
                WATER_FLOW,
                s -> Kind.PRESSURE.si(line(s).surge(Kind.MASS_FLOW.of(s.get(WATER_FLOW)), supplied()))));
        laws.add(new Law(
                "ripple",
                FALLS,
                VOLUME,
                s -> Kind.PRESSURE.si(
                        Attenuator.of(Kind.VOLUME.of(s.get(VOLUME))).ripple(Kind.VOLUME.of(1e-6), supplied()))));
    }

    private static void ofJet(List<Law> laws) {
        for (Setting.Knob knob : List.of(PRESSURE, ORIFICE)) {
            laws.add(new Law("flow of water", RISES, knob, s -> waterJet(s).massFlowSi()));
            laws.add(new Law(
                    "power of the jet",
                    RISES,
                    knob,
                    s -> Kind.POWER.si(waterJet(s).ratedHydraulicPower())));
            laws.add(new Law(
                    "reaction force",
                    RISES,
                    knob,
                    s -> Kind.FORCE.si(waterJet(s).reactionForce())));
            laws.add(new Law("speed of the grains", RISES, knob, s -> s.jet().particleSpeedSi()));
        }
        laws.add(new Law("speed of the water", RISES, PRESSURE, s -> waterJet(s).speedSi()));
        laws.add(new Law(
                "speed of the grains", FALLS, ABRASIVE_FLOW, s -> s.jet().particleSpeedSi()));
        laws.add(new Law("loading", RISES, ABRASIVE_FLOW, s -> s.jet().loadingRatioSi()));
    }

    private static void ofFeed(List<Law> laws) {
        List<FeedModel> models = List.of(
                FEEDS,
                MachinabilityFeed.publishedByWaterFlow(),
                SpecificEnergyFeed.ofSteel(),
                DeclinationFeed.linear(FEEDS),
                DeclinationFeed.threeHalvesPower(FEEDS));
        for (FeedModel model : models) {
            String feed = "feed by the model of " + model.name();
            ToDoubleFunction<Setting> answer = s -> feed(model, s);
            laws.add(new Law(feed, RISES, PRESSURE, answer));
            laws.add(new Law(feed, RISES, ORIFICE, answer));
            laws.add(new Law(feed, FALLS, THICKNESS, answer));
            laws.add(new Law(feed, FALLS, INDEX, answer));
            laws.add(new Law(
                    feed + ", inverse", FALLS, FEED, s -> model.separationDepthSi(s.jet(), s.material(), s.get(FEED))));
            laws.add(new Law(
                    feed + ", graded",
                    FALLS,
                    FEED,
                    s -> model.indexSi(s.jet(), s.material(), s.get(THICKNESS), s.get(FEED))));
        }
        laws.add(new Law("feed", RISES, MACHINABILITY, s -> feed(FEEDS, s)));
        laws.add(new Law("feed", RISES, ABRASIVE_FLOW, s -> feed(FEEDS, s)));
        laws.add(new Law("feed", FALLS, TUBE, s -> feed(FEEDS, s)));
        for (Setting.Knob knob : List.of(THICKNESS, INDEX)) {
            laws.add(new Law(
                    "feed by erosion",
                    FALLS,
                    knob,
                    s -> ErosionFeed.standard()
                            .feedSi(s.jet(), Materials.standard().get("titanium"), s.get(THICKNESS), s.get(INDEX))));
        }
        laws.add(new Law(
                "feed by a loaded jet",
                RISES,
                PRESSURE,
                s -> feed(FEEDS.corrected(MixingEfficiency.standard(), 0.15), s)));
    }

    private static void ofFace(List<Law> laws) {
        laws.add(new Law("lag", RISES, FEED, s -> kerf(s).lag().atExit().si()));
        laws.add(new Law("exit width", FALLS, FEED, s -> kerf(s).exitWidth().si()));
        laws.add(new Law("entry width", RISES, TUBE, s -> kerf(s).entryWidth().si()));
        laws.add(new Law(
                "roughness at the exit",
                RISES,
                FEED,
                s -> SurfaceModel.standard()
                        .surface(CutConditions.of(s.jet(), s.piece(), FEEDS), Kind.SPEED.of(s.get(FEED)))
                        .roughness()
                        .raAtExit()
                        .si()));
    }

    private static void ofPath(List<Law> laws) {
        laws.add(new Law("time along a contour", FALLS, SPEED, MonotonicityTest::contourTime));
        laws.add(new Law("time along a contour", FALLS, ACCELERATION, MonotonicityTest::contourTime));
        laws.add(new Law("time along a contour", RISES, THICKNESS, MonotonicityTest::contourTime));
        laws.add(new Law("time along a contour", FALLS, MACHINABILITY, MonotonicityTest::contourTime));
    }

    private static void ofJob(List<Law> laws) {
        laws.add(new Law(
                "time to pierce",
                RISES,
                THICKNESS,
                s -> PierceSelector.of(PierceSettings.defaults())
                        .select(CutConditions.of(
                                s.jet(), Workpiece.of(s.material(), Kind.LENGTH.of(s.get(THICKNESS))), FEEDS))
                        .time()
                        .si()));
        laws.add(new Law("time of a batch", RISES, PARTS, s -> cost(s).time().si()));
        laws.add(new Law("cost of a batch", RISES, PARTS, s -> cost(s).total().si()));
        laws.add(new Law("cost of a part", FALLS, PARTS, s -> cost(s).perPart().si()));
        laws.add(new Law(
                "endurance of the hopper",
                FALLS,
                ABRASIVE_FLOW,
                s -> Kind.TIME.si(Consumption.timeToEmptyHopper(s.jet(), 1, Kind.MASS.of(250)))));
        laws.add(new Law(
                "parts on a sheet",
                RISES,
                LENGTH,
                s -> sheet(s).square(Kind.LENGTH.of(50e-3), Kind.LENGTH.of(50e-3))
                        .parts()));
        laws.add(new Law(
                "staggered parts on a sheet",
                RISES,
                LENGTH,
                s -> sheet(s).staggered(Kind.LENGTH.of(50e-3)).parts()));
        laws.add(new Law(
                "bore of a worn tube",
                RISES,
                HOURS,
                s -> TubeWear.of(Kind.SPEED.of(3e-10))
                        .after(s.jet().head().tube(), hours(s))
                        .exitBoreSi()));
        laws.add(new Law(
                "chance that a tube is worn",
                RISES,
                HOURS,
                s -> Consumable.focusingTube().failureProbability(hours(s))));
        laws.add(new Law(
                "life left to a tube",
                FALLS,
                HOURS,
                s -> Kind.TIME.si(Consumable.focusingTube().remainingLife(hours(s), 0.5))));
    }

    @ParameterizedTest
    @MethodSource("laws")
    void holds(Law law) {
        SplittableRandom random = new SplittableRandom(law.toString().hashCode());
        int answered = 0;
        int changed = 0;
        for (int pair = 0; pair < PAIRS; pair++) {
            Setting setting = Setting.draw(random);
            double one = law.knob().draw(random);
            double other = law.knob().draw(random);
            try {
                double low = law.answer().applyAsDouble(setting.with(law.knob(), Math.min(one, other)));
                double high = law.answer().applyAsDouble(setting.with(law.knob(), Math.max(one, other)));
                answered++;
                changed += low == high ? 0 : 1;
                double rise = law.way() == RISES ? high - low : low - high;
                assertThat(rise)
                        .as("%s: %s and %s at %s to %s of %s", law, low, high, one, other, setting)
                        .isGreaterThanOrEqualTo(-ROUNDING * Math.abs(low));
            } catch (WaterjetException refused) {
                // a setting that the library does not take says nothing of the law
            }
        }
        assertThat(answered).as("answers to %s", law).isGreaterThanOrEqualTo(FEWEST_ANSWERED);
        assertThat(changed).as("changes by %s", law).isGreaterThanOrEqualTo(FEWEST_CHANGED);
    }

    private static WaterState water(Setting setting) {
        return Water.stable().atSi(setting.get(PRESSURE), setting.get(TEMPERATURE));
    }

    private static WaterState supplied() {
        return Water.stable().atSi(380e6, 293.15);
    }

    private static WaterJet waterJet(Setting setting) {
        return WaterJet.of(setting.orifice(), Kind.PRESSURE.of(setting.get(PRESSURE)));
    }

    private static SupplyLine line(Setting setting) {
        return SupplyLine.of(SupplyLine.Section.ofBore(Kind.LENGTH.of(setting.get(BORE)))
                .withLength(Kind.LENGTH.of(setting.get(LENGTH))));
    }

    private static double lineLoss(Setting setting) {
        return line(setting)
                .loss(Kind.MASS_FLOW.of(setting.get(WATER_FLOW)), supplied())
                .si();
    }

    private static double feed(FeedModel model, Setting setting) {
        return model.feedSi(setting.jet(), setting.material(), setting.get(THICKNESS), setting.get(INDEX));
    }

    private static Kerf kerf(Setting setting) {
        return KerfModel.standard()
                .kerf(CutConditions.of(setting.jet(), setting.piece(), FEEDS), Kind.SPEED.of(setting.get(FEED)));
    }

    private static double contourTime(Setting setting) {
        Contour window =
                Contour.rectangle(Point.millimetres(0, 0), Point.millimetres(40, 25), EdgeRequirement.defaults());
        MachineLimits limits =
                MachineLimits.of(Kind.SPEED.of(setting.get(SPEED)), Kind.ACCELERATION.of(setting.get(ACCELERATION)));
        QualityFeeds feeds = QualityFeeds.of(CutConditions.of(setting.jet(), setting.piece(), FEEDS));
        return Kind.TIME.si(
                FeedPlanner.withoutLag(limits, feeds).plan(window, Side.LEFT).time());
    }

    private static BatchCost cost(Setting setting) {
        PartWork work = PartWork.of(Estimate.withinFactor(Kind.TIME, 90, 0.2, List.of()));
        Prices rates = Prices.of("crowns").with(CostItem.MACHINE, 90).with(CostItem.ABRASIVE, 0.45);
        return Batch.of(setting.jet(), work, (int) setting.get(PARTS))
                .withSetUp(Kind.TIME.of(600))
                .cost(rates);
    }

    private static SheetFill.Sheet sheet(Setting setting) {
        return SheetFill.sheet(Kind.LENGTH.of(0.1 * setting.get(LENGTH)), Kind.LENGTH.of(1))
                .withGap(Kind.LENGTH.of(5e-3));
    }

    private static Quantity<Time> hours(Setting setting) {
        return Kind.TIME.of(3600 * setting.get(HOURS));
    }
}

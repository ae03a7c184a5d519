package dev.waterjet.benchmarks;

import dev.waterjet.feed.CutConditions;
import dev.waterjet.feed.DeclinationFeed;
import dev.waterjet.feed.ErosionFeed;
import dev.waterjet.feed.FeedModel;
import dev.waterjet.feed.FeedSolver;
import dev.waterjet.feed.MachinabilityFeed;
import dev.waterjet.feed.PlainWaterFeed;
import dev.waterjet.feed.SpecificEnergyFeed;
import dev.waterjet.feed.ThresholdFeed;
import dev.waterjet.hydraulics.WaterJet;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.jet.MixingModel;
import dev.waterjet.jet.PlainJet;
import dev.waterjet.jet.TubeMixing;
import dev.waterjet.jet.TubeWear;
import dev.waterjet.kerf.CutFront;
import dev.waterjet.kerf.Kerf;
import dev.waterjet.kerf.KerfModel;
import dev.waterjet.kerf.LagGeometry;
import dev.waterjet.kerf.LagModel;
import dev.waterjet.kerf.MeasuringPlane;
import dev.waterjet.kerf.MinimumFeatures;
import dev.waterjet.kerf.OffsetDrift;
import dev.waterjet.kerf.TaperCompensation;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import dev.waterjet.pierce.Pierce;
import dev.waterjet.pierce.PierceMethod;
import dev.waterjet.pierce.PierceModel;
import dev.waterjet.pierce.PierceSelector;
import dev.waterjet.pierce.PierceSettings;
import dev.waterjet.quality.CutQuality;
import dev.waterjet.quality.EdgeRequirement;
import dev.waterjet.surface.CutSurface;
import dev.waterjet.surface.FastestFeed;
import dev.waterjet.surface.SurfaceModel;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Speed;

/** Random jets and workpieces through the models of jet, feed, kerf, surface and pierce. */
final class RandomCuts {

    private static final MachinabilityFeed MACHINABILITY = MachinabilityFeed.published();

    private RandomCuts() {}

    static void feed(Draws draws) {
        AbrasiveJet jet = draws.jet();
        Workpiece plate = draws.plate();
        double index = draws.index();
        draws.positive(jet.water().speedSi());
        draws.positive(jet.abrasivePower());
        double feed = draws.positive(MACHINABILITY.feed(jet, plate, index));
        draws.positive(MACHINABILITY.index(jet, plate, Kind.SPEED.of(feed)));
        draws.rises(
                "feed with a lower index", feed, MACHINABILITY.feedSi(jet, plate.material(), plate.thicknessSi(), 1));
    }

    /** Every other model of the feed rate; the erosion model refuses a material whose modulus it does not know. */
    static void rivals(Draws draws) {
        AbrasiveJet jet = draws.jet();
        Workpiece plate = draws.plate();
        FeedModel model = switch (draws.below(5)) {
            case 0 -> SpecificEnergyFeed.ofSteel();
            case 1 -> ErosionFeed.standard();
            case 2 -> DeclinationFeed.linear(MACHINABILITY);
            case 3 -> MachinabilityFeed.publishedByWaterFlow();
            default ->
                ThresholdFeed.of(
                        plate.material(),
                        jet,
                        draws.between(0.1, 3),
                        Kind.PRESSURE.of(jet.pressureSi() * draws.evenly(0, 0.9)),
                        draws.of(Kind.SPEED, 1e-4, 0.1));
        };
        double index = draws.index();
        double feed = draws.notNegative(model.feed(jet, plate, index).si());
        draws.notNegative(model.depth(jet, plate.material(), draws.of(Kind.SPEED, 1e-5, 0.2))
                .si());
        Workpiece thicker = plate.withThickness(Kind.LENGTH.of(1.5 * plate.thicknessSi()));
        draws.rises(
                "feed in a thinner plate",
                draws.notNegative(model.feed(jet, thicker, index).si()),
                feed);
    }

    static void solver(Draws draws) {
        AbrasiveJet jet = draws.jet();
        FeedSolver solver = FeedSolver.of(CutConditions.of(jet, draws.plate(), MACHINABILITY));
        Quantity<Speed> feed = draws.of(Kind.SPEED, 1e-5, 0.05);
        double index = draws.index();
        switch (draws.below(3)) {
            case 0 -> draws.positive(solver.pressureFor(index, feed));
            case 1 -> draws.positive(solver.abrasiveFlowFor(index, feed));
            default -> draws.positive(solver.orificeFor(index, feed));
        }
    }

    static void plainWater(Draws draws) {
        WaterJet water = WaterJet.of(draws.orifice(), draws.of(Kind.PRESSURE, 50e6, 600e6));
        PlainJet jet = PlainJet.of(water);
        Quantity<Length> standOff = draws.of(Kind.LENGTH, 1e-3, 0.3);
        double near = draws.notNegative(jet.corePressure(standOff).si());
        draws.rises(
                "pressure of the core towards the nozzle",
                draws.notNegative(
                        jet.corePressure(Kind.LENGTH.of(2 * standOff.getValue().doubleValue()))
                                .si()),
                near);
        draws.positive(jet.coherentLength());
        draws.positive(jet.catcherDepth(draws.of(Kind.SPEED, 1, 100)));
        Workpiece plate = draws.plate();
        PlainWaterFeed model =
                PlainWaterFeed.of(plate.material(), water, standOff, plate.thickness(), draws.of(Kind.SPEED, 1e-3, 1));
        draws.positive(model.feed(water, standOff, plate, 1));
    }

    static void mixing(Draws draws) {
        AbrasiveJet jet = draws.jet();
        TubeMixing mixing = MixingModel.standard().mixing(jet);
        double speed = draws.positive(mixing.particleSpeed());
        draws.require(speed < jet.waterSpeedSi(), "particles are faster than the water");
        draws.share(mixing.efficiency().si());
        draws.positive(Kind.FORCE.si(mixing.thrust()));
        draws.notNegative(mixing.entrainedAir().si());
        draws.positive(Kind.LENGTH.si(TubeWear.of(draws.of(Kind.SPEED, 1e-10, 1e-8))
                .after(jet.head().tube(), draws.of(Kind.TIME, 1, 3e5))
                .exitBore()));
    }

    static void kerf(Draws draws) {
        Workpiece plate = draws.plate();
        CutConditions cut = CutConditions.of(draws.jet(), plate, MACHINABILITY);
        double feedMPerS = cut.feedSi(draws.index());
        Quantity<Speed> feed = Kind.SPEED.of(feedMPerS);
        Kerf kerf = KerfModel.standard().kerf(cut, feed);
        draws.positive(kerf.entryWidth());
        draws.finite(kerf.exitWidth().si());
        draws.finite(kerf.taperPerSide().si());
        draws.finite(kerf.offset(draws.pick(MeasuringPlane.values())).si());
        double lag = draws.positive(kerf.lag().atExit());
        draws.rises(
                "lag on an arc",
                0,
                kerf.lag().errorOnArc(draws.of(Kind.LENGTH, 1e-3, 1)).si());
        MinimumFeatures features = MinimumFeatures.of(kerf);
        draws.positive(features.innerRadius());
        draws.positive(features.web());
        draws.finite(TaperCompensation.forSquarePartSide(kerf).partSideTaper().si());
        OffsetDrift drift = OffsetDrift.of(kerf, MeasuringPlane.ENTRY, draws.of(Kind.SPEED, 1e-10, 1e-8));
        draws.finite(drift.driftAfter(draws.of(Kind.TIME, 1, 1e6)).si());
        CutFront front = CutFront.of(LagModel.standard(), cut);
        draws.positive(front.runInSi(feedMPerS));
        draws.notNegative(draws.pick(LagGeometry.values()).arcErrorSi(lag, draws.between(1e-3, 1)));
    }

    static void surface(Draws draws) {
        CutConditions cut = CutConditions.of(draws.jet(), draws.plate(), MACHINABILITY);
        SurfaceModel model = SurfaceModel.standard();
        CutSurface surface = model.surface(cut, Kind.SPEED.of(cut.feedSi(draws.index())));
        draws.positive(surface.roughness().raAtExit());
        draws.notNegative(surface.perpendicularity().si());
        draws.positive(surface.profileHeight());
        double sum = surface.quality().none();
        for (double probability : surface.quality().probabilities().values()) {
            sum += draws.share(probability);
        }
        draws.require(Math.abs(sum - 1) < 1e-9, "probabilities of the levels of quality add up to " + sum);
        if (draws.below(10) == 0) {
            FastestFeed fastest = model.fastestFeed(cut, EdgeRequirement.of(draws.pick(CutQuality.values())));
            fastest.feed().ifPresent(draws::positive);
        }
    }

    static void pierce(Draws draws) {
        CutConditions cut = CutConditions.of(draws.jet(), draws.plate(), MACHINABILITY);
        PierceMethod method = draws.pick(PierceMethod.values());
        if (method == PierceMethod.PRE_DRILLED) {
            Pierce pierce = PierceSelector.of(PierceSettings.defaults()).select(cut);
            draws.notNegative(pierce.time().si());
            draws.positive(Kind.PRESSURE.si(pierce.pressure()));
            return;
        }
        PierceModel model = PierceModel.derived(cut, method);
        Quantity<Length> depth = draws.of(Kind.LENGTH, 5e-4, 0.2);
        double time = draws.positive(model.time(depth));
        draws.rises(
                "time of a deeper pierce",
                time,
                model.time(Kind.LENGTH.of(2 * Kind.LENGTH.si(depth))).si());
        draws.positive(model.depth(Kind.TIME.of(time)));
        draws.require(
                Math.abs(model.depth(Kind.TIME.of(time)).si() / Kind.LENGTH.si(depth) - 1) < 1e-6,
                "depth after the time of a depth is another one");
    }
}

package dev.waterjet.cost;

import static dev.waterjet.Refusals.assertRefused;
import static dev.waterjet.measure.Measures.gramsPerMinute;
import static dev.waterjet.measure.Measures.hours;
import static dev.waterjet.measure.Measures.kilograms;
import static dev.waterjet.measure.Measures.kilogramsPerCubicMetre;
import static dev.waterjet.measure.Measures.millimetres;
import static dev.waterjet.measure.Measures.minutes;
import static dev.waterjet.measure.Measures.seconds;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.ValueContract;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.evidence.Evidence;
import dev.waterjet.evidence.EvidenceGrade;
import dev.waterjet.evidence.Source;
import dev.waterjet.hydraulics.Orifice;
import dev.waterjet.jet.FocusingTube;
import dev.waterjet.jet.TubeWear;
import dev.waterjet.measure.Density;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.pierce.Pierce;
import dev.waterjet.pierce.PierceMethod;
import dev.waterjet.plan.Jobs;
import java.util.List;
import java.util.Map;
import javax.measure.Quantity;
import javax.measure.quantity.Time;
import javax.measure.quantity.Volume;
import org.junit.jupiter.api.Test;

class CostValuesTest {

    private static final Estimate<Time> HUNDRED = Estimate.withinFactor(Kind.TIME, 100, 0.2, List.of());
    private static final PartWork WORK = PartWork.of(HUNDRED);

    private static Evidence evidence(String source) {
        return Evidence.of(EvidenceGrade.FITTED, Source.of(source));
    }

    private static Pierce usual() {
        return pierce(PierceMethod.LOW_PRESSURE, 70e6, Estimate.withinFactor(Kind.TIME, 10, 0.5, List.of()), 2);
    }

    private static Pierce pierce(PierceMethod method, double pa, Estimate<Time> time, double idleS) {
        return new Pierce(
                method,
                Kind.PRESSURE.of(pa),
                time,
                seconds(idleS),
                Message.of("reason", "a delicate plate"),
                List.of());
    }

    @Test
    void workOnAPart() {
        ValueContract.of(() -> WORK)
                .has("cutting", PartWork::cuttingSi, 100.0)
                .has("uncertainty", PartWork::cuttingUncertainty, HUNDRED.relativeUncertainty())
                .has("jet", PartWork::jetTimeSi, 100.0)
                .change("idle", work -> work.withIdle(seconds(7)), PartWork::idleTime, seconds(7))
                .change("removed", work -> work.withRemoved(kilograms(0.4)), PartWork::removedSi, 0.4)
                .differs("cutting", PartWork.of(Estimate.withinFactor(Kind.TIME, 101, 0.2, List.of())))
                .differs("uncertainty", PartWork.of(Estimate.withinFactor(Kind.TIME, 100, 0.3, List.of())))
                .differs("pierces", WORK.withPierces(1, usual()))
                .differs("more pierces", WORK.withPierces(2, usual()))
                .prints("100", "s of cutting", "0 pierces")
                .check();
        PartWork all = WORK.withIdle(seconds(7)).withRemoved(kilograms(0.4)).withPierces(3, usual());
        // three pierces of 10 s with 2 s idle each, known to a factor 1.5
        assertThat(all.jetTime().si()).isEqualTo(130);
        assertThat(all.piercingSi()).isEqualTo(30);
        assertThat(all.idleSi()).isEqualTo(13);
        assertThat(all.removedSi()).isEqualTo(0.4);
        assertThat(all.withIdle(seconds(1)).idleSi()).isEqualTo(14);
        assertThat(all.withIdle(seconds(1)).piercingSi()).isEqualTo(30);
        assertThat(all.withIdle(seconds(1)).removedSi()).isEqualTo(0.4);
        assertThat(all.withRemoved(kilograms(1)).idleSi()).isEqualTo(13);
        assertThat(all.pierceUncertainty()).isCloseTo(usual().time().relativeUncertainty(), within(1e-15));
        double spread = Math.hypot(
                100 * HUNDRED.relativeUncertainty(), 30 * usual().time().relativeUncertainty());
        assertThat(all.jetTime().relativeUncertainty()).isCloseTo(spread / 130, within(1e-12));
        // a drilled hole takes no time of the jet
        PartWork drilled = WORK.withPierces(2, pierce(PierceMethod.PRE_DRILLED, 1e8, Estimate.of(Kind.TIME, 0, 0), 30));
        assertThat(drilled.pierceUncertainty()).isZero();
        assertThat(drilled.idleSi()).isEqualTo(60);
        assertThat(drilled.jetTimeSi()).isEqualTo(100);
        assertRefused(() -> WORK.withPierces(0, usual()), "must-be-at-least", "number of pierces", 1);
        assertRefused(() -> WORK.withIdle(seconds(-1)), "must-be-at-least", "idle time", 0);
        assertRefused(() -> WORK.withRemoved(kilograms(-1)), "must-be-at-least", "mass of the material removed", 0);
        assertRefused(() -> PartWork.of(Estimate.of(Kind.TIME, 0, 0)), "must-be-above", "cutting time", 0);
    }

    @Test
    void batches() {
        ValueContract.of(() -> Batch.of(Jobs.JET, WORK, 10))
                .has("sheets", Batch::sheets, 1)
                .change("sheets", batch -> batch.withSheets(4, minutes(5)), Batch::sheets, 3)
                .differs("parts", Batch.of(Jobs.JET, WORK, 11))
                .differs("jet", Batch.of(Jobs.JET.withAbrasiveFlow(gramsPerMinute(200)), WORK, 10))
                .differs("work", Batch.of(Jobs.JET, WORK.withIdle(seconds(1)), 10))
                .differs("heads", Batch.of(Jobs.JET, WORK, 10).withHeads(2))
                .differs("change", Batch.of(Jobs.JET, WORK, 10).withSheets(4, minutes(6)))
                .differs("set-up", Batch.of(Jobs.JET, WORK, 10).withSetUp(minutes(6)))
                .prints("10 parts by 1 heads")
                .check();
        assertThat(Batch.of(Jobs.JET, WORK, 12).withSheets(4, minutes(5)).sheets())
                .isEqualTo(3);
        assertThat(Batch.of(Jobs.JET, WORK, 13).withSheets(4, minutes(5)).sheets())
                .isEqualTo(4);
        // each copy keeps the rest: 5 strokes of 100 s, 3 sheets of 300 s, 600 s
        BatchCost cost = Batch.of(Jobs.JET, WORK, 10)
                .withSetUp(minutes(10))
                .withSheets(4, minutes(5))
                .withHeads(2)
                .cost(Jobs.RATES);
        assertThat(cost.time().si()).isCloseTo(500 + 900 + 600, within(1e-9));
        Batch batch = Batch.of(Jobs.JET, WORK, 10);
        assertRefused(() -> batch.withHeads(0), "must-be-at-least", "number of heads", 1);
        assertRefused(() -> batch.withSheets(0, minutes(1)), "must-be-at-least", "number of parts on a sheet", 1);
        assertRefused(() -> batch.withSheets(1, minutes(-1)), "must-be-at-least", "time to change a sheet", 0);
        assertRefused(() -> batch.withSetUp(minutes(-1)), "must-be-at-least", "set-up time", 0);
    }

    @Test
    void costs() {
        Batch batch = Batch.of(Jobs.JET, WORK, 10);
        ValueContract.of(() -> batch.cost(Jobs.RATES))
                .has("currency", BatchCost::currency, "crowns")
                .has("items", cost -> cost.items().keySet().size(), CostItem.values().length)
                .differs(
                        "currency",
                        batch.cost(Prices.of("marks")
                                .with(CostItem.MACHINE, 90)
                                .with(CostItem.WATER, 3)
                                .with(CostItem.ABRASIVE, 0.45)
                                .with(CostItem.ENERGY, 0.25)
                                .with(CostItem.SLUDGE, 0.15)
                                .with(CostItem.ORIFICE, 20)
                                .with(CostItem.TUBE, 110)
                                .with(CostItem.SHEET, 75)))
                .differs("price", batch.cost(Jobs.RATES.with(CostItem.MACHINE, 91)))
                .differs("uncertainty", batch.cost(Jobs.RATES.with(CostItem.MACHINE, 90, 0.1)))
                .differs("parts", Batch.of(Jobs.JET, WORK, 11).cost(Jobs.RATES))
                .differs("time", batch.withSetUp(minutes(1)).cost(Jobs.RATES))
                .prints("10 parts in 0.278 h for", "crowns")
                .check();
        Map<String, Object> description = batch.cost(Jobs.RATES).describe();
        assertThat(description)
                .containsKeys(
                        "currency", "parts", "time", "total", "per_part", "machine", "sheet", "share_of_cutting_feed");
        // a part's share is as uncertain as the whole
        BatchCost cost = batch.cost(Jobs.RATES);
        assertThat(cost.perPart().standardUncertaintySi())
                .isCloseTo(cost.total().standardUncertaintySi() / 10, within(1e-12));
        assertThat(cost.total().cautions()).isEmpty();
        BatchCost open = batch.cost(Prices.of("crowns").with(CostItem.MACHINE, 90));
        assertThat(open.perPart().cautions()).isEqualTo(open.total().cautions());
    }

    @Test
    void prices() {
        ValueContract.of(() -> Prices.of("crowns"))
                .has("currency", Prices::currency, "crowns")
                .change("water", rates -> rates.with(CostItem.WATER, 3, 0.2), rates -> rates.price(CostItem.WATER), 3.0)
                .change("efficiency", rates -> rates.withPumpEfficiency(0.7), Prices::pumpEfficiency, 0.7)
                .differs("surer", Prices.of("crowns").with(CostItem.WATER, 3))
                .differs("currency", Prices.of("marks"))
                .prints("prices in crowns")
                .check();
        assertThat(Prices.of("crowns").with(CostItem.WATER, 3, 0.2).uncertainty(CostItem.WATER))
                .isEqualTo(0.2);
        assertThat(Prices.of("crowns").with(CostItem.WATER, 3).uncertainty(CostItem.WATER))
                .isZero();
        assertThat(Prices.of("crowns").with(CostItem.SHEET, 3).describe())
                .containsEntry("price_of_sheet_per_piece", 3.0)
                .containsKey("pump_efficiency");
        assertThat(Prices.of("crowns").with(CostItem.WATER, 3).describe())
                .containsKey("price_of_water_per_cubic_metre");
        assertThat(Jobs.RATES.unpriced()).isEmpty();
        assertThat(Prices.of("crowns").unpriced()).containsExactly(CostItem.values());
        Consumable orifice = Consumable.of("own orifice", hours(10), hours(40), evidence("the log of the pump"));
        Consumable tube = Consumable.of("own tube", hours(25), hours(100), evidence("the log of the pump"));
        Prices own = Jobs.RATES.withLives(orifice, tube);
        assertThat(own.orificeLife(Orifice.Jewel.DIAMOND)).isEqualTo(orifice);
        assertThat(own.tubeLife()).isEqualTo(tube);
        // medians of 20 h and 50 h, means exp((ln 2)^2/2) times as long
        double longer = Math.exp(Math.pow(Math.log(2), 2) / 2);
        assertThat(own.jetItems(Jobs.JET).get(CostItem.ORIFICE)).isCloseTo(20 / (20 * longer), within(1e-12));
        assertThat(own.jetItems(Jobs.JET).get(CostItem.TUBE)).isCloseTo(110 / (50 * longer), within(1e-12));
        // with a planned replacement the mean service counts
        Consumable planned = tube.replacedAt(hours(30));
        assertThat(Jobs.RATES.withLives(orifice, planned).jetItems(Jobs.JET).get(CostItem.TUBE))
                .isCloseTo(110 * 3600 / Kind.TIME.si(tube.meanService(hours(30))), within(1e-9));
        assertThat(own.withPumpEfficiency(0.5).tubeLife()).isEqualTo(tube);
        assertThat(own.with(CostItem.TUBE, 1).tubeLife()).isEqualTo(tube);
        assertThat(own.withPumpEfficiency(0.5).with(CostItem.TUBE, 1).pumpEfficiency())
                .isEqualTo(0.5);
        double energy = Kind.POWER.si(Jobs.JET.water().ratedHydraulicPower()) / 1000 / 0.65 * 0.25;
        assertThat(own.jetItems(Jobs.JET).get(CostItem.ENERGY)).isCloseTo(energy, within(1e-12));
        assertThat(own.jetItems(Jobs.JET).get(CostItem.WATER))
                .isCloseTo(3 * 3600 * Jobs.JET.water().volumeFlowSi(), within(1e-12));
        assertThat(own.jetItems(Jobs.JET).get(CostItem.ABRASIVE)).isCloseTo(0.45 * 18, within(1e-12));
        assertThat(own.jetItems(Jobs.JET).get(CostItem.SLUDGE)).isCloseTo(0.15 * 18, within(1e-12));
        assertRefused(() -> Jobs.RATES.withPumpEfficiency(0), "must-be-above", "efficiency of the pump", 0);
        assertRefused(() -> Jobs.RATES.withPumpEfficiency(1.1), "must-be-at-most", "efficiency of the pump", 1);
        assertRefused(
                () -> Jobs.RATES.with(CostItem.WATER, 1, -0.1),
                "must-be-at-least",
                "relative uncertainty of the price of water",
                0);
        assertThat(CostItem.MACHINE.measure()).isEqualTo("hour");
    }

    @Test
    void amountsUsed() {
        Consumption hour = Consumption.of(Jobs.JET, minutes(60), 0.65);
        ValueContract.of(() -> Consumption.of(Jobs.JET, minutes(60), 0.65))
                .has("time", Consumption::time, minutes(60))
                .has("abrasive", Consumption::abrasive, kilograms(18))
                .change("removed", used -> used.withRemoved(kilograms(2)), Consumption::sludge, kilograms(20))
                .differs("time", Consumption.of(Jobs.JET, minutes(61), 0.65))
                .differs("efficiency", Consumption.of(Jobs.JET, minutes(60), 0.7))
                .differs("abrasive", Consumption.of(Jobs.JET.withAbrasiveFlow(gramsPerMinute(200)), minutes(60), 0.65))
                .prints("L of water", "18 kg of abrasive", "kWh")
                .check();
        Consumption sum = hour.withRemoved(kilograms(2)).plus(hour.times(3).withRemoved(kilograms(1)));
        assertThat(sum.timeSi()).isEqualTo(4 * 3600);
        assertThat(sum.removedSi()).isEqualTo(3);
        assertThat(sum.abrasiveSi()).isCloseTo(72, within(1e-9));
        assertThat(sum.waterSi()).isCloseTo(4 * hour.waterSi(), within(1e-12));
        assertThat(sum.energySi()).isCloseTo(4 * hour.energySi(), within(1e-3));
        assertThat(hour.withRemoved(kilograms(2)).times(2).removedSi()).isEqualTo(4);
        assertRefused(() -> hour.times(-1), "must-be-at-least", "number of times", 0);
        assertRefused(() -> hour.withRemoved(kilograms(-1)), "must-be-at-least", "mass of the material removed", 0);
        assertRefused(() -> Consumption.of(Jobs.JET, minutes(-1), 0.65), "must-be-at-least", "jet-on time", 0);
        assertRefused(() -> Consumption.of(Jobs.JET, minutes(1), 0), "must-be-above", "efficiency of the pump", 0);
        assertRefused(() -> Consumption.of(Jobs.JET, minutes(1), 1.2), "must-be-at-most", "efficiency of the pump", 1);
    }

    @Test
    void impossibleHoppersAndCatchersAreRefused() {
        Consumption used = Consumption.of(Jobs.JET, minutes(60), 0.65);
        Quantity<Volume> catcher = Kind.VOLUME.of(1.5);
        Quantity<Density> garnet = kilogramsPerCubicMetre(4100);
        Quantity<Density> steel = kilogramsPerCubicMetre(7800);

        assertThat(used.catcherFillRatio(catcher, garnet, steel, 0.55))
                .isEqualTo(used.catcherFillRatio(catcher, garnet, steel));
        assertRefused(
                () -> Consumption.timeToEmptyHopper(Jobs.JET, 0, kilograms(1)),
                "must-be-at-least",
                "number of heads",
                1);
        assertRefused(
                () -> Consumption.timeToEmptyHopper(Jobs.JET, 1, kilograms(-1)),
                "must-be-at-least",
                "abrasive in the hopper",
                0);
        assertRefused(
                () -> used.catcherFillRatio(Kind.VOLUME.of(0), garnet, steel),
                "must-be-above",
                "volume for sludge in the catcher tank",
                0);
        assertRefused(
                () -> used.catcherFillRatio(catcher, kilogramsPerCubicMetre(0), steel),
                "must-be-above",
                "density of the abrasive",
                0);
        assertRefused(
                () -> used.catcherFillRatio(catcher, garnet, kilogramsPerCubicMetre(0)),
                "must-be-above",
                "density of the material removed",
                0);
        assertRefused(
                () -> used.catcherFillRatio(catcher, garnet, steel, 0),
                "must-be-above",
                "solid share of settled sludge",
                0);
        assertRefused(
                () -> used.catcherFillRatio(catcher, garnet, steel, 1.1),
                "must-be-at-most",
                "solid share of settled sludge",
                1);
    }

    @Test
    void partsThatWear() {
        ValueContract.of(() -> Consumable.of("tube", hours(50), hours(200), evidence("the log")))
                .has("name", Consumable::name, "tube")
                .has("median", Consumable::medianSi, 100 * 3600.0)
                .has("spread", Consumable::logDeviation, Math.log(2))
                .has("evidence", Consumable::evidence, evidence("the log"))
                .differs("name", Consumable.of("pipe", hours(50), hours(200), evidence("the log")))
                .differs("median", Consumable.of("tube", hours(60), hours(240), evidence("the log")))
                .differs("spread", Consumable.of("tube", hours(40), hours(250), evidence("the log")))
                .differs("evidence", Consumable.of("tube", hours(50), hours(200), evidence("another log")))
                .differs(
                        "replacement",
                        Consumable.of("tube", hours(50), hours(200), evidence("the log"))
                                .replacedAt(hours(80)))
                .prints("tube, life 100 h within a factor of 2")
                .check();
        Consumable tube = Consumable.of("tube", hours(50), hours(200), evidence("the log"));
        assertThat(tube.failureProbability(hours(0))).isZero();
        assertThat(tube.failureProbability(hours(100))).isCloseTo(0.5, within(1e-12));
        // one deviation: 0.8413 of a normal distribution lie below it (any table)
        assertThat(tube.failureProbability(hours(200))).isCloseTo(0.8413, within(5e-5));
        assertThat(Kind.TIME.si(tube.replacementTime(0.5))).isCloseTo(100 * 3600, within(1e-6));
        assertThat(Kind.TIME.si(tube.remainingLife(hours(40), 0.5))).isCloseTo(60 * 3600, within(1e-6));
        assertThat(Kind.TIME.si(tube.remainingLife(hours(140), 0.5))).isZero();
        // renewal theory: the mean of a log-normal life, and of one that is cut off at an age
        assertThat(Kind.TIME.si(tube.meanLife()))
                .isCloseTo(360_000 * Math.exp(Math.pow(Math.log(2), 2) / 2), within(1e-6));
        assertThat(tube.replacedAt(hours(80)).meanLife()).isEqualTo(tube.meanService(hours(80)));
        assertThat(Kind.TIME.si(tube.meanService(hours(1e5)))).isCloseTo(Kind.TIME.si(tube.meanLife()), within(1e-3));
        assertRefused(() -> tube.replacedAt(hours(0)), "must-be-above", "replacement age of the tube", 0);
        Consumable sure = Consumable.of("seal", hours(10), hours(10), evidence("the log"));
        assertThat(sure.failureProbability(hours(9.99))).isZero();
        assertThat(sure.failureProbability(hours(10))).isEqualTo(1);
        assertThat(Kind.TIME.si(sure.meanService(hours(4)))).isCloseTo(4 * 3600, within(1e-9));
        assertThat(Kind.TIME.si(sure.meanService(hours(40)))).isCloseTo(10 * 3600, within(1e-9));
        assertThat(Consumable.orifice(Orifice.Jewel.RUBY).name()).isEqualTo("ruby orifice");
        assertThat(Consumable.orifice(Orifice.Jewel.SAPPHIRE).name()).isEqualTo("sapphire orifice");
        assertThat(Consumable.orifice(Orifice.Jewel.DIAMOND).name()).isEqualTo("diamond orifice");
        assertRefused(() -> tube.replacementTime(0), "must-be-above", "failure probability", 0);
        assertRefused(() -> tube.replacementTime(1), "must-be-at-most", "failure probability", 1);
        assertRefused(() -> tube.meanService(hours(0)), "must-be-above", "maximum age", 0);
        assertRefused(() -> tube.failureProbability(hours(-1)), "must-be-at-least", "age of the tube", 0);
        assertRefused(
                () -> Consumable.of("tube", hours(0), hours(1), evidence("x")),
                "must-be-above",
                "shorter life of the tube",
                0);
        assertRefused(
                () -> Consumable.of("tube", hours(2), hours(1), evidence("x")),
                "must-be-at-least",
                "longer life of the tube",
                7200);
    }

    @Test
    void wearOfATube() {
        FocusingTube tube = FocusingTube.of(millimetres(0.76), millimetres(76));
        TubeWear wear = TubeWear.measured(tube.withExitBore(millimetres(0.86)), hours(50));
        ValueContract.of(() -> TubeWear.of(Kind.SPEED.of(1e-4 / 180000)))
                .has("rate", TubeWear::rate, Kind.SPEED.of(1e-4 / 180000))
                .differs("rate", TubeWear.of(Kind.SPEED.of(1e-9)))
                .prints("2 ")
                .check();
        // 0.1 mm in 50 h is 2 um/h
        assertThat(Kind.SPEED.si(wear.rate()) * 3600).isCloseTo(2e-6, within(1e-15));
        assertThat(wear.after(tube, hours(10)).exitBoreSi()).isCloseTo(0.78e-3, within(1e-12));
        assertThat(Kind.TIME.si(wear.until(tube, millimetres(0.96)))).isCloseTo(100 * 3600, within(1e-3));
        assertThat(Kind.TIME.si(wear.until(tube, millimetres(0.7)))).isZero();
        assertRefused(() -> TubeWear.measured(tube, hours(1)), "must-be-above", "wear rate of the focusing tube", 0);
        assertRefused(() -> TubeWear.measured(tube, hours(0)), "must-be-above", "jet-on time of the focusing tube", 0);
        assertRefused(() -> wear.after(tube, hours(-1)), "must-be-at-least", "jet-on time of the focusing tube", 0);
        assertRefused(() -> wear.until(tube, millimetres(0)), "must-be-above", "maximum exit bore", 0);
    }

    @Test
    void anAbsurdPriceIsRefusedByItsName() {
        assertRefused(
                () -> Prices.of("cost units").with(CostItem.WATER, 1e308), "must-be-at-most", "price of water", 1e12);
    }
}

package dev.waterjet.embedding;

import static dev.waterjet.measure.Measures.kilograms;
import static dev.waterjet.measure.Measures.kilowatts;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.metresPerSquareSecond;
import static dev.waterjet.measure.Measures.millimetres;
import static dev.waterjet.measure.Measures.millimetresPerMinute;

import dev.waterjet.evidence.Estimate;
import dev.waterjet.feed.FaceGrade;
import dev.waterjet.feed.MachinabilityFeed;
import dev.waterjet.job.Batch;
import dev.waterjet.job.CostItem;
import dev.waterjet.job.HeadList;
import dev.waterjet.job.HeadSelection;
import dev.waterjet.job.HeadSelector;
import dev.waterjet.job.PartDemand;
import dev.waterjet.job.PartPlanner;
import dev.waterjet.job.PartWork;
import dev.waterjet.job.Pierce;
import dev.waterjet.job.PierceLaw;
import dev.waterjet.job.PiercePractice;
import dev.waterjet.job.Piercing;
import dev.waterjet.job.RankBy;
import dev.waterjet.job.Rates;
import dev.waterjet.job.SheetRoom;
import dev.waterjet.job.Stores;
import dev.waterjet.job.TableFill;
import dev.waterjet.job.TubeWear;
import dev.waterjet.job.WearPart;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Kind;
import dev.waterjet.path.Contour;
import dev.waterjet.path.FeedPlanner;
import dev.waterjet.path.Finish;
import dev.waterjet.path.GradeFeeds;
import dev.waterjet.path.LagLaw;
import dev.waterjet.path.MachineLimits;
import dev.waterjet.path.Point;
import dev.waterjet.path.Side;
import java.util.List;

/** Instances of the types of {@code dev.waterjet.job}. */
final class JobSamples {

    private static final String SHELF = """
            part,size
            orifice,0.1 mm
            orifice,0.25 mm
            tube,0.3 mm
            tube,0.76 mm
            length,30 mm
            length,76 mm
            mesh,80
            mesh,230
            flow,30 g/min
            flow,300 g/min
            """;

    private JobSamples() {}

    static void addTo(List<Described> all) {
        MachinabilityFeed model = MachinabilityFeed.published();
        PiercePractice practice = PiercePractice.usual().withStrength(megapascals(60));
        Pierce pierce = Piercing.of(model, practice).choose(Samples.JET, Samples.PLATE);
        PartWork work = PartWork.of(Estimate.withinFactor(Kind.TIME, 90, 0.2, List.of()))
                .withPierces(2, pierce);
        Rates rates = Rates.of("crowns").with(CostItem.MACHINE, 90).with(CostItem.ABRASIVE, 0.45, 0.1);
        Batch batch = Batch.of(Samples.JET, work, 20);
        PartDemand demand = PartDemand.of(Samples.PLATE, FaceGrade.MEDIUM, millimetres(500))
                .withSmallestRadius(millimetres(0.5))
                .withTolerance(millimetres(0.2));
        HeadSelection selection = HeadSelector.of(HeadList.parse(SHELF), megapascals(380), kilowatts(10))
                .select(demand);
        FeedPlanner feeds = FeedPlanner.of(
                MachineLimits.of(millimetresPerMinute(10000), metresPerSquareSecond(1)),
                GradeFeeds.of(model, Samples.JET, Samples.PLATE),
                LagLaw.none());
        all.add(PartPlanner.of(feeds, model)
                .plan(
                        Samples.JET,
                        Samples.PLATE,
                        List.of(Contour.circle(Point.millimetres(0, 0), millimetres(20), Finish.usual())),
                        List.of(Side.LEFT)));
        all.add(demand);
        all.add(selection);
        all.add(selection.refused().get(0));
        all.add(selection.refused().get(0).faults().get(0));
        all.add(selection.best(RankBy.TIME));
        all.add(practice);
        all.add(PierceLaw.derived(model, Samples.JET, Samples.PLATE, true));
        all.add(pierce);
        all.add(work);
        all.add(rates);
        all.add(batch.consumption(0.65));
        all.add(batch.cost(rates));
        all.add(WearPart.focusingTube());
        all.add(TubeWear.of(Kind.SPEED.of(5e-10)));
        all.add(Stores.of(kilograms(250), Kind.VOLUME.of(1.5)));
        all.add(TableFill.square(
                SheetRoom.sheet(millimetres(500), millimetres(500)).parts(millimetres(10), millimetres(10))));
    }
}

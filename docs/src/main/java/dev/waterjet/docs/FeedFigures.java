package dev.waterjet.docs;

import static dev.waterjet.measure.Measures.gramsPerMinute;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.millimetres;

import dev.waterjet.examples.chart.Chart;
import dev.waterjet.feed.FaceGrade;
import dev.waterjet.feed.IndexTable;
import dev.waterjet.feed.MachinabilityFeed;
import dev.waterjet.hydraulics.Orifice;
import dev.waterjet.jet.Abrasive;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.jet.CuttingHead;
import dev.waterjet.jet.FocusingTube;
import dev.waterjet.jet.Mesh;
import dev.waterjet.material.Materials;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.measure.Units;
import java.util.List;
import javax.measure.quantity.Length;

/** Figures about feed. */
final class FeedFigures {

    private FeedFigures() {}

    static List<Figure> all() {
        return List.of(new Figure("feed-over-thickness", FeedFigures::feedOverThickness));
    }

    private static String feedOverThickness() {
        AbrasiveJet jet = CuttingHead.of(
                        Orifice.sapphire(millimetres(0.33)), FocusingTube.of(millimetres(1.02), millimetres(102)))
                .jet(megapascals(380), Abrasive.garnet(Mesh.of(80)), gramsPerMinute(450));
        QuantityArray<Length> thicknesses = QuantityArray.evenly(Kind.LENGTH, millimetres(3), millimetres(50), 95);
        Chart chart = Chart.of(
                        "Feed over thickness",
                        "Feed of medium faces falls with thickness for every material, steeply below 10 mm; aluminium is"
                                + " cut about three times as fast as stainless steel.")
                .x("thickness [mm]")
                .y("feed [mm/min]")
                .logY();
        for (String id : List.of("aluminium-6061-t6", "titanium", "stainless-304")) {
            chart.line(
                    Materials.standard().get(id).name(),
                    thicknesses.to(Units.MILLIMETRE),
                    MachinabilityFeed.published()
                            .curve(
                                    jet,
                                    Materials.standard().get(id),
                                    IndexTable.standard().index(FaceGrade.MEDIUM),
                                    thicknesses)
                            .feeds()
                            .to(Units.MILLIMETRE_PER_MINUTE));
        }
        return chart.svg(720, 420);
    }
}

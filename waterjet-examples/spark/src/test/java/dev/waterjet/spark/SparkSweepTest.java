package dev.waterjet.spark;

import static dev.waterjet.measure.Measures.gramsPerMinute;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.millimetres;
import static org.assertj.core.api.Assertions.assertThat;

import dev.waterjet.feed.FeedModel;
import dev.waterjet.feed.FeedSweep;
import dev.waterjet.feed.MachinabilityFeed;
import dev.waterjet.feed.SpecificEnergyFeed;
import dev.waterjet.hydraulics.Orifice;
import dev.waterjet.jet.Abrasive;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.jet.CuttingHead;
import dev.waterjet.jet.FocusingTube;
import dev.waterjet.jet.Mesh;
import dev.waterjet.material.Materials;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityArray;
import java.util.List;
import org.apache.spark.SparkConf;
import org.apache.spark.api.java.JavaSparkContext;
import org.junit.jupiter.api.Test;

class SparkSweepTest {

    /** A billion points with {@code perAxis} 1000, a million with 100. */
    private static FeedSweep sweep(FeedModel model, int perAxis) {
        AbrasiveJet jet = CuttingHead.of(
                        Orifice.sapphire(millimetres(0.3)), FocusingTube.of(millimetres(0.9), millimetres(76)))
                .jet(megapascals(345), Abrasive.garnet(Mesh.of(80)), gramsPerMinute(400));
        return FeedSweep.of(model, jet, Workpiece.of(Materials.standard().get("titanium"), millimetres(10)), 3)
                .overPressure(QuantityArray.evenly(Kind.PRESSURE, megapascals(200), megapascals(600), perAxis))
                .overAbrasiveFlow(
                        QuantityArray.evenly(Kind.MASS_FLOW, gramsPerMinute(100), gramsPerMinute(800), perAxis))
                .overThickness(QuantityArray.evenly(Kind.LENGTH, millimetres(1), millimetres(80), perAxis));
    }

    @Test
    void sparkComputesTheBitsOfThisProcess() {
        assertThat(sweep(MachinabilityFeed.published(), 1000).size()).isEqualTo(1_000_000_000);
        SparkConf local = new SparkConf()
                .setMaster("local[2]")
                .setAppName("sweep of Hollow Ridge")
                .set("spark.ui.enabled", "false")
                .set("spark.driver.host", "127.0.0.1")
                .set("spark.driver.bindAddress", "127.0.0.1");
        try (JavaSparkContext spark = new JavaSparkContext(local)) {
            SparkSweep runner = SparkSweep.of(spark, 150_000);
            for (FeedModel model : List.of(MachinabilityFeed.published(), SpecificEnergyFeed.ofSteel())) {
                FeedSweep million = sweep(model, 100);
                List<SparkSweep.Part> there = runner.run(million);

                assertThat(there).isEqualTo(runner.runHere(million)).hasSize(7);
                assertThat(there.stream().mapToLong(SparkSweep.Part::points).sum()).isEqualTo(million.size());
            }
        }
    }
}

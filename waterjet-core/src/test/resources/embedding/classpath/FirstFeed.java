import static dev.waterjet.measure.Measures.gramsPerMinute;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.millimetres;

import dev.waterjet.evidence.Estimate;
import dev.waterjet.quality.CutQuality;
import dev.waterjet.feed.MachinabilityFeed;
import dev.waterjet.hydraulics.Orifice;
import dev.waterjet.jet.Abrasive;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.jet.CuttingHead;
import dev.waterjet.jet.FocusingTube;
import dev.waterjet.jet.Mesh;
import dev.waterjet.material.Materials;
import dev.waterjet.material.Workpiece;
import javax.measure.quantity.Speed;

class FirstFeed {

    public static void main(String[] arguments) {
        CuttingHead head =
                CuttingHead.of(Orifice.sapphire(millimetres(0.25)), FocusingTube.of(millimetres(0.76), millimetres(76)));
        AbrasiveJet jet = head.jet(megapascals(380), Abrasive.garnet(Mesh.of(80)), gramsPerMinute(300));
        Workpiece plate = Workpiece.of(Materials.standard().get("titanium"), millimetres(6));
        Estimate<Speed> feed = MachinabilityFeed.published().feed(jet, plate, CutQuality.FINE);
        System.out.println(feed.si());
    }
}

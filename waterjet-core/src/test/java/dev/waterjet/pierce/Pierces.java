package dev.waterjet.pierce;

import static dev.waterjet.measure.Measures.gramsPerMinute;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.millimetres;

import dev.waterjet.feed.CutConditions;
import dev.waterjet.feed.MachinabilityFeed;
import dev.waterjet.hydraulics.Orifice;
import dev.waterjet.jet.Abrasive;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.jet.CuttingHead;
import dev.waterjet.jet.FocusingTube;
import dev.waterjet.jet.Mesh;
import dev.waterjet.material.Material;
import dev.waterjet.material.MaterialClass;
import dev.waterjet.material.Materials;
import dev.waterjet.material.Workpiece;

/** Cuts of the workshop on Hollow Ridge, for the tests of this package. */
final class Pierces {

    private static final AbrasiveJet JET = CuttingHead.of(
                    Orifice.sapphire(millimetres(0.25)), FocusingTube.of(millimetres(0.76), millimetres(76)))
            .jet(megapascals(380), Abrasive.garnet(Mesh.of(80)), gramsPerMinute(300));

    private Pierces() {}

    static CutConditions cut(String material, double thicknessMm) {
        return cut(Materials.standard().get(material), thicknessMm);
    }

    /** With 0.35/1.02 mm and 450 g/min, the head of the bands of common practice. */
    static CutConditions withPracticeHead(String material, double thicknessMm) {
        return cut(material, thicknessMm)
                .withJet(CuttingHead.of(
                                Orifice.sapphire(millimetres(0.35)),
                                FocusingTube.of(millimetres(1.02), millimetres(102)))
                        .jet(megapascals(380), Abrasive.garnet(Mesh.of(80)), gramsPerMinute(450)));
    }

    static CutConditions laminate(double thicknessMm) {
        return cut(Material.of("fibre-laminate", 400, 0.3, MaterialClass.LAMINATED), thicknessMm);
    }

    static CutConditions brittle(double thicknessMm) {
        return brittle(400, thicknessMm);
    }

    static CutConditions brittle(double machinability, double thicknessMm) {
        return cut(Material.of("cast-tile", machinability, 0.3, MaterialClass.BRITTLE), thicknessMm);
    }

    static CutConditions ductile(double machinability, double thicknessMm) {
        return cut(Material.of("forged-bar", machinability, 0.1, MaterialClass.DUCTILE), thicknessMm);
    }

    private static CutConditions cut(Material material, double thicknessMm) {
        return CutConditions.of(JET, Workpiece.of(material, millimetres(thicknessMm)), MachinabilityFeed.published());
    }
}

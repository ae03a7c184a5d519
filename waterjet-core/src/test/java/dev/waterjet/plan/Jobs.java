package dev.waterjet.plan;

import static dev.waterjet.measure.Measures.gramsPerMinute;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.millimetres;

import dev.waterjet.cost.CostItem;
import dev.waterjet.cost.Prices;
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

/** Jets, plates and prices of the workshop on Hollow Ridge, shared by the tests of this package. */
public final class Jobs {

    public static final AbrasiveJet JET = CuttingHead.of(
                    Orifice.sapphire(millimetres(0.25)), FocusingTube.of(millimetres(0.76), millimetres(76)))
            .jet(megapascals(380), Abrasive.garnet(Mesh.of(80)), gramsPerMinute(300));

    public static final Material LAMINATE = Material.of("fibre-laminate", 400, 0.3, MaterialClass.LAMINATED);

    public static final Prices RATES = Prices.of("crowns")
            .with(CostItem.MACHINE, 90)
            .with(CostItem.WATER, 3)
            .with(CostItem.ABRASIVE, 0.45)
            .with(CostItem.ENERGY, 0.25)
            .with(CostItem.SLUDGE, 0.15)
            .with(CostItem.ORIFICE, 20)
            .with(CostItem.TUBE, 110)
            .with(CostItem.SHEET, 75);

    private Jobs() {}

    public static Workpiece plate(String material, double mm) {
        return Workpiece.of(Materials.standard().get(material), millimetres(mm));
    }

    public static Workpiece laminate(double mm) {
        return Workpiece.of(LAMINATE, millimetres(mm));
    }
}

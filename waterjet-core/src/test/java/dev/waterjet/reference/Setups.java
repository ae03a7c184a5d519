package dev.waterjet.reference;

import dev.waterjet.evidence.Evidence;
import dev.waterjet.evidence.EvidenceGrade;
import dev.waterjet.evidence.Source;
import dev.waterjet.hydraulics.JetSpeedModel;
import dev.waterjet.hydraulics.Orifice;
import dev.waterjet.hydraulics.WaterJet;
import dev.waterjet.jet.Abrasive;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.jet.CuttingHead;
import dev.waterjet.jet.FocusingTube;
import dev.waterjet.jet.Mesh;
import dev.waterjet.jet.MixingEfficiency;
import dev.waterjet.material.Materials;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Measures;
import java.util.Locale;

/** Jets and workpieces as rows describe them. */
public final class Setups {

    private Setups() {}

    /** Jet of water from {@code pressure}, {@code orifice}, and where given {@code cd}, {@code law}, {@code density}. */
    public static WaterJet waterJet(Inputs in) {
        Orifice orifice =
                Orifice.sapphire(in.has("orifice") ? in.get("orifice", Kind.LENGTH) : Measures.millimetres(0.3));
        if (in.has("cd")) {
            orifice = orifice.withDischargeCoefficient(in.number("cd"));
        }
        WaterJet jet = WaterJet.of(orifice, in.get("pressure", Kind.PRESSURE));
        if (in.has("law")) {
            jet = jet.withSpeedModel(JetSpeedModel.valueOf(in.text("law").toUpperCase(Locale.ROOT)));
        }
        return in.has("density") ? jet.withWaterDensity(in.get("density", Kind.DENSITY)) : jet;
    }

    /** Jet of 80 mesh garnet from the inputs of {@link #waterJet} with {@code tube}, {@code abrasive-flow}, {@code efficiency}. */
    public static AbrasiveJet abrasiveJet(Inputs in) {
        WaterJet water = waterJet(in);
        double boreM = in.si("tube", Kind.LENGTH);
        CuttingHead head =
                CuttingHead.of(water.orifice(), FocusingTube.of(Kind.LENGTH.of(boreM), Kind.LENGTH.of(100 * boreM)));
        if (in.has("efficiency")) {
            head = head.withMixing(MixingEfficiency.of(
                    in.number("efficiency"),
                    0,
                    Evidence.of(EvidenceGrade.ASSUMED, Source.of("row of the reference suite"))));
        }
        return head.jet(water.pressure(), Abrasive.garnet(Mesh.of(80)), in.get("abrasive-flow", Kind.MASS_FLOW))
                .withWater(water);
    }

    /** Workpiece from {@code material} and {@code thickness}. */
    public static Workpiece workpiece(Inputs in) {
        return Workpiece.of(Materials.standard().get(in.text("material")), in.get("thickness", Kind.LENGTH));
    }
}

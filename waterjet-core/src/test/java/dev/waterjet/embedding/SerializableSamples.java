package dev.waterjet.embedding;

import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.millimetres;
import static dev.waterjet.measure.Measures.newtons;

import dev.waterjet.material.Materials;
import dev.waterjet.measure.Kind;
import dev.waterjet.part.Contour;
import dev.waterjet.part.ContourConditioner;
import dev.waterjet.part.Point;
import dev.waterjet.quality.EdgeRequirement;
import dev.waterjet.sheet.SheetFill;
import dev.waterjet.sheet.SheetLayout;
import dev.waterjet.sheet.Slats;
import dev.waterjet.toolpath.CuttingRules;
import dev.waterjet.toolpath.HoldingTabs;
import dev.waterjet.toolpath.KerfOffset;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;

/** One instance or more of every public type that can be serialized: those of {@link Samples}, and those without a description. */
final class SerializableSamples {

    private SerializableSamples() {}

    static List<Object> all() {
        List<Object> all = new ArrayList<>();
        Samples.all().stream().filter(Serializable.class::isInstance).forEach(all::add);
        all.add(Kind.PRESSURE);
        all.add(Materials.standard());
        ofGeometry(all);
        return all;
    }

    private static void ofGeometry(List<Object> all) {
        Contour sheet =
                Contour.rectangle(Point.millimetres(0, 0), Point.millimetres(300, 200), EdgeRequirement.defaults());
        CuttingRules rules = CuttingRules.of(millimetres(1), millimetres(6));
        all.add(ContourConditioner.defaults());
        all.add(sheet.placeAtSi(0.4));
        all.add(SheetFill.sheet(millimetres(300), millimetres(200)));
        all.add(SheetLayout.of(sheet, List.of()));
        all.add(Slats.of(millimetres(50), millimetres(4)));
        all.add(HoldingTabs.of(newtons(300), megapascals(150), millimetres(10), rules));
        all.add(KerfOffset.of(millimetres(0.5)));
    }
}

package dev.waterjet.examples;

import dev.waterjet.calibrate.ShopFit;
import dev.waterjet.calibrate.TestCut;
import dev.waterjet.evidence.Caution;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.material.Material;
import dev.waterjet.material.Workpiece;
import java.io.IOException;
import java.io.PrintWriter;
import java.util.Optional;
import javax.measure.quantity.Speed;

/**
 * Output of program {@code fit} for the cuts of several materials.
 *
 * @param shop the fit
 * @param coverage probability of intervals
 * @param predicted setting of a further cut
 * @param material material of the further cut; that of the first cut if there is none
 */
record ShopReport(ShopFit shop, double coverage, Optional<String> predicted, Optional<Material> material) {

    private Material target() {
        return material.orElseGet(() -> shop.materials().get(0));
    }

    private Estimate<Speed> predicted(String setting) {
        TestCut next = CutSetting.parse(setting, shop.cuts().get(0));
        return shop.feed(next.jet(), Workpiece.of(target(), next.thickness()), next.index());
    }

    void printCsv(PrintWriter out) throws IOException {
        FitTables.shop(shop, coverage).writeCsv(out);
        if (predicted.isPresent()) {
            out.println();
            FitTables.predictionRow(predicted(predicted.get()), coverage).writeCsv(out);
        }
    }

    void print(PrintWriter out) {
        out.print(FitTables.shop(shop, coverage).text());
        predicted.ifPresent(setting -> {
            Estimate<Speed> feed = predicted(setting);
            out.print("\n"
                    + FitTables.prediction(feed, coverage)
                            .note("In " + target().name() + ".")
                            .text());
            for (Caution caution : feed.cautions()) {
                out.println("Caution: " + caution.text() + ".");
            }
        });
    }
}

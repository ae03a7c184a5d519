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
        // before anything is printed: a refusal leaves no half of an answer
        Optional<Estimate<Speed>> feed = predicted.map(this::predicted);
        FitTables.shop(shop, coverage).writeCsv(out);
        if (feed.isPresent()) {
            out.println();
            FitTables.predictionRow(feed.get(), coverage).writeCsv(out);
        }
    }

    void print(PrintWriter out) {
        Optional<Estimate<Speed>> feed = predicted.map(this::predicted);
        out.print(FitTables.shop(shop, coverage).text());
        feed.ifPresent(next -> {
            out.print("\n"
                    + FitTables.prediction(next, coverage)
                            .note("In " + target().name() + ".")
                            .text());
            for (Caution caution : next.cautions()) {
                out.println("Caution: " + caution.text() + ".");
            }
        });
    }
}

package dev.waterjet.examples;

import dev.waterjet.calibrate.CalibratedFeed;
import dev.waterjet.calibrate.ModelComparison;
import dev.waterjet.calibrate.TestCut;
import dev.waterjet.material.Material;
import dev.waterjet.measure.WaterjetException;
import java.util.List;

/** Comparison of a fitted model with others that the same cuts can fit. */
final class Rivals {

    /** With fewer plates those that are left do not show their spread. */
    private static final int MIN_PLATES = 4;

    private static final List<String> ALL = List.of("machinability", "specific-energy", "erosion", "declination");

    private Rivals() {}

    /** All models but one; the threshold model, which is of one jet, must be named. */
    static List<String> of(String model) {
        return ALL.stream().filter(name -> !name.equals(model)).toList();
    }

    static Table compare(FitRequest request, CalibratedFeed own, Material known, List<String> others) {
        boolean byPlates = request.group().equals(FitRequest.PLATE)
                && own.cuts().stream().map(TestCut::plate).distinct().count() >= MIN_PLATES;
        Table table = Table.of("Comparison by leaving out each " + (byPlates ? "plate" : "cut") + " in turn")
                .words("comparison")
                .words("verdict")
                .number("difference", 3)
                .number("standard error", 2)
                .number("aicc", 4)
                .number("aicc of the other", 4);
        for (String other : others) {
            try {
                CalibratedFeed second =
                        request.with(other).calibration(own.cuts(), known).fit(own.cuts());
                ModelComparison found =
                        byPlates ? ModelComparison.byPlates(own, second) : ModelComparison.of(own, second);
                add(request.model(), other, found, table);
            } catch (WaterjetException e) {
                if (others.size() == 1) {
                    throw e;
                }
                table.note("No comparison with " + other + ": " + e.getMessage() + ".");
            }
        }
        return table.note("A difference decides if it is larger than 2 and than twice its standard error.");
    }

    private static void add(String one, String other, ModelComparison found, Table into) {
        into.row(
                one + " less " + other,
                switch (found.verdict()) {
                    case FIRST -> one;
                    case SECOND -> other;
                    case CANNOT_TELL -> "cannot tell";
                },
                found.difference(),
                found.standardError(),
                found.firstAicc(),
                found.secondAicc());
    }
}

package dev.waterjet.examples;

import dev.waterjet.calibrate.Calibration;
import dev.waterjet.calibrate.CutPrior;
import dev.waterjet.calibrate.TestCut;
import dev.waterjet.feed.ErosionFeed;
import dev.waterjet.feed.FeedExponent;
import dev.waterjet.feed.MachinabilityFeed;
import dev.waterjet.material.Material;
import dev.waterjet.measure.Measures;
import dev.waterjet.measure.TextException;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/**
 * Request of a fit, in words, as it is kept in a file.
 *
 * @param model feed model
 * @param freed exponents to be fitted too
 * @param material id of the material; empty if none was stated
 * @param prior prior: catalogue, scatter or none
 * @param group column of the plates; empty if there is none
 * @param isRobust whether the scatter is heavy-tailed
 * @param isHighBreakdown whether far cuts are left out
 */
record FitRequest(
        String model,
        List<String> freed,
        String material,
        String prior,
        String group,
        boolean isRobust,
        boolean isHighBreakdown) {

    /** Column of plates. */
    static final String PLATE = "plate";

    static final String CATALOGUE = "catalogue";
    static final String SCATTER = "scatter";
    static final String NONE = "none";

    /** By common practice, no source. */
    private static final double TAIL_FREEDOM = 4;

    /**
     * Returns the calibration.
     *
     * @param cuts test cuts
     * @param known material of the cuts, with the number at which the search starts
     */
    Calibration calibration(List<TestCut> cuts, Material known) {
        Calibration plain = ofModel(known, cuts);
        if (isHighBreakdown) {
            return plain.withHighBreakdown();
        }
        if (isRobust) {
            return plain.withStudentErrors(TAIL_FREEDOM);
        }
        Calibration grouped = group.isEmpty() ? plain : plain.withGroups(group);
        return switch (prior) {
            case CATALOGUE -> grouped.withPrior(CutPrior.catalogue(known));
            case SCATTER -> {
                CutPrior any = CutPrior.catalogue(known);
                yield grouped.withPrior(CutPrior.ofScatter(any.scatterFreedom(), any.scatter()));
            }
            case NONE -> grouped;
            default -> throw new TextException("unknown prior \"" + prior + "\"; use catalogue, scatter or none");
        };
    }

    private Calibration ofModel(Material known, List<TestCut> cuts) {
        if (!freed.isEmpty() && !model.equals("machinability")) {
            throw new TextException("--free requires the machinability model");
        }
        return switch (model) {
            case "machinability" ->
                Calibration.ofMachinability(
                        known,
                        MachinabilityFeed.published(),
                        freed.stream().map(FitRequest::exponent).toArray(FeedExponent[]::new));
            case "specific-energy" -> Calibration.ofSpecificEnergy(known);
            case "erosion" -> Calibration.ofErosion(known, ErosionFeed.standard());
            case "declination" -> Calibration.ofDeclination(known);
            case "threshold" -> Calibration.ofThreshold(known, cuts.get(0).jet(), Measures.millimetresPerMinute(1));
            default ->
                throw new TextException("unknown model \"" + model
                        + "\"; use one of machinability, specific-energy, erosion, threshold, declination");
        };
    }

    private static FeedExponent exponent(String name) {
        return Arrays.stream(FeedExponent.values())
                .filter(exponent -> exponent.name()
                        .toLowerCase(Locale.ROOT)
                        .replace('_', '-')
                        .equals(name))
                .findFirst()
                .orElseThrow(() -> new TextException(
                        "unknown exponent \"" + name + "\"; use pressure, orifice, abrasive-flow, tube or feed"));
    }

    FitRequest with(String otherModel) {
        return new FitRequest(
                otherModel,
                List.of(),
                material,
                otherModel.equals("threshold") ? NONE : prior,
                group,
                isRobust,
                isHighBreakdown);
    }
}

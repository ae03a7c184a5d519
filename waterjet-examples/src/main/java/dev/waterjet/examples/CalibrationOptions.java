package dev.waterjet.examples;

import dev.waterjet.calibrate.CalibratedFeed;
import dev.waterjet.calibrate.CalibrationSet;
import dev.waterjet.feed.FeedModel;
import dev.waterjet.material.Material;
import dev.waterjet.measure.TextException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Option of saved calibrations; mixed into every program that computes a feed rate. */
final class CalibrationOptions {

    @Option(
            names = "--calibration",
            paramLabel = "<file>",
            description = "Calibration as fit --save writes it, once for each. It replaces --model for its own"
                    + " material, and its material is the default of --material; any other material has a caution."
                    + " Default: the calibrations of the shop file.")
    private List<Path> files = new ArrayList<>();

    @Spec(Spec.Target.MIXEE)
    private CommandSpec program;

    /**
     * Material and feed model of a cut.
     *
     * @param material the material, with the number of its calibration
     * @param model the calibration of the material, or calibrations with the model for all others
     * @param isCalibrated whether the material has a calibration
     */
    record Choice(Material material, FeedModel model, boolean isCalibrated) {}

    /**
     * Returns what is cut by which model.
     *
     * @param stated material of the option, or its default
     * @param model feed model of materials without calibration
     * @return material and model
     */
    Choice choose(Material stated, FeedModel model) {
        boolean isDefault = !program.commandLine().getParseResult().hasMatchedOption("--material");
        List<CalibratedFeed> own = read(isDefault ? List.of() : List.of(stated));
        CalibrationSet set = CalibrationSet.of(model);
        for (CalibratedFeed calibration : own) {
            set = set.with(calibration);
        }
        if (own.isEmpty()) {
            return new Choice(stated, model, false);
        }
        Material cut = isDefault && files.size() == 1 ? own.get(own.size() - 1).material() : stated;
        List<CalibratedFeed> fitting = set.calibrations().stream()
                .filter(calibration -> calibration.material().id().equals(cut.id()))
                .toList();
        if (fitting.isEmpty()) {
            return new Choice(cut, set, false);
        }
        Material fitted = fitting.get(fitting.size() - 1).material();
        return new Choice(fitted, fitting.size() == 1 ? fitting.get(0) : set, true);
    }

    /** Calibrations of the shop file, then those of the option; one that names no material is for the stated one. */
    private List<CalibratedFeed> read(List<Material> stated) {
        List<CalibratedFeed> all = new ArrayList<>();
        for (ShopDefaults.Saved saved : ShopDefaults.calibrations(program.commandLine())) {
            all.add(read(saved.text(), saved.name(), List.of()));
        }
        for (Path file : files) {
            all.add(read(TextFiles.read(file), file.toString(), stated));
        }
        return all;
    }

    private CalibratedFeed read(String text, String name, List<Material> stated) {
        return FitFile.read(
                text,
                name,
                id -> id.isEmpty()
                        ? stated.stream().findFirst().orElseGet(() -> {
                            throw new TextException(name
                                    + " does not state the material of its cuts; give --material, or fit them again"
                                    + " with it");
                        })
                        : ShopDefaults.materials(program.commandLine()).get(id));
    }
}

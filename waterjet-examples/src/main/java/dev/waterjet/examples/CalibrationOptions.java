package dev.waterjet.examples;

import dev.waterjet.calibrate.CalibratedFeed;
import dev.waterjet.calibrate.CalibrationSet;
import dev.waterjet.evidence.Evidence;
import dev.waterjet.evidence.EvidenceGrade;
import dev.waterjet.evidence.Source;
import dev.waterjet.feed.FeedModel;
import dev.waterjet.material.Material;
import dev.waterjet.material.Materials;
import dev.waterjet.measure.TextException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Options of how a material is cut: saved calibrations, or its number; mixed into every program that computes a feed rate. */
final class CalibrationOptions {

    @Option(
            names = "--calibration",
            paramLabel = "<file>",
            description = "Calibration as fit --save writes it, once for each. It replaces the feed model for its own"
                    + " material, and its material is the default of --material; any other material has a caution. One of"
                    + " several materials replaces the feed model for all, with the factor of the shop. Default: the"
                    + " calibrations of the shop file.")
    private List<Path> files = new ArrayList<>();

    @Option(
            names = "--machinability",
            converter = StatedNumber.Converter.class,
            paramLabel = "<number>",
            description =
                    "Machinability number of the material, instead of that of the catalogue and of calibrations in"
                            + " the shop file. With its standard uncertainty as \"90 +/- 5\" or \"90 +/- 5 %%\"; without, the"
                            + " relative uncertainty of the catalogue stands.")
    private Optional<StatedNumber> machinability = Optional.empty();

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
        if (machinability.isPresent()) {
            return new Choice(withMachinability(stated, machinability.get()), model, false);
        }
        boolean isDefault = !program.commandLine().getParseResult().hasMatchedOption("--material");
        List<FitFile.Content> all = read(isDefault ? List.of() : List.of(stated));
        FeedModel others = model;
        boolean isOfShop = false;
        for (FitFile.Content content : all) {
            if (content instanceof FitFile.OfShop shop) {
                others = shop.fit();
                isOfShop = isAmong(shop.fit().materials(), stated);
            }
        }
        CalibrationSet set = CalibrationSet.of(others);
        for (FitFile.Content content : all) {
            if (content instanceof FitFile.OfMaterial calibration) {
                set = set.with(calibration.own());
            }
        }
        List<CalibratedFeed> own = set.calibrations();
        if (own.isEmpty()) {
            return new Choice(stated, others, isOfShop);
        }
        Material cut = isDefault && files.size() == 1 ? own.get(own.size() - 1).material() : stated;
        List<CalibratedFeed> fitting = own.stream()
                .filter(calibration -> calibration.material().id().equals(cut.id()))
                .toList();
        if (fitting.isEmpty()) {
            return new Choice(cut, set, isOfShop);
        }
        Material fitted = fitting.get(fitting.size() - 1).material();
        return new Choice(fitted, fitting.size() == 1 ? fitting.get(0) : set, true);
    }

    private Material withMachinability(Material stated, StatedNumber number) {
        if (!files.isEmpty()) {
            throw new TextException(
                    "--machinability and --calibration both say how the material is cut; give one of them");
        }
        return stated.withMachinability(
                number.value(),
                number.relativeUncertainty().orElse(stated.relativeUncertainty()),
                Evidence.of(EvidenceGrade.ASSUMED, Source.of("stated with the option --machinability")));
    }

    private static boolean isAmong(List<Material> materials, Material stated) {
        return materials.stream().anyMatch(material -> material.id().equals(stated.id()));
    }

    /** Calibrations of the shop file, then those of the option; one that names no material is for the stated one. */
    private List<FitFile.Content> read(List<Material> stated) {
        List<FitFile.Content> all = new ArrayList<>();
        for (ShopDefaults.Saved saved : ShopDefaults.calibrations(program.commandLine())) {
            all.add(read(saved.text(), saved.name(), List.of()));
        }
        for (Path file : files) {
            all.add(read(TextFiles.read(file), file.toString(), stated));
        }
        return all;
    }

    private FitFile.Content read(String text, String name, List<Material> stated) {
        Materials catalogue = ShopDefaults.materials(program.commandLine());
        return FitFile.read(
                text,
                name,
                catalogue,
                id -> id.isEmpty()
                        ? stated.stream().findFirst().orElseGet(() -> {
                            throw new TextException(name
                                    + " does not state the material of its cuts; give --material, or fit them again"
                                    + " with it");
                        })
                        : catalogue.get(id));
    }
}

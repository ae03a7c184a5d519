package dev.waterjet.examples;

import dev.waterjet.examples.shop.ShopFile;
import dev.waterjet.material.Materials;
import dev.waterjet.measure.WaterjetException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import picocli.CommandLine.IDefaultValueProvider;
import picocli.CommandLine.IFactory;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.OptionSpec;

/** Default values of options, and materials, from the file of {@code --shop}; options override them. */
final class ShopDefaults implements IDefaultValueProvider, IFactory {

    static final String OPTION = "--shop";

    private static final String CODES = "--codes";

    private final ShopFile shop;
    private final Optional<Path> file;

    private ShopDefaults(ShopFile shop, Optional<Path> file) {
        this.shop = shop;
        this.file = file;
    }

    /** Reads the file that the arguments name, before options are parsed. */
    static ShopDefaults of(String... args) {
        for (int i = 0; i < args.length; i++) {
            if (args[i].startsWith(OPTION + "=")) {
                return read(args[i].substring(OPTION.length() + 1));
            }
            if (args[i].equals(OPTION) && i + 1 < args.length) {
                return read(args[i + 1]);
            }
        }
        return new ShopDefaults(ShopFile.empty(), Optional.empty());
    }

    private static ShopDefaults read(String name) {
        Path file = Path.of(name);
        return new ShopDefaults(ShopFile.parse(TextFiles.read(file)), Optional.of(file));
    }

    ShopFile shop() {
        return shop;
    }

    /** Materials of the standard catalogue and of the shop; a material of the shop replaces one of the same id. */
    Materials materials() {
        return Materials.standard().with(shop.materials());
    }

    @Override
    public @Nullable String defaultValue(ArgSpec argument) {
        if (argument instanceof OptionSpec option) {
            if (option.longestName().equals(CODES) && file.isPresent()) {
                return shop.programCodes()
                        .map(name -> file.get().resolveSibling(name).toString())
                        .orElse(null);
            }
            return shop.defaultOf(option.longestName()).orElse(null);
        }
        return null;
    }

    @Override
    public <K> K create(Class<K> type) throws Exception {
        if (type == Typed.Catalogued.class) {
            return type.cast(new Typed.Catalogued(materials()));
        }
        return CommandLine.defaultFactory().create(type);
    }

    /** The shop file of a running program. */
    static ShopFile of(CommandLine line) {
        return line.getDefaultValueProvider() instanceof ShopDefaults defaults ? defaults.shop() : ShopFile.empty();
    }

    /**
     * A calibration of the shop file.
     *
     * @param name where it is, for messages
     * @param text text of the calibration
     */
    record Saved(String name, String text) {}

    /** Calibrations of a running program: objects of the shop file, or files beside it. */
    static List<Saved> calibrations(CommandLine line) {
        return line.getDefaultValueProvider() instanceof ShopDefaults defaults ? defaults.calibrations() : List.of();
    }

    private List<Saved> calibrations() {
        List<Saved> saved = new ArrayList<>();
        for (String text : shop.calibrations()) {
            if (text.startsWith("\"")) {
                Path named = file.orElse(Path.of("")).resolveSibling(text.substring(1, text.length() - 1));
                saved.add(new Saved(named.toString(), TextFiles.read(named)));
            } else {
                saved.add(new Saved("calibration " + (saved.size() + 1) + " of the shop file", text));
            }
        }
        return saved;
    }

    /** Materials of a running program. */
    static Materials materials(CommandLine line) {
        return line.getDefaultValueProvider() instanceof ShopDefaults defaults
                ? defaults.materials()
                : Materials.standard();
    }

    /** Marks a refusal as one of the shop file. */
    static String refusal(WaterjetException e) {
        return "shop file: " + e.getMessage();
    }
}

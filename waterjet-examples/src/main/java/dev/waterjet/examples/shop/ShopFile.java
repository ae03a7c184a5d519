package dev.waterjet.examples.shop;

import dev.waterjet.cost.CostItem;
import dev.waterjet.head.HeadInventory;
import dev.waterjet.material.Material;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.TextException;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import javax.measure.Quantity;

/**
 * Shop file: what belongs to a workshop and is given once. All of it is optional.
 *
 * <pre>{@code
 * {
 *   "units": "metric",
 *   "machine": {"rapid_speed": "12 m/min", "acceleration": "0.8 m/s2", "pierce_delay": "0.4 s"},
 *   "pump": {"pressure": "380 MPa", "power": "37 kW"},
 *   "head": {"orifice": "0.33 mm", "tube": "1.02 mm", "mesh": "80", "abrasive_flow": "450 g/min"},
 *   "inventory": {"orifices": ["0.25 mm", "0.33 mm"], "tubes": ["0.76 mm", "1.02 mm"],
 *                 "tube_lengths": ["76 mm"], "meshes": ["80"], "abrasive_flows": ["300 g/min", "450 g/min"]},
 *   "prices": {"currency": "cost units", "machine": 90, "abrasive": 0.45},
 *   "materials": [{"id": "dome-steel", "machinability": 82, "relative_uncertainty": 0.15, "class": "ductile"}],
 *   "calibrations": [],
 *   "program_codes": "codes.txt"
 * }
 * }</pre>
 *
 * @param text the file as it was read, for {@code print}
 * @param units units in which reports are written; empty for those of the drawing or program
 * @param values quantities by key, as the file writes them
 * @param mesh mesh size of the abrasive, as {@code --mesh} takes it
 * @param inventory head inventory
 * @param currency name of the currency
 * @param prices prices by item, in the currency
 * @param materials the shop's own materials
 * @param calibrations calibrations as they are saved by the fit, as JSON text: an object, or the name of a file relative to
 *     the shop file
 * @param programCodes name of the file of machine codes, relative to the shop file
 */
public record ShopFile(
        String text,
        Optional<LengthUnits> units,
        Map<ShopKey, String> values,
        Optional<String> mesh,
        Optional<HeadInventory> inventory,
        Optional<String> currency,
        Map<CostItem, Double> prices,
        List<Material> materials,
        List<String> calibrations,
        Optional<String> programCodes) {

    /** Units in which lengths are shown. */
    public enum LengthUnits {
        /** Millimetres. */
        METRIC,
        /** Inches. */
        INCH
    }

    /**
     * Keeps unmodifiable copies.
     *
     * @param text the file as it was read
     * @param units units in which reports are written
     * @param values quantities by key
     * @param mesh mesh size of the abrasive
     * @param inventory head inventory
     * @param currency name of the currency
     * @param prices prices by item
     * @param materials the shop's own materials
     * @param calibrations calibrations, one JSON object each
     * @param programCodes name of the file of machine codes
     */
    public ShopFile {
        values = Map.copyOf(values);
        prices = Map.copyOf(prices);
        materials = List.copyOf(materials);
        calibrations = List.copyOf(calibrations);
    }

    /** {@return a shop file that states nothing} */
    public static ShopFile empty() {
        // built without the reader of JSON, which takes longer to load than all else
        return new ShopFile(
                "{}",
                Optional.empty(),
                Map.of(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Map.of(),
                List.of(),
                List.of(),
                Optional.empty());
    }

    /**
     * Reads a shop file.
     *
     * @param json JSON text; comments are allowed
     * @return the shop file
     * @throws TextException with code {@code shop-syntax} (line and column), {@code shop-key} for an unknown key,
     *     {@code shop-value} for a value, with key, value and limit
     */
    public static ShopFile parse(String json) {
        return ShopFileReader.read(json);
    }

    /**
     * Prints the file in a form that {@link #parse} reads: same content, sections and keys in their order, two spaces of indent.
     *
     * @return the JSON text
     */
    public String print() {
        return ShopFileReader.print(text);
    }

    /**
     * Returns a quantity of the file.
     *
     * @param key its key
     * @param kind its kind, that of the key
     * @param <Q> kind of quantity
     * @return the quantity; empty if the file does not state it
     */
    public <Q extends Quantity<Q>> Optional<Quantity<Q>> quantity(ShopKey key, Kind<Q> kind) {
        return Optional.ofNullable(values.get(key)).map(kind::parse);
    }

    /**
     * Returns the default value of an option.
     *
     * @param option name of the option, such as {@code --pressure}
     * @return the value as it would be typed; empty if the file does not state it
     */
    public Optional<String> defaultOf(String option) {
        return switch (option) {
            case "--mesh" -> mesh;
            case "--currency" -> currency;
            case "--units" -> units.map(system -> system.name().toLowerCase(Locale.ROOT));
            default ->
                values.entrySet().stream()
                        .filter(entry ->
                                entry.getKey().option().filter(option::equals).isPresent())
                        .map(Map.Entry::getValue)
                        .findFirst();
        };
    }

    /** {@return whether the file states an orifice, a focusing tube or an abrasive flow rate} */
    public boolean hasHead() {
        return values.containsKey(ShopKey.ORIFICE)
                || values.containsKey(ShopKey.TUBE)
                || values.containsKey(ShopKey.ABRASIVE_FLOW);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof ShopFile that && print().equals(that.print());
    }

    @Override
    public int hashCode() {
        return print().hashCode();
    }
}

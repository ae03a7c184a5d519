package dev.waterjet.examples.shop;

import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.core.json.JsonReadFeature;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import dev.waterjet.cost.CostItem;
import dev.waterjet.examples.shop.ShopFile.LengthUnits;
import dev.waterjet.head.HeadInventory;
import dev.waterjet.hydraulics.Orifice;
import dev.waterjet.jet.Abrasive;
import dev.waterjet.jet.Mesh;
import dev.waterjet.material.Material;
import dev.waterjet.material.MaterialClass;
import dev.waterjet.material.Materials;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.TextException;
import dev.waterjet.measure.Units;
import dev.waterjet.measure.WaterjetException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import javax.measure.Quantity;

/** Reader of shop files. */
final class ShopFileReader {

    private static final int MAX_CHARACTERS = 2_000_000;

    private static final JsonMapper JSON = JsonMapper.builder()
            .enable(JsonReadFeature.ALLOW_JAVA_COMMENTS)
            .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
            .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
            .build();

    private static final Set<String> SECTIONS = Set.of(
            "units", "machine", "pump", "head", "inventory", "prices", "materials", "calibrations", "program_codes");
    private static final Set<String> INVENTORY =
            Set.of("orifices", "tubes", "tube_lengths", "meshes", "abrasive_flows");
    private static final Set<String> MATERIAL = Set.of("id", "name", "machinability", "relative_uncertainty", "class");

    private final JsonNode root;

    private ShopFileReader(JsonNode root) {
        this.root = root;
    }

    static ShopFile read(String json) {
        JsonNode root = tree(json);
        if (!root.isObject()) {
            throw new TextException(Message.of("shop-syntax", "a shop file is a JSON object: { ... }"));
        }
        return new ShopFileReader(root).file(json);
    }

    static String print(String json) {
        return tree(json).toPrettyString() + "\n";
    }

    private static JsonNode tree(String json) {
        if (json.length() > MAX_CHARACTERS) {
            throw new TextException(Message.of("shop-syntax", "the shop file has more than {limit} characters")
                    .with("limit", MAX_CHARACTERS));
        }
        try {
            JsonNode tree = JSON.readTree(json);
            return tree == null ? JSON.missingNode() : tree;
        } catch (JsonProcessingException e) {
            JsonLocation at = e.getLocation();
            Message message = Message.of("shop-syntax", "the shop file is not JSON: {fault}")
                    .with(
                            "fault",
                            String.valueOf(e.getOriginalMessage())
                                    .lines()
                                    .findFirst()
                                    .orElse(""));
            throw at == null
                    ? new TextException(message)
                    : new TextException(Math.max(1, at.getLineNr()), Math.max(1, at.getColumnNr()), message);
        }
    }

    private ShopFile file(String json) {
        requireKeys(root, "", SECTIONS);
        Map<ShopKey, String> values = new EnumMap<>(ShopKey.class);
        for (String section : List.of("machine", "pump", "head")) {
            section(section, values);
        }
        Optional<String> mesh =
                Optional.ofNullable(root.path("head").get("mesh")).map(node -> mesh("head.mesh", node));
        return new ShopFile(
                json,
                units(),
                values,
                mesh,
                inventory(),
                text(root.path("prices"), "prices", "currency"),
                prices(),
                materials(),
                calibrations(),
                text(root, "", "program_codes"));
    }

    private static void requireKeys(JsonNode node, String path, Set<String> known) {
        if (!node.isObject()) {
            throw wrong(path, node, "it must be an object: { ... }");
        }
        node.fieldNames().forEachRemaining(key -> {
            if (!known.contains(key)) {
                throw new TextException(Message.of("shop-key", "unknown key {key}; {section} has {known}")
                        .withInput("key", path.isEmpty() ? key : path + "." + key)
                        .with("section", path.isEmpty() ? "a shop file" : path)
                        .with("known", String.join(", ", new TreeSet<>(known))));
            }
        });
    }

    private static TextException wrong(String path, JsonNode value, String fault) {
        return new TextException(Message.of("shop-value", "{key} is {value}: {fault}")
                .with("key", path)
                .withInput("value", value.isTextual() ? value.textValue() : value.toString())
                .with("fault", fault));
    }

    /** Turns a refusal of the library into one that names key and value. */
    private static <T> T checked(String path, JsonNode value, Supplier<T> read) {
        try {
            return read.get();
        } catch (WaterjetException e) {
            throw wrong(path, value, e.message().text());
        }
    }

    private Optional<LengthUnits> units() {
        JsonNode node = root.get("units");
        if (node == null) {
            return Optional.empty();
        }
        return switch (node.asText()) {
            case "metric" -> Optional.of(LengthUnits.METRIC);
            case "inch" -> Optional.of(LengthUnits.INCH);
            default -> throw wrong("units", node, "it must be metric or inch");
        };
    }

    private void section(String name, Map<ShopKey, String> values) {
        JsonNode node = root.get(name);
        if (node == null) {
            return;
        }
        Map<String, ShopKey> keys = Arrays.stream(ShopKey.values())
                .filter(key -> key.path().startsWith(name + "."))
                .collect(Collectors.toMap(key -> key.path().substring(name.length() + 1), key -> key));
        Set<String> known = new TreeSet<>(keys.keySet());
        if (name.equals("head")) {
            known.add("mesh");
        }
        requireKeys(node, name, known);
        keys.forEach((key, shopKey) -> {
            if (node.has(key)) {
                values.put(shopKey, quantity(shopKey, node.get(key)));
            }
        });
    }

    private static String quantity(ShopKey key, JsonNode node) {
        String text = node.isNumber() && key.kind().equals(Kind.RATIO) ? node.asText() : string(key.path(), node);
        checked(key.path(), node, () -> {
            double si = si(key.kind(), text);
            return key.mayBeZero()
                    ? Require.notNegative(key.path(), si, key.unit())
                    : Require.positive(key.path(), si, key.unit());
        });
        return text;
    }

    private static <Q extends Quantity<Q>> double si(Kind<Q> kind, String text) {
        return kind.si(kind.parse(text));
    }

    private static String string(String path, JsonNode node) {
        if (!node.isTextual() || node.textValue().isBlank()) {
            throw wrong(path, node, "it must be a text, with its unit if it is a quantity, such as \"0.33 mm\"");
        }
        return node.textValue();
    }

    private static Optional<String> text(JsonNode section, String path, String key) {
        JsonNode node = section.get(key);
        return node == null ? Optional.empty() : Optional.of(string(path.isEmpty() ? key : path + "." + key, node));
    }

    private static String mesh(String path, JsonNode node) {
        String text = node.isInt() ? node.asText() : string(path, node);
        abrasive(path, node, text);
        return text;
    }

    private static Abrasive abrasive(String path, JsonNode node, String text) {
        return checked(path, node, () -> Abrasive.garnet(meshOf(text)));
    }

    private static Mesh meshOf(String text) {
        boolean isGrit = text.toUpperCase(Locale.ROOT).startsWith("F");
        String number = isGrit ? text.substring(1) : text;
        if (!number.matches("[0-9]{1,4}")) {
            throw new TextException(
                    Message.of("not-a-mesh", "{text} is not a mesh; write a sieve number such as 80, or F80")
                            .withInput("text", text));
        }
        return isGrit ? Mesh.fepa(Integer.parseInt(number)) : Mesh.of(Integer.parseInt(number));
    }

    private Optional<HeadInventory> inventory() {
        JsonNode node = root.get("inventory");
        if (node == null) {
            return Optional.empty();
        }
        requireKeys(node, "inventory", INVENTORY);
        List<Orifice> orifices = new ArrayList<>();
        for (double bore : list(node, "orifices", Kind.LENGTH)) {
            orifices.add(
                    checked("inventory.orifices", node.get("orifices"), () -> Orifice.sapphire(Kind.LENGTH.of(bore))));
        }
        List<Abrasive> abrasives = new ArrayList<>();
        for (JsonNode mesh : array(node, "meshes")) {
            abrasives.add(abrasive("inventory.meshes", mesh, mesh("inventory.meshes", mesh)));
        }
        double[] tubes = list(node, "tubes", Kind.LENGTH);
        double[] lengths = list(node, "tube_lengths", Kind.LENGTH);
        double[] flows = list(node, "abrasive_flows", Kind.MASS_FLOW);
        return Optional.of(checked(
                "inventory",
                node,
                () -> HeadInventory.of(
                        orifices,
                        QuantityArray.ofSi(Kind.LENGTH, tubes),
                        QuantityArray.ofSi(Kind.LENGTH, lengths),
                        abrasives,
                        QuantityArray.ofSi(Kind.MASS_FLOW, flows))));
    }

    private static JsonNode array(JsonNode section, String key) {
        JsonNode node = section.get(key);
        if (node == null || !node.isArray() || node.isEmpty()) {
            throw wrong(
                    "inventory." + key,
                    node == null ? JSON.missingNode() : node,
                    "it must be a list of sizes: [ ... ]");
        }
        return node;
    }

    private static <Q extends Quantity<Q>> double[] list(JsonNode section, String key, Kind<Q> kind) {
        List<Double> sizes = new ArrayList<>();
        for (JsonNode node : array(section, key)) {
            String path = "inventory." + key;
            String text = string(path, node);
            sizes.add(checked(path, node, () -> Require.positive(path, si(kind, text), kind.siUnit())));
        }
        return sizes.stream().mapToDouble(Double::doubleValue).toArray();
    }

    private Map<CostItem, Double> prices() {
        Map<CostItem, Double> prices = new EnumMap<>(CostItem.class);
        JsonNode node = root.get("prices");
        if (node == null) {
            return prices;
        }
        Set<String> known = new TreeSet<>(Set.of("currency"));
        for (CostItem item : CostItem.values()) {
            known.add(item.name().toLowerCase(Locale.ROOT));
        }
        requireKeys(node, "prices", known);
        for (CostItem item : CostItem.values()) {
            String key = item.name().toLowerCase(Locale.ROOT);
            if (node.has(key)) {
                prices.put(item, number("prices." + key, node.get(key), true));
            }
        }
        return prices;
    }

    private static double number(String path, JsonNode node, boolean mayBeZero) {
        if (node == null || !node.isNumber()) {
            throw wrong(path, node == null ? JSON.missingNode() : node, "it must be a number");
        }
        return checked(
                path,
                node,
                () -> mayBeZero
                        ? Require.notNegative(path, node.asDouble(), Units.ONE)
                        : Require.positive(path, node.asDouble(), Units.ONE));
    }

    private List<Material> materials() {
        JsonNode list = root.get("materials");
        List<Material> materials = new ArrayList<>();
        if (list == null) {
            return materials;
        }
        requireArray("materials", list);
        for (int i = 0; i < list.size(); i++) {
            materials.add(material("materials[" + i + "]", list.get(i)));
        }
        checked("materials", list, () -> Materials.of(materials));
        return materials;
    }

    private static void requireArray(String path, JsonNode list) {
        if (!list.isArray()) {
            throw wrong(path, list, "it must be a list: [ ... ]");
        }
    }

    private static Material material(String path, JsonNode node) {
        requireKeys(node, path, MATERIAL);
        String id = text(node, path, "id").orElseThrow(() -> wrong(path, node, "a material has an id"));
        double machinability = number(path + ".machinability", node.get("machinability"), false);
        double uncertainty = number(path + ".relative_uncertainty", node.get("relative_uncertainty"), true);
        MaterialClass materialClass = materialClass(path, node);
        Material material = checked(path, node, () -> Material.of(id, machinability, uncertainty, materialClass));
        return text(node, path, "name").map(material::withName).orElse(material);
    }

    private static MaterialClass materialClass(String path, JsonNode node) {
        String label = text(node, path, "class").orElse("ductile");
        for (MaterialClass candidate : MaterialClass.values()) {
            if (candidate.label().equals(label)) {
                return candidate;
            }
        }
        throw wrong(
                path + ".class",
                node.get("class"),
                "it must be one of "
                        + Arrays.stream(MaterialClass.values())
                                .map(MaterialClass::label)
                                .collect(Collectors.joining(", ")));
    }

    private List<String> calibrations() {
        JsonNode list = root.get("calibrations");
        List<String> calibrations = new ArrayList<>();
        if (list == null) {
            return calibrations;
        }
        requireArray("calibrations", list);
        for (int i = 0; i < list.size(); i++) {
            boolean isName = list.get(i).isTextual() && !list.get(i).textValue().isBlank();
            if (!list.get(i).isObject() && !isName) {
                throw wrong(
                        "calibrations[" + i + "]", list.get(i), "it must be an object: { ... }, or the name of a file");
            }
            calibrations.add(list.get(i).toString());
        }
        return calibrations;
    }
}

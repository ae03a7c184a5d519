package dev.waterjet.examples;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.waterjet.calibrate.CalibratedFeed;
import dev.waterjet.calibrate.CutFit;
import dev.waterjet.calibrate.CutPrior;
import dev.waterjet.calibrate.ShopFit;
import dev.waterjet.calibrate.TestCut;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.feed.MachinabilityFeed;
import dev.waterjet.material.Material;
import dev.waterjet.material.Materials;
import dev.waterjet.measure.TextException;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import javax.measure.quantity.Dimensionless;

/**
 * A calibration as a file of JSON: what was asked for, the cuts themselves with a check sum, and the result. Reading fits
 * again and refuses a file whose result is another one. A fit of several materials of a shop has its prior in place of a request.
 */
final class FitFile {

    private static final String FORMAT = "waterjet-calibration";
    private static final int VERSION = 1;

    /** Relative difference beyond which a file was changed, or saved by another version. */
    private static final double TOLERANCE = 1e-8;

    private static final ObjectMapper JSON = new ObjectMapper().enable(SerializationFeature.INDENT_OUTPUT);

    private FitFile() {}

    /** Content of a file. */
    sealed interface Content {}

    /**
     * Fit to the cuts of one material.
     *
     * @param request what was asked for
     * @param own the calibration
     */
    record OfMaterial(FitRequest request, CalibratedFeed own) implements Content {}

    /**
     * Fit to the cuts of several materials.
     *
     * @param fit the fit
     */
    record OfShop(ShopFit fit) implements Content {}

    private static ObjectNode root(List<TestCut> all) {
        ObjectNode root = JSON.createObjectNode().put("format", FORMAT).put("version", VERSION);
        String library = TestCut.class.getPackage().getImplementationVersion();
        root.put("library", library == null ? "waterjet-core" : "waterjet-core " + library);
        root.put("scale", "logarithm of depth; the scatter of a feed rate is larger by the feed exponent");
        String csv = TestCut.print(all);
        root.putObject("cuts").put("csv_sha256", hash(csv)).put("csv", csv);
        return root;
    }

    private static String text(ObjectNode root) {
        try {
            return JSON.writeValueAsString(root) + "\n";
        } catch (JsonProcessingException e) {
            throw new TextException("the calibration cannot be written: " + e.getOriginalMessage());
        }
    }

    static String write(ShopFit shop) {
        ObjectNode root = root(shop.cuts());
        root.set("shop", JSON.valueToTree(shop.prior().describe()));
        ObjectNode result = root.putObject("result").put("scatter", shop.scatter());
        ArrayNode parameters = result.putArray("parameters");
        put("shop factor", shop.factor(), parameters);
        shop.materials().forEach(material -> put(material.id(), shop.machinability(material), parameters));
        return text(root);
    }

    private static void put(String name, Estimate<Dimensionless> number, ArrayNode into) {
        into.addObject()
                .put("name", name)
                .put("value", number.si())
                .put("standard_error", number.standardUncertaintySi())
                .put("degrees_of_freedom", number.degreesOfFreedom());
    }

    static String write(FitRequest request, CalibratedFeed own) {
        CutFit fit = own.fit();
        ObjectNode root = root(own.cuts());
        root.set("request", JSON.valueToTree(request));
        root.put("method", fit.method().label());
        ObjectNode result = root.putObject("result")
                .put("log_likelihood", fit.logLikelihood())
                .put("scatter", fit.scatter())
                .put("plate_scatter", fit.plateScatter())
                .put("degrees_of_freedom", fit.degreesOfFreedom());
        ArrayNode parameters = result.putArray("parameters");
        for (String name : fit.names()) {
            parameters
                    .addObject()
                    .put("name", name)
                    .put("value", fit.value(name))
                    .put("standard_error", fit.standardError(name))
                    .put("lower_95", fit.lower(name, 0.95))
                    .put("upper_95", fit.upper(name, 0.95));
        }
        own.remarks()
                .forEach(remark -> root.withArray("remarks")
                        .addObject()
                        .put("code", remark.code())
                        .put("text", remark.text()));
        return text(root);
    }

    /**
     * Reads and checks a calibration.
     *
     * @param text text of the file
     * @param name its name, for messages
     * @param catalogue materials of the cuts of a shop
     * @param material material by its id, for the cuts of one; an empty id if the file states none
     */
    static Content read(String text, String name, Materials catalogue, Function<String, Material> material) {
        try {
            JsonNode root = JSON.readTree(text);
            if (!root.path("format").asText().equals(FORMAT)
                    || root.path("version").asInt() != VERSION) {
                throw new TextException(name + " is not a calibration of format " + FORMAT + ", version " + VERSION);
            }
            String csv = root.path("cuts").path("csv").asText();
            if (!hash(csv).equals(root.path("cuts").path("csv_sha256").asText())) {
                throw changed(name);
            }
            List<TestCut> cuts = TestCut.parse(csv);
            return root.has("shop") ? shop(root, name, cuts, catalogue) : ofMaterial(root, name, cuts, material);
        } catch (JsonProcessingException e) {
            throw new TextException(name + " cannot be read: " + e.getOriginalMessage());
        }
    }

    private static Content ofMaterial(
            JsonNode root, String name, List<TestCut> cuts, Function<String, Material> material)
            throws JsonProcessingException {
        FitRequest request = JSON.treeToValue(root.path("request"), FitRequest.class);
        if (request == null) {
            throw changed(name);
        }
        CalibratedFeed own =
                request.calibration(cuts, material.apply(request.material())).fit(cuts);
        check(root, name, parameter -> own.fit().value(parameter));
        return new OfMaterial(request, own);
    }

    private static Content shop(JsonNode root, String name, List<TestCut> cuts, Materials catalogue) {
        JsonNode saved = root.path("shop");
        CutPrior prior = new CutPrior(
                saved.path("material").asDouble(),
                saved.path("shop").asDouble(),
                saved.path("scatter_degrees_of_freedom").asDouble(),
                saved.path("scatter").asDouble(),
                saved.path("plate_degrees_of_freedom").asDouble(),
                saved.path("plate_spread").asDouble());
        ShopFit shop = ShopFit.of(cuts, catalogue, MachinabilityFeed.published(), prior);
        check(
                root,
                name,
                parameter -> parameter.equals("shop factor")
                        ? shop.factor().si()
                        : shop.machinability(catalogue.get(parameter)).si());
        return new OfShop(shop);
    }

    private static void check(JsonNode root, String name, ToDoubleFunction<String> fitted) {
        JsonNode parameters = root.path("result").path("parameters");
        if (parameters.isEmpty()) {
            throw changed(name);
        }
        for (JsonNode parameter : parameters) {
            double saved = parameter.path("value").asDouble();
            double now = fitted.applyAsDouble(parameter.path("name").asText());
            if (!(Math.abs(saved - now) <= TOLERANCE * Math.abs(now))) {
                throw changed(name);
            }
        }
    }

    private static TextException changed(String name) {
        return new TextException(name + " was saved by another version, or changed by hand; fit the cuts again");
    }

    private static String hash(String text) {
        try {
            byte[] digest = MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8));
            return HexFormat.of().formatHex(digest);
        } catch (NoSuchAlgorithmException e) {
            throw new AssertionError("every Java platform has SHA-256", e);
        }
    }
}

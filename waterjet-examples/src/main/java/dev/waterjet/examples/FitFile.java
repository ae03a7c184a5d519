package dev.waterjet.examples;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.waterjet.calibrate.CalibratedFeed;
import dev.waterjet.calibrate.CutFit;
import dev.waterjet.calibrate.TestCut;
import dev.waterjet.material.Material;
import dev.waterjet.measure.TextException;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import java.util.function.Function;

/**
 * A calibration as a file of JSON: what was asked for, the cuts themselves with a check sum, and the result. Reading fits
 * again and refuses a file whose result is another one.
 */
final class FitFile {

    private static final String FORMAT = "waterjet-calibration";
    private static final int VERSION = 1;

    /** Relative difference beyond which a file was changed, or saved by another version. */
    private static final double TOLERANCE = 1e-8;

    private static final ObjectMapper JSON = new ObjectMapper().enable(SerializationFeature.INDENT_OUTPUT);

    private FitFile() {}

    static String write(FitRequest request, CalibratedFeed own) {
        CutFit fit = own.fit();
        ObjectNode root = JSON.createObjectNode().put("format", FORMAT).put("version", VERSION);
        String library = TestCut.class.getPackage().getImplementationVersion();
        root.put("library", library == null ? "waterjet-core" : "waterjet-core " + library);
        root.set("request", JSON.valueToTree(request));
        root.put("scale", "logarithm of depth; the scatter of a feed rate is larger by the feed exponent");
        root.put("method", fit.method().label());
        String csv = TestCut.print(own.cuts());
        root.putObject("cuts").put("csv_sha256", hash(csv)).put("csv", csv);
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
        try {
            return JSON.writeValueAsString(root) + "\n";
        } catch (JsonProcessingException e) {
            throw new TextException("the calibration cannot be written: " + e.getOriginalMessage());
        }
    }

    /**
     * Reads and checks a calibration.
     *
     * @param text text of the file
     * @param name its name, for messages
     * @param materials material by its id; an empty id if the file states none
     */
    static CalibratedFeed read(String text, String name, Function<String, Material> materials) {
        JsonNode root;
        FitRequest request;
        try {
            root = JSON.readTree(text);
            if (!root.path("format").asText().equals(FORMAT)
                    || root.path("version").asInt() != VERSION) {
                throw new TextException(name + " is not a calibration of format " + FORMAT + ", version " + VERSION);
            }
            request = JSON.treeToValue(root.path("request"), FitRequest.class);
        } catch (JsonProcessingException e) {
            throw new TextException(name + " cannot be read: " + e.getOriginalMessage());
        }
        String csv = root.path("cuts").path("csv").asText();
        if (!hash(csv).equals(root.path("cuts").path("csv_sha256").asText())) {
            throw changed(name);
        }
        List<TestCut> cuts = TestCut.parse(csv);
        CalibratedFeed own =
                request.calibration(cuts, materials.apply(request.material())).fit(cuts);
        for (JsonNode parameter : root.path("result").path("parameters")) {
            double saved = parameter.path("value").asDouble();
            double now = own.fit().value(parameter.path("name").asText());
            if (!(Math.abs(saved - now) <= TOLERANCE * Math.abs(now))) {
                throw changed(name);
            }
        }
        return own;
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

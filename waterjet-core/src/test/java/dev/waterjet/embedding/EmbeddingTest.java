package dev.waterjet.embedding;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.ObjectMapper;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.feed.MachinabilityFeed;
import dev.waterjet.material.Materials;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Measures;
import dev.waterjet.quality.CutQuality;
import java.io.File;
import java.net.URI;
import java.net.URISyntaxException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestReporter;
import org.junit.jupiter.api.io.TempDir;

/** Programs of a stranger, compiled without a warning and run in a JVM of their own against the library. */
class EmbeddingTest {

    /** A class of each jar that the library needs at run time. */
    static final List<String> NEEDED = List.of(
            "dev.waterjet.measure.Kind",
            "javax.measure.Unit",
            "tech.units.indriya.AbstractUnit",
            "tech.uom.lib.common.function.Converter",
            "jakarta.inject.Singleton",
            "org.apache.commons.math3.util.FastMath");

    private static final List<String> JACKSON = List.of(
            "com.fasterxml.jackson.databind.ObjectMapper",
            "com.fasterxml.jackson.core.JsonFactory",
            "com.fasterxml.jackson.annotation.JsonValue");

    @TempDir
    Path folder;

    @Test
    void worksOnTheClassPath() throws Exception {
        compile("classpath", "-classpath", path(NEEDED));

        assertThat(run("-classpath", folder + File.pathSeparator + path(NEEDED), "FirstFeed"))
                .isEqualTo(Double.toString(firstFeed()));
    }

    @Test
    void worksOnTheModulePath() throws Exception {
        compile("modulepath", "--module-path", path(NEEDED));

        assertThat(run(
                        "--module-path",
                        folder + File.pathSeparator + path(NEEDED),
                        "--module",
                        "workshop/workshop.FirstFeed"))
                .isEqualTo(Double.toString(firstFeed()));
    }

    @Test
    void jacksonWorksOnTheModulePath() throws Exception {
        List<String> all = Stream.concat(NEEDED.stream(), JACKSON.stream()).toList();
        compile("json", "--module-path", path(all));

        assertThat(run(
                        "--module-path",
                        folder + File.pathSeparator + path(all),
                        "--module",
                        "workshop/workshop.FirstFeed"))
                .isEqualTo(new ObjectMapper().writeValueAsString(Estimate.of(Kind.SPEED, 0.01, 0.001)));
    }

    /** Prints the start-up time of a JVM up to its first feed rate over one that does nothing; time decides no test. */
    @Test
    void coldStartIsReported(TestReporter reporter) throws Exception {
        compile("classpath", "-classpath", path(NEEDED));
        compile("empty", "-classpath", path(NEEDED));
        String classPath = folder + File.pathSeparator + path(NEEDED);
        long empty = Long.MAX_VALUE;
        long firstFeed = Long.MAX_VALUE;
        for (int i = 0; i < 5; i++) {
            empty = Math.min(empty, nanosOf("-classpath", classPath, "Empty"));
            firstFeed = Math.min(firstFeed, nanosOf("-classpath", classPath, "FirstFeed"));
        }
        reporter.publishEntry("cold start", (firstFeed - empty) / 1_000_000 + " ms over an empty JVM");
    }

    private long nanosOf(String... arguments) throws Exception {
        long start = System.nanoTime();
        assertThat(run(arguments)).isNotEmpty();
        return System.nanoTime() - start;
    }

    private static double firstFeed() {
        return MachinabilityFeed.published()
                .feed(
                        Samples.JET,
                        Workpiece.of(Materials.standard().get("titanium"), Measures.millimetres(6)),
                        CutQuality.FINE)
                .si();
    }

    private static String path(List<String> classNames) throws Exception {
        List<String> places = new ArrayList<>();
        for (String name : classNames) {
            places.add(place(Class.forName(name)).toString());
        }
        return String.join(File.pathSeparator, places);
    }

    private static Path place(Class<?> type) throws URISyntaxException {
        URI uri = type.getProtectionDomain().getCodeSource().getLocation().toURI();
        return Path.of(uri);
    }

    private void compile(String project, String... options) throws Exception {
        List<String> arguments = new ArrayList<>(List.of("-d", folder.toString(), "-Xlint:all", "-Werror"));
        arguments.addAll(Arrays.asList(options));
        Path sources =
                Path.of(EmbeddingTest.class.getResource("/embedding/" + project).toURI());
        try (Stream<Path> found = Files.walk(sources)) {
            found.map(Path::toString).filter(name -> name.endsWith(".java")).forEach(arguments::add);
        }
        assertThat(tool("javac", arguments)).isEmpty();
    }

    private String run(String... arguments) throws Exception {
        return tool("java", Arrays.asList(arguments));
    }

    /** Standard output of a tool of the JDK that must end well and say nothing on standard error. */
    private String tool(String name, List<String> arguments) throws Exception {
        List<String> command = new ArrayList<>();
        command.add(Path.of(System.getProperty("java.home"), "bin", name).toString());
        command.addAll(arguments);
        Path errors = folder.resolve("errors.txt");
        Process process =
                new ProcessBuilder(command).redirectError(errors.toFile()).start();
        String output = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        int status = process.waitFor();
        assertThat(errors).isEmptyFile();
        assertThat(status).isZero();
        return output.strip();
    }
}

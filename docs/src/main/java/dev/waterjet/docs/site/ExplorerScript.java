package dev.waterjet.docs.site;

import dev.waterjet.measure.Kind;
import java.io.IOException;
import java.net.URISyntaxException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * The library as a script for the explorer page. The project in {@code docs/explorer} compiles it; this class runs that build
 * if the script is missing, or was made of another library or other sources.
 */
final class ExplorerScript {

    private final Path project;

    private ExplorerScript(Path project) {
        this.project = project;
    }

    static ExplorerScript of(Path root) {
        return new ExplorerScript(root.resolve("docs/explorer").toAbsolutePath().normalize());
    }

    Path file() {
        return project.resolve("target/script/explorer.js");
    }

    private Path mark() {
        return project.resolve("target/script/explorer.sha256");
    }

    private Path log() {
        return project.resolve("target/explorer.log");
    }

    /** Digest of everything from which the script is made. */
    private String digest() throws IOException {
        List<Path> files = new ArrayList<>(List.of(project.resolve("pom.xml")));
        for (Path folder : List.of(project.resolve("src/main"), library())) {
            try (Stream<Path> found = Files.walk(folder)) {
                found.filter(Files::isRegularFile).sorted().forEach(files::add);
            }
        }
        return Digest.of("", files);
    }

    /** Jar or directory of the library on the class path. */
    private static Path library() {
        try {
            return Path.of(Kind.class
                    .getProtectionDomain()
                    .getCodeSource()
                    .getLocation()
                    .toURI());
        } catch (URISyntaxException e) {
            throw new IllegalStateException("the class path is no address", e);
        }
    }

    boolean isCurrent() throws IOException {
        return Files.exists(file())
                && Files.exists(mark())
                && Files.readString(mark()).equals(digest());
    }

    /**
     * Starts the build of the script.
     *
     * @param maven the program of Maven
     * @param isOffline whether Maven may use no network
     * @return the running build; null if the script is current
     */
    @Nullable
    Process start(Path maven, boolean isOffline) throws IOException {
        if (isCurrent()) {
            return null;
        }
        Files.createDirectories(project.resolve("target"));
        List<String> words = new ArrayList<>(List.of(maven.toString(), "-B", "-q", "-DskipTests"));
        if (isOffline) {
            words.add("-o");
        }
        words.addAll(List.of("-f", project.resolve("pom.xml").toString(), "package"));
        return new ProcessBuilder(words)
                .redirectErrorStream(true)
                .redirectOutput(log().toFile())
                .start();
    }

    /** Waits for a started build, and marks the script with what it was made of. */
    void await(@Nullable Process build) throws IOException {
        if (build == null) {
            return;
        }
        try {
            if (build.waitFor() != 0) {
                throw new IllegalStateException("the explorer was not compiled:\n"
                        + Files.readString(log(), StandardCharsets.UTF_8)
                        + "\nThe library must have been installed; -Dsite.explorer=false leaves the explorer out.");
            }
        } catch (InterruptedException e) {
            build.destroy();
            Thread.currentThread().interrupt();
            throw new IllegalStateException("interrupted while the explorer was compiled", e);
        }
        Files.writeString(mark(), digest());
    }
}

package dev.waterjet.docs.site;

import java.io.IOException;
import java.io.InputStream;
import java.io.StringWriter;
import java.net.JarURLConnection;
import java.net.URL;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.jar.JarEntry;
import java.util.jar.JarFile;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javax.tools.DocumentationTool;
import javax.tools.StandardJavaFileManager;
import javax.tools.ToolProvider;
import org.jspecify.annotations.Nullable;

/** Public types of the library, their pages of Javadoc, and the making of these pages. */
final class Api {

    private static final Pattern PUBLIC = Pattern.compile(
            "^public (?:(?:final|abstract|sealed|non-sealed) )*(?:class|interface|enum|record|@interface) ",
            Pattern.MULTILINE);

    /** Directory of the Javadoc of the interfaces of quantities, beside that of the library. */
    private static final String UNITS = "api-units";

    private final Path sources;
    private final Map<String, String> pages;

    private Api(Path sources, Map<String, String> pages) {
        this.sources = sources;
        this.pages = pages;
    }

    static Api of(Path sources) throws IOException {
        Map<String, String> pages = new TreeMap<>();
        for (Path file : javaFiles(sources)) {
            String name = file.getFileName().toString().replace(".java", "");
            if (!name.contains("-") && PUBLIC.matcher(Files.readString(file)).find()) {
                pages.put(name, sources.relativize(file).toString().replace(".java", ".html"));
            }
        }
        return new Api(sources, Map.copyOf(pages));
    }

    private static List<Path> javaFiles(Path sources) throws IOException {
        try (Stream<Path> files = Files.walk(sources)) {
            return files.filter(file -> file.toString().endsWith(".java"))
                    .sorted()
                    .toList();
        }
    }

    /** Page of a type below the directory of the Javadoc, or null if the library has no such public type. */
    @Nullable
    String page(String type) {
        return pages.get(type);
    }

    /** Types whose pages are linked. */
    Map<String, String> pages() {
        return pages;
    }

    /**
     * Writes the Javadoc, unless the folder has that of the same sources, style sheet and JDK.
     *
     * @param folder directory to write
     * @param style additional style sheet
     * @return whether it was written
     * @throws IOException if a file cannot be read or written
     */
    boolean document(Path folder, String style) throws IOException {
        Path mark = folder.resolve("sources.sha256");
        String digest = Digest.of(Runtime.version() + style, javaFiles(sources));
        if (Files.exists(mark) && Files.readString(mark).equals(digest)) {
            return false;
        }
        Files.createDirectories(folder);
        Path units = folder.resolveSibling(UNITS);
        unpackUnits(units);
        Path sheet = Files.writeString(folder.resolve("site.css"), style);
        write(folder, sheet);
        Files.writeString(mark, digest);
        return true;
    }

    /** Unpacks the Javadoc of the interfaces of quantities, which comes from their jar on the class path. */
    private static void unpackUnits(Path folder) throws IOException {
        URL page = Api.class.getClassLoader().getResource("javax/measure/Quantity.html");
        if (page == null) {
            throw new IllegalStateException(
                    "the Javadoc of unit-api is not on the class path; build with the profile site");
        }
        JarURLConnection connection = (JarURLConnection) page.openConnection();
        connection.setUseCaches(false);
        try (JarFile jar = connection.getJarFile()) {
            for (JarEntry entry : Collections.list(jar.entries())) {
                Path file = folder.resolve(entry.getName()).normalize();
                if (!entry.isDirectory() && file.startsWith(folder)) {
                    Files.createDirectories(file.resolveSibling(""));
                    try (InputStream in = jar.getInputStream(entry)) {
                        Files.copy(in, file, StandardCopyOption.REPLACE_EXISTING);
                    }
                }
            }
        }
    }

    private void write(Path folder, Path style) throws IOException {
        DocumentationTool tool = ToolProvider.getSystemDocumentationTool();
        StringWriter said = new StringWriter();
        try (StandardJavaFileManager files = tool.getStandardFileManager(null, null, StandardCharsets.UTF_8)) {
            List<Path> read = javaFiles(sources).stream()
                    .filter(file -> !file.endsWith("module-info.java"))
                    .toList();
            List<String> options = List.of(
                    "-d",
                    folder.toString(),
                    "-classpath",
                    System.getProperty("java.class.path"),
                    "-quiet",
                    "-notimestamp",
                    "-Xdoclint:none",
                    "-linkoffline",
                    "../" + UNITS,
                    folder.resolveSibling(UNITS).toString(),
                    "--add-stylesheet",
                    style.toString(),
                    "-windowtitle",
                    "Waterjet: interface of the library",
                    "-top",
                    "<a href=\"{@docRoot}/../index.html\">Guides</a>",
                    "-encoding",
                    "UTF-8");
            boolean isDone = tool.getTask(said, files, null, null, options, files.getJavaFileObjectsFromPaths(read))
                    .call();
            if (!isDone) {
                throw new IllegalStateException(
                        "Javadoc failed:\n" + said.toString().lines().limit(40).collect(Collectors.joining("\n")));
            }
        }
    }
}

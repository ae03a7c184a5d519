package dev.waterjet.docs.site;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.commonmark.ext.gfm.tables.TablesExtension;
import org.commonmark.parser.Parser;
import org.jspecify.annotations.Nullable;

/**
 * The site: all guides as HTML that opens from disk, without a network.
 *
 * <pre>{@code
 * Site.main("..", "target/site");   // from the directory docs
 * }</pre>
 */
public final class Site {

    private static final String MATHEMATICS = "META-INF/resources/webjars/mathjax/3.2.2/es5/tex-svg.js";
    private static final String SEARCH = "META-INF/resources/webjars/lunr/2.3.9/lunr.min.js";

    private final Path root;
    private final Api api;
    private final Map<Path, SitePage> pages = new TreeMap<>();
    private final Navigation navigation;
    private final Set<Path> copied = new TreeSet<>();

    /** The library as a script, if it was compiled. */
    private final Path explorer;

    private Site(Path root) throws IOException {
        this.root = root.toAbsolutePath().normalize();
        explorer = ExplorerScript.of(this.root).file();
        api = Api.of(this.root.resolve("waterjet-core/src/main/java"));
        Parser parser =
                Parser.builder().extensions(List.of(TablesExtension.create())).build();
        for (Path file : sources()) {
            pages.put(file, SitePage.of(file, output(file), parser.parse(Files.readString(file))));
        }
        SitePage index = pages.get(this.root.resolve("docs/index.md"));
        if (index == null) {
            throw new IllegalArgumentException(this.root + " has no docs/index.md");
        }
        navigation = Navigation.of(index, this::page);
    }

    /**
     * Reads the guides of a project.
     *
     * @param root root directory of the project
     * @return the site, not yet written
     * @throws IOException if a guide cannot be read
     */
    static Site of(Path root) throws IOException {
        return new Site(root);
    }

    /**
     * Writes the site, its Javadoc and its scripts. If the property {@code site.maven} names the program of Maven, it compiles the
     * script of the explorer first, unless that is current or {@code site.explorer} is false.
     *
     * @param args root directory of the project, then the directory of the site; {@code ..} and {@code target/site} if none is
     *     given
     * @throws IOException if a file cannot be read or written
     */
    public static void main(String... args) throws IOException {
        Path root = Path.of(args.length > 0 ? args[0] : "..");
        Path folder = Path.of(args.length > 1 ? args[1] : "target/site");
        Site site = of(root);
        ExplorerScript script = ExplorerScript.of(root);
        String maven = System.getProperty("site.maven");
        Process build = maven == null || !Boolean.parseBoolean(System.getProperty("site.explorer", "true"))
                ? null
                : script.start(Path.of(maven), Boolean.getBoolean("site.offline"));
        site.api.document(folder.resolve("api"), resource("dev/waterjet/docs/site/api.css"));
        script.await(build);
        site.write(folder);
        site.writeScripts(folder);
    }

    Api api() {
        return api;
    }

    Navigation navigation() {
        return navigation;
    }

    List<SitePage> pages() {
        return List.copyOf(pages.values());
    }

    private List<Path> sources() throws IOException {
        List<Path> files = new ArrayList<>();
        for (Path folder : List.of(root, root.resolve("docs"), root.resolve("docs/learn"))) {
            try (Stream<Path> found = Files.list(folder)) {
                found.filter(file -> file.toString().endsWith(".md")).sorted().forEach(files::add);
            }
        }
        return files;
    }

    /** Pages of {@code docs} stand at the top of the site, those of the root directory beside them in lower case. */
    private String output(Path file) {
        Path docs = root.resolve("docs");
        return file.startsWith(docs)
                ? docs.relativize(file).toString().replace('\\', '/').replace(".md", ".html")
                : root.relativize(file).toString().toLowerCase(Locale.ROOT).replace(".md", ".html");
    }

    private @Nullable SitePage page(SitePage from, String link) {
        return link.contains(":")
                ? null
                : pages.get(
                        from.source().resolveSibling(link.replaceAll("#.*", "")).normalize());
    }

    /** Address in the site of an address in the Markdown of a page. */
    String target(SitePage from, String link) {
        if (link.contains(":") || link.startsWith("#")) {
            return link;
        }
        SitePage page = page(from, link);
        int mark = link.indexOf('#');
        if (page != null) {
            return from.up() + page.output() + (mark < 0 ? "" : link.substring(mark));
        }
        Path file = from.source()
                .resolveSibling(mark < 0 ? link : link.substring(0, mark))
                .normalize();
        copied.add(file);
        return from.up() + place(file);
    }

    /** Place of a copied file: figures keep theirs, others stand apart. */
    private String place(Path file) {
        Path docs = root.resolve("docs");
        String place = (file.startsWith(docs) ? docs : root)
                .relativize(file)
                .toString()
                .replace('\\', '/');
        return place.startsWith("figures/") ? place : "files/" + place;
    }

    void write(Path folder) throws IOException {
        boolean hasExplorer = Files.exists(explorer);
        Template template = new Template(navigation, hasExplorer);
        for (SitePage page : pages.values()) {
            JavaCode code = new JavaCode(api, page.up() + "api/");
            String body = new PageHtml(page, code, link -> target(page, link)).html();
            write(folder.resolve(page.output()), template.html(page, body));
        }
        for (Path file : copied) {
            copy(file, folder.resolve(place(file)));
            if (file.toString().endsWith(".svg")) {
                write(
                        folder.resolve(place(file).replace("figures/", "figures/dark/")),
                        DarkFigure.of(Files.readString(file)));
            } else if (file.toString().endsWith(".png")) {
                DarkFigure.write(file, folder.resolve(place(file).replace("figures/", "figures/dark/")));
            }
        }
        write(folder.resolve("assets/site.css"), resource("dev/waterjet/docs/site/site.css"));
        write(folder.resolve("assets/site.js"), resource("dev/waterjet/docs/site/site.js"));
        if (hasExplorer) {
            copy(explorer, folder.resolve("assets/explorer.js"));
            write(folder.resolve("assets/explorer-page.js"), resource("dev/waterjet/docs/site/explorer-page.js"));
        }
        write(folder.resolve("assets/index.js"), SearchIndex.script(pages.values()));
    }

    /** Writes the scripts of others, which come from their jars on the class path. */
    void writeScripts(Path folder) throws IOException {
        write(folder.resolve("assets/tex-svg.js"), resource(MATHEMATICS));
        write(folder.resolve("assets/lunr.min.js"), resource(SEARCH));
    }

    private static void copy(Path from, Path to) throws IOException {
        if (Files.isDirectory(from)) {
            throw new IOException("a guide links to the directory " + from);
        }
        Files.createDirectories(to.resolveSibling(""));
        Files.write(to, Files.readAllBytes(from));
    }

    private static void write(Path file, String text) throws IOException {
        Path folder = file.getParent();
        if (folder != null) {
            Files.createDirectories(folder);
        }
        Files.writeString(file, text, StandardCharsets.UTF_8);
    }

    private static String resource(String name) {
        try (InputStream in = Site.class.getClassLoader().getResourceAsStream(name)) {
            if (in == null) {
                throw new IllegalStateException(name + " is not on the class path; build with the profile site");
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}

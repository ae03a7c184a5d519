package dev.waterjet.docs.site;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.examples.Waterjet;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The site without its Javadoc and scripts of others: written from the guides, read back as text. */
class SiteTest {

    private static final Path ROOT = Path.of("..").toAbsolutePath().normalize();
    private static final Pattern ADDRESS = Pattern.compile("(?:href|src)=\"([^\"]+)\"");
    private static final Pattern ID = Pattern.compile("id=\"([^\"]+)\"");

    /** Written by the profile of the site only. */
    private static final Set<String> SCRIPTS = Set.of("assets/tex-svg.js", "assets/lunr.min.js", "api/index.html");

    @TempDir
    private static Path folder;

    private static Site site;

    @BeforeAll
    static void write() throws IOException {
        site = Site.of(ROOT);
        site.write(folder);
    }

    @Test
    void noLinkIsDead() throws IOException {
        Set<String> types = new HashSet<>(site.api().pages().values());
        List<String> dead = new ArrayList<>();
        for (SitePage page : site.pages()) {
            Path file = folder.resolve(page.output());
            Matcher address = ADDRESS.matcher(Files.readString(file));
            while (address.find()) {
                String link = address.group(1);
                if (!link.contains(":") && !isAlive(file, link, types)) {
                    dead.add(page.output() + " -> " + link);
                }
            }
        }
        assertThat(dead).isEmpty();
    }

    private static boolean isAlive(Path file, String link, Set<String> types) throws IOException {
        int mark = link.indexOf('#');
        String place = mark < 0 ? link : link.substring(0, mark);
        Path target = place.isEmpty() ? file : file.resolveSibling(place).normalize();
        String below = folder.relativize(target).toString();
        if (SCRIPTS.contains(below)) {
            return true;
        }
        if (below.startsWith("api/")) {
            return types.contains(below.substring(4)) && mark < 0;
        }
        return Files.exists(target) && (mark < 0 || ids(target).contains(link.substring(mark + 1)));
    }

    private static Set<String> ids(Path page) throws IOException {
        Set<String> ids = new HashSet<>();
        Matcher id = ID.matcher(Files.readString(page));
        while (id.find()) {
            ids.add(id.group(1));
        }
        return ids;
    }

    @Test
    void everyPageIsReachedFromTheNavigation() {
        assertThat(site.pages().stream().map(SitePage::output))
                .containsExactlyInAnyOrderElementsOf(site.navigation().reached());
    }

    @Test
    void anchorsOfAPageDiffer() {
        for (SitePage page : site.pages()) {
            assertThat(page.ids().values()).as(page.output()).doesNotHaveDuplicates();
        }
    }

    @Test
    void everyFigureHasADarkVariant() throws IOException {
        try (Stream<Path> figures = Files.list(folder.resolve("figures"))) {
            List<Path> light =
                    figures.filter(file -> file.toString().endsWith(".svg")).toList();
            assertThat(light).hasSizeGreaterThan(30);
            for (Path file : light) {
                String dark = Files.readString(folder.resolve("figures/dark").resolve(file.getFileName()));
                assertThat(dark).isNotEqualTo(Files.readString(file)).doesNotContain("rgb(255,255,255)", "#fffffe");
            }
        }
    }

    @Test
    void everyPictureOfPixelsHasADarkVariant() throws IOException {
        for (SitePage page : site.pages()) {
            Matcher address = ADDRESS.matcher(Files.readString(folder.resolve(page.output())));
            while (address.find()) {
                if (address.group(1).endsWith(".png") && !address.group(1).contains("/dark/")) {
                    Path light = folder.resolve(page.output())
                            .resolveSibling(address.group(1))
                            .normalize();
                    Path dark = light.resolveSibling("dark").resolve(light.getFileName());
                    int paper = ImageIO.read(light.toFile()).getRGB(0, 0) & 0xffffff;
                    int ground = ImageIO.read(dark.toFile()).getRGB(0, 0) & 0xffffff;
                    assertThat(luminance(paper)).isGreaterThan(0.8);
                    assertThat(luminance(ground)).isLessThan(0.05);
                }
            }
        }
        assertThat(folder.resolve("figures/dark/plan-sheet.png")).exists();
    }

    @Test
    void theIndexListsEveryProgram() {
        StringWriter help = new StringWriter();
        Waterjet.run(new PrintWriter(help, true), new PrintWriter(help, true), "--help");
        Set<String> programs = new TreeSet<>();
        Matcher name = Pattern.compile("(?m)^  ([a-z]+)  ").matcher(help.toString());
        while (name.find()) {
            programs.add(name.group(1));
        }
        Set<String> listed = new TreeSet<>();
        Matcher row = Pattern.compile("(?m)^\\| `([a-z]+)` \\|").matcher(text(page("index.html")));
        while (row.find()) {
            listed.add(row.group(1));
        }
        assertThat(listed).hasSizeGreaterThan(10).isEqualTo(programs);
    }

    private static SitePage page(String output) {
        return site.pages().stream()
                .filter(page -> page.output().equals(output))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void theFormulaSheetNamesTypesThatExist() {
        Matcher code = Pattern.compile("(?<!\\$)`([A-Z]\\w+)`(?!\\$)").matcher(text(page("formulas.html")));
        List<String> types = code.results().map(found -> found.group(1)).toList();
        assertThat(types).hasSizeGreaterThan(40).allMatch(site.api().pages()::containsKey);
    }

    @Test
    void theGlossaryIsInAlphabeticalOrder() {
        Matcher row = Pattern.compile("(?m)^\\| ([a-z][^|$(]*)").matcher(text(page("glossary.html")));
        List<String> terms =
                row.results().map(found -> found.group(1).strip()).skip(1).toList();
        assertThat(terms).hasSizeGreaterThan(40).isSorted().doesNotHaveDuplicates();
    }

    private static String text(SitePage page) {
        try {
            return Files.readString(page.source());
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }

    @Test
    void javaIsColouredAndItsTypesLeadToTheirJavadoc() {
        JavaCode code = new JavaCode(site.api(), "../api/");
        assertThat(code.html("var x = Kerf.of(1.5e-3); // a < b"))
                .isEqualTo("<span class=\"j-key\">var</span> x = <a"
                        + " href=\"../api/dev/waterjet/kerf/Kerf.html\">Kerf</a>.of(<span"
                        + " class=\"j-number\">1.5e-3</span>); <span class=\"j-comment\">// a &lt; b</span>");
        assertThat(code.html("String s = \"new // Kerf\";"))
                .isEqualTo("String s = <span class=\"j-text\">&quot;new // Kerf&quot;</span>;");
        assertThat(code.link("FeedPlan.time()")).isEqualTo("../api/dev/waterjet/motion/FeedPlan.html");
        assertThat(code.link("KerfKernel")).as("not public").isNull();
        assertThat(code.link("HashMap")).isNull();
    }

    @ParameterizedTest
    @ValueSource(ints = {0, 0xffffff, 0x0062a3, 0xc24a00, 0x00805c, 0x123456, 0xfedcba})
    void theColourSpaceOfTheFiguresIsInvertible(int rgb) {
        assertThat(DarkFigure.rgb(DarkFigure.lab(rgb))).isEqualTo(rgb);
    }

    /** Contrast as defined by WCAG 2: at least 4.5 for text, 3 for lines, on the ground that white becomes. */
    @ParameterizedTest
    @CsvSource({"1f2a33, 7", "5d6b76, 4.5", "0062a3, 3", "c24a00, 3", "00805c, 3", "9a4a86, 3", "8a6d00, 3", "2f8fc4, 3"
    })
    void inkAndSeriesStayReadableInTheDark(String colour, double least) {
        double ground = luminance(DarkFigure.dark(0xffffff));
        double ink = luminance(DarkFigure.dark(Integer.parseInt(colour, 16)));
        assertThat((ink + 0.05) / (ground + 0.05)).isGreaterThan(least);
        assertThat(luminance(0x777777)).as("of a known grey").isCloseTo(0.184475, within(1e-6));
    }

    private static double luminance(int rgb) {
        double[] weights = {0.2126, 0.7152, 0.0722};
        double sum = 0;
        for (int i = 0; i < 3; i++) {
            double c = ((rgb >> (16 - 8 * i)) & 0xff) / 255.0;
            sum += weights[i] * (c <= 0.04045 ? c / 12.92 : Math.pow((c + 0.055) / 1.055, 2.4));
        }
        return sum;
    }
}

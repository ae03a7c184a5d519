package dev.waterjet.docs;

import static org.assertj.core.api.Assertions.assertThat;

import dev.waterjet.examples.Waterjet;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;

/**
 * Runs what the pages show. The Java blocks of a page are one program, in their order; a block without imports sees the
 * packages of the library. Where a block of language {@code text} follows, it must be what was printed. A block of
 * language {@code sh} that starts the examples is run too, if its output is shown.
 */
class PagesTest {

    private static final Pattern LINK = Pattern.compile("!?\\[([^\\]]*)\\]\\(([^)\\s]+)\\)");
    private static final Pattern COMMAND =
            Pattern.compile("java -jar waterjet-examples/target/waterjet-examples\\.jar (.*)");
    private static final Pattern WORD = Pattern.compile("\"([^\"]*)\"|(\\S+)");

    @TestFactory
    Stream<DynamicTest> javaPrintsWhatThePageSays(@TempDir Path folder) {
        return Page.all().stream()
                .filter(page -> !page.blocks("java").isEmpty())
                .map(page -> DynamicTest.dynamicTest(page.toString(), () -> {
                    List<Page.Block> blocks = page.blocks("java");
                    List<String> printed =
                            JavaBlocks.run(blocks, Files.createTempDirectory(folder, "page"), page.toString());
                    for (int i = 0; i < blocks.size(); i++) {
                        String expected = blocks.get(i).printed();
                        if (expected != null) {
                            assertThat(plain(printed.get(i)))
                                    .as(
                                            "%s, block at line %d",
                                            page, blocks.get(i).line())
                                    .isEqualTo(plain(expected));
                        }
                    }
                }));
    }

    @TestFactory
    Stream<DynamicTest> commandsPrintWhatThePageSays(@TempDir Path folder) {
        return Page.all().stream()
                .flatMap(page -> page.blocks("sh").stream()
                        .filter(block -> block.printed() != null)
                        .map(block -> Map.entry(block, COMMAND.matcher(block.text())))
                        .filter(entry -> entry.getValue().find())
                        .map(entry -> DynamicTest.dynamicTest(
                                page + ", line " + entry.getKey().line(), () -> {
                                    String into = folder.toString();
                                    List<String> words = words(entry.getValue().group(1)).stream()
                                            .map(word -> file(word, folder))
                                            .collect(Collectors.toCollection(ArrayList::new));
                                    if (words.get(0).equals("plan")) {
                                        words.addAll(List.of("--output-dir", into));
                                    }
                                    StringWriter out = new StringWriter();
                                    PrintWriter printer = new PrintWriter(out);
                                    Waterjet.run(printer, printer, words.toArray(String[]::new));
                                    printer.flush();
                                    String printed = out.toString().replace(into + "/residuals", "residuals");
                                    assertThat(plain(printed.replace(into, "plan")))
                                            .isEqualTo(plain(String.valueOf(
                                                    entry.getKey().printed())));
                                })));
    }

    /** A file of the project by its place, one that a command writes, or another reads, by that of a folder. */
    private static String file(String word, Path folder) {
        if (!word.matches("[a-z/-]+\\.(csv|json|svg)")) {
            return word;
        }
        Path known = Page.ROOT.resolve(word);
        return (Files.exists(known) ? known : folder.resolve(word)).toString();
    }

    @TestFactory
    Stream<DynamicTest> linksLeadSomewhereAndPicturesHaveWords() {
        return Page.all().stream()
                .map(page -> DynamicTest.dynamicTest(page.toString(), () -> {
                    Matcher link = LINK.matcher(page.text());
                    while (link.find()) {
                        if (link.group().startsWith("!")) {
                            assertThat(link.group(1))
                                    .as("words for %s", link.group(2))
                                    .hasSizeGreaterThan(15);
                        }
                        String target = link.group(2).replaceAll("#.*", "");
                        if (!target.isEmpty() && !URI.create(target).isAbsolute()) {
                            assertThat(page.file().resolveSibling(target)).exists();
                        }
                    }
                }));
    }

    private static List<String> words(String line) {
        List<String> words = new ArrayList<>();
        Matcher word = WORD.matcher(line);
        while (word.find()) {
            words.add(word.group(1) != null ? word.group(1) : word.group(2));
        }
        return words;
    }

    private static String plain(String text) {
        return text.lines()
                .map(String::stripTrailing)
                .collect(Collectors.joining("\n"))
                .strip();
    }
}

package dev.waterjet.docs;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Checks the words of the project in its text files: sources, guides, tables and figures.
 *
 * <p>Rejected are words without a legitimate use, and first sentences of Javadoc that are a clause instead of a noun or a verb.
 */
class WordsTest {

    private static final Set<String> SUFFIXES = Set.of("java", "md", "txt", "csv", "svg", "jsh", "xml", "kt");

    /** Directories of tools and of build output. */
    private static final Set<String> SKIPPED = Set.of(".git", "target", "node_modules", ".idea", ".mvn");

    private static final Pattern REJECTED = Pattern.compile(
            "Usual:|\\b(?:told|tells|as yet|hangs on|speaks for|parting|if need be|of one['’]s own)\\b|unsqueez",
            Pattern.CASE_INSENSITIVE);

    /** Start of a Javadoc comment, also behind the tag that states a result, on the same or the next line. */
    private static final Pattern CLAUSE = Pattern.compile("/\\*\\*(?:\\s|\\*)*(?:\\{@return\\s+)?(?:What|How)\\b");

    @TestFactory
    Stream<DynamicTest> filesUseTheWordsOfTheProject() {
        List<Path> files = files();
        assertThat(files).hasSizeGreaterThan(300);
        return files.stream()
                .map(file -> DynamicTest.dynamicTest(
                        Page.ROOT.relativize(file).toString(),
                        () -> assertThat(faults(file)).isEmpty()));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "description = \"Usual: 3.\"",
                "// told apart",
                "It Tells more.",
                "no price as yet",
                "the cost hangs on it",
                "@param evidence what speaks for it",
                "1 is a parting cut",
                "unsqueezable",
                "if need be",
                "a model of one's own",
                "/** What is cut. */",
                "/**\n     * How far it goes.\n     */",
                "/** {@return What it is} */",
            })
    void rejectedWordsAreFound(String text) {
        assertThat(faults(text)).hasSize(1);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "/* What follows is no Javadoc. */",
                "/** Whatever the input, one line. */",
                "a departing train, a tellstone",
                "was yet",
                "/** Width. How wide it is. */",
            })
    void otherWordsPass(String text) {
        assertThat(faults(text)).isEmpty();
    }

    @Test
    void aFaultNamesItsLine() {
        assertThat(faults("one\ntwo\nas yet three\n")).containsExactly("line 3: as yet");
    }

    private static List<String> faults(Path file) {
        try {
            String text = Files.readString(file);
            return faults(file.toString().endsWith(".md") ? withoutOldNames(text) : text);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static List<String> faults(String text) {
        List<String> faults = new ArrayList<>();
        for (Pattern pattern : List.of(REJECTED, CLAUSE)) {
            Matcher matcher = pattern.matcher(text);
            while (matcher.find()) {
                long line = 1
                        + text.substring(0, matcher.end())
                                .chars()
                                .filter(c -> c == '\n')
                                .count();
                faults.add("line " + line + ": "
                        + matcher.group().replaceAll("[\\s*/]+", " ").strip());
            }
        }
        return faults;
    }

    /** A list of renamed things, between two marks, must name the old words; its lines are emptied. */
    private static String withoutOldNames(String text) {
        Matcher list = Pattern.compile("<!-- old names -->.*?<!-- end -->", Pattern.DOTALL)
                .matcher(text);
        return list.replaceAll(found -> found.group().replaceAll("[^\\n]", ""));
    }

    private static List<Path> files() {
        List<Path> files = new ArrayList<>();
        try {
            Files.walkFileTree(Page.ROOT, new SimpleFileVisitor<>() {
                @Override
                public FileVisitResult preVisitDirectory(Path folder, BasicFileAttributes attributes) {
                    return SKIPPED.contains(folder.getFileName().toString()) && !folder.equals(Page.ROOT)
                            ? FileVisitResult.SKIP_SUBTREE
                            : FileVisitResult.CONTINUE;
                }

                @Override
                public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) {
                    String name = file.getFileName().toString();
                    if (SUFFIXES.contains(name.substring(name.lastIndexOf('.') + 1))
                            && !name.equals("WordsTest.java")) {
                        files.add(file);
                    }
                    return FileVisitResult.CONTINUE;
                }
            });
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return files.stream().sorted().toList();
    }
}

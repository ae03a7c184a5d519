package dev.waterjet.docs;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** The project's texts are plain technical English: words that have no legitimate use here are rejected, with their place. */
class WordsTest {

    private static final Path ROOT = Path.of("..");

    private static final List<String> DIRECTORIES =
            List.of("waterjet-core/src", "waterjet-examples/src", "benchmarks/src", "docs");

    /** Joined from parts, so that this file passes its own check. */
    private static final Pattern BANNED = Pattern.compile(
            String.join(
                    "|",
                    "Usu" + "al:",
                    "\\bto" + "ld\\b",
                    "\\bte" + "lls\\b",
                    "\\bas " + "yet\\b",
                    "\\bhangs " + "on\\b",
                    "\\bspeaks " + "for\\b",
                    "\\bpart" + "ing\\b",
                    "unsq" + "ueez",
                    "\\bif need " + "be\\b",
                    "\\bof one.s " + "own\\b"),
            Pattern.CASE_INSENSITIVE);

    private static final Pattern QUESTION = Pattern.compile("/\\*\\*\\s*(?:\\*\\s*)?(?:What|How)\\b");

    @Test
    void noTextHasABannedWord() {
        assertThat(places(BANNED, ".java", ".md", ".jsh", ".svg", ".csv", ".txt", ".nc"))
                .isEmpty();
    }

    @Test
    void noCommentBeginsWithWhatOrHow() {
        assertThat(places(QUESTION, ".java")).isEmpty();
    }

    private static List<String> places(Pattern pattern, String... endings) {
        List<String> places = new ArrayList<>();
        for (Path file : files(endings)) {
            String text = read(file);
            Matcher matcher = pattern.matcher(text);
            while (matcher.find()) {
                long line = text.substring(0, matcher.start()).lines().count();
                places.add(ROOT.relativize(file) + ":" + Math.max(1, line) + ": "
                        + matcher.group().strip());
            }
        }
        return places;
    }

    private static List<Path> files(String... endings) {
        List<Path> files = new ArrayList<>(List.of(ROOT.resolve("README.md"), ROOT.resolve("DEVELOPERS.md")));
        for (String directory : DIRECTORIES) {
            try (Stream<Path> all = Files.walk(ROOT.resolve(directory))) {
                all.filter(file -> !file.toString().contains("target"))
                        .filter(file -> Stream.of(endings).anyMatch(file.toString()::endsWith))
                        .forEach(files::add);
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }
        return files;
    }

    private static String read(Path file) {
        try {
            return Files.readString(file);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}

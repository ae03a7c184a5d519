package dev.waterjet.measure;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/**
 * Every message of the library in one file, {@code messages.txt}: one line for each pattern, its code first. The test reads
 * the literals in the sources. {@code -Dmessages.update=true} writes the file afresh; the change is reviewed as a diff.
 */
class MessagesTest {

    private static final Path SOURCES = Path.of("src/main/java");
    private static final Path GOLDEN = Path.of("src/test/resources/messages.txt");
    /** Files that pass a message on; the ones after the first will not, once every refusal has a code. */
    private static final Set<String> WITHOUT_LITERALS =
            Set.of("Message.java", "Caution.java", "TextException.java", "WaterjetException.java");

    private static final Pattern CALL = Pattern.compile("Message\\.of\\(\\s*");
    private static final Pattern LITERAL = Pattern.compile("\"((?:[^\"\\\\]|\\\\.)*)\"\\s*(\\+?)\\s*");
    private static final Pattern CODE = Pattern.compile("[a-z][a-z0-9]*(-[a-z0-9]+)*");

    @Test
    void theFileHoldsEveryMessageOfTheSources() throws IOException {
        String expected = messages();
        if (Boolean.getBoolean("messages.update")) {
            Files.writeString(GOLDEN, expected);
        }
        assertThat(Files.readString(GOLDEN)).isEqualTo(expected);
    }

    @Test
    void aCodeIsInLowerCaseWithHyphens() {
        assertThat(messages().lines().map(line -> line.substring(0, line.indexOf(" = "))))
                .allMatch(code -> CODE.matcher(code).matches());
    }

    @Test
    void aPatternIsOneClauseWithoutFullStop() {
        assertThat(messages().lines().map(line -> line.substring(line.indexOf(" = ") + 3)))
                .allMatch(pattern -> !pattern.isEmpty() && !pattern.endsWith("."));
    }

    private static String messages() {
        Map<String, String> lines = new TreeMap<>();
        try (Stream<Path> files = Files.walk(SOURCES)) {
            files.filter(file -> file.toString().endsWith(".java")
                            && !WITHOUT_LITERALS.contains(file.getFileName().toString()))
                    .forEach(file -> collect(file, lines));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return lines.keySet().stream().map(line -> line + "\n").collect(Collectors.joining());
    }

    private static void collect(Path file, Map<String, String> lines) {
        String source = read(file);
        Matcher call = CALL.matcher(source);
        while (call.find()) {
            Matcher literal = LITERAL.matcher(source);
            String code = literals(source, literal, call.end(), file);
            assertThat(source.charAt(literal.end()))
                    .as("%s: code %s is a literal", file, code)
                    .isEqualTo(',');
            String pattern = literals(source, literal, source.indexOf('"', literal.end()), file);
            lines.put(code + " = " + pattern, file.toString());
        }
    }

    private static String literals(String source, Matcher literal, int start, Path file) {
        StringBuilder text = new StringBuilder();
        int at = start;
        do {
            literal.region(at, source.length());
            assertThat(literal.lookingAt())
                    .as("%s: code and pattern of a message are literals, not \"%s\"", file, excerpt(source, at))
                    .isTrue();
            text.append(literal.group(1).translateEscapes());
            at = literal.end();
        } while (!literal.group(2).isEmpty());
        return text.toString().replace("\n", "\\n");
    }

    private static String excerpt(String source, int at) {
        return source.substring(at, Math.min(source.length(), at + 40));
    }

    private static String read(Path file) {
        try {
            return Files.readString(file);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}

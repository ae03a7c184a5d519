package dev.waterjet.examples.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class PlanFilesTest {

    @TempDir
    private Path folder;

    @Test
    void writesAllFilesAndMakesTheirFolder() throws IOException {
        Path a = folder.resolve("new/a.txt");
        Path b = folder.resolve("new/b.txt");
        new PlanFiles()
                .add(a, "one", StandardCharsets.UTF_8)
                .add(b, "two", StandardCharsets.UTF_8)
                .write(folder.resolve("input"));

        assertThat(a).hasContent("one");
        assertThat(b).hasContent("two");
        try (Stream<Path> left = Files.list(folder.resolve("new"))) {
            assertThat(left).hasSize(2);
        }
    }

    @Test
    void leavesNothingWhereOneCannotBeWritten() throws IOException {
        Path obstacle = Files.writeString(folder.resolve("obstacle"), "a file, not a folder");
        Path a = Files.writeString(folder.resolve("a.txt"), "before");
        PlanFiles files = new PlanFiles()
                .add(a, "after", StandardCharsets.UTF_8)
                .add(obstacle.resolve("b.txt"), "two", StandardCharsets.UTF_8);

        assertThatThrownBy(() -> files.write(folder.resolve("input"))).isInstanceOf(IOException.class);
        assertThat(a).hasContent("before");
        try (Stream<Path> left = Files.list(folder)) {
            assertThat(left).hasSize(2);
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"UTF-16LE", "UTF-16BE"})
    void readsUtf16ByItsMarkAndWritesItBack(String name) throws IOException {
        Charset charset = Charset.forName(name);
        byte[] bytes = "\ufeffG21 (d\u00fcse)\r\n".getBytes(charset);
        PlanFiles.Source source = PlanFiles.Source.read(Files.write(folder.resolve("wide"), bytes));

        assertThat(source.text()).isEqualTo("\ufeffG21 (d\u00fcse)\r\n");
        assertThat(source.charset()).isEqualTo(charset);
        assertThat(source.bytes()).isEqualTo(bytes);
    }

    @Test
    void readsUtf8OrWhateverElse() throws IOException {
        Path utf8 = Files.write(folder.resolve("utf8"), new byte[] {'(', (byte) 0xc3, (byte) 0xbc, ')'});
        Path latin = Files.write(folder.resolve("latin"), new byte[] {'(', (byte) 0xfc, ')'});

        assertThat(PlanFiles.Source.read(utf8).text()).isEqualTo("(\u00fc)");
        assertThat(PlanFiles.Source.read(utf8).charset()).isEqualTo(StandardCharsets.UTF_8);
        assertThat(PlanFiles.Source.read(latin).text()).isEqualTo("(\u00fc)");
        assertThat(PlanFiles.Source.read(latin).charset()).isEqualTo(StandardCharsets.ISO_8859_1);
    }
}

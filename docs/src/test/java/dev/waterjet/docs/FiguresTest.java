package dev.waterjet.docs;

import static org.assertj.core.api.Assertions.assertThat;

import dev.waterjet.examples.chart.SvgText;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class FiguresTest {

    private static final Path FOLDER = Path.of("figures");

    static List<Figure> figures() {
        return Figures.all();
    }

    @ParameterizedTest
    @MethodSource("figures")
    void theFileShowsWhatTheLibraryComputesNow(Figure figure) throws IOException {
        String fresh = figure.svg().get();
        String kept = Files.readString(FOLDER.resolve(figure.name() + ".svg"));
        assertThat(SvgText.fingerprint(fresh)).isNotEmpty();
        assertThat(SvgText.fingerprint(kept))
                .as("docs/figures/%s.svg is stale; run dev.waterjet.docs.Figures", figure.name())
                .isEqualTo(SvgText.fingerprint(fresh));
    }

    @ParameterizedTest
    @MethodSource("figures")
    void isDrawnTheSameEachTimeAndSaysInWordsWhatItShows(Figure figure) {
        String svg = figure.svg().get();
        assertThat(figure.svg().get()).isEqualTo(svg);
        assertThat(svg)
                .containsPattern("<title [^>]*>[^<]{5,}</title>")
                .containsPattern("<desc [^>]*>[^<]{20,}</desc>");
    }

    @Test
    void everyFileIsDrawnHere() throws IOException {
        Set<String> drawn =
                figures().stream().map(figure -> figure.name() + ".svg").collect(Collectors.toSet());
        try (Stream<Path> files = Files.list(FOLDER)) {
            Set<String> kept = files.map(file -> file.getFileName().toString())
                    .filter(name -> name.endsWith(".svg"))
                    .collect(Collectors.toCollection(HashSet::new));
            assertThat(kept).isEqualTo(drawn);
        }
    }
}

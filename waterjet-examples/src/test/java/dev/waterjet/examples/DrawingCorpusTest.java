package dev.waterjet.examples;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.evidence.Caution;
import dev.waterjet.examples.drawing.Drawing;
import dev.waterjet.examples.drawing.DrawingSettings;
import dev.waterjet.examples.drawing.DrawnPart;
import dev.waterjet.examples.drawing.LayerRule;
import dev.waterjet.measure.Kind;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;

/**
 * Ten drawings with the structure that different programs write; lengths and areas follow from the sizes drawn (rectangles,
 * circles, rounded corners), those of ellipse and parabolas from their integrals. DXF files were written by a general-purpose
 * library that shares no code with this reader, and cut down to header, layers, blocks and entities.
 */
class DrawingCorpusTest {

    private static final Path FOLDER = Path.of("src/test/resources/dev/waterjet/examples/drawings");

    private static DrawingSettings settings(String options) {
        DrawingSettings settings = DrawingSettings.defaults();
        List<LayerRule> rules = new ArrayList<>();
        String[] words = options.split("\\s+", -1);
        for (int i = 0; i + 1 < words.length; i += 2) {
            String value = words[i + 1].replace('_', ' ');
            if (words[i].equals("--layer")) {
                rules.add(LayerRule.parse(value));
            } else {
                settings = settings.withUnit(new Typed.DrawingUnit().convert(value));
            }
        }
        return settings.withLayers(rules);
    }

    @ParameterizedTest(name = "{0}")
    @CsvFileSource(files = "src/test/resources/dev/waterjet/examples/drawings/expected.csv", numLinesToSkip = 1)
    void partsLengthsAreasAndCautionsAreThoseDrawn(
            String file,
            String options,
            int parts,
            int contours,
            double lengthMm,
            double areaMm2,
            double tolerance,
            String cautions)
            throws IOException {
        Drawing drawing =
                DrawingReader.read(Files.readAllBytes(FOLDER.resolve(file)), settings(options == null ? "" : options));
        double length = 0;
        double area = 0;
        for (DrawnPart part : drawing.parts()) {
            area += Kind.AREA.si(part.part().area());
            length += part.part().contours().stream()
                    .mapToDouble(contour -> contour.lengthSi())
                    .sum();
        }

        assertThat(drawing.parts()).hasSize(parts);
        assertThat(drawing.contours()).hasSize(contours);
        assertThat(length * 1000).isCloseTo(lengthMm, within(Math.min(tolerance, 0.05)));
        assertThat(area * 1e6).isCloseTo(areaMm2, within(tolerance));
        assertThat(drawing.cautions())
                .extracting(Caution::code)
                .containsExactly(cautions == null ? new String[0] : cautions.split(";", -1));
        assertThat(drawing.isUnitStated()).isTrue();
    }
}

package dev.waterjet.examples;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import dev.waterjet.examples.plan.BuiltIn;
import java.io.IOException;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import javax.xml.parsers.DocumentBuilderFactory;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.xml.sax.InputSource;

class PlanTest {

    @TempDir
    private Path folder;

    private Path write(String name, String program) throws IOException {
        return Files.writeString(folder.resolve(name), program);
    }

    private long files() throws IOException {
        try (Stream<Path> all = Files.list(folder)) {
            return all.count();
        }
    }

    @Test
    void plansTheBuiltInPartIntoThreeFiles() throws IOException {
        Ran ran = Ran.of("plan", "--output-dir", folder.toString());

        assertThat(ran.err()).isEmpty();
        assertThat(ran.status()).isZero();
        assertThat(ran.out())
                .contains("9 cuts, 55 blocks")
                .contains("Cutting time")
                .contains("danger: ");
        assertThat(files()).isEqualTo(3);
        String program = Files.readString(folder.resolve("mirror-cell-bracket-with-feeds.nc"));
        // lines that cut nothing stay as they are
        List<String> written = program.lines().toList();
        assertThat(BuiltIn.program()
                        .lines()
                        .filter(line -> !line.contains("G1") && !line.contains(" X") && !line.contains(" Y")))
                .allMatch(line -> written.contains(line) || line.matches(".*[GXYIJ]\\d.*"));
    }

    @Test
    void choosesAHeadWhereNoneIsGivenAndSaysWhy() throws IOException {
        Path input = write("slot.nc", "G0 X5 Y0.3\nM3\nG41 G1 Y0\nX30\nY0.6\nX0\nY0\nX5\nM5\n");
        Ran ran = Ran.of("plan", input.toString(), "--output-dir", folder.toString());

        // the default head has a kerf above one millimetre and could not enter
        assertThat(ran.err()).isEmpty();
        assertThat(ran.out()).containsPattern("Head +0\\.\\d+ mm orifice.*feasible");
        assertThat(Ran.of("plan", input.toString(), "--orifice", "0.33 mm", "--output-dir", folder.toString())
                        .out())
                .contains("finding: at (", "the passage at edge");
        assertThat(Ran.of("plan", input.toString(), "--power", "0.5 kW", "--csv")
                        .err())
                .contains("no head of the inventory is feasible");
    }

    @Test
    void plansADrawing() throws IOException {
        Path input = write(
                "shutter.svg",
                "<svg width='200mm' height='120mm' viewBox='0 0 200 120'><path id='rim' d='M10 10h150v60c-30 30-120"
                        + " 30-150 0z'/><circle id='bore' cx='60' cy='50' r='20' data-quality='fine'/>"
                        + "<circle id='sketch' visibility='hidden' r='9'/></svg>");
        Ran ran = Ran.of(
                "plan",
                input.toString(),
                "--slat-pitch",
                "300 mm",
                "--shear-strength",
                "200 MPa",
                "--output-dir",
                folder.toString());

        assertThat(ran.err()).isEmpty();
        assertThat(ran.out())
                .contains("5 cuts", "every closed cut has a lead", "notice: hidden shapes left out: 1 (sketch)")
                .containsPattern("Tabs +3 of .*in the program");
        String program = Files.readString(folder.resolve("shutter-with-feeds.nc"));
        assertThat(program)
                .contains("name bore, quality fine", "name rim, quality medium")
                .containsSubsequence("bore", "M3", "M5", "rim", "M3", "M5", "M30");
        Ran.of("plan", input.toString(), "--output-dir", folder.resolve("plain").toString());
        Ran again = Ran.of("plan", folder.resolve("plain/shutter-with-feeds.nc").toString(), "--csv");
        assertThat(again.rows())
                .hasSameSizeAs(Ran.of("plan", input.toString(), "--csv").rows());
    }

    @Test
    void piercesAndPricesThePart() {
        Ran ran = Ran.of(
                "plan",
                "--material",
                "float-glass",
                "--plate-strength",
                "50 MPa",
                "--price",
                "machine=60",
                "--currency",
                "marks",
                "--parts",
                "40",
                "--output-dir",
                folder.toString());

        assertThat(ran.err()).isEmpty();
        assertThat(ran.out())
                .contains("9, low pressure, abrasive first at 80 MPa")
                .contains("marks per part, batch of 40")
                .contains("Main contributions", "orifice after")
                .doesNotContain("invented");
    }

    @ParameterizedTest
    @ValueSource(strings = {"3 mm", "12 mm", "60 mm"})
    void everyRowOfTheCsvIsABlockOfTheWrittenProgram(String thickness) throws IOException {
        Ran.of("plan", "--thickness", thickness, "--output-dir", folder.toString());
        Ran csv = Ran.of("plan", "--thickness", thickness, "--csv");
        String written = Files.readString(folder.resolve("mirror-cell-bracket-with-feeds.nc"));
        List<Double> words = Pattern.compile(" F([0-9.]+)")
                .matcher(written)
                .results()
                .map(result -> Double.parseDouble(result.group(1)))
                .toList();
        List<CSVRecord> rows = csv.rows();
        double time = 0;
        double ofWords = 0;
        for (int i = 0; i < rows.size(); i++) {
            double length = Double.parseDouble(rows.get(i).get("length_m"));
            double feed = Double.parseDouble(rows.get(i).get("feed_m_per_s"));
            time += Double.parseDouble(rows.get(i).get("time_s"));
            ofWords += length / words.get(i) * 60e3;
            assertThat(words.get(i)).isBetween(feed * 60e3 * 0.999, feed * 60e3 * 1.001);
        }

        assertThat(csv.out()).isEqualTo(Files.readString(folder.resolve("mirror-cell-bracket-blocks.csv")));
        assertThat(words).hasSameSizeAs(rows);
        assertThat(ofWords).isBetween(time * 0.9999, time * 1.0001);
        assertThat(time).isBetween(planned(thickness) * 0.99, planned(thickness) * 1.01);
    }

    /** Time of the plan itself. */
    private static double planned(String thickness) throws IOException {
        JsonNode plan = new ObjectMapper()
                .readTree(Ran.of("plan", "--thickness", thickness, "--json").out());
        return plan.at("/cutting_time/value_s").asDouble();
    }

    @Test
    void withOneFeedAnEdgeNoBlockIsSplit() throws IOException {
        Ran.of("plan", "--feeds-per-edge", "--thickness", "40 mm", "--output-dir", folder.toString());
        String program = Files.readString(folder.resolve("mirror-cell-bracket-with-feeds.nc"));

        assertThat(program.replaceAll(" F[0-9.]+", "")).isEqualTo(BuiltIn.program());
        assertThat(program.split(" F[0-9.]+", -1)).hasSize(56);
    }

    @Test
    void thePlanIsJson() throws IOException {
        JsonNode plan = new ObjectMapper().readTree(Ran.of("plan", "--json").out());

        assertThat(plan.get("moves").size()).isGreaterThan(55);
        assertThat(plan.get("cuts").size()).isEqualTo(9);
    }

    @Test
    void finerFacesAndThickerPlatesTakeLonger() {
        assertThat(seconds("--quality", "fine")).isGreaterThan(seconds("--quality", "medium"));
        assertThat(seconds("--thickness", "20 mm")).isGreaterThan(2 * seconds("--thickness", "10 mm"));
        assertThat(seconds("--material", "titanium")).isGreaterThan(1.5 * seconds("--material", "aluminium-6061"));
        // common practice, no source: a larger orifice cuts faster, all else equal
        assertThat(seconds("--orifice", "0.36 mm")).isLessThan(seconds("--orifice", "0.30 mm"));
    }

    private static double seconds(String... options) {
        Ran ran = Ran.of(
                Stream.concat(Stream.of("plan", "--csv"), Stream.of(options)).toArray(String[]::new));
        assertThat(ran.err()).isEmpty();
        return ran.rows().stream()
                .mapToDouble(row -> Double.parseDouble(row.get("time_s")))
                .sum();
    }

    @Test
    void theSheetIsWholeInAnyLocale() throws Exception {
        Locale before = Locale.getDefault();
        try {
            Locale.setDefault(Locale.forLanguageTag("ar-EG"));
            Ran.of("plan", "--orifice", "0.33 mm", "--output-dir", folder.toString());
        } finally {
            Locale.setDefault(before);
        }
        String html = Files.readString(folder.resolve("mirror-cell-bracket-sheet.html"));
        assertThat(html)
                .contains("0.33 mm, sapphire", "Minimum inner radius of the jet", "Part 160 mm", "checksum", "Operator")
                .contains("from memory", "95 % interval")
                .doesNotContain("<script", "http://www.w3.org/1999/xhtml", "NaN", "Infinity");
        assertThat(html.split("role=\"img\"", -1)).hasSize(5);
        assertThat(html.split("<desc ", -1)).hasSize(5);
        // every figure is XML that a parser takes
        int found = 0;
        for (int at = html.indexOf("<svg"); at >= 0; at = html.indexOf("<svg", at + 1)) {
            String svg = html.substring(at, html.indexOf("</svg>", at) + 6);
            DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(new InputSource(new StringReader(svg)));
            found++;
        }
        assertThat(found).isEqualTo(4);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '~',
            value = {
                "G0 X1~M3~G1 X5 Q1 | line 3, column 7: unknown word Q1",
                "G0 X9~M3~G2 X1 I-3~M5 | line 3, column 7: the ends of the arc do not fit its centre",
                "M3~G1 X9~Y9~M5 | line 1, column 1: the contour that starts here never closes",
                "G0 X9 Y9 | the program cuts nothing",
            })
    void refusesWhatCannotBeCutAndWritesNothing(String program, String message) throws IOException {
        Path input = write("part.nc", program.replace('~', '\n'));
        Ran ran = Ran.of("plan", input.toString(), "--orifice", "0.33 mm", "--output-dir", folder.toString());

        assertThat(ran.status()).isEqualTo(2);
        assertThat(ran.out()).isEmpty();
        assertThat(ran.err()).startsWith("waterjet plan: ").contains(message);
        assertThat(ran.err().strip().lines()).hasSize(1);
        assertThat(files()).isEqualTo(1);
    }

    @ParameterizedTest
    @ValueSource(strings = {"G0 X0.3\nM3\nG41 G3 I-0.3\nM5\n", "G0 X0 Y0\nM3\nG41 G1 X30\nY0.9\nX0\nY0\nM5\n"})
    void aFeatureThatTheJetCannotCutIsAFinding(String program) throws IOException {
        Path input = write("part.nc", program);
        Ran ran = Ran.of("plan", input.toString(), "--orifice", "0.33 mm", "--output-dir", folder.toString());

        assertThat(ran.err()).isEmpty();
        assertThat(ran.out()).containsPattern("finding: .*the jet cuts");
    }

    @Test
    void anInchProgramHasAnInchReport() throws IOException {
        Path input = write("inch.nc", "G20 G90\nG0 X0 Y0\nM3\nG1 X2\nY1\nX0\nY0\nM5\n");
        Ran ran = Ran.of("plan", input.toString(), "--thickness", "0.5 in", "--output-dir", folder.toString());

        assertThat(ran.out()).contains("Part                2 in \u00d7 1 in", "in/min", "lb", "gal");
        assertThat(ran.out()).doesNotContainPattern("[0-9] (mm|m|MPa|kg|g/min|L)\\b");
        assertThat(Files.readString(folder.resolve("inch-sheet.html"))).contains("ksi");
    }

    @Test
    void filesOfAnotherInputAreReplacedByForceOnly() throws IOException {
        String square = "G0 X0 Y0\nM3\nG1 X20\nY10\nX0\nY0\nM5\n";
        String into = folder.resolve("out").toString();
        String[] first = {"plan", write("B.nc", square).toString(), "--orifice", "0.33 mm", "--output-dir", into};
        String[] second = {"plan", write("B.tap", square).toString(), "--orifice", "0.33 mm", "--output-dir", into};

        assertThat(Ran.of(first).status()).isZero();
        assertThat(Ran.of(first).out()).contains("replaced: ");
        Ran refused = Ran.of(second);
        assertThat(refused.status()).isNotZero();
        assertThat(refused.err())
                .contains("it was written for B.nc")
                .contains("--force")
                .hasLineCount(1);
        List<String> forced = new ArrayList<>(List.of(second));
        forced.add("--force");
        assertThat(Ran.of(forced.toArray(String[]::new)).status()).isZero();
        assertThat(folder.resolve("out/B-with-feeds.nc")).exists();
        assertThat(folder.resolve("out/B-with-feeds.tap")).exists();
    }

    @ParameterizedTest
    @ValueSource(strings = {"%PDF-1.4\n", "PK\u0003\u0004rest", "AC1027 and more"})
    void whatIsNoProgramIsRefusedByWhatItIs(String content) throws IOException {
        Ran ran = Ran.of("plan", write("part.nc", content).toString());

        assertThat(ran.status()).isEqualTo(2);
        assertThat(ran.err()).containsPattern("PDF|ZIP|CAD");
    }

    @ParameterizedTest
    @CsvSource({
        "--pressure, 380, has no unit",
        "--pressure, 380 kg, is not one of pressure",
        "--material, stone cold, unknown material",
        "--quality, shiny, unknown cut quality",
        "--mesh, coarse, is not a mesh",
        "--tube, 0.3 mm, focusing tube bore is 0.3 mm",
        "--thickness, -3 mm, thickness",
        "--jet-on, 5, code for jet off"
    })
    void refusesBadOptionsInOneLine(String option, String value, String message) {
        Ran ran = Ran.of("plan", option, value, "--csv");

        assertThat(ran.status()).isEqualTo(2);
        assertThat(ran.err().strip().lines()).hasSize(1);
        assertThat(ran.err()).contains(message);
    }

    @Test
    void neverWritesOverItsInputAndNeedsAFileThatIsThere() throws IOException {
        Path input = write("part-with-feeds.nc", "G0 X5\nM3\nG3 I-5\nM5\n");
        Files.createSymbolicLink(folder.resolve("part.nc"), input);
        Ran ran = Ran.of("plan", folder.resolve("part.nc").toString(), "--output-dir", folder.toString());

        assertThat(ran.status()).isEqualTo(2);
        assertThat(ran.err()).contains("it is the input, which stays as it is");
        assertThat(Files.readString(input)).isEqualTo("G0 X5\nM3\nG3 I-5\nM5\n");
        assertThat(files()).isEqualTo(2);

        Ran missing = Ran.of("plan", folder.resolve("nothing.nc").toString());
        assertThat(missing.status()).isEqualTo(2);
        assertThat(missing.err()).contains("nothing.nc: file not found");
    }

    @Test
    void keepsBytesThatAreNoUtf8() throws IOException {
        Path input = folder.resolve("alt.nc");
        Files.write(input, "G0 X5 (Gr\u00f6\u00dfe)\r\nM3\r\nG3 I-5\r\nM5\r\n".getBytes(StandardCharsets.ISO_8859_1));
        Ran.of("plan", input.toString(), "--feeds-per-edge", "--output-dir", folder.toString());

        byte[] written = Files.readAllBytes(folder.resolve("alt-with-feeds.nc"));
        String text = new String(written, StandardCharsets.ISO_8859_1);
        assertThat(text.replaceAll(" F[0-9.]+", ""))
                .isEqualTo(new String(Files.readAllBytes(input), StandardCharsets.ISO_8859_1));
    }

    @Test
    void otherCodesOpenTheJet() throws IOException {
        Path input = write("codes.nc", "G0 X5\nM8\nM62\nG3 I-5\nM63\nM5\n");
        Ran ran =
                Ran.of("plan", input.toString(), "--jet-on", "62", "--jet-off", "63", "--pass-through", "8,5", "--csv");

        assertThat(ran.err()).isEmpty();
        assertThat(ran.rows()).isNotEmpty();
    }

    @Test
    void plansAHundredThousandBlocks() throws IOException {
        int count = 100_000;
        StringBuilder program = new StringBuilder("G71 G90\nG0 X450 Y0\nM3\n");
        for (int i = 1; i <= count; i++) {
            double angle = 2 * Math.PI * (i % count) / count;
            double radius = 400 + 50 * Math.cos(40 * angle);
            program.append(
                    String.format(Locale.ROOT, "G1 X%.5f Y%.5f%n", radius * Math.cos(angle), radius * Math.sin(angle)));
        }
        Path input = write("ripple.nc", program.append("M5\n").toString());
        Ran ran = Ran.of("plan", input.toString(), "--output-dir", folder.toString());

        assertThat(ran.err()).isEmpty();
        assertThat(ran.out()).contains("1 cut, 100000 blocks");
        // the drawing leaves out what nobody could see
        assertThat(Files.size(folder.resolve("ripple-sheet.html"))).isLessThan(1_500_000);
    }
}

package dev.waterjet.examples;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class HeadsTest {

    @TempDir
    private Path folder;

    private Path file(String name, String text) throws IOException {
        return Files.writeString(folder.resolve(name), text);
    }

    private static double number(CSVRecord row, String column) {
        return Double.parseDouble(row.get(column));
    }

    @Test
    void ranksHeadsByTimeInSi() {
        List<CSVRecord> rows = Ran.of("heads", "--material", "aluminium", "--thickness", "12 mm", "--csv")
                .rows();

        assertThat(rows).hasSizeGreaterThan(10);
        assertThat(rows.get(0).toMap())
                .containsOnlyKeys(
                        "rank",
                        "orifice_m",
                        "tube_m",
                        "tube_length_m",
                        "mesh",
                        "abrasive_flow_kg_per_s",
                        "power_W",
                        "feed_m_per_s",
                        "kerf_m",
                        "time_s",
                        "cost",
                        "trade_off");
        for (int i = 1; i < rows.size(); i++) {
            assertThat(number(rows.get(i), "time_s")).isGreaterThanOrEqualTo(number(rows.get(i - 1), "time_s"));
            assertThat(number(rows.get(i), "power_W")).isLessThanOrEqualTo(22000);
        }
        assertThat(rows.get(0).get("trade_off")).isEqualTo("best");
    }

    @Test
    void ranksByCostWithTheShopsOwnPrices() {
        Ran ran = Ran.of(
                "heads", "--rank-by", "cost", "--price", "machine=60", "--price", "abrasive=2", "--currency", "marks");

        assertThat(ran.status()).isZero();
        assertThat(ran.out()).contains("cheapest of ", "cost is in marks.").doesNotContain("example prices");
    }

    @Test
    void aShelfOfOneHeadIsThatHead() throws IOException {
        Path shelf =
                file("shelf.csv", "part,size\norifice,0.25 mm\ntube,0.76 mm\nlength,76 mm\nmesh,80\nflow,300 g/min\n");
        List<CSVRecord> rows =
                Ran.of("heads", "--inventory", shelf.toString(), "--csv").rows();

        assertThat(rows).hasSize(1);
        assertThat(number(rows.get(0), "orifice_m")).isCloseTo(0.25e-3, within(1e-15));
    }

    @Test
    void measuresADrawing() throws IOException {
        Path drawing = file(
                "part.svg",
                "<svg viewBox='0 0 100 60' width='100mm' height='60mm'><rect width='80' height='50'/>"
                        + "<rect x='10' y='10' width='30' height='0.6' rx='0.3'/></svg>");
        List<CSVRecord> rows =
                Ran.of("heads", "--drawing", drawing.toString(), "--csv").rows();

        assertThat(rows)
                .isNotEmpty()
                .allSatisfy(row -> assertThat(number(row, "kerf_m")).isLessThan(0.6e-3));
    }

    /** A bore of 0.03 in is 0.762 mm wide. */
    @Test
    void measuresADxfDrawingInItsUnit() throws IOException {
        String circle = "0\nCIRCLE\n8\n0\n10\n1.0\n20\n1.0\n40\n%s\n";
        String dxf = "0\nSECTION\n2\nENTITIES\n" + circle.formatted("0.8") + circle.formatted("0.015")
                + "0\nENDSEC\n0\nEOF\n";
        Path drawing = file("ring.dxf", dxf);

        assertThat(Ran.of("heads", "--drawing", drawing.toString()).err()).contains("--drawing-unit");
        assertThat(Ran.of("heads", "--drawing", drawing.toString(), "--drawing-unit", "in", "--csv")
                        .rows())
                .isNotEmpty()
                .allSatisfy(row -> assertThat(number(row, "kerf_m")).isLessThan(0.762e-3));
    }

    @Test
    void saysWhyTheOthersFail() {
        Ran ran = Ran.of("heads", "--min-radius", "0.3 mm", "--power", "8 kW", "--show-rejected");

        assertThat(ran.status()).isZero();
        assertThat(ran.out()).contains("the kerf leaves an inner radius of", "the pump delivers 8 kW");
    }

    @Test
    void badInputEndsInOneLineAndStatusTwo() throws IOException {
        Path shelf = file("shelf.csv", "part,size\n");
        assertRefused(Ran.of("heads", "--min-radius", "1 um"), "no head of the inventory is feasible");
        assertRefused(Ran.of("heads", "--inventory", shelf.toString()), "number of orifices is 0");
        assertRefused(Ran.of("heads", "--inventory", folder.resolve("none.csv").toString()), "none.csv");
        assertRefused(Ran.of("heads", "--price", "gold=1"), "gold");
        assertRefused(Ran.of("heads", "--drawing", file("broken.svg", "<svg").toString()), "line 1, column");
    }

    private static void assertRefused(Ran ran, String message) {
        assertThat(ran.status()).isEqualTo(2);
        assertThat(ran.out()).isEmpty();
        assertThat(ran.err()).contains(message);
        assertThat(ran.err().strip().lines()).hasSize(1);
    }
}

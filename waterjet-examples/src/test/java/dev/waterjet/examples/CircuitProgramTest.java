package dev.waterjet.examples;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CircuitProgramTest {

    private static double number(CSVRecord row, String column) {
        return Double.parseDouble(row.get(column));
    }

    private static List<CSVRecord> of(List<CSVRecord> rows, String node) {
        return rows.stream().filter(row -> row.get("node").equals(node)).toList();
    }

    @Test
    void samplesOfEveryNodeAreInSi() {
        Ran ran = Ran.of("circuit", "--duration", "0.1 s", "--reaches", "20", "--csv");

        assertThat(ran.status()).isZero();
        assertThat(ran.out()).startsWith("time_s,node,gauge_pressure_Pa,mass_flow_kg_per_s\n0.0,pump,");
        List<CSVRecord> rows = ran.rows();
        assertThat(rows.stream().map(row -> row.get("node")).distinct())
                .containsExactly("pump", "manifold", "head 1", "head 2");
        CSVRecord head = of(rows, "head 2").get(0);
        assertThat(number(head, "gauge_pressure_Pa")).isCloseTo(380e6, within(2e6));
        // 0.65 A sqrt(2 rho p) of 0.25 mm
        assertThat(number(head, "mass_flow_kg_per_s")).isCloseTo(0.02779, within(1e-4));
        assertThat(number(of(rows, "pump").get(0), "mass_flow_kg_per_s")).isCloseTo(-0.0556, within(3e-4));
        assertThat(number(rows.get(rows.size() - 1), "time_s")).isGreaterThanOrEqualTo(0.1);
    }

    @Test
    void shuttingAHeadRaisesThePressureAndOpeningItEndsThat() {
        String[] shutting = {
            "circuit",
            "--duration",
            "0.4 s",
            "--close",
            "1",
            "--close-at",
            "0.05 s",
            "--close-time",
            "10 ms",
            "--open-at",
            "0.2 s",
            "--reaches",
            "20",
            "--csv"
        };
        List<CSVRecord> head = of(Ran.of(shutting).rows(), "head 1");

        double highest = head.stream()
                .mapToDouble(row -> number(row, "gauge_pressure_Pa"))
                .max()
                .orElseThrow();
        assertThat(highest).isGreaterThan(384e6);
        assertThat(head.stream()
                        .filter(row -> number(row, "time_s") > 0.07 && number(row, "time_s") < 0.19)
                        .mapToDouble(row -> number(row, "mass_flow_kg_per_s")))
                .allMatch(flow -> flow == 0);
        assertThat(number(head.get(head.size() - 1), "mass_flow_kg_per_s")).isGreaterThan(0.027);
    }

    @Test
    void largerAttenuatorOfAnIntensifierDropsThePressureLess() {
        assertThat(drop("0.5 L")).isGreaterThan(1.5 * drop("2 L"));
    }

    private static double drop(String volume) {
        List<CSVRecord> pump = of(
                Ran.of(
                                "circuit",
                                "--kind",
                                "intensifier",
                                "--attenuator",
                                volume,
                                "--duration",
                                "3 s",
                                "--reaches",
                                "10",
                                "--csv")
                        .rows(),
                "pump");
        double[] pressures = pump.stream()
                .mapToDouble(row -> number(row, "gauge_pressure_Pa"))
                .toArray();
        return pressures[0] - java.util.Arrays.stream(pressures).min().orElseThrow();
    }

    @Test
    void peopleReadRippleAndCautions(@TempDir Path folder) throws Exception {
        Path figure = folder.resolve("circuit.svg");
        Ran ran = Ran.of("circuit", "--duration", "0.2 s", "--reaches", "20", "--svg", figure.toString());

        assertThat(ran.status()).isZero();
        assertThat(ran.out()).contains("settled ripple [MPa]", "Danger: ", "head 2");
        assertThat(Files.readString(figure)).startsWith("<svg").contains("manifold");
    }

    @Test
    void impossibleCircuitsAreRefusedInOneLine() {
        for (String[] arguments : new String[][] {
            {"circuit", "--close", "3"},
            {"circuit", "--kind", "intensifier", "--attenuator", "0 L"},
            {"circuit", "--duration", "1000 s"},
            {"circuit", "--dead-volume", "9"},
            {"circuit", "--reaches", "0"}
        }) {
            Ran ran = Ran.of(arguments);
            assertThat(ran.status()).as(String.join(" ", arguments)).isEqualTo(2);
            assertThat(ran.err().strip().lines()).hasSize(1);
        }
    }
}

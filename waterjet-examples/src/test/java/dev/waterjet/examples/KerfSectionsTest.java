package dev.waterjet.examples;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.examples.chart.SvgText;
import java.nio.file.Files;
import java.nio.file.Path;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class KerfSectionsTest {

    @Test
    void writesTheProfileFromEntryToExit() {
        Ran ran = Ran.of("kerf", "--thickness", "12 mm", "--index", "2", "--points", "4", "--csv");

        assertThat(ran.status()).isZero();
        assertThat(ran.rows()).hasSize(5);
        CSVRecord last = ran.rows().get(4);
        assertThat(ran.rows().get(0).toMap())
                .containsOnlyKeys("depth_m", "half_width_m", "width_m", "width_uncertainty_m", "lag_m");
        assertThat(Double.parseDouble(last.get("depth_m"))).isEqualTo(0.012);
        assertThat(Double.parseDouble(last.get("width_m"))).isEqualTo(2 * Double.parseDouble(last.get("half_width_m")));
        // lag by the published critical point: 0.2576 h/q
        assertThat(Double.parseDouble(last.get("lag_m"))).isCloseTo(0.2576 * 0.012 / 2, within(1e-6));
    }

    @Test
    void entryOfAWornTubeIsWiderByTheWear() {
        double asNew = entryWidth("--tube", "1 mm");
        double worn = entryWidth("--tube", "1 mm", "--exit-bore", "1.2 mm");

        assertThat(worn - asNew).isCloseTo(2e-4, within(1e-12));
    }

    private static double entryWidth(String... tube) {
        String[] all = java.util.stream.Stream.concat(
                        java.util.stream.Stream.of("kerf", "--csv", "--points", "1"), java.util.Arrays.stream(tube))
                .toArray(String[]::new);
        return Double.parseDouble(Ran.of(all).rows().get(0).get("width_m"));
    }

    @Test
    void drawsBothViewsToScale(@TempDir Path folder) throws Exception {
        Path file = folder.resolve("kerf.svg");
        Ran ran = Ran.of("kerf", "--svg", file.toString());
        String svg = Files.readString(file);

        assertThat(ran.out()).contains("Taper per side", "included angle", "Exit lag", "manual", file.toString());
        assertThat(svg).contains("cross-section").contains("to scale").contains("front");
        assertThat(SvgText.fingerprint(svg)).hasSize(16);
    }

    @Test
    void saysHowDeepAFeedTooFastReaches() {
        Ran ran = Ran.of("kerf", "--feed", "5000 mm/min");

        assertThat(ran.status()).isEqualTo(2);
        assertThat(ran.err())
                .contains("separation depth at this feed rate")
                .contains("10 mm")
                .contains("reduce the feed rate");
        assertThat(Ran.of("kerf", "--points", "0").err()).contains("points of the profile");
    }
}

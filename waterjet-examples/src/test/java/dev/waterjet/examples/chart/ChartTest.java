package dev.waterjet.examples.chart;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.StringReader;
import java.util.Locale;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.xml.sax.InputSource;

class ChartTest {

    private static final double[] X = {1, 10, 100};

    private static Chart chart(double last) {
        return Chart.of("Loss & length", "It falls from 3 to <1.")
                .x("length [m]")
                .y("loss [MPa]")
                .logX()
                .band("interval", X, new double[] {2, 1, 0.5}, new double[] {4, 3, 2})
                .line("loss", X, new double[] {3, 2, last})
                .points("measured", new double[] {10}, new double[] {2.1});
    }

    @Test
    void saysInWordsWhatItShowsAndIsXml() throws Exception {
        String svg = chart(1).svg(600, 400);
        assertThat(svg).contains("Loss &amp; length</title>", "to &lt;1.</desc>", "role=\"img\"", "viewBox");
        assertThat(DocumentBuilderFactory.newInstance()
                        .newDocumentBuilder()
                        .parse(new InputSource(new StringReader(svg)))
                        .getElementsByTagName("text")
                        .getLength())
                .isGreaterThan(8);
    }

    @Test
    void isTheSameInAnyLocaleAndTellsOtherNumbersApart() {
        String here = chart(1).svg(600, 400);
        Locale before = Locale.getDefault();
        try {
            Locale.setDefault(Locale.forLanguageTag("ar-EG"));
            assertThat(chart(1).svg(600, 400)).isEqualTo(here);
        } finally {
            Locale.setDefault(before);
        }
        assertThat(SvgText.fingerprint(chart(1).svg(300, 200)))
                .isEqualTo(SvgText.fingerprint(here))
                .hasSize(16);
        assertThat(SvgText.fingerprint(chart(1.0001).svg(600, 400))).isNotEqualTo(SvgText.fingerprint(here));
    }

    @Test
    void takesTheColoursOfThePage() {
        assertThat(chart(1).svgInPage(600, 400))
                .contains("var(--ink)", "var(--first)", "var(--second)", "var(--band)")
                .doesNotContain("rgb(31,42,51)");
    }

    @Test
    void theScaleRunsFromEndToEnd() {
        assertThat(Palette.scale(-1)).isEqualTo(Palette.scale(0)).isEqualTo("#6650c0");
        assertThat(Palette.scale(1)).isEqualTo(Palette.scale(7)).isEqualTo("#d08a12");
        assertThat(Palette.scale(0.1)).isEqualTo("#5164c2");
    }
}

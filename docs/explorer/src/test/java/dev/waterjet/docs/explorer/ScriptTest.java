package dev.waterjet.docs.explorer;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Answers of the script in Chromium against those of the same class here. Skipped where there is no Chromium. */
class ScriptTest {

    private static final Pattern NUMBER = Pattern.compile("-?\\d+(?:\\.\\d+)?(?:[eE][-+]?\\d+)?");

    private static final String[][] CUTS = {
        {"400 MPa", "0.30 mm", "0.9 mm", "400 g/min", "10 mm", "titanium", "FINE"},
        {"55 ksi", "0.013 in", "0.040 in", "0.9 lb/min", "1/2 in", "stainless-304", "VERY_COARSE"},
        {"200 MPa", "0.25 mm", "0.76 mm", "250 g/min", "2 mm", "aluminium-6061-t6", "VERY_FINE"},
        {"600 MPa", "0.18 mm", "0.5 mm", "0.3 kg/min", "80 mm", "mild-steel-a36", "MEDIUM"},
        {"400 MPa", "0.30 mm", "0.2 mm", "400 g/min", "10 mm", "titanium", "FINE"},
        {"400 MPa", "0.30 mm", "0.9 mm", "400 g/min", "10 mm", "unobtainium", "FINE"},
        {"400 s", "0.30 mm", "0.9 mm", "400 g/min", "10 mm", "titanium", "FINE"},
    };

    private static final String HEAD =
            "label,test,thickness_mm,feed_mm_per_min,failed_feed_mm_per_min,pressure_MPa,orifice_mm,"
                    + "tube_mm,abrasive_flow_g_per_min\n";

    private static final String[] FITS = {
        HEAD + "A1,separation,6,1585,,400,0.30,0.90,400\nA2,separation,10,905,,400,0.30,0.90,400\n"
                + "A3,separation,15,552,,400,0.30,0.90,400\nA4,separation,10,517,,300,0.30,0.90,400\n",
        HEAD + "A1,interval,12,560,620,360,0.30,0.90,400\nA2,interval,12,620,680,360,0.30,0.90,400\n"
                + "A3,interval,20,310,340,360,0.30,0.90,400\n",
        HEAD,
        "no header"
    };

    @TempDir
    private Path folder;

    @Test
    void theScriptAnswersAsTheLibraryDoes() throws Exception {
        Path chromium = Path.of("/usr/bin/chromium");
        assumeTrue(Files.isExecutable(chromium));
        List<String> calls = new ArrayList<>();
        List<String> expected = new ArrayList<>();
        for (String[] c : CUTS) {
            calls.add("main.cut('" + String.join("','", c) + "')");
            expected.add(Explorer.cut(c[0], c[1], c[2], c[3], c[4], c[5], c[6]));
        }
        for (String csv : FITS) {
            calls.add("main.fit('" + csv.replace("\n", "\\n") + "')");
            expected.add(Explorer.fit(csv));
        }
        calls.add("main.materials()");
        expected.add(Explorer.materials());
        Path page = folder.resolve("page.html");
        Files.writeString(
                page,
                "<meta charset=utf-8><script src=\""
                        + Path.of("target/script/explorer.js").toUri()
                        + "\"></script><script>window.main = window.main || window;\n"
                        + "document.write([" + String.join(",", calls)
                        + "].map(t => '<' + 'pre>' + t.replace(/&/g, '&amp;')"
                        + ".replace(/</g, '&lt;') + '</pre>').join(''))</script>");
        List<String> seen = answers(chromium, page);
        assertThat(seen).hasSize(expected.size());
        for (int i = 0; i < seen.size(); i++) {
            same(seen.get(i), expected.get(i), calls.get(i).contains("fit") ? 1e-7 : 1e-11);
        }
    }

    private List<String> answers(Path chromium, Path page) throws IOException, InterruptedException {
        Process browser = new ProcessBuilder(
                        chromium.toString(),
                        "--headless",
                        "--no-sandbox",
                        "--disable-gpu",
                        "--user-data-dir=" + folder.resolve("profile"),
                        "--dump-dom",
                        page.toUri().toString())
                .redirectError(folder.resolve("log").toFile())
                .start();
        String dom = new String(browser.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertThat(browser.waitFor(60, TimeUnit.SECONDS)).isTrue();
        Matcher answer = Pattern.compile("<pre>(.*?)</pre>", Pattern.DOTALL).matcher(dom);
        return answer.results()
                .map(found ->
                        found.group(1).replace("&lt;", "<").replace("&gt;", ">").replace("&amp;", "&"))
                .toList();
    }

    /** Words are equal; numbers agree to eleven figures, since the functions of a browser differ in their last bits; bounds of
     * an interval, which a search finds, agree to seven. */
    private static void same(String seen, String expected, double tolerance) {
        assertThat(NUMBER.matcher(seen).replaceAll("#"))
                .isEqualTo(NUMBER.matcher(expected).replaceAll("#"));
        List<Double> numbers = numbers(seen);
        List<Double> known = numbers(expected);
        for (int i = 0; i < known.size(); i++) {
            assertThat(numbers.get(i)).isCloseTo(known.get(i), within(1e-12 + tolerance * Math.abs(known.get(i))));
        }
    }

    private static List<Double> numbers(String text) {
        return NUMBER.matcher(text)
                .results()
                .map(found -> Double.valueOf(found.group()))
                .toList();
    }
}

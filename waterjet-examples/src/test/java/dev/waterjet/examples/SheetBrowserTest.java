package dev.waterjet.examples;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.ServerSocket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.time.Duration;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Opens the sheet in Chromium, driven by the W3C WebDriver protocol. Needs Debian's {@code chromium} and {@code
 * chromium-driver}; runs under the Maven profile {@code browser}.
 */
@Tag("browser")
class SheetBrowserTest {

    private static final Pattern SESSION = Pattern.compile("\"sessionId\":\"([^\"]+)\"");

    private final HttpClient client =
            HttpClient.newBuilder().version(HttpClient.Version.HTTP_1_1).build();

    @TempDir
    private Path folder;

    private String post(String url, String json) throws IOException, InterruptedException {
        HttpRequest request = HttpRequest.newBuilder(URI.create(url))
                .timeout(Duration.ofMinutes(2))
                .POST(HttpRequest.BodyPublishers.ofString(json))
                .build();
        HttpResponse<String> response = client.send(request, HttpResponse.BodyHandlers.ofString());
        assertThat(response.statusCode()).as("%s: %s", url, response.body()).isEqualTo(200);
        return response.body();
    }

    private static int freePort() throws IOException {
        try (ServerSocket socket = new ServerSocket(0)) {
            return socket.getLocalPort();
        }
    }

    private void awaitDriver(String base) throws InterruptedException {
        for (int i = 0; i < 200; i++) {
            try {
                client.send(
                        HttpRequest.newBuilder(URI.create(base + "/status")).build(),
                        HttpResponse.BodyHandlers.ofString());
                return;
            } catch (IOException e) {
                Thread.sleep(100);
            }
        }
        throw new AssertionError("chromedriver does not answer at " + base);
    }

    @ParameterizedTest
    @CsvSource({"1280, light", "390, light", "390, dark"})
    void theSheetRendersWhole(int width, String scheme) throws Exception {
        Ran.of("plan", "--output-dir", folder.toString());
        URI page = folder.resolve("mirror-cell-bracket-sheet.html").toUri();
        int port = freePort();
        String base = "http://127.0.0.1:" + port;
        Process driver = new ProcessBuilder("chromedriver", "--port=" + port)
                .redirectErrorStream(true)
                .redirectOutput(folder.resolve("driver.log").toFile())
                .start();
        try {
            awaitDriver(base);
            String dark = scheme.equals("dark") ? ",\"--blink-settings=preferredColorScheme=0\"" : "";
            Matcher session = SESSION.matcher(post(
                    base + "/session",
                    "{\"capabilities\":{\"alwaysMatch\":{\"goog:loggingPrefs\":{\"browser\":\"ALL\"},"
                            + "\"goog:chromeOptions\":{\"args\":[\"--headless=new\",\"--no-sandbox\"" + dark
                            + "],\"mobileEmulation\":{\"deviceMetrics\":{\"width\":" + width
                            + ",\"height\":844,\"pixelRatio\":1}}}}}}"));
            assertThat(session.find()).isTrue();
            String at = base + "/session/" + session.group(1);
            post(at + "/url", "{\"url\":\"" + page + "\"}");
            String seen = post(
                    at + "/execute/sync",
                    "{\"args\":[],\"script\":\"const s=[...document.querySelectorAll('svg')];"
                            + "return ['figures',s.length,"
                            + "'large',s.filter(e=>e.getBoundingClientRect().width>250"
                            + "&&e.getBoundingClientRect().height>150).length,"
                            + "'named',s.filter(e=>e.getAttribute('role')==='img'&&e.getAttribute('aria-labelledby')"
                            + ".split(' ').every(i=>document.getElementById(i).textContent.length>5)).length,"
                            + "'overflow',document.documentElement.scrollWidth-innerWidth,"
                            + "'rows',document.querySelectorAll('.list tbody tr').length,"
                            + "'ground',getComputedStyle(document.body).backgroundColor].join(' ')\"}");
            assertThat(seen).contains("figures 4 large 4 named 4 overflow 0 rows 5");
            assertThat(seen).contains(scheme.equals("dark") ? "rgb(18, 23, 27)" : "rgb(243, 245, 244)");
            assertThat(post(at + "/se/log", "{\"type\":\"browser\"}")).isEqualTo("{\"value\":[]}");
            client.send(
                    HttpRequest.newBuilder(URI.create(at)).DELETE().build(), HttpResponse.BodyHandlers.discarding());
        } finally {
            driver.destroy();
            driver.waitFor();
        }
    }
}

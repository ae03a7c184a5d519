package dev.waterjet.docs.site;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.net.ServerSocket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Opens every page of the site from disk in Chromium, driven by the W3C WebDriver protocol. Needs Debian's {@code chromium} and
 * {@code chromium-driver}; runs under the Maven profile {@code browser}.
 */
@Tag("browser")
class SiteBrowserTest {

    private static final Path ROOT = Path.of("..").toAbsolutePath().normalize();

    private static final Pattern SESSION = Pattern.compile("\"sessionId\":\"([^\"]+)\"");

    /** Waits for figures and formulas, then lists the faults of a page; {@code width} is that of the screen. */
    private static final String FAULTS = """
        const done = arguments[arguments.length - 1];
        (async () => {
          for (let i = 0; i < 400; i++) {
            const open = document.querySelector('.math') && document.documentElement.dataset.mathematics !== 'done';
            if (document.readyState === 'complete' && !open) break;
            await new Promise(r => setTimeout(r, 25));
          }
          const faults = [];
          for (const e of document.querySelectorAll('.math'))
            if (!e.querySelector('mjx-container svg') || e.querySelector('[data-mml-node=merror]'))
              faults.push('formula ' + e.textContent);
          for (const e of document.querySelectorAll('img'))
            if (getComputedStyle(e).display !== 'none' && !e.naturalWidth) faults.push('figure ' + e.src);
          const extra = document.documentElement.scrollWidth - innerWidth;
          if (extra > 0) faults.push('overflow ' + extra);
          done(faults.join('; '));
        })();
        """;

    private static final String SEARCHED = """
        const done = arguments[arguments.length - 1];
        const field = document.getElementById('search');
        field.value = 'discharge coefficient';
        field.dispatchEvent(new Event('input'));
        let tries = 0;
        const timer = setInterval(() => {
          const links = [...document.querySelectorAll('#found a')].map(a => a.getAttribute('href'));
          if (links.length > 2 || tries++ > 200) { clearInterval(timer); done(links.join(' ')); }
        }, 25);
        """;

    /** Types and slides as a person would, and collects what the page answers. */
    private static final String EXPLORED = """
        const done = arguments[arguments.length - 1];
        const text = () => document.querySelector('.answers').textContent;
        const type = (id, value) => {
          const field = document.getElementById(id);
          field.value = value;
          field.dispatchEvent(new Event('input', {bubbles: true}));
        };
        const first = text();
        type('x-thickness', '1/2 in');
        const inch = text();
        const slider = document.querySelector('[data-for=x-thickness]');
        slider.value = 20;
        slider.dispatchEvent(new Event('input', {bubbles: true}));
        const slid = text();
        type('x-tube', '0.1 mm');
        const refused = document.querySelector('.refusal').textContent;
        type('x-tube', '0.9 mm');
        document.getElementById('x-fit').click();
        const fitted = document.getElementById('x-fitted').textContent;
        done([first !== inch, inch !== slid, document.getElementById('x-thickness').value,
          refused.includes('above 0.3 mm'), document.querySelector('.refusal').textContent === '',
          /number 1[23]\\d/.test(fitted), document.querySelectorAll('.views svg path').length > 8].join(' '));
        """;

    private final HttpClient client =
            HttpClient.newBuilder().version(HttpClient.Version.HTTP_1_1).build();

    @TempDir
    private static Path folder;

    private static Site written() throws IOException {
        Site site = Site.of(ROOT);
        if (!Files.exists(folder.resolve("index.html"))) {
            site.write(folder);
            site.writeScripts(folder);
        }
        return site;
    }

    private interface Visit {
        void with(String session) throws Exception;
    }

    private void browse(int width, String scheme, Visit visit) throws Exception {
        int port;
        try (ServerSocket socket = new ServerSocket(0)) {
            port = socket.getLocalPort();
        }
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
            visit.with(at);
            client.send(
                    HttpRequest.newBuilder(URI.create(at)).DELETE().build(), HttpResponse.BodyHandlers.discarding());
        } finally {
            driver.destroy();
            driver.waitFor();
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

    private String post(String url, String json) throws IOException, InterruptedException {
        HttpRequest request = HttpRequest.newBuilder(URI.create(url))
                .timeout(Duration.ofMinutes(2))
                .POST(HttpRequest.BodyPublishers.ofString(json))
                .build();
        HttpResponse<String> response = client.send(request, HttpResponse.BodyHandlers.ofString());
        assertThat(response.statusCode()).as("%s: %s", url, response.body()).isEqualTo(200);
        return response.body();
    }

    private String run(String session, String script) throws IOException, InterruptedException {
        String text = script.replace("\\", "\\\\").replace("\"", "\\\"").replace("\n", "\\n");
        return post(session + "/execute/async", "{\"args\":[],\"script\":\"" + text + "\"}");
    }

    private void open(String session, String page) throws IOException, InterruptedException {
        post(session + "/url", "{\"url\":\"" + folder.resolve(page).toUri() + "\"}");
    }

    @ParameterizedTest
    @CsvSource({"1280, light", "390, dark"})
    void everyPageRendersWholeWithoutAnError(int width, String scheme) throws Exception {
        Site site = written();
        List<String> faults = new ArrayList<>();
        browse(width, scheme, session -> {
            for (SitePage page : site.pages()) {
                open(session, page.output());
                String seen = run(session, FAULTS);
                String log = post(session + "/se/log", "{\"type\":\"browser\"}");
                if (!seen.equals("{\"value\":\"\"}") || !log.equals("{\"value\":[]}")) {
                    faults.add(page.output() + " " + seen + " " + log);
                }
            }
        });
        assertThat(faults).isEmpty();
    }

    @Test
    void theSearchFindsTheGuideToOrifices() throws Exception {
        written();
        browse(1280, "light", session -> {
            open(session, "index.html");
            assertThat(run(session, SEARCHED)).contains("hydraulics.html");
        });
    }

    @Test
    void theExplorerAnswersAndRefuses() throws Exception {
        Path script = ROOT.resolve("docs/explorer/target/script/explorer.js");
        assumeTrue(Files.exists(script), "the explorer is not compiled");
        written();
        browse(1280, "light", session -> {
            open(session, "explorer.html");
            assertThat(run(session, EXPLORED)).isEqualTo("{\"value\":\"true true 20 mm true true true true\"}");
            assertThat(post(session + "/se/log", "{\"type\":\"browser\"}")).isEqualTo("{\"value\":[]}");
        });
    }
}

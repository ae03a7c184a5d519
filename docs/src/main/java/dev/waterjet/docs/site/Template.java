package dev.waterjet.docs.site;

import static dev.waterjet.examples.chart.SvgText.escaped;
import static dev.waterjet.examples.chart.SvgText.number;

import java.util.stream.Collectors;

/** Frame of every page: head, banner, navigation, contents and foot. */
final class Template {

    private static final int LINES = 58;

    private final Navigation navigation;
    private final boolean hasExplorer;
    private final String banner = banner();

    Template(Navigation navigation, boolean hasExplorer) {
        this.navigation = navigation;
        this.hasExplorer = hasExplorer;
    }

    String html(SitePage page, String body) {
        String up = page.up();
        boolean isIndex = page.output().equals("index.html");
        return "<!doctype html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n"
                + "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n"
                + "<meta name=\"color-scheme\" content=\"light dark\">\n<title>"
                + escaped(page.title()) + (isIndex ? "" : " · Waterjet")
                + "</title>\n<link rel=\"icon\" href=\"data:,\">\n"
                + "<link rel=\"stylesheet\" href=\"" + up + "assets/site.css\">\n"
                + "<script src=\"" + up + "assets/site.js\"></script>\n" + mathematics(up, body)
                + "</head>\n<body class=\"" + (isIndex ? "index" : "inner") + "\" data-up=\"" + up + "\">\n"
                + "<a class=\"skip\" href=\"#text\">Skip to the text</a>\n" + header(up)
                + "<div class=\"columns\">\n<nav class=\"pages\" id=\"pages\" aria-label=\"Pages\">"
                + navigation.html(page) + "</nav>\n<main id=\"text\">\n" + body + navigation.neighbours(page)
                + "</main>\n" + contents(page) + "</div>\n"
                + "<footer>A cutting jet maims and kills. Nothing on these pages is a"
                + " setting for a machine: its manual, local codes and trained people"
                + " decide. <a"
                + " href=\"" + up + "safety.html\">Safety</a>. Apache License"
                + " 2.0.</footer>\n" + explorer(up, body) + "</body>\n</html>\n";
    }

    private String explorer(String up, String body) {
        return hasExplorer && body.contains("id=\"workbench\"")
                ? "<script src=\"" + up + "assets/explorer.js\"></script>\n<script src=\"" + up
                        + "assets/explorer-page.js\"></script>\n"
                : "";
    }

    private static String mathematics(String up, String body) {
        return body.contains("class=\"math\"") ? "<script defer src=\"" + up + "assets/tex-svg.js\"></script>\n" : "";
    }

    private String header(String up) {
        return "<header>" + banner + "<div class=\"bar\"><a class=\"home\" href=\"" + up + "index.html\">Waterjet</a>"
                + "<a href=\"" + up + "learn.html\">Learn</a><a href=\"" + up + "calling.html\">Use</a><a href=\"" + up
                + "formulas.html\">Formulas</a><a href=\"" + up + "explorer.html\">Explore</a><a href=\"" + up
                + "api/index.html\">API</a>"
                + "<span class=\"tools\"><label><span class=\"hidden\">Search</span>"
                + "<input id=\"search\" type=\"search\" placeholder=\"Search\" autocomplete=\"off\""
                + " aria-controls=\"found\"></label>"
                + "<button id=\"scheme\" type=\"button\" aria-label=\"Light or dark\">◐</button>"
                + "<a class=\"menu\" href=\"#pages\">Pages</a></span></div>"
                + "<div id=\"found\" role=\"region\" aria-label=\"Search results\" aria-live=\"polite\" hidden></div>"
                + "</header>\n";
    }

    private static String contents(SitePage page) {
        if (page.sections().size() < 2) {
            return "<aside></aside>\n";
        }
        return "<aside aria-label=\"On this page\"><h2>On this page</h2><ul>"
                + page.sections().stream()
                        .map(heading -> "<li><a href=\"#" + page.ids().get(heading) + "\">"
                                + escaped(SitePage.words(heading)) + "</a></li>")
                        .collect(Collectors.joining())
                + "</ul></aside>\n";
    }

    /** Drag lines of a cut surface: parabolas over the depth, close and faint above, where the cut is smooth. */
    private static String banner() {
        StringBuilder svg = new StringBuilder("<svg class=\"lines\" viewBox=\"0 0 1160 60\""
                + " preserveAspectRatio=\"xMidYMid slice\" aria-hidden=\"true\">");
        for (int i = 0; i < LINES; i++) {
            double x = 20.0 * i + 6 * Math.sin(7.3 * i) + 24;
            double top = 14 + 9 * Math.sin(2.1 * i);
            svg.append("<path d=\"M")
                    .append(number(x))
                    .append(" 0Q")
                    .append(number(x))
                    .append(" 30 ");
            svg.append(number(x - 46)).append(" 60\" class=\"fine\"/><path d=\"M");
            svg.append(number(x - 46 * top * top / 3600))
                    .append(' ')
                    .append(number(top))
                    .append("Q");
            double slope = 92 * top / 3600;
            svg.append(number(x - 46 * top * top / 3600 - slope * (60 - top) / 2))
                    .append(' ');
            svg.append(number((60 + top) / 2))
                    .append(' ')
                    .append(number(x - 46))
                    .append(" 60\"/>");
        }
        return svg.append("</svg>").toString();
    }
}

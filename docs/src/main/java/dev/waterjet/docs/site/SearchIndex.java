package dev.waterjet.docs.site;

import java.util.Collection;
import java.util.Map;
import java.util.StringJoiner;
import org.commonmark.node.Heading;

/** Text of the pages by section, as a script that the search of the site reads. */
final class SearchIndex {

    private SearchIndex() {}

    static String script(Collection<SitePage> pages) {
        StringJoiner rows = new StringJoiner(",\n", "window.waterjetSections = [\n", "\n];\n");
        for (SitePage page : pages) {
            for (Map.Entry<Heading, String> piece : page.pieces()) {
                String words = SitePage.words(piece.getKey());
                String anchor =
                        piece.getKey().getLevel() == 1 ? "" : "#" + page.ids().get(piece.getKey());
                rows.add("[" + quoted(page.output() + anchor) + "," + quoted(page.title()) + "," + quoted(words) + ","
                        + quoted(piece.getValue().replaceAll("\\s+", " ")) + "]");
            }
        }
        return rows.toString();
    }

    private static String quoted(String text) {
        StringBuilder quoted = new StringBuilder("\"");
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            switch (c) {
                case '"', '\\' -> quoted.append('\\').append(c);
                case '<' -> quoted.append("\\u003c");
                default -> {
                    if (c < ' ' || c == '\u2028' || c == '\u2029') {
                        quoted.append(' ');
                    } else {
                        quoted.append(c);
                    }
                }
            }
        }
        return quoted.append('"').toString();
    }
}

package dev.waterjet.docs.site;

import static dev.waterjet.examples.chart.SvgText.escaped;

import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Java of a guide as HTML: its tokens coloured, its types of the library linked to their Javadoc. */
final class JavaCode {

    private static final Pattern TOKEN = Pattern.compile(
            "(?<comment>//[^\\n]*|/\\*.*?\\*/)|(?<text>\"(?:\\\\.|[^\"\\\\\\n])*\"|'(?:\\\\.|[^'\\\\\\n])+')"
                    + "|(?<number>\\b\\d[\\w.]*(?:(?<=[eE])[+-]\\d+)?)|(?<word>[A-Za-z_$][\\w$]*)",
            Pattern.DOTALL);

    private static final Set<String> KEYWORDS = Set.of(
            "abstract assert boolean break byte case catch char class continue default do double else enum extends final finally float for if implements import instanceof int interface long native new null package private protected public record return short static super switch synchronized this throw throws transient true false try var void volatile while yield sealed permits"
                    .split(" "));

    private final Api api;
    private final String toApi;

    JavaCode(Api api, String toApi) {
        this.api = api;
        this.toApi = toApi;
    }

    String html(String code) {
        StringBuilder html = new StringBuilder();
        Matcher token = TOKEN.matcher(code);
        int done = 0;
        while (token.find()) {
            html.append(escaped(code.substring(done, token.start()))).append(coloured(token));
            done = token.end();
        }
        return html.append(escaped(code.substring(done))).toString();
    }

    private String coloured(Matcher token) {
        String text = escaped(token.group());
        for (String kind : new String[] {"comment", "text", "number"}) {
            if (token.group(kind) != null) {
                return "<span class=\"j-" + kind + "\">" + text + "</span>";
            }
        }
        if (KEYWORDS.contains(token.group())) {
            return "<span class=\"j-key\">" + text + "</span>";
        }
        String link = link(token.group());
        return link == null ? text : "<a href=\"" + link + "\">" + text + "</a>";
    }

    /** Page of the type that a piece of inline code begins with, such as {@code FeedPlan.time()}; null if there is none. */
    @Nullable
    String link(String code) {
        String page = api.page(code.replaceAll("[^\\w].*", ""));
        return page == null ? null : toApi + page;
    }
}

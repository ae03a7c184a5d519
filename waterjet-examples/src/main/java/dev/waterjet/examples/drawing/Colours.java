package dev.waterjet.examples.drawing;

import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Colours in one form, so that {@code red}, {@code #f00} and {@code rgb(255, 0, 0)} are the same. */
public final class Colours {

    /** The sixteen basic colour names of CSS. */
    private static final Map<String, String> NAMES = Map.ofEntries(
            Map.entry("black", "#000000"),
            Map.entry("silver", "#c0c0c0"),
            Map.entry("gray", "#808080"),
            Map.entry("white", "#ffffff"),
            Map.entry("maroon", "#800000"),
            Map.entry("red", "#ff0000"),
            Map.entry("purple", "#800080"),
            Map.entry("fuchsia", "#ff00ff"),
            Map.entry("magenta", "#ff00ff"),
            Map.entry("green", "#008000"),
            Map.entry("lime", "#00ff00"),
            Map.entry("olive", "#808000"),
            Map.entry("yellow", "#ffff00"),
            Map.entry("navy", "#000080"),
            Map.entry("blue", "#0000ff"),
            Map.entry("teal", "#008080"),
            Map.entry("aqua", "#00ffff"),
            Map.entry("cyan", "#00ffff"));

    private static final Pattern SHORT = Pattern.compile("#([0-9a-f])([0-9a-f])([0-9a-f])");
    private static final Pattern RGB =
            Pattern.compile("rgb\\(\\s*(\\d{1,3})\\s*[, ]\\s*(\\d{1,3})\\s*[, ]\\s*(\\d{1,3})\\s*\\)");

    private Colours() {}

    /**
     * Returns a colour as {@code #rrggbb} where it is one of the common forms.
     *
     * @param text colour as a drawing or a person writes it
     * @return the plain form, or the text in lower case
     */
    public static String plain(String text) {
        String lower = text.strip().toLowerCase(Locale.ROOT);
        Matcher brief = SHORT.matcher(lower);
        if (brief.matches()) {
            return "#" + brief.group(1).repeat(2) + brief.group(2).repeat(2)
                    + brief.group(3).repeat(2);
        }
        Matcher rgb = RGB.matcher(lower);
        if (rgb.matches()) {
            return String.format(
                    Locale.ROOT,
                    "#%02x%02x%02x",
                    Math.min(255, Integer.parseInt(rgb.group(1))),
                    Math.min(255, Integer.parseInt(rgb.group(2))),
                    Math.min(255, Integer.parseInt(rgb.group(3))));
        }
        return NAMES.getOrDefault(lower, lower);
    }
}

package dev.waterjet.examples.chart;

import java.math.BigDecimal;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Title, description and fingerprint of an SVG. */
public final class SvgText {

    private static final Pattern FINGERPRINT = Pattern.compile("data-content=\"([0-9a-f]{16})\"");

    private SvgText() {}

    /**
     * An SVG with title, description and fingerprint.
     *
     * @param svg the SVG, beginning with its element
     * @param title title
     * @param alt description for readers who do not see it
     * @param fingerprint fingerprint of its content
     * @return the SVG, with a role and a name for screen readers
     */
    public static String named(String svg, String title, String alt, String fingerprint) {
        String id = "p" + fingerprint;
        int end = svg.indexOf('>') + 1;
        String head = svg.substring(0, end - 1);
        return head + " role=\"img\" aria-labelledby=\"" + id + "t " + id + "d\" data-content=\"" + fingerprint + "\">"
                + "<title id=\"" + id + "t\">" + escaped(title) + "</title>"
                + "<desc id=\"" + id + "d\">" + escaped(alt) + "</desc>"
                + svg.substring(end);
    }

    /**
     * The fingerprint that an SVG carries.
     *
     * @param svg the SVG
     * @return its fingerprint; empty if it carries none
     */
    public static String fingerprint(String svg) {
        Matcher matcher = FINGERPRINT.matcher(svg);
        return matcher.find() ? matcher.group(1) : "";
    }

    /**
     * A coordinate, to a hundredth of a pixel.
     *
     * @param value the coordinate
     * @return a short decimal number
     */
    public static String number(double value) {
        long hundredths = Math.round(value * 100);
        return hundredths % 100 == 0
                ? Long.toString(hundredths / 100)
                : BigDecimal.valueOf(hundredths, 2).stripTrailingZeros().toPlainString();
    }

    /**
     * Text that is safe within XML and HTML.
     *
     * @param text any text
     * @return the text with its marks escaped
     */
    public static String escaped(String text) {
        return text.replace("&", "&amp;")
                .replace("<", "&lt;")
                .replace(">", "&gt;")
                .replace("\"", "&quot;");
    }

    /**
     * Undoes {@link #escaped}.
     *
     * @param text escaped text
     * @return the text
     */
    public static String unescaped(String text) {
        return text.replace("&quot;", "\"")
                .replace("&gt;", ">")
                .replace("&lt;", "<")
                .replace("&amp;", "&");
    }
}

package dev.waterjet.quality;

import dev.waterjet.measure.Message;
import dev.waterjet.measure.TextException;
import java.util.Arrays;
import java.util.Locale;
import java.util.stream.Collectors;

/**
 * Level of cut quality, from a separation cut to the finest surface that a jet leaves. The names are tolerance words of
 * ordinary use, bound to no standard and no model; a {@link QualityIndexTable} maps them to the quality index of a feed
 * model.
 *
 * <pre>{@code
 * CutQuality quality = CutQuality.parse("very fine");
 * double index = QualityIndexTable.standard().index(quality);
 * Estimate<Speed> feed = cut.feed(quality);
 * }</pre>
 */
public enum CutQuality {
    /** The part just comes free: a separation cut, with no requirement on the surface. */
    VERY_COARSE("very coarse"),
    /** Separated with a margin, for surfaces that are not visible; striations, if any, at the bottom edge. */
    COARSE("coarse"),
    /** The default: surface of parts that are used as cut. */
    MEDIUM("medium"),
    /** Finer than the default, for surfaces that are visible or that fit. */
    FINE("fine"),
    /** The finest surface: a lower feed rate gains little. */
    VERY_FINE("very fine");

    private final String label;

    CutQuality(String label) {
        this.label = label;
    }

    /**
     * Reads a cut quality from its label. Case does not matter, nor whether blank, hyphen or underscore separates two words.
     *
     * @param text text, such as {@code very fine}
     * @return the cut quality
     * @throws TextException if there is no such level; code {@code unknown-cut-quality}
     */
    public static CutQuality parse(String text) {
        String requested = text.strip().toLowerCase(Locale.ROOT).replaceAll("[\\s_-]+", " ");
        for (CutQuality quality : values()) {
            if (quality.label.equals(requested)) {
                return quality;
            }
        }
        throw new TextException(Message.of("unknown-cut-quality", "unknown cut quality {text}; use one of {known}")
                .withInput("text", text)
                .with("known", labels()));
    }

    private static String labels() {
        return Arrays.stream(values()).map(CutQuality::label).collect(Collectors.joining(", "));
    }

    /** {@return the name for people, in lower case; {@link #parse} reads it} */
    public String label() {
        return label;
    }
}

package dev.waterjet.examples.drawing;

import dev.waterjet.measure.Message;
import dev.waterjet.measure.TextException;
import dev.waterjet.measure.WaterjetException;
import dev.waterjet.quality.CutQuality;
import java.util.Locale;
import java.util.Optional;

/**
 * Use of the entities of a layer or colour, such as {@code FINE=fine}, {@code ENGRAVE=mark}, {@code #ff0000=very coarse},
 * {@code SHUTTER=name:east shutter}.
 *
 * @param key name of a layer, of a group or of an entity, or a colour as the drawing writes it; case does not matter
 * @param use use of the entities
 * @param quality cut quality; present for {@link Use#CUT} only
 * @param name name of the contours; empty unless the use is {@link Use#NAME}
 */
public record LayerRule(String key, Use use, Optional<CutQuality> quality, String name) {

    /** Use of entities. */
    public enum Use {
        /** Contours to cut, with a cut quality. */
        CUT,
        /** Contours to cut, with a name. */
        NAME,
        /** Lines that the jet marks without cutting through. */
        MARK,
        /** Places of holding tabs: a stroke across a contour, or its middle near one. */
        TAB,
        /** Nothing: notes, frames, dimensions. */
        SKIP
    }

    private static final String NAME = "name:";

    /**
     * Reads a rule.
     *
     * @param text layer or colour, an equals sign, and a cut quality, {@code mark}, {@code tab}, {@code skip} or {@code name:}
     *     followed by a name
     * @return the rule
     * @throws TextException with code {@code layer-rule} or {@code unknown-layer-use}
     */
    public static LayerRule parse(String text) {
        int equals = text.lastIndexOf('=');
        String key = equals < 0 ? "" : text.substring(0, equals).strip();
        String value = text.substring(equals + 1).strip();
        if (key.isEmpty() || value.isEmpty()) {
            throw new TextException(
                    Message.of("layer-rule", "a layer rule is written LAYER=use, such as FINE=fine, not {text}")
                            .withInput("text", text));
        }
        return of(key, value);
    }

    private static LayerRule of(String key, String value) {
        Use plain = switch (value.toLowerCase(Locale.ROOT)) {
            case "mark" -> Use.MARK;
            case "tab" -> Use.TAB;
            case "skip" -> Use.SKIP;
            default -> Use.CUT;
        };
        if (plain != Use.CUT) {
            return new LayerRule(key, plain, Optional.empty(), "");
        }
        if (value.regionMatches(true, 0, NAME, 0, NAME.length())
                && !value.substring(NAME.length()).isBlank()) {
            return new LayerRule(
                    key,
                    Use.NAME,
                    Optional.empty(),
                    value.substring(NAME.length()).strip());
        }
        try {
            return new LayerRule(key, Use.CUT, Optional.of(CutQuality.parse(value)), "");
        } catch (WaterjetException e) {
            throw new TextException(Message.of(
                            "unknown-layer-use",
                            "unknown use {use} of layer {layer}; write a cut quality ({known}), mark, tab, skip, or"
                                    + " name:NAME")
                    .withInput("use", value)
                    .withInput("layer", key)
                    .with("known", String.valueOf(e.parameters().get("known"))));
        }
    }

    /**
     * Returns whether the rule is about an entity.
     *
     * @param origin the entity
     * @return true if its colour, its layer, a group around it or the entity itself has the key
     */
    public boolean isAbout(Origin origin) {
        return (!origin.colour().isEmpty() && Colours.plain(key).equals(origin.colour()))
                || key.equalsIgnoreCase(origin.name())
                || origin.layers().stream().anyMatch(key::equalsIgnoreCase);
    }
}

package dev.waterjet.examples.svg;

import dev.waterjet.examples.drawing.AffineMap;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.TextException;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** Transform of a style, and the origin of any transform (W3C, CSS Transforms 1, from memory). */
final class CssTransform {

    private CssTransform() {}

    /** The map about the origin of the drawing; refused where it depends on the box of the shape. */
    static AffineMap read(Tag tag, Map<String, String> style) {
        String text = style.getOrDefault("transform", "").strip();
        if (text.isEmpty() || text.equalsIgnoreCase("none")) {
            return AffineMap.IDENTITY;
        }
        Scanner in = tag.scanText(text);
        AffineMap all = AffineMap.IDENTITY;
        while (!in.isAtEnd()) {
            String name = name(in);
            if (!in.take('(')) {
                throw refused(tag, text);
            }
            double[] n = new double[6];
            int count = 0;
            while (!in.take(')')) {
                if (count == n.length) {
                    throw refused(tag, text);
                }
                n[count++] = number(tag, in, name);
            }
            all = all.with(one(tag, text, name, n, count));
        }
        return all;
    }

    /**
     * A transform about the origin that a style or an attribute states. Two lengths from the origin of the drawing are read;
     * shares of a box are refused.
     */
    static AffineMap aboutOrigin(Tag tag, Map<String, String> style, AffineMap map) {
        String text = property(tag, style, "transform-origin").orElse("0 0");
        if (map.equals(AffineMap.IDENTITY)) {
            return map;
        }
        if (property(tag, style, "transform-box").isPresent()) {
            throw originRefused(tag, "transform-box");
        }
        Scanner in = tag.scanText(text.replaceAll("\\b(left|top)\\b", "0"));
        double[] at = new double[3];
        try {
            int count = 0;
            while (!in.isAtEnd() && count < at.length) {
                at[count++] = in.number() * Tag.pixels(in);
            }
            if (count < 2 || at[2] != 0 || !in.isAtEnd() || text.contains(",")) {
                throw originRefused(tag, text);
            }
        } catch (TextException e) {
            throw originRefused(tag, text);
        }
        return AffineMap.translate(at[0], at[1]).with(map).with(AffineMap.translate(-at[0], -at[1]));
    }

    private static Optional<String> property(Tag tag, Map<String, String> style, String name) {
        return Optional.ofNullable(style.get(name)).or(() -> tag.text(name));
    }

    private static TextException originRefused(Tag tag, String what) {
        return tag.fault(Message.of(
                        "transform-origin",
                        "the origin {origin} of a transform is not read; write two lengths, such as \"50 30\"")
                .withInput("origin", what));
    }

    /** Name of a function, such as {@code translateX}. */
    private static String name(Scanner in) {
        return in.word().toLowerCase(Locale.ROOT);
    }

    private static double number(Tag tag, Scanner in, String name) {
        double number = in.number();
        if (name.startsWith("translate")) {
            return number * Tag.pixels(in);
        }
        if (name.startsWith("rotate") || name.startsWith("skew")) {
            return switch (in.word()) {
                case "", "deg" -> number;
                case "rad" -> Math.toDegrees(number);
                case "grad" -> number * 0.9;
                case "turn" -> number * 360;
                default -> throw refused(tag, name);
            };
        }
        return number;
    }

    private static AffineMap one(Tag tag, String text, String name, double[] n, int count) {
        return switch (name + count) {
            case "matrix6" -> new AffineMap(n[0], n[1], n[2], n[3], n[4], n[5]);
            case "translate1", "translatex1" -> AffineMap.translate(n[0], 0);
            case "translate2" -> AffineMap.translate(n[0], n[1]);
            case "translatey1" -> AffineMap.translate(0, n[0]);
            case "scale1" -> AffineMap.scale(n[0], n[0]);
            case "scale2" -> AffineMap.scale(n[0], n[1]);
            case "scalex1" -> AffineMap.scale(n[0], 1);
            case "scaley1" -> AffineMap.scale(1, n[0]);
            case "rotate1" -> AffineMap.rotate(n[0]);
            case "skewx1" -> AffineMap.skew(n[0], 0);
            case "skewy1" -> AffineMap.skew(0, n[0]);
            default -> throw refused(tag, text);
        };
    }

    private static TextException refused(Tag tag, String what) {
        return tag.fault(Message.of(
                        "style-transform",
                        "the transform {transform} of a style is not read; use the transform attribute")
                .withInput("transform", what));
    }
}

package dev.waterjet.examples.svg;

import dev.waterjet.examples.drawing.AffineMap;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.TextException;
import java.util.Locale;
import java.util.Map;

/** Transform of a style (W3C, CSS Transforms 1, from memory), about the origin of the drawing. */
final class CssTransform {

    private CssTransform() {}

    /** The map; refused where the style shifts its origin or uses what depends on the box of the shape. */
    static AffineMap read(Tag tag, Map<String, String> style) {
        String text = style.getOrDefault("transform", "").strip();
        if (text.isEmpty() || text.equalsIgnoreCase("none")) {
            return AffineMap.IDENTITY;
        }
        String origin = style.getOrDefault("transform-origin", "0 0")
                .replaceAll("(px|,)", " ")
                .strip();
        if (!origin.matches("0(\\s+0)*") || style.containsKey("transform-box")) {
            throw refused(tag, "transform-origin");
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

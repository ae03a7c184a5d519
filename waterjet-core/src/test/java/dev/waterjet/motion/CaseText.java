package dev.waterjet.motion;

import java.util.HashMap;
import java.util.Map;

/**
 * Paths and limits of reference cases as written: {@code M x y} start, {@code F feed}, {@code L x y} line,
 * {@code A x y cx cy +1|-1} arc, in mm and mm/s; limits {@code key=value} in SI where no unit stands.
 */
final class CaseText {

    /** Feed where none is written: faster than any machine. */
    private static final double NO_CAP = 1000;

    final PathPieces pieces = new PathPieces(16);
    final FeedCaps caps = new FeedCaps();
    private double x;
    private double y;
    private double feed = NO_CAP;

    private CaseText() {}

    static CaseText path(String text) {
        CaseText read = new CaseText();
        String[] words = text.trim().split("\\s+");
        int i = 0;
        while (i < words.length) {
            i += read.take(words, i);
        }
        return read;
    }

    private static double metres(String millimetres) {
        return Double.parseDouble(millimetres) / 1000;
    }

    private int take(String[] words, int i) {
        switch (words[i]) {
            case "M" -> {
                x = metres(words[i + 1]);
                y = metres(words[i + 2]);
                return 3;
            }
            case "F" -> {
                feed = metres(words[i + 1]);
                return 2;
            }
            case "L" -> {
                double toX = metres(words[i + 1]);
                double toY = metres(words[i + 2]);
                pieces.line(toX - x, toY - y);
                moveTo(toX, toY);
                return 3;
            }
            case "A" -> {
                arc(
                        metres(words[i + 1]),
                        metres(words[i + 2]),
                        metres(words[i + 3]),
                        metres(words[i + 4]),
                        Double.parseDouble(words[i + 5]));
                return 6;
            }
            default -> throw new IllegalArgumentException("word " + words[i]);
        }
    }

    private void arc(double toX, double toY, double cx, double cy, double sign) {
        double radius = Math.hypot(x - cx, y - cy);
        double sweep = sign * (Math.atan2(toY - cy, toX - cx) - Math.atan2(y - cy, x - cx));
        double turn = sweep <= 1e-12 ? sweep + 2 * Math.PI : sweep;
        pieces.arc(-sign * (y - cy) / radius, sign * (x - cx) / radius, radius, sign * turn);
        moveTo(toX, toY);
    }

    private void moveTo(double toX, double toY) {
        x = toX;
        y = toY;
        caps.until(pieces.lengthM(), feed, 0);
    }

    static Map<String, String> values(String text) {
        Map<String, String> values = new HashMap<>();
        for (String part : text.split(";", -1)) {
            String[] sides = part.split("=", -1);
            values.put(sides[0], sides[1]);
        }
        return values;
    }

    static double si(Map<String, String> values, String key, double otherwise) {
        String text = values.get(key);
        if (text == null) {
            return otherwise;
        }
        String[] words = text.split(" ", -1);
        double value = Double.parseDouble(words[0]);
        return words.length > 1 && words[1].equals("mm") ? value / 1000 : value;
    }

    static DynamicLimits limits(String text) {
        Map<String, String> values = values(text);
        double none = Double.POSITIVE_INFINITY;
        PathLimits path = new PathLimits(
                si(values, "a_path", none),
                si(values, "a_across", none),
                si(values, "j_path", none),
                si(values, "j_norm", none));
        double deviation = si(values, "deviation", 1e-5);
        double jump = si(values, "jump", none);
        CornerRule corner = switch (values.getOrDefault("corner", "stop")) {
            case "stop" -> CornerRule.stop(deviation);
            case "arc" -> CornerRule.arc(deviation);
            case "pulse" -> CornerRule.pulse(deviation);
            case "jump" -> CornerRule.jump(deviation, jump, jump);
            default -> throw new IllegalArgumentException(text);
        };
        return new DynamicLimits(
                new AxisLimits(si(values, "vx", none), si(values, "ax", none), si(values, "jx", none)),
                new AxisLimits(si(values, "vy", none), si(values, "ay", none), si(values, "jy", none)),
                path,
                corner);
    }
}

package dev.waterjet.reference;

import dev.waterjet.part.Contour;
import dev.waterjet.part.ContourBuilder;
import dev.waterjet.part.Side;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.IntToDoubleFunction;

/**
 * Reads paths of reference rows, in mm: {@code M x y}, {@code L x y}, {@code A x y cx cy 1|-1} (1 for counter-clockwise),
 * {@code Z} to close; or {@code gen}, a generated polyline.
 */
@SuppressWarnings("StringSplitter")
public final class ReferencePaths {

    private ReferencePaths() {}

    /** The contour of a path. */
    public static Contour parse(String path) {
        return path.startsWith("gen ") ? generate(path.substring(4)) : drawn(path.split("\\s+"));
    }

    private static Contour drawn(String[] words) {
        ContourBuilder builder = Contour.fromSi(mm(words[1]), mm(words[2]));
        int i = 3;
        while (i < words.length) {
            switch (words[i]) {
                case "L" -> {
                    builder.lineToSi(mm(words[i + 1]), mm(words[i + 2]));
                    i += 3;
                }
                case "A" -> {
                    Side turn = words[i + 5].equals("1") ? Side.LEFT : Side.RIGHT;
                    builder.arcToSi(mm(words[i + 1]), mm(words[i + 2]), mm(words[i + 3]), mm(words[i + 4]), turn);
                    i += 6;
                }
                case "F" -> i += 2;
                case "Z" -> {
                    return builder.close();
                }
                default -> throw new IllegalArgumentException(words[i]);
            }
        }
        return builder.open();
    }

    private static double mm(String word) {
        return Double.parseDouble(word) * 1e-3;
    }

    private static Contour generate(String text) {
        String[] words = text.split("\\s+");
        return switch (words[0]) {
            case "circle" -> circle(text);
            case "line" -> line(text);
            case "ngon" -> ngon(number(text, "R") * 1e-3, (int) number(text, "n"));
            case "spiral" -> spiral(text);
            case "lalal" -> lineArcLineArcLine(number(text, "step") * 1e-3, number(text, "round") * 1e-3);
            default -> throw new IllegalArgumentException(text);
        };
    }

    private static String word(String text, String name) {
        for (String part : text.split("\\s+")) {
            if (part.startsWith(name + "=")) {
                return part.substring(name.length() + 1);
            }
        }
        throw new IllegalArgumentException(text + " has no " + name);
    }

    private static double number(String text, String name) {
        return Double.parseDouble(word(text, name));
    }

    private static double rounded(double value, double step) {
        return step == 0 ? value : Math.rint(value / step) * step;
    }

    private static Contour circle(String text) {
        double radius = number(text, "R") * 1e-3;
        if (text.endsWith(" arc")) {
            return Contour.fromSi(radius, 0).arcToSi(radius, 0, 0, 0, Side.LEFT).close();
        }
        int n = (int) Math.round(2 * Math.PI * radius / (number(text, "chord") * 1e-3));
        double round = number(text, "round") * 1e-3;
        if (!text.contains("ratio=")) {
            return circle(radius, n, i -> 1, round);
        }
        if (text.contains("ratio=95:5")) {
            return circle(radius, n, i -> i % 2 == 0 ? 0.95 : 0.05, round);
        }
        Random random = new Random((long) number(text, "seed"));
        double[] weights = new double[n];
        for (int i = 0; i < n; i++) {
            weights[i] = Math.exp(random.nextDouble() * Math.log(30));
        }
        return circle(radius, n, i -> weights[i], round);
    }

    /** A circle in chords whose angles are as given weights, with coordinates rounded to a step. */
    public static Contour circle(double radius, int chords, IntToDoubleFunction weight, double roundM) {
        double sum = 0;
        for (int i = 0; i < chords; i++) {
            sum += weight.applyAsDouble(i);
        }
        ContourBuilder builder = Contour.fromSi(rounded(radius, roundM), 0);
        double at = 0;
        for (int i = 0; i < chords - 1; i++) {
            at += weight.applyAsDouble(i) / sum * 2 * Math.PI;
            builder.lineToSi(rounded(radius * Math.cos(at), roundM), rounded(radius * Math.sin(at), roundM));
        }
        return builder.close();
    }

    private static Contour ngon(double radius, int n) {
        return circle(radius, n, i -> 1, 0);
    }

    private static Contour line(String text) {
        double step = number(text, "step") * 1e-3;
        int n = (int) Math.round(number(text, "L") * 1e-3 / step);
        String noise = word(text, "noise");
        double size = Double.parseDouble(noise.substring(noise.indexOf("+-") + 2, noise.indexOf(')'))) * 1e-3;
        Random random = new Random((long) number(text, "seed"));
        ContourBuilder builder = Contour.fromSi(0, size * (2 * random.nextDouble() - 1));
        for (int i = 1; i <= n; i++) {
            builder.lineToSi(i * step, size * (2 * random.nextDouble() - 1));
        }
        return builder.open();
    }

    /** Samples of an Archimedean spiral at equal chords. */
    private static Contour spiral(String text) {
        double inner = number(text, "r0") * 1e-3;
        double turns = number(text, "turns");
        double rise = (number(text, "r1") * 1e-3 - inner) / (2 * Math.PI * turns);
        double chord = number(text, "chord") * 1e-3;
        double round = number(text, "round") * 1e-3;
        List<double[]> points = new ArrayList<>();
        double end = 2 * Math.PI * turns;
        double angle = 0;
        while (angle < end) {
            points.add(polar(inner + rise * angle, angle, round));
            angle += chord / Math.hypot(inner + rise * angle, rise);
        }
        points.add(polar(inner + rise * end, end, round));
        return polyline(points);
    }

    private static double[] polar(double radius, double angle, double round) {
        return new double[] {rounded(radius * Math.cos(angle), round), rounded(radius * Math.sin(angle), round)};
    }

    private static Contour polyline(List<double[]> points) {
        ContourBuilder builder = Contour.fromSi(points.get(0)[0], points.get(0)[1]);
        points.subList(1, points.size()).forEach(point -> builder.lineToSi(point[0], point[1]));
        return builder.open();
    }

    /** Line 30, left arc R 10 by 90 degrees, line 20, right arc R 5 by 90 degrees, line 10, all tangent. */
    private static Contour lineArcLineArcLine(double step, double round) {
        double[] lengths = {30e-3, 10e-3 * Math.PI / 2, 20e-3, 5e-3 * Math.PI / 2, 10e-3};
        double[] curvatures = {0, 100, 0, -200, 0};
        List<double[]> points = new ArrayList<>();
        points.add(new double[] {0, 0});
        double x = 0;
        double y = 0;
        double heading = 0;
        for (int k = 0; k < lengths.length; k++) {
            int n = (int) Math.ceil(lengths[k] / step);
            double x0 = x;
            double y0 = y;
            double from = heading;
            for (int i = 1; i <= n; i++) {
                double s = lengths[k] * i / n;
                double turned = s * curvatures[k];
                // a chord of the arc, in the direction half-way between its ends
                double chord = turned == 0 ? s : 2 / curvatures[k] * Math.sin(turned / 2);
                x = x0 + chord * Math.cos(from + turned / 2);
                y = y0 + chord * Math.sin(from + turned / 2);
                heading = from + turned;
                points.add(new double[] {rounded(x, round), rounded(y, round)});
            }
        }
        return polyline(points);
    }
}

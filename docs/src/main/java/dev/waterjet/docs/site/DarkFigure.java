package dev.waterjet.docs.site;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.imageio.ImageIO;

/**
 * Dark variant of a figure: the lightness of every colour is reversed, its hue and chroma stay.
 *
 * <p>Lightness is that of the colour space Oklab (Björn Ottosson, "A perceptual color space for image processing", 2020; the
 * matrices are from memory of that text and are checked by a round trip). White becomes the ground of the dark pages, black a
 * light ink, and lines of medium lightness stay near it, so that series keep their colours.
 */
final class DarkFigure {

    /** Lightness of the dark ground and of the lightest ink. */
    private static final double GROUND = 0.195;

    private static final double INK = 0.97;

    /** Above 1, so that colours of medium lightness become lighter: on a dark ground they need it. */
    private static final double SLOPE = 1.35;

    private static final Pattern COLOUR =
            Pattern.compile("rgb\\((\\d{1,3}), ?(\\d{1,3}), ?(\\d{1,3})\\)|#([0-9a-fA-F]{6})\\b");

    private DarkFigure() {}

    static String of(String svg) {
        Matcher colours = COLOUR.matcher(svg);
        return colours.replaceAll(DarkFigure::dark);
    }

    /** Writes the dark variant of a picture of pixels. */
    static void write(Path light, Path dark) throws IOException {
        BufferedImage image = ImageIO.read(light.toFile());
        BufferedImage turned = new BufferedImage(image.getWidth(), image.getHeight(), BufferedImage.TYPE_INT_RGB);
        Map<Integer, Integer> known = new HashMap<>();
        for (int y = 0; y < image.getHeight(); y++) {
            for (int x = 0; x < image.getWidth(); x++) {
                turned.setRGB(x, y, known.computeIfAbsent(image.getRGB(x, y) & 0xffffff, DarkFigure::dark));
            }
        }
        Files.createDirectories(dark.resolveSibling(""));
        ImageIO.write(turned, "png", dark.toFile());
    }

    private static String dark(MatchResult found) {
        int rgb = found.group(4) != null
                ? Integer.parseInt(found.group(4), 16)
                : Integer.parseInt(found.group(1)) << 16
                        | Integer.parseInt(found.group(2)) << 8
                        | Integer.parseInt(found.group(3));
        return String.format(Locale.ROOT, "#%06x", dark(rgb));
    }

    static int dark(int rgb) {
        double[] lab = lab(rgb);
        double lightness = INK - (INK - GROUND) * Math.pow(lab[0], SLOPE);
        // chroma shrinks until the colour can be shown
        for (double share = 1; share > 0; share -= 0.05) {
            double[] linear = linear(lightness, share * lab[1], share * lab[2]);
            if (isShown(linear)) {
                return packed(linear);
            }
        }
        return packed(linear(lightness, 0, 0));
    }

    static double[] lab(int rgb) {
        double r = decoded(rgb >> 16 & 0xff);
        double g = decoded(rgb >> 8 & 0xff);
        double b = decoded(rgb & 0xff);
        double l = Math.cbrt(0.4122214708 * r + 0.5363325363 * g + 0.0514459929 * b);
        double m = Math.cbrt(0.2119034982 * r + 0.6806995451 * g + 0.1073969566 * b);
        double s = Math.cbrt(0.0883024619 * r + 0.2817188376 * g + 0.6299787005 * b);
        return new double[] {
            0.2104542553 * l + 0.7936177850 * m - 0.0040720468 * s,
            1.9779984951 * l - 2.4285922050 * m + 0.4505937099 * s,
            0.0259040371 * l + 0.7827717662 * m - 0.8086757660 * s
        };
    }

    private static double[] linear(double lightness, double a, double b) {
        double l = cube(lightness + 0.3963377774 * a + 0.2158037573 * b);
        double m = cube(lightness - 0.1055613458 * a - 0.0638541728 * b);
        double s = cube(lightness - 0.0894841775 * a - 1.2914855480 * b);
        return new double[] {
            4.0767416621 * l - 3.3077115913 * m + 0.2309699292 * s,
            -1.2684380046 * l + 2.6097574011 * m - 0.3413193965 * s,
            -0.0041960863 * l - 0.7034186147 * m + 1.7076147010 * s
        };
    }

    static int rgb(double[] lab) {
        return packed(linear(lab[0], lab[1], lab[2]));
    }

    private static boolean isShown(double[] linear) {
        for (double value : linear) {
            if (value < -1e-4 || value > 1.0001) {
                return false;
            }
        }
        return true;
    }

    private static int packed(double[] linear) {
        int rgb = 0;
        for (double value : linear) {
            rgb = rgb << 8 | (int) Math.round(255 * encoded(Math.max(0, Math.min(1, value))));
        }
        return rgb;
    }

    /** sRGB of IEC 61966-2-1. */
    private static double decoded(int value) {
        double c = value / 255.0;
        return c <= 0.04045 ? c / 12.92 : Math.pow((c + 0.055) / 1.055, 2.4);
    }

    private static double encoded(double c) {
        return c <= 0.0031308 ? 12.92 * c : 1.055 * Math.pow(c, 1 / 2.4) - 0.055;
    }

    private static double cube(double x) {
        return x * x * x;
    }
}

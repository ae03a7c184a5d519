package dev.waterjet.examples.svg;

import dev.waterjet.examples.drawing.AffineMap;

/** Reader of the attribute {@code transform} (SVG 1.1, section 7.6). */
final class Transforms {

    private Transforms() {}

    static AffineMap read(Scanner in) {
        AffineMap all = AffineMap.IDENTITY;
        while (!in.isAtEnd()) {
            int place = in.place();
            String name = in.word();
            if (!in.take('(')) {
                throw in.fault("a transform is written name(numbers)");
            }
            double[] n = new double[7];
            int count = 0;
            while (!in.take(')')) {
                if (count == n.length - 1) {
                    throw in.fault("a transform has at most six numbers");
                }
                n[count++] = in.number();
            }
            all = all.with(one(in, place, name, n, count));
            in.take(',');
        }
        if (!all.isFinite()) {
            throw in.fault("the transform has no finite numbers");
        }
        return all;
    }

    private static AffineMap one(Scanner in, int place, String name, double[] n, int count) {
        return switch (name + count) {
            case "matrix6" -> new AffineMap(n[0], n[1], n[2], n[3], n[4], n[5]);
            case "translate1", "translate2" -> AffineMap.translate(n[0], n[1]);
            case "scale1" -> AffineMap.scale(n[0], n[0]);
            case "scale2" -> AffineMap.scale(n[0], n[1]);
            case "rotate1" -> AffineMap.rotate(n[0]);
            case "rotate3" ->
                AffineMap.translate(n[1], n[2]).with(AffineMap.rotate(n[0])).with(AffineMap.translate(-n[1], -n[2]));
            case "skewX1" -> AffineMap.skew(n[0], 0);
            case "skewY1" -> AffineMap.skew(0, n[0]);
            default -> throw in.fault(place, "unknown transform \"" + name + "\" with " + count + " numbers");
        };
    }
}

package dev.waterjet.examples.svg;

/** Reads the attribute {@code transform} (SVG 1.1, section 7.6). */
final class Transforms {

    private Transforms() {}

    static Matrix read(Scanner in) {
        Matrix all = Matrix.IDENTITY;
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

    private static Matrix one(Scanner in, int place, String name, double[] n, int count) {
        return switch (name + count) {
            case "matrix6" -> new Matrix(n[0], n[1], n[2], n[3], n[4], n[5]);
            case "translate1", "translate2" -> Matrix.translate(n[0], n[1]);
            case "scale1" -> Matrix.scale(n[0], n[0]);
            case "scale2" -> Matrix.scale(n[0], n[1]);
            case "rotate1" -> Matrix.rotate(n[0]);
            case "rotate3" ->
                Matrix.translate(n[1], n[2]).with(Matrix.rotate(n[0])).with(Matrix.translate(-n[1], -n[2]));
            case "skewX1" -> Matrix.skew(n[0], 0);
            case "skewY1" -> Matrix.skew(0, n[0]);
            default -> throw in.fault(place, "\"" + name + "\" with " + count + " numbers is no transform");
        };
    }
}

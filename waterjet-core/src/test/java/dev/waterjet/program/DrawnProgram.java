package dev.waterjet.program;

import dev.waterjet.part.Side;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Program drawn in mm, to be written in many forms: mirrored, turned, scaled, in inches, by increments, behind another cut. */
final class DrawnProgram {

    /** Form of the words. */
    enum Form {
        ABSOLUTE,
        INCREMENTAL,
        ABSOLUTE_CENTRE,
        INCH,
        SHIFTED
    }

    /** Linear image of the plane, and whether it mirrors. */
    record Image(double a, double b, double c, double d) {

        static final List<Image> ALL = List.of(
                new Image(1, 0, 0, 1),
                new Image(-1, 0, 0, 1),
                new Image(0, -1, 1, 0),
                new Image(0, 2.5, 2.5, 0),
                turned(0.7, 1),
                turned(2.3, 0.4),
                turned(4.1, 3));

        private static Image turned(double rad, double scale) {
            return new Image(
                    scale * Math.cos(rad), -scale * Math.sin(rad), scale * Math.sin(rad), scale * Math.cos(rad));
        }

        boolean isMirror() {
            return a * d - b * c < 0;
        }

        double scale() {
            return Math.sqrt(Math.abs(a * d - b * c));
        }
    }

    private record Step(String word, double x, double y, double cx, double cy, int turn) {}

    private static final int PREFIX_LINES = 5;

    private final List<Step> steps = new ArrayList<>();

    DrawnProgram rapid(double x, double y) {
        return add("G0", x, y, 0, 0, 0);
    }

    DrawnProgram on() {
        return add("M3", 0, 0, 0, 0, 0);
    }

    DrawnProgram off() {
        return add("M5", 0, 0, 0, 0, 0);
    }

    DrawnProgram line(double x, double y) {
        return add("G1", x, y, 0, 0, 0);
    }

    /** A line on which the machine takes or leaves an offset: 1 for left, -1 for right, 0 for none. */
    DrawnProgram offsetLine(int side, double x, double y) {
        return add("G4", x, y, 0, 0, side);
    }

    DrawnProgram arc(double x, double y, double cx, double cy, Side turn) {
        return add("", x, y, cx, cy, turn.sign());
    }

    private DrawnProgram add(String word, double x, double y, double cx, double cy, int turn) {
        steps.add(new Step(word, x, y, cx, cy, turn));
        return this;
    }

    /** Lines before the first step. */
    static int linesBefore(Form form, boolean isSecond) {
        return 1 + (isSecond ? PREFIX_LINES : 0) + (form == Form.SHIFTED ? 2 : 0);
    }

    String text(Image image, Form form, boolean isSecond) {
        double unit = form == Form.INCH ? 25.4 : 1;
        double shiftX = form == Form.SHIFTED ? -5 : 0;
        double shiftY = form == Form.SHIFTED ? -2 : 0;
        StringBuilder text = new StringBuilder(form == Form.INCH ? "G20" : "G21");
        text.append(form == Form.ABSOLUTE_CENTRE ? " G90.1" : "").append(" G90\n");
        if (isSecond) {
            // another cut far away, of lines and arcs
            text.append("G0 X-900 Y-800\nM3\nG1 X-899 Y-800\nG2 X-900 Y-800 R1\nM5\n");
        }
        double atX = 0;
        double atY = 0;
        if (form == Form.SHIFTED) {
            text.append("G0 X-3 Y-3\nG92 X2 Y-1\n");
        }
        boolean isFirst = true;
        for (Step step : steps) {
            String words = step.word();
            int turn = image.isMirror() ? -step.turn() : step.turn();
            if (words.equals("M3") || words.equals("M5")) {
                text.append(words).append('\n');
                continue;
            }
            if (words.equals("G4")) {
                words = (turn == 0 ? "G40" : turn > 0 ? "G41 D1" : "G42 D1") + " G1";
            } else if (words.isEmpty()) {
                words = turn > 0 ? "G3" : "G2";
            }
            boolean isIncremental = form == Form.INCREMENTAL && !isFirst;
            double x = image.a() * step.x() + image.b() * step.y();
            double y = image.c() * step.x() + image.d() * step.y();
            double fromX = isIncremental ? atX : shiftX;
            double fromY = isIncremental ? atY : shiftY;
            text.append(form == Form.INCREMENTAL ? isIncremental ? "G91 " : "G90 " : "")
                    .append(words);
            text.append(number('X', (x - fromX) / unit)).append(number('Y', (y - fromY) / unit));
            if (step.word().isEmpty()) {
                double cx = image.a() * step.cx() + image.b() * step.cy();
                double cy = image.c() * step.cx() + image.d() * step.cy();
                boolean isAbsolute = form == Form.ABSOLUTE_CENTRE;
                text.append(number('I', (cx - (isAbsolute ? 0 : atX)) / unit));
                text.append(number('J', (cy - (isAbsolute ? 0 : atY)) / unit));
            }
            text.append('\n');
            atX = x;
            atY = y;
            isFirst = false;
        }
        return text.append("M30\n").toString();
    }

    private static String number(char letter, double value) {
        return String.format(Locale.ROOT, " %c%.8f", letter, value);
    }
}

package dev.waterjet.examples.predict;

import dev.waterjet.examples.chart.Fingerprint;
import dev.waterjet.examples.chart.SvgText;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.part.Box;
import dev.waterjet.part.Point;
import dev.waterjet.simulate.DeviationMap;
import java.util.ArrayList;
import java.util.List;

/**
 * Drawings of predicted cuts, as SVG: deviations unrolled along the contour, and the bottom edge over the contour with
 * exaggerated deviations. Deviations are those that a straight cut does not have.
 */
public final class DeviationDrawing {

    private static final double WIDTH = 860;
    private static final double MARGIN = 60;
    private static final double ROW = 18;
    private static final double PLAN_HEIGHT = 420;
    private static final int COLUMNS = 260;
    private static final String INK = "#1f2a33";
    private static final String QUIET = "#5d6b76";
    private static final String UNCUT = "#3a3a3a";
    private static final String BOTTOM = "#b3361f";

    private final String title;
    private final String alt;
    private final Fingerprint content = new Fingerprint();
    private final List<String> panels = new ArrayList<>();
    private double height = 30;

    private DeviationDrawing(String title, String alt) {
        this.title = title;
        this.alt = alt;
    }

    /**
     * Returns an empty drawing.
     *
     * @param title what it shows
     * @param alt description for readers who do not see it
     * @return the drawing
     */
    public static DeviationDrawing of(String title, String alt) {
        return new DeviationDrawing(title, alt);
    }

    /**
     * Adds the deviations unrolled: along the contour to the right, down the depth.
     *
     * @param label words above the panel
     * @param map the deviations
     * @param rangeM deviation in m at which a colour is full, above 0
     * @return this drawing
     */
    public DeviationDrawing unrolled(String label, DeviationMap map, double rangeM) {
        int depths = map.depths().size();
        double length = map.contour().lengthSi();
        StringBuilder cells = new StringBuilder(heading(label + ", full colour at "
                + QuantityText.round(rangeM * 1e3, 3) + " mm; red gouged, blue material left, dark not separated"));
        content.add(label).add(rangeM);
        double column = (WIDTH - 2 * MARGIN) / COLUMNS;
        for (int depth = 0; depth < depths; depth++) {
            double[] worst = worst(map, depth, length);
            int from = 0;
            for (int k = 1; k <= COLUMNS; k++) {
                String colour = colour(worst[from] / rangeM);
                if (k == COLUMNS || !colour(worst[k] / rangeM).equals(colour)) {
                    cells.append("<rect x=\"" + number(MARGIN + from * column) + "\" y=\"" + number(24 + depth * ROW)
                            + "\" width=\"" + number((k - from) * column + 0.3) + "\" height=\"" + number(ROW)
                            + "\" fill=\"" + colour + "\"/>");
                    content.add(from, Math.rint(worst[from] * 1e4));
                    from = k;
                }
            }
        }
        cells.append(text(MARGIN - 8, 24 + ROW * 0.7, "end", "top"))
                .append(text(MARGIN - 8, 24 + ROW * (depths - 0.3), "end", "bottom"))
                .append(text(MARGIN, 24 + ROW * depths + 16, "start", "0"))
                .append(text(
                        WIDTH - MARGIN,
                        24 + ROW * depths + 16,
                        "end",
                        QuantityText.round(length * 1e3, 4) + " mm along the contour"));
        add(cells, 24 + ROW * depths + 40);
        return this;
    }

    private static double[] worst(DeviationMap map, int depth, double length) {
        double[] worst = new double[COLUMNS];
        java.util.Arrays.fill(worst, Double.NaN);
        for (int i = 0; i < map.size(); i++) {
            int k = Math.min(COLUMNS - 1, (int) (map.distanceSi(i) / length * COLUMNS));
            double added = map.addedSi(i, depth);
            if (Double.isNaN(worst[k]) || Math.abs(added) > Math.abs(worst[k])) {
                worst[k] = added;
            }
        }
        // a column between two points takes what its neighbour has
        for (int k = 1; k < COLUMNS; k++) {
            worst[k] = Double.isNaN(worst[k]) ? worst[k - 1] : worst[k];
        }
        return worst;
    }

    private static String colour(double share) {
        if (Double.isInfinite(share)) {
            return UNCUT;
        }
        double s = Double.isNaN(share) ? 0 : Math.rint(Math.min(1, Math.abs(share)) * 20) / 20;
        if (s == 0) {
            return rgb(250, 250, 250);
        }
        int full = (int) Math.round(250 - 200 * s);
        int other = (int) Math.round(250 - 110 * s);
        return share < 0 ? rgb(240 - (int) (40 * s), full, full) : rgb(full, other, 240);
    }

    private static String rgb(int red, int green, int blue) {
        return String.format(java.util.Locale.ROOT, "#%02x%02x%02x", red, green, blue);
    }

    /**
     * Adds the contour with its bottom edge, seen from above.
     *
     * @param label words above the panel
     * @param map the deviations
     * @param exaggeration factor on the deviations, above 0
     * @return this drawing
     */
    public DeviationDrawing bottomEdge(String label, DeviationMap map, double exaggeration) {
        Box box = drawn(map, exaggeration);
        double wide = box.maximum().xSi() - box.minimum().xSi();
        double tall = box.maximum().ySi() - box.minimum().ySi();
        double scale = Math.min((WIDTH - 2 * MARGIN) / wide, (PLAN_HEIGHT - 60) / Math.max(tall, wide / 20));
        double left = (WIDTH - wide * scale) / 2;
        double base = 40 + tall * scale;
        content.add(label).add(exaggeration);
        StringBuilder nominal = new StringBuilder();
        StringBuilder bottom = new StringBuilder();
        int last = map.depths().size() - 1;
        boolean isDown = false;
        for (int i = 0; i < map.size(); i++) {
            double x = map.point(i).xSi();
            double y = map.point(i).ySi();
            nominal.append(i == 0 ? "M" : " L").append(place(left, base, scale, box, x, y));
            boolean isCut = map.isSeparated(i, last);
            if (isCut) {
                double by = exaggeration * map.addedSi(i, last);
                String to = place(left, base, scale, box, x + by * map.normalX(i), y + by * map.normalY(i));
                bottom.append(isDown ? " L" : " M").append(to);
                content.add(Math.rint(by * 1e4));
            }
            isDown = isCut;
        }
        StringBuilder drawn = new StringBuilder(heading(
                label + ": contour grey, bottom edge red, deviations x " + QuantityText.round(exaggeration, 3)));
        drawn.append("<path d=\"" + nominal + "\" fill=\"none\" stroke=\"" + QUIET + "\"/>")
                .append("<path d=\"" + bottom + "\" fill=\"none\" stroke=\"" + BOTTOM + "\" stroke-width=\"1.6\"/>");
        add(drawn, base + 30);
        return this;
    }

    /** Box of the contour and of its exaggerated bottom edge. */
    private static Box drawn(DeviationMap map, double exaggeration) {
        Box box = map.contour().box();
        double[] x = {box.minimum().xSi(), box.maximum().xSi()};
        double[] y = {box.minimum().ySi(), box.maximum().ySi()};
        int last = map.depths().size() - 1;
        for (int i = 0; i < map.size(); i++) {
            double by = map.isSeparated(i, last) ? exaggeration * map.addedSi(i, last) : 0;
            double atX = map.point(i).xSi() + by * map.normalX(i);
            double atY = map.point(i).ySi() + by * map.normalY(i);
            x[0] = Math.min(x[0], atX);
            x[1] = Math.max(x[1], atX);
            y[0] = Math.min(y[0], atY);
            y[1] = Math.max(y[1], atY);
        }
        return new Box(Point.ofSi(x[0], y[0]), Point.ofSi(x[1], y[1]));
    }

    private static String place(double left, double base, double scale, Box box, double x, double y) {
        return number(left + (x - box.minimum().xSi()) * scale) + " "
                + number(base - (y - box.minimum().ySi()) * scale);
    }

    private static String heading(String words) {
        return "<text x=\"" + number(MARGIN) + "\" y=\"12\" font-weight=\"bold\">" + SvgText.escaped(words) + "</text>";
    }

    private static String text(double x, double y, String anchor, String words) {
        return "<text x=\"" + number(x) + "\" y=\"" + number(y) + "\" text-anchor=\"" + anchor + "\">"
                + SvgText.escaped(words) + "</text>";
    }

    private static String number(double value) {
        return SvgText.number(value);
    }

    private void add(CharSequence drawn, double tall) {
        panels.add("<g transform=\"translate(0 " + number(height) + ")\">" + drawn + "</g>");
        height += tall;
    }

    /** {@return the drawing as an SVG document} */
    public String svg() {
        String size = "width=\"" + number(WIDTH) + "\" height=\"" + number(height) + "\"";
        String svg = "<svg xmlns=\"http://www.w3.org/2000/svg\" " + size + " viewBox=\"0 0 " + number(WIDTH) + " "
                + number(height) + "\" font-family=\"sans-serif\" font-size=\"12\" fill=\"" + INK + "\"><rect " + size
                + " fill=\"#fffffe\"/>" + String.join("", panels) + "</svg>";
        return SvgText.named(svg, title, alt, content.text());
    }
}

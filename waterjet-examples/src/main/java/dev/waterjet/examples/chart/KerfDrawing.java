package dev.waterjet.examples.chart;

import static dev.waterjet.examples.chart.SvgText.escaped;
import static dev.waterjet.examples.chart.SvgText.number;

import dev.waterjet.kerf.Kerf;
import dev.waterjet.kerf.LagModel;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityText;
import java.util.ArrayList;
import java.util.List;

/**
 * Drawings of kerfs, side by side: cross-sections with both walls, the front seen from the side, and the face that is left.
 * A panel is to scale, with a bar of its scale below, unless its widths are stretched on request.
 */
public final class KerfDrawing {

    private static final double PANEL_WIDTH = 230;
    private static final double PLATE_HEIGHT = 300;
    private static final double GAP = 24;
    private static final double TOP = 64;
    private static final double HEIGHT = TOP + PLATE_HEIGHT + 72;
    private static final int STEPS = 120;

    private static final String MATERIAL = "#c9d2d9";
    private static final String INK = "#1f2a33";
    private static final String QUIET = "#5d6b76";
    private static final String GROOVE = "#0062a3";

    private final String title;
    private final String alt;
    private final List<String> panels = new ArrayList<>();
    private final Fingerprint content = new Fingerprint();

    private KerfDrawing(String title, String alt) {
        this.title = title;
        this.alt = alt;
        content.add(title).add(alt);
    }

    /**
     * An empty drawing.
     *
     * @param title what it shows, in a few words
     * @param alt what a reader sees in it, in a sentence or two, for those who cannot see it
     * @return the drawing
     */
    public static KerfDrawing of(String title, String alt) {
        return new KerfDrawing(title, alt);
    }

    /**
     * Adds a cross-section, top side above, to scale.
     *
     * @param label words above the panel
     * @param kerf the kerf
     * @return this drawing
     */
    public KerfDrawing section(String label, Kerf kerf) {
        double pixelsPerM = scale(kerf, kerf.maximumWidth().si() * 1.6);
        return section(label, kerf, pixelsPerM, pixelsPerM, "to scale");
    }

    /**
     * Adds a cross-section whose widths are stretched, so that a narrow kerf shows its walls.
     *
     * @param label words above the panel
     * @param kerf the kerf
     * @return this drawing
     */
    public KerfDrawing stretchedSection(String label, Kerf kerf) {
        double across = PANEL_WIDTH / (kerf.maximumWidth().si() * 1.8);
        double down = PLATE_HEIGHT / thickness(kerf);
        return section(label, kerf, across, down, "across x " + QuantityText.round(across / down, 2));
    }

    private KerfDrawing section(String label, Kerf kerf, double across, double down, String remark) {
        double centre = PANEL_WIDTH / 2;
        double plate = thickness(kerf) * down;
        StringBuilder left = new StringBuilder("M0 0");
        StringBuilder right = new StringBuilder("M" + number(PANEL_WIDTH) + " 0");
        for (int i = 0; i <= STEPS; i++) {
            // close steps near both faces, where walls turn fastest
            double part = (1 - Math.cos(Math.PI * i / STEPS)) / 2;
            double depth = Math.min(1, part) * thickness(kerf);
            double halfWidth = kerf.halfWidthSi(depth);
            content.add(depth, halfWidth);
            left.append(" L")
                    .append(number(centre - halfWidth * across))
                    .append(' ')
                    .append(number(depth * down));
            right.append(" L")
                    .append(number(centre + halfWidth * across))
                    .append(' ')
                    .append(number(depth * down));
        }
        left.append(" L0 ").append(number(plate)).append(" Z");
        right.append(" L")
                .append(number(PANEL_WIDTH))
                .append(' ')
                .append(number(plate))
                .append(" Z");
        return panel(
                label,
                remark,
                across,
                filled(left.toString()) + filled(right.toString()) + "<path d=\"M" + number(centre) + " -14 V"
                        + number(plate + 10) + "\" stroke=\"" + QUIET + "\" stroke-dasharray=\"6 3 1 3\"/>");
    }

    /**
     * Adds the cut front seen from the side, the head going to the right, to scale.
     *
     * @param label words above the panel
     * @param kerf the kerf
     * @return this drawing
     */
    public KerfDrawing front(String label, Kerf kerf) {
        double scale = scale(kerf, kerf.lag().atExit().si() * 1.4);
        double plate = thickness(kerf) * scale;
        double entry = PANEL_WIDTH * 0.2
                + Math.min(PANEL_WIDTH * 0.6, kerf.lag().atExit().si() * scale);
        StringBuilder uncut = new StringBuilder("M" + number(PANEL_WIDTH) + " 0");
        for (int i = 0; i <= STEPS; i++) {
            double part = (double) i / STEPS;
            double lag = kerf.lag().atExit().si() * part * part;
            content.add(lag);
            uncut.append(" L").append(number(entry - lag * scale)).append(' ').append(number(part * plate));
        }
        uncut.append(" L")
                .append(number(PANEL_WIDTH))
                .append(' ')
                .append(number(plate))
                .append(" Z");
        String jet = "<path d=\"M" + number(entry) + " -22 V-3\" stroke=\"" + GROOVE + "\" stroke-width=\"3\"/>"
                + "<path d=\"M" + number(entry + 8) + " -14 h26 m-7 -4 l7 4 l-7 4\" fill=\"none\" stroke=\"" + INK
                + "\"/>";
        String plumb = "<path d=\"M" + number(entry) + " 0 V" + number(plate) + "\" stroke=\"" + QUIET
                + "\" stroke-dasharray=\"3 3\"/>";
        return panel(label, "to scale", scale, filled(uncut.toString()) + jet + plumb);
    }

    /**
     * Adds the cut surface in a view perpendicular to it: drag lines in the striation zone, heavier with depth.
     *
     * @param label words above the panel
     * @param kerf the kerf
     * @return this drawing
     */
    public KerfDrawing surface(String label, Kerf kerf) {
        double scale = PLATE_HEIGHT / thickness(kerf);
        double depth = kerf.separationDepth().si();
        double smooth = Math.min(1, LagModel.CRITICAL_DEPTH_RATIO * depth / thickness(kerf));
        StringBuilder lines = new StringBuilder();
        lines.append("<rect width=\"")
                .append(number(PANEL_WIDTH))
                .append("\" height=\"")
                .append(number(PLATE_HEIGHT))
                .append("\" fill=\"#e7ecef\" stroke=\"")
                .append(INK)
                .append("\"/>");
        double spacing = 16;
        double exitLag = kerf.lag().atExit().si() * scale;
        content.add(exitLag, smooth);
        for (double at = spacing / 2; at < PANEL_WIDTH + exitLag; at += spacing) {
            lines.append(lagLine(at, exitLag, 0, Math.min(1, smooth), 0.18, 1));
            if (smooth < 1) {
                lines.append(lagLine(at, exitLag, smooth, 1, 0.9, 2.2));
            }
        }
        if (smooth < 1) {
            lines.append("<path d=\"M0 ")
                    .append(number(smooth * PLATE_HEIGHT))
                    .append(" H")
                    .append(number(PANEL_WIDTH))
                    .append("\" stroke=\"#c24a00\" stroke-dasharray=\"5 3\"/>");
        }
        return panel(label, "to scale", scale, "<g clip-path=\"url(#surface)\">" + lines + "</g>");
    }

    private static String lagLine(
            double entry, double exitLag, double fromPart, double toPart, double opacity, double width) {
        StringBuilder path = new StringBuilder();
        int steps = 24;
        for (int i = 0; i <= steps; i++) {
            double part = fromPart + (toPart - fromPart) * i / steps;
            path.append(i == 0 ? "M" : " L")
                    .append(number(entry - exitLag * part * part))
                    .append(' ')
                    .append(number(part * PLATE_HEIGHT));
        }
        return "<path d=\"" + path + "\" fill=\"none\" stroke=\"" + GROOVE + "\" stroke-opacity=\"" + opacity
                + "\" stroke-width=\"" + width + "\"/>";
    }

    private static double thickness(Kerf kerf) {
        return Kind.LENGTH.si(kerf.thickness());
    }

    /** Pixels per m at which both the plate and a width fit into a panel. */
    private static double scale(Kerf kerf, double widthM) {
        return Math.min(PLATE_HEIGHT / thickness(kerf), PANEL_WIDTH / widthM);
    }

    private static String filled(String path) {
        return "<path d=\"" + path + "\" fill=\"" + MATERIAL + "\" stroke=\"" + INK + "\"/>";
    }

    private KerfDrawing panel(String label, String remark, double pixelsPerM, String drawn) {
        content.add(label).add(remark);
        double barM = bar(60 / pixelsPerM);
        double x = GAP + panels.size() * (PANEL_WIDTH + GAP);
        String below = "<path d=\"M0 " + number(PLATE_HEIGHT + 34) + " h" + number(barM * pixelsPerM) + "\" stroke=\""
                + INK + "\" stroke-width=\"3\"/><text x=\"" + number(barM * pixelsPerM + 8) + "\" y=\""
                + number(PLATE_HEIGHT + 38) + "\">" + QuantityText.round(barM * 1000, 3) + " mm, " + escaped(remark)
                + "</text>";
        panels.add("<g transform=\"translate(" + number(x) + " " + number(TOP)
                + ")\"><text y=\"-36\" font-weight=\"bold\">" + escaped(label) + "</text>" + drawn + below + "</g>");
        return this;
    }

    /** Largest of 1, 2, 5 times a power of ten that is not above a length. */
    private static double bar(double wantedM) {
        double decade = Math.pow(10, Math.floor(Math.log10(wantedM)));
        double digit = wantedM / decade;
        return decade * (digit >= 5 ? 5 : digit >= 2 ? 2 : 1);
    }

    /**
     * The drawing.
     *
     * @return an SVG document
     */
    public String svg() {
        double width = GAP + panels.size() * (PANEL_WIDTH + GAP);
        String size = "width=\"" + number(width) + "\" height=\"" + number(HEIGHT) + "\"";
        String svg = "<svg xmlns=\"http://www.w3.org/2000/svg\" " + size + " viewBox=\"0 0 " + number(width) + " "
                + number(HEIGHT) + "\" font-family=\"sans-serif\" font-size=\"12\" fill=\"" + INK + "\">"
                + "<defs><clipPath id=\"surface\"><rect width=\"" + number(PANEL_WIDTH) + "\" height=\""
                + number(PLATE_HEIGHT) + "\"/></clipPath></defs><rect " + size + " fill=\"#fffffe\"/>"
                + String.join("", panels) + "</svg>";
        return SvgText.named(svg, title, alt, content.text());
    }
}

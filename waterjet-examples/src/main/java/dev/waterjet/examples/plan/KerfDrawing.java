package dev.waterjet.examples.plan;

import dev.waterjet.examples.chart.Fingerprint;
import dev.waterjet.examples.chart.SvgText;
import dev.waterjet.kerf.Kerf;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Units;
import javax.measure.Unit;
import javax.measure.quantity.Length;

/** Cross-section of the kerf, with its widths. Widths are drawn larger than depths where the plate is thick. */
final class KerfDrawing {

    private static final int WIDTH = 460;
    private static final int HEIGHT = 320;
    private static final int TOP = 46;
    private static final int FOOT = 44;
    private static final int POINTS = 60;

    /** The kerf takes this share of the width at least. */
    private static final double LEAST_SHARE = 0.3;

    private final Kerf kerf;
    private final Unit<Length> unit;
    private final double thicknessM;
    private final double depthScale;
    private final double widthScale;

    private KerfDrawing(Kerf kerf, Unit<Length> unit) {
        this.kerf = kerf;
        this.unit = unit;
        this.thicknessM = Kind.LENGTH.si(kerf.thickness());
        double widest = kerf.maximumWidth().si();
        double toScale = (HEIGHT - TOP - FOOT) / thicknessM;
        this.depthScale = Math.min(toScale, 0.6 * WIDTH / widest);
        this.widthScale = Math.max(depthScale, LEAST_SHARE * WIDTH / widest);
    }

    static String svg(Kerf kerf, Unit<Length> unit) {
        return new KerfDrawing(kerf, unit).draw();
    }

    private String draw() {
        double foot = TOP + thicknessM * depthScale;
        StringBuilder svg = new StringBuilder("<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 " + WIDTH + " "
                + SvgText.number(foot + FOOT) + "\" class=\"kerf\">\n");
        svg.append("<g fill=\"var(--plate)\" stroke=\"var(--ink)\" stroke-width=\"1.5\" stroke-linejoin=\"round\">")
                .append(side(-1, 6, foot))
                .append(side(1, WIDTH - 6, foot))
                .append("</g>\n<g fill=\"var(--ink)\" text-anchor=\"middle\" font-size=\"14\">");
        label(svg, WIDTH / 2.0, TOP - 16, "entry " + text(kerf.entryWidth().si()));
        label(svg, WIDTH / 2.0, foot + 24, "exit " + text(kerf.exitWidth().si()));
        label(svg, WIDTH * 0.17, (TOP + foot) / 2, text(thicknessM) + " thick");
        svg.append("</g>\n</svg>");
        String fingerprint = new Fingerprint()
                .add(thicknessM, kerf.entryWidth().si(), kerf.exitWidth().si())
                .text();
        return SvgText.named(svg.toString(), "Cross-section of the kerf", alt(), fingerprint);
    }

    private String side(int sign, double outer, double foot) {
        StringBuilder path = new StringBuilder("<path d=\"M" + SvgText.number(outer) + " " + TOP);
        for (int i = 0; i <= POINTS; i++) {
            double depth = thicknessM * i / POINTS;
            path.append('L')
                    .append(SvgText.number(WIDTH / 2.0 + sign * kerf.halfWidthSi(depth) * widthScale))
                    .append(' ')
                    .append(SvgText.number(TOP + depth * depthScale));
        }
        return path.append('L')
                .append(SvgText.number(outer))
                .append(' ')
                .append(SvgText.number(foot))
                .append("Z\"/>")
                .toString();
    }

    private static void label(StringBuilder svg, double x, double y, String text) {
        svg.append("<text x=\"")
                .append(SvgText.number(x))
                .append("\" y=\"")
                .append(SvgText.number(y))
                .append("\">")
                .append(text)
                .append("</text>");
    }

    /** Caption of the drawing. */
    static String caption(Kerf kerf) {
        KerfDrawing drawing = new KerfDrawing(kerf, Units.MILLIMETRE);
        double ratio = drawing.widthScale / drawing.depthScale;
        return ratio < 1.05
                ? "To scale."
                : "Widths are drawn " + QuantityText.round(ratio, 2) + " times as large as depths.";
    }

    private String alt() {
        return "Between the two walls of a plate " + text(thicknessM) + " thick the kerf is "
                + text(kerf.entryWidth().si()) + " wide at the entry and "
                + text(kerf.exitWidth().si()) + " wide at the exit.";
    }

    private String text(double lengthM) {
        return ReportText.of(Kind.LENGTH, Kind.LENGTH.of(lengthM), unit);
    }
}

package dev.waterjet.docs;

import static dev.waterjet.examples.chart.SvgText.escaped;
import static dev.waterjet.examples.chart.SvgText.number;
import static dev.waterjet.measure.Measures.gramsPerMinute;
import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.millimetres;

import dev.waterjet.examples.chart.Fingerprint;
import dev.waterjet.examples.chart.SvgText;
import dev.waterjet.feed.CutConditions;
import dev.waterjet.feed.MachinabilityFeed;
import dev.waterjet.hydraulics.Orifice;
import dev.waterjet.jet.Abrasive;
import dev.waterjet.jet.CuttingHead;
import dev.waterjet.jet.FocusingTube;
import dev.waterjet.jet.Mesh;
import dev.waterjet.kerf.CutFront;
import dev.waterjet.kerf.LagModel;
import dev.waterjet.material.Materials;
import dev.waterjet.material.Workpiece;
import dev.waterjet.quality.CutQuality;

/** Drawings of the lessons that are no charts: sections and plan views. */
final class LearnDrawings {

    private static final String INK = "#1f2a33";
    private static final String WATER = "#0062a3";
    private static final String PALE = "#cfe0ec";
    private static final String SOLID = "#c3ccd2";
    private static final String SECOND = "#c24a00";

    private final StringBuilder svg = new StringBuilder();
    private final Fingerprint content = new Fingerprint();

    private LearnDrawings() {}

    /**
     * Free-surface flow through a slot of half-width 1 (Kirchhoff 1869, from memory; re-derived): with the angle t between the
     * edge of the jet and its axis, x = -(2c/pi)(ln tan(t/2) + cos t) and y = c + (2c/pi)(1 - (1 - sin t)), c = pi/(pi + 2).
     */
    static String contraction() {
        LearnDrawings drawing = new LearnDrawings();
        double c = Math.PI / (Math.PI + 2);
        double scale = 110;
        StringBuilder upper = new StringBuilder();
        StringBuilder lower = new StringBuilder();
        double end = 3.1;
        for (int i = 0; i <= 200; i++) {
            double t = Math.PI / 2 * Math.pow(1 - i / 200.0, 2) + 1e-4;
            double x = Math.min(end, -2 * c / Math.PI * (Math.log(Math.tan(t / 2)) + Math.cos(t)));
            double y = c + 2 * c / Math.PI * Math.sin(t);
            upper.append(i == 0 ? "M" : "L").append(number(220 + scale * x)).append(' ');
            upper.append(number(190 - scale * y));
            lower.insert(0, "L" + number(220 + scale * x) + " " + number(190 + scale * y));
            drawing.content.add(x, y);
        }
        drawing.path(
                "M0 40H220V80" + upper.substring(1).replaceFirst("^[^L]*", "") + lower + "V340H0Z", PALE, "none", 0);
        drawing.path("M204 40H220V80L204 64ZM204 340H220V300L204 316Z", SOLID, INK, 1);
        drawing.path(upper.toString(), "none", WATER, 2.5);
        drawing.path("M" + lower.substring(1), "none", WATER, 2.5);
        drawing.streamlines(c, scale);
        drawing.dimension(240, 80, 300, "slot, 1", 19);
        drawing.dimension(576, 190 - scale * c, 190 + scale * c, "jet, 0.611", 4);
        drawing.text(20, 26, "still water at the pressure p");
        drawing.text(300, 26, "air: pressure 0 on the whole edge of the jet");
        drawing.text(372, 350, "vena contracta: streamlines are parallel");
        return drawing.done(
                660,
                380,
                "Contraction of a jet",
                "Section of the flow through a slot with sharp lips: the free edges leave the lips inwards and become"
                        + " parallel; the jet is 0.611 times as wide as the slot.");
    }

    /** Streamlines as shares of the flow, drawn radially before the slot and parallel behind it. */
    private void streamlines(double c, double scale) {
        for (double share : new double[] {-0.75, -0.4, 0, 0.4, 0.75}) {
            double angle = share * Math.PI / 2;
            double x = 220 - 150 * Math.cos(angle);
            double y = 190 - 150 * Math.sin(angle);
            double end = 190 - scale * c * share;
            path(
                    "M" + number(x) + " " + number(y) + "C" + number(220 - 55 * Math.cos(angle)) + " "
                            + number(190 - 55 * Math.sin(angle) - 40 * share) + " " + number(290) + " " + number(end)
                            + " 380 " + number(end) + "H550",
                    "none",
                    WATER,
                    0.8);
        }
    }

    static String head() {
        LearnDrawings drawing = new LearnDrawings();
        // water above, orifice, chamber, tube, plate
        drawing.path("M280 20H360V96H280Z", PALE, "none", 0);
        drawing.path("M240 20H280V96H312V112H240ZM400 20H360V96H328V112H400Z", SOLID, INK, 1);
        drawing.path("M296 96H344V104H322V112H318V104H296Z", "#8a6d00", INK, 0.8);
        drawing.path("M240 112H270V190H304V360H262V210H240ZM400 112H370V190H336V360H378V210H400Z", SOLID, INK, 1);
        drawing.path("M400 128L520 92V112L370 158V136Z", "#efe3cf", INK, 1);
        drawing.path("M317 104H323L326 360H314Z", WATER, "none", 0);
        drawing.grains();
        drawing.path("M200 386H314L318 420H200ZM440 386H326L322 420H440Z", SOLID, INK, 1);
        drawing.label(420, 60, 362, 60, "water at 400 MPa");
        drawing.label(180, 100, 300, 100, "orifice", true);
        drawing.label(180, 150, 285, 150, "mixing chamber", true);
        drawing.label(180, 280, 290, 280, "focusing tube", true);
        drawing.label(180, 374, 312, 374, "stand-off distance", true);
        drawing.text(530, 108, "air and garnet");
        drawing.label(420, 150, 325, 150, "water jet, entrained air");
        drawing.label(420, 280, 326, 280, "particles are accelerated");
        drawing.label(460, 404, 440, 404, "workpiece");
        return drawing.done(
                640,
                436,
                "Section of a cutting head",
                "From above: water under pressure, the orifice, the mixing chamber with air and garnet entering from"
                        + " the side, the focusing tube, the stand-off distance, the workpiece. Not to scale.");
    }

    private void grains() {
        for (int i = 0; i < 34; i++) {
            double place = i / 33.0;
            double x = i < 10 ? 505 - 13 * i : 312 + 16 * Math.abs(Math.sin(12.9 * i));
            double y = i < 10 ? 108 + 3.6 * i - 4 * Math.sin(5.1 * i) : 150 + 215 * (place - 0.3) / 0.7;
            svg.append("<circle cx=\"").append(number(x)).append("\" cy=\"").append(number(y));
            svg.append("\" r=\"2.4\" fill=\"").append(SECOND).append("\"/>");
        }
    }

    /** Plan view of a corner: the bottom of the jet hangs back along the tangent, by the steady lag of each feed rate. */
    static String corner() {
        LearnDrawings drawing = new LearnDrawings();
        CutConditions cut = CutConditions.of(
                CuttingHead.of(Orifice.sapphire(millimetres(0.30)), FocusingTube.of(millimetres(0.90), millimetres(76)))
                        .jet(megapascals(400), Abrasive.garnet(Mesh.of(80)), gramsPerMinute(400)),
                Workpiece.of(Materials.standard().get("titanium"), millimetres(20)),
                MachinabilityFeed.published());
        CutFront front = CutFront.of(LagModel.standard(), cut);
        double full = cut.feed(CutQuality.MEDIUM).si();
        drawing.plan(30, "99 mm/min", 1e3 * front.exitLagSi(full));
        drawing.plan(340, "10 mm/min at the corner", 1e3 * front.exitLagSi(full * 9.631 / 99.19));
        drawing.text(30, 300, "grey: path of the head; orange: path of the bottom of the jet, a lag behind it");
        return drawing.done(
                640,
                320,
                "The bottom of the jet at a corner",
                "Plan view of a right-angled corner in 20 mm titanium: the head turns at once; the bottom of the jet"
                        + " is one lag behind and swings round the corner outside, by 1.7 mm at full feed rate and 0.2 mm"
                        + " at the reduced one.");
    }

    /** The bottom lies a lag behind the head along its direction; while that turns at the corner, it runs round an arc. */
    private void plan(double left, String label, double lagMm) {
        double lag = 42 * lagMm;
        double cornerX = left + 190;
        double cornerY = 210;
        String bottom = "M" + number(left) + " " + number(cornerY) + "H" + number(cornerX - lag) + "A" + number(lag)
                + " " + number(lag) + " 0 0 0 " + number(cornerX) + " " + number(cornerY + lag) + "V50";
        path("M" + number(left) + " " + number(cornerY) + "H" + number(cornerX) + "V50", "none", SOLID, 9);
        path(bottom, "none", SECOND, 2.5);
        text(left, 34, label + ", lag " + number(Math.round(10 * lagMm) / 10.0) + " mm");
        content.add(label).add(lagMm);
    }

    private void path(String d, String fill, String stroke, double width) {
        svg.append("<path d=\"")
                .append(d)
                .append("\" fill=\"")
                .append(fill)
                .append("\" stroke=\"")
                .append(stroke);
        svg.append("\" stroke-width=\"").append(number(width)).append("\" stroke-linejoin=\"round\"/>");
    }

    private void text(double x, double y, String words) {
        content.add(words);
        svg.append("<text x=\"")
                .append(number(x))
                .append("\" y=\"")
                .append(number(y))
                .append("\">");
        svg.append(escaped(words)).append("</text>");
    }

    private void label(double x, double y, double toX, double toY, String words) {
        label(x, y, toX, toY, words, false);
    }

    private void label(double x, double y, double toX, double toY, String words, boolean isLeft) {
        content.add(words);
        path("M" + number(x) + " " + number(y) + "L" + number(toX) + " " + number(toY), "none", INK, 0.8);
        svg.append("<text x=\"")
                .append(number(isLeft ? x - 6 : x + 6))
                .append("\" y=\"")
                .append(number(y + 4));
        svg.append(isLeft ? "\" text-anchor=\"end\">" : "\">")
                .append(escaped(words))
                .append("</text>");
    }

    private void dimension(double x, double from, double to, String words, double shift) {
        String line = "M" + number(x - 5) + " " + number(from) + "h10M" + number(x - 5) + " " + number(to) + "h10M"
                + number(x) + " " + number(from) + "V" + number(to);
        path(line, "none", INK, 1);
        text(x + 8, (from + to) / 2 + shift, words);
    }

    private String done(int width, int height, String title, String alt) {
        content.add(title).add(alt);
        String size = "width=\"" + width + "\" height=\"" + height + "\"";
        String whole = "<svg xmlns=\"http://www.w3.org/2000/svg\" " + size + " viewBox=\"0 0 " + width + " " + height
                + "\" font-family=\"sans-serif\" font-size=\"13\" fill=\"" + INK + "\"><rect " + size
                + " fill=\"#fffffe\"/>" + svg + "</svg>";
        return SvgText.named(whole, title, alt, content.text());
    }
}

package dev.waterjet.examples.svg;

import dev.waterjet.evidence.Caution;
import dev.waterjet.examples.drawing.Drawing;
import dev.waterjet.examples.drawing.DrawnPart;
import dev.waterjet.examples.drawing.Origin;
import dev.waterjet.examples.drawing.Stroke;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.TextException;
import dev.waterjet.part.Contour;
import dev.waterjet.part.Edge;
import dev.waterjet.part.Part;
import dev.waterjet.part.Point;
import dev.waterjet.part.Side;
import dev.waterjet.toolpath.CuttingRules;
import dev.waterjet.toolpath.Lead;
import dev.waterjet.toolpath.LeadPlacer;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;

/**
 * A drawing as a part program in the words of ISO 6983: holes before the outline, each pierced in the scrap, led in and out,
 * with the offset of the path left to the machine.
 */
public final class DrawnProgram {

    /** Coordinates are written to a hundredth of a micrometre, so that arcs close. */
    private static final int DECIMALS = 5;

    private static final double JOIN_M = 1e-5;

    private final StringBuilder text = new StringBuilder();
    private final int jetOn;
    private final int jetOff;

    private DrawnProgram(int jetOn, int jetOff) {
        this.jetOn = jetOn;
        this.jetOff = jetOff;
    }

    /**
     * Writes the program.
     *
     * @param title title of the part
     * @param drawing a drawing of one part
     * @param rules lengths of leads and distances of pierce points
     * @param jetOn number of the M word that opens the jet
     * @param jetOff number of the M word that closes the jet
     * @return the text of the program
     * @throws TextException with code {@code open-contour}, {@code several-parts} or {@code no-pierce-place}, with names
     */
    public static String text(String title, SvgDrawing drawing, CuttingRules rules, int jetOn, int jetOff) {
        return new DrawnProgram(jetOn, jetOff).write(title, drawing, rules);
    }

    private String write(String title, SvgDrawing drawing, CuttingRules rules) {
        List<Stroke> strokes = new ArrayList<>();
        for (int i = 0; i < drawing.contours().size(); i++) {
            String name = drawing.names().get(i);
            Contour contour = drawing.contours().get(i).named(name);
            strokes.add(new Stroke(contour, new Origin(name, "", List.of(), "", "contour", i + 1)));
        }
        DrawnPart drawn = new Drawing("SVG", strokes, List.of(), List.of(), 1, true, JOIN_M, List.of()).onlyPart();
        Part part = drawn.part();
        LeadPlacer placer = LeadPlacer.of(part, rules);
        text.append('(').append(plain(title)).append(": edges of the part; the machine offsets the jet)\n");
        for (Caution caution : drawing.cautions()) {
            text.append("(caution: ").append(plain(caution.text())).append(")\n");
        }
        text.append("G71 G90 G17 G40\n");
        List<Contour> contours = part.contours();
        for (int i = 0; i < contours.size(); i++) {
            String name = plain(contours.get(i).name());
            Lead lead = placer.suggest(i);
            if (!lead.isClear()) {
                throw new TextException(Message.of(
                                "no-pierce-place",
                                "no place to pierce and enter the contour {contour} keeps clear of the others; take a"
                                        + " smaller jet or shorter leads")
                        .withInput("contour", name));
            }
            cut(name, lead.path(), part.partSide(i).opposite());
        }
        return text.append("\nM30\n").toString();
    }

    private void cut(String name, Contour path, Side jetSide) {
        text.append("\n(waterjet: name ")
                .append(name)
                .append(", quality ")
                .append(path.requirement(path.size() / 2).quality().label())
                .append(")\nG0");
        point(path.start());
        text.append("\nM")
                .append(jetOn)
                .append('\n')
                .append(jetSide == Side.LEFT ? "G41" : "G42")
                .append(" D1 ");
        for (int i = 0; i < path.size(); i++) {
            edge(path.edge(i));
        }
        text.append('M').append(jetOff).append(" G40\n");
    }

    private void edge(Edge edge) {
        text.append(edge.isArc() ? (edge.turn().orElseThrow() == Side.LEFT ? "G3" : "G2") : "G1");
        point(edge.end());
        edge.centre()
                .ifPresent(centre -> text.append(" I")
                        .append(number(centre.xSi() - edge.start().xSi()))
                        .append(" J")
                        .append(number(centre.ySi() - edge.start().ySi())));
        text.append('\n');
    }

    private void point(Point point) {
        text.append(" X").append(number(point.xSi())).append(" Y").append(number(point.ySi()));
    }

    private static String number(double metres) {
        return BigDecimal.valueOf(metres)
                .movePointRight(3)
                .setScale(DECIMALS, RoundingMode.HALF_EVEN)
                .stripTrailingZeros()
                .toPlainString();
    }

    /** Words without what would end a comment or part a note. */
    private static String plain(String words) {
        return words.replaceAll("[^\\p{Alnum} .-]", " ").strip();
    }
}

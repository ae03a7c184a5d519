package dev.waterjet.examples.svg;

import dev.waterjet.evidence.Caution;
import dev.waterjet.examples.drawing.Drawing;
import dev.waterjet.examples.drawing.DrawnPart;
import dev.waterjet.part.Contour;
import dev.waterjet.part.Edge;
import dev.waterjet.part.Finding;
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

    /** Coordinates are written to a hundredth of a micrometre, or to 25 nm in inches, so that arcs close. */
    private static final int DECIMALS = 5;

    private static final int INCH_DECIMALS = 6;

    private static final BigDecimal INCH_M = new BigDecimal("0.0254");

    private final StringBuilder text = new StringBuilder();
    private final int jetOn;
    private final int jetOff;

    private final boolean isInch;

    private DrawnProgram(boolean isInch, int jetOn, int jetOff) {
        this.isInch = isInch;
        this.jetOn = jetOn;
        this.jetOff = jetOff;
    }

    /**
     * A program and the findings of its leads.
     *
     * @param text text of the program
     * @param findings findings of pierce points and leads, satisfied or not
     */
    public record Result(String text, List<Finding> findings) {}

    /**
     * Writes the program of a drawing: part after part, holes first; in inches if the drawing is.
     *
     * @param title title of the part
     * @param drawing the drawing
     * @param rules lengths of leads and distances of pierce points
     * @param jetOn number of the M word that switches the jet on
     * @param jetOff number of the M word that switches the jet off
     * @return the program
     * @throws dev.waterjet.measure.TextException with code {@code open-contour}, with names
     * @throws dev.waterjet.part.GeometryException if the jet cannot cut a contour, with its place
     */
    public static Result of(String title, Drawing drawing, CuttingRules rules, int jetOn, int jetOff) {
        return new DrawnProgram(drawing.isInch(), jetOn, jetOff).write(title, drawing, rules);
    }

    private Result write(String title, Drawing drawing, CuttingRules rules) {
        text.append('(').append(plain(title)).append(": edges of the part; the machine offsets the jet)\n");
        for (Caution caution : drawing.cautions()) {
            text.append("(caution: ").append(plain(caution.text())).append(")\n");
        }
        text.append(isInch ? "G70" : "G71").append(" G90 G17 G40\n");
        List<Finding> findings = new ArrayList<>();
        for (DrawnPart drawn : drawing.parts()) {
            Part part = drawn.part();
            LeadPlacer placer = LeadPlacer.of(part, rules);
            for (int i = 0; i < part.contours().size(); i++) {
                Lead lead = placer.suggest(i);
                findings.addAll(lead.findings());
                cut(
                        plain(part.contours().get(i).name()),
                        lead.path(),
                        part.partSide(i).opposite());
            }
        }
        return new Result(text.append("\nM30\n").toString(), List.copyOf(findings));
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

    private String number(double metres) {
        BigDecimal exact = BigDecimal.valueOf(metres);
        BigDecimal written = isInch
                ? exact.divide(INCH_M, INCH_DECIMALS, RoundingMode.HALF_EVEN)
                : exact.movePointRight(3).setScale(DECIMALS, RoundingMode.HALF_EVEN);
        return written.stripTrailingZeros().toPlainString();
    }

    /** Words without what would end a comment or part a note. */
    private static String plain(String words) {
        return words.replaceAll("[^\\p{Alnum} .-]", " ").strip();
    }
}

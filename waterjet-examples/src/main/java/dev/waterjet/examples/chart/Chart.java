package dev.waterjet.examples.chart;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Shape;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.text.NumberFormat;
import java.util.List;
import java.util.Locale;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.LegendItem;
import org.jfree.chart.LegendItemCollection;
import org.jfree.chart.annotations.XYTextAnnotation;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.axis.ValueAxis;
import org.jfree.chart.block.BlockBorder;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.DeviationRenderer;
import org.jfree.chart.renderer.xy.XYItemRenderer;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.chart.title.LegendTitle;
import org.jfree.chart.ui.RectangleEdge;
import org.jfree.chart.ui.RectangleInsets;
import org.jfree.chart.ui.TextAnchor;
import org.jfree.data.xy.XYDataset;
import org.jfree.data.xy.XYSeries;
import org.jfree.data.xy.XYSeriesCollection;
import org.jfree.data.xy.YIntervalSeries;
import org.jfree.data.xy.YIntervalSeriesCollection;
import org.jfree.svg.SVGGraphics2D;
import org.jfree.svg.ViewBox;

/**
 * A chart of lines, bands and points over one pair of axes. Lines differ by dash as well as by colour, points by
 * shape. Give the numbers
 * in the unit that the axis names.
 *
 * <pre>{@code
 * String svg = Chart.of("Feed over thickness", "Feed falls from 900 mm/min at 2 mm to 60 mm/min at 20 mm.")
 *         .x("thickness [mm]").y("feed [mm/min]").logY()
 *         .band("95 % interval", thickness, lower, upper)
 *         .line("titanium", thickness, feed)
 *         .svg(640, 400);
 * }</pre>
 */
public final class Chart {

    private static final float[][] DASHES = {{}, {7, 4}, {2, 3}, {9, 3, 2, 3}, {4, 4}, {12, 4}};

    /** Opacity of a band in the legend. */
    private static final double PALE = 0.25;

    /** Markers differ by shape as well as by colour. */
    private static final List<Shape> MARKERS = List.of(
            new Ellipse2D.Double(-4.5, -4.5, 9, 9),
            new Rectangle2D.Double(-4, -4, 8, 8),
            polygon(0, -5.5, 5.5, 0, 0, 5.5, -5.5, 0),
            polygon(0, -5, 5.2, 4, -5.2, 4),
            polygon(0, 5, 5.2, -4, -5.2, -4));

    private static final Shape SAMPLE_LINE = new Line2D.Double(-14, 0, 14, 0);
    private static final Shape SAMPLE_BAND = new Rectangle2D.Double(-10, -5, 20, 10);

    private static final Font FONT = new Font(Font.SANS_SERIF, Font.PLAIN, 13);

    private final String title;
    private final String alt;
    private final XYPlot plot = new XYPlot();
    private final Fingerprint fingerprint = new Fingerprint();
    private boolean hasLogX;
    private boolean hasLogY;
    private boolean hasLegend = true;
    private String xLabel = "";
    private String yLabel = "";
    private double[] xRange = {};
    private double[] yRange = {};
    private int series;
    private int markers;
    private final LegendItemCollection items = new LegendItemCollection();

    private Chart(String title, String alt) {
        this.title = title;
        this.alt = alt;
        fingerprint.add(title).add(alt);
    }

    /**
     * An empty chart.
     *
     * @param title what it shows, in a few words
     * @param alt what a reader sees in it, in a sentence or two, for those who cannot see it
     * @return the chart
     */
    public static Chart of(String title, String alt) {
        return new Chart(title, alt);
    }

    /**
     * Names the axis across.
     *
     * @param label quantity and unit
     * @return this chart
     */
    public Chart x(String label) {
        xLabel = label;
        return this;
    }

    /**
     * Names the axis upwards.
     *
     * @param label quantity and unit
     * @return this chart
     */
    public Chart y(String label) {
        yLabel = label;
        return this;
    }

    /**
     * Makes the axis across logarithmic.
     *
     * @return this chart
     */
    public Chart logX() {
        hasLogX = true;
        return this;
    }

    /**
     * Makes the axis upwards logarithmic.
     *
     * @return this chart
     */
    public Chart logY() {
        hasLogY = true;
        return this;
    }

    /**
     * Limits the axis across.
     *
     * @param from its start
     * @param to its end
     * @return this chart
     */
    public Chart xFrom(double from, double to) {
        xRange = new double[] {from, to};
        return this;
    }

    /**
     * Limits the axis upwards.
     *
     * @param from its start
     * @param to its end
     * @return this chart
     */
    public Chart yFrom(double from, double to) {
        yRange = new double[] {from, to};
        return this;
    }

    /**
     * Leaves the legend out.
     *
     * @return this chart
     */
    public Chart withoutLegend() {
        hasLegend = false;
        return this;
    }

    /**
     * Draws a line.
     *
     * @param label what it is, for the legend
     * @param x places across
     * @param y as many heights; one that is no number leaves a gap
     * @return this chart
     */
    public Chart line(String label, double[] x, double[] y) {
        XYLineAndShapeRenderer renderer = new XYLineAndShapeRenderer(true, false);
        float[] dash = DASHES[series % DASHES.length];
        renderer.setSeriesStroke(
                0,
                dash.length == 0
                        ? new BasicStroke(2, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND)
                        : new BasicStroke(2, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 1, dash, 0));
        renderer.setDrawSeriesLineAsPath(true);
        items.add(new LegendItem(
                label, null, null, null, SAMPLE_LINE, renderer.getSeriesStroke(0), Palette.series(series)));
        add(dataset(label, x, y), renderer, Palette.series(series++));
        return this;
    }

    /**
     * Draws points.
     *
     * @param label what they are, for the legend
     * @param x places across
     * @param y as many heights
     * @return this chart
     */
    public Chart points(String label, double[] x, double[] y) {
        XYLineAndShapeRenderer renderer = new XYLineAndShapeRenderer(false, true);
        renderer.setSeriesShape(0, MARKERS.get(markers++ % MARKERS.size()));
        renderer.setUseOutlinePaint(true);
        renderer.setSeriesOutlinePaint(0, Palette.PAPER);
        renderer.setSeriesOutlineStroke(0, new BasicStroke(1.5f));
        items.add(new LegendItem(label, null, null, null, renderer.getSeriesShape(0), Palette.series(series)));
        add(dataset(label, x, y), renderer, Palette.series(series++));
        return this;
    }

    /**
     * Writes a note below and to the left of a place, in the colour of the last line or points.
     *
     * @param text the note
     * @param x place across
     * @param y height
     * @return this chart
     */
    public Chart note(String text, double x, double y) {
        fingerprint.add(text).add(x, y);
        XYTextAnnotation note = new XYTextAnnotation(text, x, y);
        note.setFont(FONT);
        note.setPaint(Palette.series(series - 1));
        note.setTextAnchor(TextAnchor.TOP_RIGHT);
        plot.addAnnotation(note);
        return this;
    }

    /**
     * Draws a band, in the colour of the line that comes next. Draw it before its line.
     *
     * @param label what it is, for the legend
     * @param x places across
     * @param lower as many lower edges
     * @param upper as many upper edges
     * @return this chart
     */
    public Chart band(String label, double[] x, double[] lower, double[] upper) {
        YIntervalSeries values = new YIntervalSeries(label, false, true);
        for (int i = 0; i < x.length; i++) {
            values.add(x[i], Math.sqrt(Math.max(0, lower[i] * upper[i])), lower[i], upper[i]);
        }
        fingerprint.add(label).add(x).add(lower).add(upper);
        YIntervalSeriesCollection all = new YIntervalSeriesCollection();
        all.addSeries(values);
        DeviationRenderer renderer = new DeviationRenderer(false, false);
        renderer.setAlpha(0.18f);
        renderer.setSeriesFillPaint(0, Palette.series(series));
        Color pale = mixed(Palette.series(series), PALE);
        items.add(new LegendItem(label, null, null, null, SAMPLE_BAND, pale));
        add(all, renderer, pale);
        return this;
    }

    private static Shape polygon(double... corners) {
        Path2D path = new Path2D.Double();
        path.moveTo(corners[0], corners[1]);
        for (int i = 2; i < corners.length; i += 2) {
            path.lineTo(corners[i], corners[i + 1]);
        }
        path.closePath();
        return path;
    }

    private static Color mixed(Color colour, double share) {
        return new Color(
                (int) Math.round(255 + share * (colour.getRed() - 255)),
                (int) Math.round(255 + share * (colour.getGreen() - 255)),
                (int) Math.round(255 + share * (colour.getBlue() - 255)));
    }

    private XYDataset dataset(String label, double[] x, double[] y) {
        XYSeries values = new XYSeries(label, false, true);
        for (int i = 0; i < x.length; i++) {
            values.add(x[i], y[i]);
        }
        fingerprint.add(label).add(x).add(y);
        XYSeriesCollection all = new XYSeriesCollection();
        all.addSeries(values);
        return all;
    }

    private void add(XYDataset dataset, XYItemRenderer renderer, Color colour) {
        int index = plot.getDatasetCount() == 1 && plot.getDataset() == null ? 0 : plot.getDatasetCount();
        renderer.setSeriesPaint(0, colour);
        plot.setDataset(index, dataset);
        plot.setRenderer(index, renderer);
    }

    /**
     * The chart on white, for a page of its own.
     *
     * @param width width in pixels
     * @param height height in pixels
     * @return the SVG
     */
    public String svg(int width, int height) {
        return draw(width, height, true);
    }

    /**
     * The chart without ground, in the colours {@code --ink}, {@code --quiet}, {@code --grid}, {@code --paper},
     * {@code --first}, {@code --second} and {@code --band} of the page that holds it, so that it follows the page from light to dark.
     *
     * @param width width in pixels
     * @param height height in pixels
     * @return the SVG
     */
    public String svgInPage(int width, int height) {
        return draw(width, height, false)
                .replace(rgb(Palette.INK), "var(--ink)")
                .replace(rgb(Palette.QUIET), "var(--quiet)")
                .replace(rgb(Palette.GRID), "var(--grid)")
                .replace(rgb(Palette.PAPER), "var(--paper)")
                .replace(rgb(Palette.series(0)), "var(--first)")
                .replace(rgb(Palette.series(1)), "var(--second)")
                .replace(rgb(mixed(Palette.series(0), PALE)), "var(--band)");
    }

    private static String rgb(Color colour) {
        return "rgb(" + colour.getRed() + "," + colour.getGreen() + "," + colour.getBlue() + ")";
    }

    private String draw(int width, int height, boolean onWhite) {
        plot.setDomainAxis(axis(xLabel, hasLogX, xRange));
        plot.setRangeAxis(axis(yLabel, hasLogY, yRange));
        plot.setBackgroundPaint(null);
        plot.setOutlinePaint(null);
        plot.setDomainGridlinePaint(Palette.GRID);
        plot.setRangeGridlinePaint(Palette.GRID);
        plot.setDomainGridlineStroke(new BasicStroke(1));
        plot.setRangeGridlineStroke(new BasicStroke(1));
        plot.setAxisOffset(RectangleInsets.ZERO_INSETS);
        JFreeChart chart = new JFreeChart(null, FONT, plot, false);
        chart.setBackgroundPaint(onWhite ? Color.WHITE : null);
        chart.setPadding(new RectangleInsets(8, 4, 6, 14));
        if (hasLegend) {
            chart.addLegend(legend());
        }
        SVGGraphics2D graphics = new SVGGraphics2D(width, height);
        graphics.setGeomDoubleConverter(SvgText::number);
        graphics.setTransformDoubleConverter(SvgText::number);
        graphics.setDefsKeyPrefix("c" + fingerprint.text().substring(0, 8));
        chart.draw(graphics, new Rectangle2D.Double(0, 0, width, height));
        return SvgText.named(
                graphics.getSVGElement(null, true, new ViewBox(0, 0, width, height), null, null),
                title,
                alt,
                fingerprint.text());
    }

    private LegendTitle legend() {
        plot.setFixedLegendItems(items);
        LegendTitle legend = new LegendTitle(plot);
        legend.setItemFont(FONT);
        legend.setItemPaint(Palette.INK);
        legend.setPosition(RectangleEdge.TOP);
        legend.setFrame(BlockBorder.NONE);
        legend.setItemLabelPadding(new RectangleInsets(2, 4, 2, 14));
        return legend;
    }

    private static ValueAxis axis(String label, boolean isLog, double[] range) {
        ValueAxis axis = isLog ? new DecadeAxis(label) : new NumberAxis(label);
        if (axis instanceof NumberAxis plain) {
            NumberFormat format = NumberFormat.getInstance(Locale.ROOT);
            format.setGroupingUsed(false);
            format.setMaximumFractionDigits(6);
            plain.setNumberFormatOverride(format);
            plain.setAutoRangeIncludesZero(false);
        }
        if (range.length == 2) {
            axis.setRange(range[0], range[1]);
        }
        axis.setLabelFont(FONT);
        axis.setTickLabelFont(FONT);
        axis.setLabelPaint(Palette.INK);
        axis.setTickLabelPaint(Palette.QUIET);
        axis.setAxisLinePaint(Palette.QUIET);
        axis.setTickMarkPaint(Palette.QUIET);
        return axis;
    }
}

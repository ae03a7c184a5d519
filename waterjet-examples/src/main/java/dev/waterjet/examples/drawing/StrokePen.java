package dev.waterjet.examples.drawing;

import dev.waterjet.measure.Message;
import dev.waterjet.measure.TextException;
import dev.waterjet.part.Contour;
import dev.waterjet.part.ContourBuilder;
import dev.waterjet.part.Side;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Pen that draws strokes in metres. Lines and circular arcs stay as they are; ellipses and Bézier curves become lines and arcs
 * within the tolerance. A curve that goes on from another without a corner is fitted together with it, so that a circle of four
 * Bézier curves comes out as arcs of one circle.
 *
 * <p>Limits: points within 1000 m of the origin; 100,000 chords for a curve and a million edges for the drawing.
 */
public final class StrokePen {

    private static final int MAX_CHORDS_OF_A_CURVE = 100_000;
    private static final int MAX_EDGES = 1_000_000;

    /** Moves shorter than this draw nothing, in m. */
    private static final double TOUCH_M = 1e-9;

    private static final double FARTHEST_M = 1000;

    private final double samplingM;
    private final SmoothRun run;
    private final List<Stroke> strokes = new ArrayList<>();
    private Origin origin = Origin.NONE;
    private @Nullable ContourBuilder drawing;
    private int edgesOfDrawing;
    private long edges;
    private int chordsOfCurve;
    private double startX;
    private double startY;
    private double x;
    private double y;

    /**
     * Creates a pen.
     *
     * @param toleranceM largest distance of a curve from what replaces it, in m, above 0
     */
    public StrokePen(double toleranceM) {
        this.samplingM = SmoothRun.SAMPLING * toleranceM;
        this.run = new SmoothRun(toleranceM);
    }

    /**
     * Sets the origin of the strokes that follow.
     *
     * @param next entity of the drawing
     */
    public void origin(Origin next) {
        this.origin = next;
    }

    /** {@return the strokes drawn so far} */
    public List<Stroke> strokes() {
        return List.copyOf(strokes);
    }

    /** {@return the number of strokes drawn so far} */
    public int strokeCount() {
        return strokes.size();
    }

    /**
     * Ends what is being drawn and starts elsewhere.
     *
     * @param toX x of the start in m
     * @param toY y of the start in m
     */
    public void moveTo(double toX, double toY) {
        end();
        startX = toX;
        startY = toY;
        x = toX;
        y = toY;
    }

    /**
     * Draws a line; nothing if it has no length.
     *
     * @param toX x of its end in m
     * @param toY y of its end in m
     */
    public void lineTo(double toX, double toY) {
        requireNear(toX, toY);
        if (isHere(toX, toY)) {
            return;
        }
        flush();
        count(1);
        builder().lineToSi(toX, toY);
        arrive(toX, toY);
    }

    /**
     * Draws a circular arc; nothing if its ends coincide.
     *
     * @param toX x of its end in m
     * @param toY y of its end in m
     * @param centreX x of its centre in m
     * @param centreY y of its centre in m
     * @param isLeft whether it turns to the left
     */
    public void arcTo(double toX, double toY, double centreX, double centreY, boolean isLeft) {
        requireNear(toX, toY);
        if (isHere(toX, toY)) {
            return;
        }
        flush();
        count(1);
        builder().arcToSi(toX, toY, centreX, centreY, isLeft ? Side.LEFT : Side.RIGHT);
        arrive(toX, toY);
    }

    /**
     * Draws an arc of an ellipse: the image of the unit circle between two angles. It stays a circular arc where the map keeps
     * circles round.
     *
     * @param unit map from the unit circle to metres
     * @param from angle of its start, in rad
     * @param sweep signed angle to its end, in rad, within a turn
     * @param toX x of its end in m
     * @param toY y of its end in m
     */
    public void ellipseTo(AffineMap unit, double from, double sweep, double toX, double toY) {
        requireNear(toX, toY);
        if (unit.isSimilarity() && unit.size() <= FARTHEST_M) {
            circularTo(unit, from, sweep, toX, toY);
            return;
        }
        // between two points a step h apart a curve B leaves its chord by at most h^2 max|B''|/8
        double bend = Math.hypot(Math.hypot(unit.a(), unit.b()), Math.hypot(unit.c(), unit.d()));
        int chords = chords(Math.abs(sweep) * Math.sqrt(bend / (8 * samplingM)));
        double sign = Math.signum(sweep);
        beginCurve(direction(unit, from, sign, true), direction(unit, from, sign, false));
        for (int i = 1; i < chords; i++) {
            double t = from + sweep * i / chords;
            sample(unit.x(Math.cos(t), Math.sin(t)), unit.y(Math.cos(t), Math.sin(t)));
        }
        double to = from + sweep;
        endCurve(toX, toY, direction(unit, to, sign, true), direction(unit, to, sign, false));
    }

    private void circularTo(AffineMap unit, double from, double sweep, double toX, double toY) {
        boolean isLeft = sweep > 0 != unit.isMirror();
        if (Math.abs(sweep) > Math.PI) {
            // two halves, so that ends that nearly coincide leave no doubt
            double half = from + sweep / 2;
            arcTo(
                    unit.x(Math.cos(half), Math.sin(half)),
                    unit.y(Math.cos(half), Math.sin(half)),
                    unit.e(),
                    unit.f(),
                    isLeft);
        }
        arcTo(toX, toY, unit.e(), unit.f(), isLeft);
    }

    private static double direction(AffineMap unit, double t, double sign, boolean isX) {
        return sign
                * (isX
                        ? -unit.a() * Math.sin(t) + unit.c() * Math.cos(t)
                        : -unit.b() * Math.sin(t) + unit.d() * Math.cos(t));
    }

    /**
     * Draws a Bézier curve of any degree, whose first control point is where the pen is.
     *
     * @param xM x of the control points in m
     * @param yM y of the control points in m
     * @param weights their weights, above 0
     */
    public void bezierTo(double[] xM, double[] yM, double[] weights) {
        int n = xM.length - 1;
        double[] xw = new double[n + 1];
        double[] yw = new double[n + 1];
        for (int i = 0; i <= n; i++) {
            requireNear(xM[i], yM[i]);
            xw[i] = xM[i] * weights[i];
            yw[i] = yM[i] * weights[i];
        }
        double[] leaves = direction(xM, yM, 0, 1);
        double[] arrives = direction(xM, yM, n, -1);
        beginCurve(leaves[0], leaves[1]);
        chordsOfCurve = 0;
        new RationalCurve(samplingM, this::sample, this::countChords).sample(xw, yw, weights);
        endCurve(xM[n], yM[n], -arrives[0], -arrives[1]);
    }

    /** Direction from an end of the control points to the next that lies elsewhere. */
    private static double[] direction(double[] xM, double[] yM, int end, int step) {
        int at = end + step;
        while (at > 0 && at < xM.length - 1 && Math.hypot(xM[at] - xM[end], yM[at] - yM[end]) <= TOUCH_M) {
            at += step;
        }
        return new double[] {xM[at] - xM[end], yM[at] - yM[end]};
    }

    private void beginCurve(double dx, double dy) {
        if (!run.isSmooth(dx, dy)) {
            flush();
        }
        run.begin(x, y, dx, dy);
    }

    private void sample(double atX, double atY) {
        requireNear(atX, atY);
        if (!isHere(atX, atY)) {
            run.put(atX, atY);
            x = atX;
            y = atY;
        }
    }

    private void endCurve(double toX, double toY, double dx, double dy) {
        sample(toX, toY);
        if (run.isEmpty()) {
            run.clear();
        } else {
            run.end(dx, dy);
        }
    }

    private boolean isHere(double atX, double atY) {
        return Math.hypot(atX - x, atY - y) <= TOUCH_M;
    }

    private void arrive(double toX, double toY) {
        edgesOfDrawing++;
        x = toX;
        y = toY;
    }

    private ContourBuilder builder() {
        ContourBuilder at = drawing;
        if (at == null) {
            requireNear(startX, startY);
            at = Contour.fromSi(startX, startY);
            drawing = at;
            edgesOfDrawing = 0;
        }
        return at;
    }

    private void flush() {
        if (!run.isEmpty()) {
            edgesOfDrawing += run.drawOnto(builder());
        }
        run.clear();
    }

    /** Counts edges before they are drawn. */
    private void count(int more) {
        edges += more;
        if (edges > MAX_EDGES) {
            throw new TextException(
                    Message.of("too-many-edges", "the drawing has more than {limit} edges at this tolerance")
                            .with("limit", MAX_EDGES));
        }
    }

    private int chords(double needed) {
        double chords = Math.max(1, Math.ceil(needed));
        if (!(chords <= MAX_CHORDS_OF_A_CURVE)) {
            throw tooManyChords();
        }
        count((int) chords);
        return (int) chords;
    }

    private void countChords(int more) {
        chordsOfCurve += more;
        if (chordsOfCurve > MAX_CHORDS_OF_A_CURVE) {
            throw tooManyChords();
        }
        count(more);
    }

    private static TextException tooManyChords() {
        return new TextException(
                Message.of("too-many-chords", "a curve needs more than {limit} chords at this tolerance")
                        .with("limit", MAX_CHORDS_OF_A_CURVE));
    }

    private static void requireNear(double atX, double atY) {
        if (!(Math.hypot(atX, atY) <= FARTHEST_M)) {
            throw new TextException(
                    Message.of("drawing-too-large", "a point lies more than {limit} m from the origin of the drawing")
                            .with("limit", (long) FARTHEST_M));
        }
    }

    /** Closes what is being drawn by a line, and goes back to its start. */
    public void close() {
        boolean isLoop = drawing == null && run.isLoop(TOUCH_M);
        if (isLoop) {
            strokes.add(new Stroke(run.loop(), origin));
        } else {
            flush();
            ContourBuilder builder = drawing;
            if (builder != null && edgesOfDrawing > 0) {
                strokes.add(new Stroke(isDegenerate() ? builder.open() : builder.close(), origin));
            }
        }
        drawing = null;
        edgesOfDrawing = 0;
        x = startX;
        y = startY;
    }

    /** A single line, out and back, encloses nothing. */
    private boolean isDegenerate() {
        return edgesOfDrawing == 1 && Math.hypot(x - startX, y - startY) > TOUCH_M;
    }

    /** Ends what is being drawn: closed where it ends at its start, else open. */
    public void end() {
        if (Math.hypot(x - startX, y - startY) <= TOUCH_M) {
            close();
            return;
        }
        flush();
        ContourBuilder builder = drawing;
        if (builder != null && edgesOfDrawing > 0) {
            strokes.add(new Stroke(builder.open(), origin));
        }
        drawing = null;
        edgesOfDrawing = 0;
    }
}

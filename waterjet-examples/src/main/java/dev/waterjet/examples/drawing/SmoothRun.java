package dev.waterjet.examples.drawing;

import dev.waterjet.measure.Kind;
import dev.waterjet.part.Contour;
import dev.waterjet.part.ContourBuilder;
import dev.waterjet.part.ContourConditioner;
import dev.waterjet.part.EdgeCursor;
import java.util.Arrays;

/**
 * Samples of curves that follow one another without a corner. Samples are dense: the chord between two leaves its curve by no
 * more than an eighth of the tolerance. The lines and arcs that replace them keep every sample within half the tolerance, so
 * that no point of the curve is farther from them than the tolerance (measured in the tests by sampling the curves).
 */
final class SmoothRun {

    /** Share of the tolerance by which a chord between samples may leave its curve. */
    static final double SAMPLING = 0.125;

    private static final double FITTING = 0.5;

    /** Range of tolerances that the conditioner takes, in m. */
    private static final double LEAST_M = 1e-8;

    private static final double GREATEST_M = 1e-2;

    /** Cosine of 1 degree: a greater turn between two curves is a corner. */
    private static final double SMOOTH = 0.99985;

    private final ContourConditioner conditioner;
    private double[] x = new double[64];
    private double[] y = new double[64];
    private int size;
    private double startDirectionX;
    private double startDirectionY;
    private double directionX;
    private double directionY;

    SmoothRun(double toleranceM) {
        double fit = Math.min(GREATEST_M, Math.max(LEAST_M, FITTING * toleranceM));
        this.conditioner =
                ContourConditioner.defaults().withTolerance(Kind.LENGTH.of(fit)).withFlattening(Kind.LENGTH.of(0));
    }

    boolean isEmpty() {
        return size < 2;
    }

    /** Whether a curve that starts in a direction goes on without a corner. */
    boolean isSmooth(double dx, double dy) {
        return isEmpty() || isAlong(directionX, directionY, dx, dy);
    }

    private static boolean isAlong(double ax, double ay, double bx, double by) {
        return ax * bx + ay * by >= SMOOTH * Math.hypot(ax, ay) * Math.hypot(bx, by);
    }

    /** Starts at a point, or goes on from it; {@code dx, dy} is the direction in which the next curve leaves. */
    void begin(double atX, double atY, double dx, double dy) {
        if (size == 0) {
            put(atX, atY);
            startDirectionX = dx;
            startDirectionY = dy;
        }
    }

    void put(double atX, double atY) {
        if (size == x.length) {
            x = Arrays.copyOf(x, 2 * size);
            y = Arrays.copyOf(y, 2 * size);
        }
        x[size] = atX;
        y[size++] = atY;
    }

    void end(double dx, double dy) {
        directionX = dx;
        directionY = dy;
    }

    void clear() {
        size = 0;
    }

    /** Whether the run comes back to its start without a corner there. */
    boolean isLoop(double touchM) {
        return size > 3
                && Math.hypot(x[size - 1] - x[0], y[size - 1] - y[0]) <= touchM
                && isAlong(directionX, directionY, startDirectionX, startDirectionY);
    }

    /** The whole run as a closed contour. */
    Contour loop() {
        Contour contour = conditioner.condition(chords().close()).contour();
        clear();
        return contour;
    }

    /** Draws the run at the end of a contour, which is where the run starts. */
    int drawOnto(ContourBuilder builder) {
        Contour fitted = conditioner.condition(chords().open()).contour();
        EdgeCursor edge = new EdgeCursor();
        for (int i = 0; i < fitted.size(); i++) {
            fitted.load(i, edge);
            builder.edgeTo(edge);
        }
        clear();
        return fitted.size();
    }

    private ContourBuilder chords() {
        ContourBuilder builder = Contour.fromSi(x[0], y[0]).asCurve(true);
        for (int i = 1; i < size; i++) {
            builder.lineToSi(x[i], y[i]);
        }
        return builder;
    }
}

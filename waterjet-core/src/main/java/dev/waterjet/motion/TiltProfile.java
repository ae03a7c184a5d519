package dev.waterjet.motion;

import dev.waterjet.evidence.Caution;
import dev.waterjet.kerf.HeadTilt;
import dev.waterjet.measure.AngularAcceleration;
import dev.waterjet.measure.AngularSpeed;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Experimental;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import dev.waterjet.part.Contour;
import dev.waterjet.part.EdgeCursor;
import dev.waterjet.part.Side;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import javax.measure.Quantity;
import javax.measure.quantity.Angle;
import javax.measure.quantity.Length;
import javax.measure.quantity.Time;

/**
 * Tilt of the head along a planned path, within the limits of the head: side tilt and lead angle as functions of the place.
 *
 * <pre>{@code
 * TiltProfile tilt = plan.tilt().orElseThrow();
 * HeadTilt direction = tilt.at(millimetres(12));       // in the frame of the machine
 * tilt.sideTilt(millimetres(12));                      // towards the part
 * tilt.lead(millimetres(12));                          // along the path
 * }</pre>
 *
 * <p>On long edges the side tilt brings the wall of the part upright between entry and exit, and the lead leaves the
 * smallest lag over the depth. At a corner both turn with the path over the time {@link #blendTime}, half of it before the
 * corner: the length follows from the feed rate there. Between the places of {@link #places} the tilt is linear in the
 * distance within a tolerance. Immutable.
 *
 * <p>A leaning head can collide with the workpiece, its clamps and the catcher, and a control that keeps the tip of the nozzle
 * rather than the entry of the jet moves it elsewhere: see the manual of the machine, and try a program in air with the pump
 * off.
 */
@Experimental
public final class TiltProfile implements Described {

    /** Most points between two changes of the law at which its course is compared with a straight line. */
    private static final int MAX_CHECKS = 64;
    /** Most points that one straight line replaces. */
    private static final int MAX_SPAN = 256;

    private final Contour path;
    private final MotionCurve motion;
    private final int sign;
    private final double blendS;
    private final double[] timeS;
    private final double[] x;
    private final double[] y;
    private final double[] rateX;
    private final double[] rateY;

    private TiltProfile(Contour path, MotionCurve motion, Side part, double blendS, double[][] nodes) {
        this.path = path;
        this.motion = motion;
        this.sign = part.sign();
        this.blendS = blendS;
        this.timeS = nodes[0];
        this.x = nodes[1];
        this.y = nodes[2];
        this.rateX = nodes[3];
        this.rateY = nodes[4];
    }

    /** Tilt along a path with its motion. */
    static TiltProfile of(Contour path, MotionCurve motion, Side part, TiltLaw law, EdgePolicy[] policies) {
        WantedTilt wanted = new TiltPath(path, motion, law, part, policies).wanted();
        TiltBlend blend = new TiltBlend(law.head(), wanted);
        double[][] nodes = wanted.largest() > 0 ? blend.nodes() : new double[][] {{0}, {0}, {0}, {0}, {0}};
        return new TiltProfile(path, motion, part, blend.timeS(), nodes);
    }

    /** {@return the time in which the tilt turns at a corner} */
    public Quantity<Time> blendTime() {
        return Kind.TIME.of(blendS);
    }

    /**
     * Returns the tilt at a distance along the path.
     *
     * @param distance distance from the start, from 0 to the length of the path
     * @return the direction of the head
     */
    public HeadTilt at(Quantity<Length> distance) {
        double seconds = motion.timeAt(Kind.LENGTH.si(distance));
        return HeadTilt.ofSi(value(x, rateX, seconds), value(y, rateY, seconds));
    }

    /**
     * Returns the tilt at a time.
     *
     * @param time time since the start of the path, from 0 to the time of the plan
     * @return the direction of the head
     */
    public HeadTilt atTime(Quantity<Time> time) {
        double seconds =
                Require.between("time along the path", Kind.TIME.si(time), 0, motion.timeS(), Units.SECOND, "");
        return HeadTilt.ofSi(value(x, rateX, seconds), value(y, rateY, seconds));
    }

    /**
     * Returns the displacement of the jet in x over depth, on SI numbers.
     *
     * @param distanceM distance from the start in m, from 0 to the length of the path
     * @return x of the displacement per depth
     */
    public double displacementXSi(double distanceM) {
        return value(x, rateX, motion.timeAt(distanceM));
    }

    /**
     * Returns the displacement of the jet in y over depth, on SI numbers.
     *
     * @param distanceM distance from the start in m, from 0 to the length of the path
     * @return y of the displacement per depth
     */
    public double displacementYSi(double distanceM) {
        return value(y, rateY, motion.timeAt(distanceM));
    }

    /** Cubic between two nodes, with given values and rates at both. */
    private double value(double[] values, double[] rates, double atS) {
        int found = Arrays.binarySearch(timeS, atS);
        int i = found >= 0 ? found : -found - 2;
        if (i < 0 || i >= timeS.length - 1) {
            return values[i < 0 ? 0 : timeS.length - 1];
        }
        double step = timeS[i + 1] - timeS[i];
        double t = (atS - timeS[i]) / step;
        double rise = values[i + 1] - values[i];
        double first = rates[i] * step - rise;
        double last = rise - rates[i + 1] * step;
        return values[i] + t * rise + t * (1 - t) * ((1 - t) * first + t * last);
    }

    /**
     * Returns the side tilt at a distance along the path.
     *
     * @param distance distance from the start, from 0 to the length of the path
     * @return tilt of the jet across the path; above 0 where its exit lies towards the part
     */
    public Quantity<Angle> sideTilt(Quantity<Length> distance) {
        double[] direction = direction(Kind.LENGTH.si(distance));
        HeadTilt tilt = at(distance);
        double across = tilt.displacementY() * direction[0] - tilt.displacementX() * direction[1];
        return Kind.ANGLE.of(Math.atan(across * sign));
    }

    /**
     * Returns the lead angle at a distance along the path.
     *
     * @param distance distance from the start, from 0 to the length of the path
     * @return tilt of the jet along the path; above 0 where its exit runs ahead
     */
    public Quantity<Angle> lead(Quantity<Length> distance) {
        double[] direction = direction(Kind.LENGTH.si(distance));
        HeadTilt tilt = at(distance);
        return Kind.ANGLE.of(Math.atan(tilt.displacementX() * direction[0] + tilt.displacementY() * direction[1]));
    }

    /** Direction of the path; at a corner that of the edge behind it. */
    private double[] direction(double atM) {
        EdgeCursor cursor = new EdgeCursor();
        double start = 0;
        for (int i = 0; i < path.size(); i++) {
            path.load(i, cursor);
            if (atM < start + cursor.length() || i == path.size() - 1) {
                break;
            }
            start += cursor.length();
        }
        double share = Math.max(0, Math.min(1, (atM - start) / cursor.length()));
        return new double[] {cursor.directionXAt(share), cursor.directionYAt(share)};
    }

    /** {@return the largest angle between the axis of the head and the vertical} */
    public Quantity<Angle> maximumInclination() {
        double most = 0;
        for (int i = 0; i < x.length; i++) {
            most = Math.max(most, Math.hypot(x[i], y[i]));
        }
        return Kind.ANGLE.of(Math.atan(most));
    }

    /** {@return the cautions of a cut with this tilt} */
    public List<Caution> cautions() {
        return HeadTilt.ofSi(Math.tan(Kind.ANGLE.si(maximumInclination())), 0).cautions();
    }

    /** {@return the largest rate of the displacement over depth: the angular speed of the head is no higher} */
    public Quantity<AngularSpeed> peakSpeed() {
        double most = 0;
        for (int i = 0; i < x.length; i++) {
            most = Math.max(most, Math.hypot(rateX[i], rateY[i]));
        }
        return Kind.ANGULAR_SPEED.of(most);
    }

    /** {@return the largest rate of change of the rate of the displacement over depth} */
    public Quantity<AngularAcceleration> peakAcceleration() {
        double most = 0;
        for (int i = 0; i + 1 < x.length; i++) {
            most = Math.max(most, bend(i));
        }
        return Kind.ANGULAR_ACCELERATION.of(most);
    }

    /** Largest size of the second derivative within an interval, where it is linear. */
    private double bend(int i) {
        double step = timeS[i + 1] - timeS[i];
        double first = Math.hypot(bend(x, rateX, i, step, false), bend(y, rateY, i, step, false));
        double last = Math.hypot(bend(x, rateX, i, step, true), bend(y, rateY, i, step, true));
        return Math.max(first, last);
    }

    /** Second derivative at one end of an interval. */
    private static double bend(double[] values, double[] rates, int i, double step, boolean isEnd) {
        double rise = 6 * (values[i + 1] - values[i]) / step;
        double slopes = isEnd ? 2 * rates[i] + 4 * rates[i + 1] : 4 * rates[i] + 2 * rates[i + 1];
        return isEnd ? (slopes - rise) / step : (rise - slopes) / step;
    }

    /**
     * Returns distances along the path between which the tilt is linear in the distance, as a control interpolates it.
     *
     * @param tolerance largest deviation from the straight line, above 0
     * @return distances from 0 to the length of the path, ascending
     */
    public QuantityArray<Length> places(Quantity<Angle> tolerance) {
        double within = Require.positive("tolerance of the tilt", Kind.ANGLE.si(tolerance), Units.DEGREE);
        double[] all = finePlaces(within);
        double[] tiltX = new double[all.length];
        double[] tiltY = new double[all.length];
        for (int i = 0; i < all.length; i++) {
            tiltX[i] = displacementXSi(all[i]);
            tiltY[i] = displacementYSi(all[i]);
        }
        double[][] rows = {all, tiltX, tiltY};
        double[] kept = new double[all.length];
        int n = 1;
        int from = 0;
        for (int to = 2; to < all.length; to++) {
            if (to - from > MAX_SPAN || !isStraight(rows, from, to, within)) {
                from = to - 1;
                kept[n++] = all[from];
            }
        }
        kept[n++] = all[all.length - 1];
        return QuantityArray.ofSi(Kind.LENGTH, Arrays.copyOf(kept, n));
    }

    /** Whether rows of places and displacements are linear between two of them. */
    private static boolean isStraight(double[][] rows, int from, int to, double within) {
        double[] all = rows[0];
        double length = all[to] - all[from];
        double slopeX = (rows[1][to] - rows[1][from]) / length;
        double slopeY = (rows[2][to] - rows[2][from]) / length;
        for (int k = from + 1; k < to; k++) {
            double along = all[k] - all[from];
            double offX = rows[1][k] - rows[1][from] - along * slopeX;
            double offY = rows[2][k] - rows[2][from] - along * slopeY;
            if (offX * offX + offY * offY > within * within) {
                return false;
            }
        }
        return true;
    }

    /** Places of the changes of the law, and so many in between that chords deviate by a part of the tolerance. */
    private double[] finePlaces(double within) {
        double last = motion.lengthM();
        double[] all = new double[2 * timeS.length + 2];
        int n = 1;
        int interval = 0;
        for (int i = 0; i + 1 < timeS.length; i++) {
            double step = timeS[i + 1] - timeS[i];
            int checks = (int) Math.max(2, Math.min(MAX_CHECKS, Math.ceil(step * Math.sqrt(bend(i) / (2 * within)))));
            for (int k = 1; k <= checks; k++) {
                double at = timeS[i] + step * k / checks;
                while (interval < motion.intervals() - 1 && motion.timeS(interval + 1) < at) {
                    interval++;
                }
                double place = motion.placeIn(interval, at);
                if (place > all[n - 1] && place < last) {
                    all = n + 1 < all.length ? all : Arrays.copyOf(all, 2 * n + 2);
                    all[n++] = place;
                }
            }
        }
        all[n++] = last;
        return Arrays.copyOf(all, n);
    }

    @Override
    public Map<String, Object> describe() {
        return Description.of("tilt profile")
                .put("length", Kind.LENGTH, motion.lengthM())
                .put("blend_time", Kind.TIME, blendS)
                .put("maximum_inclination", Kind.ANGLE, Kind.ANGLE.si(maximumInclination()))
                .put("peak_speed", Kind.ANGULAR_SPEED, Kind.ANGULAR_SPEED.si(peakSpeed()))
                .put("peak_acceleration", Kind.ANGULAR_ACCELERATION, Kind.ANGULAR_ACCELERATION.si(peakAcceleration()))
                .map();
    }

    @Override
    public String toString() {
        return "tilt up to " + QuantityText.forPeople(Kind.ANGLE, maximumInclination()) + ", blended in "
                + QuantityText.forPeople(Kind.TIME, blendS);
    }
}

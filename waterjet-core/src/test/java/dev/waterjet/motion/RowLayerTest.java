package dev.waterjet.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Rows against the acceleration of each axis of a smooth motion, differentiated over time by differences. */
class RowLayerTest {

    private static final double FREE = Double.POSITIVE_INFINITY;
    private static final double RADIUS = 0.4;

    private static DynamicLimits limits(AxisLimits x, AxisLimits y, PathLimits path) {
        return new DynamicLimits(x, y, path, CornerRule.arc(1e-4));
    }

    private static PathLimits path(double acceleration, double jerk) {
        return new PathLimits(acceleration, FREE, jerk, FREE);
    }

    private static AxisLimits axis(double acceleration, double jerk) {
        return new AxisLimits(FREE, acceleration, jerk);
    }

    private static Stretches stretches(PathPieces pieces, DynamicLimits limits) {
        return new Stretches(pieces, FeedCaps.same(5, 0), limits);
    }

    /** Nodes a given distance apart, from the start of the path on. */
    private static GridNodes nodes(Stretches stretches, double fromM, double step, int count) {
        GridNodes nodes = new GridNodes(count);
        for (int i = 0; i < count; i++) {
            double at = fromM + step * i;
            int stretch = 0;
            while (stretch + 1 < stretches.count() && stretches.startM(stretch + 1) <= at + 1e-13) {
                stretch++;
            }
            nodes.add(at, 1, stretch);
        }
        return nodes;
    }

    /** Feed of a smooth motion, small enough for values below 0.8 of a limit. */
    private static double feed(double at) {
        return 1 + 0.3 * Math.sin(2 * at) + 0.2 * at;
    }

    private static double difference(DoubleUnaryOperator value, double at) {
        double h = 1e-3;
        return (8 * (value.applyAsDouble(at + h) - value.applyAsDouble(at - h))
                        - value.applyAsDouble(at + 2 * h)
                        + value.applyAsDouble(at - 2 * h))
                / (12 * h);
    }

    /** Acceleration of an axis: the change of its speed over time. */
    private static double acceleration(DoubleUnaryOperator direction, double at) {
        return feed(at) * difference(s -> feed(s) * direction.applyAsDouble(s), at);
    }

    private static double[] squares(GridNodes nodes) {
        double[] x = new double[nodes.count];
        for (int i = 0; i < x.length; i++) {
            x[i] = feed(nodes.placeM[i]) * feed(nodes.placeM[i]);
        }
        return x;
    }

    private static double value(AccelerationRows rows, int row) {
        return 1 - 1 / rows.slacks().multiplier(row);
    }

    private static AccelerationRows accelerations(Stretches stretches, GridNodes nodes, int first, int last) {
        AccelerationRows rows = new AccelerationRows(1);
        rows.add(0, 1, 1, (byte) 0);
        new RowLayer(stretches, nodes).layAccelerations(rows, first, last);
        rows.start(squares(nodes));
        rows.slacks().startMultipliers(1);
        return rows;
    }

    private record Jerks(JerkRows rows, TravelTime time) {
        double value(int row) {
            return JerkRows.bound(rows.node(row), time) - 1 / rows.slacks().multiplier(row);
        }
    }

    private static Jerks jerks(Stretches stretches, GridNodes nodes, int first, int last) {
        JerkRows rows = new JerkRows(1);
        rows.add(1, 1, 1, 1, (byte) 0);
        new RowLayer(stretches, nodes).layJerks(rows, first, last);
        TravelTime time = new TravelTime(nodes.count);
        double[] length = new double[nodes.count];
        for (int k = 0; k + 1 < nodes.count; k++) {
            length[k] = nodes.placeM[k + 1] - nodes.placeM[k];
        }
        time.evaluate(squares(nodes), length, nodes.count - 1);
        rows.start(squares(nodes), time);
        rows.slacks().startMultipliers(1);
        return new Jerks(rows, time);
    }

    @ParameterizedTest
    @CsvSource({"1, 0.3", "-1, 0.3", "1, 2", "-1, 4"})
    void onAnArcEachAxisHasItsAccelerationAndJerk(double turn, double heading) {
        AxisLimits x = axis(40, 900);
        AxisLimits y = axis(50, 1100);
        PathPieces pieces = new PathPieces(1).arc(Math.cos(heading), Math.sin(heading), RADIUS, turn * 3);
        Stretches stretches = stretches(pieces, limits(x, y, path(60, 1300)));
        double step = 4e-4;
        GridNodes nodes = nodes(stretches, 0, step, 2500);
        DoubleUnaryOperator tx = s -> Math.cos(heading + turn * s / RADIUS);
        DoubleUnaryOperator ty = s -> Math.sin(heading + turn * s / RADIUS);

        AccelerationRows rows = accelerations(stretches, nodes, 0, nodes.count - 2);
        int row = 0;
        for (int k = 0; k < nodes.count - 1; k++) {
            double middle = step * (k + 0.5);
            // where a quadrant ends within the interval, the weakest limit counts twice, and so do the axes
            for (int part = 0; part < (isCut(stretches, nodes, k) ? 2 : 1); part++) {
                assertThat(rows.why(row)).isEqualTo(GoverningLimit.X_ACCELERATION.code());
                assertThat(value(rows, row++) * 40).isCloseTo(acceleration(tx, middle), within(5e-3));
                assertThat(rows.why(row)).isEqualTo(GoverningLimit.Y_ACCELERATION.code());
                assertThat(value(rows, row++) * 50).isCloseTo(acceleration(ty, middle), within(5e-3));
            }
            assertThat(rows.why(row)).isEqualTo(GoverningLimit.PATH_ACCELERATION.code());
            assertThat(rows.interval(row)).isEqualTo(k);
            assertThat(value(rows, row++) * 60).isCloseTo(difference(s -> feed(s) * feed(s) / 2, middle), within(1e-3));
        }
        assertThat(rows.rows()).isEqualTo(row);
        requireJerks(
                jerks(stretches, nodes, 1, nodes.count - 2), nodes, List.of(tx, ty), new double[] {900, 1100}, 1300);
    }

    private static boolean isCut(Stretches stretches, GridNodes nodes, int k) {
        for (int i = 1; i < stretches.count(); i++) {
            if (stretches.startM(i) > nodes.placeM[k] && stretches.startM(i) < nodes.placeM[k + 1]) {
                return true;
            }
        }
        return false;
    }

    private static void requireJerks(
            Jerks jerks, GridNodes nodes, List<DoubleUnaryOperator> axes, double[] limits, double pathLimit) {
        GoverningLimit[] why = {GoverningLimit.X_JERK, GoverningLimit.Y_JERK};
        assertThat(jerks.rows().rows()).isEqualTo(3 * (nodes.count - 2));
        for (int i = 1; i < nodes.count - 1; i++) {
            double before = (nodes.placeM[i - 1] + nodes.placeM[i]) / 2;
            double behind = (nodes.placeM[i + 1] + nodes.placeM[i]) / 2;
            for (int axis = 0; axis < 2; axis++) {
                int row = 3 * (i - 1) + axis;
                DoubleUnaryOperator direction = axes.get(axis);
                double change = acceleration(direction, behind) - acceleration(direction, before);
                assertThat(jerks.rows().why(row)).isEqualTo(why[axis].code());
                assertThat(jerks.value(row) * limits[axis]).isCloseTo(change, within(2e-5));
            }
            int row = 3 * (i - 1) + 2;
            DoubleUnaryOperator half = s -> feed(s) * feed(s) / 2;
            assertThat(jerks.rows().why(row)).isEqualTo(GoverningLimit.PATH_JERK.code());
            assertThat(jerks.value(row) * pathLimit)
                    .isCloseTo(difference(half, behind) - difference(half, before), within(2e-5));
        }
    }

    @Test
    void atTheEndOfATangentArcEachHalfHasItsOwnCurvature() {
        AxisLimits x = axis(40, 900);
        PathPieces pieces =
                new PathPieces(2).line(0.3, 0.4).arc(0.6, 0.8, RADIUS, 1).line(1, 1);
        Stretches stretches = stretches(pieces, limits(x, axis(FREE, FREE), path(60, FREE)));
        double step = 1e-3;
        GridNodes nodes = nodes(stretches, 0.5 - 10 * step, step, 21);
        Jerks jerks = jerks(stretches, nodes, 1, 19);

        // across the joint the curvature jumps by 1/R: the row counts 3 k a h N behind it, and -k^2 v^2 h T
        assertThat(jerks.rows().rows()).isEqualTo(19);
        double at = nodes.placeM[10];
        double v2 = feed(at) * feed(at);
        double along = difference(s -> feed(s) * feed(s) / 2, at);
        double half = step / 2;
        double k = 1 / RADIUS;
        double slope = difference(s -> difference(t -> feed(t) * feed(t) / 2, s), at);
        double expected = 0.6 * (slope * step - k * k * v2 * half) - 0.8 * 3 * k * along * half;
        assertThat(jerks.value(9) * 900).isCloseTo(expected, within(2e-4));
        assertThat(jerks.rows().why(9)).isEqualTo(GoverningLimit.X_JERK.code());
    }

    @ParameterizedTest
    @CsvSource({
        "30, 30, 10, PATH",
        "30, 7.9, 10, Y",
        "5.9, 30, 10, X",
        "5.9, 7.95, 10, X",
        "5, 3.5, 10, Y",
        "1000, 1000, 10, PATH"
    })
    void onALineTheWeakestLimitGivesOneRow(double ofX, double ofY, double ofPath, String name) {
        PathPieces pieces = new PathPieces(1).line(3, 4);
        double limit = Math.min(ofPath, Math.min(ofX / 0.6, ofY / 0.8));
        GoverningLimit acceleration = GoverningLimit.valueOf(name + "_ACCELERATION");
        GoverningLimit jerk = GoverningLimit.valueOf(name + "_JERK");
        Stretches stretches =
                stretches(pieces, limits(axis(ofX, 100 * ofX), axis(ofY, 100 * ofY), path(ofPath, 100 * ofPath)));
        GridNodes nodes = nodes(stretches, 0.1, 1e-3, 400);
        AccelerationRows rows = accelerations(stretches, nodes, 3, 300);
        Jerks jerks = jerks(stretches, nodes, 4, 200);

        assertThat(rows.rows()).isEqualTo(298);
        assertThat(jerks.rows().rows()).isEqualTo(197);
        DoubleUnaryOperator along = s -> difference(t -> feed(t) * feed(t) / 2, s);
        for (int k = 3; k <= 300; k++) {
            assertThat(rows.interval(k - 3)).isEqualTo(k);
            assertThat(rows.why(k - 3)).isEqualTo(acceleration.code());
            double middle = (nodes.placeM[k] + nodes.placeM[k + 1]) / 2;
            assertThat(value(rows, k - 3) * limit).isCloseTo(along.applyAsDouble(middle), within(1e-5));
        }
        for (int i = 4; i <= 200; i++) {
            assertThat(jerks.rows().why(i - 4)).isEqualTo(jerk.code());
            double change = along.applyAsDouble(nodes.placeM[i] + 5e-4) - along.applyAsDouble(nodes.placeM[i] - 5e-4);
            assertThat(jerks.value(i - 4) * 100 * limit).isCloseTo(change, within(1e-6));
        }
    }

    @Test
    void limitsThatAreNotThereGiveNoRows() {
        PathPieces arc = new PathPieces(1).arc(1, 0, RADIUS, 1);
        Stretches byX = stretches(arc, limits(axis(40, 900), axis(FREE, FREE), path(60, FREE)));
        Stretches byY = stretches(arc, limits(axis(FREE, FREE), axis(40, 900), path(60, FREE)));
        PathPieces line = new PathPieces(1).line(1, 0);
        Stretches straight = stretches(line, limits(axis(FREE, FREE), axis(40, 900), path(60, FREE)));

        assertThat(jerks(byX, nodes(byX, 0, 1e-3, 50), 1, 48).rows().rows()).isEqualTo(48);
        assertThat(jerks(byY, nodes(byY, 0, 1e-3, 50), 1, 48).rows().why(0)).isEqualTo(GoverningLimit.Y_JERK.code());
        assertThat(accelerations(byX, nodes(byX, 0, 1e-3, 50), 0, 48).rows()).isEqualTo(98);
        Stretches byAxes = stretches(arc, limits(axis(40, FREE), axis(40, FREE), path(FREE, FREE)));
        assertThat(accelerations(byAxes, nodes(byAxes, 0, 1e-3, 50), 0, 48).rows())
                .isEqualTo(98);
        assertThat(jerks(byAxes, nodes(byAxes, 0, 1e-3, 50), 1, 48).rows().rows())
                .isZero();
        assertThat(accelerations(byY, nodes(byY, 0, 1e-3, 50), 0, 48).why(0))
                .isEqualTo(GoverningLimit.Y_ACCELERATION.code());
        assertThat(jerks(straight, nodes(straight, 0, 1e-3, 50), 1, 48).rows().rows())
                .isZero();
    }

    /** An interval over two lines and a small arc between them keeps the weakest limit of all three. */
    @ParameterizedTest
    @ValueSource(doubles = {1, -1})
    void anIntervalOverSeveralStretchesKeepsTheWeakestLimit(double turn) {
        double length = RADIUS * 1e-3 * Math.PI / 4;
        PathPieces pieces = new PathPieces(3)
                .line(1e-3, 0)
                .arc(1, 0, RADIUS * 1e-3, turn * Math.PI / 4)
                .line(1e-3, turn * 1e-3);
        Stretches stretches = stretches(pieces, limits(axis(4, 90), axis(5, 110), path(6, 130)));
        GridNodes nodes = new GridNodes(4);
        nodes.add(0, 1, 0);
        nodes.add(5e-4, 1, 0);
        nodes.add(1e-3 + length + 5e-4, 1, stretches.count() - 1);
        nodes.add(1e-3 + length + 1e-3, 1, stretches.count() - 1);
        RowLayer layer = new RowLayer(stretches, nodes);

        // along x: 90; along the second line 90 sqrt 2 by x, 110 sqrt 2 by y; on the arc in between
        assertThat(layer.tangentialJerk(0)).isCloseTo(90, within(1e-9));
        assertThat(layer.tangentialJerkWhy()).isEqualTo(GoverningLimit.X_JERK.code());
        assertThat(layer.tangentialJerk(1)).isCloseTo(90, within(1e-9));
        assertThat(layer.tangentialJerk(2)).isCloseTo(90 * Math.sqrt(2), within(1e-9));
        AccelerationRows rows = new AccelerationRows(1);
        layer.layAccelerations(rows, 1, 1);
        assertThat(rows.rows()).isEqualTo(3);
        assertThat(rows.why(0)).isEqualTo(GoverningLimit.X_ACCELERATION.code());
        assertThat(rows.why(1)).isEqualTo(GoverningLimit.Y_ACCELERATION.code());
        assertThat(rows.why(2)).isEqualTo(GoverningLimit.X_ACCELERATION.code());
        double middle = turn * Math.PI / 8;
        double h = length + 1e-3;
        double[] x = {0.001, 0.001, 0.002, 0.001};
        rows.start(x);
        rows.slacks().startMultipliers(1);
        double along = 0.001 / (2 * h);
        double k = turn / (RADIUS * 1e-3);
        assertThat(value(rows, 0) * 4)
                .isCloseTo(Math.cos(middle) * along - k * 0.0015 * Math.sin(middle), within(1e-9));
        assertThat(value(rows, 1) * 5)
                .isCloseTo(Math.sin(middle) * along + k * 0.0015 * Math.cos(middle), within(1e-9));
        assertThat(value(rows, 2) * 4).isCloseTo(along, within(1e-9));
    }

    @Test
    void theRampFromRestKeepsJerkAndAcceleration() {
        Stretches stretches = stretches(
                new PathPieces(2).line(0.3, 0.4).arc(0.6, 0.8, RADIUS, 1),
                limits(axis(3, 60), axis(FREE, FREE), path(100, FREE)));
        GridNodes nodes = nodes(stretches, 0, 0.1, 8);
        RowLayer layer = new RowLayer(stretches, nodes);

        // constant jerk: v = (9/2 j s^2)^(1/3); constant acceleration: v^2 = 2 a s; over the component 0.6
        for (double s : new double[] {1e-6, 1e-4, 1e-2, 0.1}) {
            assertThat(layer.rampSquare(2, s))
                    .isCloseTo(Math.min(Math.pow(4.5 * 100 * s * s, 2.0 / 3), 2 * 5 * s), within(1e-12));
        }
        double component = Math.abs(Math.cos(Math.atan2(0.8, 0.6) + 0.1 / RADIUS));
        assertThat(layer.rampSquare(6, 1)).isCloseTo(2 * 3 / component, within(1e-9));
        assertThat(layer.rampSquare(6, 1e-6)).isCloseTo(Math.pow(4.5 * 60 / component * 1e-12, 2.0 / 3), within(1e-12));
    }

    @Test
    void atACornerTheWeakerSideRulesTheJerk() {
        PathPieces pieces = new PathPieces(2).line(0.1, 0).arc(0.6, 0.8, RADIUS, 0.3);
        Stretches stretches = stretches(pieces, limits(axis(4, 90), axis(5, 50), path(6, 130)));
        GridNodes nodes = nodes(stretches, 0.05, 0.01, 11);
        JerkRows rows = new JerkRows(1);
        new RowLayer(stretches, nodes).layJerks(rows, 4, 6);

        // before the corner only the path along x, at it one row of the weaker side, behind it rows of both axes and
        // the path
        assertThat(rows.rows()).isEqualTo(1 + 1 + 3);
        assertThat(rows.why(0)).isEqualTo(GoverningLimit.X_JERK.code());
        assertThat(rows.node(1)).isEqualTo(5);
        assertThat(rows.why(1)).isEqualTo(GoverningLimit.Y_JERK.code());
        assertThat(rows.why(4)).isEqualTo(GoverningLimit.PATH_JERK.code());
    }
}

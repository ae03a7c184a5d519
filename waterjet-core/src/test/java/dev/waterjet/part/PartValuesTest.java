package dev.waterjet.part;

import static dev.waterjet.measure.Measures.degrees;
import static dev.waterjet.measure.Measures.micrometres;
import static dev.waterjet.measure.Measures.millimetres;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import dev.waterjet.ValueContract;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.WaterjetException;
import dev.waterjet.quality.CutQuality;
import dev.waterjet.quality.EdgeRequirement;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class PartValuesTest {

    private static final EdgeRequirement MEDIUM = EdgeRequirement.of(CutQuality.MEDIUM);

    private static Contour rectangle(double width, double height) {
        return Contour.rectangle(Point.millimetres(0, 0), Point.millimetres(width, height), MEDIUM);
    }

    private static Contour arc(Side turn) {
        return Contour.fromSi(0, 0).arcToSi(0.01, 0, 0.005, 0, turn).open();
    }

    @Test
    void points() {
        ValueContract.of(() -> Point.of(millimetres(3), millimetres(-4)))
                .has("x", Point::x, millimetres(3))
                .has("y", Point::y, millimetres(-4))
                .has("distance", point -> point.distance(Point.ofSi(0, 0)), millimetres(5))
                .differs("x", Point.millimetres(3.5, -4))
                .differs("y", Point.millimetres(3, 4))
                .prints("(3 mm, -4 mm)")
                .check();
        assertThat(Point.ofSi(-0.0, 0)).isEqualTo(Point.ofSi(0, -0.0));
    }

    @Test
    void boxes() {
        ValueContract.of(() -> Box.ofSi(0.01, 0.02, 0.04, 0.07))
                .has("minimum", Box::minimum, Point.millimetres(10, 20))
                .has("maximum", Box::maximum, Point.millimetres(40, 70))
                .has("width", Box::width, millimetres(30))
                .has("height", Box::height, millimetres(50))
                .differs("minimum", Box.ofSi(0.01, 0.01, 0.04, 0.07))
                .differs("maximum", Box.ofSi(0.01, 0.02, 0.04, 0.06))
                .prints("(10 mm, 20 mm) to (40 mm, 70 mm)")
                .check();
        assertThat(Box.ofSi(1, 2, 4, 8).centre()).isEqualTo(Point.ofSi(2.5, 5));
        Box box = Box.ofSi(0, 0, 4, 3);
        assertThat(box.isAround(box)).isTrue();
        assertThat(box.isAround(Box.ofSi(1, 1, 2, 2))).isTrue();
        assertThat(box.isAround(Box.ofSi(-1, 1, 2, 2))).isFalse();
        assertThat(box.isAround(Box.ofSi(1, -1, 2, 2))).isFalse();
        assertThat(box.isAround(Box.ofSi(1, 1, 5, 2))).isFalse();
        assertThat(box.isAround(Box.ofSi(1, 1, 2, 4))).isFalse();
        assertThatExceptionOfType(WaterjetException.class)
                .isThrownBy(() -> new Box(Point.ofSi(1, 0), Point.ofSi(0, 1)))
                .satisfies(e -> assertThat(e.code()).isEqualTo("must-be-at-most"));
    }

    @Test
    void boxesLieApartAlongAnAxisOrAcross() {
        Box box = Box.ofSi(0, 0, 2, 1);

        assertThat(Kind.LENGTH.si(box.distance(Box.ofSi(5, 5, 6, 6)))).isEqualTo(5);
        assertThat(Kind.LENGTH.si(Box.ofSi(5, 5, 6, 6).distance(box))).isEqualTo(5);
        assertThat(Kind.LENGTH.si(box.distance(Box.ofSi(4, 0, 6, 6)))).isEqualTo(2);
        assertThat(Kind.LENGTH.si(box.distance(Box.ofSi(0, 4, 6, 6)))).isEqualTo(3);
        assertThat(Kind.LENGTH.si(box.distance(Box.ofSi(1, 0, 6, 6)))).isZero();
    }

    @Test
    void contours() {
        Point start = Point.millimetres(0, 0);
        ValueContract.of(() -> rectangle(30, 20))
                .has("size", Contour::size, 4)
                .has("closed", Contour::isClosed, true)
                .has("length", Contour::length, millimetres(100))
                .has("start", Contour::start, start)
                .has("end", Contour::end, start)
                .has("requirements", contour -> contour.requirement(2), MEDIUM)
                .change("name", contour -> contour.named("window"), Contour::name, "window")
                .differs("width", rectangle(31, 20))
                .differs("height", rectangle(30, 21))
                .differs("requirement", rectangle(30, 20).withRequirement(MEDIUM.asLead()))
                .differs(
                        "open",
                        Contour.from(start)
                                .lineToSi(0.03, 0)
                                .lineToSi(0.03, 0.02)
                                .lineToSi(0, 0.02)
                                .lineTo(start)
                                .open())
                .differs(
                        "arc",
                        Contour.from(start)
                                .lineToSi(0.03, 0)
                                .arcToSi(0.03, 0.02, 0.03, 0.01, Side.LEFT)
                                .lineToSi(0, 0.02)
                                .close())
                .prints("closed contour of 4 edges from (0 mm, 0 mm)")
                .check();
        assertThat(arc(Side.LEFT))
                .isNotEqualTo(arc(Side.RIGHT))
                .hasToString("open contour of 1 edge from (0 mm, 0 mm)");
        assertThat(rectangle(1, 1).named("lid")).hasToString("closed \"lid\" of 4 edges from (0 mm, 0 mm)");
        Contour plain = Contour.fromSi(0, 0).lineToSi(1, 0).lineToSi(2, 1).open();
        assertThat(Contour.fromSi(0, 0)
                        .asCurve(true)
                        .lineToSi(1, 0)
                        .lineToSi(2, 1)
                        .open())
                .isNotEqualTo(plain);
    }

    @Test
    void edges() {
        Point start = Point.millimetres(0, 0);
        Point end = Point.millimetres(10, 0);
        ValueContract.of(() -> arc(Side.LEFT).edge(0))
                .has("start", Edge::start, start)
                .has("end", Edge::end, end)
                .has("centre", Edge::centre, Optional.of(Point.millimetres(5, 0)))
                .has("radius", Edge::radius, Optional.of(millimetres(5)))
                .has("turn", Edge::turn, Optional.of(Side.LEFT))
                .has("sweep", Edge::sweep, degrees(180))
                .has("length", Edge::length, millimetres(5 * Math.PI))
                .has("requirement", Edge::requirement, EdgeRequirement.defaults())
                .differs("turn", arc(Side.RIGHT).edge(0))
                .differs("line", Contour.from(start).lineTo(end).open().edge(0))
                .differs("start", arc(Side.LEFT).reversed().edge(0))
                .differs(
                        "requirement",
                        arc(Side.LEFT).withRequirement(MEDIUM.asLead()).edge(0))
                .prints("arc (0 mm, 0 mm) to (10 mm, 0 mm)")
                .check();
        Edge line = Contour.from(start).lineTo(end).open().edge(0);
        assertThat(line).hasToString("line (0 mm, 0 mm) to (10 mm, 0 mm)");
        assertThat(line.centre()).isEmpty();
        assertThat(line.radius()).isEmpty();
        assertThat(line.turn()).isEmpty();
        assertThat(Kind.ANGLE.si(line.sweep())).isZero();
        assertThat(Kind.LENGTH.si(line.length())).isEqualTo(0.01);
        assertThat(line.pointAt(millimetres(4))).isEqualTo(Point.millimetres(4, 0));
        assertThat(arc(Side.RIGHT).edge(0).turn()).contains(Side.RIGHT);
        assertThatExceptionOfType(WaterjetException.class)
                .isThrownBy(() -> line.pointAt(millimetres(11)))
                .satisfies(e -> assertThat(e.code()).isEqualTo("must-be-at-most"));
        assertThatExceptionOfType(WaterjetException.class)
                .isThrownBy(() -> arc(Side.LEFT).edge(1))
                .satisfies(e -> assertThat(e.code()).isEqualTo("no-such-index"));
    }

    @Test
    void parts() {
        Contour hole = Contour.circle(Point.millimetres(10, 10), millimetres(2), MEDIUM);
        ValueContract.of(() -> Part.of(rectangle(30, 20), hole))
                .has("outline", Part::outline, rectangle(30, 20))
                .has("holes", Part::holes, List.of(hole))
                .has("contours", Part::contours, List.of(hole, rectangle(30, 20)))
                .differs("outline", Part.of(rectangle(31, 20), hole))
                .differs("holes", Part.of(rectangle(30, 20)))
                .prints("part of 4 edges with 1 holes")
                .check();
    }

    @Test
    void conditioners() {
        ValueContract.of(ContourConditioner::defaults)
                .change(
                        "tolerance",
                        c -> c.withTolerance(micrometres(2)),
                        ContourConditioner::tolerance,
                        micrometres(2))
                .change(
                        "flattening",
                        c -> c.withFlattening(micrometres(50)),
                        ContourConditioner::flattening,
                        micrometres(50))
                .prints("5 µm", "20 µm")
                .check();
    }

    @Test
    void findings() {
        Point place = Point.millimetres(1, 2);
        Message narrow = Message.of("web", "too narrow");
        Message widen = Message.of("widen", "widen it");
        ValueContract.of(() -> Finding.violated(narrow, place, widen))
                .has("code", Finding::code, "web")
                .has("satisfied", Finding::isSatisfied, false)
                .has("message", Finding::message, narrow)
                .has("remedies", Finding::remedies, List.of(widen))
                .has("place", Finding::place, place)
                .differs("code", Finding.violated(Message.of("gap", "too narrow"), place, widen))
                .differs("satisfied", Finding.satisfied(narrow, place))
                .differs("remedies", Finding.violated(narrow, place))
                .differs("place", Finding.violated(narrow, Point.millimetres(1, 3), widen))
                .prints("web not satisfied: too narrow; widen it")
                .check();
        assertThat(new Finding(true, narrow, List.of(widen), place).remedies()).isEmpty();
    }

    @Test
    void aLengthAtItsLimitIsEnough() {
        Message message = Message.of("web", "{value} of {limit}");
        Point place = Point.ofSi(0, 0);

        assertThat(Finding.atLeast(message, 0.002, 0.002, place).isSatisfied()).isTrue();
        Finding missed = Finding.atLeast(message, 0.0019, 0.002, place);
        assertThat(missed.isSatisfied()).isFalse();
        assertThat(missed.message().parameters())
                .containsEntry("value_m", 0.0019)
                .containsEntry("limit_m", 0.002);
    }

    @Test
    void aRefusalHasEdgeAndPlace() {
        GeometryException fault = new GeometryException(3, 0.001, 0.002, Message.of("dead-end", "it ends here"));

        assertThat(fault.edge()).isEqualTo(3);
        assertThat(fault.xSi()).isEqualTo(0.001);
        assertThat(fault.ySi()).isEqualTo(0.002);
        assertThat(fault.code()).isEqualTo("dead-end");
        assertThat(fault).hasMessage("edge 3 at (1 mm, 2 mm): it ends here");
    }

    @Test
    void sidesAreOpposite() {
        assertThat(Side.LEFT.opposite()).isEqualTo(Side.RIGHT);
        assertThat(Side.RIGHT.opposite()).isEqualTo(Side.LEFT);
        assertThat(Side.LEFT.sign()).isEqualTo(1);
        assertThat(Side.RIGHT.sign()).isEqualTo(-1);
    }
}

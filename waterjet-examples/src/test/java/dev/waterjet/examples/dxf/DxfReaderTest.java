package dev.waterjet.examples.dxf;

import static dev.waterjet.measure.Measures.millimetres;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.evidence.Caution;
import dev.waterjet.examples.drawing.Drawing;
import dev.waterjet.examples.drawing.DrawingSettings;
import dev.waterjet.examples.drawing.LayerRule;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.TextException;
import dev.waterjet.part.Contour;
import dev.waterjet.part.EdgeCursor;
import dev.waterjet.quality.CutQuality;
import java.util.List;
import java.util.Locale;
import java.util.function.DoubleUnaryOperator;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Drawings in DXF, written here group by group; lengths and areas by hand. */
class DxfReaderTest {

    private static final String CIRCLE = "0 CIRCLE 8 0 10 50 20 40 40 10";

    /** Group codes and values in turn; a value may not hold spaces. */
    private static String groups(String words) {
        return words.strip().replaceAll("\\s+", "\n");
    }

    private static String file(String header, String tables, String blocks, String entities) {
        return groups("0 SECTION 2 HEADER " + header + " 0 ENDSEC 0 SECTION 2 TABLES " + tables
                        + " 0 ENDSEC 0 SECTION 2 BLOCKS " + blocks + " 0 ENDSEC 0 SECTION 2 ENTITIES " + entities
                        + " 0 ENDSEC 0 EOF")
                + "\n";
    }

    private static Drawing read(String entities) {
        return read("", entities);
    }

    private static Drawing read(String blocks, String entities) {
        return DxfReader.read(file("9 $INSUNITS 70 4", "", blocks, entities), DrawingSettings.defaults());
    }

    private static Contour only(String entities) {
        return read(entities).contours().get(0);
    }

    private static double lengthMm(Contour contour) {
        return contour.lengthSi() * 1000;
    }

    private static double areaMm2(Contour contour) {
        return Math.abs(Kind.AREA.si(contour.signedArea())) * 1e6;
    }

    private static void assertCentre(Contour contour, double xMm, double yMm) {
        assertThat(contour.box().centre().xSi() * 1000).isCloseTo(xMm, within(1e-6));
        assertThat(contour.box().centre().ySi() * 1000).isCloseTo(yMm, within(1e-6));
    }

    private static List<String> codes(Drawing drawing) {
        return drawing.cautions().stream().map(Caution::code).toList();
    }

    private static void refused(ThrowingCallable call, String code) {
        assertThatThrownBy(call)
                .isInstanceOfSatisfying(
                        TextException.class,
                        refusal -> assertThat(refusal.code()).isEqualTo(code));
    }

    private static double worst(Contour contour, DoubleUnaryOperator xMm, DoubleUnaryOperator yMm) {
        EdgeCursor edge = new EdgeCursor();
        double worst = 0;
        for (int i = 0; i <= 5000; i++) {
            double t = i / 5000.0;
            double least = Double.POSITIVE_INFINITY;
            for (int k = 0; k < contour.size(); k++) {
                contour.load(k, edge);
                least = Math.min(least, edge.distance(xMm.applyAsDouble(t) / 1000, yMm.applyAsDouble(t) / 1000));
            }
            worst = Math.max(worst, least);
        }
        return worst;
    }

    @ParameterizedTest
    @ValueSource(strings = {"6.28319", "6.28318531", "6.283185307", "6.28318"})
    void aTurnWrittenWithFewDigitsIsAWholeEllipse(String to) {
        Contour whole = only("0 ELLIPSE 8 0 10 85 20 45 11 6 21 2 40 0.5 41 0 42 " + to);

        assertThat(whole.isClosed()).isTrue();
        assertThat(areaMm2(whole)).isCloseTo(Math.PI * 40 * 0.5, within(0.05));
    }

    @Test
    void linesAndArcsInAnyOrderAndSenseAreOneSlot() {
        Drawing drawing = read("0 LINE 8 S 10 20 20 30 11 40 21 30 0 ARC 8 S 10 40 20 34 40 4 50 -90 51 90"
                + " 0 LINE 8 S 10 20 20 38 11 40 21 38 0 ARC 8 S 10 20 20 34 40 4 50 90 51 270");

        assertThat(drawing.contours()).hasSize(1);
        Contour slot = drawing.contours().get(0);
        assertThat(slot.size()).isEqualTo(4);
        assertThat(areaMm2(slot)).isCloseTo(20 * 8 + Math.PI * 16, within(1e-9));
        assertThat(drawing.cautions()).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "0 LWPOLYLINE 8 O 90 4 70 1 10 0 20 0 42 0.41421356237309503 10 10 20 10 10 10 20 30 10 0 20 30",
                "0 POLYLINE 8 O 66 1 70 1 0 VERTEX 10 0 20 0 42 0.41421356237309503 0 VERTEX 10 10 20 10"
                        + " 0 VERTEX 10 10 20 30 0 VERTEX 10 0 20 30 0 SEQEND",
                "0 POLYLINE 8 O 66 1 70 5 0 VERTEX 10 0 20 0 42 0.41421356237309503 0 VERTEX 10 10 20 10"
                        + " 0 VERTEX 10 99 20 99 70 16 0 VERTEX 10 10 20 30 0 VERTEX 10 0 20 30 0 SEQEND",
            })
    void bulgesAreExactArcs(String polyline) {
        Contour contour = only(polyline);

        // a bulge of tan(90/4 deg) to the left on the chord (0,0)-(10,10) is a quarter of radius 10 about (0, 10)
        assertThat(contour.edge(0).isArc()).isTrue();
        assertThat(contour.edge(0).centre().orElseThrow().ySi()).isCloseTo(0.010, within(1e-12));
        assertThat(areaMm2(contour)).isCloseTo(10 * 20 + Math.PI * 25, within(1e-9));
    }

    @Test
    void aPolylineOfTwoBulgesIsACircle() {
        Contour circle = only("0 LWPOLYLINE 8 0 90 2 70 1 10 0 20 0 42 1 10 20 20 0 42 1");

        assertThat(areaMm2(circle)).isCloseTo(Math.PI * 100, within(1e-9));
        assertThat(circle.size()).isEqualTo(2);
    }

    @Test
    void anExtrusionDownMirrorsArcsButNotLines() {
        assertCentre(only("0 CIRCLE 8 0 10 -70 20 20 40 3 210 0 220 0 230 -1"), 70, 20);
        Contour arc = only("0 ARC 8 0 10 -70 20 20 40 3 50 0 51 90 230 -1");
        assertThat(arc.start().xSi()).isCloseTo(0.067, within(1e-12));
        assertThat(arc.end().ySi()).isCloseTo(0.023, within(1e-12));
        assertThat(only("0 LINE 8 0 10 -70 20 20 11 5 21 5 230 -1").start().xSi())
                .isCloseTo(-0.070, within(1e-12));
        Contour half = only("0 LWPOLYLINE 8 0 70 1 10 -5 20 0 42 1 10 -15 20 0 230 -1");
        assertCentre(half, 10, 2.5);
        assertThat(half.box().maximum().ySi()).isCloseTo(0.005, within(1e-12));
        refused(() -> read("0 CIRCLE 8 0 10 0 20 0 40 3 210 1 220 0 230 0"), "not-in-plane");
        refused(() -> read("0 LINE 8 0 10 0 20 0 30 0 11 9 21 0 31 5"), "not-in-plane");
    }

    @Test
    void ellipsesKeepWithinTheToleranceAndHaveTheirParameters() {
        Contour whole = only("0 ELLIPSE 8 0 10 85 20 45 11 6 21 2 40 0.5 41 0 42 6.283185307179586");
        double a = Math.hypot(6, 2);
        DoubleUnaryOperator x = t -> 85 + 6 * Math.cos(2 * Math.PI * t) - 2 * 0.5 * Math.sin(2 * Math.PI * t);
        DoubleUnaryOperator y = t -> 45 + 2 * Math.cos(2 * Math.PI * t) + 6 * 0.5 * Math.sin(2 * Math.PI * t);

        assertThat(worst(whole, x, y)).isLessThan(1e-5);
        assertThat(areaMm2(whole)).isCloseTo(Math.PI * a * a / 2, within(0.05));
        assertThat(whole.size()).isLessThan(40);

        Contour quarter = only("0 ELLIPSE 8 0 10 0 20 0 11 6 21 0 40 0.5 41 0 42 1.5707963267948966");
        assertThat(quarter.start().xSi()).isCloseTo(0.006, within(1e-12));
        assertThat(quarter.end().ySi()).isCloseTo(0.003, within(1e-12));
        Contour below = only("0 ELLIPSE 8 0 10 0 20 0 11 6 21 0 40 0.5 41 0 42 1.5707963267948966 230 -1");
        assertThat(below.end().ySi()).isCloseTo(-0.003, within(1e-12));
    }

    @Test
    void aRationalSplineOfACircleIsThatCircle() {
        Contour circle =
                only("0 SPLINE 8 0 70 4 71 2 72 12 73 9 40 0 40 0 40 0 40 1 40 1 40 2 40 2 40 3 40 3 40 4 40 4 40 4 41"
                        + " 1 41 0.7071067811865476 41 1 41 0.7071067811865476 41 1 41 0.7071067811865476 41 1 41"
                        + " 0.7071067811865476 41 1 10 4 20 0 10 4 20 4 10 0 20 4 10 -4 20 4 10 -4 20 0 10 -4 20 -4 10 0"
                        + " 20 -4 10 4 20 -4 10 4 20 0");

        assertThat(circle.isClosed()).isTrue();
        assertThat(circle.size()).isLessThanOrEqualTo(2);
        assertThat(areaMm2(circle)).isCloseTo(16 * Math.PI, within(0.02));
    }

    /** Cubic with an inner knot: its two Bézier curves by inserting the knot by hand. */
    @Test
    void aCubicWithAnInnerKnotKeepsWithinTheTolerance() {
        Contour curve = only("0 SPLINE 8 0 70 8 71 3 72 9 73 5 40 0 40 0 40 0 40 0 40 1 40 2 40 2 40 2 40 2"
                + " 10 0 20 0 10 0 20 20 10 20 20 20 10 40 20 0 10 40 20 20");
        // knot 1 inserted twice by hand: halves of neighbouring control points, then of those
        double[][] first = {{0, 0}, {0, 20}, {10, 20}, {20, 15}};
        double[][] second = {{20, 15}, {30, 10}, {40, 0}, {40, 20}};

        for (double[][] b : List.of(first, second)) {
            DoubleUnaryOperator x = t -> bezier(t, b[0][0], b[1][0], b[2][0], b[3][0]);
            DoubleUnaryOperator y = t -> bezier(t, b[0][1], b[1][1], b[2][1], b[3][1]);
            assertThat(worst(curve, x, y)).isLessThan(1e-5);
        }
        assertThat(curve.end().ySi()).isCloseTo(0.020, within(1e-12));
    }

    private static double bezier(double t, double a, double b, double c, double d) {
        double s = 1 - t;
        return s * s * s * a + 3 * s * s * t * b + 3 * s * t * t * c + t * t * t * d;
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "0 SPLINE 8 0 71 3 11 2 21 1 11 2 21 1",
                "0 SPLINE 8 0 71 3 40 0 40 0 40 1 10 0 20 0 10 5 20 5",
                "0 SPLINE 8 0 71 1 40 0 40 0 40 1 40 1 41 1 41 0 10 0 20 0 10 5 20 5",
            })
    void splinesThatAreNotDefinedAreRefused(String spline) {
        assertThatThrownBy(() -> read(spline))
                .isInstanceOfSatisfying(
                        TextException.class,
                        refusal -> assertThat(refusal.code()).startsWith("spline-"));
    }

    @Test
    void blocksAreInsertedScaledTurnedMirroredAndInRows() {
        String blocks = "0 BLOCK 8 0 2 BOLT 70 0 10 1 20 1 0 CIRCLE 8 0 10 4 20 1 40 2 0 ENDBLK 0 BLOCK 8 0 2 PAIR 10"
                + " 0 20 0 0 INSERT 8 0 2 BOLT 10 10 20 0 0 INSERT 8 0 2 BOLT 10 0 20 0 42 -1 0 ENDBLK";
        assertCentre(
                read(blocks, "0 INSERT 8 H 2 BOLT 10 60 20 45 50 90").contours().get(0), 60, 48);
        assertCentre(
                read(blocks, "0 INSERT 8 H 2 BOLT 10 60 20 45 41 -1").contours().get(0), 57, 45);
        assertCentre(
                read(blocks, "0 INSERT 8 H 2 BOLT 10 -60 20 45 230 -1")
                        .contours()
                        .get(0),
                57,
                45);
        Contour stretched = read(blocks, "0 INSERT 8 H 2 BOLT 10 0 20 0 41 2 42 1")
                .contours()
                .get(0);
        assertThat(stretched.box().centre().xSi()).isCloseTo(0.006, within(1e-5));
        assertThat(areaMm2(stretched)).isCloseTo(8 * Math.PI, within(0.05));
        List<Contour> rows = read(blocks, "0 INSERT 8 H 2 BOLT 10 0 20 0 70 3 71 2 44 9 45 8 50 90")
                .contours();
        assertThat(rows).hasSize(6);
        assertCentre(rows.get(1), 0, 12);
        assertCentre(rows.get(3), -8, 3);
        List<Contour> nested =
                read(blocks, "0 INSERT 8 H 2 PAIR 10 100 20 0 41 2 42 2").contours();
        assertCentre(nested.get(0), 126, 0);
        assertCentre(nested.get(1), 106, 0);
        assertThat(areaMm2(nested.get(1))).isCloseTo(16 * Math.PI, within(1e-9));
    }

    @Test
    void blocksThatContainThemselvesAndHugeArraysAreRefused() {
        String blocks = "0 BLOCK 2 A 0 INSERT 8 0 2 A 10 1 20 1 0 ENDBLK";
        refused(() -> read(blocks, "0 INSERT 8 0 2 A 10 0 20 0"), "block-too-deep");
        refused(() -> read(blocks, "0 INSERT 8 0 2 A 10 0 20 0 70 200 71 200"), "array-too-large");
        refused(() -> read(blocks, "0 INSERT 8 0 2 B 10 0 20 0"), "block-unknown");
        refused(() -> read(blocks, "0 INSERT 8 0 2 A 10 0 20 0 41 0"), "insert-scale");
        refused(() -> read("0 LINE 8 0 10 0 20 0 11 1e300 21 0"), "dxf-number");
        refused(() -> read("0 LINE 8 0 10 0 20 0 11 1e9 21 0"), "drawing-too-large");
    }

    @Test
    void hiddenLayersPaperSpaceAndNotesAreLeftOutAndCounted() {
        String tables =
                "0 TABLE 2 LAYER 0 LAYER 2 Off 70 0 62 -7 0 LAYER 2 COLD 70 1 62 5 0 LAYER 2 RED 70 0 62 1 0 ENDTAB";
        String blocks = "0 BLOCK 2 B 10 0 20 0 0 CIRCLE 8 0 10 0 20 0 40 1 0 CIRCLE 8 RED 10 9 20 0 40 1 0 ENDBLK";
        String entities = CIRCLE + " 0 CIRCLE 8 OFF 10 0 20 0 40 1 0 CIRCLE 8 COLD 10 0 20 0 40 1 0 INSERT 8 OFF 2 B"
                + " 10 20 20 0 0 INSERT 8 COLD 2 B 10 90 20 0 0 LINE 67 1 8 0 10 0 20 0 11 1 21 1 0"
                + " LINE 60 1 8 0 10 0 20 0 11 1 21 1 0 TEXT 8 0 1 note 10 0 20 0 40 3";
        Drawing drawing = DxfReader.read(
                file("9 $INSUNITS 70 4", tables, blocks, entities),
                DrawingSettings.defaults()
                        .withLayers(List.of(LayerRule.parse("colour:1=fine"), LayerRule.parse("red=name:dowel"))));

        assertThat(drawing.contours()).hasSize(2);
        assertCentre(drawing.contours().get(1), 29, 0);
        assertThat(drawing.contours().get(1).requirement(0).quality()).isEqualTo(CutQuality.FINE);
        assertThat(drawing.contours().get(1).name()).isEqualTo("dowel");
        assertThat(codes(drawing))
                .containsExactly("entities-skipped", "layers-hidden", "invisible-entities", "paper-space");
        assertThat(drawing.cautions().get(1).message().parameters()).containsEntry("count", 4L);
    }

    @ParameterizedTest
    @CsvSource({"1, 25.4", "2, 304.8", "4, 1", "5, 10", "6, 1000", "9, 0.0254", "13, 0.001", "14, 100"})
    void unitsAreThoseOfTheHeader(int code, double mm) {
        String entity = String.format(Locale.ROOT, "0 CIRCLE 8 0 10 0 20 0 40 %s", 40 / mm);
        Contour circle = DxfReader.read(file("9 $INSUNITS 70 " + code, "", "", entity), DrawingSettings.defaults())
                .contours()
                .get(0);

        assertThat(lengthMm(circle)).isCloseTo(80 * Math.PI, within(1e-6));
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "9 $INSUNITS 70 0", "9 $ACADVER 1 AC1009 9 $MEASUREMENT 70 1"})
    void aDrawingWithoutUnitIsRefusedWithBothSizes(String header) {
        String dxf = file(header, "", "", CIRCLE);

        assertThatThrownBy(() -> DxfReader.read(dxf, DrawingSettings.defaults()))
                .isInstanceOfSatisfying(TextException.class, refusal -> {
                    assertThat(refusal.code()).isEqualTo("drawing-unit-missing");
                    assertThat(Double.parseDouble(
                                    String.valueOf(refusal.parameters().get("width_m"))))
                            .isCloseTo(0.020, within(1e-12));
                    assertThat(refusal.getMessage()).contains("--drawing-unit");
                });
        Drawing inches = DxfReader.read(dxf, DrawingSettings.defaults().withUnit(millimetres(25.4)));
        assertThat(Kind.LENGTH.si(inches.box().width())).isCloseTo(0.508, within(1e-12));
        Drawing wide = DxfReader.read(dxf, DrawingSettings.defaults().withWidth(millimetres(80)));
        assertThat(Kind.LENGTH.si(wide.box().width())).isCloseTo(0.080, within(1e-12));
    }

    @ParameterizedTest
    @CsvSource({
        "0 SOLID 8 N 10 0 20 0, entity-not-cut",
        "0 POLYLINE 8 N 70 64 0 VERTEX 10 0 20 0 0 SEQEND, entity-not-cut",
        "0 CIRCLE 8 N 10 0 20 0 40 0, radius",
        "0 CIRCLE 8 N 10 0 20 0, dxf-missing",
        "0 CIRCLE 8 N 10 zero 20 0 40 1, dxf-number",
        "0 CIRCLE 8 N 10 0 20 0 40 1 x y, dxf-group-code",
        "0 TEXT 8 N 1 note, empty-drawing",
    })
    void whatCannotBeReadIsRefusedWithItsCode(String entities, String code) {
        refused(() -> read(entities), code);
    }

    @Test
    void aFileThatEndsEarlyIsReadAsFarAsItGoes() {
        String whole = file("9 $INSUNITS 70 4", "", "", CIRCLE + " " + CIRCLE.replace("50", "90"));
        for (int cut = 0; cut < whole.length(); cut++) {
            try {
                Drawing drawing = DxfReader.read(whole.substring(0, cut), DrawingSettings.defaults());
                assertThat(drawing.contours()).isNotEmpty();
            } catch (TextException refusal) {
                assertThat(refusal.code()).isNotEqualTo("unspecified");
            }
        }
    }

    @Test
    void faultsNameTheirLine() {
        assertThatThrownBy(() -> read("0 LINE 8 0 10 0 20 0 11 9 21 0 0 CIRCLE 8 0 10 x 20 0 40 1"))
                .isInstanceOfSatisfying(
                        TextException.class,
                        refusal -> assertThat(refusal.line()).isEqualTo(44));
    }
}

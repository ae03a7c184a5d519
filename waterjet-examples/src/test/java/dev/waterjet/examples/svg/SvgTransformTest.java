package dev.waterjet.examples.svg;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.examples.drawing.Drawing;
import dev.waterjet.examples.drawing.DrawingSettings;
import dev.waterjet.measure.TextException;
import dev.waterjet.part.Contour;
import dev.waterjet.part.Point;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Transforms by attribute and style, their origins, and drawings within the drawing; places as Chromium 156 draws them. */
class SvgTransformTest {

    private static Drawing read(String body) {
        String open = "<svg xmlns='http://www.w3.org/2000/svg' width='200mm' height='150mm' viewBox='0 0 200 150'>";
        return SvgReader.read(open + body + "</svg>", DrawingSettings.defaults());
    }

    private static Contour only(String body) {
        return read(body).contours().get(0);
    }

    private static void assertCentre(Contour contour, double xMm, double yMm) {
        Point centre = contour.box().centre();
        assertThat(centre.xSi() * 1000).isCloseTo(xMm, within(1e-5));
        assertThat(centre.ySi() * 1000).isCloseTo(yMm, within(1e-5));
    }

    private static void refused(String body, String code) {
        assertThatThrownBy(() -> read(body))
                .isInstanceOfSatisfying(
                        TextException.class,
                        refusal -> assertThat(refusal.code()).isEqualTo(code));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "transform:translate(60px,60px)|100|50",
                "transform: translate(6cm , 0)|266.771654|110",
                "transform:translateX(20px) rotate(90deg)|-20|110",
                "transform:scale(2)|80|70",
                "fill:none; transform : matrix(1,0,0,1,5,7)|45|103",
                "transform:none|40|110",
            })
    void transformsInStylesMoveTheShape(String style, double xMm, double yMm) {
        assertCentre(only("<circle cx='40' cy='40' r='10' style='" + style + "'/>"), xMm, yMm);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "transform:rotate(30deg);transform-origin:center|transform-origin",
                "transform:translate(10%,0)|svg-syntax",
                "transform:perspective(3)|style-transform",
                "rotate:30deg|style-geometry",
                "cx:50px|style-geometry",
                "r:3|style-geometry",
            })
    void stylesThatMoveAShapeAndAreNotReadAreRefused(String style, String code) {
        refused("<circle cx='40' cy='40' r='10' style='" + style + "'/>", code);
    }

    @Test
    void aClassMovesItsShapesToo() {
        String rule = "<style>.m{transform:translate(10px,0)}</style>";

        assertCentre(only(rule + "<circle class='m' cx='40' cy='40' r='10'/>"), 50, 110);
    }

    /** About (50, 30) a quarter turn of the drawing, whose y points down, takes (70, 30) to (50, 50). */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "transform='rotate(90)' transform-origin='50 30'|50|100",
                "transform='rotate(90)' style='transform-origin:50px 30px'|50|100",
                "style='transform:rotate(90deg);transform-origin:50px 30px 0'|50|100",
                "style='transform:rotate(0.25turn)' transform-origin='50 30'|50|100",
                "transform='rotate(90)' transform-origin='13.229166666667mm 7.9375mm'|50|100",
                "transform='scale(2)' transform-origin='50 30'|90|120",
                "transform='scale(2)' transform-origin='left top'|140|90",
                "transform='scale(2)' transform-origin='50 top'|90|90",
                "transform-origin='center'|70|120",
                "transform='rotate(90 50 30)'|50|100",
            })
    void aTransformIsAboutItsOrigin(String attributes, double xMm, double yMm) {
        assertCentre(only("<circle cx='70' cy='30' r='10' " + attributes + "/>"), xMm, yMm);
        assertCentre(only("<g " + attributes + "><circle cx='70' cy='30' r='10'/></g>"), xMm, yMm);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "transform-origin='50% 50%'|transform-origin",
                "transform-origin='center'|transform-origin",
                "transform-origin='50'|transform-origin",
                "transform-origin='50, 30'|transform-origin",
                "transform-origin='50 30 5'|transform-origin",
                "transform-origin='50 30 0 0'|transform-origin",
                "transform-origin='50 30' transform-box='fill-box'|transform-origin",
                "style='transform-box:fill-box'|transform-origin",
            })
    void anOriginByTheBoxOfAShapeIsRefused(String attributes, String code) {
        refused("<circle cx='70' cy='30' r='10' transform='rotate(90)' " + attributes + "/>", code);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "x='10' y='5' width='50' height='30' viewBox='0 0 100 60'|30|135|5",
                "x='10' y='5' width='50' height='50' viewBox='0 0 100 60'|30|125|5",
                "width='50' height='30' viewBox='20 10 100 60'|10|145|5",
                "x='10' y='5'|50|125|10",
                "x='10' y='5' width='3' height='3'|50|125|10",
                "x='1' transform='translate(9 5)'|50|125|10",
            })
    void aDrawingWithinADrawingHasItsPlaceAndScale(String attributes, double xMm, double yMm, double radiusMm) {
        Contour circle = only("<svg " + attributes + "><circle cx='40' cy='20' r='10'/></svg>");

        assertCentre(circle, xMm, yMm);
        assertThat(circle.lengthSi() * 1000).isCloseTo(2 * Math.PI * radiusMm, within(1e-5));
    }

    @Test
    void drawingsNestAndNameTheirParts() {
        Contour circle = only(
                "<svg id='outer' width='100' height='60' viewBox='0 0 50 30'>"
                        + "<svg x='5' y='5' width='20' height='12' viewBox='0 0 100 60'><circle cx='40' cy='20' r='10'/></svg></svg>");

        assertCentre(circle, 2 * (5 + 8), 150 - 2 * (5 + 4));
        refused("<svg width='50%' height='50%' viewBox='0 0 9 9'><circle r='1'/></svg>", "svg-syntax");
    }
}

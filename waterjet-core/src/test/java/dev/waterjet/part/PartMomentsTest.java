package dev.waterjet.part;

import static dev.waterjet.Refusals.assertRefused;
import static dev.waterjet.measure.Measures.millimetres;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.measure.Kind;
import dev.waterjet.quality.EdgeRequirement;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Area, centre and webs of random parts against polygons of many chords and loops over all pairs. */
class PartMomentsTest {

    /** A closed wheel of lines and arcs about a place, with the radii of a flower. */
    private static Contour wheel(Random random, double x, double y, double size) {
        int n = 5 + random.nextInt(6);
        double[] start = {x + size, y};
        ContourBuilder builder = Contour.fromSi(start[0], start[1]);
        for (int i = 1; i < n; i++) {
            double angle = 2 * Math.PI * (i + 0.3 * random.nextDouble()) / n;
            double radius = size * (0.8 + 0.2 * random.nextDouble());
            double[] at = {x + radius * Math.cos(angle), y + radius * Math.sin(angle)};
            if (random.nextBoolean()) {
                builder.lineToSi(at[0], at[1]);
            } else {
                double[] middle = middle(random, start, at);
                builder.arcThrough(Point.ofSi(middle[0], middle[1]), Point.ofSi(at[0], at[1]));
            }
            start = at;
        }
        return builder.close();
    }

    /** A point beside the middle of a chord, to either side, by a tenth of its length or so. */
    private static double[] middle(Random random, double[] from, double[] to) {
        double off = 0.3 * (random.nextDouble() - 0.5);
        return new double[] {
            (from[0] + to[0]) / 2 - off * (to[1] - from[1]), (from[1] + to[1]) / 2 + off * (to[0] - from[0])
        };
    }

    /** Area and first moments of the polygon of many chords, by the sums of text-books (shoelace). */
    private static double[] ofChords(Contour contour) {
        EdgeCursor edge = new EdgeCursor();
        double[] sums = new double[3];
        int n = 4000;
        for (int i = 0; i < contour.size(); i++) {
            contour.load(i, edge);
            int parts = edge.isArc() ? n : 1;
            for (int k = 0; k < parts; k++) {
                double x0 = edge.xAt((double) k / parts);
                double y0 = edge.yAt((double) k / parts);
                double x1 = edge.xAt((k + 1.0) / parts);
                double y1 = edge.yAt((k + 1.0) / parts);
                double cross = x0 * y1 - x1 * y0;
                sums[0] += cross / 2;
                sums[1] += cross * (x0 + x1) / 6;
                sums[2] += cross * (y0 + y1) / 6;
            }
        }
        return sums;
    }

    @Test
    void areaAndCentreAreThoseOfManyChords() {
        Random random = new Random(12);
        for (int round = 0; round < 60; round++) {
            double x = 3 * random.nextDouble() - 1.5;
            double y = 3 * random.nextDouble() - 1.5;
            Contour outline = wheel(random, x, y, 1);
            Contour hole = wheel(random, x + 0.2, y - 0.1, 0.25);
            Contour other = wheel(random, x - 0.3, y + 0.2, 0.15);
            Part part = Part.of(
                    random.nextBoolean() ? outline : outline.reversed(),
                    random.nextBoolean() ? hole : hole.reversed(),
                    other);
            double[] sums = ofChords(outline);
            for (Contour inner : List.of(hole, other)) {
                double[] of = ofChords(inner);
                for (int k = 0; k < 3; k++) {
                    sums[k] -= of[k];
                }
            }
            assertThat(Kind.AREA.si(part.area())).isCloseTo(sums[0], within(1e-7));
            assertThat(part.centroid().xSi()).isCloseTo(sums[1] / sums[0], within(1e-7));
            assertThat(part.centroid().ySi()).isCloseTo(sums[2] / sums[0], within(1e-7));
            assertThat(Kind.AREA.si(outline.signedArea())).isCloseTo(ofChords(outline)[0], within(1e-7));

            Part moved = part.translatedBy(Point.ofSi(0.4, -0.7));
            assertThat(moved.centroid().xSi()).isCloseTo(part.centroid().xSi() + 0.4, within(1e-12));
            assertThat(moved.centroid().ySi()).isCloseTo(part.centroid().ySi() - 0.7, within(1e-12));
            assertThat(moved.holes()).hasSize(2);
        }
    }

    /** Arcs as flat as a straight line: the centre is that of the triangle but for the segments, 2/3 of chord and sagitta. */
    @ParameterizedTest
    @ValueSource(doubles = {1e2, 1e4, 1e6, 1e8})
    void flatArcsMoveTheCentreByNoMoreThanTheirSegment(double radius) {
        Contour sector = Contour.fromSi(0, 0)
                .lineToSi(3, 0)
                .arcToSi(3, 1, 3 - Math.sqrt(radius * radius - 0.25), 0.5, Side.LEFT)
                .close();
        double segment = 2.0 / 3 * (1 / (8 * radius));
        Part part = Part.of(sector.translatedBy(Point.ofSi(7, -4)));

        assertThat(Kind.AREA.si(part.area())).isCloseTo(1.5 + segment, within(segment / radius + 1e-14));
        assertThat(part.centroid().xSi())
                .isCloseTo(7 + (1.5 * 2 + segment * 3) / (1.5 + segment), within(segment / radius + 1e-14));
        assertThat(part.centroid().ySi())
                .isCloseTo(-4 + (1.5 / 3 + segment / 2) / (1.5 + segment), within(segment / radius + 1e-14));
    }

    /** The angle less its sine where the series ends and well beyond, by terms of the series until they vanish. */
    @Test
    void theExcessOfAnAngleOverItsSineIsThatOfTheWholeSeries() {
        for (double rad = 1e-6; rad < 6.3; rad *= 1.05) {
            double sum = 0;
            double term = rad * rad * rad / 6;
            for (int k = 4; Math.abs(term) > 1e-20 * rad * rad * rad; k += 2) {
                sum += term;
                term *= -rad * rad / (k * (k + 1.0));
            }
            assertThat(EdgeKernel.excess(rad)).isCloseTo(sum, within(1e-13 * sum));
            assertThat(EdgeKernel.excess(-rad)).isCloseTo(-sum, within(1e-13 * sum));
        }
    }

    private static double pairs(Contour a, Contour b) {
        EdgeCursor one = new EdgeCursor();
        EdgeCursor other = new EdgeCursor();
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i < a.size(); i++) {
            a.load(i, one);
            for (int j = 0; j < b.size(); j++) {
                b.load(j, other);
                least = Math.min(least, EdgeKernel.distance(one, other, new double[4]));
            }
        }
        return least;
    }

    /** The narrowest web is between two holes, or between a hole and the outline. */
    @Test
    void theNarrowestWebIsTheLeastOfAllPairsOfContours() {
        Random random = new Random(13);
        int ofHoles = 0;
        for (int round = 0; round < 40; round++) {
            List<Contour> holes = new ArrayList<>();
            int columns = 1 + random.nextInt(6);
            for (int i = 0; i < columns; i++) {
                for (int j = 0; j < 4; j++) {
                    holes.add(wheel(random, i + 0.5, j + 0.5, 0.25 + 0.2 * random.nextDouble()));
                }
            }
            double rim = 0.4 * random.nextDouble();
            Contour outline = Contour.rectangle(
                    Point.ofSi(-rim, -rim), Point.ofSi(columns + rim, 4 + rim), EdgeRequirement.defaults());
            double least = Double.POSITIVE_INFINITY;
            double toRim = Double.POSITIVE_INFINITY;
            for (int i = 0; i < holes.size(); i++) {
                toRim = Math.min(toRim, pairs(holes.get(i), outline));
                for (int j = 0; j < i; j++) {
                    least = Math.min(least, pairs(holes.get(i), holes.get(j)));
                }
            }
            ofHoles += least < toRim ? 1 : 0;
            assertThat(Kind.LENGTH.si(Part.of(outline, holes).minimumWebWidth()))
                    .isCloseTo(Math.min(least, toRim), within(1e-12));
        }
        assertThat(ofHoles).isBetween(5, 38);
        assertRefused(
                () -> Part.of(wheel(random, 0, 0, 1)).minimumWebWidth(),
                "must-be-at-least",
                "number of holes beside a web",
                1);
    }

    private static Contour circle(double x, double y, double r) {
        return Contour.circle(Point.millimetres(x, y), millimetres(r), EdgeRequirement.defaults());
    }

    @Test
    void aHoleIsRefusedWhereItTouchesCrossesOrHoldsTheOutlineOrAnotherHole() {
        Contour outline = circle(0, 0, 50);
        assertThat(Part.of(outline, circle(0, 0, 49.999)).holes()).hasSize(1);
        assertRefused(() -> Part.of(outline, circle(0, 0, 50.001)), "hole-outside");
        assertRefused(() -> Part.of(outline, circle(45, 0, 8)), "hole-outside");
        assertRefused(() -> Part.of(outline, circle(-45, 0, 8)), "hole-outside");
        assertThat(Part.of(outline, circle(-10, 0, 9.999), circle(10, 0, 9.999)).holes())
                .hasSize(2);
        assertRefused(() -> Part.of(outline, circle(-10, 0, 10.001), circle(10, 0, 10.001)), "holes-meet");
        assertRefused(() -> Part.of(outline, circle(0, 0, 5), circle(1, 0, 20)), "holes-meet");
        assertRefused(() -> Part.of(outline, circle(1, 0, 20), circle(0, 0, 5)), "holes-meet");
        assertRefused(
                () -> Part.of(
                        outline,
                        Contour.fromSi(0, 0).lineToSi(0.01, 0).lineToSi(0, 0.01).open()),
                "open-contour");
    }

    /** Two bars that cross: neither holds the start of the other. */
    @Test
    void holesThatCrossAreRefusedThoughNeitherHoldsTheStartOfTheOther() {
        Contour outline = circle(0, 0, 50);
        Contour bar =
                Contour.rectangle(Point.millimetres(-20, -2), Point.millimetres(20, 2), EdgeRequirement.defaults());
        Contour across =
                Contour.rectangle(Point.millimetres(-3, -20), Point.millimetres(3, 20), EdgeRequirement.defaults());
        Contour beside = across.translatedBy(Point.millimetres(23.001, 0));

        assertRefused(() -> Part.of(outline, bar, across), "holes-meet");
        assertRefused(() -> Part.of(outline, across, bar), "holes-meet");
        assertThat(Part.of(outline, bar, beside).holes()).hasSize(2);
    }

    /** Of several holes that a hole meets, the first is named. */
    @Test
    void aHoleThatMeetsSeveralNamesTheFirst() {
        Contour outline = circle(0, 0, 50);
        for (int first = 0; first < 3; first++) {
            List<Contour> holes =
                    new ArrayList<>(List.of(circle(-30, 0, 4), circle(0, 30, 4), circle(30, 0, 4), circle(0, -30, 4)));
            for (int i = first; i < 4; i++) {
                holes.set(i, circle(-9 + 6 * i, 0, 3 + 0.5));
            }
            holes.set(3, circle(0, 0, 12).named("wide"));
            assertThat(assertRefused(() -> Part.of(outline, holes.subList(0, 4)), "holes-meet")
                            .parameters())
                    .containsEntry("other", Integer.toString(first == 0 ? 0 : first))
                    .containsEntry("hole", first < 2 ? Integer.toString(first + 1) : "\"wide\"");
        }
    }
}

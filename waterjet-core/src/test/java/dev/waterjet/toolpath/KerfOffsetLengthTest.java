package dev.waterjet.toolpath;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.measure.Kind;
import dev.waterjet.part.Contour;
import dev.waterjet.part.ContourBuilder;
import dev.waterjet.part.ContourConditioner;
import dev.waterjet.part.EdgeCursor;
import dev.waterjet.part.Finding;
import dev.waterjet.part.Point;
import dev.waterjet.part.Side;
import dev.waterjet.quality.EdgeRequirement;
import java.util.Random;
import org.junit.jupiter.api.Test;

/**
 * Length of offsets by the formula of Steiner for parallel curves: the offset by d of a smooth closed curve that bends less
 * than 1/d is longer by 2 pi d outside, and shorter by as much inside.
 */
class KerfOffsetLengthTest {

    /** A wavy ring as chords of a curve, turned by an angle. */
    private static Contour ring(double radiusM, double waveM, int waves, int chords, double turned) {
        ContourBuilder builder = Contour.fromSi(
                        (radiusM + waveM) * Math.cos(turned), (radiusM + waveM) * Math.sin(turned))
                .requirement(EdgeRequirement.defaults())
                .asCurve(true);
        for (int i = 1; i < chords; i++) {
            double t = 2 * Math.PI * i / chords;
            double r = radiusM + waveM * Math.cos(waves * t);
            double x = r * Math.cos(t + turned);
            double y = r * Math.sin(t + turned);
            builder.lineTo(Point.ofSi(x, y));
        }
        return builder.close();
    }

    @Test
    void theOffsetOfASmoothCurveHasTheLengthOfSteiner() {
        Random random = new Random(71);
        for (int round = 0; round < 40; round++) {
            double radius = 0.02 + 0.08 * random.nextDouble();
            int waves = random.nextInt(7);
            double wave = 0.15 * radius / (1 + waves * waves) * random.nextDouble();
            double distance = 2e-4 + 6e-4 * random.nextDouble();
            Contour curve = ContourConditioner.defaults()
                    .condition(ring(radius, wave, waves, 300 + random.nextInt(900), 6 * random.nextDouble()))
                    .contour();
            for (Side side : Side.values()) {
                Contour path = KerfOffset.of(Kind.LENGTH.of(distance))
                        .apply(curve, side)
                        .path()
                        .contour();
                double sign = side == curve.enclosedSide() ? -1 : 1;
                double expected = curve.lengthSi() + sign * 2 * Math.PI * distance;

                assertThat(path.lengthSi())
                        .as("round %d, %s", round, side)
                        .isCloseTo(expected, within(3e-4 * expected));
            }
        }
    }

    @Test
    void noArcOfAnOffsetIsAStrayCircle() {
        Contour curve = ContourConditioner.defaults()
                .condition(ring(0.05, 0.002, 5, 700, 0.3))
                .contour();
        Contour path = KerfOffset.of(Kind.LENGTH.of(5e-4))
                .apply(curve, Side.RIGHT)
                .path()
                .contour();
        EdgeCursor edge = new EdgeCursor();
        for (int i = 0; i < path.size(); i++) {
            path.load(i, edge);
            assertThat(Math.abs(edge.sweep())).isLessThan(Math.PI);
        }
    }

    /** A straight flank meets an arc that bends away from the jet: the jet rounds that corner as it does between lines. */
    @Test
    void anEdgeThatBendsAwayFormsAnInnerCorner() {
        Contour part = Contour.from(Point.millimetres(0, 0))
                .lineTo(Point.millimetres(30, 0))
                .lineTo(Point.millimetres(20, 30))
                .lineTo(Point.millimetres(12, 16))
                .arcTo(Point.millimetres(0, 20), Point.millimetres(0, 0), Side.LEFT)
                .close();
        OffsetResult result = KerfOffset.of(Kind.LENGTH.of(5e-4))
                .apply(part, part.enclosedSide().opposite());

        assertThat(result.findings()).extracting(Finding::code).containsExactly("inner-corner");
        assertThat(Kind.LENGTH.si(result.unreachedLength())).isZero();
    }
}

package dev.waterjet.plan;

import static dev.waterjet.measure.Measures.millimetres;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.measure.Kind;
import dev.waterjet.part.Contour;
import dev.waterjet.part.ContourBuilder;
import dev.waterjet.part.ContourConditioner;
import dev.waterjet.part.ContourPlace;
import dev.waterjet.part.EdgeCursor;
import dev.waterjet.part.Point;
import dev.waterjet.part.Side;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Pieces of the jet axis beside a programmed path: each point lies opposite the place of the path that it names. */
class OffsetRunTest {

    /** Replaces no chord. */
    private static final ContourConditioner FAITHFUL =
            ContourConditioner.defaults().withFlattening(millimetres(0)).withTolerance(millimetres(1e-5));

    private static List<JetPiece> pieces(Contour path, Side side, double offsetM, double startM) {
        return new OffsetRun(FAITHFUL.condition(path), side, offsetM, startM).pieces();
    }

    /** A path of lines and arcs of 5 to 15 mm, with turns of up to 80 degrees. */
    private static Contour path(Random random, int n) {
        double x = 0.01;
        double y = -0.02;
        double heading = 6 * random.nextDouble();
        ContourBuilder builder = Contour.fromSi(x, y);
        for (int i = 0; i < n; i++) {
            double length = 0.005 + 0.01 * random.nextDouble();
            if (random.nextInt(3) == 0) {
                double turn = random.nextBoolean() ? 1 : -1;
                double radius = 0.006 + 0.01 * random.nextDouble();
                double sweep = turn * length / radius;
                double cx = x - turn * radius * Math.sin(heading);
                double cy = y + turn * radius * Math.cos(heading);
                heading += sweep;
                x = cx + turn * radius * Math.sin(heading);
                y = cy - turn * radius * Math.cos(heading);
                builder.arcToSi(x, y, cx, cy, turn > 0 ? Side.LEFT : Side.RIGHT);
            } else {
                x += length * Math.cos(heading);
                y += length * Math.sin(heading);
                builder.lineToSi(x, y);
            }
            heading += random.nextInt(4) == 0 ? 0 : 2.8 * (random.nextDouble() - 0.5);
        }
        return builder.open();
    }

    private static double[] place(Contour path, double distance) {
        ContourPlace place = path.placeAtSi(Math.min(distance, path.lengthSi()));
        EdgeCursor edge = new EdgeCursor();
        path.load(place.edge(), edge);
        return new double[] {edge.xAt(place.share()), edge.yAt(place.share())};
    }

    @Test
    void everyPointLiesOppositeThePlaceThatItNames() {
        int drawn = 0;
        int arounds = 0;
        for (int seed = 0; seed < 120; seed++) {
            Random random = new Random(seed);
            Contour path = path(random, 2 + random.nextInt(5));
            double offset = 3e-4 + 7e-4 * random.nextDouble();
            double start = seed % 2 == 0 ? 0 : 0.05;
            Side side = seed % 3 == 0 ? Side.LEFT : Side.RIGHT;
            List<JetPiece> pieces = pieces(path, side, offset, start);
            double before = start;
            JetPiece last = null;
            for (JetPiece piece : pieces) {
                assertThat(piece.fromM).isGreaterThanOrEqualTo(before - 1e-9);
                assertThat(piece.toM).isGreaterThanOrEqualTo(piece.fromM);
                before = piece.toM;
                arounds += piece.toM == piece.fromM ? 1 : 0;
                for (double share : new double[] {0, 0.3, 0.8, 1}) {
                    double[] opposite = place(path, piece.fromM + share * (piece.toM - piece.fromM) - start);
                    double away = Math.hypot(piece.edge.xAt(share) - opposite[0], piece.edge.yAt(share) - opposite[1]);
                    assertThat(away).as("seed %s", seed).isCloseTo(offset, within(6e-6));
                }
                if (last != null) {
                    assertThat(Math.hypot(
                                    piece.edge.startX() - last.edge.endX(), piece.edge.startY() - last.edge.endY()))
                            .isLessThan(1e-9);
                }
                last = piece;
            }
            drawn += pieces.isEmpty() ? 0 : 1;
            assertEnds(path, side, offset, start, pieces);
        }
        assertThat(drawn).isGreaterThan(100);
        assertThat(arounds).isGreaterThan(50);
    }

    /** It starts and ends on the normals of the path, on the side of the jet. */
    private static void assertEnds(Contour path, Side side, double offset, double start, List<JetPiece> pieces) {
        if (pieces.isEmpty()) {
            return;
        }
        EdgeCursor edge = new EdgeCursor();
        path.load(0, edge);
        EdgeCursor first = pieces.get(0).edge;
        assertThat(first.startX())
                .isCloseTo(edge.startX() - side.sign() * offset * edge.startDirectionY(), within(1e-9));
        assertThat(first.startY())
                .isCloseTo(edge.startY() + side.sign() * offset * edge.startDirectionX(), within(1e-9));
        path.load(path.size() - 1, edge);
        JetPiece last = pieces.get(pieces.size() - 1);
        assertThat(last.edge.endX()).isCloseTo(edge.endX() - side.sign() * offset * edge.endDirectionY(), within(1e-9));
        assertThat(last.edge.endY()).isCloseTo(edge.endY() + side.sign() * offset * edge.endDirectionX(), within(1e-9));
        assertThat(pieces.get(0).fromM).isCloseTo(start, within(1e-12));
        assertThat(last.toM).isCloseTo(start + path.lengthSi(), within(1e-9));
    }

    /** Facets between two long lines that are too short for the jet are left out: the axis is where the rest meets. */
    @Test
    void shortFacetsInACornerVanish() {
        for (int facets = 1; facets <= 6; facets++) {
            for (Side side : Side.values()) {
                ContourBuilder builder = Contour.fromSi(-0.02, 0).lineToSi(0, 0);
                double x = 0;
                double y = 0;
                double turn = 1.4 / (facets + 1);
                for (int i = 1; i <= facets; i++) {
                    x += 1e-4 * Math.cos(i * turn);
                    y += 1e-4 * side.sign() * Math.sin(i * turn);
                    builder.lineToSi(x, y);
                }
                builder.lineToSi(x + 0.02 * Math.cos(1.4), y + 0.02 * side.sign() * Math.sin(1.4));
                Contour path = builder.open();
                List<JetPiece> pieces = new OffsetRun(FAITHFUL.condition(path), side, 1e-3, 0).pieces();
                if (facets <= 4) {
                    assertThat(pieces).hasSize(2);
                    for (JetPiece piece : pieces) {
                        for (double share : new double[] {0, 0.5, 1}) {
                            Point at = Point.ofSi(piece.edge.xAt(share), piece.edge.yAt(share));
                            assertThat(Kind.LENGTH.si(path.clearance(at))).isGreaterThan(1e-3 - 1e-9);
                        }
                    }
                } else {
                    assertThat(pieces).isEmpty();
                }
            }
        }
    }

    /** Back along the same line the jet goes around the end of it; into a slot that it does not fit it does not go. */
    @Test
    void aPathThatTurnsBackIsPassedAroundItsEnd() {
        for (Side side : Side.values()) {
            Contour back =
                    Contour.fromSi(0, 0).lineToSi(0.02, 0).lineToSi(0.005, 0).open();
            List<JetPiece> pieces = pieces(back, side, 5e-4, 0);

            assertThat(pieces).hasSize(3);
            assertThat(pieces.get(1).edge.length()).isCloseTo(Math.PI * 5e-4, within(1e-12));
            assertThat(pieces.get(1).edge.sweep() * side.sign()).isNegative();
            assertThat(pieces.get(1).edge.centreX()).isCloseTo(0.02, within(1e-12));
        }
        Contour tight = Contour.fromSi(0, 0)
                .lineToSi(0.01, 0)
                .arcToSi(0.01, 4e-4, 0.01, 2e-4, Side.LEFT)
                .lineToSi(0, 4e-4)
                .open();
        assertThat(pieces(tight, Side.LEFT, 5e-4, 0)).isEmpty();
        assertThat(pieces(tight, Side.RIGHT, 5e-4, 0)).hasSize(3);
    }
}

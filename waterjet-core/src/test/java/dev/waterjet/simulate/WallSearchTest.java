package dev.waterjet.simulate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.kerf.KerfProfile;
import java.util.Random;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegrator;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegratorFactory;
import org.junit.jupiter.api.Test;

/** Doses and walls against integrals and searches in small steps. */
class WallSearchTest {

    private static final double H = 0.02;
    private static final KerfProfile PROFILE = DosePropertiesTest.profile(1.15);
    private static final double ACCURACY = 1e-11;
    private static final GaussIntegrator RULE = new GaussIntegratorFactory().legendre(20);

    /** A crooked path of some millimetres with a dwell, of which some parts are too fast to separate the bottom. */
    private static FootSegments crooked(long seed) {
        Random random = new Random(seed);
        FootSegments segments = new FootSegments(16);
        double x = 0;
        double y = 0;
        double angle = 7 * random.nextDouble();
        for (int i = 0; i < 12; i++) {
            double length = i == 5 ? 0 : 1.5e-3 * random.nextDouble();
            angle += 2 * (random.nextDouble() - 0.5);
            double toX = x + length * Math.cos(angle);
            double toY = y + length * Math.sin(angle);
            double feed = PROFILE.front().separationFeedSi(H) * (0.2 + 1.2 * random.nextDouble());
            segments.add(x, y, toX, toY, length > 0 ? length / feed : 1, i);
            x = toX;
            y = toY;
        }
        return segments;
    }

    private static DoseField field(FootSegments segments, double depth) {
        DoseField field = new DoseField(PROFILE, segments);
        field.at(depth);
        return field;
    }

    /** Gauss-Legendre quadrature over each segment; a dwell as the kernel at one place. */
    private static double dose(FootSegments segments, double x, double y) {
        double spread = PROFILE.spreadSi();
        double sum = 0;
        for (int k = 0; k < segments.count; k++) {
            double half = segments.length[k] / 2;
            for (int i = 0; i < RULE.getNumberOfPoints(); i++) {
                double at = half * (1 + RULE.getPoint(i));
                double dx = x - segments.x[k] - at * segments.ux[k];
                double dy = y - segments.y[k] - at * segments.uy[k];
                double weight = RULE.getWeight(i) * (half > 0 ? half : 0.5);
                sum += weight * segments.pace[k] * Math.exp(-(dx * dx + dy * dy) / (2 * spread * spread));
            }
        }
        return sum / (Math.sqrt(2 * Math.PI) * spread);
    }

    private static double distance(FootSegments segments, double x, double y) {
        double least = Double.POSITIVE_INFINITY;
        for (int k = 0; k < segments.count; k++) {
            double along = (x - segments.x[k]) * segments.ux[k] + (y - segments.y[k]) * segments.uy[k];
            double at = Math.max(0, Math.min(segments.length[k], along));
            least = Math.min(
                    least,
                    Math.hypot(x - segments.x[k] - at * segments.ux[k], y - segments.y[k] - at * segments.uy[k]));
        }
        return least;
    }

    /** Cut is what is nearer than the smooth minimum of the jet's radius and y_D, y_D^2 = rho^2 + 2 s^2 ln(D u_sep). */
    private static double depthInCut(FootSegments segments, double depth, double x, double y) {
        double rho = distance(segments, x, y);
        if (depth == 0) {
            return PROFILE.jetRadiusSi(0) - rho;
        }
        double excess = Math.log(dose(segments, x, y) * PROFILE.front().separationFeedSi(depth));
        double squared = rho * rho + 2 * PROFILE.spreadSi() * PROFILE.spreadSi() * excess;
        return squared > 0
                ? Math.pow(Math.pow(squared, -4) + Math.pow(PROFILE.jetRadiusSi(depth), -8), -0.125) - rho
                : Double.NEGATIVE_INFINITY;
    }

    @Test
    void doseAndDistanceAreThoseOfAllSegments() {
        for (long seed = 0; seed < 10; seed++) {
            FootSegments segments = crooked(seed);
            DoseField field = field(segments, H);
            Random random = new Random(seed);
            for (int i = 0; i < 200; i++) {
                double x = 6e-3 * (random.nextDouble() - 0.5);
                double y = 6e-3 * (random.nextDouble() - 0.5);
                field.evaluate(x, y);
                double dose = dose(segments, x, y);
                double distance = distance(segments, x, y);
                double reach = 6 * PROFILE.spreadSi();

                // beyond six spreads a segment adds less than 1.5e-8 of the dose on its axis
                assertThat(field.dose).isCloseTo(dose, within(1e-6 * dose + 3e-8 * 2 * 600));
                assertThat(field.distanceM).isCloseTo(Math.min(distance, reach), within(1e-15));
                assertThat(field.nearest >= 0).isEqualTo(distance < reach);
            }
        }
    }

    @Test
    void thePointsThatAreCutAreThoseOfTheFormula() {
        for (long seed = 0; seed < 10; seed++) {
            FootSegments segments = crooked(seed);
            for (double depth : new double[] {0, 0.3 * H, H, 1.4 * H}) {
                DoseField field = field(segments, depth);
                Random random = new Random(seed);
                for (int i = 0; i < 100; i++) {
                    double x = 4e-3 * (random.nextDouble() - 0.5);
                    double y = 4e-3 * (random.nextDouble() - 0.5);
                    double expected = depthInCut(segments, depth, x, y);
                    double found = field.depthInCut(x, y);

                    if (expected > 1e-9) {
                        assertThat(found).isCloseTo(expected, within(1e-9));
                        assertThat(distance(segments, x, y)).isLessThan(field.cutReachM());
                    } else if (expected < -1e-9) {
                        assertThat(found).isNegative();
                    }
                }
            }
        }
    }

    @Test
    void theWallIsTheFirstPlaceThatIsCut() {
        int walls = 0;
        int none = 0;
        for (long seed = 0; seed < 12; seed++) {
            FootSegments segments = crooked(seed);
            double depth = H * new double[] {0, 0.1, 0.7, 1, 1.5}[(int) (seed % 5)];
            WallSearch search = new WallSearch(field(segments, depth), ACCURACY);
            Random random = new Random(seed + 50);
            for (int i = 0; i < 12; i++) {
                double angle = 7 * random.nextDouble();
                double nx = Math.cos(angle);
                double ny = Math.sin(angle);
                double x = 3e-3 * (random.nextDouble() - 0.5) - 3e-3 * nx;
                double y = 3e-3 * (random.nextDouble() - 0.5) - 3e-3 * ny;
                double expected = firstCut(segments, depth, new double[] {x, y, nx, ny}, 0, 6e-3);
                boolean isFound = search.find(x, y, nx, ny, 0, 6e-3);

                assertThat(isFound).isEqualTo(!Double.isNaN(expected));
                if (isFound) {
                    walls++;
                    assertThat(search.wallM).isCloseTo(expected, within(2 * ACCURACY));
                } else {
                    none++;
                }
            }
        }
        assertThat(walls).isGreaterThan(60);
        assertThat(none).isGreaterThan(10);
    }

    /** In steps of 20 µm, then by bisection; not a number if nothing is cut. */
    private static double firstCut(FootSegments segments, double depth, double[] line, double from, double to) {
        double step = 20e-6;
        for (double r = from; r <= to; r += step) {
            if (depthInCut(segments, depth, line[0] + r * line[2], line[1] + r * line[3]) > 0) {
                double low = r - step;
                double high = r;
                while (r > from && high - low > ACCURACY / 10) {
                    double middle = (low + high) / 2;
                    boolean isCut =
                            depthInCut(segments, depth, line[0] + middle * line[2], line[1] + middle * line[3]) > 0;
                    low = isCut ? low : middle;
                    high = isCut ? middle : high;
                }
                return high;
            }
        }
        return Double.NaN;
    }

    @Test
    void aSearchThatStartsInTheCutEndsThere() {
        FootSegments segments = crooked(3);
        WallSearch search = new WallSearch(field(segments, 0), ACCURACY);

        assertThat(search.find(segments.x[0], segments.y[0], 1, 0, 0, 1e-3)).isTrue();
        assertThat(search.wallM).isZero();
        assertThat(search.find(segments.x[0], segments.y[0], 1, 0, 1e-5, 1e-3)).isTrue();
        assertThat(search.wallM).isEqualTo(1e-5);
        assertThat(search.find(1, 1, 1, 0, 0, 1e-3)).isFalse();
    }

    /**
     * No place has the dose that separates beyond the reach: all that acts within 12 spreads, T = 12 s/u, leaves at most
     * T exp(-r^2/(2 s^2))/(sqrt(2 pi) s) at the distance r.
     */
    @Test
    void theReachOfTheCutIsThatOfTheDoseOfALongPass() {
        double s = PROFILE.spreadSi();
        for (double ratio : new double[] {0.3, 0.5, 0.8, 1.5, 4}) {
            double feed = PROFILE.front().separationFeedSi(H) / ratio;
            FootSegments segments = new FootSegments(1);
            segments.add(-0.03, 0.002, 0.03, 0.002, 0.06 / feed, 0);
            double excess = Math.log(12 / Math.sqrt(2 * Math.PI) * ratio);
            double expected = Math.min(PROFILE.jetRadiusSi(H), s * Math.sqrt(2 * Math.max(0, excess)));
            DoseField field = field(segments, H);

            assertThat(field.cutReachM()).isCloseTo(expected, within(1e-9));
            if (ratio > 1) {
                assertThat(PROFILE.halfWidthSi(H, feed)).isLessThan(field.cutReachM());
            }
        }
        FootSegments fast = new FootSegments(1);
        fast.add(-0.03, 0, 0.03, 0, 0.06 / (10 * PROFILE.front().separationFeedSi(H)), 0);
        assertThat(field(fast, H).cutReachM()).isZero();
        assertThat(field(fast, H).depthInCut(0, 0)).isNegative();
        assertThat(field(fast, 0).cutReachM()).isEqualTo(PROFILE.jetRadiusSi(0));
    }
}

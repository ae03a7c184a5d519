package dev.waterjet.toolpath;

import static dev.waterjet.Refusals.assertRefused;
import static dev.waterjet.measure.Measures.millimetres;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.measure.DomainException;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.part.Contour;
import dev.waterjet.part.ContourBuilder;
import dev.waterjet.part.Finding;
import dev.waterjet.part.Part;
import dev.waterjet.part.Point;
import dev.waterjet.part.Side;
import dev.waterjet.quality.EdgeRequirement;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.Test;

/** Limits of offsets and of what counts as a corner, from both sides. */
class OffsetLimitsTest {

    private static final Contour SQUARE =
            Contour.rectangle(Point.millimetres(0, 0), Point.millimetres(20, 20), EdgeRequirement.defaults());

    private static void assertNamed(ThrowingCallable call, String quantity) {
        assertThatExceptionOfType(DomainException.class)
                .isThrownBy(call)
                .satisfies(e -> assertThat(e.quantity()).isEqualTo(quantity));
    }

    private static QuantityArray<javax.measure.quantity.Length> lengths(double... metres) {
        return QuantityArray.ofSi(Kind.LENGTH, metres);
    }

    @Test
    void offsetsHaveTheirBounds() {
        assertNamed(() -> KerfOffset.of(Kind.LENGTH.of(1e-7)), "kerf offset");
        assertNamed(() -> KerfOffset.perEdge(lengths(1e-3, 0)), "kerf offset");
        assertNamed(() -> KerfOffset.perEdge(lengths()), "number of offsets");
        assertNamed(() -> KerfOffset.of(millimetres(1)).withCornerTolerance(millimetres(-1e-6)), "corner tolerance");
        for (int count : new int[] {2, 3, 5}) {
            double[] some = new double[count];
            Arrays.fill(some, 5e-4);
            assertNamed(() -> KerfOffset.perEdge(lengths(some)).apply(SQUARE, Side.LEFT), "number of offsets");
        }
        Contour path = KerfOffset.of(Kind.LENGTH.of(1.01e-7))
                .apply(SQUARE, SQUARE.enclosedSide())
                .path()
                .contour();
        assertThat(path.lengthSi()).isCloseTo(0.08 - 8 * 1.01e-7, within(1e-12));
        assertThat(KerfOffset.perEdge(lengths(5e-4, 5e-4, 5e-4, 5e-4)).apply(SQUARE, Side.LEFT))
                .isEqualTo(KerfOffset.of(millimetres(0.5)).apply(SQUARE, Side.LEFT));
    }

    @Test
    void aResultHasPathsAndNamesTheLongest() {
        OffsetResult one = KerfOffset.of(millimetres(0.5)).apply(SQUARE, SQUARE.enclosedSide());
        OffsetResult other = KerfOffset.of(millimetres(0.5))
                .apply(SQUARE, SQUARE.enclosedSide().opposite());
        OffsetResult both =
                new OffsetResult(List.of(one.path(), other.path(), one.path()), Kind.LENGTH.of(0.25), other.findings());

        assertThat(both.path()).isEqualTo(other.path());
        assertThat(both.describe()).containsEntry("unreached_length_m", 0.25).containsKeys("paths", "findings");
        assertThat(one.describe()).containsEntry("unreached_length_m", 0.0);
        assertNamed(() -> new OffsetResult(List.of(), Kind.LENGTH.of(0), List.of()), "number of paths");
    }

    /** A blunt end of a bay: many edges that only turn towards the jet are one corner, up to three offsets deep. */
    @Test
    void aCornerOfManyEdgesIsOneUpToThreeOffsetsDeep() {
        for (double angle : new double[] {30, 24, 20, 16}) {
            double half = Math.toRadians(angle) / 2;
            // the tip is cut off by two short edges, 0.02 mm wide
            double cut = 1e-5 / Math.tan(half);
            ContourBuilder builder = Contour.fromSi(0.02, -0.02 * Math.tan(half));
            Contour wedge = builder.lineToSi(0.02, 0.02 * Math.tan(half))
                    .lineToSi(cut, 1e-5)
                    .lineToSi(cut - 2e-6, 0)
                    .lineToSi(cut, -1e-5)
                    .close();
            double d = 5e-4;
            double depth = d / Math.sin(half) - (cut - 2e-6) - d;
            OffsetResult result = KerfOffset.of(Kind.LENGTH.of(d))
                    .withNarrowPlaces(KerfOffset.NarrowPlaces.BRIDGE)
                    .apply(wedge, wedge.enclosedSide());
            boolean isCorner = depth <= 3 * d;

            assertThat(result.findings().stream().map(Finding::code))
                    .filteredOn("jet-does-not-fit"::equals)
                    .hasSize(isCorner ? 0 : 1);
            assertThat(Kind.LENGTH.si(result.unreachedLength()) > 0).isNotEqualTo(isCorner);
            List<Finding> tip = new ArrayList<>(result.findings());
            tip.removeIf(found ->
                    found.isSatisfied() || Objects.requireNonNull(found.place()).xSi() > 0.015);
            assertThat(tip).hasSize(1);
            if (isCorner) {
                assertThat((Double) tip.get(0).message().parameters().get("depth_m"))
                        .isCloseTo(depth, within(1e-8));
            }
        }
    }

    /** A bump in a corner is no corner: it turns away from the jet. */
    @Test
    void aCornerWithABumpIsANarrowPlace() {
        for (double bump : new double[] {0, 0.3}) {
            double c = 0.3e-3;
            double b = bump * 1e-3;
            ContourBuilder builder = Contour.fromSi(0, 0.02).lineToSi(0, c);
            if (b > 0) {
                builder.lineToSi(b, b);
            }
            Contour plate = builder.lineToSi(c, 0)
                    .lineToSi(0.02, 0)
                    .lineToSi(0.02, 0.02)
                    .close();
            OffsetResult result = KerfOffset.of(millimetres(0.8))
                    .withCornerTolerance(millimetres(0))
                    .withNarrowPlaces(KerfOffset.NarrowPlaces.BRIDGE)
                    .apply(plate, plate.enclosedSide());

            assertThat(result.findings().stream().map(Finding::code))
                    .filteredOn("jet-does-not-fit"::equals)
                    .hasSize(b > 0 ? 1 : 0);
        }
    }

    @Test
    void aLeadIsClearWithSmallLeadsAndSatisfiedWithFullOnes() {
        CuttingRules rules = CuttingRules.of(millimetres(1.1), millimetres(10));
        Part part =
                Part.of(SQUARE, Contour.circle(Point.millimetres(10, 10), millimetres(3), EdgeRequirement.defaults()));
        Lead outer = LeadPlacer.of(part, rules).suggest(1);
        Lead inner = LeadPlacer.of(part, rules).suggest(0);

        assertThat(outer.isSatisfied()).isTrue();
        assertThat(outer.isClear()).isTrue();
        assertThat(inner.isClear()).isTrue();
        assertThat(inner.isSatisfied()).isFalse();
        assertThat(inner.describe())
                .containsEntry("pierce", inner.pierce().describe())
                .containsEntry("entry", inner.entry().describe())
                .containsEntry("tool_path", inner.toolPath().describe());
        assertThat(inner.toString()).contains(inner.pierce().toString());
        for (int index : new int[] {-1, 2}) {
            assertRefused(() -> LeadPlacer.of(part, rules).suggest(index), "no-such-index");
            assertRefused(() -> LeadPlacer.of(part, rules).at(index, millimetres(1)), "no-such-index");
        }
        assertNamed(() -> LeadPlacer.of(part, rules).at(0, millimetres(-1e-3)), "distance along the contour");
    }
}

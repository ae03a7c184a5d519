package dev.waterjet.toolpath;

import static dev.waterjet.measure.Measures.megapascals;
import static dev.waterjet.measure.Measures.millimetres;
import static dev.waterjet.measure.Measures.newtons;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.ValueContract;
import dev.waterjet.measure.DomainException;
import dev.waterjet.measure.Kind;
import dev.waterjet.part.Contour;
import dev.waterjet.part.Finding;
import dev.waterjet.part.Point;
import dev.waterjet.quality.EdgeRequirement;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

class HoldingTabsTest {

    private static final CuttingRules RULES = CuttingRules.of(millimetres(0.8), millimetres(10));
    private static final HoldingTabs TABS = HoldingTabs.of(newtons(300), megapascals(150), millimetres(10), RULES);

    private static Contour rectangle(double width, double height) {
        return Contour.rectangle(Point.millimetres(0, 0), Point.millimetres(width, height), EdgeRequirement.defaults());
    }

    @Test
    void values() {
        ValueContract.of(() -> TABS)
                .differs("force", HoldingTabs.of(newtons(301), megapascals(150), millimetres(10), RULES))
                .differs("strength", HoldingTabs.of(newtons(300), megapascals(151), millimetres(10), RULES))
                .differs("plate", HoldingTabs.of(newtons(300), megapascals(150), millimetres(11), RULES))
                .differs(
                        "kerf",
                        HoldingTabs.of(
                                newtons(300),
                                megapascals(150),
                                millimetres(10),
                                CuttingRules.of(millimetres(1), millimetres(10))))
                .differs("safety", TABS.withSafety(4))
                .prints("300 N")
                .check();
    }

    @Test
    void tabsBearTheForceInShearAndBending() {
        // shear: 300 N 3 / (2 10 mm 150 MPa) = 0.3 mm; bending asks for more across a kerf of 0.8 mm
        double bending = Math.sqrt(3 * 450 * 0.0008 / (0.01 * Math.sqrt(3) * 150e6));

        assertThat(Kind.LENGTH.si(TABS.width(2))).isCloseTo(bending, within(1e-15));
        assertThat(Kind.LENGTH.si(TABS.width(8))).isLessThan(Kind.LENGTH.si(TABS.width(4)));
    }

    @Test
    void narrowTabsAndASingleOneDoNotHold() {
        Contour plate = rectangle(50, 50);

        assertThat(TABS.check(plate, 2, TABS.width(2)).isSatisfied()).isTrue();
        Finding narrow = TABS.check(plate, 2, millimetres(0.2));
        assertThat(narrow.isSatisfied()).isFalse();
        assertThat(narrow.remedies().get(0).parameters()).containsEntry("width_m", Kind.LENGTH.si(TABS.width(2)));
        assertThat(TABS.check(plate, 1, millimetres(5)).code()).isEqualTo("single-tab");
    }

    @Test
    void tabsLieEvenlyAndKeepAwayFromCorners() {
        assertThat(TABS.suggest(rectangle(50, 50), 4).toSi())
                .containsExactly(new double[] {0.025, 0.075, 0.125, 0.175}, within(1e-15));
        // 200 mm round: of 25, 75, 125 and 175 mm two lie 0.5 mm behind a corner and move on by two widths
        double clear = 2 * Kind.LENGTH.si(TABS.width(4));
        double[] places = TABS.suggest(rectangle(74.5, 25.5), 4).toSi();
        assertThat(places[0]).isCloseTo(0.025, within(1e-12));
        assertThat(places[1] - 0.0745).isGreaterThanOrEqualTo(clear - 1e-12);
        assertThat(places[2]).isCloseTo(0.125, within(1e-12));
        assertThat(places[3] - 0.1745).isGreaterThanOrEqualTo(clear - 1e-12);
    }

    @Test
    void impossibleTabsAreRefused() {
        assertThatExceptionOfType(DomainException.class)
                .isThrownBy(() -> TABS.suggest(rectangle(1.2, 1.2), 8))
                .satisfies(e -> {
                    assertThat(e.code()).isEqualTo("tabs-do-not-fit");
                    assertThat(e.parameters()).containsEntry("count", 8L);
                });
        assertThatExceptionOfType(DomainException.class)
                .isThrownBy(() -> TABS.suggest(rectangle(10, 10), 1))
                .satisfies(e -> assertThat(e.quantity()).isEqualTo("number of tabs"));
        assertThatExceptionOfType(DomainException.class)
                .isThrownBy(() -> TABS.withSafety(0.5))
                .satisfies(e -> assertThat(e.quantity()).isEqualTo("safety factor"));
    }

    @Property(tries = 500, seed = "20261127")
    void tabsNeverOverlap(
            @ForAll @DoubleRange(min = 2, max = 100) double width,
            @ForAll @DoubleRange(min = 2, max = 100) double height,
            @ForAll @DoubleRange(min = 5, max = 200) double strengthMpa,
            @ForAll @IntRange(min = 2, max = 12) int count) {
        HoldingTabs tabs = HoldingTabs.of(newtons(200), megapascals(strengthMpa), millimetres(12), RULES);
        double apart = Kind.LENGTH.si(tabs.width(count)) + 0.0008;
        double total = 2 * (width + height) * 1e-3;
        if (count * apart > total) {
            assertThatExceptionOfType(DomainException.class)
                    .isThrownBy(() -> tabs.suggest(rectangle(width, height), count));
            return;
        }
        double[] places = tabs.suggest(rectangle(width, height), count).toSi();

        for (int k = 0; k < count; k++) {
            double next = k + 1 < count ? places[k + 1] : places[0] + total;
            assertThat(next - places[k]).isGreaterThanOrEqualTo(apart - 1e-12);
        }
    }
}

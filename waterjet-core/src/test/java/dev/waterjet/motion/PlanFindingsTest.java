package dev.waterjet.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.measure.Kind;
import dev.waterjet.part.Contour;
import dev.waterjet.part.Finding;
import dev.waterjet.part.Point;
import dev.waterjet.part.Side;
import dev.waterjet.quality.EdgeRequirement;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;

/** Findings stand in the middle of the place that they are about, with its numbers. */
class PlanFindingsTest {

    private static final EdgeRequirement MEDIUM = FeedPlanTest.MEDIUM;

    private static Contour path() {
        return Contour.fromSi(0, 0)
                .requirement(MEDIUM)
                .lineToSi(0.04, 0)
                .arcToSi(0.06, 0.02, 0.04, 0.02, Side.LEFT)
                .lineToSi(0.06, 0.05)
                .open();
    }

    private static PathPlaces places() {
        double arc = 0.02 * Math.PI / 2;
        PathPlaces places = new PathPlaces();
        places.edge(0, 0.04, 0.01, 1e-6, FeedLimit.QUALITY);
        places.slowdown(
                0.04,
                0.04,
                new Slowdown(0.004, 0.002, 3e-4, 2e-4, SlowdownReason.LEAST_ERROR),
                0.002,
                FeedLimit.LAG_AT_INSIDE_CORNER);
        places.slowdown(
                0.04,
                0.04 + arc,
                new Slowdown(0.006, 0.003, 5e-4, 1e-4, SlowdownReason.LEAST_ERROR),
                0.003,
                FeedLimit.LAG_ON_ARC);
        places.slowdown(
                0.04 + arc,
                0.04 + arc,
                new Slowdown(0.009, 0.003, 1e-4, 1e-4, SlowdownReason.TOLERANCE),
                0.003,
                FeedLimit.LAG_AT_OUTSIDE_CORNER);
        places.edge(0.04 + arc, 0.07 + arc, 0.005, 1e-6, FeedLimit.QUALITY);
        places.slowdown(
                0.07 + arc,
                0.07 + arc,
                new Slowdown(0.003, 0.003, 5e-4, 1e-4, SlowdownReason.SEPARATION),
                0.003,
                FeedLimit.SEPARATION);
        return places;
    }

    private static List<Finding> findings(double minimum) {
        return new PlanFindings(path(), places(), minimum).list();
    }

    private static void requirePlace(Finding finding, double x, double y) {
        Point place = Objects.requireNonNull(finding.place());
        assertThat(place.xSi()).isCloseTo(x, within(1e-12));
        assertThat(place.ySi()).isCloseTo(y, within(1e-12));
        assertThat(finding.isSatisfied()).isFalse();
    }

    @Test
    void anErrorAboveItsToleranceIsFoundInTheMiddleOfItsPlace() {
        List<Finding> findings = findings(0.001);

        assertThat(findings).hasSize(3).allMatch(each -> each.code().equals("bottom-edge-error"));
        requirePlace(findings.get(0), 0.04, 0);
        double half = Math.sqrt(0.5);
        requirePlace(findings.get(1), 0.04 + 0.02 * half, 0.02 - 0.02 * half);
        requirePlace(findings.get(2), 0.06, 0.05);
        assertThat(findings.get(1).message().parameters())
                .containsEntry(Kind.LENGTH.column("value"), 5e-4)
                .containsEntry(Kind.LENGTH.column("limit"), 1e-4)
                .containsEntry(Kind.LENGTH.column("zone"), 0.003)
                .containsEntry(Kind.SPEED.column("feed"), 0.006)
                .containsEntry("cause", FeedLimit.LAG_ON_ARC.label());
    }

    @Test
    void aFeedBelowTheMinimumIsFoundInTheMiddleOfItsPlace() {
        List<Finding> findings = findings(0.0055);

        assertThat(findings)
                .extracting(Finding::code)
                .containsExactly(
                        "bottom-edge-error",
                        "below-minimum-feed",
                        "bottom-edge-error",
                        "below-minimum-feed",
                        "bottom-edge-error",
                        "below-minimum-feed");
        requirePlace(findings.get(3), 0.06, 0.035);
        assertThat(findings.get(3).message().parameters())
                .containsEntry(Kind.SPEED.column("value"), 0.005)
                .containsEntry(Kind.SPEED.column("limit"), 0.0055);
        // a feed that is just the minimum is kept
        assertThat(findings(0.005))
                .filteredOn(each -> each.code().equals("below-minimum-feed"))
                .hasSize(2);
    }
}

package dev.waterjet.simulate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.waterjet.Refusals;
import java.util.HashSet;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Lists of the grid against a search through all segments. */
class SegmentGridTest {

    private static final double CELL = 0.7e-3;

    private static FootSegments random(long seed, int n, double size) {
        Random random = new Random(seed);
        FootSegments segments = new FootSegments(n);
        for (int i = 0; i < n; i++) {
            double x = size * (random.nextDouble() - 0.5);
            double y = size * (random.nextDouble() - 0.5);
            boolean isDwell = i % 7 == 3;
            double length = isDwell ? 0 : (i % 5 == 0 ? 10e-3 : 1e-3) * random.nextDouble();
            double angle = i % 6 == 0 ? Math.PI / 2 * random.nextInt(4) : 7 * random.nextDouble();
            segments.add(x, y, x + length * Math.cos(angle), y + length * Math.sin(angle), 1 + random.nextDouble(), i);
        }
        return segments;
    }

    private static double distance(FootSegments segments, int k, double x, double y) {
        double dx = segments.endX(k) - segments.x[k];
        double dy = segments.endY(k) - segments.y[k];
        double squared = dx * dx + dy * dy;
        double share = squared > 0 ? ((x - segments.x[k]) * dx + (y - segments.y[k]) * dy) / squared : 0;
        double at = Math.max(0, Math.min(1, share));
        return Math.hypot(x - segments.x[k] - at * dx, y - segments.y[k] - at * dy);
    }

    /** Nothing within the reach of a point is missing from its list, and nothing in it is farther than cells can be. */
    @ParameterizedTest
    @CsvSource({"1, 60, 20, 0.7", "2, 60, 20, 2.1", "3, 400, 60, 0.4", "4, 5, 200, 3"})
    void theListOfAPointHoldsWhatIsWithinReach(long seed, int n, double sizeMm, double reachMm) {
        FootSegments segments = random(seed, n, sizeMm * 1e-3);
        double reach = reachMm * 1e-3;
        SegmentGrid grid = new SegmentGrid(segments);
        grid.build(CELL, reach);
        Random random = new Random(seed + 100);
        int found = 0;
        int missing = 0;
        int far = 0;
        for (int i = 0; i < 1000; i++) {
            double x = 1.3 * sizeMm * 1e-3 * (random.nextDouble() - 0.5);
            double y = 1.3 * sizeMm * 1e-3 * (random.nextDouble() - 0.5);
            Set<Integer> listed = new HashSet<>();
            boolean isAny = grid.locate(x, y);
            for (int k = grid.first; k < grid.last; k++) {
                assertThat(listed.add(grid.item(k))).isTrue();
            }
            assertThat(isAny).isEqualTo(!listed.isEmpty());
            found += listed.size();
            for (int k = 0; k < segments.count; k++) {
                double distance = distance(segments, k, x, y);
                missing += distance <= reach && !listed.contains(k) ? 1 : 0;
                far += distance > 2 * Math.sqrt(2) * (CELL + reach) && listed.contains(k) ? 1 : 0;
            }
        }
        assertThat(missing).isZero();
        assertThat(far).isZero();
        assertThat(found).isPositive();
    }

    /** Each cell has its own list: entries are their lengths, and the longest time is that of one of them. */
    @ParameterizedTest
    @CsvSource({"5, 80, 15, 0.7, 0.5", "6, 300, 60, 0.3, 100", "7, 3, 4, 2, 3"})
    void entriesAndTimesAreThoseOfAllCells(long seed, int n, double sizeMm, double reachMm, double mostMm) {
        FootSegments segments = random(seed, n, sizeMm * 1e-3);
        SegmentGrid grid = new SegmentGrid(segments);
        grid.build(3 * CELL, CELL);
        grid.build(CELL, reachMm * 1e-3);
        int cells = (int) Math.ceil((sizeMm / 2 + 10 + reachMm) * 1e-3 / CELL) + 1;
        int entries = 0;
        int used = 0;
        double longest = 0;
        for (int column = -cells; column < cells; column++) {
            for (int row = -cells; row < cells; row++) {
                if (grid.locate((column + 0.5) * CELL, (row + 0.5) * CELL)) {
                    used++;
                    entries += grid.last - grid.first;
                    longest = Math.max(longest, time(segments, grid, mostMm * 1e-3));
                }
            }
        }

        assertThat(grid.entries()).isEqualTo(entries);
        assertThat(grid.perCell()).isCloseTo((double) entries / used, within(1e-12));
        assertThat(grid.longestTime(mostMm * 1e-3)).isCloseTo(longest, within(1e-9 * longest));
    }

    private static double time(FootSegments segments, SegmentGrid grid, double most) {
        double time = 0;
        for (int i = grid.first; i < grid.last; i++) {
            int k = grid.item(i);
            double length = segments.length[k];
            time += length > 0 ? segments.pace[k] * Math.min(length, most) : segments.pace[k];
        }
        return time;
    }

    /** A long line across the cells is in the cells near it, not in all of the box around it. */
    @Test
    void aDiagonalIsListedNearItselfOnly() {
        FootSegments segments = new FootSegments(1);
        segments.add(0, 0, 1, -1, 1, 0);
        SegmentGrid grid = new SegmentGrid(segments);
        grid.build(0.01, 0.01);

        // 100 rows of some five to seven columns; the box has 10 000 cells
        assertThat(grid.entries()).isBetween(400, 800);
        assertThat(grid.locate(0.5, -0.5)).isTrue();
        assertThat(grid.locate(0.5, -0.4)).isFalse();
        assertThat(grid.locate(0.9, 0.1)).isFalse();
    }

    @Test
    void emptyGridsHaveNoLists() {
        SegmentGrid grid = new SegmentGrid(new FootSegments(1));
        grid.build(CELL, CELL);

        assertThat(grid.locate(0, 0)).isFalse();
        assertThat(grid.entries()).isZero();
        assertThat(grid.perCell()).isZero();
        assertThat(grid.longestTime(1)).isZero();
    }

    /** 20 million entries are the limit: 10 000 dwells in one place, each in some 2600 cells, have 26 million. */
    @Test
    void moreEntriesThanTheMemoryTakesAreRefused() {
        FootSegments segments = new FootSegments(10_000);
        for (int i = 0; i < 10_000; i++) {
            segments.add(0, 0, 0, 0, 1, i);
        }
        SegmentGrid grid = new SegmentGrid(segments);

        Refusals.assertRefused(
                () -> grid.build(1e-3, 25e-3), "must-be-at-most", "cells along the path on which the jet acts", 2e7);
    }
}

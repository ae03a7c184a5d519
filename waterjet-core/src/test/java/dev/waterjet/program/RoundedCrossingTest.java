package dev.waterjet.program;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Crossings of a contour with itself that are smaller than the rounding of its coordinates, and others that are not. */
class RoundedCrossingTest {

    /** A plate of 100 by 40 with a slot from its lower side, whose sides cross half way by a width. */
    private static String slot(double width, int places, double turnDeg, String unit) {
        double[][] corners = {
            {0, 0}, {50, 0}, {50 + width, 20}, {50, 20}, {50 + width, 0}, {100, 0}, {100, 40}, {0, 40}, {0, 0}
        };
        double turn = Math.toRadians(turnDeg);
        StringBuilder program = new StringBuilder(unit + " G90\n");
        for (int i = 0; i < corners.length; i++) {
            double x = corners[i][0] * Math.cos(turn) - corners[i][1] * Math.sin(turn);
            double y = corners[i][0] * Math.sin(turn) + corners[i][1] * Math.cos(turn);
            program.append(String.format(
                    Locale.ROOT, "%s X%." + places + "f Y%." + places + "f\n", i == 0 ? "G0" : "G1", x, y));
            program.append(i == 0 ? "M3\nG4 P500\n" : "");
        }
        return program.append("M5\n").toString();
    }

    private static boolean crosses(String program) {
        return ProgramChecks.defaults().check(PartProgram.parse(program)).stream()
                .anyMatch(finding -> finding.code().equals("contour-crosses-itself"));
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, 17, 30, 90, 201})
    void sidesOfASlotThatCrossByTheirRoundingDoNotCross(double turn) {
        assertThat(crosses(slot(0.001, 3, turn, "G21"))).isFalse();
        assertThat(crosses(slot(0.0001, 4, turn, "G20"))).isFalse();
        assertThat(crosses(slot(0.01, 3, turn, "G21"))).isTrue();
        assertThat(crosses(slot(0.001, 4, turn, "G20"))).isTrue();
        assertThat(crosses(slot(0.001, 6, turn, "G21"))).isTrue();
    }

    @ParameterizedTest
    @ValueSource(doubles = {30, 1, 0.05})
    void aFigureOfEightCrossesHoweverSmall(double size) {
        String bow = String.format(
                Locale.ROOT, "G21 G90\nG0 X0 Y0\nM3\nG1 X%1$s Y%1$s\nG1 Y0\nG1 X0 Y%1$s\nG1 Y0\nM5\n", size);

        assertThat(crosses(bow)).isTrue();
    }

    /** Three lobes of arcs: of those that one crossing cuts off, two turn against each other and have no area together. */
    @Test
    void lobesThatTurnAgainstEachOtherCross() {
        String program = """
                G21 G90
                G0 X0 Y0
                M3
                G3 X10 Y0 R5
                G2 X20 Y0 R5
                G3 X30 Y0 R5
                G3 X20 Y0 R5
                G2 X10 Y0.5 R5.5
                G3 X0 Y0 R6
                M5
                """;

        assertThat(crosses(program)).isTrue();
    }
}

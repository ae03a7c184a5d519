package dev.waterjet.program;

import dev.waterjet.part.Side;
import java.util.List;

/**
 * Cut that is drawn, and its loop by hand.
 *
 * @param name name of the cut
 * @param program its program
 * @param purposes purposes of its blocks by their first letters: P, L, C, O, and E for lead-out
 * @param loop length of the loop in mm
 * @param area area of the loop in mm2
 * @param overcut length of the overcut in mm
 */
record DrawnCut(String name, DrawnProgram program, String purposes, double loop, double area, double overcut) {

    /** Half the angle of the lens of two circles of 5 whose centres are 6 apart: they cross at (3, 4) and (3, -4). */
    private static final double LENS = Math.acos(0.6);

    @Override
    public String toString() {
        return name;
    }

    private static DrawnProgram drawn() {
        return new DrawnProgram();
    }

    private static double x(double radius, double degrees) {
        return radius * Math.cos(Math.toRadians(degrees));
    }

    private static double y(double radius, double degrees) {
        return radius * Math.sin(Math.toRadians(degrees));
    }

    /** Sixty by sixty, from the middle of a side; the last edge goes on over the first as far as given. */
    private static DrawnProgram square(double lastX) {
        return drawn().rapid(30, -5)
                .on()
                .line(30, 0)
                .line(0, 0)
                .line(0, 60)
                .line(60, 60)
                .line(60, 0)
                .line(lastX, 0)
                .line(lastX, -5)
                .off();
    }

    static List<DrawnCut> all() {
        double degrees = Math.toDegrees(LENS);
        return List.of(
                new DrawnCut("closed at its start", square(30), "LCCCCCE", 240, 3600, 0),
                new DrawnCut("overcut by 5", square(25), "LCCCCCE", 240, 3600, 5),
                new DrawnCut("overcut to the corner", square(0), "LCCCCCE", 240, 3600, 30),
                new DrawnCut(
                        "overcut by a third of a circle",
                        drawn().rapid(15, 0)
                                .on()
                                .line(20, 0)
                                .arc(-20, 0, 0, 0, Side.LEFT)
                                .arc(20, 0, 0, 0, Side.LEFT)
                                .arc(x(20, 120), y(20, 120), 0, 0, Side.LEFT)
                                .line(0, 0)
                                .off(),
                        "LCCOE",
                        40 * Math.PI,
                        400 * Math.PI,
                        40 * Math.PI / 3),
                new DrawnCut(
                        "the last arc goes on by 30 degrees",
                        drawn().rapid(15, 0)
                                .on()
                                .line(20, 0)
                                .arc(-20, 0, 0, 0, Side.LEFT)
                                .arc(x(20, 30), y(20, 30), 0, 0, Side.LEFT)
                                .line(10, 5)
                                .off(),
                        "LCCE",
                        40 * Math.PI,
                        400 * Math.PI,
                        20 * Math.PI / 6),
                new DrawnCut(
                        "the last line crosses the first",
                        drawn().rapid(0, 0)
                                .on()
                                .line(50, 0)
                                .line(50, 40)
                                .line(10, 40)
                                .line(10, -6)
                                .off(),
                        "CCCC",
                        160,
                        1600,
                        6),
                new DrawnCut(
                        "the last line ends on the first",
                        drawn().rapid(0, 0)
                                .on()
                                .line(50, 0)
                                .line(50, 40)
                                .line(10, 40)
                                .line(10, 0)
                                .off(),
                        "CCCC",
                        160,
                        1600,
                        0),
                new DrawnCut(
                        "ends on the first line and leaves",
                        drawn().rapid(0, 0)
                                .on()
                                .line(50, 0)
                                .line(50, 40)
                                .line(10, 40)
                                .line(10, 0)
                                .line(4, -9)
                                .off(),
                        "CCCCE",
                        160,
                        1600,
                        0),
                new DrawnCut(
                        "arcs that cross within the first and the last block",
                        drawn().rapid(x(5, -120), y(5, -120))
                                .on()
                                .arc(5, 0, 0, 0, Side.LEFT)
                                .arc(3, 4, 0, 0, Side.LEFT)
                                .arc(1, 0, 6, 0, Side.LEFT)
                                .arc(6, -5, 6, 0, Side.LEFT)
                                .off(),
                        "CCCC",
                        20 * LENS,
                        2 * (25 * LENS - 12),
                        5 * Math.toRadians(90 - degrees)),
                new DrawnCut(
                        "a moving pierce of two circles",
                        drawn().rapid(30, -8)
                                .on()
                                .arc(30, -8, 31, -8, Side.LEFT)
                                .arc(30, -8, 31, -8, Side.LEFT)
                                .line(30, 0)
                                .line(0, 0)
                                .line(0, 60)
                                .line(30, 60)
                                .line(30, 0)
                                .off(),
                        "PPLCCCC",
                        180,
                        1800,
                        0),
                new DrawnCut(
                        "the larger of two loops",
                        drawn().rapid(0, 0)
                                .on()
                                .line(9, 0)
                                .line(9, 9)
                                .line(0, 0)
                                .line(0, 20)
                                .line(-20, 20)
                                .line(-20, 0)
                                .line(0, 0)
                                .off(),
                        "PPPCCCC",
                        80,
                        400,
                        0),
                new DrawnCut(
                        "the loop with the offset, though smaller",
                        drawn().rapid(0, 0)
                                .on()
                                .offsetLine(1, 9, 0)
                                .line(9, 9)
                                .line(0, 0)
                                .offsetLine(0, 0, 20)
                                .line(-20, 20)
                                .line(-20, 0)
                                .line(0, 0)
                                .off(),
                        "CCCEEEE",
                        18 + Math.sqrt(162),
                        40.5,
                        0),
                new DrawnCut(
                        "an overcut around a corner without a lead",
                        drawn().rapid(5, 0)
                                .on()
                                .line(0, 0)
                                .line(0, 60)
                                .line(60, 60)
                                .line(60, 0)
                                .line(0, 0)
                                .line(0, 8)
                                .line(-3, 9)
                                .off(),
                        "CCCCCOE",
                        240,
                        3600,
                        13),
                new DrawnCut(
                        "two arcs of a lens",
                        drawn().rapid(3, -9)
                                .on()
                                .line(3, -4)
                                .arc(3, 4, 0, 0, Side.LEFT)
                                .arc(3, -4, 6, 0, Side.LEFT)
                                .off(),
                        "LCC",
                        20 * LENS,
                        2 * (25 * LENS - 12),
                        0),
                new DrawnCut(
                        "an edge cut twice, the second time a little outside",
                        drawn().rapid(60, 0)
                                .on()
                                .line(0, 0)
                                .line(0, 60)
                                .line(60, 60)
                                .line(60, 0.0004)
                                .line(0, -0.0004)
                                .line(-9, -9)
                                .off(),
                        "CCCCOE",
                        240,
                        3600,
                        60),
                new DrawnCut(
                        "a gap of nine micrometres",
                        drawn().rapid(0, -5)
                                .on()
                                .line(0, 0)
                                .line(40, 0)
                                .line(40, 30)
                                .line(0.009 / 2.5, 0.0)
                                .off(),
                        "LCCC",
                        120,
                        600,
                        0));
    }
}

/**
 * Part programs in the words of ISO 6983: read, checked, and written back with feeds.
 *
 * <p>A {@link dev.waterjet.program.PartProgram} knows straight lines and arcs (G1, G2, G3 with I and J from the start
 * point, or R), rapid moves (G0), absolute and incremental positions (G90, G91), millimetre and inch (G71 and G70 of the
 * standard, G21 and G20 of common use), dwell (G4) and the words that a planner may pass over. Which words switch the jet
 * is for the machine's builder to say, so {@link dev.waterjet.program.JetWords} are the caller's choice.
 *
 * <p>Comments stand in parentheses, or behind a semicolon to the end of the line. Two of them speak to the planner:
 * {@code (face: fine)} sets the grade of the contour that follows, {@code (open cut)} allows it to end elsewhere than it
 * began.
 *
 * <p>What a program cannot mean is refused with line, column and reason. What is written back differs from what was read
 * in the feed words of cutting blocks and in nothing else.
 */
@NullMarked
package dev.waterjet.program;

import org.jspecify.annotations.NullMarked;

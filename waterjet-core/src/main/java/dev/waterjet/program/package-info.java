/**
 * Part programs in the words of ISO 6983: what a machine for cutting sheet is given.
 *
 * <p>A {@link dev.waterjet.program.PartProgram} is read from text. It holds its {@linkplain dev.waterjet.program.ProgramCut
 * cuts}, each a run of the jet from on to off, as paths of lines and arcs, and gives back its own text with a feed word on
 * every cutting block and not one other character changed.
 *
 * <pre>{@code
 * G90 G71                          absolute, millimetres
 * G0 X0 Y-5
 * (waterjet: name outer edge, grade fine, tolerance 0.05 mm)
 * M3                               jet on
 * G1 X0 Y0                         lead-in
 * G1 X40
 * G3 X50 Y10 I0 J10                arc by its centre, or by R10
 * G1 Y30 X0
 * G1 Y0                            closed: back where the loop began
 * M5                               jet off
 * M30
 * }</pre>
 *
 * <p>Read are: lines G1 and arcs G2, G3 in the XY plane (centre by I and J, or radius by R, a negative one for the longer
 * way); G0, G4; absolute G90 and incremental G91; metric G71 and inch G70 of ISO 6983-1, and G21 and G20 of common
 * use; G90.1 and G91.1 for the centre (common use); offset of the path G40 to G42; shift of the origin G92; work offsets
 * G54 to G59, one for a program; G61, G64, G94 without effect on the path; N, O, F, S, T, D and H; stops M0, M1, ends M2,
 * M30; comments in parentheses or behind a semicolon. Which M codes open and close the jet is a choice of the machine's
 * builder: {@link dev.waterjet.program.ProgramCodes}. Any other word is refused with its line and column, as the path could
 * not be trusted.
 *
 * <p>A comment that begins with {@code waterjet:} says something of the next cut: {@code name} and a name, {@code grade} and
 * a face grade, {@code tolerance} and a length, {@code open} if the cut need not close. Commas part them.
 *
 * <p>Limits of what is read: 50 million characters, two million cutting blocks, 40 words in a line, 24
 * characters in a number, and 1000 m for any place, radius, centre or shift. Beyond one of them the program is refused, with
 * the limit, line and column. Sub-programs and loops are refused, so that nothing nests.
 */
@NullMarked
package dev.waterjet.program;

import org.jspecify.annotations.NullMarked;

/**
 * Part programs in the words of ISO 6983, the input of a machine that cuts sheet.
 *
 * <p>A {@link dev.waterjet.program.PartProgram} is read from text. It has {@linkplain dev.waterjet.program.ProgramCut cuts},
 * each from jet on to jet off, as paths of lines and arcs. It returns its own text with a feed word on every cutting block and
 * no other character changed.
 *
 * <pre>{@code
 * PartProgram program = PartProgram.parse(text);
 * for (ProgramCut cut : program.cuts()) {
 *     Contour path = cut.path(EdgeRequirement.defaults());
 * }
 * }</pre>
 *
 * <p>An example:
 *
 * <pre>
 * G90 G71                          absolute, millimetres
 * G0 X0 Y-5
 * (waterjet: name outer edge, quality fine, tolerance 0.05 mm)
 * M3                               jet on
 * G1 X0 Y0                         lead-in
 * G1 X40
 * G3 X50 Y10 I0 J10                arc by its centre, or by R10
 * G1 Y30 X0
 * G1 Y0                            closed: back at the start of the loop
 * M5                               jet off
 * M30
 * </pre>
 *
 * <p>Accepted words: lines G1 and arcs G2, G3 in the XY plane (centre by I and J, or radius by R, negative for the longer
 * arc); G0, dwell G4; absolute G90 and incremental G91; metric G71 and inch G70 of ISO 6983-1, and G21 and G20 of common
 * use; G90.1 and G91.1 for the centre (common use); offset of the path G40 to G42; shift of the origin G92; work offsets
 * G54 to G59 and G54.1, one for a program; N or a colon, O, F, S, T, D and H; stops M0, M1, ends M2, M30; comments in parentheses or
 * after a semicolon. Words of a safe start that move neither X nor Y have no effect: G9, G43, G44, G49, G50, G61, G61.1, G64,
 * G69, G80, G94, G97, G98, G99, and G28, G30, G53 with Z alone. A block takes one word of a group. Sub-programs
 * ({@code M98 P L}, {@code M99}) are unrolled. {@link dev.waterjet.program.ProgramCodes} sets the M codes that switch the jet and the
 * words that pass through. Any other word is rejected with its line and column, since the path would be uncertain.
 *
 * <p>A comment that begins with {@code waterjet:}, in small or capital letters, is a note for the next cut: {@code name} and a
 * name, {@code quality} and a cut quality, {@code tolerance} and a length, {@code open} if the cut need not close. Notes are
 * separated by commas. Within a cut a note holds from its block, or from the next one if it stands between blocks, to the next note
 * or the end of the cut; it states a quality or a tolerance.
 *
 * <p>{@link dev.waterjet.program.ProgramChecks} checks a program before it is run; {@link dev.waterjet.program.ProgramWriter}
 * writes programs.
 *
 * <p>Limits: 50 million characters, two million cutting blocks, 40 words in a line, 24 characters in a number, and 1000 m for
 * any place, radius, centre or shift. A program beyond one of them is rejected with the limit, line and column.
 * Sub-programs call each other at most eight deep.
 */
@NullMarked
package dev.waterjet.program;

import org.jspecify.annotations.NullMarked;

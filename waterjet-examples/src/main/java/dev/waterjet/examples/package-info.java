/**
 * Small programs on top of the library, in one runnable jar.
 *
 * <p>{@link dev.waterjet.examples.Waterjet} is the command that contains them. Each program is a class that extends
 * {@link dev.waterjet.examples.Program} and fills a {@link dev.waterjet.examples.Table}; the table prints
 * itself for people and as CSV in SI. To add a program, write the class and add it to the list of {@code Waterjet}:
 *
 * <pre>{@code
 * @Command(name = "thrust", description = "Print the reaction force of a waterjet.")
 * final class Thrust extends Program {
 *
 *     @Mixin
 *     private final HeadOptions head = new HeadOptions();          // pressure, orifice, tube, abrasive
 *
 *     @Option(names = "--at", converter = Typed.Pressures.class, paramLabel = "<pressures>",
 *             description = "Gauge pressure or range, such as \"100 MPa..400 MPa step 50 MPa\".")
 *     private QuantityArray<Pressure> pressures = QuantityArray.parse(Kind.PRESSURE, "100 MPa..400 MPa step 50 MPa");
 *
 *     protected Table table() {
 *         Table table = Table.of("Reaction force")
 *                 .column("gauge pressure", Kind.PRESSURE, Units.MEGAPASCAL, 4)
 *                 .column("reaction force", Kind.FORCE, Units.NEWTON, 3);
 *         for (int i = 0; i < pressures.size(); i++) {
 *             WaterJet jet = head.waterJet().withPressure(pressures.get(i));
 *             table.row(pressures.si(i), Kind.FORCE.si(jet.reactionForce()));
 *         }
 *         return table;
 *     }
 * }
 * }</pre>
 *
 * <p>Invalid input ends with status 2 and one line on the error stream; errors of the library become such lines without
 * further code. Output does not depend on the locale.
 */
@NullMarked
package dev.waterjet.examples;

import org.jspecify.annotations.NullMarked;

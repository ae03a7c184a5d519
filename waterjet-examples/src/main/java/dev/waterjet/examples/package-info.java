/**
 * Small programs on top of the library, in one runnable jar.
 *
 * <p>{@link dev.waterjet.examples.Waterjet} is the command that holds them. Each program is a class that extends
 * {@link dev.waterjet.examples.Program} and fills a {@link dev.waterjet.examples.Table}; the table knows how to be read
 * by a person and how to be CSV in SI. To add one, write the class and name it in the list of {@code Waterjet}:
 *
 * <pre>{@code
 * @Command(name = "thrust", description = "Reaction force of a water jet.")
 * final class Thrust extends Program {
 *
 *     @Mixin
 *     private final HeadOptions head = new HeadOptions();          // pressure, orifice, tube, abrasive
 *
 *     @Option(names = "--at", converter = Typed.Pressures.class, paramLabel = "<pressures>",
 *             description = "Pressure or range, such as \"100 MPa..400 MPa step 50 MPa\".")
 *     private QuantityArray<Pressure> pressures = QuantityArray.parse(Kind.PRESSURE, "100 MPa..400 MPa step 50 MPa");
 *
 *     protected Table table() {
 *         Table table = Table.of("Reaction force")
 *                 .column("pressure", Kind.PRESSURE, Units.MEGAPASCAL, 4)
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
 * <p>What a program is given wrongly ends in status 2 and one line on the error stream; the library's own errors become
 * such lines by themselves. What is printed never depends on the locale.
 */
@NullMarked
package dev.waterjet.examples;

import org.jspecify.annotations.NullMarked;

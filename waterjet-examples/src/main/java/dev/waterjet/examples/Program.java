package dev.waterjet.examples;

import dev.waterjet.examples.shop.ShopFile;
import dev.waterjet.material.Materials;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import javax.measure.Quantity;
import javax.measure.quantity.Pressure;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** One program: fills a table, and prints it for people or as CSV. */
abstract class Program implements Callable<Integer> {

    /** Standard atmosphere. */
    protected static final double ATMOSPHERE_PA = 101_325;

    @Spec
    private CommandSpec spec;

    @Option(
            names = "--csv",
            order = 100,
            description = "Print CSV: a header of name_unit columns, SI units, full precision, a decimal point.")
    private boolean csv;

    @Option(
            names = ShopDefaults.OPTION,
            order = 99,
            paramLabel = "<file>",
            description = "Shop file (JSON): machine, pump, head, inventory, prices, materials. Options override it.")
    private Optional<Path> shopFile = Optional.empty();

    /**
     * Returns the result of the program.
     *
     * @return a filled table
     */
    protected abstract Table table();

    /**
     * Prints the result for people. A program that prints more than a table overrides this.
     *
     * @param out where to print
     * @throws IOException if something cannot be read or written
     */
    protected void print(PrintWriter out) throws IOException {
        out.print(table().text());
    }

    /**
     * Prints the result as CSV.
     *
     * @param out where to print
     * @throws IOException if it cannot be written
     */
    protected void printCsv(PrintWriter out) throws IOException {
        table().writeCsv(out);
    }

    @Override
    public final Integer call() {
        PrintWriter out = spec.commandLine().getOut();
        try {
            if (csv) {
                printCsv(out);
            } else {
                print(out);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        out.flush();
        return status();
    }

    /** {@return the status with which the program ends once it has printed: 0 unless it found something} */
    protected int status() {
        return 0;
    }

    /** {@return the shop file; one that states nothing if none is given} */
    final ShopFile shop() {
        return shopFile.isPresent() ? ShopDefaults.of(spec.commandLine()) : ShopFile.empty();
    }

    /** {@return the materials of the standard catalogue and of the shop} */
    final Materials materials() {
        return ShopDefaults.materials(spec.commandLine());
    }

    /** Whether an option was given, and not only its default value. */
    final boolean isStated(String option) {
        return spec.commandLine().getParseResult().hasMatchedOption(option);
    }

    /** Whether CSV is requested, which leaves nothing out. */
    protected final boolean isCsv() {
        return csv;
    }

    /**
     * Returns the absolute pressure of a gauge pressure.
     *
     * @param name name of the pressure, for an error
     * @param gauge gauge pressure, above 0
     * @return sum of it and the standard atmosphere
     */
    protected static Quantity<Pressure> absolute(String name, Quantity<Pressure> gauge) {
        return Kind.PRESSURE.of(Require.positive(name, Kind.PRESSURE.si(gauge), Units.MEGAPASCAL) + ATMOSPHERE_PA);
    }

    /** Writer for progress and everything else that is not the result. */
    protected final PrintWriter errors() {
        return spec.commandLine().getErr();
    }
}

package dev.waterjet.examples;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.util.concurrent.Callable;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** One program: fills a table, and prints it for people or as CSV. */
abstract class Program implements Callable<Integer> {

    @Spec
    private CommandSpec spec;

    @Option(
            names = "--csv",
            order = 100,
            description = "Print CSV: a header of name_unit columns, SI units, full precision, a decimal point.")
    private boolean csv;

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
     */
    protected void print(PrintWriter out) {
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
        return 0;
    }

    /** Whether CSV is requested, which leaves nothing out. */
    protected final boolean isCsv() {
        return csv;
    }

    /** Writer for progress and everything else that is not the result. */
    protected final PrintWriter errors() {
        return spec.commandLine().getErr();
    }
}

package dev.waterjet.examples;

import java.io.PrintWriter;
import java.util.function.DoubleConsumer;

/** Progress of a long plan, on a terminal alone. */
final class PlanProgress {

    /** Progress is printed after this time. */
    private static final long PATIENCE_MS = 2000;

    private PlanProgress() {}

    /** From Java 22 on, a console can be something other than a terminal; progress then reaches a log as well. */
    @SuppressWarnings("SystemConsoleNull")
    static DoubleConsumer on(PrintWriter out) {
        if (System.console() == null) {
            return share -> {};
        }
        long start = System.currentTimeMillis();
        int[] printed = {-1};
        return share -> {
            int percent = (int) (100 * share);
            boolean isLong = System.currentTimeMillis() - start > PATIENCE_MS;
            if (isLong && percent != printed[0]) {
                printed[0] = percent;
                out.print("\rplanned " + percent + " %" + (share >= 1 ? "\n" : ""));
                out.flush();
            }
        };
    }
}

package dev.waterjet.examples;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringReader;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;

/** Result of running a program: status and output. */
record Ran(int status, String out, String err) {

    static Ran of(String... args) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        PrintWriter outPrinter = new PrintWriter(out);
        PrintWriter errPrinter = new PrintWriter(err);
        int status = Waterjet.run(outPrinter, errPrinter, args);
        outPrinter.flush();
        errPrinter.flush();
        return new Ran(status, out.toString(), err.toString());
    }

    /** The rows of CSV that were printed, by the names of their columns. */
    List<CSVRecord> rows() {
        try (StringReader reader = new StringReader(out)) {
            return CSVFormat.RFC4180
                    .builder()
                    .setHeader()
                    .setSkipHeaderRecord(true)
                    .get()
                    .parse(reader)
                    .getRecords();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}

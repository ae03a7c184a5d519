package dev.waterjet.examples;

import dev.waterjet.examples.drawing.FileKind;
import dev.waterjet.examples.plan.PlanFiles;
import dev.waterjet.examples.plan.ReportUnits;
import dev.waterjet.measure.CsvText;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.TextException;
import dev.waterjet.measure.Units;
import dev.waterjet.measure.WaterjetException;
import dev.waterjet.part.Point;
import dev.waterjet.program.PartProgram;
import dev.waterjet.program.ProgramChecks;
import dev.waterjet.program.ProgramCodes;
import dev.waterjet.program.ProgramFinding;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import javax.measure.Quantity;
import javax.measure.quantity.Time;
import picocli.CommandLine.Command;
import picocli.CommandLine.ExitCode;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Program that checks part programs before abrasive flows. */
@Command(
        name = "check",
        description = {
            "Check part programs (ISO 6983) before abrasive flows: kerf offset on the wrong side, pierce in the part,"
                    + " outline before its holes, short dwell, stop or Z move with the jet on, contours that cross,"
                    + " contradictory words, unknown notes.",
            "Prints one line for each finding. Ends with status 0 if there is none, 1 if there are, 2 if a program"
                    + " cannot be read. A program without findings can still be wrong: the machine's manual, local codes"
                    + " and trained people decide what is run.",
            ""
        })
final class CheckPrograms extends Program {

    @Parameters(arity = "1..*", paramLabel = "<program>", description = "Files with part programs. They are only read.")
    private List<Path> files = List.of();

    @Option(
            names = "--pierce-time",
            converter = Typed.Time.class,
            paramLabel = "<time>",
            description = "Pierce time, to find dwells that are shorter or missing. Default: dwells are not checked.")
    private Optional<Quantity<Time>> pierceTime = Optional.empty();

    @Mixin
    private final ProgramOptions options = new ProgramOptions();

    /** A finding, the file in which it is, and the units of that file. */
    private record Found(Path file, ProgramFinding finding, ReportUnits units) {

        String text() {
            return finding.finding().text(units.replaced());
        }
    }

    private int status;

    /** Checks all files; one that cannot be read is reported and does not stop the others. */
    private List<Found> findings() throws IOException {
        ProgramCodes codes = options.codes();
        ProgramChecks checks =
                pierceTime.map(ProgramChecks.defaults()::withPierceTime).orElse(ProgramChecks.defaults());
        List<Found> found = new ArrayList<>();
        for (Path file : files) {
            try {
                found.addAll(findings(file, checks, codes));
            } catch (WaterjetException e) {
                unreadable(CsvText.name(file.toString()) + ": " + e.getMessage());
            } catch (IOException e) {
                unreadable(String.valueOf(e.getMessage()));
            }
        }
        status = Math.max(status, found.isEmpty() ? ExitCode.OK : ExitCode.SOFTWARE);
        return found;
    }

    private static List<Found> findings(Path file, ProgramChecks checks, ProgramCodes codes) throws IOException {
        PlanFiles.Source source = PlanFiles.Source.read(file);
        FileKind.require(source.bytes(), FileKind.PROGRAM);
        String text = source.text();
        ReportUnits units = ReportUnits.METRIC;
        List<ProgramFinding> findings;
        try {
            PartProgram program = PartProgram.parse(text, codes);
            units = program.isInch() ? ReportUnits.INCH : ReportUnits.METRIC;
            findings = checks.check(program);
        } catch (TextException fault) {
            // some faults of a program are its finding
            findings = checks.check(text, codes);
        }
        List<Found> found = new ArrayList<>();
        for (ProgramFinding finding : findings) {
            found.add(new Found(file, finding, units));
        }
        return found;
    }

    private void unreadable(String message) {
        errors().println("waterjet check: " + message);
        errors().flush();
        status = ExitCode.USAGE;
    }

    @Override
    protected int status() {
        return status;
    }

    @Override
    protected Table table() {
        throw new UnsupportedOperationException("findings are printed line by line");
    }

    @Override
    protected void print(PrintWriter out) throws IOException {
        for (Found found : findings()) {
            String file = found.file().toString().replaceAll("\\p{Cntrl}", "?");
            ProgramFinding finding = found.finding();
            out.println(file + ":" + finding.line() + ": " + finding.code() + ": " + found.text());
        }
    }

    @Override
    protected void printCsv(PrintWriter out) throws IOException {
        Table table = Table.of("Findings")
                .words("file")
                .number("line", 7)
                .words("code")
                .column("x", Kind.LENGTH, Units.MILLIMETRE, 6)
                .column("y", Kind.LENGTH, Units.MILLIMETRE, 6)
                .words("text");
        for (Found found : findings()) {
            ProgramFinding finding = found.finding();
            Optional<Point> place = Optional.ofNullable(finding.finding().place());
            table.row(
                    CsvText.name(found.file().toString()),
                    finding.line(),
                    finding.code(),
                    place.map(point -> OptionalDouble.of(point.xSi())).orElse(OptionalDouble.empty()),
                    place.map(point -> OptionalDouble.of(point.ySi())).orElse(OptionalDouble.empty()),
                    CsvText.name(found.text()));
        }
        table.writeCsv(out);
    }
}

package dev.waterjet.examples;

import dev.waterjet.measure.WaterjetException;
import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.InvalidPathException;
import java.nio.file.NoSuchFileException;
import java.util.Arrays;
import java.util.List;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.ExitCode;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;
import picocli.CommandLine.UnmatchedArgumentException;

/** Command that holds the programs. Without arguments it lists them. */
@Command(
        name = "waterjet",
        description = "Calculations for abrasive-waterjet cutting. Quantities are typed with their units,"
                + " with a decimal point: \"380 MPa\", \"55 ksi\", \"0.010 in\", \"300 g/min\".",
        synopsisSubcommandLabel = "<program>",
        commandListHeading = "%nPrograms:%n",
        footer = {
            "",
            "waterjet <program> --help lists the options of a program.",
            "A cutting jet maims and kills. The output is a calculation: the machine's manual, local codes and trained"
                    + " people decide what is run."
        })
public final class Waterjet implements Runnable {

    static final List<Class<? extends Program>> PROGRAMS = List.of(
            WaterTable.class,
            JetTable.class,
            PumpTable.class,
            LineTable.class,
            AttenuatorTable.class,
            VesselTable.class,
            CircuitTable.class,
            Plan.class,
            Predict.class,
            DrawingTable.class,
            CheckPrograms.class,
            Heads.class,
            KerfSections.class,
            GradeTable.class,
            SpeedCurves.class,
            FitCuts.class,
            SensitivityOfFeed.class,
            Locate.class,
            MaterialList.class);

    private final PrintWriter out;

    @Spec
    private CommandSpec spec;

    private Waterjet(PrintWriter out) {
        this.out = out;
    }

    /**
     * Runs a program and ends the virtual machine with its status: 0 for success, 1 for findings, 2 for bad input.
     *
     * @param args name of the program and its options
     */
    public static void main(String... args) {
        PrintWriter out = utf8(FileDescriptor.out);
        PrintWriter err = utf8(FileDescriptor.err);
        int status = run(out, err, args);
        err.flush();
        // a full disk or a broken pipe behind standard output is seen here only
        if (out.checkError() && status == ExitCode.OK) {
            err.println("waterjet: standard output could not be written");
            err.flush();
            status = ExitCode.SOFTWARE;
        }
        System.exit(status);
    }

    private static PrintWriter utf8(FileDescriptor descriptor) {
        return new PrintWriter(new FileOutputStream(descriptor), false, StandardCharsets.UTF_8);
    }

    /**
     * Runs a program within this virtual machine.
     *
     * @param out receives results
     * @param err receives errors and progress
     * @param args name of the program and its options
     * @return 0 for success, 1 for findings, 2 for bad input
     */
    public static int run(PrintWriter out, PrintWriter err, String... args) {
        ShopDefaults defaults;
        try {
            defaults = ShopDefaults.of(args);
        } catch (WaterjetException e) {
            return printed(err, "waterjet: " + ShopDefaults.refusal(e));
        } catch (UncheckedIOException | InvalidPathException e) {
            return printed(err, "waterjet: cannot read the shop file: " + rootMessage(e));
        }
        CommandLine line = new CommandLine(new Waterjet(out), defaults);
        programs(args).forEach(line::addSubcommand);
        line.setOut(out)
                .setErr(err)
                .setUsageHelpAutoWidth(false)
                .setUsageHelpWidth(100)
                .setCaseInsensitiveEnumValuesAllowed(true)
                .setParameterExceptionHandler((fault, ignored) -> refuse(fault.getCommandLine(), fault))
                .setExecutionExceptionHandler((fault, at, ignored) -> {
                    boolean isExpected = fault instanceof WaterjetException || fault instanceof UncheckedIOException;
                    return isExpected ? refuse(at, fault) : unexpected(at, fault, isDebugging(args));
                });
        line.setDefaultValueProvider(defaults);
        addHelp(line);
        addVersion(line);
        return line.execute(args);
    }

    /** The program that is named; all where none is, for the list and for suggestions. Each takes time to build. */
    private static List<Class<? extends Program>> programs(String... args) {
        return PROGRAMS.stream()
                .filter(program -> args.length > 0 && nameOf(program).equals(args[0]))
                .findFirst()
                .map(List::<Class<? extends Program>>of)
                .orElse(PROGRAMS);
    }

    private static String nameOf(Class<? extends Program> program) {
        return program.getAnnotation(Command.class).name();
    }

    private static boolean isDebugging(String... args) {
        return Arrays.asList(args).contains("--debug");
    }

    /** A fault of the program itself in one line; its trace is printed on request only. */
    private static int unexpected(CommandLine at, Exception fault, boolean isDebugging) {
        at.getErr()
                .println(at.getCommandSpec().qualifiedName() + ": internal error: " + fault
                        + "; please report this with the input" + (isDebugging ? "" : "; --debug prints the trace"));
        if (isDebugging) {
            fault.printStackTrace(at.getErr());
        }
        at.getErr().flush();
        return ExitCode.SOFTWARE;
    }

    private static int printed(PrintWriter err, String text) {
        err.println(text.replaceAll("\\s*\\R\\s*", " ").strip());
        err.flush();
        return ExitCode.USAGE;
    }

    private static String rootMessage(Throwable fault) {
        Throwable cause = fault.getCause();
        return String.valueOf(cause == null ? fault.getMessage() : cause.getMessage());
    }

    private static void addHelp(CommandLine line) {
        line.getSubcommands().values().forEach(Waterjet::addHelp);
        line.getCommandSpec()
                .addOption(OptionSpec.builder("--debug")
                        .description("Print the trace of an internal error.")
                        .hidden(true)
                        .build());
        line.getCommandSpec()
                .addOption(OptionSpec.builder("-h", "--help")
                        .usageHelp(true)
                        .description("Show this help.")
                        .build());
    }

    private static void addVersion(CommandLine line) {
        String version = Waterjet.class.getPackage().getImplementationVersion();
        line.getCommandSpec()
                .version("waterjet " + (version == null ? "without a version: not run from its jar" : version))
                .addOption(OptionSpec.builder("--version")
                        .versionHelp(true)
                        .description("Print the version.")
                        .build());
    }

    /** Reason of a failed reading or writing, with the file. */
    private static String reason(Throwable cause) {
        if (cause instanceof NoSuchFileException missing) {
            return missing.getFile() + ": file not found";
        }
        if (cause instanceof AccessDeniedException denied) {
            return denied.getFile() + ": access denied";
        }
        return String.valueOf(cause.getMessage());
    }

    private static int refuse(CommandLine at, Exception fault) {
        String path = at.getCommandSpec().qualifiedName();
        at.getErr()
                .println(path + ": "
                        + message(at, fault).replaceAll("\\s*\\R\\s*", " ").strip());
        at.getErr().flush();
        return ExitCode.USAGE;
    }

    private static String message(CommandLine at, Exception fault) {
        String message = String.valueOf(fault.getMessage());
        Throwable cause = fault.getCause();
        if (fault instanceof UncheckedIOException && cause != null) {
            return reason(cause);
        }
        if (fault instanceof UnmatchedArgumentException unmatched && at.getParent() == null) {
            String word = unmatched.getUnmatched().get(0);
            return word.startsWith("-")
                    ? message
                    : "unknown program \"" + word + "\"; without arguments the programs are listed";
        }
        if (fault instanceof ParameterException && cause instanceof WaterjetException) {
            return message.substring(0, Math.max(0, message.indexOf(':') + 1))
                    + (message.indexOf(':') < 0 ? "" : " ")
                    + cause.getMessage();
        }
        return fault instanceof ParameterException
                ? message.replace(" is not an int", " is not a whole number")
                : message;
    }

    @Override
    public void run() {
        out.print(spec.commandLine().getUsageMessage());
        out.flush();
    }
}

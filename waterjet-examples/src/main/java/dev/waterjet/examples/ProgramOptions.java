package dev.waterjet.examples;

import dev.waterjet.program.ProgramCodes;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Option;

/** Options of the part program: machine codes. */
final class ProgramOptions {

    @Option(
            names = "--codes",
            paramLabel = "<file>",
            description = "File of machine codes: jet_on, jet_off, pass_through, dwell, sub_programs and others.")
    private Optional<Path> file = Optional.empty();

    @Option(
            names = "--jet-on",
            paramLabel = "<code>",
            description = "Number of the M word that switches the jet on: see the machine's manual. Default: 3.")
    private Optional<Integer> jetOn = Optional.empty();

    @Option(
            names = "--jet-off",
            paramLabel = "<code>",
            description = "Number of the M word that switches the jet off. Default: 5.")
    private Optional<Integer> jetOff = Optional.empty();

    @Option(
            names = "--pass-through",
            split = ",",
            paramLabel = "<word>",
            description =
                    "Other words to copy unchanged, such as G5.1,M8, that neither move the head nor switch the jet.")
    private List<String> passed = List.of();

    @Option(names = "--open", description = "Contours need not close, as in trimming.")
    private boolean mayStayOpen;

    ProgramCodes codes() {
        ProgramCodes codes =
                file.map(path -> ProgramCodes.parse(TextFiles.read(path))).orElse(ProgramCodes.defaults());
        codes = codes.withJet(jetOn.orElse(codes.jetOn()), jetOff.orElse(codes.jetOff()));
        codes = passed.isEmpty() ? codes : codes.withPassThrough(passed);
        return mayStayOpen ? codes.withOpenContours() : codes;
    }
}

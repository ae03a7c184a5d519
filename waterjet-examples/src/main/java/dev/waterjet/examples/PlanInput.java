package dev.waterjet.examples;

import dev.waterjet.examples.drawing.Drawing;
import dev.waterjet.examples.plan.BuiltIn;
import dev.waterjet.examples.svg.DrawnProgram;
import dev.waterjet.part.Finding;
import dev.waterjet.placement.RigidMove;
import dev.waterjet.program.PartProgram;
import dev.waterjet.program.ProgramCodes;
import dev.waterjet.toolpath.CuttingRules;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * Input of a plan: names that follow from its file.
 *
 * @param file file of the program or drawing; empty for the built-in part
 */
record PlanInput(Optional<Path> file) {

    /**
     * Program to plan, and the findings of leads that were placed for it.
     *
     * @param program the program
     * @param findings findings of leads, satisfied or not
     */
    record Read(PartProgram program, List<Finding> findings) {

        static Read of(PartProgram program) {
            return new Read(program, List.of());
        }

        /** The program of a drawing. */
        static Read of(String title, Drawing drawing, CuttingRules rules, ProgramCodes codes) {
            DrawnProgram.Result result = DrawnProgram.of(title, drawing, rules, codes.jetOn(), codes.jetOff());
            return new Read(PartProgram.parse(result.text(), codes), result.findings());
        }

        /** The program where its part lies; unchanged if nothing is known about that. */
        Read movedBy(Optional<RigidMove> move) {
            return move.map(to -> new Read(
                            program.movedBy(to),
                            findings.stream().map(finding -> moved(finding, to)).toList()))
                    .orElse(this);
        }

        private static Finding moved(Finding finding, RigidMove move) {
            return new Finding(
                    finding.isSatisfied(),
                    finding.message(),
                    finding.remedies(),
                    finding.place() == null ? null : move.apply(finding.place()));
        }
    }

    String fileName() {
        return file.map(path -> String.valueOf(path.getFileName())).orElse(BuiltIn.NAME);
    }

    /** Name without its extension. */
    String stem() {
        String name = fileName();
        int dot = name.lastIndexOf('.');
        return file.isPresent() && dot > 0 ? name.substring(0, dot) : name;
    }

    String title() {
        String spaced = stem().replaceAll("[_-]+", " ").strip();
        return spaced.isEmpty() ? "Part" : spaced.substring(0, 1).toUpperCase(Locale.ROOT) + spaced.substring(1);
    }

    /** Name of the written program: the extension of the input stays. */
    String written(boolean isDrawing) {
        String name = file.isPresent() ? fileName() : BuiltIn.NAME + ".nc";
        int dot = name.lastIndexOf('.');
        return stem() + "-with-feeds" + (isDrawing || dot <= 0 ? ".nc" : name.substring(dot));
    }
}

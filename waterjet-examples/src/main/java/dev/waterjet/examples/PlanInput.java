package dev.waterjet.examples;

import dev.waterjet.evidence.Caution;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.examples.drawing.Drawing;
import dev.waterjet.examples.drawing.DrawnPart;
import dev.waterjet.examples.plan.BuiltIn;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Message;
import dev.waterjet.part.Finding;
import dev.waterjet.placement.RigidMove;
import dev.waterjet.plan.EdgeProgram;
import dev.waterjet.plan.PartPlanner;
import dev.waterjet.program.DwellForm;
import dev.waterjet.program.PartProgram;
import dev.waterjet.program.ProgramChecks;
import dev.waterjet.program.ProgramCodes;
import dev.waterjet.program.ProgramFinding;
import dev.waterjet.program.ProgramWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import javax.measure.quantity.Time;

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

        /** The program of a drawing: the edges of its parts, in inches if the drawing is. */
        static Read of(String title, Drawing drawing, PartPlanner planner, Workpiece workpiece, ProgramCodes codes) {
            EdgeProgram program = planner.program(
                    title + ": edges of the part, offset by the machine",
                    drawing.parts().stream().map(DrawnPart::part).toList(),
                    workpiece,
                    ProgramWriter.of(codes).withInches(drawing.isInch()));
            String end = codes.hasCarriageReturns() ? "\r\n" : "\n";
            StringBuilder text = new StringBuilder();
            if (codes.dwell() == DwellForm.MACHINE) {
                text.append("(caution: no dwell in this program, the machine must wait for each pierce)")
                        .append(end);
            }
            for (Caution caution : cautions(drawing)) {
                text.append("(caution: ")
                        .append(plain(caution.text()))
                        .append(')')
                        .append(end);
            }
            return new Read(PartProgram.parse(text + program.text(), codes), program.findings());
        }

        /** Words without what would end a comment. */
        private static String plain(String words) {
            return words.replaceAll("[^\\p{Alnum} .-]", " ").strip();
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

    /** Cautions of a drawing, and one about lines to mark, of which its program has none. */
    static List<Caution> cautions(Drawing drawing) {
        List<Caution> all = new ArrayList<>(drawing.cautions());
        if (!drawing.marks().isEmpty()) {
            all.add(Caution.warning(Message.of(
                            "marks-not-written",
                            "lines to mark are not in the program: {count}, the first {place}; mark them by other means")
                    .with("count", drawing.marks().size())
                    .with("place", drawing.marks().get(0).origin().place())));
        }
        return all;
    }

    /**
     * Returns findings of the program as it was read.
     *
     * @param program the program
     * @param pierce time of a pierce; empty where dwells are not checked
     * @param addsDwell whether the written program gets the dwells that are missing
     */
    static List<ProgramFinding> check(PartProgram program, Optional<Estimate<Time>> pierce, boolean addsDwell) {
        ProgramChecks checks =
                pierce.map(ProgramChecks.defaults()::withPierceTime).orElseGet(ProgramChecks::defaults);
        return checks.check(program).stream()
                .filter(found -> !addsDwell || !found.code().equals("no-dwell"))
                .toList();
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

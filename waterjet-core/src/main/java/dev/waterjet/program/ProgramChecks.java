package dev.waterjet.program;

import dev.waterjet.evidence.Estimate;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.TextException;
import dev.waterjet.measure.Units;
import dev.waterjet.part.Finding;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import javax.measure.Quantity;
import javax.measure.quantity.Time;
import org.jspecify.annotations.Nullable;

/**
 * Checks of a part program before abrasive flows: the kerf offset on the side of the part, a pierce in the part, a contour cut
 * after the piece in which it lies was freed, a dwell shorter than the pierce, contours that cross, and what the reader found.
 *
 * <pre>{@code
 * for (ProgramFinding found : ProgramChecks.defaults().check(program)) {
 *     report.add(found.line(), found.code(), found.text());
 * }
 * }</pre>
 *
 * <p>The checks use the program alone. Contours within contours are taken for holes in parts, or parts in openings, whichever
 * contradicts fewer of the sides and pierces; a contour by itself has its scrap where it is pierced. A program without
 * findings can still be wrong: the machine's manual, local codes and trained people decide what is run.
 */
public final class ProgramChecks {

    /** Refusals of a program whose words are understood. */
    private static final Set<String> FAULTS = Set.of(
            "words-contradict",
            "word-twice",
            "rapid-with-jet-on",
            "jet-already-on",
            "jet-never-off",
            "note-with-jet-on",
            "contour-not-closed",
            "zero-length-line",
            "zero-radius",
            "helix",
            "arc-misses-centre",
            "arc-misses-radius",
            "circle-by-radius",
            "second-work-offset");

    private static final double COVERAGE = 0.95;

    private static final ProgramChecks DEFAULTS = new ProgramChecks(null);

    private final @Nullable Estimate<Time> pierceTime;

    private ProgramChecks(@Nullable Estimate<Time> pierceTime) {
        this.pierceTime = pierceTime;
    }

    /** {@return the checks, without a pierce time} */
    public static ProgramChecks defaults() {
        return DEFAULTS;
    }

    /**
     * Returns these checks with a pierce time, by which dwells are judged: one that is shorter, or missing though neither the
     * machine waits by itself ({@link DwellForm#MACHINE}) nor the jet pierces as it moves, is found.
     *
     * @param time the pierce time with its uncertainty
     * @return the checks
     */
    public ProgramChecks withPierceTime(Estimate<Time> time) {
        return new ProgramChecks(Objects.requireNonNull(time, "time"));
    }

    /**
     * Returns these checks with a pierce time that is known; see {@link #withPierceTime(Estimate)}.
     *
     * @param time the pierce time, above 0
     * @return the checks
     */
    public ProgramChecks withPierceTime(Quantity<Time> time) {
        Objects.requireNonNull(time, "time");
        double seconds = Require.positive("pierce time", Kind.TIME.si(time), Units.SECOND);
        return new ProgramChecks(Estimate.of(Kind.TIME, seconds, 0));
    }

    /**
     * Checks a program.
     *
     * @param program the program
     * @return the findings by line, unmodifiable; empty if nothing was found
     */
    public List<ProgramFinding> check(PartProgram program) {
        List<ProgramFinding> found = new ArrayList<>(program.findings());
        ContourNesting nesting = ContourNesting.of(program.cuts());
        new SideChecks(nesting).find(found);
        new CrossingChecks(nesting, program.unrolledText()).find(found);
        dwells(program, found);
        found.sort(Comparator.comparingInt(ProgramFinding::line));
        return List.copyOf(found);
    }

    /**
     * Reads and checks a program. A program that is understood but cannot be run, as by words that contradict each other, has
     * that as its finding.
     *
     * @param text the program
     * @param codes machine codes
     * @return the findings by line, unmodifiable
     * @throws TextException if the program cannot be read
     */
    public List<ProgramFinding> check(String text, ProgramCodes codes) {
        PartProgram program;
        try {
            program = PartProgram.parse(text, codes);
        } catch (TextException e) {
            if (e.line() > 0 && FAULTS.contains(e.code())) {
                return List.of(new ProgramFinding(e.line(), new Finding(false, e.message(), List.of(), null)));
            }
            throw e;
        }
        return check(program);
    }

    private void dwells(PartProgram program, List<ProgramFinding> found) {
        boolean isByMachine = program.codes().dwell() == DwellForm.MACHINE;
        boolean hasDwells = program.cuts().stream().anyMatch(cut -> cut.dwell().isPresent());
        for (ProgramCut cut : program.cuts()) {
            if (cut.purpose(0) == ProgramCut.Purpose.PIERCE) {
                continue;
            }
            Double dwell = cut.jetOn().dwellS();
            if (dwell == null && !isByMachine && (hasDwells || pierceTime != null)) {
                found.add(DwellMessages.missing(cut, pierceTime));
            } else if (dwell != null && pierceTime != null && dwell < pierceTime.si() * (1 - 1e-9)) {
                found.add(DwellMessages.tooShort(
                        cut,
                        dwell,
                        pierceTime.si(),
                        Kind.TIME.si(pierceTime.lower(COVERAGE)),
                        Kind.TIME.si(pierceTime.upper(COVERAGE))));
            }
        }
    }
}

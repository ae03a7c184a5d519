package dev.waterjet.program;

import dev.waterjet.measure.Message;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.TextException;
import dev.waterjet.measure.Units;
import java.io.Serializable;
import java.util.List;
import java.util.Objects;

/** Checked content of machine codes, and the serial form. */
record ProgramCodesValues(
        int jetOn,
        int jetOff,
        List<PassedWord> passThrough,
        boolean allowsOpenContours,
        DwellForm dwell,
        OffsetFeed offsetFeed,
        int decimals,
        boolean hasRadiusArcs,
        boolean hasCarriageReturns,
        boolean unrollsSubPrograms,
        List<String> startLines)
        implements Serializable {

    private static final long serialVersionUID = 1L;

    private static final int MAX_CODE = 9999;
    private static final int MAX_DECIMALS = 9;
    private static final int MAX_START_LINES = 100;

    static final ProgramCodesValues DEFAULTS = new ProgramCodesValues(
            3, 5, List.of(), false, DwellForm.P_MILLISECONDS, OffsetFeed.AXIS, 3, false, false, true, List.of());

    ProgramCodesValues {
        code("code for jet on", jetOn);
        code("code for jet off", jetOff);
        if (jetOn == jetOff) {
            Require.above("code for jet off", jetOff, jetOn, Units.ONE, "any code but that for jet on");
        }
        passThrough = passThrough.stream().distinct().sorted().toList();
        Objects.requireNonNull(dwell, "dwell");
        Objects.requireNonNull(offsetFeed, "offsetFeed");
        Require.between("number of decimals", decimals, 0, MAX_DECIMALS, Units.ONE, "");
        Require.atMost("number of start lines", startLines.size(), MAX_START_LINES, Units.ONE, "");
        startLines = List.copyOf(startLines);
        startLines.forEach(ProgramCodesValues::requireLine);
    }

    private static void code(String name, int code) {
        Require.between(name, code, 0, MAX_CODE, Units.ONE, "");
    }

    private static void requireLine(String line) {
        if (line.isBlank() || !line.equals(line.strip()) || line.chars().anyMatch(c -> c < ' ')) {
            throw new TextException(Message.of("not-a-line", "{line} is not one line of a program")
                    .withInput("line", line));
        }
    }

    private Object readResolve() {
        return new ProgramCodes(this);
    }

    /** Content under change. */
    static final class Draft {

        int jetOn;
        int jetOff;
        List<PassedWord> passThrough;
        boolean allowsOpenContours;
        DwellForm dwell;
        OffsetFeed offsetFeed;
        int decimals;
        boolean hasRadiusArcs;
        boolean hasCarriageReturns;
        boolean unrollsSubPrograms;
        List<String> startLines;

        Draft(ProgramCodesValues values) {
            jetOn = values.jetOn;
            jetOff = values.jetOff;
            passThrough = values.passThrough;
            allowsOpenContours = values.allowsOpenContours;
            dwell = values.dwell;
            offsetFeed = values.offsetFeed;
            decimals = values.decimals;
            hasRadiusArcs = values.hasRadiusArcs;
            hasCarriageReturns = values.hasCarriageReturns;
            unrollsSubPrograms = values.unrollsSubPrograms;
            startLines = values.startLines;
        }

        ProgramCodesValues values() {
            return new ProgramCodesValues(
                    jetOn,
                    jetOff,
                    passThrough,
                    allowsOpenContours,
                    dwell,
                    offsetFeed,
                    decimals,
                    hasRadiusArcs,
                    hasCarriageReturns,
                    unrollsSubPrograms,
                    startLines);
        }
    }
}

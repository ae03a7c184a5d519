package dev.waterjet.program;

import dev.waterjet.evidence.Estimate;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.Units;
import javax.measure.quantity.Time;
import org.jspecify.annotations.Nullable;

/** Findings about dwells after jet on. */
final class DwellMessages {

    private DwellMessages() {}

    static ProgramFinding missing(ProgramCut cut, @Nullable Estimate<Time> pierceTime) {
        Message message = pierceTime == null
                ? Message.of("no-dwell", "the jet moves off without a dwell to pierce, unlike in other cuts")
                : Message.of("no-dwell", "the jet moves off without a dwell; the pierce takes {pierce}")
                        .with("pierce", Kind.TIME, pierceTime.si(), Units.SECOND);
        return ProgramFinding.violated(
                cut.line(),
                cut.start().xSi(),
                cut.start().ySi(),
                message,
                Message.of("add-dwell", "write G4 after jet on, or state that the machine waits by itself"));
    }

    static ProgramFinding tooShort(ProgramCut cut, double dwellS, double pierceS, double lowerS, double upperS) {
        Message message = lowerS == upperS
                ? Message.of("short-dwell", "the dwell of {dwell} is shorter than the pierce of {pierce}")
                : Message.of(
                        "short-dwell",
                        "the dwell of {dwell} is shorter than the pierce of {pierce} (95 % interval {lower} to"
                                + " {upper})");
        message = message.with("dwell", Kind.TIME, dwellS, Units.SECOND)
                .with("pierce", Kind.TIME, pierceS, Units.SECOND)
                .with("lower", Kind.TIME, lowerS, Units.SECOND)
                .with("upper", Kind.TIME, upperS, Units.SECOND);
        return ProgramFinding.violated(
                cut.jetOn().dwellLine(), cut.start().xSi(), cut.start().ySi(), message);
    }
}

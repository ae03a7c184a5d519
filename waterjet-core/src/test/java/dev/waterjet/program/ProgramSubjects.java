package dev.waterjet.program;

import dev.waterjet.measure.Kind;
import dev.waterjet.part.Edge;
import dev.waterjet.quality.EdgeRequirement;
import dev.waterjet.reference.Computed;
import dev.waterjet.reference.Inputs;
import dev.waterjet.reference.Subjects;
import java.util.Arrays;
import java.util.Map;
import java.util.function.ToDoubleFunction;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Subjects of the reference suite in this package. Bars separate the lines of a program; contours can be open. */
public final class ProgramSubjects implements Subjects {

    private static final Pattern FEED = Pattern.compile("F([0-9.]+)");

    @Override
    public Map<String, Subject> subjects() {
        return Map.of(
                "program-blocks", in -> Computed.of(program(in).size()),
                "program-cutting-length",
                        in -> Computed.of(Kind.LENGTH, program(in).cuttingLength()),
                "program-rapid-length",
                        in -> Computed.of(Kind.LENGTH, program(in).rapidLength()),
                "program-end-x", in -> length(in, edge -> edge.end().xSi()),
                "program-end-y", in -> length(in, edge -> edge.end().ySi()),
                "program-centre-x",
                        in -> length(in, edge -> edge.centre().orElseThrow().xSi()),
                "program-centre-y",
                        in -> length(in, edge -> edge.centre().orElseThrow().ySi()),
                "program-sweep", in -> Computed.of(Kind.ANGLE, last(in).sweep()),
                "program-feed-word", ProgramSubjects::feedWord);
    }

    private static PartProgram program(Inputs in) {
        return PartProgram.parse(
                in.text("program").replaceAll(" *\\| *", "\n"),
                ProgramCodes.defaults().withOpenContours());
    }

    /** The last block of the last cut. */
    private static Edge last(Inputs in) {
        PartProgram program = program(in);
        ProgramCut cut = program.cuts().get(program.cuts().size() - 1);
        return cut.path(EdgeRequirement.defaults()).edge(cut.size() - 1);
    }

    private static Computed length(Inputs in, ToDoubleFunction<Edge> place) {
        return Computed.of(Kind.LENGTH, Kind.LENGTH.of(place.applyAsDouble(last(in))));
    }

    private static Computed feedWord(Inputs in) {
        PartProgram program = program(in);
        double[] feeds = new double[program.size()];
        Arrays.fill(feeds, in.si("feed", Kind.SPEED));
        Matcher word = FEED.matcher(program.withFeedsSi(feeds));
        if (!word.find()) {
            throw new IllegalStateException("no feed is written");
        }
        return Computed.of(Double.parseDouble(word.group(1)));
    }
}

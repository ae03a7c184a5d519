package dev.waterjet.examples.predict;

import dev.waterjet.kerf.HeadTilt;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.QuantityArray;
import dev.waterjet.measure.TextException;
import dev.waterjet.motion.FeedPlan;
import dev.waterjet.motion.TiltProfile;
import dev.waterjet.part.Contour;
import dev.waterjet.part.EdgeCursor;
import dev.waterjet.part.Part;
import dev.waterjet.part.Side;
import dev.waterjet.plan.PartPlan;
import dev.waterjet.plan.PlannedCut;
import dev.waterjet.program.PartProgram;
import dev.waterjet.program.ProgramCut;
import dev.waterjet.simulate.FeedProfile;
import dev.waterjet.toolpath.KerfOffset;
import dev.waterjet.toolpath.ToolPath;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.DoubleFunction;
import java.util.function.DoubleUnaryOperator;
import javax.measure.quantity.Length;

/**
 * One contour of a part, and the path and feed with which it is cut.
 *
 * @param name name of the contour
 * @param contour the contour
 * @param partSide side of the contour on which the part lies
 * @param profile path of the jet axis and feed along it
 */
public record ContourCut(String name, Contour contour, Side partSide, FeedProfile profile) {

    /** Distance between feeds that are read off a plan for a path beside it. */
    private static final double STEP_M = 0.1e-3;

    private static final double SAME_FEED = 0.01;
    /** Distance between tilts of a path beside the planned one. */
    private static final double TILT_STEP_M = 0.03e-3;

    /**
     * Returns the contours of a part as they are planned.
     *
     * @param part the part
     * @param plan its plan, without tabs
     * @return the contours in cutting order
     */
    public static List<ContourCut> of(Part part, PartPlan plan) {
        List<ContourCut> cuts = new ArrayList<>();
        for (PlannedCut cut : plan.cuts()) {
            Contour contour = part.contours().get(cut.source());
            cuts.add(new ContourCut(
                    part.label(cut.source()),
                    contour,
                    part.partSide(cut.source()),
                    FeedProfile.of(cut.feeds().get(0))));
        }
        return cuts;
    }

    /**
     * Returns the contours of a program. Where the machine applies the kerf offset, the path of the jet is the offset of the
     * contour: a lead-in counts as a straight run into its start, a lead-out as an overlap. A program of the jet axis is cut as it is written, and the contour of the part lies half a kerf beside it.
     *
     * @param program the program
     * @param plan its plan
     * @param isAsWritten whether the feeds are those of the program and not those of the plan
     * @return the contours in cutting order
     */
    public static List<ContourCut> of(PartProgram program, PartPlan plan, boolean isAsWritten) {
        List<ContourCut> cuts = new ArrayList<>();
        for (PlannedCut planned : plan.cuts()) {
            ProgramCut cut = program.cuts().get(planned.source());
            cuts.add(
                    cut.jetSide().isPresent()
                            ? compensated(program, plan, planned, cut, isAsWritten)
                            : asDrawn(program, plan, planned, cut, isAsWritten));
        }
        return cuts;
    }

    private static String label(ProgramCut cut, PlannedCut planned) {
        return cut.name().isEmpty() ? "cut " + (planned.source() + 1) : cut.name();
    }

    private static Contour edge(PartPlan plan, ProgramCut cut) {
        return cut.loop(plan.setup().requirement())
                .orElseGet(() -> cut.path(plan.setup().requirement()));
    }

    private static KerfOffset offset(PlannedCut planned) {
        return KerfOffset.of(
                planned.offset().orElseGet(() -> planned.kerf().offset().value()));
    }

    private static ContourCut asDrawn(
            PartProgram program, PartPlan plan, PlannedCut planned, ProgramCut cut, boolean isAsWritten) {
        Contour contour = offset(planned)
                .apply(edge(plan, cut), planned.partSide())
                .path()
                .contour();
        Contour path = cut.path(plan.setup().requirement());
        FeedProfile profile = isAsWritten
                ? FeedProfile.perEdge(path, QuantityArray.ofSi(Kind.SPEED, writtenFeeds(program, cut)))
                : FeedProfile.of(planned.feeds().get(0));
        return new ContourCut(label(cut, planned), contour, planned.partSide(), profile);
    }

    private static double[] writtenFeeds(PartProgram program, ProgramCut cut) {
        double[] feeds = new double[cut.size()];
        for (int i = 0; i < feeds.length; i++) {
            int line = cut.line(i);
            feeds[i] = program.feed(cut.firstBlock() + i)
                    .map(Kind.SPEED::si)
                    .orElseThrow(() -> new TextException(
                            Message.of("feed-not-stated", "line {line}: the program states no feed rate")
                                    .with("line", line)));
        }
        return feeds;
    }

    private static ContourCut compensated(
            PartProgram program, PartPlan plan, PlannedCut planned, ProgramCut cut, boolean isAsWritten) {
        Contour contour = edge(plan, cut);
        ToolPath path =
                offset(planned).apply(contour, planned.partSide().opposite()).path();
        if (!isAsWritten && planned.offset().isPresent()) {
            return new ContourCut(
                    label(cut, planned),
                    contour,
                    planned.partSide(),
                    FeedProfile.of(planned.feeds().get(0)));
        }
        double overlap = Math.min(overlap(plan, cut), path.contour().lengthSi() / 2);
        if (overlap > 0 && path.contour().isClosed()) {
            path = path.withOvercut(Kind.LENGTH.of(overlap));
        }
        DoubleUnaryOperator feed = isAsWritten ? written(program, plan, cut) : planned(plan, planned, cut);
        FeedProfile profile = profile(path, contour, feed);
        Optional<TiltProfile> tilt = planned.feeds().get(0).tilt();
        if (tilt.isPresent() && !isAsWritten) {
            double leads = leadIn(plan, cut);
            double last = planned.feeds().get(0).contour().lengthSi();
            profile = tilted(
                    profile,
                    path,
                    contour,
                    at -> tilt.get().at(Kind.LENGTH.of(Math.max(0, Math.min(last, at + leads)))));
        }
        return new ContourCut(
                label(cut, planned),
                contour,
                planned.partSide(),
                cut.leadIn() > 0 ? profile.afterSteadyFeed() : profile);
    }

    /** Length of overcut and lead-out: the jet runs on beyond the start of the contour. */
    private static double overlap(PartPlan plan, ProgramCut cut) {
        EdgeCursor edge = new EdgeCursor();
        Contour path = cut.path(plan.setup().requirement());
        double sum = Kind.LENGTH.si(cut.overcut());
        for (int i = cut.size() - cut.leadOut(); i < cut.size(); i++) {
            path.load(i, edge);
            sum += edge.length();
        }
        return sum;
    }

    /** Feed of the program over the distance along the contour. */
    private static DoubleUnaryOperator written(PartProgram program, PartPlan plan, ProgramCut cut) {
        double[] feeds = writtenFeeds(program, cut);
        FeedProfile all =
                FeedProfile.perEdge(cut.path(plan.setup().requirement()), QuantityArray.ofSi(Kind.SPEED, feeds));
        double leads = leadIn(plan, cut);
        return at -> all.feedAtSi(at + leads);
    }

    private static DoubleUnaryOperator planned(PartPlan plan, PlannedCut planned, ProgramCut cut) {
        FeedPlan feeds = planned.feeds().get(0);
        double leads = leadIn(plan, cut);
        double last = feeds.contour().lengthSi();
        return at -> feeds.feedAtSi(Math.min(last, at + leads));
    }

    private static double leadIn(PartPlan plan, ProgramCut cut) {
        EdgeCursor edge = new EdgeCursor();
        Contour path = cut.path(plan.setup().requirement());
        double sum = 0;
        for (int i = 0; i < cut.leadIn(); i++) {
            path.load(i, edge);
            sum += edge.length();
        }
        return cut.isClosed() ? sum : 0;
    }

    /** A profile with the tilts of a path beside a contour, from the tilt over the distance along that contour. */
    private static FeedProfile tilted(
            FeedProfile profile, ToolPath path, Contour contour, DoubleFunction<HeadTilt> tiltAt) {
        double[] starts = starts(contour);
        EdgeCursor edge = new EdgeCursor();
        List<Double> distances = new ArrayList<>();
        List<HeadTilt> tilts = new ArrayList<>();
        double at = 0;
        for (int i = 0; i < path.size(); i++) {
            path.contour().load(i, edge);
            int of = path.sourceEdge(i).orElse(0);
            int steps = Math.max(1, (int) Math.ceil(edge.length() / TILT_STEP_M));
            for (int k = 0; k < steps; k++) {
                double share = (k + 0.5) / steps;
                double place = path.sourceStart(i) + share * (path.sourceEnd(i) - path.sourceStart(i));
                distances.add(at + share * edge.length());
                tilts.add(tiltAt.apply(starts[of] + place * (starts[of + 1] - starts[of])));
            }
            at += edge.length();
        }
        return profile.withTilts(
                QuantityArray.ofSi(
                        Kind.LENGTH,
                        distances.stream().mapToDouble(Double::doubleValue).toArray()),
                tilts);
    }

    /** Distances of the starts of the edges of a contour, and of its end. */
    private static double[] starts(Contour contour) {
        double[] starts = new double[contour.size() + 1];
        EdgeCursor edge = new EdgeCursor();
        for (int i = 0; i < contour.size(); i++) {
            contour.load(i, edge);
            starts[i + 1] = starts[i] + edge.length();
        }
        return starts;
    }

    /** Feeds of a path beside a contour, from the feed over the distance along that contour. */
    private static FeedProfile profile(ToolPath path, Contour contour, DoubleUnaryOperator feedAt) {
        double[] starts = starts(contour);
        EdgeCursor edge = new EdgeCursor();
        List<Double> distances = new ArrayList<>();
        List<Double> feeds = new ArrayList<>();
        double at = 0;
        for (int i = 0; i < path.size(); i++) {
            path.contour().load(i, edge);
            OptionalInt source = path.sourceEdge(i);
            int steps = Math.max(1, (int) Math.ceil(edge.length() / STEP_M));
            for (int k = 0; k < steps; k++) {
                double share = (k + 0.5) / steps;
                int of = source.orElse(0);
                double place = path.sourceStart(i) + share * (path.sourceEnd(i) - path.sourceStart(i));
                double feed = feedAt.applyAsDouble(starts[of] + place * (starts[of + 1] - starts[of]));
                boolean isNew = feeds.isEmpty() || Math.abs(feed / feeds.get(feeds.size() - 1) - 1) > SAME_FEED;
                if (isNew && feed > 0) {
                    distances.add(feeds.isEmpty() ? 0 : at + edge.length() * k / steps);
                    feeds.add(feed);
                }
            }
            at += edge.length();
        }
        QuantityArray<Length> from = QuantityArray.ofSi(
                Kind.LENGTH, distances.stream().mapToDouble(Double::doubleValue).toArray());
        return FeedProfile.asWritten(
                path.contour(),
                from,
                QuantityArray.ofSi(
                        Kind.SPEED,
                        feeds.stream().mapToDouble(Double::doubleValue).toArray()));
    }
}

package dev.waterjet.plan;

import dev.waterjet.measure.DomainException;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.motion.FeedPlan;
import dev.waterjet.motion.SourceBlock;
import dev.waterjet.part.Point;
import dev.waterjet.program.CutFeeds;
import dev.waterjet.program.ProgramMove;
import dev.waterjet.quality.CutQuality;
import java.util.ArrayList;
import java.util.List;

/** Moves and feed rates of a plan as a part program takes them. */
final class PlanProgram {

    private final PartPlan plan;
    private final List<ProgramMove> written = new ArrayList<>();
    private boolean isOn;
    private CutQuality noted = CutQuality.MEDIUM;

    PlanProgram(PartPlan plan) {
        this.plan = plan;
    }

    /** Moves of the jet axis with jet on and off, notes and dwells. */
    List<ProgramMove> moves() {
        for (PlannedCut cut : plan.cuts()) {
            if (cut.programFeeds().isPresent()) {
                throw new DomainException(
                        Message.of(
                                "plan-of-a-program",
                                "the plan is of a program; rewrite that program with the feed rates of the plan"),
                        "program");
            }
        }
        List<Move> moves = plan.moves();
        for (int i = 0; i < moves.size(); i++) {
            Move move = moves.get(i);
            switch (move.purpose()) {
                case RAPID -> rapid(move.end());
                case PIERCE -> pierce(move, moves.subList(Math.min(i + 1, moves.size() - 1), moves.size()));
                default -> cut(move);
            }
        }
        jetOff();
        return written;
    }

    private void rapid(Point end) {
        jetOff();
        written.add(new ProgramMove.Rapid(end));
    }

    private void jetOff() {
        if (isOn) {
            written.add(new ProgramMove.JetOff());
            isOn = false;
        }
    }

    private void pierce(Move move, List<Move> next) {
        PlannedCut cut = plan.cuts().get(move.cut());
        noted = next.stream()
                .flatMap(each -> each.quality().stream())
                .findFirst()
                .orElse(cut.quality());
        if (written.isEmpty() || isOn) {
            rapid(move.end());
        }
        String name = cut.name().replace(',', ' ').strip();
        written.add(new ProgramMove.Comment("waterjet: " + (name.isEmpty() ? "" : "name " + name + ", ") + "quality "
                + noted.label() + (cut.feeds().size() > 1 ? ", open" : "")));
        double bore = plan.conditions().jet().tubeExitBoreSi();
        written.addAll(PierceMoves.of(cut.pierce(), move.end(), next.get(0).end(), bore));
        isOn = true;
    }

    private void cut(Move move) {
        CutQuality quality = move.quality().orElse(noted);
        if (quality != noted) {
            written.add(new ProgramMove.Comment("waterjet: quality " + quality.label()));
            noted = quality;
        }
        written.add(
                move.isArc()
                        ? new ProgramMove.Arc(
                                move.end(),
                                move.centre().orElseThrow(),
                                move.turn().orElseThrow(),
                                move.feed())
                        : new ProgramMove.Line(move.end(), move.feed()));
    }

    /** Feed rates along each cut by the distance from jet on. */
    static List<CutFeeds> feeds(PartPlan plan) {
        double change = plan.setup().feedChange();
        return plan.cuts().stream()
                .map(cut -> cut.programFeeds().orElseGet(() -> feeds(cut.feeds(), change)))
                .toList();
    }

    /** Feed rates along stretches that follow one another, by the distance from the start of the first. */
    static CutFeeds feeds(List<FeedPlan> plans, double feedChange) {
        List<SourceBlock> blocks = plans.stream()
                .flatMap(stretch -> stretch.sourceBlocks(feedChange).stream())
                .toList();
        double[] ends = new double[blocks.size()];
        double[] feeds = new double[blocks.size()];
        double at = 0;
        for (int i = 0; i < ends.length; i++) {
            at += Kind.LENGTH.si(blocks.get(i).length());
            ends[i] = at;
            feeds[i] = Kind.SPEED.si(blocks.get(i).feed());
        }
        return CutFeeds.ofSi(ends, feeds);
    }
}

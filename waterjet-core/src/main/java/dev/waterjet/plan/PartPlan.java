package dev.waterjet.plan;

import dev.waterjet.cost.Batch;
import dev.waterjet.cost.BatchCost;
import dev.waterjet.cost.Consumption;
import dev.waterjet.cost.PartWork;
import dev.waterjet.evidence.Caution;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.feed.CutConditions;
import dev.waterjet.measure.Described;
import dev.waterjet.measure.Description;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.Message;
import dev.waterjet.measure.QuantityText;
import dev.waterjet.measure.Require;
import dev.waterjet.measure.Units;
import dev.waterjet.motion.FeedLimit;
import dev.waterjet.motion.FeedPlan;
import dev.waterjet.part.Finding;
import dev.waterjet.pierce.Pierce;
import dev.waterjet.program.CutFeeds;
import dev.waterjet.program.ProgramWriter;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Time;

/**
 * Plan of a part: its cuts in order, the moves of the machine, findings, time, consumption and cost.
 *
 * <pre>{@code
 * PartPlan plan = PartPlanner.of(setup).plan(part, workpiece);
 * for (Move move : plan.moves()) {
 *     post.line(move.end(), move.centre(), move.feed(), move.purpose());
 * }
 * plan.violations();
 * plan.cautions();
 * }</pre>
 *
 * <p>The plan is a calculation, not a command: what a machine may run is decided by its manual, its maker, local codes and
 * trained people.
 *
 * @param setup machine and shop
 * @param conditions jet, workpiece and feed model
 * @param kerfWidth kerf width that the caller gave, as measured; empty if the offset is that of the kerf model
 * @param cuts cuts in order, one or more
 * @param moves moves of the machine in order
 * @param findings findings of every rule that was checked, satisfied or not
 */
public record PartPlan(
        Setup setup,
        CutConditions conditions,
        Optional<Quantity<Length>> kerfWidth,
        List<PlannedCut> cuts,
        List<Move> moves,
        List<Finding> findings)
        implements Described {

    private static final Caution NOT_WRITTEN = Caution.warning(Message.of(
            "tilt-not-written",
            "a written program has the feed rates of a tilting head but no tilt; write the tilt of each move by the"
                    + " post-processor of the machine, or plan with an upright head"));

    /**
     * Copies the lists.
     *
     * @param setup machine and shop
     * @param conditions jet, workpiece and feed model
     * @param kerfWidth kerf width that the caller gave
     * @param cuts cuts in order
     * @param moves moves of the machine in order
     * @param findings findings of every rule that was checked
     */
    public PartPlan {
        Objects.requireNonNull(setup, "setup");
        Objects.requireNonNull(conditions, "conditions");
        Objects.requireNonNull(kerfWidth, "kerfWidth");
        cuts = List.copyOf(cuts);
        Require.atLeast("number of cuts", cuts.size(), 1, Units.ONE, "a part has an outline");
        moves = List.copyOf(moves);
        for (Move move : moves) {
            Require.index("cut", move.cut(), cuts.size());
        }
        findings = List.copyOf(findings);
    }

    /** {@return the length of all cuts with the jet on} */
    public Quantity<Length> cutLength() {
        double length = 0;
        for (PlannedCut cut : cuts) {
            length += Kind.LENGTH.si(cut.length());
        }
        return Kind.LENGTH.of(length);
    }

    /** {@return the length of rapid traverse between the cuts} */
    public Quantity<Length> rapidLength() {
        return Kind.LENGTH.of(sum(true));
    }

    /** {@return the time of rapid traverse, with the delays per move and per pierce} */
    public Quantity<Time> rapidTime() {
        return Kind.TIME.of(sum(false));
    }

    private double sum(boolean isLength) {
        double sum = 0;
        for (Move move : moves) {
            if (move.purpose() == Move.Purpose.RAPID) {
                sum += isLength ? Kind.LENGTH.si(move.length()) : Kind.TIME.si(move.time());
            }
        }
        return sum;
    }

    /** {@return the number of pierces} */
    public int pierces() {
        int count = 0;
        for (PlannedCut cut : cuts) {
            count += cut.feeds().size();
        }
        return count;
    }

    /**
     * Returns the time along the cuts. Where the machine governs, the time is exact; where the jet governs, it has the
     * relative uncertainty of the feed rate.
     *
     * @return the time, with the cautions of the plan
     */
    public Estimate<Time> cuttingTime() {
        double time = 0;
        double ofJet = 0;
        for (Map.Entry<FeedLimit, Double> entry : secondsByLimit().entrySet()) {
            time += entry.getValue();
            ofJet += entry.getKey().isOfFront() ? entry.getValue() : 0;
        }
        return Estimate.withinFactor(
                Kind.TIME, time, conditions.relativeUncertainty() * ofJet / time, conditions.cautions());
    }

    /** {@return the time along the cuts that each limit governs; a limit that never governs has no entry} */
    public Map<FeedLimit, Quantity<Time>> timeByLimit() {
        Map<FeedLimit, Quantity<Time>> times = new EnumMap<>(FeedLimit.class);
        secondsByLimit().forEach((limit, seconds) -> times.put(limit, Kind.TIME.of(seconds)));
        return times;
    }

    private Map<FeedLimit, Double> secondsByLimit() {
        Map<FeedLimit, Double> seconds = new EnumMap<>(FeedLimit.class);
        for (PlannedCut cut : cuts) {
            for (FeedPlan plan : cut.feeds()) {
                plan.timeByLimit().forEach((limit, time) -> seconds.merge(limit, Kind.TIME.si(time), Double::sum));
            }
        }
        return seconds;
    }

    /** {@return the work on the part: cutting, pierces and rapid traverse} */
    public PartWork work() {
        return PartWork.of(cuttingTime()).withPierces(pierces(), meanPierce()).withIdle(rapidTime());
    }

    /** The pierce of every stretch, or one of their mean time where they differ. */
    private Pierce meanPierce() {
        Pierce first = cuts.get(0).pierce();
        double seconds = 0;
        double uncertain = 0;
        double idle = 0;
        boolean isOneKind = true;
        for (PlannedCut cut : cuts) {
            Estimate<Time> time = cut.pierce().time();
            int count = cut.feeds().size();
            seconds += count * time.si();
            uncertain += time.si() > 0 ? count * time.si() * time.relativeUncertainty() : 0;
            idle += count * Kind.TIME.si(cut.pierce().idleTime());
            isOneKind &= cut.pierce().equals(first);
        }
        return isOneKind || !(seconds > 0)
                ? first
                : new Pierce(
                        first.method(),
                        first.pressure(),
                        Estimate.withinFactor(
                                Kind.TIME,
                                seconds / pierces(),
                                uncertain / seconds,
                                first.time().cautions()),
                        Kind.TIME.of(idle / pierces()),
                        first.reason(),
                        first.cautions());
    }

    /**
     * Returns the consumption of the part.
     *
     * @param pumpEfficiency hydraulic power over power from the mains, above 0 to 1
     * @return the consumption while the jet is on
     */
    public Consumption consumption(double pumpEfficiency) {
        return Consumption.of(conditions.jet(), work().jetTime().value(), pumpEfficiency);
    }

    /**
     * Returns the cost of a batch of the part.
     *
     * @param parts number of parts, 1 or more
     * @return the cost; empty if the setup has no prices
     */
    public Optional<BatchCost> cost(int parts) {
        return setup.prices()
                .map(prices -> Batch.of(conditions.jet(), work(), parts).cost(prices));
    }

    /** {@return the findings of rules that are not satisfied} */
    public List<Finding> violations() {
        return findings.stream().filter(finding -> !finding.isSatisfied()).toList();
    }

    /** {@return the cautions of every model that the plan rests on, each once} */
    public List<Caution> cautions() {
        Set<Caution> all = new LinkedHashSet<>(cuttingTime().cautions());
        all.addAll(conditions.cautions());
        for (PlannedCut cut : cuts) {
            cut.qualities()
                    .forEach(quality -> all.addAll(conditions.feed(quality).cautions()));
            cut.feeds().forEach(plan -> all.addAll(plan.cautions()));
            all.addAll(cut.kerf().cautions());
            all.addAll(cut.pierce().cautions());
        }
        if (moves.stream().anyMatch(move -> move.tilt().isPresent())) {
            all.add(NOT_WRITTEN);
        }
        return List.copyOf(all);
    }

    /**
     * Returns the moves with the jet on as CSV, one row each, in SI units: cut and move from 1, name, cut quality, shape,
     * whether it is a lead, start, end, length, feed rate, time and governing limit.
     *
     * @return the table with a header
     */
    public String csv() {
        return new MoveTable(this).csv();
    }

    /**
     * Returns the feed rates along each cut, for {@link ProgramWriter#rewrite} of the program that was planned.
     *
     * @return feed rates by the distance from jet on, one list for each cut
     */
    public List<CutFeeds> feeds() {
        return PlanProgram.feeds(this);
    }

    /**
     * Writes the moves as a new part program: the path of the jet axis, which includes the kerf offset, with a dwell for each
     * pierce (the upper end of its 95 % interval) and a note with name and cut quality before each cut. Its feed words take the
     * planned time. It is a calculation: run it without the jet first.
     *
     * @param title comment of its first line; empty for none
     * @param writer codes and units of the program
     * @return the text
     * @throws dev.waterjet.measure.DomainException with code {@code plan-of-a-program} if the plan is of a program: rewrite that
     *     program with {@link #feeds()}
     */
    public String program(String title, ProgramWriter writer) {
        Objects.requireNonNull(writer, "writer");
        return writer.write(title, new PlanProgram(this).moves());
    }

    @Override
    public Map<String, Object> describe() {
        Description description =
                Description.of("part plan").put("setup", setup).put("conditions", conditions);
        kerfWidth.ifPresent(width -> description.put("kerf_width_given", Kind.LENGTH, Kind.LENGTH.si(width)));
        description
                .put("cuts", cuts)
                .put("moves", moves)
                .put("pierces", pierces())
                .put("cut_length", Kind.LENGTH, Kind.LENGTH.si(cutLength()))
                .put("rapid_length", Kind.LENGTH, Kind.LENGTH.si(rapidLength()))
                .put("rapid_time", Kind.TIME, Kind.TIME.si(rapidTime()))
                .put("cutting_time", cuttingTime())
                .put("work", work());
        cost(1).ifPresent(cost -> description.put("cost", cost));
        Map<String, Object> map = new LinkedHashMap<>(description
                .put("findings", findings)
                .put("cautions", cautions())
                .map());
        List<Map<String, Object>> limits = new ArrayList<>();
        secondsByLimit()
                .forEach((limit, seconds) -> limits.add(Description.of("limit")
                        .put("limit", limit)
                        .put("time", Kind.TIME, seconds)
                        .map()));
        map.put("time_by_limit", limits);
        return map;
    }

    @Override
    public String toString() {
        return cuts.size() + (cuts.size() == 1 ? " cut, " : " cuts, ")
                + QuantityText.forPeople(Kind.LENGTH, cutLength()) + " in "
                + QuantityText.forPeople(Kind.TIME, work().jetTime().si());
    }
}

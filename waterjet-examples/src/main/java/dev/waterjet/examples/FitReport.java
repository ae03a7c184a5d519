package dev.waterjet.examples;

import dev.waterjet.calibrate.CalibratedFeed;
import dev.waterjet.calibrate.CutFit;
import dev.waterjet.calibrate.FeedLadder;
import dev.waterjet.calibrate.NextCut;
import dev.waterjet.calibrate.TestCut;
import dev.waterjet.evidence.Caution;
import dev.waterjet.evidence.Estimate;
import dev.waterjet.jet.AbrasiveJet;
import dev.waterjet.material.Material;
import dev.waterjet.material.Workpiece;
import dev.waterjet.measure.Kind;
import dev.waterjet.measure.QuantityText;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import javax.measure.quantity.Speed;

/**
 * Output of program {@code fit} for the cuts of one material.
 *
 * @param request what was asked for
 * @param own the calibration
 * @param materials material by its id
 * @param coverage probability of intervals
 * @param predicted setting of a further cut
 * @param rival another model, or {@link #ALL}
 * @param costs costs of further cuts, which are ranked; empty if they are not
 * @param step step of a ladder for a further plate
 */
record FitReport(
        FitRequest request,
        CalibratedFeed own,
        Function<String, Material> materials,
        double coverage,
        Optional<String> predicted,
        Optional<String> rival,
        Optional<Costs> costs,
        Optional<Double> step) {

    /**
     * Costs of a further cut.
     *
     * @param trial cost of a trial
     * @param plate cost of a new plate
     */
    record Costs(double trial, double plate) {}

    /** Steps of the ladders that are compared. */
    private static final double[] STEPS = {0.1, 0.2};

    /** All other models. */
    static final String ALL = "all";

    Table parameters() {
        return FitTables.parameters(own.fit(), request.model(), coverage);
    }

    void printCsv(PrintWriter out) throws IOException {
        // all are computed before the first is printed: a refusal leaves no half of an answer
        List<Table> tables = new ArrayList<>(List.of(parameters()));
        predicted.ifPresent(setting -> tables.add(FitTables.predictionRow(prediction(), coverage)));
        rival.ifPresent(model -> tables.add(comparison()));
        costs.ifPresent(some -> tables.add(next(some)));
        step.ifPresent(some -> tables.add(ladder(some)));
        for (int i = 0; i < tables.size(); i++) {
            if (i > 0) {
                out.println();
            }
            tables.get(i).writeCsv(out);
        }
    }

    void print(PrintWriter out) {
        // as a whole, as the CSV is
        StringWriter text = new StringWriter();
        PrintWriter whole = new PrintWriter(text);
        printParts(whole);
        whole.flush();
        out.print(text);
    }

    private void printParts(PrintWriter out) {
        out.print(parameters().text());
        out.println();
        printScatter(out);
        List<String> kept = own.cuts().stream()
                .flatMap(cut -> cut.attributes().keySet().stream())
                .distinct()
                .toList();
        if (!kept.isEmpty()) {
            out.println("Columns kept: " + String.join(", ", kept) + ".");
        }
        if (predicted.isPresent()) {
            out.print("\n" + FitTables.prediction(prediction(), coverage).text());
        }
        if (rival.isPresent()) {
            out.print("\n" + comparison().text());
        }
        costs.ifPresent(some -> out.print(
                "\n" + next(some).note(NextSetting.text(own, target())).text()));
        step.ifPresent(some -> out.print("\n" + ladder(some).text()));
        printCorrelations(out);
        out.println();
        out.print(FitTables.cuts(own).text());
        for (Caution remark : own.remarks()) {
            out.println("Caution: " + remark.text() + ".");
        }
    }

    private void printScatter(PrintWriter out) {
        CutFit fit = own.fit();
        out.println("Scatter of a cut about the fit: " + QuantityText.round(100 * own.scatter(), 3)
                + " % of the feed rate; " + QuantityText.round(fit.degreesOfFreedom(), 3) + " degrees of freedom; "
                + fit.method().label() + ".");
        if (request.isRobust() || request.isHighBreakdown()) {
            out.println(
                    "It withstands " + fit.withstoodCuts() + " wrong cuts to one side of " + fit.observations() + ".");
        }
        if (fit.plateScatter() > 0) {
            out.println("Between plates " + QuantityText.round(100 * fit.plateScatter(), 3) + " %, within a plate "
                    + QuantityText.round(100 * fit.scatter(), 3) + " % of the depth; " + fit.plates() + " plates.");
        }
    }

    private void printCorrelations(PrintWriter out) {
        CutFit fit = own.fit();
        IntStream.range(0, fit.names().size())
                .boxed()
                .flatMap(i -> IntStream.range(0, i).mapToObj(j ->
                        new String[] {fit.names().get(j), fit.names().get(i)}))
                .forEach(pair -> out.println("Correlation of " + pair[0] + " and " + pair[1] + ": "
                        + QuantityText.round(fit.correlation(pair[0], pair[1]), 3)));
    }

    private Table comparison() {
        String other = rival.orElseThrow();
        return Rivals.compare(
                request,
                own,
                materials.apply(request.material()),
                other.equals(ALL) ? Rivals.of(request.model()) : List.of(other));
    }

    private TestCut target() {
        TestCut first = own.cuts().get(0);
        return predicted.map(setting -> CutSetting.parse(setting, first)).orElse(first);
    }

    private Estimate<Speed> prediction() {
        TestCut next = target();
        return own.feed(next.jet(), Workpiece.of(own.material(), next.thickness()), next.index());
    }

    private Table ladder(double step) {
        return FitTables.ladder(FeedLadder.of(separation(), step));
    }

    private Estimate<Speed> separation() {
        TestCut target = target();
        return own.feed(target.jet(), Workpiece.of(own.material(), target.thickness()), 1);
    }

    private Table next(Costs costs) {
        TestCut target = target();
        double[] pressures = own.cuts().stream()
                .mapToDouble(cut -> cut.jet().pressureSi())
                .sorted()
                .toArray();
        double lowest = pressures[0];
        double highest = pressures[pressures.length - 1];
        double known = target.jet().pressureSi();
        // where no exponent of the pressure was fitted, one says as much as another
        boolean hasPressure = own.fit().names().stream().anyMatch(name -> name.contains("pressure"));
        List<AbrasiveJet> jets = (hasPressure
                        ? DoubleStream.of(0.8 * lowest, lowest, (lowest + highest) / 2, highest, known)
                        : DoubleStream.of(known))
                .distinct()
                .mapToObj(pressure -> target.jet().withPressure(Kind.PRESSURE.of(pressure)))
                .toList();
        return FitTables.next(NextCut.rank(own, target.jet(), target.thickness(), jets, ways(costs)));
    }

    private List<NextCut.Way> ways(Costs costs) {
        List<NextCut.Way> ways = new ArrayList<>();
        double one = costs.trial + costs.plate;
        ways.add(NextCut.Way.measured().withCost(one));
        for (double size : STEPS) {
            double trials = FeedLadder.of(separation(), size).expectedTrials();
            ways.add(NextCut.Way.ladder(size).withCost(trials * costs.trial + costs.plate));
        }
        ways.add(NextCut.Way.trial().withCost(one));
        if (own.fit().plateScatter() > 0) {
            String last = own.cuts().stream()
                    .map(cut -> cut.attributes().getOrDefault(request.group(), ""))
                    .filter(name -> !name.isEmpty())
                    .reduce("", (first, second) -> second);
            ways.add(NextCut.Way.measured().onPlate(last).withCost(costs.trial));
            ways.add(NextCut.Way.trial().onPlate(last).withCost(costs.trial));
        }
        return ways;
    }
}

package dev.waterjet.benchmarks;

import dev.waterjet.measure.WaterjetException;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Consumer;

/**
 * Random valid inputs through every model and the planner: each answer must be a finite number that keeps the laws it is checked
 * for, or a refusal of the library's own. Every input has a seed of its own, so that a run can be parted, and one input repeated.
 */
public final class ManyInputs {

    private static final long SEED = 20261128;

    /** A model and its share of the inputs; dear ones are rare. */
    private record Model(String name, int perHundredThousand, Consumer<Draws> trial) {}

    private static final List<Model> MODELS = List.of(
            new Model("feed", 65_000, RandomCuts::feed),
            new Model("other feed models", 5_000, RandomCuts::rivals),
            new Model("inverse questions", 500, RandomCuts::solver),
            new Model("plain water", 2_000, RandomCuts::plainWater),
            new Model("mixing", 300, RandomCuts::mixing),
            new Model("kerf", 600, RandomCuts::kerf),
            new Model("surface", 300, RandomCuts::surface),
            new Model("pierce", 5_000, RandomCuts::pierce),
            new Model("water", 8_000, RandomSupplies::water),
            new Model("branches of water", 500, RandomSupplies::branches),
            new Model("water jet", 5_000, RandomSupplies::jet),
            new Model("pump", 300, RandomSupplies::pump),
            new Model("friction and line", 3_000, RandomSupplies::friction),
            new Model("operating point", 60, RandomSupplies::operatingPoint),
            new Model("vessel", 3_000, RandomSupplies::vessel),
            new Model("ripple of a circuit", 8, RandomSupplies::ripple),
            new Model("transient of a circuit", 1, RandomSupplies::transients),
            new Model("cost", 500, RandomJobs::cost),
            new Model("least cost", 20, RandomJobs::cheapest),
            new Model("placement", 150, RandomJobs::placement),
            new Model("budget", 400, RandomJobs::budget),
            new Model("trials", 10, RandomJobs::trials),
            new Model("sheet", 274, RandomJobs::sheet),
            new Model("motion", 20, RandomJobs::motion),
            new Model("offset", 40, RandomJobs::offset),
            new Model("head", 1, RandomJobs::head),
            new Model("fit", 10, RandomJobs::fit),
            new Model("predicted cut", 1, RandomJobs::predicted),
            new Model("plan", 5, RandomJobs::plan));

    private final Map<String, long[]> counts = new TreeMap<>();

    private ManyInputs() {}

    /**
     * Runs and reports; ends with an exception at the first answer that is not finite or breaks a law.
     *
     * @param args how many inputs, twenty million if not given; the number of the first, 0 if not given; the name of a model, to
     *     run that one alone
     */
    public static void main(String... args) {
        long inputs = args.length > 0 ? Long.parseLong(args[0]) : 20_000_000;
        long first = args.length > 1 ? Long.parseLong(args[1]) : 0;
        ManyInputs run = new ManyInputs();
        long start = System.nanoTime();
        for (long i = first; i < first + inputs; i++) {
            run.one(i, args.length > 2 ? args[2] : "");
        }
        run.report(first, inputs, (System.nanoTime() - start) / 1e9);
    }

    private static Model model(Draws draws) {
        int place = draws.below(100_000);
        for (Model model : MODELS) {
            place -= model.perHundredThousand;
            if (place < 0) {
                return model;
            }
        }
        throw new IllegalStateException("the shares do not add up to 100000");
    }

    private void one(long number, String only) {
        Draws draws = new Draws(SEED + number);
        Model model = only.isEmpty() ? model(draws) : named(only);
        long[] count = counts.computeIfAbsent(model.name, name -> new long[4]);
        count[0]++;
        long start = System.nanoTime();
        try {
            model.trial.accept(draws);
        } catch (WaterjetException refused) {
            count[2]++;
        } catch (RuntimeException | StackOverflowError fault) {
            throw new IllegalStateException("input " + number + ", " + model.name + ": " + fault.getMessage(), fault);
        }
        count[1] += draws.answers();
        count[3] += System.nanoTime() - start;
    }

    private static Model named(String name) {
        return MODELS.stream()
                .filter(model -> model.name.equals(name))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("no model is called " + name));
    }

    private void report(long first, long inputs, double seconds) {
        long answers = 0;
        long refusals = 0;
        for (Map.Entry<String, long[]> entry : counts.entrySet()) {
            long[] count = entry.getValue();
            answers += count[1];
            refusals += count[2];
            System.out.printf(
                    Locale.ROOT,
                    "%-24s %9d inputs %10d answers %8d refusals %8.1f s%n",
                    entry.getKey(),
                    count[0],
                    count[1],
                    count[2],
                    count[3] / 1e9);
        }
        System.out.printf(
                Locale.ROOT,
                "seed %d, inputs %d to %d: %d finite answers, %d refusals, %.0f s%n",
                SEED,
                first,
                first + inputs - 1,
                answers,
                refusals,
                seconds);
    }
}
